package battery

import (
	"fmt"
	"math"
	"slices"

	"example.org/packcheck/internal/portable"
	"example.org/packcheck/internal/solve"
)

// Rating is a capacity at the constant current that empties the battery in so
// many hours.
type Rating struct {
	Hours, Ah float64
}

// WellsFromRatings finds the two wells whose capacities at three rates are the
// given ones (Manwell & McGowan's identification). Wells fitted to slow rates
// alone promise up to twice the true capacity at five minutes, so take ratings
// that span the rates of use. It fails when no wells can have such ratings:
// capacity must grow with the hours, and ever more slowly.
func WellsFromRatings(ratings [3]Rating) (Wells, error) {
	r := ratings
	slices.SortFunc(r[:], func(a, b Rating) int {
		if a.Hours < b.Hours {
			return -1
		}
		return 1
	})
	if !(r[0].Hours > 0 && r[0].Hours < r[1].Hours && r[1].Hours < r[2].Hours && r[0].Ah > 0 && r[0].Ah < r[1].Ah && r[1].Ah < r[2].Ah) {
		return Wells{}, fmt.Errorf("battery: ratings %v cannot be those of two wells: both hours and capacities must rise", ratings)
	}
	// For a given k' the first and the last rating fix c; what is then off at
	// the middle one changes sign once as k' runs over everything sensible.
	off := func(logK float64) (float64, Wells) {
		k := portable.Exp(logK)
		w := Wells{CapacityAh: 1, C: shareFor(k, r[0], r[2])}
		w = WellsFromKPrime(1, w.C, k/3600)
		w.CapacityAh = r[2].Ah / w.CapacityAt(3600*r[2].Hours)
		return w.CapacityAt(3600*r[1].Hours)/r[1].Ah - 1, w
	}
	lo, hi := math.Log(1e-3/r[2].Hours), math.Log(100/r[0].Hours)
	// Look for the change of sign where c is a share.
	const parts = 400
	before, _ := off(lo)
	for i := 1; i <= parts; i++ {
		x := lo + (hi-lo)*float64(i)/parts
		here, w := off(x)
		valid := w.C > 0 && w.C < 1
		if valid && before*here <= 0 {
			from := lo + (hi-lo)*float64(i-1)/parts
			at := solve.Crossing(from, x, 0, func(logK float64) float64 {
				y, _ := off(logK)
				return math.Copysign(y, y*here)
			}).Hi
			if _, w := off(at); w.C > 0 && w.C < 1 {
				return w, nil
			}
		}
		before = here
	}
	return Wells{}, fmt.Errorf("battery: ratings %v cannot be those of two wells", ratings)
}

// shareFor is the c with which two ratings stand to each other as given, for
// k' in 1/h.
func shareFor(k float64, short, long Rating) float64 {
	f := short.Ah / long.Ah
	t1, t2 := short.Hours, long.Hours
	top := f*-math.Expm1(-k*t1)*t2 - -math.Expm1(-k*t2)*t1
	return top / (top - k*f*t1*t2 + k*t1*t2)
}
