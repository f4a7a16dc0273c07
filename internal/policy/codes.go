package policy

import (
	"go/ast"
	"go/parser"
	"go/token"
	"os"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
)

// Codes returns the codes of all findings that the package in a folder can make,
// sorted: the texts of its constants whose names begin with Code, tests left out.
func Codes(dir string) ([]string, error) {
	entries, err := os.ReadDir(dir)
	if err != nil {
		return nil, err
	}
	var out []string
	for _, entry := range entries {
		name := entry.Name()
		if !strings.HasSuffix(name, ".go") || strings.HasSuffix(name, "_test.go") {
			continue
		}
		file, err := parser.ParseFile(token.NewFileSet(), filepath.Join(dir, name), nil, parser.SkipObjectResolution)
		if err != nil {
			return nil, err
		}
		for text := range CodesIn(file) {
			out = append(out, text)
		}
	}
	slices.Sort(out)
	return out, nil
}

// CodesIn returns where a file declares codes of findings, by their text.
func CodesIn(file *ast.File) map[string]*ast.BasicLit {
	all := map[string]*ast.BasicLit{}
	for _, d := range file.Decls {
		gen, is := d.(*ast.GenDecl)
		if !is || gen.Tok != token.CONST {
			continue
		}
		for _, spec := range gen.Specs {
			v := spec.(*ast.ValueSpec)
			for i, name := range v.Names {
				if !strings.HasPrefix(name.Name, "Code") || i >= len(v.Values) {
					continue
				}
				if lit, is := v.Values[i].(*ast.BasicLit); is && lit.Kind == token.STRING {
					if text, err := strconv.Unquote(lit.Value); err == nil {
						all[text] = lit
					}
				}
			}
		}
	}
	return all
}
