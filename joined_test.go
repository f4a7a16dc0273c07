package packcheck_test

import (
	"strings"
	"testing"

	"example.org/packcheck"
	"example.org/packcheck/finding"
)

// refused gives the error of a sheet.
func refused(t testing.TB, s sheet) error {
	t.Helper()
	read, err := packcheck.Read(strings.NewReader(s.toml()), "test.toml")
	if err == nil {
		_, err = packcheck.Assess(read)
	}
	return err
}

// Twelve volts or twenty-four is no detail: what the label leaves open must
// stand among the faults.
func TestBlocksThatMayBeWiredEitherWayAreAFaultToFixFirst(t *testing.T) {
	for _, c := range []struct {
		label   string
		unclear bool
	}{
		{"2 x 12 V 7 Ah", true},
		{"12 V 7 Ah x 2", true},
		{"12V 7Ah, 2 pcs", true},
		{"24 V (two 12 V 7 Ah)", false},
		{"two 12 V 7 Ah in parallel", false},
		{"12 V 14 Ah (two 12 V 7 Ah)", false},
		{"12 V 7 Ah", false},
	} {
		a := answer(t, benchLoad().with("pack.label", `"`+c.label+`"`))
		if got := has(a, "blocks-unclear") == finding.FixFirst; got != c.unclear {
			t.Errorf("%s: to fix first %v, want %v", c.label, got, c.unclear)
		}
	}
}

// Twice two would be four blocks that nobody has.
func TestALabelOfTwoBlocksIsNotJoinedOnceMore(t *testing.T) {
	err := refused(t, benchLoad().with("pack.label", `"2 x 12 V 7 Ah"`, "pack.joined", `"series"`))
	if err == nil || !strings.Contains(err.Error(), `pack.joined: read "series"`) || !strings.Contains(err.Error(), "names 2 blocks already") {
		t.Errorf("got %v", err)
	}
}
