package cutoff_test

import (
	"go/ast"
	"go/parser"
	"go/token"
	"os"
	"slices"
	"strconv"
	"strings"
	"testing"

	"example.org/packcheck/cutoff"
)

func TestTheListOfCodesIsComplete(t *testing.T) {
	files, err := os.ReadDir(".")
	if err != nil {
		t.Fatal(err)
	}
	var declared []string
	for _, entry := range files {
		if name := entry.Name(); strings.HasSuffix(name, ".go") && !strings.HasSuffix(name, "_test.go") {
			declared = append(declared, codesIn(t, name)...)
		}
	}
	listed := cutoff.Codes()
	slices.Sort(declared)
	slices.Sort(listed)
	if len(declared) == 0 || !slices.Equal(declared, listed) {
		t.Errorf("declared %v\nlisted   %v", declared, listed)
	}
}

// codesIn returns the texts of the constants of a file that begin with Code.
func codesIn(t testing.TB, name string) []string {
	t.Helper()
	file, err := parser.ParseFile(token.NewFileSet(), name, nil, 0)
	if err != nil {
		t.Fatal(err)
	}
	var out []string
	ast.Inspect(file, func(n ast.Node) bool {
		spec, is := n.(*ast.ValueSpec)
		if !is || !strings.HasPrefix(spec.Names[0].Name, "Code") {
			return true
		}
		text, err := strconv.Unquote(spec.Values[0].(*ast.BasicLit).Value)
		if err != nil {
			t.Fatal(err)
		}
		out = append(out, text)
		return true
	})
	return out
}
