package answer_test

import (
	"go/ast"
	"go/parser"
	"go/token"
	"strconv"
	"strings"
	"testing"

	"example.org/packcheck/setup"
)

// A mistyped key would never be seen as assumed.
func TestEveryKeyThatAFindingCanNameIsAKeyOfTheSetup(t *testing.T) {
	known := map[string]bool{}
	for _, k := range setup.Keys() {
		known[k.Table+"."+k.Name] = true
	}
	file, err := parser.ParseFile(token.NewFileSet(), "keys.go", nil, 0)
	if err != nil {
		t.Fatal(err)
	}
	seen := map[string]bool{}
	ast.Inspect(file, func(n ast.Node) bool {
		spec, is := n.(*ast.ValueSpec)
		if !is {
			return true
		}
		for i, name := range spec.Names {
			key, err := strconv.Unquote(spec.Values[i].(*ast.BasicLit).Value)
			if err != nil || !strings.HasPrefix(name.Name, "Key") || !known[key] || seen[key] {
				t.Errorf("%s = %q: no key of the setup, or listed twice", name.Name, key)
			}
			seen[key] = true
		}
		return true
	})
	if len(seen) == 0 {
		t.Error("no key was seen at all: the test looks in the wrong place")
	}
}
