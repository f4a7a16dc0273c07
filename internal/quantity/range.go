package quantity

import "example.org/packcheck/answer"

// Exactly returns the range that holds v alone.
func Exactly(v float64) Range { return answer.Exactly(v) }

// Between returns the range from low to high with its middle as the likely
// value. The ends may come in either order.
func Between(low, high float64) Range { return answer.Between(low, high) }

// Spread returns the range low to high with its own likely value. The ends may
// come in either order; a likely value outside them is moved to the nearer end.
func Spread(low, likely, high float64) Range { return answer.Spread(low, likely, high) }
