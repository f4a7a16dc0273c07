package reckon

import (
	"fmt"
	"slices"

	"example.org/packcheck/answer"
	"example.org/packcheck/internal/quantity"
)

// headline is what must be right when it is all that anybody reads: verdict,
// largest risk, next step.
func headline(a *answer.Assessment) [3]string {
	count := func(l answer.Level) int {
		n := 0
		for _, f := range a.Findings {
			if f.Level == l {
				n++
			}
		}
		return n
	}
	use, ready := "no child may ride it", "not ready to ride"
	if a.Steady == nil {
		use, ready = "do not connect it", "not ready for use"
	}
	if !slices.ContainsFunc(a.Findings, func(f answer.Finding) bool {
		return f.Level == a.Verdict && f.Topic != answer.TopicCharge
	}) {
		use, ready = "do not charge it like this", "charging is not in order"
	}
	lasts := "lasts " + quantity.FormatRangeOne(quantity.Duration, minutesRange(a), quantity.Metric)
	if a.Ride.End == answer.EndPattern {
		lasts = "gives the whole pattern"
	}
	dangers, fixes, watches := count(answer.Danger), count(answer.FixFirst), count(answer.Watch)
	var h [3]string
	switch a.Verdict {
	case answer.Danger:
		h[0] = fmt.Sprintf("%s; %s", use, counts(dangers, "danger", fixes, "to fix first"))
	case answer.FixFirst:
		h[0] = fmt.Sprintf("%s; %s", ready, counts(fixes, "fault", watches, "to watch"))
	case answer.Watch:
		h[0] = fmt.Sprintf("usable with care, %s", lasts)
	default:
		h[0] = fmt.Sprintf("as far as these figures go, %s", lasts)
	}
	h[1] = "None found in these figures; the cautions below still hold."
	h[2] = "Read the cautions, then try it without a child."
	if len(a.Findings) > 0 && a.Findings[0].Level > answer.Fine {
		h[1] = a.Findings[0].Title
		for _, f := range a.Findings {
			if f.Advice != "" && f.Level > answer.Fine {
				h[2] = f.Advice
				break
			}
		}
	}
	return h
}

// minutesRange is the ride without a wanted time, in seconds.
func minutesRange(a *answer.Assessment) answer.Range {
	if r, ok := a.Ranges[minutesPath]; ok {
		return r.Scale(60)
	}
	return answer.Exactly(a.Ride.LastsPedalMin * 60)
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
