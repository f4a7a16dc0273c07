package battery

// Label is what the words on a pack mean.
type Label struct {
	Text          string   // as given
	Chemistry     string   // profile name; the hint's when one was given
	Sure          Sureness // how sure the chemistry and the cell count are
	CellsInSeries int      // 0 = cannot be told
	Strings       int      // in parallel; 0 = the label does not say
	NominalV      float64
	FullV         float64
	EmptyV        float64
	CapacityAh    float64  // 0 = not stated and not derivable
	RateHours     float64  // 0 = not stated
	EnergyWh      float64  // stated, or nominal volts times capacity; 0 = unknown
	Notes         []string // what a reader should know, plain sentences
}

// Sureness says how far a reading can be trusted.
type Sureness int

// The degrees.
const (
	Guess  Sureness = iota // one of several readings; ask
	Likely                 // the usual meaning
	Stated                 // the label says so
)

// ParseLabel reads what is printed on a pack. The hint is a profile name or
// empty.
func ParseLabel(text, chemistryHint string) (Label, error) { return Label{Text: text}, nil }
