package cutoff

import (
	"strings"
	"testing"

	"example.org/packcheck/answer"
	"example.org/packcheck/battery"
	"example.org/packcheck/chemistry"
)

// A missing cutoff is graver where nobody ends the load at a voltage.
func TestALoadThatIsEndedAtAVoltageTakesTheWorstOffAMissingCutoff(t *testing.T) {
	p, _ := chemistry.Builtin().Profile("li-ion")
	m, err := battery.New(battery.Spec{Profile: p, CellsInSeries: 5, CapacityAh: 5})
	if err != nil {
		t.Fatal(err)
	}
	level := func(watched bool) answer.Level {
		fs, err := Judge(Case{Pack: m, Start: m.StateAt(1, 20), LoadA: 5, AmbientC: 20, Watched: watched})
		if err != nil {
			t.Fatal(err)
		}
		for _, f := range fs {
			if f.Code == CodeNone {
				return f.Level
			}
		}
		t.Fatal("a missing cutoff is not told")
		return answer.Fine
	}
	if got := level(true); got != answer.Watch {
		t.Errorf("watched: %v", got)
	}
	if got := level(false); got <= answer.Watch {
		t.Errorf("unwatched: %v", got)
	}
}

// A cutoff saves a block, no child: who drives what is sold with lead and without one is
// told how to do without. Lithium is sold so by nobody.
func TestWhatIsSoldWithLeadAndWithoutACutoffNeedsNone(t *testing.T) {
	for _, tt := range []struct {
		chemistry string
		asSold    bool
		level     answer.Level
		habit     bool
	}{
		{"agm", true, answer.Watch, true},
		{"agm", false, answer.FixFirst, false},
		{"li-ion", true, answer.Danger, false},
	} {
		p, _ := chemistry.Builtin().Profile(tt.chemistry)
		m, err := battery.New(battery.Spec{Profile: p, CellsInSeries: 6, CapacityAh: 7})
		if err != nil {
			t.Fatal(err)
		}
		fs, err := Judge(Case{Pack: m, Start: m.StateAt(1, 20), LoadA: 5, AmbientC: 20, AsSold: tt.asSold})
		if err != nil || len(fs) != 1 {
			t.Fatalf("%v, %v", fs, err)
		}
		if f := fs[0]; f.Level != tt.level || strings.HasPrefix(f.Advice, "Stop as soon as it grows slow, and charge it after every ride") != tt.habit || strings.HasPrefix(f.Advice, "Fit ") == tt.habit {
			t.Errorf("%s, as sold %v: %v, %q", tt.chemistry, tt.asSold, f.Level, f.Advice)
		}
	}
}
