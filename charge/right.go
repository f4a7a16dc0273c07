package charge

import (
	"fmt"
	"math"

	"example.org/packcheck/chemistry"
	"example.org/packcheck/internal/quantity"
)

// Right is the charger that belongs to a pack.
type Right struct {
	Own        bool    // only the one of the pack's maker: nothing else is told
	MadeFor    Purpose // what its label must say
	Title      string  // of the cells
	Cells      int     // in series
	EndV       float64 // of whatever hangs on it; 0 = it ends by what it sees of the cells
	VPerCell   float64 // of these volts
	MostA      float64 // greatest current, rounded down as it is told
	Pair, Each bool    // of two packs: for both as one, or for each of them by itself
}

// Right returns the charger that belongs to a pack; none without one. Two blocks of
// lead in series are charged as one where they are alike and hang on the vehicle's jack, or
// on a charger of their volts; all else is charged by itself (source "series-string-rule").
func (p *Plugged) Right() Right {
	if p.Pack == nil || p.ToolPack { // of a tool pack, volts and amps would only help to find another one
		return Right{Own: true}
	}
	spec := p.Pack.Spec()
	prof := spec.Profile
	r := Right{
		MadeFor: PurposeFor(prof), Title: prof.Title, Cells: spec.CellsInSeries, VPerCell: prof.Charge.CellV, MostA: roundedDown(p.AdvisedA()),
	}
	if p.Joined == InSeries && p.MadeFor == ForPair { // the pack is both of them
		r.Cells /= 2
	}
	if p.Joined == InSeries && prof.Family == chemistry.LeadAcid && !p.Unlike && (p.MadeFor == ForPair || p.Port == PortVehicle) {
		r.Pair, r.Cells = true, 2*r.Cells
	}
	r.Each = p.Joined != Single && !r.Pair
	if prof.Family != chemistry.Nickel {
		r.EndV = r.VPerCell * float64(r.Cells)
	}
	return r
}

// roundedDown is a greatest current as it is told, of two digits.
func roundedDown(a float64) float64 {
	const least, most = 10, 100 // of two digits
	const nothing = 1e-9        // no charger is told by so few amps
	if !(a > nothing) || math.IsInf(a, 0) {
		return 0
	}
	parts := 1.0
	for a*parts < least {
		parts *= 10
	}
	for a*parts >= most {
		parts /= 10
	}
	return math.Floor(a*parts*(1+rounding)) / parts
}

// String describes it as somebody would ask for it.
func (r Right) String() string {
	const digits = 3
	switch {
	case r.Own:
		return "only the pack maker's own charger"
	case !(r.EndV > 0):
		return fmt.Sprintf("one made for %s with %s that notices by itself when the pack is full%s", r.Title, quantity.Cells(r.Cells), r.hangs())
	}
	what := r.hangs()
	if what == "" {
		what = " for this pack"
	}
	return fmt.Sprintf("one made for %s that ends at %s V%s (%s V per cell), gives at most %s A and stops by itself",
		r.Title, quantity.Digits(r.EndV, digits), what, quantity.Digits(r.VPerCell, digits), quantity.Digits(r.MostA, digits))
}

// Brief is the same in so few words that no page has to cut its limits off.
func (r Right) Brief() string {
	const digits = 3
	switch {
	case r.Own:
		return r.String()
	case !(r.EndV > 0):
		return fmt.Sprintf("for %s, %s%s, that notices when they are full", r.MadeFor, quantity.Cells(r.Cells), r.hangs())
	}
	return fmt.Sprintf("for %s, %s V%s, at most %s A, stops by itself", r.MadeFor, quantity.Digits(r.EndV, digits), r.hangs(), quantity.Digits(r.MostA, digits))
}

// hangs says how many of two packs hang on it; empty where there is one.
func (r Right) hangs() string {
	switch {
	case r.Pair:
		return " for the two in series"
	case r.Each:
		return " for each by itself"
	}
	return ""
}
