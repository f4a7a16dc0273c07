package chemistry

import (
	"fmt"
	"io"
	"maps"
	"slices"
	"strings"

	"example.org/packcheck/answer"
	"example.org/packcheck/internal/nesting"
	"github.com/BurntSushi/toml"
)

// maxFileBytes bounds what Extend reads; a chemistry is a few kilobytes.
const maxFileBytes = 1 << 20

// deepest is what no honest chemistry file comes near.
var deepest = nesting.Bounds{Depth: 16, KeyParts: 16, Values: 20000}

// topTables are the tables of a chemistry file.
var topTables = [...]string{"source", "chemistry", "member", "charging", "family"}

// Extend reads chemistries from TOML (the name is only used in errors) and
// returns a new set that has them as well; one of the same name replaces the
// old one. A chemistry may say based_on = "li-ion" and give only the groups
// that differ. Where the old one had a family of members, the new one stands
// for all of it. The file is held to the same checks as the embedded ones: a
// group of values without a source does not load, nor does an unknown key, a
// curve that does not rise, or a voltage ladder out of order. All faults are
// reported at once, as [Faults].
func (s *Set) Extend(r io.Reader, name string) (*Set, error) {
	text, err := io.ReadAll(io.LimitReader(r, maxFileBytes+1))
	if err != nil {
		return nil, fmt.Errorf("%s: %w", name, err)
	}
	if len(text) > maxFileBytes {
		return nil, Faults{{File: name, Read: "more than 1 MB", Want: "a chemistry file of a few kilobytes"}}
	}
	if problem, line := nesting.Check(string(text), deepest); problem != "" {
		return nil, Faults{{File: name, Line: line, Read: problem, Want: "a chemistry file, which nests three deep"}}
	}
	doc := &document{file: name}
	var tree map[string]any
	if _, err := toml.Decode(string(text), &tree); err != nil {
		line, message := nesting.Unreadable(err) // what stands in a file that is none of ours is not said
		return nil, Faults{{File: name, Line: line, Read: "what is no TOML", Want: "a TOML file: " + message}}
	}
	doc.lines = locate(string(text))
	copied := *s // adding a row copies what it is added to
	next := &copied
	for _, key := range slices.Sorted(maps.Keys(tree)) {
		if !slices.Contains(topTables[:], key) {
			doc.fault(key, key, "[source.ID], [chemistry.NAME], [member.NAME], [charging.MEMBER] and [family.NAME]")
		}
	}
	root := &group{doc: doc, rows: tree}
	for id, g := range tables(root, "source") {
		next.sources = next.sources.With(id, answer.Source{ID: id, Text: g.text("text"), Known: g.text("known")})
		g.done()
	}
	profiles := tables(root, "chemistry")
	for _, name := range slices.Sorted(maps.Keys(profiles)) {
		next.profiles = next.profiles.With(name, readProfile(profiles[name], name, s, next))
		next.families = next.families.Without(name) // a chemistry given anew replaces the whole family
	}
	readMembers(tables(root, "member"), s, next)
	readCharging(tables(root, "charging"), next)
	readFamilies(tables(root, "family"), next)
	if len(doc.faults) > 0 {
		return nil, doc.faults.Sorted()
	}
	return next, nil
}

// tables takes the named tables below one top-level key.
func tables(root *group, key string) map[string]*group {
	value, ok := root.rows[key]
	if !ok {
		return nil
	}
	all, ok := value.(map[string]any)
	if !ok {
		root.doc.fault(key, describe(value), "tables ["+key+".NAME]")
		return nil
	}
	parent := &group{doc: root.doc, key: key, rows: maps.Clone(all)}
	out := map[string]*group{}
	for name := range all {
		if strings.Trim(name, "abcdefghijklmnopqrstuvwxyzABCDEFGHIJKLMNOPQRSTUVWXYZ0123456789-_") != "" || name == "" {
			root.doc.fault(key+"."+name, name, "a name of letters, digits, - and _")
		}
		if g, ok := parent.table(name); ok {
			out[name] = g
		}
	}
	return out
}

// groupNames are the tables of a chemistry, in the order of the format.
var groupNames = [...]string{
	"ladder", "end_volts", "rest", "resistance", "fast", "slow", "wells",
	"capacity", "keeping", "heat", "mass", "spread", "charge", "discharge", optionalGroup,
}

// optionalGroup is the one that a chemistry may be without.
const optionalGroup = "acceptance"

// readProfile reads one chemistry; groups that are left out come from the one
// it is based on.
func readProfile(g *group, name string, have, next *Set) Profile {
	var p Profile
	baseName := g.textOr("based_on", "")
	base, based := have.profiles.Get(baseName)
	if based {
		p = base
		p.Title = g.textOr("title", p.Title)
	} else {
		if baseName != "" {
			g.doc.fault(g.key+".based_on", baseName, "one of "+strings.Join(have.Names(), ", "))
		}
		p.Title = g.text("title")
	}
	p.Name = name
	family := Family(g.textOr("family", string(p.Family)))
	if family != LeadAcid && family != Lithium && family != Nickel {
		g.doc.fault(g.key+".family", string(family), `"lead-acid", "lithium" or "nickel"`)
	}
	p.Family = family
	known := next.sources.Has
	for _, part := range groupNames {
		sub, ok := g.table(part)
		switch {
		case ok:
			source := sub.source(known)
			readGroup(&p, part, sub, source)
		case !based && part != optionalGroup:
			g.doc.fault(g.key+"."+part, "", "a table ["+g.key+"."+part+"]")
		}
	}
	g.done()
	if len(g.doc.faults) == 0 {
		checkProfile(g, p)
	}
	return p
}

// readGroup reads one table into its place.
func readGroup(p *Profile, part string, g *group, source string) {
	switch part {
	case "ladder":
		p.NominalV, p.FullV = g.num("nominal_v", 0.5, 5), g.num("full_v", 0.5, 5)
		p.EmptyV, p.HarmV = g.num("empty_v", 0.1, 5), g.num("harm_v", 0, 5)
		p.NeverRechargeV, p.LadderSource = g.numOr("never_recharge_v", 0, 0, 5), source
	case "end_volts":
		p.End = EndVolts{UpToC: g.nums("up_to_c", 0, 1000), Volts: g.nums("volts", 0.1, 5), Source: source}
	case "rest":
		p.Rest = RestCurve{
			VoltsAt:   g.curve("charge", "volts", bounds{0, 1, 0.1, 5}),
			OverFullV: g.numOr("over_full_v", 0, 0, 20), SpreadV: g.num("spread_v", 0, 1),
			SurfaceV: g.num("surface_v", 0, 1), UnderV: g.num("under_v", 0, 1),
			SettleH: g.num("settle_h", 0.01, 100), Source: source,
		}
	case "resistance":
		p.Resistance = Resistance{
			ReferenceC:  g.num("reference_c", -20, 60),
			OhmAh:       g.curveOrFlat("charge", "ohm_ah", bounds{0, 1, 1e-6, 100}),
			TempFactor:  g.curve("temp_c", "factor", bounds{-60, 120, 0.01, 100}),
			Uncertainty: g.num("uncertainty", 0, 0.95), AtHealth80: g.num("at_health_80", 1, 20), Source: source,
		}
	case "fast", "slow":
		b := Branch{
			OhmAh: g.curveOrFlat("charge", "ohm_ah", bounds{0, 1, 0, 100}),
			TauS:  g.num("tau_s", 0.001, 1e6),
			KneeV: g.numOr("knee_v", 0, 0.001, 1), Source: source,
		}
		if g.has("temp_c") || g.has("factor") {
			b.TempFactor = g.curve("temp_c", "factor", bounds{-60, 120, 0.01, 1000})
		}
		if part == "fast" {
			p.Fast = b
		} else {
			p.Slow = b
		}
	case "wells":
		p.Wells = WellShape{C: g.num("c", 0.01, 1), KPerS: g.num("k_per_s", 0, 10), Source: source}
	case "capacity":
		p.Capacity = Capacity{
			RatedHours: g.num("rated_hours", 0.01, 1000), Ratio: g.num("ratio", 0.5, 3),
			HourShare:  g.curve("hours", "share", bounds{0.001, 1000, 0, 3}),
			TempFactor: g.curve("temp_c", "factor", bounds{-60, 120, 0.01, 2}), Source: source,
		}
	case "keeping":
		p.Keeping = Keeping{
			LossPerMonth: g.num("loss_per_month", 0, 1), AtC: g.num("at_c", -20, 60),
			DoublingK: g.numOr("doubling_k", 0, 0, 100), TopUpMonths: g.numOr("top_up_months", 0, 0, 120), Source: source,
		}
	case "heat":
		p.Heat = Heat{
			SpecificJKgK: g.num("specific_j_kg_k", 100, 5000), CoolingWM2K: g.num("cooling_w_m2_k", 0.1, 1000),
			ShellShare: g.num("shell_share", 0.01, 1), AreaM2PerKg23: g.num("area_m2_per_kg23", 1e-3, 1), Source: source,
		}
	case "mass":
		p.Mass = Mass{WhPerKg: g.num("wh_per_kg", 1, 2000), CellShare: g.num("cell_share", 0.05, 1), Source: source}
	case "spread":
		p.Spread = Spread{
			CapacityNew: g.num("capacity_new", 0, 0.5), CapacityOld: g.num("capacity_old", 0, 0.9),
			OhmNew: g.num("ohm_new", 0, 0.9), Source: source,
		}
	case "charge":
		p.Charge = ChargeLimits{
			CellV: g.num("cell_v", 0.5, 5), CellMaxV: g.num("cell_max_v", 0.5, 5),
			VPerK: g.numOr("v_per_k", 0, -0.05, 0), FloatV: g.numOr("float_v", 0, 0, 5), FloatVPerK: g.numOr("float_v_per_k", 0, -0.05, 0),
			MaxC: g.num("max_c", 0.001, 100), EndC: g.num("end_c", 0, 10), ReturnFactor: g.num("return_factor", 1, 3),
			MinTempC: g.num("min_temp_c", -60, 60), MaxTempC: g.num("max_temp_c", 0, 120),
			PrechargeV: g.numOr("precharge_v", 0, 0, 5), PrechargeC: g.numOr("precharge_c", 0, 0, 10),
			StorageCharge: g.num("storage_charge", 0, 1),
			ReducedBelowC: g.numOr("reduced_below_c", 0, -60, 60), ReducedShare: g.numOr("reduced_share", 0, 0, 1),
			HotAboveC: g.numOr("hot_above_c", 0, 0, 120), HotCellV: g.numOr("hot_cell_v", 0, 0, 5), Source: source,
			FullHoursByC: g.curve("current_c", "full_hours", bounds{0.001, 100, 0.01, 1000}),
		}
	case "acceptance":
		p.Acceptance = Acceptance{
			OhmAh: g.num("ohm_ah", 0, 100), Power: g.num("power", 0.1, 10), Offset: g.num("offset", 1e-4, 10),
			GasC: g.num("gas_c", 0, 1), GasV: g.num("gas_v", 0.5, 5), GasPer100mV: g.num("gas_per_100mv", 1, 100),
			GasDoublingK: g.num("gas_doubling_k", 1, 100), Source: source,
		}
	case "discharge":
		p.Discharge = DischargeLimits{
			MinTempC: g.num("min_temp_c", -60, 60), MaxTempC: g.num("max_temp_c", 0, 120),
			ContinuousC: g.num("continuous_c", 0.001, 1000), BurstC: g.num("burst_c", 0.001, 1000), Source: source,
		}
	}
	g.done()
}

// checkProfile looks at what single values cannot show.
func checkProfile(g *group, p Profile) {
	ladder := []float64{p.NeverRechargeV, p.HarmV, p.EmptyV, p.NominalV, p.FullV}
	if !slices.IsSorted(ladder) {
		g.doc.fault(g.key+".ladder", fmt.Sprintf("%g V", ladder), "never_recharge_v <= harm_v <= empty_v <= nominal_v <= full_v")
	}
	if !slices.IsSorted(p.Rest.VoltsAt.Y) {
		g.doc.fault(g.key+".rest.volts", "falls somewhere", "voltages that never fall as the charge rises")
	}
	if len(p.Rest.VoltsAt.X) < 2 {
		g.doc.fault(g.key+".rest.charge", "one value", "at least the two ends, 0 and 1")
	}
	if len(p.End.Volts) != len(p.End.UpToC)+1 {
		g.doc.fault(g.key+".end_volts.volts", fmt.Sprintf("%d values", len(p.End.Volts)), fmt.Sprintf("one more than up_to_c has: %d", len(p.End.UpToC)+1))
	}
	if !slices.IsSorted(p.End.UpToC) {
		g.doc.fault(g.key+".end_volts.up_to_c", "falls somewhere", "rising values")
	}
	if p.Charge.CellMaxV < p.Charge.CellV {
		g.doc.fault(g.key+".charge.cell_max_v", fmt.Sprintf("%g", p.Charge.CellMaxV), fmt.Sprintf("at least cell_v, %g", p.Charge.CellV))
	}
	if f := p.Resistance.TempFactor.At(p.Resistance.ReferenceC); f < 0.95 || f > 1.05 {
		g.doc.fault(g.key+".resistance.factor", fmt.Sprintf("%.3g at reference_c", f), "1 at reference_c")
	}
	for _, b := range []struct {
		name   string
		factor Curve
	}{{"fast", p.Fast.TempFactor}, {"slow", p.Slow.TempFactor}} {
		if f := b.factor.At(p.Resistance.ReferenceC); !b.factor.Empty() && (f < 0.95 || f > 1.05) {
			g.doc.fault(g.key+"."+b.name+".factor", fmt.Sprintf("%.3g at reference_c", f), "1 at reference_c")
		}
	}
	if p.Discharge.BurstC < p.Discharge.ContinuousC {
		g.doc.fault(g.key+".discharge.burst_c", fmt.Sprintf("%g", p.Discharge.BurstC), "at least continuous_c")
	}
}
