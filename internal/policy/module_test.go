// Package policy_test holds the rules of this module that no compiler checks:
// which package may import which, where input and output may happen, and that
// the documentation is whole.
package policy_test

import (
	"go/ast"
	"go/parser"
	"go/token"
	"io/fs"
	"path"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"example.org/packcheck/internal/policy"
)

// root is the folder of the module, seen from this package.
const root = "../.."

// source is one package of the module: its folder below the root ("." for the
// root itself) and its files, tests left out.
type source struct {
	dir   string
	fset  *token.FileSet
	files map[string]*ast.File // by path below the root
}

// importPath returns how others import the package.
func (s source) importPath() string { return path.Join(policy.ModulePath, s.dir) }

// names returns the paths of the files in order.
func (s source) names() []string {
	var names []string
	for n := range s.files {
		names = append(names, n)
	}
	slices.Sort(names)
	return names
}

// packages parses every package of the module.
func packages(t *testing.T) []source {
	t.Helper()
	found := map[string]source{}
	err := filepath.WalkDir(root, func(name string, entry fs.DirEntry, err error) error {
		switch {
		case err != nil:
			return err
		case entry.IsDir() && (entry.Name() == "testdata" || name != root && strings.HasPrefix(entry.Name(), ".")):
			return fs.SkipDir
		case entry.IsDir() || !strings.HasSuffix(name, ".go") || strings.HasSuffix(name, "_test.go"):
			return nil
		}
		rel, err := filepath.Rel(root, name)
		if err != nil {
			return err
		}
		rel = filepath.ToSlash(rel)
		s, ok := found[path.Dir(rel)]
		if !ok {
			s = source{dir: path.Dir(rel), fset: token.NewFileSet(), files: map[string]*ast.File{}}
			found[path.Dir(rel)] = s
		}
		file, err := parser.ParseFile(s.fset, name, nil, parser.ParseComments)
		if err != nil {
			return err
		}
		s.files[rel] = file
		return nil
	})
	if err != nil {
		t.Fatal(err)
	}
	if len(found) < 5 {
		t.Fatalf("only %d packages found below %s: the test looks in the wrong place", len(found), root)
	}
	var all []source
	for _, s := range found {
		all = append(all, s)
	}
	slices.SortFunc(all, func(a, b source) int { return strings.Compare(a.dir, b.dir) })
	return all
}
