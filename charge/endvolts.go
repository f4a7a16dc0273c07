package charge

import (
	"fmt"
	"math"
	"strings"

	"example.org/packcheck/internal/quantity"
)

// Readings of a printed voltage.
const (
	// lithiumCellV is what a lithium-ion charger holds per cell, 4.20 V with
	// 1 % either way (source "lithium-cc-cv").
	lithiumCellV, lithiumBand = 4.20, 0.01
	// phosphateCellV is the same for lithium iron phosphate (source
	// "phosphate-cell-sheet"); the band is taken over from lithium-ion. Chargers for its
	// blocks are made from phosphateLeastV on, 14.4 V for four cells: common practice, no
	// published source.
	phosphateLeastV, phosphateCellV = 3.60, 3.65
	// leadCycle and leadFloat are the windows per cell at 25 degC that makers
	// print (source "lead-charge-windows"): 14.4 to 15.0 V and 13.4 to 13.9 V
	// per block of six. Of gel the least is 14.1 V: from memory, no published source.
	leadCycleLeastV, leadCycleMostV = 14.1 / 6, 15.0 / 6
	leadFloatLeastV, leadFloatMostV = 13.4 / 6, 13.9 / 6
	// plainAdaptor is how far the voltage of a plain transformer adaptor can
	// rise above its label as the current falls (source "plain-adaptor").
	plainAdaptor = 1.5
	// supplyBand is how closely a regulated supply holds its volts (source
	// "supply-band").
	supplyBand = 0.05
	// heldBand is what is allowed either side of a printed charging voltage
	// of a lead-acid or nickel charger (source "supply-band", narrower end).
	heldBand = 0.02
	// roundedUpV and roundedTenthV are how far whole volts, and such with a fraction,
	// that are printed on a lithium charger may lie above those that it ends at:
	// 12.6 V is printed as 13 V, too. Own choice.
	roundedUpV, roundedTenthV = 1.0, 0.1
	// mostCells bounds the search for a number of cells; sixteen lithium
	// cells already are past every vehicle that this is about.
	mostCells = 20
)

// Charger reads a label as a charger: above all what voltage it will let the
// pack rise to. The printed volts of a charger made for lithium are its end
// voltage when they are a whole number of cells. The printed volts of a plain
// adaptor ("12 V") are not: they are the volts at its full current, and it
// rises well above them as the battery fills, so the end voltage is a range.
// SuppliedWithPack, TimerH and FloatV are left for the caller; so is everything
// the label does not say.
func (l Label) Charger() Charger {
	c := Charger{
		MadeFor: l.MadeFor, PrintedV: l.PrintedV, CurrentA: l.PrintedA,
		Output: l.Output, Polarity: l.Polarity, Stops: l.Stops,
	}
	if l.PrintedV == 0 {
		c.WhyEnd = "The label prints no volts."
		return c
	}
	v := l.PrintedV
	switch l.MadeFor {
	case ForLithiumIon:
		c.wholeCells(v, lithiumCellV, lithiumCellV, "lithium-cc-cv")
	case ForLithiumIronPhosphate:
		c.wholeCells(v, phosphateLeastV, phosphateCellV, "phosphate-cell-sheet")
	case PowerSupply:
		c.held(v, supplyBand, "supply-band", "A power supply holds its printed volts.")
	case ForLeadAcid:
		c.leadVolts(v)
	case ForNickel:
		c.adaptor(v)
	default:
		c.unknownVolts(v)
	}
	return c
}

// held sets a regulated end voltage.
func (c *Charger) held(v, band float64, source, why string) {
	c.EndLeastV, c.EndMostV = v*(1-band), v*(1+band)
	c.Regulated, c.EndSource, c.WhyEnd = true, source, why
}

// cellsAt returns the number of cells that v is a whole multiple of, within
// half a hundredth of it, 0 when it is none.
func cellsAt(v, cellV float64) int { return cellsBetween(v, cellV, cellV) }

// cellsBetween is the same where each cell may have some volts.
func cellsBetween(v, leastV, mostV float64) int {
	n := math.Round(v / mostV)
	if n < 1 || n > mostCells || v < n*leastV-0.005*v || v > n*mostV+0.005*v {
		return 0
	}
	return int(n)
}

// wholeCells reads the volts of a lithium charger, which holds its cells at cellV or,
// where makers differ, at no less than leastV.
func (c *Charger) wholeCells(v, leastV, cellV float64, source string) {
	n := cellsBetween(v, leastV, cellV)
	if n == 0 {
		c.EndSource, c.EndLeastV = source, max(v-roundedTenthV, 0)
		if v == math.Trunc(v) {
			c.EndLeastV = v - roundedUpV
		}
		c.WhyEnd = fmt.Sprintf("%g V is no whole number of cells at %.2f V: the label gives the pack's nominal volts, not what the charger rises to.", v, cellV)
		return
	}
	c.held(v, lithiumBand, source, fmt.Sprintf("%g V is %s at %.2f V.", v, quantity.Cells(n), v/float64(n)))
}

// leadCells are the cells in series of what is charged as one: blocks of 6 and 12 V, and
// strings of them up to 48 V. Nobody makes 30 V, whose charging volts are the name of 36 V.
// Common practice, no published source.
func leadCells() [6]int { return [...]int{3, 6, 9, 12, 18, 24} }

// leadBlocks returns how many cells a lead-acid charging voltage belongs to (3
// for a 6 V block, 6, 12, ...), 0 when it lies in no window.
func leadBlocks(v, leastV, mostV float64) int {
	for _, n := range leadCells() {
		if v >= leastV*float64(n)-1e-9 && v <= mostV*float64(n)+1e-9 {
			return n
		}
	}
	return 0
}

// leadVolts reads the volts of a lead-acid charger.
func (c *Charger) leadVolts(v float64) {
	if n := leadBlocks(v, leadCycleLeastV, leadCycleMostV); n > 0 {
		c.held(v, heldBand, "lead-charge-windows", fmt.Sprintf("%g V is a charging voltage of %d V lead-acid.", v, 2*n))
		return
	}
	if n := leadBlocks(v, leadFloatLeastV, leadFloatMostV); n > 0 {
		c.held(v, heldBand, "lead-charge-windows", fmt.Sprintf("%g V is a float voltage of %d V lead-acid.", v, 2*n))
		return
	}
	c.adaptor(v)
}

// adaptor reads the volts of a plain wall adaptor.
func (c *Charger) adaptor(v float64) {
	c.EndLeastV, c.EndMostV = v, v*plainAdaptor
	c.EndSource = "plain-adaptor"
	c.WhyEnd = fmt.Sprintf("%g V is not an end voltage: an adaptor printed %g V can rise to about %.3g V when the battery is full.", v, v, v*plainAdaptor)
}

// unknownVolts reads the volts of a charger that does not say what it is for.
// What kind it is stays unknown; only how firmly its volts are held is
// guessed, and towards the higher end.
func (c *Charger) unknownVolts(v float64) {
	switch {
	case cellsAt(v, lithiumCellV) > 0 && fractional(v):
		c.held(v, heldBand, "lithium-cc-cv", fmt.Sprintf("%g V would be %d lithium-ion cells at 4.20 V, but the label does not say so.", v, cellsAt(v, lithiumCellV)))
	case cellsAt(v, phosphateCellV) > 0 && fractional(v),
		leadBlocks(v, leadCycleLeastV, leadCycleMostV) > 0 && fractional(v):
		c.held(v, heldBand, "lead-charge-windows", fmt.Sprintf("%g V is printed on lead-acid and on lithium iron phosphate chargers alike; the label does not say which.", v))
	default:
		c.adaptor(v)
	}
}

// fractional reports whether v is unlike the round volts of plain adaptors: 21
// and 42 V count, since no common adaptor prints them.
func fractional(v float64) bool {
	return v != math.Trunc(v) || math.Mod(v, 21) == 0
}

// looksLikeLaptop reports whether volts are those of common laptop supplies
// (source "laptop-volts").
func looksLikeLaptop(v float64) bool { return v >= 18.4 && v <= 20.1 }

// PurposeNamed returns the purpose that a setup file's word stands for: the
// name of a chemistry ("agm", "gel", "li-ion", "lifepo4", "nimh"), its plain
// name ("lead-acid", "lithium-ion") or "power supply"; ok is false for any
// other word. Letter case and spaces around it do not count.
func PurposeNamed(word string) (p Purpose, ok bool) {
	switch strings.ToLower(strings.TrimSpace(word)) {
	case "agm", "gel", "lead-acid", "lead acid", "sealed lead-acid", "sla", "vrla":
		return ForLeadAcid, true
	case "li-ion", "lithium-ion", "lithium ion":
		return ForLithiumIon, true
	case "lifepo4", "lfp", "lithium iron phosphate":
		return ForLithiumIronPhosphate, true
	case "nimh", "ni-mh", "nickel-metal hydride":
		return ForNickel, true
	case "power supply", "laptop":
		return PowerSupply, true
	}
	return PurposeUnknown, false
}
