package setup_test

import (
	"fmt"
	"math"
	"testing"

	"example.org/packcheck/setup"
)

// Published 12 V motors (WPILib DCMotor.java, and a maker's sheet for the 540):
// no-load speed, no-load current, stall current; resistance and constant
// computed from them in the last two columns, last printed digit.
var published = []struct {
	can                  string
	rpm, noLoadA, stallA float64
	ohm, k, kDigit       float64
}{
	{"550", 19000, 0.4, 84, 0.143, 0.00600, 1e-5},
	{"775", 18730, 0.7, 134, 0.090, 0.00609, 1e-5},
	{"775", 13050, 2.7, 97, 0.124, 0.00854, 1e-5},
	{"775", 5800, 1.6, 18, 0.667, 0.0180, 1e-4},
	{"540", 16800, 1.0, 42, 0.286, 0.00666, 1e-5},
}

func TestMotorConstantsFollowFromTheLabelAsPublished(t *testing.T) {
	for _, m := range published {
		p := parts(t, fmt.Sprintf("[motors]\ncan = %q\nrated_voltage = \"12 V\"\nno_load_speed = \"%g rpm\"\nno_load_current = \"%g A\"\nstall_current = \"%g A\"\n[pack]\nlabel = \"12 V 7 Ah\"\n",
			m.can, m.rpm, m.noLoadA, m.stallA))
		got := p.Motors
		if !got.WindingOhm.IsExact() || math.Abs(got.WindingOhm.Likely-m.ohm) > 0.001 {
			t.Errorf("%s of %g rpm: %v, published %g Ohm", m.can, m.rpm, got.WindingOhm.Range, m.ohm)
		}
		if math.Abs(got.TorqueConstant.Likely-m.k) > m.kDigit || !got.TorqueConstant.IsExact() {
			t.Errorf("%s of %g rpm: %v, published %g N m/A", m.can, m.rpm, got.TorqueConstant.Range, m.k)
		}
		if got.Coupled || got.WindingOhm.Assumed || got.TorqueConstant.Assumed {
			t.Errorf("%s: nothing had to be assumed: %+v", m.can, got)
		}
	}
}

// The rule that resistance goes with the square of the constant inside one can
// size holds for the published motors within the spread that is allowed for it;
// and from the can alone their stall currents lie inside the range.
func TestCanRuleHoldsForThePublishedMotors(t *testing.T) {
	for _, m := range published {
		p := parts(t, fmt.Sprintf("[motors]\ncan = %q\nrated_voltage = \"12 V\"\nstall_current = \"%g A\"\n[pack]\nlabel = \"12 V 7 Ah\"\n", m.can, m.stallA))
		if !p.Motors.TorqueConstant.Contains(m.k) {
			t.Errorf("%s with %g A stall: constant %v does not hold the published %g", m.can, m.stallA, p.Motors.TorqueConstant.Range, m.k)
		}
		p = parts(t, fmt.Sprintf("[motors]\ncan = %q\nrated_voltage = \"12 V\"\n[pack]\nlabel = \"12 V 7 Ah\"\n", m.can))
		if !p.Motors.WindingOhm.Contains(math.Round(m.ohm*1000) / 1000) {
			t.Errorf("%s alone: resistance %v does not hold the published %g", m.can, p.Motors.WindingOhm.Range, m.ohm)
		}
		// At that resistance the coupled constant comes near the published one.
		k := p.Motor(func(f *setup.Figure) float64 {
			if f.Key == "motors.winding_resistance" {
				return m.ohm
			}
			return f.Likely
		}).TorqueConstant
		if k < m.k/1.2 || k > m.k*1.2 {
			t.Errorf("%s at %g Ohm: constant %g, published %g", m.can, m.ohm, k, m.k)
		}
	}
}

func TestRangesOnAMotorLabelWidenItsConstants(t *testing.T) {
	p := parts(t, "[motors]\nrated_voltage = \"12 V\"\nno_load_speed = \"14000 to 16000 rpm\"\nno_load_current = \"1 to 2 A\"\nstall_current = \"50 to 70 A\"\n[pack]\nlabel = \"12 V 7 Ah\"\n")
	m := p.Motors
	const perRPM = math.Pi / 30
	// Worst corners by hand: K = (V - I0 R)/w.
	low := (12 - 2*12.0/50) / (16000 * perRPM)
	high := (12 - 1*12.0/70) / (14000 * perRPM)
	if math.Abs(m.TorqueConstant.Low-low) > 1e-9 || math.Abs(m.TorqueConstant.High-high) > 1e-9 {
		t.Errorf("constant %v, want %g to %g", m.TorqueConstant.Range, low, high)
	}
	if math.Abs(m.WindingOhm.Low-12.0/70) > 1e-9 || math.Abs(m.WindingOhm.High-12.0/50) > 1e-9 {
		t.Errorf("resistance %v", m.WindingOhm.Range)
	}
	// Speed, constant and resistance give the no-load current: I0 = (V - K w)/R.
	p = parts(t, "[motors]\nrated_voltage = \"12 V\"\nno_load_speed = \"15000 rpm\"\ntorque_constant = \"0.0075 N m/A\"\nwinding_resistance = \"200 mOhm\"\n[pack]\nlabel = \"12 V 7 Ah\"\n")
	want := (12 - 0.0075*15000*perRPM) / 0.2
	if got := p.Motors.NoLoadA; math.Abs(got.Likely-want) > 1e-9 || got.Assumed {
		t.Errorf("no-load current %v, want %g", got, want)
	}
}

func TestAMotorForAnotherVoltageIsWoundForIt(t *testing.T) {
	at := func(v string) *setup.MotorPart {
		return parts(t, "[motors]\ncan = \"550\"\nrated_voltage = \""+v+"\"\n[pack]\nlabel = \"12 V 7 Ah\"\n").Motors
	}
	a, b := at("12 V"), at("24 V")
	// Twice the voltage: twice the turns, four times the resistance, half the
	// current; the stall power stays.
	for name, r := range map[string]float64{
		"resistance": b.WindingOhm.Likely / a.WindingOhm.Likely / 4,
		"constant":   b.TorqueConstant.Likely / a.TorqueConstant.Likely / 2,
		"no load":    b.NoLoadA.Likely / a.NoLoadA.Likely * 2,
		"inductance": b.WindingH.Likely / a.WindingH.Likely / 4,
	} {
		if math.Abs(r-1) > 1e-9 {
			t.Errorf("%s scales by %g of what it should", name, r)
		}
	}
}
