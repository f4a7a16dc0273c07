package ask_test

import (
	"strings"
	"testing"

	"example.org/packcheck/ask"
)

// An adaptor of 0.5 A gives less than the two hundredths of 35 Ah at which a charge counts as
// ended, and its amps fall from the beginning: it is full all the same, as one of 20 Ah is.
// What is not over when the computation is given up is not said never to end.
func TestASlowChargerIsNotSaidNeverToGetThere(t *testing.T) {
	for _, c := range []struct{ charger, battery, want string }{
		{"12 V 500 mA DC for gel", "12 V 20 Ah gel", "Full after 2.5 days"},
		{"12 V 500 mA DC for gel", "12 V 24 Ah gel", "Full after 2.9 days"},
		{"12 V 500 mA DC for gel", "12 V 35 Ah gel", "Full after 4.3 days"},
		{"12 V 500 mA DC for gel", "12 V 100 Ah gel", "It takes longer than 5 days to get full, if it ever does; unplug it"},
	} {
		a := answered(t, ask.Charger{Label: c.charger, Battery: ask.Battery{Label: c.battery}})
		if said := strings.Join(a.Words, " "); !strings.Contains(said, c.want) {
			t.Errorf("%s on %s: %q, want %q", c.charger, c.battery, said, c.want)
		}
	}
}
