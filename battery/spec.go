package battery

import (
	"errors"
	"fmt"

	"example.org/packcheck/chemistry"
)

// LeastTempC and MostTempC bound the temperatures, in deg C, at which packages
// on packs compute one: what lies beyond is a slip of whoever typed it, and no place
// where anybody keeps a pack. Own choice.
const LeastTempC, MostTempC = -60.0, 100.0

// Spec describes one pack.
type Spec struct {
	Profile       chemistry.Profile
	CellsInSeries int     // at least 1
	Strings       int     // in parallel; 0 = 1 (a capacity of the whole pack makes it matter only for single cells)
	CapacityAh    float64 // label capacity of the whole pack, > 0
	RateHours     float64 // hours over which CapacityAh is rated; 0 = the profile's
	Health        float64 // capacity left over capacity when new, 0.01 to 1.5 (above 1: it holds more than its label says); 0 = 1

	// ResistanceOhm is the ohmic resistance of the whole pack at half charge
	// and the profile's reference temperature; 0 = from the profile. The
	// profile's branches are scaled with it.
	ResistanceOhm float64
	// ResistanceFactor multiplies the profile's resistance; 0 = from Health.
	// It is not applied to a ResistanceOhm that was given.
	ResistanceFactor float64
	// OhmicFactor multiplies the ohmic part alone, whatever that is: what age adds
	// to lithium, and tabs; 0 = 1.
	OhmicFactor float64
	// Grown is by what of it age has grown. A charge meets it in the branches too (see
	// [Model.Charging]); 0 = 1.
	Grown float64

	// CoolingWM2K and ShellShare stand in place of those of [chemistry.Heat]; 0 =
	// the profile's.
	CoolingWM2K, ShellShare float64

	ClosedShell bool    // the pack sits in a closed shell: less cooling
	MassKg      float64 // 0 = by the profile's rule
	MaxCurrentA float64 // greatest lasting current of the whole pack; 0 = from the profile

	// WellC, WellKPerS and WellRatio stand in place of the profile's wells (see
	// [chemistry.WellShape] and Ratio of [chemistry.Capacity]), which say how
	// steeply capacity falls with current; 0 = the profile's. They belong
	// together: a ratio alone moves the capacity at every rate.
	WellC     float64 // share of the available well, up to 1
	WellKPerS float64 // valve constant, 1/s
	WellRatio float64 // charge in both wells over the capacity of the label

	// WeakestShort is the share of capacity that the weakest cell lacks; 0 =
	// from the profile and Health.
	WeakestShort float64
	// CellsAlike says that no cell is weaker than the others, or that electronics
	// open for the weakest as if they were; WeakestShort then counts for nothing.
	CellsAlike bool
}

// figures is a [Spec] that shares its profile, which is ten times as large as
// the rest.
type figures struct {
	Profile                         *chemistry.Profile
	CellsInSeries, Strings          int
	CapacityAh, RateHours, Health   float64
	ResistanceOhm, ResistanceFactor float64
	OhmicFactor, Grown              float64
	CoolingWM2K, ShellShare         float64
	ClosedShell                     bool
	MassKg, MaxCurrentA             float64
	WellC, WellKPerS, WellRatio     float64
	WeakestShort                    float64
	CellsAlike                      bool
}

func figuresOf(s *Spec) figures {
	return figures{
		CellsInSeries: s.CellsInSeries, Strings: s.Strings,
		CapacityAh: s.CapacityAh, RateHours: s.RateHours, Health: s.Health,
		ResistanceOhm: s.ResistanceOhm, ResistanceFactor: s.ResistanceFactor, OhmicFactor: s.OhmicFactor, Grown: s.Grown,
		CoolingWM2K: s.CoolingWM2K, ShellShare: s.ShellShare,
		ClosedShell: s.ClosedShell, MassKg: s.MassKg, MaxCurrentA: s.MaxCurrentA,
		WellC: s.WellC, WellKPerS: s.WellKPerS, WellRatio: s.WellRatio, WeakestShort: s.WeakestShort, CellsAlike: s.CellsAlike,
	}
}

// spec is the way back.
func (f *figures) spec() Spec {
	return Spec{
		Profile: *f.Profile, CellsInSeries: f.CellsInSeries, Strings: f.Strings,
		CapacityAh: f.CapacityAh, RateHours: f.RateHours, Health: f.Health,
		ResistanceOhm: f.ResistanceOhm, ResistanceFactor: f.ResistanceFactor, OhmicFactor: f.OhmicFactor, Grown: f.Grown,
		CoolingWM2K: f.CoolingWM2K, ShellShare: f.ShellShare,
		ClosedShell: f.ClosedShell, MassKg: f.MassKg, MaxCurrentA: f.MaxCurrentA,
		WellC: f.WellC, WellKPerS: f.WellKPerS, WellRatio: f.WellRatio, WeakestShort: f.WeakestShort, CellsAlike: f.CellsAlike,
	}
}

// complete fills in the defaults for a pack of the profile and says what
// cannot be computed, beside what is wrong with the profile. Of what follows from
// profile and figures it speaks only where these are right.
func (f *figures) complete(p *chemistry.Profile, wrong error) error {
	given := *f
	orElse := func(value *float64, otherwise float64) {
		if *value == 0 {
			*value = otherwise
		}
	}
	if f.Strings == 0 {
		f.Strings = 1
	}
	orElse(&f.Health, 1)
	orElse(&f.RateHours, p.Capacity.RatedHours)
	orElse(&f.ResistanceFactor, p.Resistance.Growth(f.Health))
	orElse(&f.OhmicFactor, 1)
	orElse(&f.Grown, 1)
	orElse(&f.CoolingWM2K, p.Heat.CoolingWM2K)
	orElse(&f.ShellShare, p.Heat.ShellShare)
	orElse(&f.WellC, p.Wells.C)
	orElse(&f.WellKPerS, p.Wells.KPerS)
	orElse(&f.WellRatio, p.Capacity.Ratio)
	var faults, follow []error
	if wrong != nil {
		faults = append(faults, wrong)
	}
	for _, g := range [...]struct {
		name          string
		value, lo, hi float64
		follows       bool // nobody gave it
	}{
		{"CellsInSeries", float64(f.CellsInSeries), 1, 1000, false},
		{"Strings", float64(f.Strings), 1, 1000, false},
		{"CapacityAh", f.CapacityAh, 1e-3, 1e5, false},
		{"RateHours", f.RateHours, 1e-3, 1000, given.RateHours == 0},
		{"Health", f.Health, 0.01, 1.5, false},
		{"ResistanceOhm", f.ResistanceOhm, 0, 1000, false},
		{"ResistanceFactor", f.ResistanceFactor, 0.01, 100, given.ResistanceFactor == 0},
		{"OhmicFactor", f.OhmicFactor, 0.01, 1e4, false},
		{"Grown", f.Grown, 0.01, 1e4, false},
		{"CoolingWM2K", f.CoolingWM2K, 1e-12, 1e5, given.CoolingWM2K == 0},
		{"ShellShare", f.ShellShare, 1e-3, 1, given.ShellShare == 0},
		{"MassKg", f.MassKg, 0, 1e5, false},
		{"MaxCurrentA", f.MaxCurrentA, 0, 1e6, false},
		{"WellC", f.WellC, 1e-3, 1, given.WellC == 0},
		{"WellKPerS", f.WellKPerS, 0, 100, given.WellKPerS == 0},
		{"WellRatio", f.WellRatio, 0.01, 100, given.WellRatio == 0},
		{"WeakestShort", f.WeakestShort, 0, 0.9, false},
	} {
		if !(g.value >= g.lo && g.value <= g.hi) {
			list := &faults
			if g.follows {
				list = &follow
			}
			*list = append(*list, fmt.Errorf("battery: %s is %g, want %g to %g", g.name, g.value, g.lo, g.hi))
		}
	}
	if len(faults) == 0 {
		faults = follow
	}
	return errors.Join(faults...)
}
