package drive_test

import (
	"slices"
	"strings"
	"testing"

	"example.org/packcheck/answer"
	"example.org/packcheck/drive"
)

// judged collects the findings of one situation.
type judged struct {
	name string
	give func(t *testing.T) []answer.Finding
	want map[string]answer.Level // code and level; nothing else may be found
}

func launchCheck(t *testing.T, netlist string, edit func(*drive.LaunchCheck)) []answer.Finding {
	t.Helper()
	k := drive.LaunchCheck{Case: netlistCase(t, netlist)}
	edit(&k)
	k.Result = drive.Launch(&k.Case, 8, nil)
	k.BlockedA = k.Case.OCVV / (k.Case.R0Ohm + k.Case.PathOhm + k.Case.Equivalent().Ohm)
	return k.Findings()
}

func situations() []judged {
	launch := func(netlist string, edit func(*drive.LaunchCheck)) func(*testing.T) []answer.Finding {
		return func(t *testing.T) []answer.Finding { return launchCheck(t, netlist, edit) }
	}
	blocked := func(edit func(*drive.Vehicle, *drive.Controller, *drive.BlockedCheck)) func(*testing.T) []answer.Finding {
		return func(*testing.T) []answer.Finding {
			v, c, k := tractor(), drive.Controller{}, drive.BlockedCheck{}
			edit(&v, &c, &k)
			k.Blocked = drive.BlockedWheels(v, c, toolPack(), drive.HeatState{WindingC: 20, CaseC: 20}, 20)
			return k.Findings()
		}
	}
	type levels = map[string]answer.Level
	return []judged{
		{"a launch with nothing known to hold it against", launch("contacts", func(*drive.LaunchCheck) {}), nil},
		{"a launch within all ratings", launch("limit", func(k *drive.LaunchCheck) {
			k.Case.Limits = drive.Limits{PackA: 40, JointA: 40, SwitchA: 40, ControllerContinuousA: 40, ControllerPeakA: 40}
		}), nil},
		{"a launch over every rating", launch("lithium", func(k *drive.LaunchCheck) {
			k.Case.Limits = drive.Limits{PackA: 20, JointA: 25, SwitchA: 15, ControllerContinuousA: 15, ControllerPeakA: 30}
		}), levels{
			drive.CodeLaunchOverPack: answer.FixFirst, drive.CodeLaunchOverJoint: answer.FixFirst, drive.CodeLaunchOverSwitch: answer.FixFirst,
			drive.CodeLaunchOverController: answer.FixFirst, drive.CodeLaunchOverControllerPeak: answer.FixFirst,
		}},
		{"a launch briefly and little over the pack's rating", launch("contacts", func(k *drive.LaunchCheck) { k.Case.Limits.PackA = 52 }), levels{drive.CodeLaunchOverPack: answer.Watch}},
		{"over the continuous but not the peak rating", launch("contacts", func(k *drive.LaunchCheck) {
			k.Case.Limits = drive.Limits{ControllerContinuousA: 20, ControllerPeakA: 80}
		}), levels{drive.CodeLaunchOverController: answer.Watch}},
		{"over the continuous rating, the peak not known", launch("contacts", func(k *drive.LaunchCheck) {
			k.Case.Limits = drive.Limits{ControllerContinuousA: 20}
		}), levels{drive.CodeLaunchOverController: answer.FixFirst}},
		{"a ramp alone", launch("ramp", func(*drive.LaunchCheck) {}), levels{drive.CodeRampBoundsNothing: answer.Watch}},
		{"a ramp alone on a weak pack", launch("ramp", func(k *drive.LaunchCheck) { k.Case.Limits.PackA = 50 }), levels{drive.CodeRampBoundsNothing: answer.FixFirst}},
		{"a ramp and a limit", launch("ramp-and-limit", func(*drive.LaunchCheck) {}), nil},
		{"two soft starts", launch("two-ramps", func(*drive.LaunchCheck) {}), levels{drive.CodeTwoSoftStarts: answer.Watch, drive.CodeRampBoundsNothing: answer.Watch}},
		{"wheelspin", launch("wheelspin", func(*drive.LaunchCheck) {}), levels{drive.CodeWheelsSpin: answer.Watch}},
		{"too steep", launch("slope", func(k *drive.LaunchCheck) { k.Case.GradeN = 300 }), levels{drive.CodeCannotStart: answer.FixFirst}},
		{"steep and slippery", launch("slope", func(k *drive.LaunchCheck) { k.Case.GripN = 40 }), levels{drive.CodeSpinsOnTheSpot: answer.FixFirst}},
		{"starts, then the pack tires", launch("slope", func(k *drive.LaunchCheck) { k.Case.GradeN = 165 }), levels{drive.CodeStallsSoon: answer.FixFirst}},
		{"no launch at all", launch("slope", func(k *drive.LaunchCheck) { k.Case.MassKg = 0 }), levels{drive.CodeLaunchUnknown: answer.FixFirst}},
		{"teeth a little harder pressed", func(t *testing.T) []answer.Finding { return teeth(t, 1.3) }, levels{drive.CodeToothLoad: answer.Watch}},
		{"teeth much harder pressed", func(t *testing.T) []answer.Finding { return teeth(t, 1.9) }, levels{drive.CodeToothLoad: answer.FixFirst}},
		{"teeth as before", func(t *testing.T) []answer.Finding { return teeth(t, 1.05) }, nil},

		{"blocked, heat not known", blocked(func(v *drive.Vehicle, _ *drive.Controller, _ *drive.BlockedCheck) { v.Motor.Thermal = drive.Thermal{} }), levels{drive.CodeBlockedHeatUnknown: answer.Watch}},
		{"blocked on contacts", blocked(func(*drive.Vehicle, *drive.Controller, *drive.BlockedCheck) {}), levels{drive.CodeBlockedHeat: answer.FixFirst}},
		{"blocked on contacts, as the original was", blocked(func(v *drive.Vehicle, _ *drive.Controller, k *drive.BlockedCheck) {
			o := drive.BlockedWheels(*v, drive.Controller{}, toolPack(), drive.HeatState{WindingC: 20, CaseC: 20}, 20)
			k.Original = &o
		}), levels{drive.CodeBlockedHeat: answer.Watch}},
		{"blocked behind a high limit", blocked(func(_ *drive.Vehicle, c *drive.Controller, _ *drive.BlockedCheck) { c.LimitA = 40 }), levels{drive.CodeBlockedHeat: answer.Watch}},
		{"blocked behind a middling limit", blocked(func(_ *drive.Vehicle, c *drive.Controller, _ *drive.BlockedCheck) { c.LimitA = 18 }), levels{drive.CodeBlockedHeat: answer.Fine}},
		{"blocked behind a low limit", blocked(func(_ *drive.Vehicle, c *drive.Controller, _ *drive.BlockedCheck) { c.LimitA = 8 }), nil},
		{"blocked over every rating and the original's teeth", blocked(func(v *drive.Vehicle, _ *drive.Controller, k *drive.BlockedCheck) {
			k.Limits = drive.Limits{PackA: 30, ControllerPeakA: 40, SwitchA: 20}
			o := drive.BlockedWheels(*v, drive.Controller{}, agm(), drive.HeatState{WindingC: 20, CaseC: 20}, 20)
			k.Original = &o
		}), levels{
			drive.CodeBlockedHeat: answer.FixFirst, drive.CodeBlockedOverPack: answer.FixFirst, drive.CodeBlockedOverController: answer.FixFirst,
			drive.CodeBlockedOverSwitch: answer.FixFirst, drive.CodeToothLoadBlocked: answer.Watch,
		}},

		{"12 V pack on 12 V contacts", board(drive.BoardCheck{FullV: 13, DesignV: 12, PeakA: 50}), nil},
		{"18 V pack on 12 V pedal contacts, as in CPSC Release 92-008", board(drive.BoardCheck{FullV: 21, DesignV: 12, PeakA: 80}), levels{drive.CodeBoardOvervoltage: answer.Danger, drive.CodeContactsMayWeld: answer.Danger}},
		{"12 V pack on contacts that the surge overloads", board(drive.BoardCheck{FullV: 13, DesignV: 12, PeakA: 50, SwitchA: 20}), levels{drive.CodeContactsMayWeld: answer.Danger}},
		{"18 V pack on a 12 V chopper", board(drive.BoardCheck{FullV: 21, Controller: drive.Controller{Chopper: true, MaxV: 15}}), levels{drive.CodeBoardOvervoltage: answer.Danger}},
		{"a little over the printed volts", board(drive.BoardCheck{FullV: 21, Controller: drive.Controller{Chopper: true, MaxV: 20}}), levels{drive.CodeBoardOvervoltage: answer.FixFirst}},
		{"the weakest part decides", board(drive.BoardCheck{FullV: 21, WeakestV: 16, Controller: drive.Controller{Chopper: true, MaxV: 30}}), levels{drive.CodeBoardOvervoltage: answer.Danger}},
		{"behind a converter the board sees its output", board(drive.BoardCheck{FullV: 21, Controller: drive.Controller{Chopper: true, MaxV: 15, Converter: drive.Converter{OutV: 12}}}), nil},
		{"no voltage known", board(drive.BoardCheck{FullV: 21, Controller: drive.Controller{Chopper: true}}), levels{drive.CodeBoardVoltsUnknown: answer.Watch}},

		{"a converter for running amps", conv(drive.ConverterCheck{Converter: drive.Converter{OutV: 12, LimitA: 20}, LaunchA: 60, RunningA: 9}), levels{drive.CodeConverterTooSmall: answer.FixFirst}},
		{"a converter for launch but not for reversal", conv(drive.ConverterCheck{Converter: drive.Converter{OutV: 12, LimitA: 80}, LaunchA: 60, ReverseA: 100, RunningA: 9}), levels{drive.CodeConverterTooSmall: answer.FixFirst}},
		{"a converter of unknown limit", conv(drive.ConverterCheck{Converter: drive.Converter{OutV: 12}, LaunchA: 60}), levels{drive.CodeConverterLimitUnknown: answer.FixFirst}},
		{"a converter large enough", conv(drive.ConverterCheck{Converter: drive.Converter{OutV: 12, LimitA: 120}, LaunchA: 60, ReverseA: 100}), nil},
		{"no converter", conv(drive.ConverterCheck{LaunchA: 60}), nil},

		{"a spark", func(*testing.T) []answer.Finding {
			return drive.SparkOf(drive.PlugIn{Volt: 21, LoopOhm: 0.03, InputF: 1e-3}).Findings()
		}, levels{drive.CodePlugInSpark: answer.Watch}},
		{"no capacitor", func(*testing.T) []answer.Finding {
			return drive.SparkOf(drive.PlugIn{Volt: 21, LoopOhm: 0.03}).Findings()
		}, nil},

		{"reversal at speed", reversal(1.5, drive.Limits{}), levels{drive.CodeReversal: answer.Watch}},
		{"reversal over the switch's rating", reversal(1.5, drive.Limits{SwitchA: 40}), levels{drive.CodeReversal: answer.FixFirst}},
		{"reversal from rest", reversal(0, drive.Limits{}), nil},

		{"a cool motor", heat(drive.HeatCheck{State: drive.HeatState{WindingC: 70, CaseC: 55}, LimitC: 120}), nil},
		{"a motor near its limit", heat(drive.HeatCheck{State: drive.HeatState{WindingC: 110, CaseC: 80}, LimitC: 120}), levels{drive.CodeMotorWarm: answer.Watch}},
		{"a motor above its limit in a soft case", heat(drive.HeatCheck{State: drive.HeatState{WindingC: 150, CaseC: 110}, LimitC: 120}), levels{drive.CodeMotorHot: answer.FixFirst, drive.CodePlasticSoftens: answer.Watch}},
		{"a case that was read at 110 C", heat(drive.HeatCheck{State: drive.HeatState{CaseC: 80}, Original: drive.HeatState{CaseC: 120}, ReadC: 110, ReadBy: answer.KeyMeasuredMotorTemperature}), levels{drive.CodePlasticSoftens: answer.FixFirst}},
		{"a case that was read at 90 C", heat(drive.HeatCheck{State: drive.HeatState{CaseC: 80}, ReadC: 90, ReadBy: answer.KeyMeasuredMotorTemperature}), nil},
		{"a case that was read at 110 C with the old battery, and gets hotter", heat(drive.HeatCheck{State: drive.HeatState{CaseC: 80}, Original: drive.HeatState{CaseC: 70}, ReadC: 110, ReadBy: answer.KeyMeasuredMotorTemperature, Before: true}), levels{drive.CodePlasticSoftens: answer.FixFirst}},
		{"a case that was read at 110 C with the old battery, and stays cooler", heat(drive.HeatCheck{State: drive.HeatState{CaseC: 60}, Original: drive.HeatState{CaseC: 70}, ReadC: 110, ReadBy: answer.KeyMeasuredMotorTemperature, Before: true}), nil},
		{"a very hot case", heat(drive.HeatCheck{State: drive.HeatState{WindingC: 150, CaseC: 140}}), levels{drive.CodePlasticSoftens: answer.FixFirst}},

		{"read at 10 km/h with the old battery, and no slower", pace(drive.SpeedCheck{SpeedMS: 2.0, OriginalMS: 2.0, AgeYears: 4, BeforeMS: 10 / 3.6, BeforeBy: answer.KeyMeasuredTopSpeed}), levels{drive.CodeFastForARideOn: answer.FixFirst, drive.CodeWayToStop: answer.Fine}},
		{"read at 14 km/h with the old battery, and a hair slower", pace(drive.SpeedCheck{SpeedMS: 1.97, OriginalMS: 2.0, AgeYears: 4, BeforeMS: 14 / 3.6, BeforeBy: answer.KeyMeasuredTopSpeed}), levels{drive.CodeFastForARideOn: answer.Danger, drive.CodeWayToStop: answer.Fine}},
		{"read at 14 km/h with the old battery, and slower", pace(drive.SpeedCheck{SpeedMS: 1.5, OriginalMS: 2.0, AgeYears: 4, BeforeMS: 14 / 3.6, BeforeBy: answer.KeyMeasuredTopSpeed}), levels{drive.CodeWayToStop: answer.Fine}},
		{"read too fast to be believed, and what this battery makes of it is a danger", pace(drive.SpeedCheck{SpeedMS: 3.0, OriginalMS: 2.0, AgeYears: 4, BeforeMS: 10 / 3.6, BeforeBy: answer.KeyMeasuredTopSpeed, Doubted: true}), levels{drive.CodeFasterThanOriginal: answer.FixFirst, drive.CodeFastForARideOn: answer.Danger, drive.CodeWayToStop: answer.Fine}},
		{"read too fast to be believed, and this battery halves it", pace(drive.SpeedCheck{SpeedMS: 1.0, OriginalMS: 2.0, AgeYears: 4, BeforeMS: 10 / 3.6, BeforeBy: answer.KeyMeasuredTopSpeed, Doubted: true}), levels{drive.CodeWayToStop: answer.Fine}},
		{"read slow with the old battery, and computed too fast", pace(drive.SpeedCheck{SpeedMS: 2.5, OriginalMS: 2.4, AgeYears: 4, BeforeMS: 5 / 3.6, BeforeBy: answer.KeyMeasuredTopSpeed}), levels{drive.CodeFastForARideOn: answer.FixFirst, drive.CodeWayToStop: answer.Fine}},
		{"as fast as before", pace(drive.SpeedCheck{SpeedMS: 1.5, OriginalMS: 1.45}), nil},
		{"a little faster", pace(drive.SpeedCheck{SpeedMS: 1.8, OriginalMS: 1.45}), levels{drive.CodeFasterThanOriginal: answer.Watch}},
		{"12 to 20 V", pace(drive.SpeedCheck{SpeedMS: 2.4, OriginalMS: 1.45, AgeYears: 5}), levels{drive.CodeFasterThanOriginal: answer.FixFirst, drive.CodeFastForARideOn: answer.Watch, drive.CodeWayToStop: answer.Fine}},
		{"faster than any ride-on was made for", pace(drive.SpeedCheck{SpeedMS: 4.4, Measured: true}), levels{drive.CodeFastForARideOn: answer.Danger}},
		{"16 km/h at three", pace(drive.SpeedCheck{SpeedMS: 16 / 3.6, AgeYears: 3, Measured: true}), levels{drive.CodeFastForARideOn: answer.Danger, drive.CodeWayToStop: answer.Fine}},
		{"8.2 km/h at five", pace(drive.SpeedCheck{SpeedMS: 8.2 / 3.6, AgeYears: 5}), levels{drive.CodeFastForARideOn: answer.Watch, drive.CodeWayToStop: answer.Fine}},
		{"10 km/h at five", pace(drive.SpeedCheck{SpeedMS: 10 / 3.6, AgeYears: 5}), levels{drive.CodeFastForARideOn: answer.FixFirst, drive.CodeWayToStop: answer.Fine}},
		{"10 km/h at nine", pace(drive.SpeedCheck{SpeedMS: 10 / 3.6, AgeYears: 9}), levels{drive.CodeFastForARideOn: answer.Watch, drive.CodeWayToStop: answer.Fine}},
		{"6 km/h at two", pace(drive.SpeedCheck{SpeedMS: 6 / 3.6, AgeYears: 2}), levels{drive.CodeFastForARideOn: answer.FixFirst, drive.CodeTooYoung: answer.FixFirst}},
		{"18 km/h at ten", pace(drive.SpeedCheck{SpeedMS: 18 / 3.6, AgeYears: 10}), levels{drive.CodeFastForARideOn: answer.FixFirst, drive.CodeWayToStop: answer.Fine}},
		{"as fast as the fastest that was made", pace(drive.SpeedCheck{SpeedMS: 3.57}), levels{drive.CodeFastForARideOn: answer.FixFirst}},
		{"a toddler", pace(drive.SpeedCheck{SpeedMS: 1.3, AgeYears: 2}), levels{drive.CodeTooYoung: answer.FixFirst, drive.CodeFastForARideOn: answer.Watch}},
		{"a toddler at 9 km/h", pace(drive.SpeedCheck{SpeedMS: 9 / 3.6, AgeYears: 2, Measured: true}), levels{drive.CodeTooYoung: answer.Danger, drive.CodeFastForARideOn: answer.Danger}},
		{"a child of one at 9 km/h", pace(drive.SpeedCheck{SpeedMS: 9 / 3.6, AgeYears: 1, Measured: true}), levels{drive.CodeTooYoung: answer.Danger, drive.CodeFastForARideOn: answer.Danger}},
		{"a toddler at 9 km/h that may be read wrong", pace(drive.SpeedCheck{SpeedMS: 9 / 3.6, AgeYears: 2, Measured: true, Doubted: true}), levels{drive.CodeTooYoung: answer.FixFirst, drive.CodeFastForARideOn: answer.Danger}},
		{"a toddler at walking pace", pace(drive.SpeedCheck{SpeedMS: 0.9, AgeYears: 2}), levels{drive.CodeTooYoung: answer.Watch}},
		{"a child of one at walking pace", pace(drive.SpeedCheck{SpeedMS: 0.9, AgeYears: 1}), levels{drive.CodeTooYoung: answer.FixFirst}},
		{"a child of three", pace(drive.SpeedCheck{SpeedMS: 0.9, AgeYears: 3}), levels{drive.CodeWayToStop: answer.Fine}},
	}
}

func teeth(t *testing.T, ratio float64) []answer.Finding {
	t.Helper()
	c := netlistCase(t, "contacts")
	r := drive.Launch(&c, 8, nil)
	original := r
	original.PeakPinionNM /= ratio
	return drive.LaunchCheck{Case: c, Result: r, Original: &original}.Findings()
}

func board(k drive.BoardCheck) func(*testing.T) []answer.Finding {
	return func(*testing.T) []answer.Finding { return k.Findings() }
}

func conv(k drive.ConverterCheck) func(*testing.T) []answer.Finding {
	return func(*testing.T) []answer.Finding { return k.Findings() }
}

func heat(k drive.HeatCheck) func(*testing.T) []answer.Finding {
	return func(*testing.T) []answer.Finding { return k.Findings() }
}

func pace(k drive.SpeedCheck) func(*testing.T) []answer.Finding {
	return func(*testing.T) []answer.Finding { return k.Findings() }
}

func reversal(speedMS float64, l drive.Limits) func(*testing.T) []answer.Finding {
	return func(*testing.T) []answer.Finding {
		return drive.ReversalCheck{
			Reversal: drive.ReverseAt(tractor(), drive.Controller{}, agm(), speedMS, 20), Limits: l,
			BlockedA: drive.BlockedWheels(tractor(), drive.Controller{}, agm(), drive.HeatState{WindingC: 20}, 20).MotorA,
		}.Findings()
	}
}

func TestEverySituationGivesItsFindingsAndNoOthers(t *testing.T) {
	for _, s := range slices.Concat(situations(), childSituations()) {
		got := map[string]answer.Level{}
		for _, f := range s.give(t) {
			if _, twice := got[f.Code]; twice {
				t.Errorf("%s: %s found twice", s.name, f.Code)
			}
			got[f.Code] = f.Level
			if level, ok := s.want[f.Code]; !ok || level != f.Level {
				t.Errorf("%s: found %s (%v): %s", s.name, f.Code, f.Level, f.Title)
			}
		}
		for code := range s.want {
			if _, ok := got[code]; !ok {
				t.Errorf("%s: %s is missing", s.name, code)
			}
		}
	}
}

// What is past its limit never reads as much as the limit.
func TestAConverterIsNeverAskedForWhatItIsSaidToGive(t *testing.T) {
	found := drive.ConverterCheck{Converter: drive.Converter{OutV: 12, LimitA: 60}, LaunchA: 60.3, RunningA: 9}.Findings()
	const title = "The converter gives 60 A but the launch asks for 60.3 A: it will cut out or burn."
	if !slices.ContainsFunc(found, func(f answer.Finding) bool { return f.Title == title }) {
		t.Errorf("lacks %q in %+v", title, found)
	}
}

// A finding is read by a parent and printed inside a code box.
func TestFindingsArePlainSentencesWithAKnownSource(t *testing.T) {
	known := map[string]bool{}
	last := ""
	for _, s := range drive.Sources() {
		if known[s.ID] || s.Text == "" || s.Known == "" {
			t.Errorf("source %q is there twice or is empty", s.ID)
		}
		known[s.ID] = true
		if s.ID < last {
			t.Errorf("source %q is out of order", s.ID)
		}
		last = s.ID
	}
	cited := map[string]bool{}
	for _, s := range slices.Concat(situations(), childSituations()) {
		for _, f := range s.give(t) {
			for id := range strings.SplitSeq(f.Source, ", ") {
				cited[id] = true
				if !known[id] {
					t.Errorf("%s cites %q, which Sources does not list", f.Code, id)
				}
			}
			if f.Level > answer.Fine && f.Advice == "" {
				t.Errorf("%s says nothing of what to do", f.Code)
			}
			for _, text := range []string{f.Title, f.Advice} {
				if strings.ContainsFunc(text, func(r rune) bool { return r > 126 || r < 32 }) {
					t.Errorf("%s: not plain ASCII: %q", f.Code, text)
				}
				if strings.Contains(text, "NaN") || strings.Contains(text, "Inf") || strings.Contains(text, "%!") {
					t.Errorf("%s: %q", f.Code, text)
				}
				if text != "" && !strings.HasSuffix(text, ".") {
					t.Errorf("%s: no sentence: %q", f.Code, text)
				}
			}
			if strings.Trim(f.Code, "abcdefghijklmnopqrstuvwxyz-") != "" {
				t.Errorf("code %q", f.Code)
			}
			if !slices.Contains([]string{"V", "A", "s", "m", "N", "m/s", "degC", "kg", "years", "x", ""}, f.Unit) {
				t.Errorf("%s: unit %q", f.Code, f.Unit)
			}
		}
	}
	cited["montsinger"] = true // stands behind a figure in an advice
	for id := range known {
		if !cited[id] {
			t.Errorf("source %q is cited by no finding of these situations", id)
		}
	}
}

// A fifth more than the full pack's volts, in whole volts.
func TestWhatIsBoughtStandsAFifthMoreThanTheFullPack(t *testing.T) {
	for full, want := range map[float64]float64{15: 18, 14.6: 18, 16.8: 21, 21: 26, 25.2: 31} {
		if got := drive.MadeForV(full); got != want {
			t.Errorf("%g V: made for %g V, want %g", full, got, want)
		}
	}
}

// A pack whose label says 20 A gives twice that at a start: whoever told the 20 A read "at most
// 40 A" and no word of why.
func TestWhatAPackStandsForSecondsIsToldFromWhatItStandsForGood(t *testing.T) {
	told := func(l drive.Limits) string {
		for _, f := range reversal(1.5, l)(t) {
			if f.Item == answer.Battery {
				return f.Title
			}
		}
		return ""
	}
	for want, l := range map[string]drive.Limits{
		"at most 20 A for seconds (10 A for good).": {PackA: 20, PackLastingA: 10},
		"at most 20 A for seconds.":                 {PackA: 20},
	} {
		if got := told(l); !strings.HasSuffix(got, want) {
			t.Errorf("%+v: %q, want %q", l, got, want)
		}
	}
}

// How a controller fails that a start asks too much of is harm to a child, unless the vehicle
// has lived with it; what is merely watched is not.
func TestAControllerThatMayHaveBeenAddedHarmsAChild(t *testing.T) {
	for _, c := range []struct {
		peakA float64
		added bool
		harm  answer.Harm
		keys  []string
	}{
		{30, false, answer.Part, []string{answer.KeyControllerPeakCurrent}},
		{30, true, answer.Child, []string{answer.KeyControllerPeakCurrent, answer.KeyMotorsWindingResistance}},
		{52, true, answer.Wear, []string{answer.KeyControllerPeakCurrent}},
	} {
		found := launchCheck(t, "contacts", func(k *drive.LaunchCheck) { k.Case.Limits, k.Added = drive.Limits{ControllerPeakA: c.peakA}, c.added })
		i := slices.IndexFunc(found, func(f answer.Finding) bool { return f.Code == drive.CodeLaunchOverControllerPeak })
		if i < 0 || found[i].Harm != c.harm || !slices.Equal(found[i].Decides, c.keys) {
			t.Errorf("%+v: %+v", c, found)
		}
	}
}
