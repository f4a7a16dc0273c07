package setup_test

import (
	"testing"

	"example.org/packcheck/chemistry"
)

// power is how many of the cells that a tool pack of 5 Ah may be made of are power cells.
func power(t *testing.T, also string) float64 {
	t.Helper()
	share := 0.0
	for _, m := range parts(t, "[pack]\nchemistry = \"li-ion\"\nlabel = \"20 V max 5 Ah\"\nstrings = 2\n"+also+"[load]\ncurrent = \"5 A\"\n").Pack.Members {
		if m.Kind == chemistry.Power {
			share += m.Share
		}
	}
	return share
}

// With 40 mOhm of five cells in series and two strings it is 0.016 Ohm a cell, as the
// best power cells have, 0.25 Ohm are as energy cells have, and age explains a part.
func TestAToldResistanceShiftsTheCellsOfAPack(t *testing.T) {
	ohms := func(also string) float64 {
		mean := 0.0
		for _, m := range parts(t, "[pack]\nchemistry = \"li-ion\"\nlabel = \"20 V max 5 Ah\"\nstrings = 2\n"+also+"[load]\ncurrent = \"5 A\"\n").Pack.Members {
			mean += m.Share * m.OhmAhAtHalf()
		}
		return mean
	}
	untold, little, much := ohms(""), ohms("resistance = \"40 mOhm\"\n"), ohms("resistance = \"250 mOhm\"\n")
	if little > 0.85*untold || much < 1.15*untold {
		t.Errorf("cells of 1 Ah have %.3f Ohm untold, %.3f of 40 mOhm, %.3f of 250 mOhm", untold, little, much)
	}
	if old := ohms("resistance = \"250 mOhm\"\nhealth = \"70 %\"\n"); old >= much {
		t.Errorf("cells of 1 Ah have %.3f Ohm of 250 mOhm, %.3f in an old pack", much, old)
	}
	if power(t, "resistance = \"250 mOhm\"\n") >= power(t, "") {
		t.Error("much resistance speaks for power cells")
	}
}

// A charger of 2C that came with the pack was chosen for power cells, one of 0.6C for
// any; where the pack's maker is not told it also speaks against a look-alike of half
// the charge.
func TestThePacksOwnFastChargerTellsOfWhatIsInIt(t *testing.T) {
	own := func(amps string) string {
		return "[charger]\nlabel = \"21 V " + amps + " DC\"\ncame_with_pack = true\n"
	}
	untold, slow, fast := power(t, ""), power(t, own("3 A")), power(t, own("9 A"))
	if slow != untold || fast < 0.98 {
		t.Errorf("power cells: %.3f untold, %.3f of a slow charger, %.3f of a fast one", untold, slow, fast)
	}
	if printed := power(t, "max_charge_current = \"9 A\"\n"); printed < 0.98 {
		t.Errorf("power cells: %.3f of a sheet that allows 9 A", printed)
	}
	if misread := power(t, "max_charge_current = \"90 A\"\n"); misread != untold {
		t.Errorf("power cells: %.3f of a sheet that no cell has", misread)
	}
	honesty := func(also string) float64 {
		return parts(t, "[pack]\nchemistry = \"li-ion\"\nlabel = \"20 V max 5 Ah\"\n"+also+"[load]\ncurrent = \"5 A\"\n").Pack.Honesty.Low
	}
	if slow, fast := honesty(own("3 A")), honesty(own("9 A")); slow > 0.5 || fast < 0.75 {
		t.Errorf("such packs hold %.2f of their label at least with a slow charger of their own, %.2f with a fast one", slow, fast)
	}
}
