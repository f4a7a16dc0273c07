package ask_test

import (
	"strings"
	"testing"

	"example.org/packcheck/answer"
	"example.org/packcheck/ask"
	"example.org/packcheck/tables"
)

// A range that was typed is asked at its middle and its ends: the figure spans
// all of them, and the worse end is what it is judged by.
func TestARangeIsJudgedByItsWorseEnd(t *testing.T) {
	at := func(amps float64) ask.Answer {
		a, err := ask.Drop{Wire: tables.WireSize{System: tables.AWG, Gauge: 16}, CurrentA: amps, OneWayM: 3, SystemV: 12}.Answer()
		if err != nil {
			t.Fatal(err)
		}
		return a
	}
	low, mid, high := at(5), at(15), at(25)
	if high.Level == nil || *high.Level < answer.FixFirst || mid.Level != nil && *mid.Level >= *high.Level {
		t.Fatalf("levels %v and %v: this range has no worse end", mid.Level, high.Level)
	}
	a := ask.Over(mid, low, high)
	if a.Value != mid.Value || a.Low != low.Low || a.High != high.High {
		t.Errorf("%g (%g to %g), want %g (%g to %g)", a.Value, a.Low, a.High, mid.Value, low.Low, high.High)
	}
	if a.Level == nil || *a.Level != *high.Level || !strings.Contains(strings.Join(a.Words, " "), "worse end") {
		t.Errorf("level %v, words %q", a.Level, a.Words)
	}
	for i := range a.Beside {
		if f := a.Beside[i]; f.Low > low.Beside[i].Low || f.High < high.Beside[i].High {
			t.Errorf("%s %g to %g does not hold the ends", f.What, f.Low, f.High)
		}
	}
	if one := ask.Over(mid); one.Low != mid.Low || len(one.Words) != len(mid.Words) {
		t.Error("without ends nothing changes")
	}
}
