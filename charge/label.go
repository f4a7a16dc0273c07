package charge

import (
	"errors"
	"fmt"
	"math"
	"regexp"
	"strconv"
	"strings"
)

// Label is what a charger's label says, and no more than that. A value that
// the label does not give is zero; what can be read in more than one way is
// left open and said in Unclear.
type Label struct {
	Text     string   // as given, spaces trimmed
	PrintedV float64  // printed output volts; of several outputs the highest; 0 = not printed
	PrintedA float64  // printed output amps at PrintedV; 0 = not printed
	PrintedW float64  // printed watts or volt-amps; 0 = not printed
	Outputs  int      // how many different output voltages are printed
	Output   Output   // direct or alternating current
	Polarity Polarity // of the plug
	MadeFor  Purpose  // what the label says that it charges
	Stops    Stops    // only when the label says so
	Unclear  []string // plain sentences on what the label leaves open
}

// Output is the kind of current that a charger gives.
type Output int

// The kinds of output.
const (
	OutputUnknown Output = iota
	DC
	AC
)

// Polarity is the polarity of a round plug.
type Polarity int

// The polarities.
const (
	PolarityUnknown Polarity = iota
	CentrePositive
	CentreNegative
)

// Purpose is what a charger was made to charge.
type Purpose int

// The purposes. PowerSupply is anything that was made to run an appliance, not
// to charge a battery: the brick of a laptop, a supply for lamps.
const (
	PurposeUnknown Purpose = iota
	ForLeadAcid
	ForLithiumIon
	ForLithiumIronPhosphate
	ForNickel
	PowerSupply
)

// purposeNames is indexed by Purpose.
var purposeNames = [...]string{
	"not said", "lead-acid", "lithium-ion", "lithium iron phosphate", "nickel-metal hydride", "power supply",
}

// String returns the purpose in plain words.
func (p Purpose) String() string {
	if p < PurposeUnknown || p > PowerSupply {
		return fmt.Sprintf("purpose %d", int(p))
	}
	return purposeNames[p]
}

// Stops says whether a charger ends the charge.
type Stops int

// The ways in which a charger ends a charge, or does not.
const (
	StopsUnknown  Stops = iota
	StopsByItself       // on falling current, or goes over to a float voltage
	StopsByTimer        // after set hours, whatever the battery does
	StopsNever          // runs until somebody pulls the plug
)

// Limits of what a label can sensibly say. They keep a slip of the finger out,
// they are not limits of physics.
const (
	maxLabelBytes = 4096
	maxLabelV     = 1000.0
	maxLabelA     = 200.0
)

// ErrLabel is wrapped by every error of [ParseLabel].
var ErrLabel = errors.New("charge: cannot read the label")

// The pieces of a label. Decimal comma and point are both taken; a unit may
// touch its number.
var (
	number   = `(\d+(?:[.,]\d+)?)`
	voltAt   = regexp.MustCompile(`(?i)(?:^|[^\d.,])` + number + `\s*(?:v(?:olts?)?)(?:\s*\.?\s*(dc|ac))?(?:[^a-z]|$)`)
	ampAt    = regexp.MustCompile(`(?i)(?:^|[^\d.,])` + number + `\s*(ma|a|amps?|milliamps?)(?:[^a-z]|$)`)
	wattAt   = regexp.MustCompile(`(?i)(?:^|[^\d.,])` + number + `\s*(va|w(?:atts?)?)(?:[^a-z]|$)`)
	perHour  = regexp.MustCompile(`(?i)` + number + `\s*m?ah\b`)
	inputAt  = regexp.MustCompile(`(?i)\b(?:input|in|pri|primary|eingang)\b\s*[:.]?`)
	outputAt = regexp.MustCompile(`(?i)\b(?:output|out|o/p|sec|secondary|ausgang)\b\s*[:.]?`)
	mainsAt  = regexp.MustCompile(`(?i)(?:\bac\s*)?\b(?:\d{3}\s*(?:v(?:ac)?)?\s*(?:-|~|to)\s*)?(?:100|110|115|120|127|220|230|240)\s*v(?:ac)?\b(?:\s*ac\b|\s*~)?|\b(?:50|60)\s*(?:[/-]\s*60)?\s*hz\b`)
	dcWord   = regexp.MustCompile(`(?i)(?:^|[^a-z/])(?:v?dc)(?:[^a-z/]|$)`)
	acWord   = regexp.MustCompile(`(?i)(?:^|[^a-z/])(?:v?ac)(?:[^a-z/]|$)`)
	centreAt = regexp.MustCompile(`(?i)\b(?:cent(?:re|er)|tip|inside|middle)\s*(?:pin\s*)?[-:]?\s*(positive|negative|pos\b|neg\b|\+|-)|\b(positive|negative)\s+(?:cent(?:re|er)|tip|inside|middle)`)
	acDevice = regexp.MustCompile(`(?i)\bac(?:\s*/\s*dc|\s*-\s*dc)?\s*(?:power\s*)?(?:adapt[eo]r|charger|supply)|\bac\s*(?:/|-|to)\s*dc\b`)
)

// ParseLabel reads the text of a charger's label as people type it off: volts,
// amps, direct or alternating current, polarity and what it is made for. Text
// that it does not know is skipped. A part of the label headed "input" is left
// out. It returns an error, wrapping [ErrLabel], when neither volts nor amps
// are found or when a figure is beyond anything that a battery charger gives.
func ParseLabel(text string) (Label, error) {
	text = strings.TrimSpace(text)
	if len(text) > maxLabelBytes {
		return Label{}, fmt.Errorf("%w: %d bytes long (want at most %d)", ErrLabel, len(text), maxLabelBytes)
	}
	l := Label{Text: text}
	side := outputSide(plainSigns(text))
	l.readPurpose(side + " " + text)
	l.readOutput(side)
	l.readPolarity(text)
	if err := l.readFigures(side); err != nil {
		return Label{}, err
	}
	if l.PrintedV == 0 && l.PrintedA == 0 {
		return Label{}, fmt.Errorf("%w: no volts and no amps in %q (want something like \"14.7 V 1.5 A\")", ErrLabel, shorten(text))
	}
	l.sayUnclear()
	return l, nil
}

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
	out, in := outputAt.FindStringIndex(text), inputAt.FindStringIndex(text)
	switch {
	case out != nil && (in == nil || in[0] < out[0]):
		text = text[out[1]:]
	case out != nil:
		text = text[out[1]:in[0]]
	case in != nil:
		text = text[:in[0]]
	}
	return mainsAt.ReplaceAllString(text, " ")
}

// readPurpose finds what the charger says that it is for.
func (l *Label) readPurpose(text string) {
	t := strings.ToLower(text)
	has := func(words ...string) bool {
		for _, w := range words {
			if strings.Contains(t, w) {
				return true
			}
		}
		return false
	}
	var found []Purpose
	if has("lifepo", "life po", "lfp", "iron phosphate", "iron-phosphate") {
		found = append(found, ForLithiumIronPhosphate)
	}
	if has("li-ion", "li ion", "lithium ion", "lithium-ion", "liion", "li-po", "lipo", "li-polymer") ||
		(has("lithium") && !has("phosphate")) {
		found = append(found, ForLithiumIon)
	}
	if has("lead", "sla", "agm", "vrla", "sealed", "gel ") || strings.HasSuffix(t, "gel") {
		found = append(found, ForLeadAcid)
	}
	if has("nimh", "ni-mh", "nicd", "ni-cd", "nickel") {
		found = append(found, ForNickel)
	}
	if has("laptop", "notebook", "power supply", "switching adap", "led driver", "router", "printer", "monitor") {
		found = append(found, PowerSupply)
	}
	switch len(found) {
	case 0:
	case 1:
		l.MadeFor = found[0]
	default:
		l.Unclear = append(l.Unclear, "The label names more than one kind of battery: "+list(found)+".")
	}
	switch {
	case has("automatic", "auto cut", "auto-cut", "auto stop", "auto-stop", "smart", "full stop", "float"):
		l.Stops = StopsByItself
	case has("timer"):
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
	side = acDevice.ReplaceAllString(side, " ")
	dc := dcWord.MatchString(side) || hasVoltSuffix(side, "dc")
	ac := acWord.MatchString(side) || hasVoltSuffix(side, "ac") || strings.Contains(side, "~")
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
	for _, m := range voltAt.FindAllStringSubmatch(side, -1) {
		if strings.EqualFold(m[2], suffix) {
			return true
		}
	}
	return false
}

// readPolarity looks for the words; the drawn sign cannot be typed.
func (l *Label) readPolarity(text string) {
	var pos, neg bool
	for _, m := range centreAt.FindAllStringSubmatch(text, -1) {
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
	side = perHour.ReplaceAllString(side, " ")
	volts := everyFigure(voltAt, side)
	amps := everyFigure(ampAt, side)
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
	if w := everyFigure(wattAt, side); len(w) == 1 {
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
	if l.Output == OutputUnknown {
		l.Unclear = append(l.Unclear, "The label does not say whether the output is AC or DC.")
	}
	if l.MadeFor == PurposeUnknown && looksLikeLaptop(l.PrintedV) {
		l.Unclear = append(l.Unclear, fmt.Sprintf("%g V is a usual voltage of laptop supplies.", l.PrintedV))
	}
	if l.MadeFor == PurposeUnknown {
		l.Unclear = append(l.Unclear, "The label does not say what kind of battery it charges.")
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
