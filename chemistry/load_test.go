package chemistry_test

import (
	"errors"
	"slices"
	"strings"
	"testing"

	"example.org/packcheck/chemistry"
)

func TestBuiltinHoldsTheKnownChemistries(t *testing.T) {
	want := []string{"agm", "agm-traction", "gel", "li-ion", "lifepo4", "nimh"}
	if got := chemistry.Builtin().Names(); !slices.Equal(got, want) {
		t.Errorf("names %v, want %v", got, want)
	}
}

func TestEverySourceIsUsedAndEveryProfileSaysWhereItIsFrom(t *testing.T) {
	set := chemistry.Builtin()
	used := map[string]bool{}
	cite := func(name, ids string) {
		for id := range strings.SplitSeq(ids, ",") {
			id = strings.TrimSpace(id)
			if _, ok := set.Source(id); !ok {
				t.Errorf("%s: source %q does not exist", name, id)
			}
			used[id] = true
		}
	}
	var profiles []chemistry.Profile
	for _, name := range set.Names() {
		p, _ := set.Profile(name)
		profiles = append(profiles, p)
	}
	for _, name := range set.MemberNames() {
		m, _ := set.Member(name)
		profiles = append(profiles, m.Profile)
	}
	for _, p := range profiles {
		for _, ids := range []string{
			p.LadderSource, p.End.Source, p.Rest.Source, p.Resistance.Source, p.Fast.Source, p.Slow.Source, p.Wells.Source,
			p.Capacity.Source, p.Keeping.Source, p.Heat.Source, p.Mass.Source, p.Spread.Source, p.Charge.Source, p.Discharge.Source,
		} {
			cite(p.Name, ids)
		}
		if p.Acceptance.Source != "" { // the one group that may be missing
			cite(p.Name, p.Acceptance.Source)
		}
	}
	for _, name := range set.Families() {
		cite(name, set.FamilySource(name))
	}
	for _, s := range set.Sources() {
		if !used[s.ID] {
			t.Errorf("source %q is not used", s.ID)
		}
	}
}

// mine is a user's chemistry that differs from li-ion in one group.
const mine = `
[source.my-bench]
text = "my own bench, 14 September"
known = "measured"

[chemistry.mine]
based_on = "li-ion"
title = "the pack of the harvest fair"

[chemistry.mine.wells]
c = 0.9
k_per_s = 1e-4
source = "my-bench"
`

func TestAUsersChemistryIsReadByTheSameLoader(t *testing.T) {
	set, err := chemistry.Builtin().Extend(strings.NewReader(mine), "mine.toml")
	if err != nil {
		t.Fatal(err)
	}
	p, ok := set.Profile("mine")
	base, _ := set.Profile("li-ion")
	if !ok || p.Name != "mine" || p.Wells.C != 0.9 || p.NominalV != base.NominalV || p.Title != "the pack of the harvest fair" {
		t.Errorf("profile %+v", p)
	}
	if _, ok := chemistry.Builtin().Profile("mine"); ok {
		t.Error("the built-in set has changed")
	}
}

func TestFaultsSayFileLineKeyAndWhatIsRight(t *testing.T) {
	for _, c := range []struct {
		name, from, to string
		says           []string
	}{
		{"a group without a source", "c = 0.9\nk_per_s = 1e-4\nsource = \"my-bench\"", "c = 0.9\nk_per_s = 1e-4", []string{
			"mine.toml:10: chemistry.mine.wells.source: read nothing; want the ID of a [source.ID] table: values without a source do not load",
		}},
		{"an unknown source", `source = "my-bench"`, `source = "my-bnch"`, []string{`mine.toml:13: chemistry.mine.wells.source: read "my-bnch"; want`}},
		{"an unknown key", "c = 0.9", "c = 0.9\nk_pers = 1", []string{`mine.toml:12: chemistry.mine.wells.k_pers: read "k_pers"; want k_per_s`}},
		{"an unknown group", "[chemistry.mine.wells]", "[chemistry.mine.weels]", []string{`mine.toml:10: chemistry.mine.weels: read "weels"; want wells`}},
		{"a number out of range", "c = 0.9", "c = 1.9", []string{`mine.toml:11: chemistry.mine.wells.c: read "1.9"; want a number from 0.01 to 1`}},
		{"not a number", "c = 0.9", "c = nan", []string{`mine.toml:11: chemistry.mine.wells.c: read "NaN"; want a number`}},
		{"a text for a number", "c = 0.9", `c = "much"`, []string{`mine.toml:11: chemistry.mine.wells.c: read "much"; want a number`}},
		{"the wrong case", "c = 0.9", "C = 0.9", []string{`chemistry.mine.wells.C: read "C"; want c`, "chemistry.mine.wells.c: read nothing; want a number"}},
		{"an unknown base", `based_on = "li-ion"`, `based_on = "lion"`, []string{`mine.toml:7: chemistry.mine.based_on: read "lion"; want one of agm,`}},
		{"two faults at once", "c = 0.9\nk_per_s = 1e-4", "c = 9\nk_per_s = -1", []string{"mine.toml:11:", "mine.toml:12:"}},
		{"no TOML", "[chemistry.mine]", "[chemistry.mine", []string{`mine.toml:6: read "what is no TOML"; want a TOML file: expected`}},
	} {
		t.Run(c.name, func(t *testing.T) {
			text := strings.Replace(mine, c.from, c.to, 1)
			if text == mine {
				t.Fatal("nothing was replaced")
			}
			_, err := chemistry.Builtin().Extend(strings.NewReader(text), "mine.toml")
			if _, ok := errors.AsType[chemistry.Faults](err); !ok {
				t.Fatalf("error %v, want faults", err)
			}
			for _, want := range c.says {
				if !strings.Contains(err.Error(), want) {
					t.Errorf("got\n%v\nwant a line with\n%s", err, want)
				}
			}
		})
	}
}

func TestABranchThatBendsIsReadAsItStands(t *testing.T) {
	const bent = mine + `
[chemistry.mine.fast]
ohm_ah = 0.02
tau_s = 1
knee_v = 0.05
temp_c = [0, 25, 50]
factor = [8, 1, 0.2]
source = "my-bench"
`
	set, err := chemistry.Builtin().Extend(strings.NewReader(bent), "mine.toml")
	if err != nil {
		t.Fatal(err)
	}
	p, _ := set.Profile("mine")
	if p.Fast.KneeV != 0.05 || p.Fast.TempFactor.At(0) != 8 || !p.Slow.TempFactor.Empty() {
		t.Errorf("fast branch %+v, slow branch %+v", p.Fast, p.Slow)
	}
	for from, want := range map[string]string{
		"knee_v = 0.05":    `mine.toml:18: chemistry.mine.fast.knee_v: read "-1"; want a number from 0.001 to 1`,
		"[8, 1, 0.2]":      `mine.toml:20: chemistry.mine.fast.factor: read "3 at reference_c"; want 1 at reference_c`,
		"temp_c = [0, 25,": `chemistry.mine.fast.temp_c: read "2 values against 3"; want rising values, as many as factor has`,
	} {
		to := map[string]string{"knee_v = 0.05": "knee_v = -1", "[8, 1, 0.2]": "[8, 3, 0.2]", "temp_c = [0, 25,": "temp_c = [0,"}[from]
		_, err := chemistry.Builtin().Extend(strings.NewReader(strings.Replace(bent, from, to, 1)), "mine.toml")
		if err == nil || !strings.Contains(err.Error(), want) {
			t.Errorf("got\n%v\nwant a line with\n%s", err, want)
		}
	}
}

// How a cell takes a charge is the one group that a chemistry may be without:
// only lead-acid needs it.
func TestOnlyLeadAcidSaysHowItTakesACharge(t *testing.T) {
	set := chemistry.Builtin()
	for _, name := range set.Names() {
		p, _ := set.Profile(name)
		if lead := p.Family == chemistry.LeadAcid; lead != (p.Acceptance.OhmAh > 0) || lead != (p.Acceptance.GasC > 0) {
			t.Errorf("%s: %+v", name, p.Acceptance)
		}
	}
	text := mine + "\n[chemistry.mine.acceptance]\nohm_ah = 0.1\npower = 1\noffset = 0\nsource = \"my-bench\"\n"
	_, err := set.Extend(strings.NewReader(text), "mine.toml")
	for _, want := range []string{`chemistry.mine.acceptance.offset: read "0"; want`, "chemistry.mine.acceptance.gas_c: read nothing"} {
		if err == nil || !strings.Contains(err.Error(), want) {
			t.Errorf("got\n%v\nwant a line with\n%s", err, want)
		}
	}
}

func TestALadderOutOfOrderDoesNotLoad(t *testing.T) {
	text := mine + `
[chemistry.mine.ladder]
nominal_v = 3.6
full_v = 4.2
empty_v = 2.4
harm_v = 2.5
source = "my-bench"
`
	if _, err := chemistry.Builtin().Extend(strings.NewReader(text), "mine.toml"); err == nil || !strings.Contains(err.Error(), "chemistry.mine.ladder") {
		t.Errorf("error %v", err)
	}
}

func FuzzExtend(f *testing.F) {
	f.Add(mine)
	f.Add("[chemistry.x]\ntitle=3\n[chemistry.x.rest]\ncharge=[0,nan]\n")
	f.Add("chemistry = 3\nsource = []\n")
	f.Fuzz(func(t *testing.T, text string) {
		set, err := chemistry.Builtin().Extend(strings.NewReader(text), "fuzz.toml")
		if (set == nil) == (err == nil) {
			t.Fatalf("set %v, error %v", set, err)
		}
	})
}
