package trials_test

import (
	"strings"
	"testing"

	"example.org/packcheck/answer"
)

// A reading that fits nothing is asked for once more, first of all, unless the answer
// forbids what it takes. Numbers of the harvest fair's tractor, invented.
func TestAReadingThatFitsNothingIsAskedForOnceMore(t *testing.T) {
	for _, row := range []struct {
		name, toml string
		key        string // "" = nobody drives for it
	}{
		{"sound but for it", "[vehicle]\nground = \"asphalt\"\ndesign_voltage = \"12 V\"\n[pack]\nlabel = \"12 V 7 Ah\"\nchemistry = \"agm\"\n[measured]\ntop_speed = \"2 km/h\"\n", answer.KeyMeasuredTopSpeed},
		{"a danger", "[vehicle]\nground = \"asphalt\"\ndesign_voltage = \"12 V\"\n[pack]\nlabel = \"20 V max 5 Ah\"\nchemistry = \"li-ion\"\n[measured]\ntop_speed = \"1 km/h\"\n", ""},
		{"a danger, read with its own battery", "[vehicle]\nground = \"asphalt\"\ndesign_voltage = \"12 V\"\n[pack]\nlabel = \"20 V max 5 Ah\"\nchemistry = \"li-ion\"\n[original.pack]\nlabel = \"12 V 7 Ah\"\nchemistry = \"agm\"\n[original.measured]\ntop_speed = \"1 km/h\"\n", "original." + answer.KeyMeasuredTopSpeed},
	} {
		a := assessed(t, row.name, "[rider]\nage = \"5 years\"\n"+row.toml)
		if a.Conflict == nil || !strings.Contains(a.Conflict.Name, "top speed") {
			t.Errorf("%s: conflict %+v", row.name, a.Conflict)
			continue
		}
		first := answer.Measurement{}
		if len(a.Measure) > 0 && strings.HasPrefix(a.Measure[0].Asks, "Once more: ") {
			first = a.Measure[0]
		}
		if first.Key != row.key {
			t.Errorf("%s: asks %q of %q first, want %q", row.name, first.Asks, first.Key, row.key)
		}
	}
}
