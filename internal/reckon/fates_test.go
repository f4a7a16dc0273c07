package reckon_test

import (
	"math"
	"slices"
	"testing"

	"example.org/packcheck/answer"
)

// In how many vehicles it does not get going, or barely moves, is one number, whether it is
// told as a finding or of the draws: both are counted over all of them. What stands counts
// among what barely moves, if at all.
func TestWhatKeepsItFromARideHasOneShare(t *testing.T) {
	told := 0
	for _, values := range []map[string]string{
		timed(map[string]string{"vehicle.ground": "gravel", "vehicle.slope": "8 %"}),
		timed(map[string]string{"vehicle.ground": "long grass"}),
		{"rider.age": "4 years", "vehicle.design_voltage": "6 V", "motors.count": "1", "motors.can": "380", "pack.chemistry": "agm", "pack.label": "6 V 4.5 Ah", "vehicle.ground": "short grass"},
	} {
		a := someDraws(t, values, 1024)
		for fate, share := range map[answer.Fate]float64{answer.FateStuck: a.Draws.Stuck, answer.FateCrawls: a.Draws.Crawls + a.Draws.Stuck} {
			i := slices.IndexFunc(a.Findings, func(f answer.Finding) bool { return f.Fate == fate })
			if i < 0 {
				continue
			}
			told++
			if f := a.Findings[i]; math.Abs(f.Share-share) > 1e-9 {
				t.Errorf("%v: %q in a share of %.4f, of all draws %.4f", values, f.Title, f.Share, share)
			}
		}
	}
	if told < 4 {
		t.Errorf("only %d were told: the setups are too easy", told)
	}
}

// Half of the vehicles stand and the others crawl: neither is so in most of them, and yet none
// gets up the slope. On what ground it goes its maker did not know.
func TestWhatCannotClimbIsToldHoweverItFails(t *testing.T) {
	a := someDraws(t, map[string]string{
		"rider.mass": "50 kg", "vehicle.design_voltage": "48 V", "vehicle.slope": "10 %", "motors.count": "1", "motors.can": "775",
		"controller.kind": "chopper", "controller.current_limit": "25 A", "pack.chemistry": "gel", "pack.label": "48 V 12 Ah",
	}, 1024)
	if a.Draws.Stuck > 0.6 || a.Draws.Crawls > 0.6 || a.Draws.Stuck+a.Draws.Crawls < 0.9 {
		t.Fatalf("%.2f stand and %.2f crawl: the setup shows nothing", a.Draws.Stuck, a.Draws.Crawls)
	}
	i := slices.IndexFunc(a.Findings, func(f answer.Finding) bool { return f.Fate == answer.FateCrawls })
	if i < 0 {
		t.Fatal("that it gets nowhere is not told")
	}
	if f := a.Findings[i]; f.Level != answer.FixFirst || f.Certainty != answer.Plain {
		t.Errorf("%q stands as %v, %v; want fix first, and plainly", f.Title, f.Level, f.Certainty)
	}
}
