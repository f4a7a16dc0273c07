package report

import (
	"strings"

	"example.org/packcheck/answer"
	"example.org/packcheck/internal/quantity"
)

// detail says what was found, which side of which limit is right, on which
// guess it rests, under which name more of it is told, and the first source of
// the limit. The name is printed and never looked at.
func (b *builder) detail(f *answer.Finding) string {
	found, right := b.held(f)
	if right != "" {
		found += ", " + right
	}
	var parts []string
	for _, part := range []string{found, b.guessed(f), codeOf(f), clean(firstSource(f))} {
		if part != "" {
			parts = append(parts, part)
		}
	}
	if len(parts) == 0 {
		return ""
	}
	return "(" + strings.Join(parts, "; ") + ")"
}

// codeOf is the name under which more is told of a finding. It is printed and
// never held against anything.
func codeOf(f *answer.Finding) string { return clean(f.Code) }

// behind is the name of the finding behind the word of a part; empty where there is
// none.
func behind(v *answer.ItemVerdict) string { return clean(v.Code) }

// firstSource is the ID of the first source of a finding's limit.
func firstSource(f *answer.Finding) string {
	id, _, _ := strings.Cut(f.Source, ",")
	return strings.TrimSpace(id)
}

// held says what was found and what is right; a figure of those vehicles alone
// that have the finding is told as theirs.
func (b *builder) held(f *answer.Finding) (found, right string) {
	if f.Unit == "" || f.Reads == answer.AsTold {
		return "", ""
	}
	limit := b.inUnit(f.Limit, f.Unit)
	if found = b.found(f); found == limit {
		found, limit = b.apart(f.Found, f.Limit, f.Unit)
	}
	if found == limit { // nothing anybody measures is between them
		found = "just " + found
	}
	if f.Certainty != answer.Plain && f.Reads == answer.AsNumber {
		found += " in these"
	}
	// A limit of nothing is none, unless something is below it: a temperature, a
	// cell that is driven backwards.
	if f.Limit != 0 || f.Found < 0 || f.Unit == "degC" {
		right = f.Want.String() + " " + limit
	}
	return found, right
}

// found prints the figure of a finding no finer than its limit asks for.
func (b *builder) found(f *answer.Finding) string {
	switch {
	case f.Reads == answer.AsUnknown:
		return notKnown
	case f.Reads == answer.AsNone && f.Found <= 0:
		return "none"
	case f.Reads == answer.AsAtOnce && f.Found <= 0:
		return "at once"
	case f.Unit == "degC" && f.Found > burntC:
		return "more than " + b.alone(degrees, burntC).likely
	}
	switch f.Unit {
	case "V", "degC", "m/s", "N", "kg":
		return b.inUnit(f.Found, f.Unit) // a tenth of a volt counts, and the others have two digits anyway
	}
	rough := about(f.Found)
	if text := b.inUnit(rough, f.Unit); (rough < f.Limit) == (f.Found < f.Limit) && text != b.inUnit(f.Limit, f.Unit) {
		return text
	}
	return b.inUnit(f.Found, f.Unit)
}

// atRisk says who suffers, where it is more than the vehicle: what shows in few
// draws only stands at a milder level, which does not tell it any more.
func atRisk(f *answer.Finding) string {
	if f.Level == answer.Fine {
		return ""
	}
	return f.Harm.AtRisk()
}

// guessed says on which assumed value a finding rests.
func (b *builder) guessed(f *answer.Finding) string {
	if f.Guess == "" || f.Change == answer.LookUp { // what was not told is no guess
		return ""
	}
	return "a guess: " + clean(f.Guess)
}

// about rounds what is computed from assumed values, as sentences round it.
func about(v float64) float64 { return quantity.About(v) }

// burntC is where a motor's temperature stops being followed; what is printed
// as that may be more.
const burntC = 250

// heat prints how hot something gets.
func (b *builder) heat(path string, value *float64) string {
	text := b.maybeSpan(path, degrees, value, notKnown)
	r, spread := b.ranges[path]
	switch {
	case spread && r.Valid() && r.High >= burntC && r.Low < burntC:
		return text + "; it may be more"
	case value != nil && *value >= burntC:
		return b.one(degrees, burntC) + " or more"
	}
	return text
}
