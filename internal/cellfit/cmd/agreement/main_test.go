package main

import (
	"math"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"example.org/packcheck/battery"
	"example.org/packcheck/charge"
	"example.org/packcheck/chemistry"
	"example.org/packcheck/internal/cellfit"
)

// known are the rows that miss a target, each with the reason. A row that
// begins to meet its targets must leave this list.
var known = map[string]string{
	"phosphate-26650-2ah6/cc_1c_40c": "begins just off the charger with more charge than the traces that the cell is fitted to: it is 2 % short, and falls steeply",
}

func dataset0(t *testing.T, folder string) dataset {
	t.Helper()
	for _, d := range datasets {
		if d.folder == folder {
			return d
		}
	}
	t.Fatalf("no dataset %s", folder)
	return dataset{}
}

// fittedCell is a dataset and its cell as it was at first.
func fittedCell(t *testing.T, folder string) (dataset, *battery.Model) {
	t.Helper()
	d := dataset0(t, folder)
	p, err := d.profile()
	if err != nil {
		t.Fatal(err)
	}
	m, err := d.model(p, "", nil)
	if err != nil {
		t.Fatal(err)
	}
	return d, m
}

// Fitted curves: voltage within 1.5 % of nominal and charge to the cutoff
// within 3 %; curves kept aside: 2.5 % and 5 %.
func TestEveryCurveIsWithinTheTargetsUnlessItIsKnownWhyNot(t *testing.T) {
	dir := os.Getenv("PACKCHECK_REFDATA")
	if dir == "" {
		t.Skip("PACKCHECK_REFDATA is not set: would have run the fitted cells along every measured curve, voltage within 1.5 % and charge within 3 % (2.5 % and 5 % where not fitted to)")
	}
	for _, d := range datasets {
		c, err := d.read(dir)
		if err != nil {
			t.Fatal(err)
		}
		rows, err := d.rows(c)
		if err != nil {
			t.Fatal(err)
		}
		for _, r := range rows {
			missed, why := r.misses(), known[r.curve]
			if len(missed) > 0 && why == "" {
				t.Errorf("%s: %s", r.curve, strings.Join(missed, "; "))
			}
			if len(missed) == 0 && why != "" {
				t.Errorf("%s meets its targets, but is listed as missing them: %s", r.curve, why)
			}
		}
	}
}

// The recharge of the acceptance's fit, run the way it was fitted: package
// charge says 0.10 V for bulk and absorption together over rows that carry
// 0.25 A or more; over time and with every row of the bulk it must not be far
// from that. Measured: Sulzer et al. 2019 (see the dataset's source).
func TestTheBulkOfARechargeIsCloseWithTheProfileItWasFittedWith(t *testing.T) {
	dir := os.Getenv("PACKCHECK_REFDATA")
	if dir == "" {
		t.Skip("PACKCHECK_REFDATA is not set: would have run the built-in profile along the bulk of two measured recharges, within 1.5 %")
	}
	d := dataset0(t, "vrla_12v_17ah")
	c, err := d.read(dir)
	if err != nil {
		t.Fatal(err)
	}
	m := lead(t, acceptedAh/d.ah)
	for name, before := range d.recharges {
		r, err := d.recharge(m, c.logs[before], c.logs[name])
		if err != nil {
			t.Fatal(err)
		}
		if got := r.off[bulk].rms() / m.NominalV(); !(got <= fittedVolts) {
			t.Errorf("%s: bulk %.2f %% rms, want at most 1.5 %%", name, 100*got)
		}
	}
}

// A handful of figures of the datasets, so that the fitted cells are held to
// measurements also where the datasets are not at hand: charge from the first
// loaded sample to the stated voltage under load, and mean voltage.
func TestFittedCellsGiveTheMeasuredCharge(t *testing.T) {
	for _, c := range []struct {
		folder      string
		restV       float64 // of one cell before the discharge; 0 = full
		amps, toV   float64
		health      float64
		ah, meanV   float64
		tempC       float64
		within      float64
		explanation string
	}{
		{"*_18650_3ah", 4.1419, 0.300, 2.5, 1, 2.969, 3.647, 22, 0.03, ""},
		{"*_18650_3ah", 4.1432, 3.001, 2.5, 1, 2.956, 3.529, 22.5, 0.03, ""},
		{"*_18650_3ah", 4.1442, 9.001, 2.5, 1, 2.923, 3.344, 22.6, 0.03, ""},
		{"*_2p9ah", 4.1840, 0.1450, 2.5, 1, 2.997, 3.683, 25, 0.03, ""},
		{"*_2p9ah", 0, 2.900, 2.5, 1, 2.798, 3.510, 25, 0.03, ""},
		{"*_lmo_pouch_33ah", 4.191, 30.6, 3.0, 1, 30.340, 3.759, 25, 0.03, ""},
		{"*_lmo_pouch_33ah", 4.191, 91.8, 3.0, 1, 28.710, 3.555, 25, 0.03, ""},
		{"*_6s_pack_65ah", 24.86 / 6, 19.5, 20.2, 1, 54.825, 23.150, 22.5, 0.03, ""},
		{"vrla_12v_17ah", 0, 3.043, 10.8, 1, 19.369, 11.909, 24, 0.03, "the first of the runs"},
		{"vrla_12v_17ah", 0, 0.529, 10.8, 1 - 6*vrlaFade, 18.268, 12.039, 22, 0.03, "the seventh"},
	} {
		d := dataset0(t, c.folder)
		p, err := d.profile()
		if err != nil {
			t.Fatal(err)
		}
		m, err := battery.New(battery.Spec{Profile: p, CellsInSeries: d.series, CapacityAh: d.ah, MassKg: d.massKg, Health: c.health, ResistanceFactor: 1})
		if err != nil {
			t.Fatal(err)
		}
		start := 1.0
		if c.restV > 0 {
			_, start, _ = battery.ChargeFromRest(p, c.restV, 1000, 25)
		}
		run := m.Discharge(m.StateAt(start, c.tempC), c.amps, c.toV, c.tempC)
		if off := run.Ah/c.ah - 1; math.Abs(off) > c.within {
			t.Errorf("%s at %g A: %.3f Ah, measured %.3f (%+.1f %%)", c.folder, c.amps, run.Ah, c.ah, 100*off)
		}
		if mean := run.Wh / run.Ah; math.Abs(mean/c.meanV-1) > 0.015 {
			t.Errorf("%s at %g A: %.3f V in the mean, measured %.3f", c.folder, c.amps, mean, c.meanV)
		}
	}
}

func TestTheTableIsWritten(t *testing.T) {
	dir := t.TempDir()
	var out strings.Builder
	if err := run([]string{"-data", dir}, &out); err == nil || !strings.Contains(err.Error(), "no curves in "+filepath.Join(dir, datasets[0].folder)) {
		t.Errorf("an empty directory: %v", err)
	}
	folder := filepath.Join(dir, "vrla_12v_17ah")
	if err := os.Mkdir(folder, 0o755); err != nil {
		t.Fatal(err)
	}
	text := "time_s,current_a,voltage_v\n0,0,12.85\n60,2,12.6\n600,2,12.5\n3600,2,12.3\n"
	if err := os.WriteFile(filepath.Join(folder, "unit_c_short.csv"), []byte(text), 0o644); err != nil {
		t.Fatal(err)
	}
	out.Reset()
	if err := run([]string{"-data", dir, "-only", "vrla"}, &out); err != nil {
		t.Fatal(err)
	}
	if got := out.String(); !strings.HasPrefix(got, tableHead) || !strings.Contains(got, "| block-vrla-17ah/unit_c_short | kept aside |") || !strings.Contains(got, "of 1 rows meet the targets.") {
		t.Errorf("table:\n%s", got)
	}
	if err := os.WriteFile(filepath.Join(folder, "unit_a_charge_after_3p0a.csv"), []byte(text), 0o644); err != nil {
		t.Fatal(err)
	}
	if err := run([]string{"-data", dir, "-only", "vrla"}, &out); err == nil || !strings.Contains(err.Error(), "unit_a_charge_after_3p0a cannot be run without unit_a_cc_3p0a") {
		t.Errorf("a recharge without its discharge: %v", err)
	}
}

// lead is the built-in profile of the lead-acid dataset.
func lead(t *testing.T, health float64) *battery.Model {
	t.Helper()
	d := dataset0(t, "vrla_12v_17ah")
	p, ok := chemistry.Builtin().Profile(d.base)
	if !ok {
		t.Fatalf("no profile %s", d.base)
	}
	m, err := battery.New(battery.Spec{Profile: p, CellsInSeries: d.series, CapacityAh: d.ah, Health: health, MassKg: d.massKg})
	if err != nil {
		t.Fatal(err)
	}
	return m
}

// A recharge made by the model itself must come out without a deviation, and
// with just the one that is put in.
func TestADeviationShowsInThePartOfTheRechargeThatHasIt(t *testing.T) {
	d, m := dataset0(t, "vrla_12v_17ah"), lead(t, 1)
	before := &cellfit.Log{TimeS: []float64{0, 5 * 3600}, Volts: []float64{12.8, 11.8}, Amps: []float64{2, 2}, ChargeAh: []float64{0, 10}, TempC: []float64{25, 25}}
	log := &cellfit.Log{}
	for hours, inAh := 0.0, 0.0; hours < 14; hours += 0.1 {
		amps := 2 * math.Min(1, math.Exp((4-hours)/1.5))
		if hours > 0 {
			inAh += 0.1 * amps
		}
		log.TimeS, log.Amps, log.ChargeAh = append(log.TimeS, 3600*hours), append(log.Amps, -amps), append(log.ChargeAh, -inAh)
		log.TempC, log.Volts = append(log.TempC, 25), append(log.Volts, 0)
	}
	s := m.StateAt(1, 25)
	follow(m, &s, before, func(int) {})
	s.TempC = 25 // as the log of the recharge begins
	first, last := -1, 0
	follow(m, &s, log, func(i int) {
		log.Volts[i], _ = charge.Taken(m, s, -log.Amps[i])
		if log.Volts[i] >= absorbsV {
			last = i
			if first < 0 {
				first = i
			}
		}
	})
	if first < 10 || last-first < 10 || last > log.Rows()-10 {
		t.Fatalf("a recharge of %d rows with its absorption from %d to %d shows nothing", log.Rows(), first, last)
	}
	for phase, rows := range map[int][2]int{whole: {0, 0}, bulk: {0, first}, absorption: {first, last + 1}, afterwards: {last + 1, log.Rows()}} {
		wrong := *log
		wrong.Volts = slices.Clone(log.Volts)
		sign := 1.0
		if phase != absorption {
			sign = -1 // so that no row of another part rises to the absorption
		}
		for i := rows[0]; i < rows[1]; i++ {
			wrong.Volts[i] += 0.2 * sign
		}
		r, err := d.recharge(m, before, &wrong)
		if err != nil {
			t.Fatal(err)
		}
		for other := range whole {
			want := 0.0
			if other == phase {
				want = 0.2
			}
			if got := r.off[other].rms(); math.Abs(got-want) > 1e-9 {
				t.Errorf("wrong in part %d: part %d is off by %.3f V, want %.1f", phase, other, got, want)
			}
		}
	}
}

func TestAScaledChargeGivesBackWhatWasTaken(t *testing.T) {
	out := &cellfit.Log{TimeS: []float64{0, 1, 2}, ChargeAh: []float64{0, 1, 3}}
	back := &cellfit.Log{TimeS: []float64{0, 1, 2}, Amps: []float64{-1, -1, -1}, ChargeAh: []float64{0, -1, -2.4}}
	got, by := closed(back, out)
	if by != 1.25 || got.ChargeAh[2] != -3 || got.ChargeAh[1] != -1.25 || got.Amps[0] != -1 {
		t.Errorf("scaled by %g to %v", by, got.ChargeAh)
	}
	if back.ChargeAh[2] != -2.4 {
		t.Error("the log itself was changed")
	}
}

func TestTheLastLineCountsAndNamesWhatIsMissed(t *testing.T) {
	nan := math.NaN()
	for _, tt := range []struct {
		why  string
		row  row
		want string
	}{
		{"on the target", row{use: fittedTo, rms: 0.015, logAh: 1, modelAh: 1.0299}, ""},
		{"volts beyond it", row{use: fittedTo, rms: 0.0151, logAh: nan}, "voltage 1.51 %, target 1.5 %"},
		{"the same, kept aside", row{use: keptAside, rms: 0.0151, logAh: nan}, ""},
		{"partly fitted counts as fitted", row{use: acceptanceFitted, rms: 0.0151, logAh: nan}, "voltage 1.51 %, target 1.5 %"},
		{"charge beyond it", row{use: keptAside, rms: 0.01, logAh: 1, modelAh: 0.94}, "charge -6.0 %, target 5 %"},
		{"measured, but not computed", row{use: keptAside, rms: 0.01, logAh: 1, modelAh: nan}, "charge +NaN %, target 5 %"},
		{"no voltage", row{use: keptAside, rms: nan, logAh: nan}, "voltage NaN %, target 2.5 %"},
	} {
		tt.row.curve = "cell/curve"
		want := "1 of 1 rows meet the targets."
		if tt.want != "" {
			want = "0 of 1 rows meet the targets. Not met: cell/curve (" + tt.want + ")."
		}
		if got := summary([]row{tt.row}); got != want {
			t.Errorf("%s: %q, want %q", tt.why, got, want)
		}
	}
}

// A pulse that a pure resistance answers shows just that resistance, and what
// is logged below half charge is left out.
func TestPulsesAreSortedByTheirCurrent(t *testing.T) {
	d, m := fittedCell(t, "*_2p9ah")
	pulse := func(restV, amps, ohm float64) *cellfit.Log {
		return &cellfit.Log{TimeS: []float64{0, 10}, Volts: []float64{restV, restV - amps*ohm}, Amps: []float64{0, amps}, ChargeAh: []float64{0, amps / 360}}
	}
	by := d.byCurrent(m, []*cellfit.Log{pulse(4, 2.9, 0.05), pulse(4.05, 2.91, 0.07), pulse(4, 5.8, 0.04), pulse(3.3, 5.8, 0.2)})
	if len(by) != 2 || len(by[2.9].measured) != 2 || len(by[5.8].measured) != 1 {
		t.Fatalf("sorted into %v", by)
	}
	if got := median(by[2.9].measured); math.Abs(got-0.06) > 1e-9 {
		t.Errorf("%.4f Ohm, want 0.06", got)
	}
	// In the warmth the model's own resistance hardly depends on the current.
	if a, b := by[2.9].model[0], by[5.8].model[0]; math.Abs(a/b-1) > 0.05 || a < 0.02 || a > 0.06 {
		t.Errorf("model %.4f Ohm at 2.9 A and %.4f at 5.8 A", a, b)
	}
}

// Resistances at the end of pulses of 10 s, mOhm, at half and at 90 % charge
// (Kollmeyer 2018, the dataset's own columns): in the cold they fall as the
// current rises, in the warmth they do not.
func TestTheFittedCellGivesWayInTheColdAsItWasMeasured(t *testing.T) {
	_, m := fittedCell(t, "*_2p9ah")
	for _, c := range []struct{ restV, tempC, amps, seconds, mOhm float64 }{
		{3.6455, 0.36, 1.450, 9.9, 79.55},
		{3.6455, 0.36, 5.799, 9.9, 76.46},
		{3.6410, 0.35, 11.599, 9.9, 70.45},
		{4.0424, 0.56, 1.450, 9.9, 113.30},
		{4.0386, 0.56, 5.799, 9.9, 89.56},
		{4.0321, 0.55, 11.599, 9.9, 76.55},
		{4.0173, 0.56, 17.399, 9.9, 71.22},
	} {
		_, start, _ := battery.ChargeFromRest(m.Spec().Profile, c.restV, 1000, 25)
		s := m.StateAt(start, c.tempC)
		restV := m.TerminalV(&s, 0)
		step := m.Over(c.seconds / 99)
		for range 99 {
			step.Advance(&s, c.amps, c.tempC)
		}
		got := 1000 * (restV - m.TerminalV(&s, c.amps)) / c.amps
		if math.Abs(got/c.mOhm-1) > 0.12 {
			t.Errorf("%g A from %g V at %g degC: %.1f mOhm, measured %.1f", c.amps, c.restV, c.tempC, got, c.mOhm)
		}
	}
}

func TestAPulseTablesNameTellsItsTemperature(t *testing.T) {
	d := dataset{ambientC: 22}
	for name, want := range map[string]float64{"cell_hppc_25c": 25, "cell_hppc_10c": 10, "hppc_pulses_n20c": -20, "hppc_pulses": 22} {
		if got := d.ambientOf(name); got != want {
			t.Errorf("%s: %g degC, want %g", name, got, want)
		}
	}
}
