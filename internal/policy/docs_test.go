package policy_test

import (
	"go/ast"
	"go/doc"
	"go/doc/comment"
	"go/parser"
	"go/token"
	"path"
	"regexp"
	"strings"
	"testing"

	"example.org/packcheck/internal/policy"
)

func TestEveryPackageHasExactlyOnePackageComment(t *testing.T) {
	for _, s := range packages(t) {
		var with []string
		for _, name := range s.names() {
			if s.files[name].Doc != nil {
				with = append(with, name)
			}
		}
		if len(with) != 1 {
			t.Errorf("%s: %d package comments (%s), want one", s.dir, len(with), strings.Join(with, ", "))
		}
	}
}

// linkLike matches what was meant as a link to a Go name, or looks like it; the
// first group is the package's name.
var linkLike = regexp.MustCompile(`\[\*?(?:([a-z]\w*)\.)?[A-Z]\w*(?:\.[A-Z]\w*)?\]`)

func TestDocLinksLeadSomewhere(t *testing.T) {
	symbols := map[string]map[string]bool{} // import path to its names
	docs := map[string]*doc.Package{}
	for _, s := range packages(t) {
		var files []*ast.File
		for _, name := range s.names() {
			files = append(files, s.files[name])
		}
		p, err := doc.NewFromFiles(s.fset, files, s.importPath(), doc.AllDecls)
		if err != nil {
			t.Fatal(err)
		}
		symbols[s.importPath()] = names(p)
		p.Filter(ast.IsExported) // readers see no other comments
		docs[s.dir] = p
	}
	links := 0
	for dir, p := range docs {
		for where, text := range texts(p) {
			for _, link := range brokenLinks(p, text, symbols, &links) {
				t.Errorf("%s: the comment of %s links to nothing: %s", dir, where, link)
			}
		}
	}
	if links == 0 {
		t.Error("no link was seen at all: the test looks in the wrong place")
	}
}

// The test above must be able to fail: it is shown one link of each fault.
func TestBrokenDocLinksAreSeen(t *testing.T) {
	symbols := map[string]map[string]bool{
		policy.ModulePath + "/tables":  {"Builtin": true},
		policy.ModulePath + "/battery": {"Model": true},
		policy.ModulePath + "/report":  {"Write": true},
	}
	fset := token.NewFileSet()
	file, err := parser.ParseFile(fset, "report.go", `// Package report is a sample.
package report

import "`+policy.ModulePath+`/tables"
`, parser.ParseComments)
	if err != nil {
		t.Fatal(err)
	}
	p, err := doc.NewFromFiles(fset, []*ast.File{file}, policy.ModulePath+"/report")
	if err != nil {
		t.Fatal(err)
	}
	for text, want := range map[string]int{
		"See [tables.Builtin] and [Write].": 0,
		"See [tables.Gone].":                1,
		"See [Missing].":                    1,
		"Not imported: [battery.Model].":    1,
		"In a list:\n  - [Missing]":         1,
		"The table [original].":             0,
		"The table [source.ID].":            0,
	} {
		seen := 0
		if got := brokenLinks(p, text, symbols, &seen); len(got) != want {
			t.Errorf("%q: %d broken links %v, want %d", text, len(got), got, want)
		}
	}
}

// packageNamed reports whether the module has a package of that name.
func packageNamed(name string, symbols map[string]map[string]bool) bool {
	for imported := range symbols {
		if path.Base(imported) == name {
			return true
		}
	}
	return false
}

// names lists the package-level names and the methods and fields of types.
func names(p *doc.Package) map[string]bool {
	all := map[string]bool{}
	values := func(list []*doc.Value) {
		for _, v := range list {
			for _, n := range v.Names {
				all[n] = true
			}
		}
	}
	funcs := func(list []*doc.Func, prefix string) {
		for _, f := range list {
			all[prefix+f.Name] = true
		}
	}
	values(p.Consts)
	values(p.Vars)
	funcs(p.Funcs, "")
	for _, typ := range p.Types {
		all[typ.Name] = true
		values(typ.Consts)
		values(typ.Vars)
		funcs(typ.Funcs, "")
		funcs(typ.Methods, typ.Name+".")
		for _, spec := range typ.Decl.Specs {
			fields(spec, typ.Name, all)
		}
	}
	return all
}

// fields adds the fields of a struct and the methods of an interface.
func fields(spec ast.Spec, owner string, all map[string]bool) {
	ts, ok := spec.(*ast.TypeSpec)
	if !ok {
		return
	}
	var list *ast.FieldList
	switch typ := ts.Type.(type) {
	case *ast.StructType:
		list = typ.Fields
	case *ast.InterfaceType:
		list = typ.Methods
	default:
		return
	}
	for _, field := range list.List {
		for _, n := range field.Names {
			all[owner+"."+n.Name] = true
		}
	}
}

// texts lists every documentation comment of a package by what it documents.
func texts(p *doc.Package) map[string]string {
	all := map[string]string{"the package": p.Doc}
	values := func(list []*doc.Value) {
		for _, v := range list {
			all[strings.Join(v.Names, ", ")] = v.Doc
		}
	}
	funcs := func(list []*doc.Func, prefix string) {
		for _, f := range list {
			all[prefix+f.Name] = f.Doc
		}
	}
	values(p.Consts)
	values(p.Vars)
	funcs(p.Funcs, "")
	for _, typ := range p.Types {
		all[typ.Name] = typ.Doc
		values(typ.Consts)
		values(typ.Vars)
		funcs(typ.Funcs, "")
		funcs(typ.Methods, typ.Name+".")
	}
	return all
}

// brokenLinks returns the links of a comment that lead nowhere. The parser
// leaves an unknown name as plain text; a name of another package it takes on
// trust as long as that package is imported, so that one is looked up.
func brokenLinks(p *doc.Package, text string, symbols map[string]map[string]bool, seen *int) []string {
	var broken []string
	own := symbols[p.ImportPath]
	reader := p.Parser()
	reader.LookupSym = func(recv, name string) bool {
		if recv != "" {
			name = recv + "." + name
		}
		return own[name]
	}
	var walkText func(list []comment.Text)
	walkText = func(list []comment.Text) {
		for _, piece := range list {
			switch piece := piece.(type) {
			case comment.Plain:
				for _, m := range linkLike.FindAllStringSubmatch(string(piece), -1) {
					if m[1] == "" || packageNamed(m[1], symbols) { // not a setup table such as [source.ID]
						broken = append(broken, m[0])
					}
				}
			case *comment.DocLink:
				*seen++
				name := piece.Name
				if piece.Recv != "" {
					name = piece.Recv + "." + name
				}
				known, ours := symbols[piece.ImportPath]
				if ours && name != "" && !known[name] {
					broken = append(broken, piece.ImportPath+"."+name)
				}
			case *comment.Link:
				walkText(piece.Text)
			}
		}
	}
	var walk func(list []comment.Block)
	walk = func(list []comment.Block) {
		for _, block := range list {
			switch block := block.(type) {
			case *comment.Paragraph:
				walkText(block.Text)
			case *comment.Heading:
				walkText(block.Text)
			case *comment.List:
				for _, item := range block.Items {
					walk(item.Content)
				}
			}
		}
	}
	walk(reader.Parse(text).Content)
	return broken
}
