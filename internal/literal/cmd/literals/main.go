// Command literals writes the built-in tables and chemistries as Go source, made
// of their TOML files: go generate calls it, go generate ./tables ./chemistry
// renews both. It is built with the tag generating, which leaves the old data out.
//
//	go run -tags generating ./internal/literal/cmd/literals tables data builtin_data.go
package main

import (
	"bytes"
	"fmt"
	"go/format"
	"io/fs"
	"os"
	"path"
	"strings"

	"example.org/packcheck/chemistry"
	"example.org/packcheck/internal/literal"
	"example.org/packcheck/tables"
)

// module is where the packages are imported from.
const module = "example.org/packcheck"

func main() {
	if len(os.Args) != 4 {
		fail(fmt.Errorf("want the package (tables or chemistry), the folder of its TOML files and the file to write"))
	}
	text, err := source(os.Args[1], os.DirFS(os.Args[2]))
	if err == nil {
		err = os.WriteFile(os.Args[3], text, 0o644)
	}
	if err != nil {
		fail(err)
	}
}

func fail(err error) {
	fmt.Fprintf(os.Stderr, "literals: %v\n", err)
	os.Exit(1)
}

// source is the file of a package.
func source(name string, folder fs.FS) ([]byte, error) {
	var value any
	var err error
	switch name {
	case "tables":
		value, err = loaded(tables.Load(folder))
	case "chemistry":
		value, err = loaded(chemistry.Load(folder))
	default:
		err = fmt.Errorf("no package %q (want tables or chemistry)", name)
	}
	if err != nil {
		return nil, err
	}
	text, err := literal.Value(value, path.Join(module, name))
	if err != nil {
		return nil, err
	}
	var b bytes.Buffer
	fmt.Fprintf(&b, "// Code generated from data/*.toml by go generate; DO NOT EDIT.\n\n//go:build !generating\n\npackage %s\n\nimport (\n", name)
	for _, other := range []string{"answer", "internal/rows"} {
		if strings.Contains(text, path.Base(other)+".") {
			fmt.Fprintf(&b, "\t%q\n", path.Join(module, other))
		}
	}
	fmt.Fprintf(&b, ")\n\nvar builtin = %s\n", text)
	return format.Source(b.Bytes())
}

// loaded is what a pointer to a loaded set points to.
func loaded[V any](v *V, err error) (V, error) {
	if err != nil {
		var none V
		return none, err
	}
	return *v, nil
}
