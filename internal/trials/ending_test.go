package trials_test

import (
	"strings"
	"testing"

	"example.org/packcheck/answer"
	"example.org/packcheck/internal/judge"
)

// A discharge that lasts no time at all needs a reason.
func TestADischargeThatEndsAtOnceSaysWhy(t *testing.T) {
	s := benchLoad().with("load.current", `"15 A"`, "outing.air", `"20 C"`)
	for _, c := range []struct {
		until  string
		atOnce bool
	}{{"12.5 V", true}, {"11 V", false}} {
		a := assess(t, s.with("load.until", `"`+c.until+`"`))
		if found := has(a, judge.CodeEndsAtOnce) == answer.FixFirst; found != c.atOnce || (a.Ride.PedalMin < 1.0/60) != c.atOnce {
			t.Errorf("until %s: lasts %g min, said that it ends at once: %v", c.until, a.Ride.PedalMin, found)
		}
	}
}

func TestAnEndAboveTheFullVoltsIsAFault(t *testing.T) {
	for _, c := range []struct{ label, joined, until, want string }{
		{"12 V 7 Ah", "", "13.5 V", `load.until: read "13.5 V"; want less than 12.9 V`},
		{"12 V 7 Ah", `"parallel"`, "13.5 V", `load.until: read "13.5 V"; want less than 12.9 V`},
		{"12 V 7 Ah", `"series"`, "26 V", `load.until: read "26 V"; want less than 25.7 V`},
		{"12 V 7 Ah", `"series"`, "21 V", ""},
		{"12 V 7 Ah", "", "12 to 13.5 V", ""},
	} {
		err := refused(t, benchLoad().with("pack.label", `"`+c.label+`"`, "pack.joined", c.joined, "load.until", `"`+c.until+`"`))
		if (err == nil) != (c.want == "") || err != nil && !strings.Contains(err.Error(), c.want) {
			t.Errorf("%s %s until %s: %v, want %q", c.label, c.joined, c.until, err, c.want)
		}
	}
}
