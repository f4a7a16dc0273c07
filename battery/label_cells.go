package battery

import (
	"fmt"
	"math"
	"slices"

	"example.org/packcheck/chemistry"
)

// readings lists what the words can mean, likeliest first, and how sure the
// first is. Without volts or cells there is none.
func (w *words) readings(hint *chemistry.Profile) ([]Reading, Sureness) {
	out, sure := w.ofOneKind(hint)
	if lead := w.lead(); hint == nil && w.leadToo && lead.CellsInSeries > 0 {
		return append(out, lead), Guess
	}
	return out, sure
}

// ofOneKind is readings where one kind of battery is named at most.
func (w *words) ofOneKind(hint *chemistry.Profile) ([]Reading, Sureness) {
	name := w.chemistry
	if hint != nil {
		name = hint.Name
	}
	sure := Stated
	if w.blocksUnclear {
		sure = Guess
	}
	switch {
	case name == "" && w.format != "":
		return w.ofFormat(min(sure, Likely))
	case w.cells > 0:
		if name == "" {
			// "5S2P" is how lithium packs are described; the volts beside it
			// may tell iron phosphate.
			name, sure = "li-ion", Likely
			if phosphateCell(w.volts / float64(w.cells)) {
				name = "lifepo4"
			}
		}
		return []Reading{{name, w.cells}}, sure
	case hint == nil && w.lithium != "":
		out := w.eitherLithium()
		if len(out) != 1 {
			sure = Guess
		}
		return out, min(sure, Likely)
	case name != "":
		cells := w.cellsOf(name, hint)
		if len(cells) == 0 {
			return nil, Guess
		}
		if len(cells) > 1 {
			sure = Guess
		}
		out := make([]Reading, len(cells))
		for i, n := range cells {
			out[i] = Reading{name, n}
		}
		return out, sure
	}
	return w.unnamed()
}

// ofFormat reads a label that tells the size of its cells and not their kind.
func (w *words) ofFormat(sure Sureness) ([]Reading, Sureness) {
	var out []Reading
	for _, name := range w.byFormat() {
		cells := []int{w.cells}
		if w.cells == 0 {
			cells = w.cellsOf(name, nil)
		}
		for _, n := range cells {
			out = append(out, Reading{name, n})
		}
	}
	if len(out) != 1 {
		sure = Guess
	}
	return out, sure
}

// lead reads the volts as those of blocks of lead-acid.
func (w *words) lead() Reading {
	return Reading{"agm", int(math.Round(w.volts/2)) * w.blocksInSeries()}
}

// ofPhosphate reports whether volts are those that iron phosphate is printed
// with, and no other lithium cells.
func ofPhosphate(v float64) bool {
	return v == 3.2 || v == 3.3 || v == 6.4 || v == 12.8 || v == 25.6 || v == 38.4 || v == 51.2
}

// eitherLithium reads a label that says lithium and not which kind. A block of 6,
// 12 or 24 V in place of a lead-acid one mostly is iron phosphate, a tool pack is
// not (common practice, no published source).
func (w *words) eitherLithium() []Reading {
	n, v := w.blocksInSeries(), w.volts
	phosphate := Reading{"lifepo4", int(math.Round(v/3.2)) * n}
	var ion []Reading
	for _, c := range w.cellsOf("li-ion", nil) {
		ion = append(ion, Reading{"li-ion", c})
	}
	switch {
	case w.maxV > 0:
		return ion
	case ofPhosphate(v):
		return []Reading{phosphate}
	case v == 6 || v == 12 || v == 24:
		return append([]Reading{phosphate}, ion...)
	case v == 36 || v == 48:
		return append(ion, Reading{"lifepo4", int(math.Round(v/3)) * n})
	}
	return ion
}

// blocksInSeries is 1 for a single block.
func (w *words) blocksInSeries() int { return max(w.blocks, 1) }

// cellsOf counts the cells in series for a known chemistry; two answers mean
// that the volts can be read in two ways.
func (w *words) cellsOf(name string, hint *chemistry.Profile) []int {
	p, ok := profileOf(name, hint)
	if !ok {
		return nil
	}
	var cells []int
	add := func(v, perCell float64) {
		// A quarter of a volt lets "52 V" be 14 x 3.7 and keeps "56 V", which
		// is 14 x 4.0, from being 15 x 3.7.
		if r := math.Round(v / perCell); r >= 1 && math.Abs(v-r*perCell) <= 0.25 && !slices.Contains(cells, int(r)*w.blocksInSeries()) {
			cells = append(cells, int(r)*w.blocksInSeries())
		}
	}
	nominal, highest := w.volts, w.maxV
	switch p.Family {
	case chemistry.Lithium:
		if p.NominalV > 3.45 {
			if highest > 0 { // "20 V max" counts 4.0 V a cell; 4.2 V is the true top
				add(highest, 4.0)
				add(highest, 4.2)
			}
			if len(cells) == 0 && nominal > 0 {
				add(nominal, 3.6)
				add(nominal, 3.7)
				if len(cells) == 0 {
					add(nominal, 4.0)
					add(nominal, 4.2)
				}
			}
			cells = cells[:min(len(cells), 2)]
		} else {
			add(max(nominal, highest), p.NominalV)
			if len(cells) == 0 { // "12 V" for 12.8 V
				add(nominal, 3.0)
			}
			if len(cells) == 0 {
				add(max(nominal, highest), 3.65)
			}
		}
	default:
		if nominal == 0 {
			nominal = highest
		}
		add(nominal, p.NominalV)
	}
	if len(cells) == 0 && max(nominal, highest) > 0 {
		if n := int(math.Round(max(nominal, 0) / p.NominalV)); n > 0 {
			cells = append(cells, n*w.blocksInSeries())
		}
	}
	return cells
}

// unnamed reads volts of which the chemistry is not said, by what is sold
// under such labels (common practice, no published source).
func (w *words) unnamed() ([]Reading, Sureness) {
	n, lead := w.blocksInSeries(), w.lead()
	if w.maxV > 0 {
		cells := w.cellsOf("li-ion", nil)
		if len(cells) == 0 {
			return nil, Guess
		}
		return []Reading{{"li-ion", cells[0]}}, Likely
	}
	if w.volts == 0 {
		return nil, Guess
	}
	unclear := Likely
	if w.blocksUnclear {
		unclear = Guess
	}
	switch v := w.volts; {
	case ofPhosphate(v):
		return []Reading{{"lifepo4", int(math.Round(v/3.2)) * n}}, Likely
	case w.rateHours >= 10: // only lead-acid is rated over ten or twenty hours
		return []Reading{lead}, unclear
	case v == 12 && w.ampHours > 0 && w.ampHours < 4:
		return []Reading{lead, {"li-ion", 3 * n}, {"nimh", 10 * n}}, Guess
	case v == 6 || v == 12 || v == 8 && w.ampHours > 10:
		if len(w.unread) > 0 { // which may be the name of what is inside
			return w.besideLead(lead), Guess
		}
		return []Reading{lead}, unclear
	case v == 24 || v == 48:
		// Two or four blocks in a vehicle; a tool pack of 24 V has six cells.
		return []Reading{lead, {"li-ion", int(math.Round(v/4)) * n}, {"lifepo4", int(math.Round(v/3)) * n}}, Guess
	case v == 18 || v == 14.4 || v == 7.2:
		// Nickel packs of the same volts were sold for years.
		return []Reading{{"li-ion", int(math.Round(v/3.6)) * n}, {"nimh", int(math.Round(v/1.2)) * n}}, map[bool]Sureness{true: Likely, false: Guess}[v == 18]
	case v == 9.6 || v == 4.8 || v == 8.4 || v == 13.2 || v == 15.6:
		return []Reading{{"nimh", int(math.Round(v/1.2)) * n}}, Likely
	case v == 36:
		return []Reading{{"li-ion", 10 * n}, lead}, Guess
	}
	cells := w.cellsOf("li-ion", nil)
	if len(cells) == 0 {
		return nil, Guess
	}
	out := make([]Reading, len(cells))
	for i, c := range cells {
		out[i] = Reading{"li-ion", c}
	}
	if len(out) > 1 {
		return out, Guess
	}
	return out, Likely
}

// besideLead lists what else is sold with the volts of a lead-acid block.
func (w *words) besideLead(lead Reading) []Reading {
	n, v := w.blocksInSeries(), w.volts
	out := []Reading{lead}
	for _, kind := range []struct {
		name  string
		cellV float64
	}{{"lifepo4", 3}, {"li-ion", 4}, {"nimh", 1.2}} {
		if cells := math.Round(v / kind.cellV); math.Abs(v-cells*kind.cellV) < 0.01 {
			out = append(out, Reading{kind.name, int(cells) * n})
		}
	}
	return out
}

// leadCells are the cells that blocks of lead-acid and banks of few of them are sold with
// (common practice, no published source).
var leadCells = [...]int{1, 2, 3, 4, 6, 12, 18, 24}

// Between what a cell of lead-acid stands while it is charged: makers print 2.23 to 2.30 V
// for float and 2.40 to 2.50 V for cycle use (source "end-volts-three-makers" of package
// charge), chargers for the cold and those that equalise go to 2.65 V (from memory), and it
// rests full at 2.1 V and more. Own choice of the lower one, so that no reading between is
// counted as a cell more.
const leastChargedV, mostChargedV = 2.05, 2.65

// chargingVolts is an error where volts that a block of lead-acid is charged with would be
// read as those of one with more cells: its charger would be one that overcharges the block.
func (w *words) chargingVolts(readings []Reading, hint *chemistry.Profile) error {
	if w.cells > 0 || len(readings) == 0 {
		return nil
	}
	if hint == nil && w.chemistry == "" && w.lithium == "" && w.maxV == 0 && readings[0].Chemistry == "li-ion" {
		return w.chargingVoltsUnnamed()
	}
	p, ok := profileOf(readings[0].Chemistry, hint)
	if !ok || p.Family != chemistry.LeadAcid {
		return nil
	}
	v := w.volts
	if v == 0 && w.maxV > 0 {
		return fmt.Errorf("gives %g V as the most of lead-acid, which is printed with its nominal volts; want these, such as \"12 V 7 Ah\"", w.maxV)
	}
	cells := int(math.Round(v / 2))
	sold := slices.Contains(leadCells[:], cells) || cells%6 == 0
	if sold && math.Abs(v-2*float64(cells)) <= 0.25 {
		return nil
	}
	for _, n := range slices.Backward(leadCells[:]) {
		if cellV := v / float64(n); n < cells && cellV >= leastChargedV && cellV <= mostChargedV*(1+1e-9) {
			return fmt.Errorf("gives %g V for lead-acid, which a block of %d V has on its charger; want the nominal volts: \"%d V\", if these are its charging volts, and otherwise \"%dS\" beside them", v, 2*n, 2*n, cells)
		}
	}
	return nil
}

// leastFloatV is where makers' float volts of a cell of lead-acid begin (as above).
const leastFloatV = 2.23

// chargingVoltsUnnamed is the same for a label that names no kind: volts that a block of 6,
// 12 or 24 V floats at, and that no count of lithium-ion cells has, would get a charger for
// such cells.
func (w *words) chargingVoltsUnnamed() error {
	for _, perCell := range []float64{3.6, 3.7, 4.0, 4.2} { // as cellsOf counts them
		if math.Abs(w.volts-perCell*math.Round(w.volts/perCell)) <= 0.25 {
			return nil
		}
	}
	for _, n := range []int{3, 6, 12} {
		if cellV := w.volts / float64(n); cellV >= leastFloatV && cellV <= mostChargedV {
			return fmt.Errorf("gives %g V, which a lead-acid block of %d V has on its charger, and names no kind of battery; want the nominal volts, such as \"%d V\", or the kind printed on it, such as \"%g V Li-ion\"", w.volts, 2*n, 2*n, w.volts)
		}
	}
	return nil
}
