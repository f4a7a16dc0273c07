package report

import (
	"bytes"
	"encoding"
	"encoding/json"
	"fmt"
	"maps"
	"math"
	"reflect"
	"slices"
	"strconv"
	"strings"
)

// encoding/json refuses NaN and infinities, and a figure that did not come out
// must not cost the reader all the others: so the value is written here, with
// null in their place, by the rules of encoding/json for tags.

// jsonDigits are the digits of a number that count. They hide that processors
// round the last bits differently, and are far more than any figure deserves.
const jsonDigits = 9

// wholeJSON returns a value as JSON with a line end, indented or on one line.
func wholeJSON(v any, oneLine bool) ([]byte, error) {
	line, err := compactJSON(v)
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
func compactJSON(v any) ([]byte, error) {
	var out bytes.Buffer
	if err := writeJSON(&out, reflect.ValueOf(v)); err != nil {
		return nil, err
	}
	return out.Bytes(), nil
}

func writeJSON(out *bytes.Buffer, v reflect.Value) error {
	if !v.IsValid() {
		out.WriteString("null")
		return nil
	}
	if v.CanInterface() {
		if m, ok := v.Interface().(encoding.TextMarshaler); ok {
			text, err := m.MarshalText()
			if err != nil {
				return err
			}
			return writeString(out, string(text))
		}
	}
	switch v.Kind() {
	case reflect.Pointer, reflect.Interface:
		if v.IsNil() {
			out.WriteString("null")
			return nil
		}
		return writeJSON(out, v.Elem())
	case reflect.Struct:
		return writeStruct(out, v)
	case reflect.Slice, reflect.Array:
		return writeSeries(out, '[', ']', v.Len(), func(i int) error { return writeJSON(out, v.Index(i)) })
	case reflect.Map:
		return writeMap(out, v)
	case reflect.String:
		return writeString(out, v.String())
	case reflect.Float64, reflect.Float32:
		writeNumber(out, v.Float())
		return nil
	case reflect.Bool, reflect.Int, reflect.Int8, reflect.Int16, reflect.Int32, reflect.Int64,
		reflect.Uint, reflect.Uint8, reflect.Uint16, reflect.Uint32, reflect.Uint64:
		fmt.Fprint(out, v.Interface())
		return nil
	}
	return fmt.Errorf("no JSON for %s", v.Type())
}

// writeNumber writes a number, or null for what is none.
func writeNumber(out *bytes.Buffer, f float64) {
	switch {
	case math.IsNaN(f), math.IsInf(f, 0):
		out.WriteString("null")
		return
	case f == 0:
		f = 0 // drops the sign of a negative zero
	}
	rounded, err := strconv.ParseFloat(strconv.FormatFloat(f, 'g', jsonDigits, 64), 64)
	if err != nil { // the rounding went past the largest number
		rounded = f
	}
	if size := math.Abs(rounded); size != 0 && (size < leastPlain || size >= mostPlain) {
		text, err := json.Marshal(rounded)
		if err != nil {
			text = []byte("null")
		}
		out.Write(text)
		return
	}
	out.Write(strconv.AppendFloat(out.AvailableBuffer(), rounded, 'f', -1, 64))
}

// From and to where encoding/json writes a number without an exponent.
const leastPlain, mostPlain = 1e-6, 1e21

// standsAsItIs reports whether a text stands in JSON as it is.
func standsAsItIs(s string) bool {
	for i := range len(s) {
		switch c := s[i]; {
		case c < ' ', c > '~', c == '"', c == '\\', c == '<', c == '>', c == '&':
			return false
		}
	}
	return true
}

func writeString(out *bytes.Buffer, s string) error {
	if standsAsItIs(s) { // as nearly all are: encoding/json takes several times as long
		out.WriteByte('"')
		out.WriteString(s)
		out.WriteByte('"')
		return nil
	}
	text, err := json.Marshal(s)
	out.Write(text)
	return err
}

// writeStruct writes the exported fields under the names of their tags.
func writeStruct(out *bytes.Buffer, v reflect.Value) error {
	type member struct {
		name  string
		value reflect.Value
	}
	var members []member
	for i := range v.NumField() {
		field := v.Type().Field(i)
		name, options, _ := strings.Cut(field.Tag.Get("json"), ",")
		if !field.IsExported() || name == "-" {
			continue
		}
		if name == "" {
			name = field.Name
		}
		value := v.Field(i)
		if strings.Contains(options, "omitempty") && isEmpty(value) {
			continue
		}
		members = append(members, member{name, value})
	}
	return writeSeries(out, '{', '}', len(members), func(i int) error {
		if err := writeString(out, members[i].name); err != nil {
			return err
		}
		out.WriteByte(':')
		return writeJSON(out, members[i].value)
	})
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

// writeMap writes a map with its keys in order.
func writeMap(out *bytes.Buffer, v reflect.Value) error {
	if v.Type().Key().Kind() != reflect.String {
		return fmt.Errorf("no JSON for %s", v.Type())
	}
	values := make(map[string]reflect.Value, v.Len())
	for _, k := range v.MapKeys() {
		values[k.String()] = v.MapIndex(k)
	}
	keys := slices.Sorted(maps.Keys(values))
	return writeSeries(out, '{', '}', len(keys), func(i int) error {
		if err := writeString(out, keys[i]); err != nil {
			return err
		}
		out.WriteByte(':')
		return writeJSON(out, values[keys[i]])
	})
}

// writeSeries writes n pieces with commas between them.
func writeSeries(out *bytes.Buffer, open, end byte, n int, piece func(i int) error) error {
	out.WriteByte(open)
	for i := range n {
		if i > 0 {
			out.WriteByte(',')
		}
		if err := piece(i); err != nil {
			return err
		}
	}
	out.WriteByte(end)
	return nil
}
