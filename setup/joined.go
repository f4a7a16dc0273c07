package setup

import (
	"cmp"
	"slices"

	"example.org/packcheck/battery"
	"example.org/packcheck/chemistry"
)

// together is two packs that are not alike as one, whichever of them is called the first:
// in series the smaller one ends the ride, in parallel both give. Two kinds of cells
// are taken to be those of the smaller one in series, with the volts of both (see
// cellOfBoth), and in parallel of the one of more volts.
func together(a, b battery.Spec, series bool) battery.Spec {
	if leads(&b, &a, series) {
		a, b = b, a
	}
	s, fullA, fullB := a, a.CapacityAh*a.Health, b.CapacityAh*b.Health
	joined := func(x, y float64) float64 { return x * y / (x + y) } // Ohm
	if series {
		joined = func(x, y float64) float64 { return x + y }
		if a.Profile.Title != b.Profile.Title {
			s.Profile = cellOfBoth(&a, &b)
		}
		s.CellsInSeries += b.CellsInSeries
		s.MaxCurrentA = min(a.MaxCurrentA, b.MaxCurrentA)
		if fullB < fullA {
			s.CapacityAh, s.Health = b.CapacityAh, b.Health
		}
	} else {
		s.Health = (fullA + fullB) / (a.CapacityAh + b.CapacityAh)
		s.CapacityAh += b.CapacityAh
		s.Strings++
		s.MaxCurrentA += b.MaxCurrentA
	}
	s.MassKg += b.MassKg
	ofA, ofB := ohmsOf(&a), ohmsOf(&b)
	half := joined(ofA.half, ofB.half)
	if a.ResistanceOhm > 0 {
		s.ResistanceOhm = half
		return s
	}
	s.ResistanceFactor = half * s.CapacityAh / (float64(s.CellsInSeries) * s.Profile.Resistance.OhmAh.At(0.5))
	s.OhmicFactor, s.Grown = joined(ofA.ohmic, ofB.ohmic)/half, joined(ofA.grown, ofB.grown)/half
	return s
}

// leads reports whether two joined packs are taken to be of the cells of a and not of b.
func leads(a, b *battery.Spec, series bool) bool {
	if !series {
		return a.Profile.FullV*float64(a.CellsInSeries) > b.Profile.FullV*float64(b.CellsInSeries)
	}
	return a.Profile.Title != b.Profile.Title && cmp.Or(
		cmp.Compare(a.CapacityAh*a.Health, b.CapacityAh*b.Health),
		cmp.Compare(a.Profile.Title, b.Profile.Title),
	) < 0
}

// cellOfBoth is the cell of which as many as two packs in series have stand for both kinds:
// that of a, with as many volts as all of them have on the mean. Volts add up in series
// (Kirchhoff).
func cellOfBoth(a, b *battery.Spec) chemistry.Profile {
	p, other := a.Profile, &b.Profile
	ofB := float64(b.CellsInSeries) / float64(a.CellsInSeries+b.CellsInSeries)
	mean := func(x, y float64) float64 { return x + ofB*(y-x) }
	p.Name += " and " + other.Name
	end := mean(p.EmptyV, other.EmptyV) / p.EmptyV
	p.End.Volts = slices.Clone(p.End.Volts)
	for i := range p.End.Volts {
		p.End.Volts[i] *= end
	}
	p.NominalV, p.FullV = mean(p.NominalV, other.NominalV), mean(p.FullV, other.FullV)
	p.EmptyV, p.HarmV, p.NeverRechargeV = p.EmptyV*end, mean(p.HarmV, other.HarmV), p.NeverRechargeV*end
	p.Charge.CellV, p.Charge.CellMaxV = mean(p.Charge.CellV, other.Charge.CellV), mean(p.Charge.CellMaxV, other.Charge.CellMaxV)
	rest := other.Rest.VoltsAt.Func()
	p.Rest.VoltsAt.Y = slices.Clone(p.Rest.VoltsAt.Y)
	for i, x := range p.Rest.VoltsAt.X {
		p.Rest.VoltsAt.Y[i] = mean(p.Rest.VoltsAt.Y[i], rest(x))
	}
	return p
}

// ohms is a pack's resistance at half charge as its cells have it, as age and tabs have
// raised the ohmic part, and as age has raised all of it, see [battery.Spec].
type ohms struct{ half, ohmic, grown float64 }

func ohmsOf(s *battery.Spec) ohms {
	if s.ResistanceOhm > 0 {
		return ohms{s.ResistanceOhm, s.ResistanceOhm, s.ResistanceOhm}
	}
	factor := cmp.Or(s.ResistanceFactor, s.Profile.Resistance.Growth(s.Health))
	half := factor * float64(s.CellsInSeries) * s.Profile.Resistance.OhmAh.At(0.5) / s.CapacityAh
	return ohms{half, half * cmp.Or(s.OhmicFactor, 1), half * cmp.Or(s.Grown, 1)}
}
