package ride

import (
	"example.org/packcheck/cutoff"
	"example.org/packcheck/drive"
)

// Seen is everything that one case comes to: steady running, one launch,
// blocked wheels, the outing as it was wanted and the outing as long as it
// lasts.
type Seen struct {
	Case    *Case
	Steady  drive.Running      // with the pack as it starts, polarisation settled
	Launch  drive.LaunchResult // one start from rest, pack rested
	Blocked drive.Blocked      // wheels held, windings cold
	Outing  Outcome
	Lasts   Outcome // without a wanted time; the same as Outing where nothing was wanted or it ended sooner
	Marks   *Marks  // of Lasts; nil where none were asked for
}

// See evaluates a case, and marks its outing where it is given marks. It allocates
// nothing but what it returns.
func See(c *Case, m *Marks) Seen {
	s := Seen{Case: c, Marks: m}
	s.Steady, s.Launch = c.start()
	if m != nil {
		m.n = 0
	}
	s.ride(m)
	if c.Load.Kind == NoLoad {
		cold := c.Vehicle
		cold.Motor.Thermal = drive.Thermal{} // the currents need no heat, which takes longest
		s.Blocked = c.Hold(cold)
	}
	return s
}

// Glance evaluates of a case how fast and how long it drives, and whether it gets
// going at all: of [See] steady running, the outing and [drive.LaunchResult.Moved].
func Glance(c *Case) Seen {
	s := Seen{Case: c}
	if c.Load.Kind == NoLoad {
		p := c.Circuit()
		s.Steady = drive.SteadyOn(c.Vehicle, c.Controller, p, c.AmbientC)
		launch := c.launchCase(p)
		s.Launch.Moved = drive.MovesOff(&launch, c.LaunchSeconds())
	}
	s.ride(nil)
	return s
}

// ride is the outing, as it was wanted and as long as it lasts.
func (s *Seen) ride(m *Marks) {
	o := outing{c: s.Case, marks: m, goOn: s.Case.WantedS > 0}
	s.Lasts = o.run(1)
	s.Outing = s.Lasts
	if o.wanted.EndedBy == WantedReached && o.wanted.ClockS < s.Lasts.ClockS {
		s.Outing = o.wanted
	}
}

// OnTheFlat is the case's steady running where nothing climbs.
func (c *Case) OnTheFlat() drive.Running {
	v := &c.Vehicle
	if c.Level != nil {
		v = c.Level
	}
	return drive.SteadyOn(*v, c.Controller, c.Circuit(), c.AmbientC)
}

// Hold blocks the wheels of a vehicle on the pack and path of the case.
func (c *Case) Hold(v drive.Vehicle) drive.Blocked {
	return drive.BlockedWheels(v, c.Controller, c.Circuit(), drive.HeatState{WindingC: c.AmbientC, CaseC: c.AmbientC}, c.AmbientC)
}

// Stuck reports whether the vehicle does not get going at all. One whose wheels
// spin while it moves off, however slowly, does get going.
func (s *Seen) Stuck() bool {
	return s.Case.Load.Kind == NoLoad && (!(s.Steady.SpeedMS > 0) || !s.Launch.Moved || s.givesUp(stuckS) && s.Steady.Slipping)
}

// hardlyMS is the speed below which a vehicle whose wheels spin on hardly moves: a
// child walks faster. Own choice.
const hardlyMS = 1 / 3.6

// SpinsOn reports whether the driven wheels still spin when the launch has been
// followed to its end, [LaunchS] after its soft starts, and the vehicle hardly moves.
func (s *Seen) SpinsOn() bool {
	return s.Case.Load.Kind == NoLoad && s.Launch.Spinning && s.Launch.EndMS < hardlyMS
}

// When a vehicle that comes to a stand with charge left barely moved, and when one
// that spins its wheels never did. Own choices.
const (
	stuckS     = 60.0
	crawlS     = 300.0
	crawlsWith = 0.5 // of the charge, at the least: it was not the battery
)

// CrawlShare is the speed over that of free wheels below which a vehicle barely
// moves: the motors then take three quarters and more of what they do blocked, and
// a little more load or heat stops it. Own choice.
const CrawlShare = 0.25

// givesUp reports whether it comes to a stand within so many seconds of driving.
func (s *Seen) givesUp(seconds float64) bool {
	return s.Lasts.EndedBy == CannotMove && s.Lasts.PedalS < seconds
}

// FreeShare is the speed of running motors over that which they have with
// nothing to drive on the same volts; 0 where they stand.
func (s *Seen) FreeShare() float64 {
	chain := float64(max(s.Case.Vehicle.MotorsInSeries, 1))
	free := s.Case.Vehicle.Motor.NoLoadRadS(s.Steady.BusV * s.Steady.Duty / chain)
	if s.Steady.Stuck || !(free > 0) {
		return 0
	}
	return s.Steady.MotorRadS / free
}

// Crawls reports whether the vehicle gets going and yet barely moves: so near the
// stall of its motors that it does a quarter of their free speed, or that they
// weaken as they warm and it stands within minutes, the battery half full. One
// whose wheels spin is held by the ground, not by its motors.
func (s *Seen) Crawls() bool {
	return s.Case.Load.Kind == NoLoad && !s.Stuck() && !s.Steady.Slipping &&
		(s.FreeShare() < CrawlShare || s.givesUp(crawlS) && s.Lasts.ChargeLeft > crawlsWith*s.Case.StartCharge)
}

// BurntC is where a motor's temperature stops being followed: beyond it the
// insulation is gone and the figure would only pretend. Own choice.
const BurntC = 250

// Burnt reports whether the motors burn out on the way.
func (s *Seen) Burnt() bool { return s.Case.Load.Kind == NoLoad && s.Lasts.burns() }

func (o *Outcome) burns() bool { return o.WindingC > BurntC }

// EndsByMotors reports whether motors end an outing from so much charge that burn out, or
// weaken as they warm until they stand while there is plenty left. Nobody calls that how
// long a battery lasts.
func (o *Outcome) EndsByMotors(startCharge float64) bool {
	return o.burns() || o.EndedBy == CannotMove && o.ChargeLeft > crawlsWith*startCharge
}

// CutShort reports whether a cutoff ends the ride, or what the load draws, with much of
// the charge left.
func (s *Seen) CutShort() bool {
	return s.Lasts.EndedBy == CutoffOpened && s.Lasts.ChargeLeft >= cutoff.StillCharge
}

// LastingA is the pack's current that warms pack, wire and joints: running
// steadily, or what the outing comes to with launches and pauses where that is
// more. What a fuse ends does not last, and a launch that a cutoff ends is no outing.
func (s *Seen) LastingA() float64 {
	o := &s.Lasts
	if s.Case.Load.Kind == NoLoad && (o.EndedBy == FuseOpened || o.EndedBy == CutoffOpened && o.ClockS < lastingS) {
		return s.Steady.BatteryA
	}
	return max(s.Steady.BatteryA, s.Lasts.RMSA)
}

// lastingS is the time from which on a current lasts: a wire of a ride-on takes
// minutes to warm. Own choice.
const lastingS = 60
