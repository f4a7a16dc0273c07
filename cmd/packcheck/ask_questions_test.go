package main

import (
	"bytes"
	"maps"
	"math"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"example.org/packcheck/answer"
	"example.org/packcheck/ask"
	"example.org/packcheck/setup"
	"example.org/packcheck/tables"
)

// expected is what an answer must come to. The figure was worked by hand, or is
// printed in the source that stands beside it.
type expected struct {
	value, within float64 // the figure and how far it may be off; 0 = not checked
	holds         float64 // lies in the range; 0 = not checked
	low           float64 // the low end, within 0.1 %; 0 = not checked
	least, most   float64 // bounds on the figure; 0 = none
	level         string  // "" = nothing is judged
	says          string  // stands in the text
}

func TestThirtyQuestionsAsPeopleTypeThem(t *testing.T) {
	const kmh = 1 / 3.6
	for _, q := range []struct {
		typed string // parted as a shell does it
		want  expected
		how   string // how the figure was worked, and from what
	}{
		{`label "20 V max 5 Ah"`, expected{value: 18, within: 0.01, holds: 21}, "5 cells of 3.6 V nominal, 4.2 V full (checks/battery.md, cell specifications)"},
		{`label 12 V 7 Ah`, expected{value: 12, within: 0.01, holds: 10.5}, "6 cells of 2 V; 1.75 V per cell at slow rates (checks/battery.md, check 14)"},
		{`label "24 V (two 12 V 7 Ah)"`, expected{value: 24, within: 0.01}, "two blocks of six cells"},
		{`rest "12.4 V" agm "24 h"`, expected{value: 0.583, within: 0.03}, "12.30 V is 50 %, 12.60 V 75 % (checks/battery.md, check 17): 50 + 25 x 0.1/0.3"},
		{`rest 12.0 V sla 24 h`, expected{value: 0.25, within: 0.05}, "12.00 V is 25 % (checks/battery.md, check 17, +-0.05 V)"},
		{`rest 12.9 V straight off the charger`, expected{least: 0.9, says: "too high"}, "12.80 to 12.90 V is full (checks/battery.md, check 17)"},
		{`rest "18.71 V" "20 V max 5 Ah" "24 h"`, expected{value: 0.5, within: 0.05}, "3.742 V a cell is 50 % (checks/battery.md, check 19)"},
		{`rest "7 V" "20 V max 5 Ah"`, expected{level: "danger", says: "never charge it again"}, "1.4 V a cell, below the 1.5 V of checks/battery.md, section 4"},
		{`rest "10.5 V" "12 V 7 Ah" "20 h"`, expected{holds: 0.75, level: "fix first", says: "probably a cell is dead"}, "five cells of 2.1 V (75 % by the table) and a shorted one; an empty block rests at 11.80 V (checks/battery.md, check 17)"},
		{`rest "11.6 V" "12 V 7 Ah" "20 h"`, expected{most: 0.05}, "merely empty, with a meter 2 % off"},
		{`label "25.6 V 10 Ah LiFePO4"`, expected{value: 25.6, within: 0.01, says: "sold as 24 V"}, "ASTM F963 4.25.2 by the name of the pack, as in a report"},
		{`label "36 V 10 Ah li-ion"`, expected{value: 36, within: 0.01, level: "fix first", says: "24 V at most"}, "ASTM F963 4.25.2"},
		{`runtime "12 V 7 Ah" "9 A"`, expected{holds: 25.9, says: "Peukert's time 24 min"}, "as 9.64 A from 7.5 Ah: between 8.63 A for 30 min and 14.6 A for 15 min on logarithmic axes (checks/battery.md, check 12) 25.9 min; Peukert: 20 h x (7/(9 x 20))^1.20 = 24.4 min"},
		{`runtime "12 V 7.5 Ah" new "0.379 A"`, expected{holds: 1200 * 0.97, most: 1300}, "20 h at 0.379 A to 10.5 V (checks/battery.md, check 11), less 3 % for the label"},
		{`runtime "12 V 7.5 Ah" agm "4.42 A"`, expected{least: 35, most: 66, level: ""}, "60 min new (checks/battery.md, check 11, +-10 %); worn ones give down to 60 %"},
		{`wire 20 A`, expected{value: 14, within: 0.01}, "60 degC, AWG 14: 20 A (33 CFR 183.425 Table 5, checks/drive.md 1.2)"},
		{`wire "35 A" insulation="105 C"`, expected{value: 14, within: 0.01}, "105 degC, AWG 14: 35 A (33 CFR 183.425 Table 5)"},
		{`drop 14 AWG 20 A 3 m`, expected{low: 0.9936, most: 1.2}, "6 m x 8.28 mOhm/m x 20 A = 0.9936 V cold (checks/drive.md, check 2, +-0.1 %)"},
		{`fuse 14 AWG 20 A`, expected{value: 30, within: 0.01, says: "up to 30 A it protects the wire"}, "at least 20/0.75 = 26.7 A (fuse glossary), at most 1.5 x 20 A (33 CFR 183.455): 30 A alone"},
		{`fuse 16 AWG 20 A`, expected{value: 22.5, within: 0.01, level: "fix first", says: "Do not fit a larger fuse"}, "at most 1.5 x 15 A = 22.5 A (checks/drive.md, check 6), below the 26.7 A of the load"},
		{`fuse "2.5 mm2" "15 A"`, expected{value: 25, within: 0.01}, "at least 15/0.75 = 20 A and the heat's share, at most 1.5 x 26 A x sqrt(30/40) = 33.8 A (DIN VDE 0298-4): 25 A is the first"},
		{`opened "30 A" "8 s" "10 C"`, expected{level: "fix first", least: 40, most: 55, holds: 57.3}, "latest: between 160 % in 50 s and 200 % in 5 s on logarithmic axes 191 % = 57.3 A (checks/drive.md, section 2)"},
		{`opened "30 A" "5 ms"`, expected{level: "fix first", says: "or more"}, "10 ms is the shortest time that is credited; nothing bounds it above"},
		{`drop 14 AWG 20 to 25 A 3 m`, expected{low: 0.9936, holds: 1.242, level: "fix first", says: "worse end"}, "6 m x 8.28 mOhm/m x 20 A cold at the one end, x 25 A = 1.242 V cold at the other (checks/drive.md, check 2)"},
		{`stopped 20 s`, expected{level: "fix first", says: "auto-reset breaker"}, "2 to 120 s, 15 s likely (tables, from memory; manuals: about 25 s)"},
		{`stopped stays dead`, expected{level: "fix first", says: "one-time fuse"}, "a fuse does not come back"},
		{`stopped power cycled lithium`, expected{level: "fix first", says: "electronics in the pack"}, "electronics that latch see a charger"},
		{`lost 12.6V 11.2V 15A`, expected{value: 1.4, within: 1e-6, level: "watch", says: "93.3 mOhm and 21 W"}, "1.4 V / 15 A, 1.4 V x 15 A; above 10 % of 12.6 V (checks/drive.md 1.1)"},
		{`charger "14.7 V 1.5 A DC for lead-acid" "12 V 7 Ah"`, expected{value: 16, within: 4, level: "watch"}, "16 h after a full discharge at 0.25 to 0.3C (checks/battery.md, section 3, +-25 %)"},
		{`charger "24 V 2 A DC for li-ion" "12 V max 2 Ah"`, expected{value: 4.2, within: 0.01, level: "danger", says: "7.67 V or more"}, "the lowest reading of 24 V is 23 V rounded up: 23/3 a cell"},
		{`charger "24 V 1 A" "20 V max 5 Ah"`, expected{value: 4.2, within: 0.01, level: "danger", says: "to 4.8 V, and may rise to 7.2 V"}, "24/5 a cell, and half as much again of an adaptor"},
		{`charger "12.6 V 1 A DC li-ion stops by itself" "11.1 V 2 Ah li-ion"`, expected{value: 2.17, within: 0.2, level: "fix first", says: "that one reads the pack's temperature and cells. Full after"}, "its label says that it stops, so that nothing is left to find out about that"},
		{`charger "14.7 V 1.5 A for lead-acid" "20 V max 5 Ah"`, expected{value: 4.2, within: 0.01, level: "danger", says: "do not connect it"}, "4.2 V a cell (cell specifications)"},
		{`join "12 V 7 Ah" "12.9 V" "12 V 7 Ah" "12.3 V" new`, expected{least: 6.7, most: 11.1, level: "danger"}, "0.6 V over two new blocks of 18 mOhm x 1.5 to 2.5 (checks/battery.md, section 3): 6.7 to 11.1 A, above 0.3C = 2.1 A"},
		{`join "12 V 7 Ah" "12.9 V" "12 V 7 Ah" "12.3 V"`, expected{holds: 8.3, level: "danger"}, "the same of any age: the middle of the new ones, 0.6 V / 72 mOhm, lies inside"},
		{`cutoff "20 V max 5 Ah" "15 A"`, expected{holds: 15, least: 14.5, most: 16.5}, "3.0 V a cell, no less than the 2.9 V of a protector board (checks/battery.md, section 4)"},
		{`cutoff "12 V 7 Ah" "1 A"`, expected{holds: 10.8, least: 10.5, most: 12}, "0.14C: 1.75 V a cell (checks/battery.md, check 14), raised for the weakest of nine in ten, and below the 12 V of half the charge"},
		{`cutoff 12v 7ah`, expected{holds: 10.8, least: 10.5, most: 12}, "0.2C, being not told: 1.75 V a cell (checks/battery.md, check 14), raised for the weakest of nine in ten, and below the 12 V of half the charge"},
		{`rest 12.3v agm overnight`, expected{value: 0.5, within: 0.05}, "12.30 V is 50 % (checks/battery.md, check 17)"},
		{`opened 30 amp instantly`, expected{level: "fix first", says: "how much more the fuse does not tell"}, "faster than anybody can tell: the shortest time that is credited bounds nothing above"},
		{`charger 12.6v 3a li-ion 12v 7ah`, expected{level: "fix first", says: "No, do not connect it"}, "three lithium cells end at 12.6 V; what is said of the charger is not said of the battery, which is lead-acid"},
		{`speed 15000 rpm 12t 72t 9 in`, expected{value: 15000.0 / 6 / 60 * math.Pi * 0.2286, within: 0.05, level: "fix first"}, "72 teeth over 12 turn six times slower: 2500 rpm of 228.6 mm"},
		{`idle "20 V max 5 Ah" "83 mA"`, expected{least: 1, most: 2.51, level: "danger"}, "no more than 5 Ah / 0.083 A = 60 h (83 mA: checks/factory.md A.1)"},
		{`idle "12 V 7 Ah"`, expected{least: 500, most: 1000}, "3 to 6 % a month (checks/battery.md, sections 3 and 4): 17 to 33 months"},
		{`winter "12 V 7 Ah" "6 months"`, expected{holds: 0.82}, "82 % after six months (checks/battery.md, section 3)"},
		{`winter "20 V max 5 Ah" "6 months" "50 %"`, expected{holds: 0.5 - 6*0.025}, "2 to 3 % a month (checks/battery.md, section 4)"},
		{`old "12 V 7 Ah" "12.6 V" "10.2 V" "9 A" "24 h"`, expected{says: "worn", level: "watch"}, "2.4 V / 9 A = 267 mOhm, six times the 27 to 45 mOhm of a new block (checks/battery.md, section 3)"},
		{`old "12 V 7 Ah" "0.02 V"`, expected{level: "danger", says: "Do not charge it"}, "0 V at rest: there is nothing left to charge (the first answer advised a charge)"},
		{`runtime "12 V 7 Ah" "9 A" "-25 C"`, expected{level: "fix first", says: "colder"}, "discharge -15 to 50 degC (checks/battery.md, section 6)"},
		{`rest "12.4 V" "20 s" agm`, expected{value: 0.583, within: 0.03, says: "of sealed lead-acid"}, "as above; \"20 s\" is a time and no pack of twenty cells"},
		{`winter "12 V 7 Ah" "24 months"`, expected{most: 0.64, least: 0.1, level: "fix first"}, "64 % after twelve months (checks/battery.md, section 3), less after two years"},
		{`old "12 V 7 Ah" "11.7 V" "24 h"`, expected{says: "flat", level: "watch"}, "below the 11.80 V of 0 % (checks/battery.md, check 17)"},
		{`speed "15000 rpm" 100:1 "250 mm"`, expected{value: 7.07 * kmh, within: 0.007 * kmh, level: ""}, "checks/drive.md 6.3: 7.07 km/h"},
		{`speed "20000 rpm" 1:100 "6 in"`, expected{value: 5.75 * kmh, within: 0.01 * kmh}, "checks/drive.md 6.3, the forum trap: 5.75 km/h"},
		{`blocked "143 mOhm" "12 V 7 Ah"`, expected{holds: 71.5, most: 84}, "12.8 V / (0.143 + 0.036 Ohm): can 550 of checks/drive.md 4.3, block of 27 to 45 mOhm; 84 A without a battery's resistance"},
		{`hot battery "75 C"`, expected{level: "danger", says: "71 C"}, "71 degC (ASTM F963 4.25.7, checks/drive.md 7)"},
		{`hot motor "70 C" "20 min"`, expected{level: "watch", says: "heading for 72 C"}, "20 + 50/(1 - exp(-1200/370)) = 72.0 degC; touched metal 25 K over 20 degC (IEC 62115)"},
		{`hot motor "99 C" "5 min"`, expected{level: "fix first", says: "heading for 162 C"}, "20 + 79/(1 - exp(-300/370)) = 162 degC; nylon softens at 100 to 130 (trade, from memory), class A ends at 105 (IEC 60085)"},
		{`hot motor "60 C" "3 min"`, expected{level: "fix first", says: "Put that right first"}, "20 + 40/(1 - exp(-180/370)) = 124 degC; the same"},
		{`hot motor "40 C" "2 min"`, expected{level: "watch", says: "Pause before that"}, "20 + 20/(1 - exp(-120/370)) = 92 degC, up to 147 at 700 s: it may pass the 100"},
		{`hot motor "59 C" air=35C`, expected{level: "watch", says: "in any air"}, "bare metal burns in 10 s from 55 degC (ISO 13732-1, from memory)"},
		{`hot metal "60 C" air=40C`, expected{level: "watch", says: "burns skin"}, "the same"},
		{`hot battery "50 C"`, expected{level: "watch", says: "must not be charged at 45 C (113 F) or hotter"}, "lithium is charged from 0 to 45 degC (a 21700 cell, checks/battery.md, section 4)"},
		{`hot battery "-5 C"`, expected{least: -5, level: "fix first", says: "must not be charged at 0 C (32 F) or colder"}, "the same"},
		{`hot battery "55 C"`, expected{level: "fix first", says: "54 C"}, "surfaces that can be touched at most 54 degC (a test plan on ASTM F963)"},
		{`pace 5 yo 14 km/h`, expected{value: 9.7 * kmh, within: 0.1 * kmh, level: "danger"}, "nothing found for 3 to 8 years above 12.9 km/h (checks/factory.md A.5)"},
		{`pace 5 yo`, expected{value: 9.7 * kmh, within: 0.1 * kmh, says: "9.7 km/h (8 to 13 km/h) Brisk from 8 km/h (5 mph)"}, "one speed is printed one way"},
		{`pace 2 years`, expected{level: "fix first", says: "too young"}, "no toy with a motor is meant for under 3 years (EN 71-1, rationale)"},
	} {
		a, err := answerTo(parted(q.typed))
		if err != nil {
			t.Errorf("ask %s: %v", q.typed, err)
			continue
		}
		if n := len(answerLines(&a)); n > answerLinesMost {
			t.Errorf("ask %s: %d lines, want at most %d", q.typed, n, answerLinesMost)
		}
		holdsTo(t, q.typed+" ("+q.how+")", &a, q.want)
	}
}

// holdsTo checks one answer.
func holdsTo(t *testing.T, what string, a *ask.Answer, want expected) {
	t.Helper()
	level := ""
	if a.Level != nil {
		level = a.Level.String()
	}
	if level != want.level {
		t.Errorf("ask %s: level %q, want %q: %v", what, level, want.level, a.Words)
	}
	if want.within > 0 && math.Abs(a.Value-want.value) > want.within {
		t.Errorf("ask %s: %s %g, want %g +- %g", what, a.What, a.Value, want.value, want.within)
	}
	if want.holds > 0 && (want.holds < a.Low || want.holds > a.High) {
		t.Errorf("ask %s: %s %g to %g does not hold %g", what, a.What, a.Low, a.High, want.holds)
	}
	if want.low > 0 && math.Abs(a.Low/want.low-1) > 1e-3 {
		t.Errorf("ask %s: %s from %g, want %g", what, a.What, a.Low, want.low)
	}
	if a.Value < want.least || want.most > 0 && a.Value > want.most {
		t.Errorf("ask %s: %s %g, want %g to %g", what, a.What, a.Value, want.least, want.most)
	}
	if text := strings.Join(strings.Fields(strings.Join(answerLines(a), " ")), " "); !strings.Contains(text, want.says) {
		t.Errorf("ask %s: does not say %q: %s", what, want.says, text)
	}
}

// parted parts a line as a shell does, double quotes only.
func parted(line string) []string {
	var out []string
	for _, m := range regexp.MustCompile(`"([^"]*)"|(\S*="[^"]*")|(\S+)`).FindAllStringSubmatch(line, -1) {
		out = append(out, strings.ReplaceAll(m[1]+m[2]+m[3], `"`, ""))
	}
	return out
}

// What an answer is must not hang on the words for it, nor on the order.
func TestWordsAndOrderDoNotChangeAnAnswer(t *testing.T) {
	for _, same := range [][]string{
		{`runtime "12 V 7 Ah" "9 A" agm`, `runtime agm "9 A" "12 V 7 Ah"`, `runtime 9 A 12 V 7 Ah sla`, `runtime load="9 A" battery="12 V 7 Ah" agm`, `runtime 9000 mA 12V 7ha "lead acid"`},
		{`fuse "14 AWG" "20 A"`, `fuse 20 amps AWG 14`, `fuse "#14" 20A`},
		{`speed "15000 rpm" 110:1 "250 mm" "12 V" "18 V"`, `speed "12V 15000RPM" 1:110 "25 cm" "18 V"`, `speed "15000 rpm" 110:1 "250 mm" "12 V" "20 V max 5 Ah"`, `speed "20 V max 5 Ah" "15000 rpm" 110:1 "250 mm" "12 V"`},
		{`pace "5 years"`, `pace 5 yo`, `pace 5`, `pace "60 months"`},
		{`hot motor "158 F" "20 min"`, `hot "20 min" "70 C" motor`},
		{`stopped "20 s"`, `stopped 20 seconds`},
		{`rest "12.4 V" agm`, `rest “12.4 V” agm`},
		{`runtime "12 V 7 Ah" "9 A"`, `runtime 12v 7 amp hour battery at 9 amps`, `runtime 12 volt 7 amp hours with 9 amps`, `runtime a 12v 7ah battery, 9 A load`, `runtime 7ah 12v 9a`},
		{`fuse "14 AWG" "20 A"`, `fuse for 14 gauge wire and 20 amp load`, `fuse 20 a load on 14 ga`, `fuse load 20 A wire 14 AWG`},
		{`fuse "14 AWG" "20 A" air="40 C"`, `fuse 14 awg 20 a air 40 C`},
		{`fuse "14 AWG" "20 A" "60 A" "1 s"`, `fuse 14 awg 20 A launch 60 A for 1 s`},
		{`opened "30 A" "8 s"`, `opened 30 amp fuse after 8 seconds`},
		{`fuse "14 AWG" "10 A" "30 A" "1 s"`, `fuse "14 AWG" "30 A" load="10 A" "1 s"`, `fuse launch="30 A" "14 AWG" "1 s" "10 A"`},
		{`stopped "1 min"`, `stopped came back after a minute`, `stopped it came back by 60 s`},
		{`stopped unplugged`, `stopped dead until unplugged from the charger`, `stopped power cycled`},
		{`pace "5 years" "8 km/h"`, `pace a 5-year-old at 8 km/hr`, `pace 5 year old 8 kilometers per hour`, `pace age 5 speed 8 km/h`, `pace 5 y/o 8kph`},
		{`pace "4 years" "5 mph"`, `pace 4 yrs old 5 miles per hour`},
		{`speed "15000 rpm" "12 teeth" "72 teeth" "9 in"`, `speed 15000 rpm 12t 72t 9 inches`, `speed 15000rpm pinion 12 teeth gear 72 teeth wheel 9 in`},
		{`charger "14.7 V 1.5 A DC for lead-acid" "12 V 7 Ah"`, `charger 14.7v 1.5a dc lead-acid 12v 7ah`, `charger 12v 7ah 14.7 V 1.5 A DC for lead-acid`},
		{`cutoff "12.8 V 10 Ah LiFePO4" "10 A"`, `cutoff 12.8v lifepo4 10ah at 10 amps`},
		{`rest "20.1 V" "20 V max" "10 h"`, `rest 20.1v 20v max 10 hours`, `rest volts 20.1 V battery 20 V max rested 10 h`},
		{`winter "12 V 7 Ah" "5 months"`, `winter 12v 7ah for 5 mo`, `winter battery 12v 7ah 5 mths`},
		{`hot battery "45 C" "20 min"`, `hot battery at 113 F after 20 min`},
		{`label "12 V 35 Ah"`, `label 12 V 35Ah`, `label 12 volt 35 amp hour`},
		{`label "24V 12Ah (2x12V)"`, `label 24v 12ah (2x12v)`},
	} {
		want := ""
		for i, typed := range same {
			a, err := answerTo(parted(typed))
			if err != nil {
				t.Errorf("ask %s: %v", typed, err)
				continue
			}
			a.Asked = ""
			var b bytes.Buffer
			if err := writeAnswerJSON(&b, &a); err != nil {
				t.Fatal(err)
			}
			got := regexp.MustCompile(`"words": \[[^]]*\]`).ReplaceAllString(b.String(), "")
			if i == 0 {
				want = got
			} else if got != want {
				t.Errorf("ask %s is not ask %s:\n%s\n%s", typed, same[0], got, want)
			}
		}
	}
}

// What a setup takes for the form of a fuse and the kind of a battery, a question takes
// as well, with quotes, without them and by its name.
func TestQuestionsTakeTheWordsThatSetupsTake(t *testing.T) {
	forms := []string{"glass tube", "small blade", "auto-reset breaker"}
	for _, form := range tables.Builtin().FuseForms() {
		f, err := tables.Builtin().Fuse(form)
		if err != nil {
			t.Fatal(err)
		}
		forms = append(append(forms, form), f.Words...)
	}
	for _, c := range []struct {
		asked, name string
		words       []string
	}{
		{`fuse "14 AWG" "10 A" `, "form", forms},
		{`runtime "12 V 7 Ah" "5 A" `, "chemistry", setup.Chemistries()},
	} {
		for _, word := range c.words {
			for _, typed := range []string{c.asked + `"` + word + `"`, c.asked + word, c.asked + `"` + c.name + "=" + word + `"`} {
				if _, err := answerTo(parted(typed)); err != nil && strings.Contains(err.Error(), "; want ") {
					t.Errorf("ask %s: %v", typed, err)
				}
			}
		}
	}
}

func TestEveryExampleOfTheHelpIsAnswered(t *testing.T) {
	for _, v := range verbs() {
		a, err := answerTo(parted(v.example))
		if err != nil {
			t.Errorf("ask %s: %v", v.example, err)
			continue
		}
		lines := answerLines(&a)
		if len(lines) > answerLinesMost || len(lines) < 4 {
			t.Errorf("ask %s: %d lines", v.example, len(lines))
		}
		for _, line := range lines {
			if len(line) > answerColumns || regexp.MustCompile(`[^ -~]`).MatchString(line) {
				t.Errorf("ask %s: too wide or not ASCII: %q", v.example, line)
			}
		}
		if a.Caution == "" || len(a.Sources) == 0 || len(a.Words) == 0 || !strings.Contains(strings.Join(lines, "\n"), "Source ") {
			t.Errorf("ask %s: an answer has words, a caution and a source: %+v", v.example, a)
		}
		for _, s := range a.Sources {
			if s.Known == "unknown" {
				t.Errorf("ask %s: nobody defines the source %s", v.example, s.ID)
			}
		}
		if a.Level != nil && *a.Level == answer.Fine {
			t.Errorf("ask %s: one part that is fine makes no vehicle so", v.example)
		}
	}
}

// Whatever a refusal says would be right is taken.
func TestWhatARefusalOfAQuestionWantsIsTaken(t *testing.T) {
	quoted := regexp.MustCompile(`such as ("(?:[^"\\]|\\.)*")`)
	seen := 0
	for _, v := range verbs() {
		for _, wrong := range []string{"xyzzy", "14 parsecs", "-5 kg", "1e9 V", "9.5 hats", "12 V 600 CCA", "12 V 9.5 amps", "5 to 9 A", "1,000 A", "0 Ohm", "900000 A", "-300 C", "99 s 1 h"} {
			_, faults := v.read([]string{wrong})
			for _, fault := range faults {
				for _, m := range quoted.FindAllStringSubmatch(fault, -1) {
					typed, err := strconv.Unquote(m[1])
					if err != nil {
						t.Fatal(err)
					}
					if _, again := v.read([]string{typed}); strings.Contains(strings.Join(again, "\n"), strconv.Quote(typed)+"; want") {
						t.Errorf("ask %s %q: %s\nbut %q: %v", v.name, wrong, fault, typed, again)
					}
					seen++
				}
			}
		}
	}
	if seen < 100 {
		t.Errorf("only %d suggestions seen: the test looks in the wrong place", seen)
	}
}

// Everything wrong with a question is told at once.
func TestEveryFaultOfAQuestionIsTold(t *testing.T) {
	for _, c := range []struct {
		typed string
		lines []string
	}{
		{`fuse "14 parsecs" "20 V"`, []string{`read "14 parsecs"; want wire such as "14 AWG"`, `read "20 V"; want wire`}},
		{`runtime`, []string{"no battery; want", "no load; want"}},
		{`runtime "12 V 600 CCA" "-9 A"`, []string{"starter battery", `read "-9 A"; want a current from 1 mA to 5000 A`}},
		{`runtime "12 V 9.5 amps" "9 A"`, []string{`want ampere-hours, such as "12 V 9.5 Ah"`}},
		{`runtime "12 V 7 Ah" load="9 A" load="90 A"`, []string{`read "load=90 A"; want one load only`}},
		{`pace 5 8 9`, []string{`read "8"; want one age only`, `read "9"; want one age only`}},
		{`pack`, []string{`read "pack"; want one of label`}},
		{``, []string{"ask what?"}},
		{`lost 12.4 11.1 9a`, []string{`read "12.4"; want first with the unit, such as "12.4 V"`, `read "11.1"; want first with the unit, such as "11.1 V"`}},
		{`runtime 12v 7ah 9a for 30 min`, []string{`read "30 min"; want no time: how long it lasts is what is answered`}},
		{`runtime 12v 12ah 15a old`, []string{`read "old"; want a chemistry such as "agm", or "new", "1 year", "2 years", "3 years", "worn"`}},
		{`wire 30 amp 10 ft`, []string{`want both, such as 3 m and 12 V`}},
		{`fuse 14 awg 20 a launch 60 A`, []string{`want both, such as 60 A for 1 s, or neither`}},
		{`stopped`, []string{`how it came back is told 0 times; want one of these: the seconds, such as 20 s`}},
		{`lost 11 v 12 v 5 a`, []string{`want the higher reading first`}},
		{`old "12 V 7 Ah" "10.2 V" "12.6 V" "9 A"`, []string{`a load pulls the voltage down`}},
		{`join "12 V 7 Ah" "lead=x" "12.3 V"`, []string{`lead: read "x"; want`, "no second; want"}},
	} {
		_, err := answerTo(parted(c.typed))
		if err == nil {
			t.Errorf("ask %s: no fault", c.typed)
			continue
		}
		for _, want := range c.lines {
			if !strings.Contains(err.Error(), want) {
				t.Errorf("ask %s: %v\nlacks %q", c.typed, err, want)
			}
		}
	}
}

// Whatever is typed, there is an answer of twelve lines or a fault.
func FuzzQuestionsNeverPanic(f *testing.F) {
	for _, v := range verbs() {
		f.Add(v.example)
	}
	for _, line := range []string{
		`charger 14.7 V 1.5 A for lead-acid 12 V 7 Ah`, `join "20 V max 5 Ah" "21 V" "12 V 7 Ah" "12 V"`, `hot battery 200 C 20 min "20 V max 5 Ah" worn`,
		`runtime "48 V 100 Ah" "4999 A" "-40 C"`, `idle "3.6 V 0.1 Ah lithium" "20 A"`, `wire "1000 A" "50 m" "6 V"`, `old "12 V 7 Ah" "0.02 V"`,
		`cutoff "12 V 7 Ah" "900 A" "4000 A" "60 s"`, `rest "199 V" "12 V 7 Ah"`, `winter "12 V 7 Ah" "10 years"`, `pace = = =`, "runtime \xff \x00", `speed 1e5rpm 4t 2000t 3cm`,
	} {
		f.Add(line)
	}
	f.Fuzz(func(t *testing.T, line string) {
		a, err := answerTo(parted(line))
		if err != nil {
			if err.Error() == "" || len(err.Error()) > 20000 {
				t.Errorf("ask %q: an error of %d bytes", line, len(err.Error()))
			}
			return
		}
		lines := answerLines(&a)
		if len(lines) > answerLinesMost || !strings.Contains(strings.Join(lines, "\n"), "Caution  ") {
			t.Errorf("ask %q: %d lines\n%s", line, len(lines), strings.Join(lines, "\n"))
		}
	})
}

// What a question cannot take is refused where it was typed, in its own unit, and never by
// the name of a field in the library.
func TestWhatIsOutOfBoundsIsNamedAsTyped(t *testing.T) {
	field := regexp.MustCompile(`[A-Z][A-Za-z]+ is [-+.e0-9]+; want`)
	for _, v := range verbs() {
		typed, faults := v.read(parted(v.example)[1:])
		if len(faults) > 0 {
			t.Fatal(faults)
		}
		for _, s := range v.slots {
			if s.sort != measure && s.sort != motorsSlot && s.sort != teethSlot {
				continue
			}
			for _, value := range []float64{s.low, s.high} {
				at := maps.Clone(typed)
				at[s.name] = reading{value: value, low: value, high: value}
				if _, err := v.question(at).Answer(); err != nil && field.MatchString(err.Error()) {
					t.Errorf("ask %s: %s of %g: %v", v.name, s.name, value, err)
				}
			}
		}
	}
}
