package report_test

import (
	"go/ast"
	"go/parser"
	"go/token"
	"os"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"
)

// files parses the package's own files, tests left out.
func files(t *testing.T) map[string]*ast.File {
	t.Helper()
	entries, err := os.ReadDir(".")
	if err != nil {
		t.Fatal(err)
	}
	out := map[string]*ast.File{}
	for _, e := range entries {
		if name := e.Name(); strings.HasSuffix(name, ".go") && !strings.HasSuffix(name, "_test.go") {
			file, err := parser.ParseFile(token.NewFileSet(), name, nil, parser.ParseComments)
			if err != nil {
				t.Fatal(err)
			}
			out[name] = file
		}
	}
	if len(out) < 10 {
		t.Fatalf("only %d files: the test looks in the wrong place", len(out))
	}
	return out
}

func TestAReportKnowsTheAnswerAndNothingOfThePhysics(t *testing.T) {
	const module = "example.org/packcheck"
	allowed := []string{module + "/answer", module + "/internal/quantity", module + "/internal/later"}
	for name, file := range files(t) {
		for _, spec := range file.Imports {
			imported, err := strconv.Unquote(spec.Path.Value)
			if err != nil {
				t.Fatal(err)
			}
			if strings.HasPrefix(imported, module) && !slices.Contains(allowed, imported) {
				t.Errorf("%s imports %s", name, imported)
			}
		}
	}
}

// Codes of findings are lower case with hyphens; they belong to the package
// that makes the finding. A report prints them, in two functions of one file, and looks
// at none.
func TestAReportKnowsNoCodeOfAFinding(t *testing.T) {
	reads := 0
	code := regexp.MustCompile(`^[a-z]+(-[a-z0-9]+)+$`)
	literals := 0
	for name, file := range files(t) {
		ast.Inspect(file, func(n ast.Node) bool {
			switch n := n.(type) {
			case *ast.BasicLit:
				if text, err := strconv.Unquote(n.Value); n.Kind == token.STRING && err == nil {
					literals++
					if code.MatchString(text) {
						t.Errorf("%s holds %q, which looks like a code", name, text)
					}
				}
			case *ast.SelectorExpr:
				if n.Sel.Name == "Code" && name != "explanation.go" { // there it is that of an explanation
					if reads++; name != "found.go" {
						t.Errorf("%s reads the code of a finding", name)
					}
				}
			}
			return true
		})
	}
	if reads != 2 { // of a finding, and of the one behind the word of a part
		t.Errorf("the code of a finding is read in %d places, want two", reads)
	}
	if literals < 300 {
		t.Errorf("only %d strings were seen: the test looks in the wrong place", literals)
	}
}
