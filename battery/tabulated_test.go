package battery

import (
	"reflect"
	"testing"

	"example.org/packcheck/chemistry"
)

// shaped is a pack of a built-in profile after a change to it.
func shaped(t *testing.T, change func(*chemistry.Profile)) *Model {
	t.Helper()
	p, _ := chemistry.Builtin().Profile("li-ion")
	change(&p)
	m, err := New(Spec{Profile: p, CellsInSeries: 5, CapacityAh: 4, Health: 0.9})
	if err != nil {
		t.Fatal(err)
	}
	return m
}

func asItIs(*chemistry.Profile) {}

func TestPacksOfTheSameCurvesShareTheirTablesAndNoOthersDo(t *testing.T) {
	plain := shaped(t, asItIs)
	for name, change := range map[string]func(*chemistry.Profile){
		"nothing":                 asItIs,
		"the loss on the shelf":   func(p *chemistry.Profile) { p.Keeping.LossPerMonth *= 2 },
		"what it can give":        func(p *chemistry.Profile) { p.Discharge.ContinuousC *= 2 },
		"its wells":               func(p *chemistry.Profile) { p.Wells.C /= 2 },
		"where its branches bend": func(p *chemistry.Profile) { p.Fast.KneeV += 0.1 },
	} {
		m := shaped(t, change)
		if m.cell != plain.cell {
			t.Errorf("%s changed: want the same tables", name)
		}
		want, _ := chemistry.Builtin().Profile("li-ion")
		if change(&want); !reflect.DeepEqual(*m.Profile(), want) {
			t.Errorf("%s changed: the pack has the profile of another", name)
		}
	}
	raised := func(of func(*chemistry.Profile) *chemistry.Curve) func(*chemistry.Profile) {
		return func(p *chemistry.Profile) {
			c := of(p)
			if c.Empty() {
				*c = chemistry.Flat(1.25)
				return
			}
			c.Y[len(c.Y)-1] += 0.01
		}
	}
	for name, change := range map[string]func(*chemistry.Profile){
		"volts at rest":              raised(func(p *chemistry.Profile) *chemistry.Curve { return &p.Rest.VoltsAt }),
		"resistance":                 raised(func(p *chemistry.Profile) *chemistry.Curve { return &p.Resistance.OhmAh }),
		"resistance in the warmth":   raised(func(p *chemistry.Profile) *chemistry.Curve { return &p.Resistance.TempFactor }),
		"fast branch":                raised(func(p *chemistry.Profile) *chemistry.Curve { return &p.Fast.OhmAh }),
		"fast branch in the warmth":  raised(func(p *chemistry.Profile) *chemistry.Curve { return &p.Fast.TempFactor }),
		"slow branch":                raised(func(p *chemistry.Profile) *chemistry.Curve { return &p.Slow.OhmAh }),
		"slow branch in the warmth":  raised(func(p *chemistry.Profile) *chemistry.Curve { return &p.Slow.TempFactor }),
		"capacity in the warmth":     raised(func(p *chemistry.Profile) *chemistry.Curve { return &p.Capacity.TempFactor }),
		"capacity by hours":          raised(func(p *chemistry.Profile) *chemistry.Curve { return &p.Capacity.HourShare }),
		"greatest volts of a charge": func(p *chemistry.Profile) { p.Charge.CellMaxV += 0.01 },
		"volts above full":           func(p *chemistry.Profile) { p.Rest.OverFullV += 0.01 },
	} {
		if m := shaped(t, change); m.cell == plain.cell {
			t.Errorf("%s changed: the pack has the tables of another", name)
		}
	}
}

func TestNoMoreTablesAreKeptThanSaid(t *testing.T) {
	for i := range 2 * mostKept {
		shaped(t, func(p *chemistry.Profile) { p.Rest.OverFullV = 1 + float64(i)/1000 })
	}
	kept.Lock()
	defer kept.Unlock()
	if n := len(kept.cells); n == 0 || n > mostKept {
		t.Errorf("%d sets of tables are kept, want 1 to %d", n, mostKept)
	}
}
