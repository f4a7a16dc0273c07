package reckon_test

import (
	"math"
	"strings"
	"testing"

	"example.org/packcheck/answer"
	"example.org/packcheck/internal/reckon"
	"example.org/packcheck/setup"
)

// tractor is a vehicle, and bench a load, that these tests look at.
const (
	tractor = `
[rider]
mass = "20 kg"
[vehicle]
ground = "lawn"
design_voltage = "12 V"
[motors]
count = 2
can = "550"
[pack]
chemistry = "li-ion"
label = "20 V max 5 Ah"
[cutoff.module]
opens_at = "15.5 V"
delay = "2 s"
`
	bench = `
[pack]
chemistry = "agm"
label = "12 V 7 Ah"
[load]
current = "1 A"
until = "11 V"
`
)

func assessed(t *testing.T, text string) *answer.Assessment {
	t.Helper()
	s, err := setup.Read(strings.NewReader(text), "a test")
	if err != nil {
		t.Fatal(err)
	}
	a, err := reckon.Assess(s, reckon.Options{Draws: 32})
	if err != nil {
		t.Fatal(err)
	}
	return a
}

func TestSeriesFollowTheRepresentativeCase(t *testing.T) {
	for name, text := range map[string]string{"vehicle": tractor, "bench": bench} {
		a := assessed(t, text)
		s := a.Series
		if s == nil || len(s.Outing) < 20 || len(s.Outing) > answer.MostPoints || len(s.Launch) > answer.MostPoints {
			t.Fatalf("%s: series of the wrong size", name)
		}
		for i := 1; i < len(s.Outing); i++ {
			if s.Outing[i].ClockMin < s.Outing[i-1].ClockMin {
				t.Errorf("%s: time runs backwards at %d", name, i)
			}
		}
		first, last := s.Outing[0], s.Outing[len(s.Outing)-1]
		if first.Charge < 0.9 || last.Charge > 0.5 || last.PackV >= first.PackV {
			t.Errorf("%s: charge goes from %.2f to %.2f and volts from %.1f to %.1f", name, first.Charge, last.Charge, first.PackV, last.PackV)
		}
		if s.EndedBy == "" || len(s.Lines) == 0 || !s.Lines[len(s.Lines)-1].Harm {
			t.Errorf("%s: ended by %q, lines %v", name, s.EndedBy, s.Lines)
		}
		if name == "bench" && len(s.Launch) > 0 {
			t.Error("a bench load has a launch")
		}
	}
}

// The thinned launch keeps the peak that the answer tells.
func TestThinningKeepsThePeakOfTheLaunch(t *testing.T) {
	a := assessed(t, tractor)
	peak := 0.0
	for _, p := range a.Series.Launch {
		peak = max(peak, p.BatteryA)
	}
	if want := a.Launch.CaseGives.PeakBatteryA; math.Abs(peak-want) > 0.01*want {
		t.Errorf("the series peaks at %.2f A, the launch at %.2f A", peak, want)
	}
	if n := a.Series.Lines; len(n) != 2 || n[0].V != 15.5 || n[0].Harm {
		t.Errorf("lines are %v, want the cutoff at 15.5 V and the harm limit", n)
	}
	if a.Series.WindingLimitC < 100 {
		t.Errorf("the windings' limit is %.0f C", a.Series.WindingLimitC)
	}
}

// Behind a step-down converter the course of a start is told in the pack's amps, like the
// figure beside it.
func TestTheCourseOfAStartIsInThePacksAmps(t *testing.T) {
	values := swap()
	values["controller.kind"], values["controller.current_limit"], values["controller.converter_voltage"], values["controller.converter_limit"] = "chopper", "20 A", "12 V", "30 A"
	a := fewDraws(t, values)
	peak := 0.0
	for _, p := range a.Series.Launch {
		peak = max(peak, p.BatteryA)
	}
	if r := a.Ranges["launch.peak_battery_a"]; peak < 0.7*r.Low || peak > 1.3*r.High || peak > 0.95*a.Launch.CaseGives.PeakBatteryA {
		t.Errorf("the course peaks at %.1f A, the figure is %.1f to %.1f A; behind the converter it is %.1f A", peak, r.Low, r.High, a.Launch.CaseGives.PeakBatteryA)
	}
}
