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
	motors        int
	board         bool
	ground        string
	years         int
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
	return fmt.Sprintf("[rider]\nage = \"%d years\"\n[vehicle]\ndesign_voltage = %q\nhas_board = %t\nground = %q\n[motors]\ncount = %d\n%s[pack]\nlabel = %q\n%s",
		s.years, s.volts, s.board, s.ground, s.motors, found[1], s.label, found[0])
}

const (
	rideMin   = "ride.lasts_pedal_min"
	runningA  = "steady.battery_a"
	speedKmh  = "steady.speed_kmh"
	blockedA  = "launch.blocked_battery_a"
	wheelsUpA = "launch.wheels_up_a"
)

// narrow is how wide a stock vehicle on asphalt may be told.
var narrow = map[string]float64{rideMin: 2.5, runningA: 2.5, speedKmh: 2}

// onlyHealth is what is left when nobody tells how old the battery is: a block of
// unknown age holds half to all of its label, which is 1:1.7 by itself. "new"
// takes it away.
var onlyHealth = map[string]float64{rideMin: 3.1, runningA: 2.5, speedKmh: 2}

// twoFamilies is what is left while it is open which motors are behind a board:
// small ones draw two thirds of what large ones do.
var twoFamilies = map[string]float64{rideMin: 3, runningA: 2.5, speedKmh: 2}

// oneReport is what is left of small motors, which one label and one current tell of.
var oneReport = map[string]float64{rideMin: 2.7, runningA: 2.5, speedKmh: 2}

// What people measured on such vehicles, each with where it was told.
var stocks = []factory{
	{
		name: "two motors behind a pedal, new", sources: "a builder of 2016, 5 A running; robotics forum thread 204791, 3 A wheels up for both; CPSC 1989 and 1998, owner of topic 40500, 8 km/h; sellers, 45 to 60 min; class figure of factory blocked currents, 60 A",
		volts: "12 V", label: "12 V 7 Ah", motors: 2, ground: "asphalt", years: 3, also: `pack.age = "new"`,
		holds: map[string][]float64{runningA: {5}, wheelsUpA: {3}, speedKmh: {5, 8}, rideMin: {45, 60}, blockedA: {60}}, atMost: narrow,
	},
	{
		name: "two motors behind a pedal, new, child of 6", sources: "the same",
		volts: "12 V", label: "12 V 7 Ah", motors: 2, ground: "asphalt", years: 6, also: `pack.age = "new"`,
		holds: map[string][]float64{runningA: {5}, speedKmh: {5, 8}, rideMin: {45, 60}}, atMost: narrow,
	},
	{
		name: "two motors behind a pedal, of any age", sources: "the same",
		volts: "12 V", label: "12 V 7 Ah", motors: 2, ground: "asphalt", years: 3,
		holds: map[string][]float64{runningA: {5}, rideMin: {45, 60}, blockedA: {60}}, atMost: onlyHealth,
	},
	{
		name: "two motors behind a pedal, on grass", sources: "builder of 2016 with stronger motors, 13 A running; 15 min on a lawn is what owners complain of",
		volts: "12 V", label: "12 V 7 Ah", motors: 2, ground: "short grass", years: 6,
		holds: map[string][]float64{runningA: {13}, rideMin: {15}},
	},
	{
		name: "one motor behind a pedal", sources: "contest motors of size 550 out of ride-ons, 57 to 70 A stall at their own terminals, 40 A behind battery and wire",
		volts: "12 V", label: "12 V 7 Ah", motors: 1, ground: "asphalt", years: 3,
		holds: map[string][]float64{blockedA: {40}, wheelsUpA: {1.5}, speedKmh: {5}}, atMost: map[string]float64{runningA: 2.5, speedKmh: 2},
	},
	{
		name: "two motors behind a board, new", sources: "repository issue: 22 A blocked on 18 V, 15 A of it at 12 V; factory blocked currents of both families, 20 and 60 A; builder, 5 A running",
		volts: "12 V", label: "12 V 7 Ah", motors: 2, board: true, ground: "asphalt", years: 3, also: `pack.age = "new"`,
		holds: map[string][]float64{runningA: {5}, blockedA: {15, 20, 60}, speedKmh: {5}, rideMin: {45, 60}}, atMost: twoFamilies,
	},
	{
		name: "two small motors behind a board, new", sources: "the same, with the motors told",
		volts: "12 V", label: "12 V 7 Ah", motors: 2, board: true, ground: "asphalt", years: 3, also: `pack.age = "new"; motors.can = "ride-on 390"`,
		holds: map[string][]float64{blockedA: {15}, speedKmh: {5}}, atMost: oneReport,
	},
	{
		name: "two small motors behind a board, on a tool pack", sources: "repository issue: 22 A blocked on an 18 V tool pack; a 30 A fuse never opened",
		volts: "12 V", label: "20 V max 5 Ah", motors: 2, board: true, ground: "asphalt", years: 3, also: `motors.can = "ride-on 390"`,
		holds: map[string][]float64{blockedA: {22}},
	},
	{
		name: "6 V", sources: "owner, 2.5 mph stock with one motor",
		volts: "6 V", label: "6 V 4.5 Ah", motors: 1, ground: "asphalt", years: 3, also: `pack.age = "new"`,
		holds: map[string][]float64{speedKmh: {4}},
	},
	{
		name: "24 V", sources: "maker, 1 to 2 h; class of 24 V vehicles, 8 km/h and more",
		volts: "24 V", label: "24 V (two 12 V 7 Ah)", motors: 2, board: true, ground: "asphalt", years: 6, also: `pack.age = "new"`,
		holds: map[string][]float64{speedKmh: {8}, rideMin: {60}}, atMost: map[string]float64{runningA: 2.5, speedKmh: 2, rideMin: 3},
	},
}

// The figures are those of a collection of owners', builders' and makers' reports
// (see the sources of tables/data/motor.toml and figures.toml).
func TestAStockVehicleByItsLabelsHoldsWhatPeopleMeasured(t *testing.T) {
	t.Parallel()
	for i := range stocks {
		s := &stocks[i]
		a := readWith(t, s.toml(), 256)
		for path, values := range s.holds {
			for _, v := range values {
				if r := a.Ranges[path]; !r.Contains(v) {
					t.Errorf("%s: %s is %.3g to %.3g, measured %g (%s)", s.name, path, r.Low, r.High, v, s.sources)
				}
			}
		}
		for path, most := range s.atMost {
			if r := a.Ranges[path]; !(r.High <= most*r.Low) {
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
