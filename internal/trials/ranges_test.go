package trials_test

import (
	"fmt"
	"maps"
	"math/rand/v2"
	"slices"
	"strconv"
	"strings"
	"testing"

	"example.org/packcheck/answer"
)

// mainFigures are those that people ask for.
var mainFigures = []string{
	"ride.lasts_pedal_min", "ride.lasts_clock_min", "ride.distance_km", "steady.speed_kmh", "steady.battery_a",
	"launch.peak_battery_a", "launch.blocked_battery_a", "pack.usable_ah",
}

// drawError is by how much a 10, 50 or 90 % point of 256 draws may be off: the
// 2 % that 1024 draws are held to, doubled with the root of their number.
const drawError = 0.04

// openSheets are setups that leave much open, but not what switches the motors:
// a 10 % point that lies between two kinds of controller has no error in percent.
func openSheets() map[string]sheet {
	plain := labelsOnly().with("controller.kind", `"contacts"`)
	return map[string]sheet{
		"lead-acid": plain,
		"tool pack": plain.with("pack.chemistry", `"li-ion"`, "pack.label", `"20 V max 5 Ah"`),
	}
}

// Whatever somebody then finds out about what was not known, inside what was
// allowed for, the figures stay inside the ranges that were promised: eight of
// ten, because that is what a range says.
func TestEightOfTenOfWhatIsLaterFoundOutLieInside(t *testing.T) {
	t.Parallel()
	random := rand.New(rand.NewPCG(5, 6))
	within := func(low, high float64, unit string) string {
		return fmt.Sprintf(`"%.4f %s"`, low+(high-low)*random.Float64(), unit)
	}
	inside, all := 0, 0
	sheets := openSheets()
	for _, name := range slices.Sorted(maps.Keys(sheets)) { // the same order of draws every time
		base := sheets[name]
		promised := foretold(t, base.toml(), 256)
		for range 20 {
			s := base.with(
				"pack.health", within(80, 100, "%"), "gears.efficiency", within(52, 72, "%"), "vehicle.mass", within(10, 18, "kg"),
				"wire.gauge", fmt.Sprintf(`"%d AWG"`, 14+2*random.IntN(3)), "wire.one_way_length", within(0.6, 1.8, "m"),
				"wire.joints", strconv.Itoa(6+random.IntN(7)), "wire.joint_resistance", within(0.5, 10, "mOhm"),
				"controller.resistance", within(5, 60, "mOhm"), "motors.no_load_current", within(0.4, 2.5, "A"),
				"outing.air", within(10, 30, "C"), "outing.drive", within(15, 40, "s"), "outing.pause", within(5, 20, "s"))
			found := foretold(t, s.toml(), few)
			for _, path := range mainFigures {
				all++
				if promised[path].Contains(found[path].Likely) {
					inside++
				}
			}
		}
	}
	if share := float64(inside) / float64(all); share < 0.8 {
		t.Errorf("%d of %d inside", inside, all)
	}
}

// A range that was typed, in two halves: what the whole foretells lies between
// what its halves foretell, because it is the two mixed. (Exact for the draws'
// law; the error is that of the draws.)
func TestTheWholeLiesBetweenItsHalves(t *testing.T) {
	t.Parallel()
	for name, base := range openSheets() {
		for _, c := range []struct{ key, whole, low, high string }{
			{"rider.mass", "15 to 30 kg", "15 to 22.5 kg", "22.5 to 30 kg"},
			{"pack.health", "50 to 100 %", "50 to 75 %", "75 to 100 %"},
			{"gears.ratio", "60 to 120", "60 to 90", "90 to 120"},
			{"outing.air", "0 to 30 C", "0 to 15 C", "15 to 30 C"},
		} {
			of := func(v string) map[string]answer.Range {
				return foretold(t, base.with(c.key, strconv.Quote(v)).toml(), 256)
			}
			whole, low, high := of(c.whole), of(c.low), of(c.high)
			for _, path := range mainFigures {
				w, a, b := whole[path], low[path], high[path]
				for point, v := range map[string][3]float64{"10 %": {a.Low, w.Low, b.Low}, "50 %": {a.Likely, w.Likely, b.Likely}, "90 %": {a.High, w.High, b.High}} {
					if least, most := min(v[0], v[2]), max(v[0], v[2]); v[1] < least*(1-drawError) || v[1] > most*(1+drawError) {
						t.Errorf("%s, %s: the %s point of %s is %.4g for %s, %.4g and %.4g for its halves", name, c.key, point, path, v[1], c.whole, v[0], v[2])
					}
				}
			}
		}
	}
}

// A range that was typed, and one around the same middle inside it: what the
// narrower one foretells never leaves what the wider one does, beyond the error
// of the draws, nor is the verdict worse.
func TestNarrowerInputsNeverLeaveTheWiderRange(t *testing.T) {
	t.Parallel()
	for name, base := range openSheets() {
		for _, c := range []struct{ key, wide, narrow string }{
			{"rider.mass", "15 to 30 kg", "20 to 25 kg"},
			{"pack.health", "50 to 100 %", "65 to 85 %"},
			{"gears.ratio", "60 to 120", "80 to 100"},
			{"gears.efficiency", "40 to 80 %", "55 to 65 %"},
			{"outing.pause", "2 to 30 s", "12 to 20 s"},
		} {
			of := func(v string) *answer.Assessment {
				return readWith(t, base.with(c.key, strconv.Quote(v)).toml(), 256)
			}
			wider, narrower := of(c.wide), of(c.narrow)
			if narrower.Verdict > wider.Verdict {
				t.Errorf("%s, %s: %s is %v, %s is %v: %s", name, c.key, c.wide, wider.Verdict, c.narrow, narrower.Verdict, strings.Join(findingsAt(narrower, narrower.Verdict), ", "))
			}
			wide, narrow := wider.Ranges, narrower.Ranges
			for _, path := range mainFigures {
				w, n := wide[path], narrow[path]
				if n.Low < w.Low*(1-drawError) || n.High > w.High*(1+drawError) {
					t.Errorf("%s, %s: %s gives %s of %.4g to %.4g, %s gives %.4g to %.4g", name, c.key, c.narrow, path, n.Low, n.High, c.wide, w.Low, w.High)
				}
			}
		}
	}
}
