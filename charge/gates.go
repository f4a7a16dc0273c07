package charge

import (
	"fmt"
	"math"

	"example.org/packcheck/answer"
	"example.org/packcheck/battery"
	"example.org/packcheck/chemistry"
)

// Codes of the findings on temperature.
const (
	CodeTooCold     = "charge-too-cold"          // cells too cold for any charge
	CodeTooHot      = "charge-too-hot"           // cells too hot for any charge
	CodeSlowInCold  = "charge-slow-when-cold"    // cells too cold for the full current
	CodePlaceNoGood = "charge-place-temperature" // the place itself is too cold or too hot
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
//
// Nobody has plugged the pack in yet: that a hot or a cold one waits where it may be
// charged is a habit, and only cold or heat in which lithium would be charged
// where it stands is something to fix. That a cold one waits keeps its harm: what
// frost does to lithium on a charger nobody sees. [Match] judges a pack on its charger.
//
// There is no telling when a pack may be charged that is nil or whose temperature,
// or that of its surroundings, is no number: never.
func WaitFor(m *battery.Model, cellC, ambientC float64) Wait {
	if m == nil {
		return Wait{Never: true, NeverFull: true}
	}
	p := m.Spec().Profile
	var w Wait
	now := GateAt(p, cellC)
	there := GateAt(p, ambientC)
	w.Never, w.NeverFull = !there.Open, there.CurrentShare < 1
	if math.IsNaN(cellC) {
		w.Never, w.NeverFull = true, true
	}
	if !w.Never && !now.Open {
		w.OpenMin = minutesUntil(m, cellC, ambientC, func(g Gate) bool { return g.Open })
	}
	if !w.NeverFull && now.CurrentShare < 1 {
		w.FullMin = minutesUntil(m, cellC, ambientC, func(g Gate) bool { return g.CurrentShare == 1 })
	}
	w.Findings = waitFindings(p, w, cellC, ambientC, false)
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

// outside is how bad it is to charge cells outside their temperatures: lithium
// that is charged frozen or hot burns later, other cells wear out.
func outside(p chemistry.Profile, plugged bool) (answer.Level, answer.Harm) {
	switch lithium := p.Family == chemistry.Lithium; {
	case lithium && plugged:
		return answer.Danger, answer.House
	case lithium:
		return answer.FixFirst, answer.House
	case plugged:
		return answer.FixFirst, answer.Part
	}
	return answer.Watch, answer.Wear
}

// waitFindings puts a wait into words, for a pack that is plugged in as it is
// or one that still may be carried somewhere else.
func waitFindings(p chemistry.Profile, w Wait, cellC, ambientC float64, plugged bool) []answer.Finding {
	now := GateAt(p, cellC)
	level, harm := outside(p, plugged)
	f := answer.Finding{
		Topic: answer.TopicCharge, Item: answer.Battery, Level: level, Harm: harm, Unit: "degC", Found: cellC, Source: p.Charge.Source,
		Decides: []string{answer.KeyOutingChargedAt, answer.KeyPackChemistry},
	}
	if cellC != ambientC {
		f.Decides = append(f.Decides, answer.KeyPackTemperature)
	}
	var out []answer.Finding
	switch {
	case math.IsNaN(cellC):
		f.Code, f.Limit, f.Want = CodeTooCold, p.Charge.MinTempC, answer.Above
		out = append(out, f.Unread("Whether the cells are too cold or too hot to be charged is not known."))
	case now.TooCold:
		f.Code, f.Limit, f.Want = CodeTooCold, p.Charge.MinTempC, answer.Above
		f.Change, f.Habit = answer.ChargeElsewhere, answer.HabitChargeWarm
		f.Title = "Before it is charged the pack must warm up in a room above freezing: its cells are too cold."
		f.Advice = "Let the pack warm up in a room above freezing; take it out of wrappings, and charge it only then."
		if !w.Never {
			f.Advice = fmt.Sprintf("Let it stand in the room for at least %s; a thick pack takes longer inside than outside.", minutes(w.OpenMin))
			if !plugged { // the room is warm: it only has to wait there
				f.Change = answer.WaitBeforeCharge
			}
		}
		out = append(out, f)
	case now.TooHot:
		f.Code, f.Limit = CodeTooHot, p.Charge.MaxTempC
		f.Change, f.Habit = answer.ChargeElsewhere, answer.HabitPackOff
		f.Title = "The cells are too hot to be charged."
		f.Advice = "The place is itself too hot for charging: let the pack cool in the shade indoors."
		if !w.Never {
			f.Change = answer.WaitBeforeCharge
			f.Advice = fmt.Sprintf("Take it off the vehicle and let it cool for at least %s before it goes on the charger.", minutes(w.OpenMin))
			if !plugged {
				f.Level, f.Harm = answer.Watch, answer.Wear
			}
		}
		out = append(out, f)
	case now.CurrentShare < 1:
		slow := f
		slow.Code, slow.Level, slow.Harm = CodeSlowInCold, answer.Watch, answer.Wear
		slow.Limit, slow.Want = p.Charge.ReducedBelowC, answer.Above
		slow.Change, slow.Habit = answer.WarmUp, answer.HabitChargeWarm
		slow.Title = "The cells are too cold for the full charging current."
		slow.Advice = "Warm the pack to room temperature first, or charge at a fraction of the usual current."
		out = append(out, slow)
	}
	if there := GateAt(p, ambientC); now.Open && !there.Open {
		f.Code, f.Found, f.Limit, f.Want = CodePlaceNoGood, ambientC, p.Charge.MaxTempC, answer.Below
		if there.TooCold {
			f.Limit, f.Want = p.Charge.MinTempC, answer.Above
		}
		f.Change, f.Habit = answer.ChargeElsewhere, answer.HabitChargeWarm
		f.Title = "Charge the pack in a room: this place is too cold or too hot for charging."
		f.Advice = "The pack will take the temperature of the place while it charges: charge it in a room."
		if math.IsNaN(ambientC) {
			f = f.Unread("Whether the place is too cold or too hot for charging is not known.")
		}
		out = append(out, f)
	}
	return out
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
