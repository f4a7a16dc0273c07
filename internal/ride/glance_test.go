package ride

import "testing"

// Who asks only how fast and how long gets the same as who asks for everything.
func TestAGlanceIsPartOfTheWholeCase(t *testing.T) {
	moved, stuck := 0, 0
	for name, c := range varied(t) {
		c.WantedS = 600
		for _, gradeN := range []float64{c.Vehicle.GradeN, 5000} {
			c.Vehicle.GradeN = gradeN
			seen, glance := See(&c, nil), Glance(&c)
			if glance.Steady != seen.Steady || glance.Outing != seen.Outing || glance.Lasts != seen.Lasts {
				t.Errorf("%s: at a glance %+v, want %+v", name, glance.Lasts, seen.Lasts)
			}
			if glance.Launch.Moved != seen.Launch.Moved || glance.Stuck() != seen.Stuck() || glance.Crawls() != seen.Crawls() {
				t.Errorf("%s: moves off %v, want %v", name, glance.Launch.Moved, seen.Launch.Moved)
			}
			if glance.Launch.Moved {
				moved++
			} else {
				stuck++
			}
		}
	}
	if moved < 10 || stuck < 10 {
		t.Errorf("%d cases move off and %d do not", moved, stuck)
	}
}
