package ask_test

import (
	"strings"
	"testing"

	"example.org/packcheck/ask"
)

// ISO 13732-1:2006 (from memory): 51 degC on bare metal burns in a minute; plastic
// burns later, so of it no seconds are told.
func TestHowSoonAHotMotorBurnsIsSaid(t *testing.T) {
	t.Parallel()
	for _, c := range []struct {
		part  ask.Part
		tempC float64
		want  string
	}{{ask.HotMotor, 51, "for 60 s or longer"}, {ask.HotMotor, 90, "for 1 s or longer"}, {ask.HotMotor, 40, ""}, {ask.HotPlastic, 70, ""}} {
		a, err := ask.Hot{Part: c.part, TempC: c.tempC}.Answer()
		if err != nil {
			t.Fatal(err)
		}
		said := strings.Join(a.Words, " ")
		if got := strings.Contains(said, "burns skin"); got != (c.want != "") || !strings.Contains(said, c.want) {
			t.Errorf("%s of %g C: %q, want %q", c.part, c.tempC, said, c.want)
		}
	}
}
