package setup

import (
	"cmp"
	"math"
	"slices"

	"example.org/packcheck/drive"
	"example.org/packcheck/internal/portable"
	"example.org/packcheck/tables"
)

// cans lists the motor sizes that the vehicle may have. Vehicles with a board
// and a remote control have small motors that draw a third of what those behind
// a plain pedal switch draw.
func (r *resolver) cans(class tables.VehicleClass) Choosing {
	c := Choosing{Key: r.key("motors", "can"), Options: []Option{{class.Can, 1}}, Why: usualFor(class), Source: class.Source}
	const small = "ride-on 390"
	if class.DesignV != 12 {
		return c
	}
	c.Source = srcFamilies
	switch board := r.setup.Vehicle.HasBoard; {
	case board.Given && board.Yes:
		c.Options = []Option{{small, 0.7}, {class.Can, 0.3}}
		c.Why = "Not given; vehicles with a board mostly have small motors that draw little."
	case board.Given:
		c.Options = []Option{{class.Can, 0.95}, {small, 0.05}}
	default:
		c.Options = []Option{{class.Can, 0.75}, {small, 0.25}}
		c.Why = "Not given; usual behind a pedal switch, while vehicles with a board mostly have small motors that draw little."
	}
	r.asTold(&c, class)
	return c
}

// asTold shifts the shares of motor sizes to those that can do what is told of the
// class: go that fast, and last that long (Bayes' theorem). One small motor alone
// could hardly.
func (r *resolver) asTold(c *Choosing, class tables.VehicleClass) {
	if t := r.toldOf(class); t == nil || t.fast {
		return
	}
	var g GearPart
	r.chosenFor(&g, class)
	sum := 0.0
	for i := range c.Options {
		can, err := r.tab.MotorCan(c.Options[i].Text)
		if err != nil {
			return
		}
		c.Options[i].Share *= r.chance(&g, can, r.parts.motors(Likely)) // the usual number: one that cannot is no vehicle
		sum += c.Options[i].Share
	}
	for i := range c.Options {
		c.Options[i].Share /= sum
	}
	slices.SortStableFunc(c.Options, func(a, b Option) int { return cmp.Compare(b.Share, a.Share) })
}

// ofMotors is by how much the time that a motor size is told to last differs by all
// that is drawn of one vehicle, as a standard deviation of its logarithm. Computed
// with this program for either size.
const ofMotors = 0.3

// soMany is how many motors a vehicle may have, and how many vehicles have so many.
type soMany struct {
	motors int
	share  float64 // all add up to 1
}

// numbers are those that the law of their count leaves.
func (r *resolver) numbers() []soMany {
	count := &r.parts.Motors.Count
	if !count.Assumed || !count.Uncertain() {
		return []soMany{{r.parts.motors(Likely), 1}}
	}
	const steps = 200
	var all []soMany
	for i := range steps {
		n := max(int(math.Round(count.At(math.Sqrt2*math.Erfinv((2*float64(i)+1)/steps-1)))), 1)
		if last := len(all) - 1; last < 0 || all[last].motors != n {
			all = append(all, soMany{motors: n})
		}
		all[len(all)-1].share += 1.0 / steps
	}
	return all
}

// countAsTold shifts how many motors there are to what motors of the size that was
// picked can do (Bayes' theorem), as [resolver.asTold] does the sizes.
func (r *resolver) countAsTold(class tables.VehicleClass, can tables.MotorCan) {
	count := &r.parts.Motors.Count
	if t := r.toldOf(class); t == nil || t.fast || !count.Assumed || !count.Uncertain() {
		return
	}
	var g GearPart
	r.chosenFor(&g, class)
	all, sum := r.numbers(), 0.0
	for i := range all {
		all[i].share *= r.chance(&g, can, all[i].motors)
		sum += all[i].share
	}
	for i := range all {
		all[i].share /= sum
	}
	count.mix = stepped(all)
	count.Range = count.mix.ends()
}

// stepped is the law of a whole number.
func stepped(all []soMany) *mixture {
	m := &mixture{}
	for i := range m.values {
		p, k := portable.NormalBelow(-mostSigma+2*mostSigma*float64(i)/(mixturePoints-1)), 0
		for sum := all[0].share; sum < p && k < len(all)-1; sum += all[k].share {
			k++
		}
		m.values[i] = float64(all[k].motors)
	}
	return m
}

// chance is how likely vehicles with so many such motors are to do what is told of
// them.
func (r *resolver) chance(g *GearPart, can tables.MotorCan, motors int) float64 {
	chain := 1
	if r.parts.Motors.Wiring.Text == "series" {
		chain = motors
	}
	volts := r.parts.Vehicle.DesignV.Likely / float64(chain)
	usual := typicalOf(can, volts)
	motor := drive.Motor{TorqueConstant: usual.k.Likely, WindingOhm: usual.ohm.Likely, NoLoadA: usual.noLoadA.Likely}
	radius := r.parts.Vehicle.WheelDiameterM.Likely / 2
	efficiency := stagesOf(r.tab.Figure(tables.GearStageEfficiency).Value).Likely
	fastest := g.fastest(motor, radius, float64(motors)*efficiency)
	law := kind{Range: g.NewSpeedMS.Range}
	ratio := g.fittedRatio(motor, radius, min(g.NewSpeedMS.Likely, fastest), float64(motors)*efficiency)
	lasts := g.told.seconds(g.told.ah, g.told.peukert, newAmps(motor, g.runNM, ratio, efficiency, motors, chain))
	off := math.Log(lasts/g.told.rideS.Likely) / math.Hypot(g.told.err, ofMotors)
	return portable.NormalBelow(law.normal(fastest, law.widths())) * portable.Pow(1+off*off/4, -2.5) // Student's law, as of readings
}
