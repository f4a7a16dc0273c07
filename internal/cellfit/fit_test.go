package cellfit_test

import (
	"bytes"
	"fmt"
	"math"
	"strings"
	"testing"

	"example.org/packcheck/battery"
	"example.org/packcheck/chemistry"
	"example.org/packcheck/internal/cellfit"
)

func profile(t testing.TB, name string) chemistry.Profile {
	t.Helper()
	p, ok := chemistry.Builtin().Profile(name)
	if !ok {
		t.Fatalf("no profile %s", name)
	}
	return p
}

// trip is a discharge of a model pack, as a logger would have seen it.
type trip struct {
	spec    battery.Spec
	start   float64                       // charge, 0..1; 0 = full
	current func(seconds float64) float64 // after a minute of rest
	endV    float64
	everyS  float64
	keepS   float64 // only a row every so often is written; 0 = all
	format  string  // of time, volts, amps; empty = "%.3f,%.4f,%.4f\n"
}

func (x trip) log(t testing.TB) string {
	t.Helper()
	m, err := battery.New(x.spec)
	if err != nil {
		t.Fatal(err)
	}
	if x.format == "" {
		x.format = "%.3f,%.4f,%.4f\n"
	}
	var b strings.Builder
	if x.start == 0 {
		x.start = 1
	}
	s := m.StateAt(x.start, 25)
	step := m.Over(x.everyS)
	for k := range 5_000_000 {
		at, i := float64(k)*x.everyS, 0.0
		if at >= 60 {
			i = x.current(at - 60)
		}
		v := m.TerminalV(&s, i)
		if last := v < x.endV; last || x.keepS == 0 || math.Mod(at+1e-9, x.keepS) < x.everyS {
			fmt.Fprintf(&b, x.format, at, v, i)
		}
		if v < x.endV {
			break
		}
		step.Advance(&s, i, 25)
	}
	return b.String()
}

func read(t testing.TB, text string) *cellfit.Log {
	t.Helper()
	l, err := cellfit.Read(strings.NewReader(text), cellfit.Options{Name: "log.csv"})
	if err != nil {
		t.Fatal(err)
	}
	return l
}

func always(amps float64) func(float64) float64 { return func(float64) float64 { return amps } }

// drivingAndPausing draws amps for 25 s of every 35 s.
func drivingAndPausing(amps float64) func(float64) float64 {
	return func(s float64) float64 {
		if math.Mod(s, 35) < 25 {
			return amps
		}
		return 0
	}
}

// A pack whose capacity and resistance are known is discharged on paper; the
// fit must find both again within what it says of its own uncertainty.
func TestFitFindsThePackThatWasLogged(t *testing.T) {
	t.Parallel()
	p := profile(t, "li-ion")
	for _, c := range []struct {
		name    string
		health  float64
		ohm     float64 // of the whole pack at half charge
		current func(float64) float64
	}{
		{"new, driving and pausing", 1, 0.050, drivingAndPausing(8)},
		{"worn, driving and pausing", 0.78, 0.090, drivingAndPausing(8)},
		{"new, one current", 1, 0.050, always(5)},
	} {
		t.Run(c.name, func(t *testing.T) {
			spec := battery.Spec{Profile: p, CellsInSeries: 5, CapacityAh: 5, Health: c.health, ResistanceOhm: c.ohm}
			l := read(t, "time_s,voltage_v,current_a\n"+trip{spec: spec, current: c.current, endV: 14.9, everyS: 1}.log(t))
			r, err := cellfit.Fit([]*cellfit.Log{l}, cellfit.FitOptions{Chemistry: p, CellsInSeries: 5, LabelAh: 5})
			if err != nil {
				t.Fatal(err)
			}
			if !r.Health.Known || c.health < r.Health.Low() || c.health > r.Health.High() {
				t.Errorf("health %.3f (%.3f to %.3f), is %.2f", r.Health.Value, r.Health.Low(), r.Health.High(), c.health)
			}
			// Rows a second apart do not tell how much of a step the fast branch
			// has already taken, and the fit says so.
			if !r.MidOhm.Known || c.ohm < r.MidOhm.Low() || c.ohm > r.MidOhm.High() || r.MidOhm.Sigma > 0.2*c.ohm {
				t.Errorf("resistance %.4f Ohm (%.4f to %.4f), is %.4f", r.MidOhm.Value, r.MidOhm.Low(), r.MidOhm.High(), c.ohm)
			}
		})
	}
}

func TestFitFindsTheExponentOfAPeukertBattery(t *testing.T) {
	t.Parallel()
	// Three runs that last exactly as the law says; the fit sees nothing but
	// the logs.
	p := profile(t, "agm")
	law := battery.Peukert{CapacityAh: 7.5, Hours: 20, Exponent: 1.25}
	var logs []*cellfit.Log
	for _, amps := range []float64{0.375, 1.5, 4.5} {
		hours := law.LastsH(amps)
		var b strings.Builder
		b.WriteString("t (h);U (V);I (A)\n0;12,85;0\n")
		for k := range 101 {
			at := hours * float64(k) / 100
			fmt.Fprint(&b, strings.ReplaceAll(fmt.Sprintf("%.6f;%.4f;%.4f\n", at+0.01, 12.7-2.2*at/hours-1e-6, amps), ".", ","))
		}
		logs = append(logs, read(t, b.String()))
	}
	r, err := cellfit.Fit(logs, cellfit.FitOptions{Chemistry: p, CellsInSeries: 6, LabelAh: 7.5, CutoffV: 10.5})
	if err != nil {
		t.Fatal(err)
	}
	if !r.Peukert.Known || math.Abs(r.Peukert.Value-1.25) > 2*r.Peukert.Sigma+0.002 || r.Peukert.Sigma > 0.02 {
		t.Errorf("exponent %+v, is 1.25", r.Peukert)
	}
}

func TestFitWritesFilesThatLoad(t *testing.T) {
	t.Parallel()
	p := profile(t, "li-ion")
	spec := battery.Spec{Profile: p, CellsInSeries: 5, CapacityAh: 4, ResistanceFactor: 1.6}
	l := read(t, "s,V,A\n"+trip{spec: spec, current: drivingAndPausing(7), endV: 14.9, everyS: 1}.log(t))
	r, err := cellfit.Fit([]*cellfit.Log{l}, cellfit.FitOptions{Chemistry: p, CellsInSeries: 5, LabelAh: 4})
	if err != nil {
		t.Fatal(err)
	}
	var file bytes.Buffer
	if err := r.WriteChemistry(&file, "my-pack"); err != nil {
		t.Fatal(err)
	}
	set, err := chemistry.Builtin().Extend(&file, "my-pack.toml")
	if err != nil {
		t.Fatalf("the written chemistry does not load: %v", err)
	}
	mine, _ := set.Profile("my-pack")
	m, err := battery.New(battery.Spec{Profile: mine, CellsInSeries: 5, CapacityAh: 4})
	if err != nil {
		t.Fatal(err)
	}
	a := cellfit.Replay(m, l, cellfit.ReplayOptions{CutoffV: 15})
	if a.RMSV > 0.015*18 {
		t.Errorf("the fitted chemistry is %.3f V rms off the log it was fitted to", a.RMSV)
	}
	var pack bytes.Buffer
	if err := r.WritePack(&pack); err != nil || !strings.HasPrefix(pack.String(), "[pack]\nchemistry = \"li-ion\"\n") {
		t.Errorf("pack table: %v\n%s", err, pack.String())
	}
}

func TestFitSaysWhatIsWrong(t *testing.T) {
	t.Parallel()
	p := profile(t, "li-ion")
	l := read(t, "s,V,A\n"+trip{spec: battery.Spec{Profile: p, CellsInSeries: 5, CapacityAh: 4}, current: always(4), endV: 16, everyS: 5}.log(t))
	for _, c := range []struct {
		name  string
		o     cellfit.FitOptions
		wants string
	}{
		{"a wrong cell count", cellfit.FitOptions{Chemistry: p, CellsInSeries: 10}, "number of cells or the chemistry is wrong"},
		{"no cells", cellfit.FitOptions{Chemistry: p}, "at least 1"},
	} {
		_, err := cellfit.Fit([]*cellfit.Log{l}, c.o)
		if err == nil || !strings.Contains(err.Error(), c.wants) {
			t.Errorf("%s: %v, want %q", c.name, err, c.wants)
		}
	}
	r, err := cellfit.Fit([]*cellfit.Log{l}, cellfit.FitOptions{Chemistry: p, CellsInSeries: 5, LabelAh: 4})
	if err != nil || r.Health.Known {
		t.Errorf("a log that stops at 16 V tells a health of %+v (%v)", r.Health, err)
	}
}

// longLog is a drive of several hours at a row every everyS seconds.
func longLog(t testing.TB, everyS float64) string {
	spec := battery.Spec{Profile: profile(t, "li-ion"), CellsInSeries: 5, CapacityAh: 5}
	return "time_s,voltage_v,current_a\n" + trip{spec: spec, current: drivingAndPausing(6), endV: 14.9, everyS: everyS}.log(t)
}

// The aim for reading and fitting a log of 50 MB is five seconds.
func BenchmarkReadAndFitFiftyMegabytes(b *testing.B) {
	text, p := longLog(b, 0.002), profile(b, "li-ion")
	b.SetBytes(int64(len(text)))
	for b.Loop() {
		if _, err := cellfit.Fit([]*cellfit.Log{read(b, text)}, cellfit.FitOptions{Chemistry: p, CellsInSeries: 5, LabelAh: 5}); err != nil {
			b.Fatal(err)
		}
	}
}
