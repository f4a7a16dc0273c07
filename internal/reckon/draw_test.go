package reckon_test

import (
	"maps"
	"testing"

	"example.org/packcheck/internal/reckon"
	"example.org/packcheck/setup"
)

// However many draws were weighed, ranges are as good as the draws that they are
// counted over.
func TestAnAnswerIsRoughWhereFewDrawsStandBehindIt(t *testing.T) {
	read := swap()
	maps.Copy(read, map[string]string{"original.measured.top_speed": "4.8 km/h", "original.measured.ride_time": "50 min"})
	for _, tt := range []struct {
		name   string
		values map[string]string
		draws  int
		rough  bool
	}{
		{"few draws, nothing measured", swap(), 16, true},
		{"just too few, nothing measured", swap(), 99, true},
		{"enough, nothing measured", swap(), 100, false},
		{"few draws, two readings", read, 16, true},
		{"enough, two readings", read, 512, false},
	} {
		s, err := setup.Of(tt.values)
		if err != nil {
			t.Fatal(err)
		}
		a, err := reckon.Assess(s, reckon.Options{Draws: tt.draws})
		if err != nil {
			t.Fatal(err)
		}
		d := a.Draws
		if d.Rough != tt.rough || d.Rough != (d.Effective < 100) {
			t.Errorf("%s: rough %v with %.0f effective draws, want %v", tt.name, d.Rough, d.Effective, tt.rough)
		}
		if most := float64(d.Count) + 1e-9; d.Effective > most || d.Count > tt.draws || len(a.Readings) == 0 && d.Count != tt.draws {
			t.Errorf("%s: %.1f effective of %d, %d asked for", tt.name, d.Effective, d.Count, tt.draws)
		}
	}
}
