package cutoff_test

import (
	"math"
	"slices"
	"testing"

	"example.org/packcheck/answer"
	"example.org/packcheck/battery"
	"example.org/packcheck/chemistry"
	"example.org/packcheck/cutoff"
	"example.org/packcheck/internal/findingtest"
)

// made is a case that fires a finding, what it must say, and one that does not
// fire it, or less badly.
type made struct {
	name    string
	code    string
	fires   []answer.Finding
	silent  []answer.Finding
	level   answer.Level
	harm    answer.Harm
	change  answer.Change
	source  string // ID of the source of the limit
	decides string // one of the keys that decide it
}

// under is the pack at 20 degC under a load, behind these devices.
func under(t testing.TB, m *battery.Model, charge, loadA float64, devices ...cutoff.Device) cutoff.Case {
	t.Helper()
	return cutoff.Case{Pack: m, Start: m.StateAt(charge, 20), LoadA: loadA, AmbientC: 20, Chain: chain(t, devices...)}
}

func judged(t testing.TB, c cutoff.Case) []answer.Finding {
	t.Helper()
	fs, err := cutoff.Judge(c)
	if err != nil {
		t.Fatal(err)
	}
	return fs
}

// left is the pack left alone at a charge, with what goes on drawing.
func left(t testing.TB, m *battery.Model, charge, standbyA float64) []answer.Finding {
	t.Helper()
	return idle(t, cutoff.Standing{Pack: m, Start: below(m, charge), AmbientC: 20, StandbyA: standbyA}).Findings
}

func opens(where cutoff.Place, atV float64) cutoff.Device {
	return cutoff.Device{Where: where, OpensAtV: atV}
}

// The rows are the table of findings of this package.
func findingsMade(t testing.TB) []made {
	t.Helper()
	const danger, fix, watch = answer.Danger, answer.FixFirst, answer.Watch
	const house, part, wear = answer.House, answer.Part, answer.Wear
	pLi, pAg := profile(t, "li-ion"), profile(t, "agm")
	li, ag, ni := pack(t, "li-ion", 5, 5, nil), pack(t, "agm", 6, 7, nil), pack(t, "nimh", 15, 3, nil)
	short := func(name string, cells int, share float64) *battery.Model {
		return pack(t, name, cells, 5, func(s *battery.Spec) { s.WeakestShort = share })
	}
	watched := under(t, li, 1, 5)
	watched.Watched = true
	behind := under(t, li, 1, 5, opens(cutoff.Controller, 12.3))
	behind.PathOhm = 0.1
	closes := func(atV, closesV float64) cutoff.Device {
		return cutoff.Device{Where: cutoff.Controller, OpensAtV: atV, DelayS: 1, ClosesAtV: closesV}
	}
	slow := exponentialSag(12, 4, 2) // at or below 10 V for 1.386 s
	through := func(where cutoff.Place, delayS float64) []answer.Finding {
		return cutoff.ThroughLaunch(cutoff.Device{Where: where, OpensAtV: 10, DelayS: delayS}, slow).Findings
	}
	advised := func(m *battery.Model, sag cutoff.Sag) []answer.Finding {
		return advise(t, cutoff.Wish{Case: under(t, m, 1, 5), Sag: sag}).Findings
	}
	ends := func(pedalS, chargeLeft float64) []answer.Finding {
		if f, is := cutoff.EndsRide(cutoff.Module, pedalS, chargeLeft); is {
			return []answer.Finding{f}
		}
		return nil
	}
	always := cutoff.Sag{LowestV: 1, SecondsBelow: func(float64) float64 { return 60 }}
	weakest := func(m *battery.Model, opensV float64) []answer.Finding {
		return follow(t, under(t, m, 1, 5, opens(cutoff.Pack, opensV))).Findings
	}
	return []made{
		{"lithium without", cutoff.CodeNone, judged(t, under(t, li, 1, 5)), judged(t, under(t, li, 1, 5, opens(cutoff.Pack, 15))), danger, house, answer.FitCutoff, pLi.LadderSource, answer.KeyPackChemistry},
		{"lead-acid without", cutoff.CodeNone, judged(t, under(t, ag, 1, 5)), judged(t, under(t, ag, 1, 5, opens(cutoff.Pack, 10.5))), fix, part, answer.FitCutoff, pAg.LadderSource, answer.KeyPackChemistry},
		{"lithium that somebody watches", cutoff.CodeNone, judged(t, watched), judged(t, under(t, li, 1, 5, opens(cutoff.Pack, 15))), watch, wear, answer.FitCutoff, pLi.LadderSource, answer.KeyPackChemistry},
		{"a lead-acid board on lithium", cutoff.CodeBelowHarm, judged(t, under(t, li, 1, 5, opens(cutoff.Controller, 10))), judged(t, behind), danger, house, answer.FitCutoff, pLi.LadderSource, answer.KeyCutoffControllerOpensAt},
		{"a 6 V board on lead-acid", cutoff.CodeBelowHarm, judged(t, under(t, ag, 1, 1, opens(cutoff.Controller, 5))), judged(t, under(t, ag, 1, 1, opens(cutoff.Controller, 9.6))), fix, part, answer.FitCutoff, pAg.LadderSource, answer.KeyCutoffControllerOpensAt},
		{"an 18 V setting on 12 V", cutoff.CodeAboveFull, judged(t, under(t, ag, 1, 5, opens(cutoff.Module, 15))), judged(t, under(t, ag, 1, 5, opens(cutoff.Module, 0.97*ag.FullV()))), fix, part, answer.FitCutoff, pAg.LadderSource, answer.KeyCutoffModuleOpensAt},
		{"lithium drained past its cutoff", cutoff.CodeNeverOpens, follow(t, under(t, li, 1, 5, opens(cutoff.Pack, 2))).Findings, follow(t, under(t, li, 1, 0.05, opens(cutoff.Pack, 2))).Findings, danger, house, answer.FitCutoff, pLi.LadderSource, answer.KeyCutoffPackOpensAt},
		{"lead-acid drained past its cutoff", cutoff.CodeNeverOpens, follow(t, under(t, ag, 1, 5, opens(cutoff.Pack, 2))).Findings, follow(t, under(t, ag, 1, 5, opens(cutoff.Pack, 10))).Findings, fix, part, answer.FitCutoff, pAg.LadderSource, answer.KeyCutoffPackOpensAt},
		{"comes back again and again", cutoff.CodeChatters, follow(t, under(t, ag, 1, 10, closes(10.5, 11))).Findings, follow(t, under(t, ag, 1, 10, closes(10.5, 12.7))).Findings, fix, part, answer.FitCutoff, "cutoff-practice", answer.KeyCutoffControllerClosesAt},
		{"comes back a few times", cutoff.CodeChatters, follow(t, under(t, li, 1, 10, closes(15.5, 16.5))).Findings, follow(t, under(t, li, 1, 10, closes(15.5, 20))).Findings, watch, wear, answer.FitCutoff, "cutoff-practice", answer.KeyCutoffControllerClosesAt},
		{"measured packs came back higher", cutoff.CodeMayChatter, follow(t, under(t, li, 1, 5, closes(15, 16.5))).Findings, follow(t, under(t, li, 1, 5, closes(15, 20))).Findings, watch, wear, answer.FitCutoff, "measured-rebound", answer.KeyCutoffControllerClosesAt},
		{"opens at the launch", cutoff.CodeOpensAtLaunch, through(cutoff.Module, 1), through(cutoff.Module, 1.38), watch, wear, answer.FitCutoff, "cutoff-practice", answer.KeyCutoffModuleDelay},
		{"four seconds from a full battery", cutoff.CodeEndsRide, ends(4, 0.99), append(ends(60, 0.99), ends(4, 0.29)...), fix, part, answer.FitCutoff, "cutoff-practice", answer.KeyCutoffModuleDelay},
		{"a launch of a minute", cutoff.CodeLaunchTooDeep, advised(ag, always), advised(ag, slow), fix, part, answer.ChangeNone, "cutoff-practice", ""},
		{"only a latch will do", cutoff.CodeMustLatch, advised(short("lifepo4", 4, 0.5), cutoff.Sag{}), advised(li, cutoff.Sag{}), watch, wear, answer.FitCutoff, "cutoff-practice", answer.KeyPackChemistry},
		{"packs that no one setting suits", cutoff.CodeCannotProtect, []answer.Finding{cutoff.CannotProtect()}, nil, watch, wear, answer.FitPack, "cutoff-practice", ""},
		{"a lithium cell driven backwards", cutoff.CodeWeakCellReversed, weakest(short("li-ion", 5, 0.3), 15), weakest(li, 16), danger, house, answer.FitCutoff, "pack-volts-hide-a-cell", answer.KeyCutoffPackOpensAt},
		{"a lead-acid cell driven backwards", cutoff.CodeWeakCellReversed, weakest(short("agm", 6, 0.5), 9), weakest(ag, 11), fix, part, answer.FitCutoff, "pack-volts-hide-a-cell", answer.KeyCutoffPackOpensAt},
		{"a lithium cell below harm", cutoff.CodeWeakCellHarmed, weakest(short("li-ion", 5, 0.08), 15), weakest(li, 16), fix, part, answer.FitCutoff, pLi.LadderSource, answer.KeyCutoffPackOpensAt},
		{"a lithium cell past its last rung", cutoff.CodeWeakCellHarmed, weakest(short("li-ion", 5, 0.1), 15), weakest(li, 16), danger, house, answer.FitCutoff, pLi.LadderSource, answer.KeyCutoffPackOpensAt},
		{"drained past saving", cutoff.CodePastSaving, left(t, li, -0.05, 0), left(t, li, 0.5, 0), danger, house, answer.FitCutoff, "drained-lithium", answer.KeyPackChemistry},
		{"lithium left switched on", cutoff.CodeIdleWeek, left(t, li, 0.03, 0.02), left(t, li, 0.5, 0), danger, house, answer.FitCutoff, pLi.LadderSource, answer.KeyControllerStandby},
		{"lead-acid left switched on", cutoff.CodeIdleWeek, left(t, ag, 0.05, 0.02), left(t, ag, 0.5, 0), fix, part, answer.FitCutoff, pAg.LadderSource, answer.KeyControllerStandby},
		{"nickel left empty", cutoff.CodeIdleWeek, left(t, ni, 0.1, 0.02), left(t, ni, 0.9, 0), watch, wear, answer.FitCutoff, profile(t, "nimh").LadderSource, answer.KeyControllerStandby},
		{"lithium drained, nothing draws", cutoff.CodeIdleMonth, left(t, li, 0.03, 0), left(t, li, 0.5, 0), watch, wear, answer.KeepCharged, pLi.LadderSource, answer.KeyPackSelfDischarge},
	}
}

func TestFindingsSayWhomTheyHurtAndWhatToChange(t *testing.T) {
	sources := slices.Concat(cutoff.Sources(), chemistry.Builtin().Sources())
	fired := map[string]bool{}
	for _, row := range findingsMade(t) {
		f, ok := find(row.fires, row.code)
		if !ok {
			t.Errorf("%s: %s is not among %+v", row.name, row.code, row.fires)
			continue
		}
		fired[row.code] = true
		if f.Level != row.level || f.Harm != row.harm || f.Change != row.change || f.Source != row.source {
			t.Errorf("%s: %+v, want %+v", row.name, f, row)
		}
		if row.decides != "" && !slices.Contains(f.Decides, row.decides) {
			t.Errorf("%s: decided by %v, want %s among them", row.name, f.Decides, row.decides)
		}
		if f.Topic != answer.TopicCutoff || f.Item != answer.Battery {
			t.Errorf("%s: topic %q, item %q", row.name, f.Topic, f.Item)
		}
		if f.Reads == answer.AsNumber && (f.Found > f.Limit) != (f.Want == answer.Below) {
			t.Errorf("%s: %g is not past %g on the side that is wrong (%v)", row.name, f.Found, f.Limit, f.Want)
		}
		findingtest.Cited(t, f, sources)
		if _, is := find(row.silent, row.code); is {
			t.Errorf("%s: %s also fires where it must not: %+v", row.name, row.code, row.silent)
		}
		for _, f := range slices.Concat(row.fires, row.silent) {
			findingtest.Whole(t, f)
		}
	}
	findingtest.AllFired(t, fired)
}

// A cutoff in the controller concerns the board.
func TestALaunchThatOpensTheControllersCutoffConcernsTheBoard(t *testing.T) {
	r := cutoff.ThroughLaunch(cutoff.Device{Where: cutoff.Controller, OpensAtV: 10, DelayS: 1}, exponentialSag(12, 4, 2))
	if f, ok := find(r.Findings, cutoff.CodeOpensAtLaunch); !ok || f.Item != answer.Board {
		t.Errorf("%+v", r.Findings)
	}
}

// A resting lithium pack that sinks is told of ever more gravely, and at no
// voltage below its last rung is anybody told to charge it.
func TestTheLadderOfAPackLeftAloneIsMonotone(t *testing.T) {
	for _, name := range []string{"li-ion", "lifepo4", "agm", "gel"} {
		m := pack(t, name, 4, 5, nil)
		last := answer.Fine
		for z := 1.0; z > -0.2; z -= 0.002 {
			i := idle(t, cutoff.Standing{Pack: m, Start: below(m, z), AmbientC: 20, StandbyA: 0.002})
			worst := answer.Worst(i.Findings)
			if worst < last {
				t.Fatalf("%s at %.3f of its charge: %v, above it %v", name, z, worst, last)
			}
			last = worst
			if _, told := find(i.Findings, cutoff.CodePastSaving); !told && i.DaysToNever <= 0 {
				t.Fatalf("%s at %.3f: below the last rung and not told: %+v", name, z, i)
			}
		}
		if last < answer.FixFirst || math.IsNaN(m.FullV()) {
			t.Errorf("%s: drained to nothing and only %v", name, last)
		}
	}
}
