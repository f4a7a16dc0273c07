package battery

import "example.org/packcheck/finding"

// Equalising is what happens when two packs are joined in parallel.
type Equalising struct {
	CurrentA float64 // at the first instant
	DeltaV   float64
	Ohm      float64 // both packs and the lead between them
}

// JoinParallel returns the current that flows when pack b is joined across
// pack a through leadOhm, and what to think of it.
func JoinParallel(a *Model, sa State, b *Model, sb State, leadOhm float64) (Equalising, []finding.Finding) {
	return Equalising{}, nil
}

// SeriesPair is what two packs in series amount to.
type SeriesPair struct {
	FullV, NominalV, EmptyV float64
	CapacityAh              float64 // of the weaker
	WeakerIsFirst           bool
	OverhangAh              float64 // what the stronger has left when the weaker is empty
}

// JoinSeries describes two packs in series.
func JoinSeries(a, b *Model) (SeriesPair, []finding.Finding) { return SeriesPair{}, nil }

// Use is how a pack is to be used, for judging it.
type Use struct {
	PeakA, LastingA float64 // discharge currents
	AmbientC        float64
	CutoffV         float64 // whole pack; 0 = none
}

// Judge says what is wrong with using the pack so.
func (m *Model) Judge(u Use) []finding.Finding { return nil }
