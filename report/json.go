package report

import (
	"bytes"
	"encoding"
	"encoding/json"
	"fmt"
	"math"
	"reflect"
	"slices"
	"strconv"
	"strings"
	"sync"

	"example.org/packcheck/internal/later"
)

// encoding/json refuses NaN and infinities, and a figure that did not come out
// must not cost the reader all the others: so the value is written here, with
// null in their place, by the rules of encoding/json for tags.

// jsonDigits are the digits of a number that count. They hide that processors
// round the last bits differently, and are far more than any figure deserves.
const jsonDigits = 9

// leastJSON is the smallest number that is one: in the units of an answer nothing that
// counts is smaller (a rotor has 1e-8 kg m2 at the least), and a ride that ends in its first
// step, of a billionth of a second, is 0 minutes.
const leastJSON = 1e-8

// usualJSON is what nearly all answers have room in, in bytes: they take 60 to 80 KB.
const usualJSON = 96 << 10

// wholeJSON returns a value as JSON with a line end, indented or on one line.
func wholeJSON(v any, oneLine bool) ([]byte, error) {
	line, err := appendJSON(make([]byte, 0, usualJSON), reflect.ValueOf(v))
	if err != nil {
		return nil, fmt.Errorf("report: %w", err)
	}
	line = append(line, '\n')
	if oneLine {
		return line, nil
	}
	var out bytes.Buffer
	if err := json.Indent(&out, line, "", "  "); err != nil {
		return nil, fmt.Errorf("report: %w", err)
	}
	return out.Bytes(), nil
}

// compactJSON returns a value as JSON on one line.
func compactJSON(v any) ([]byte, error) { return appendJSON(nil, reflect.ValueOf(v)) }

func appendJSON(out []byte, v reflect.Value) ([]byte, error) {
	if !v.IsValid() {
		return append(out, "null"...), nil
	}
	if t := v.Type(); t.NumMethod() > 0 && t.Implements(reflect.TypeFor[encoding.TextMarshaler]()) { // most have no method at all
		text, err := v.Interface().(encoding.TextMarshaler).MarshalText()
		if err != nil {
			return nil, err
		}
		return appendString(out, string(text))
	}
	switch v.Kind() {
	case reflect.Pointer, reflect.Interface:
		if v.IsNil() {
			return append(out, "null"...), nil
		}
		return appendJSON(out, v.Elem())
	case reflect.Struct:
		return appendStruct(out, v)
	case reflect.Slice, reflect.Array:
		return appendSeries(out, v)
	case reflect.Map:
		return appendMap(out, v)
	case reflect.String:
		return appendString(out, v.String())
	case reflect.Float64, reflect.Float32:
		return appendNumber(out, v.Float()), nil
	case reflect.Bool:
		return strconv.AppendBool(out, v.Bool()), nil
	case reflect.Int, reflect.Int8, reflect.Int16, reflect.Int32, reflect.Int64:
		return strconv.AppendInt(out, v.Int(), 10), nil
	case reflect.Uint, reflect.Uint8, reflect.Uint16, reflect.Uint32, reflect.Uint64:
		return strconv.AppendUint(out, v.Uint(), 10), nil
	}
	return nil, fmt.Errorf("no JSON for %s", v.Type())
}

// appendNumber writes a number, or null for what is none.
func appendNumber(out []byte, f float64) []byte {
	switch {
	case math.IsNaN(f), math.IsInf(f, 0):
		return append(out, "null"...)
	case math.Abs(f) < leastJSON:
		f = 0 // and drops the sign of a negative zero
	}
	before := len(out)
	out = strconv.AppendFloat(out, f, 'g', jsonDigits, 64)
	if bytes.IndexByte(out[before:], 'e') < 0 { // so few digits are the shortest for what they round to
		return out
	}
	rounded, err := strconv.ParseFloat(string(out[before:]), 64)
	if err != nil { // the rounding went past the largest number
		rounded = f
	}
	if size := math.Abs(rounded); size >= leastPlain && size < mostPlain {
		return strconv.AppendFloat(out[:before], rounded, 'f', -1, 64)
	}
	text, err := json.Marshal(rounded)
	if err != nil {
		text = []byte("null")
	}
	return append(out[:before], text...)
}

// From and to where encoding/json writes a number without an exponent.
const leastPlain, mostPlain = 1e-6, 1e21

// plainSigns are the bytes that stand in JSON as they are.
var plainSigns = later.Value[*[256]bool]{Make: func() *[256]bool {
	var plain [256]bool
	for c := ' '; c <= '~'; c++ {
		plain[c] = !strings.ContainsRune(`"\<>&`, c)
	}
	return &plain
}}

// standsAsItIs reports whether a text stands in JSON as it is.
func standsAsItIs(s string) bool {
	plain := plainSigns.Get()
	for i := range len(s) {
		if !plain[s[i]] {
			return false
		}
	}
	return true
}

func appendString(out []byte, s string) ([]byte, error) {
	if standsAsItIs(s) { // as nearly all are: encoding/json takes several times as long
		out = append(out, '"')
		out = append(out, s...)
		return append(out, '"'), nil
	}
	text, err := json.Marshal(s)
	return append(out, text...), err
}

// member is an exported field of a struct.
type member struct {
	index     int
	name      string // of its tag, in quotes and with a colon
	omitEmpty bool
}

// members are those of each type of struct that was written, a []member by its
// [reflect.Type]: tags take longer to read than values to write.
var members sync.Map

func membersOf(t reflect.Type) []member {
	if known, ok := members.Load(t); ok {
		return known.([]member)
	}
	var list []member
	for i := range t.NumField() {
		field := t.Field(i)
		name, options, _ := strings.Cut(field.Tag.Get("json"), ",")
		if !field.IsExported() || name == "-" {
			continue
		}
		if name == "" {
			name = field.Name
		}
		list = append(list, member{i, strconv.Quote(name) + ":", strings.Contains(options, "omitempty")})
	}
	members.Store(t, list)
	return list
}

// appendStruct writes the exported fields under the names of their tags.
func appendStruct(out []byte, v reflect.Value) ([]byte, error) {
	out = append(out, '{')
	first := true
	for _, m := range membersOf(v.Type()) {
		value := v.Field(m.index)
		if m.omitEmpty && isEmpty(value) {
			continue
		}
		if !first {
			out = append(out, ',')
		}
		first = false
		var err error
		if out, err = appendJSON(append(out, m.name...), value); err != nil {
			return nil, err
		}
	}
	return append(out, '}'), nil
}

// isEmpty is what encoding/json leaves out under "omitempty".
func isEmpty(v reflect.Value) bool {
	switch v.Kind() {
	case reflect.Slice, reflect.Map, reflect.Array, reflect.String:
		return v.Len() == 0
	case reflect.Struct:
		return false
	}
	return v.IsZero()
}

// appendMap writes a map with its keys in order.
func appendMap(out []byte, v reflect.Value) ([]byte, error) {
	if v.Type().Key().Kind() != reflect.String {
		return nil, fmt.Errorf("no JSON for %s", v.Type())
	}
	keys := v.MapKeys()
	slices.SortFunc(keys, func(a, b reflect.Value) int { return strings.Compare(a.String(), b.String()) })
	out = append(out, '{')
	for i, key := range keys {
		if i > 0 {
			out = append(out, ',')
		}
		var err error
		if out, err = appendString(out, key.String()); err != nil {
			return nil, err
		}
		if out, err = appendJSON(append(out, ':'), v.MapIndex(key)); err != nil {
			return nil, err
		}
	}
	return append(out, '}'), nil
}

// appendSeries writes a list.
func appendSeries(out []byte, v reflect.Value) ([]byte, error) {
	out = append(out, '[')
	for i := range v.Len() {
		if i > 0 {
			out = append(out, ',')
		}
		var err error
		if out, err = appendJSON(out, v.Index(i)); err != nil {
			return nil, err
		}
	}
	return append(out, ']'), nil
}
