package answer

// System says which family of units a text uses.
type System int

// The systems. Either is the zero value: the unit belongs to both (V, A) or
// none was written.
const (
	Either System = iota
	Metric
	Customary // US customary: lb, in, F, mph, AWG
)

// String returns "either", "metric" or "customary".
func (s System) String() string {
	switch s {
	case Metric:
		return "metric"
	case Customary:
		return "customary"
	}
	return "either"
}
