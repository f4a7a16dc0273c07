package reckon_test

import (
	"testing"

	"github.com/google/go-cmp/cmp"

	"example.org/packcheck/answer"
	"example.org/packcheck/internal/reckon"
	"example.org/packcheck/setup"
)

// A way out is held against the vehicle as it was made, not against one with the
// same changes: what is kept of the originals rests on that.
func TestAWayOutLeavesTheOriginalAsItWas(t *testing.T) {
	for _, name := range []string{"tractor-tool-pack", "tractor-done-properly"} {
		s, err := setup.Load("../../examples/" + name + ".toml")
		if err != nil {
			t.Fatal(err)
		}
		for change, sets := range map[string]map[string]string{
			"wire":       {"wire.gauge": "8 AWG", "wire.joint_resistance": "0.1 mOhm"},
			"controller": {"controller.kind": "chopper", "controller.current_limit": "5 A", "controller.max_voltage": "30 V"},
			"fuse":       {"fuse.form": "small blade", "fuse.rating": "2 A"},
		} {
			before, after, err := reckon.OriginalsOnAWay(s, 24, sets)
			if err != nil {
				t.Fatal(name, change, err)
			}
			if d := cmp.Diff(before, after); d != "" {
				t.Errorf("%s, another %s (-before +after)\n%s", name, change, d)
			}
		}
	}
}

// The search for ways out runs on several goroutines at once.
func TestWaysOutAreTheSameForOneAndSevenWorkers(t *testing.T) {
	s, err := setup.Load("../../examples/tractor-tool-pack.toml")
	if err != nil {
		t.Fatal(err)
	}
	var first *answer.Assessment
	for _, n := range []int{1, 7} {
		a, err := reckon.Assess(s, reckon.Options{Draws: reckon.LeastDraws, Ways: true, Workers: n})
		if err != nil {
			t.Fatal(err)
		}
		if first == nil {
			first = a
		}
		if len(a.Ways) == 0 {
			t.Fatal("no way out is found")
		}
		if d := cmp.Diff(first, a); d != "" {
			t.Errorf("%d workers give another answer than one (-one +%d)\n%s", n, n, d)
		}
	}
}

// Who does not ask which cutoff would suit is told all the same what has to be put
// right, in each vehicle: with no cutoff, with one, and with one that comes back.
func TestWhatHasToBePutRightIsFoundWithoutAdvisingACutoff(t *testing.T) {
	for _, name := range []string{"tractor-tool-pack", "two-seater-tired-blocks"} {
		s, err := setup.Load("../../examples/" + name + ".toml")
		if err != nil {
			t.Fatal(err)
		}
		for change, sets := range map[string]map[string]string{
			"as it is": {},
			"none":     {"cutoff.module.opens_at": "", "cutoff.module.delay": "", "cutoff.module.closes_at": "", "cutoff.module.standby_current": ""},
			"returns":  {"cutoff.module.opens_at": "10 V", "cutoff.module.delay": "1 s", "cutoff.module.closes_at": "11 V"},
			"weak":     {"pack.health": "0.4"},
		} {
			changed, err := s.With(sets)
			if err != nil {
				t.Fatal(name, change, err)
			}
			whole, unadvised, err := reckon.ToPutRight(changed, reckon.LeastDraws)
			if err != nil {
				t.Fatal(name, change, err)
			}
			if d := cmp.Diff(whole, unadvised); d != "" {
				t.Errorf("%s, cutoff %s (-advised +unadvised)\n%s", name, change, d)
			}
		}
	}
}
