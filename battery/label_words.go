package battery

import (
	"fmt"
	"regexp"
	"strconv"
	"strings"

	"example.org/packcheck/internal/pattern"
)

// words is what stands on a label, before anybody asks what it means.
type words struct {
	volts          float64 // 0 = none; of one block when there are several
	maxV           float64 // the figure that "max" stands beside
	ampHours       float64
	rateHours      float64
	wattHours      float64
	cells, strings int    // of "5S2P"; 0 = not said
	blocks         int    // in series, of "2 x 12 V", "two 12 V"; 0 or 1 = one
	blocksUnclear  bool   // series or parallel was not said
	parallelBlocks int    // rows of such blocks side by side; 0 or 1 = one
	ofAll          bool   // ampHours are of all blocks together
	ofCell         bool   // ampHours are said to be of one cell
	namedBlocks    int    // how many blocks the label names; 0 = it speaks of one
	chemistry      string // profile name; "" = not said
	unmodelled     string // cells that no profile is of
	lithium        string // the word that says it, but not which kind
	leadToo        bool   // lead-acid is named beside another chemistry
	nickelCadmium  bool
	electronics    bool
	noElectronics  bool
	lastingA       float64 // see [lastingA]; of a label of one battery that is not lead-acid
	ridden         bool
	liquidAcid     bool
	starter        bool     // and nothing says whether it is sealed
	format         string   // "18650", "21700", "26650"
	unread         []string // words that may be a model's name, or that of a chemistry
}

const (
	numberPattern  = `(\d+(?:\.\d+)?|\.\d+)`
	ampHourPattern = numberPattern + `\s*(m?)(?:ah|ha\b|amp[ -]?(?:ere[ -]?)?h(?:ou)?rs?\b|a\.h\.?)`
)

var (
	decimalComma  = pattern.New(`(\d),(\d)`)
	maxPattern    = pattern.New(numberPattern + `\s*v(?:olts?)?\s*\(?max`)
	maxBefore     = pattern.New(`max\.?\s*` + numberPattern + `\s*v`)
	bareVolt      = pattern.New(numberPattern + `\s*v`)
	ampHour       = pattern.New(ampHourPattern)
	ratePattern   = pattern.New(`(?:/|@|\(|\bat |\bc/?)\s*(\d+)\s*-?\s*(?:hr|h\b|hours?)|\bc(\d+)\b|\b(\d\d)\s*-?\s*hrs?\b`)
	wattHour      = pattern.New(numberPattern + `\s*(?:wh|watt[ -]?h(?:ou)?rs?)`)
	seriesPattern = pattern.New(`\b(\d{1,3})\s*s(?:\s*x?\s*(\d{1,3})\s*p)?(?:[^a-z]|$)`)
	startCurrent  = pattern.New(numberPattern + `\s*(?:cca|mca|cranking|a\s*\(?(?:en|sae|din)\b)`)
	// bareWatts are no part of a model's name; watts per cell are how blocks for short hours are rated.
	bareWatts    = pattern.New(`(?:^|[^a-z\d.])` + numberPattern + `\s*w(?:atts?)?\b`)
	perCellWatts = pattern.New(`\d\s*w(?:atts?)?\s*(?:/|per\b)\s*(?:cell|block|\d+\s*min)`)
	// below0 are charges with a sign, and volts at the beginning: "13.5 V -13.8 V" is a range,
	// "12V-7Ah" and "12 V - 7 Ah" have a dash between.
	below0   = pattern.New(`(?:^|[^\d\s]\s+)-` + numberPattern + `\s*m?(?:ah|wh)|^\s*-` + numberPattern + `\s*v`)
	bareAmps = pattern.New(numberPattern + `\s*(m?)a(?:mps?|mperes?)?\b`)
	// powerOfTen is a figure as programs write it, which nobody prints on a battery.
	powerOfTen = pattern.New(`(?:^|\s)\d+(?:\.\d+)?e[-+]?\d+\s*(?:v|m?ah|m?wh|$)`)
)

// smallNumbers are the counts of blocks that people write out.
var smallNumbers = [...]struct {
	word  string
	count int
}{{"two", 2}, {"pair", 2}, {"couple", 2}, {"three", 3}, {"four", 4}, {"six", 6}, {"eight", 8}}

// readWords finds the figures and words of a label.
func readWords(text string) (words, error) {
	var w words
	s := strings.ToLower(strings.NewReplacer("LiFeP", "lifep", "LiFe", "li-fe", "×", "x", "₂", "2", "₄", "4", "\u00a0", " ", "–", "-", "\u2212", "-").Replace(text))
	s = decimalComma.Get().ReplaceAllString(s, "$1.$2")
	w.readChemistry(s)
	if !isLead(w.chemistry) {
		w.lastingA = lastingA(s)
	}
	w.unread = unread(text)
	if m := ofPowerBank.Get().FindString(s); m != "" {
		return w, fmt.Errorf("battery: label %q is that of a %s, whose electronics make its volts from other cells, for small things, and mostly switch off when a motor starts; want what is printed on a battery, such as \"12 V 7 Ah\"", clip(text), m)
	}
	s, err := withoutCharging(s)
	if err != nil {
		return w, fmt.Errorf("battery: label %q %w", clip(text), err)
	}
	if m := below0.Get().FindStringSubmatch(s); m != nil {
		return w, fmt.Errorf("battery: label %q gives -%s, below 0; want figures without a sign, such as \"12 V 7 Ah\"", clip(text), m[1]+m[2])
	}
	// Figures that have been understood are blanked out, so that no digit is
	// read twice.
	take := func(p *regexp.Regexp) []string {
		at := p.FindStringSubmatchIndex(s)
		if at == nil {
			return nil
		}
		got := p.FindStringSubmatch(s)
		s = s[:at[0]] + " " + s[at[1]:]
		return got
	}
	if m := startCurrent.Get().FindStringSubmatch(s); m != nil {
		return w, fmt.Errorf("battery: label %q gives %s A of starting current: that is a starter battery, made for seconds and spoilt by deep discharges, and mostly with liquid acid, which runs out when it tips over; want a sealed deep-cycle block, told in ampere-hours such as \"12 V 7 Ah\"", clip(text), m[1])
	}
	if w.format != "" {
		s = strings.Replace(s, w.format, " ", 1)
	}
	if m := take(wattHour.Get()); m != nil {
		w.wattHours = figure(m[1])
	}
	if err := w.readBlocks(s, clip(text)); err != nil {
		return w, err
	}
	w.ofCell = cellAmpHour.Get().MatchString(s)
	if m := ampHour.Get().FindStringSubmatchIndex(s); m != nil {
		if w.ampHours == 0 { // else of several blocks, and understood
			w.ampHours = wholeUnits(s, m)
		}
		if r := ratePattern.Get().FindStringSubmatch(s); r != nil {
			w.rateHours = figure(r[1] + r[2] + r[3])
		}
		s = s[:m[0]] + " " + ratePattern.Get().ReplaceAllString(s[m[1]:], " ")
	}
	s = ampsSeconds.Get().ReplaceAllString(s, "$1 ;")
	if m := take(seriesPattern.Get()); m != nil {
		w.cells, _ = strconv.Atoi(m[1])
		w.strings, _ = strconv.Atoi(m[2])
		if w.cells == 0 || (m[2] != "" && w.strings == 0) {
			return w, fmt.Errorf("battery: label %q has no cells in series or in parallel", clip(text))
		}
	}
	m := maxPattern.Get().FindStringSubmatch(s)
	if m == nil {
		m = maxBefore.Get().FindStringSubmatch(s)
	}
	if m != nil {
		w.maxV = figure(m[1])
	}
	w.readVolts(s)
	if m := bareWatts.Get().FindStringSubmatch(s); m != nil && !perCellWatts.Get().MatchString(s) && w.ampHours == 0 && w.wattHours == 0 && w.cells == 0 && max(w.volts, w.maxV) > 0 {
		return w, fmt.Errorf("battery: label %q tells watts, which are those of a motor or a controller and not of a battery; want what the battery holds, such as \"%g V 7 Ah\" or \"%g V 90 Wh\"", clip(text), max(w.volts, w.maxV), max(w.volts, w.maxV))
	}
	if ofCharger.Get().MatchString(s) && w.ampHours == 0 && w.wattHours == 0 && w.cells == 0 {
		return w, fmt.Errorf("battery: label %q is that of a charger or an adaptor; want what is printed on the battery, such as \"12 V 7 Ah\"", clip(text))
	}
	if m := powerOfTen.Get().FindString(s); m != "" {
		return w, fmt.Errorf("battery: label %q gives %s; want plain figures, such as \"12 V 7 Ah\"", clip(text), strings.TrimSpace(m))
	}
	if m := bareAmps.Get().FindStringSubmatch(s); m != nil && w.ampHours == 0 && w.wattHours == 0 && w.cells == 0 && max(w.volts, w.maxV) > 0 {
		return w, fmt.Errorf("battery: label %q tells amps, which are a current and no charge; want ampere-hours, such as \"%g V %s %sAh\"", clip(text), max(w.volts, w.maxV), m[1], m[2])
	}
	if w.volts == 0 && w.maxV == 0 && w.cells == 0 && w.wattHours == 0 {
		return w, fmt.Errorf("battery: label %q tells no volts, want for instance \"20 V max 5 Ah\", \"12 V 7 Ah\" or \"5S2P\"", clip(text))
	}
	if w.volts > 1000 || w.maxV > 1000 || w.ampHours > 1e5 || w.rateHours > 1000 {
		return w, fmt.Errorf("battery: label %q gives figures beyond any pack", clip(text))
	}
	return w, nil
}

// readVolts finds the nominal voltage: the figure that is neither "max" nor
// the voltage of one of several blocks.
func (w *words) readVolts(s string) {
	for _, m := range bareVolt.Get().FindAllStringSubmatch(s, 8) {
		v := figure(m[1])
		if v == 0 || v == w.maxV && w.volts == 0 {
			continue
		}
		switch {
		case w.namedBlocks > 1:
			// "24 V (two 12 V)": blocks are counted in volts already.
		case w.volts == 0:
			w.volts = v
		}
	}
}

// perCell reports whether the capacity beside "5S2P" and a cell size can only
// be that of one cell.
func (w *words) perCell() bool {
	least := map[string]float64{"18650": 1.0, "20700": 2.0, "21700": 2.5, "26650": 2.0, "26700": 2.5}[w.format]
	most := map[string]float64{"18650": 3.7, "20700": 4.5, "21700": 6.2, "26650": 6.0, "26700": 6.5}[w.format]
	share := w.ampHours / float64(w.strings)
	return least > 0 && share < least && w.ampHours <= most
}

func figure(s string) float64 {
	x, err := strconv.ParseFloat(s, 64)
	if err != nil {
		return 0
	}
	return x
}
