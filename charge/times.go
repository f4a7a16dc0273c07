package charge

import (
	"fmt"
	"math"

	"example.org/packcheck/answer"
	"example.org/packcheck/chemistry"
)

// Codes of the findings on a computed charge.
const (
	CodeNeverFull = "charge-never-full" // it ends before the pack is full
	CodeHeatsPack = "charge-heats-pack" // the cells get too hot on the way
)

// heatHairK is half the degree to which computed temperatures are told.
const heatHairK = 0.5

// What makers print for sealed lead-acid (source "lead-acceptance"): from half
// charge it takes 10/16 of the hours from empty. The straight line through the
// two leaves a quarter of the hours for the very last of the charge.
const (
	leadHoursAtHalf = 10.0 / 16.0
	leadHoursAtFull = 2*leadHoursAtHalf - 1
)

// lateShare is how much later than likely a charge may end before something is
// wrong with pack or charger; the makers' own hours are held to 25 % in the
// tests (source "common-charging").
const lateShare = 1.25

// How far measured lithium charges lie from the computed ones (source
// "lithium-charge-hours"). What makers print are bounds, which no measured charge
// came near: they say when to pull the plug, not how long it takes.
const (
	soonFull, lateFull = 0.85, 1.33
	soon80, late80     = 0.93, 1.10
)

// printedHours returns the hours to full that makers of such cells print for
// this charger's current, scaled to a pack that starts at the given charge; 0
// when the profile has none. simFromEmptyH is the computed time from empty at
// the same current, simH that of this case.
func (c *Case) printedHours(from, simH, simFromEmptyH float64) float64 {
	p := c.Pack.Spec().Profile
	if p.Charge.FullHoursByC.Empty() {
		return 0
	}
	rate := c.CurrentA / c.Pack.RatedAh()
	least := p.Charge.FullHoursByC.X[0]
	hours := p.Charge.FullHoursByC.At(max(rate, least))
	if rate < least {
		hours *= least / rate
	}
	if p.Family == chemistry.LeadAcid {
		return hours * (leadHoursAtFull + (1-leadHoursAtFull)*(1-from))
	}
	if simFromEmptyH <= 0 {
		return hours
	}
	return hours * simH / simFromEmptyH
}

// promise fills in the times that may be told to somebody.
func (c *Case) promise(out *Outcome, from, sim80H, simH float64) {
	simFromEmptyH := simH
	p := c.Pack.Spec().Profile
	if p.Family != chemistry.LeadAcid && from > 0 && !p.Charge.FullHoursByC.Empty() {
		empty := *c
		empty.Start = c.Pack.StateAt(0, c.Start.TempC)
		simFromEmptyH = empty.bareHours()
	}
	printed := c.printedHours(from, simH, simFromEmptyH)
	out.BareFullH = simH
	if !math.IsNaN(sim80H) {
		out.Bare80H = sim80H
	}
	if p.Family == chemistry.Lithium {
		out.HoursToFull = Span{soonFull * simH, simH, lateFull * simH}
		out.HoursTo80 = Span{soon80 * out.Bare80H, out.Bare80H, late80 * out.Bare80H}
		c.unplug(out, max(simH, printed), max(lateFull*simH, printed))
		return
	}
	likely := max(simH, printed)
	out.HoursToFull = Span{simH, likely, lateShare * likely}
	if !math.IsNaN(sim80H) && sim80H > 0 && simH > 0 {
		// At constant current the hours are a matter of counting; what makers
		// print beyond the computation belongs to the tail.
		to80 := sim80H
		if tailH := simH - out.CCHours; sim80H > out.CCHours && tailH > 0 {
			to80 = out.CCHours + (sim80H-out.CCHours)*(likely-out.CCHours)/tailH
		}
		out.HoursTo80 = Span{sim80H, to80, max(lateShare*to80, sim80H*likely/simH)}
	}
	c.unplug(out, likely, out.HoursToFull.MostH)
}

// unplug says when the charger must be off: what is over and done with by
// itself may go on for mostH.
func (c *Case) unplug(out *Outcome, likelyH, mostH float64) {
	switch {
	case c.Stops == StopsByItself:
		out.UnplugH = mostH
	case c.Stops == StopsByTimer && c.TimerH > 0:
		out.UnplugH = min(c.TimerH, mostH)
	default:
		out.UnplugH = likelyH
	}
}

// bareHours is the computed time to full alone; 0 where the charge ends before, as it
// does where a cell that was only measured while it was emptied resists far more near
// empty than one that is filled.
func (c *Case) bareHours() float64 {
	r := start(c)
	endA := c.endA()
	for r.hours < mostHours && r.m.Charge(r.s) < 1 {
		if r.step() && r.amps <= endA {
			break
		}
	}
	if r.m.Charge(r.s) < fullEnough {
		return 0
	}
	return r.hours
}

// timeFindings says what stands out about the times of a charge.
func (c *Case) timeFindings(out Outcome) []answer.Finding {
	p := c.Pack.Spec().Profile
	var fs []answer.Finding
	if !out.Full {
		title := "This charger never gets the pack full."
		if out.GivenUp {
			title = fmt.Sprintf("This charger takes longer than %.0f days to get the pack full, if it ever does.", mostHours/24)
		}
		fs = append(fs, answer.Finding{
			Code: CodeNeverFull, Level: answer.Watch, Harm: answer.Wear, Topic: answer.TopicCharge, Item: answer.Charger,
			Unit: "share", Found: out.ChargeAtEnd, Limit: 1, Want: answer.Above, Source: p.Charge.Source,
			Title:  title,
			Advice: "Use a charger with the end voltage and current that the pack's maker gives.",
			Change: answer.FitCharger, Decides: append(decidesVolts(), answer.KeyChargerCurrent),
		})
	}
	if out.PeakC > p.Charge.MaxTempC+heatHairK {
		fs = append(fs, answer.Finding{
			Code: CodeHeatsPack, Level: answer.FixFirst, Harm: answer.Part, Topic: answer.TopicCharge, Item: answer.Battery,
			Unit: "degC", Found: out.PeakC, Limit: p.Charge.MaxTempC, Source: p.Charge.Source,
			Title:   "The pack grows too hot while it charges.",
			Advice:  "Charge with less current, in a cooler place, after the pack has cooled from the ride.",
			Decides: []string{answer.KeyChargerLabel, answer.KeyChargerCurrent, answer.KeyOutingChargedAt, answer.KeyPackChemistry},
		})
	}
	return fs
}
