package reckon_test

import (
	"go/ast"
	"go/parser"
	"go/token"
	"path/filepath"
	"strconv"
	"strings"
	"testing"

	"example.org/packcheck/internal/reckon"
)

// findingCodes reads the codes of all findings off the sources: constants whose
// names begin with Code.
func findingCodes(t *testing.T) map[string]string {
	t.Helper()
	codes := map[string]string{}
	for _, dir := range []string{"../../drive", "../../wiring", "../../battery", "../../cutoff", "../../charge", "../judge"} {
		found := 0
		files, err := filepath.Glob(filepath.Join(dir, "*.go"))
		if err != nil {
			t.Fatal(err)
		}
		for _, name := range files {
			if strings.HasSuffix(name, "_test.go") {
				continue
			}
			file, err := parser.ParseFile(token.NewFileSet(), name, nil, 0)
			if err != nil {
				t.Fatal(err)
			}
			ast.Inspect(file, func(n ast.Node) bool {
				spec, ok := n.(*ast.ValueSpec)
				if !ok {
					return true
				}
				for i, id := range spec.Names {
					if !strings.HasPrefix(id.Name, "Code") || i >= len(spec.Values) {
						continue
					}
					lit, ok := spec.Values[i].(*ast.BasicLit)
					if !ok {
						continue
					}
					code, err := strconv.Unquote(lit.Value)
					if err != nil {
						t.Fatal(err)
					}
					codes[code] = dir + ": " + id.Name
					found++
				}
				return true
			})
		}
		if found < 10 {
			t.Fatalf("%s: only %d codes: the test looks in the wrong place", dir, found)
		}
	}
	return codes
}

func TestEveryFindingIsExplained(t *testing.T) {
	codes := findingCodes(t)
	for code, where := range codes {
		e, ok := reckon.Explain(code)
		if !ok {
			t.Errorf("%s (%s) is not explained", code, where)
			continue
		}
		for part, text := range map[string]string{"means": e.Means, "hurts": e.Hurts, "limit": e.Limit, "do": e.Do} {
			if text == "" || !strings.HasSuffix(text, ".") {
				t.Errorf("%s: what it %s is %q, want whole sentences", code, part, text)
			}
			for _, elsewhere := range []string{"as above", "The same as ", "The same tables", "As for "} { // packcheck explain prints one alone
				if strings.Contains(text, elsewhere) {
					t.Errorf("%s: %q leans on another explanation", code, text)
				}
			}
			for _, r := range text {
				if r < ' ' || r > '~' {
					t.Errorf("%s: %q is not ASCII", code, text)
				}
			}
		}
	}
	if n := len(reckon.Explanations()); n != len(codes) {
		t.Errorf("%d explanations of %d findings", n, len(codes))
	}
	if _, ok := reckon.Explain("no-such-finding"); ok {
		t.Error("explains what does not exist")
	}
}

// Half a page, and nothing twice.
func TestExplanationsAreShortAndTheirOwn(t *testing.T) {
	const least, most = 150, 1400 // characters; own rule
	said := map[string]string{}
	for _, e := range reckon.Explanations() {
		if n := len(e.Means + e.Hurts + e.Limit + e.Do); n < least || n > most {
			t.Errorf("%s: %d characters, want %d to %d", e.Code, n, least, most)
		}
		for _, text := range []string{e.Means, e.Hurts} {
			if other, ok := said[text]; ok {
				t.Errorf("%s says what %s says: %q", e.Code, other, text)
			}
			said[text] = e.Code
		}
	}
}
