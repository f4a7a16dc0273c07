// Package policy reads the sources of this module, types and all, for the rules
// that no compiler checks and for the tables in the documents that are made of
// the code. Nothing of the program uses it.
package policy

import (
	"bytes"
	"fmt"
	"go/ast"
	"go/importer"
	"go/parser"
	"go/token"
	"go/types"
	"io"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strings"
)

// ModulePath is the path of this module in import statements.
const ModulePath = "example.org/packcheck"

// Package is one package of the module, tests left out, with its types.
type Package struct {
	Path  string // as others import it
	Dir   string // below the root; "." for the root itself
	Fset  *token.FileSet
	Files []*ast.File // sorted by name
	Types *types.Package
	Info  *types.Info
}

// listed is what the go command says of a package.
type listed struct{ path, dir, export, files string }

// Load type-checks every package of the module below root. It asks the go command
// for the compiled packages that they import, which builds what is not built yet.
func Load(root string) ([]Package, error) {
	all, err := list(root)
	if err != nil {
		return nil, err
	}
	exports := map[string]string{}
	for _, l := range all {
		exports[l.path] = l.export
	}
	fset := token.NewFileSet()
	compiled := importer.ForCompiler(fset, "gc", func(path string) (io.ReadCloser, error) { return os.Open(exports[path]) })
	base, err := filepath.Abs(root)
	if err != nil {
		return nil, err
	}
	var out []Package
	for _, l := range all {
		if l.path != ModulePath && !strings.HasPrefix(l.path, ModulePath+"/") || l.files == "" {
			continue
		}
		dir, err := filepath.Rel(base, l.dir)
		if err != nil {
			return nil, err
		}
		p := Package{Path: l.path, Dir: filepath.ToSlash(dir), Fset: fset}
		names := strings.Fields(l.files)
		slices.Sort(names)
		for _, name := range names {
			file, err := parser.ParseFile(fset, filepath.Join(l.dir, name), nil, parser.ParseComments)
			if err != nil {
				return nil, err
			}
			p.Files = append(p.Files, file)
		}
		p.Info = &types.Info{
			Types: map[ast.Expr]types.TypeAndValue{}, Defs: map[*ast.Ident]types.Object{}, Uses: map[*ast.Ident]types.Object{},
			Selections: map[*ast.SelectorExpr]*types.Selection{},
		}
		check := types.Config{Importer: compiled}
		if p.Types, err = check.Check(l.path, fset, p.Files, p.Info); err != nil {
			return nil, err
		}
		out = append(out, p)
	}
	slices.SortFunc(out, func(a, b Package) int { return strings.Compare(a.Dir, b.Dir) })
	return out, nil
}

// list asks the go command for the packages of the module and all that they
// import.
func list(root string) ([]listed, error) {
	cmd := exec.Command("go", "list", "-export", "-deps", "-f", "{{.ImportPath}}\t{{.Dir}}\t{{.Export}}\t{{join .GoFiles \" \"}}", "./...")
	cmd.Dir = root
	var complaints bytes.Buffer
	cmd.Stderr = &complaints
	text, err := cmd.Output()
	if err != nil {
		return nil, fmt.Errorf("policy: go list below %s: %w: %s", root, err, complaints.String())
	}
	var out []listed
	for line := range strings.Lines(string(text)) {
		f := strings.Split(strings.TrimSuffix(line, "\n"), "\t")
		if len(f) != 4 {
			return nil, fmt.Errorf("policy: go list said %q (want path, folder, compiled package and files)", line)
		}
		out = append(out, listed{f[0], f[1], f[2], f[3]})
	}
	return out, nil
}

// IsFinding reports whether t is answer.Finding or points to one.
func IsFinding(t types.Type) bool {
	if t == nil {
		return false
	}
	if p, is := t.Underlying().(*types.Pointer); is {
		t = p.Elem()
	}
	n, is := types.Unalias(t).(*types.Named)
	return is && n.Obj().Name() == "Finding" && n.Obj().Pkg() != nil && n.Obj().Pkg().Path() == ModulePath+"/answer"
}
