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
	"example.org/packcheck/setup"
)

// block is a 12 V lead-acid block with some health.
func block(t testing.TB, health float64) battery.Spec {
	return battery.Spec{Profile: profile(t, "agm"), CellsInSeries: 6, CapacityAh: 7, Health: health, ClosedShell: true}
}

func fitBlock(t testing.TB, o cellfit.FitOptions, logs ...*cellfit.Log) cellfit.Result {
	t.Helper()
	o.Chemistry, o.CellsInSeries, o.LabelAh = profile(t, "agm"), 6, 7
	r, err := cellfit.Fit(logs, o)
	if err != nil {
		t.Fatal(err)
	}
	return r
}

// follows reports whether the fitted cell stays near a log from end to end.
func follows(t testing.TB, r cellfit.Result, logs ...*cellfit.Log) {
	t.Helper()
	if !r.CellKnown {
		t.Fatalf("no cell: %s", r.NoCell)
	}
	for i, l := range logs {
		m, start, err := r.ModelOf(i)
		if err != nil {
			t.Fatal(err)
		}
		a := cellfit.Replay(m, l.Until(0.95*r.Options.CutoffV), cellfit.ReplayOptions{StartCharge: start})
		if limit := 0.02 * float64(r.Options.CellsInSeries) * r.Options.Chemistry.NominalV; a.RMSV > limit || a.WorstV > 3*limit {
			t.Errorf("log %d: %.3f V rms, %.3f V at worst", i, a.RMSV, a.WorstV)
		}
	}
}

// A log that begins partly charged covers a part of the charge; what it took
// out is not all that there is.
func TestAPartlyChargedBlockIsFollowed(t *testing.T) {
	t.Parallel()
	for _, c := range []struct {
		name        string
		start, amps float64
	}{
		{"nearly full, an hour's rate", 0.95, 7},
		{"three quarters full", 0.75, 3},
		{"half full, slow", 0.5, 1.4},
	} {
		t.Run(c.name, func(t *testing.T) {
			text := trip{spec: block(t, 1), start: c.start, current: always(c.amps), endV: 10.5, everyS: 10}.log(t)
			l := read(t, "time_s,voltage_v,current_a\n"+text)
			follows(t, fitBlock(t, cellfit.FitOptions{}, l), l)
		})
	}
}

// A battery that changed between its logs has one resistance and a capacity for
// each of them.
func TestLogsThatDisagreeInCapacityAreEachFollowed(t *testing.T) {
	t.Parallel()
	var logs []*cellfit.Log
	for i, health := range []float64{0.93, 0.97, 1.02, 1.05} {
		amps := 0.5 + float64(i)*0.8
		logs = append(logs, read(t, "time_s,voltage_v,current_a\n"+
			trip{spec: block(t, health), current: always(amps), endV: 10.3, everyS: 30}.log(t)))
	}
	r := fitBlock(t, cellfit.FitOptions{BeganFull: true}, logs...)
	follows(t, r, logs...)
	m, err := battery.New(block(t, 1))
	if err != nil {
		t.Fatal(err)
	}
	if is := m.MidOhm(); r.MidOhm.Known && !holds(r.MidOhm, is) {
		t.Errorf("resistance %.4f Ohm (%.4f to %.4f), is %.4f", r.MidOhm.Value, r.MidOhm.Low(), r.MidOhm.High(), is)
	}
}

// What no cell can do is not written down as one.
func TestNoCellAndNoResistanceFromLogsThatNoCellMakes(t *testing.T) {
	t.Parallel()
	// A block with a cell that fails at a third: two volts are gone at once.
	var b strings.Builder
	b.WriteString("time_s,voltage_v,current_a\n0,12.85,2\n")
	for k := 1; k < 60; k++ {
		volts := 12.6 - 0.01*float64(k)
		if k%20 > 10 {
			volts -= 1.5
		}
		fmt.Fprintf(&b, "%d,%.3f,2\n", 300*k, volts)
	}
	r := fitBlock(t, cellfit.FitOptions{CutoffV: 10.5}, read(t, b.String()))
	if r.CellKnown || !strings.Contains(r.NoCell, "log.csv") || r.MidOhm.Known {
		t.Errorf("cell %v (%q), resistance %+v", r.CellKnown, r.NoCell, r.MidOhm)
	}
	if err := r.WriteChemistry(&bytes.Buffer{}, "mine"); err == nil || !strings.Contains(err.Error(), r.NoCell) {
		t.Errorf("a chemistry was written, or no reason given: %v", err)
	}
}

// A discharge stopped early leaves the label's charge in place.
func TestADischargeStoppedEarlyKeepsTheLabel(t *testing.T) {
	t.Parallel()
	for _, endV := range []float64{19, 18.2, 17.4} {
		r := fit(t, cellfit.FitOptions{LabelAh: 5}, trip{spec: known(t), endV: endV, everyS: 4, current: drivingAndPausing(4)}.log(t))
		var file, pack bytes.Buffer
		if err := r.WriteChemistry(&file, "mine"); err != nil {
			t.Fatalf("to %g V: %v", endV, err)
		}
		set, err := chemistry.Builtin().Extend(&file, "mine.toml")
		if err != nil {
			t.Fatalf("to %g V: %v", endV, err)
		}
		p, _ := set.Profile("mine")
		if base := profile(t, "li-ion"); math.Abs(p.Capacity.Ratio-base.Capacity.Ratio) > 1e-9 {
			t.Errorf("to %g V: the cell holds %.3f of its label, want %.3f", endV, p.Capacity.Ratio, base.Capacity.Ratio)
		}
		// What came out is held at the least; where that is no more than a setup allows
		// for anyway, there is nothing to write.
		least := ""
		if r.AtLeastAh > 0.3*5 {
			least = fmt.Sprintf("health = \"%.3g to 100 %%, likely", 100*r.AtLeastAh/5)
		}
		if err := r.WritePack(&pack); err != nil || !strings.Contains(pack.String(), "capacity = \"5 Ah\"") ||
			!strings.Contains(pack.String(), least) || (least != "") != strings.Contains(pack.String(), "health") {
			t.Errorf("to %g V: %v\n%s", endV, err, pack.String())
		}
	}
}

// A discharge from full that ended shortly before the cutoff tells the capacity nearly
// as well as one that went on; whatever is written holds at least what came out.
func TestADischargeThatNearlyReachedTheCutoffTellsTheCapacity(t *testing.T) {
	t.Parallel()
	for _, c := range []struct {
		name    string
		current func(float64) float64
		endV    float64
		known   bool
	}{
		{"one current, to the cutoff", always(8), 15, true},
		{"one current, shortly before it", always(8), 15.1, true},
		{"one current, where the volts still fall slowly", always(8), 16.5, false},
		{"driving and pausing, shortly before it", drivingAndPausing(8), 15.2, true},
		{"driving and pausing, where the volts still fall slowly", drivingAndPausing(8), 17, false},
	} {
		spec := known(t)
		spec.Health = 0.7
		// The last row of a log lies below its end: it is taken away.
		log := trip{spec: spec, endV: c.endV, everyS: 5, current: c.current}.log(t)
		if c.endV > 15 {
			log = log[:strings.LastIndexByte(strings.TrimRight(log, "\n"), '\n')+1]
		}
		r := fit(t, cellfit.FitOptions{LabelAh: 5}, log)
		came := r.AtLeastAh / 5 // with what rows far apart leave open
		if c.known != r.Health.Known || c.known && (r.Health.Low() > 0.7 || r.Health.High() < 0.7 || r.Health.Sigma > 0.1) {
			t.Errorf("%s: health %+v, is 0.70", c.name, r.Health)
		}
		var pack bytes.Buffer
		if err := r.WritePack(&pack); err != nil {
			t.Fatal(err)
		}
		s, err := setup.Read(&pack, "pack.toml")
		if err != nil {
			t.Fatal(err)
		}
		if h := s.Pack.Health; !s.Pack.Tested.Yes || h.Low > 0.7 || h.High < 0.7 || h.Low < came-0.001 || came > r.Runs[0].Ah/5 {
			t.Errorf("%s: written is a health of %s, at least %.3f came out, is 0.70", c.name, h.Text, came)
		}
	}
}

// The headline, the written pack and the written cell say one resistance, and it
// is that of the steps.
func TestThereIsOneResistance(t *testing.T) {
	t.Parallel()
	// A cell whose resistance over charge is of another shape than the profile's.
	odd := known(t)
	odd.Profile.Resistance.OhmAh = chemistry.Curve{X: []float64{0, 0.2, 0.5, 0.8, 1}, Y: []float64{0.09, 0.06, 0.05, 0.04, 0.03}}
	for _, c := range []struct {
		name    string
		spec    battery.Spec
		current func(float64) float64
	}{
		{"many steps", odd, drivingAndPausing(8)},
		{"one step, at full charge", odd, always(8)},
		{"as the profile says, one step", known(t), always(8)},
	} {
		t.Run(c.name, func(t *testing.T) {
			r := fit(t, cellfit.FitOptions{LabelAh: 5}, trip{spec: c.spec, endV: 14.9, everyS: 1, current: c.current}.log(t))
			m, err := r.Model()
			if err != nil {
				t.Fatal(err)
			}
			if off := m.MidOhm()/r.MidOhm.Value - 1; math.Abs(off) > 0.005 {
				t.Errorf("headline %.4f Ohm, fitted cell %.4f Ohm", r.MidOhm.Value, m.MidOhm())
			}
			truth, err := battery.New(c.spec)
			if err != nil {
				t.Fatal(err)
			}
			if !holds(r.MidOhm, truth.MidOhm()) {
				t.Errorf("%.4f Ohm (%.4f to %.4f), is %.4f", r.MidOhm.Value, r.MidOhm.Low(), r.MidOhm.High(), truth.MidOhm())
			}
			line := fmt.Sprintf("likely %.3g\"", 1000*r.MidOhm.Value)
			for _, write := range []func(*bytes.Buffer) error{
				func(b *bytes.Buffer) error { return r.WritePack(b) },
				func(b *bytes.Buffer) error { return r.WriteOwnPack(b, "mine", "mine.toml") },
			} {
				var b bytes.Buffer
				if err := write(&b); err != nil || !strings.Contains(b.String(), line) {
					t.Errorf("%v: no %s in\n%s", err, line, b.String())
				}
			}
			for _, o := range r.Ohms {
				fitted := m.MidOhm() * r.Cell.Profile.Resistance.OhmAh.At(o.Charge) / r.Cell.Profile.Resistance.OhmAh.At(0.5)
				if o.Steps > 0 && !holds(o.Ohm, fitted) {
					t.Errorf("%.0f %% charged: steps say %.4f to %.4f Ohm, the fitted cell %.4f", 100*o.Charge, o.Ohm.Low(), o.Ohm.High(), fitted)
				}
			}
		})
	}
}

// One current from end to end tells voltage and resistance together, so the fit
// does not part them.
func TestOneCurrentTellsNoResistance(t *testing.T) {
	t.Parallel()
	for _, tempC := range []float64{25, 0} {
		for _, amps := range []float64{1, 12} {
			m, err := battery.New(known(t))
			if err != nil {
				t.Fatal(err)
			}
			l := logged(m, 1, tempC, 120/amps, [2]float64{amps, 3.6 / amps * 3600})
			l.TimeS, l.Volts, l.Amps, l.ChargeAh, l.TempC = l.TimeS[1:], l.Volts[1:], l.Amps[1:], l.ChargeAh[1:], l.TempC[1:] // the rest
			r, err := cellfit.Fit([]*cellfit.Log{l}, cellfit.FitOptions{Chemistry: profile(t, "li-ion"), CellsInSeries: 5, LabelAh: 5})
			if err != nil {
				t.Fatal(err)
			}
			if r.MidOhm.Known || len(r.Ohms) > 0 {
				t.Errorf("%g A at %g degC: resistance %+v, %+v", amps, tempC, r.MidOhm, r.Ohms)
			}
		}
	}
}
