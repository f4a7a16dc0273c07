package packcheck

import (
	"fmt"
	"slices"

	"example.org/packcheck/answer"
	"example.org/packcheck/internal/quantity"
	"example.org/packcheck/internal/ride"
)

// headline is what must be right when it is all that anybody reads: verdict,
// largest risk, next step.
func headline(a *Assessment) [3]string {
	count := func(l answer.Level) int {
		n := 0
		for _, f := range a.Findings {
			if f.Level == l {
				n++
			}
		}
		return n
	}
	use := "no child may ride it"
	ready := "not ready to ride"
	if a.Steady == nil {
		use, ready = "do not connect it", "not ready for use"
	}
	if !slices.ContainsFunc(a.Findings, func(f answer.Finding) bool {
		return f.Level == a.Verdict && f.Topic != TopicCharge
	}) {
		use, ready = "do not charge it like this", "charging is not in order"
	}
	lasts := quantity.FormatRangeOne(quantity.Duration, minutesRange(a), quantity.Metric)
	lasts = "lasts " + lasts
	if a.Ride.EndedBy == ride.PatternPlayed.String() {
		lasts = "gives the whole pattern"
	}
	dangers, fixes, watches := count(answer.Danger), count(answer.FixFirst), count(answer.Watch)
	var h [3]string
	switch a.Verdict {
	case answer.Danger:
		h[0] = fmt.Sprintf("danger: %s; %s", use, counts(dangers, "danger", fixes, "to fix first"))
	case answer.FixFirst:
		h[0] = fmt.Sprintf("fix first: %s; %s", ready, counts(fixes, "fault", watches, "to watch"))
	case answer.Watch:
		h[0] = fmt.Sprintf("watch: usable with care, %s", lasts)
	default:
		h[0] = fmt.Sprintf("fine as far as these figures go, %s", lasts)
	}
	h[1] = "None found in these figures; the cautions below still hold."
	h[2] = "Read the cautions, then try it without a child."
	if worst := byRisk(a.Findings); len(worst) > 0 && worst[0].Level > answer.Fine {
		h[1] = worst[0].Title
		for _, f := range worst {
			if f.Advice != "" {
				h[2] = f.Advice
				break
			}
		}
	}
	return h
}

// minutesRange is the ride without a wanted time, in seconds.
func minutesRange(a *Assessment) Range {
	if r, ok := a.Ranges["ride.lasts_pedal_min"]; ok {
		return r.Scale(60)
	}
	return quantity.Exactly(a.Ride.LastsPedalMin * 60)
}

// counts says "2 dangers, 1 to fix first".
func counts(n int, what string, m int, more string) string {
	if n != 1 {
		what += "s"
	}
	text := fmt.Sprintf("%d %s", n, what)
	if m > 0 {
		text += fmt.Sprintf(", %d %s", m, more)
	}
	return text
}

// gravest lists codes in the order in which they hurt people. What is not
// listed comes after them, in report order; what is mildest by its nature comes
// last. Own choice.
var (
	gravest = []string{
		"pack-never-recharge", "pack-too-low-to-charge", "contacts-may-weld", "no-fuse", "short-burns-wire", "board-overvoltage", "fuse-above-wire",
		"charger-wrong-chemistry", "charger-volts-too-high", "charger-polarity-reversed", "charger-gives-ac",
		"charger-is-power-supply", "charge-through-vehicle-jack", "tool-pack-foreign-charger",
		"cutoff-none", "cutoff-below-harm", "weak-cell-harmed", "drained-past-saving", "charger-never-stops",
		"fuse-unknown", "wire-overloaded", "blocked-overloads-wire", "fuse-opens-running", "fuse-none-fits",
		"pack-current-lasting", "fast-for-a-ride-on", "faster-than-original", "motor-hot", "plastic-softens",
	}
	mildest = []string{
		"charger-polarity-unchecked", "joint-warm", "plug-in-spark", "wheels-spin", "driven-to-a-standstill",
		"fuse-slow-when-blocked", "reversal", "blocked-heat", "blocked-heat-unknown",
	}
)

// byRisk sorts findings for the headline and the list of changes: by level,
// then by how they hurt.
func byRisk(list []answer.Finding) []answer.Finding {
	rank := func(f answer.Finding) int {
		if i := slices.Index(gravest, f.Code); i >= 0 {
			return i
		}
		return len(gravest) + 1 + slices.Index(mildest, f.Code)
	}
	out := slices.Clone(list)
	slices.SortStableFunc(out, func(a, b answer.Finding) int {
		if a.Level != b.Level {
			return int(b.Level) - int(a.Level)
		}
		return rank(a) - rank(b)
	})
	return out
}
