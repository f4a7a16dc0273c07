package ask_test

import (
	"testing"

	"example.org/packcheck/answer"
	"example.org/packcheck/ask"
)

// That nothing opens before the smaller of two is driven backwards is a guess where both mostly
// watch their cells: a question says of it what a report does.
func TestUnequalPacksThatMayWatchTheirCellsAreNoDangerInSeries(t *testing.T) {
	for _, c := range []struct {
		one, two string
		v        float64
		want     answer.Level
	}{
		{"12.8 V 7 Ah LiFePO4", "12.8 V 12 Ah LiFePO4", 13.3, answer.FixFirst},
		{"12.8 V 7 Ah LiFePO4", "12.8 V 12 Ah LiFePO4 no BMS", 13.3, answer.Danger},
		{"11.1 V 5 Ah li-ion with BMS", "11.1 V 10 Ah li-ion with BMS", 12.3, answer.FixFirst},
		{"11.1 V 5 Ah li-ion", "11.1 V 10 Ah li-ion", 12.3, answer.Danger},
	} {
		a, err := ask.Join{A: ask.Battery{Label: c.one}, B: ask.Battery{Label: c.two}, AV: c.v, BV: c.v, Series: true}.Answer()
		if err != nil {
			t.Fatal(err)
		}
		if a.Level == nil || *a.Level != c.want {
			t.Errorf("%s and %s in series: %v, want %v", c.one, c.two, a.Level, c.want)
		}
	}
}
