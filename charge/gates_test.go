package charge_test

import (
	"math"
	"testing"

	"example.org/packcheck/battery"
	"example.org/packcheck/charge"
)

func TestGatesHaveThePublishedEdges(t *testing.T) {
	tests := []struct {
		chem  string
		cellC float64
		open  bool
		share float64
		most  float64 // V per cell; 0 = not looked at
		why   string
	}{
		{"li-ion", -1, false, 0, 0, "TI BQ76942: no charging at or below 0 degC"},
		{"li-ion", 0, false, 0, 0, "at freezing is still too cold"},
		{"li-ion", 0.1, true, 0.2, 4.25, "TI BQ25882 register 08h: 20 % of the set current from 0 to 10 degC"},
		{"li-ion", 9.9, true, 0.2, 4.25, "the same"},
		{"li-ion", 10, true, 1, 4.25, "from 10 degC the full current"},
		{"li-ion", 44.9, true, 1, 4.25, ""},
		{"li-ion", 60.1, false, 0, 0, "JEITA: none above 60 degC"},
		{"lifepo4", 0, false, 0, 0, "TI BQ76942"},
		{"agm", 0, false, 0, 0, "7.2 and 20 Ah sheets: charge 0 to 40 degC"},
		{"agm", 20, true, 1, 2.50, "12 V 5 Ah sheet: no compensation from 15 to 35 degC"},
		{"agm", 40, false, 0, 0, "7.2 and 20 Ah sheets"},
		{"li-ion", math.NaN(), false, 0, 0, "an unknown temperature closes the gate"},
	}
	for _, tt := range tests {
		g := charge.GateAt(profile(t, tt.chem), tt.cellC)
		if g.Open != tt.open || math.Abs(g.CurrentShare-tt.share) > 1e-12 {
			t.Errorf("%s at %g degC: open %v, share %g; want %v, %g (%s)", tt.chem, tt.cellC, g.Open, g.CurrentShare, tt.open, tt.share, tt.why)
		}
		if tt.most > 0 && math.Abs(g.MostVPerCell-tt.most) > 1e-9 {
			t.Errorf("%s at %g degC: at most %g V per cell, want %g (%s)", tt.chem, tt.cellC, g.MostVPerCell, tt.most, tt.why)
		}
		if g.Open && (g.TooCold || g.TooHot) || !g.Open && g.TooCold == g.TooHot {
			t.Errorf("%s at %g degC: %+v", tt.chem, tt.cellC, g)
		}
	}
}

// Data sheets of 12 V blocks of 7.2 and 5 Ah: cycle voltage -30 mV/K per block,
// -5 mV/K per cell.
func TestLeadAcidEndVoltageFollowsTheTemperature(t *testing.T) {
	p := profile(t, "agm")
	at := func(c float64) float64 { return 6 * charge.GateAt(p, c).WantedVPerCell }
	if got := (at(35) - at(15)) / 20; math.Abs(got+0.030) > 1e-9 {
		t.Errorf("%.4f V/K per block, want -0.030", got)
	}
	if v := at(25); v < 14.4 || v > 15.0 {
		t.Errorf("%.2f V at 25 degC, want 14.4 to 15.0", v)
	}
	// The same sheets: float 13.5 to 13.8 V at -20 mV/K per block.
	float := func(c float64) float64 { return 6 * charge.GateAt(p, c).FloatVPerCell }
	if got := (float(35) - float(15)) / 20; math.Abs(got+0.020) > 1e-4 {
		t.Errorf("float: %.4f V/K per block, want -0.020", got)
	}
	if v := float(25); v < 13.5 || v > 13.8 {
		t.Errorf("float: %.2f V at 25 degC, want 13.5 to 13.8", v)
	}
	if charge.GateAt(profile(t, "li-ion"), 25).FloatVPerCell != 0 {
		t.Error("lithium-ion was given a float voltage: no trickle afterwards")
	}
	warm, cold := charge.GateAt(p, 38), charge.GateAt(p, 5)
	if !(warm.MostVPerCell < 2.50 && cold.MostVPerCell > 2.50) {
		t.Errorf("limits %g V warm, %g V cold: the limit does not follow outside 15 to 35 degC", warm.MostVPerCell, cold.MostVPerCell)
	}
}

// A resting pack goes to the temperature of its place exponentially, so the
// wait is tau ln((T0-Ta)/(T-Ta)) with tau = m c / (h A).
func TestTheWaitIsThatOfTheThermalModel(t *testing.T) {
	spec := battery.Spec{Profile: profile(t, "li-ion"), CellsInSeries: 5, CapacityAh: 5, MassKg: 0.65, ClosedShell: true}
	m := model(t, spec)
	h := spec.Profile.Heat
	tauMin := 0.65 * h.SpecificJKgK / (h.CoolingWM2K * h.ShellShare * h.AreaM2PerKg23 * math.Pow(0.65, 2.0/3)) / 60
	maxC := spec.Profile.Charge.MaxTempC
	w := charge.WaitFor(m, 60, 22)
	want := tauMin * math.Log((60-22)/(maxC-22))
	if math.Abs(w.OpenMin-want) > 1 {
		t.Errorf("hot pack: %g min, want %.1f", w.OpenMin, want)
	}
	if _, ok := find(w.Findings, charge.CodeTooHot); !ok {
		t.Errorf("hot pack: findings %+v", w.Findings)
	}
	w = charge.WaitFor(m, -5, 20)
	want = tauMin * math.Log((20+5)/(20-spec.Profile.Charge.MinTempC))
	if math.Abs(w.OpenMin-want) > 1 {
		t.Errorf("cold pack: %g min until allowed, want %.1f", w.OpenMin, want)
	}
	want = tauMin * math.Log((20+5)/(20-spec.Profile.Charge.ReducedBelowC))
	if math.Abs(w.FullMin-want) > 1 {
		t.Errorf("cold pack: %g min until full current, want %.1f", w.FullMin, want)
	}
	if w := charge.WaitFor(m, 20, 20); w.OpenMin != 0 || w.FullMin != 0 || w.Never || len(w.Findings) != 0 {
		t.Errorf("pack at room temperature: %+v", w)
	}
	if w := charge.WaitFor(m, 20, -5); !w.Never {
		t.Error("a freezing shed was allowed")
	} else if _, ok := find(w.Findings, charge.CodePlaceNoGood); !ok {
		t.Errorf("freezing shed: findings %+v", w.Findings)
	}
	if w := charge.WaitFor(m, -5, -5); !w.Never || w.OpenMin != 0 {
		t.Errorf("cold pack in a cold shed: %+v", w)
	}
	if w := charge.WaitFor(m, 20, 5); !w.NeverFull || w.Never {
		t.Errorf("pack in a 5 degC shed: %+v", w)
	}
}

func TestAHotterPackWaitsLonger(t *testing.T) {
	for _, chem := range []string{"agm", "li-ion", "lifepo4", "nimh"} {
		m := pack(t, chem, 6, 7)
		last := -1.0
		for c := 30.0; c <= 80; c += 5 {
			w := charge.WaitFor(m, c, 20)
			if w.OpenMin < last {
				t.Errorf("%s: %g min at %g degC, less than before", chem, w.OpenMin, c)
			}
			last = w.OpenMin
		}
		if last <= 0 {
			t.Errorf("%s: no wait even at 80 degC", chem)
		}
	}
}
