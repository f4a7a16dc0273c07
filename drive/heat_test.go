package drive_test

import (
	"math"
	"strings"
	"testing"

	"example.org/packcheck/drive"
)

func wantError(t *testing.T, err error, want string) {
	t.Helper()
	if err == nil || !strings.Contains(err.Error(), want) {
		t.Errorf("error %v, want one with %q", err, want)
	}
}

// caseOnly is a motor that is one lump: all heat goes straight to the case.
func caseOnly(tauS, toAirKPerW float64) drive.Thermal {
	return drive.Thermal{WindingJPerK: 1e-6, WindingToCaseKPerW: 1e-3, CaseJPerK: tauS / toAirKPerW, CaseToAirKPerW: toAirKPerW}
}

// Source: G. K. Dubey, Fundamentals of Electrical Drives, Ex. 4.1, p. 47: time
// constant 60 min; 10 min of load, 20 min of idling that alone would end at a
// rise of 15; least rise 40: the peak is 49.9, and load for ever 104.4.
func TestDutyCycleOfDubeyExample41(t *testing.T) {
	m := caseOnly(3600, 1)
	on, off := m.Over(600), m.Over(1200)
	const ambient = 20
	// The load that brings the peak back to itself is what the example asks for.
	s := drive.HeatState{WindingC: ambient + 49.9, CaseC: ambient + 49.9}
	off.Advance(&s, 0, 15, ambient)
	near(t, "least rise", s.CaseC-ambient, 40, 0.05)
	on.Advance(&s, 0, 104.4, ambient)
	near(t, "peak rise", s.CaseC-ambient, 49.9, 0.05)
	near(t, "rise for ever", m.SteadyC(0, 104.4, ambient).CaseC-ambient, 104.4, 1e-9)
	// From cold, many cycles end there too.
	s = drive.HeatState{WindingC: ambient, CaseC: ambient}
	for range 40 {
		off.Advance(&s, 0, 15, ambient)
		on.Advance(&s, 0, 104.42, ambient)
	}
	near(t, "peak rise after many cycles", s.CaseC-ambient, 49.89, 0.005)
}

// Source: Dubey, Ex. 4.4, p. 55: 20 kW continuous, heating 60 min, cooling 90
// min: 51 kW for 10 min once, 25.14 kW for 10 min in every 20.
func TestDutyCycleOfDubeyExample44(t *testing.T) {
	d := drive.DutyCycle{OnS: 600, OffS: 600, HeatTauS: 3600, CoolTauS: 5400}
	near(t, "kW, 10 on 10 off", 20*d.PowerRatio(), 25.14, 0.005)
	d.Once = true
	near(t, "kW, once", 20*d.PowerRatio(), 51, 0.5)
	near(t, "kW, once, recomputed", 20*d.PowerRatio(), 51.04, 0.005)
}

// Sources: IEC 60085 and IEC 60034-1 as quoted in maintenance manuals.
func TestInsulationClasses(t *testing.T) {
	for letter, want := range map[string][2]float64{"A": {105, 60}, "E": {120, 75}, "B": {130, 80}, "F": {155, 105}, "H": {180, 125}} {
		limit, ok := drive.ClassLimitC(letter)
		rise, ok2 := drive.ClassRiseK(letter)
		if !ok || !ok2 || limit != want[0] || rise != want[1] {
			t.Errorf("class %s: %v, %v, want %v", letter, limit, rise, want)
		}
	}
	if limit, ok := drive.ClassLimitC("N"); !ok || limit != 200 {
		t.Errorf("class N: %v", limit)
	}
	for _, letter := range []string{"", "a", "Y", "AA"} {
		if _, ok := drive.ClassLimitC(letter); ok {
			t.Errorf("class %q must not be known", letter)
		}
		if _, ok := drive.ClassRiseK(letter); ok {
			t.Errorf("rise of class %q must not be known", letter)
		}
	}
	// Montsinger's rule: 25 K above costs a factor of 5.66.
	near(t, "life at 25 K above", 1/drive.LifeShare(25), 5.66, 0.005)
}

// The two-node propagator is exact, so many short steps are one long one, and
// it must agree with the differential equations themselves.
func TestHeatStepsAddUpAndObeyTheirEquations(t *testing.T) {
	m := tractor().Motor.Thermal
	const copper, other, ambient = 12.0, 3.0, 15.0
	long := drive.HeatState{WindingC: 30, CaseC: 22}
	short, euler := long, long
	m.Over(90).Advance(&long, copper, other, ambient)
	tenth := m.Over(0.09)
	for range 1000 {
		tenth.Advance(&short, copper, other, ambient)
	}
	near(t, "winding", short.WindingC, long.WindingC, 1e-9)
	near(t, "case", short.CaseC, long.CaseC, 1e-9)
	const dt = 1e-3
	for range 90000 {
		flow := (euler.WindingC - euler.CaseC) / m.WindingToCaseKPerW
		w := (copper - flow) / m.WindingJPerK
		c := (flow + other - (euler.CaseC-ambient)/m.CaseToAirKPerW) / m.CaseJPerK
		euler.WindingC += w * dt
		euler.CaseC += c * dt
	}
	near(t, "winding, by small steps", euler.WindingC, long.WindingC, 2e-3)
	near(t, "case, by small steps", euler.CaseC, long.CaseC, 2e-3)
	end := m.SteadyC(copper, other, ambient)
	m.Over(1e6).Advance(&long, copper, other, ambient)
	near(t, "winding in the end", long.WindingC, end.WindingC, 1e-9)
	near(t, "case in the end", long.CaseC, end.CaseC, 1e-9)
	if n := testing.AllocsPerRun(10, func() { tenth.Advance(&short, copper, other, ambient) }); n != 0 {
		t.Errorf("a step allocates %v times", n)
	}
}

func TestBlockedCurrentIsVoltsOverAllResistance(t *testing.T) {
	v, p := tractor(), agm()
	start := drive.HeatState{WindingC: 20, CaseC: 20}
	b := drive.BlockedWheels(v, drive.Controller{Ohm: 0.01}, p, start, 20)
	want := 12.9 / (0.032 + 0.035 + 0.01 + 0.32/2)
	near(t, "A", b.BatteryA, want, 1e-9)
	near(t, "A per motor", b.PerMotorA, want/2, 1e-9)
	near(t, "bus volts", b.BusV, want*0.16, 1e-9)
	near(t, "all heat is the pack's power", b.PackW+b.PathW+2*b.WindingW, 12.9*want, 1e-6)
	near(t, "torque of a pinion", b.PinionNM, 0.0075*(want/2-1.4), 1e-9)
	v.MotorsInSeries = 2
	b = drive.BlockedWheels(v, drive.Controller{}, p, start, 20)
	near(t, "in series, A", b.BatteryA, 12.9/(0.067+0.64), 1e-9)
	near(t, "in series, A per motor", b.PerMotorA, b.MotorA, 1e-9)
	b = drive.BlockedWheels(v, drive.Controller{Chopper: true, LimitA: 10}, p, start, 20)
	near(t, "limited, A", b.MotorA, 10, 1e-9)
	near(t, "limited, power balance", 12.9*b.BatteryA, 0.067*b.BatteryA*b.BatteryA+0.64*100, 1e-6)
	hot := drive.BlockedWheels(v, drive.Controller{}, p, drive.HeatState{WindingC: 100, CaseC: 50}, 20)
	near(t, "hot, A", hot.BatteryA, 12.9/(0.067+0.64*(234.5+100)/254.5), 1e-9)
}

// With the current held by a limiter and no way out for the heat, the winding
// warms by the adiabatic law of a copper conductor (IEC 60949):
//
//	t = C (234.5 + 20)/(I^2 R20) ln((234.5 + end)/(234.5 + start))
func TestBlockedWindingWarmsByTheAdiabaticLaw(t *testing.T) {
	v := tractor()
	v.Motor.Thermal = drive.Thermal{WindingJPerK: 12, CaseJPerK: 150, WindingToCaseKPerW: 1e7, CaseToAirKPerW: 5, LimitC: 130}
	b := drive.BlockedWheels(v, drive.Controller{Chopper: true, LimitA: 30}, toolPack(), drive.HeatState{WindingC: 25, CaseC: 25}, 25)
	want := 12 * 254.5 / (15 * 15 * 0.32) * math.Log((234.5+130)/(234.5+25))
	if !b.ReachesLimit || !b.HeatKnown {
		t.Fatalf("%+v", b)
	}
	near(t, "seconds", b.ToLimitS, want, 1e-3*want)
}

func TestBlockedWindingThatStaysCoolEnoughIsNotGivenSeconds(t *testing.T) {
	v := tractor()
	start := drive.HeatState{WindingC: 20, CaseC: 20}
	b := drive.BlockedWheels(v, drive.Controller{Chopper: true, LimitA: 6}, toolPack(), start, 20)
	if b.ReachesLimit || !b.HeatKnown {
		t.Errorf("3 A in 0.32 Ohm can be borne for ever: %+v", b)
	}
	short := drive.BlockedWheels(v, drive.Controller{}, toolPack(), start, 20)
	long := drive.BlockedWheels(v, drive.Controller{}, agm(), start, 20)
	if !(short.ReachesLimit && long.ReachesLimit && short.ToLimitS < long.ToLimitS/2) {
		t.Errorf("20 V must heat more than twice as fast as 12 V: %v s, %v s", short.ToLimitS, long.ToLimitS)
	}
	v.Motor.Thermal = drive.Thermal{}
	if b := drive.BlockedWheels(v, drive.Controller{}, toolPack(), start, 20); b.HeatKnown || b.ReachesLimit {
		t.Errorf("without heat data nothing is known: %+v", b)
	}
	hot := drive.BlockedWheels(tractor(), drive.Controller{}, toolPack(), drive.HeatState{WindingC: 150, CaseC: 90}, 20)
	if !hot.ReachesLimit || hot.ToLimitS != 0 {
		t.Errorf("a winding above its limit has no seconds left: %+v", hot)
	}
}

func TestReversalAddsTheBackEMF(t *testing.T) {
	v, p := tractor(), agm()
	e := v.Equivalent(20)
	all := 0.067 + e.Ohm
	stand := drive.ReverseAt(v, drive.Controller{}, p, 0, 20)
	near(t, "from rest it is the blocked current, A", stand.MotorA, 12.9/all, 1e-9)
	top := run(v, drive.Controller{}, p.Steady()).SpeedMS
	r := drive.ReverseAt(v, drive.Controller{}, p, top, 20)
	near(t, "(V + E)/R, A", r.MotorA, (12.9+e.VoltPerMS*top)/all, 1e-9)
	near(t, "E/R, A", r.ShortedA, e.VoltPerMS*top/e.Ohm, 1e-9)
	if ratio := r.MotorA / stand.MotorA; ratio < 1.6 || ratio > 2 {
		t.Errorf("reversal at full speed is nearly twice the blocked current, got %.2f", ratio)
	}
	limited := drive.ReverseAt(v, drive.Controller{Chopper: true, LimitA: 30}, p, top, 20)
	near(t, "no limiter holds what the motors drive themselves, A", limited.MotorA, r.ShortedA, 1e-9)
	near(t, "and the pack gives nothing to it, A", limited.BatteryA, 0, 1e-9)
	slow := drive.ReverseAt(v, drive.Controller{Chopper: true, LimitA: 30}, p, 0.2, 20)
	near(t, "slowly rolling the limiter holds, A", slow.MotorA, 30, 1e-9)
	near(t, "power balance with the vehicle's own push", 12.9*slow.BatteryA+e.VoltPerMS*0.2*30, 0.067*slow.BatteryA*slow.BatteryA+e.Ohm*900, 1e-6)
	v.GripN = 50
	near(t, "braking ends at the grip, N", drive.ReverseAt(v, drive.Controller{}, p, top, 20).BrakeN, 50, 0)
}
