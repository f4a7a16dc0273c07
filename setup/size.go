package setup

import (
	"fmt"
	"strings"
	"unicode"

	"example.org/packcheck/internal/quantity"
)

// sizeKind is the kind of keys that hold the three edges of a box.
const sizeKind = "size"

// Edges between these are those of a battery or of where one sits, m.
const leastEdgeM, mostEdgeM = 0.005, 2

// Edges reads a size, "151 x 65 x 94 mm", as three lengths in m, in the order
// written. A unit behind the last counts for those that have none. ok is false where
// it is none.
func (w Word) Edges() (edges [3]float64, ok bool) {
	spaced := strings.NewReplacer("×", "x", "X", "x", "*", "x", " by ", "x").Replace(w.Text)
	parts := strings.Split(spaced, "x")
	if len(parts) != len(edges) {
		return edges, false
	}
	_, last := splitUnit(parts[2])
	for i, part := range parts {
		part, unit := splitUnit(part)
		if unit == "" {
			unit = last
		}
		r, _, err := quantity.ParseLike(quantity.Length, part+" "+unit, leastEdgeM, mostEdgeM, "151 mm")
		if err != nil || !r.IsExact() {
			return edges, false
		}
		edges[i] = r.Likely
	}
	return edges, true
}

// splitUnit parts a number from the unit behind it.
func splitUnit(text string) (digits, unit string) {
	text = strings.TrimSpace(text)
	end := strings.LastIndexFunc(text, unicode.IsDigit) + 1
	return text[:end], strings.TrimSpace(text[end:])
}

// wantSize is what is right where a size is due.
func wantSize(f *field) string {
	return fmt.Sprintf("length x width x height, each %s to %s, such as %q",
		quantity.Format(quantity.Length, leastEdgeM, quantity.Metric), quantity.Format(quantity.Length, mostEdgeM, quantity.Metric), f.Example)
}
