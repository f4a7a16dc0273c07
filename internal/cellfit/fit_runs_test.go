package cellfit_test

import (
	"bytes"
	"errors"
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"

	"example.org/packcheck/battery"
	"example.org/packcheck/chemistry"
	"example.org/packcheck/internal/cellfit"
)

// known is the pack of the tests below.
func known(t testing.TB) battery.Spec {
	return battery.Spec{Profile: profile(t, "li-ion"), CellsInSeries: 5, CapacityAh: 5, Health: 0.9, ResistanceOhm: 0.06, ClosedShell: true}
}

func fit(t testing.TB, o cellfit.FitOptions, logs ...string) cellfit.Result {
	t.Helper()
	var all []*cellfit.Log
	for _, text := range logs {
		all = append(all, read(t, "time_s,voltage_v,current_a\n"+text))
	}
	o.Chemistry, o.CellsInSeries = profile(t, "li-ion"), 5
	r, err := cellfit.Fit(all, o)
	if err != nil {
		t.Fatal(err)
	}
	return r
}

func holds(e cellfit.Estimate, x float64) bool { return e.Known && e.Low() <= x && x <= e.High() }

// Pulse tests rest for an hour between their steps, and people go to lunch.
func TestALongRestDoesNotEndADischarge(t *testing.T) {
	t.Parallel()
	r := fit(t, cellfit.FitOptions{LabelAh: 5}, trip{spec: known(t), endV: 14.9, everyS: 2, current: func(s float64) float64 {
		if s > 600 && s < 4800 || s > 6000 && s < 9600 {
			return 0
		}
		return 5
	}}.log(t))
	if len(r.Runs) != 1 || !r.Runs[0].ReachedCutoff || !r.Runs[0].Steady {
		t.Fatalf("runs %+v, want one steady one to the cutoff", r.Runs)
	}
	if !holds(r.Health, 0.9) || !holds(r.MidOhm, 0.06) {
		t.Errorf("health %+v, resistance %+v; is 0.9 and 0.06 Ohm", r.Health, r.MidOhm)
	}
}

// Without a label and without reaching the cutoff there is no capacity, but the
// steps must still be put where the voltage says that they belong.
func TestStepsOfAPartialLogStandAtTheRightCharge(t *testing.T) {
	t.Parallel()
	r := fit(t, cellfit.FitOptions{}, trip{spec: known(t), endV: 18.2, everyS: 0.5, current: drivingAndPausing(4)}.log(t))
	if r.CapacityAh.Known || r.Health.Known {
		t.Errorf("capacity %+v, health %+v from a log that stops half way", r.CapacityAh, r.Health)
	}
	// 18.2 V under 4 A and 0.06 Ohm is 3.69 V a cell: about half charge.
	if n := len(r.Ohms); n < 4 || r.Ohms[0].Charge > 0.6 || r.Ohms[0].Charge < 0.3 || r.Ohms[n-1].Charge < 0.9 {
		t.Errorf("steps at %+v, want from about half charge to full", r.Ohms)
	}
	if !holds(r.MidOhm, 0.06) {
		t.Errorf("resistance %+v, is 0.06 Ohm", r.MidOhm)
	}
}

// A logger that writes every seven seconds does not know when, in between, the
// pedal was lifted.
func TestRowsFarApartWidenTheCapacity(t *testing.T) {
	t.Parallel()
	log := func(everyS float64) string {
		return trip{spec: known(t), endV: 14.9, everyS: 0.5, current: drivingAndPausing(8), keepS: everyS}.log(t)
	}
	close := fit(t, cellfit.FitOptions{LabelAh: 5}, log(0.5))
	apart := fit(t, cellfit.FitOptions{LabelAh: 5}, log(7))
	for _, r := range []cellfit.Result{close, apart} {
		if !holds(r.Health, 0.9) {
			t.Errorf("health %.3f (%.3f to %.3f), is 0.9", r.Health.Value, r.Health.Low(), r.Health.High())
		}
	}
	if apart.CapacityAh.Sigma <= close.CapacityAh.Sigma {
		t.Errorf("standard uncertainty %.3f Ah with rows 7 s apart, %.3f Ah with rows 0.5 s apart", apart.CapacityAh.Sigma, close.CapacityAh.Sigma)
	}
}

// A battery that lost a tenth between two logs is not averaged in silence.
func TestDischargesThatDisagreeAreSaid(t *testing.T) {
	t.Parallel()
	young, old := known(t), known(t)
	old.Health = 0.7
	r := fit(t, cellfit.FitOptions{LabelAh: 5},
		trip{spec: young, endV: 14.9, everyS: 10, current: always(5)}.log(t),
		trip{spec: old, endV: 14.9, everyS: 10, current: always(5)}.log(t))
	if !slices.ContainsFunc(r.Notes, func(n string) bool { return strings.Contains(n, "do not agree") }) {
		t.Errorf("notes %q", r.Notes)
	}
	if !holds(r.Health, 0.7) || !holds(r.Health, 0.9) {
		t.Errorf("health %.2f to %.2f leaves one of the logs out", r.Health.Low(), r.Health.High())
	}
}

// The voltage of a full pack sags by whatever load is on when the log begins;
// who knows that it was full can say so.
func TestALogThatBeginsUnderLoad(t *testing.T) {
	t.Parallel()
	text := trip{spec: known(t), endV: 14.9, everyS: 2, current: always(5)}.log(t)
	lines := strings.SplitAfter(text, "\n")
	loaded := strings.Join(lines[40:], "") // the rest and the first twenty seconds are gone
	for _, full := range []bool{false, true} {
		r := fit(t, cellfit.FitOptions{LabelAh: 5, BeganFull: full}, loaded)
		if !holds(r.Health, 0.9) {
			t.Errorf("said to be full %v: health %.3f (%.3f to %.3f), is 0.9", full, r.Health.Value, r.Health.Low(), r.Health.High())
		}
	}
}

// A pack that gives more than its label, and one whose resistance no step
// shows, must still make tables that a setup takes.
func TestWrittenPackKeepsToWhatASetupTakes(t *testing.T) {
	t.Parallel()
	better := known(t)
	better.Health = 1
	better.CapacityAh = 6
	r := fit(t, cellfit.FitOptions{LabelAh: 5}, trip{spec: better, endV: 14.9, everyS: 2, current: always(5)}.log(t))
	if r.Health.Value < 1.1 {
		t.Fatalf("health %+v, is 1.2", r.Health)
	}
	var pack bytes.Buffer
	if err := r.WritePack(&pack); err != nil || !strings.Contains(pack.String(), "health = \"100 %\"\n") {
		t.Errorf("%v\n%s", err, pack.String())
	}
	lines := strings.SplitAfter(trip{spec: known(t), endV: 14.9, everyS: 60, current: always(1)}.log(t), "\n")
	r = fit(t, cellfit.FitOptions{LabelAh: 5}, strings.Join(lines[2:], ""))
	pack.Reset()
	if err := r.WritePack(&pack); err != nil || strings.Contains(pack.String(), " 0 to ") {
		t.Errorf("%v\n%s", err, pack.String())
	}
}

// What is written of a log that stops half way says that it bounds the capacity from
// below only, by how much, and what to log to know more; that of a full one does not.
func TestWhatIsWrittenOfAPartialLogSaysSo(t *testing.T) {
	t.Parallel()
	for endV, bounded := range map[float64]bool{18.2: true, 14.9: false} {
		r := fit(t, cellfit.FitOptions{LabelAh: 5}, trip{spec: known(t), endV: endV, everyS: 0.5, current: drivingAndPausing(4)}.log(t))
		var pack, cell bytes.Buffer
		if err := errors.Join(r.WriteOwnPack(&pack, "part", "part.toml"), r.WriteChemistry(&cell, "part")); err != nil {
			t.Fatal(err)
		}
		if r.BoundedOnly() != bounded {
			t.Errorf("to %g V: bounded only %v, capacity %+v", endV, r.BoundedOnly(), r.CapacityAh)
		}
		for _, text := range []string{pack.String(), cell.String()} {
			for _, want := range []string{
				fmt.Sprintf("# The log bounds the capacity from below only,\n# by the %.3g Ah that came out.\n", r.AtLeastAh),
				"# Minutes computed from this rest on the label", "# To know more, log one discharge from full and rested\n# down to 15 V,",
			} {
				if strings.Contains(text, want) != bounded {
					t.Errorf("to %g V: %q is there %v, want %v:\n%.600s", endV, want, !bounded, bounded, text)
				}
			}
		}
		if strings.Contains(cell.String(), `known = "computed from a log that bounds the capacity from below only"`) != bounded {
			t.Errorf("to %g V: the source says %.600s", endV, cell.String())
		}
		if _, err := chemistry.Builtin().Extend(&cell, "part.toml"); err != nil {
			t.Error(err)
		}
	}
}

// The chemistry says what a new pack holds and the pack's health what is left:
// put together, with the pack's resistance, they must do what the log did.
func TestOwnChemistryAndOwnPackGoTogether(t *testing.T) {
	t.Parallel()
	spec := known(t)
	spec.Health = 0.75
	r := fit(t, cellfit.FitOptions{LabelAh: 5, RateHours: 10}, trip{spec: spec, endV: 14.9, everyS: 1, current: drivingAndPausing(7)}.log(t))
	var file, pack bytes.Buffer
	if err := r.WriteChemistry(&file, "worn-pack"); err != nil {
		t.Fatal(err)
	}
	set, err := chemistry.Builtin().Extend(&file, "worn-pack.toml")
	if err != nil {
		t.Fatal(err)
	}
	p, _ := set.Profile("worn-pack")
	if err := r.WriteOwnPack(&pack, "worn-pack", "worn-pack.toml"); err != nil {
		t.Fatal(err)
	}
	for _, want := range []string{"chemistry = \"worn-pack\"\n", "chemistry_file = \"worn-pack.toml\"\n", "rate = \"10 h\"\n"} {
		if !strings.Contains(pack.String(), want) {
			t.Errorf("no %q in\n%s", want, pack.String())
		}
	}
	again, err := battery.New(battery.Spec{
		Profile: p, CellsInSeries: 5, CapacityAh: 5, RateHours: 10, Health: r.Health.Value, ResistanceFactor: 1, ClosedShell: true,
	})
	if err != nil {
		t.Fatal(err)
	}
	was, err := battery.New(spec)
	if err != nil {
		t.Fatal(err)
	}
	for _, amps := range []float64{3, 7, 12} {
		got := again.Discharge(again.StateAt(1, 25), amps, 15, 25).Ah
		want := was.Discharge(was.StateAt(1, 25), amps, 15, 25).Ah
		if math.Abs(got/want-1) > 0.03 {
			t.Errorf("%g A: the fitted pack gives %.3f Ah, the logged one %.3f Ah", amps, got, want)
		}
	}
}
