package reckon_test

import "testing"

// A drive that climbs comes down again: a time that was read of it is neither that of the
// climb all the time nor that of the level.
func TestATimedRideOnASlopeLiesBetweenClimbAndLevel(t *testing.T) {
	const read = 40.0
	a := someDraws(t, timed(map[string]string{"vehicle.ground": "asphalt", "vehicle.slope": "5 %", "measured.ride_time": "40 min"}), 512)
	if a.Ride.LevelPedalMin == nil {
		t.Fatal("a slope has no minutes on the level")
	}
	climb := a.Ride.ClockMin
	level := climb * *a.Ride.LevelPedalMin / a.Ride.PedalMin
	if !(climb < 0.9*read && level > 1.1*read) {
		t.Errorf("%.0f min were read on a slope: the climb is given %.0f, the level %.0f", read, climb, level)
	}
}
