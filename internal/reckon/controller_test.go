package reckon_test

import (
	"testing"

	"example.org/packcheck/answer"
	"example.org/packcheck/drive"
	"example.org/packcheck/internal/reckon"
	"example.org/packcheck/setup"
)

// A controller that every start is too much for fails so that the vehicle drives on. It is
// no proof of the contrary that battery and volts are those of a vehicle as made, unless
// somebody says that the controller is, too; on motors that nobody told it is only watched.
func TestAControllerTooSmallIsPutRightUnlessTheVehicleWasMadeWithIt(t *testing.T) {
	s, err := setup.Of(map[string]string{
		"vehicle.design_voltage": "24 V", "pack.label": "24 V (two 12 V) 9 Ah", "motors.count": "2", "motors.can": "775",
		"motors.rated_voltage": "24 V", "motors.no_load_speed": "12000 rpm", "motors.stall_current": "60 A", "gears.ratio": "80:1",
		"controller.kind": "chopper", "controller.continuous_current": "15 A", "controller.peak_current": "30 A", "controller.max_voltage": "30 V",
	})
	if err != nil {
		t.Fatal(err)
	}
	for _, c := range []struct {
		name  string
		sets  map[string]string
		level answer.Level
	}{
		{"nobody said whose it is", nil, answer.FixFirst},
		{"it came with the vehicle", map[string]string{
			"original.controller.kind": "chopper", "original.controller.continuous_current": "15 A", "original.controller.peak_current": "30 A", "original.controller.max_voltage": "30 V",
		}, answer.Watch},
		{"the motors are a guess", map[string]string{"motors.stall_current": "", "motors.no_load_speed": ""}, answer.Watch},
	} {
		of, err := s.With(c.sets)
		if err != nil {
			t.Fatal(err)
		}
		a, err := reckon.Assess(of, reckon.Options{Draws: reckon.LeastDraws})
		if err != nil {
			t.Fatal(err)
		}
		found := false
		for _, f := range a.Findings {
			if f.Code == drive.CodeLaunchOverControllerPeak {
				found = true
				if f.Level != c.level {
					t.Errorf("%s: %v, want %v", c.name, f.Level, c.level)
				}
			}
		}
		if !found {
			t.Errorf("%s: not told", c.name)
		}
	}
}
