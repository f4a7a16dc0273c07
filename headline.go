package packcheck

import (
	"fmt"
	"slices"

	"example.org/packcheck/finding"
	"example.org/packcheck/internal/quantity"
)

// headline is what must be right when it is all that anybody reads: verdict,
// largest risk, next step.
func headline(a *Assessment) [3]string {
	count := func(l finding.Level) int {
		n := 0
		for _, f := range a.Findings {
			if f.Level == l {
				n++
			}
		}
		return n
	}
	// Words must hold for a bench load as well.
	what, use := "let a child ride it", "ride"
	if a.Steady == nil {
		what, use = "connect it", "use"
	}
	lasts := quantity.FormatRangeOne(quantity.Duration, minutesRange(a), quantity.Metric)
	if a.Steady != nil {
		lasts += " with the pedal down"
	}
	var h [3]string
	switch a.Verdict {
	case finding.Danger:
		h[0] = fmt.Sprintf("danger: do not %s as it is. %s.", what,
			counts(count(finding.Danger), "dangerous", count(finding.FixFirst), "to fix first"))
	case finding.FixFirst:
		h[0] = fmt.Sprintf("fix first: not ready to %s. %s.", use,
			counts(count(finding.FixFirst), "to fix first", count(finding.Watch), "to watch"))
	case finding.Watch:
		h[0] = fmt.Sprintf("watch: usable with care; lasts %s. %s.", lasts, counts(count(finding.Watch), "to watch", 0, ""))
	default:
		h[0] = fmt.Sprintf("fine, as far as these figures go; lasts %s.", lasts)
	}
	h[1] = "None found in these figures; the cautions below still hold."
	h[2] = "Read the cautions, then try it without a child."
	if worst := byRisk(a.Findings); len(worst) > 0 && worst[0].Level > finding.Fine {
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

// counts says "2 things dangerous, 1 to fix first".
func counts(n int, what string, m int, more string) string {
	things := "things"
	if n == 1 {
		things = "thing"
	}
	text := fmt.Sprintf("%d %s %s", n, things, what)
	if m > 0 {
		text += fmt.Sprintf(", %d %s", m, more)
	}
	return text
}

// gravest lists codes in the order in which they hurt people; what is not
// listed comes after, in report order. Own choice.
var gravest = []string{
	"contacts-may-weld", "short-circuit-no-fuse", "no-fuse", "board-overvoltage", "fuse-above-wire",
	"short-circuit-wire", "weakest-cell-reversed", "weakest-cell-harmed", "charger-wrong-chemistry", "charger-volts-high",
}

// byRisk sorts findings for the headline and the list of changes: by level,
// then by how they hurt.
func byRisk(list []finding.Finding) []finding.Finding {
	rank := func(f finding.Finding) int {
		if i := slices.Index(gravest, f.Code); i >= 0 {
			return i
		}
		return len(gravest)
	}
	out := slices.Clone(list)
	slices.SortStableFunc(out, func(a, b finding.Finding) int {
		if a.Level != b.Level {
			return int(b.Level) - int(a.Level)
		}
		return rank(a) - rank(b)
	})
	return out
}

// changes is what has to be done before anybody rides, in order.
func changes(list []finding.Finding) []string {
	var out []string
	for _, f := range byRisk(list) {
		if f.Level >= finding.FixFirst && f.Advice != "" && !slices.Contains(out, f.Advice) {
			out = append(out, f.Advice)
		}
	}
	return out
}
