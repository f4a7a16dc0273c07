package policy_test

import (
	"go/ast"
	"slices"
	"strings"
	"testing"
)

// computing are the packages that every draw passes through.
var computing = []string{
	"battery", "charge", "chemistry", "cutoff", "drive", "setup", "tables", "wiring", "internal/bend", "internal/build", "internal/judge", "internal/quantity",
	"internal/draws", "internal/reckon", "internal/ride", "internal/solve",
}

// scalar are the packages of gonum that do without its assembly, which sums in
// another order than the same code in Go.
var scalar = []string{"gonum.org/v1/gonum/interp", "gonum.org/v1/gonum/stat/distuv"}

// unportable are the functions of package math that end in other bits on other
// processors.
var unportable = []string{"Exp", "Pow", "Erf", "Erfc", "Tanh", "Sinh", "Cosh", "FMA"}

// A phone gives the answer of a desk, to the byte: package portable has the
// functions for it.
func TestWhatADrawPassesThroughIsTheSameEverywhere(t *testing.T) {
	seen := 0
	for _, s := range packages(t) {
		if !slices.Contains(computing, s.dir) {
			continue
		}
		for name, file := range s.files {
			for _, path := range imports(t, file) {
				if strings.HasPrefix(path, "gonum.org/") && !slices.Contains(scalar, path) {
					t.Errorf("%s imports %s, which ends in other bits on other processors; internal/draws solves and sums in Go alone", name, path)
				}
			}
			ast.Inspect(file, func(n ast.Node) bool {
				sel, is := n.(*ast.SelectorExpr)
				if !is {
					return true
				}
				if pkg, is := sel.X.(*ast.Ident); is && pkg.Name == "math" {
					seen++
					if slices.Contains(unportable, sel.Sel.Name) {
						t.Errorf("%s: math.%s ends in other bits on other processors; internal/portable has it, or may get it", name, sel.Sel.Name)
					}
				}
				return true
			})
		}
	}
	if seen < 100 {
		t.Errorf("only %d uses of package math seen: the test looks in the wrong place", seen)
	}
}
