package cutoff

import (
	"fmt"
	"math"

	"example.org/packcheck/answer"
	"example.org/packcheck/chemistry"
	"example.org/packcheck/internal/quantity"
)

// Codes of the findings on a chain's settings by themselves.
const (
	CodeNone      = "cutoff-none"       // nothing disconnects the pack
	CodeBelowHarm = "cutoff-below-harm" // opens when the cells are already harmed
	CodeAboveFull = "cutoff-above-full" // made for a pack of more volts
)

// Judge says what is wrong with the chain's settings for this pack by
// themselves: nothing there, opening too low for the cells, closing where the
// rested pack may come back to.
func Judge(c Case) ([]answer.Finding, error) {
	if err := c.check(); err != nil {
		return nil, err
	}
	if c.Chain.Len() == 0 {
		return []answer.Finding{c.none()}, nil
	}
	return c.settings(), nil
}

// harmV returns the harm limit of the whole pack under the running load.
func (c *Case) harmV() float64 {
	spec := c.Pack.Spec()
	_, harm := endUnderLoad(spec.Profile, c.LoadA/c.Pack.RatedAh())
	return harm * float64(spec.CellsInSeries)
}

// none judges a pack that nothing disconnects: lithium of which nobody
// described a cutoff counts as having none.
func (c *Case) none() answer.Finding {
	p := c.Pack.Spec().Profile
	f := onCutoff(answer.Finding{
		Code: CodeNone, Gravity: 1, Unit: "V", Limit: c.harmV(), Want: answer.Above, Reads: answer.AsNone, Source: p.LadderSource,
		Title:  "Nothing disconnects the pack before it drains to ruin.",
		Advice: "Fit a low-voltage cutoff.",
		Change: answer.FitCutoff, Habit: answer.HabitPackOff, Decides: []string{answer.KeyPackChemistry},
	})
	const phosphateV = 3.4 // no cell of a tool pack has less; iron phosphate has
	switch {
	case p.Family == chemistry.Lithium && p.NominalV > phosphateV:
		f.Advice = "Fit a low-voltage cutoff; a tool pack's own protection often sits in the tool, not in the pack."
	case p.Family == chemistry.LeadAcid:
		f.Advice = "Fit a low-voltage cutoff; without one stop as soon as it grows slow: lead that stands empty is ruined."
	}
	f.Level, f.Harm = ruin(p)
	if c.MayWatch {
		f.Title = "Nobody told whether the battery switches itself off before it drains to ruin: most of its kind do."
		f.Advice = "Read the battery's sheet or ask its maker whether it watches every cell and switches itself off. If not, use another: a low-voltage cutoff alone does not see a weak cell."
	}
	switch {
	case c.AsSold && p.Family == chemistry.LeadAcid: // it has lived so, and a cutoff saves a block, no child
		f.Level, f.Charging = answer.Watch, true
		f.Title = "Nothing ends the ride before the battery is drained to ruin: stop when it grows slow, and charge it after every ride."
		f.Advice = "Stop as soon as it grows slow, and charge it after every ride: lead that stands empty is ruined. It is sold without a cutoff; one would end the ride in time."
	case c.Watched:
		f.Level, f.Harm = answer.Watch, answer.Wear
		f.Title = "Nothing in the pack protects it; only whoever ends the load at the voltage asked for does."
		f.Advice = "Stay with it, or use a load that switches itself off."
	}
	return f
}

// settings judges the device that opens at the highest pack voltage.
func (c *Case) settings() []answer.Finding {
	m := c.Pack
	p := m.Spec().Profile
	highest, packs, where := 0.0, 1.0, Pack
	for i := range c.Chain.Len() {
		d := c.Chain.At(i)
		seen := d.OpensAtV
		if d.Where == Controller {
			seen += c.LoadA * c.PathOhm
		}
		if seen > highest {
			highest, packs, where = seen, float64(max(d.Packs, 1)), d.Where
		}
	}
	each := "for this pack"
	if packs > 1 {
		each = "in each pack"
	}
	f := onCutoff(answer.Finding{
		Unit: "V", Found: highest / packs, Source: p.LadderSource, Change: answer.FitCutoff, Added: true,
		Decides: []string{keysOf(where).opensAt, answer.KeyPackChemistry},
	})
	harm, full := c.harmV(), m.FullV()
	switch {
	case highest < harm-packHairV:
		f.Code, f.Gravity, f.Limit, f.Want = CodeBelowHarm, 1, harm/packs, answer.Above
		f.Level, f.Harm = ruin(p)
		f.Title = "The cutoff opens too late: every cell is below its harm limit by then."
		f.Advice = fmt.Sprintf("Set it to at least %s %s.", volts(math.Ceil(m.EndV(c.LoadA)/packs*10)/10), each)
	case highest > nearFull*full:
		f.Code, f.Limit = CodeAboveFull, nearFull*full/packs
		f.Level, f.Harm = answer.FixFirst, answer.Part
		f.Title = "The cutoff opens at the volts of a full pack or above: it was made for another pack."
		f.Advice = "Set it for this pack's cells, or use one for this voltage."
	default:
		return nil
	}
	return []answer.Finding{f}
}

// volts prints volts in a sentence as reports print those of a finding.
func volts(v float64) string { return quantity.Said(quantity.Voltage, v) }
