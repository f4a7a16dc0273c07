package battery

import (
	"fmt"
	"math"

	"example.org/packcheck/chemistry"
)

// cell is one cell of 1 Ah of a profile, its curves tabulated. It never
// changes: all models of the profile share it.
type cell struct {
	profile   chemistry.Profile
	byCharge  [gridCells]chargeRow
	byTemp    [tempCells]tempCell
	hourShare func(hours float64) float64
	halfOhmAh float64 // ohmic resistance at half charge
	over      float64 // how far the available well may be overfilled, as a share
}

// tabulated makes the tables of a profile that was found usable.
func tabulated(p chemistry.Profile) *cell {
	c := &cell{profile: p, hourShare: p.Capacity.HourShare.Func(), halfOhmAh: p.Resistance.OhmAh.At(0.5)}
	if p.Rest.OverFullV > 0 {
		c.over = math.Max(p.Charge.CellMaxV-p.Rest.VoltsAt.At(1), 0) / p.Rest.OverFullV
	}
	chargeGrid(&c.byCharge, &p)
	tempGrid(&c.byTemp, &p)
	return c
}

// usable says whether a profile, which anybody may have put together, holds
// what New needs.
func usable(p *chemistry.Profile) error {
	curves := []chemistry.Curve{
		p.Rest.VoltsAt, p.Resistance.OhmAh, p.Resistance.TempFactor, p.Fast.OhmAh,
		p.Slow.OhmAh, p.Capacity.TempFactor, p.Capacity.HourShare,
	}
	for _, b := range []chemistry.Branch{p.Fast, p.Slow} {
		curves = append(curves, b.FactorOver(p.Resistance))
		if !(b.KneeV >= 0) || math.IsInf(b.KneeV, 0) {
			return fmt.Errorf("battery: profile %q has a branch that bends at %g V", p.Name, b.KneeV)
		}
	}
	for _, c := range curves {
		if math.IsNaN(c.At(0.5)) {
			return fmt.Errorf("battery: profile %q has a curve that is empty or does not rise in X", p.Name)
		}
	}
	for _, x := range []float64{
		p.NominalV, p.Wells.C, p.Capacity.Ratio, p.Mass.WhPerKg, p.Mass.CellShare, p.Heat.SpecificJKgK,
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
