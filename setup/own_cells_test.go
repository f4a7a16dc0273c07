package setup_test

import (
	"fmt"
	"math"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"example.org/packcheck/internal/quantity"
	"example.org/packcheck/setup"
)

// A chemistry of one's own says which cells they are. What their label is worth, how old
// they are and what the weakest lacks stays as open as of any pack, until it is told.
func TestACellOfOnesOwnTellsNothingOfLabelAndAge(t *testing.T) {
	t.Parallel()
	const same = "[chemistry.same]\nbased_on = %q\ntitle = \"the same\"\n"
	for _, c := range []struct{ base, label string }{
		{"li-ion", "20 V max 5 Ah"}, {"agm", "12 V 7 Ah"}, {"lifepo4", "12.8 V 10 Ah"}, {"nimh", "12 V 3 Ah"},
	} {
		dir := t.TempDir()
		if err := os.WriteFile(filepath.Join(dir, "same.toml"), fmt.Appendf(nil, same, c.base), 0o600); err != nil {
			t.Fatal(err)
		}
		parts := func(lines string) *setup.PackPart {
			file := filepath.Join(dir, "x.toml")
			if err := os.WriteFile(file, []byte("[load]\ncurrent = \"5 A\"\n[pack]\ncells_in_series = 6\ncapacity = \"5 Ah\"\n"+lines), 0o600); err != nil {
				t.Fatal(err)
			}
			s, err := setup.Load(file)
			if err != nil {
				t.Fatal(err)
			}
			p, err := s.Parts()
			if err != nil {
				t.Fatal(err)
			}
			return &p.Pack
		}
		const mine = "chemistry = \"same\"\nchemistry_file = \"same.toml\"\n"
		built, own := parts(fmt.Sprintf("chemistry = %q\n", c.base)), parts(mine)
		for _, f := range []struct {
			name      string
			built, is quantity.Range
		}{
			{"what it holds of its label", built.Honesty.Range, own.Honesty.Range},
			{"health", built.Health.Range, own.Health.Range},
			{"the weakest cell", built.Weakest.Range, own.Weakest.Range},
			{"growth of the resistance", built.GrowthAt80.Range, own.GrowthAt80.Range},
			{"self-discharge", built.SelfDischarge.Range, own.SelfDischarge.Range},
			{"cooling", built.CoolingWM2K.Range, own.CoolingWM2K.Range},
		} {
			if f.built != f.is || f.is.High == 0 {
				t.Errorf("%s: %s is %v of the built-in cells and %v of one's own", c.base, f.name, f.built, f.is)
			}
		}
		for _, lines := range []string{mine, fmt.Sprintf("chemistry = %q\n", c.base)} {
			told := parts(lines + "health = \"60 to 70 %\"\ntested = true\n")
			if told.Honesty.Known || math.Abs(told.Health.Low-0.6) > 1e-9 || math.Abs(told.Health.High-0.7) > 1e-9 {
				t.Errorf("%s: tested, it holds %v of its label with a health of %v", lines, told.Honesty.Range, told.Health.Range)
			}
		}
	}
	s, err := setup.Read(strings.NewReader("[load]\ncurrent = \"5 A\"\n[pack]\nlabel = \"20 V max 5 Ah\"\ntested = true\n"), "x.toml")
	if err == nil {
		_, err = s.Parts()
	}
	if err == nil || !strings.Contains(err.Error(), "pack.health beside it") {
		t.Errorf("tested, but not what it gave: %v", err)
	}
}
