package report

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"example.org/packcheck/answer"
)

// Ways out, and what to do first where there is none.

// waysOut lists the ways out that were computed; where there are none, what has
// to be done first.
func (b *builder) waysOut(r room) section {
	if len(b.a.Ways) > 0 {
		s := section{title: b.waysTitle()}
		shown := b.a.Ways[:min(r.ways, len(b.a.Ways))]
		for i, w := range shown {
			s.lists = append(s.lists, b.way(i, &w, r))
		}
		s.after = whoWires(shown)
		if n := len(b.a.Ways) - len(shown); n > 0 { // the page has no room for all
			s.more = "way " + wayLetter(len(shown))
			if n > 1 {
				s.more = "ways B and C"
			}
		}
		return s
	}
	s := section{title: "What to do first", numbered: true}
	s.text = b.noWay()
	shown := b.a.Changes[:min(r.steps, len(b.a.Changes))]
	for _, c := range shown {
		s.items = append(s.items, shorten(b.say(c), r.stepLen))
	}
	if n := len(b.a.Changes) - len(shown); n > 0 {
		s.more = things(n, "more step")
	}
	return s
}

// whoWires says who fits what a way out asks for; nothing where it asks for no wiring.
// Common practice, no published source.
func whoWires(ways []answer.Way) []string {
	if !slices.ContainsFunc(ways, func(w answer.Way) bool { return w.Wiring }) {
		return nil
	}
	return []string{"Somebody trained does the wiring; makers' instructions first."}
}

// noWay is told where ways out were searched in vain, but for a child that is too young:
// that is why, and stands before.
func (b *builder) noWay() []string {
	if !b.a.Sought || b.a.TooYoung() != nil {
		return nil
	}
	return []string{"No set of changes that was tried puts all of it right."}
}

// waysTitle is the title of the ways out.
func (b *builder) waysTitle() string {
	switch {
	case b.a.Verdict < answer.FixFirst:
		return "With another battery (computed like the rest)"
	case len(b.a.Ways) > 1:
		return "Ways out: take one (each computed like the rest)"
	}
	return "The way out (computed like the rest)"
}

// wayLetter is what a way out is called by.
func wayLetter(i int) string {
	const letters = "ABC"
	return letters[i%len(letters) : i%len(letters)+1]
}

// wayLetters names as many ways out as there are.
func wayLetters(n int) string {
	switch n {
	case 1:
		return "way A"
	case 2:
		return "way A or B"
	}
	return "way A, B or C"
}

// way is one way out.
func (b *builder) way(i int, w *answer.Way, r room) tickList {
	text := wayLetter(i) + ". " + answerWord(w.Verdict)
	if title := cut(b.say(w.Title), r.wayLen()); title != "" {
		text += ": " + strings.TrimRight(title, ".")
	}
	var figures []string
	uphill := ""
	if b.climbs() {
		uphill = "uphill "
	}
	if w.PedalMin.Valid() && w.PedalMin.High > 0 {
		lasts := "pedal down " + uphill + b.rangeOf(minutes, w.PedalMin).brief()
		if w.CutShort > rareFate { // a cutoff, not the battery, makes the lower end
			lasts += ", cut short in " + counted(w.CutShort)
		}
		if w.FuseOpens > rareFate {
			lasts += ", its fuse may open in " + counted(w.FuseOpens)
		}
		figures = append(figures, lasts)
	}
	if w.SpeedKmh.Valid() && w.SpeedKmh.High > 0 {
		figures = append(figures, b.rangeOf(kmPerH, w.SpeedKmh).brief())
	}
	if p := w.Pace; p != nil && p.LimitKmh < w.SpeedKmh.High {
		who := "a child"
		if p.AgeYears > 0 {
			who = fmt.Sprintf("a child of %.0f", p.AgeYears)
		}
		brisk := "over " + b.alone(kmPerH, p.LimitKmh).likely + ", "
		if p.TooFast {
			brisk += "too fast for " + who
		} else {
			brisk += "brisk for " + who
		}
		if w.SpeedKmh.Low < p.LimitKmh { // the range says yes and no
			brisk += ", in " + counted(p.Share)
		}
		figures = append(figures, brisk)
	}
	if wanted := b.a.Ride.WantedMin; wanted != nil && w.WantedShare != nil {
		figures = append(figures, b.one(minutes, *wanted)+": "+reaches(*w.WantedShare))
	}
	list := tickList{title: sentence(text)}
	if len(figures) > 0 {
		list.told = capital(sentence(strings.Join(figures, "; ")))
	}
	if len(b.a.Ways) > 1 || w.Harms > 0 { // which of them is the safer, and what stays
		left := "nothing"
		if w.Harms > 0 {
			left = strconv.Itoa(w.Harms)
		}
		list.told = strings.TrimSpace(list.told + " Still to watch (child, fire): " + left + ".")
	}
	for _, step := range w.Steps[:min(r.steps, len(w.Steps))] {
		list.steps = append(list.steps, shorten(b.say(step), max(r.stepLen, leastStep)))
	}
	if n := len(w.Steps) - len(list.steps); n > 0 {
		list.steps = append(list.steps, "and "+strconv.Itoa(n)+" more")
	}
	if r.steps >= len(w.Steps) {
		list.after = cut(b.say(w.Together), r.together)
	}
	return list
}

// leastStep is the room that a step of a way out has on any page: volts and amps without
// the limit behind them would be another charger.
const leastStep = 150

// wayLen is the room for the title of a way out: it says what to get, and is shortened
// only where steps are left out as well.
func (r room) wayLen() int {
	const whole = 8
	if r.steps < whole {
		return r.stepLen
	}
	return max(r.stepLen, 190)
}

// rangeOf rounds a range that has no path of its own.
func (b *builder) rangeOf(u unit, r answer.Range) figure {
	f := figures{ranges: map[string]answer.Range{"": r}, system: b.system}
	return f.figure("", u, r.Likely)
}
