package battery

import (
	"encoding/binary"
	"fmt"
	"math"
	"sync"

	"example.org/packcheck/chemistry"
)

// cell is one cell of 1 Ah of a profile, its curves tabulated. It never
// changes: all models of the profile, and of others with the same curves, share it.
type cell struct {
	hourShare func(hours float64) float64
	halfOhmAh float64 // ohmic resistance at half charge
	over      float64 // how far the available well may be overfilled, as a share
	byCharge  [gridCells]chargeRow
	byTemp    [tempCells]tempCell
}

// shape is all of a profile that its tables hang on.
type shape struct {
	rest, ohm, ohmWarm, fast, fastWarm, slow, slowWarm, capacityWarm, hours chemistry.Curve

	cellMaxV, overFullV float64
}

func shapeOf(p *chemistry.Profile) shape {
	return shape{
		rest: p.Rest.VoltsAt, ohm: p.Resistance.OhmAh, ohmWarm: p.Resistance.TempFactor,
		fast: p.Fast.OhmAh, fastWarm: p.Fast.FactorOver(p.Resistance), slow: p.Slow.OhmAh, slowWarm: p.Slow.FactorOver(p.Resistance),
		capacityWarm: p.Capacity.TempFactor, hours: p.Capacity.HourShare,
		cellMaxV: p.Charge.CellMaxV, overFullV: p.Rest.OverFullV,
	}
}

func (s *shape) curves() [9]chemistry.Curve {
	return [...]chemistry.Curve{s.rest, s.ohm, s.ohmWarm, s.fast, s.fastWarm, s.slow, s.slowWarm, s.capacityWarm, s.hours}
}

// key is the shape as text, the same for shapes that are the same to the bit.
func (s *shape) key() string {
	key := make([]byte, 0, 4<<10)
	add := func(x float64) { key = binary.LittleEndian.AppendUint64(key, math.Float64bits(x)) }
	for _, c := range s.curves() {
		for _, list := range [...][]float64{c.X, c.Y} {
			add(float64(len(list)))
			for _, x := range list {
				add(x)
			}
		}
	}
	add(s.cellMaxV)
	add(s.overFullV)
	return string(key)
}

// mostKept is how many cells are kept, of some 120 KB each: more than there are built in.
const mostKept = 64

// kept are the cells that were tabulated last, by the key of their shape. Who asks
// about one battery after the other mostly asks about the same cells.
var kept struct {
	sync.Mutex
	cells map[string]*cell
}

// tabulated returns the tables of a shape that was found usable.
func tabulated(s *shape) *cell {
	key := s.key()
	kept.Lock()
	defer kept.Unlock()
	if c, ok := kept.cells[key]; ok {
		return c
	}
	if kept.cells == nil || len(kept.cells) == mostKept {
		kept.cells = make(map[string]*cell, mostKept)
	}
	c := s.tabulate()
	kept.cells[key] = c
	return c
}

// tabulate makes the tables.
func (s *shape) tabulate() *cell {
	c := &cell{hourShare: s.hours.Func(), halfOhmAh: s.ohm.At(0.5)}
	if s.overFullV > 0 {
		c.over = math.Max(s.cellMaxV-s.rest.At(1), 0) / s.overFullV
	}
	chargeGrid(&c.byCharge, s)
	tempGrid(&c.byTemp, s)
	return c
}

// usable says whether a profile, which anybody may have put together, and its shape
// hold what New needs.
func usable(p *chemistry.Profile, s *shape) error {
	if len(p.Rest.VoltsAt.X) == 0 {
		return fmt.Errorf("battery: profile %q has no rest curve (want one that a chemistry.Set has found)", p.Name)
	}
	for _, b := range []chemistry.Branch{p.Fast, p.Slow} {
		if !(b.KneeV >= 0) || math.IsInf(b.KneeV, 0) {
			return fmt.Errorf("battery: profile %q has a branch that bends at %g V", p.Name, b.KneeV)
		}
	}
	for _, c := range s.curves() {
		if math.IsNaN(c.At(0.5)) {
			return fmt.Errorf("battery: profile %q has a curve that is empty or does not rise in X", p.Name)
		}
	}
	for _, x := range []float64{
		p.NominalV, p.Wells.C, p.Capacity.Ratio, p.Capacity.RatedHours, p.Mass.WhPerKg, p.Mass.CellShare, p.Heat.SpecificJKgK,
		p.Heat.CoolingWM2K, p.Heat.AreaM2PerKg23, p.Heat.ShellShare, p.Fast.TauS, p.Slow.TauS,
	} {
		if !(x > 0) || math.IsInf(x, 0) {
			return fmt.Errorf("battery: profile %q has a figure of %g where a positive one is needed", p.Name, x)
		}
	}
	if p.Wells.C > 1 || p.Wells.KPerS < 0 || len(p.End.Volts) == 0 {
		return fmt.Errorf("battery: profile %q has impossible wells or no end voltage", p.Name)
	}
	return nil
}
