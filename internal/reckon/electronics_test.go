package reckon_test

import (
	"testing"

	"example.org/packcheck/answer"
	"example.org/packcheck/cutoff"
)

// A label that names electronics inside does not say what they do: that is asked, and what
// hangs on it is no danger on a guess. Where nothing is named, or the label says that there are
// none, nothing is there.
func TestElectronicsOnALabelAreAskedFor(t *testing.T) {
	for _, tt := range []struct {
		label string
		want  answer.Level
	}{
		{"14.4 V 7 Ah li-ion", answer.Danger},
		{"14.4 V 7 Ah li-ion with BMS", answer.FixFirst},
		{"14.4 V 7 Ah li-ion without BMS", answer.Danger},
		{"14.4 V 7 Ah li-ion, BMS not included", answer.Danger},
		{"14.4 V 7 Ah li-ion unprotected", answer.Danger},
		{"14.4 V 7 Ah li-ion protected", answer.FixFirst},
		{"12.8 V 7 Ah LiFePO4", answer.FixFirst}, // sold as a whole it mostly has some
		{"12.8 V 7 Ah LiFePO4 no BMS", answer.Danger},
		{"four 3.2 V 7 Ah LiFePO4 in series", answer.Danger}, // single cells have none
	} {
		a := fewDraws(t, map[string]string{"rider.age": "5 years", "vehicle.design_voltage": "12 V", "motors.count": "2", "pack.label": tt.label, "original.pack.label": "12 V 7 Ah"})
		found := false
		for _, f := range a.Findings {
			if f.Code == cutoff.CodeNone || f.Code == cutoff.CodePastSaving {
				found = true
				if f.Level != tt.want {
					t.Errorf("%s: %q is %v, want %v", tt.label, f.Title, f.Level, tt.want)
				}
			}
		}
		asked := false
		for _, m := range a.Measure {
			asked = asked || m.Key == answer.KeyPackWatchesCells || m.Key == answer.KeyCutoffPackOpensAt
		}
		if !found || !asked {
			t.Errorf("%s: told %v, asked %v", tt.label, found, asked)
		}
	}
}
