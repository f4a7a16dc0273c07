package policy_test

import (
	"go/ast"
	"slices"
	"testing"
)

// The computation must depend on nothing but its input.
func TestOnlyTheEdgesTouchTheWorld(t *testing.T) {
	for _, s := range packages(t) {
		mayRead := s.dir == "setup" || s.dir == "internal/policy" || isCommand(s) ||
			s.dir == "internal/browsertest" // starts a browser, for tests alone: see the next test
		for _, name := range s.names() {
			for _, imported := range imports(t, s.files[name]) {
				switch imported {
				case "os", "os/exec", "os/signal", "net", "net/http", "syscall", "log", "log/slog":
					if !mayRead {
						t.Errorf("%s imports %s: input and output belong to setup and cmd", name, imported)
					}
				case "math/rand", "crypto/rand", "hash/maphash", "unsafe":
					t.Errorf("%s imports %s: the same input must give the same answer", name, imported)
				case "math/rand/v2":
					if s.dir != "internal/draws" && s.dir != "internal/trials/cmd/calibration" { // which hides what draws must find
						t.Errorf("%s imports %s: whoever draws at random uses internal/draws", name, imported)
					}
				}
			}
			forbiddenCalls(t, s, name)
		}
	}
}

// What is for tests alone is linked into no program and into no library.
func TestWhatIsForTestsIsUsedByTestsAlone(t *testing.T) {
	seen := 0
	for _, s := range packages(t) {
		for _, dir := range []string{"internal/browsertest", "internal/findingtest"} {
			if slices.Contains(ours(t, s), dir) {
				t.Errorf("%s imports %s, which is for tests", s.dir, dir)
			}
			if s.dir == dir {
				seen++
			}
		}
	}
	if seen != 2 {
		t.Errorf("%d such packages are seen, want two: the test looks in the wrong place", seen)
	}
}

// seeded are the only names of math/rand/v2 that may be used: a generator of a
// known kind and the seeds that it is given. What stands in the package itself
// (rand.Float64, rand.Perm ...) is seeded anew in every run. A seed from the
// clock or the environment is caught by what else is forbidden here.
var seeded = map[string]bool{"New": true, "NewPCG": true, "NewChaCha8": true, "Rand": true, "PCG": true}

// forbiddenCalls looks for printing, clocks, the environment, random numbers
// without a seed, and init.
func forbiddenCalls(t *testing.T, s source, name string) {
	t.Helper()
	ast.Inspect(s.files[name], func(n ast.Node) bool {
		switch n := n.(type) {
		case *ast.FuncDecl:
			if n.Recv == nil && n.Name.Name == "init" {
				t.Errorf("%s has an init function", name)
			}
		case *ast.SelectorExpr:
			pkg, ok := n.X.(*ast.Ident)
			if !ok {
				return true
			}
			switch call := pkg.Name + "." + n.Sel.Name; call {
			case "fmt.Print", "fmt.Printf", "fmt.Println":
				if !isCommand(s) || s.dir == "cmd/packcheck" {
					t.Errorf("%s: %s goes past the writers that the command is given", name, call)
				}
			case "time.Now", "time.Since", "os.Getenv", "os.LookupEnv", "os.Environ":
				if !isCommand(s) {
					t.Errorf("%s: %s makes the answer depend on more than the setup", name, call)
				}
			}
			if pkg.Name == "rand" && pkg.Obj == nil && !seeded[n.Sel.Name] {
				t.Errorf("%s: rand.%s has no fixed seed", name, n.Sel.Name)
			}
		case *ast.CallExpr:
			if id, ok := n.Fun.(*ast.Ident); ok && (id.Name == "println" || id.Name == "print") {
				t.Errorf("%s: %s", name, id.Name)
			}
		}
		return true
	})
}
