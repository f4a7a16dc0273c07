package setup

import (
	"math"
	"slices"

	"example.org/packcheck/drive"
	"example.org/packcheck/internal/portable"
	"example.org/packcheck/internal/quantity"
	"example.org/packcheck/tables"
)

// How long vehicles of a class last when new is told of the class, so it is a
// reading of every one of it: motors, gears and speed that would empty the usual
// battery in twenty minutes, or in four hours, are not in such vehicles together.
// It is weighed like any reading. Over what is drawn, standard normal all of it, the
// logarithm of the time foretold is nearly straight on either side; so a draw z that was
// made without the reading is moved to
//
//	z + a (ln y - ln t(z) - s e) / (a a + s s)
//
// with the slopes a of ln t, the time told y, its error s and one more standard
// normal e (of several readings with their matrices), and is then a draw that was made
// with it (conditioning by kriging, A. Journel and C. Huijbregts, Mining Geostatistics,
// 1978; the same as Matheron's rule). As with any reading now and then one is far off: s
// is drawn too.
//
// Of a class of which nobody tells how long it lasts, the speed is such a reading: gears
// are fitted to the speed drawn, and motors that cannot come to it in any gear that
// gets the greatest load going are not in vehicles that are told to. What can stays
// where it is.
//
// And of every class it is told that its motors live: vehicles that are driven for the
// hour that they last do not burn them. How hot they run is drawn, as the speed is, and
// motors and gears that would run hotter, or cooler, give way.
type asNew struct {
	of   *Parts // of the vehicle as it was made
	told []told
}

// told is one thing that is known of the vehicles of a class, as a reading of each.
type told struct {
	ln       float64 // its logarithm
	foretold func(p *Parts, pick Pick) float64
	up, down []float64 // slopes above the likely value and below it, by place in a point
	err      float64   // standard error of the logarithm, where it is likely
	errAt    int       // place of e, ...
	sureAt   int       // ... and of what s is drawn by; errAt of -1: no e, and s as it is
}

// mostTold is how many things are told of one vehicle at the most.
const mostTold = 2

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
	// And its motors as near as this to how hot they are drawn to run, with the same
	// reserve for what slopes that are taken straight leave. Own choice.
	riseErr = 0.1
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
		return &newRide{fast: true}
	}
	n := &newRide{rideS: span(class.RideS), ah: class.BatteryAh.Likely, peukert: r.tab.Figure(tables.PeukertLead).Likely, ratedH: 20}
	ofTime, ofBattery := logSigma(n.rideS), n.peukert*logSigma(span(class.BatteryAh))
	ofLoad := riderErr
	if !r.parts.Vehicle.onAsphalt() {
		ofLoad = math.Hypot(riderErr, rollingErr)
	}
	b := &r.parts.Pack
	n.own = r.parts.OnBlocks() && b.Joined != "parallel" && b.Second == nil && !b.SeveralMeanings
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

// logSigma is the standard deviation of the logarithm of what lies in a range with nine
// of ten.
func logSigma(r quantity.Range) float64 { return math.Log(r.High/r.Low) / (2 * endSigma) }

// seconds is how long a battery gives a current: Peukert's law from the rate that
// it is rated at.
func (n *newRide) seconds(ah, peukert, amps float64) float64 {
	return n.ratedH * 3600 * portable.Pow(ah/(n.ratedH*amps), peukert)
}

// newAmps is what the battery gives while so much torque turns the wheels. motors is
// how many there are, chain of them in series.
func newAmps(motor drive.Motor, wheelNM, ratio, efficiency float64, motors, chain int) float64 {
	return eachAmps(motor, wheelNM, ratio, efficiency, motors) * float64(motors) / float64(chain)
}

// eachAmps is what each of the motors takes then.
func eachAmps(motor drive.Motor, wheelNM, ratio, efficiency float64, motors int) float64 {
	return motor.NoLoadA + wheelNM/(ratio*efficiency*float64(motors)*motor.TorqueConstant)
}

// onAsphalt reports whether the ground is that on which times are told, under wheels
// of hard plastic.
func (v *VehiclePart) onAsphalt() bool {
	return v.Ground.Text == "asphalt" && !v.Ground.Assumed && v.Tyres.Text == "hard"
}

// newWheelNM is the torque of one vehicle's wheels on hard level ground, with half of the
// greatest load.
func (p *Parts) newWheelNM(pick Pick) float64 {
	nm := p.Gears.runNM * (pick(&p.Vehicle.MassKg) + p.Vehicle.UsualLoadKg/2) / p.Gears.runKg
	if p.Vehicle.onAsphalt() {
		nm *= pick(&p.Vehicle.RollingM) / p.Vehicle.RollingM.Likely
	}
	return nm
}

// newDrive is one vehicle's motor, with the gears that were fitted to it and what they
// pass on.
func (p *Parts) newDrive(pick Pick) (motor drive.Motor, ratio, efficiency float64) {
	g := p.Gears
	motor, efficiency = p.Motor(pick), pick(&g.Efficiency)
	ratio = g.fittedRatio(motor, pick(&p.Vehicle.WheelDiameterM)/2, pick(&g.NewSpeedMS), float64(p.motors(pick))*efficiency)
	return motor, ratio, efficiency
}

// newRiseShare is how much hotter than the air the windings of one vehicle's motors run
// when new and warm through, over the rise that is drawn.
func (p *Parts) newRiseShare(pick Pick) float64 {
	g := p.Gears
	motor, ratio, efficiency := p.newDrive(pick)
	amps, rise := eachAmps(motor, p.newWheelNM(pick), ratio, efficiency, p.motors(pick)), pick(&g.NewRiseK)
	ohm := motor.OhmAt(drive.ReferenceC + rise)
	turning := max(g.fittedV-ohm*amps, leastShare*g.fittedV) // V, those that turn it
	return motor.Thermal.SteadyC(ohm*amps*amps, turning*motor.NoLoadA, 0).WindingC / rise
}

// newRideS is how long one vehicle lasts when new, as the class is told.
func (p *Parts) newRideS(pick Pick) float64 {
	g := p.Gears
	motor, ratio, efficiency := p.newDrive(pick)
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
	return g.told.seconds(ah, peukert, newAmps(motor, p.newWheelNM(pick), ratio, efficiency, p.motors(pick), p.chain(pick)))
}

// asNew works out how a selection of parts is weighed by what is told of its
// class, for so many motors; nil where nothing is.
func (p *Parts) asNew(motors, dims int) *asNew {
	if o := p.Original; o != nil {
		p = o
	}
	g := p.Gears
	if g == nil || !g.weighed() {
		return nil
	}
	t := &asNew{of: p}
	// All else gives way to what is drawn itself.
	given := []*Figure{&p.Motors.Count, &g.NewRideS, &g.RideDoubt, &g.NewRiseK}
	if g.told.fast {
		given = append(given, &g.NewSpeedMS)
		t.told = append(t.told, told{foretold: (*Parts).newSpeedShare, err: fastErr, errAt: -1})
	} else {
		t.told = append(t.told, told{
			ln: math.Log(g.told.rideS.Likely), foretold: (*Parts).newRideS,
			err: g.told.err, errAt: g.NewRideS.slot - 1, sureAt: g.RideDoubt.slot - 1,
		})
	}
	if g.NewRiseK.slot != 0 {
		t.told = append(t.told, told{foretold: (*Parts).newRiseShare, err: riseErr, errAt: -1})
	}
	for i := range t.told {
		t.slopes(&t.told[i], motors, dims, given)
	}
	return t
}

// slopes fills in how what is told changes with each figure that is drawn, but for
// those that are given.
func (t *asNew) slopes(one *told, motors, dims int, given []*Figure) {
	p := t.of
	one.up, one.down = make([]float64, dims), make([]float64, dims)
	with := func(key string, z float64) float64 {
		return math.Log(one.foretold(p, func(f *Figure) float64 {
			switch f.Key {
			case p.Motors.Count.Key:
				return float64(motors)
			case key:
				return f.At(z)
			}
			return f.Likely
		}))
	}
	middle := with("", 0)
	for _, f := range p.figures {
		if f.slot == 0 || slices.ContainsFunc(given, func(g *Figure) bool { return g.Key == f.Key }) {
			continue
		}
		one.up[f.slot-1] = with(f.Key, 1) - middle
		one.down[f.slot-1] = middle - with(f.Key, -1)
	}
}

// weighed reports whether something is told of the class that weighs what is drawn.
func (g *GearPart) weighed() bool {
	return g.Fitted && g.told != nil && (g.told.fast || g.NewRideS.slot != 0)
}

// newSpeedShare is how fast one vehicle is on the level when new, over the speed that
// its gears were fitted to.
func (p *Parts) newSpeedShare(pick Pick) float64 {
	g := p.Gears
	motor, ratio, efficiency := p.newDrive(pick)
	volts := g.fittedV - motor.WindingOhm*eachAmps(motor, g.runNM, ratio, efficiency, p.motors(pick))
	radius := pick(&p.Vehicle.WheelDiameterM) / 2
	return max(volts, leastShare*g.fittedV) * radius / (motor.TorqueConstant * ratio * pick(&g.NewSpeedMS))
}

// leastShare is what is taken for the share of their volts that motors turn with which
// stand still.
const leastShare = 0.05

// slope is how steeply what is told rises with one number of a point.
func (o *told) slope(z float64, place int) float64 {
	if z < 0 {
		return o.down[place]
	}
	return o.up[place]
}

// roundsTold is how often the slopes are followed, a second time from where the first
// led to, as Newton's method does.
const roundsTold = 2

// byTold is what belongs to two things that are told.
type byTold [mostTold]float64

// shift is by how many of the slopes of each thing told a point is moved.
func (t *asNew) shift(z []float64) byTold {
	var shift, noise byTold
	var gram [mostTold]byTold // slopes by slopes
	for k, x := range z {
		for i := range t.told {
			for j := range t.told {
				gram[i][j] += t.told[i].slope(x, k) * t.told[j].slope(x, k)
			}
		}
	}
	all := gram
	for i := range t.told {
		one := &t.told[i]
		err := one.err
		if one.errAt >= 0 {
			err *= portable.Exp(sizeMean + sizeSigma*z[one.sureAt])
			noise[i] = err * z[one.errAt]
		}
		all[i][i] += err * err
	}
	pick := func(f *Figure) float64 {
		if f.slot == 0 {
			return f.Likely
		}
		return f.At(t.moved(z[f.slot-1], f.slot-1, &shift))
	}
	for range roundsTold {
		var off byTold
		for i := range t.told {
			one := &t.told[i]
			off[i] = one.ln - math.Log(one.foretold(t.of, pick)) - noise[i]
			for j := range t.told {
				off[i] += gram[i][j] * shift[j]
			}
		}
		if len(t.told) == 1 {
			shift[0] = off[0] / all[0][0]
			continue
		}
		det := all[0][0]*all[1][1] - all[0][1]*all[1][0]
		shift[0], shift[1] = (off[0]*all[1][1]-off[1]*all[0][1])/det, (off[1]*all[0][0]-off[0]*all[1][0])/det
	}
	return shift
}

// moved is where one number of a point is moved to.
func (t *asNew) moved(z float64, place int, shift *byTold) float64 {
	to := z
	for i := range t.told {
		to += shift[i] * t.told[i].slope(z, place)
	}
	return to
}
