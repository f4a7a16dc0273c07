package wiring

import (
	"cmp"
	"math"
	"slices"

	"example.org/packcheck/internal/portable"
	"example.org/packcheck/tables"
)

// Opening is what somebody saw: the fuse opened after so many seconds.
type Opening struct {
	Seconds  float64 // from the start of the current, > 0
	AmbientC float64
}

// Current is a range of current.
type Current struct {
	LeastA float64
	MostA  float64 // +Inf where the fuse sets no upper end
}

// WhatFlowed returns which steady current it was that opened the fuse: from
// the smallest that may open it in that time to the largest that it may still
// bear for so long. An opening in less than 10 ms gives no upper end.
func (f *Fuse) WhatFlowed(o Opening) Current {
	c := f.At(o.AmbientC)
	least := c.currentBy(o.Seconds, earliest)
	// The largest current whose latest time is not below the time seen: just
	// under the smallest whose latest time is.
	most := c.currentBy(math.Nextafter(o.Seconds, 0), latest)
	return Current{LeastA: least, MostA: max(least, most)}
}

// Return is what somebody saw of a vehicle that stopped and came back.
type Return struct {
	Seconds      float64 // until it ran again; +Inf when it did not by itself
	AfterRelease bool    // it came back only once the pedal was let go
	AfterCharger bool    // it came back only after the pack was unplugged or put on a charger
	Breaker      bool    // an auto-reset breaker is known to be fitted
	Lithium      bool    // the pack has electronics of its own
}

// Answer is a likely cause, in words, with what to look at next.
type Answer struct {
	Device string  // our own short name
	Fit    float64 // 0 to 1, how well it fits; the best is not always right
	Why    string
	Check  string // what to look at next
	Source string // source ID of the times
}

// WhatOpened ranks what may have opened by how the vehicle came back, best
// first. The times behind it are remembered practice, not published: take the
// order as where to look first, no more.
func WhatOpened(t *tables.Tables, r Return) []Answer {
	t = orBuiltin(t)
	breaker := t.Figure(tables.AutoResetTime)
	pack := t.Figure(tables.PackResetTime)
	polymer := t.Figure(tables.PolymerResetTime)
	answers := []Answer{
		{
			Device: "one-time fuse", Source: breaker.Source,
			Why:   "A fuse that has opened stays open.",
			Check: "Look at the fuse. Find what drew the current before a fuse of the same rating goes in.",
		},
		{
			Device: "auto-reset breaker", Source: breaker.Source, Fit: fit(r.Seconds, breaker.Value),
			Why:   "A bimetal breaker closes again by itself when it has cooled, pedal down or not.",
			Check: "Look for a small metal or plastic can in the wire by the pack. Feel whether it is warm.",
		},
		{
			Device: "breaker that waits for release", Source: breaker.Source, Fit: 0.25 * fit(r.Seconds, breaker.Value),
			Why:   "A breaker of this kind stays open while there is voltage and closes once the pedal is let go and it has cooled.",
			Check: "Look for a small metal or plastic can in the wire by the pack. See whether it closes with the pedal held down.",
		},
		{
			Device: "electronics in the pack", Source: pack.Source, Fit: fit(r.Seconds, pack.Value),
			Why:   "A pack's own protection lets go at too much current or too low a voltage, often until the pedal is let go.",
			Check: "Measure the pack's voltage at rest. If it is low the pack is empty; if not, the current is too high for the pack.",
		},
		{
			Device: "polymer resettable fuse", Source: polymer.Source, Fit: fit(r.Seconds, polymer.Value),
			Why:   "It grows resistive when hot and needs a minute or more without load to come back.",
			Check: "Look on the board or motor for a flat yellow or green disc. See whether power came back gradually.",
		},
		{
			Device: "heat protection in controller or motor", Source: polymer.Source, Fit: 0.7 * fit(r.Seconds, polymer.Scale(2)),
			Why:   "Electronics and some motors switch off when hot and back on when cool.",
			Check: "Feel motors and controller with care: they may be hot. See whether it stops later in cold weather.",
		},
	}
	weigh(answers, r)
	slices.SortStableFunc(answers, func(a, b Answer) int { return cmp.Compare(b.Fit, a.Fit) })
	return answers
}

// The places of the answers before they are sorted.
const (
	oneTime = iota
	autoReset
	waiting
	electronics
	polymerFuse
)

// weigh changes the fits by what else was seen.
func weigh(answers []Answer, r Return) {
	switch {
	case r.AfterCharger:
		answers[electronics].Fit = 1
	case math.IsInf(r.Seconds, 1):
		answers[oneTime].Fit = 1
		answers[electronics].Fit = 0.5 // some latch until they see a charger
	}
	if r.AfterRelease {
		answers[autoReset].Fit *= 0.3 // it does not mind the pedal
		answers[waiting].Fit *= 4
		answers[electronics].Fit *= 1.5
		answers[polymerFuse].Fit *= 1.5 // it stays hot as long as there is voltage
	}
	if r.Breaker {
		answers[autoReset].Fit *= 1.5
		answers[waiting].Fit *= 1.5
	}
	if !r.Lithium {
		answers[electronics].Fit *= 0.1
	}
	for i := range answers {
		answers[i].Fit = min(1, answers[i].Fit)
	}
}

// fit is 1 at the likely time, falls to about a half at the ends of the range
// and to nothing a decade beyond.
func fit(seconds float64, v tables.Value) float64 {
	if !(seconds > 0) || math.IsInf(seconds, 1) {
		return 0
	}
	end := v.High
	if seconds < v.Likely {
		end = v.Low
	}
	x := math.Log(seconds/v.Likely) / math.Log(end/v.Likely)
	return portable.Exp(-0.7 * x * x)
}
