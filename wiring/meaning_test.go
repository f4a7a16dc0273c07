package wiring_test

import (
	"math"
	"slices"
	"testing"

	"example.org/packcheck/answer"
	"example.org/packcheck/internal/policy"
	"example.org/packcheck/setup"
	"example.org/packcheck/wiring"
)

// meaning is what a finding is in the worst case of [faults].
type meaning struct {
	code   string
	harm   answer.Harm
	level  answer.Level
	item   answer.Item
	change answer.Change
	source string // of the limit
}

// meanings is the table of everything that this package finds. Where a fuse is
// wrong and no standard rating would be right the change is to the wire.
func meanings() []meaning {
	const (
		reach, short = "cfr-33-183-455", "iec-60364-5-54"
		blade        = "small-blade-sheet"
		scope        = "iso-8820-3-scope"
		holder       = "blade-holder-sheets"
		heat         = "joint-heat-own"
	)
	return []meaning{
		{wiring.CodeWireCarries, answer.Wear, answer.Watch, answer.Wire, "", "iso-10133-a"},
		{wiring.CodeWireOverloaded, answer.House, answer.Danger, answer.Wire, answer.FitWire, short},
		{wiring.CodeWireThin, answer.Wear, answer.Watch, answer.Wire, "", "iso-10133"},
		{wiring.CodeJointOverloaded, answer.Part, answer.FixFirst, answer.Wire, answer.FitJoint, ""},
		{wiring.CodeJointHot, answer.Part, answer.FixFirst, answer.Wire, answer.FitJoint, heat},
		{wiring.CodeJointWarm, answer.Wear, answer.Watch, answer.Wire, "", heat},
		{wiring.CodeDropLarge, answer.Wear, answer.Watch, answer.Wire, answer.FitWire, "abyc-e11-drop"},
		{wiring.CodeNoFuse, answer.House, answer.Danger, answer.Fuse, answer.FitFuse, reach},
		{wiring.CodeFuseUnknown, answer.House, answer.FixFirst, answer.Fuse, answer.FitFuse, reach},

		{wiring.CodeFuseFits, answer.Wear, answer.Watch, answer.Fuse, "", holder},
		{wiring.CodeFuseAboveWire, answer.House, answer.Danger, answer.Fuse, answer.FitFuse, reach},
		{wiring.CodeFuseAboveJoint, answer.Part, answer.FixFirst, answer.Fuse, answer.FitWire, ""},
		{wiring.CodeFuseNoneFits, answer.Part, answer.FixFirst, answer.Fuse, answer.FitWire, reach},
		{wiring.CodeFuseOpensRunning, answer.Part, answer.FixFirst, answer.Fuse, answer.FitFuse, blade},
		{wiring.CodeFuseLoaded, answer.Wear, answer.Watch, answer.Fuse, "", "nec-210-20"},
		{wiring.CodeFuseMayOpenAtLaunch, answer.Wear, answer.Watch, answer.Fuse, answer.FitWire, blade},
		{wiring.CodeFuseOpensAtLaunch, answer.Part, answer.FixFirst, answer.Fuse, answer.FitWire, blade},
		{wiring.CodeFuseSlowWhenBlocked, answer.Wear, answer.Watch, answer.Fuse, "", blade},
		{wiring.CodeBlockedOverloadsWire, answer.House, answer.FixFirst, answer.Wire, answer.FitWire, reach},
		{wiring.CodeFusePlaceUnknown, answer.House, answer.Watch, answer.Fuse, answer.LookUp, reach},
		{wiring.CodeFuseTooFar, answer.House, answer.Danger, answer.Fuse, answer.MoveFuse, reach},
		{wiring.CodeFuseVoltage, answer.House, answer.FixFirst, answer.Fuse, "", scope},
		{wiring.CodeFuseHolder, answer.Part, answer.FixFirst, answer.Fuse, "", holder},
		{wiring.CodeFuseHeat, answer.Wear, answer.Watch, answer.Fuse, "", "large-blade-heat-borrowed"},
		{wiring.CodeFuseTires, answer.Wear, answer.Watch, answer.Fuse, "", "pulse-guide"},
		{wiring.CodeBreakerAlone, answer.House, answer.FixFirst, answer.Fuse, answer.FitFuse, "sae-j553-scope"},

		{wiring.CodeShortCleared, answer.Wear, answer.Watch, answer.Fuse, "", short},
		{wiring.CodeShortBurnsWire, answer.House, answer.Danger, answer.Fuse, answer.FitWire, short},
		{wiring.CodeShortAboveBreaking, answer.House, answer.FixFirst, answer.Fuse, "", scope},
	}
}

func TestEveryFindingMeansWhatTheTableSays(t *testing.T) {
	worst := map[string]answer.Finding{}
	for _, c := range faults() {
		b := sound()
		c.spoil(&b)
		for _, f := range b.assess(t).Findings {
			if w, seen := worst[f.Code]; f.Code == c.code && (!seen || f.Level > w.Level) {
				worst[f.Code] = f
			}
		}
	}
	var listed []string
	for _, m := range meanings() {
		listed = append(listed, m.code)
		f := worst[m.code]
		if got := (meaning{f.Code, f.Harm, f.Level, f.Item, f.Change, f.Source}); got != m {
			t.Errorf("got  %+v\nwant %+v", got, m)
		}
	}
	slices.Sort(listed)
	want, err := policy.Codes(".")
	if err != nil {
		t.Fatal(err)
	}
	if !slices.Equal(listed, want) {
		t.Errorf("the table has\n%v\nthe package\n%v", listed, want)
	}
}

// Harm decides the level wherever a finding is made. Some are milder than their
// harm, each with its reason.
func TestHarmDecidesTheLevel(t *testing.T) {
	milder := map[string]string{
		wiring.CodeFuseUnknown:          "there may be one",
		wiring.CodeFusePlaceUnknown:     "it may be in place",
		wiring.CodeFuseTooFar:           "a short must fall on little wire; on much it is a danger",
		wiring.CodeBlockedOverloadsWire: "only while somebody holds the pedal down",
		wiring.CodeFuseVoltage:          "no source says how far above its rating a fuse fails",
		wiring.CodeShortAboveBreaking:   "only the shortest of all shorts",
		wiring.CodeShortBurnsWire:       "how soon a breaker opens is remembered, and no danger comes of that",
		wiring.CodeBreakerAlone:         "many were made so, and somebody sees it open",
	}
	keys := map[string]bool{}
	for _, k := range setup.Keys() {
		keys[k.Path()] = true
	}
	for _, c := range faults() {
		b := sound()
		c.spoil(&b)
		for _, f := range b.assess(t).Findings {
			right := map[answer.Level]bool{answer.Danger: f.Harm >= answer.House, answer.FixFirst: f.Harm == answer.Part, answer.Watch: f.Harm == answer.Wear, answer.Fine: f.Harm == answer.Wear}
			if _, said := milder[f.Code]; !right[f.Level] && (f.Level == answer.Danger || !said || f.Harm < answer.House) {
				t.Errorf("%s: %v with harm to %v", f.Code, f.Level, f.Harm)
			}
			if f.Topic != answer.TopicPath || f.Item == "" {
				t.Errorf("%s: topic %q, item %q", f.Code, f.Topic, f.Item)
			}
			if f.Level > answer.Watch && f.Reads == answer.AsNumber && (f.Want == answer.Below) != (f.Found > f.Limit) {
				t.Errorf("%s: found %g %s, wants %v %g", f.Code, f.Found, f.Unit, f.Want, f.Limit)
			}
			if len(f.Decides) == 0 {
				t.Errorf("%s: nothing decides it", f.Code)
			}
			for _, key := range f.Decides {
				if !keys[key] {
					t.Errorf("%s is decided by %q, which is no key", f.Code, key)
				}
			}
		}
	}
}

// What says that all is well and what contradicts it answer one question, so
// that over many draws the second silences the first.
func TestWhatContradictsAFineFindingAnswersTheSameQuestion(t *testing.T) {
	about := map[string]string{}
	for _, c := range faults() {
		b := sound()
		c.spoil(&b)
		for _, f := range b.assess(t).Findings {
			about[f.Code] = f.About
		}
	}
	for fine, against := range map[string][]string{
		wiring.CodeWireCarries:  {wiring.CodeWireOverloaded, wiring.CodeWireThin},
		wiring.CodeShortCleared: {wiring.CodeShortBurnsWire},
		wiring.CodeFuseFits: {
			wiring.CodeFuseAboveWire, wiring.CodeFuseAboveJoint, wiring.CodeShortBurnsWire, wiring.CodeFuseNoneFits, wiring.CodeFuseOpensRunning,
			wiring.CodeFuseMayOpenAtLaunch, wiring.CodeFuseOpensAtLaunch, wiring.CodeFuseLoaded,
		},
	} {
		for _, code := range against {
			if about[fine] == "" || about[code] != about[fine] {
				t.Errorf("%s is about %q, %s about %q", fine, about[fine], code, about[code])
			}
		}
	}
}

// Insulation that nobody told decides only where better insulation would do.
func TestInsulationDecidesOnlyWhereItMatters(t *testing.T) {
	// 33 CFR 183.425 Table 5: AWG 18 carries 10 A at 60 degC, 20 A at 105 degC.
	for _, c := range []struct {
		fuseA  float64
		decide bool
	}{{20, true}, {40, false}} {
		b := sound()
		b.gauge, b.insulationC, b.fuse.RatingA, b.demand.RunningA = 18, 60, c.fuseA, 5
		i := slices.IndexFunc(b.assess(t).Findings, func(f answer.Finding) bool { return f.Code == wiring.CodeFuseAboveWire })
		if i < 0 {
			t.Fatalf("%g A: not above the wire", c.fuseA)
		}
		if got := slices.Contains(b.assess(t).Findings[i].Decides, answer.KeyWireInsulation); got != c.decide {
			t.Errorf("%g A: insulation decides: %v", c.fuseA, got)
		}
	}
}

func TestNothingIsFoundByAHair(t *testing.T) {
	// AWG 14 at 105 degC carries 35 A x sqrt(80/75) in 25 degC, 33 CFR 183.425.
	carries := 35 * math.Sqrt(80.0/75)
	for _, c := range []struct {
		code string
		at   func(b *build, x float64)
	}{
		{wiring.CodeWireOverloaded, func(b *build, x float64) { b.demand.RunningA = carries * x }},
		{wiring.CodeJointOverloaded, func(b *build, x float64) { b.contacts[0].SteadyA = 12 / x }},
		{wiring.CodeFuseTooFar, func(b *build, x float64) { b.fuse.DistanceM = new(0.178 * (1 + (x-1)*1e-7)) }},
		{wiring.CodeFuseVoltage, func(b *build, x float64) { b.fuse.VoltageV, b.pack.FullV = 32, 32*(1+(x-1)*1e-7) }},
	} {
		for x, want := range map[float64]bool{1.005: false, 1.02: true} {
			b := sound()
			c.at(&b, x)
			_, got := levels(b.assess(t).Findings)[c.code]
			if got != want {
				t.Errorf("%s at %g times its limit: %v", c.code, x, got)
			}
		}
	}
}
