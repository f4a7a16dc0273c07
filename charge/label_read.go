package charge

import (
	"fmt"
	"math"
	"regexp"
	"strconv"
	"strings"

	"example.org/packcheck/internal/pattern"
)

// The pieces of a label. Decimal comma and point are both taken; a unit may
// touch its number.
const number = `(\d+(?:[.,]\d+)?)`

var (
	voltAt   = pattern.New(`(?i)(?:^|[^\d.,])` + number + `\s*(?:v(?:olts?)?)(?:\s*\.?\s*(dc|ac))?(?:[^a-z]|$)`)
	ampAt    = pattern.New(`(?i)(?:^|[^\d.,])` + number + `\s*(ma|a|amps?|milliamps?)(?:[^a-z]|$)`)
	wattAt   = pattern.New(`(?i)(?:^|[^\d.,])` + number + `\s*(va|w(?:atts?)?)(?:[^a-z]|$)`)
	perHour  = pattern.New(`(?i)` + number + `\s*m?ah\b`)
	inputAt  = pattern.New(`(?i)\b(?:input\b|primary\b|(?:in|pri|i/p)\s*[:.])`)
	outputAt = pattern.New(`(?i)\b(?:output\b|secondary\b|(?:out|sec|o/p)\s*[:.])`)
	mainsAt  = pattern.New(`(?i)(?:\bac\s*)?\b(?:\d{3}\s*(?:v(?:ac)?)?\s*(?:-|~|to)\s*)?(?:100|110|115|120|127|220|230|240)\s*v(?:ac)?\b(?:\s*ac\b|\s*~)?|\b(?:50|60)\s*(?:[/-]\s*60)?\s*hz\b`)
	dcWord   = pattern.New(`(?i)(?:^|[^a-z/])(?:v?dc)(?:[^a-z/]|$)`)
	acWord   = pattern.New(`(?i)(?:^|[^a-z/])(?:v?ac)(?:[^a-z/]|$)`)
	centreAt = pattern.New(`(?i)\b(?:cent(?:re|er)|tip|inside|middle)\s*(?:pin\s*)?[-:]?\s*(positive|negative|pos\b|neg\b|\+|-)|\b(positive|negative)\s+(?:cent(?:re|er)|tip|inside|middle)`)
	acDevice = pattern.New(`(?i)\bac(?:\s*/\s*dc|\s*-\s*dc)?\s*(?:power\s*)?(?:adapt[eo]r|charger|supply)|\bac\s*(?:/|-|to)\s*dc\b`)
)

// plainSigns replaces the signs that labels carry by words: the straight line
// over a broken one, and what people type for it, is direct current; the wave
// is alternating current.
func plainSigns(text string) string {
	r := strings.NewReplacer(
		"\u2393", " DC ", "\u23e6", " DC ", "===", " DC ", "==", " DC ", "---", " DC ", "=", " DC ",
		"\u223f", " ~ ", "\u223c", " ~ ", "\u301c", " ~ ", "\u2013", "-", "\u2014", "-",
		"\u00a0", " ", "\u202f", " ", "D.C.", "DC", "d.c.", "dc", "A.C.", "AC", "a.c.", "ac",
	)
	return r.Replace(text)
}

// outputSide returns what the label says of its output: from the word for
// output on, or without the part from the word for input on, or all of it
// without what can only be the mains.
func outputSide(text string) string {
	out, in := outputAt.Get().FindStringIndex(text), inputAt.Get().FindStringIndex(text)
	switch {
	case out != nil && (in == nil || in[0] < out[0]):
		text = text[out[1]:]
	case out != nil:
		text = text[out[1]:in[0]]
	case in != nil:
		text = text[:in[0]]
	}
	return mainsAt.Get().ReplaceAllString(text, " ")
}

// The words for what a charger is made for. Plain "lithium" may be either of
// two kinds that need different volts, so it decides nothing by itself.
var purposeWords = [...]struct {
	is    Purpose
	words *pattern.Lazy
}{
	{ForLithiumIronPhosphate, pattern.New(`(?i)life\s?p[o0](?:4|\b)|\blfp\b|iron[ -]phosphate`)},
	{ForLithiumIon, pattern.New(`(?i)\bli[ -]?ion\b|lithium[ -]ion|\bli[ -]?po\b|li(?:thium)?[ -]poly`)},
	{ForLeadAcid, pattern.New(`(?i)\blead\b|\bsla\b|\bagm\b|\bvrla\b|\bgel\b`)},
	{ForNickel, pattern.New(`(?i)\bni[ -]?mh\b|\bni[ -]?cd\b|\bnickel\b`)},
	{PowerSupply, pattern.New(`(?i)laptop|notebook|power supply|switching adap|led driver|\brouter\b|\bprinter\b|\bmonitor\b`)},
}

var (
	plainLithium = pattern.New(`(?i)\blithium\b`)
	saysItStops  = pattern.New(`(?i)automatic|auto[ -]?(?:cut|stop|off|shut)|\bsmart\b|full stop|\bfloat|\b(?:stops?|ends?) (?:by itself|itself|on its own|when full|at full)|\b(?:turns?|switch(?:es)?|shuts?|cuts?) (?:itself )?off`)
	saysNever    = pattern.New(`(?i)\b(?:never|(?:does|do|will|can)(?: not|n.?t)|cannot) (?:stop|end|(?:turn|switch|shut|cut)s? (?:itself )?off)`)
	saysNot      = pattern.New(`(?i)\b(?:not|non|no|without|never)\b[ -]*(?:an? )?(?:auto|smart|full stop|float|stop|end|turn|switch|shut|cut)`)
	saysTimer    = pattern.New(`(?i)\btimer\b`)
)

// readPurpose finds what the charger says that it is for.
func (l *Label) readPurpose(text string) {
	var found []Purpose
	for _, p := range purposeWords {
		if p.words.Get().MatchString(text) {
			found = append(found, p.is)
		}
	}
	switch {
	case len(found) == 1:
		l.MadeFor = found[0]
	case len(found) > 1:
		l.Unclear = append(l.Unclear, "The label names more than one kind of battery: "+list(found)+".")
	case plainLithium.Get().MatchString(text):
		l.Unclear = append(l.Unclear, "The label says lithium but not which kind; lithium-ion and lithium iron phosphate need different volts.")
	}
	switch {
	case saysNever.Get().MatchString(text):
		l.Stops = StopsNever
	case saysNot.Get().MatchString(text): // then one does not know which of the words counts
	case saysItStops.Get().MatchString(text):
		l.Stops = StopsByItself
	case saysTimer.Get().MatchString(text):
		l.Stops = StopsByTimer
	}
}

// list joins purposes with "and".
func list(ps []Purpose) string {
	words := make([]string, len(ps))
	for i, p := range ps {
		words[i] = p.String()
	}
	return strings.Join(words, " and ")
}

// readOutput decides between direct and alternating current.
func (l *Label) readOutput(side string) {
	side = acDevice.Get().ReplaceAllString(side, " ")
	dc := dcWord.Get().MatchString(side) || hasVoltSuffix(side, "dc")
	ac := acWord.Get().MatchString(side) || hasVoltSuffix(side, "ac") || strings.Contains(side, "~")
	switch {
	case dc && ac:
		l.Unclear = append(l.Unclear, "The label shows both AC and DC: read the line that says output again.")
	case dc:
		l.Output = DC
	case ac:
		l.Output = AC
	}
}

// hasVoltSuffix reports whether a voltage carries the suffix, as in "12VDC".
func hasVoltSuffix(side, suffix string) bool {
	for _, m := range voltAt.Get().FindAllStringSubmatch(side, -1) {
		if strings.EqualFold(m[2], suffix) {
			return true
		}
	}
	return false
}

// readPolarity looks for the words; the drawn sign cannot be typed.
func (l *Label) readPolarity(text string) {
	var pos, neg bool
	for _, m := range centreAt.Get().FindAllStringSubmatch(text, -1) {
		sign := strings.ToLower(m[1] + m[2])
		if strings.HasPrefix(sign, "pos") || strings.HasPrefix(sign, "+") {
			pos = true
		} else {
			neg = true
		}
	}
	switch {
	case pos && neg:
		l.Unclear = append(l.Unclear, "The label gives both polarities of the plug.")
	case pos:
		l.Polarity = CentrePositive
	case neg:
		l.Polarity = CentreNegative
	}
}

// readFigures reads volts, amps and watts of the output.
func (l *Label) readFigures(side string) error {
	side = perHour.Get().ReplaceAllString(side, " ")
	volts := everyFigure(voltAt.Get(), side)
	amps := everyFigure(ampAt.Get(), side)
	for _, v := range volts {
		if v.value == 0 || v.value > maxLabelV {
			return fmt.Errorf("%w: %g V (want above 0, at most %g V)", ErrLabel, v.value, maxLabelV)
		}
	}
	for i := range amps {
		if strings.HasPrefix(strings.ToLower(amps[i].unit), "m") {
			amps[i].value /= 1000
		}
		if a := amps[i].value; a == 0 || a > maxLabelA {
			return fmt.Errorf("%w: %g A (want above 0, at most %g A)", ErrLabel, a, maxLabelA)
		}
	}
	if w := everyFigure(wattAt.Get(), side); len(w) == 1 {
		l.PrintedW = w[0].value
	}

	highest := -1
	distinct := map[float64]bool{}
	for i, v := range volts {
		distinct[v.value] = true
		if highest < 0 || v.value > volts[highest].value {
			highest = i
		}
	}
	l.Outputs = len(distinct)
	if highest >= 0 {
		l.PrintedV = volts[highest].value
	}
	switch {
	case len(amps) == 1:
		l.PrintedA = amps[0].value
	case len(amps) > 1 && highest >= 0:
		// The amps that belong to a voltage are printed behind it.
		for _, a := range amps {
			if a.at > volts[highest].at {
				l.PrintedA = a.value
				break
			}
		}
	}
	switch {
	case l.Outputs > 1:
		l.Unclear = append(l.Unclear, fmt.Sprintf("The label gives %d output voltages; the highest, %g V, is what a pack must be safe with.", l.Outputs, l.PrintedV))
	case len(amps) > 1:
		l.Unclear = append(l.Unclear, "The label gives more than one output current.")
	}
	if l.PrintedA == 0 && l.PrintedW > 0 && l.PrintedV > 0 {
		l.PrintedA = l.PrintedW / l.PrintedV
		l.Unclear = append(l.Unclear, fmt.Sprintf("The amps are not printed; %.3g A follows from the watts.", l.PrintedA))
	}
	return nil
}

// figure is a number with its unit and where in the text it stands.
type figure struct {
	value float64
	unit  string
	at    int
}

// everyFigure returns each match of a pattern whose first group is the number
// and whose second, if any, the unit. Matches may share the separator between
// them, so the search starts again right behind each number.
func everyFigure(pattern *regexp.Regexp, text string) []figure {
	var out []figure
	for from := 0; from < len(text); {
		m := pattern.FindStringSubmatchIndex(text[from:])
		if m == nil {
			break
		}
		raw := text[from+m[2] : from+m[3]]
		value, err := strconv.ParseFloat(strings.Replace(raw, ",", ".", 1), 64)
		if err == nil && !math.IsInf(value, 0) {
			f := figure{value: value, at: from + m[2]}
			if len(m) > 4 && m[4] >= 0 {
				f.unit = text[from+m[4] : from+m[5]]
			}
			out = append(out, f)
		}
		from += m[3]
	}
	return out
}

// sayUnclear adds what a careful reader would still want to know.
func (l *Label) sayUnclear() {
	if l.PrintedV == 0 {
		l.Unclear = append(l.Unclear, "The output volts are not printed.")
	}
	if l.PrintedA == 0 {
		l.Unclear = append(l.Unclear, "The output amps are not printed.")
	}
	if l.Output == OutputUnknown && !l.MadeFor.GivesDC() {
		l.Unclear = append(l.Unclear, unclearOutput)
	}
	if l.MadeFor == PurposeUnknown && looksLikeLaptop(l.PrintedV) {
		l.Unclear = append(l.Unclear, fmt.Sprintf("%g V is a usual voltage of laptop supplies.", l.PrintedV))
	}
	if l.MadeFor == PurposeUnknown {
		l.Unclear = append(l.Unclear, unclearPurpose)
	}
}

// shorten keeps an error to one readable line.
func shorten(s string) string {
	s = strings.Join(strings.Fields(strings.ToValidUTF8(s, "?")), " ")
	if r := []rune(s); len(r) > 40 {
		return string(r[:40]) + "..."
	}
	return s
}
