package policy_test

import (
	"go/ast"
	"strconv"
	"strings"
	"testing"
)

// rows is the house plan, lowest row first. A package may import packages of
// lower rows, never one of its own. The cutoffs stand half a row below the
// outing, because the outing steps their timers; the logs stand half a row
// below the setup, because a setup may name one as its load.
var rows = map[string]float64{
	"finding":          0,
	"internal/nesting": 0,

	"chemistry":         1,
	"tables":            1,
	"internal/quantity": 1,

	"drive":   2,
	"wiring":  2,
	"battery": 2,

	"cutoff":  2.5,
	"cellfit": 2.5,
	"setup":   3,
	"ride":    3,
	"charge":  3,

	".":             4,
	"report":        5,
	"cmd/packcheck": 6,
}

func TestImportsPointDownwards(t *testing.T) {
	for _, s := range packages(t) {
		row, ok := rows[s.dir]
		if isCommand(s) {
			row, ok = rows["cmd/packcheck"], true
		}
		if !ok {
			t.Errorf("%s has no row in the plan; give it one in this test", s.dir)
			continue
		}
		for _, name := range s.names() {
			for _, imported := range imports(t, s.files[name]) {
				dir, ours := below(imported)
				if !ours {
					continue
				}
				if other, ok := rows[dir]; !ok || other >= row {
					t.Errorf("%s imports %s, which is not in a lower row", name, imported)
				}
			}
		}
	}
}

// isCommand reports whether the package is a program: packcheck itself, or one
// that makes figures for this module out of data.
func isCommand(s source) bool {
	for _, file := range s.files {
		return file.Name.Name == "main" && strings.Contains("/"+s.dir, "/cmd/")
	}
	return false
}

// imports returns the import paths of a file.
func imports(t *testing.T, file *ast.File) []string {
	t.Helper()
	var all []string
	for _, spec := range file.Imports {
		imported, err := strconv.Unquote(spec.Path.Value)
		if err != nil {
			t.Fatal(err)
		}
		all = append(all, imported)
	}
	return all
}

// below returns the folder of an import path of this module.
func below(imported string) (dir string, ours bool) {
	if imported == modulePath {
		return ".", true
	}
	return strings.CutPrefix(imported, modulePath+"/")
}

// The computation must depend on nothing but its input.
func TestOnlyTheEdgesTouchTheWorld(t *testing.T) {
	for _, s := range packages(t) {
		mayRead := s.dir == "setup" || isCommand(s)
		for _, name := range s.names() {
			for _, imported := range imports(t, s.files[name]) {
				switch imported {
				case "os", "os/exec", "os/signal", "net", "net/http", "syscall", "log", "log/slog":
					if !mayRead {
						t.Errorf("%s imports %s: input and output belong to setup and cmd", name, imported)
					}
				case "math/rand", "math/rand/v2", "crypto/rand":
					t.Errorf("%s imports %s: the same input must give the same answer", name, imported)
				}
			}
			forbiddenCalls(t, s, name)
		}
	}
}

// forbiddenCalls looks for printing, clocks, the environment and init.
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
		case *ast.CallExpr:
			if id, ok := n.Fun.(*ast.Ident); ok && (id.Name == "println" || id.Name == "print") {
				t.Errorf("%s: %s", name, id.Name)
			}
		}
		return true
	})
}
