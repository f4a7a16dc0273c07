package setup

import (
	"reflect"

	"example.org/packcheck/internal/quantity"
)

// withOriginal returns today's setup with the tables that the original has of
// its own put in their place. Cutoffs and measurements are not taken over: a
// cutoff goes with its pack and its module.
func (s *Setup) withOriginal() *Setup {
	o := s.Original
	m := *s
	m.Original = nil
	m.Place = o.Place
	for _, t := range registry().tables {
		if t.place == nil || !o.has(t.name) {
			continue
		}
		from := reflect.ValueOf(o).Elem().FieldByIndex(t.index)
		reflect.ValueOf(&m).Elem().FieldByIndex(t.index).Set(from)
	}
	m.Cutoff, m.Measured = o.Cutoff, o.Measured
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
	return &m
}

// has reports whether the setup has the table of its own.
func (s *Setup) has(name string) bool {
	t := registry().table(name)
	if t == nil || t.place == nil {
		return false
	}
	return reflect.ValueOf(s).Elem().FieldByIndex(t.place).Interface().(Place).Given
}

// system returns the units in which most of the setup was written; Metric when
// it does not tell.
func (s *Setup) system() quantity.System {
	count := map[quantity.System]int{}
	all := reflect.ValueOf(s).Elem()
	for _, f := range registry().fields {
		if v, ok := all.FieldByIndex(f.index).Interface().(Value); ok && v.Given {
			count[v.Written.System]++
		}
	}
	if count[quantity.Customary] > count[quantity.Metric] {
		return quantity.Customary
	}
	return quantity.Metric
}
