package packcheck

import (
	"math"

	"example.org/packcheck/drive"
	"example.org/packcheck/internal/ride"
)

// metric is one figure whose spread is reported, under its JSON path.
type metric struct {
	path string
	of   func(*outcome) float64 // NaN where the case has no such figure
	// lasting marks a figure of how long it lasts. A corner at which the motors
	// burn out first says nothing about it, unless they do in the likely case.
	lasting bool
}

// outcome is what one case came to, with what the metrics need beside it.
type outcome struct {
	ride.Result
	c       ride.Case
	blocked drive.Blocked
	// lasts is the outing without a wanted time; the same as Outing where
	// nothing was wanted or where it ended sooner.
	lasts ride.Outcome
}

// The metrics that other code asks for by index.
const (
	mPedal = iota
	mLasts
	mDistance
	mSpeed
	mBatteryA
	mPeakA
	mBlockedA
	mLowestBus
	mWinding
	mWeakest
	mLastsClock
	mUsable
	mCount
)

// metrics are the figures with a spread, the ones above first.
var metrics = [...]metric{
	mPedal:      {"ride.pedal_min", running(func(o *outcome) float64 { return o.Outing.PedalS / 60 }), true},
	mLasts:      {"ride.lasts_pedal_min", running(func(o *outcome) float64 { return o.lasts.PedalS / 60 }), true},
	mDistance:   {"ride.distance_km", driven(func(o *outcome) float64 { return o.Outing.DistanceM / 1000 }), true},
	mSpeed:      {"steady.speed_kmh", driven(func(o *outcome) float64 { return o.Steady.SpeedMS * 3.6 }), false},
	mBatteryA:   {"steady.battery_a", driven(func(o *outcome) float64 { return o.Steady.BatteryA }), false},
	mPeakA:      {"launch.peak_battery_a", driven(func(o *outcome) float64 { return o.Launch.PeakBatteryA }), false},
	mBlockedA:   {"launch.blocked_battery_a", driven(func(o *outcome) float64 { return o.blocked.BatteryA }), false},
	mLowestBus:  {"launch.lowest_bus_v", driven(func(o *outcome) float64 { return o.Launch.LowestBusV }), false},
	mWinding:    {"ride.winding_c", heated(func(o *outcome) float64 { return o.Outing.WindingC }), false},
	mWeakest:    {"cutoff.weakest_cell_v", running(weakestV), true},
	mLastsClock: {"ride.lasts_clock_min", running(func(o *outcome) float64 { return o.lasts.ClockS / 60 }), true},
	mUsable:     {"pack.usable_ah", running(func(o *outcome) float64 { return o.lasts.DeliveredAh }), true},

	mCount: {"ride.clock_min", running(func(o *outcome) float64 { return o.Outing.ClockS / 60 }), true},
	{"ride.delivered_ah", running(func(o *outcome) float64 { return o.Outing.DeliveredAh }), true},
	{"ride.charge_left", running(func(o *outcome) float64 { return o.Outing.ChargeLeft }), true},
	{"ride.motor_case_c", heated(func(o *outcome) float64 { return o.Outing.CaseC }), false},
	{"ride.pack_c", running(func(o *outcome) float64 { return o.Outing.HottestC }), true},
	{"steady.motor_a", driven(func(o *outcome) float64 { return o.Steady.MotorA }), false},
	{"steady.bus_v", driven(func(o *outcome) float64 { return o.Steady.BusV }), false},
	{"launch.peak_motor_a", driven(func(o *outcome) float64 { return o.Launch.PeakMotorA }), false},
	{"launch.blocked_motor_a", driven(func(o *outcome) float64 { return o.blocked.MotorA }), false},
	{"pack.usable_wh", running(func(o *outcome) float64 { return o.lasts.DeliveredWh }), true},
	{"pack.resistance_ohm", midOhm, false},
	{"path.resistance_ohm", func(o *outcome) float64 {
		if o.c.PathOhm == 0 {
			return math.NaN() // a bench load without a wire
		}
		return o.c.PathOhm
	}, false},
}

// reversedV is where a cell's voltage stops being followed: it is reversed, and
// how far is beyond any model here. Own choice.
const reversedV = -1

// weakestV is the weakest cell's voltage when the ride ends.
func weakestV(o *outcome) float64 { return max(o.lasts.LowestCellV, reversedV) }

// midOhm is the pack's resistance at half charge and its starting temperature.
func midOhm(o *outcome) float64 {
	mid := o.c.Pack.StateAt(0.5, o.c.PackC)
	return o.c.Pack.SourceOhm(&mid)
}

// stuckS is the time within which a vehicle that comes to a stand counts as
// never having run.
const stuckS = 60

// stuck reports whether the vehicle of a case does not get going at all, or
// only with its wheels spinning. A corner of the unknowns in which that is so
// says nothing about how long the real one, which is driven on this ground,
// lasts; the findings still tell of it.
func stuck(o *outcome) bool {
	return o.c.Load.Kind == ride.NoLoad &&
		(o.Steady.Slipping || o.Launch.Slipped && o.Launch.To90S == 0 || o.lasts.EndedBy == ride.CannotMove && o.lasts.PedalS < stuckS)
}

// burnt reports whether the motors of a case burn out on the way.
func burnt(o *outcome) bool { return o.c.Load.Kind == ride.NoLoad && o.lasts.WindingC > burntC }

// running limits a figure to cases that run.
func running(of func(*outcome) float64) func(*outcome) float64 {
	return func(o *outcome) float64 {
		if stuck(o) {
			return math.NaN()
		}
		return of(o)
	}
}

// driven limits a figure to cases with a vehicle that runs.
func driven(of func(*outcome) float64) func(*outcome) float64 {
	return running(func(o *outcome) float64 {
		if o.c.Load.Kind != ride.NoLoad {
			return math.NaN()
		}
		return of(o)
	})
}

// burntC is where a motor's temperature stops being followed: beyond it the
// insulation is gone and the figure would only pretend. Own choice.
const burntC = 250

// heated limits a figure to cases whose motors' heat is modelled.
func heated(of func(*outcome) float64) func(*outcome) float64 {
	return driven(func(o *outcome) float64 {
		if !o.c.Vehicle.Motor.Thermal.Known() {
			return math.NaN()
		}
		return min(of(o), burntC)
	})
}
