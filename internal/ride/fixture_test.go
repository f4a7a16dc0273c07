package ride

import (
	"testing"

	"example.org/packcheck/battery"
	"example.org/packcheck/chemistry"
	"example.org/packcheck/drive"
	"example.org/packcheck/tables"
	"example.org/packcheck/wiring"
)

// Numbers of the Bramble Lane tractor are invented for the tests.

func pack(t testing.TB, chem string, cells int, ah float64) *battery.Model {
	t.Helper()
	p, ok := chemistry.Builtin().Profile(chem)
	if !ok {
		t.Fatalf("no chemistry %q", chem)
	}
	m, err := battery.New(battery.Spec{Profile: p, CellsInSeries: cells, Strings: 1, CapacityAh: ah})
	if err != nil {
		t.Fatal(err)
	}
	return m
}

func tractor() drive.Vehicle {
	v := drive.Vehicle{
		Motor: drive.Motor{
			TorqueConstant: 0.0085, WindingOhm: 0.30, WindingH: 1.2e-4, NoLoadA: 1.2, RotorInertiaKgM2: 6e-6,
			Thermal: drive.ThermalFromTimes(drive.ThermalTimes{
				WindingToAirKPerW: 6, WindingShare: 0.3, WindingTauS: 25, CaseTauS: 600, LimitC: 130,
			}),
		},
		Motors: 2, MotorsInSeries: 1,
		GearRatio: 110, GearEfficiency: 0.6, WheelRadiusM: 0.13, MassKg: 42,
	}
	v.RollN = drive.RollingN(drive.Rolling{MassKg: v.MassKg, HardWheelM: 0.006, WheelRadiusM: v.WheelRadiusM})
	v.GripN = drive.GripLimitN(drive.Grip{Friction: 0.5, MassKg: v.MassKg, DrivenShare: 0.55})
	v.DragNS2PerM2 = drive.DragCoefficient(drive.Air{DragFactor: 1, FrontalM2: 0.4})
	return v
}

func tractorCase(t testing.TB) Case {
	return Case{
		Pack: pack(t, "li-ion", 5, 5), StartCharge: 1, PackC: 20, AmbientC: 20,
		PathOhm: 0.03, Vehicle: tractor(), DriveS: 25, PauseS: 10,
	}
}

func fuse(t testing.TB, ratingA float64) *wiring.Fuse {
	t.Helper()
	form, err := tables.Builtin().Fuse("small blade")
	if err != nil {
		t.Fatal(err)
	}
	f, err := wiring.NewFuse(wiring.FuseSpec{Form: form, RatingA: ratingA})
	if err != nil {
		t.Fatal(err)
	}
	return f
}
