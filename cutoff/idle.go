package cutoff

import (
	"fmt"
	"math"

	"example.org/packcheck/internal/solve"

	"example.org/packcheck/answer"
	"example.org/packcheck/battery"
)

// Codes of the findings on a pack left alone.
const (
	CodePastSaving = "drained-past-saving"     // below the last rung when the ride ends
	CodeIdleWeek   = "idle-harms-within-week"  // harmed within a week
	CodeIdleMonth  = "idle-harms-within-month" // harmed within a month
)

// Bounds of standing idle.
const (
	monthDays = 30.0
	weekDays  = 7.0
	// mostDays is as far as anybody looks ahead; later counts as never.
	mostDays = 3650.0
	// wellsPastEmpty is how far below empty wells the search goes, as a share
	// of all they hold: well past the last rung.
	wellsPastEmpty = 0.25
)

// Standing is a pack left alone after a ride, in the toy or out of it.
type Standing struct {
	Pack     *battery.Model
	Start    battery.State // how the ride left it
	Chain    Chain         // the cutoffs as the ride left them; the zero Chain when nothing disconnects
	StandbyA float64       // what draws behind the last cutoff: board, lights, radio
	AmbientC float64       // mean temperature of the place, deg C
}

// Idled is what becomes of it. Days count from now; [math.Inf] stands for
// "not within ten years" or for a rung that the chemistry does not have. They
// are for the weakest cell, and for a loss by itself at the fast end of what
// makers print.
type Idled struct {
	DaysToEnd   float64 // normal end
	DaysToHarm  float64 // harm limit
	DaysToNever float64 // last rung: never recharge
	// WeekCellV and WeekRung are the weakest cell after a week in the toy.
	WeekCellV float64
	WeekRung  Rung
	Words     string // "left in the toy for a week" answered, one plain sentence
	Findings  []answer.Finding
}

// Idle follows a pack that is left alone: standby currents of what is still
// connected, the cutoffs' own among them, and the loss by itself, down the
// ladder of over-discharge. A cutoff that opens on the way stops what stands
// behind it. The charge falls at a constant rate between such events, which is
// solved for in closed form; voltages are those of a rested pack.
func Idle(s Standing) (Idled, error) {
	switch {
	case s.Pack == nil:
		return Idled{}, fmt.Errorf("%w: no pack", errCase)
	case !(s.StandbyA >= 0) || math.IsInf(s.StandbyA, 0):
		return Idled{}, fmt.Errorf("%w: StandbyA is %g (want at least 0)", errCase, s.StandbyA)
	}
	if err := checkStanding(s.Pack, s.Start, s.AmbientC); err != nil {
		return Idled{}, err
	}
	p := s.Pack.Profile()
	_, _, fastest := p.MonthlyLoss(s.AmbientC)
	path := s.path(fastest)
	out := Idled{
		DaysToEnd:   path.daysUntil(s.chargeAtCell(p.EmptyV)),
		DaysToHarm:  path.daysUntil(s.chargeAtCell(p.HarmV)),
		DaysToNever: math.Inf(1),
	}
	if p.NeverRechargeV > 0 {
		out.DaysToNever = path.daysUntil(s.chargeAtCell(p.NeverRechargeV))
	}
	out.WeekCellV = s.cellV(max(s.lowest(), path.chargeAfter(weekDays)))
	out.WeekRung = RungAt(*p, out.WeekCellV)
	out.Words = out.words()
	out.Findings = s.findings(out)
	return out, nil
}

// MeanDrawA returns what is connected draws from a pack left alone, in A, on the
// average over so many days: a cutoff that opens on the way stops what stands
// behind it. The loss by itself is not in it.
func MeanDrawA(s Standing, days float64) (float64, error) {
	if _, err := Idle(s); err != nil {
		return 0, err
	}
	if !(days > 0) {
		return 0, fmt.Errorf("%w: %g days (want above 0)", errCase, days)
	}
	_, likely, _ := s.Pack.Profile().MonthlyLoss(s.AmbientC)
	path := s.path(likely)
	drawn := s.Pack.Charge(s.Start) - path.chargeAfter(days) - days*likely/monthDays
	return max(0, drawn) * s.Pack.FullAh() / (24 * days), nil
}

// leg is a stretch of time at one rate of loss.
type leg struct {
	fromDay, charge float64 // at its beginning
	perDay          float64 // charge lost in a day
}

// decline is the fall of the charge in legs, the last one without end. At most
// one leg per cutoff and one more.
type decline struct {
	legs [maxDevices + 1]leg
	n    int
}

// roomC is room temperature, from which on the ladder is read.
const roomC = 20

// cellV returns the rested voltage of the weakest cell at a charge. A drained
// cell at rest has no less than nothing.
//
// The ladder is of cells at room temperature: cold takes charge away for now,
// it does not drain a cell.
func (s *Standing) cellV(charge float64) float64 {
	st := restedState(s.Pack, charge, max(s.AmbientC, roomC))
	return max(0, s.Pack.WeakestCellV(&st, 0))
}

// packV returns the rested voltage of the pack at a charge.
func (s *Standing) packV(charge float64) float64 {
	return s.Pack.RestedV(restedState(s.Pack, charge, s.AmbientC))
}

// lowest returns the charge below which nothing is looked for.
func (s *Standing) lowest() float64 {
	return 1 - (1+wellsPastEmpty)*s.Pack.Wells().CapacityAh/s.Pack.FullAh()
}

// highestAt returns the highest charge at which f, which rises with charge, is
// at most v; the lowest charge when it never is.
func (s *Standing) highestAt(f func(float64) float64, v float64) float64 {
	lo, hi := s.lowest(), 1.0
	if f(hi) <= v {
		return hi
	}
	if f(lo) > v {
		return lo
	}
	return solve.Crossing(lo, hi, chargeWithin, func(charge float64) float64 { return f(charge) - v }).Lo
}

// chargeWithin is how exactly a charge is found: a minute of a year's loss.
const chargeWithin = 1e-7

// chargeAtCell returns the charge at which the weakest cell rests at v.
func (s *Standing) chargeAtCell(v float64) float64 { return s.highestAt(s.cellV, v) }

// path works out the legs: the chain is stepped at each voltage at which one
// of its closed devices opens.
func (s *Standing) path(lossPerMonth float64) decline {
	self := lossPerMonth / monthDays
	chain := s.Chain
	var d decline
	day, charge := 0.0, s.Pack.Charge(s.Start)
	for d.n < len(d.legs) {
		amps := chain.StandbyA()
		if chain.feeds() {
			amps += s.StandbyA
		}
		l := leg{day, charge, self + amps*24/s.Pack.FullAh()}
		d.legs[d.n] = l
		d.n++
		opensAt := chain.nextToOpen()
		if opensAt <= 0 || l.perDay <= 0 {
			break
		}
		next := min(charge, s.highestAt(s.packV, opensAt))
		day += (charge - next) / l.perDay
		charge = next
		if chain.openAt(opensAt); day > mostDays {
			break
		}
	}
	return d
}

// feeds reports whether board and lights still hang on the pack: the
// controller's own cutoff disconnects the motors, not what it is made of.
func (c *Chain) feeds() bool {
	for i := range c.n {
		if c.states[i].open && c.devices[i].Where != Controller {
			return false
		}
	}
	return true
}

// nextToOpen returns the highest voltage at which a device that still has a
// supply and is closed would open; 0 when none would.
func (c *Chain) nextToOpen() float64 {
	highest := 0.0
	for i := range c.n {
		if c.states[i].open {
			break
		}
		highest = max(highest, c.devices[i].OpensAtV)
	}
	return highest
}

// openAt holds every device at v until its delay is over.
func (c *Chain) openAt(v float64) {
	longest := 0.0
	for i := range c.n {
		longest = max(longest, c.devices[i].DelayS)
	}
	c.Step(Sample{PackV: v, BusV: v, DtS: longest + 1})
}

// chargeAfter returns the charge after so many days.
func (d *decline) chargeAfter(days float64) float64 {
	l := d.legs[0]
	for i := 1; i < d.n && d.legs[i].fromDay <= days; i++ {
		l = d.legs[i]
	}
	return l.charge - (days-l.fromDay)*l.perDay
}

// daysUntil returns when the charge has fallen to z.
func (d *decline) daysUntil(z float64) float64 {
	for i := range d.n {
		l := d.legs[i]
		if l.charge <= z {
			return l.fromDay
		}
		if i+1 < d.n && d.legs[i+1].charge > z {
			continue
		}
		if l.perDay <= 0 {
			break
		}
		if days := l.fromDay + (l.charge-z)/l.perDay; days <= mostDays {
			return days
		}
		break
	}
	return math.Inf(1)
}
