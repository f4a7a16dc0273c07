package tables_test

import (
	"testing"

	"example.org/packcheck/tables"
)

// Beyond the last row of a table nothing is published; these are the
// documented continuations, each on the side that carries less.

func TestAmpacityBeyondTheTableStaysOnTheLowSide(t *testing.T) {
	// In proportion to the area below AWG 18, with its root above AWG 6.
	of := func(areaMM2 float64) float64 {
		a, err := tables.Builtin().Ampacity(tables.AmpacityQuery{
			Wire: tables.Wire{Size: tables.WireSize{System: tables.AWG}, AreaMM2: areaMM2}, InsulationC: 105,
		})
		if err != nil {
			t.Fatal(err)
		}
		return a.AmpsA
	}
	thin, thick := tables.AWGAreaMM2(18), tables.AWGAreaMM2(6)
	near(t, "a quarter of AWG 18", of(thin/4), 20.0/4, 1e-9)
	near(t, "four times AWG 6", of(4*thick), 2*120, 1e-9)
}

func TestMetricResistanceBeyondTheTableGoesWithTheArea(t *testing.T) {
	thin, thick := wire(t, tables.WireSize{AreaMM2: 0.25}), wire(t, tables.WireSize{AreaMM2: 32})
	near(t, "0.25 mm2", thin.OhmPerM20C, 2*0.0390, 1e-12)
	near(t, "32 mm2", thick.OhmPerM20C, 0.00121/2, 1e-12)
}

func TestFusesBeyondTheSheetsStayOnTheLowSide(t *testing.T) {
	small, large := fuse(t, "small blade"), fuse(t, "large blade")
	got, _ := small.ResistanceOhm(5)
	near(t, "5 A", got, 2*7.70e-3, 1e-12)
	got, _ = large.ResistanceOhm(80)
	near(t, "80 A", got, 0.7e-3, 1e-12)
	// Melting I2t: power 2.5 below the smallest rating of the sheet, 2 above.
	got, _ = small.MeltingI2t(25.0 / 4)
	near(t, "6.25 A", got, 1000.0/32, 1e-9)
	got, _ = large.MeltingI2t(80)
	near(t, "80 A", got, 4*8500, 1e-6)
}
