package charge

import (
	"fmt"

	"example.org/packcheck/battery"
)

// Case returns the charge to compute for what is plugged in, beginning at
// start. A plain adaptor becomes a source that sags from its voltage without
// load to its printed volts at its printed amps. It returns an error when the
// charger's volts or amps are not known, or when a cell of the pack is probably dead; for a charger that came with the pack
// the chemistry's own end voltage stands in for unknown volts.
func (p Plugged) Case(start battery.State) (Case, error) {
	if p.Pack == nil {
		return Case{}, fmt.Errorf("%w: no pack", errCase)
	}
	if spec := p.Pack.Spec(); p.RestV > 0 && restsDead(spec.Profile, p.RestV/float64(spec.CellsInSeries)) {
		return Case{}, fmt.Errorf("%w: what the battery takes, of which a cell is probably dead", ErrUnknown)
	}
	ch := p.Charger
	c := Case{
		Pack: p.Pack, Start: start, AmbientC: p.AmbientC, CurrentA: ch.CurrentA,
		Stops: ch.Stops, TimerH: ch.TimerH,
	}
	switch {
	case !(ch.CurrentA > 0):
		return Case{}, fmt.Errorf("%w: the charger's current", ErrUnknown)
	case !(ch.EndMostV > 0) && !ch.SuppliedWithPack:
		return Case{}, fmt.Errorf("%w: the charger's end voltage", ErrUnknown)
	case !(ch.EndMostV > 0):
		c.EndV = GateAt(p.Pack.Spec().Profile, p.CellC).WantedVPerCell * float64(p.Pack.Spec().CellsInSeries)
	case ch.Regulated:
		c.EndV = (ch.EndLeastV + ch.EndMostV) / 2
	default:
		c.EndV = ch.EndMostV
		if ch.PrintedV > 0 && ch.PrintedV < ch.EndMostV {
			c.DroopOhm = (ch.EndMostV - ch.PrintedV) / ch.CurrentA
		}
	}
	return c, c.check()
}
