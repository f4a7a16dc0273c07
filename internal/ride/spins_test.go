package ride

import "testing"

// Newton's second law: what the wheels hold beyond ground and slope is all that the mass
// is given. 0.5 N bring 42 kg to 0.12 m/s in ten seconds, 20 N to 4.8 m/s.
func TestWheelsThatSpinOnAreToldFromWheelsThatSpinAtTheStart(t *testing.T) {
	for _, s := range []struct {
		name   string
		spareN float64
		on     bool
		stuck  bool
	}{
		{"nothing left over", -1, false, true},
		{"next to nothing", 0.5, true, false},
		{"enough", 20, false, false},
	} {
		c := tractorCase(t)
		c.Vehicle.GradeN = c.Vehicle.GripN - c.Vehicle.RollN - s.spareN
		seen := See(&c, nil)
		if seen.SpinsOn() != (s.on || s.stuck) || !seen.Launch.Slipped {
			t.Errorf("%s: spins on %v at %g m/s", s.name, seen.SpinsOn(), seen.Launch.EndMS)
		}
		if seen.Launch.Moved == s.stuck {
			t.Errorf("%s: moved %v", s.name, seen.Launch.Moved)
		}
	}
}
