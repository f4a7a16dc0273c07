package ask

import (
	"example.org/packcheck/answer"
	"example.org/packcheck/tables"
)

// Lost asks what two readings of volts tell: at two places of one circuit, or at
// one place without and with the load.
type Lost struct {
	FirstV   float64 // the higher one, 0.1 to 500 V
	SecondV  float64 // the lower one
	CurrentA float64 // that flowed; 0 = not told
}

// How far the difference of two readings of one hand-held meter may be off: its
// gain, and two of its last digits. Common practice, no published source.
const (
	meterShare = 0.01
	meterV     = 0.02
)

// Answer returns the volts lost; beside them the resistance and the heat where
// the current is told.
func (q Lost) Answer() (Answer, error) {
	var a Answer
	var in inputs
	in.within("FirstV", q.FirstV, 0.1, 500, "V")
	in.within("SecondV", q.SecondV, 0, 500, "V")
	in.unless("CurrentA", q.CurrentA, 0.001, 5000, "A")
	if q.SecondV > q.FirstV {
		in.fault("the second reading is %g V, above the first; want the higher reading first", q.SecondV)
	}
	if err := in.err(); err != nil {
		return Answer{}, err
	}
	t := tables.Builtin()
	lost := q.FirstV - q.SecondV
	a.Asked = "what is lost from " + volts(q.FirstV) + " to " + volts(q.SecondV)
	off := meterShare*lost + meterV
	a.is(Figure{What: "lost", Value: lost, Low: max(lost-off, 0), High: min(lost+off, q.FirstV), Unit: "V"})
	a.assume("one meter for both, off by %s and %s of what it shows", volts(meterV), percent(meterShare))
	a.say("%s are lost, %s of %s.", volts(lost), percent(lost/q.FirstV), volts(q.FirstV))
	ordinary := t.Figure(tables.DropOrdinary)
	a.Limit = &Limit{What: "lost on the way, a tenth", Value: ordinary.Likely * q.FirstV, Unit: "V"}
	a.cite(ordinary.Source)
	if lost > a.Limit.Value {
		a.level(answer.Watch, false)
	}
	if q.CurrentA > 0 {
		heat := lost * q.CurrentA
		per := func(what string, by float64, unit string) Figure {
			return Figure{What: what, Value: lost * by, Low: a.Low * by, High: a.High * by, Unit: unit}
		}
		a.beside(per("resistance", 1/q.CurrentA, "Ohm"), per("heat", q.CurrentA, "W"))
		a.say("That is %s and %s of heat between the two.", ohms(lost/q.CurrentA), watts(heat))
		if hot := t.Figure(tables.JointHot); heat >= hot.Likely {
			a.say("If it sits in one joint, that joint is to be renewed: %s discolour its plastic.", watts(hot.Likely))
			a.level(answer.Watch, false)
			a.cite(hot.Source)
		}
	}
	a.say("Both under load at two places: the way between. At one place without and with load: battery and way to the meter.")
	a.beware("Measure across each plug, fuse and clip in turn while the motors pull: one bad contact takes most of it.", t.Figure(tables.JointHot).Source)
	return a.checked()
}
