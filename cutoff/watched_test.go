package cutoff

import (
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
