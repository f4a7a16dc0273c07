package charge

import (
	"cmp"
	"errors"
	"fmt"
	"math"

	"example.org/packcheck/battery"
)

// How a charge is stepped.
const (
	chargeSteps = 130.0 // into how many parts the time that the current alone would take is stepped ...
	leastStepS  = 30.0  // ... at least this long ...
	heldStepS   = 180.0 // ... and at most this where the voltage is held ...
	mostStepS   = 360.0 // ... and this where it is not yet
	// shortestStepS is the shortest that a caller may want: five days of such take seconds.
	shortestStepS = 0.1
	mostHours     = 120.0 // a charge that takes longer is given up, a whole number of days
	solveRounds   = 12    // of false position, per step
	// fullEnough is the charge from which the end current counts as full; a
	// charger whose voltage is too low for the pack ends far below it.
	fullEnough = 0.9
	// smallEnd is the share of the charger's own current that the end current is at most: one
	// that never gives more than the profile's has not ended when it falls at all. Own choice.
	smallEnd = 0.5
	// mostEnd is the greatest end voltage, over that of the full pack, that is
	// computed: what lies beyond is a slip of the finger. Own choice.
	mostEnd = 10.0
)

// errCase is wrapped by the errors of [Simulate].
var errCase = errors.New("charge: cannot compute this charge")

// check returns an error that names the first field out of its range.
func (c *Case) check() error {
	if c.Pack == nil {
		return fmt.Errorf("%w: no pack", errCase)
	}
	for _, v := range []struct {
		name               string
		value, least, most float64
	}{
		{"CurrentA", c.CurrentA, 1e-6, maxLabelA},
		{"EndV", c.EndV, 1e-3, mostEnd * c.Pack.FullV()},
		{"DroopOhm", c.DroopOhm, 0, 1e6},
		{"EndA", c.EndA, 0, maxLabelA},
		{"StepS", cmp.Or(c.StepS, shortestStepS), shortestStepS, 3600},
		{"TimerH", c.TimerH, 0, 1e4},
		{"AmbientC", c.AmbientC, battery.LeastTempC, battery.MostTempC},
		{"Start.Y1Ah", c.Start.Y1Ah, -1e6, 1e6},
		{"Start.Y2Ah", c.Start.Y2Ah, -1e6, 1e6},
		{"Start.V1", c.Start.V1, -1e6, 1e6},
		{"Start.V2", c.Start.V2, -1e6, 1e6},
		{"Start.TempC", c.Start.TempC, battery.LeastTempC, battery.MostTempC},
	} {
		if !(v.value >= v.least && v.value <= v.most) {
			return fmt.Errorf("%w: %s is %g (want %.6g to %.6g)", errCase, v.name, v.value, v.least, v.most)
		}
	}
	return nil
}

// run is a charge under way.
type run struct {
	c      *Case
	m      *battery.Model
	takes  intake
	heatJK float64 // heat capacity, J/K
	stepS  float64
	over   battery.Step
	tookH  float64 // hours of the last step
	s      battery.State
	amps   float64 // charging current of the last step, positive
	hours  float64
	inAh   float64 // charge put in, side reactions included
	inCVAh float64
	cvFrom float64 // hours at which the constant voltage began; NaN before
	peakC  float64

	heldA   [2]float64 // what was stored at the end of the last step where the voltage holds it down from there, and of the one before; 0 = none
	perAmpV float64    // how steeply the excess rose with it
}

// Simulate computes one charge with the cell model of the battery package:
// constant current until the charger's voltage is reached, then constant
// voltage with the current falling off, until the end current is reached or
// the charge that was taken out is back. What splits water instead of being
// stored follows from the profile's acceptance, or is all but the share
// 1/ReturnFactor. Every step is the battery package's closed form over a
// constant current, which is chosen so that the charger's voltage is met at the
// end of the step.
//
// It returns an error when the case is out of range. It computes whatever it
// is given: ask [Match] and [GateAt] whether the charge is allowed at all.
func Simulate(c Case) (Outcome, error) {
	if err := c.check(); err != nil {
		return Outcome{}, err
	}
	r := start(&c)
	out := Outcome{}
	from := r.m.Charge(r.s)
	to80 := math.NaN()
	if from >= 0.8 {
		to80 = 0
	}
	endA := c.endA()
	ended := false
	for r.hours < mostHours && !ended {
		before, ampsBefore := r.m.Charge(r.s), r.amps
		if before >= 1 {
			out.Full = true
			break
		}
		inCV := r.step()
		after := r.m.Charge(r.s)
		if math.IsNaN(to80) && after >= 0.8 {
			to80 = r.hours - r.tookH*(1-r.when((0.8-before)/(after-before)))
		}
		over := 0.0 // share of the step after the end
		if inCV && r.amps <= endA {
			ended = true
			if ampsBefore > endA {
				over = 1 - math.Log(ampsBefore/endA)/math.Log(ampsBefore/r.amps)
			}
		}
		if after >= 1 {
			over, ended = max(over, (after-1)/(after-before)), true
		}
		if ended {
			r.back(over)
			out.Full = r.m.Charge(r.s) >= fullEnough
		}
	}
	out.GivenUp = !ended && !out.Full
	out.CCHours, out.CCAh = r.hours, r.inAh
	if !math.IsNaN(r.cvFrom) {
		out.CVHours = max(0, r.hours-r.cvFrom)
		out.CCHours = r.hours - out.CVHours
		out.CCAh = r.inAh - r.inCVAh
	}
	out.InAh = r.inAh
	out.EndState, out.EndA = r.s, r.amps
	out.ChargeAtEnd = r.m.Charge(r.s)
	out.PeakC = r.peakC
	c.promise(&out, from, to80, r.hours)
	out.Findings = c.timeFindings(out)
	return out, nil
}

// endA returns the falling current at which the pack counts as full.
func (c *Case) endA() float64 {
	if c.EndA > 0 {
		return c.EndA
	}
	return min(c.Pack.Spec().Profile.Charge.EndC*c.Pack.RatedAh(), smallEnd*c.CurrentA)
}

// start prepares the run.
func start(c *Case) *run {
	r := &run{c: c, m: c.Pack.Charging(), s: c.Start, stepS: c.StepS, takes: intakeOf(c.Pack), cvFrom: math.NaN(), peakC: c.Start.TempC}
	if r.stepS == 0 {
		r.stepS = min(max(leastStepS, 3600*c.Pack.RatedAh()/c.CurrentA/chargeSteps), mostStepS)
	}
	r.heatJK = c.Pack.MassKg() * c.Pack.Spec().Profile.Heat.SpecificJKgK
	r.over = r.m.Over(r.stepS)
	r.amps = c.CurrentA
	return r
}

// excess returns by how much the pack's voltage at the end of a step, with
// mainA being stored, would lie above what the charger then gives. It rises
// with mainA.
func (r *run) excess(mainA float64) float64 {
	s := r.s
	r.over.Advance(&s, -r.mean(mainA), r.c.AmbientC)
	volts := r.takes.volts(&s, mainA)
	over := volts - r.c.EndV
	if r.c.DroopOhm > 0 {
		over += r.total(&s, mainA, volts) * r.c.DroopOhm
	}
	return over
}

// mean is what is stored in the mean over a step at whose end mainA is: once the
// voltage is held, halfway from what was at its beginning.
func (r *run) mean(mainA float64) float64 {
	if r.heldA[0] == 0 {
		return mainA
	}
	return (r.heldA[0] + mainA) / 2
}

// total is the charging current of which mainA are stored.
func (r *run) total(s *battery.State, mainA, volts float64) float64 {
	return mainA/r.takes.keep + r.takes.gasA(s, volts)
}

// step advances by one step and reports whether the voltage held the current
// down during it. A step within which the voltage is reached ends there.
func (r *run) step() (held bool) {
	mainA, held := r.again()
	if !held {
		mainA = r.takes.mainA(&r.s, r.c.CurrentA)
		e := r.excess(mainA)
		if e > 0 && r.c.StepS == 0 && r.stepS > heldStepS {
			r.stepS, r.over = heldStepS, r.m.Over(heldStepS)
			e = r.excess(mainA)
		}
		if e > 0 && math.IsNaN(r.cvFrom) {
			h := r.reachedAfter(mainA, e)
			r.cvFrom = r.hours + h
			if h > 0 {
				over := r.m.Over(3600 * h)
				r.advance(&over, 3600*h, mainA, mainA, false)
				r.heldA[0] = mainA // from here on it falls
				return false
			}
		}
		if e > 0 {
			held = true
			mainA = r.solve(mainA, e)
		}
	}
	stored := mainA
	if held {
		stored = r.mean(mainA)
	}
	r.advance(&r.over, r.stepS, stored, mainA, held)
	return held
}

// advance takes a step in whose mean that much is stored, and mainA at its end.
func (r *run) advance(over *battery.Step, stepS, stored, mainA float64, held bool) {
	began := r.amps
	over.Advance(&r.s, -stored, r.c.AmbientC)
	volts := r.takes.volts(&r.s, mainA)
	r.amps = r.c.CurrentA
	if held {
		r.amps = min(r.total(&r.s, mainA, volts), r.c.CurrentA)
	}
	amps := r.amps
	if held && r.heldA[0] != 0 {
		amps = (began + r.amps) / 2
	}
	r.heldA = [2]float64{0, r.heldA[0]}
	if held {
		r.heldA[0] = mainA
	}
	// What is not stored turns into heat inside, the gas where it recombines.
	heat := stored*stored*r.takes.ohm(&r.s) + (amps-stored)*volts
	r.s.TempC += heat * stepS / r.heatJK
	r.tookH = stepS / 3600
	r.hours += r.tookH
	r.inAh += amps * r.tookH
	if held {
		r.inCVAh += amps * r.tookH
	}
	r.peakC = max(r.peakC, r.s.TempC)
}

// reachedAfter returns the hours into the coming step at which the full
// current reaches the charger's voltage, e being the excess at the step's end.
func (r *run) reachedAfter(mainA, e float64) float64 {
	now := r.takes.volts(&r.s, mainA) + r.c.CurrentA*r.c.DroopOhm - r.c.EndV
	if now >= 0 {
		return 0
	}
	return r.stepS / 3600 * (-now / (e - now))
}

// tolV is how near the charger's voltage is met.
func (r *run) tolV() float64 { return 3e-6 * r.c.EndV }

// nearRounds is how often the search from the steps before goes on.
const nearRounds = 4

// again finds the stored current from that of the steps before, which it follows
// smoothly once the voltage is held: by the secant rule, starting with the slope
// of the last search. It gives up where it does not come near at once, or might
// be led above what the charger gives.
func (r *run) again() (mainA float64, ok bool) {
	if r.heldA[0] == 0 || r.heldA[1] == 0 || r.perAmpV == 0 {
		return 0, false
	}
	x := 2*r.heldA[0] - r.heldA[1]
	if !(x > 0) {
		return 0, false
	}
	f := r.excess(x)
	for range nearRounds {
		if math.Abs(f) < r.tolV() {
			return x, x < r.heldA[0]
		}
		next := x - f/r.perAmpV
		if !(next > 0) || next == x {
			return 0, false
		}
		fNext := r.excess(next)
		if slope := (fNext - f) / (next - x); slope > 0 {
			r.perAmpV = slope
		}
		x, f = next, fNext
	}
	return 0, false
}

// solve finds the stored current between 0 and most at which the excess is
// zero, by false position with halving of the stale end (the Illinois rule).
func (r *run) solve(most, excessAtMost float64) float64 {
	lo, hi := 0.0, most
	fLo, fHi := r.excess(0), excessAtMost
	if fLo >= 0 {
		return 0
	}
	side := 0
	tol := r.tolV()
	for range solveRounds {
		mid := (lo*fHi - hi*fLo) / (fHi - fLo)
		f := r.excess(mid)
		r.perAmpV = (fHi - fLo) / (hi - lo)
		switch {
		case math.Abs(f) < tol:
			return mid
		case f > 0:
			hi, fHi = mid, f
			if side == 1 {
				fLo /= 2
			}
			side = 1
		default:
			lo, fLo = mid, f
			if side == -1 {
				fHi /= 2
			}
			side = -1
		}
	}
	return (lo + hi) / 2
}

// when is the share of the last step after which such a share of what it stored was in,
// the current along a straight line.
func (r *run) when(stored float64) float64 {
	begin, end := r.heldA[1], r.heldA[0]
	if begin <= 0 || end <= 0 {
		return stored
	}
	return stored * (begin + end) / (begin + math.Sqrt(begin*begin+(end*end-begin*begin)*stored))
}

// back takes the given share of the last step off the clock and the counts.
func (r *run) back(share float64) {
	share = min(max(share, 0), 1)
	h := share * r.tookH
	r.hours -= h
	r.inAh -= r.amps * h
	if !math.IsNaN(r.cvFrom) {
		r.inCVAh = max(0, r.inCVAh-r.amps*h)
	}
}
