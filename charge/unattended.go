package charge

import (
	"fmt"

	"example.org/packcheck/answer"
	"example.org/packcheck/chemistry"
)

// Constants of overcharge.
const (
	// waterGPerAh is what one ampere-hour of overcharge splits in each
	// lead-acid cell (source "faraday-water").
	waterGPerAh = 18.015 / (2 * 96485) * 3600
	// acidGPerAh is about how much water a sealed cell holds per Ah of rated
	// capacity (source "float-residual", from memory); a tenth of it lost is
	// taken as the end of the battery.
	acidGPerAh, dryShare = 8.0, 0.10
	// The current that a full battery goes on taking (source "float-residual")
	// is that of the profile's acceptance, uncertain by residualBand either way.
	residualBand = 3.0
	// Of the water that is split a sealed cell turns most back while it is
	// held at float volts, perhaps half at cycle volts, and none of it under
	// the current of an adaptor that does not hold its volts (source
	// "float-residual").
	ventedOnFloat, ventedOnCycle = 0.05, 0.5
	floatRoom                    = 1.02 // of the profile's float voltage
)

// Left is what has happened to a pack that was left on the charger.
type Left struct {
	After             string  // "one night", "one week", "one month"
	Hours             float64 // from plugging in
	Full              bool    // it was full within these hours
	OverLeastAh       float64 // charge pushed through the full pack, at least
	OverMostAh        float64 // and at most
	WaterMostGPerCell float64 // lead-acid: water lost per cell, at most
	Words             string  // what that means
	Level             answer.Level
}

// Unattended tells what happens to a pack that is plugged in and forgotten for
// a night (12 h), a week and a month, given the charge computed for it. A
// charger that stops by itself leaves nothing but its float current. For
// lithium there are no ampere-hours that would be safe, and the words say so.
func Unattended(c Case, out Outcome) []Left {
	if c.check() != nil {
		return nil
	}
	spans := []Left{
		{After: "one night", Hours: 12},
		{After: "one week", Hours: 7 * 24},
		{After: "one month", Hours: 30 * 24},
	}
	least, most := c.residual(out)
	for i := range spans {
		l := &spans[i]
		over := max(0, l.Hours-out.BareFullH)
		l.Full = out.Full && l.Hours >= out.BareFullH
		if !l.Full {
			over = 0
		}
		if c.Stops == StopsByTimer && c.TimerH > 0 {
			over = min(over, max(0, c.TimerH-out.BareFullH))
		}
		l.OverLeastAh, l.OverMostAh = least*over, most*over
		c.words(l)
	}
	return spans
}

// residual bounds the current that goes on flowing when the pack is full.
func (c *Case) residual(out Outcome) (leastA, mostA float64) {
	if c.Stops == StopsByItself || !out.Full {
		return 0, 0
	}
	spec := c.Pack.Spec()
	n := float64(spec.CellsInSeries)
	if spec.Profile.Family == chemistry.LeadAcid && c.DroopOhm == 0 {
		a := spec.Profile.Acceptance.GasA(c.EndV/n, c.AmbientC, c.Pack.RatedAh())
		return min(a/residualBand, c.CurrentA), min(a*residualBand, c.CurrentA)
	}
	if c.DroopOhm > 0 {
		// A plain adaptor pushes what its volts leave above those of the
		// gassing battery, whose cells stand no higher than their limit
		// allows by a tenth.
		atV := spec.Profile.Charge.CellMaxV * n
		a := min(max(0, (c.EndV-atV)/c.DroopOhm), c.CurrentA)
		return a * 0.5, min(max(a, (c.EndV-atV/1.1)/c.DroopOhm), c.CurrentA)
	}
	return 0, min(out.EndA, c.CurrentA)
}

// vented returns the share of the split water that is lost.
func (c *Case) vented() float64 {
	spec := c.Pack.Spec()
	switch perCell := c.EndV / float64(spec.CellsInSeries); {
	case c.DroopOhm > 0:
		return 1
	case perCell <= floatRoom*spec.Profile.Charge.FloatV:
		return ventedOnFloat
	}
	return ventedOnCycle
}

// words says what the time on the charger has done.
func (c *Case) words(l *Left) {
	p := c.Pack.Spec().Profile
	switch {
	case c.Stops == StopsByItself:
		l.Words = "The charger has ended the charge; unplug it all the same."
		if p.Family == chemistry.Lithium {
			l.Words = "The charger has ended the charge; do not leave a lithium pack on it all the same."
			l.Level = answer.Watch
		}
	case p.Family == chemistry.Lithium:
		l.Level = answer.Danger
		l.Words = "Danger of fire: lithium must not stay on a charger that does not stop."
	case !l.Full:
		l.Words = "It is not yet full."
	case p.Family == chemistry.LeadAcid:
		l.WaterMostGPerCell = l.OverMostAh * waterGPerAh * c.vented()
		l.Level, l.Words = c.waterWords(l.WaterMostGPerCell)
	default:
		l.Level, l.Words = answer.Watch, "It is warm and losing life."
		if l.OverMostAh > 2*c.Pack.RatedAh() {
			l.Level, l.Words = answer.FixFirst, "It has been overcharged for long: heat, gas and lost capacity."
		}
	}
}

// waterWords puts a loss of water into words.
func (c *Case) waterWords(perCellG float64) (answer.Level, string) {
	share := perCellG / (acidGPerAh * c.Pack.RatedAh())
	switch {
	case share < 0.005:
		return answer.Fine, "No harm."
	case share < dryShare/4:
		return answer.Watch, "Some gas is lost through the valves; do not make it a habit."
	case share < dryShare:
		return answer.FixFirst, fmt.Sprintf("It gasses: up to %.0f %% of its water is gone and does not come back.", share*100)
	default:
		return answer.Danger, "It may be gassed dry and hot: a swollen case, acid mist and gas that burns."
	}
}
