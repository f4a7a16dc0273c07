package draws_test

import (
	"fmt"
	"math"

	"example.org/packcheck/internal/draws"
)

// A pack of about 7 Ah gives about 9 A: how many minutes, before and after they
// were timed once?
func Example() {
	minutes := func(z []float64) float64 {
		capacityAh, amps := 7*math.Exp(0.2*z[0]), 9*math.Exp(0.3*z[1])
		return 60 * capacityAh / amps
	}
	show := func(z [][]float64, weight []float64) {
		values := make([]float64, len(z))
		for i := range z {
			values[i] = minutes(z[i])
		}
		s := draws.SpreadOf(values, weight)
		fmt.Printf("%.0f to %.0f minutes, likely %.0f\n", s.P10, s.P90, s.P50)
	}
	show(draws.Points(1024, 2), nil)

	timed := func(_ int, z, out []float64) bool {
		out[0] = math.Log(minutes(z))
		return true
	}
	readings := []draws.Reading{{Value: math.Log(35), Err: 0.1}} // 35 minutes, +-10 %
	p, err := draws.Condition(2, timed, readings, draws.Options{Enough: 1000, MostRounds: 20})
	if err != nil {
		fmt.Println(err)
		return
	}
	show(p.Z, p.Weight)
	// Output:
	// 30 to 74 minutes, likely 47
	// 31 to 42 minutes, likely 36
}
