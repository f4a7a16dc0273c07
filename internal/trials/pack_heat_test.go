package trials_test

import (
	"fmt"
	"testing"
)

// Independent bench tests (tayvoy.com, see chemistry/data/members): in an insulated
// housing the INR18650-P28A comes to 75 degC at 16 A and the INR21700-50S at 15 A,
// from full to empty, begun at some 25 degC. In a closed pack of two such cells
// side by side, at twice the current, that lies in the range or within 5 K above (a
// shell keeps less heat than an insulated box); the same pack in the open stays
// cooler, and neither is a single number.
func TestTheHeatOfAPackHasAWidthThatHoldsABenchTest(t *testing.T) {
	t.Parallel()
	for _, c := range []struct{ label, load string }{
		{"18 V 5.6 Ah", "32 A"},
		{"18 V 10 Ah", "30 A"},
	} {
		at := func(housing string) (low, likely, high float64) {
			r := foretold(t, fmt.Sprintf("[pack]\nchemistry = \"li-ion\"\nlabel = %q\nage = \"new\"\nmaker = \"own\"\ncells = \"power\"\nstrings = 2\nhousing = %q\n[load]\ncurrent = %q\n[outing]\nair = \"25 C\"\n",
				c.label, housing, c.load), 256)["ride.pack_c"]
			return r.Low, r.Likely, r.High
		}
		low, shut, high := at("closed shell")
		if low > 75 || high < 70 {
			t.Errorf("%s at %s in a closed shell: %.0f to %.0f degC, measured 75", c.label, c.load, low, high)
		}
		openLow, open, openHigh := at("bare cells")
		if open >= shut || openHigh-openLow < 8 { // 5 K either side at the least, of eight in ten
			t.Errorf("%s at %s: bare %.0f degC (%.0f to %.0f), shut %.0f", c.label, c.load, open, openLow, openHigh, shut)
		}
	}
}
