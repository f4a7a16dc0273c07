package setup

import (
	"maps"
	"reflect"
	"slices"
	"strconv"
	"strings"

	"example.org/packcheck/internal/quantity"
)

// Of makes a setup of keys and what would stand behind them in a file, without
// quotes: {"pack.label": "20 V max 5 Ah", "vehicle.has_board": "true"}. The same
// registry checks it with the same faults as a file, all at once.
func Of(values map[string]string) (*Setup, error) {
	d := decoder{}
	s := &Setup{}
	for _, path := range slices.Sorted(maps.Keys(values)) {
		d.entry(s, path, values[path])
	}
	check(&d, s)
	if s.Original != nil {
		check(&d, s.Original)
	}
	if err := d.faults.orNil(); err != nil {
		return nil, err
	}
	return s, nil
}

// With returns the setup with some keys set anew; an empty text takes a key out.
// Files that it names are looked for where the setup itself stood.
func (s *Setup) With(values map[string]string) (*Setup, error) {
	all := s.Values()
	for key, text := range values {
		if text == "" {
			delete(all, key)
			continue
		}
		all[key] = text
	}
	out, err := Of(all)
	if err != nil {
		return nil, err
	}
	out.Name, out.Dir = s.Name, s.Dir
	return out, nil
}

// Values returns every key that the setup gives with its text, as [Of] takes
// them.
func (s *Setup) Values() map[string]string {
	out := map[string]string{}
	for prefix, in := range map[string]*Setup{"": s, originalPrefix: s.Original} {
		if in == nil {
			continue
		}
		all := reflect.ValueOf(in).Elem()
		for _, f := range registry().fields {
			if text, given := written(all.FieldByIndex(f.index).Interface()); given {
				out[prefix+f.Path()] = text
			}
		}
	}
	return out
}

// originalPrefix begins the keys of the original vehicle.
const originalPrefix = "original."

// written is the text of a key, and whether it was given.
func written(v any) (string, bool) {
	switch v := v.(type) {
	case Value:
		return v.Text, v.Given
	case Word:
		return v.Text, v.Given
	case Flag:
		return strconv.FormatBool(v.Yes), v.Given
	case Date:
		return v.Text, v.Given
	}
	return "", false
}

// entry reads one key that comes with its full path.
func (d *decoder) entry(s *Setup, path, text string) {
	p, rest := part{setup: s}, path
	if inner, is := strings.CutPrefix(path, originalPrefix); is {
		if s.Original == nil {
			s.Original = &Setup{Place: Place{Given: true}}
		}
		p, rest = part{setup: s.Original, prefix: originalPrefix}, inner
	}
	name := rest
	if i := strings.LastIndexByte(rest, '.'); i >= 0 {
		p.name, name = rest[:i], rest[i+1:]
	}
	r := registry()
	f := r.field(p.name, name)
	switch t := r.table(p.name); {
	case f == nil && p.name != "" && t == nil:
		d.fault(0, path, p.name, wantTable(part{setup: p.setup, prefix: p.prefix}, p.name))
		return
	case f == nil:
		d.fault(0, path, name, wantKey(p, name))
		return
	case t != nil && t.place != nil:
		reflect.ValueOf(p.setup).Elem().FieldByIndex(t.place).Set(reflect.ValueOf(Place{Given: true}))
	}
	var value any = text
	switch {
	case f.What == "yes or no":
		if yes, ok := yesOrNo(text); ok {
			value = yes
		}
	case f.Kind == quantity.Count:
		if n, err := strconv.ParseInt(strings.TrimSpace(text), 10, 64); err == nil {
			value = n
		}
	}
	d.key(p, f, value, 0)
}

// yesOrNo reads how people say it.
func yesOrNo(text string) (yes, ok bool) {
	switch fold(text) {
	case "true", "yes", "y":
		return true, true
	case "false", "no", "n":
		return false, true
	}
	return false, false
}
