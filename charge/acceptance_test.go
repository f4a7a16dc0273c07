package charge_test

import (
	"math"
	"testing"

	"example.org/packcheck/charge"
)

// What is not stored of a charging current is what the gas takes at the voltage
// that results; and the more of the charge is back, the more that is.
func TestACurrentIsStoredOrGoesIntoGas(t *testing.T) {
	m := pack(t, "agm", 6, 7)
	a := m.Spec().Profile.Acceptance
	lost := 0.0
	for _, z := range []float64{0.2, 0.6, 0.9, 0.99, 1} {
		s := m.StateAt(z, 25)
		volts, stored := charge.Taken(m, s, 0.5)
		gas := a.GasA(volts/6, 25, 7)
		if math.Abs(stored+gas-0.5) > 1e-6 {
			t.Errorf("at %g: %.6f A stored and %.6f A into gas, want 0.5 A together", z, stored, gas)
		}
		if gas < lost {
			t.Errorf("at %g less gas than before: %.6f A", z, gas)
		}
		lost = gas
		if want := m.TerminalV(&s, -stored) + 6*stored*a.Ohm(m.Filled(s), 7); math.Abs(volts-want) > 1e-9 {
			t.Errorf("at %g: %.4f V, want %.4f", z, volts, want)
		}
	}
	// Without the group the return factor says what is stored.
	nickel := pack(t, "nimh", 6, 2)
	if _, stored := charge.Taken(nickel, nickel.StateAt(0.5, 25), 1); math.Abs(stored*nickel.Spec().Profile.Charge.ReturnFactor-1) > 1e-9 {
		t.Errorf("nickel stores %.3f A of 1 A", stored)
	}
	// Nothing is put in: then nothing is different from a discharge.
	s := m.StateAt(0.5, 25)
	if volts, stored := charge.Taken(m, s, -0.5); stored != -0.5 || volts != m.TerminalV(&s, 0.5) {
		t.Errorf("taking 0.5 A out: %.4f V, %.3f A stored", volts, stored)
	}
}

// Battery makers return 105 to 110 % of what was taken out, cycle voltage and
// usual currents; a slow charge at float volts gasses little.
func TestAFullRechargeReturnsWhatMakersReturn(t *testing.T) {
	m := pack(t, "agm", 6, 7)
	for _, c := range []struct{ endV, amps, lo, hi float64 }{{14.4, 0.7, 1.01, 1.10}, {14.7, 1.75, 1.01, 1.10}, {13.65, 0.7, 1.00, 1.06}} {
		out := simulate(t, charge.Case{Pack: m, Start: m.StateAt(0, 25), AmbientC: 25, CurrentA: c.amps, EndV: c.endV})
		back := out.InAh / ((out.ChargeAtEnd - 0) * m.FullAh())
		if back < c.lo || back > c.hi {
			t.Errorf("%g A to %g V: %.3f times what was stored, want %g to %g", c.amps, c.endV, back, c.lo, c.hi)
		}
	}
}
