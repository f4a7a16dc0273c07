package setup

import (
	"math"

	"example.org/packcheck/chemistry"
	"example.org/packcheck/drive"
	"example.org/packcheck/internal/portable"
	"example.org/packcheck/internal/quantity"
	"example.org/packcheck/tables"
)

// How long vehicles of a class last when new is told of the class, so it is a
// reading of every one of it: motors, gears and speed that would empty the usual
// battery in twenty minutes, or in four hours, are not in such vehicles together.
// It is weighed like any reading. In the logarithms of what is drawn, standard
// normal all of them, the time foretold is nearly straight; so a draw z that was
// made without the reading is moved to
//
//	z + a (ln y - ln t(z) - s e) / (a a + s s)
//
// with the slopes a of ln t, the time told y, its error s and one more standard
// normal e, and is then a draw that was made with it (conditioning by kriging,
// A. Journel and C. Huijbregts, Mining Geostatistics, 1978; the same as Matheron's
// rule).
type asNew struct {
	told      float64   // ln y - ln t where all stands at its likely value
	slope     []float64 // by place in a point
	err       float64   // s
	errAt     int       // place of e
	precision float64   // 1 / (a a + s s)
}

// newRide is what is known of how long vehicles of a class last when new.
type newRide struct {
	rideS   quantity.Range // as a reading of this vehicle
	err     float64        // standard error of its logarithm
	ah      float64        // of the battery, where it is not drawn
	own     bool           // the vehicle has the battery that it was made for: it is drawn
	peukert float64        // exponent of a usual block
	ratedH  float64
}

// What the standard error of the logarithm of a time is made of beside the times
// told themselves. Computed from the rows of what is named.
const (
	// Asphalt rolls with 3.3 to 5 mm, children and vehicles weigh what they weigh.
	loadErr = 0.10
	// Blocks hold 0.82 to 1.14 of their label, and steep ones less in an hour.
	blockErr = 0.13
	// Larger batteries are put into vehicles that draw more: times of a class differ
	// by less than its batteries do. With what a battery holds more, the time goes by
	// its root, which leaves either end out by this power of it (0 is a battery chosen
	// for the hour, 1 the same vehicle with another battery).
	timeByAh, timeByAhErr = 0.5, 0.3
)

// told says what is known of the class's vehicles when new, where this one is as
// they were made: nobody put other motors in, and nobody counted the teeth.
func (r *resolver) told(class tables.VehicleClass) *newRide {
	m := r.setup.Motors
	other := m.NoLoadSpeed.Given || m.NoLoadCurrent.Given || m.StallCurrent.Given || m.WindingResistance.Given || m.TorqueConstant.Given
	if other || r.setup.Gears.Ratio.Given || !class.RideS.Known() || !class.BatteryAh.Known() {
		return nil
	}
	n := &newRide{rideS: span(class.RideS), ah: class.BatteryAh.Likely, peukert: r.tab.Figure(tables.PeukertLead).Likely, ratedH: 20}
	ofTime := math.Log(n.rideS.High/n.rideS.Low) / (2 * endSigma)
	ofBattery := n.peukert * math.Log(class.BatteryAh.High/class.BatteryAh.Low) / (2 * endSigma)
	b := &r.parts.Pack
	n.own = b.Profile.Family == chemistry.LeadAcid && b.Joined != "parallel" && !b.SeveralMeanings &&
		math.Abs(r.parts.volts()/r.parts.Vehicle.DesignV.Likely-1) < 0.05
	if !n.own {
		n.err = math.Sqrt(ofTime*ofTime + ofBattery*ofBattery + loadErr*loadErr + blockErr*blockErr)
		return n
	}
	more := math.Log(b.CapacityAh.Likely * float64(b.Strings) / n.ah)
	n.ah, n.ratedH = b.CapacityAh.Likely, b.RateS.Likely/3600
	n.rideS = n.rideS.Scale(portable.Exp(timeByAh * more))
	n.err = math.Sqrt(ofTime*ofTime + timeByAhErr*timeByAhErr*more*more + loadErr*loadErr)
	return n
}

// seconds is how long a battery gives a current: Peukert's law from the rate that
// it is rated at.
func (n *newRide) seconds(ah, peukert, amps float64) float64 {
	return n.ratedH * 3600 * portable.Pow(ah/(n.ratedH*amps), peukert)
}

// newAmps is what the battery gives while a vehicle rolls on asphalt with half of
// its greatest load. motors is how many there are, chain of them in series.
func (g *GearPart) newAmps(motor drive.Motor, ratio, efficiency float64, motors, chain int) float64 {
	each := motor.NoLoadA + g.runNM/(ratio*efficiency*float64(motors)*motor.TorqueConstant)
	return each * float64(motors) / float64(chain)
}

// newRideS is how long one vehicle lasts when new, as the class is told.
func (p *Parts) newRideS(pick Pick) float64 {
	g := p.Gears
	motor, radius, motors, chain := p.Motor(pick), pick(&p.Vehicle.WheelDiameterM)/2, p.motors(pick), p.chain(pick)
	efficiency := pick(&g.Efficiency)
	ratio := g.fittedRatio(motor, radius, pick(&g.NewSpeedMS), float64(motors)*efficiency)
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
	return g.told.seconds(ah, peukert, g.newAmps(motor, ratio, efficiency, motors, chain))
}

// asNew works out how a selection of parts is weighed by what is told of its
// class, for so many motors; nil where nothing is.
func (p *Parts) asNew(motors, dims int) *asNew {
	if o := p.Original; o != nil {
		p = o
	}
	if p.Gears == nil || !p.Gears.NewRideS.Known || p.Gears.NewRideS.slot == 0 {
		return nil
	}
	with := func(key string, z float64) float64 {
		return math.Log(p.newRideS(func(f *Figure) float64 {
			switch f.Key {
			case p.Motors.Count.Key:
				return float64(motors)
			case key:
				return f.At(z)
			}
			return f.Likely
		}))
	}
	g := p.Gears
	t := &asNew{slope: make([]float64, dims), err: g.told.err, errAt: g.NewRideS.slot - 1}
	t.told = math.Log(g.told.rideS.Likely) - with("", 0)
	square := t.err * t.err
	for _, f := range p.figures {
		if f.slot == 0 || f.Key == p.Motors.Count.Key || f.Key == g.NewRideS.Key {
			continue
		}
		a := (with(f.Key, 1) - with(f.Key, -1)) / 2
		t.slope[f.slot-1] = a
		square += a * a
	}
	t.precision = 1 / square
	return t
}

// shift is by how many slopes a point is moved.
func (t *asNew) shift(z []float64) float64 {
	off := t.told - t.err*z[t.errAt]
	for i, a := range t.slope {
		off -= a * z[i]
	}
	return off * t.precision
}
