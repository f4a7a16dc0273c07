package reckon

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"example.org/packcheck/answer"
	"example.org/packcheck/internal/draws"
	"example.org/packcheck/internal/interview"
	"example.org/packcheck/setup"
)

// candidate is something that somebody at home can find out, with what a draw
// foretells of it. How it is found out is said where it is asked for, in package
// interview.
type candidate struct {
	key, what string
	err       float64 // standard error of the reading, as a share; with a choice, of its number
	choice    bool
	of        func(*Vehicle) float64 // nil: the value of the unknown with this key
}

// warmErr is of a motor's rise over the air: [driveErr], and [thermometerErrK] of a
// rise of 12 K, which is little. Own choice.
const warmErr = 0.35

// candidates lists what can be found out, the usual way of each.
func candidates(p *setup.Parts) []candidate {
	list := []candidate{
		{key: "measured.ride_time", what: "how long it lasts", err: clockErr, of: func(v *Vehicle) float64 {
			if v.Was != nil {
				return v.Was.Lasts.ClockS
			}
			return v.Seen.Lasts.ClockS
		}},
		{key: "measured.top_speed", what: "the top speed", err: paceErr, of: driven(func(v *Vehicle) float64 {
			if v.Was != nil {
				return v.Was.Steady.SpeedMS
			}
			return v.Seen.Steady.SpeedMS
		})},
		{key: "measured.pull_force", what: "the force that pulls it along", err: scaleErr, of: driven(func(v *Vehicle) float64 {
			return v.Now.Vehicle.RollN + v.Now.Vehicle.GradeN
		})},
		{key: "measured.loaded_current", what: "the amps while driving", err: clampErr, of: driven(func(v *Vehicle) float64 {
			if v.Was != nil {
				return v.Was.Steady.BatteryA
			}
			return v.Seen.Steady.BatteryA
		})},
		{key: "measured.motor_temperature", what: "how warm a motor gets", err: warmErr, of: heated(func(v *Vehicle) float64 {
			if v.Was != nil {
				return v.Was.Outing.CaseC - v.Now.AmbientC
			}
			return v.Seen.Outing.CaseC - v.Now.AmbientC
		})},
		{key: "gears.ratio", what: "the gearing", err: 0.02, of: driven(func(v *Vehicle) float64 { return v.Now.Vehicle.GearRatio })},
		{key: "vehicle.claimed_speed", what: "the speed that the box claims", err: 0.2, of: driven(func(v *Vehicle) float64 {
			if v.Was != nil {
				return v.Was.Steady.SpeedMS
			}
			return v.Seen.Steady.SpeedMS
		})},
		{key: "rider.mass", what: "the child's weight", err: 0.02},
		{key: "vehicle.mass", what: "the vehicle's weight", err: 0.03},
		{key: "vehicle.wheel_diameter", what: "the driven wheels' diameter", err: 0.01},
		{key: "motors.can", what: "the motors' size", err: 0.1, choice: true},
		{key: "motors.count", what: "how many motors it has", err: 0.05},
		{key: "motors.wiring", what: "how the motors are joined", err: 0.1, choice: true},
		{key: "motors.winding_resistance", what: "what one motor draws when held", err: 0.1},
		{key: "controller.kind", what: "whether a board or plain contacts switch the motors", err: 0.1, choice: true},
		{key: "pack.capacity", what: "the pack's capacity", err: 0.02},
		{key: "pack.health", what: "what the pack still holds", err: 0.04},
		{key: "pack.resistance", what: "the pack's resistance", err: 0.15},
		{key: "wire.gauge", what: "the wire's size", err: 0.03},
		{key: "outing.pause", what: "how it is driven", err: 0.15},
		{key: "outing.drive", what: "how it is driven", err: 0.15},
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
		return math.NaN()
	case c.choice:
		return e.world.Number(slot, z)
	}
	return logOf(e.world.Value(slot, v.Now.Pick))
}

// logOf is none for what stands still or is not there: nobody can read it.
func logOf(x float64) float64 { return math.Log(positive(x)) }

// A measurement is worth asking for when one of the ranges is expected to shrink
// by a twentieth, or one verdict in fifty to turn. Own choice.
const leastShrink, leastTurn = 0.05, 0.02

// measure says what each thing that can be found out is worth, where it is worth
// anything.
func (e *engine) measure(d *drawn, t *table) ([]answer.Measurement, error) {
	j := &t.judged
	verdict := make([]int, len(j.findings))
	for i, list := range j.findings {
		verdict[i] = int(answer.Worst(list))
	}
	var figures [][]float64
	for i, figure := range metrics.Get() {
		switch figure.path {
		case minutesPath, speedPath, launchPath:
			row := make([]float64, len(j.at))
			for k, x := range j.values[i] {
				row[k] = math.Log(max(x, 1e-3)) // what stands still has some time too
			}
			figures = append(figures, row)
		}
	}
	prospects, err := draws.NewProspects(len(j.at), figures, verdict, j.weight)
	if err != nil {
		return nil, err
	}
	var list []answer.Measurement
	questions := interview.ByKey()
	for i := range e.candidates {
		c := &e.candidates[i]
		g, err := prospects.Expect(j.foretold[i], c.err)
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
		q := questions[c.key]
		m := askedAs(&q)
		m.What, m.Key = c.what, c.key
		m.Verdict, m.Minutes = max(0, g.WrongNow-g.WrongThen), shrink(minutesFigure)
		if len(figures) > 1 && e.parts.Bench == nil {
			m.Speed, m.Amps = shrink(speedFigure), shrink(launchFigure)
		}
		if max(m.Minutes, m.Speed, m.Amps) < leastShrink && m.Verdict < leastTurn {
			continue
		}
		m.Narrows = narrows(&m)
		list = append(list, m)
	}
	return list, nil
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
