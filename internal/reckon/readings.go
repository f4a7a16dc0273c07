package reckon

import (
	"fmt"
	"math"

	"example.org/packcheck/battery"
	"example.org/packcheck/drive"
	"example.org/packcheck/internal/build"
	"example.org/packcheck/internal/draws"
	"example.org/packcheck/internal/portable"
	"example.org/packcheck/internal/ride"
	"example.org/packcheck/setup"
)

// reading is something read on the real thing and how a vehicle foretells it.
type reading struct {
	key, name, unit string
	value           setup.Value
	original        bool    // of the vehicle with its original battery
	linear          bool    // weighed as it is; otherwise by its logarithm
	err             float64 // standard error: a share, or in the unit where linear
	stated          bool    // the setup gave the error
	gives           func(*subject) float64
}

// told is the reading as a sentence names it.
func (r *reading) told() string { return fmt.Sprintf("\"%s = %s\"", r.name, r.value.Text) }

// subject is a vehicle that readings are foretold of. Of those that need an outing
// the first drives it.
type subject struct {
	*build.Built
	lasts, level, wanted *ride.Outcome
}

// lasting is the outing of a case for as long as it lasts, driven once and kept.
func lasting(c *ride.Case, kept **ride.Outcome) *ride.Outcome {
	if *kept == nil {
		out := ride.Run(c, nil)
		*kept = &out
	}
	return *kept
}

// outing is the one from a full battery, as long as it lasts.
func (s *subject) outing() *ride.Outcome {
	open := freshly(s.Built)
	return lasting(&open, &s.lasts)
}

// timed is a figure of a whole ride that somebody took the time of: no number where the
// motors end it, for then it is not that of a battery that was driven empty. A drive that
// climbs comes down again, so it lies between the climb and the level: in the middle.
func (s *subject) timed(of func(*ride.Outcome) float64) float64 {
	figure := func(o *ride.Outcome) float64 {
		if s.Load.Kind == ride.NoLoad && o.EndsByMotors(1) {
			return math.NaN()
		}
		return of(o)
	}
	up := figure(s.outing())
	if s.Level == nil || math.IsNaN(up) {
		return up
	}
	open := onTheLevel(freshly(s.Built))
	return math.Sqrt(up * figure(lasting(&open, &s.level)))
}

// timedDoubt is how far, as a share, a figure of a whole ride may lie from the middle
// between climb and level, where the likely vehicle has it: nine in ten lie between them.
func timedDoubt(p *setup.Parts, of func(*ride.Outcome) float64) float64 {
	likely, ok := likelyCase(p)
	if !ok || likely.Level == nil {
		return 0
	}
	s := subject{Built: likely}
	middle, up := s.timed(of), of(s.outing())
	if !(up > 0) || !(middle > 0) {
		return 0
	}
	return math.Abs(math.Log(middle/up)) / nineOfTen
}

// drive is the outing from a full battery of as long as was asked for, where that is
// known.
func (s *subject) drive() *ride.Outcome {
	if s.WantedS == 0 {
		return s.outing()
	}
	asked := freshly(s.Built)
	asked.WantedS = s.WantedS
	return lasting(&asked, &s.wanted)
}

// What a reading at home is usually off by, as a share (one standard error):
// clocks that were started late, ten paced metres, meters on a leaning scale.
// Common practice, no published source; the law of the errors has heavy tails
// beyond that.
const (
	clockErr, paceErr, clampErr, blockedErr, scaleErr = 0.15, 0.10, 0.12, 0.15, 0.15

	// voltErr is of the battery's nominal volts: a cheap meter, and a load that is
	// not quite steady. When it was read comes on top. Own choice.
	voltErr = 0.012

	leastErr = 0.01 // nobody at home reads better, whatever is stated
)

// readAfterS is when a meter is read after a load came on; nobody writes it
// down, and nine in ten read it between soon and late. Own choice.
const readSoonS, readAfterS, readLateS = 5, 30, 300

// midwayLeft is how much of its charge a battery has left when somebody reads its
// volts while driving; nine in ten read them between full and leastLeft. Own choice.
const midwayLeft, leastLeft = 0.6, 0.2

// leftUnderLoad is how much charge a battery has left when its volts are read under
// load, whatever it holds today: what the volts at rest beside them tell, for the two
// are read together, or anything of a drive.
func leftUnderLoad(c *build.Built) (least, likely, most float64) {
	if c.Parts.Measured.RestVoltage.Given {
		return c.Parts.ChargeAtRest(c.Pick)
	}
	return leastLeft, midwayLeft, 1
}

// readings lists what was measured, in the order of the keys.
func readings(p *setup.Parts) []reading {
	var list []reading
	for _, q := range []*setup.Parts{p, p.Original} {
		if q == nil || q.Measured == nil {
			continue
		}
		list = append(list, readingsOf(q, q != p)...)
	}
	for i := range list {
		if list[i].original {
			list[i].name += setup.OnOriginal
		}
	}
	return list
}

// readingsOf lists what was measured on one battery.
func readingsOf(p *setup.Parts, original bool) []reading {
	m := p.Measured
	var list []reading
	add := func(v setup.Value, r reading) {
		if !v.Given {
			return
		}
		r.key, r.value, r.original = v.Key, v, original
		if !v.IsExact() { // limits: JCGM 100:2008, 4.3.7
			r.stated, r.err = true, (v.High-v.Low)/2/math.Sqrt(3)
			if !r.linear {
				r.err /= v.Likely
			}
		}
		if !r.linear {
			r.err = max(r.err, leastErr)
		}
		list = append(list, r)
	}
	ofRide := func(v setup.Value, name, unit string, of func(*ride.Outcome) float64) {
		if !v.Given {
			return
		}
		add(v, reading{name: name, unit: unit, err: clockErr, gives: func(c *subject) float64 { return c.timed(of) }})
		r := &list[len(list)-1]
		r.err = math.Hypot(r.err, timedDoubt(p, of))
	}
	ofRide(m.RideTime, "ride time by the clock", "s", func(o *ride.Outcome) float64 { return o.ClockS })
	if p.Bench == nil {
		add(m.TopSpeed, reading{name: "top speed", unit: "m/s", err: paceErr, gives: func(c *subject) float64 {
			return onTheFlat(c.Built).SpeedMS
		}})
		if m.LoadedCurrent.Given && m.LoadedCurrent.Likely > 0 {
			add(m.LoadedCurrent, reading{name: "amps while driving", unit: "A", err: clampErr, gives: func(c *subject) float64 {
				return onTheFlat(c.Built).BatteryA
			}})
		}
		ofRide(m.Distance, "how far it went", "m", func(o *ride.Outcome) float64 { return o.DistanceM })
		add(m.MotorVoltage, reading{
			name: "volts at one motor", unit: "V", linear: true, err: voltErr * m.MotorVoltage.Likely, gives: func(c *subject) float64 {
				level := onTheFlat(c.Built)
				return level.BusV * level.Duty / float64(max(c.Vehicle.MotorsInSeries, 1))
			},
		})
		add(m.BlockedCurrent, reading{name: "amps with blocked wheels", unit: "A", err: blockedErr, gives: func(c *subject) float64 { return blockedA(c.Built) }})
		add(m.PullForce, reading{name: "force to pull it along", unit: "N", err: scaleErr, gives: func(c *subject) float64 {
			return c.Vehicle.RollN + c.Vehicle.GradeN
		}})
	}
	if p.Motors != nil && p.Motors.AmbientKPerW.Known && p.Motors.CaseTauS.Known {
		list = append(list, motorCase(p, original)...)
	}
	amps := m.LoadedCurrent
	if !amps.Given && p.Bench != nil && p.Bench.Pattern != nil {
		return list // nobody knows at which of its currents the volts were read
	}
	at := func(c *build.Built, left, afterS float64) float64 {
		s := c.Pack.StateAt(left, c.PackC)
		loadA := amps.Likely
		if !amps.Given {
			loadA = lastingA(c, &s)
		}
		return voltsUnder(c.Pack, s, loadA, afterS)
	}
	err := voltErr * p.PackV()
	if m.LoadedVoltage.Given {
		if likely, ok := likelyCase(p); ok {
			least, left, most := leftUnderLoad(likely)
			err = math.Hypot(err, (at(likely, left, readSoonS)-at(likely, left, readLateS))/2/nineOfTen)
			err = math.Hypot(err, (at(likely, most, readAfterS)-at(likely, least, readAfterS))/2/nineOfTen)
		}
	}
	add(m.LoadedVoltage, reading{name: "volts under load", unit: "V", linear: true, err: err, gives: func(c *subject) float64 {
		_, left, _ := leftUnderLoad(c.Built)
		return at(c.Built, left, readAfterS)
	}})
	return list
}

// What a motor's case that was read after a drive is off by, in K by the kind of
// reading, and as a share of its rise because nobody writes down how long was
// driven and how soon it was read. Own choice.
const thermometerErrK, touchErrK, driveErr = 3, 6, 0.25

// motorCase lists what was read of a motor's case after a drive.
func motorCase(p *setup.Parts, original bool) (list []reading) {
	for _, k := range []struct {
		name string
		v    setup.Value
		errK float64
	}{
		{"motor case after a drive", p.Measured.MotorTemperature, thermometerErrK},
		{"motor case after a drive, by touch", p.TouchedC(), touchErrK},
	} {
		if !k.v.Given {
			continue
		}
		r := reading{key: k.v.Key, name: k.name, unit: "degC", value: k.v, original: original, linear: true, err: k.errK}
		if !k.v.IsExact() {
			r.stated, r.err = true, max(k.errK, (k.v.High-k.v.Low)/2/math.Sqrt(3))
		}
		r.err = math.Hypot(r.err, driveErr*(k.v.Likely-p.Outing.AirC.Likely))
		r.gives = func(c *subject) float64 { return min(c.drive().CaseC, ride.BurntC) }
		list = append(list, r)
	}
	return list
}

// nineOfTen is the standard normal between whose signs nine in ten lie.
const nineOfTen = 1.6448536269514722

// likelyCase is the case with every figure at its likely value.
func likelyCase(p *setup.Parts) (*build.Built, bool) {
	b, err := build.New(p)
	if err != nil {
		return nil, false
	}
	c, err := b.Case(setup.Likely)
	return c, err == nil
}

// lastingA is the current of a load that stays as it is: level running, or what
// a bench draws.
func lastingA(c *build.Built, s *battery.State) float64 {
	switch c.Load.Kind {
	case ride.NoLoad:
		return onTheFlat(c).BatteryA
	case ride.ConstantPower:
		const rounds = 8 // each brings the volts a decade nearer
		amps := 0.0
		for range rounds {
			amps = c.Load.Amount / c.Pack.TerminalV(s, amps)
		}
		return amps
	}
	return c.Load.Amount
}

// freshly is the case from a full battery, driven until something ends it:
// times and speeds are taken so, whatever the battery holds today.
func freshly(c *build.Built) ride.Case {
	open := c.Case
	open.WantedS, open.StartCharge = 0, 1
	return open
}

// onTheLevel is a case of a vehicle that climbs without its climb.
func onTheLevel(c ride.Case) ride.Case {
	c.Vehicle, c.Level = *c.Level, nil
	return c
}

// onTheFlat is level running with a full battery.
func onTheFlat(c *build.Built) drive.Running {
	fresh := freshly(c)
	return fresh.OnTheFlat()
}

// blockedA is the current with the wheels held, of a full battery.
func blockedA(c *build.Built) float64 {
	cold, fresh := c.Vehicle, freshly(c)
	cold.Motor.Thermal = drive.Thermal{}
	return fresh.Hold(cold).BatteryA
}

// voltsUnder is what a battery shows some seconds after a load came on.
func voltsUnder(m *battery.Model, s battery.State, amps, afterS float64) float64 {
	const parts = 10
	step := m.Over(afterS / parts)
	tempC := s.TempC
	for range parts {
		step.Advance(&s, amps, tempC)
	}
	return m.TerminalV(&s, amps)
}

// scaled brings a value into the scale in which its errors are alike.
func (r *reading) scaled(v float64) float64 {
	if r.linear {
		return v
	}
	return math.Log(v)
}

// back undoes scaled.
func (r *reading) back(v float64) float64 {
	if r.linear {
		return v
	}
	return portable.Exp(v)
}

// model foretells the readings of a point.
func (e *engine) model(list []reading) draws.Model {
	return func(_ int, z, out []float64) bool {
		m, err := e.maker(z)
		if err != nil {
			return false
		}
		pick := e.world.Pick(z)
		var now, was subject
		for i := range list {
			r := &list[i]
			b, c := m.now, &now
			if r.original {
				b, c = m.was, &was
			}
			if c.Built == nil {
				if c.Built, err = b.Case(pick); err != nil {
					return false
				}
			}
			v := r.gives(c)
			if !r.linear && !(v > 0) {
				return false
			}
			out[i] = r.scaled(v)
		}
		return true
	}
}

// asRead are the readings as package draws takes them.
func asRead(list []reading) []draws.Reading {
	out := make([]draws.Reading, len(list))
	for i := range list {
		r := &list[i]
		out[i] = draws.Reading{Value: r.scaled(r.value.Likely), Err: r.err}
	}
	return out
}
