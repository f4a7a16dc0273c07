package report

import (
	"strings"

	"example.org/packcheck/answer"
)

// usersFirst puts the user's units in front where a sentence gives a figure in
// both, as in "10 km/h (6.3 mph)". Who writes the sentence need not know who
// reads it.
func usersFirst(text string, system answer.System) string {
	if system != answer.Customary {
		return text
	}
	var b strings.Builder
	for {
		open := strings.Index(text, " (")
		if open < 0 {
			return b.String() + text
		}
		end := strings.IndexByte(text[open:], ')')
		if end < 0 {
			return b.String() + text
		}
		first := lastFigure(text[:open])
		second := text[open+2 : open+end]
		if first == "" || !isFigure(second, customaryUnits) {
			b.WriteString(text[:open+2])
			text = text[open+2:]
			continue
		}
		b.WriteString(text[:open-len(first)] + second + " (" + first + ")")
		text = text[open+end+1:]
	}
}

// The units between which a sentence may have to choose.
const metricUnits, customaryUnits = " km/h C kg g m mm km N mm2 ", " mph F lb oz ft in mi lbf AWG "

// lastFigure returns the metric figure that text ends in, "10 km/h" or "10 to
// 30 C"; empty when it ends in none.
func lastFigure(text string) string {
	words := strings.Split(text, " ")
	for _, n := range []int{4, 2} {
		if len(words) < n {
			continue
		}
		if tail := strings.Join(words[len(words)-n:], " "); isFigure(tail, metricUnits) {
			return tail
		}
	}
	return ""
}

// isFigure reports whether text is a number or a range with one of the units.
func isFigure(text, units string) bool {
	words := strings.Split(text, " ")
	n := len(words)
	if n != 2 && n != 4 || !strings.Contains(units, " "+words[n-1]+" ") {
		return false
	}
	return isDecimal(words[0]) && (n == 2 || words[1] == "to" && isDecimal(words[2]))
}

// isDecimal reports whether text is a plain number.
func isDecimal(text string) bool {
	return text != "" && strings.Trim(text, "0123456789.-") == "" && strings.ContainsAny(text, "0123456789")
}
