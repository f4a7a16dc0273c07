package ask_test

import (
	"math"
	"strings"
	"testing"

	"example.org/packcheck/answer"
	"example.org/packcheck/ask"
	"example.org/packcheck/battery"
	"example.org/packcheck/chemistry"
)

// Independent bench test of INR18650-P28A (see the member's source), pulses of 10 A
// and 20 s: 27.7 mOhm full, 17.2 in the middle, 18.6 on average. Two packs of 5S2P
// of it have 46.5 mOhm each on average, so 21.0 V onto 18.0 V drive 32 A by Ohm's
// law; the full one has more, so after 20 s it is less, and at first it is more.
func TestTwoPacksOfKnownCellsEqualiseAsOhmSays(t *testing.T) {
	const perCell = 5 / 2. // cells in series over strings
	flows := func(a, b float64) float64 {
		return battery.EqualisingCurrent(battery.Source{Volts: 21, Ohm: a}, battery.Source{Volts: 18, Ohm: b}, 0).CurrentA
	}
	mean := flows(perCell*18.6e-3, perCell*18.6e-3)
	if math.Abs(mean-32) > 0.5 {
		t.Errorf("Ohm's law gives %.1f A, want 32", mean)
	}
	measured := flows(perCell*27.7e-3, perCell*17.2e-3)
	for _, m := range chemistry.Builtin().Members("li-ion") {
		if m.Profile.Name != "power-18650-2ah8" {
			continue
		}
		pack, err := battery.New(battery.Spec{Profile: m.Profile, CellsInSeries: 5, Strings: 2, CapacityAh: 2 * m.CellAh})
		if err != nil {
			t.Fatal(err)
		}
		full, low := pack.StateAt(1, 25), pack.StateAt(0.5, 25)
		later := flows(pack.PulseOhm(full, 20, 20), pack.PulseOhm(low, 20, 20))
		first := flows(pack.SourceOhm(&full), pack.SourceOhm(&low))
		if math.Abs(later/measured-1) > 0.1 || !(later < mean && mean < first) {
			t.Errorf("%.1f A at first, %.1f A after 20 s; want %.1f A within a tenth, and %.1f A between", first, later, measured, mean)
		}
		return
	}
	t.Error("the cell of 2.8 Ah is no member any more")
}

// Of two new packs whose label says 5 Ah nobody knows that they are of the cells
// with the least resistance; but they may be: with tabs of 9 mOhm each (from
// memory) 27 A flow.
func TestJoiningByLabelAllowsForTheCellsOfLeastResistance(t *testing.T) {
	tool := ask.Battery{Label: "20 V max 5 Ah", Age: "new"}
	a, err := ask.Join{A: tool, B: tool, AV: 21, BV: 18}.Answer()
	if err != nil {
		t.Fatal(err)
	}
	if f := a.Figure(); !(f.Low < 16 && 3/(2*(0.0465+0.009)) < f.High) {
		t.Errorf("%.1f A (%.1f to %.1f), want the 27 A of good cells inside", f.Value, f.Low, f.High)
	}
	// Two of one label are of one kind of cell; of two labels nobody knows it.
	other := tool
	other.Label = "18 V 5 Ah"
	b, err := ask.Join{A: tool, B: other, AV: 21, BV: 18}.Answer()
	if err != nil {
		t.Fatal(err)
	}
	if x, y := a.Figure(), b.Figure(); x.High/x.Low <= y.High/y.Low {
		t.Errorf("of one label %.1f to %.1f A, of two %.1f to %.1f A: what they share does not average out", x.Low, x.High, y.Low, y.High)
	}
}

// Lithium at 1.8 V a cell has copper dissolved in it (source "lithium-precharge"): whoever is
// told to charge it charges a fire. What is said of it alone is said of it beside another.
func TestAFlatPackIsNeverChargedToBeJoined(t *testing.T) {
	for _, c := range []struct {
		label     string
		full, low float64
		level     answer.Level
		want      string
	}{
		{"20 V max 5 Ah", 20, 9, answer.Danger, "hand it in. Never help it along with any charger"},
		{"12.8 V 10 Ah LiFePO4", 13.3, 6, answer.Danger, "hand it in. Never help it along with any charger"},
		{"20 V max 5 Ah", 9, 9, answer.Danger, "hand it in. Never help it along with any charger"},
		{"12 V 7 Ah AGM", 12.8, 8, answer.FixFirst, "Try one charge at its right charger and stay near"},
		{"12 V 7 Ah AGM", 12.8, 4, answer.Danger, "Do not charge it"},
	} {
		b := ask.Battery{Label: c.label}
		for _, q := range []ask.Join{
			{A: b, B: b, AV: c.full, BV: c.low},
			{A: b, B: b, AV: c.low, BV: c.full},
			{A: b, B: b, AV: c.full, BV: c.low, Series: true},
		} {
			a := answered(t, q)
			said := strings.Join(a.Words, " ")
			if a.Level == nil || *a.Level < c.level || !strings.Contains(said, c.want) || !strings.HasPrefix(said, "Do not join them.") {
				t.Errorf("%s at %g V and %g V, series %v: %v %q, want %v and %q", c.label, q.AV, q.BV, q.Series, a.Level, said, c.level, c.want)
			}
			for _, wrong := range []string{"charge both", "to full", "charged together", "charged full", "within what it may"} {
				if strings.Contains(said+a.Caution, wrong) {
					t.Errorf("%s at %g V and %g V, series %v: %q says %q", c.label, q.AV, q.BV, q.Series, said+a.Caution, wrong)
				}
			}
			if a.Value != c.low || a.Unit != "V" || a.Limit == nil || a.Limit.Unit != "V" {
				t.Errorf("%s at %g V and %g V, series %v: %+v against %+v", c.label, q.AV, q.BV, q.Series, a.Figure(), a.Limit)
			}
		}
	}
	sound := ask.Battery{Label: "20 V max 5 Ah"}
	a := answered(t, ask.Join{A: sound, B: sound, AV: 20, BV: 19})
	if a.What != "flows at first" {
		t.Errorf("two sound packs: %q", a.Words)
	}
}
