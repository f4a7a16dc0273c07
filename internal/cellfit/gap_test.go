package cellfit_test

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"example.org/packcheck/internal/cellfit"
)

// What flowed while a logger wrote nothing is not known, and is told.
func TestAGapInALogIsTold(t *testing.T) {
	log := func(head string, row func(s int) string, skip func(s int) bool) string {
		var b strings.Builder
		b.WriteString(head)
		for s := 0; s <= 3600; s += 10 {
			if !skip(s) {
				b.WriteString(row(s))
			}
		}
		return b.String()
	}
	volts := func(s int) float64 { return 20 - float64(s)/1000 }
	steady := func(s int) string { return fmt.Sprintf("%d,%.3f,3\n", s, volts(s)) }
	rested := func(s int) string {
		amps := 3
		if s > 590 && s < 1410 {
			amps = 0
		}
		return fmt.Sprintf("%d,%.3f,%d\n", s, volts(s), amps)
	}
	counted := func(s int) string { return fmt.Sprintf("%d,%.3f,3,%.4f\n", s, volts(s), 3*float64(s)/3600) }
	gap := func(s int) bool { return s > 600 && s < 1400 }
	for _, c := range []struct {
		name, text string
		told       bool
	}{
		{"under load", log("s,V,A\n", steady, gap), true},
		{"of two rows", log("s,V,A\n", steady, func(s int) bool { return s > 600 && s < 630 }), false},
		{"at rest", log("s,V,A\n", rested, gap), false},
		{"beside a counter of charge", log("s,V,A,Ah\n", counted, gap), false},
		{"rows far apart all the time", log("s,V,A\n", steady, func(s int) bool { return s%600 != 0 }), false},
	} {
		l, err := cellfit.Read(strings.NewReader(c.text), cellfit.Options{Name: "shed/log.csv"})
		if err != nil {
			t.Fatalf("%s: %v", c.name, err)
		}
		told := strings.Contains(strings.Join(l.Notes, " "), "In log.csv no row stands between 10.0 and 23.3 min")
		if told != c.told {
			t.Errorf("%s: %q", c.name, l.Notes)
		}
	}
}

// What was charged is no less that was taken out.
func TestWhatWasMovedIsCountedEachWay(t *testing.T) {
	l := read(t, "s,V,A\n0,16,-2\n1800,20,-2\n1801,20,4\n5400,15,4\n")
	outAh, inAh := l.Moved()
	if math.Abs(outAh-4) > 0.01 || math.Abs(inAh-1) > 0.01 {
		t.Errorf("%.3f Ah out and %.3f Ah in, want 4 and 1", outAh, inAh)
	}
}
