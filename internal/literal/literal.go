// Package literal writes a value as Go source: plain data that the compiler lays
// out once and that a program need not make at its start. It reads unexported
// fields too, so that data may be kept as a package likes.
package literal

import (
	"fmt"
	"math"
	"path"
	"reflect"
	"strconv"
	"strings"
)

// widest is how long a line may be before it is broken where that is possible.
const widest = 110

// Value returns v as a literal for a file of the package with this import path:
// structs, slices, texts, truth and finite numbers. Fields with their zero value are
// left out. Anything else is an error, such as a map, a pointer or an infinite number:
// a program would have to make it at its start.
func Value(v any, packagePath string) (string, error) {
	w := writer{packagePath: packagePath}
	text := w.value(reflect.ValueOf(v), true, 0)
	return text, w.err
}

type writer struct {
	packagePath string
	err         error
}

// value writes one value at a depth of indentation; typed says whether its type
// has to be written, which inside of a slice it has not.
func (w *writer) value(v reflect.Value, typed bool, depth int) string {
	switch v.Kind() {
	case reflect.String:
		return strconv.Quote(v.String())
	case reflect.Bool:
		return strconv.FormatBool(v.Bool())
	case reflect.Int, reflect.Int8, reflect.Int16, reflect.Int32, reflect.Int64:
		return strconv.FormatInt(v.Int(), 10)
	case reflect.Float64:
		return w.float(v.Float())
	case reflect.Struct:
		return w.fields(v, typed, depth)
	case reflect.Slice:
		return w.list(v, typed, depth)
	}
	w.fail(fmt.Errorf("literal: cannot write a %s", v.Type()))
	return ""
}

func (w *writer) fail(err error) {
	if w.err == nil {
		w.err = err
	}
}

// float writes the shortest text that reads back as the same number.
func (w *writer) float(x float64) string {
	if math.IsNaN(x) || math.IsInf(x, 0) {
		w.fail(fmt.Errorf("literal: the figure %g is no finite number", x))
	}
	return strconv.FormatFloat(x, 'g', -1, 64)
}

// fields writes a struct: in one line where that fits and nothing in it takes
// more, else one field a line.
func (w *writer) fields(v reflect.Value, typed bool, depth int) string {
	var parts []string
	for i := range v.NumField() {
		if f := v.Field(i); !f.IsZero() {
			parts = append(parts, v.Type().Field(i).Name+": "+w.value(f, true, depth+1))
		}
	}
	return w.braces(v, typed, depth, parts, 1)
}

// list writes a slice: numbers and short texts side by side, anything else one a
// line.
func (w *writer) list(v reflect.Value, typed bool, depth int) string {
	parts := make([]string, v.Len())
	for i := range parts {
		parts[i] = w.value(v.Index(i), false, depth+1)
	}
	inLine := len(parts)
	if k := v.Type().Elem().Kind(); k == reflect.Struct && v.Type().Elem().NumField() > 2 || k == reflect.Slice {
		inLine = 1
	}
	return w.braces(v, typed, depth, parts, inLine)
}

// braces puts the parts of a value together, as many a line as fit and at most
// inLine of them where they do not all fit one.
func (w *writer) braces(v reflect.Value, typed bool, depth int, parts []string, inLine int) string {
	name := ""
	if typed {
		name = w.typeName(v.Type())
	}
	whole := name + "{" + strings.Join(parts, ", ") + "}"
	if 4*depth+len(whole) <= widest && !strings.Contains(whole, "\n") {
		return whole
	}
	indent := strings.Repeat("\t", depth+1)
	var b strings.Builder
	b.WriteString(name + "{\n" + indent)
	column, inThis := 4*(depth+1), 0
	for i, part := range parts {
		switch {
		case i == 0:
		case inThis < inLine && column+len(part)+2 <= widest:
			b.WriteString(" ")
		default:
			b.WriteString("\n" + indent)
			column, inThis = 4*(depth+1), 0
		}
		b.WriteString(part + ",")
		column, inThis = column+len(part)+2, inThis+1
	}
	b.WriteString("\n" + strings.Repeat("\t", depth) + "}")
	return b.String()
}

// typeName is how a type is written in the package.
func (w *writer) typeName(t reflect.Type) string {
	if t.Name() == "" && t.Kind() == reflect.Slice {
		return "[]" + w.typeName(t.Elem())
	}
	name, argument, generic := strings.Cut(t.Name(), "[")
	name = w.qualified(t.PkgPath(), name)
	if generic { // one argument is all that is needed; it comes with its whole import path
		argument = strings.TrimSuffix(argument, "]")
		dot := strings.LastIndexByte(argument, '.')
		name += "[" + w.qualified(argument[:max(dot, 0)], argument[dot+1:]) + "]"
	}
	return name
}

// qualified puts the package before a name of another package.
func (w *writer) qualified(packagePath, name string) string {
	if packagePath == "" || packagePath == w.packagePath {
		return name
	}
	return path.Base(packagePath) + "." + name
}
