package reckon

import (
	"cmp"
	"fmt"
	"math"
	"slices"
	"strings"

	"example.org/packcheck/answer"
	"example.org/packcheck/internal/draws"
	"example.org/packcheck/setup"
)

// How hard something is to find out.
const (
	look    = 1 // eyes are enough
	tool    = 2 // a tape, a clock, a bathroom or luggage scale
	meter   = 3 // an electrical meter
	project = 4 // an afternoon
)

// candidate is something that somebody at home can find out, with what a draw
// foretells of it.
type candidate struct {
	key, what, how string
	ease           int
	err            float64 // standard error of the reading, as a share; with a choice, of its number
	choice         bool
	of             func(*Vehicle) float64 // nil: the value of the unknown with this key
}

// candidates lists what can be found out, the usual way of each.
func candidates(p *setup.Parts) []candidate {
	list := []candidate{
		{key: "measured.ride_time", what: "how long it lasts", how: "Charge it full and time a ride by the clock until it stops; enter it as ride_time under [measured].", ease: tool, err: clockErr, of: func(v *Vehicle) float64 {
			if v.Was != nil {
				return v.Was.Lasts.ClockS
			}
			return v.Seen.Lasts.ClockS
		}},
		{key: "measured.top_speed", what: "the top speed", how: "Time ten metres at full speed on the flat; enter it as top_speed under [measured].", ease: tool, err: paceErr, of: driven(func(v *Vehicle) float64 {
			if v.Was != nil {
				return v.Was.Steady.SpeedMS
			}
			return v.Seen.Steady.SpeedMS
		})},
		{key: "measured.pull_force", what: "the force that pulls it along", how: "Pull the loaded vehicle slowly over this ground with a luggage scale; enter it as pull_force under [measured].", ease: tool, err: scaleErr, of: driven(func(v *Vehicle) float64 {
			return v.Now.Vehicle.RollN + v.Now.Vehicle.GradeN
		})},
		{key: "measured.loaded_current", what: "the amps while driving", how: "Clamp a direct-current meter around one battery wire while an adult walks beside; enter it as loaded_current under [measured].", ease: meter, err: clampErr, of: driven(func(v *Vehicle) float64 {
			if v.Was != nil {
				return v.Was.Steady.BatteryA
			}
			return v.Seen.Steady.BatteryA
		})},
		{key: "gears.ratio", what: "the gearing", how: "Turn a wheel once by hand and count the turns of the motor, or count teeth; enter it as ratio under [gears].", ease: tool, err: 0.02, of: driven(func(v *Vehicle) float64 { return v.Now.Vehicle.GearRatio })},
		{key: "vehicle.claimed_speed", what: "the speed that the box claims", how: "Read the box or the manual; enter it as claimed_speed under [vehicle].", ease: look, err: 0.2, of: driven(func(v *Vehicle) float64 {
			if v.Was != nil {
				return v.Was.Steady.SpeedMS
			}
			return v.Seen.Steady.SpeedMS
		})},
		{key: "rider.mass", what: "the child's weight", how: "Put the child on a bathroom scale; enter it as mass under [rider].", ease: tool, err: 0.02},
		{key: "vehicle.mass", what: "the vehicle's weight", how: "Put it on a bathroom scale; enter it as mass under [vehicle].", ease: tool, err: 0.03},
		{key: "vehicle.wheel_diameter", what: "the driven wheels' diameter", how: "Measure it with a tape; enter it as wheel_diameter under [vehicle].", ease: tool, err: 0.01},
		{key: "motors.can", what: "the motors' size", how: "Read what is printed on a motor, or measure its can: 28 mm is size 380, 36 mm is size 540 or 550, 42 mm and more is size 775; enter it as can under [motors].", ease: look, err: 0.1, choice: true},
		{key: "motors.count", what: "how many motors it has", how: "Look behind the driven wheels; enter it as count under [motors].", ease: look, err: 0.05},
		{key: "motors.wiring", what: "how the motors are joined", how: "Follow their wires: both on the same two wires is parallel, one behind the other is series; enter it as wiring under [motors].", ease: look, err: 0.1, choice: true},
		{key: "motors.winding_resistance", what: "what one motor draws when held", how: "Look for stall current and speed in the sheet of the motor that is printed on it; enter them under [motors]. An ordinary ohmmeter misleads here.", ease: meter, err: 0.1},
		{key: "controller.kind", what: "whether a board or plain contacts switch the motors", how: "Open the hood: a printed board with transistors, or only a switch under the pedal; enter it as kind under [controller].", ease: look, err: 0.1, choice: true},
		{key: "pack.capacity", what: "the pack's capacity", how: "Read its label; enter it as capacity under [pack].", ease: look, err: 0.02},
		{key: "pack.health", what: "what the pack still holds", how: "Log a discharge at a steady load and let packcheck fit read it; enter what it prints.", ease: project, err: 0.04},
		{key: "pack.resistance", what: "the pack's resistance", how: "Read its volts at rest and ten seconds into a known load; enter the difference over the amps as resistance under [pack].", ease: meter, err: 0.15},
		{key: "wire.gauge", what: "the wire's size", how: "Read its print; enter it as gauge or area under [wire].", ease: look, err: 0.03},
		{key: "outing.pause", what: "how it is driven", how: "Watch the clock for five minutes: how long the pedal is down, how long it is up; enter it as drive and pause under [outing].", ease: tool, err: 0.15},
		{key: "outing.drive", what: "how it is driven", how: "Watch the clock for five minutes: how long the pedal is down, how long it is up; enter it as drive and pause under [outing].", ease: tool, err: 0.15},
	}
	return slices.DeleteFunc(list, func(c candidate) bool { return had(p, c.key) })
}

// had reports whether the setup has a key already.
func had(p *setup.Parts, key string) bool {
	if key == "gears.ratio" && p.Gears != nil && !p.Gears.Fitted {
		return true
	}
	name, measured := strings.CutPrefix(key, "measured.")
	for _, q := range []*setup.Parts{p, p.Original} {
		if q == nil {
			continue
		}
		if measured && q.Measured != nil && q.Measured.Has(name) {
			return true
		}
		if key == "vehicle.claimed_speed" && (q.Setup.Vehicle.ClaimedSpeed.Given || q.Gears != nil && !q.Gears.Fitted) {
			return true
		}
	}
	return false
}

// foretell returns what a draw would read, in the scale of the error; NaN where
// it is no reading.
func (c *candidate) foretell(e *engine, slot int, v *Vehicle, z []float64) float64 {
	switch {
	case c.of != nil:
		return logOf(c.of(v))
	case slot < 0:
		return none
	case c.choice:
		return e.world.Number(slot, z)
	}
	return logOf(e.world.Value(slot, z))
}

// logOf is none for what stands still or is not there: nobody can read it.
func logOf(x float64) float64 { return math.Log(positive(x)) }

// mostMeasurements is how many a report asks for.
const mostMeasurements = 3

// A measurement is worth asking for when one of the ranges is expected to shrink
// by a twentieth, or one verdict in fifty to turn. Own choice.
const leastShrink, leastTurn = 0.05, 0.02

// measure says what to find out next: what changes the verdict most, then what
// is easiest.
func (e *engine) measure(d *drawn, t *table) ([]answer.Measurement, error) {
	j := &t.judged
	verdict := make([]int, len(j.findings))
	for i, list := range j.findings {
		verdict[i] = int(answer.Worst(list))
	}
	var figures [][]float64
	for i := range metrics {
		switch metrics[i].path {
		case minutesPath, speedPath, launchPath:
			row := make([]float64, len(j.at))
			for k, x := range j.values[i] {
				row[k] = math.Log(max(x, 1e-3)) // what stands still has some time too
			}
			figures = append(figures, row)
		}
	}
	type found struct {
		answer.Measurement
		ease int
	}
	var list []found
	for i := range e.candidates {
		c := &e.candidates[i]
		g, err := draws.Expect(j.foretold[i], c.err, figures, verdict, j.weight)
		if err != nil {
			return nil, err
		}
		if g.Readable < 0.5 {
			continue
		}
		shrink := func(k int) float64 {
			if x := 1 - g.Width[k]; x > 0 {
				return x
			}
			return 0
		}
		m := answer.Measurement{
			What: c.what, How: c.how, Key: c.key, Verdict: max(0, g.WrongNow-g.WrongThen),
			Minutes: shrink(minutesFigure),
		}
		if len(figures) > 1 && e.parts.Bench == nil {
			m.Speed, m.Amps = shrink(speedFigure), shrink(launchFigure)
		}
		if max(m.Minutes, m.Speed, m.Amps) < leastShrink && m.Verdict < leastTurn {
			continue
		}
		m.Narrows = narrows(&m)
		list = append(list, found{m, c.ease})
	}
	step := func(x float64) int { return int(x / leastTurn) }
	slices.SortStableFunc(list, func(a, b found) int {
		return cmp.Or(
			cmp.Compare(step(b.Verdict), step(a.Verdict)), cmp.Compare(a.ease, b.ease),
			cmp.Compare(b.Minutes+b.Speed+b.Amps, a.Minutes+a.Speed+a.Amps),
		)
	})
	var out []answer.Measurement
	for _, m := range list {
		if len(out) < mostMeasurements && !slices.ContainsFunc(out, func(o answer.Measurement) bool { return o.What == m.What }) {
			out = append(out, m.Measurement)
		}
	}
	return out, nil
}

// The figures of [engine.measure], in the order of the metrics.
const speedFigure, launchFigure, minutesFigure = 0, 1, 2

// narrows says what a measurement is expected to do.
func narrows(m *answer.Measurement) string {
	var parts []string
	for _, f := range []struct {
		name string
		by   float64
	}{{"ride time", m.Minutes}, {"speed", m.Speed}, {"launch current", m.Amps}} {
		if f.by >= leastShrink {
			parts = append(parts, fmt.Sprintf("%s by %.0f %%", f.name, 100*f.by))
		}
	}
	text := ""
	if len(parts) > 0 {
		text = "it narrows " + strings.Join(parts, ", ")
	}
	if m.Verdict >= leastTurn {
		if text != "" {
			text += "; "
		}
		text += fmt.Sprintf("it may change the verdict (%.0f in 100)", 100*m.Verdict)
	}
	return text
}
