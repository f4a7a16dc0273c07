package cellfit

import "math"

// CapacityOver is the capacity over the rated hours of discharges that took so many hours each
// at 1 A, and told such capacities.
func CapacityOver(ratedHours float64, hours, ah []float64) float64 {
	f := finder{Result: Result{Options: FitOptions{RateHours: ratedHours}}}
	for i := range hours {
		f.runs = append(f.runs, run{RunFound: RunFound{CurrentA: 1}, endAh: hours[i], fullAh: ah[i]})
	}
	f.runs = append(f.runs, run{RunFound: RunFound{CurrentA: 1}, endAh: math.Pi}) // one that tells none
	return f.overRated()
}
