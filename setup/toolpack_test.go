package setup_test

import (
	"os"
	"path/filepath"
	"testing"

	"example.org/packcheck/setup"
)

// A user's own chemistry must not lose what is said of tool packs.
func TestAToolPackIsOneWhateverItsChemistryIsCalled(t *testing.T) {
	dir := t.TempDir()
	write := func(name, text string) string {
		t.Helper()
		path := filepath.Join(dir, name)
		if err := os.WriteFile(path, []byte(text), 0o600); err != nil {
			t.Fatal(err)
		}
		return path
	}
	write("own.toml", "[chemistry.shed]\nbased_on = \"li-ion\"\ntitle = \"the shed's cells\"\n")
	for _, c := range []struct {
		pack string
		want bool
	}{
		{"chemistry = \"li-ion\"\nlabel = \"18 V 5 Ah\"", true},
		{"chemistry = \"shed\"\nchemistry_file = \"own.toml\"\ncells_in_series = 5\ncapacity = \"5 Ah\"", true},
		{"label = \"11.1 V 5 Ah li-ion with BMS\"", false}, // sold by itself, with a charger of its own
		{"label = \"11.1 V 5 Ah li-ion\"", true},           // nothing says that it watches itself
		{"label = \"10.8 V 5 Ah li-ion with BMS\"", true},
		{"label = \"12 V max 5 Ah li-ion with BMS\"", true},
		{"label = \"18 V 5 Ah li-ion with BMS\"", true},
		{"chemistry = \"lifepo4\"\nlabel = \"12.8 V 7 Ah\"", false},
		{"chemistry = \"agm\"\nlabel = \"12 V 7 Ah\"", false},
	} {
		s, err := setup.Load(write("s.toml", "[pack]\n"+c.pack+"\n[load]\ncurrent = \"5 A\"\n"))
		if err != nil {
			t.Fatal(err)
		}
		p, err := s.Parts()
		if err != nil {
			t.Fatal(err)
		}
		if p.Pack.ToolPack != c.want {
			t.Errorf("%s: tool pack %v, want %v", c.pack, p.Pack.ToolPack, c.want)
		}
	}
}
