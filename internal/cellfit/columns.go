package cellfit

import (
	"bytes"
	"strings"

	"example.org/packcheck/internal/later"
	"example.org/packcheck/internal/pattern"
)

// quantity is what a column holds.
type quantity int

const (
	unknownColumn quantity = iota
	timeColumn
	voltColumn
	ampColumn
	tempColumn
	ambientColumn
	chargeColumn
)

// heading is what a column's title says.
type heading struct {
	what  quantity
	scale float64 // to s, V, A, deg C, Ah
	rank  int     // the better match of two columns with the same quantity
	said  bool    // the unit was said
}

// headingWords are tried in order on the lower-cased title, with blanks for
// underscores. What was set or allowed is not what was measured, a count of
// rows is no time, and a shunt's millivolts are not the battery's.
var headingWords = []struct {
	pattern *pattern.Lazy
	what    quantity
	rank    int
}{
	{pattern.New(`\b(set|setpoint|target|limit|command(ed)?|demand(ed)?|requested|soll\w*)\b|shunt.*(volt|\bm?v\b)|(volt|\bm?v\b).*shunt`), unknownColumn, 0},
	{pattern.New(`^(#|no|nr|n°|id|n)\.?$|^(samples?|row|record|data ?point|point)\b( (no|nr|number|id|count|index|#))?\.?$`), unknownColumn, 0},
	{pattern.New(`ambient|chamber|\broom|umgebung|surround|\bair\b`), ambientColumn, 4},
	{pattern.New(`^temps? ?[(\[/]? ?(s|ms|min|h)\b`), timeColumn, 4},
	{pattern.New(`temp|°c|deg ?c|\bt c\b`), tempColumn, 4},
	{pattern.New(`capacity|\bm?ah\b|amp.?h|ladung|kapaz`), chargeColumn, 4},
	{pattern.New(`\bcharg(e|ing) (current|amps?)\b|ladestrom`), ampColumn, 2},
	{pattern.New(`discharg\w* (current|amps?)\b|entladestrom`), ampColumn, 5},
	{pattern.New(`charge`), chargeColumn, 4},
	{pattern.New(`energy|power|\bm?wh?\b|resist|ohm|\bdv|cycle|step|index|status|state|mode|soc|max|min\b.*[va]|frequency|latitude|longitude`), unknownColumn, 0},
	{pattern.New(`elapsed|test.?time|total.?time|laufzeit`), timeColumn, 6},
	{pattern.New(`time|zeit|second|\bsec|hours?\b|minutes?\b|date|datum|clock|duration|dauer|epoch|millis|tiempo|tijd|^t\b|^ms$|^s$|^min$|^h$|^h+:m+(:s+)?$`), timeColumn, 4},
	{pattern.New(`\bcells? ?\d*\b.*(volt|\bm?v\b)|(volt|\bm?v)\b.*\bcells? ?\d*\b`), voltColumn, 1},
	{pattern.New(`(pack|batter\w*|\bbus).*(volt|spannung|\bm?v\b)`), voltColumn, 5},
	{pattern.New(`volt|spannung|spanning|tension|\bm?v\b|^u\b|\bubat|\bvbat`), voltColumn, 4},
	{pattern.New(`\bcurrent|\b(milli)?amp(s|eres?|erage)?\b|strom|stroom|courant|corriente|\bm?a\b|^i\b|\bibat`), ampColumn, 4},
}

// plainTitles are titles that say what a column is and nothing else.
var plainTitles = pattern.New(`^(time|t|timestamp|zeit|voltage|volts?|v|u|spannung|current|amps?|i|a|strom)$`)

// unitPattern finds the unit in "Voltage (mV)", "I [A]", "time_ms", "t/s".
var unitPattern = pattern.New(`(?:[(\[/_ ])\s*(milliseconds?|ms|msec|seconds?|secs?|s|minutes?|mins?|min|hours?|hrs?|hr|h|days?|d|mv|v|volts?|millivolts?|ma|a|amps?|milliamps?|ua|mah|ah|as|c|f|°c|°f|k)\s*[)\]]?\s*$`)

// units are the factors on SI units; a scale below zero marks degrees F and kelvin.
var units = later.Value[map[string]float64]{Make: func() map[string]float64 {
	return map[string]float64{
		"millisecond": 1e-3, "milliseconds": 1e-3, "millis": 1e-3, "ms": 1e-3, "msec": 1e-3,
		"second": 1, "seconds": 1, "sec": 1, "secs": 1, "s": 1,
		"minute": 60, "minutes": 60, "min": 60, "mins": 60,
		"hour": 3600, "hours": 3600, "hr": 3600, "hrs": 3600, "h": 3600, "day": 86400, "days": 86400, "d": 86400,
		"mv": 1e-3, "millivolt": 1e-3, "millivolts": 1e-3, "v": 1, "volt": 1, "volts": 1,
		"ma": 1e-3, "milliamp": 1e-3, "milliamps": 1e-3, "ua": 1e-6, "a": 1, "amp": 1, "amps": 1,
		"mah": 1e-3, "ah": 1, "as": 1.0 / 3600, "c": 1, "°c": 1, "f": -1, "°f": -1, "k": -2,
	}
}}

// readHeading understands one column title.
func readHeading(title string) heading {
	s := strings.ToLower(strings.Trim(strings.TrimSpace(title), `"'`))
	h := heading{scale: 1}
	words := strings.Join(strings.Fields(strings.ReplaceAll(s, "_", " ")), " ")
	for _, w := range headingWords {
		if w.pattern.Get().MatchString(words) {
			h.what, h.rank = w.what, w.rank
			break
		}
	}
	unit := ""
	if m := unitPattern.Get().FindStringSubmatch(s); m != nil {
		unit = m[1]
	} else if _, ok := units.Get()[s]; ok {
		unit = s // the title is nothing but a unit
	} else {
		for _, u := range []string{"milliseconds", "millivolts", "milliamps", "hours", "minutes", "seconds"} {
			if strings.Contains(s, u) {
				unit = u
				break
			}
		}
	}
	if scale, ok := units.Get()[unit]; ok && unitFits(h.what, unit) {
		h.scale, h.said = scale, true
		h.rank++
	}
	name, _, _ := strings.Cut(strings.TrimSuffix(words, unit), "(")
	if plainTitles.Get().MatchString(words) || plainTitles.Get().MatchString(strings.Trim(name, " [/")) {
		h.rank += 2
	}
	return h
}

// unitFits keeps the "s" of a wrongly split word from scaling volts.
func unitFits(what quantity, unit string) bool {
	last := unit[len(unit)-1]
	switch what {
	case timeColumn:
		return !strings.HasSuffix(unit, "v") && !strings.HasSuffix(unit, "a") && unit != "c" && unit != "f" && unit != "k"
	case voltColumn:
		return last == 'v' || strings.Contains(unit, "volt")
	case ampColumn:
		return last == 'a' || strings.Contains(unit, "amp")
	case chargeColumn:
		return strings.HasSuffix(unit, "ah") || unit == "as"
	case tempColumn, ambientColumn:
		return last == 'c' || last == 'f' || unit == "k"
	}
	return false
}

// withUnit reads a number that carries its unit, such as "20.9 V"; the scale is
// as in [heading].
func withUnit(f []byte, comma bool) (x, scale float64, unit string, ok bool) {
	end := bytes.LastIndexAny(f, "0123456789") + 1
	if end == 0 || end == len(f) {
		return 0, 0, "", false
	}
	unit = strings.ToLower(string(bytes.TrimSpace(f[end:])))
	if scale, ok = units.Get()[unit]; !ok {
		return 0, 0, "", false
	}
	x, ok = parseNumber(f[:end], comma)
	return x, scale, unit, ok
}
