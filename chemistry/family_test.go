package chemistry_test

import (
	"math"
	"strings"
	"testing"

	"example.org/packcheck/chemistry"
)

func TestSharesOfEveryFamilyAddUpToOne(t *testing.T) {
	set := chemistry.Builtin()
	if len(set.Families()) < 6 {
		t.Errorf("families %v", set.Families())
	}
	for _, name := range append(set.Families(), set.Names()...) {
		members, sum := set.Members(name), 0.0
		for _, m := range members {
			sum += m.Share
			if m.Profile.Name == "" || m.Share <= 0 {
				t.Errorf("%s: member %q has share %g", name, m.Profile.Name, m.Share)
			}
		}
		if math.Abs(sum-1) > 1e-12 {
			t.Errorf("%s: %d members, shares add up to %g", name, len(members), sum)
		}
	}
	if set.Members("no-such") != nil {
		t.Error("an unknown chemistry has members")
	}
}

func TestMembersAreNoChemistriesThatABatteryIsSaidToHave(t *testing.T) {
	set := chemistry.Builtin()
	for _, name := range set.MemberNames() {
		if _, ok := set.Profile(name); ok {
			t.Errorf("%s is a profile as well", name)
		}
	}
}

func TestAUsersChemistryReplacesTheWholeFamily(t *testing.T) {
	own := strings.ReplaceAll(mine, "chemistry.mine", "chemistry.li-ion")
	set, err := chemistry.Builtin().Extend(strings.NewReader(own), "own.toml")
	if err != nil {
		t.Fatal(err)
	}
	got := set.Members("li-ion")
	if len(got) != 1 || got[0].Profile.Wells.C != 0.9 || got[0].Share != 1 {
		t.Errorf("%d members, want the user's alone", len(got))
	}
	if n := len(chemistry.Builtin().Members("li-ion")); n < 8 {
		t.Errorf("the built-in set has %d members left", n)
	}
}

func TestPickFollowsTheShares(t *testing.T) {
	members := chemistry.Builtin().Members("li-ion")
	const n = 10000
	counts := make([]int, len(members))
	for i := range n {
		counts[chemistry.Pick(members, (float64(i)+0.5)/n)]++
	}
	for i, m := range members {
		if math.Abs(float64(counts[i])/n-m.Share) > 1e-3 {
			t.Errorf("%s picked %d times of %d, share %g", m.Profile.Name, counts[i], n, m.Share)
		}
	}
	if chemistry.Pick(members, 1) != len(members)-1 || chemistry.Pick(members, 0) != 0 {
		t.Error("the ends are not the first and the last member")
	}
}

// share is how much of the members is of a kind.
func share(members []chemistry.Member, kind chemistry.Kind) float64 {
	sum := 0.0
	for _, m := range members {
		if m.Kind == kind {
			sum += m.Share
		}
	}
	return sum
}

func TestWhatIsKnownShiftsTheShares(t *testing.T) {
	pack := chemistry.Builtin().Members("li-ion")
	for _, tt := range []struct {
		name        string
		hint        chemistry.Hint
		kind        chemistry.Kind
		least, most float64
	}{
		{"nothing known", chemistry.Hint{}, chemistry.Power, 0.75, 0.85},
		{"told to be power cells", chemistry.Hint{Kind: chemistry.Power}, chemistry.Power, 0.99, 1},
		{"told to be energy cells", chemistry.Hint{Kind: chemistry.Energy}, chemistry.Energy, 0.80, 1},
		{"3.5 Ah in one 18650", chemistry.Hint{CellAh: 3.5, WhPerKg: 255}, chemistry.Energy, 0.2, 1},
		{"1.5 Ah cells", chemistry.Hint{CellAh: 1.5}, chemistry.Energy, 0, 0.1},
		{"a high resistance measured", chemistry.Hint{OhmAh: 0.17}, chemistry.Energy, 0.2, 1},
		{"a low resistance measured", chemistry.Hint{OhmAh: 0.045}, chemistry.Energy, 0, 0.03},
	} {
		got := chemistry.Shifted(pack, tt.hint)
		sum := 0.0
		for _, m := range got {
			sum += m.Share
		}
		if s := share(got, tt.kind); s < tt.least || s > tt.most || math.Abs(sum-1) > 1e-12 {
			t.Errorf("%s: %s %.3f of %.3f, want %g to %g", tt.name, tt.kind, s, sum, tt.least, tt.most)
		}
	}
	if share(pack, chemistry.Power) < 0.75 {
		t.Error("the members given were written to")
	}
}

// Of two power cells of 3.0 Ah one has three times the resistance of the other: size
// shifts the kinds, and within a kind nothing.
func TestSizeTellsTheKindAlone(t *testing.T) {
	pack := chemistry.Builtin().Members("li-ion")
	for _, h := range []chemistry.Hint{{CellAh: 3}, {CellAh: 3.5, WhPerKg: 255}, {WhPerKg: 160}} {
		for i, m := range chemistry.Shifted(pack, h) {
			kept := pack[i].Share / share(pack, m.Kind)
			if now := m.Share / share(chemistry.Shifted(pack, h), m.Kind); math.Abs(now/kept-1) > 1e-9 {
				t.Errorf("%+v: %s is %.3f of its kind, was %.3f", h, m.Profile.Name, now, kept)
			}
		}
	}
}

// A hint nobody agrees with must not lose all members.
func TestAHintBeyondEverythingKeepsTheMembers(t *testing.T) {
	got := chemistry.Shifted(chemistry.Builtin().Members("li-ion"), chemistry.Hint{OhmAh: 1e30, CellAh: 1e-30})
	sum := 0.0
	for _, m := range got {
		sum += m.Share
	}
	if math.Abs(sum-1) > 1e-12 {
		t.Errorf("shares add up to %g", sum)
	}
}

func TestFamiliesThatDoNotAddUpAreFaults(t *testing.T) {
	for text, want := range map[string]string{
		`title = "x"
members = ["agm"]
shares = [0.5]
source = "agm-7ah5-sheet"`: "add up to 1",
		`title = "x"
members = ["agm", "nothing"]
shares = [0.5, 0.5]
source = "agm-7ah5-sheet"`: "nothing",
		`title = "x"
members = ["agm"]
shares = [1]`: "source",
		`title = "x"
members = [1]
shares = [1]
source = "agm-7ah5-sheet"`: "a text",
	} {
		_, err := chemistry.Builtin().Extend(strings.NewReader("[family.mine]\n"+text), "own.toml")
		if err == nil || !strings.Contains(err.Error(), want) {
			t.Errorf("%v, want a word on %q", err, want)
		}
	}
	if _, err := chemistry.Builtin().Extend(strings.NewReader("[member.x]\nbased_on = \"agm\"\nkind = \"odd\"\n"), "own.toml"); err == nil || !strings.Contains(err.Error(), "odd") {
		t.Errorf("%v, want a word on the kind", err)
	}
}

// A meter on half-charged cells of 1 Ah shows less than 0.05 Ohm of the best power cells
// and more than 0.09 of most energy cells (the members' own).
func TestAToldResistanceSpeaksForTheKindThatHasIt(t *testing.T) {
	members := chemistry.Builtin().Members("li-ion")
	power := func(ohmicAh float64) float64 {
		share := 0.0
		for _, m := range chemistry.Shifted(members, chemistry.Hint{OhmicAh: ohmicAh}) {
			if m.Kind == chemistry.Power {
				share += m.Share
			}
		}
		return share
	}
	if little, much, untold := power(0.04), power(0.16), power(0); little < untold+0.05 || much > untold-0.1 {
		t.Errorf("power cells: %.2f untold, %.2f with little resistance, %.2f with much", untold, little, much)
	}
}
