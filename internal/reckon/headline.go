package reckon

import (
	"fmt"
	"slices"

	"example.org/packcheck/answer"
)

// headline is what must be right when it is all that anybody reads: verdict,
// largest risk, next step; what does not hold for sure is not said as if it did. It
// holds no figure: those are rounded in reports.
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
	const nobody = "nobody uses or charges this battery"
	if a.Finished() {
		use = nobody
	} else if !slices.ContainsFunc(a.Findings, func(f answer.Finding) bool {
		return f.Level == a.Verdict && f.Topic != answer.TopicCharge
	}) {
		use, ready = "do not charge it like this", "charging is not in order"
		if !slices.ContainsFunc(a.Findings, func(f answer.Finding) bool { return f.Level == a.Verdict && !f.PutAway() }) {
			use, ready = "do not put it away like this", "the way it is put away is not in order"
		}
		if first := a.First(); first != nil && first.RestsBadly() { // then another charger mends nothing
			use, ready = nobody, "the battery is not in order"
		}
	}
	if a.TooYoung() != nil {
		ready = "the child is too young for it"
	}
	dangers, fixes, watches := count(answer.Danger), count(answer.FixFirst), count(answer.Watch)
	var h [3]string
	switch a.Verdict {
	case answer.Danger:
		h[0] = fmt.Sprintf("%s; %s", use, counts(dangers, "danger", fixes, "to fix first"))
	case answer.FixFirst:
		if harmed := a.PassedOver(); harmed != "" {
			ready += " (" + harmed + ")"
		}
		h[0] = fmt.Sprintf("%s; %s", ready, counts(fixes, "fault", watches, "to watch"))
	case answer.Watch:
		h[0] = fmt.Sprintf("usable with care; %d to watch", watches)
	default:
		h[0] = "nothing is wrong, as far as these figures go"
	}
	h[1] = "None found in these figures; the cautions below still hold."
	h[2] = "Read the cautions, then try it without a child."
	if a.Steady == nil {
		h[2] = "Read the cautions, and stay beside it while it runs."
	}
	if first := a.First(); first != nil && first.Level > answer.Fine {
		h[1] = first.Certainty.Hedge() + first.Title
		for _, f := range slices.Concat([]answer.Finding{*first}, a.Findings) {
			if f.Advice != "" && f.Level > answer.Fine {
				h[2] = precaution(&f) + f.Advice
				break
			}
		}
		switch look := kindFirst(a, first); { // whatever mends it, it is not used before
		case look != nil:
			h[2] = look.Advice
		case first.RestsBadly() && first.Level == answer.FixFirst && a.ChargerOut():
			h[2] = "Do not use this charger. " + h[2]
		case !first.ChargerOut():
		case first.Level == answer.Danger:
			h[2] = "Do not use this charger; get the right one."
		default:
			h[2] = "Do not use this charger before that is settled."
		}
	}
	return h
}

// kindFirst is the finding that asks of what kind the battery is, where one that rests badly
// would be charged on a guess of that; nil where nothing asks.
func kindFirst(a *answer.Assessment, first *answer.Finding) *answer.Finding {
	if !first.RestsBadly() || first.Guess == "" {
		return nil
	}
	i := slices.IndexFunc(a.Findings, func(f answer.Finding) bool {
		return f.Level >= answer.FixFirst && f.Change == answer.LookUp && f.Guess == first.Guess
	})
	if i < 0 {
		return nil
	}
	return &a.Findings[i]
}

// precaution says in front of an advice that it may turn out not to be needed.
func precaution(f *answer.Finding) string {
	if f.Certainty == answer.Possible || f.Certainty == answer.Rare {
		return "To be safe: "
	}
	return ""
}

// throughWays is the next step where ways out were found: one of them, and before
// it what has to be looked at, so that nobody buys for what is there already. A page may have
// room for two of three, so that three have no letters here.
func throughWays(a *answer.Assessment) string {
	letters := [...]string{"way A", "way A or B", "one of the ways"}
	n := min(len(a.Ways), len(letters))
	switch {
	case n == 0, a.BeforeWays(), a.Verdict < answer.FixFirst:
		return a.Headline[2]
	case a.ChargerOut() && len(a.Measure) == 0:
		return "Do not use this charger; take " + letters[n-1] + " below."
	case a.ChargerOut():
		return "Do not use this charger; look first, then " + letters[n-1] + "."
	case len(a.Measure) > 0:
		return "Look first, as asked below; then take " + letters[n-1] + "."
	}
	return "Take " + letters[n-1] + " below."
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
