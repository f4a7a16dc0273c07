package report

import (
	"math"
	"strings"

	"example.org/packcheck/answer"
	"example.org/packcheck/internal/quantity"
)

// figures are the columns beside each other; lean leaves out what the others
// nearly tell.
func (x *comparer) figures(lean int) section {
	g := grid{}
	row := func(name string, of func(b *builder) (cell, bool)) {
		r := gridRow{name: name}
		some := false
		for _, b := range x.of {
			c, ok := of(b)
			some = some || ok
			if !ok {
				c = cell{value: "-"}
			}
			r.cells = append(r.cells, c)
		}
		if some {
			g.rows = append(g.rows, r)
		}
	}
	spread := func(f figure) (cell, bool) {
		if f.likely == f.ends {
			return cell{value: f.likely}, true
		}
		return cell{f.likely, f.spread()}, true
	}
	for _, col := range x.Columns {
		g.letters = append(g.letters, col.Letter)
	}
	row("Answer", func(b *builder) (cell, bool) { return cell{value: answerWord(b.a.Verdict)}, true })
	row(x.lastsName(), func(b *builder) (cell, bool) {
		switch {
		case b.a.NeverRidden():
			return cell{value: "never joined"}, true
		case b.stuck():
			return cell{value: "does not get going"}, true
		}
		return spread(b.lasts())
	})
	moves := func(b *builder) bool { return !b.bench() && b.noRide() == "" }
	for _, far := range []struct {
		name  string
		asked bool // it is that of a time asked for, not of the whole charge
	}{{"Distance", false}, {"In time asked", true}} {
		row(far.name, func(b *builder) (cell, bool) {
			c, _ := spread(b.figure("ride.distance_km", kilometr, b.a.Ride.DistanceKm))
			return c, moves(b) && lean < 1 && far.asked == (b.a.Ride.WantedMin != nil)
		})
	}
	row("Speed", func(b *builder) (cell, bool) {
		if b.a.Steady == nil || !moves(b) {
			return cell{}, false
		}
		return spread(b.figure("steady.speed_kmh", kmPerH, b.a.Steady.SpeedKmh))
	})
	row(capital(startAmps), func(b *builder) (cell, bool) {
		if b.a.Launch == nil || b.a.NeverRidden() {
			return cell{}, false
		}
		return spread(b.figure("launch.peak_battery_a", amps, about(b.a.Launch.PeakBatteryA)))
	})
	row("Motor amps", func(b *builder) (cell, bool) {
		if b.a.Launch == nil || b.a.NeverRidden() || lean > 1 {
			return cell{}, false
		}
		return spread(b.figure("launch.peak_motor_a", amps, about(b.a.Launch.PeakMotorA)))
	})
	for _, fate := range []struct {
		name string
		of   func(answer.DrawFigures) float64
	}{
		{"Gets stuck", func(d answer.DrawFigures) float64 { return d.Stuck }},
		{"Burns out", func(d answer.DrawFigures) float64 { return d.Burnt }},
		{"Cut short", func(d answer.DrawFigures) float64 { return d.CutShort }},
	} {
		row(fate.name, func(b *builder) (cell, bool) {
			n := fate.of(b.a.Draws)
			return cell{value: counted(n)}, n > 0
		})
	}
	if lean > 0 {
		return x.inGrid(g)
	}
	row("Full volts", func(b *builder) (cell, bool) { return spread(b.figure("pack.full_v", volts, b.a.Pack.FullV)) })
	return x.inGrid(g)
}

func (x *comparer) inGrid(g grid) section {
	s := section{title: "In figures", side: g}
	s.text = []string{"Likely values, with where " + counted(x.Columns[0].Answer.Draws.Inside) + " " + x.of[0].kindred() + " lie:"}
	return s
}

func (x *comparer) lastsName() string {
	for _, b := range x.of {
		if !b.bench() {
			return "Pedal down"
		}
	}
	return "Under load"
}

// amongUsable says which columns the best are the best of.
func (x *comparer) amongUsable() []string {
	yes := x.letters(true)
	switch {
	case len(yes) == 0:
		return []string{"None may be used as it is; of all:"}
	case len(yes) < len(x.Columns):
		return []string{"Of those that may be used (" + and(yes) + "):"}
	}
	return nil
}

// best says which column is the best in what.
func (x *comparer) best() []fact {
	var facts []fact
	if yes := x.letters(true); len(yes) == 1 {
		return nil // it is that one
	}
	for _, b := range x.Best {
		name := map[answer.Merit]string{
			answer.MeritTime: "Lasts longest", answer.MeritSpeed: "Fastest", answer.MeritAsSpeed: "As fast as before",
			answer.MeritGentle: "Gentlest start",
		}[b.For]
		value := "no difference"
		if b.Column >= 0 && b.Column < len(x.Columns) {
			value = x.Columns[b.Column].Letter
			if b.For == answer.MeritAsSpeed {
				value += " comes nearest"
			}
			switch {
			case b.Share > 0 && b.Share < 0.6 && len(x.Columns) == 2:
				value = "hardly a difference"
			case b.Share > 0 && b.Share < 0.995:
				value = so(value, b.Share)
			}
		}
		facts = append(facts, fact{name, value})
	}
	return facts
}

// against is what the columns differ by from the first.
func (x *comparer) against() []fact {
	var facts []fact
	for i, col := range x.Columns {
		if i == 0 || len(col.Against) == 0 {
			continue
		}
		var parts []string
		for _, d := range []struct {
			path             string
			u                unit
			more, less, same string
			of               string
		}{
			{"ride.lasts_pedal_min", minutes, "longer", "shorter", "about as long", ""},
			{"steady.speed_kmh", kmPerH, "faster", "slower", "about as fast", ""},
			{"launch.peak_motor_a", amps, "more", "less", "about as much", "motors at the start "},
		} {
			r, ok := col.Against[d.path]
			if text := x.difference(d.u, r, d.more, d.less, d.same); ok && text != "" {
				parts = append(parts, d.of+text)
			}
		}
		facts = append(facts, fact{col.Letter, orElse(strings.Join(parts, ", "), "no difference")})
	}
	return facts
}

// lostIn is the share of its farther end below which the middle of a difference is none.
// Own choice.
const lostIn = 0.05

// difference says one difference with where eight of ten lie, in steps of a tenth
// to a hundredth of what it spreads over.
func (x *comparer) difference(u unit, r answer.Range, more, less, same string) string {
	if r.Low == 0 && r.High == 0 {
		return ""
	}
	width := max(r.High-r.Low, math.Abs(r.Likely)/10, u.finest)
	step := max(u.finest, math.Pow(10, math.Floor(math.Log10(width))-1))
	if u.kind == quantity.Duration && width >= 4*60/u.per {
		step = max(step, 60/u.per) // nobody can use the seconds
	}
	said := func(v float64) string { return quantity.Format(u.kind, math.Abs(v)*u.per, x.System) }
	word := func(v float64) string {
		if v < 0 {
			return less
		}
		return more
	}
	low, likely, high := toStep(r.Low, step), toStep(r.Likely, step), toStep(r.High, step)
	if math.Abs(likely) < lostIn*max(math.Abs(low), math.Abs(high)) { // the wider end alone says something
		likely = 0
	}
	if likely < 0 && high <= 0 { // the smaller one first
		low, high = high, low
	}
	text := said(likely) + " " + word(likely)
	if likely == 0 {
		text = same
	}
	switch {
	case low == high:
		return text
	case likely == 0 && low >= 0:
		return text + " (" + x.apartBy(said, low, high) + " " + more + ")"
	case likely == 0 && high <= 0:
		return text + " (" + x.apartBy(said, high, low) + " " + less + ")"
	case low < 0 && high > 0:
		return text + " (" + said(low) + " " + less + " to " + said(high) + " " + more + ")"
	}
	return text + " (" + x.apartBy(said, low, high) + ")"
}

// apartBy is a range of differences on one side, the unit said once where it is the same.
func (x *comparer) apartBy(said func(float64) string, low, high float64) string {
	first, last := said(low), said(high)
	if number, unit, _ := strings.Cut(last, " "); strings.Count(unit, " ") == 0 && number != "" {
		first = strings.TrimSuffix(first, " "+unit)
	}
	return first + " to " + last
}
