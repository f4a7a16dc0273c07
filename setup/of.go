package setup

import (
	"fmt"
	"maps"
	"reflect"
	"slices"
	"strconv"
	"strings"
	"time"

	"example.org/packcheck/internal/quantity"
)

// NothingTold stands behind the name of a table that is there and says nothing,
// as it does in TOML: {"original.controller": "{}"} is an original with some
// controller of its own.
const NothingTold = "{}"

// Of makes a setup of keys and what would stand behind them in a file, without
// quotes: {"pack.label": "20 V max 5 Ah", "vehicle.has_board": "true"}. The same
// registry checks it with the same faults as a file, all at once. A table without
// a key is [NothingTold]. As with [Read], no file that it names is opened.
func Of(values map[string]string) (*Setup, error) { return OfWith(values, "", Changes{}) }

// OfWith is [Of] with a name for messages, and with changes made to what the keys
// say. Faults of both come at once.
func OfWith(values map[string]string, name string, c Changes) (*Setup, error) {
	d, s := decoder{name: name, dir: c.Dir}, &Setup{Name: name, Dir: c.Dir}
	for _, path := range slices.Sorted(maps.Keys(values)) {
		d.entry(s, path, entry{text: values[path]})
	}
	s, err := d.finish(s, c, true)
	if err != nil {
		return nil, err
	}
	return s, nil
}

// With returns the setup with some keys set anew; an empty text takes a key out.
// Files that it names are looked for where the setup itself stood.
func (s *Setup) With(values map[string]string) (*Setup, error) {
	return s.Change(Changes{Set: values})
}

// Values returns every key that the setup gives with its text, and every table
// that says nothing, as [Of] takes them.
func (s *Setup) Values() map[string]string {
	out := map[string]string{}
	for path, e := range s.entries() {
		out[path] = e.text
	}
	return out
}

// entry is the text of one key and its line.
type entry struct {
	text string
	line int
}

// byHand are the keys whose values a program set past [Setup.With], so that nothing has
// checked them and their texts say something else.
func (s *Setup) byHand() (faults Faults) {
	for prefix, in := range map[string]*Setup{"": s, originalPrefix: s.Original} {
		if in == nil {
			continue
		}
		all := reflect.ValueOf(in).Elem()
		for _, f := range registry.Get().fields {
			as := ""
			switch v := all.FieldByIndex(f.index).Addr().Interface().(type) {
			case *Value:
				if v.Given && v.Range != v.read {
					as = fmt.Sprintf("%g to %g", v.Low, v.High)
				}
			case *Word:
				if v.Given && v.Text != v.read {
					as = strconv.Quote(v.Text)
				}
			case *Date:
				if v.Given && !v.Day.Equal(v.read) {
					as = v.Day.Format(time.DateOnly)
				}
			}
			if as != "" {
				faults = append(faults, Fault{
					File: s.Name, Key: prefix + f.Path(), Read: as + ", set by hand",
					Want: "a setup that is changed by Setup.With or Setup.Change, which check it",
				})
			}
		}
	}
	return faults
}

// entries are all keys that the setup gives, and its tables without any.
func (s *Setup) entries() map[string]entry {
	out := map[string]entry{}
	if s == nil {
		return out
	}
	for prefix, in := range map[string]*Setup{"": s, originalPrefix: s.Original} {
		if in == nil {
			continue
		}
		all := reflect.ValueOf(in).Elem()
		told := map[string]bool{}
		for _, f := range registry.Get().fields {
			if e, given := written(all.FieldByIndex(f.index)); given {
				out[prefix+f.Path()] = e
				told[f.Table] = true
			}
		}
		for _, t := range registry.Get().tables {
			if t.place != nil && in.has(t.name) && !told[t.name] {
				out[prefix+t.name] = entry{NothingTold, in.placeOf(&t).Line}
			}
		}
	}
	return out
}

// The table of the original vehicle, and what its keys begin with.
const (
	originalTable  = "original"
	originalPrefix = originalTable + "."
)

// written is what stands behind a key, and whether it was given.
func written(field reflect.Value) (entry, bool) {
	switch v := field.Addr().Interface().(type) { // a copy would have to be allocated
	case *Value:
		return entry{v.Text, v.Line}, v.Given
	case *Word:
		return entry{v.Text, v.Line}, v.Given
	case *Flag:
		return entry{strconv.FormatBool(v.Yes), v.Line}, v.Given
	case *Date:
		return entry{v.Text, v.Line}, v.Given
	}
	return entry{}, false
}

// entry reads one key that comes with its full path.
func (d *decoder) entry(s *Setup, path string, e entry) {
	p, rest := part{setup: s}, path
	if inner, is := strings.CutPrefix(path, originalPrefix); is {
		if s.Original == nil {
			s.Original = &Setup{Name: s.Name, Dir: s.Dir, Place: Place{Given: true}}
		}
		p, rest = part{setup: s.Original, prefix: originalPrefix}, inner
	}
	r := registry.Get()
	if t := r.table(rest); t != nil && t.place != nil && e.text == NothingTold {
		p.setup.placeOf(t).Given = true
		return
	}
	table, name := rest[:max(0, strings.LastIndexByte(rest, '.'))], rest[strings.LastIndexByte(rest, '.')+1:]
	if table != "" && r.table(table) == nil {
		d.fault(e.line, path, table, wantTable(p, table))
		if table = meantTable(p, table); r.table(table) == nil {
			return
		}
	}
	p.name = table
	f := r.field(table, name)
	if f == nil {
		d.fault(e.line, path, name, wantKey(p, name, e.text))
		name, _ = meantIn(p, name)
		f = r.field(table, name)
	}
	if t := r.table(table); t != nil && t.place != nil {
		p.setup.placeOf(t).Given = true
	}
	if f != nil {
		if _, taken := written(reflect.ValueOf(p.setup).Elem().FieldByIndex(f.index)); !taken {
			d.key(p, f, asTyped(f, e.text), e.line)
		}
	}
}

// asTyped is a text as TOML would have it behind a key.
func asTyped(f *field, text string) any {
	switch {
	case f.What == "yes or no":
		if yes, ok := yesOrNo(text); ok {
			return yes
		}
	case f.kind == quantity.Count:
		if n, err := strconv.ParseInt(strings.TrimSpace(text), 10, 64); err == nil {
			return n
		}
	}
	return text
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
