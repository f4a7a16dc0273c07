package ask_test

import (
	"strings"
	"testing"

	"example.org/packcheck/ask"
)

// A battery that mostly watches its cells itself needs no cutoff that sees all of it at once:
// its maker is asked first.
func TestWhoseCellsAreMostlyWatchedIsAskedFirst(t *testing.T) {
	const asked = "ask its maker before one is added"
	for label, want := range map[string]bool{"12.8 V 10 Ah LiFePO4": true, "14.4 V 7 Ah li-ion with BMS": true, "20 V max 5 Ah": false, "12 V 7 Ah AGM": false} {
		a, err := ask.Cutoff{Battery: ask.Battery{Label: label}, RunningA: 5}.Answer()
		if err != nil {
			t.Fatal(err)
		}
		text := strings.Join(a.Words, " ")
		if got := strings.Contains(text, asked); got != want {
			t.Errorf("%s: %q says %q: %v, want %v", label, text, asked, got, want)
		}
	}
}
