package policy_test

import (
	"go/ast"
	"go/token"
	"go/types"
	"slices"
	"strings"
	"testing"

	"example.org/packcheck/internal/policy"
)

// cheapAtStart are the calls that a variable of a package may be made with: the
// compiler lays what they return into the program's data. Of a package that makes but
// one variable by another call, a start reads code and data from two more places of
// the disk.
var cheapAtStart = []string{"errors.New", "example.org/packcheck/internal/pattern.New"}

// Nobody pays at start-up for what a run may not need: nothing is compiled,
// decoded or filled before somebody asks for it. Programs that make tables for
// this module are left out.
func TestNothingIsBuiltAtStartUp(t *testing.T) {
	seen := 0
	for _, p := range typedPackages(t) {
		if strings.Contains("/"+p.Dir, "/cmd/") && p.Dir != "cmd/packcheck" {
			continue
		}
		for _, at := range builtAtStart(p, &seen) {
			t.Errorf("%s: made at start-up; make it when it is first asked for (internal/later, internal/pattern), or as plain data", p.Fset.Position(at))
		}
	}
	if seen < 40 {
		t.Errorf("only %d variables seen: the test looks in the wrong place", seen)
	}
}

// The test above must be able to fail: it is shown one of each kind.
func TestWhatIsBuiltAtStartUpIsSeen(t *testing.T) {
	p := sample(t, `package sample

import (
	"errors"
	"regexp"
	"strings"

	"github.com/BurntSushi/toml"
)

var (
	a = regexp.MustCompile("x")
	b = func() int { return strings.Index("xy", "y") }()
	c, d = toml.Decode("x = 1", new(int))
	e = []string{strings.ToUpper("x")}
	f = map[string]int{"x": 1}
	g = make([]int, 100)
	h = []map[int]int{{1: 2}}
	i = made(3)
)

var (
	fine  = errors.New("x")
	plain = [...]float64{1, 2, float64(3), float64(len("abc"))}
	later = func() *regexp.Regexp { return regexp.MustCompile("x") }
	empty map[string]int
)

func made(n int) func() int { return func() int { return n } }

func init() { _, d = toml.Decode("x = 1", new(int)) }
`)
	seen := 0
	if got := builtAtStart(p, &seen); len(got) != 9 {
		for _, at := range got {
			t.Log(p.Fset.Position(at))
		}
		t.Errorf("%d places, want 9", len(got))
	}
}

// builtAtStart returns where the variables of a package are made by calls, or by
// filling maps, and where it has an init function that does anything.
func builtAtStart(p policy.Package, seen *int) []token.Pos {
	var at []token.Pos
	for _, file := range p.Files {
		for _, d := range file.Decls {
			if f, is := d.(*ast.FuncDecl); is && f.Recv == nil && f.Name.Name == "init" {
				at = append(at, f.Pos())
			}
			gen, is := d.(*ast.GenDecl)
			if !is || gen.Tok != token.VAR {
				continue
			}
			for _, spec := range gen.Specs {
				*seen++
				for _, value := range spec.(*ast.ValueSpec).Values {
					at = append(at, dearIn(p, value)...)
				}
			}
		}
	}
	return at
}

// dearIn returns the calls and maps below an expression that are not cheap.
func dearIn(p policy.Package, value ast.Expr) []token.Pos {
	var at []token.Pos
	ast.Inspect(value, func(n ast.Node) bool {
		switch n := n.(type) {
		case *ast.FuncLit:
			return false // later
		case *ast.CompositeLit:
			if _, is := p.Info.TypeOf(n).Underlying().(*types.Map); is && len(n.Elts) > 0 {
				at = append(at, n.Pos())
				return false
			}
		case *ast.CallExpr:
			if !cheap(p, n) {
				at = append(at, n.Pos())
				return false
			}
		}
		return true
	})
	return at
}

// cheap reports whether a call may be made at start-up.
func cheap(p policy.Package, call *ast.CallExpr) bool {
	if p.Info.Types[call].Value != nil || p.Info.Types[call.Fun].IsType() {
		return true // a constant, a conversion
	}
	sel, is := call.Fun.(*ast.SelectorExpr)
	if !is {
		return false
	}
	f, is := p.Info.Uses[sel.Sel].(*types.Func)
	return is && slices.Contains(cheapAtStart, f.FullName())
}
