package charge_test

import (
	"math"
	"testing"

	"example.org/packcheck/answer"
	"example.org/packcheck/battery"
	"example.org/packcheck/charge"
)

var nan, inf = math.NaN(), math.Inf(1)

// Without a pack every answer is a refusal, and none ends the program.
func TestWithoutAPackTheAnswerIsARefusal(t *testing.T) {
	var none charge.Plugged
	isNaN := func(vs ...float64) bool {
		for _, v := range vs {
			if !math.IsNaN(v) {
				return false
			}
		}
		return true
	}
	wait := charge.WaitFor(nil, 20, 20)
	volts, stored := charge.Taken(nil, battery.State{}, 1)
	_, noCase := none.Case(battery.State{})
	_, noCharge := charge.Simulate(charge.Case{CurrentA: 1, EndV: 14})
	_, noPlan := charge.Keep(charge.Store{From: autumn, Until: spring})
	_, noOdds := charge.Diagnose(charge.Evidence{RestV: 12})
	for name, refused := range map[string]bool{
		"Match":      charge.Match(none).Fit == charge.Refused,
		"Case":       noCase != nil,
		"Simulate":   noCharge != nil,
		"Keep":       noPlan != nil,
		"Diagnose":   noOdds != nil,
		"Unattended": charge.Unattended(charge.Case{}, charge.Outcome{}) == nil,
		"WaitFor":    wait.Never && wait.NeverFull,
		"Taken":      isNaN(volts, stored),
		"AdvisedA":   isNaN(none.AdvisedA()),
		"SizeFor":    (&charge.Charger{PrintedV: 12}).SizeFor(nil) == charge.SizeUnknown,
	} {
		if !refused {
			t.Errorf("%s answers without a pack", name)
		}
	}
}

// What is no number counts as not known: never a yes, and no danger for that alone.
func TestAFigureThatIsNoNumberIsNotKnown(t *testing.T) {
	clean := func() charge.Plugged {
		p := plugged(t, "agm", 6, 7, "sealed lead acid charger 14.7V 1A DC centre positive automatic")
		p.Jack = charge.CentrePositive
		return p
	}
	if v := charge.Match(clean()); v.Fit != charge.Matches {
		t.Fatalf("the charger that the others are changed from: %v", v.Fit)
	}
	for _, c := range []struct {
		name   string
		change func(*charge.Plugged)
		fit    charge.Fit
		code   string
	}{
		{"current", func(p *charge.Plugged) { p.Charger.CurrentA = nan }, charge.Unproven, charge.CodeCurrentUnknown},
		{"infinite current", func(p *charge.Plugged) { p.Charger.CurrentA = inf }, charge.Unproven, charge.CodeCurrentUnknown},
		{"end volts", func(p *charge.Plugged) { p.Charger.EndLeastV, p.Charger.EndMostV = nan, nan }, charge.Unproven, charge.CodeEndVoltsUnknown},
		{"cells", func(p *charge.Plugged) { p.CellC = nan }, charge.Refused, charge.CodeTooCold},
		{"place", func(p *charge.Plugged) { p.AmbientC = nan }, charge.Unproven, charge.CodePlaceNoGood},
		{"rested volts", func(p *charge.Plugged) { p.RestV = nan }, charge.Unproven, charge.CodeDeeplyFlat},
	} {
		p := clean()
		c.change(&p)
		v := charge.Match(p)
		f, ok := find(v.Findings, c.code)
		if v.Fit != c.fit || !ok || f.Reads != answer.AsUnknown || answer.Worst(v.Findings) == answer.Danger {
			t.Errorf("%s: %v with %+v", c.name, v.Fit, v.Findings)
		}
		for _, f := range v.Findings {
			if math.IsNaN(f.Found) || math.IsInf(f.Found, 0) {
				t.Errorf("%s: %s has found %g", c.name, f.Code, f.Found)
			}
		}
	}
	agm, m := profile(t, "agm"), pack(t, "agm", 6, 7)
	for name, l := range map[string]charge.Loaded{"volts": {V: nan, RateC: 1}, "load": {V: 11, RateC: nan}} {
		if fs := charge.JudgeLoaded(agm, 6, l); len(fs) != 1 || fs[0].Level != answer.Watch || fs[0].Reads != answer.AsUnknown {
			t.Errorf("%s under load: %+v", name, fs)
		}
	}
	for name, w := range map[string]charge.Wait{"cells": charge.WaitFor(m, nan, 20), "place": charge.WaitFor(m, 20, nan)} {
		if !w.Never || len(w.Findings) != 1 || w.Findings[0].Reads != answer.AsUnknown || w.Findings[0].Level != answer.Watch {
			t.Errorf("%s: %+v", name, w)
		}
	}
	if _, stored := charge.Taken(m, m.StateAt(0.5, 20), nan); !math.IsNaN(stored) {
		t.Errorf("of no current %g A are stored", stored)
	}
	if size := (&charge.Charger{EndLeastV: nan}).SizeFor(m); size != charge.SizeUnknown {
		t.Errorf("a charger of no volts is of size %v", size)
	}
	p := clean()
	p.Charger.CurrentA = nan
	if _, err := p.Case(m.StateAt(0.5, 20)); err == nil {
		t.Error("a charge at no current is computed")
	}
}
