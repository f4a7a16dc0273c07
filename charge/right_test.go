package charge_test

import (
	"math"
	"strings"
	"testing"

	"example.org/packcheck/charge"
)

// What is advised is no charger that is refused when it is bought, and of the packs of two
// the volts are those of whatever hangs on it.
func TestTheRightChargerSuitsAndSaysWhatHangsOnIt(t *testing.T) {
	const roomOfAStep = 150 - len("another charger: , plug centre positive as jack") // which a page never cuts a step below
	for _, tt := range []struct {
		name  string
		chem  string
		cells int
		do    func(*charge.Plugged)
		endV  float64
		brief string
	}{
		{"a block", "agm", 6, nil, 14.7, "for lead-acid, 14.7 V, at most 2.1 A, stops by itself"},
		{"gel", "gel", 6, nil, 14.1, "for lead-acid, 14.1 V, at most 1.7 A, stops by itself"},
		{"iron phosphate", "lifepo4", 4, nil, 14.4, "for lithium iron phosphate, 14.4 V, at most 3.5 A, stops by itself"},
		{"two blocks at the vehicle's jack", "agm", 6, func(p *charge.Plugged) { p.Joined, p.Port = charge.InSeries, charge.PortVehicle }, 29.4, "for lead-acid, 29.4 V for the two in series, at most 2.1 A, stops by itself"},
		{"two blocks whose charger is one for both", "agm", 12, func(p *charge.Plugged) { p.Joined, p.MadeFor = charge.InSeries, charge.ForPair }, 29.4, "for lead-acid, 29.4 V for the two in series, at most 2.1 A, stops by itself"},
		{"two blocks that are no pair", "agm", 6, func(p *charge.Plugged) { p.Joined, p.Port, p.Unlike = charge.InSeries, charge.PortVehicle, true }, 14.7, "for lead-acid, 14.7 V for each by itself, at most 2.1 A, stops by itself"},
		{"two blocks of which no more is told", "agm", 6, func(p *charge.Plugged) { p.Joined = charge.InSeries }, 14.7, "for lead-acid, 14.7 V for each by itself, at most 2.1 A, stops by itself"},
		{"two packs of lithium, whatever the charger is for", "lifepo4", 8, func(p *charge.Plugged) { p.Joined, p.MadeFor = charge.InSeries, charge.ForPair }, 14.4, "for lithium iron phosphate, 14.4 V for each by itself, at most 3.5 A, stops by itself"},
		{"one that may hold less than half", "lifepo4", 4, func(p *charge.Plugged) { p.LabelAh, p.LeastAh = 7, 2.9 }, 14.4, "for lithium iron phosphate, 14.4 V, at most 1.4 A, stops by itself"},
		{"nickel", "nimh", 8, nil, 0, "for nickel-metal hydride, 8 cells, that notices when they are full"},
		{"one cell of nickel", "nimh", 1, nil, 0, "for nickel-metal hydride, 1 cell, that notices when they are full"},
		{"a tool pack", "li-ion", 5, func(p *charge.Plugged) { p.ToolPack = true }, 0, "only the pack maker's own charger"},
	} {
		p := plugged(t, tt.chem, tt.cells, 7, "12 V")
		p.Port = charge.PortUnknown
		if tt.do != nil {
			tt.do(&p)
		}
		r := p.Right()
		if math.Abs(r.EndV-tt.endV) > 1e-9 || r.Brief() != tt.brief {
			t.Errorf("%s: %g V, %q; want %g V, %q", tt.name, r.EndV, r.Brief(), tt.endV, tt.brief)
		}
		if len(r.Brief()) > roomOfAStep {
			t.Errorf("%s: %q has %d characters; a page may cut it off after %d", tt.name, r.Brief(), len(r.Brief()), roomOfAStep)
		}
		if r.EndV > 0 && !r.Each && p.MadeFor != charge.ForPair && !r.Pair {
			bought := charge.Label{PrintedV: r.EndV, PrintedA: r.MostA, MadeFor: r.MadeFor, Output: charge.DC, Stops: charge.StopsByItself}
			p.Charger, p.Port = bought.Charger(), charge.PortPack
			if v := charge.Match(p); v.Fit < charge.WithCare {
				t.Errorf("%s: the advised charger is told %v: %+v", tt.name, v.Fit, v.Findings)
			}
		}
	}
}

// A charger that takes days is told beside the one that the battery allows, and the charge
// is paused overnight rather than cut short or left alone.
func TestASlowChargerIsPausedOvernight(t *testing.T) {
	for _, f := range charge.Match(plugged(t, "agm", 6, 12, "14.7 V 500 mA DC lead acid automatic")).Findings {
		if f.Code == charge.CodeSlow {
			if want := "One of up to 3.6 A is sooner done. With this one unplug it overnight and go on next day"; !strings.HasPrefix(f.Advice, want) {
				t.Errorf("%q, want %q", f.Advice, want)
			}
			return
		}
	}
	t.Error("not told")
}

// However little a pack is said to take, there is an answer.
func TestNextToNoCurrentIsNone(t *testing.T) {
	for _, amps := range []float64{5e-324, 1e-308, 1e-12} {
		p := plugged(t, "agm", 6, 7, "12 V")
		p.SheetA = amps
		if r := p.Right(); r.MostA != 0 {
			t.Errorf("at most %g A where the pack takes %g A", r.MostA, amps)
		}
	}
	p := plugged(t, "agm", 6, 7, "14.7 V 1 A DC for lead acid")
	c, err := p.Case(p.Pack.StateAt(0, 20))
	if err != nil {
		t.Fatal(err)
	}
	for _, step := range []float64{1e-9, math.NaN(), 7200} {
		c.StepS = step
		if _, err := charge.Simulate(c); err == nil {
			t.Errorf("a charge in steps of %g s was computed", step)
		}
	}
}
