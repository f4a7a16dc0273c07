package charge

import (
	"fmt"
	"math"

	"example.org/packcheck/battery"
	"example.org/packcheck/chemistry"
	"example.org/packcheck/answer"
)

// Makers of sealed lead-acid batteries print that between these temperatures
// the end voltage need not follow the temperature (source
// "lead-charge-windows").
const noCompensationFromC, noCompensationToC = 15.0, 35.0

// referenceC is the temperature at which charging voltages are printed.
const referenceC = 25.0

// Gate is what a cell temperature allows.
type Gate struct {
	Open           bool    // charging is allowed at all
	TooCold        bool    // closed because it is too cold
	TooHot         bool    // closed because it is too hot
	CurrentShare   float64 // greatest current over the chemistry's greatest, 0..1
	WantedVPerCell float64 // end voltage at this temperature
	MostVPerCell   float64 // never above
	FloatVPerCell  float64 // may be held for good; 0 = must not be floated
	Source         string  // ID of the source
}

// GateAt returns what charging is allowed for cells of this chemistry at
// cellC, the temperature of the cells and not of the room. Limits and voltage
// coefficients are those of the profile.
func GateAt(p chemistry.Profile, cellC float64) Gate {
	lim := p.Charge
	g := Gate{
		Open: true, CurrentShare: 1,
		WantedVPerCell: lim.CellV + lim.VPerK*(cellC-referenceC),
		MostVPerCell:   lim.CellMaxV,
		Source:         lim.Source,
	}
	if cellC > noCompensationToC || cellC < noCompensationFromC {
		g.MostVPerCell += lim.VPerK * (cellC - referenceC)
	}
	if lim.FloatV > 0 {
		g.FloatVPerCell = lim.FloatV + lim.FloatVPerK*(cellC-referenceC)
	}
	if lim.HotCellV > 0 && cellC >= lim.HotAboveC {
		g.MostVPerCell = min(g.MostVPerCell, lim.HotCellV)
		g.WantedVPerCell = min(g.WantedVPerCell, lim.HotCellV)
	}
	if lim.ReducedShare > 0 && cellC < lim.ReducedBelowC {
		g.CurrentShare = lim.ReducedShare
	}
	// Anything that is not a number closes the gate.
	g.TooCold = !(cellC > lim.MinTempC)
	g.TooHot = !g.TooCold && !(cellC < lim.MaxTempC)
	if g.TooCold || g.TooHot {
		g.Open, g.CurrentShare = false, 0
	}
	return g
}

// Wait is how long a pack must stand before it may be charged.
type Wait struct {
	OpenMin   float64 // minutes until charging is allowed at all; 0 = now
	FullMin   float64 // minutes until it is allowed at full current; 0 = now
	Never     bool    // the surroundings themselves are too cold or too hot
	NeverFull bool    // the surroundings never allow the full current
	Findings  []answer.Finding
}

// The search for the end of a wait: steps of a minute, given up after two days
// in which any pack has long taken the temperature of its surroundings.
const (
	waitStepS = 60.0
	waitSteps = 2 * 24 * 60
)

// WaitFor follows the temperature of a resting pack from cellC towards
// ambientC with the pack's own thermal model and returns how long it must
// stand before charging, hot from the ride or cold from the shed. The core of
// a large pack lags behind the one temperature of the model; the times are
// therefore the least, and the finding says so.
func WaitFor(m *battery.Model, cellC, ambientC float64) Wait {
	p := m.Spec().Profile
	var w Wait
	now := GateAt(p, cellC)
	there := GateAt(p, ambientC)
	w.Never, w.NeverFull = !there.Open, there.CurrentShare < 1
	if math.IsNaN(cellC) {
		w.Never, w.NeverFull = true, true // no telling when
	}
	if !w.Never && !now.Open {
		w.OpenMin = minutesUntil(m, cellC, ambientC, func(g Gate) bool { return g.Open })
	}
	if !w.NeverFull && now.CurrentShare < 1 {
		w.FullMin = minutesUntil(m, cellC, ambientC, func(g Gate) bool { return g.CurrentShare == 1 })
	}
	w.Findings = waitFindings(p, w, now, cellC, ambientC)
	return w
}

// minutesUntil returns the first whole minute at which ok holds.
func minutesUntil(m *battery.Model, cellC, ambientC float64, ok func(Gate) bool) float64 {
	s := m.StateAt(0.5, cellC)
	step := m.Over(waitStepS)
	p := m.Spec().Profile
	for i := range waitSteps {
		if ok(GateAt(p, s.TempC)) {
			return float64(i) * waitStepS / 60
		}
		step.Advance(&s, 0, ambientC)
	}
	return waitSteps * waitStepS / 60
}

// waitFindings puts a wait into words.
func waitFindings(p chemistry.Profile, w Wait, now Gate, cellC, ambientC float64) []answer.Finding {
	level := answer.FixFirst
	if p.Family == chemistry.Lithium {
		level = answer.Danger
	}
	var out []answer.Finding
	switch {
	case now.TooCold:
		f := answer.Finding{
			Code: "charge-too-cold", Level: level, Unit: "degC", Found: cellC, Limit: p.Charge.MinTempC, Source: p.Charge.Source,
			Title: "The cells are too cold to be charged.",
		}
		if w.Never {
			f.Advice = "Bring the pack into a room above freezing, take it out of wrappings and let it warm up before it goes on the charger."
		} else {
			f.Advice = fmt.Sprintf("Let it stand in the room for at least %s; a thick pack takes longer inside than outside.", minutes(w.OpenMin))
		}
		out = append(out, f)
	case now.TooHot:
		f := answer.Finding{
			Code: "charge-too-hot", Level: level, Unit: "degC", Found: cellC, Limit: p.Charge.MaxTempC, Source: p.Charge.Source,
			Title: "The cells are too hot to be charged.",
		}
		if w.Never {
			f.Advice = "The place is itself too hot for charging: let the pack cool in the shade indoors."
		} else {
			f.Advice = fmt.Sprintf("Take it off the vehicle and let it cool for at least %s before it goes on the charger.", minutes(w.OpenMin))
		}
		out = append(out, f)
	case now.CurrentShare < 1:
		out = append(out, answer.Finding{
			Code: "charge-slow-when-cold", Level: answer.Watch, Unit: "degC", Found: cellC, Limit: p.Charge.ReducedBelowC, Source: p.Charge.Source,
			Title:  "The cells are too cold for the full charging current.",
			Advice: "Warm the pack to room temperature first, or charge at a fraction of the usual current.",
		})
	}
	if now.Open && !GateAt(p, ambientC).Open {
		out = append(out, answer.Finding{
			Code: "charge-place-temperature", Level: level, Unit: "degC", Found: ambientC,
			Limit: nearest(ambientC, p.Charge.MinTempC, p.Charge.MaxTempC), Source: p.Charge.Source,
			Title:  "The place is too cold or too hot for charging.",
			Advice: "The pack will take the temperature of the place while it charges: charge it in a room.",
		})
	}
	return out
}

// nearest returns whichever of a and b lies nearer to x.
func nearest(x, a, b float64) float64 {
	if math.Abs(x-a) <= math.Abs(x-b) {
		return a
	}
	return b
}

// minutes prints a wait, rounded up so that nothing is promised too early.
func minutes(m float64) string {
	switch {
	case m < 60:
		return fmt.Sprintf("%d minutes", 5*int((m+4.999)/5))
	default:
		return fmt.Sprintf("%.1f hours", float64(int(m/6+0.999))/10)
	}
}
