package answer

// ComparisonSchema names the shape of a [Comparison] written as JSON, in the same
// manner as [Schema].
const ComparisonSchema = "packcheck/comparison/1"

// Comparison is the answer to several setups side by side.
type Comparison struct {
	Schema  string   `json:"schema"`
	Verdict Level    `json:"verdict"` // the mildest of the columns
	Columns []Column `json:"columns"` // in the order in which they were asked about
	Best    []Best   `json:"best"`
	// SameDraws says that all columns were computed on the same draws: what they
	// leave open under the same key stands at the same place of its range in each.
	// Where it is false, a difference between columns is also one of chance.
	SameDraws bool `json:"same_draws"`

	// System is the unit system of the first column; reports print it first.
	System System `json:"-"`
}

// Column is one of the setups that are compared.
type Column struct {
	Letter string      `json:"letter"` // "A" for the first
	Name   string      `json:"name"`   // what tells it from the others: its battery, or its file
	Answer *Assessment `json:"answer"` // without ways out
	// Against is what each figure differs by from that of the first column, draw by
	// draw, by the figure's JSON path; empty for the first column, and for one that
	// stands on other draws.
	Against map[string]Range `json:"against,omitempty"`
}

// Merit is what a column may be the best in.
type Merit string

// The merits.
const (
	MeritTime    Merit = "time"     // lasts longest, with the pedal down or under load
	MeritSpeed   Merit = "speed"    // fastest on the level; not asked where an original is known
	MeritAsSpeed Merit = "as speed" // nearest to the speed of the original
	MeritGentle  Merit = "gentle"   // lowest motor amps at the start from rest: what pulls at the gears
)

// Best is the column that is the best in something. Where some columns may be
// used (watch or better), only those count.
type Best struct {
	For    Merit   `json:"for"`
	Column int     `json:"column"` // from 0; -1 where it makes no difference
	Share  float64 `json:"share"`  // of the draws, in which it is the best; 0 where that is not known
	Usable bool    `json:"usable"` // false where no column may be used, so that all were compared
}
