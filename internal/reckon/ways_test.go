package reckon_test

import (
	"testing"

	"github.com/google/go-cmp/cmp"

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
