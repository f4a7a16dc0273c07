package trials_test

import (
	"fmt"
	"maps"
	"math"
	"math/rand/v2"
	"slices"
	"strings"
	"testing"

	"example.org/packcheck/answer"
	"example.org/packcheck/internal/judge"
)

// stock is a 12 V vehicle by its labels.
func stock() sheet { return labelsOnly() }

// What people measure binds the answer.
func TestWhatIsMeasuredBinds(t *testing.T) {
	t.Parallel()
	for _, c := range []struct {
		name string
		s    sheet
		path string
		want float64
		off  float64
	}{
		{"5 A running at 11.8 V", stock().with("measured.loaded_current", `"5 A"`, "measured.loaded_voltage", `"11.8 V"`), runningA, 5, 0.15},
		{"8 A running", stock().with("measured.loaded_current", `"8 A"`), runningA, 8, 0.15},
		{"22 A blocked", stock().with("measured.blocked_current", `"22 A"`), blockedA, 22, 0.2},
		{"60 A blocked", stock().with("measured.blocked_current", `"60 A"`), blockedA, 60, 0.2},
		{"4 km/h", stock().with("measured.top_speed", `"4 km/h"`), speedKmh, 4, 0.15},
		{"1.5 km on a charge", stock().with("measured.distance", `"1.5 km"`), "ride.distance_km", 1.5, 0.3},
		{"5 km on a charge", stock().with("measured.distance", `"5 km"`), "ride.distance_km", 5, 0.3},
	} {
		if got := foretold(t, c.s.toml(), 2048)[c.path].Likely; math.Abs(got/c.want-1) > c.off {
			t.Errorf("%s: the answer is %.3g, want %.3g within %.0f %%", c.name, got, c.want, 100*c.off)
		}
	}
	pulled := readWith(t, stock().with("measured.pull_force", `"14 N"`).toml(), 512)
	near(t, "a pull of 14 N", pulled.Launch.Case.RollN, 14, 0.15)
	timed := assess(t, stock().with("measured.ride_time", `"45 min"`))
	if r := timed.Ranges["ride.lasts_clock_min"]; r.Low < 30 || r.High > 65 {
		t.Errorf("timed at 45 min: %.1f to %.1f min, want 30 to 65", r.Low, r.High)
	}
}

// A reading that differs a little from another makes an answer that differs a
// little; none falls off an edge.
func TestAlmostTheSameReadingGivesAlmostTheSameAnswer(t *testing.T) {
	t.Parallel()
	tool := sheetOf(t, examples+"tractor-tool-pack.toml")
	for _, c := range []struct{ key, unit string }{
		{"measured.ride_time", "min"}, {"original.measured.ride_time", "min"},
	} {
		last := map[string]float64{}
		for _, minutes := range []int{22, 24, 26} {
			found := foretold(t, tool.with(c.key, fmt.Sprintf(`"%d %s"`, minutes, c.unit)).toml(), 512)
			for _, path := range []string{"ride.lasts_pedal_min", "steady.speed_kmh", "original.original_pedal_min"} {
				now := found[path].Likely
				if before, ok := last[path]; ok && math.Abs(now/before-1) > 0.12 { // the readings differ by 7 to 10 %
					t.Errorf("%s = %d min: %s is %.3g, two minutes less gave %.3g", c.key, minutes, path, now, before)
				}
				last[path] = now
			}
		}
	}
}

// [original.measured] tells as much as [measured] of a setup that has an
// original battery: whichever table it stands in, it is the old battery's.
func TestTheOldBatterysReadingMayStandInEitherTable(t *testing.T) {
	t.Parallel()
	tool := sheetOf(t, examples+"tractor-tool-pack.toml")
	a := assess(t, tool.with("measured.ride_time", `"25 min"`, "measured.top_speed", `"5 km/h"`))
	b := assess(t, tool.with("original.measured.ride_time", `"25 min"`, "original.measured.top_speed", `"5 km/h"`))
	for _, path := range mainFigures {
		if x, y := a.Ranges[path], b.Ranges[path]; x != y {
			t.Errorf("%s: %v and %v", path, x, y)
		}
	}
}

// Every reading comes back within its error (twice the standard one), or the
// answer says that it does not; one that is off by more than three times its
// standard error is named as in conflict.
func TestEveryReadingComesBackOrIsNamed(t *testing.T) {
	t.Parallel()
	random := rand.New(rand.NewPCG(7, 8))
	about := func(middle float64, unit string) string { // from a third to three times
		return fmt.Sprintf(`"%.3g %s"`, middle*math.Pow(3, 2*random.Float64()-1), unit)
	}
	sheets := openSheets()
	sheets["described"] = doneProperly(t).without("original.pack", "original.controller")
	sheets["bench"] = benchLoad()
	told, clashes := 0, 0
	for _, name := range slices.Sorted(maps.Keys(sheets)) {
		for range 3 {
			s, keys := sheets[name].with(), []string{"ride_time"}
			if name != "bench" {
				keys = []string{"ride_time", "top_speed", "loaded_current", "blocked_current", "pull_force"}
			}
			random.Shuffle(len(keys), func(i, j int) { keys[i], keys[j] = keys[j], keys[i] })
			for _, key := range keys[:1+random.IntN(len(keys))] {
				middle := map[string]float64{"ride_time": 60, "top_speed": 5, "loaded_current": 7, "blocked_current": 50, "pull_force": 30}[key]
				unit := map[string]string{"ride_time": "min", "top_speed": "km/h", "loaded_current": "A", "blocked_current": "A", "pull_force": "N"}[key]
				s["measured."+key] = about(middle, unit)
			}
			a := assessed(t, name, s.toml())
			if a == nil {
				continue
			}
			consistent(t, name, a)
			for _, r := range a.Readings {
				told++
				named := a.Conflict != nil && slices.Contains(a.Conflict.Readings, r.Key)
				if named {
					clashes++
					continue
				}
				off := math.Abs(math.Log(r.After.Likely/r.Value)) / (r.Error / r.Value) // none here is in volts
				if r.Fits != (off <= 2) || !r.Fits && r.Explains == "" || off > 3 {
					t.Errorf("%s with %s: %s was %.4g +- %.2g %s, the draws foretell %.4g; it fits: %v, %q", name, words(s), r.Key, r.Value, r.Error, r.Unit, r.After.Likely, r.Fits, r.Explains)
				}
			}
		}
	}
	if told < 18 || clashes == 0 {
		t.Errorf("%d readings, %d in conflict: the trial tries too little", told, clashes)
	}
}

// words lists what was measured.
func words(s sheet) string {
	var out []string
	for _, key := range slices.Sorted(maps.Keys(s)) {
		if strings.HasPrefix(key, "measured.") {
			out = append(out, key+" = "+s[key])
		}
	}
	return strings.Join(out, ", ")
}

// A conflict says which readings cannot all be true, and the answer is made
// without the one that fits least, never from the labels alone.
func TestAConflictIsToldAndTheAnswerDoesWithoutTheWrongOne(t *testing.T) {
	t.Parallel()
	good := stock().with("measured.top_speed", `"5 km/h"`, "measured.loaded_current", `"7 A"`, "measured.blocked_current", `"55 A"`, "measured.pull_force", `"20 N"`)
	without := assess(t, good)
	if without.Conflict != nil {
		t.Fatalf("readings that go together are called a conflict: %+v", without.Conflict)
	}
	a := assess(t, good.with("measured.pull_force", `"150 N"`))
	switch {
	case a.Conflict == nil:
		t.Fatal("a pull of 150 N beside 7 A at 5 km/h is no conflict")
	case a.Conflict.Likeliest != "measured.pull_force" || !slices.Equal(a.Conflict.LeftOut, []string{"measured.pull_force"}):
		t.Errorf("%s is named, %v left out", a.Conflict.Likeliest, a.Conflict.LeftOut)
	case has(a, judge.CodeReadingsDisagree) < answer.FixFirst:
		t.Error("the conflict is no finding")
	}
	for _, r := range a.Readings {
		if r.LeftOut != (r.Key == "measured.pull_force") {
			t.Errorf("%s: left out %v", r.Key, r.LeftOut)
		}
		i := slices.IndexFunc(without.Readings, func(o answer.Reading) bool { return o.Key == r.Key })
		if was := without.Readings[i]; math.Abs(r.Before.Low/was.Before.Low-1) > 0.1 || math.Abs(r.Before.High/was.Before.High-1) > 0.1 {
			t.Errorf("%s: labels foretell %+v, beside a wrong reading %+v", r.Key, was.Before, r.Before)
		}
		if !(0 < r.After.Low && r.After.Low < r.After.High) || r.LeftOut && r.After.High > r.Value/2 {
			t.Errorf("%s: %.3g was read, the others foretell %+v", r.Key, r.Value, r.After)
		}
	}
	if x := a.Steady.BatteryA; math.Abs(x/7-1) > 0.15 {
		t.Errorf("without it the answer should rest on the other readings: %.2f A, 7 A were read", x)
	}
}

// A worn block that nobody says the age of is told by how long it lasts.
func TestARideTimeTellsAWornBlock(t *testing.T) {
	t.Parallel()
	labels := sheet{}.with("rider.age", `"5 years"`, "vehicle.design_voltage", `"12 V"`, "vehicle.ground", `"asphalt"`, "motors.count", "2", "motors.can", `"550"`,
		"pack.chemistry", `"agm"`, "pack.label", `"12 V 7 Ah"`)
	for _, minutes := range []float64{25, 14, 10, 8, 6, 4, 3} {
		timed := labels.with("measured.ride_time", fmt.Sprintf("\"%g min\"", minutes))
		told := assess(t, timed.with("pack.age", `"worn"`))
		a := assess(t, timed)
		if told.Conflict != nil || a.Conflict != nil {
			t.Errorf("%g min: %+v where it is worn, %+v where it may be", minutes, told.Conflict, a.Conflict)
		}
		if got := a.Ride.LastsClockMin; math.Abs(got/minutes-1) > 0.25 {
			t.Errorf("%g min were timed, %.3g are promised", minutes, got)
		}
	}
}

// So is one by the volts that it falls to under load, and by how far a charge takes it: what
// was read of an old block is no wrong reading because nobody said that it is old.
func TestWhatWearShowsByTellsAWornBlock(t *testing.T) {
	t.Parallel()
	labels := sheet{}.with("rider.age", `"5 years"`, "vehicle.design_voltage", `"12 V"`, "vehicle.ground", `"asphalt"`,
		"pack.chemistry", `"sla"`, "pack.label", `"12 V 7 Ah"`)
	for _, tt := range []struct {
		name    string
		read    sheet
		minutes float64 // of pedal down that such a block gives at most in the middle
	}{
		{"9 V under load", labels.with("measured.loaded_voltage", `"9 V"`), 20},
		{"10 V under load, 12.6 V at rest", labels.with("measured.loaded_voltage", `"10 V"`, "measured.rest_voltage", `"12.6 V"`, "measured.hours_rested", `"12 h"`), 20},
		{"10.2 V under load, 12.9 V at rest", labels.with("measured.loaded_voltage", `"10.2 V"`, "measured.rest_voltage", `"12.9 V"`), 20},
		{"200 m", labels.with("measured.distance", `"200 m"`), 5},
	} {
		told, a := assess(t, tt.read.with("pack.age", `"worn"`)), assess(t, tt.read)
		for _, age := range []string{`"1 year"`, `"2 years"`, `"3 years"`} { // it may be dead before its time
			if old := assess(t, tt.read.with("pack.age", age)); old.Conflict != nil || old.Ride.PedalMin > 1.5*tt.minutes {
				t.Errorf("%s: %.3g min of a block of %s, %+v", tt.name, old.Ride.PedalMin, age, old.Conflict)
			}
		}
		if told.Conflict != nil || a.Conflict != nil {
			t.Errorf("%s: %+v where it is worn, %+v where it may be", tt.name, told.Conflict, a.Conflict)
		}
		if got := a.Ride.PedalMin; got > tt.minutes {
			t.Errorf("%s: %.3g min are promised, at most %g of such a block", tt.name, got, tt.minutes)
		}
	}
}

// A block that shows full volts at rest and hardly any under load has dried out or stood flat: an
// ordinary sign of wear, whatever its size. It was a reading that fits nothing. So was a ride of
// some minutes up a slope, which the same block called worn gave. A new one gives neither.
func TestADriedOutBlockShowsUnderLoad(t *testing.T) {
	t.Parallel()
	of := func(design, label, rest, loaded string) sheet {
		return sheet{}.with("rider.mass", `"20 kg"`, "vehicle.design_voltage", `"`+design+`"`, "pack.label", `"`+label+`"`, "pack.chemistry", `"agm"`,
			"measured.rest_voltage", `"`+rest+`"`, "measured.loaded_voltage", `"`+loaded+`"`)
	}
	uphill := sheet{}.with("rider.mass", `"20 kg"`, "vehicle.design_voltage", `"6 V"`, "vehicle.slope", `"6 %"`, "pack.label", `"6 V 4.5 Ah"`,
		"pack.age", `"2 years"`, "measured.ride_time", `"12 min"`)
	for _, tt := range []struct {
		name string
		read sheet
		fits bool
	}{
		{"12 V 12 Ah", of("12 V", "12 V 12 Ah", "12.9 V", "8 V"), true},
		{"12 V 12 Ah of two years", of("12 V", "12 V 12 Ah", "12.9 V", "8 V").with("pack.age", `"2 years"`), true},
		{"6 V 4.5 Ah", of("6 V", "6 V 4.5 Ah", "6.45 V", "4 V"), true},
		{"24 V 7 Ah", of("24 V", "24 V 7 Ah", "25.8 V", "16 V"), true},
		{"a new one", of("12 V", "12 V 12 Ah", "12.9 V", "8 V").with("pack.age", `"new"`), false},
		{"12 min uphill, two years", uphill, true},
		{"12 min uphill, of untold age", uphill.with("pack.age", ""), true},
		{"12 min uphill, worn", uphill.with("pack.age", `"worn"`), true},
		{"2 min uphill, new", uphill.with("pack.age", `"new"`, "measured.ride_time", `"2 min"`), false},
	} {
		if a := assess(t, tt.read); (a.Conflict == nil) != tt.fits {
			t.Errorf("%s: fits %v, want %v: %+v", tt.name, !tt.fits, tt.fits, a.Conflict)
		}
	}
}
