package chemistry_test

import (
	"math"
	"strings"
	"testing"

	"example.org/packcheck/chemistry"
)

func TestCellsMayBeChargedWithWhatTheirSheetsPrint(t *testing.T) {
	set := chemistry.Builtin()
	for _, c := range []struct {
		member   string
		amps, ah float64
	}{
		{"power-18650-2ah8", 6, 2.8},    // specification INR18650-P28A (copy)
		{"power-18650-2ah5", 4, 2.5},    // specification INR18650-25R, rapid charge (copy)
		{"power-21700-5ah", 6, 5},       // specification of 21700 cells of 4 Ah, at most 6 A (copy)
		{"middle-18650-2ah6", 2.6, 2.6}, // ICR18650-26C prints hours for 1C (copy)
	} {
		m, ok := set.Member(c.member)
		if got := m.Profile.Charge.MaxC; !ok || math.Abs(got-c.amps/c.ah) > 0.01 {
			t.Errorf("%s: %.3gC, its sheet says %.3gC", c.member, got, c.amps/c.ah)
		}
		if !strings.Contains(m.Profile.Charge.Source, "inr-sheets") {
			t.Errorf("%s: source %q", c.member, m.Profile.Charge.Source)
		}
	}
}

func TestPowerCellsTakeFasterChargesThanOthers(t *testing.T) {
	for _, m := range chemistry.Builtin().Members("li-ion") {
		c := m.Profile.Charge
		switch {
		case c.KindMostC() < c.MaxC:
			t.Errorf("%s: less of its kind than of itself", m.Profile.Name)
		case m.Kind == chemistry.Power && math.Abs(c.KindMostC()-6/2.8) > 0.01: // INR18650-P28A
			t.Errorf("%s: power cells take %.3gC", m.Profile.Name, c.KindMostC())
		case m.Kind != chemistry.Power && c.KindMostC() != 1:
			t.Errorf("%s: %s cells take %.3gC", m.Profile.Name, m.Kind, c.KindMostC())
		}
	}
}

// INR18650-20R and -25R: 4 A (the amps of the first from memory); 21700 cells of 4 Ah:
// at most 6 A (copy). No cell prints more than the 2.14C of INR18650-P28A.
func TestPowerCellsOfAnySizeTakeWhatSheetsOfThatSizePrint(t *testing.T) {
	for _, m := range chemistry.Builtin().Members("li-ion") {
		for ah, amps := range map[float64][2]float64{1.3: {0, 2.14 * 1.3}, 2: {4, 2.14 * 2}, 2.5: {4, 2.14 * 2.5}, 4: {4, 6}, 5: {4, 6}} {
			got := m.ChargedAs(ah).Profile.Charge.MaxC * ah
			if m.Kind != chemistry.Power {
				amps = [2]float64{m.Profile.Charge.MaxC * ah, m.Profile.Charge.MaxC * ah}
			}
			if got < amps[0]-1e-9 || got > amps[1]+0.01 {
				t.Errorf("%s as a cell of %g Ah takes %.2f A, want %.2f to %.2f", m.Profile.Name, ah, got, amps[0], amps[1])
			}
		}
	}
}

func TestItsOwnFastChargerSpeaksForPowerCellsUnlessAnotherKindIsTold(t *testing.T) {
	members := chemistry.Builtin().Members("li-ion")
	power := func(h chemistry.Hint) float64 {
		share := 0.0
		for _, m := range chemistry.Shifted(members, h) {
			if m.Kind == chemistry.Power {
				share += m.Share
			}
		}
		return share
	}
	untold, slow, fast := power(chemistry.Hint{}), power(chemistry.Hint{ChargeC: 0.9}), power(chemistry.Hint{ChargeC: 1.8})
	if slow != untold {
		t.Errorf("a slow charger moves power cells from %.3f to %.3f", untold, slow)
	}
	// Bayes: 0.8 against 0.2 of which one in fifty stays.
	if want := 0.8 / (0.8 + 0.2*0.02); math.Abs(fast-want) > 1e-3 {
		t.Errorf("a fast one leaves %.4f power cells, want %.4f", fast, want)
	}
	told := chemistry.Hint{Kind: chemistry.Energy}
	fastTold := chemistry.Hint{Kind: chemistry.Energy, ChargeC: 1.8}
	if power(fastTold) != power(told) {
		t.Error("a told kind gives way to a charger")
	}
}

func TestACurrentForACellThatIsNoneIsAFault(t *testing.T) {
	_, err := chemistry.Builtin().Extend(strings.NewReader("[charging.power-18650-9ah]\nmax_c = 2\nsource = \"inr-sheets\"\n"), "own.toml")
	if err == nil || !strings.Contains(err.Error(), "own.toml:1: charging.power-18650-9ah") {
		t.Errorf("error %v", err)
	}
}
