package battery_test

import (
	"math"
	"testing"

	"example.org/packcheck/battery"
	"example.org/packcheck/chemistry"
	"example.org/packcheck/tables"
)

func TestOlderBatteriesHoldLess(t *testing.T) {
	for _, family := range []chemistry.Family{chemistry.LeadAcid, chemistry.Lithium} {
		before := math.Inf(1)
		for _, age := range []string{"new", "1 year", "2 years", "3 years"} {
			w := battery.WidthsOf(family, age, battery.MakersOwn)
			if !(w.Health.Likely < before) || !(w.Health.Low < w.Health.Likely) || w.Health.Source == "" {
				t.Errorf("%s, %s: health %+v", family, age, w.Health)
			}
			before = w.Health.Likely
		}
		unknown := battery.WidthsOf(family, "", battery.MakersOwn).Health
		for _, age := range battery.Ages() {
			h := battery.WidthsOf(family, age, battery.MakersOwn).Health
			if h.Likely < unknown.Low-1e-9 || h.Likely > unknown.High+1e-9 {
				t.Errorf("%s: %s is likely %g, outside of what an unknown age allows (%+v)", family, age, h.Likely, unknown)
			}
		}
	}
}

func TestALookalikeHoldsLessOfItsLabel(t *testing.T) {
	own := battery.WidthsOf(chemistry.Lithium, "new", battery.MakersOwn).Honesty
	fake := battery.WidthsOf(chemistry.Lithium, "new", battery.Lookalike).Honesty
	unknown := battery.WidthsOf(chemistry.Lithium, "new", battery.MakerUnknown).Honesty
	// Bench: three no-name packs gave 37, 50 and 59 % of their label.
	for _, share := range []float64{0.37, 0.50, 0.59} {
		if share < fake.Low || share > fake.High {
			t.Errorf("%g is outside %+v", share, fake)
		}
	}
	if !(fake.Likely < own.Low) || !(unknown.Low < own.Low) || !(unknown.High > fake.Likely) {
		t.Errorf("own %+v, look-alike %+v, unknown %+v", own, fake, unknown)
	}
}

// ARTS-Lab, Dataset Cycling with Strain Monitoring for Samsung 30Q Cell, CC
// BY-SA 4.0: share of the charge of cycle 2 and factor on the resistance of the
// first second, cell C at cycles 300, 480, 600 and 660, cell A at cycle 500.
func TestMeasuredAgeingLiesInsideTheGrowth(t *testing.T) {
	g := battery.WidthsOf(chemistry.Lithium, "worn", battery.MakersOwn).GrowthAt80
	for _, row := range []struct{ health, factor float64 }{
		{0.891, 1.27}, {0.801, 1.61}, {0.812, 1.78}, {0.721, 1.84}, {0.667, 1.93},
	} {
		least, most := battery.GrowthAt(row.health, g.Low), battery.GrowthAt(row.health, g.High)
		if row.factor < least || row.factor > most {
			t.Errorf("at %g: %g, stated %.3g to %.3g", row.health, row.factor, least, most)
		}
	}
}

// Makers' sheets: 12 V blocks of 5, 7.2, 9, 14, 28 Ah with 27, 18, 17, 13.5, 6
// mOhm at 1 kHz; against 20 mOhm of 7.5 Ah.
func TestPublishedBlocksLieInsideTheSpreadOfResistance(t *testing.T) {
	r := battery.WidthsOf(chemistry.LeadAcid, "new", battery.MakerUnknown).Resistance
	for _, row := range []struct{ ah, ohm float64 }{{5, 0.027}, {7.2, 0.018}, {9, 0.017}, {14, 0.0135}, {28, 0.006}} {
		if by := row.ohm * row.ah / (0.020 * 7.5); by < r.Low || by > r.High {
			t.Errorf("%g Ah: %.3g of the block that agm is fitted to, stated %+v", row.ah, by, r)
		}
	}
}

func TestUnknownFiguresOfBatteriesHaveSources(t *testing.T) {
	for _, family := range []chemistry.Family{chemistry.LeadAcid, chemistry.Lithium, chemistry.Nickel} {
		w := battery.WidthsOf(family, "", battery.MakerUnknown)
		for _, v := range []tables.Value{w.Honesty, w.Health, w.Resistance, w.GrowthAt80, w.Weakest} {
			if _, ok := tables.Builtin().Source(v.Source); !ok || !(v.Low < v.Likely && v.Likely < v.High) {
				t.Errorf("%s: %+v", family, v)
			}
		}
	}
}

// Makers' sheets of eleven blocks: at the 1 h rate 0.58 to 0.75 of the charge at
// the 20 h rate, to the end voltage of the rate. What is drawn must reach over
// that, and leave the 20 h rate where it is.
func TestSteepnessReachesOverThePublishedBlocks(t *testing.T) {
	w := battery.WidthsOf(chemistry.LeadAcid, "new", battery.MakersOwn).Steepness
	least, most := math.Inf(1), 0.0
	for _, member := range chemistry.Builtin().Members("agm") {
		rated := 0.0
		before := math.Inf(1)
		for _, by := range []float64{w.Low, w.Likely, w.High} {
			m, err := battery.New(battery.Spec{Profile: member.Profile.Steeper(by, member.Profile.Capacity.RatedHours), CellsInSeries: 6, CapacityAh: 7})
			if err != nil {
				t.Fatal(err)
			}
			slow, fast := m.Discharge(m.StateAt(1, 25), 7./20, 10.5, 25).Ah, m.Discharge(m.StateAt(1, 25), 4.4, 9.6, 25).Ah
			if by == w.Low {
				rated = slow
			}
			if math.Abs(slow/rated-1) > 0.04 {
				t.Errorf("%s, %g as steep: %.2f Ah over 20 h, with %g it was %.2f", member.Profile.Name, by, slow, w.Low, rated)
			}
			if fast > before {
				t.Errorf("%s, %g as steep: more at the 1 h rate, %.2f Ah", member.Profile.Name, by, fast)
			}
			before, least, most = fast, min(least, fast/slow), max(most, fast/slow)
		}
	}
	if least > 0.58 || most < 0.75 {
		t.Errorf("drawn blocks give %.2f to %.2f at the 1 h rate, published 0.58 to 0.75", least, most)
	}
}
