package report

import (
	"math"
	"strings"

	"example.org/packcheck/answer"
)

// What to do: changes, what to buy for them, habits, and the next measurement.

// changes are told where there is no way out: each of those is a set of changes that
// was computed, after which none of these is left to do.
func (b *builder) changes() section {
	s := section{title: "What to change, in this order", numbered: true}
	if len(b.a.Ways) > 0 {
		return s
	}
	s.text = b.noWay()
	for _, c := range b.a.Changes {
		s.items = append(s.items, b.say(c))
	}
	return s
}

// allWays lists the ways out that were computed, whole.
func (b *builder) allWays() section {
	s := section{title: b.waysTitle()}
	for i := range b.a.Ways {
		list := b.way(i, &b.a.Ways[i], room{steps: math.MaxInt, stepLen: math.MaxInt, together: math.MaxInt})
		list.flow = b.tight >= dense
		s.lists = append(s.lists, list)
	}
	s.after = whoWires(b.a.Ways)
	return s
}

// buy lists what may have to be bought, as somebody would ask for it over a
// counter.
func (b *builder) buy() section {
	s := section{title: "What to buy", sub: true, flow: true}
	listed := false // a way out says of each part what it must be, and was computed with it
	for i := range b.a.Ways {
		listed = listed || len(b.a.Ways[i].Steps) > 1
	}
	for _, p := range b.a.Buy {
		if listed && !strings.EqualFold(p.Item, "charger") {
			continue
		}
		s.facts = append(s.facts, fact{capital(orElse(clean(p.Item), "part")), orElse(b.say(p.Text), notKnown)})
	}
	return s
}

// habits are ways of using the vehicle; they put nothing right.
func (b *builder) habits() section {
	s := section{sub: true, flow: true, on: true}
	for _, h := range b.a.Habits {
		s.items = append(s.items, clean(h))
	}
	if len(s.items) > 0 {
		s.title = "How to use it"
	}
	return s
}

func (b *builder) measure() section {
	s := section{title: b.askTitle(), numbered: true, flow: true, sub: b.tight >= runOn}
	for _, m := range b.a.Measure {
		line := b.toMeasure(m)
		if enter := clean(m.Enter); enter != "" {
			line += " (" + enter + ")"
		}
		if gain := b.gain(m); gain != "" {
			line += " " + gain
		}
		s.items = append(s.items, line)
	}
	if len(s.items) == 0 {
		s.text = []string{"No single measurement would change this answer much."}
	}
	if note := b.whoRides(b.a.Measure); note != "" {
		s.after = []string{note}
	}
	return s
}

// gain says what a measurement is expected to narrow.
func (b *builder) gain(m answer.Measurement) string {
	const worthSaying = 0.05 // own choice; less is lost in the error of the draws
	var parts []string
	for _, g := range []struct {
		name  string
		share float64
	}{{"time", m.Minutes}, {"speed", m.Speed}, {startAmps, m.Amps}, {"verdict", m.Verdict}} {
		if g.share >= worthSaying {
			parts = append(parts, g.name+" "+b.one(share, about(min(1, g.share))))
		}
	}
	if len(parts) == 0 {
		return ""
	}
	return "(Narrows: " + strings.Join(parts, ", ") + ".)"
}
