package charge

import (
	"cmp"
	"fmt"
	"strings"

	"example.org/packcheck/answer"
	"example.org/packcheck/battery"
)

// Codes of the findings on an old battery.
const (
	CodeOldFlat     = "old-battery-flat"      // most likely only flat
	CodeOldWorn     = "old-battery-worn"      // most likely worn out
	CodeOldDeadCell = "old-battery-dead-cell" // most likely a shorted cell
	CodeOldContact  = "old-battery-contact"   // most likely badly connected
)

// Hours after which a sealed battery's volts can be relied on: makers' tables
// are for 24 h (source of the profile's rested volts).
const restedH = 12.0

// emptyShare is the charge up to which a battery is empty. Own choice: the rested
// volts do not tell less apart.
const emptyShare = 0.05

// empty reports whether it rests at the volts of a battery that holds nothing. Volts
// that have not settled may still sag from the ride.
func (e *Evidence) empty() bool {
	spec := e.Pack.Spec()
	_, likely, _ := battery.ChargeFromRest(spec.Profile, e.RestV/float64(spec.CellsInSeries), e.HoursRested, e.TempC)
	return e.HoursRested >= restedH && likely <= emptyShare
}

// why lists what the answer rests on.
func (e *Evidence) why() []string {
	spec := e.Pack.Spec()
	low, likely, high := battery.ChargeFromRest(spec.Profile, e.RestV/float64(spec.CellsInSeries), e.HoursRested, e.TempC)
	w := []string{fmt.Sprintf("%.2f V at rest is %.2f V per cell: by the tables about %.0f %% charge (%.0f to %.0f %%), if no cell is dead.",
		e.RestV, e.RestV/float64(spec.CellsInSeries), 100*likely, 100*low, 100*high)}
	if e.HoursRested < restedH {
		w = append(w, "It had not rested overnight, so the volts may still be too high from the charge or too low from the ride.")
	}
	switch {
	case e.LoadedV == 0:
		w = append(w, "No volts under load were measured: wear and bad contacts do not show at rest.")
	case e.LoadedA == 0:
		w = append(w, fmt.Sprintf("Under a load of unknown amps it falls by %.2f V.", e.RestV-e.LoadedV))
	default:
		w = append(w, fmt.Sprintf("At %.3g A it falls by %.2f V: %.3g Ohm altogether; a new battery of this size has about %.3g Ohm.",
			e.LoadedA, e.RestV-e.LoadedV, (e.RestV-e.LoadedV)/e.LoadedA, e.newOhm()))
	}
	return append(w, "The odds behind the words are estimates, not measurements.")
}

// newOhm is the resistance over seconds of the battery when new and half full.
func (e *Evidence) newOhm() float64 {
	spec := e.Pack.Spec()
	p := spec.Profile
	perAh := p.Resistance.OhmAh.At(0.5) + settled(p.Fast)*p.Fast.OhmAh.At(0.5) + settled(p.Slow)*p.Slow.OhmAh.At(0.5)
	return perAh * float64(spec.CellsInSeries) / spec.CapacityAh
}

// nextTest chooses the test that would tell the two likeliest apart.
func (e *Evidence) nextTest(s []Suspicion) string {
	first, second := s[0].Condition, s[1].Condition
	among := func(a, b Condition) bool { return (first == a && second == b) || (first == b && second == a) }
	switch {
	case among(Flat, Worn) && e.LoadedV == 0, first == Flat:
		return "Charge it full at its right charger with somebody present. Let it rest overnight and measure again, then once more with the motors pulling: below 2.1 V per cell at rest, or a deep fall under load, it is worn."
	case e.LoadedV == 0 && first != Flat && first != ShortedCell:
		return "Measure the volts at the battery's own posts while the motors pull, and again without load."
	case among(Worn, BadConnection):
		return "While the motors pull, measure first on the battery's own posts, then at the controller: if the posts hold up and the other end does not, it is a contact or lead."
	case first == BadConnection:
		return "While the motors pull, measure across each plug, fuse and clip in turn: more than a few tenths of a volt across one of them is the fault."
	case first == ShortedCell:
		return "Charge it at its right charger with somebody present, let it rest overnight: if it comes to rest about 2 V short of full again, a cell is dead; replace it."
	case first == Worn:
		return "Charge it full, rest it overnight, then time it on a known load to its end volts: below 80 % of the label it is worn out."
	}
	return "The battery seems in order: time it on a known load, and look for the fault in switch, plugs and motors."
}

// findings turns the likeliest condition into a finding. What rests on odds is
// no danger, whatever it may come to.
func (e *Evidence) findings(d Diagnosis) []answer.Finding {
	top, name := d.Suspicions[0], cmp.Or(e.Name, "the battery")
	called := strings.ToUpper(name[:1]) + name[1:]
	f := answer.Finding{
		Level: answer.Watch, Harm: answer.Wear, Topic: answer.TopicPack, Item: answer.Battery,
		Unit: "share", Found: top.Share, Reads: answer.AsTold, Source: "diagnosis-odds", Advice: d.NextTest, Charging: true,
		Decides: []string{
			answer.KeyMeasuredRestVoltage, answer.KeyMeasuredHoursRested, answer.KeyMeasuredLoadedVoltage, answer.KeyMeasuredLoadedCurrent,
		},
	}
	switch top.Condition {
	case Sound:
		return nil
	case Flat:
		spec := e.Pack.Spec()
		if len(JudgeRest(spec.Profile, spec.CellsInSeries, e.RestV)) > 0 { // lower than flat, which is told where that is judged
			return nil
		}
		f.Code, f.Source = CodeOldFlat, "lead-sulfation"
		f.Title = fmt.Sprintf("%s is %s flat; every day that it stands flat costs capacity.", called, top.Words)
		if e.empty() { // a ride lasts minutes and drains it deeper; nothing but a charger has to be fetched
			f.Today = true
			f.Title = called + " rests at the volts of an empty one; every day that it stands flat costs capacity."
		}
	case Worn:
		f.Code = CodeOldWorn
		f.Title = fmt.Sprintf("%s is %s worn out.", called, top.Words)
	case ShortedCell:
		f.Code, f.Level, f.Harm = CodeOldDeadCell, answer.FixFirst, answer.Part
		f.Title = fmt.Sprintf("One cell of %s is %s dead: the others are overcharged at every charge.", name, top.Words)
	case BadConnection:
		f.Code, f.Level, f.Harm, f.Item = CodeOldContact, answer.FixFirst, answer.House, answer.Wire
		f.Title = fmt.Sprintf("%s is %s badly connected: a bad contact grows hot.", called, top.Words)
	}
	return []answer.Finding{f}
}
