package setup_test

import (
	"strings"
	"testing"
)

// What the label of the other of two packs says it is made of counts, also where nobody
// wrote it down once more; without such words it is of the kind of the first.
func TestTheOtherPackIsOfTheKindThatItsLabelNames(t *testing.T) {
	for _, c := range []struct {
		first, second, want string
		cells               int
	}{
		{"11.1 V 7 Ah li-ion", "12.8 V 7 Ah LiFePO4", "lifepo4", 4},
		{"12.8 V 7 Ah LiFePO4", "11.1 V 7 Ah li-ion", "li-ion", 3},
		{"12 V 7 Ah AGM", "12.8 V 7 Ah LiFePO4", "lifepo4", 4},
		{"12.8 V 7 Ah LiFePO4", "12 V 7 Ah AGM", "agm", 6},
		{"12.8 V 7 Ah LiFePO4", "12.8 V 9 Ah", "lifepo4", 4},
		{"12.8 V 7 Ah LiFePO4", "12 V 9 Ah lithium", "lifepo4", 4},
		{"12 V 7 Ah AGM", "12 V 7 Ah gel", "agm", 6},
	} {
		s := parts(t, "[pack]\nlabel = \""+c.first+"\"\njoined = \"parallel\"\n[pack.second]\nlabel = \""+c.second+"\"\n[load]\ncurrent = \"5 A\"\n").Pack.Second
		if s.Profile.Name != c.want || s.CellsInSeries != c.cells {
			t.Errorf("%q beside %q is %d cells of %s, want %d of %s", c.second, c.first, s.CellsInSeries, s.Profile.Name, c.cells, c.want)
		}
	}
}

func TestTheOtherPackIsNotCalledAnotherLithiumThanItsLabelSays(t *testing.T) {
	s, err := read("[pack]\nlabel = \"11.1 V 7 Ah li-ion\"\njoined = \"parallel\"\n[pack.second]\nlabel = \"12.8 V 7 Ah LiFePO4\"\nchemistry = \"li-ion\"\n[load]\ncurrent = \"5 A\"\n")
	if err == nil {
		_, err = s.Parts()
	}
	if want := `pack.second.chemistry: read "li-ion"; want "lifepo4"`; err == nil || !strings.Contains(err.Error(), want) {
		t.Errorf("got %v, want %s", err, want)
	}
}

// Whether electronics watch the cells of two joined packs is a guess where each by itself mostly
// has some, of whatever size; one that is told to have none decides for both.
func TestEachOfTwoPacksMayWatchItsCellsByItsOwnLabel(t *testing.T) {
	for _, c := range []struct {
		first, second string
		want          bool
	}{
		{"12.8 V 7 Ah LiFePO4", "", true},
		{"12.8 V 7 Ah LiFePO4", "capacity = \"9 Ah\"", true},
		{"12.8 V 7 Ah LiFePO4", "label = \"12.8 V 9 Ah LiFePO4\"", true},
		{"12.8 V 7 Ah LiFePO4", "label = \"6.4 V 7 Ah LiFePO4\"", true},
		{"12.8 V 7 Ah LiFePO4", "label = \"11.1 V 7 Ah li-ion with BMS\"", true},
		{"12.8 V 7 Ah LiFePO4", "label = \"11.1 V 7 Ah li-ion\"", false},
		{"12.8 V 7 Ah LiFePO4", "label = \"12.8 V 9 Ah LiFePO4 no BMS\"", false},
		{"12.8 V 7 Ah LiFePO4 no BMS", "label = \"12.8 V 9 Ah LiFePO4\"", false},
		{"12.8 V 7 Ah LiFePO4", "label = \"12 V 7 Ah AGM\"", false},
		{"12.8 V 7 Ah LiFePO4", "chemistry = \"agm\"", false},
		{"12 V 7 Ah AGM", "label = \"12.8 V 7 Ah LiFePO4\"", false},
	} {
		text := "[pack]\nlabel = \"" + c.first + "\"\njoined = \"series\"\n"
		if c.second != "" {
			text += "[pack.second]\n" + c.second + "\n"
		}
		if got := parts(t, text+"[load]\ncurrent = \"5 A\"\n").Pack.MayWatch; got != c.want {
			t.Errorf("%q and %s: %v, want %v", c.first, c.second, got, c.want)
		}
	}
}
