package battery_test

import (
	"math"
	"slices"
	"strings"
	"testing"

	"example.org/packcheck/answer"
	"example.org/packcheck/battery"
)

func codes(findings []answer.Finding) []string {
	out := make([]string, len(findings))
	for i, f := range findings {
		out[i] = f.Code
	}
	return out
}

// Ohm: two 5S2P packs of 18.6 mOhm cells, 46.5 mOhm each, 21.0 V onto 18.0 V
// without any lead: 32 A.
func TestEqualisingCurrent(t *testing.T) {
	pack := 5 * 0.0186 / 2
	e := battery.EqualisingCurrent(battery.Source{Volts: 18, Ohm: pack}, battery.Source{Volts: 21, Ohm: pack}, 0)
	if math.Abs(e.CurrentA-32.26) > 0.01 || !e.IntoA || e.DeltaV != 3 {
		t.Errorf("%+v, want 32.3 A into the first", e)
	}
	m := modelOf(t, battery.Spec{Profile: profile(t, "li-ion"), CellsInSeries: 5, Strings: 2, CapacityAh: 5, ResistanceOhm: pack})
	j := battery.Joint{A: m, B: m, StateA: m.StateAt(0.45, 25), StateB: m.StateAt(1, 25)}
	got := j.Parallel()
	want := (m.RestedV(j.StateB) - m.RestedV(j.StateA)) / got.Ohm
	if math.Abs(got.CurrentA-want) > 1e-9 || !got.IntoA {
		t.Errorf("%+v, want %.2f A into the first", got, want)
	}
	if c := codes(j.JudgeParallel()); !slices.Equal(c, []string{battery.CodeParallelEqualising}) {
		t.Errorf("joining an empty to a full pack: findings %v", c)
	}
	if f := j.JudgeParallel()[0]; f.Level != answer.Danger || !f.Today || !strings.HasPrefix(f.Advice, "Part them.") {
		t.Errorf("to part them is not what is done first: %+v", f)
	}
	unfit := j
	unfit.Unfit = true
	if f := unfit.JudgeParallel()[0]; f.Level != answer.Danger || !f.Today || !strings.HasPrefix(f.Advice, "Part them") || strings.Contains(f.Advice, "full") {
		t.Errorf("one of them may not simply be charged: to part them, and no charge, is what is done first: %+v", f)
	}
	j.StateA = j.StateB
	if c := codes(j.JudgeParallel()); len(c) != 0 {
		t.Errorf("joining equal packs: findings %v", c)
	}
	j.A = model(t, "agm", 9, 7)
	j.StateA = j.A.StateAt(1, 25)
	if c := codes(j.JudgeParallel()); !slices.Contains(c, battery.CodeParallelMixedChemistry) {
		t.Errorf("lead onto lithium: findings %v", c)
	}
}

// A string of a 100 Ah and a 70 Ah battery is empty at 70 Ah, and the smaller
// is then driven backwards (re-wrenches list, 2014-12-19).
func TestTheSmallerPackEndsTheSeries(t *testing.T) {
	big, small := model(t, "agm", 6, 100), model(t, "agm", 6, 70)
	j := battery.Joint{A: big, B: small, StateA: big.StateAt(1, 25), StateB: small.StateAt(1, 25)}
	s := j.Series()
	if s.EndsAt != 70 || s.OverhangAh != 30 || s.FirstEmptyIsA || s.NominalV != 24 || s.CapacityAh != 70 {
		t.Errorf("%+v", s)
	}
	if c := codes(j.JudgeSeries()); !slices.Equal(c, []string{battery.CodeUnlikePacks, battery.CodeSeriesUnequalCharge}) {
		t.Errorf("findings %v", c)
	}
	j.B, j.StateB = big, j.StateA
	if c := codes(j.JudgeSeries()); len(c) != 0 {
		t.Errorf("two equal blocks: findings %v", c)
	}
	tool := model(t, "li-ion", 5, 4)
	j = battery.Joint{A: tool, B: tool, StateA: tool.StateAt(1, 25), StateB: tool.StateAt(1, 25)}
	if c := codes(j.JudgeSeries()); !slices.Equal(c, []string{battery.CodeSeriesElectronics}) {
		t.Errorf("two tool packs: findings %v", c)
	}
}

// Arithmetic: a 12 V block at 10.5 V with five cells at 2.05 V leaves 0.25 V
// for the sixth, and so on.
func TestPackVoltageDoesNotProtectTheOddCell(t *testing.T) {
	for _, c := range []struct {
		packV   float64
		cells   int
		othersV float64
		left    float64
	}{
		{10.5, 6, 2.05, 0.25},
		{9.6, 6, 1.95, -0.15},
		{15.0, 5, 3.40, 1.40},
		{12.5, 5, 3.10, 0.10},
	} {
		if got := battery.OddCellV(c.packV, c.cells, c.othersV); math.Abs(got-c.left) > 1e-9 {
			t.Errorf("%g V over %d cells: %g V left, want %g", c.packV, c.cells, got, c.left)
		}
	}
}

func TestTheWeakestCellIsEmptyFirst(t *testing.T) {
	p := profile(t, "li-ion")
	m := modelOf(t, battery.Spec{Profile: p, CellsInSeries: 5, CapacityAh: 5, WeakestShort: 0.08})
	s := m.StateAt(1, 25)
	step := m.Over(10)
	for m.TerminalV(&s, 5) > 15 {
		if weak, mean := m.WeakestCellV(&s, 5), m.TerminalV(&s, 5)/5; weak > mean+1e-9 {
			t.Fatalf("weakest %.4f V above the mean %.4f V at %.2f", weak, mean, m.Charge(s))
		}
		step.Advance(&s, 5, 25)
	}
	if v := m.WeakestCellV(&s, 5); v >= p.HarmV {
		t.Errorf("the cell that lacks 8 %% stands at %.2f V when the pack reads 15 V", v)
	}
}

func TestPackIsJudgedByItsLimits(t *testing.T) {
	m := modelOf(t, battery.Spec{Profile: profile(t, "li-ion"), CellsInSeries: 5, CapacityAh: 4, MaxCurrentA: 20})
	for _, c := range []struct {
		name string
		use  battery.Use
		want []string
	}{
		{"within all", battery.Use{LastingA: 15, PeakA: 30}, nil},
		{"lasting", battery.Use{LastingA: 25}, []string{battery.CodeCurrentLasting}},
		{"peak", battery.Use{PeakA: 60}, []string{battery.CodeCurrentPeak}},
		{"hot", battery.Use{HasTemps: true, ColdestC: 10, HottestC: 80}, []string{battery.CodeTooHot}},
		{"cold", battery.Use{HasTemps: true, ColdestC: -25, HottestC: 10}, []string{battery.CodeTooCold}},
	} {
		findings := m.Judge(c.use)
		if got := codes(findings); !slices.Equal(got, c.want) {
			t.Errorf("%s: %v, want %v", c.name, got, c.want)
		}
		for _, f := range findings {
			if f.Source == "" || f.Advice == "" || f.Title == "" || f.Unit == "" {
				t.Errorf("%s: incomplete finding %+v", c.name, f)
			}
		}
	}
}

func TestChargeFromRest(t *testing.T) {
	agm, lfp := profile(t, "agm"), profile(t, "lifepo4")
	// Battery maker's question page: 12.30 V after 24 h is half full.
	low, likely, high := battery.ChargeFromRest(agm, 12.30/6, 24, 25)
	if math.Abs(likely-0.5) > 0.05 || !(low < likely && likely < high) || high-low > 0.25 {
		t.Errorf("12.30 V rested: %.2f (%.2f to %.2f)", likely, low, high)
	}
	// The shorter the rest, the wider the range.
	before := math.Inf(1)
	for _, hours := range []float64{0, 0.5, 2, 6, 24, 100} {
		low, _, high := battery.ChargeFromRest(agm, 12.30/6, hours, 25)
		if high-low > before {
			t.Errorf("after %g h the range is wider than before", hours)
		}
		before = high - low
	}
	// 30 to 90 % of iron phosphate lie within 63 mV: a voltage says little.
	if low, _, high := battery.ChargeFromRest(lfp, 3.30, 24, 25); high-low < 0.3 {
		t.Errorf("3.30 V of iron phosphate is read as %.2f to %.2f", low, high)
	}
	for _, v := range []float64{math.Inf(1), -1, 0, 100} {
		low, likely, high := battery.ChargeFromRest(agm, v, -1, 20)
		for _, z := range []float64{low, likely, high} {
			if !(z >= 0 && z <= 1) {
				t.Errorf("%g V gives %g", v, z)
			}
		}
	}
}

// Cells of one kind are named apart by who measured them: two blocks told to be AGM are of
// one kind whichever of its members each of them is.
func TestMembersOfOneKindAreNoMixedChemistry(t *testing.T) {
	other := profile(t, "agm")
	other.Name = "a measured block"
	spec := battery.Spec{Profile: profile(t, "agm"), CellsInSeries: 6, CapacityAh: 7, ResistanceOhm: 0.03}
	a := modelOf(t, spec)
	spec.Profile = other
	b := modelOf(t, spec)
	j := battery.Joint{A: a, B: b, StateA: a.StateAt(1, 25), StateB: b.StateAt(1, 25)}
	if c := codes(j.JudgeParallel()); len(c) > 0 {
		t.Errorf("two full blocks of one kind and size: %v", c)
	}
	spec.Health = 0.4
	old := modelOf(t, spec)
	j = battery.Joint{A: a, B: old, StateA: a.StateAt(1, 25), StateB: old.StateAt(1, 25)}
	if c := codes(j.JudgeParallel()); !slices.Contains(c, battery.CodeUnlikePacks) {
		t.Errorf("a new one beside one of 40 %%: %v", c)
	}
}

// Nobody rides with packs that are never joined; what only wears two blocks out is no such
// pair.
func TestWhichPairsNobodyRidesWith(t *testing.T) {
	block := model(t, "agm", 6, 7)
	for _, tt := range []struct {
		name  string
		other *battery.Model
		never bool
	}{
		{"12 V beside 6 V", model(t, "agm", 3, 7), true},
		{"lead beside lithium", model(t, "lifepo4", 4, 7), true},
		{"two kinds of lead", model(t, "gel", 6, 7), false},
		{"a large and a small block", model(t, "agm", 6, 12), false},
		{"two alike", block, false},
	} {
		j := battery.Joint{A: block, B: tt.other, StateA: block.StateAt(1, 20), StateB: tt.other.StateAt(1, 20)}
		if got := slices.ContainsFunc(j.JudgeParallel(), func(f answer.Finding) bool { return f.NeverRidden }); got != tt.never {
			t.Errorf("%s: never ridden is %v", tt.name, got)
		}
	}
}
