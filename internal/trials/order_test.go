package trials_test

import (
	"fmt"
	"math"
	"strconv"
	"strings"
	"testing"

	"example.org/packcheck/answer"
)

// series is one figure over several values of one key.
type series struct {
	name   string
	base   sheet
	key    string
	values []string
	of     func(*answer.Assessment) float64
}

// falls and rises check the order of a series; equal neighbours pass, and so
// does what rounding of steps may do.
func (c series) falls(t *testing.T) { t.Helper(); c.ordered(t, -1) }

func (c series) rises(t *testing.T) { t.Helper(); c.ordered(t, +1) }

func (c series) ordered(t *testing.T, sign float64) {
	t.Helper()
	last, at := 0.0, ""
	for i, value := range c.values {
		now := c.of(briefly(t, c.base.with(c.key, strconv.Quote(value))))
		if i > 0 && sign*(now-last) < -2e-3*math.Abs(last) {
			t.Errorf("%s: %s = %s gives %.6g, %s gave %.6g", c.name, c.key, value, now, at, last)
		}
		last, at = now, value
	}
}

// anyCapacity leaves the amp-hours out of the label, so that others can be told.
func (s sheet) anyCapacity() sheet {
	words := strings.Fields(strings.Trim(s["pack.label"], `"`))
	return s.with("pack.label", strconv.Quote(strings.Join(words[:len(words)-2], " ")))
}

func lasts(a *answer.Assessment) float64 { return a.Ride.LastsPedalMin }

func speed(a *answer.Assessment) float64 { return a.Steady.SpeedKmh }

func peak(a *answer.Assessment) float64 { return a.Launch.PeakBatteryA }

func left(a *answer.Assessment) float64 { return a.Ride.ChargeLeft }

func TestMoreOfAThingNeverHelpsWhereItCannot(t *testing.T) {
	t.Parallel()
	full, plain, lead := doneProperly(t), onContacts(t), labelsOnly()
	hill := func(s sheet) sheet { return s.with("vehicle.slope", `"4 %"`) }
	for name, base := range map[string]sheet{"done properly": full, "contacts": plain, "lead-acid": lead} {
		kids := []string{"10 kg", "15 kg", "20 kg", "30 kg", "45 kg"}
		series{name + ", heavier child", hill(base), "rider.mass", kids, lasts}.falls(t)
		series{name + ", heavier child", hill(base), "rider.mass", kids, speed}.falls(t)
		series{name + ", steeper", base, "vehicle.slope", []string{"0 %", "1 %", "2 %", "4 %", "6 %"}, lasts}.falls(t)
		series{name + ", steeper", base, "vehicle.slope", []string{"0 %", "1 %", "2 %", "4 %", "6 %"}, speed}.falls(t)
		series{name + ", larger pack", base.anyCapacity(), "pack.capacity", []string{"3 Ah", "5 Ah", "7 Ah", "12 Ah", "20 Ah"}, lasts}.rises(t)
		series{name + ", healthier pack", base, "pack.health", []string{"30 %", "50 %", "70 %", "85 %", "100 %"}, lasts}.rises(t)
		series{name + ", fuller pack", base, "pack.charge", []string{"40 %", "60 %", "80 %", "100 %"}, lasts}.rises(t)
		series{name + ", more resistance", base, "pack.resistance", []string{"30 mOhm", "60 mOhm", "90 mOhm", "150 mOhm"}, speed}.falls(t)
		series{name + ", more resistance", base, "pack.resistance", []string{"30 mOhm", "60 mOhm", "90 mOhm", "150 mOhm"}, func(a *answer.Assessment) float64 { return a.Pack.ShortCircuitA }}.falls(t)
	}
}

func wireHeat(a *answer.Assessment) float64 {
	for _, e := range a.Path.Elements {
		if e.Name == "wire" {
			return e.HeatW
		}
	}
	return math.NaN()
}

// Thicker wire is cooler at the same load, loses less and never slows down. It
// lets more through at launch, and so the motors may get hotter: that is no
// contradiction.
func TestThickerWireIsNeverHotterOrSlower(t *testing.T) {
	t.Parallel()
	gauges := []string{"20 AWG", "18 AWG", "16 AWG", "14 AWG", "12 AWG", "10 AWG"}
	areas := []string{"0.5 mm2", "0.75 mm2", "1 mm2", "1.5 mm2", "2.5 mm2", "4 mm2"}
	for _, base := range []sheet{doneProperly(t), onContacts(t)} {
		bare := base.with("wire.gauge", "")
		for _, c := range []series{
			{"gauge", base, "wire.gauge", gauges, nil}, {"area", bare, "wire.area", areas, nil},
		} {
			c.of = speed
			c.rises(t)
			c.of = wireHeat
			c.falls(t)
			c.of = func(a *answer.Assessment) float64 { return a.Path.DropV }
			c.falls(t)
			c.of = func(a *answer.Assessment) float64 { return a.Path.AmpacityA }
			c.rises(t)
		}
	}
}

func TestALowerLimitOrALongerRampNeverRaisesThePeak(t *testing.T) {
	t.Parallel()
	for name, base := range map[string]sheet{
		"done properly": doneProperly(t),
		"no converter":  onContacts(t).with("controller.kind", `"chopper"`, "controller.max_voltage", `"30 V"`),
		"lead-acid":     labelsOnly().with("controller.kind", `"chopper"`),
	} {
		limits := []string{"12 A", "16 A", "20 A", "30 A", "50 A", "80 A"}
		series{name, base.with("controller.ramp", ""), "controller.current_limit", limits, peak}.rises(t)
		series{name, base.with("controller.ramp", ""), "controller.current_limit", limits, func(a *answer.Assessment) float64 { return a.Launch.PeakMotorA }}.rises(t)
		series{name, base.with("controller.ramp", ""), "controller.current_limit", limits, func(a *answer.Assessment) float64 { return a.Launch.BlockedMotorA }}.rises(t)
		// A free launch: on level ground, no limit.
		ramps := []string{"0 s", "0.1 s", "0.3 s", "1 s", "3 s", "10 s", "30 s"}
		series{name, base.with("controller.current_limit", ""), "controller.ramp", ramps, peak}.falls(t)
	}
}

// Common practice, no published source: a second cutoff in the chain never
// makes things worse. What a device draws itself is one exception, one that opens
// on a full pack another, and the third one in the controller that opens before
// the module does: the module then stays closed, and the controller goes on
// drawing. None of these is tried here.
func TestASecondCutoffNeverMakesThingsWorse(t *testing.T) {
	t.Parallel()
	base := doneProperly(t)
	one := assess(t, base)
	days := func(a *answer.Assessment) float64 {
		if a.Cutoff.IdleDaysToHarm == nil {
			return math.Inf(1)
		}
		return *a.Cutoff.IdleDaysToHarm
	}
	for _, place := range []string{"pack", "controller"} {
		for _, volts := range []string{"10 V", "13 V", "15 V", "16 V", "16.5 V", "17 V", "18 V"} {
			if v, _, _ := strings.Cut(volts, " "); place == "controller" && v >= "16.5" { // the module's own
				continue
			}
			two := assess(t, base.with("cutoff."+place+".opens_at", strconv.Quote(volts), "cutoff."+place+".delay", `"2 s"`,
				"cutoff."+place+".standby_current", `"0 A"`))
			what := fmt.Sprintf("a second cutoff in the %s at %s", place, volts)
			if two.Verdict > one.Verdict {
				t.Errorf("%s: %v, alone %v: %+v", what, two.Verdict, one.Verdict, two.Findings[0])
			}
			if left(two) < left(one)-1e-3 || two.Cutoff.WeakestCellV < one.Cutoff.WeakestCellV-1e-3 || days(two) < days(one)*0.999 {
				t.Errorf("%s: %.3f left, weakest cell %.3f V, %.1f days; alone %.3f, %.3f V, %.1f days", what,
					left(two), two.Cutoff.WeakestCellV, days(two), left(one), one.Cutoff.WeakestCellV, days(one))
			}
		}
	}
}

func TestAHigherCutoffLeavesMoreCharge(t *testing.T) {
	series{"tool pack", doneProperly(t), "cutoff.module.opens_at", []string{"14 V", "15 V", "16 V", "17 V", "18 V", "19 V"}, left}.rises(t)
	series{"lead-acid", labelsOnly(), "cutoff.module.opens_at", []string{"9 V", "10 V", "10.5 V", "11 V", "11.5 V"}, left}.rises(t)
}

// A colder pack never lasts longer, where a cutoff or the wells of a lead-acid
// block end the ride. (A lithium pack that nothing stops gives all its charge
// at any temperature, and the slower ride of a cold one even takes a little
// longer: that is not tried here.)
func TestAColderPackNeverLastsLonger(t *testing.T) {
	t.Parallel()
	temps := []string{"-15 C", "-5 C", "0 C", "10 C", "20 C", "30 C"}
	series{"tool pack", doneProperly(t), "pack.temperature", temps, lasts}.rises(t)
	series{"lead-acid", labelsOnly(), "pack.temperature", temps, lasts}.rises(t)
	bench := benchLoad().with("load.until", `"10.5 V"`, "outing.air", `"20 C"`)
	series{"bench", bench, "pack.temperature", temps, lasts}.rises(t)
}
