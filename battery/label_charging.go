package battery

import (
	"errors"
	"slices"
	"strings"

	"example.org/packcheck/internal/pattern"
)

// What a label tells of charging the battery, and what is the label of a charger.
var (
	// chargedWith are volts behind a word that says when a block has them, chargedFor those
	// before it.
	chargedWith = pattern.New(`\b(?:cycl(?:e|ic)|stand-?\s?by|float|boost|charg(?:e|ing)|regulation|max(?:imum)?\.?\s*volt(?:age|s)?)\b[^\d;]{0,24}(` + voltsFromTo + `)`)
	chargedFor  = pattern.New(`(` + voltsFromTo + `)\s*\(?\s*(?:for\s+)?(?:cycl(?:e|ic)|stand-?\s?by|float)\b`)
	// maxOf is a "max" of what stands behind it, and not of volts before it; maxAmps one of the
	// amps before it, and not of volts behind it.
	maxOf   = pattern.New(`\bmax(?:imum)?\b(\.?:?\s*(?:initial|volt(?:age|s)?\b|(?:dis)?charg\w*|current|load|continuous|` + numberPattern + `\s*m?a(?:mps?)?\b))`)
	maxAmps = pattern.New(`(\d\s*m?a(?:mps?)?)\s*max(?:imum)?\b`)
	// maxBehind are the most volts behind others, in brackets.
	maxBehind = pattern.New(`\(\s*(max\.?\s*` + numberPattern + `\s*v(?:olts?)?\b)`)
	// ofCharger stands on chargers and adaptors.
	ofCharger = pattern.New(`\b(?:in|out)put\b|\d\s*hz\b|\dv?\s*~|\badapt[eo]r\b|\bpower supply\b|^\W*(?:battery )?charger\b`)
	// ofPowerBank are names of what makes its volts by electronics, whatever its cells have.
	ofPowerBank = pattern.New(`\bpower[ -]?(?:bank|station)s?\b`)
)

const voltsFromTo = numberPattern + `\s*(?:v(?:olts?)?)?\s*(?:(?:-|~|to)\s*[\d.]+\s*)?v(?:olts?)?\b`

// leadUse are the words that stand on lead-acid alone.
var leadUse = pattern.New(`cycl|stand|float`)

// withoutCharging takes out of a label the volts that a lead-acid block has on its charger,
// so that none is read as its nominal ones, and every "max" that is of no volts. Where no
// others are left it is an error, unless lithium may have such, too.
func withoutCharging(s string) (string, error) {
	left, taken := []byte(s), ""
	for _, p := range []*pattern.Lazy{chargedWith, chargedFor, maxBehind} {
		for _, m := range p.Get().FindAllStringSubmatchIndex(s, -1) {
			if volts := m[2:]; leadCharging(figure(s[volts[2]:volts[3]])) {
				copy(left[volts[0]:volts[1]], strings.Repeat(";", volts[1]-volts[0]))
				taken += s[m[0]:m[1]]
			}
		}
	}
	switch {
	case bareVolt.Get().Match(left):
		s = string(left)
	case leadUse.Get().MatchString(taken):
		return s, errors.New("tells no volts but those that a lead-acid block has on its charger; want the nominal ones, such as \"12 V 7 Ah\"")
	}
	s = maxBehind.Get().ReplaceAllString(s, " ; $2 v max ")
	s = maxAmps.Get().ReplaceAllString(s, "$1 ;")
	return maxOf.Get().ReplaceAllString(s, " ; $1"), nil
}

// leadCharging reports whether a block of 6, 12 or 24 V has such volts on its charger.
func leadCharging(v float64) bool {
	return slices.ContainsFunc([]float64{3, 6, 12}, func(cells float64) bool {
		return v/cells >= leastFloatV-0.01 && v/cells <= mostChargedV+0.05
	})
}
