package battery

import (
	"fmt"
	"math"
	"strconv"
	"strings"

	"example.org/packcheck/internal/pattern"
)

// kinds are words for one of several blocks.
const kinds = `(?:pcs\.?|pieces|blocks|batteries|packs)`

var (
	countBefore = pattern.New(`\b(?:(\d{1,2})\s*(?:x|\*|times|of|` + kinds + `(?:\s*of)?)|(two|pair|couple|three|four|six|eight)(?:\s*(?:x|of|` + kinds + `(?:\s*of)?))?)\s*` + numberPattern + `\s*v`)
	// A figure of millimetres has a digit before its "x", and "max" is no "x".
	countAfter = pattern.New(`(?:[a-z)][\s(,]*\b|ah|v)x\s*(\d{1,2})(?:[^\da-z.]|$)|[a-z)][\s(,]*(?:(\d{1,2})\s*(?:x\s*\)?$|` + kinds + `|of them)|(two|three|four|six|eight)\s*(?:` + kinds + `|of them))`)
	// Sums of which nobody can say how they are wired.
	sumOfBlocks = pattern.New(`[a-z)]\s*\+\s*\.?\d|\b\d{1,2}\s*x\s*[\d.]+\s*m?ah`)
	// What may stand between the volts of a block and its ampere-hours.
	besideVolts = pattern.New(`^(?:olts?|max\*?)?[\s,/-]*$`)
	cellAmpHour = pattern.New(ampHourPattern + `\s*(?:(?:/|per|of an?|each)\s*)?(?:li-?\s?ion|lithium|nmc|lfp|life\s?po4?|inr|icr|ni-?mh)?\s*cells?\b|cells\s*(?:of|at)\s*` + ampHourPattern)
)

// wholeUnits is the figure of a match of ampHour, in Ah, or of bareAmps, in A: either may stand
// in thousandths.
func wholeUnits(s string, m []int) float64 {
	x := figure(s[m[2]:m[3]])
	if s[m[4]:m[5]] == "m" {
		x /= 1000
	}
	return x
}

// blockSpan is the part of a label that speaks of one of several blocks.
type blockSpan struct {
	count    int
	volts    float64
	from, to int
	ampHours float64 // of one block; 0 = not said there
}

// findBlocks finds "2 x 12 V 7 Ah" and "12 V 7 Ah x 2".
func findBlocks(s string) (b blockSpan, ok bool) {
	number := func(digits, word string) int {
		for _, n := range smallNumbers {
			if n.word == word {
				return n.count
			}
		}
		n, _ := strconv.Atoi(digits)
		return n
	}
	afterVolts := 0
	if m := countBefore.Get().FindStringSubmatchIndex(s); m != nil {
		got := countBefore.Get().FindStringSubmatch(s)
		b = blockSpan{count: number(got[1], got[2]), volts: figure(got[3]), from: m[0], to: m[1]}
		afterVolts = m[1]
		for _, ah := range ampHour.Get().FindAllStringSubmatchIndex(s, 8) {
			if ah[0] >= afterVolts && besideVolts.Get().MatchString(s[afterVolts:ah[0]]) {
				b.ampHours, b.to = wholeUnits(s, ah), ah[1]
			}
		}
		return b, b.count > 1
	}
	m := countAfter.Get().FindStringSubmatchIndex(s)
	if m == nil {
		return b, false
	}
	got := countAfter.Get().FindStringSubmatch(s)
	b.count, b.to = number(got[1]+got[2], got[3]), m[1]
	for _, v := range bareVolt.Get().FindAllStringSubmatchIndex(s[:m[0]+1], 8) {
		b.volts, b.from = figure(s[v[2]:v[3]]), v[0]
	}
	for _, ah := range ampHour.Get().FindAllStringSubmatchIndex(s[:m[0]+1], 8) {
		if ah[0] > b.from {
			b.ampHours = wholeUnits(s, ah)
		}
	}
	return b, b.count > 1 && b.volts > 0
}

// readBlocks settles how several blocks are joined: by the words, by the volts
// or by the ampere-hours of all of them, whichever the label has.
func (w *words) readBlocks(s, label string) error {
	if sumOfBlocks.Get().MatchString(s) {
		return fmt.Errorf("battery: label %q adds up several blocks but not how they are joined; want for instance \"24 V (two 12 V 7 Ah)\" or \"two 12 V 7 Ah in parallel\"; of two that differ, one as pack.label and the other as pack.second.label, with pack.joined = \"series\" or \"parallel\"", label)
	}
	b, ok := findBlocks(s)
	if !ok {
		return nil
	}
	n, rest := float64(b.count), s[:b.from]+" ; "+s[b.to:]
	var allV, allAh float64
	for _, v := range bareVolt.Get().FindAllStringSubmatch(rest, 8) {
		allV = max(allV, figure(v[1]))
	}
	if m := ampHour.Get().FindStringSubmatchIndex(rest); m != nil {
		allAh = wholeUnits(rest, m)
	}
	series, parallel := strings.Contains(s, "series"), strings.Contains(s, "parallel")
	w.namedBlocks, w.volts, w.blocks = b.count, b.volts, b.count
	sum := math.Abs(allAh-n*b.ampHours) < 0.03*allAh
	switch rows := n * b.volts / allV; {
	case allV > 0 && rows >= 1-1e-9 && rows <= n+1e-9 && math.Abs(rows-math.Round(rows)) < 1e-6 && b.count%int(math.Round(rows)) == 0:
		w.parallelBlocks = int(math.Round(rows))
		w.blocks = b.count / w.parallelBlocks
	case allV > 0:
		return fmt.Errorf("battery: label %q says %g V, but %d blocks of %g V are %g V in series and %g V in parallel; want one of these", label, allV, b.count, b.volts, n*b.volts, b.volts)
	case series && parallel:
		return fmt.Errorf("battery: label %q says both series and parallel; want the volts of the whole as well, such as \"24 V (four 12 V 7 Ah)\"", label)
	case parallel, !series && b.ampHours > 0 && sum:
		w.parallelBlocks, w.blocks = b.count, 1
	case !series:
		w.blocksUnclear = true
	}
	rows := float64(max(w.parallelBlocks, 1))
	switch {
	case series && !parallel && w.blocks == 1, parallel && !series && w.blocks == b.count:
		return fmt.Errorf("battery: label %q contradicts itself: %d blocks of %g V in parallel are %g V, in series %g V; want the right volts or the right word", label, b.count, b.volts, b.volts, n*b.volts)
	case allAh > 0 && b.ampHours > 0 && math.Abs(allAh-rows*b.ampHours) > 0.03*allAh:
		return fmt.Errorf("battery: label %q says %g Ah, but %d blocks of %g Ah in parallel hold %g Ah, in series %g Ah; want one of these", label, allAh, b.count, b.ampHours, n*b.ampHours, b.ampHours)
	case b.ampHours > 0:
		w.ampHours = b.ampHours
	case allAh > 0:
		w.ampHours, w.ofAll = allAh, true
	}
	return nil
}
