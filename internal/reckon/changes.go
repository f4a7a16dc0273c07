package reckon

import (
	"slices"
	"strings"

	"example.org/packcheck/answer"
)

// changes is what has to be done before anybody rides, in order: each change
// once, however many findings ask for it. To load it less is several things: a lighter
// rider takes no slope away.
func changes(a *answer.Assessment) []string {
	var must []answer.Finding
	for _, f := range a.Findings {
		if f.Level >= answer.FixFirst && f.Advice != "" {
			must = append(must, f)
		}
	}
	if f := a.First(); f != nil && f.OfAge && f.Level >= answer.FixFirst { // before anything is bought
		must = slices.Insert(must, 0, *f)
	}
	waits := func(f answer.Finding) bool { return f.Change == answer.WaitBeforeCharge }
	if slices.ContainsFunc(must, func(f answer.Finding) bool { return !waits(f) }) {
		must = slices.DeleteFunc(must, waits) // waiting after each ride changes nothing
	}
	if slices.ContainsFunc(must, func(f answer.Finding) bool { return f.Change == answer.FitCharger && f.Level == answer.Danger }) {
		must = slices.DeleteFunc(must, func(f answer.Finding) bool { return f.Item == answer.Charger && f.Change == answer.LookUp }) // that one goes
	}
	if slices.ContainsFunc(must, func(f answer.Finding) bool { return f.Fate == answer.FateStuck }) {
		must = slices.DeleteFunc(must, func(f answer.Finding) bool { return f.Fate == answer.FateCrawls }) // the same, and milder
	}
	var out []string
	done := map[answer.Change]bool{}
	for _, f := range must {
		text := alone(f)
		if c := f.Change; c != answer.ChangeNone && c != answer.LookUp && c != answer.LoadLess {
			oneController := (c == answer.FitController || c == answer.LimitCurrent) && asks(must, answer.FitController)
			if oneController {
				c = answer.FitController // whichever of the two is asked for first
			}
			if done[c] {
				continue
			}
			done[c] = true
			text = wordsFor(c, must, rightOne(a))
			if oneController && asks(must, answer.LimitCurrent) {
				text += " " + wordsFor(answer.LimitCurrent, must, "")
			}
		}
		if !slices.Contains(out, text) {
			out = append(out, text)
		}
	}
	return out
}

// asks reports whether one of the findings asks for a change.
func asks(list []answer.Finding, c answer.Change) bool {
	return slices.ContainsFunc(list, func(f answer.Finding) bool { return f.Change == c })
}

// Where several findings speak against one charger, none of them says enough.
const anotherCharger = "Do not use this charger with this pack. Get "

// rightOne is the charger to get, in few words.
func rightOne(a *answer.Assessment) string {
	switch {
	case a.Charge == nil || a.Charge.Advised == nil || a.Charge.Advised.Brief == "":
		return "one that is made for this pack"
	case a.Charge.Advised.Own:
		return "the pack maker's own"
	}
	return "one " + a.Charge.Advised.Brief
}

// toSettle are what a finding on a charger hangs on, in so few words that a page has room
// for all of them.
var toSettle = [...]struct{ key, words string }{
	{answer.KeyChargerOutput, "AC or DC"},
	{answer.KeyChargerMadeFor, "for what kind of battery it is"},
	{answer.KeyChargerVoltage, "the volts that it rises to"},
	{answer.KeyChargerCurrent, "its amps"},
	{answer.KeyChargerStops, "whether it stops"},
	{answer.KeyChargerPolarity, "plus and minus"},
	{answer.KeyPackLabel, "whether its maker allows it for this pack"},
}

// settled says what has to be settled before a charger is used, which a page may name
// nowhere else.
func settled(in []answer.Finding, right string) string {
	var what []string
	for i := range in {
		for _, s := range toSettle {
			if slices.Contains(in[i].Decides, s.key) {
				if !slices.Contains(what, s.words) {
					what = append(what, s.words)
				}
				break
			}
		}
	}
	return "Do not use this charger before this is settled: " + strings.Join(what, "; ") + ". Better, get " + right + "."
}

// wordsFor says a change for the findings that ask for it: of several current
// limits the lowest, since what spares the pack may still be too much for the
// controller; of several faults of one charger what answers all of them, and the right one
// in its place; otherwise the gravest one's advice.
func wordsFor(c answer.Change, made []answer.Finding, right string) string {
	var in []answer.Finding
	for _, f := range made {
		if f.Change == c {
			in = append(in, f)
		}
	}
	best := in[0]
	switch {
	case c == answer.LimitCurrent:
		for _, f := range in {
			if f.LimitA > 0 && (best.LimitA == 0 || f.LimitA < best.LimitA) {
				best = f
			}
		}
	case c == answer.FitFuse:
		for _, f := range in {
			if f.Unit == "A" { // the one that names a size
				best = f
				break
			}
		}
	case c == answer.FitCharger && len(in) > 1 && answer.Worst(in) == answer.Danger:
		return anotherCharger + right + "."
	case c == answer.FitCharger && len(in) > 1:
		return settled(in, right)
	}
	return alone(best)
}

// alone is a finding's advice as it can be quoted without the finding.
func alone(f answer.Finding) string {
	if f.Topic == answer.TopicCharge && !f.PutAway() {
		return "Charging: " + f.Advice // otherwise "it" would be anything
	}
	return f.Advice
}

// habits is how to use the vehicle as it is judged, one short sentence each; none
// that has a finished battery charged.
func habits(a *answer.Assessment) []string {
	finished := a.Finished()
	var out []string
	for _, f := range a.Findings {
		switch f.Habit {
		case answer.HabitPackOff, answer.HabitChargeWarm, answer.HabitTopUp, answer.HabitChargeApart, answer.HabitWatchCharge, answer.HabitCheckPoles:
			if finished {
				continue
			}
		}
		if f.Habit != "" && !slices.Contains(out, f.Habit) {
			out = append(out, f.Habit)
		}
	}
	return out
}
