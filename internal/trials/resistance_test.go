package trials_test

import (
	"fmt"
	"math"
	"testing"
)

// A meter with 1 kHz, a load step read after a second and a launch see one and
// the same battery: each finds more than the one before, and the model's parts
// that a program gets for its own computation give the figures that are printed.
func TestMeterLoadStepAndLaunchAgreeOnTheResistance(t *testing.T) {
	for _, c := range []struct{ chemistry, label, ohm string }{
		{"li-ion", "20 V max 5 Ah", "60 mOhm"},
		{"agm", "12 V 7 Ah", "40 mOhm"},
	} {
		a := readWith(t, fmt.Sprintf("[rider]\nmass = \"20 kg\"\n[vehicle]\ndesign_voltage = \"12 V\"\n[controller]\nkind = \"contacts\"\n[outing]\nair = \"25 C\"\n[pack]\nchemistry = %q\nlabel = %q\nresistance = %q\ncharge = \"50 %%\"\nhealth = \"100 %%\"\n",
			c.chemistry, c.label, c.ohm), 256)
		p, l := a.Pack, a.Launch.Case
		if p.Resistance1msOhm >= p.Resistance1sOhm || p.Resistance1sOhm >= p.ResistanceOhm {
			t.Errorf("%s: %.4f, %.4f and %.4f Ohm, want more the later it is read", c.label, p.Resistance1msOhm, p.Resistance1sOhm, p.ResistanceOhm)
		}
		var told float64
		if _, err := fmt.Sscanf(c.ohm, "%g", &told); err != nil {
			t.Fatal(err)
		}
		if off := p.Resistance1msOhm/(told/1000) - 1; math.Abs(off) > 0.08 { // a figure that was told counts at the chemistry's own 20 or 25 degC
			t.Errorf("%s: told %s by a meter, a meter would show %.4f Ohm", c.label, c.ohm, p.Resistance1msOhm)
		}
		after := func(seconds float64) float64 {
			ohm := l.R0Ohm
			for _, b := range l.RC {
				ohm += b.Ohm * -math.Expm1(-seconds/(b.Ohm*b.Farad))
			}
			return ohm
		}
		for seconds, printed := range map[float64]float64{0.001: p.Resistance1msOhm, 1: p.Resistance1sOhm, 10: p.ResistanceOhm} {
			if own := after(seconds); math.Abs(own/printed-1) > 0.15 {
				t.Errorf("%s: %.4f Ohm after %g s, the parts of one launch give %.4f", c.label, printed, seconds, own)
			}
		}
		g := a.Launch.CaseGives
		if sag := (l.OCVV-g.LowestBusV)/g.PeakBatteryA - l.PathOhm; sag < 0.98*after(0.001) || sag > after(10) {
			t.Errorf("%s: the launch pulls the battery down by %.4f Ohm, want between %.4f and %.4f", c.label, sag, after(0.001), after(10))
		}
	}
}
