package ask_test

import (
	"slices"
	"strings"
	"testing"

	"example.org/packcheck/ask"
)

func TestALabelIsToldAsItIsComputed(t *testing.T) {
	for _, c := range []struct{ label, want string }{
		{"3.7 V 2000 mAh", "1 cell of lithium-ion (tool pack, nickel-rich): 3.6 V nominal"},
		{"3.7 V 2000 mAh", "The printed 3.7 V are the same cell, counted at 3.7 V instead of 3.6 V."},
		{"11.1 V 5 Ah LiPo", "3 cells of lithium-ion (tool pack, nickel-rich) in series"},
		{"11.1 V 5 Ah LiPo", "the same cells, counted at 3.7 V each instead of 3.6 V."},
	} {
		if said := strings.Join(answered(t, ask.Label{Battery: ask.Battery{Label: c.label}}).Words, " "); !strings.Contains(said, c.want) {
			t.Errorf("%s: %q, want %q", c.label, said, c.want)
		}
	}
	const stand = "nickel-cadmium is computed like nickel-metal hydride, which it resembles"
	for label, want := range map[string]bool{"12 V 1.3 Ah NiCd": true, "12 V 1.3 Ah NiMH": false} {
		for _, q := range []ask.Question{
			ask.Label{Battery: ask.Battery{Label: label}}, ask.Runtime{Battery: ask.Battery{Label: label}, CurrentA: 1},
		} {
			if a := answered(t, q); slices.Contains(a.Assumed, stand) != want {
				t.Errorf("%+v assumes %q", q, a.Assumed)
			}
		}
	}
}
