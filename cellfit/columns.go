package cellfit

import (
	"regexp"
	"strings"
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

// headingWords are tried in order on the lower-cased title.
var headingWords = []struct {
	pattern *regexp.Regexp
	what    quantity
	rank    int
}{
	{regexp.MustCompile(`ambient|chamber|room|umgebung|surround|\bair\b`), ambientColumn, 2},
	{regexp.MustCompile(`temp|°c|deg ?c|\bt_c\b`), tempColumn, 2},
	{regexp.MustCompile(`capacity|charge|\bm?ah\b|_m?ah$|amp.?h|ladung|kapaz`), chargeColumn, 2},
	{regexp.MustCompile(`energy|power|\bm?wh?\b|resist|ohm|\bdv|cycle|step|index|status|state|mode|soc|max|min\b.*[va]|frequency|latitude|longitude`), unknownColumn, 0},
	{regexp.MustCompile(`elapsed|test.?time|total.?time|laufzeit`), timeColumn, 3},
	{regexp.MustCompile(`time|zeit|temps|second|\bsec|hours?\b|minutes?\b|date|clock|^t\b|^t$|^ms$|^s$|^h$`), timeColumn, 2},
	{regexp.MustCompile(`volt|spannung|tension|\bm?v\b|_m?v$|^u\b|^v\b|^u_|\bubat|\bvbat`), voltColumn, 2},
	{regexp.MustCompile(`current|amp|strom|courant|\bm?a\b|_m?a$|^i\b|^i_|\bibat`), ampColumn, 2},
}

// unitPattern finds the unit in "Voltage (mV)", "I [A]", "time_ms", "t/s".
var unitPattern = regexp.MustCompile(`(?:[(\[/_ ])\s*(milliseconds?|ms|msec|seconds?|secs?|s|minutes?|mins?|min|hours?|hrs?|hr|h|days?|d|mv|v|volts?|millivolts?|ma|a|amps?|milliamps?|ua|mah|ah|as|c|f|°c|°f|k)\s*[)\]]?\s*$`)

var units = map[string]float64{
	"millisecond": 1e-3, "milliseconds": 1e-3, "ms": 1e-3, "msec": 1e-3,
	"second": 1, "seconds": 1, "sec": 1, "secs": 1, "s": 1,
	"minute": 60, "minutes": 60, "min": 60, "mins": 60,
	"hour": 3600, "hours": 3600, "hr": 3600, "hrs": 3600, "h": 3600, "day": 86400, "days": 86400, "d": 86400,
	"mv": 1e-3, "millivolt": 1e-3, "millivolts": 1e-3, "v": 1, "volt": 1, "volts": 1,
	"ma": 1e-3, "milliamp": 1e-3, "milliamps": 1e-3, "ua": 1e-6, "a": 1, "amp": 1, "amps": 1,
	"mah": 1e-3, "ah": 1, "as": 1.0 / 3600, "c": 1, "°c": 1, "f": -1, "°f": -1, "k": -2,
}

// readHeading understands one column title.
func readHeading(title string) heading {
	s := strings.ToLower(strings.Trim(strings.TrimSpace(title), `"'`))
	h := heading{scale: 1}
	for _, w := range headingWords {
		if w.pattern.MatchString(s) {
			h.what, h.rank = w.what, w.rank
			break
		}
	}
	unit := ""
	if m := unitPattern.FindStringSubmatch(s); m != nil {
		unit = m[1]
	} else if _, ok := units[s]; ok {
		unit = s // the title is nothing but a unit
	} else {
		for _, u := range []string{"milliseconds", "millivolts", "milliamps", "hours", "minutes", "seconds"} {
			if strings.Contains(s, u) {
				unit = u
				break
			}
		}
	}
	if scale, ok := units[unit]; ok && unitFits(h.what, unit) {
		h.scale, h.said = scale, true
		h.rank++
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
