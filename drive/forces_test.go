package drive_test

import (
	"math"
	"testing"

	"example.org/packcheck/drive"
)

func TestRollingResistanceOfHardWheels(t *testing.T) {
	// Al-Eisawi et al. 1999, Applied Ergonomics 30:235-245: coefficient of length
	// 2.2 / 2.4 / 3.3 / 4.5 mm on smooth concrete, tile, asphalt, carpet. A wheel
	// of 250 mm is extrapolation.
	for length, want := range map[float64]float64{0.0022: 0.0176, 0.0024: 0.0192, 0.0033: 0.0264, 0.0045: 0.036} {
		n := drive.RollingN(drive.Rolling{MassKg: 30, HardWheelM: length, WheelRadiusM: 0.125})
		near(t, "Crr", n/(30*drive.GravityMS2), want, 0.0001)
	}
	// W. G. McLean, Schaum's Engineering Mechanics, Ex. 9-21, p. 143: 500 N, 760 mm
	// wheel, 0.305 mm: 0.4 N.
	near(t, "steel wheel, N", drive.RollingN(drive.Rolling{MassKg: 500 / drive.GravityMS2, HardWheelM: 0.305e-3, WheelRadiusM: 0.38}), 0.4, 0.005)
	near(t, "a coefficient goes first, N", drive.RollingN(drive.Rolling{MassKg: 10, Coefficient: 0.05, HardWheelM: 1, WheelRadiusM: 1}), 10*drive.GravityMS2*0.05, 1e-9)
	near(t, "no wheel, no figure", drive.RollingN(drive.Rolling{MassKg: 10, HardWheelM: 0.002}), 0, 0)
}

func TestSlopeForce(t *testing.T) {
	// EN 71-1:2005+A8:2009, rationale annex: (M + 25) g sin 10 degrees = 1.70 (M + 25) N.
	near(t, "N per kg on 10 degrees", drive.SlopeN(drive.Slope{MassKg: 1, SlopeRad: 10 * math.Pi / 180}), 1.70, 0.005)
	// R. K. Bansal, Engineering Mechanics, Ex. 15.13, p. 546: a truck of 6000 N
	// rolls down 1 in 40 at steady speed, then climbs it at 20 m/s: 25 N per kN
	// of road resistance, 6.00 kW.
	slope := drive.SlopeN(drive.Slope{MassKg: 6000 / drive.GravityMS2, SlopeRad: math.Asin(1. / 40)})
	near(t, "road resistance, N per kN", slope/6, 25, 1e-9)
	near(t, "power, kW", 2*slope*20/1000, 6.00, 1e-9)
	truck := drive.Vehicle{
		Motor: drive.Motor{TorqueConstant: 10, WindingOhm: 0.001}, Motors: 1, MotorsInSeries: 1,
		GearRatio: 1, GearEfficiency: 1, WheelRadiusM: 1, MassKg: 6000 / drive.GravityMS2, RollN: slope, GradeN: slope,
	}
	r := run(truck, drive.Controller{}, drive.Source{OCVV: 20*10 + 0.001*30})
	near(t, "power of motors that climb it at 20 m/s, kW", r.WheelN*r.SpeedMS/1000, 6.00, 1e-6)
}

func TestDragAndGrip(t *testing.T) {
	near(t, "drag, rho cd A / 2", drive.DragCoefficient(drive.Air{DragFactor: 1.1, FrontalM2: 0.5}), 1.225*1.1*0.5/2, 1e-12)
	near(t, "thin air", drive.DragCoefficient(drive.Air{DragFactor: 1.1, FrontalM2: 0.5, AirKgPerM3: 1}), 1.1*0.5/2, 1e-12)
	near(t, "grip, friction times weight on driven wheels", drive.GripLimitN(drive.Grip{Friction: 0.3, MassKg: 40, DrivenShare: 0.6}), 0.3*40*0.6*drive.GravityMS2, 1e-9)
}

// Moments about the front wheels: a climb shifts the weight times height over wheelbase
// times the sine onto the rear ones; of a cart of 40 kg, its middle as high as half of the
// wheelbase, a tenth of rise per run shifts 2 kg.
func TestAClimbShiftsWeightOntoTheRearWheels(t *testing.T) {
	const kg, friction = 40., 0.3
	for _, c := range []struct {
		name                string
		share, height, rise float64
		wantKg              float64 // on the driven wheels, across the slope
	}{
		{"level", 0.6, 0.5, 0, 24},
		{"a tenth uphill, rear wheels", 0.6, 0.5, 0.1, (24 + 2) / math.Hypot(1, 0.1)},
		{"a tenth uphill, front wheels", 0.4, -0.5, 0.1, (16 - 2) / math.Hypot(1, 0.1)},
		{"a tenth downhill, rear wheels", 0.6, 0.5, -0.1, (24 - 2) / math.Hypot(1, 0.1)},
		{"all wheels driven", 1, 0, 0.1, 40 / math.Hypot(1, 0.1)},
		{"the front wheels lift", 0.9, 0.5, 0.5, 40 / math.Hypot(1, 0.5)},
		{"the driven wheels lift", 0.1, -0.5, 0.5, 0},
	} {
		got := drive.GripLimitN(drive.Grip{Friction: friction, MassKg: kg, DrivenShare: c.share, HeightShare: c.height, SlopeRad: math.Atan(c.rise)})
		near(t, c.name+", N", got, friction*c.wantKg*drive.GravityMS2, 1e-9)
	}
}

// Computed trade figures; a hobby example divided by 10 and came to 35.7 mph.
func TestWheelSpeedIdentity(t *testing.T) {
	for _, c := range []struct{ motorRPM, ratio, wheelM, wantKmh, digit float64 }{
		{15000, 100, 0.250, 7.07, 0.005},
		{19000, 110, 0.250, 8.14, 0.005},
		{20000, 100, 6 * 0.0254, 5.75, 0.005}, // 3.57 mph
	} {
		v := drive.Vehicle{GearRatio: c.ratio, WheelRadiusM: c.wheelM / 2}
		near(t, "km/h", v.WheelMS(c.motorRPM*rpm)/kmh, c.wantKmh, c.digit)
		near(t, "and back, rpm", v.MotorRadS(v.WheelMS(c.motorRPM*rpm))/rpm, c.motorRPM, 1e-6)
	}
}

func TestVehicleCheckNamesTheField(t *testing.T) {
	good := tractor()
	if err := good.Check(); err != nil {
		t.Fatal(err)
	}
	for want, edit := range map[string]func(*drive.Vehicle){
		"gear ratio":         func(v *drive.Vehicle) { v.GearRatio = 0 },
		"gear efficiency":    func(v *drive.Vehicle) { v.GearEfficiency = 1.2 },
		"wheel radius":       func(v *drive.Vehicle) { v.WheelRadiusM = math.NaN() },
		"mass":               func(v *drive.Vehicle) { v.MassKg = math.Inf(1) },
		"rolling resistance": func(v *drive.Vehicle) { v.RollN = -1 },
		"slope force":        func(v *drive.Vehicle) { v.GradeN = math.NaN() },
		"motor is needed":    func(v *drive.Vehicle) { v.Motors = 0 },
		"chains of 2":        func(v *drive.Vehicle) { v.Motors, v.MotorsInSeries = 3, 2 },
	} {
		v := tractor()
		edit(&v)
		wantError(t, v.Check(), want)
	}
}
