package trials_test

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"example.org/packcheck/drive"
	"example.org/packcheck/setup"
)

// halfTorqueS is how long a motor that is held on stiff volts takes until its torque
// has halved, friction and the magnets' warmth left aside: its copper has then doubled
// its resistance, 254.5 K above 20 degC.
func halfTorqueS(motor drive.Motor, volts float64) float64 {
	const twice = 20 + 254.5
	motor.Thermal.LimitC = twice
	v := drive.Vehicle{
		Motor: motor, Motors: 1, MotorsInSeries: 1, GearRatio: 100, GearEfficiency: 0.6, WheelRadiusM: 0.13, MassKg: 30, RollN: 10, GripN: 1e6,
	}
	b := drive.BlockedWheels(v, drive.Controller{}, drive.PackCircuit{OCVV: volts}, drive.HeatState{WindingC: 20, CaseC: 20}, 20)
	if !b.ReachesLimit {
		return math.Inf(1)
	}
	return b.ToLimitS
}

// Published thermal constants of a motor of 40 mm and 150 W (data sheet of a 24 V
// precision motor, from memory): 0.299 Ohm, winding to housing 1.9 K/W with 41.6 s,
// housing to air 4.7 K/W with 1,120 s. On 24 V no heat worth a word leaves the
// winding in time, and C dT/dt = V^2/(R (1 + a T)) gives by hand
//
//	t = 3/2 R C/(a V^2),  C = 41.6/1.9 J/K,  a = 1/254.5 per K
//
// On 3 V (10 A) it would take 278 s, in which most of the heat leaves: far longer.
func TestATorqueHalvesAsPublishedHeatConstantsSay(t *testing.T) {
	const inner, outer, tau, slow, ohm = 1.9, 4.7, 41.6, 1120, 0.299
	motor := drive.Motor{TorqueConstant: 0.0302, WindingOhm: ohm, Thermal: drive.ThermalFromTimes(drive.ThermalTimes{
		WindingToAirKPerW: inner + outer, WindingShare: inner / (inner + outer), WindingTauS: tau, CaseTauS: slow,
	})}
	for _, volts := range []float64{24, 18} {
		want := 1.5 * ohm * (tau / inner) * 254.5 / (volts * volts)
		if got := halfTorqueS(motor, volts); got < want || got > 1.15*want {
			t.Errorf("on %g V the torque halves after %.2f s; %.2f s where nothing leaves the winding", volts, got, want)
		}
	}
	if got := halfTorqueS(motor, 3); got < 2*1.5*ohm*(tau/inner)*254.5/9 {
		t.Errorf("on 3 V the torque halves after %.0f s, as if nothing left the winding", got)
	}
}

// How soon a held motor gives half of its torque is published in tables of locked
// motors; none was at hand. From memory: one of size 775 with 134 A stall is ruined
// within a few seconds on 12 V, one of size 550 with 85 A within ten or so; a mentor of a
// robotics contest (copy) wrote of ride-on motors of size 550 that a stall "almost
// immediately" destroys them. So a wide check only, over the ends of what is known of
// their heat, and the order.
func TestHeldMotorsLoseTheirTorqueWithinSeconds(t *testing.T) {
	seconds := func(can string, stallA float64) (low, high float64) {
		s, err := setup.Read(strings.NewReader(fmt.Sprintf("[motors]\ncan = %q\nrated_voltage = \"12 V\"\nstall_current = \"%g A\"\n[pack]\nlabel = \"12 V 7 Ah\"\n", can, stallA)), "motor.toml")
		if err != nil {
			t.Fatal(err)
		}
		p, err := s.Parts()
		if err != nil {
			t.Fatal(err)
		}
		low, high = math.Inf(1), 0
		for _, pick := range []setup.Pick{setup.Likely, func(f *setup.Figure) float64 { return f.Low }, func(f *setup.Figure) float64 { return f.High }} {
			motor := p.Motor(pick)
			motor.WindingOhm = 12 / stallA
			x := halfTorqueS(motor, 12)
			low, high = min(low, x), max(high, x)
		}
		return low, high
	}
	for _, m := range []struct {
		can          string
		stallA       float64
		least, mostS float64
	}{
		{"775", 134, 1, 12}, {"550", 85, 0.8, 15}, {"ride-on 550", 64, 1, 20},
	} {
		if low, high := seconds(m.can, m.stallA); low < m.least || high > m.mostS {
			t.Errorf("size %s with %g A: its torque halves after %.1f to %.1f s, want within %g to %g s", m.can, m.stallA, low, high, m.least, m.mostS)
		}
	}
	if strong, _ := seconds("775", 134); strong >= 0.5*func() float64 { x, _ := seconds("775", 18); return x }() {
		t.Error("a winding of 18 A stall stands it as short as one of 134 A")
	}
}

// Catalogued motors (WPILib DCMotor.java and a maker's sheet of the 540; no-load
// current, stall current on 12 V): with wheels up both of two draw their no-load
// currents, and blocked what battery, wire and the two stall resistances leave. Held
// against Ohm's law with the means of the answer's own range of the rest.
func TestCataloguedMotorsDrawWhatTheirSheetsSay(t *testing.T) {
	for _, m := range []struct {
		can                  string
		rpm, noLoadA, stallA float64
	}{
		{"550", 19000, 0.4, 84}, {"775", 18730, 0.7, 134}, {"775", 13050, 2.7, 97}, {"775", 5800, 1.6, 18}, {"540", 16800, 1.0, 42},
	} {
		text := fmt.Sprintf("[vehicle]\ndesign_voltage = \"12 V\"\nhas_board = false\nground = \"asphalt\"\n[controller]\nkind = \"contacts\"\n[motors]\ncount = 2\nwiring = \"parallel\"\ncan = %q\nrated_voltage = \"12 V\"\nno_load_speed = \"%g rpm\"\nno_load_current = \"%g A\"\nstall_current = \"%g A\"\n[pack]\nlabel = \"12 V 7 Ah\"\nage = \"new\"\n",
			m.can, m.rpm, m.noLoadA, m.stallA)
		ranges := foretold(t, text, 256)
		if up := ranges[wheelsUpA].Likely; math.Abs(up/(2*m.noLoadA)-1) > 0.02 {
			t.Errorf("size %s, %g rpm: wheels up %.2f A, the sheets of two say %g", m.can, m.rpm, up, 2*m.noLoadA)
		}
		blocked, path, pack := ranges[blockedA], ranges["path.resistance_ohm"], ranges["pack.resistance_1s_ohm"]
		least, most := 12.6/(12/m.stallA/2+path.High+pack.High), 13/(12/m.stallA/2+path.Low)
		if blocked.Low < least || blocked.High > most {
			t.Errorf("size %s, %g A stall: %.0f to %.0f A blocked, Ohm's law allows %.0f to %.0f", m.can, m.stallA, blocked.Low, blocked.High, least, most)
		}
		if full := 2 * m.stallA; blocked.High >= full {
			t.Errorf("size %s: %.0f A blocked, more than the %g A of two on stiff volts", m.can, blocked.High, full)
		}
	}
}
