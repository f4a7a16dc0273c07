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

// Sorter keeps the room that sorting takes from one figure to the next. The zero value is
// ready; it is for one goroutine.
type Sorter struct {
	place  []placed // what is sorted
	spare  []placed
	drawer []int32
	upTo   []float64
}

// take has the values sorted of the draws that have one and count.
func (s *Sorter) take(values, weight []float64) {
	s.place = slices.Grow(s.place[:0], len(values))
	for i, v := range values {
		if weightAt(weight, i) > 0 && !math.IsNaN(v) {
			s.place = append(s.place, placed{v, i})
		}
	}
	s.sort()
}

// sort sorts what is placed: first into as many drawers of equal width as there are
// values, which leaves few to compare in most of them, then each drawer.
func (s *Sorter) sort() {
	n := len(s.place)
	low, high := math.Inf(1), math.Inf(-1)
	for _, p := range s.place {
		low, high = min(low, p.value), max(high, p.value)
	}
	narrow := float64(n-1) / (high - low)
	if !(narrow > 0) || math.IsInf(narrow, 1) { // all the same, or endless
		slices.SortFunc(s.place, placed.compare)
		return
	}
	s.drawer = slices.Grow(s.drawer[:0], 2*n)
	drawer, end := s.drawer[:n], s.drawer[n:2*n] // of each value; of each drawer
	clear(end)
	for i, p := range s.place {
		k := int32((p.value - low) * narrow)
		drawer[i] = k
		end[k]++
	}
	upTo := int32(0)
	for k, in := range end {
		end[k] = upTo // where it begins, for now
		upTo += in
	}
	s.spare = slices.Grow(s.spare[:0], n)[:n]
	for i, p := range s.place {
		k := drawer[i]
		s.spare[end[k]] = p
		end[k]++
	}
	s.place, s.spare = s.spare, s.place
	begin := int32(0)
	for _, e := range end {
		if e > begin+1 {
			slices.SortFunc(s.place[begin:e], placed.compare)
		}
		begin = e
	}
}
