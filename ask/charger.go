package ask

import (
	"errors"
	"fmt"
	"math"

	"example.org/packcheck/answer"
	"example.org/packcheck/charge"
	"example.org/packcheck/chemistry"
)

// Charger asks whether a charger may be used on a battery, how long it takes and
// when to unplug it.
type Charger struct {
	Label        string // output line of the charger: "14.7 V 1.5 A DC for lead-acid"
	Battery      Battery
	Charge       *float64    // state of charge to begin with, 0 to 1; nil = empty
	AirC         *float64    // of battery and room; nil = 20 degC
	Port         charge.Port // where it is plugged in
	CameWithPack bool        // the battery's maker supplied it for this battery
}

// Answer returns the hours to full; for a charger that must not be connected, or
// of which too little is known, the volts that a cell of the battery wants.
func (q Charger) Answer() (Answer, error) {
	var a Answer
	var in inputs
	airC := in.celsius(&a, "AirC", q.AirC, roomC)
	from := 0.0
	if q.Charge == nil {
		a.assume("from empty")
	} else {
		from = *q.Charge
		in.within("Charge", from, 0, 1, "")
	}
	l, err := charge.ParseLabel(q.Label)
	in.add(err)
	b, err := in.battery(q.Battery)
	if err != nil {
		return Answer{}, err
	}
	m := b.model
	p := b.profile()
	c := l.Charger()
	c.SuppliedWithPack = q.CameWithPack
	plugged := charge.Plugged{
		Pack: m, LabelAh: b.parts.Pack.CapacityAh.Likely, Charger: c, CellC: airC, AmbientC: airC, ToolPack: b.parts.Pack.ToolPack, Port: q.Port,
	}
	plugged = plugged.Settled()
	v := charge.Match(plugged)
	a.Asked = fmt.Sprintf("may %s charge %s", q.Label, q.Battery.Label)
	a.Limit = &Limit{What: "never above, per cell", Value: v.MostVPerCell, Unit: "V"}
	a.cite(p.Charge.Source)
	switch v.Fit {
	case charge.Refused:
		a.say("No, do not connect it.")
	case charge.Unproven:
		a.say("Not shown to suit: find out first.")
	case charge.WithCare:
		a.say("Yes, with care.")
	default:
		a.say("Yes.")
	}
	wants := exactly("a cell wants", v.WantedVPerCell, "V")
	a.judged(v.Findings, b.guess)
	a.is(wants)
	if v.Fit != charge.Refused { // hours on one that must not be connected would invite
		if err := a.hours(plugged, b, from, airC); err != nil {
			return Answer{}, err
		}
	}
	b.tell(&a)
	a.cite("cpsc-charging")
	a.Caution = "Be there and awake while anything charges; unplug it before you go to bed or leave the house, and go on next day where it takes longer."
	if p.Family == chemistry.Lithium && b.parts.Pack.ToolPack {
		a.beware("A tool pack goes on its own maker's charger only, and never through the vehicle's jack.", "tool-pack-rule")
	}
	return a.checked()
}

// hours adds the time to full and when to unplug.
func (a *Answer) hours(plugged charge.Plugged, b *batteries, from, airC float64) error {
	c, err := plugged.Case(plugged.Pack.StateAt(from, airC))
	if errors.Is(err, charge.ErrUnknown) {
		return nil // Match has said what is missing
	}
	if err != nil {
		return err
	}
	r, err := charge.Simulate(c)
	if err != nil {
		return err
	}
	off := answer.Exactly(1)
	if f := &b.parts.Pack.ChargeHours; f.Known {
		off = f.Range
	}
	span := answer.Range{
		Low: r.HoursToFull.LeastH * off.Low, Likely: r.HoursToFull.LikelyH * off.Likely, High: r.HoursToFull.MostH * off.High,
	}
	span.High = max(span.High, span.Likely)
	span.Low = min(span.Low, span.Likely)
	wants := a.Figure()
	latest := numberWords(r.UnplugH, "h")
	if r.UnplugH > answer.AwakeH {
		latest += " on the charger, in several days,"
	}
	if r.Full {
		a.is(ranged("hours to full", span, "h"))
		a.say("Full after %s; unplug it after %s at the latest.", figureWords(a.Figure()), latest)
	} else if r.GivenUp {
		a.say("It takes longer than %s to get full, if it ever does; unplug it after %s at the latest.", numberWords(r.BareFullH/24, "d"), latest)
	} else {
		a.say("It never gets full; unplug it after %s at the latest.", latest)
	}
	if !math.IsInf(r.UnplugH, 0) && r.UnplugH > 0 {
		a.beside(exactly("unplug after", r.UnplugH, "h"))
	}
	if r.Full {
		a.beside(wants)
	}
	return nil
}
