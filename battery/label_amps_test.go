package battery_test

import (
	"testing"

	"example.org/packcheck/battery"
)

func TestLastingAmpsAreReadFromALabel(t *testing.T) {
	for _, c := range []struct {
		label string
		wantA float64
	}{
		{"12 V 10 Ah LiFePO4 10A BMS", 10},
		{"12.8V 6Ah LiFePO4 battery, built-in 20A BMS, 4000 cycles", 20},
		{"LiFePO4 12.8V 10Ah 128Wh BMS: 15 A", 15},
		{"12.8V 20Ah LiFePO4 Max. Charging Current 5A Max. Discharge Current 20A", 20},
		{"12.8 V 7 Ah LiFePO4 (max. charge 3 A, max. continuous discharge 7 A, peak 15 A)", 7},
		{"12.8 V 7 Ah LiFePO4, continuous discharge current: 10 A, max discharge 20 A (5 s)", 10},
		{"12.8 V 7 Ah LiFePO4 max discharge current 20 A for 5 sec", 0},
		{"12.8 V 7 Ah LiFePO4 charge/discharge 7 A", 7},
		{"24 V 10 Ah li-ion output current 8000 mA", 8},
		{"36V 10Ah li-ion battery 15A max", 15},
		{"12.8 V 7 Ah LiFePO4 charge current 2 A", 0},
		{"12.8 V 7 Ah LiFePO4 peak 30 A", 0},
		{"20 V max 5.0 Ah 30A", 0},                              // of what is not said
		{"12 V 7 Ah AGM max. discharge current 105 A (5 s)", 0}, // seconds
		{"12 V 7 Ah AGM max discharge current 100A", 0},         // of lead-acid always for seconds
		{"12 V 7 Ah initial current less than 2.1 A", 0},
		{"two 12 V 7 Ah LiFePO4 in parallel, 10 A BMS", 0}, // of each or of both
	} {
		l, err := battery.ParseLabel(c.label, "")
		if err != nil {
			t.Errorf("%q: %v", c.label, err)
			continue
		}
		if l.LastingA != c.wantA {
			t.Errorf("%q gives %g A for long, want %g", c.label, l.LastingA, c.wantA)
		}
	}
}
