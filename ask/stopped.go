package ask

import (
	"math"

	"example.org/packcheck/answer"
	"example.org/packcheck/internal/draws"
	"example.org/packcheck/tables"
	"example.org/packcheck/wiring"
)

// Stopped asks what it was that stopped the vehicle, by how it came back.
type Stopped struct {
	Seconds      float64 // until it ran again by itself; 0 = not so
	StaysDead    bool    // it did not come back
	AfterRelease bool    // only once the pedal was let go
	PowerCycled  bool    // only after the pack was unplugged or put on a charger
	Breaker      bool    // an auto-reset breaker is known to be fitted
	Lithium      bool    // the pack has electronics of its own

	Between Between // how far the seconds may lie from these
}

// Answer returns how well the likeliest cause fits, 0 to 1, over what the time may
// have been, and in words where to look first.
func (q Stopped) Answer() (Answer, error) {
	var a Answer
	var in inputs
	in.unless("Seconds", q.Seconds, 0.001, 604800, "s")
	in.holds("Between", q.Between, q.Seconds)
	ways := 0
	for _, told := range []bool{q.Seconds > 0, q.StaysDead, q.PowerCycled} {
		if told {
			ways++
		}
	}
	if ways != 1 {
		in.fault("how it came back is told %d times; want one of these: the seconds, such as 20 s; that it stays dead; that it came back when it was unplugged", ways)
	}
	if err := in.err(); err != nil {
		return Answer{}, err
	}
	r := wiring.Return{Seconds: q.Seconds, AfterRelease: q.AfterRelease, AfterCharger: q.PowerCycled, Breaker: q.Breaker, Lithium: q.Lithium}
	came := "came back after " + seconds(q.Seconds)
	if q.StaysDead || q.PowerCycled {
		r.Seconds = math.Inf(1)
		came = "stays dead"
	}
	if q.PowerCycled {
		came = "came back when the pack was unplugged or charged"
	}
	found := wiring.WhatOpened(tables.Builtin(), r)
	a.Asked = "what stopped it: it " + came
	fits, other, share := q.may(r, found[0].Device)
	a.is(around("fit of the first", found[0].Fit, fits, "share"))
	first := "First"
	if found[0].Fit < poorFit {
		a.say("Nothing that resets itself is known to take such a time: look for a loose plug or contact, too.")
		first = "The nearest is"
	}
	a.say("%s the %s. %s", first, found[0].Device, found[0].Why)
	a.say("%s", found[0].Check)
	if share >= possibleShare {
		a.say("With the time as far off as it may be, it is rather the %s in %s of the cases.", other, percent(share))
	}
	for _, other := range found[1:3] {
		if other.Fit >= 0.3*found[0].Fit && other.Fit > poorFit {
			a.say("Or: %s (fit %s).", other.Device, percent(other.Fit))
		}
	}
	if !q.Lithium {
		a.assume("no lithium pack")
	}
	a.cite(found[0].Source)
	a.level(answer.FixFirst, false) // as a report says of what opened in use
	a.beware("Whatever opened did its work: find the cause; never bridge it.", "cutoff-practice")
	return a.checked()
}

// poorFit is below what no cause counts as one that fits. Own choice.
const poorFit = 0.05

// timed is for how many times the causes are looked at.
const timed = 64

// may is how well a device fits over what the time may have been, and which other
// one fits best most often, in what share of the times.
func (q Stopped) may(r wiring.Return, device string) (fits []float64, other string, share float64) {
	first := map[string]int{}
	for _, z := range draws.Points(timed, 1) {
		if q.Seconds > 0 {
			r.Seconds = q.Between.at(z[0], q.Seconds, timeErr)
		}
		found := wiring.WhatOpened(tables.Builtin(), r)
		for _, f := range found {
			if f.Device == device {
				fits = append(fits, f.Fit)
			}
		}
		if name := found[0].Device; name != device {
			if first[name]++; first[name] > first[other] {
				other = name
			}
		}
	}
	return fits, other, float64(first[other]) / timed
}
