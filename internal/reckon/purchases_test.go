package reckon_test

import (
	"maps"
	"slices"
	"strings"
	"testing"

	"example.org/packcheck/answer"
)

// Nobody buys a cutoff for a vehicle as it was sold, with its own lead-acid block; somebody
// who puts lithium in does.
func TestACutoffIsBoughtForWhatNeedsOne(t *testing.T) {
	other := func(values map[string]string) map[string]string {
		all := timed(map[string]string{"original.pack.label": "12 V 7 Ah", "original.pack.chemistry": "agm"})
		maps.Copy(all, values)
		return all
	}
	for _, tt := range []struct {
		name   string
		values map[string]string
		none   bool
	}{
		{"as sold", timed(nil), true},
		{"a larger block", other(map[string]string{"pack.label": "12 V 12 Ah"}), true},
		{"lithium in its place", other(map[string]string{"pack.label": "12 V max 5 Ah", "pack.chemistry": "li-ion"}), false},
	} {
		a := fewDraws(t, tt.values)
		i := slices.IndexFunc(a.Buy, func(p answer.Purchase) bool { return p.Item == "Cutoff" })
		if i < 0 {
			t.Errorf("%s: nothing is said of a cutoff", tt.name)
			continue
		}
		if text := a.Buy[i].Text; strings.HasPrefix(text, "none is needed") != tt.none || strings.Contains(text, "charge it after every ride") != tt.none {
			t.Errorf("%s: %q", tt.name, text)
		}
	}
}
