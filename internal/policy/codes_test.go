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

// foreign returns the texts that are a code, or a list of codes, and not the
// constant of one; and what is looked for in parts of a code.
func foreign(file *ast.File, codes map[string]*ast.BasicLit) []*ast.BasicLit {
	var out []*ast.BasicLit
	ast.Inspect(file, func(n ast.Node) bool {
		switch n := n.(type) {
		case *ast.BasicLit:
			text, err := strconv.Unquote(n.Value)
			if n.Kind != token.STRING || err != nil || strings.Trim(text, "abcdefghijklmnopqrstuvwxyz0123456789-,|") != "" {
				return true
			}
			for code := range strings.FieldsFuncSeq(text, func(r rune) bool { return r == ',' || r == '|' }) {
				if own := codes[code]; own != nil && own != n {
					out = append(out, n)
					break
				}
			}
		case *ast.CallExpr:
			f, is := n.Fun.(*ast.SelectorExpr)
			if !is || len(n.Args) != 2 {
				return true
			}
			of, pkg := f.X.(*ast.Ident)
			field, sel := n.Args[0].(*ast.SelectorExpr)
			part, lit := n.Args[1].(*ast.BasicLit)
			if pkg && sel && lit && of.Name == "strings" && f.Sel.Name != "Trim" && field.Sel.Name == "Code" {
				out = append(out, part)
			}
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
			t.Errorf("%s: %s is a code of findings, or a part of one; use the constants", fset.Position(lit.Pos()), lit.Value)
		}
	}
}

// The test above must be able to fail.
func TestACodeThatIsWrittenOutIsSeen(t *testing.T) {
	file, err := parser.ParseFile(token.NewFileSet(), "sample.go", `package sample
const CodeBent = "rim-bent"
var a, b, c, d = CodeBent, "rim-bent", "rim-round", "rim-round|rim-bent"
var e = strings.HasPrefix(f.Code, "rim")
`, 0)
	if err != nil {
		t.Fatal(err)
	}
	codes := policy.CodesIn(file)
	if got := foreign(file, codes); len(codes) != 1 || len(got) != 3 {
		t.Errorf("codes %v, written out %v; want one code, three times", codes, got)
	}
}
