package battery

import (
	"example.org/packcheck/chemistry"
	"example.org/packcheck/tables"
)

// Maker says whose a battery is, as far as that is told.
type Maker int

// The makers.
const (
	MakerUnknown Maker = iota // not told
	MakersOwn                 // of the tool's or vehicle's maker, or an honest brand
	Lookalike                 // made to fit, by nobody in particular
)

// Widths is how far a battery lies from what is printed on it: each value with
// its 5, 50 and 95 % points. They are drawn one by one and belong to different
// places of a [Spec]:
//
//	CapacityAh       = label Ah * Honesty
//	Health           = Health
//	ResistanceFactor = Resistance
//	OhmicFactor      = growth of the health drawn (see [GrowthAt]); of lead-acid in ResistanceFactor
//	WeakestShort     = Weakest
//	Profile          = the member's, Steeper(Steepness) where it is lead-acid
//
// The highest temperature gets HottestK added, hours of charge are multiplied by
// ChargeHours: that is what the model itself is off.
type Widths struct {
	Honesty    tables.Value // charge when new over the label
	Health     tables.Value // charge now over that when new
	Resistance tables.Value // factor on the resistance of the member drawn
	GrowthAt80 tables.Value // factor on the resistance at 80 % health
	Weakest    tables.Value // share of the charge that the weakest cell lacks
	TabsOhm    tables.Value // of the whole pack, beside the cells; zero for blocks
	Steepness  tables.Value // see [chemistry.Profile.Steeper]; zero but for lead-acid

	CoolingWM2K, ShellShare tables.Value // of [chemistry.Heat]
	StillWM2K               tables.Value // CoolingWM2K where no fan blows
	HottestK                tables.Value
	ChargeHours             tables.Value // zero but for lithium
}

// Ages returns the words that [WidthsOf] knows an age by. Any other word, and
// none, means that it is not known.
func Ages() []string { return []string{"new", "1 year", "2 years", "3 years", "worn"} }

// healthFigures are the rows of the ages, lead-acid and lithium.
func healthFigures(age string) (lead, lithium tables.FigureName, ok bool) {
	switch age {
	case "new":
		return tables.HealthLeadNew, tables.HealthLithiumNew, true
	case "1 year":
		return tables.HealthLeadYear1, tables.HealthLithiumYear1, true
	case "2 years":
		return tables.HealthLeadYear2, tables.HealthLithiumYear2, true
	case "3 years":
		return tables.HealthLeadYear3, tables.HealthLithiumYear3, true
	case "worn":
		return tables.HealthLeadWorn, tables.HealthLithiumWorn, true
	}
	return "", "", false
}

// WidthsOf returns how far a battery of a family may lie from its label, by the
// word for its age and by whose it is. Where the age is not known, Health
// reaches from that of a worn or three years old battery to that of a new one. Nickel cells have
// no rows of their own and get those of lithium with the honesty of an unknown
// maker.
func WidthsOf(family chemistry.Family, age string, maker Maker) Widths {
	t := tables.Builtin()
	value := func(name tables.FigureName) tables.Value { return t.Figure(name).Value }
	w := Widths{
		Honesty: value(tables.LabelHonestyUnknown), Resistance: value(tables.ResistanceOtherLithium),
		GrowthAt80: value(tables.GrowthLithium), Weakest: value(tables.WeakestCellUsed), TabsOhm: value(tables.PackTabs),
		CoolingWM2K: value(tables.CoolingBare), ShellShare: value(tables.CoolingShell), StillWM2K: value(tables.CoolingStill), HottestK: value(tables.HottestDoubt),
	}
	if family == chemistry.Lithium {
		w.ChargeHours = value(tables.ChargeHoursDoubt)
	}
	if age == "new" {
		w.Weakest = value(tables.WeakestCellNew)
	}
	switch {
	case family == chemistry.LeadAcid:
		w.Honesty, w.Resistance, w.GrowthAt80 = value(tables.LabelHonestyLead), value(tables.ResistanceWithinLead), value(tables.GrowthLead)
		w.TabsOhm, w.Steepness = tables.Value{}, value(tables.SteepnessLead)
	case maker == MakersOwn:
		w.Honesty = value(tables.LabelHonestyLithium)
	case maker == Lookalike:
		w.Honesty = value(tables.LabelHonestyLookalike)
	}
	health := func(age string) tables.Value {
		lead, lithium, _ := healthFigures(age)
		if family == chemistry.LeadAcid {
			return value(lead)
		}
		return value(lithium)
	}
	if _, _, known := healthFigures(age); known {
		w.Health = health(age)
		return w
	}
	worn, old, used, fresh := health("worn"), health("3 years"), health("1 year"), health("new")
	// Half of the batteries asked about are new, or about to be bought: common
	// practice, no published source.
	w.Health = tables.Value{Low: min(worn.Likely, old.Likely), Likely: (used.Likely + fresh.Likely) / 2, High: fresh.High, Source: used.Source}
	return w
}

// HealthShare is what batteries of one age may hold, and how many of all have that age.
type HealthShare struct {
	Health tables.Value // as in [Widths]
	Share  float64      // the shares add up to 1
}

// LeadHealth is what sealed lead-acid batteries hold of which nobody tells how old
// they are. Half of those that are asked about are new or about to be bought (common
// practice, no published source); the others are in use. Kept charged they serve two
// to three years (a seller of batteries of ride-ons), so that any age below two years
// is met equally often, and a higher one less and less.
func LeadHealth() []HealthShare {
	const inUse, meanYears = 0.5, 2.5
	share := func(years float64) float64 { return inUse * years / meanYears } // of those nearest to an age
	return []HealthShare{
		leadShare(tables.HealthLeadNew, 1-inUse+share(0.5)),
		leadShare(tables.HealthLeadYear1, share(1)),
		leadShare(tables.HealthLeadYear2, share(0.5+0.375)),
		leadShare(tables.HealthLeadYear3, share(0.125)),
	}
}

// How many lead-acid batteries with which somebody read what wear shows by are worn out, how many
// of these all but dead, and how many have dried out or stood flat. Own choice.
const wornOut, spent, driedOut = 0.15, 1.0 / 3, 0.5

// LeadHealthRead is what those hold with which somebody read what wear shows by, such as
// the time of a ride or the volts under load, by the word for their age: some are worn
// out, which is why it was read, and one in three of those is all but dead. Of a word that nobody knows, and of none, it is LeadHealth with those.
func LeadHealthRead(age string) []HealthShare {
	worn := []HealthShare{leadShare(tables.HealthLeadWorn, 1-spent), leadShare(tables.HealthLeadSpent, spent)}
	all := LeadHealth()
	if row, _, known := healthFigures(age); known {
		all = []HealthShare{leadShare(row, 1)}
	}
	switch age {
	case "new":
		return all
	case "worn":
		return worn
	}
	for i := range all {
		all[i].Share *= 1 - wornOut
	}
	for i := range worn {
		worn[i].Share *= wornOut
	}
	return append(all, worn...)
}

// GrowthShare is how much the resistance of some batteries grows, and how many they are.
type GrowthShare struct {
	GrowthAt80 tables.Value // as in [Widths]
	Share      float64      // the shares add up to 1
}

// LeadGrowthRead is how the resistance of the batteries of [LeadHealthRead] grows: half as many as
// are worn out have dried out or stood flat, whatever charge they hold.
func LeadGrowthRead(age string) []GrowthShare {
	share := wornOut * driedOut
	switch age {
	case "new":
		share = 0
	case "worn":
		share = driedOut
	}
	t := tables.Builtin()
	return []GrowthShare{{t.Figure(tables.GrowthLead).Value, 1 - share}, {t.Figure(tables.GrowthLeadSpent).Value, share}}
}

func leadShare(row tables.FigureName, share float64) HealthShare {
	return HealthShare{tables.Builtin().Figure(row).Value, share}
}

// GrowthAt returns the factor on the resistance of a battery of the given
// health, which at 80 % is at80. It grows in proportion to what is lost, as in
// [chemistry.Resistance.Growth].
func GrowthAt(health, at80 float64) float64 {
	return chemistry.Resistance{AtHealth80: at80}.Growth(health)
}
