package setup

import (
	"reflect"
	"slices"
	"strings"

	"example.org/packcheck/internal/quantity"
)

// withOriginal returns today's setup with the tables that the original has of
// its own put in their place, and the original without those in which it says
// the same as today. Cutoffs and measurements are not taken over: a cutoff goes
// with its pack and its module.
func (s *Setup) withOriginal() (merged, own *Setup) {
	o := s.ownOriginal()
	m := *s
	m.Original = nil
	m.Place = o.Place
	for _, t := range registry.Get().tables {
		if t.place == nil || !o.has(t.name) {
			continue
		}
		from := reflect.ValueOf(o).Elem().FieldByIndex(t.index)
		reflect.ValueOf(&m).Elem().FieldByIndex(t.index).Set(from)
	}
	m.Cutoff, m.Measured = o.Cutoff, o.Measured
	for _, t := range registry.Get().tables {
		if t.place != nil && strings.HasPrefix(t.name, "cutoff.") && s.Original.has(t.name) && !o.has(t.name) {
			same := reflect.ValueOf(s).Elem().FieldByIndex(t.index)
			reflect.ValueOf(&m).Elem().FieldByIndex(t.index).Set(same)
		}
	}
	if o.Title.Given {
		m.Title = o.Title
	}
	if o.Bench.Given != s.Bench.Given {
		// One of the two is a bench load: it stands alone.
		if o.Bench.Given {
			m.Rider, m.Vehicle, m.Motors, m.Gears = Rider{}, Vehicle{}, Motors{}, Gears{}
		} else {
			m.Bench = Bench{}
		}
	}
	return &m, o
}

// ownOriginal returns the original without the tables in which it says the same
// as today, value by value: they describe one and the same part, and what is not
// known of it is one unknown. A battery on which something was measured is one of
// its own, because the old one was read and another like it is asked about.
func (s *Setup) ownOriginal() *Setup {
	o := *s.Original
	for _, t := range registry.Get().tables {
		if t.place == nil || !o.has(t.name) || !s.has(t.name) || o.apart(s, t.name) {
			continue
		}
		if t.name == "pack" && (s.Measured.Given || o.Measured.Given) {
			continue
		}
		of := reflect.ValueOf(&o).Elem()
		of.FieldByIndex(t.index).Set(reflect.ValueOf(s).Elem().FieldByIndex(t.index)) // today's keys
		of.FieldByIndex(t.place).SetZero()
	}
	return &o
}

// changed reports whether the original has a table that says something else
// than today's, other than those that are named. What was read of it is no change.
func (s *Setup) changed(but ...string) bool {
	for _, t := range registry.Get().tables {
		if t.name == "measured" || slices.Contains(but, t.name) {
			continue
		}
		if t.place != nil && s.Original.has(t.name) && s.Original.apart(s, t.name) {
			return true
		}
	}
	return false
}

// apart reports whether a table of the original, with those inside it, says
// something else than that of today's vehicle.
func (s *Setup) apart(today *Setup, name string) bool {
	for _, f := range registry.Get().fields {
		if f.Table != name && !strings.HasPrefix(f.Table, name+".") {
			continue
		}
		if f.Table != "charger" && f.Table != "storage" && todayOnly(&f) {
			continue // the original never says it
		}
		a := reflect.ValueOf(s).Elem().FieldByIndex(f.index).Interface()
		b := reflect.ValueOf(today).Elem().FieldByIndex(f.index).Interface()
		if said(a) != said(b) {
			return true
		}
	}
	return false
}

// said is what was written of a key, wherever it stands.
func said(v any) any {
	switch v := v.(type) {
	case Value:
		return struct {
			quantity.Range
			bool
		}{v.Range, v.Given}
	case Word:
		return v.Text
	case Flag:
		return [2]bool{v.Given, v.Yes}
	case Date:
		return v.Day
	}
	return nil
}

// has reports whether the setup has the table of its own.
func (s *Setup) has(name string) bool {
	t := registry.Get().table(name)
	if t == nil || t.place == nil {
		return false
	}
	return reflect.ValueOf(s).Elem().FieldByIndex(t.place).Interface().(Place).Given
}

// system returns the units in which most of the setup was written; Metric when
// it does not tell.
func (s *Setup) system() quantity.System {
	count := map[quantity.System]int{}
	for _, in := range []*Setup{s, s.Original} {
		if in == nil {
			continue
		}
		all := reflect.ValueOf(in).Elem()
		for _, f := range registry.Get().fields {
			if v, ok := all.FieldByIndex(f.index).Addr().Interface().(*Value); ok && v.Given {
				count[v.System]++
			}
		}
	}
	if count[quantity.Customary] > count[quantity.Metric] {
		return quantity.Customary
	}
	return quantity.Metric
}

// Gives reports whether the setup has a key ("wire.gauge"), for today's vehicle
// or for the original.
func (s *Setup) Gives(path string) bool {
	i := strings.LastIndexByte(path, '.')
	f := registry.Get().field(path[:max(i, 0)], path[i+1:])
	if f == nil || s == nil {
		return false
	}
	for _, in := range []*Setup{s, s.Original} {
		if in == nil {
			continue
		}
		if _, given := written(reflect.ValueOf(in).Elem().FieldByIndex(f.index)); given {
			return true
		}
	}
	return false
}
