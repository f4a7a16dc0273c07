package draws

import (
	"math"
	"slices"
)

// placed is a value with the number of its draw.
type placed struct {
	value float64
	at    int
}

// compare orders by value, and by number where two are the same.
func (a placed) compare(b placed) int {
	switch {
	case a.value < b.value:
		return -1
	case a.value > b.value:
		return 1
	}
	return a.at - b.at
}

// sortPlaced sorts: first into as many drawers of equal width as there are values, which
// leaves few to compare in most of them, then each drawer.
func sortPlaced(list []placed) {
	n := len(list)
	low, high := math.Inf(1), math.Inf(-1)
	for _, p := range list {
		low, high = min(low, p.value), max(high, p.value)
	}
	narrow := float64(n-1) / (high - low)
	if !(narrow > 0) || math.IsInf(narrow, 1) { // all the same, or endless
		slices.SortFunc(list, placed.compare)
		return
	}
	both := make([]int32, 2*n)
	drawer, end := both[:n], both[n:] // of each value; of each drawer
	for i, p := range list {
		k := int32((p.value - low) * narrow)
		drawer[i] = k
		end[k]++
	}
	upTo := int32(0)
	for k, in := range end {
		end[k] = upTo // where it begins, for now
		upTo += in
	}
	for i, p := range slices.Clone(list) {
		k := drawer[i]
		list[end[k]] = p
		end[k]++
	}
	begin := int32(0)
	for _, e := range end {
		if e > begin+1 {
			slices.SortFunc(list[begin:e], placed.compare)
		}
		begin = e
	}
}
