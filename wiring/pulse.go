package wiring

import "example.org/packcheck/tables"

// Season is a year's launches as a fuse feels them.
type Season struct {
	I2tA2s   float64 // I2t of one launch, A2s
	Launches float64 // how many
}

// PulseLife is what a fuse makes of a season's launches.
type PulseLife struct {
	MeltingA2s  float64 // typical melting I2t of this rating
	Share       float64 // I2t of one launch over the melting I2t
	Allowed     float64 // share allowed for so many launches
	LaunchesFor float64 // launches that this share allows; the guide ends at 100 000
	Known       bool    // false when the table has no melting I2t for the form
	Source      string  // of the allowed shares
}

// PulseLife holds the launches of a season against the fuse maker's guide:
// 22, 29, 38, 48 percent of the melting I2t for 100 000, 10 000, 1 000, 100
// pulses. Every press of the pedal is a pulse. The guide asks for 10 s between
// pulses; launches that follow faster are harder on the fuse than this says.
func (f *Fuse) PulseLife(t *tables.Tables, s Season) PulseLife {
	t = orBuiltin(t)
	melting, ok := f.spec.Form.MeltingI2t(f.spec.RatingA)
	allowed, source := t.PulseShare(s.Launches)
	life := PulseLife{MeltingA2s: melting, Allowed: allowed, Known: ok, Source: source}
	if !ok {
		return life
	}
	life.Share = s.I2tA2s / melting
	life.LaunchesFor = t.PulsesFor(life.Share)
	return life
}
