package answer

// Way is a way out: a set of changes that was computed, like the setup itself,
// on the same draws.
type Way struct {
	Title    string   `json:"title"`     // what it comes down to, one clause
	Steps    []string `json:"steps"`     // what to do, one step each, in order
	Verdict  Level    `json:"verdict"`   // after all steps
	PedalMin Range    `json:"pedal_min"` // minutes with the pedal down, afterwards
	SpeedKmh Range    `json:"speed_kmh"` // zero on a bench load
	// WantedShare is in what share of the draws the time asked for is reached; nil
	// where none was asked for.
	WantedShare *float64 `json:"wanted_share,omitempty"`
	// CutShort is in what share of the draws a cutoff ends the ride with three tenths of
	// the charge or more left: why the lower end of PedalMin may be next to nothing.
	CutShort float64 `json:"cut_short"`
	// FuseOpens is in what share of the draws the fuse opens in use, or one at the early
	// edge of its band may: the ride ends there, and PedalMin does not count on it. It is
	// 0 where that is in fewer than a tenth.
	FuseOpens float64 `json:"fuse_opens"`
	// Harms counts what is still to watch because a child or a house could be hurt.
	Harms int `json:"harms"`
	// Pace is set where it may still be too fast for who drives.
	Pace *Pace `json:"pace,omitempty"`
	// Wiring says that the steps ask for work on the wiring.
	Wiring   bool   `json:"wiring,omitempty"`
	Together string `json:"together,omitempty"` // how the steps go together, where somebody would wonder
	Sets     []Set  `json:"sets"`               // the setup keys that make it, in order
	// Carried says that the answer rests on what was measured before the change.
	// The changed setup is without it, and by itself less sure than this. Any other
	// way is exactly what its setup is answered with.
	Carried bool `json:"carried,omitempty"`
}

// Pace says in what share of the draws a vehicle is faster than suits its driver.
type Pace struct {
	LimitKmh float64 `json:"limit_kmh"`
	AgeYears float64 `json:"age_years,omitempty"` // whole ones, of the youngest who drives; 0 where nobody told
	Share    float64 `json:"share"`               // 0 to 1
	// TooFast says that beyond the limit nothing is made for that age; otherwise it is brisk.
	TooFast bool `json:"too_fast,omitempty"`
}

// Values returns the keys of the way with their values, as setup.With takes them.
func (w *Way) Values() map[string]string {
	out := make(map[string]string, len(w.Sets))
	for _, set := range w.Sets {
		out[set.Key] = set.Value
	}
	return out
}

// Set is one key of a setup and the value that a [Way] gives it, as text.
type Set struct {
	Key   string `json:"key"`
	Value string `json:"value"`
}
