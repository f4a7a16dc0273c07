package interview

import (
	"example.org/packcheck/answer"
	"example.org/packcheck/battery"
)

// questions is the only list of questions that there is; its order is the one to
// ask in where nothing is known yet. Keys that nobody at home can find out have
// none; packcheck keys lists those too.
func questions() []row {
	return []row{
		{Question: Question{
			Key: "pack.label", Asks: "What is printed on the battery that is to be used?", Effort: Look,
			How:     "Look for volts (V) and ampere-hours (Ah) on its label and write the line as it stands. Where it is worn off, the volts alone will do.",
			Example: "20 V max 4.0 Ah", Usual: "nothing: without the volts there is no answer",
		}, first: true, settles: []string{"pack.capacity", "pack.cells_in_series"}},
		{Question: Question{
			Key: "pack.chemistry", Asks: "What kind of battery is it?", Effort: Look,
			How:     "Look for Pb, SLA, AGM, gel, Li-ion, LiFePO4 or NiMH on it, or for a recycling mark. A black block as heavy as a brick is lead; a battery that clicks onto a tool is lithium.",
			Choices: chemistries(), Example: "sla", Usual: "what is usually sold with such a label",
		}, when: unsettled("pack.label")},
		{Question: Question{
			Key: "vehicle.design_voltage", Asks: "How many volts was the vehicle made for?", Effort: Look,
			How:     "Read the plate underneath, the manual or the old battery: mostly 6, 12 or 24.",
			Example: "12 V", Usual: "what vehicles of this kind mostly have",
		}, first: true, settles: []string{"motors.rated_voltage"}},
		{Question: Question{
			Key: "rider.age", Asks: "How old is the child who rides, and how heavy?", Effort: Look, Fills: []string{"rider.mass"},
			How:     "One of the two will do. Of several children give the age of the youngest, and later the weight of all together.",
			Example: "4 years, 17 kg", Usual: "a child of whom no age was told: slow speeds are asked for",
		}, first: true},
		{Question: Question{
			Key: "vehicle.ground", Asks: "What does it mostly run on?", Effort: Look,
			How:     "The worst ground that it has to cross often.",
			Choices: grounds(), Example: "lawn", Usual: "asphalt",
		}, first: true},
		{Question: Question{
			Key: "original.pack.label", Asks: "What was printed on the battery that it came with?", Effort: Look,
			How:     "Read the old battery or the manual. It tells what the vehicle has survived.",
			Choices: []Choice{{Same, "the same as the one that is to be used"}}, Example: "12 V 7 Ah", Usual: "a battery of the volts that the vehicle was made for",
		}, first: true},
		{Question: Question{
			Key: "original.pack.chemistry", Asks: "What kind of battery was that?", Effort: Look,
			How:     "Most ride-ons came with a sealed lead block, heavy as a brick.",
			Choices: chemistries(), Example: "sla", Usual: "what is usually sold with such a label",
		}, when: unsettled("original.pack.label")},

		// What disconnects it, and what protects the wire.
		{Question: Question{
			Key: "cutoff.pack.opens_at", Asks: "At how many volts does the battery's own electronics switch it off?", Effort: Look,
			How:     "Ask the maker or read the sheet of the battery. The protection of a tool pack often sits in the tool and does nothing here: then pass.",
			Example: "15 V", Usual: "nothing switches it off",
		}, change: answer.FitCutoff},
		{Question: Question{
			Key: "cutoff.module.opens_at", Asks: "At how many volts does an added low-voltage cutoff switch it off?", Effort: Look,
			How:     "Read its setting, or its print. Pass where none was added.",
			Example: "15 V", Usual: "none was added",
		}, change: answer.FitCutoff},
		{Question: Question{
			Key: "pack.watches_cells", Asks: "Do the battery's electronics watch every cell?", Effort: Look,
			How:     "Ask the maker, or look in the sheet for protection of single cells. Pass where nobody says so.",
			Choices: yesNo(), Example: "no", Usual: "no",
		}},
		{Question: Question{
			Key: "fuse.form", Asks: "Which fuse sits next to the battery?", Effort: Look, Fills: []string{"fuse.rating"},
			How: "Follow the red wire from the battery: a fuse sits within a hand's breadth of it, often in a plastic holder, and has its number of amps on top.",
			Choices: []Choice{
				{"none", "there is none"},
				{"small blade", "a blade fuse as in a car (19 mm wide)"},
				{"large blade", "a large blade fuse (29 mm wide)"},
				{"auto-reset breaker", "a breaker that comes back by itself"},
			}, Example: "30 A blade", Usual: "not known, which is not fine",
		}, change: answer.FitFuse},
		{Question: Question{
			Key: "fuse.rating", Asks: "How many amps are printed on the fuse?", Effort: Look,
			How: "Read the number on its top or its colour.", Example: "30 A", Usual: "not known, which is not fine",
		}, change: answer.FitFuse, when: notText("fuse.form", "none")},
		{Question: Question{
			Key: "fuse.distance_from_pack", Asks: "How much wire lies between the battery and the fuse?", Effort: Tool,
			How: "Measure it along the wire.", Example: "100 mm", Usual: "not known, which is not fine",
		}, when: all(notText("fuse.form", "none"), either("fuse.form", "fuse.rating"))},
		{Question: Question{
			Key: "wire.gauge", Asks: "How thick is the thinnest wire from the battery to the motors?", Effort: Look, Fills: []string{"wire.area"},
			How: "Read its print.", Example: "16 AWG", Usual: "18 to 14 AWG",
		}, instead: []string{"wire.area"}, change: answer.FitWire},
	}
}

// Same is the answer "the same as today's battery".
const Same = "same"

func yesNo() []Choice { return []Choice{{"yes", "yes"}, {"no", "no"}} }

// chemistries are the kinds of battery in everyday words.
func chemistries() []Choice {
	return []Choice{
		{"sla", "a sealed lead block (SLA, AGM, Pb)"},
		{"gel", "a lead block with gel"},
		{"li-ion", "lithium of a cordless tool or an electric bicycle (Li-ion)"},
		{"lifepo4", "iron phosphate (LiFePO4, LFP)"},
		{"nimh", "nickel (NiMH)"},
	}
}

func grounds() []Choice {
	return []Choice{
		{"asphalt", "street or paving"},
		{"smooth concrete", "smooth floor"},
		{"short grass", "lawn"},
		{"long grass", "meadow"},
		{"wet grass", "wet grass"},
		{"packed dirt", "farm track"},
		{"gravel", "gravel"},
		{"sand", "sand"},
		{"carpet", "carpet"},
	}
}

// unsettled holds where a label does not settle the chemistry.
func unsettled(label string) func(map[string]string) bool {
	return func(given map[string]string) bool {
		l, err := battery.ParseLabel(given[label], "")
		return given[label] != "" && err == nil && (l.Chemistry == "" || l.Sure == battery.Guess)
	}
}

func notText(key, text string) func(map[string]string) bool {
	return func(given map[string]string) bool { return given[key] != text }
}

func either(keys ...string) func(map[string]string) bool {
	return func(given map[string]string) bool {
		for _, k := range keys {
			if given[k] != "" {
				return true
			}
		}
		return false
	}
}

func all(conditions ...func(map[string]string) bool) func(map[string]string) bool {
	return func(given map[string]string) bool {
		for _, c := range conditions {
			if !c(given) {
				return false
			}
		}
		return true
	}
}
