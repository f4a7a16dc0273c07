package quantity

import (
	"fmt"
	"math"
	"slices"
	"strconv"
	"strings"

	"example.org/packcheck/internal/later"
)

// Parse reads one everyday quantity of the given kind.
//
// It understands one value ("7 Ah", "29,5 kg", "14 AWG", "1h30", "1/0"), a
// range ("20 to 26 kg", "20-26 kg"), a range with its likely value ("20 to 26
// kg, likely 22"), a value with its margin ("25 min +- 3", "40 N +- 20 %") and
// "about 20 kg", which it takes as plus or minus a tenth
// (3 degrees for a temperature, one percent point for a slope). The likely
// value of a range is its middle unless one is given.
//
// A unit must be there, except for counts, ratios, ages, gauges and fractions.
// The error is always an [*Error].
func Parse(kind Kind, text string) (Range, Written, error) {
	low, high := kind.Bounds()
	return ParseIn(kind, text, low, high)
}

// The words in which a dash parts no range.
var (
	oldAs = later.Value[*strings.Replacer]{Make: func() *strings.Replacer {
		return strings.NewReplacer("-year-old", " years", "-years-old", " years", "-yr-old", " years", "-month-old", " months")
	}}
	joinedHours = later.Value[*strings.Replacer]{Make: func() *strings.Replacer {
		return strings.NewReplacer("amp-h", "amph", "ampere-h", "ampereh")
	}}
)

// ParseIn is [Parse] with bounds of the caller's, in the kind's own unit. They
// are what an error names, and what tells a decimal mark from a mark between
// thousands.
func ParseIn(kind Kind, text string, low, high float64) (Range, Written, error) {
	return ParseLike(kind, text, low, high, "")
}

// ParseLike is [ParseIn] with an example of the caller's, for bounds that the
// kind's own example lies outside of: what an error suggests must be right.
func ParseLike(kind Kind, text string, low, high float64, example string) (Range, Written, error) {
	if !kind.Known() {
		return Range{}, Written{}, &Error{Kind: kind, Read: Clip(text, MostRead), Want: "a known kind of quantity"}
	}
	p := parser{kind: kind, text: text, low: low, high: high, example: kind.Example()}
	if at := kind.exampleAt(); example != "" && !(low <= at && at <= high) {
		p.example = example
	}
	text = unquoted(text)
	switch lower := strings.ToLower(text); kind {
	case Age: // "a 4-year-old", with dashes that part no range
		text = spokenAge(oldAs.Get().Replace(lower))
	case Charge:
		text = joinedHours.Get().Replace(lower)
	case Duration:
		if spoken := spokenTimes.Get().Replace(" " + lower); spoken != " "+lower {
			text = spoken
		}
	}
	if n := slices.Index(inWords, strings.ToLower(strings.TrimSpace(text))); kind == Count && n > 0 {
		text = strconv.Itoa(n)
	}
	if kind == Ratio && strings.ContainsAny(text, "xX*\u00d7") {
		return p.pairs(text)
	}
	if kind == RotationalSpeed {
		_, text = BesideVolts(text)
	}
	if strings.TrimSpace(text) == "" {
		return Range{}, Written{}, p.fail("%s", p.usual())
	}
	if p.rest = scan(text); p.rest == nil {
		return Range{}, Written{}, p.fail("%s", p.usual())
	}
	r, err := p.whole()
	if err != nil {
		return Range{}, Written{}, err
	}
	if kind == Gauge {
		p.written.System = Customary // a bare gauge number is an AWG number
	}
	return r, p.written, nil
}

// inWords are the small numbers as people write them.
var inWords = []string{"none", "one", "two", "three", "four", "five", "six"}

// moreInWords are those that follow them, for ages.
var moreInWords = []string{"seven", "eight", "nine", "ten", "eleven", "twelve"}

// InDigits is an age in words in digits, "she is four" as "4"; any other text in small
// letters.
func InDigits(age string) string { return spokenAge(strings.ToLower(age)) }

// spokenAge puts digits for an age in words, and leaves out who is of that age: "she
// is four" is "4", "a twelve year old" is "12 year old". The text is in small letters.
func spokenAge(text string) string {
	words := strings.Fields(text)
	if n := len(words); n > 1 {
		switch strings.Join(words[:2], " ") {
		case "she is", "he is", "they are", "it is":
			words = words[2:]
		}
	}
	if len(words) > 1 && slices.Contains([]string{"a", "an", "aged", "age", "she's", "he's", "it's", "she\u2019s", "he\u2019s"}, words[0]) {
		words = words[1:]
	}
	for i, w := range words {
		if n := slices.Index(slices.Concat(inWords, moreInWords), w); n > 0 {
			words[i] = strconv.Itoa(n)
		}
	}
	return strings.Join(words, " ")
}

// pairs reads a ratio as the product of pairs of gears, "12:60 x 12:72", the driving
// gear first or last: each pair gears down.
func (p *parser) pairs(text string) (Range, Written, error) {
	product := Exactly(1)
	for _, pair := range strings.FieldsFunc(text, func(r rune) bool { return strings.ContainsRune("xX*\u00d7", r) }) {
		r, _, err := ParseIn(Ratio, pair, 1, p.high)
		if err != nil || !strings.Contains(pair, ":") {
			return Range{}, Written{}, p.fail("the teeth of each pair of gears, such as \"12:60 x 12:72\"")
		}
		product = product.Mul(r)
	}
	if product.Low < p.low || product.High > p.high {
		return Range{}, Written{}, p.fail("pairs of gears that make %g to %g together", p.low, p.high)
	}
	return product, Written{}, nil
}

// parser holds what is left of one text.
type parser struct {
	kind    Kind
	text    string
	rest    []token
	written Written

	low, high float64 // bounds, in the kind's own unit
	example   string  // what an error suggests
}

// whole reads the complete text.
func (p *parser) whole() (Range, error) {
	about := p.about()
	first, err := p.reading()
	if err != nil {
		return Range{}, err
	}
	if p.skip(plusMinus) {
		if about {
			return Range{}, p.fail("%s without %q", p.usual(), "about")
		}
		return p.margin(first)
	}
	last, ranged := first, false
	if p.skip(dash) || p.skipWord("to") {
		ranged = true
		if last, err = p.reading(); err != nil {
			return Range{}, err
		}
	}
	likely, hasLikely := reading{}, false
	p.skip(comma)
	if p.skipWord("likely") {
		hasLikely = true
		if likely, err = p.reading(); err != nil {
			return Range{}, err
		}
	}
	if len(p.rest) > 0 {
		return Range{}, p.fail("%s; %q is not understood", p.usual(), p.rest[0].text)
	}
	// A unit written once holds for all: "20 to 26 kg", "20 kg to 26".
	share(&first, &last)
	share(&last, &first)
	share(&likely, &last)
	r, err := p.settle(first, last, likely, ranged, hasLikely)
	if err != nil || !about {
		return r, err
	}
	return p.widen(r, ranged)
}

// margin reads what stands behind "+-" and makes a range of both: "25 min +- 3",
// "11.8 V +- 0.1 V", "40 N +- 20 %".
func (p *parser) margin(middle reading) (Range, error) {
	by, err := p.reading()
	if err != nil {
		return Range{}, err
	}
	if len(p.rest) > 0 || len(by.parts) != 1 || by.negative || p.kind == Count || p.kind == Gauge {
		return Range{}, p.fail("%s, or with a margin such as %q", p.usual(), p.example+" +- 10 %")
	}
	percent := by.last().unit == "%" && p.kind != Fraction && p.kind != Grade
	if !percent {
		share(&middle, &by)
		share(&by, &middle)
	}
	likely, err := p.value(middle)
	if err != nil {
		return Range{}, err
	}
	half := by.last().n / 100 * math.Abs(likely)
	if !percent {
		u, err := p.unitOf(by.last(), nil)
		if err != nil {
			return Range{}, err
		}
		if u.shape != linear {
			return Range{}, p.fail("a margin in percent for this unit")
		}
		half = by.last().n * u.factor
	}
	return Spread(likely-half, likely, likely+half).Clamp(p.low, p.high), nil
}

// settle turns the readings into one checked range.
func (p *parser) settle(first, last, likely reading, ranged, hasLikely bool) (Range, error) {
	low, err := p.value(first)
	if err != nil {
		return Range{}, err
	}
	if !ranged && !hasLikely {
		return Exactly(low), nil
	}
	high, err := p.value(last)
	if err != nil {
		return Range{}, err
	}
	if p.kind == Count {
		return Range{}, p.fail("one whole number, such as %q", p.example)
	}
	falling := p.kind == Gauge || last.falls() // thinner wire, higher number
	if low > high && !falling {
		return Range{}, p.fail("the smaller value first")
	}
	r := Between(low, high)
	if !hasLikely {
		return r, nil
	}
	if r.Likely, err = p.value(likely); err != nil {
		return Range{}, err
	}
	if !r.Contains(r.Likely) {
		return Range{}, p.fail("a likely value inside the range")
	}
	return r, nil
}

// widen makes "about" into a range.
func (p *parser) widen(r Range, ranged bool) (Range, error) {
	if ranged || p.kind == Count || p.kind == Gauge {
		return Range{}, p.fail("%s without %q", p.usual(), "about")
	}
	by := 0.1 * math.Abs(r.Likely)
	switch p.kind {
	case Temperature:
		by = 3
	case Grade:
		by = 0.01
	}
	r.Low, r.High = r.Low-by, r.High+by
	return r.Clamp(p.low, p.high), nil
}

func (p *parser) about() bool {
	found := false
	for _, w := range []string{"about", "approx.", "approx", "around", "roughly", "ca.", "ca", "circa"} {
		found = p.skipWord(w) || found
	}
	return found
}

func (p *parser) at(i int) token {
	if i < len(p.rest) {
		return p.rest[i]
	}
	return token{sort: -1}
}

func (p *parser) skip(s sort) bool {
	if p.at(0).sort != s {
		return false
	}
	p.rest = p.rest[1:]
	return true
}

func (p *parser) skipWord(w string) bool {
	if p.at(0).sort != word || !strings.EqualFold(p.rest[0].text, w) {
		return false
	}
	p.rest = p.rest[1:]
	return true
}

// unitText takes the words that follow, up to one that is no unit.
func (p *parser) unitText() string {
	var b strings.Builder
	for p.at(0).sort == word {
		w := p.rest[0].text
		switch strings.ToLower(w) {
		case "to", "likely", "about":
			return b.String()
		}
		b.WriteString(w)
		p.rest = p.rest[1:]
		if strings.ContainsAny(w, `"'`) {
			break
		}
	}
	return b.String()
}

// usual says what would be right for the kind.
func (p *parser) usual() string {
	k := p.kind
	switch {
	case k == Count:
		return fmt.Sprintf("a whole number, such as %q", p.example)
	case k == Ratio:
		return fmt.Sprintf("a ratio, such as %q", p.example)
	}
	return fmt.Sprintf("%s with its unit (%s), such as %q", k.withArticle(), k.unitNames(), p.example)
}

// withArticle returns the kind's name as a sentence needs it.
func (k Kind) withArticle() string {
	if strings.ContainsRune("aeiou", rune(k.String()[0])) {
		return "an " + k.String()
	}
	return "a " + k.String()
}

func (p *parser) fail(format string, args ...any) error {
	return &Error{Kind: p.kind, Read: Clip(p.text, MostRead), Want: fmt.Sprintf(format, args...)}
}

// MostRead is how many bytes of what was read an error repeats.
const MostRead = 60

// Clip keeps what was read to a readable length, of so many bytes at most.
func Clip(text string, most int) string {
	if len(text) <= most {
		return text
	}
	return strings.ToValidUTF8(text[:most], "?") + "..."
}

// fits reports whether v is inside the bounds. The slack lets a bound be met
// that was written in another unit.
func (p *parser) fits(v float64) bool {
	const slack = 1e-9
	return p.low-slack*math.Abs(p.low) <= v && v <= p.high+slack*math.Abs(p.high)
}

// bounded returns v when it is inside the bounds.
func (p *parser) bounded(v float64) (float64, error) {
	if p.fits(v) { // false for NaN
		return min(max(v, p.low), p.high) + 0, nil // -0 becomes 0
	}
	system := p.written.System
	if p.kind == Gauge {
		system = Customary
	}
	low, high := Format(p.kind, p.low, system), Format(p.kind, p.high, system)
	if p.kind == Count {
		return 0, p.fail("a whole number from %s to %s", low, high)
	}
	hint := ""
	if strings.Contains(p.written.Unit, "MOhm") {
		hint = "; MOhm is a million Ohm, mOhm a thousandth of one"
	}
	return 0, p.fail("%s from %s to %s%s", p.kind.withArticle(), low, high, hint)
}
