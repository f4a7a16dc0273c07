package packcheck_test

import (
	"math"
	"strconv"
	"strings"
	"testing"

	"example.org/packcheck"
)

// worn is a setup of which the battery's readings are known.
const worn = `
[rider]
mass = "20 kg"
[vehicle]
design_voltage = "12 V"
ground = "asphalt"
[motors]
count = 2
can = "550"
[pack]
chemistry = "agm"
label = "12 V 7 Ah"
`

func assumed(a *packcheck.Assessment, key string) (packcheck.Assumed, bool) {
	for _, x := range a.Assumed {
		if x.Key == key {
			return x, true
		}
	}
	return packcheck.Assumed{}, false
}

func TestARestingVoltageTellsTheChargeToStartFrom(t *testing.T) {
	full := read(t, worn)
	half := read(t, worn+"[measured]\nrest_voltage = \"12.3 V\"\nhours_rested = \"24 h\"\n")
	x, ok := assumed(half, "pack.charge")
	if !ok || !strings.Contains(x.Why, "measured") {
		t.Errorf("pack.charge: %+v", x)
	}
	// 12.3 V after a day's rest is half full: battery maker's table, 24 h rest.
	if ratio := half.Ride.LastsPedalMin / full.Ride.LastsPedalMin; ratio < 0.25 || ratio > 0.6 {
		t.Errorf("half full lasts %.2f times as long as full", ratio)
	}
	given := read(t, strings.Replace(worn, "label", "charge = \"100 %\"\nlabel", 1)+"[measured]\nrest_voltage = \"12.3 V\"\n")
	if math.Abs(given.Ride.LastsPedalMin/full.Ride.LastsPedalMin-1) > 1e-9 {
		t.Error("a charge that was given is overruled by the resting voltage")
	}
}

func TestAReadingUnderLoadTellsTheResistance(t *testing.T) {
	const rest = "[measured]\nrest_voltage = \"12.8 V\"\nhours_rested = \"24 h\"\n"
	stiff := read(t, worn+rest+"loaded_voltage = \"12.2 V\"\nloaded_current = \"10 A\"\n")
	soft := read(t, worn+rest+"loaded_voltage = \"11.2 V\"\nloaded_current = \"10 A\"\n")
	if !(soft.Pack.ResistanceOhm > 2*stiff.Pack.ResistanceOhm) || !(soft.Launch.LowestBusV < stiff.Launch.LowestBusV) {
		t.Errorf("1.6 V of drop: %.3g Ohm, %.3g V at launch; 0.6 V: %.3g Ohm, %.3g V",
			soft.Pack.ResistanceOhm, soft.Launch.LowestBusV, stiff.Pack.ResistanceOhm, stiff.Launch.LowestBusV)
	}
}

// The old battery's readings say nothing of the new pack.
func TestReadingsBelongToTheOldBattery(t *testing.T) {
	tool := strings.Replace(worn, "chemistry = \"agm\"\nlabel = \"12 V 7 Ah\"", "chemistry = \"li-ion\"\nlabel = \"18 V 5 Ah\"", 1) +
		"[original.pack]\nchemistry = \"agm\"\nlabel = \"12 V 7 Ah\"\n"
	before := read(t, tool)
	after := read(t, tool+"[measured]\nrest_voltage = \"12.1 V\"\nhours_rested = \"24 h\"\n")
	if before.Ride.LastsPedalMin != after.Ride.LastsPedalMin {
		t.Errorf("%g min before, %g min after", before.Ride.LastsPedalMin, after.Ride.LastsPedalMin)
	}
}

func TestAMeasuredRideTimeNarrowsTheGround(t *testing.T) {
	grass := strings.Replace(worn, "asphalt", "short grass", 1)
	before := read(t, grass)
	want := before.Ride.LastsClockMin * 0.85
	after := read(t, grass+"[measured]\nride_time = \""+strconv.Itoa(int(math.Round(want*60)))+" s\"\n")
	if math.Abs(after.Ride.LastsClockMin/want-1) > 0.02 {
		t.Errorf("%.1f min measured, %.1f min computed", want, after.Ride.LastsClockMin)
	}
	b, a := before.Ranges["ride.lasts_clock_min"], after.Ranges["ride.lasts_clock_min"]
	if a.High-a.Low >= b.High-b.Low {
		t.Errorf("%v before, %v after", b, a)
	}
}
