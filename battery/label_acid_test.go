package battery_test

import (
	"testing"

	"example.org/packcheck/battery"
)

// A child tips a vehicle over: whether acid can run out is read off a label, and a battery
// that is made for such a vehicle is not taken for that of a car.
func TestLiquidAcidIsReadOffALabel(t *testing.T) {
	for _, tt := range []struct {
		label          string
		liquid, starts bool
	}{
		{"12V 14Ah flooded", true, false},
		{"12 V 12 Ah open lead acid", true, false},
		{"12V 45Ah wet", true, false},
		{"Wet-cell battery 12V 14Ah", true, false},
		{"12V 7Ah OPzS", true, false},
		{"12V 60Ah EFB starter battery", true, false},
		{"12V 40Ah car battery", false, true},
		{"12V 45Ah starter battery", false, true},
		{"12V 14Ah AGM starter battery", false, false},
		{"12V 14Ah sealed lead-acid, non-spillable", false, false},
		{"12V 7Ah SLA, no wet cells inside", false, false},
		{"12V 7Ah lead acid, keep from wet places", false, false},
		{"12V 7Ah ride on car battery", false, false},
		{"Kids car battery 12V7Ah", false, false},
		{"12V 7Ah", false, false},
		{"20V max 4Ah, vented housing, Li-ion", false, false},
	} {
		l, err := battery.ParseLabel(tt.label, "")
		if err != nil {
			t.Errorf("%q: %v", tt.label, err)
		} else if l.LiquidAcid != tt.liquid || l.Starter != tt.starts {
			t.Errorf("%q: liquid acid %v, starts engines %v; want %v, %v", tt.label, l.LiquidAcid, l.Starter, tt.liquid, tt.starts)
		}
	}
}
