package battery

import (
	"cmp"
	"fmt"
	"math"
	"slices"
	"strings"

	"example.org/packcheck/chemistry"
	"example.org/packcheck/internal/quantity"
)

// Label is what the words on a pack mean.
type Label struct {
	Text          string    // as given
	Chemistry     string    // profile name; the hint's when one was given
	Sure          Sureness  // how sure the chemistry and the cell count are
	CellsInSeries int       // 0 = cannot be told
	Strings       int       // in parallel; 0 = the label does not say
	NominalV      float64   // 0 = cannot be told, like the next two
	FullV         float64   // just charged and rested
	PrintedV      float64   // the nominal volts that stand on it, of one block where it names several; 0 = none
	MaxV          float64   // the figure that "max" stands beside; 0 = none
	EmptyV        float64   // normal end of a discharge
	CapacityAh    float64   // of the whole pack; 0 = not stated and not derivable
	RateHours     float64   // hours that the capacity is rated over; 0 = not stated
	EnergyWh      float64   // stated, or nominal volts times capacity; 0 = unknown
	NickelCadmium bool      // printed on it; it is computed like nickel-metal hydride
	Electronics   bool      // it says that electronics inside watch the battery, not at what they switch off
	NoElectronics bool      // it says that there are none
	LastingA      float64   // amps that it says the battery may give for long; 0 = none, or of lead-acid by its words or of several
	Ridden        bool      // it names an electric bicycle, scooter or hoverboard, whose lithium batteries are sold with electronics
	OfCells       bool      // it says how its cells are put together, as in "4S" or "5S2P"
	LiquidAcid    bool      // lead-acid that is not sealed, by its words; it is computed like a sealed one
	Starter       bool      // lead-acid that starts engines, by its words, which do not say whether it is sealed
	Blocks        int       // separate blocks that the label names; 0 = it speaks of one
	BlocksUnclear bool      // it does not say how they are joined; series was taken
	Others        []Reading // other readings of the same words, best first
	Unread        []string  // words that may tell one of these, and were not understood; as they stand
	Notes         []string  // what a reader should know, plain sentences
}

// Reading is one way to understand a label.
type Reading struct {
	Chemistry     string
	CellsInSeries int
}

// Sureness says how far a reading can be trusted.
type Sureness int

// The degrees.
const (
	Guess  Sureness = iota // one of several readings: ask
	Likely                 // the usual meaning of these words
	Stated                 // the label says so
)

// String returns "guess", "likely" or "stated".
func (s Sureness) String() string {
	switch s {
	case Stated:
		return "stated"
	case Likely:
		return "likely"
	}
	return "guess"
}

// maxLabelBytes bounds what is read; a label is one line.
const maxLabelBytes = 500

// ParseLabel reads what is printed on a pack: "20 V max 5 Ah", "12V7AH/20HR",
// "5S2P 21700 4 Ah", "24 V (two 12 V)", "12.8 V 10Ah LiFePO4", "90 Wh". The
// hint is the name of a profile of [chemistry.Builtin], or empty. Words that
// can mean two things give the likelier one, Sure = Guess, and the rest in
// Others; so do words that are not understood where only volts tell of lead-acid.
// It fails when no volts, cells or watt-hours are found, when the
// figures contradict one another, when the words name cells that
// [chemistry.Builtin] has no profile of, or when the hint is not known.
func ParseLabel(text, chemistryHint string) (Label, error) {
	var hint *chemistry.Profile
	if chemistryHint != "" {
		p, ok := chemistry.Builtin().Profile(chemistryHint)
		if !ok {
			return Label{}, fmt.Errorf("battery: chemistry %q of label %q is not known, want one of %s", chemistryHint, clip(text), strings.Join(chemistry.Builtin().Names(), ", "))
		}
		hint = &p
	}
	return parseLabel(text, hint)
}

// ParseLabelOf is [ParseLabel] for a pack of a known chemistry, which may be a
// user's own.
func ParseLabelOf(text string, p chemistry.Profile) (Label, error) { return parseLabel(text, &p) }

func parseLabel(text string, hint *chemistry.Profile) (Label, error) {
	if len(text) > maxLabelBytes {
		return Label{}, fmt.Errorf("battery: label of %d bytes, want one line such as \"20 V max 5 Ah\"", len(text))
	}
	w, err := readWords(text)
	if w.unmodelled != "" && (hint == nil || builtIn(hint.Name)) { // a chemistry of one's own may be what the words say
		return Label{}, noModel(text, w.unmodelled)
	}
	if err != nil {
		return Label{}, err
	}
	if w.chemistry == "li-ion" && ofPhosphate(w.volts) {
		return Label{}, fmt.Errorf("battery: label %q says lithium-ion and %g V, which iron phosphate has: the two are charged to different volts; want the kind that its charger or sheet names, such as \"%g V LiFePO4\"", clip(text), w.volts, w.volts)
	}
	if hint != nil && !w.mayBe(*hint) {
		return Label{}, fmt.Errorf("battery: label %q says %s but the chemistry given is %s", text, cmp.Or(w.chemistry, w.lithium), hint.Name)
	}
	l := Label{
		Text: text, RateHours: w.rateHours, Strings: w.strings, PrintedV: w.volts, MaxV: w.maxV, NickelCadmium: w.nickelCadmium,
		Electronics: w.electronics, NoElectronics: w.noElectronics, Ridden: w.ridden, OfCells: w.cells > 0,
		LiquidAcid: w.liquidAcid, Starter: w.starter, Blocks: w.namedBlocks, BlocksUnclear: w.blocksUnclear,
	}
	if w.namedBlocks <= 1 {
		l.LastingA = w.lastingA
	}
	readings, sure := w.readings(hint)
	if len(readings) > 0 {
		l.Chemistry, l.CellsInSeries, l.Sure, l.Others = readings[0].Chemistry, readings[0].CellsInSeries, sure, readings[1:]
		if len(l.Others) > 0 && w.chemistry == "" && w.lithium == "" {
			l.Unread = w.unread
		}
	} else if hint != nil {
		l.Chemistry = hint.Name
	}
	if err := w.chargingVolts(readings, hint); err != nil {
		return Label{}, fmt.Errorf("battery: label %q %w", clip(text), err)
	}
	if l.CellsInSeries > maxCells {
		return Label{}, fmt.Errorf("battery: label %q means %d cells in series, want at most %d", text, l.CellsInSeries, maxCells)
	}
	if p, ok := profileOf(l.Chemistry, hint); ok && l.CellsInSeries > 0 {
		n := float64(l.CellsInSeries)
		l.NominalV, l.FullV, l.EmptyV = tidy(n*p.NominalV), n*p.FullV, n*p.EmptyV
	}
	l.capacity(w)
	l.notes(w)
	return l, l.contradiction(w)
}

// maxCells is far beyond any pack that this module is about.
const maxCells = 120

func profileOf(name string, hint *chemistry.Profile) (chemistry.Profile, bool) {
	if hint != nil && name == hint.Name {
		return *hint, true
	}
	return chemistry.Builtin().Profile(name)
}

func builtIn(name string) bool {
	_, ok := chemistry.Builtin().Profile(name)
	return ok
}

func sameFamily(p chemistry.Profile, name string) bool {
	other, ok := chemistry.Builtin().Profile(name)
	return ok && other.Family == p.Family
}

// capacity settles ampere-hours and watt-hours.
func (l *Label) capacity(w words) {
	l.CapacityAh, l.EnergyWh = w.ampHours, w.wattHours
	add := func(format string, args ...any) { l.Notes = append(l.Notes, fmt.Sprintf(format, args...)) }
	switch n := float64(w.parallelBlocks); {
	case n > 1 && w.ofAll:
		add("%g Ah is taken as the capacity of all blocks together; if it is that of each, write it beside the block's volts, as in \"two 12 V 7 Ah in parallel\".", w.ampHours)
	case n > 1:
		l.CapacityAh *= n
	}
	switch {
	case w.ampHours > 0 && w.ofCell && w.strings > 0:
		l.CapacityAh = w.ampHours * float64(w.strings)
		add("%g Ah is said to be that of a cell; with %d side by side the pack has %g Ah.", w.ampHours, w.strings, l.CapacityAh)
	case w.ampHours > 0 && w.ofCell:
		add("%g Ah is said to be that of a cell, but not how many are side by side; one is taken. Write it as in \"5S2P 2.5 Ah cells\".", w.ampHours)
	case w.ampHours > 0 && w.strings > 1 && w.perCell():
		l.CapacityAh = w.ampHours * float64(w.strings)
		add("%g Ah is taken as the capacity of one cell, because %d cells of this size in parallel cannot share it; the pack then has %g Ah.", w.ampHours, w.strings, l.CapacityAh)
	}
	if l.NominalV > 0 {
		switch {
		case l.CapacityAh > 0 && l.EnergyWh == 0:
			l.EnergyWh = tidy(l.NominalV * l.CapacityAh)
		case l.CapacityAh == 0 && l.EnergyWh > 0:
			l.CapacityAh = l.EnergyWh / l.NominalV
		}
	}
}

// notes says what a label like this usually gets wrong in people's heads.
func (l *Label) notes(w words) {
	add := func(format string, args ...any) { l.Notes = append(l.Notes, fmt.Sprintf(format, args...)) }
	if w.maxV > 0 && l.NominalV > 0 && w.maxV > l.NominalV+0.5 {
		add("%g V max and %g V nominal are one pack, %s; %g V is what it reads just after charging, not under load.", w.maxV, l.NominalV, quantity.Cells(l.CellsInSeries), w.maxV)
	}
	if w.blocks > 1 && w.blocksUnclear {
		add("%d blocks of %g V are taken to be in series (%g V); in parallel they would be %g V with the capacities added. Look at the links between them.", w.blocks, w.volts, w.volts*float64(w.blocks), w.volts)
	}
	if len(l.Others) > 0 {
		parts := make([]string, len(l.Others))
		for i, o := range l.Others {
			parts[i] = quantity.Cells(o.CellsInSeries) + " of " + o.Chemistry
		}
		add("The label can also mean %s; the chemistry printed on the pack decides.", strings.Join(parts, ", or "))
		if len(l.Unread) > 0 {
			add("Not understood on it: %s. Where that names what is inside, it is to be told by itself.", strings.Join(l.Unread, ", "))
		}
	}
	if l.CellsInSeries == 0 {
		add("The label does not tell the number of cells in series; the voltage or the cell count is needed.")
	}
	if w.nickelCadmium {
		add("Nickel-cadmium is computed like nickel-metal hydride, which it resembles.")
	}
	if w.liquidAcid || w.starter {
		add("A battery with liquid acid, or one that starts engines, is computed like a sealed one for everything.")
	}
	if w.wattHours > 0 && w.ampHours > 0 && l.NominalV > 0 {
		if wh := l.NominalV * l.CapacityAh; math.Abs(wh-w.wattHours) > 0.07*wh {
			add("%g Wh is not %g V times %g Ah (%g Wh); the smaller figure is the safer one.", w.wattHours, l.NominalV, l.CapacityAh, tidy(wh))
			l.EnergyWh = min(l.EnergyWh, tidy(wh))
		}
	}
}

// contradiction reports figures that cannot all be true.
func (l *Label) contradiction(w words) error {
	if w.cells > 0 && w.volts > 0 && l.NominalV > 0 {
		if v := w.volts; v < 0.85*l.NominalV || v > 1.05*l.FullV+0.6 {
			return fmt.Errorf("battery: label %q says %d cells in series and %g V, but %d cells of %s are %g V", l.Text, w.cells, v, w.cells, l.Chemistry, l.NominalV)
		}
	}
	if bad := slices.ContainsFunc([]float64{l.CapacityAh, l.EnergyWh, l.NominalV}, func(x float64) bool {
		return math.IsNaN(x) || math.IsInf(x, 0) || x > 1e6
	}); bad {
		return fmt.Errorf("battery: label %q gives figures beyond any pack", l.Text)
	}
	switch ah := l.CapacityAh; {
	case ah > mostAh && w.ampHours > 0:
		return fmt.Errorf("battery: label %q gives %g Ah, which no vehicle could carry; want ampere-hours, such as \"%g V %g Ah\" (%g mAh are %g Ah)", clip(l.Text), w.ampHours, l.printedV(w), w.ampHours/1000, w.ampHours, w.ampHours/1000)
	case ah > mostAh:
		return fmt.Errorf("battery: label %q gives %g Wh, which no vehicle could carry; want watt-hours, such as \"%g V %g Wh\"", clip(l.Text), w.wattHours, l.printedV(w), w.wattHours/1000)
	case ah > 0 && ah < leastAh:
		return fmt.Errorf("battery: label %q gives %g Ah, which drives nothing; want ampere-hours, such as \"%g V 7 Ah\"", clip(l.Text), ah, l.printedV(w))
	}
	return nil
}

// The ampere-hours of a battery for a vehicle lie between: most is what half a dozen car
// batteries hold, least what pack.capacity may be. Own choice.
const leastAh, mostAh = 0.05, 500

// printedV are the volts that the label prints, or those of its cells.
func (l *Label) printedV(w words) float64 { return cmp.Or(w.volts, w.maxV, l.NominalV, 12) }

// tidy rounds to three decimals, so that 5 x 3.6 is 18.
func tidy(x float64) float64 { return math.Round(x*1000) / 1000 }

func clip(s string) string { return quantity.Clip(s, quantity.MostRead) }
