package battery_test

import (
	"testing"

	"example.org/packcheck/battery"
	"example.org/packcheck/chemistry"
)

func model(t testing.TB, name string, cells int, ah float64) *battery.Model {
	t.Helper()
	p, ok := chemistry.Builtin().Profile(name)
	if !ok {
		t.Fatalf("no profile %s", name)
	}
	m, err := battery.New(battery.Spec{Profile: p, CellsInSeries: cells, CapacityAh: ah})
	if err != nil {
		t.Fatal(err)
	}
	return m
}

func BenchmarkAdvance(b *testing.B) {
	for _, name := range []string{"agm", "li-ion"} {
		b.Run(name, func(b *testing.B) {
			m := model(b, name, 5, 4)
			step := m.Over(1)
			s := m.StateAt(1, 25)
			b.ReportAllocs()
			i := 0
			for b.Loop() {
				step.Advance(&s, 0.001, 20)
				i++
			}
		})
	}
}

func TestUsable(t *testing.T) {
	for _, name := range []string{"agm", "gel", "li-ion", "lifepo4", "nimh"} {
		m := model(t, name, 6, 7.5)
		for _, c := range []float64{0.05, 0.2, 1, 3} {
			t.Log(name, c, m.UsableAh(c*7.5), m.FullV(), m.MidOhm(), m.MassKg())
		}
	}
}
