package chemistry

import (
	"fmt"
	"maps"
	"math"
	"slices"
)

// kinds are the kinds that a member may be of.
var kinds = [...]Kind{Power, Middle, Energy, General, HighRate, LongLife, Cyclic}

// readMembers reads the cells of families. Each is a chemistry like any other,
// but none that a battery may be said to have.
func readMembers(groups map[string]*group, have, next *Set) {
	for _, name := range slices.Sorted(maps.Keys(groups)) {
		g := groups[name]
		m := Member{
			Kind:      Kind(g.textOr("kind", "")),
			CellAh:    g.numOr("cell_ah", 0, 0, 1000),
			PrintedAh: g.numOr("printed_ah", 0, 0, 1000),
			CellKg:    g.numOr("cell_kg", 0, 0, 100),
		}
		if m.Kind != anyOfKind && !slices.Contains(kinds[:], m.Kind) {
			g.doc.fault(g.key+".kind", string(m.Kind), fmt.Sprintf("one of %q", kinds))
		}
		m.Profile = readProfile(g, name, have, next)
		next.members = next.members.With(name, m)
	}
}

// readCharging reads what the makers of members print that they may be charged
// with at most.
func readCharging(groups map[string]*group, next *Set) {
	known := next.sources.Has
	for _, name := range slices.Sorted(maps.Keys(groups)) {
		g := groups[name]
		m, ok := next.members.Get(name)
		if !ok {
			g.doc.fault(g.key, name, "the name of a [member.NAME] table")
		}
		m.Profile.Charge.MaxC, m.Profile.Charge.Source = g.num("max_c", 0.001, 100), g.source(known)
		g.done()
		next.members = next.members.With(name, m)
	}
}

// sharesOff is how far shares may add up to something else than 1, for what
// rounding does to them.
const sharesOff = 1e-3

// readFamilies reads which members a chemistry is drawn from.
func readFamilies(groups map[string]*group, next *Set) {
	known := next.sources.Has
	for _, name := range slices.Sorted(maps.Keys(groups)) {
		g := groups[name]
		f := family{title: g.text("title"), members: g.texts("members"), shares: g.nums("shares", 0, 1), source: g.source(known)}
		g.done()
		for _, member := range f.members {
			if !next.members.Has(member) && !next.profiles.Has(member) {
				g.doc.fault(g.key+".members", member, "names of [member.NAME] or [chemistry.NAME] tables")
			}
		}
		sum := 0.0
		for _, share := range f.shares {
			sum += share
		}
		if len(f.shares) != len(f.members) || math.Abs(sum-1) > sharesOff {
			g.doc.fault(g.key+".shares", fmt.Sprintf("%d shares, together %.4g", len(f.shares), sum), fmt.Sprintf("%d shares that add up to 1", len(f.members)))
			continue
		}
		for i := range f.shares {
			f.shares[i] /= sum
		}
		next.families = next.families.With(name, f)
	}
}
