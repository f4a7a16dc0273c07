package judge

import (
	"example.org/packcheck/cutoff"
	"example.org/packcheck/drive"
)

// sagCharge is the charge at which a launch is held against the cutoffs: low
// enough to sag deeply, high enough that the pack is not yet meant to stop.
// Own choice.
const sagCharge = 0.3

// sag returns what a launch with a fairly empty pack does to the volts that a
// cutoff at that place sees, computed once for each place.
func (v *view) sag(where cutoff.Place) cutoff.Sag {
	s, known := v.sags[where]
	if !known {
		s = v.launchSag(where)
		if v.sags == nil {
			v.sags = map[cutoff.Place]cutoff.Sag{}
		}
		v.sags[where] = s
	}
	return s
}

func (v *view) launchSag(where cutoff.Place) cutoff.Sag {
	c := v.Now.Case
	if c.Controller.Converter.OutV > 0 {
		return cutoff.Sag{} // behind a converter the launch is not seen by the pack in volts
	}
	c.StartCharge = min(sagCharge, c.StartCharge)
	l := c.LaunchCase()
	var times, volts []float64
	drive.Launch(&l, c.LaunchSeconds(), func(s drive.LaunchSample) {
		seen := s.PackV
		if where == cutoff.Controller {
			seen = s.BusV
		}
		times, volts = append(times, s.TimeS), append(volts, seen)
	})
	if len(volts) == 0 {
		return cutoff.Sag{}
	}
	lowest := volts[0]
	for _, u := range volts {
		lowest = min(lowest, u)
	}
	return cutoff.Sag{LowestV: lowest, SecondsBelow: func(u float64) float64 { return longestBelow(times, volts, u) }}
}

// longestBelow returns the longest unbroken time at or below u of a curve
// given by straight lines.
func longestBelow(times, volts []float64, u float64) float64 {
	longest, since, below := 0.0, 0.0, false
	for i, v := range volts {
		switch {
		case v <= u && !below:
			below, since = true, times[i]
			if i > 0 {
				since = crossing(times, volts, i, u)
			}
		case v > u && below:
			below = false
			longest = max(longest, crossing(times, volts, i, u)-since)
		}
	}
	if below {
		longest = max(longest, times[len(times)-1]-since)
	}
	return longest
}

// crossing is when the line between points i-1 and i passes u.
func crossing(times, volts []float64, i int, u float64) float64 {
	return times[i-1] + (times[i]-times[i-1])*(u-volts[i-1])/(volts[i]-volts[i-1])
}
