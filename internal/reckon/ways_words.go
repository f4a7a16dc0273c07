package reckon

import (
	"math"
	"slices"
	"strings"

	"example.org/packcheck/answer"
)

// Ways out in words.

// named is the title of a way out, with what its steps are to it; tray is what another
// battery has to go into, empty where nobody told.
func (w *path) named(tray string) string {
	title, then := w.title, ", and besides do "
	if title == keepTitle {
		then = ", and first do "
		if w.takes(packName) {
			title = "Keep this kind of battery"
		}
	}
	if w.title != keepTitle && tray != "" {
		title += ", which must fit " + tray
	}
	switch len(w.steps) {
	case 0:
		return title
	case 1:
		return title + then + "this"
	}
	return title + then + "all of these"
}

// takes reports whether a step is among those of the path.
func (w *path) takes(name string) bool {
	return slices.ContainsFunc(w.steps, func(s step) bool { return s.name == name })
}

// changesNothing reports whether the path keeps the battery and changes nothing but how it
// is charged, once somebody has looked at it.
func (w *path) changesNothing() bool {
	return w.title == keepTitle && len(w.steps) > 0 && !slices.ContainsFunc(w.steps, func(s step) bool { return s.name != watchName && !slices.Contains(toCharge[:], s.name) })
}

// wantedShare is that of the time asked for; nil where none was.
func wantedShare(a *answer.Assessment) *float64 {
	if a.Ride.WantedMin == nil {
		return nil
	}
	share := a.Ride.WantedShare()
	return &share
}

// paceOf is the speed that is too much for who drives, and how often it is; nil where it
// is not.
func (e *engine) paceOf(a *answer.Assessment) *answer.Pace {
	i := slices.IndexFunc(a.Findings, func(f answer.Finding) bool {
		return f.Topic == answer.TopicSpeed && f.Unit == "m/s" && f.Harm == answer.Child && f.Level > answer.Fine
	})
	if i < 0 {
		return nil
	}
	const perHour = 3.6
	f := &a.Findings[i]
	p := &answer.Pace{LimitKmh: f.Limit * perHour, Share: f.Share, TooFast: f.Limit > f.LimitMS}
	if r := e.parts.Rider; r != nil && r.AgeYears.Known {
		p.AgeYears = math.Floor(r.AgeYears.Low)
	}
	return p
}

// harmsOf counts the findings by which a child or a house could be hurt.
func harmsOf(a *answer.Assessment) int {
	n := 0
	for i := range a.Findings {
		if f := &a.Findings[i]; f.Harm >= answer.House && f.Level > answer.Fine {
			n++
		}
	}
	return n
}

// together says in which order the steps sit in the plus wire, and why their amps
// differ. Common practice, no published source.
func together(steps []step) (order, amps string) {
	var inLine []string
	has := map[string]bool{}
	for _, s := range []struct{ name, word string }{
		{fuseName, "fuse"}, {cutoffName, "cutoff"}, {converterName, "converter"}, {controllerName, "speed control"},
	} {
		if slices.ContainsFunc(steps, func(t step) bool { return t.name == s.name }) {
			inLine, has[s.name] = append(inLine, s.word), true
		}
	}
	switch {
	case len(inLine) == 1 && has[fuseName]:
		return "It sits in the plus wire.", ""
	case len(inLine) == 1:
		return "It sits in the plus wire, behind the fuse.", ""
	case len(inLine) == 0:
		return "", ""
	}
	order = "From the plus pole on: " + strings.Join(inLine, ", ") + "."
	switch {
	case has[fuseName] && has[converterName]:
		amps = " Before a converter flow fewer amps than behind it, and a start lasts only seconds: hence the small fuse."
	case has[fuseName] && has[controllerName]:
		amps = " The limit is for a start, which lasts only seconds: hence the smaller fuse."
	}
	return order, amps
}
