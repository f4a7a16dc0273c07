package charge

import "example.org/packcheck/answer"

// Codes of the findings on where and how a charger is plugged in.
const (
	CodeVehicleJack       = "charge-through-vehicle-jack" // lithium through the vehicle's jack
	CodeInVehicle         = "charge-in-vehicle"           // a battery that stays in the vehicle
	CodeDrivesPlugged     = "drives-while-charging"       // nothing keeps the child from driving off
	CodeChargedInSeries   = "charge-packs-in-series"      // two packs charged as one
	CodeChargedInParallel = "charge-packs-in-parallel"    // two packs charged as one, side by side
	CodeGivesAC           = "charger-gives-ac"            // alternating current
	CodeOutputUnknown     = "charger-output-unknown"      // AC or DC is not said
	CodePolarityReversed  = "charger-polarity-reversed"   // plug and jack are of opposite polarity
	CodePolarityUnchecked = "charger-polarity-unchecked"  // one of the two is not known
)

// Driving says whether a vehicle can be driven while it is charged.
type Driving int

// What can be known of it.
const (
	DrivingUnknown Driving = iota
	DrivingBlocked
	DrivingPossible
)

// JudgePlace judges where a pack is charged and what hangs on it, whatever charger is
// plugged in there: none where that is not told.
func JudgePlace(p Plugged) []answer.Finding {
	if p.Pack == nil || p.Port == PortUnknown && p.Driving == DrivingUnknown {
		return nil
	}
	m := &match{p: p, prof: p.Pack.Spec().Profile}
	m.place()
	return m.v.Findings
}

// place judges where the charger is plugged in and what hangs on it.
func (m *match) place() {
	if m.p.Port == PortVehicle && (m.lithium() || m.p.ToolPack) {
		m.say(Refused, answer.Finding{
			Code: CodeVehicleJack, Level: answer.Danger, Harm: answer.House, Gravity: 2, Source: "jack-practice",
			Title:   "Never charge a tool or lithium pack through the jack.",
			Advice:  "Take the pack out to charge it, and close the jack off. The jack leads past the pack's protection and was made for the old lead-acid charger.",
			Change:  answer.ChargeElsewhere,
			Decides: []string{answer.KeyChargerJack, answer.KeyPackChemistry},
		})
	} else if m.p.Port == PortVehicle {
		f := answer.Finding{
			Code: CodeInVehicle, Level: answer.Watch, Harm: answer.Wear, Source: "charging-in-toy",
			Title:   "Charging in the vehicle is only right with the charger and battery it was built for.",
			Advice:  "Make sure that it cannot be driven while it charges, and that the replacement has the same kind and voltage.",
			Decides: []string{answer.KeyChargerJack},
		}
		if m.p.Driving != DrivingUnknown {
			f.Advice = "Make sure that the replacement has the same kind and voltage."
		}
		m.say(WithCare, f)
	}
	m.driving()
	if m.p.Joined != Single {
		m.joined()
	}
}

// driving judges a vehicle that can be driven while it is charged: the lead is
// torn off, and lithium is loaded and charged past each other's protection.
func (m *match) driving() {
	if m.p.Driving != DrivingPossible {
		return
	}
	f := answer.Finding{
		Code: CodeDrivesPlugged, Level: answer.FixFirst, Harm: answer.House, Source: "charging-in-toy", Reads: answer.AsTold,
		Title:   "It can be driven while it is charged: the lead is torn off, or the child drives away on the mains adaptor.",
		Advice:  "Take the battery out to charge it, or fit a charging socket that cuts the motors off meanwhile.",
		Change:  answer.ChargeElsewhere,
		Decides: []string{answer.KeyChargerBlocksDriving},
	}
	if m.lithium() {
		f.Level, f.Gravity = answer.Danger, 1
		f.Title = "It can be driven while its lithium pack is charged: cutoff and charger then work against each other."
	}
	m.say(WithCare, f)
}

// joined judges two packs that are charged as one. Lead-acid blocks drift
// apart, which is wear where their maker sells the charger for the pair.
func (m *match) joined() {
	parallel := m.p.Joined == InParallel
	f := answer.Finding{
		Code: CodeChargedInSeries, Source: "series-string-rule", Item: answer.Battery, Change: answer.ChargeElsewhere,
		Decides: []string{answer.KeyPackJoined, answer.KeyPackChemistry, answer.KeyChargerJack},
	}
	if parallel {
		f.Code = CodeChargedInParallel
	}
	asPair := !parallel && m.p.MadeFor == ForPair
	if m.apart() {
		f.Level, f.Harm, f.Change, f.Habit = answer.Watch, answer.Wear, answer.ChangeNone, answer.HabitChargeApart
		f.Title = "The two packs must be taken apart to be charged."
		f.Advice = "Charge each alone on its own charger, both full, before they are joined again: as one, the fuller is overcharged."
		if parallel {
			f.Advice = "Charge each alone on its own charger, both full, before they are joined again: as one, the current splits as it likes."
			if (m.lithium() || m.p.ToolPack) && !m.p.Alike {
				f.Level, f.Harm = answer.FixFirst, answer.House
				f.Title = "The two packs must be taken apart to be charged, and join again only at the same volts."
				f.Advice = "Charge each alone on its own charger, full, and measure both at rest before they are joined: at unlike volts one drives the other."
				f.Decides = append(f.Decides, answer.KeySecondRestVoltage)
			}
		}
		m.say(WithCare, f)
		return
	}
	if m.lithium() || m.p.ToolPack {
		f.Level, f.Harm = answer.Danger, answer.House
		if asPair {
			f.Change = answer.FitCharger // its volts are those of both
		} else if m.p.Port == PortUnknown || m.p.MadeFor == ForOne && m.p.Port != PortVehicle {
			f.Level = answer.FixFirst // nobody told that they hang on it as one
		}
		f.Title = "Two packs in series must not be charged as one."
		f.Advice = "The fuller pack is overcharged before the other is full. Take them apart and charge each on its own charger."
		if parallel {
			f.Title = "Two packs in parallel must not be charged as one."
			f.Advice = "Take them apart and charge each on its own charger. The current splits as it likes and one pack drives the other."
		}
		m.say(Refused, f)
		return
	}
	f.Level, f.Harm = m.unlessSupplied()
	if !parallel && m.p.MadeFor == ForOne {
		f.Level, f.Harm = answer.Watch, answer.Wear
		f.Title = "This charger is made for one of the two batteries."
		f.Advice = "Part the two and charge each by itself with it, one after the other, or use a charger for the pair."
		m.say(WithCare, f)
		return
	}
	if asPair {
		f.Level, f.Harm = answer.Watch, answer.Wear
	}
	f.Title = "Separate batteries in series drift apart when charged as one."
	f.Advice = "Charge each battery by itself, unless both are the same type and age and the charger is made for the pair."
	if parallel {
		f.Title = "Separate batteries in parallel share the charge unevenly."
		f.Advice = "Charge each battery by itself before joining them."
	}
	m.say(Unproven, f)
}

// AlikeShare is how far the volts at rest of two packs may lie apart, over those of one, that
// are joined side by side. Own choice: what two cheap meters differ by.
const AlikeShare = 0.01

// apart reports whether it is told that each of two packs is charged by itself: on the
// charger that came with it, or at its own socket, which the volts of a pair speak against.
func (m *match) apart() bool {
	return m.p.Port == PortPack && !(m.p.Joined == InSeries && m.p.MadeFor == ForPair) ||
		m.p.Port == PortUnknown && m.p.Charger.SuppliedWithPack && (m.lithium() || m.p.ToolPack) && m.p.MadeFor != ForPair
}

// output judges the kind of current and the polarity.
func (m *match) output() {
	c := m.p.Charger
	output := []string{answer.KeyChargerLabel, answer.KeyChargerOutput}
	switch c.Output {
	case AC:
		m.say(Refused, answer.Finding{
			Code: CodeGivesAC, Level: answer.Danger, Harm: answer.House, Gravity: 2, Source: "common-charging",
			Title:  "This adaptor gives alternating current; it cannot charge.",
			Advice: "Do not connect it. A charger's output is marked DC.",
			Change: answer.FitCharger, Decides: output,
		})
	case OutputUnknown:
		if c.SuppliedWithPack || c.MadeFor.GivesDC() {
			break
		}
		m.say(Unproven, answer.Finding{
			Code: CodeOutputUnknown, Level: answer.FixFirst, Harm: answer.House, Reads: answer.AsUnknown, Source: "common-charging",
			Title:  "The label does not say whether the output is AC or DC.",
			Advice: "Read the output line of the label again, or measure it with a meter set to DC volts.",
			Change: answer.FitCharger, Decides: output,
		})
	}
	if c.SuppliedWithPack {
		return
	}
	polarity := []string{answer.KeyChargerLabel, answer.KeyChargerPolarity, answer.KeyChargerJackPolarity}
	switch {
	case m.p.reversed():
		m.say(Refused, answer.Finding{
			Code: CodePolarityReversed, Level: answer.Danger, Harm: answer.House, Gravity: 2, Source: "common-charging",
			Title:  "The plug's polarity is the reverse of what the jack wants.",
			Advice: "Do not connect it; the battery would be connected backwards.",
			Change: answer.FitCharger, Decides: polarity,
		})
	case c.Polarity == PolarityUnknown || m.p.Jack == PolarityUnknown:
		m.say(WithCare, answer.Finding{
			Code: CodePolarityUnchecked, Level: answer.Watch, Harm: answer.Wear, Gravity: -1, Reads: answer.AsUnknown, Source: "common-charging",
			Title:  "The polarity of plug and jack is not known.",
			Advice: "Check plus and minus with a meter before the plug goes in for the first time.",
			Change: answer.LookUp, Habit: answer.HabitCheckPoles, Decides: polarity,
		})
	}
}
