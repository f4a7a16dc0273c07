package packcheck

import (
	"slices"
	"strings"

	"example.org/packcheck/answer"
)

// remedy is one change that answers several findings.
type remedy struct {
	// codes are the findings that it answers. Where only some of them were
	// made, the first in this list lends its words.
	codes []string
	// gravely and mildly stand in for those words where two or more of the
	// findings were made and no single one says enough: gravely when one of
	// them is a danger. Empty for none.
	gravely, mildly string
}

// remedies are the changes that more than one finding asks for. Each is listed
// once, where the gravest of its findings stands. A code is in one remedy at
// most.
var remedies = [...]remedy{
	newController: {codes: []string{"contacts-may-weld", "pedal-may-weld"}},
	currentLimit: {codes: []string{
		"blocked-over-pack", "launch-over-pack", "pack-current-peak", "blocked-over-controller", "launch-over-controller-peak",
		"blocked-over-switch", "launch-over-switch", "ramp-bounds-nothing", "blocked-heat", "tooth-load-blocked", "tooth-load",
	}},
	{codes: []string{"faster-than-original", "fast-for-a-ride-on"}},
	{codes: []string{"motor-hot", "plastic-softens"}},
	{codes: []string{
		"no-fuse", "fuse-unknown", "fuse-above-wire", "fuse-above-joint", "fuse-opens-running", "fuse-opens-at-launch", "fuse-ends-the-ride",
	}},
	{codes: []string{"fuse-none-fits", "wire-overloaded", "blocked-overloads-wire"}},
	{codes: []string{
		"cutoff-none", "cutoff-above-full", "cutoff-below-harm", "cutoff-never-opens", "drained-past-saving",
		"weak-cell-reversed", "weak-cell-harmed", "weakest-cell-reversed", "weakest-cell-below-harm", "idle-harms-within-week",
	}},
	{codes: []string{"charge-too-cold", "charge-place-temperature"}},
	{
		codes: []string{
			"charger-wrong-chemistry", "charger-is-power-supply", "charger-gives-ac", "charger-polarity-reversed", "charger-volts-too-high",
			"charger-never-stops", "charger-current-too-high", "charger-volts-too-low", "tool-pack-foreign-charger",
			"charger-purpose-unknown", "charger-end-volts-unknown", "charger-output-unknown",
		},
		gravely: "Do not use this charger with this pack. Get one that is made for it.",
		mildly:  "Do not use this charger before everything named under charging is settled. Better, get one that is made for this pack.",
	},
}

// The remedies that other code asks for.
const (
	newController = iota
	currentLimit
)

// remedyOf returns the place of the remedy that answers a finding, -1 where
// the finding asks for something of its own.
func remedyOf(code string) int {
	return slices.IndexFunc(remedies[:], func(r remedy) bool { return slices.Contains(r.codes, code) })
}

// changes is what has to be done before anybody rides, in order: each change
// once, however many findings ask for it.
func changes(list []answer.Finding) []string {
	var must []answer.Finding
	for _, f := range byRisk(list) {
		if f.Level >= answer.FixFirst && f.Advice != "" {
			must = append(must, f)
		}
	}
	waits := func(f answer.Finding) bool { return f.Code == "charge-too-hot" }
	if !slices.ContainsFunc(must, func(f answer.Finding) bool { return !waits(f) }) {
		waits = func(answer.Finding) bool { return false } // it is all that there is to do
	}
	must = slices.DeleteFunc(must, waits) // waiting after each ride changes nothing
	var out []string
	var done [len(remedies)]bool
	for _, f := range must {
		text := alone(f)
		if i := remedyOf(f.Code); i >= 0 {
			if done[i] {
				continue
			}
			done[i] = true
			text = remedies[i].words(must)
			if i == newController && slices.ContainsFunc(must, func(f answer.Finding) bool { return remedyOf(f.Code) == currentLimit }) {
				done[currentLimit] = true // one and the same controller
				text += " " + remedies[currentLimit].words(must)
			}
		}
		if !slices.Contains(out, text) {
			out = append(out, text)
		}
	}
	return out
}

// words says a remedy for the findings that were made.
func (r *remedy) words(made []answer.Finding) string {
	var found []answer.Finding
	for _, code := range r.codes {
		if i := slices.IndexFunc(made, func(f answer.Finding) bool { return f.Code == code }); i >= 0 {
			found = append(found, made[i])
		}
	}
	switch {
	case len(found) == 1 || r.gravely == "":
		return alone(lowestLimit(found))
	case answer.Worst(found) == answer.Danger:
		return r.gravely
	}
	return r.mildly
}

// lowestLimit picks the finding that asks for the lowest current limit: what
// spares the pack may still be too much for the controller. Where none names a
// limit it is the first.
func lowestLimit(found []answer.Finding) answer.Finding {
	var best answer.Finding
	for _, f := range found {
		limits := strings.HasPrefix(f.Code, "blocked-over-") || strings.HasPrefix(f.Code, "launch-over-")
		if limits && (best.Code == "" || f.Limit < best.Limit) {
			best = f
		}
	}
	if best.Code == "" {
		return found[0]
	}
	return best
}

// alone is a finding's advice as it can be quoted without the finding.
func alone(f answer.Finding) string {
	if f.Topic == TopicCharge {
		return "Charging: " + f.Advice // otherwise "it" would be anything
	}
	return f.Advice
}

// customs are ways of using a vehicle that spare it, by the findings that call
// for them. They are no changes: nothing gets right by them.
var customs = [...]struct {
	text  string
	codes []string
}{
	{"Keep clear of roads, water, steps and slopes.", []string{"way-to-stop"}},
	{"Let go of the pedal at once when the vehicle does not move.", []string{
		"blocked-heat", "blocked-heat-unknown", "blocked-over-pack", "blocked-over-controller", "blocked-over-switch",
		"blocked-overloads-wire", "fuse-slow-when-blocked",
	}},
	{"Stand still before you switch to reverse.", []string{"reversal"}},
	{"Keep to firm and level ground.", []string{"cannot-start", "stalls-soon", "spins-on-the-spot"}},
	{"Make pauses, above all after slopes and long grass.", []string{"motor-hot", "plastic-softens", "pack-too-hot"}},
	{"After every ride take the pack off, let it cool and charge it.", []string{
		"cutoff-none", "driven-to-a-standstill", "idle-harms-within-week", "idle-harms-within-month", "charge-too-hot",
	}},
	{"Plug the pack in with the switch off.", []string{"plug-in-spark"}},
	{"Charge indoors, with the pack at room temperature.", []string{
		"charge-too-cold", "charge-place-temperature", "charge-slow-when-cold",
	}},
	{"Check plus and minus with a meter before the first charge.", []string{"charger-polarity-unchecked"}},
}

// habits is how to use the vehicle as it is judged, one short sentence each.
func habits(list []answer.Finding) []string {
	var out []string
	for _, c := range customs {
		if slices.ContainsFunc(list, func(f answer.Finding) bool { return slices.Contains(c.codes, f.Code) }) {
			out = append(out, c.text)
		}
	}
	return out
}
