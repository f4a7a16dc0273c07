package setup

import (
	"math"

	"example.org/packcheck/drive"
	"example.org/packcheck/internal/portable"
	"example.org/packcheck/internal/quantity"
	"example.org/packcheck/tables"
)

// How long vehicles of a class last when new is told of the class, so it is a
// reading of every one of it: motors, gears and speed that would empty the usual
// battery in twenty minutes, or in four hours, are not in such vehicles together.
// It is weighed like any reading. Over what is drawn, standard normal all of it, the
// logarithm of the time foretold is nearly straight; so a draw z that was
// made without the reading is moved to
//
//	z + a (ln y - ln t(z) - s e) / (a a + s s)
//
// with the slopes a of ln t, the time told y, its error s and one more standard
// normal e, and is then a draw that was made with it (conditioning by kriging,
// A. Journel and C. Huijbregts, Mining Geostatistics, 1978; the same as Matheron's
// rule). As with any reading now and then one is far off: s is drawn too.
//
// Of a class of which nobody tells how long it lasts, the speed is such a reading: gears
// are fitted to the speed drawn, and motors that cannot come to it in any gear that
// gets the greatest load going are not in vehicles that are told to. What can stays
// where it is.
type asNew struct {
	of     *Parts    // of the vehicle as it was made
	told   float64   // ln y; of speeds, over the one drawn, 0
	fast   bool      // the reading is the speed
	slope  []float64 // by place in a point
	square float64   // a a
	err    float64   // s where it is likely
	errAt  int       // place of e
	sureAt int       // place of what s is drawn by
}

// The error of a reading has heavy tails, Student's with four degrees of freedom: a
// normal error of which the size is drawn, with these moments of its logarithm (of
// sqrt(4 / chi-square): -(psi(2) - ln 2)/2 and sqrt(psi'(2))/2).
const sizeMean, sizeSigma = 0.135, 0.40

// newRide is what is known of how long vehicles of a class last when new.
type newRide struct {
	rideS   quantity.Range // as a reading of this vehicle
	err     float64        // standard error of its logarithm
	fast    bool           // it is the speed that is told, and nothing of how long they last
	ah      float64        // of the battery, where it is not drawn
	own     bool           // the vehicle has the battery that it was made for: it is drawn
	peukert float64        // exponent of a usual block
	ratedH  float64
}

// What the standard error of the logarithm of a time is made of beside the times
// told themselves. Computed from the rows of what is named.
const (
	// Children weigh what they weigh; of another ground than asphalt, on which times
	// are told, it is not known how hard it would roll there (3.3 to 5 mm).
	riderErr, rollingErr = 0.05, 0.11
	// Blocks hold 0.82 to 1.14 of their label, and steep ones less in an hour.
	blockErr = 0.13
	// Larger batteries are put into vehicles that draw more: times of a class differ
	// by less than its batteries do. With what a battery holds more, the time goes by
	// its root, which leaves either end out by this power of it (0 is a battery chosen
	// for the hour, 1 the same vehicle with another battery).
	timeByAh, timeByAhErr = 0.5, 0.3
	// A vehicle comes as near as this to the speed that its gears were fitted to. Own
	// choice.
	fastErr = 0.05
)

// toldOf says what is known of the class's vehicles when new, where this one is as
// they were made: nobody put other motors in, and nobody counted the teeth.
func (r *resolver) toldOf(class tables.VehicleClass) *newRide {
	m := r.setup.Motors
	other := m.NoLoadSpeed.Given || m.NoLoadCurrent.Given || m.StallCurrent.Given || m.WindingResistance.Given || m.TorqueConstant.Given
	if other || r.setup.Gears.Ratio.Given {
		return nil
	}
	if !class.RideS.Known() || !class.BatteryAh.Known() {
		return &newRide{fast: true, err: fastErr}
	}
	n := &newRide{rideS: span(class.RideS), ah: class.BatteryAh.Likely, peukert: r.tab.Figure(tables.PeukertLead).Likely, ratedH: 20}
	ofTime := math.Log(n.rideS.High/n.rideS.Low) / (2 * endSigma)
	ofBattery := n.peukert * math.Log(class.BatteryAh.High/class.BatteryAh.Low) / (2 * endSigma)
	ofLoad := riderErr
	if !r.parts.Vehicle.onAsphalt() {
		ofLoad = math.Hypot(riderErr, rollingErr)
	}
	b := &r.parts.Pack
	n.own = r.parts.OnBlocks() && b.Joined != "parallel" && !b.SeveralMeanings
	if !n.own {
		n.err = math.Sqrt(ofTime*ofTime + ofBattery*ofBattery + blockErr*blockErr + ofLoad*ofLoad)
		return n
	}
	more := math.Log(b.CapacityAh.Likely * float64(b.Strings) / n.ah)
	n.ah, n.ratedH = b.CapacityAh.Likely, b.RateS.Likely/3600
	n.rideS = n.rideS.Scale(portable.Exp(timeByAh * more))
	n.err = math.Sqrt(ofTime*ofTime + timeByAhErr*timeByAhErr*more*more + ofLoad*ofLoad)
	return n
}

// seconds is how long a battery gives a current: Peukert's law from the rate that
// it is rated at.
func (n *newRide) seconds(ah, peukert, amps float64) float64 {
	return n.ratedH * 3600 * portable.Pow(ah/(n.ratedH*amps), peukert)
}

// newAmps is what the battery gives while so much torque turns the wheels. motors is
// how many there are, chain of them in series.
func newAmps(motor drive.Motor, wheelNM, ratio, efficiency float64, motors, chain int) float64 {
	each := motor.NoLoadA + wheelNM/(ratio*efficiency*float64(motors)*motor.TorqueConstant)
	return each * float64(motors) / float64(chain)
}

// onAsphalt reports whether the ground is that on which times are told, under wheels
// of hard plastic.
func (v *VehiclePart) onAsphalt() bool {
	return v.Ground.Text == "asphalt" && !v.Ground.Assumed && v.Tyres.Text == "hard"
}

// newRideS is how long one vehicle lasts when new, as the class is told.
func (p *Parts) newRideS(pick Pick) float64 {
	g := p.Gears
	motor, radius, motors, chain := p.Motor(pick), pick(&p.Vehicle.WheelDiameterM)/2, p.motors(pick), p.chain(pick)
	efficiency := pick(&g.Efficiency)
	ratio := g.fittedRatio(motor, radius, pick(&g.NewSpeedMS), float64(motors)*efficiency)
	wheelNM := g.runNM * (pick(&p.Vehicle.MassKg) + p.Vehicle.UsualLoadKg/2) / g.runKg
	if p.Vehicle.onAsphalt() {
		wheelNM *= pick(&p.Vehicle.RollingM) / p.Vehicle.RollingM.Likely
	}
	ah, peukert := g.told.ah, g.told.peukert
	if b := &p.Pack; g.told.own {
		ah = pick(&b.CapacityAh)
		if b.Honesty.Known {
			ah *= pick(&b.Honesty)
		}
		if b.Steepness.Known { // of the share that fast emptying costs
			peukert = 1 + (peukert-1)*pick(&b.Steepness)
		}
	}
	return g.told.seconds(ah, peukert, newAmps(motor, wheelNM, ratio, efficiency, motors, chain))
}

// asNew works out how a selection of parts is weighed by what is told of its
// class, for so many motors; nil where nothing is.
func (p *Parts) asNew(motors, dims int) *asNew {
	if o := p.Original; o != nil {
		p = o
	}
	g := p.Gears
	if g == nil || !g.weighed() || !g.told.fast && g.NewRideS.slot == 0 {
		return nil
	}
	t := &asNew{of: p, slope: make([]float64, dims), err: g.told.err, fast: g.told.fast}
	if !t.fast {
		t.told, t.errAt, t.sureAt = math.Log(g.told.rideS.Likely), g.NewRideS.slot-1, g.RideDoubt.slot-1
	}
	with := func(key string, z float64) float64 {
		return math.Log(t.foretold(func(f *Figure) float64 {
			switch f.Key {
			case p.Motors.Count.Key:
				return float64(motors)
			case key:
				return f.At(z)
			}
			return f.Likely
		}))
	}
	for _, f := range p.figures {
		if f.slot == 0 || f.Key == p.Motors.Count.Key || f.Key == g.NewRideS.Key || f.Key == g.RideDoubt.Key {
			continue
		}
		if t.fast && f.Key == g.NewSpeedMS.Key { // it is what is told: all else gives way
			continue
		}
		a := (with(f.Key, 1) - with(f.Key, -1)) / 2
		t.slope[f.slot-1] = a
		t.square += a * a
	}
	return t
}

// weighed reports whether something is told of the class that weighs what is drawn.
func (g *GearPart) weighed() bool {
	return g.Fitted && g.told != nil && (g.told.fast || g.NewRideS.Known)
}

// foretold is what a vehicle does of what is told.
func (t *asNew) foretold(pick Pick) float64 {
	if t.fast {
		return t.of.newSpeedShare(pick)
	}
	return t.of.newRideS(pick)
}

// newSpeedShare is how fast one vehicle is on the level when new, over the speed that
// its gears were fitted to.
func (p *Parts) newSpeedShare(pick Pick) float64 {
	g := p.Gears
	motor, radius, speed := p.Motor(pick), pick(&p.Vehicle.WheelDiameterM)/2, pick(&g.NewSpeedMS)
	all := float64(p.motors(pick)) * pick(&g.Efficiency)
	ratio := g.fittedRatio(motor, radius, speed, all)
	volts := g.fittedV - motor.WindingOhm*(motor.NoLoadA+g.runNM/(ratio*all*motor.TorqueConstant))
	return max(volts, leastShare*g.fittedV) * radius / (motor.TorqueConstant * ratio * speed)
}

// leastShare is what is taken for the share of their volts that motors turn with which
// stand still.
const leastShare = 0.05

// shift is by how many slopes a point is moved.
func (t *asNew) shift(z []float64) float64 {
	err, off := t.err, t.told
	if !t.fast {
		err *= portable.Exp(sizeMean + sizeSigma*z[t.sureAt])
		off -= err * z[t.errAt]
	}
	off -= math.Log(t.foretold(func(f *Figure) float64 {
		if f.slot == 0 {
			return f.Likely
		}
		return f.At(z[f.slot-1])
	}))
	return off / (t.square + err*err)
}
