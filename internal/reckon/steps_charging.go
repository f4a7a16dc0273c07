package reckon

import (
	"fmt"
	"slices"
	"strings"

	"example.org/packcheck/answer"
	"example.org/packcheck/battery"
	"example.org/packcheck/chemistry"
	"example.org/packcheck/setup"
)

// chargerStep is another charger, described as it is advised: where it is plugged in, and
// what hangs on that, stays as told.
func chargerStep(a *answer.Assessment, p *setup.Parts) step {
	if len(unread(a)) > 0 {
		return step{}
	}
	right := a.Charge.Advised
	s := step{text: "another charger: " + right.Brief, sets: map[string]string{
		answer.KeyChargerLabel: "", answer.KeyChargerMadeFor: "", answer.KeyChargerVoltage: "", answer.KeyChargerCurrent: "", answer.KeyChargerStops: "",
		"charger.timer": "", answer.KeyChargerOutput: "", answer.KeyChargerPolarity: "", answer.KeyChargerCameWithPack: "",
	}}
	switch {
	case right.Own:
		s.sets[answer.KeyChargerCameWithPack], s.sets[answer.KeyChargerJack] = "true", "pack" // which is taken off for it
		s.sets[answer.KeyChargerBlocksDriving] = ""
		return s
	case right.EndV > 0: // of others nobody can tell the volts
		s.sets[answer.KeyChargerVoltage], s.sets[answer.KeyChargerCurrent] = fmt.Sprintf("%.4g V", right.EndV), fmt.Sprintf("%.3g A", right.MostA)
		s.sets[answer.KeyChargerMadeFor], s.sets[answer.KeyChargerStops], s.sets[answer.KeyChargerOutput] = right.MadeFor, "by itself", "dc"
	}
	told := &p.Setup.Charger
	closed := closesJack(p)
	switch {
	case told.JackPolarity.Given && !closed:
		s.text += ", plug " + told.JackPolarity.Text + " as jack"
		if right.EndV > 0 {
			s.sets[answer.KeyChargerPolarity] = told.JackPolarity.Text
		}
	case told.Jack.Text == "vehicle" && !closed:
		s.text += ", plug's poles as the jack's"
	}
	return s
}

// unread are the keys that a look at the charger's label or sheet settles, where nothing
// else is wrong with it; none where another is needed anyhow.
func unread(a *answer.Assessment) []string {
	settled := [...]string{answer.KeyChargerOutput, answer.KeyChargerMadeFor, answer.KeyChargerStops}
	var keys []string
	for i := range a.Findings {
		f := &a.Findings[i]
		if f.Level < answer.FixFirst || f.Item != answer.Charger || f.Change != answer.FitCharger && f.Change != answer.LookUp {
			continue
		}
		k := slices.IndexFunc(f.Decides, func(key string) bool { return slices.Contains(settled[:], key) })
		switch {
		case k >= 0 && (f.Blocks() || f.Change == answer.LookUp):
			keys = append(keys, f.Decides[k])
		case f.Change == answer.FitCharger:
			return nil
		}
	}
	return keys
}

// labelStep keeps the charger where its label says what nobody told: nobody buys another
// for that.
func labelStep(a *answer.Assessment, _ *setup.Parts) step {
	right, keys := a.Charge.Advised, unread(a)
	if len(keys) == 0 || right.Own {
		return step{}
	}
	var label, says []string
	s := step{sets: map[string]string{}}
	if slices.Contains(keys, answer.KeyChargerOutput) {
		label, s.sets[answer.KeyChargerOutput] = append(label, "DC"), "dc"
	}
	if slices.Contains(keys, answer.KeyChargerMadeFor) {
		label, s.sets[answer.KeyChargerMadeFor] = append(label, right.MadeFor), right.MadeFor
	}
	if len(label) > 0 {
		says = append(says, "its label says "+strings.Join(label, " and "))
	}
	if slices.Contains(keys, answer.KeyChargerStops) {
		says, s.sets[answer.KeyChargerStops] = append(says, "its maker says that it stops by itself"), "by itself"
	}
	s.text = "keep the charger if " + strings.Join(says, " and ") + "; if not, another: " + right.Brief
	return s
}

// lithium reports whether the battery must not be charged through the vehicle's jack.
func lithium(p *setup.Parts) bool { return p.Pack.Profile.Family == chemistry.Lithium }

// closesJack reports whether charging off the vehicle closes its jack off: lithium hangs on it.
func closesJack(p *setup.Parts) bool { return p.Setup.Charger.Jack.Text == "vehicle" && lithium(p) }

// offStep charges where nobody can drive off, and where each pack is by itself.
func offStep(a *answer.Assessment, p *setup.Parts) step {
	asks := func(key string) bool {
		return slices.ContainsFunc(a.Findings, func(f answer.Finding) bool {
			return f.Level >= answer.FixFirst && f.Change == answer.ChargeElsewhere && slices.Contains(f.Decides, key)
		})
	}
	jack, drives, joined := asks(answer.KeyChargerJack), asks(answer.KeyChargerBlocksDriving), asks(answer.KeyPackJoined)
	var parts []string
	s := step{sets: map[string]string{}}
	switch {
	case joined:
		parts = append(parts, "take the two apart to charge each by itself")
	case jack || drives && lithium(p):
		parts = append(parts, "take the battery out to charge it")
	case drives:
		s.text = "take the battery out to charge it, or fit a charging socket that cuts the motors off while it charges"
		s.sets[answer.KeyChargerBlocksDriving] = "true"
		return s
	default:
		return step{}
	}
	if closesJack(p) {
		parts = append(parts, "close the vehicle's jack off")
		if p.Setup.Charger.JackPolarity.Given {
			s.sets[answer.KeyChargerJackPolarity] = "" // which was that of the vehicle's
		}
	}
	s.text = strings.Join(parts, ", and ")
	s.sets[answer.KeyChargerJack] = "pack"
	if p.Setup.Charger.BlocksDriving.Given {
		s.sets[answer.KeyChargerBlocksDriving] = "true" // what is taken out drives nothing
	}
	return s
}

// roomStep takes the battery into a room to be charged, where the cold or the heat of
// the place is in the way.
func roomStep(a *answer.Assessment, _ *setup.Parts) step {
	if !slices.ContainsFunc(a.Findings, func(f answer.Finding) bool {
		return f.Level >= answer.FixFirst && f.Change == answer.ChargeElsewhere && slices.Contains(f.Decides, answer.KeyOutingChargedAt)
	}) {
		return step{}
	}
	const room = "15 to 25 C"
	return step{text: "charge the battery in a room of " + room + ", once it has warmed up or cooled down there", sets: map[string]string{"outing.charged_at": room}}
}

// joinedUnlike reports whether something is to be put right because two packs that are joined
// have other volts, or because nobody read them.
func joinedUnlike(a *answer.Assessment) bool {
	return slices.ContainsFunc(a.Findings, func(f answer.Finding) bool {
		return f.Level >= answer.FixFirst && (f.Code == battery.CodeParallelEqualising || slices.Contains(f.Decides, answer.KeySecondRestVoltage))
	})
}

// alikeStep joins two packs side by side only where both show the volts of full ones.
func alikeStep(a *answer.Assessment, p *setup.Parts) step {
	if p.Pack.Joined != "parallel" {
		return step{}
	}
	full := fmt.Sprintf("%.4g V", a.Pack.FullV)
	return step{
		text: "charge each of the two by itself to full, read both the next day, and join them only at the same volts and if their maker allows it",
		sets: map[string]string{answer.KeyMeasuredRestVoltage: full, answer.KeySecondRestVoltage: full, answer.KeyMeasuredHoursRested: "12 h", "pack.charge": ""},
	}
}
