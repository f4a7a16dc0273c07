package setup

import (
	"cmp"
	"fmt"
	"math"
	"slices"

	"example.org/packcheck/battery"
	"example.org/packcheck/charge"
	"example.org/packcheck/chemistry"
	"example.org/packcheck/internal/cellfit"
	"example.org/packcheck/internal/later"
	"example.org/packcheck/internal/quantity"
	"example.org/packcheck/tables"
)

// widths is how far a battery may lie from what is printed on it, by what is
// known of its age and maker.
func (r *resolver) widths() battery.Widths {
	raw := r.setup.Pack
	maker := battery.MakerUnknown
	switch raw.Maker.Text {
	case "own":
		maker = battery.MakersOwn
	case "look-alike":
		maker = battery.Lookalike
	}
	return battery.WidthsOf(r.parts.Pack.Profile.Family, raw.Age.Text, maker)
}

// family settles of which measured cells the battery may be made, and how far it
// may lie from its label. A chemistry without a family, such as a user's own,
// stands for its cells; it tells neither what the label is worth nor how old they are.
func (r *resolver) family(raw Pack) {
	p := &r.parts.Pack
	hint := chemistry.Hint{Kind: chemistry.Kind(raw.Cells.Text)}
	if p.CapacityAh.Known && (raw.Strings.Given || p.Strings > 1) {
		hint.CellAh = p.CapacityAh.Likely / float64(p.Strings)
	}
	if raw.Mass.Given && p.CapacityAh.Known && p.Profile.Mass.CellShare > 0 {
		wh := p.Profile.NominalV * float64(p.CellsInSeries) * p.CapacityAh.Likely
		hint.WhPerKg = wh / raw.Mass.Likely / p.Profile.Mass.CellShare
	}
	hint.ChargeC = r.suppliedC()
	if sheet := raw.MaxCharge; sheet.Given && p.CapacityAh.Known {
		hint.ChargeC = max(hint.ChargeC, sheet.Low/p.CapacityAh.Likely)
	}
	hint.OhmicAh, hint.OhmSpread = r.ohmicAh(raw)
	cellAh := hint.CellAh
	if cellAh == 0 && p.CapacityAh.Known && p.CapacityAh.Likely <= oneStringAh {
		cellAh = p.CapacityAh.Likely
	}
	of := cellsOf{p.Profile.Name, hint, cellAh}
	list, known := r.cells[of]
	if !known {
		list = r.members(of)
		r.cells[of] = list
	}
	if p.Members = list; len(p.Members) > 1 {
		r.whichCells(raw)
	}
	r.offLabel(raw)
}

// whichCells leaves open which of the measured cells it is made of.
func (r *resolver) whichCells(raw Pack) {
	p := &r.parts.Pack
	source := firstSource(r.chem.FamilySource(p.Profile.Name))
	p.CellsAt = Figure{
		Range: quantity.Spread(0, 0.5, 1), Key: r.key("pack", "cells"), Known: true, Assumed: true, Law: Limits,
		Why: "Not told; drawn from measured cells of the kind.", Source: source, System: r.parts.System,
	}
	if p.CellsAt.Assumed = !raw.Cells.Given; p.CellsAt.Assumed {
		r.note(p.CellsAt.Key, fmt.Sprintf("one of %d measured ones", len(p.Members)), p.CellsAt.Why, source)
	}
}

// cellsOf says of which cells a pack may be made: what there is to know of it.
type cellsOf struct {
	chemistry string
	hint      chemistry.Hint
	cellAh    float64 // of one cell; 0 = not known
}

// members are the cells that a pack may be made of, by rising resistance.
func (r *resolver) members(of cellsOf) []chemistry.Member {
	p := r.parts.Pack.Profile
	list := r.chem.Members(of.chemistry)
	if len(list) < 2 {
		return []chemistry.Member{{Profile: p, Share: 1}}
	}
	list = chemistry.Shifted(list, of.hint)
	for i := range list { // in words it is the kind that was told, whichever cell is drawn
		list[i] = list[i].ChargedAs(of.cellAh)
		list[i].Profile.Title = p.Title
	}
	return byResistance(list)
}

// What a told resistance says of the kind of cells is blurred by what the pack's age has
// added, which is within about this where nobody told the age (chemistry: 1.6 to 1.9
// times at 80 %), and by what cells of a kind differ.
const ohmicOfAge, ohmicOfKind = 0.2, 0.25

// ohmicAh is the ohmic resistance of one new cell times its Ah, by the resistance that
// was told of the pack, and how sure that is as a share; 0 where none was told.
func (r *resolver) ohmicAh(raw Pack) (ohmAh, spread float64) {
	p, w := &r.parts.Pack, r.widths()
	if !raw.Resistance.Given || !p.CapacityAh.Known {
		return 0, 0
	}
	health := w.Health.Likely
	if raw.Health.Given {
		health = raw.Health.Likely
	}
	told := raw.Resistance
	ohm := max(told.Likely-w.TabsOhm.Likely, told.Likely/2)
	spread = math.Hypot(ohmicOfKind, math.Log(told.High/told.Low)/(2*endSigma))
	if !raw.Age.Given && !raw.Health.Given {
		spread = math.Hypot(spread, ohmicOfAge)
	}
	return ohm / battery.GrowthAt(health, w.GrowthAt80.Likely) * p.CapacityAh.Likely / float64(p.CellsInSeries), spread
}

// suppliedC is the current of a charger that came with the pack over what the pack's
// label says, 1/h; 0 where none did, or nobody told its amps.
func (r *resolver) suppliedC() float64 {
	raw, p := &r.setup.Charger, &r.parts.Pack
	if !raw.CameWithPack.Yes || r.oldPack() || !p.CapacityAh.Known {
		return 0
	}
	amps := raw.Current.High
	if !raw.Current.Given && raw.Label.Given {
		if l, err := charge.ParseLabel(raw.Label.Text); err == nil {
			amps = l.PrintedA
		}
	}
	return amps / p.CapacityAh.Likely
}

// oneStringAh is up to how many Ah a lithium pack has one string: nobody makes packs of
// two strings of such small cells (common practice, no published source).
const oneStringAh = 2.0

// byResistance sorts members by rising resistance.
func byResistance(members []chemistry.Member) []chemistry.Member {
	ohms, at := make([]float64, len(members)), make([]int, len(members))
	for i := range members {
		ohms[i], at[i] = members[i].OhmAhAtHalf(), i
	}
	slices.SortStableFunc(at, func(a, b int) int { return cmp.Compare(ohms[a], ohms[b]) })
	out := make([]chemistry.Member, len(members))
	for i, k := range at {
		out[i] = members[k]
	}
	return out
}

// offLabel settles how far battery and label, and battery and model, may lie
// apart.
func (r *resolver) offLabel(raw Pack) {
	p, w := &r.parts.Pack, r.widths()
	given := map[string]bool{"maker": raw.Maker.Given, "watches_cells": raw.WatchesCells.Given}
	told := func(f *Figure, name string, v tables.Value, shown, why string) {
		if !v.Known() {
			return
		}
		*f = r.derived(blank{table: "pack", name: name, kind: quantity.NoKind, Range: span(v), why: why, source: v.Source})
		if shown != "" && !given[name] {
			f.Assumed = true
			r.note(f.Key, fmt.Sprintf(shown, 100*v.Low, 100*v.High), why, v.Source)
		}
	}
	if !raw.Tested.Yes { // what it gave is no promise
		told(&p.Honesty, "maker", w.Honesty, "holds %.0f to %.0f %% of its label when new", "Not told whose it is; makers' own packs hold what they say, look-alikes half of it.")
		if p.Profile.Family == chemistry.Lithium && !raw.Maker.Given {
			r.eitherMaker()
		}
	}
	if !raw.WatchesCells.Yes { // what opens for the weakest cell does so as if all were like it
		told(&p.Weakest, "watches_cells", w.Weakest, "the weakest cell lacks %.1f to %.0f %% of the charge", "Not measured; what the weakest cell of such packs lacks.")
	}
	told(&p.GrowthAt80, "resistance_growth", w.GrowthAt80, "", "How much the resistance grows with age.")
	if read, is := r.leadWear(); is {
		p.GrowthAt80.mix, p.GrowthAt80.Range = read.growth, read.growth.ends()
	}
	told(&p.Steepness, "steepness", w.Steepness, "", "How much less such blocks give when they are emptied fast.")
	if raw.Tested.Yes {
		r.testedOver(raw, told)
	}
	told(&p.TabsOhm, "tabs", w.TabsOhm, "", "Resistance of tabs and terminals.")
	told(&p.HottestK, "heat_doubt", w.HottestK, "", "What the computed temperature may be off.")
	p.HottestK.kind = quantity.Temperature // a difference, drawn on a straight scale
	told(&p.ChargeHours, "charge_doubt", w.ChargeHours, "", "What the computed hours of a charge may be off.")
}

// anyAge is the health of a sealed lead-acid battery of which nobody told how old it is.
var anyAge = later.Value[*mixture]{Make: func() *mixture { return ofHealth(battery.LeadHealth()) }}

// wear is what a sealed lead-acid battery may hold and how its resistance may have grown.
type wear struct{ health, growth *mixture }

// wearByWord are those with which somebody read what wear shows by, by the word for their age;
// none where nobody told it. They are worked out once: they are the same for all.
var wearByWord = later.Value[map[string]wear]{Make: func() map[string]wear {
	all := map[string]wear{}
	for _, age := range append(battery.Ages(), "") {
		if age == "new" { // nobody reads wear of one
			continue
		}
		var kinds []kind
		for _, g := range battery.LeadGrowthRead(age) {
			kinds = append(kinds, kind{span(g.GrowthAt80), g.Share})
		}
		growth, _ := mixed(kinds...)
		all[age] = wear{ofHealth(battery.LeadHealthRead(age)), growth}
	}
	return all
}}

func ofHealth(shares []battery.HealthShare) *mixture {
	var kinds []kind
	for _, h := range shares {
		kinds = append(kinds, kind{span(h.Health), h.Share})
	}
	m, _ := mixed(kinds...)
	return m
}

// cooling settles how well the air cools the battery.
func (r *resolver) cooling() {
	p, w := &r.parts.Pack, r.widths()
	p.CoolingWM2K = r.derived(blank{
		table: "pack", name: "cooling", kind: quantity.NoKind, Range: span(w.StillWM2K), source: w.StillWM2K.Source,
		why: "How well still air cools a battery.",
	})
	if p.ClosedShell {
		p.ShellShare = r.derived(blank{
			table: "pack", name: "shell_cooling", kind: quantity.NoKind, Range: span(w.ShellShare), source: w.ShellShare.Source,
			why: "How much of that a closed shell leaves.",
		})
	}
}

// lookalikeShare is how many of the lithium packs whose maker is not told are
// look-alikes: the source of the honesty of an unknown maker. fastShare is how many
// of these come with a charger that no cells of so little charge would take: a pack's
// maker knows what is in it (own choice, as of kinds of cells).
const lookalikeShare, fastShare = 0.25, 0.02

// eitherMaker settles what a pack of the maker or a look-alike holds over its
// label, each with its own law.
func (r *resolver) eitherMaker() {
	p, age := &r.parts.Pack, r.setup.Pack.Age.Text
	own := battery.WidthsOf(p.Profile.Family, age, battery.MakersOwn).Honesty
	other := battery.WidthsOf(p.Profile.Family, age, battery.Lookalike).Honesty
	share, most := lookalikeShare, 0.0
	for i := range p.Members {
		most = max(most, p.Members[i].Profile.Charge.KindMostC())
	}
	if r.suppliedC() > most*other.Likely {
		share *= fastShare / (1 - share + share*fastShare)
	}
	p.Honesty.mix, p.Honesty.Range = mixed(kind{span(own), 1 - share}, kind{span(other), share})
}

// testedOver settles what a battery gives at other currents than the one that it was
// tested at.
func (r *resolver) testedOver(raw Pack, told func(f *Figure, name string, v tables.Value, shown, why string)) {
	p, over := &r.parts.Pack, raw.TestedOver
	if over.Given {
		p.TestedHours = math.Sqrt(over.Low*over.High) / 3600
	}
	several, lead, bound := over.Given && over.High > cellfit.SeveralFrom*over.Low, p.Profile.Family == chemistry.LeadAcid, p.Profile.Wells.C < 1
	const why = "How much less it gives when it is emptied faster than it was tested, or more when slower."
	switch own := len(p.Members) == 1; {
	case !own || lead && several:
	case lead:
		told(&p.Steepness, "steepness", r.tab.Figure(tables.SteepnessOwnLead).Value, "", why)
	case bound:
		told(&p.Steepness, "steepness", r.tab.Figure(tables.SteepnessOwnLithium).Value, "", why)
	case !several:
		told(&p.LeftBehind, "left_behind", r.tab.Figure(tables.LeftBehindLithium).Value, "", why)
	}
}
