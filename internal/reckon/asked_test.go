package reckon_test

import (
	"slices"
	"strings"
	"testing"

	"example.org/packcheck/answer"
	"example.org/packcheck/internal/interview"
	"example.org/packcheck/internal/reckon"
	"example.org/packcheck/setup"
)

// swap is a tool pack in the place of a block, by labels.
func swap() map[string]string {
	return map[string]string{
		"rider.age": "5 years", "vehicle.design_voltage": "12 V", "motors.count": "2", "motors.can": "550",
		"pack.label": "20 V max 5 Ah", "pack.chemistry": "li-ion", "original.pack.label": "12 V 7 Ah", "original.pack.chemistry": "agm",
		"outing.wanted": "1 h",
	}
}

func TestNobodyIsAskedToDriveWhatMustNotBeDriven(t *testing.T) {
	apart := swap()
	delete(apart, "original.pack.label")
	delete(apart, "original.pack.chemistry")
	gears := []answer.Finding{{Level: answer.FixFirst, Guess: answer.KeyGearsRatio}}
	speed, ride := answer.KeyMeasuredTopSpeed, "measured.ride_time"
	for _, tt := range []struct {
		name, key string
		values    map[string]string
		verdict   answer.Level
		findings  []answer.Finding
		want      bool
	}{
		{"a danger", speed, apart, answer.Danger, nil, true},
		{"a danger, with the old battery to measure with", speed, swap(), answer.Danger, nil, false},
		{"something to fix", ride, apart, answer.FixFirst, nil, true},
		{"a speed that rests on a guess at the gears", speed, apart, answer.FixFirst, gears, false},
		{"the time of a ride then", ride, apart, answer.FixFirst, gears, true},
		{"something to watch", ride, apart, answer.Watch, nil, false},
	} {
		s, err := setup.Of(tt.values)
		if err != nil {
			t.Fatal(err)
		}
		p, err := s.Parts()
		if err != nil {
			t.Fatal(err)
		}
		a := &answer.Assessment{Verdict: tt.verdict, Findings: tt.findings}
		if got := reckon.Forbids(p, a, answer.Measurement{Key: tt.key, Drives: true}); got != tt.want {
			t.Errorf("%s: forbidden %v, want %v", tt.name, got, tt.want)
		}
		if reckon.Forbids(p, a, answer.Measurement{Key: tt.key}) {
			t.Errorf("%s: forbids what needs no driving", tt.name)
		}
	}
	for _, m := range fewDraws(t, apart).Measure {
		if m.Drives {
			t.Errorf("asks for %s", m.Key)
		}
	}
}

// What needs a meter comes after all that eyes, a clock or a scale can find out.
func TestNoMeterIsAskedForBeforeSomethingSimpler(t *testing.T) {
	questions := interview.ByKey()
	for _, values := range []map[string]string{swap(), {"pack.label": "12 V 7 Ah"}, {"pack.label": "24 V (two 12 V) 9 Ah", "vehicle.design_voltage": "24 V"}} {
		meter := ""
		list := fewDraws(t, values).Measure
		for _, m := range list {
			switch q := questions[m.Key]; {
			case q.Effort >= interview.Meter:
				meter = m.Key
			case meter != "":
				t.Errorf("%s is asked after %s", m.Key, meter)
			}
		}
		if len(list) == 0 || len(list) > 5 {
			t.Fatalf("%d questions", len(list))
		}
		look := slices.ContainsFunc(list, func(m answer.Measurement) bool {
			q := questions[m.Key]
			return !q.Hard && q.Effort < interview.Meter
		})
		if first := questions[list[0].Key]; first.Hard && look {
			t.Errorf("%s is asked first, which is hard", list[0].Key)
		}
	}
}

// Which one reading helps most is among those that are asked for, and no question that
// narrows nothing stands in its place.
func TestWhatNarrowsMostIsNotCrowdedOut(t *testing.T) {
	for _, values := range []map[string]string{
		{"rider.mass": "20 kg", "vehicle.design_voltage": "12 V", "vehicle.ground": "lawn", "motors.can": "550", "pack.label": "12 V 7 Ah"},
		{"pack.label": "12 V 7 Ah", "vehicle.design_voltage": "12 V", "vehicle.ground": "asphalt"},
	} {
		a := someDraws(t, values, 2048)
		if a.Verdict > answer.Watch {
			t.Fatalf("%v: then nobody may be asked to drive", a.Verdict)
		}
		if !slices.ContainsFunc(a.Measure, func(m answer.Measurement) bool { return m.Key == "measured.ride_time" && m.Minutes > 0.25 }) {
			t.Errorf("nobody is asked how long it lasts: %+v", a.Measure)
		}
	}
}

func TestKeepNarrowing(t *testing.T) {
	narrows := func(key string, minutes float64) reckon.Question {
		return reckon.NewQuestion(answer.Measurement{Key: key, Minutes: minutes}, 1, false)
	}
	meter := reckon.NewQuestion(answer.Measurement{Key: "meter"}, 2, false)
	decides := reckon.NewQuestion(answer.Measurement{Key: "decides"}, 1, true)
	nothing := narrows("nothing", 0)
	for _, tt := range []struct {
		name string
		list []reckon.Question
		n    int
		want string
	}{
		{"there is room for all", []reckon.Question{nothing, narrows("half", 0.5)}, 2, "nothing half"},
		{"the last that narrows nothing gives way", []reckon.Question{nothing, nothing, decides, narrows("half", 0.5)}, 3, "nothing decides half"},
		{"none gives way that may hide a danger", []reckon.Question{nothing, decides, decides, narrows("half", 0.5)}, 3, "nothing decides decides"},
		{"nor for what one of them narrows about as much", []reckon.Question{nothing, narrows("third", 0.3), nothing, narrows("half", 0.5)}, 3, "nothing third nothing"},
		{"nor for little", []reckon.Question{nothing, nothing, narrows("tenth", 0.1)}, 2, "nothing nothing"},
		{"a meter stays last", []reckon.Question{nothing, nothing, nothing, narrows("half", 0.5)}, 3, "nothing nothing half"},
		{"in front of what needs a meter", []reckon.Question{nothing, nothing, meter, narrows("half", 0.5)}, 4, "nothing nothing meter half"},
		{"whose place it takes, where it narrows nothing", []reckon.Question{decides, decides, meter, narrows("half", 0.5)}, 3, "decides decides half"},
	} {
		var got []string
		for _, q := range reckon.KeepNarrowing(tt.list, tt.n) {
			got = append(got, q.Key)
		}
		if strings.Join(got, " ") != tt.want {
			t.Errorf("%s: %v, want %s", tt.name, got, tt.want)
		}
	}
}

// One order and one next step: the way out, and before it what has to be looked at.
func TestTheNextStepIsAWayOutWhereThereIsOne(t *testing.T) {
	s, err := setup.Of(swap())
	if err != nil {
		t.Fatal(err)
	}
	a, err := reckon.Assess(s, reckon.Options{Draws: 64, Ways: true})
	if err != nil {
		t.Fatal(err)
	}
	if len(a.Ways) == 0 || !a.Sought {
		t.Fatal("no way out was found")
	}
	next := a.Headline[2]
	if !strings.Contains(next, "way") || strings.Contains(next, "Look first") != (len(a.Measure) > 0) {
		t.Errorf("the next step is %q beside %d ways and %d questions", next, len(a.Ways), len(a.Measure))
	}
	told := 0
	for _, w := range a.Ways {
		if w.WantedShare == nil || *w.WantedShare < 0 || *w.WantedShare > 1 {
			t.Errorf("%s does not say whether an hour is reached", w.Title)
		}
		if p := w.Pace; p != nil && (p.LimitKmh < 4 || p.LimitKmh > 16 || p.Share <= 0 || p.Share > 1) { // the ladder of speeds by age
			t.Errorf("%s: too fast from %.3g km/h in a share of %.3g", w.Title, p.LimitKmh, p.Share)
		}
		if w.Harms < 1 { // a fuse that nobody knows, what was not told
			t.Errorf("%s leaves nothing to watch", w.Title)
		}
		if (w.Together != "") != w.Wiring && len(w.Steps) > 0 { // what sits in the wire is wired in
			t.Errorf("%s: wiring %v, %q", w.Title, w.Wiring, w.Together)
		}
		if len(w.Steps) == 0 {
			continue
		}
		if order := placesOf(w.Together, "fuse", "cutoff", "converter", "speed control"); !slices.IsSorted(order) {
			t.Errorf("%s: the order is %v in %q", w.Title, order, w.Together)
		}
		if strings.Contains(w.Together, "hence the small") {
			told++
		}
	}
	if told > 1 {
		t.Errorf("why the amps differ is told %d times", told)
	}
	without := fewDraws(t, swap())
	if without.Sought || strings.Contains(without.Headline[2], "way") {
		t.Errorf("ways that nobody searched: %q", without.Headline[2])
	}
}

// placesOf are the places of those of the words that a sentence has, up to its end.
func placesOf(text string, words ...string) []int {
	text, _, _ = strings.Cut(text, ".")
	var out []int
	for _, w := range words {
		if at := strings.Index(text, w); at >= 0 {
			out = append(out, at)
		}
	}
	return out
}

// What was not told is no guess: of three things that nobody told none goes before what the
// gravest findings rest on, because it is named first.
func TestWhatWasNotToldDoesNotGoBeforeAGuess(t *testing.T) {
	for _, age := range []string{"3 years", "worn"} {
		a := someDraws(t, timed(map[string]string{"measured.ride_time": "4 min", "pack.age": age}), 512)
		var guesses, untold []string
		for _, f := range a.Findings[:3] {
			switch {
			case len(f.Untold) > 0:
				untold = f.Decides
			case f.Guess != "":
				guesses = append(guesses, f.Guess)
			}
		}
		if len(untold) == 0 || len(guesses) == 0 || len(a.Measure) == 0 {
			t.Fatalf("%s: %d findings, %q, %q", age, len(a.Findings), guesses, untold)
		}
		if first := a.Measure[0].Key; slices.Contains(untold, first) {
			t.Errorf("%s: %s is asked for before %v", age, first, guesses)
		}
	}
}

// What is on the label of a charger that goes whatever it says is not asked.
func TestNobodyIsAskedOfAChargerThatGoes(t *testing.T) {
	with := func(label string, more map[string]string) map[string]string {
		values := map[string]string{"pack.chemistry": "agm", "pack.label": "12 V 7 Ah", "vehicle.design_voltage": "12 V", "charger.label": label, "charger.jack": "vehicle"}
		for key, v := range more {
			values[key] = v
		}
		return values
	}
	never := map[string]string{"charger.made_for": "lead-acid", "charger.stops": "never"}
	for _, tt := range []struct {
		name   string
		values map[string]string
		key    string
		want   bool
	}{
		{"DC or not, of one that may suit", with("14.7 V 1 A", map[string]string{"charger.stops": "by itself"}), answer.KeyChargerOutput, true},
		{"DC or not, of one for 24 V", with("29.4 V 1 A", never), answer.KeyChargerOutput, false},
		{"for what it is made, of one that gives alternating current", with("14.7 V 1 A AC", nil), answer.KeyChargerMadeFor, false},
		{"for what it is made, of one that gives direct current", with("14.7 V 1 A DC", nil), answer.KeyChargerMadeFor, true},
	} {
		asked := slices.ContainsFunc(fewDraws(t, tt.values).Measure, func(m answer.Measurement) bool { return m.Key == tt.key })
		if asked != tt.want {
			t.Errorf("%s: asked %v, want %v", tt.name, asked, tt.want)
		}
	}
}

// On a page that says no, what may put it right is looked at before what only makes a range
// narrower, although it is harder to find out.
func TestWhatDecidesIsAskedBeforeWhatOnlyNarrows(t *testing.T) {
	for want, values := range map[string]map[string]string{
		"fuse.form": {"pack.label": "18650 3S2P 5200mAh", "vehicle.design_voltage": "12 V", "rider.age": "5 years", "vehicle.ground": "lawn"},
		answer.KeyChargerStops: {
			"pack.label": "12.8 V 7 Ah LiFePO4", "pack.watches_cells": "true", "pack.max_current": "15 A", "vehicle.design_voltage": "12 V", "rider.age": "4 years",
			"charger.label": "14.6 V 2 A DC LiFePO4", "original.pack.label": "12 V 7 Ah", "vehicle.ground": "lawn",
		},
		answer.KeyPackWatchesCells: {"pack.label": "36 V 10 Ah li-ion e-bike", "vehicle.design_voltage": "36 V", "rider.mass": "32 kg", "rider.age": "9 years", "vehicle.ground": "gravel"},
	} {
		a := fewDraws(t, values)
		if len(a.Measure) == 0 || a.Measure[0].Key != want {
			t.Errorf("%s: %+v is asked first, want %s", values["pack.label"], a.Measure, want)
		}
	}
}

// Of a battery that has half of the vehicle's volts it is first asked whether there are two.
func TestWhetherThereAreTwoBatteriesIsAskedFirstWhereOneHasHalfTheVolts(t *testing.T) {
	for volts, want := range map[string]bool{"24 V": true, "12 V": false} {
		a := fewDraws(t, map[string]string{"pack.label": "12 V 7 Ah", "pack.chemistry": "sla", "vehicle.design_voltage": volts, "rider.age": "6 years"})
		if got := len(a.Measure) > 0 && a.Measure[0].Key == "pack.joined"; got != want {
			t.Errorf("in a vehicle of %s: asked first %v: %+v", volts, got, a.Measure)
		}
		if guess := a.Findings[0].Guess; !slices.ContainsFunc(a.Measure, func(m answer.Measurement) bool {
			q := interview.ByKey()[m.Key]
			return slices.Contains(q.Keys(), guess)
		}) {
			t.Errorf("in a vehicle of %s: the first reason rests on %s, and nobody is asked: %+v", volts, guess, a.Measure)
		}
	}
}
