package setup

import (
	"math"
	"strings"
	"testing"
)

// FuzzReadPattern needs the reader itself: through a setup every try would
// write files.
func FuzzReadPattern(f *testing.F) {
	f.Add("seconds;amperes\n0;1,5\n10;3\n# rest\n15;0\n")
	f.Add("time_s,voltage_v,current_a\n0,12.6,0\n2,12.6,0\n3,12.3,4\n")
	f.Add("0\t1\n5\t2\n")
	f.Add("\ufeffa,b,c\n1,2,3\n2,2,3\n")
	f.Add("0,1\n1e300,5001\n")
	f.Add("10:00:00 12 1\n09:00:00 12 1\n")
	f.Fuzz(func(t *testing.T, text string) {
		got, err := readPattern(strings.NewReader(text), "log.csv")
		if err != nil {
			if strings.TrimSpace(err.Error()) == "" {
				t.Error("an error without words")
			}
			return
		}
		if len(got.demands) == 0 {
			t.Error("neither an error nor a pattern")
		}
		for _, d := range got.demands {
			if !(d.Seconds > 0) || math.IsInf(d.Seconds, 0) || !(math.Abs(d.CurrentA) <= maxPatternA) {
				t.Errorf("impossible piece %+v", d)
			}
		}
	})
}
