package reckon_test

import (
	"errors"
	"slices"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"example.org/packcheck/answer"
	"example.org/packcheck/internal/draws"
	"example.org/packcheck/internal/reckon"
	"example.org/packcheck/setup"
)

func setupOf(t *testing.T, values map[string]string) *setup.Setup {
	t.Helper()
	s, err := setup.Of(values)
	if err != nil {
		t.Fatal(err)
	}
	return s
}

func withPack(t *testing.T, s *setup.Setup, label string) *setup.Setup {
	t.Helper()
	out, err := s.Change(setup.Changes{Pack: label})
	if err != nil {
		t.Fatal(err)
	}
	return out
}

// cart is a vehicle of labels; read is the same with what was measured on it.
func cart(t *testing.T) (labels, read *setup.Setup) {
	values := map[string]string{"pack.label": "12 V 7 Ah", "rider.age": "4 years", "motors.can": "550"}
	labels = setupOf(t, values)
	values["measured.top_speed"], values["measured.ride_time"] = "4.2 km/h", "25 min"
	return labels, setupOf(t, values)
}

const quick = 48 // draws, of a test that looks at how draws go together

func compare(t *testing.T, setups ...*setup.Setup) *answer.Comparison {
	t.Helper()
	return compareWith(t, quick, setups...)
}

func compareWith(t *testing.T, draws int, setups ...*setup.Setup) *answer.Comparison {
	t.Helper()
	c, err := reckon.Compare(setups, reckon.Options{Draws: draws})
	if err != nil {
		t.Fatal(err)
	}
	return c
}

func TestASetupComparedWithItselfHasNoDifference(t *testing.T) {
	labels, read := cart(t)
	for name, s := range map[string]*setup.Setup{"labels": labels, "readings": read} {
		c := compare(t, s, s)
		if d := cmp.Diff(c.Columns[0].Answer, c.Columns[1].Answer); d != "" || !c.SameDraws {
			t.Errorf("%s: same draws %v, differs\n%s", name, c.SameDraws, d)
		}
		for path, r := range c.Columns[1].Against {
			if r != (answer.Range{}) {
				t.Errorf("%s: %s differs by %v", name, path, r)
			}
		}
		for _, b := range c.Best {
			if b.Column != -1 {
				t.Errorf("%s: %v is the best in %s of two that are one", name, b.Column, b.For)
			}
		}
	}
}

func TestTheFirstColumnIsWhatItsSetupIsAnsweredWith(t *testing.T) {
	labels, read := cart(t)
	for _, s := range []*setup.Setup{labels, read} {
		alone, err := reckon.Assess(s, reckon.Options{Draws: quick})
		if err != nil {
			t.Fatal(err)
		}
		if d := cmp.Diff(alone, compare(t, s, withPack(t, s, "20 V max 4 Ah")).Columns[0].Answer); d != "" {
			t.Errorf("(-alone +compared)\n%s", d)
		}
	}
}

// On the same draws the two differ by less than two of which each was drawn for
// itself: the draws of one are turned against those of the other.
func TestADifferenceOnTheSameDrawsSpreadsLess(t *testing.T) {
	labels, _ := cart(t)
	other := withPack(t, labels, "12 V 9 Ah")
	together := compare(t, labels, other).Columns[1].Against
	paths := []string{"ride.lasts_pedal_min", "steady.speed_kmh", "launch.peak_motor_a"}
	var values [2][][]float64
	for i, s := range []*setup.Setup{labels, other} {
		d, err := reckon.Draw(s, reckon.Options{Draws: quick}, quick, paths)
		if err != nil {
			t.Fatal(err)
		}
		values[i] = d.Values
	}
	for m, path := range paths {
		apart := make([]float64, quick)
		for k := range apart {
			apart[k] = values[1][m][(k+quick/2+1)%quick] - values[0][m][k]
		}
		s := draws.SpreadOf(apart, nil)
		if wide, r := s.P90-s.P10, together[path]; !(r.High-r.Low < 0.6*wide) {
			t.Errorf("%s: spreads over %.3g on the same draws, over %.3g on others", path, r.High-r.Low, wide)
		}
	}
}

// What was read on the own battery counts for the vehicle with another one in it,
// and not for that battery.
func TestReadingsCountForTheVehicleWithAnotherBattery(t *testing.T) {
	labels, read := cart(t)
	for name, s := range map[string]*setup.Setup{"made so": read, "changed": setupOf(t, map[string]string{
		"pack.label": "18 V 4 Ah", "rider.age": "4 years", "motors.can": "550", "measured.top_speed": "8 km/h", "measured.pull_force": "30 N",
	})} {
		another := withPack(t, s, "20 V max 5 Ah")
		c := compare(t, another, s) // whichever stands first
		if !c.SameDraws {
			t.Errorf("%s: the columns stand on different draws", name)
		}
		if len(c.Columns[0].Answer.Assumed) == 0 {
			t.Errorf("%s: nothing is assumed of the other battery", name)
		}
	}
	width := func(a *answer.Assessment) float64 {
		r := a.Ranges["steady.speed_kmh"]
		return (r.High - r.Low) / r.Likely
	}
	const enough = 4096 // widths are compared
	known, unknown := compareWith(t, enough, read, withPack(t, read, "20 V max 5 Ah")), compareWith(t, enough, labels, withPack(t, labels, "20 V max 5 Ah"))
	if a, b := width(known.Columns[1].Answer), width(unknown.Columns[1].Answer); !(a < 0.8*b) {
		t.Errorf("the speed with another battery is known to %.2f with readings, to %.2f without", a, b)
	}
}

// A larger block of the same kind sags less, so a vehicle is never slower on it: where
// one is told to be, two columns do not have the same vehicle. What is known of a class
// is known by the battery that it was made with, in either column.
func TestAVehicleIsTheSameOnALargerBlock(t *testing.T) {
	labels, _ := cart(t)
	c := compareWith(t, 256, labels, withPack(t, labels, "12 V 9.5 Ah"))
	if r := c.Columns[1].Against["steady.speed_kmh"]; r.Low < 0 || r.High > 1 {
		t.Errorf("on a larger block it is %.2f to %.2f km/h faster", r.Low, r.High)
	}
}

// Two vehicles that were measured apart have draws of their own, and that is said.
func TestVehiclesThatWereMeasuredApartAreDrawnApart(t *testing.T) {
	_, read := cart(t)
	other, err := read.With(map[string]string{"rider.age": "7 years", "measured.top_speed": "3.5 km/h"})
	if err != nil {
		t.Fatal(err)
	}
	c := compare(t, read, other)
	if c.SameDraws || len(c.Columns[1].Against) > 0 {
		t.Errorf("same draws %v, %d differences", c.SameDraws, len(c.Columns[1].Against))
	}
}

// What may not be used is no best choice while another may.
func TestTheBestIsLookedForAmongWhatMayBeUsed(t *testing.T) {
	bench := map[string]string{
		"pack.label": "12 V 7 Ah", "pack.chemistry": "agm", "pack.health": "98 %", "load.current": "0.5 A", "load.until": "12 V",
		"cutoff.module.opens_at": "12 V", "cutoff.module.closes_at": "13 V", "cutoff.module.delay": "2 s", "wire.gauge": "14 AWG", "wire.one_way_length": "0.5 m",
		"wire.insulation": "80 C", "wire.joints": "4", "wire.joint_resistance": "2 mOhm", "fuse.form": "small blade", "fuse.rating": "5 A",
		"fuse.max_voltage": "32 V", "fuse.distance_from_pack": "100 mm",
	}
	good := setupOf(t, bench)
	bad, err := good.With(map[string]string{"pack.label": "12 V 12 Ah", "fuse": "", "fuse.form": "none", "cutoff.module": ""})
	if err != nil {
		t.Fatal(err)
	}
	c := compare(t, bad, good)
	if c.Columns[0].Answer.Verdict < answer.FixFirst || c.Verdict >= answer.FixFirst {
		t.Fatalf("verdicts %v and %v: the test compares the wrong things", c.Columns[0].Answer.Verdict, c.Columns[1].Answer.Verdict)
	}
	for _, b := range c.Best {
		if b.Column != 1 || !b.Usable {
			t.Errorf("best in %s: %+v", b.For, b)
		}
	}
}

func TestWhatCannotBeComparedIsRefusedAtOnce(t *testing.T) {
	labels, _ := cart(t)
	for _, n := range []int{0, 1, reckon.MostCompared + 1} {
		if _, err := reckon.Compare(slices.Repeat([]*setup.Setup{labels}, n), reckon.Options{Draws: quick}); err == nil || !strings.Contains(err.Error(), "2 to 4") {
			t.Errorf("%d setups: %v", n, err)
		}
	}
	if _, err := reckon.Compare([]*setup.Setup{labels, nil}, reckon.Options{Draws: quick}); err == nil {
		t.Error("no setup went through")
	}
	_, err := reckon.Compare([]*setup.Setup{
		setupOf(t, map[string]string{"pack.label": "12 V 7 Ah", "vehicle.ground": "lawm"}), setupOf(t, map[string]string{"pack.label": "7 Ah"}),
	}, reckon.Options{Draws: quick})
	var faults setup.Faults
	if !errors.As(err, &faults) || len(faults) != 2 {
		t.Errorf("got %v, want the faults of both", err)
	}
}

func TestComparedNamesTellTheColumnsApart(t *testing.T) {
	labels, _ := cart(t)
	same, err := labels.With(map[string]string{"rider.age": "3 years"})
	if err != nil {
		t.Fatal(err)
	}
	a, b := *labels, *same
	a.Name, b.Name = "fair/tractor.toml", "small.toml"
	c := compare(t, &a, &b)
	if c.Columns[0].Name != "tractor" || c.Columns[1].Name != "small" {
		t.Errorf("names %q and %q", c.Columns[0].Name, c.Columns[1].Name)
	}
	c = compare(t, labels, withPack(t, labels, "12 V 9 Ah"))
	if c.Columns[0].Name != "12 V 7 Ah" || c.Columns[1].Name != "12 V 9 Ah" {
		t.Errorf("names %q and %q", c.Columns[0].Name, c.Columns[1].Name)
	}
}
