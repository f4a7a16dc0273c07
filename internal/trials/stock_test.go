package trials_test

import (
	"fmt"
	"strings"
	"testing"

	"example.org/packcheck/answer"
)

// factory is a vehicle as it left the factory, by its labels only.
type factory struct {
	volts, label  string
	motors        int    // 0 = not told
	board         string // "has_board = ..." or nothing
	ground        string
	child         string // age
	also          string // keys of [pack] or [motors] that somebody found out, "table.key = value"
	holds         map[string][]float64
	atMost        map[string]float64 // high end over low end
	name, sources string
}

func (s *factory) toml() string {
	var found [2]string
	for line := range strings.SplitSeq(s.also, ";") {
		switch line = strings.TrimSpace(line); {
		case strings.HasPrefix(line, "pack."):
			found[0] += strings.TrimPrefix(line, "pack.") + "\n"
		case strings.HasPrefix(line, "motors."):
			found[1] += strings.TrimPrefix(line, "motors.") + "\n"
		}
	}
	count := ""
	if s.motors > 0 {
		count = fmt.Sprintf("count = %d\n", s.motors)
	}
	return fmt.Sprintf("[rider]\nage = %q\n[vehicle]\ndesign_voltage = %q\n%sground = %q\n[motors]\n%s%s[pack]\nlabel = %q\n%s",
		s.child, s.volts, s.board, s.ground, count, found[1], s.label, found[0])
}

// told is what a setup says of a board.
func told(board bool) string { return fmt.Sprintf("has_board = %t\n", board) }

const (
	rideMin   = "ride.lasts_pedal_min"
	runningA  = "steady.battery_a"
	speedKmh  = "steady.speed_kmh"
	blockedA  = "launch.blocked_battery_a"
	wheelsUpA = "launch.wheels_up_a"
)

// narrow is how wide a stock vehicle on asphalt may be told.
var narrow = map[string]float64{rideMin: 2.5, runningA: 2.5, speedKmh: 2}

// What people measured on such vehicles, each with where it was told.
var stocks = []factory{
	{
		name: "two motors behind a pedal, new", sources: "a builder of 2016, 5 A running; robotics forum thread 204791, 3 A wheels up for both; CPSC 1989 and 1998, owner of topic 40500, 8 km/h; sellers, 45 to 60 min; class figure of factory blocked currents, 60 A",
		volts: "12 V", label: "12 V 7 Ah", motors: 2, board: told(false), ground: "asphalt", child: "3 years", also: `pack.age = "new"`,
		holds: map[string][]float64{runningA: {5}, wheelsUpA: {3}, speedKmh: {5, 8}, rideMin: {45, 60}, blockedA: {60}}, atMost: narrow,
	},
	{
		name: "two motors behind a pedal, new, child of 6", sources: "the same; sellers say nothing of the child, and half of the load that is allowed, 15 kg, is one of 3 to 4",
		volts: "12 V", label: "12 V 7 Ah", motors: 2, board: told(false), ground: "asphalt", child: "6 years", also: `pack.age = "new"`,
		holds: map[string][]float64{runningA: {5}, speedKmh: {5, 8}, rideMin: {45}}, atMost: narrow,
	},
	{
		name: "two motors behind a pedal, of any age", sources: "the same",
		volts: "12 V", label: "12 V 7 Ah", motors: 2, board: told(false), ground: "asphalt", child: "3 years",
		holds: map[string][]float64{runningA: {5}, rideMin: {45, 60}, blockedA: {60}}, atMost: narrow,
	},
	{
		name: "nothing but the plainest label", sources: "the same of either family: 20 and 60 A blocked; wheels up 3 A",
		volts: "12 V", label: "12 V 7 Ah", ground: "asphalt", child: "3 to 5",
		holds: map[string][]float64{runningA: {5}, wheelsUpA: {3}, speedKmh: {5, 8}, rideMin: {45, 60}, blockedA: {20, 60}}, atMost: narrow,
	},
	{
		name: "a board, and the plainest label", sources: "the same; a 12 V car with a board has four small motors behind a 10 A fuse",
		volts: "12 V", label: "12 V 7 Ah", board: told(true), ground: "asphalt", child: "3 to 5",
		holds: map[string][]float64{runningA: {5}, speedKmh: {5}, rideMin: {45, 60}, blockedA: {15, 20, 60}}, atMost: narrow,
	},
	{
		name: "nothing but the plainest label, a larger battery", sources: "the same; a calculation with 147:1 gives 73 min",
		volts: "12 V", label: "12 V 9.5 Ah", ground: "asphalt", child: "3 to 5",
		holds: map[string][]float64{runningA: {5}, wheelsUpA: {3}, speedKmh: {8}, rideMin: {45, 60, 73}, blockedA: {20, 60}}, atMost: narrow,
	},
	{
		name: "nothing but the plainest label, on a lawn", sources: "builder of 2016 with stronger motors, 13 A; 15 min on a lawn is what owners complain of",
		volts: "12 V", label: "12 V 7 Ah", ground: "lawn", child: "3 to 5",
		holds: map[string][]float64{runningA: {8}, rideMin: {15}}, atMost: map[string]float64{runningA: 2.5},
	},
	{
		name: "one motor behind a board", sources: "contest motors of size 550 out of ride-ons; the class's own speed, 5 mph",
		volts: "12 V", label: "12 V 7 Ah", motors: 1, board: told(true), ground: "asphalt", child: "3 to 5",
		holds: map[string][]float64{speedKmh: {8}, rideMin: {45, 60}}, atMost: narrow,
	},
	{
		name: "two motors behind a pedal, on grass", sources: "builder of 2016 with stronger motors, 13 A running; 15 min on a lawn is what owners complain of",
		volts: "12 V", label: "12 V 7 Ah", motors: 2, board: told(false), ground: "short grass", child: "6 years",
		holds: map[string][]float64{runningA: {13}, rideMin: {15}},
	},
	{
		name: "one motor behind a pedal", sources: "contest motors of size 550 out of ride-ons, 57 to 70 A stall at their own terminals, 40 A behind battery and wire",
		volts: "12 V", label: "12 V 7 Ah", motors: 1, board: told(false), ground: "asphalt", child: "3 years",
		holds: map[string][]float64{blockedA: {40}, wheelsUpA: {1.5}, speedKmh: {8}}, atMost: narrow,
	},
	{
		name: "two motors behind a board, new", sources: "repository issue: 22 A blocked on 18 V, 15 A of it at 12 V; factory blocked currents of both families, 20 and 60 A; builder, 5 A running",
		volts: "12 V", label: "12 V 7 Ah", motors: 2, board: told(true), ground: "asphalt", child: "3 years", also: `pack.age = "new"`,
		holds: map[string][]float64{runningA: {5}, blockedA: {15, 20, 60}, speedKmh: {5}, rideMin: {45, 60}}, atMost: narrow,
	},
	{
		name: "two small motors behind a board, new", sources: "the same, with the motors told",
		volts: "12 V", label: "12 V 7 Ah", motors: 2, board: told(true), ground: "asphalt", child: "3 years", also: `pack.age = "new"; motors.can = "ride-on 390"`,
		holds: map[string][]float64{blockedA: {15}, speedKmh: {5}}, atMost: narrow,
	},
	{
		name: "two small motors behind a board, on a tool pack", sources: "repository issue: 22 A blocked on an 18 V tool pack; a 30 A fuse never opened",
		volts: "12 V", label: "20 V max 5 Ah", motors: 2, board: told(true), ground: "asphalt", child: "3 years", also: `motors.can = "ride-on 390"`,
		holds: map[string][]float64{blockedA: {22}},
	},
	{
		name: "6 V", sources: "owner, 2.5 mph stock with one motor; repair guides, a 25 A fuse in the top of older batteries, which has to stand a start of 20 A",
		volts: "6 V", label: "6 V 4.5 Ah", motors: 1, board: told(false), ground: "asphalt", child: "3 years", also: `pack.age = "new"`,
		holds: map[string][]float64{speedKmh: {2.5, 4}, blockedA: {20}},
	},
	{
		name: "6 V with the larger battery", sources: "owner, 2.5 mph stock; a manual, less than 1 to 3 h is short: a tenth more than an hour is not (on 9.5 Ah, from memory)",
		volts: "6 V", label: "6 V 9.5 Ah", ground: "asphalt", child: "3 years", also: `pack.age = "new"`,
		holds: map[string][]float64{speedKmh: {2.5, 4}, rideMin: {66, 120, 180}},
	},
	{
		name: "24 V", sources: "maker, 1 to 2 h; class of 24 V vehicles, 8 km/h and more",
		volts: "24 V", label: "24 V (two 12 V 7 Ah)", motors: 2, board: told(true), ground: "asphalt", child: "6 years", also: `pack.age = "new"`,
		holds: map[string][]float64{speedKmh: {8}, rideMin: {60}}, atMost: narrow,
	},
}

// The figures are those of a collection of owners', builders' and makers' reports
// (see the sources of tables/data/motor.toml and figures.toml).
func TestAStockVehicleByItsLabelsHoldsWhatPeopleMeasured(t *testing.T) {
	t.Parallel()
	for i := range stocks {
		s := &stocks[i]
		ranges := foretold(t, s.toml(), 512) // with 256 the ends of the widest are off by a twentieth
		for path, values := range s.holds {
			for _, v := range values {
				if r := ranges[path]; !r.Contains(v) {
					t.Errorf("%s: %s is %.3g to %.3g, measured %g (%s)", s.name, path, r.Low, r.High, v, s.sources)
				}
			}
		}
		for path, most := range s.atMost {
			if r := ranges[path]; !(r.High <= most*r.Low) {
				t.Errorf("%s: %s is %.3g to %.3g, 1:%.2f; want at most 1:%g", s.name, path, r.Low, r.High, r.High/r.Low, most)
			}
		}
	}
}

// What makes a stock range wide is listed among what was assumed and decides.
func TestTheUnknownThatWidensAStockRangeIsNamed(t *testing.T) {
	t.Parallel()
	for name, key := range map[string]string{
		"two motors behind a pedal, of any age": answer.KeyPackHealth,
		"two motors behind a board, new":        answer.KeyMotorsCan,
	} {
		for i := range stocks {
			if stocks[i].name != name {
				continue
			}
			first := 0
			a := readWith(t, stocks[i].toml(), 256)
			for n, x := range a.Assumed {
				if x.Key == key {
					first = n + 1
				}
			}
			if first == 0 || first > 3 {
				t.Errorf("%s: %q is number %d of what was assumed: %+v", name, key, first, a.Assumed[:4])
			}
		}
	}
}
