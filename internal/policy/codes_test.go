package policy_test

import (
	"go/ast"
	"go/parser"
	"go/token"
	"io/fs"
	"path/filepath"
	"strconv"
	"strings"
	"testing"

	"example.org/packcheck/internal/policy"
)

// everyFile parses every Go file of the module, tests included.
func everyFile(t *testing.T) (*token.FileSet, []*ast.File) {
	t.Helper()
	fset := token.NewFileSet()
	var files []*ast.File
	err := filepath.WalkDir(root, func(name string, entry fs.DirEntry, err error) error {
		switch {
		case err != nil:
			return err
		case entry.IsDir() && (entry.Name() == "testdata" || name != root && strings.HasPrefix(entry.Name(), ".")):
			return fs.SkipDir
		case entry.IsDir() || !strings.HasSuffix(name, ".go"):
			return nil
		}
		file, err := parser.ParseFile(fset, name, nil, 0)
		files = append(files, file)
		return err
	})
	if err != nil {
		t.Fatal(err)
	}
	return fset, files
}

// foreign returns the texts that are equal to a code and are not its constant.
func foreign(file *ast.File, codes map[string]*ast.BasicLit) []*ast.BasicLit {
	var out []*ast.BasicLit
	ast.Inspect(file, func(n ast.Node) bool {
		lit, is := n.(*ast.BasicLit)
		if !is || lit.Kind != token.STRING {
			return true
		}
		text, err := strconv.Unquote(lit.Value)
		if own := codes[text]; err == nil && own != nil && own != lit {
			out = append(out, lit)
		}
		return true
	})
	return out
}

// A misspelt constant does not compile; a misspelt text goes unnoticed.
func TestACodeIsWrittenOutOnlyWhereItIsDeclared(t *testing.T) {
	fset, files := everyFile(t)
	codes := map[string]*ast.BasicLit{}
	for _, file := range files {
		for text, lit := range policy.CodesIn(file) {
			if other := codes[text]; other != nil {
				t.Errorf("%s is declared twice: %s and %s", text, fset.Position(other.Pos()), fset.Position(lit.Pos()))
			}
			codes[text] = lit
		}
	}
	if len(codes) < 50 {
		t.Fatalf("only %d codes found: the test looks in the wrong place", len(codes))
	}
	for _, file := range files {
		for _, lit := range foreign(file, codes) {
			t.Errorf("%s: %s is the code of a finding; use its constant", fset.Position(lit.Pos()), lit.Value)
		}
	}
}

// The test above must be able to fail.
func TestACodeThatIsWrittenOutIsSeen(t *testing.T) {
	file, err := parser.ParseFile(token.NewFileSet(), "sample.go", `package sample
const CodeBent = "rim-bent"
var a, b, c = CodeBent, "rim-bent", "rim-round"
`, 0)
	if err != nil {
		t.Fatal(err)
	}
	codes := policy.CodesIn(file)
	if got := foreign(file, codes); len(codes) != 1 || len(got) != 1 {
		t.Errorf("codes %v, written out %v; want one of each", codes, got)
	}
}
