package policy_test

import (
	"fmt"
	"go/ast"
	"go/constant"
	"go/parser"
	"go/token"
	"go/types"
	"slices"
	"strings"
	"testing"

	"example.org/packcheck"
	"example.org/packcheck/internal/policy"
	"example.org/packcheck/setup"
)

// sample type-checks a piece of text that may import what the module imports.
func sample(t *testing.T, text string) policy.Package {
	t.Helper()
	p := policy.Package{Dir: "sample", Fset: token.NewFileSet()}
	file, err := parser.ParseFile(p.Fset, "sample.go", text, 0)
	if err != nil {
		t.Fatal(err)
	}
	p.Files = []*ast.File{file}
	p.Info = &types.Info{Types: map[ast.Expr]types.TypeAndValue{}, Defs: map[*ast.Ident]types.Object{}, Uses: map[*ast.Ident]types.Object{}}
	check := types.Config{Importer: among(typedPackages(t))}
	if p.Types, err = check.Check("sample", p.Fset, p.Files, p.Info); err != nil {
		t.Fatalf("%v in\n%s", err, text)
	}
	return p
}

// among imports what the module has read already.
type among []policy.Package

func (a among) Import(path string) (*types.Package, error) {
	for _, p := range a {
		if i := slices.IndexFunc(p.Types.Imports(), func(in *types.Package) bool { return in.Path() == path }); i >= 0 {
			return p.Types.Imports()[i], nil
		}
	}
	return nil, fmt.Errorf("no package of the module imports %q", path)
}

// given is a value that a maker gives to a field of a finding.
type given struct {
	field string
	value ast.Expr
}

// givenIn returns what stands in literals of findings and in assignments to their
// fields, for the fields named.
func givenIn(p policy.Package, fields ...string) []given {
	var out []given
	keep := func(name string, value ast.Expr) {
		for _, f := range fields {
			if f == name {
				out = append(out, given{name, value})
			}
		}
	}
	for _, file := range p.Files {
		ast.Inspect(file, func(n ast.Node) bool {
			switch n := n.(type) {
			case *ast.CompositeLit:
				if !policy.IsFinding(p.Info.TypeOf(n)) {
					return true
				}
				for _, e := range n.Elts {
					if kv, is := e.(*ast.KeyValueExpr); is {
						keep(kv.Key.(*ast.Ident).Name, kv.Value)
					}
				}
			case *ast.AssignStmt:
				for i, lhs := range n.Lhs {
					if sel, is := lhs.(*ast.SelectorExpr); is && len(n.Lhs) == len(n.Rhs) && policy.IsFinding(p.Info.TypeOf(sel.X)) {
						keep(sel.Sel.Name, n.Rhs[i])
					}
				}
			}
			return true
		})
	}
	return out
}

// Not seen are IDs that stand in the data: the loaders of chemistry and tables
// refuse a row whose source they do not know.
func TestEverySourceThatAFindingNamesIsListed(t *testing.T) {
	known := map[string]bool{}
	for _, s := range packcheck.Sources() {
		known[s.ID] = true
	}
	named := 0
	for _, p := range typedPackages(t) {
		for _, g := range givenIn(p, "Source") {
			v := p.Info.Types[g.value].Value
			if v == nil || v.Kind() != constant.String {
				continue
			}
			for id := range strings.SplitSeq(constant.StringVal(v), ",") {
				named++
				if !known[strings.TrimSpace(id)] {
					t.Errorf("%s: no source %q is listed", p.Fset.Position(g.value.Pos()), id)
				}
			}
		}
	}
	if named < 30 {
		t.Errorf("only %d sources seen: the test looks in the wrong place", named)
	}
}

// A key is given by a constant of package answer, or is that of the value itself
// (Figure.Key); one that is written out could be misspelt.
func TestEveryKeyThatDecidesAFindingIsAKeyOfTheSetup(t *testing.T) {
	known := map[string]bool{}
	for _, k := range setup.Keys() {
		known[k.Path()] = true
	}
	named := 0
	for _, p := range typedPackages(t) {
		for _, g := range givenIn(p, "Decides") {
			ast.Inspect(g.value, func(n ast.Node) bool {
				e, is := n.(ast.Expr)
				if !is {
					return true
				}
				v := p.Info.Types[e].Value
				if v == nil || v.Kind() != constant.String {
					return true
				}
				named++
				_, literal := e.(*ast.BasicLit)
				if !known[constant.StringVal(v)] || literal {
					t.Errorf("%s: %s is no key of the setup, or is written out", p.Fset.Position(e.Pos()), v)
				}
				return false
			})
		}
	}
	if named < 30 {
		t.Errorf("only %d keys seen: the test looks in the wrong place", named)
	}
}
