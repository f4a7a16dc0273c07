package report

import (
	"math"
	"strings"

	"example.org/packcheck/answer"
)

// foundWords says what was found where the number 0 stands for something else.
var foundWords = map[string]string{
	"cutoff-none":               "none",
	"fuse-place-unknown":        notKnown,
	"charger-end-volts-unknown": notKnown,
	"idle-harms-within-week":    "at once",
}

// shares are the findings whose ratio is a share of a whole.
var shares = []string{
	"drop-large", "fuse-tires", "charge-never-full", "pack-worn",
	"stored-not-full", "stored-too-full", "stored-runs-empty", "stored-needs-top-up",
}

// doubtful begins the titles of findings that show only where the unknowns fall
// badly.
const doubtful = "Possibly: "

// told are the findings that only tell something: no figure of theirs is held
// against a limit.
func told(f answer.Finding) bool {
	return strings.HasPrefix(f.Code, "old-battery-") || f.Code == "way-to-stop" || f.Level == answer.Fine && f.Limit == 0
}

// detail says what was found, the limit and its source.
func (b *builder) detail(f answer.Finding) string {
	source := clean(f.Source)
	if f.Unit == "" || told(f) {
		if source == "" {
			return ""
		}
		return "Source: " + source + "."
	}
	found, limit := b.found(f), b.inFinding(f, f.Limit)
	text := "Found " + found
	switch {
	case found == limit:
		text = "At the limit of " + limit
	// A limit of nothing is none, unless something is below it: a temperature, a
	// cell that is driven backwards.
	case f.Limit != 0 || f.Found < 0 || f.Unit == "degC":
		text += ", limit " + limit
	}
	if source != "" {
		text += " (source: " + source + ")"
	}
	return text + "."
}

// found prints the figure of a finding no finer than its limit asks for.
func (b *builder) found(f answer.Finding) string {
	if words, is := foundWords[f.Code]; is && f.Found <= 0 {
		return words
	}
	if f.Unit == "degC" && f.Found > burntC {
		return "more than " + b.one(degrees, burntC)
	}
	exact, limit := b.inFinding(f, f.Found), b.inFinding(f, f.Limit)
	if f.Unit == "V" || strings.HasPrefix(f.Unit, "deg") {
		return exact // a tenth of a volt counts, and degrees are whole anyway
	}
	if rough := b.inFinding(f, about(f.Found)); rough != limit {
		return rough
	}
	return exact
}

// inFinding prints a number of a finding in its unit.
func (b *builder) inFinding(f answer.Finding, value float64) string {
	for _, code := range shares {
		if f.Code == code && f.Unit == "x" {
			return b.one(share, value)
		}
	}
	return b.inUnit(value, f.Unit)
}

// about rounds to two digits, but never coarser than to whole units: what is
// computed from assumed values deserves no more.
func about(v float64) float64 {
	size := math.Abs(v)
	if size == 0 || math.IsNaN(v) || math.IsInf(v, 0) {
		return v
	}
	return toStep(v, min(1, math.Pow(10, math.Floor(math.Log10(size))-1)))
}

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
