package chemistry

import (
	"math"
	"slices"
)

// Kind says what a cell or block was made for.
type Kind string

// The kinds.
const (
	Power     Kind = "power"     // lithium: high currents, less charge
	Middle    Kind = "middle"    // lithium: in between
	Energy    Kind = "energy"    // lithium: much charge, more resistance
	General   Kind = "general"   // lead-acid: standby and everything else
	HighRate  Kind = "high-rate" // lead-acid: made for minutes
	LongLife  Kind = "long-life" // lead-acid: made for years on float
	Cyclic    Kind = "cyclic"    // lead-acid: made for deep discharges, traction
	anyOfKind Kind = ""
)

// Member is one measured or published cell (or block) of a family: a real one,
// whose resistance, charge and voltages belong together.
type Member struct {
	Profile   Profile
	Kind      Kind
	Share     float64 // of the family, 0..1; all of a family add up to 1
	CellAh    float64 // what it gave over the profile's rated hours when new; 0 = not told
	PrintedAh float64 // what its label says; 0 = not told
	CellKg    float64 // 0 = not told
}

// OhmAhAtHalf is the member's resistance over ten seconds or so at half charge
// and reference temperature, for 1 Ah: the ohmic part, both branches as far as
// they get in ten seconds, and what the rest voltage falls by as charge flows out.
func (m Member) OhmAhAtHalf() float64 {
	const half, longS = 0.5, 10
	p := m.Profile
	part := func(b Branch) float64 { return -math.Expm1(-longS/b.TauS) * b.OhmAh.At(half) }
	rest := p.Rest.VoltsAt.Func()
	slope := (rest(half+0.05) - rest(half-0.05)) / 0.1
	return p.Resistance.OhmAh.At(half) + part(p.Fast) + part(p.Slow) + slope/p.Capacity.Ratio*longS/3600
}

// What the sheets of power cells print as the greatest charging current, A a cell,
// whatever their size (source "fast-charging-sheets"): 4 A of 2.0, 2.5 and 3.0 Ah, 6 A of
// 2.8 and 4 Ah.
const leastPowerA, mostPowerA = 4.0, 6.0

// ChargedAs returns the member standing for cells of another printed Ah: such power
// cells may be charged with as much over their Ah as the sheets of any size allow, and
// no more than any of the kind.
func (m Member) ChargedAs(cellAh float64) Member {
	if c := &m.Profile.Charge; m.Kind == Power && cellAh > 0 {
		c.MaxC = min(max(c.MaxC, leastPowerA/cellAh), mostPowerA/cellAh, c.KindMostC())
	}
	return m
}

// family is a set of members by name, with shares that add up to 1.
type family struct {
	title   string
	members []string
	shares  []float64
	source  string
}

// Members returns the cells that a battery of this chemistry may be made of,
// always in the same order, with shares that add up to 1. A chemistry without a
// family, such as a user's own, has one member: itself. An unknown name gives
// none.
//
// Draw a member by its share ([Pick]); a figure that is known of the battery
// shifts the shares first ([Shifted]).
func (s *Set) Members(name string) []Member {
	f, ok := s.families.Get(name)
	if !ok {
		p, ok := s.Profile(name)
		if !ok {
			return nil
		}
		return []Member{{Profile: p, Share: 1}}
	}
	out := make([]Member, len(f.members))
	for i, member := range f.members {
		m, ok := s.members.Get(member)
		if !ok {
			m.Profile, _ = s.profiles.Get(member)
			m.Kind = kindOf(&m.Profile)
		}
		m.Profile = m.Profile.copy()
		m.Share = f.shares[i]
		out[i] = m
	}
	for i := range out {
		for _, m := range out {
			if m.Kind == out[i].Kind {
				out[i].Profile.Charge.KindC = max(out[i].Profile.Charge.KindC, m.Profile.Charge.MaxC)
			}
		}
	}
	return out
}

// kindOf is the kind of a chemistry that is a member of its own family.
func kindOf(p *Profile) Kind {
	switch p.Name {
	case "agm":
		return General
	case "agm-traction":
		return Cyclic
	}
	return anyOfKind
}

// FamilySource returns the IDs of the sources of a family's shares, comma
// separated; empty where the chemistry has no family.
func (s *Set) FamilySource(name string) string {
	f, _ := s.families.Get(name)
	return f.source
}

// Families returns the names that have a family of members, sorted.
func (s *Set) Families() []string { return s.families.Names() }

// Member returns one member by its own name, with share 1.
func (s *Set) Member(name string) (Member, bool) {
	m, ok := s.members.Get(name)
	m.Profile, m.Share = m.Profile.copy(), 1
	return m, ok
}

// MemberNames returns the names of all members, sorted.
func (s *Set) MemberNames() []string { return s.members.Names() }

// Pick returns the index of the member that u, from 0 to 1, falls on when the
// shares are laid end to end.
func Pick(members []Member, u float64) int {
	for i, m := range members {
		if u -= m.Share; u < 0 {
			return i
		}
	}
	return max(len(members)-1, 0)
}

// Hint is what is known of a battery that speaks for some members of its
// family and against others. The zero value says nothing.
type Hint struct {
	Kind   Kind    // the kind of cell or block, where it is told
	CellAh float64 // printed capacity of one cell: of the pack, divided by its strings
	// OhmAh is a measured resistance of ten seconds or so at half charge, of one
	// cell times its printed Ah; OhmSpread is its standard uncertainty as a
	// share, what a cell differs from its kind included (0 = 0.25).
	OhmAh, OhmSpread float64
	OhmicAh          float64 // likewise of a second at most: what a meter shows
	WhPerKg          float64 // of the bare cells
	// ChargeC is the current of the charger that the battery's maker supplied with
	// it, or that its sheet allows, over its printed Ah, 1/h.
	ChargeC float64
}

// How sharply a hint speaks. A cell's printed Ah places it among the kinds to about
// a sixth (energy and power 18650s of one generation differ by 0.5 Ah in 3). Common
// practice, no published source.
const (
	ahSpread      = 0.16
	ohmSpread     = 0.25
	densitySpread = 0.12
	leastOfKind   = 0.02 // a told kind may be wrong in one case of fifty, and so may a charger be for its own pack
)

// Shifted returns the members with their shares changed by what is known: by
// Bayes's rule, each share times how well the member agrees, or by size its kind. A
// hint that agrees with none leaves the shares as they were.
func Shifted(members []Member, h Hint) []Member {
	out := slices.Clone(members)
	sum := 0.0
	for i := range out {
		out[i].Share *= out[i].agrees(h) * sizeAgrees(members, out[i].Kind, h)
		sum += out[i].Share
	}
	if !(sum > 1e-12) {
		return slices.Clone(members)
	}
	for i := range out {
		out[i].Share /= sum
	}
	return out
}

// sizeAgrees is how well a kind of cell goes with printed Ah and mass. They tell the
// kind and no more: of two power cells of 3.0 Ah one has three times the resistance,
// and cells left out of their kind were foretold worse where the nearest in size counted most.
func sizeAgrees(members []Member, kind Kind, h Hint) float64 {
	of, agree := 0.0, 0.0
	for i := range members {
		if m := &members[i]; m.Kind == kind {
			of += m.Share
			agree += m.Share * m.sized(h)
		}
	}
	if !(of > 0) {
		return 1
	}
	return agree / of
}

// near is Student's law with three degrees of freedom or so: hints may be wrong.
func near(known, own, spread float64) float64 {
	if !(known > 0 && own > 0) {
		return 1
	}
	z := math.Log(known/own) / spread
	return 1 / ((1 + z*z/4) * (1 + z*z/4))
}

// sized is how well a member goes with printed Ah and mass.
func (m *Member) sized(h Hint) float64 {
	if m.Profile.Family != Lithium { // a block comes in every size
		return 1
	}
	printed := m.PrintedAh
	if printed == 0 {
		printed = m.CellAh
	}
	weight := near(h.CellAh, printed, ahSpread)
	if m.CellKg > 0 {
		weight *= near(h.WhPerKg, m.Profile.NominalV*printed/m.CellKg, densitySpread)
	}
	return weight
}

// agrees is how well a member goes with what is known, 1 = fully or not asked.
func (m Member) agrees(h Hint) float64 {
	weight := 1.0
	if h.Kind != anyOfKind && m.Kind != anyOfKind && h.Kind != m.Kind {
		weight = leastOfKind
	}
	if h.Kind == anyOfKind && h.ChargeC > m.Profile.Charge.KindMostC() { // no maker would have chosen these cells for it
		weight *= leastOfKind
	}
	spread := h.OhmSpread
	if spread == 0 {
		spread = ohmSpread
	}
	if h.OhmAh > 0 { // the member's own takes several curves
		weight *= near(h.OhmAh, m.OhmAhAtHalf(), spread)
	}
	if h.OhmicAh > 0 {
		weight *= near(h.OhmicAh, m.Profile.Resistance.OhmAh.At(0.5), spread)
	}
	return weight
}
