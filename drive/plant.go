package drive

import "math"

// The states of a launch. The vehicle's speed stands last: nothing else hangs on it, so
// the method carries the others only.
const (
	motorAmps = iota
	wheelSpeed
	firstBranch
	secondBranch
	vehicleSpeed
	states

	carried = vehicleSpeed
)

type state [states]float64

// motion is which mechanical equations hold.
type motion uint8

const (
	held     motion = iota // at rest: friction and slope hold it
	rolling                // wheels and vehicle move as one
	spinning               // the driven wheels slip
)

// leastTauS, leastRotorShare and leastBranchS keep a case without inductance, rotor
// inertia or capacitance solvable: all are far below anything that shows in a launch.
const (
	leastTauS       = 1e-7
	leastRotorShare = 1e-5
	leastBranchS    = 2e-5 // a straight branch that is faster counts as felt at once
)

// plant is a [LaunchCase] made ready for its equations.
type plant struct {
	ocv, r0, path float64
	ohm, henry    float64
	backEMF, push float64    // V per m/s, N per A
	loss, base    float64    // motors' own friction; rolling and slope
	drag, grip    float64    //
	mass, rotor   float64    // of the vehicle; of the rotors, kg at the wheels
	branch        [2]Branch  // none when absent
	decay         [2]float64 // 1/(R C) of the branches
	rampS         float64
	moduleRampS   float64
	limit         float64
	contacts      bool    // no duty below 1: battery and motor current are one
	scale         state   // what counts as large, for the error control
	feedOhm       float64 // r0 and path
	perHenry      float64 // 1 / henry
	perMass       float64 // 1 / mass of vehicle and rotors

	motion  motion
	limited bool // the current limiter holds the motor current
	full    bool // in the stretch under way neither it nor a soft start takes anything away
}

func newPlant(c *LaunchCase) plant {
	e := c.Equivalent()
	p := plant{
		ocv: c.OCVV, r0: c.R0Ohm, path: c.PathOhm,
		ohm: e.Ohm, henry: math.Max(e.Henry, leastTauS*e.Ohm),
		backEMF: e.VoltPerMS, push: e.NewtonPerA, loss: e.LossN, base: c.RollN + c.GradeN,
		drag: c.DragNS2PerM2, grip: gripOrNone(c.GripN),
		mass: c.MassKg, rotor: math.Max(e.RotorKg, leastRotorShare*c.MassKg),
		rampS: c.RampS, moduleRampS: c.ModuleRampS, limit: math.Inf(1),
	}
	if c.LimitA > 0 {
		p.limit = c.LimitA
	}
	p.contacts = p.rampS == 0 && p.moduleRampS == 0 && c.LimitA == 0
	for k, b := range c.RC {
		switch {
		case b.absent():
		case b.KneeV == 0 && b.Ohm*b.Farad < leastBranchS:
			p.r0 += b.Ohm
		default:
			p.branch[k], p.decay[k] = b, 1/(b.Ohm*b.Farad)
		}
	}
	p.feedOhm, p.perHenry, p.perMass = p.r0+p.path, 1/p.henry, 1/(p.mass+p.rotor)
	amps, speed := p.ocv/(p.feedOhm+p.ohm), p.ocv/p.backEMF
	p.scale = state{amps, speed, p.ocv, p.ocv, speed}
	if p.loss+p.base < 0 {
		p.motion = rolling // downhill: it rolls off by itself
	}
	return p
}

// duty is a straight line from 0 to 1, and its slope.
func duty(t, rampS float64) (d, slope float64) {
	if t >= rampS {
		return 1, 0
	}
	return t / rampS, 1 / rampS
}

// supply is the electrical side at one moment.
type supply struct {
	own, module float64 // duties of the controller and of the pack's module
	batteryA    float64
}

// supplyAt returns the duties and the battery current. With the limiter at
// work the controller's duty is the one that just holds the current:
//
//	own (module (ocv - V) - own i (module^2 r0 + path)) = R i + k w
func (p *plant) supplyAt(t float64, y *state) supply {
	module, _ := duty(t, p.moduleRampS)
	own, _ := duty(t, p.rampS)
	if p.limited {
		own = smallerRoot(
			(module*module*p.r0+p.path)*p.limit,
			module*(p.ocv-y[firstBranch]-y[secondBranch]),
			p.ohm*p.limit+p.backEMF*y[wheelSpeed])
	}
	return supply{own, module, own * module * y[motorAmps]}
}

// headroom returns the volts that the full duty of the moment would leave for
// the winding's inductance.
func (p *plant) headroom(t float64, y *state) float64 {
	own, _ := duty(t, p.rampS)
	module, _ := duty(t, p.moduleRampS)
	d := own * module
	return d*(p.ocv-y[firstBranch]-y[secondBranch]) -
		(d*d*p.r0+own*own*p.path+p.ohm)*y[motorAmps] - p.backEMF*y[wheelSpeed]
}
