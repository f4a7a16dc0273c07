package drive_test

import (
	"maps"
	"slices"
	"testing"

	"example.org/packcheck/answer"
	"example.org/packcheck/drive"
	"example.org/packcheck/internal/policy"
	"example.org/packcheck/setup"
)

// meaning is what a finding is in its worst case, and two of the situations: one
// that gives it so and one close by that does not give it.
type meaning struct {
	code          string
	harm          answer.Harm
	level         answer.Level
	item          answer.Item
	change        answer.Change
	source        string // of the limit
	fires, spares string
}

// meanings is the table of everything that this package finds.
func meanings() []meaning {
	const (
		rating, motorLaw, own, class = "part-rating", "motor-equations", "drive-judgement", "iec-60085"
		sound                        = "a launch within all ratings"
		all                          = "a launch over every rating"
		allBlocked                   = "blocked over every rating and the original's teeth"
		lowLimit                     = "blocked behind a low limit"
	)
	return []meaning{
		{drive.CodeLaunchUnknown, answer.Part, answer.FixFirst, "", answer.LookUp, own, "no launch at all", sound},
		{drive.CodeLaunchOverPack, answer.Part, answer.FixFirst, answer.Battery, answer.LimitCurrent, rating, all, sound},
		{drive.CodeLaunchOverJoint, answer.Part, answer.FixFirst, answer.Wire, answer.FitJoint, rating, all, sound},
		{drive.CodeLaunchOverSwitch, answer.Part, answer.FixFirst, answer.Pedal, answer.LimitCurrent, rating, all, sound},
		{drive.CodeLaunchOverControllerPeak, answer.Part, answer.FixFirst, answer.Board, answer.LimitCurrent, rating, all, sound},
		{drive.CodeLaunchOverController, answer.Part, answer.FixFirst, answer.Board, answer.LookUp, rating, "over the continuous rating, the peak not known", sound},
		{drive.CodeRampBoundsNothing, answer.Part, answer.FixFirst, answer.Board, answer.LimitCurrent, motorLaw, "a ramp alone on a weak pack", "a ramp and a limit"},
		{drive.CodeTwoSoftStarts, answer.Wear, answer.Watch, answer.Board, "", motorLaw, "two soft starts", "a ramp alone"},
		{drive.CodeSpinsOnTheSpot, answer.Part, answer.FixFirst, "", answer.LoadLess, motorLaw, "steep and slippery", "too steep"},
		{drive.CodeCannotStart, answer.Part, answer.FixFirst, answer.Motors, answer.LoadLess, motorLaw, "too steep", "starts, then the pack tires"},
		{drive.CodeStallsSoon, answer.Part, answer.FixFirst, answer.Motors, answer.LoadLess, motorLaw, "starts, then the pack tires", sound},
		{drive.CodeWheelsSpin, answer.Wear, answer.Watch, "", "", motorLaw, "wheelspin", sound},
		{drive.CodeToothLoad, answer.Part, answer.FixFirst, answer.Gears, answer.LimitCurrent, own, "teeth much harder pressed", "teeth as before"},

		{drive.CodeBlockedOverPack, answer.Part, answer.FixFirst, answer.Battery, answer.LimitCurrent, rating, allBlocked, lowLimit},
		{drive.CodeBlockedOverController, answer.Part, answer.FixFirst, answer.Board, answer.LimitCurrent, rating, allBlocked, lowLimit},
		{drive.CodeBlockedOverSwitch, answer.Part, answer.FixFirst, answer.Pedal, answer.LimitCurrent, rating, allBlocked, lowLimit},
		{drive.CodeBlockedHeatUnknown, answer.Wear, answer.Watch, answer.Motors, "", class, "blocked, heat not known", lowLimit},
		{drive.CodeBlockedHeat, answer.Part, answer.FixFirst, answer.Motors, answer.LimitCurrent, class, "blocked on contacts", lowLimit},
		{drive.CodeToothLoadBlocked, answer.Wear, answer.Watch, answer.Gears, answer.LimitCurrent, own, allBlocked, "blocked on contacts, as the original was"},
		{drive.CodeMotorWarm, answer.Wear, answer.Watch, answer.Motors, answer.LoadLess, class, "a motor near its limit", "a cool motor"},
		{drive.CodeMotorHot, answer.Part, answer.FixFirst, answer.Motors, answer.LoadLess, class, "a motor above its limit in a soft case", "a cool motor"},
		{drive.CodePlasticSoftens, answer.Part, answer.FixFirst, answer.Motors, answer.LoadLess, "plastic-softening", "a very hot case", "a cool motor"},

		{drive.CodeBoardVoltsUnknown, answer.House, answer.Watch, answer.Board, answer.LookUp, own, "no voltage known", "12 V pack on 12 V contacts"},
		{drive.CodeBoardOvervoltage, answer.House, answer.Danger, answer.Board, answer.FitConverter, rating, "18 V pack on a 12 V chopper", "behind a converter the board sees its output"},
		{drive.CodeContactsMayWeld, answer.Child, answer.Danger, answer.Pedal, answer.FitController, "cpsc-92-008, drive-judgement", "18 V pack on 12 V pedal contacts, as in CPSC Release 92-008", "12 V pack on 12 V contacts"},
		{drive.CodeConverterLimitUnknown, answer.Part, answer.FixFirst, answer.Board, answer.LookUp, rating, "a converter of unknown limit", "a converter large enough"},
		{drive.CodeConverterTooSmall, answer.Part, answer.FixFirst, answer.Board, answer.FitConverter, rating, "a converter for running amps", "a converter large enough"},
		{drive.CodePlugInSpark, answer.Wear, answer.Watch, answer.Board, "", "precharge-guides", "a spark", "no capacitor"},
		{drive.CodeReversal, answer.Part, answer.FixFirst, answer.Pedal, answer.FitController, rating, "reversal over the switch's rating", "reversal from rest"},

		{drive.CodeFasterThanOriginal, answer.Child, answer.FixFirst, answer.Rider, answer.LimitSpeed, "kinetic-energy", "12 to 20 V", "as fast as before"},
		{drive.CodeFastForARideOn, answer.Child, answer.Danger, answer.Rider, answer.LimitSpeed, "ride-on-speed-1998, ride-on-speed-24v", "faster than any ride-on was made for", "a little faster"},
		{drive.CodeWayToStop, answer.Wear, answer.Fine, answer.Rider, "", "reaction-1984", "12 to 20 V", "a toddler"},
		{drive.CodeTooYoung, answer.Child, answer.Danger, answer.Rider, answer.LimitSpeed, "en-71-1-2009", "a toddler at 9 km/h", "a child of three"},
	}
}

func TestEveryFindingMeansWhatTheTableSays(t *testing.T) {
	made := map[string][]answer.Finding{}
	worst := map[string]answer.Level{}
	for _, s := range slices.Concat(situations(), childSituations()) {
		made[s.name] = s.give(t)
		for _, f := range made[s.name] {
			worst[f.Code] = max(worst[f.Code], f.Level)
		}
	}
	var listed []string
	for _, m := range slices.Concat(meanings(), childMeanings()) {
		listed = append(listed, m.code)
		is := func(f answer.Finding) bool { return f.Code == m.code }
		i := slices.IndexFunc(made[m.fires], is)
		if i < 0 {
			t.Errorf("%s: not found in %q", m.code, m.fires)
			continue
		}
		f := made[m.fires][i]
		if got := (meaning{f.Code, f.Harm, f.Level, f.Item, f.Change, f.Source, m.fires, m.spares}); got != m {
			t.Errorf("got  %+v\nwant %+v", got, m)
		}
		if m.level != worst[m.code] {
			t.Errorf("%s: the table calls %v the worst, some situation gives %v", m.code, m.level, worst[m.code])
		}
		if spared, known := made[m.spares]; !known || slices.ContainsFunc(spared, is) {
			t.Errorf("%s: %q gives it, or is no situation", m.code, m.spares)
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

// Harm decides the level wherever a finding is made. Four may be milder than
// their harm: volts that nobody knows, a speed that is only compared, one that
// some vehicles are made for, and an age at which makers sell them all the same.
// So may what a child can ride with and yet should not: a load over the label's,
// a slope, a remote control at a raised speed, no brake on the level.
func TestHarmDecidesTheLevel(t *testing.T) {
	keys := map[string]bool{}
	for _, k := range setup.Keys() {
		keys[k.Path()] = true
	}
	milder := []string{drive.CodeBoardVoltsUnknown, drive.CodeFasterThanOriginal, drive.CodeFastForARideOn, drive.CodeTooYoung, drive.CodeOverloaded, drive.CodeRollsBack, drive.CodeRemoteOnFaster, drive.CodeAboveToyVolts, drive.CodeNoBrake}
	for _, s := range slices.Concat(situations(), childSituations()) {
		for _, f := range s.give(t) {
			right := map[answer.Level]bool{answer.Danger: f.Harm >= answer.House, answer.FixFirst: f.Harm == answer.Part, answer.Watch: f.Harm == answer.Wear, answer.Fine: f.Harm == answer.Wear}
			if !right[f.Level] && (f.Level == answer.Danger || !slices.Contains(milder, f.Code)) {
				t.Errorf("%s: %s is %v with harm to %v", s.name, f.Code, f.Level, f.Harm)
			}
			if f.Topic == "" {
				t.Errorf("%s: %s has no topic", s.name, f.Code)
			}
			if f.LimitA > 0 && f.Change != answer.LimitCurrent || f.Level == answer.FixFirst && f.Change == answer.LimitCurrent && f.LimitA <= 0 {
				t.Errorf("%s: %s asks for %q at %g A", s.name, f.Code, f.Change, f.LimitA)
			}
			if f.Level > answer.Watch && f.Reads == answer.AsNumber && (f.Want == answer.Below) != (f.Found > f.Limit) {
				t.Errorf("%s: %s found %g %s, wants %v %g", s.name, f.Code, f.Found, f.Unit, f.Want, f.Limit)
			}
			for _, key := range f.Decides {
				if !keys[key] {
					t.Errorf("%s: %s is decided by %q, which is no key", s.name, f.Code, key)
				}
			}
		}
	}
}

// Advice, carried out, removes its finding: the limit that a finding asks for
// is one that does. What is above a lasting rating for seconds, and how long a
// motor stands blocked wheels, stay worth watching.
func TestTheCurrentLimitAskedForRemovesItsFinding(t *testing.T) {
	tried := map[string]bool{}
	gone := func(f answer.Finding, after []answer.Finding) {
		t.Helper()
		tried[f.Code] = true
		stays := f.Code == drive.CodeBlockedHeat || f.Code == drive.CodeLaunchOverController // but milder
		if slices.ContainsFunc(after, func(g answer.Finding) bool { return g.Code == f.Code && (g.Level >= f.Level || !stays) }) {
			t.Errorf("%s is still there at a limit of %g A", f.Code, f.LimitA)
		}
	}
	for _, netlist := range []string{"contacts", "lithium", "ramp"} {
		base := netlistCase(t, netlist)
		first := drive.Launch(&base, 8, nil)
		original := first
		original.PeakPinionNM /= 1.9
		// Above what this ground takes, or a limit would leave it standing.
		limits := drive.Limits{PackA: 20, JointA: 25, SwitchA: 22, ControllerContinuousA: 21, ControllerPeakA: 30}
		check := func(limitA float64) []answer.Finding {
			k := drive.LaunchCheck{Case: base, Original: &original}
			k.Case.Limits, k.Case.LimitA = limits, limitA
			k.Result = drive.Launch(&k.Case, 8, nil)
			k.BlockedA = 70
			return k.Findings()
		}
		for _, f := range check(0) {
			if f.Change == answer.LimitCurrent {
				gone(f, check(f.LimitA))
			}
		}
	}
	start := drive.HeatState{WindingC: 20, CaseC: 20}
	original := drive.BlockedWheels(tractor(), drive.Controller{}, agm(), start, 20)
	check := func(limitA float64) []answer.Finding {
		k := drive.BlockedCheck{Limits: drive.Limits{PackA: 30, ControllerPeakA: 40, SwitchA: 20}, LimitA: limitA, Original: &original}
		k.Blocked = drive.BlockedWheels(tractor(), drive.Controller{Chopper: true, LimitA: limitA}, toolPack(), start, 20)
		return k.Findings()
	}
	for _, f := range check(0) {
		if f.Change == answer.LimitCurrent {
			gone(f, check(f.LimitA))
		}
	}
	if len(tried) != 11 {
		t.Errorf("only these were tried: %v", slices.Sorted(maps.Keys(tried)))
	}
}

func TestNothingIsFoundByAHair(t *testing.T) {
	const limit = 40
	for name, find := range map[string]func(share float64) []answer.Finding{
		"board": func(x float64) []answer.Finding {
			return drive.BoardCheck{FullV: limit * x, WeakestV: limit, Controller: drive.Controller{Chopper: true}}.Findings()
		},
		"contacts": func(x float64) []answer.Finding {
			return drive.BoardCheck{FullV: 12, WeakestV: 20, PeakA: limit * x, SwitchA: limit}.Findings()
		},
		"converter": func(x float64) []answer.Finding {
			return drive.ConverterCheck{Converter: drive.Converter{OutV: 12, LimitA: limit}, LaunchA: limit * x}.Findings()
		},
		"reversing": func(x float64) []answer.Finding {
			return drive.ReversalCheck{Reversal: drive.Reversal{MotorA: limit * x}, BlockedA: limit}.Findings()
		},
		"blocked": func(x float64) []answer.Finding {
			return drive.BlockedCheck{Blocked: drive.Blocked{BatteryA: limit * x, HeatKnown: true}, Limits: drive.Limits{PackA: limit}}.Findings()
		},
		"launch": func(x float64) []answer.Finding {
			return drive.LaunchCheck{
				Case:   drive.LaunchCase{Limits: drive.Limits{JointA: limit}},
				Result: drive.LaunchResult{Moved: true, SteadyMS: 1, PeakBatteryA: limit * x},
			}.Findings()
		},
		"teeth": func(x float64) []answer.Finding {
			r, o := drive.LaunchResult{Moved: true, SteadyMS: 1, PeakPinionNM: 1.2 * x}, drive.LaunchResult{PeakPinionNM: 1}
			return drive.LaunchCheck{Result: r, Original: &o}.Findings()
		},
		"speed": func(x float64) []answer.Finding { return drive.SpeedCheck{SpeedMS: 1.1 * x, OriginalMS: 1}.Findings() },
		"heat": func(x float64) []answer.Finding {
			return drive.HeatCheck{State: drive.HeatState{CaseC: 100 * x}}.Findings()
		},
	} {
		if got := find(1.001); len(got) != 0 {
			t.Errorf("%s: a thousandth over is found: %+v", name, got)
		}
		if got := find(1.01); len(got) != 1 {
			t.Errorf("%s: a hundredth over gives %+v", name, got)
		}
	}
}
