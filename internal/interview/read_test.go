package interview_test

import (
	"maps"
	"strings"
	"testing"
	"time"

	"example.org/packcheck/internal/interview"
)

func TestAnswersAreReadAsPeopleWriteThem(t *testing.T) {
	questions := interview.ByKey()
	for _, c := range []struct {
		key, text string
		want      map[string]string
	}{
		{"pack.label", "20V MAX 4.0Ah", map[string]string{"pack.label": "20V MAX 4.0Ah"}},
		{"pack.label", "5S2P", map[string]string{"pack.label": "5S2P"}},
		{"pack.chemistry", "SLA", map[string]string{"pack.chemistry": "sla"}},
		{"pack.chemistry", "lead acid", map[string]string{"pack.chemistry": "lead acid"}},
		{"vehicle.design_voltage", "12", map[string]string{"vehicle.design_voltage": "12 V"}},
		{"vehicle.design_voltage", "12v", map[string]string{"vehicle.design_voltage": "12v"}},
		{"rider.age", "5 yo", map[string]string{"rider.age": "5 yo"}},
		{"rider.age", "4", map[string]string{"rider.age": "4 years"}},
		{"rider.age", "four", map[string]string{"rider.age": "4 years"}},
		{"rider.age", "She is four", map[string]string{"rider.age": "4 years"}},
		{"rider.age", "four years", map[string]string{"rider.age": "4 years"}},
		{"rider.age", "twelve, 40 kg", map[string]string{"rider.age": "12 years", "rider.mass": "40 kg"}},
		{"rider.age", "38lb", map[string]string{"rider.mass": "38lb"}},
		{"rider.age", "4 yo, 38lb", map[string]string{"rider.age": "4 yo", "rider.mass": "38lb"}},
		{"rider.age", "17 kg and 4 years", map[string]string{"rider.age": "4 years", "rider.mass": "17 kg"}},
		{"vehicle.ground", "lawn", map[string]string{"vehicle.ground": "short grass"}},
		{"vehicle.ground", "Driveway", map[string]string{"vehicle.ground": "Driveway"}},
		{"fuse.form", "no", map[string]string{"fuse.form": "none"}},
		{"fuse.form", "30A", map[string]string{"fuse.rating": "30A"}},
		{"fuse.form", "blade 30 A", map[string]string{"fuse.form": "blade", "fuse.rating": "30 A"}},
		{"wire.gauge", "2.5 mm2", map[string]string{"wire.area": "2.5 mm2"}},
		{"wire.gauge", "14", map[string]string{"wire.gauge": "14 AWG"}},
		{"vehicle.slope", "none", map[string]string{"vehicle.slope": "0 %"}},
		{"vehicle.slope", "Flat.", map[string]string{"vehicle.slope": "0 %"}},
		{"outing.drive", "30s/10s", map[string]string{"outing.drive": "30s", "outing.pause": "10s"}},
		{"rider.age", "4 yo/38lb", map[string]string{"rider.age": "4 yo", "rider.mass": "38lb"}},
		{"vehicle.has_board", "Yes", map[string]string{"vehicle.has_board": "yes"}},
		{"pack.age", "2", map[string]string{"pack.age": "2 years"}}, // a choice by its number, and what it says
		{"motors.can", "550", map[string]string{"motors.can": "550"}},
		{"motors.can", "550 size", map[string]string{"motors.can": "550 size"}},
		{"motors.can", "a 775 motor", map[string]string{"motors.can": "a 775 motor"}},
		{"motors.stall_current", "70 A, 30k rpm", map[string]string{"motors.stall_current": "70 A", "motors.no_load_speed": "30k rpm"}},
		{"pack.size", "151 x 65 x 94 mm", map[string]string{"pack.size": "151 x 65 x 94 mm"}},
		{"rider.count", "two", map[string]string{"rider.count": "two"}},
		{"controller.class", "24V 30A", map[string]string{"controller.class": "24V 30A"}},
		{"motors.count", "2", map[string]string{"motors.count": "2"}},
		{"measured.rest_voltage", "12,6", map[string]string{"measured.rest_voltage": "12,6 V"}},
		{"cutoff.pack.opens_at", "no", nil}, // there is none: nothing to fill in
		{"cutoff.pack.opens_at", "idk", nil},
		{"vehicle.accessories", "not sure", nil},
		{"motors.count", "two", map[string]string{"motors.count": "two"}},
		{"outing.drive", "25 s, 10 s", map[string]string{"outing.drive": "25 s", "outing.pause": "10 s"}},
		{"motors.stall_current", "70 A, 15000 rpm", map[string]string{"motors.stall_current": "70 A", "motors.no_load_speed": "15000 rpm"}},
	} {
		got, err := interview.Fill(questions[c.key], c.text, nil)
		if err != nil || !maps.Equal(got, c.want) {
			t.Errorf("%s: %q gives %v and %v, want %v", c.key, c.text, got, err, c.want)
		}
	}
}

func TestAMistakeIsAnsweredInOnePlainSentence(t *testing.T) {
	questions := interview.ByKey()
	for _, c := range []struct{ key, text, want string }{
		{"vehicle.design_voltage", "12 bananas", "a voltage with its unit"},
		{"vehicle.design_voltage", "12000 V", "V"},
		{"vehicle.design_voltage", "1", "from 3 V"}, // the number of a choice that is not there
		{"rider.age", "-5", "years"},
		{"rider.mass", "20", "mass"},
		{"vehicle.ground", "moon", "asphalt"},
		{"vehicle.has_board", "perhaps", "yes or no"},
		{"pack.label", "sla", "20 V max 5 Ah"},
		{"pack.label", "90 Wh", "the volts with it"},
		{"motors.count", "two and a half", "number"},
		{"storage.from", "winter", "year-month-day"},
		{"wire.gauge", "1,5", `the number with its unit, "1,5 mm2"`},
		{"wire.gauge", "4", `"4 AWG" or "4 mm2"`},
	} {
		sets, err := interview.Fill(questions[c.key], c.text, nil)
		if err == nil {
			t.Errorf("%s: %q is taken: %v", c.key, c.text, sets)
			continue
		}
		text := err.Error()
		if !strings.Contains(text, c.text) || !strings.Contains(text, c.want) || strings.Contains(text, "\n") || strings.Contains(text, c.key) {
			t.Errorf("%s: %q is answered with %q, want what was read and %q", c.key, c.text, text, c.want)
		}
	}
}

// Of two statements it is the one that was not understood that is asked back.
func TestThePieceAtFaultIsNamed(t *testing.T) {
	questions := interview.ByKey()
	for _, c := range []struct{ key, text, want string }{
		{"rider.age", "4,5 Jahre, 17,5kg", `read "4,5 Jahre"; right would be an age`},
		{"rider.age", "three and a half, 35 pounds", `read "three and a half"; right would be an age`},
		{"rider.age", "4 years, heavy", `read "heavy"; right would be`},
		{"rider.age", "5 mph", `read "5 mph"; right would be an age`},
	} {
		if sets, err := interview.Fill(questions[c.key], c.text, nil); err == nil || !strings.Contains(err.Error(), c.want) {
			t.Errorf("%s: %q gives %v and %v, want %q", c.key, c.text, sets, err, c.want)
		}
	}
}

// The second of two answers that contradict each other is the one to ask about.
func TestAnAnswerMustStandBesideTheOthers(t *testing.T) {
	questions := interview.ByKey()
	given := map[string]string{"pack.label": "12 V 7 Ah", "measured.rest_voltage": "12.5 V"}
	before := maps.Clone(given)
	if _, err := interview.Fill(questions["measured.loaded_voltage"], "13.1 V", given); err == nil {
		t.Error("more volts under load than at rest are taken")
	}
	if sets, err := interview.Fill(questions["measured.loaded_voltage"], "11.8 V", given); err != nil || sets["measured.loaded_voltage"] == "" {
		t.Errorf("fewer volts under load than at rest: %v, %v", sets, err)
	}
	same := interview.ByKey()["original.pack.label"]
	if sets, err := interview.Fill(same, "same", map[string]string{"pack.label": "12 V 7 Ah", "vehicle.design_voltage": "2 V"}); err == nil {
		t.Errorf("the same battery is taken for a vehicle of other volts: %v", sets)
	}
	if !maps.Equal(given, before) {
		t.Errorf("what was given has become %v", given)
	}
}

// Who is too young for any such vehicle is told at once; for whom the speed decides, later.
func TestWhoIsTooYoungIsToldAtThatAnswer(t *testing.T) {
	q := interview.ByKey()["rider.age"]
	for text, want := range map[string]string{
		"1 year": "A child of 1 is too young", "11 months, 9 kg": "A child under 1 is too young", "14 months": "A child of 1 is too young",
		"18 months": "", "2 years": "", "4": "", "17 kg": "", "1 to 5 years": "A child of 1 is too young",
	} {
		sets, err := interview.Fill(q, text, nil)
		if err != nil {
			t.Fatal(text, err)
		}
		if got := interview.TooYoung(sets); got != want && (want == "" || !strings.HasPrefix(got, want)) {
			t.Errorf("%s: %q, want %q", text, got, want)
		}
	}
}

func FuzzFill(f *testing.F) {
	all := interview.All()
	for _, seed := range []string{"", "12", "20 V max 4 Ah", "4 yo, 38lb", "30 A blade", "same", "1.", ",", "; and / ", "\x00", "nan", "1e999 V", strings.Repeat("9 ", 60)} {
		for which := range len(all) {
			f.Add(seed, uint8(which))
		}
	}
	f.Fuzz(func(t *testing.T, text string, which uint8) {
		q := all[int(which)%len(all)]
		sets, err := interview.Fill(q, text, map[string]string{"pack.label": "12 V 7 Ah"})
		if err != nil && (len(sets) > 0 || strings.Contains(err.Error(), "\n")) {
			t.Errorf("%s: %q gives %v and %q", q.Key, text, sets, err)
		}
	})
}

// A month is a day of the nearest winter; whoever sees what was taken can say it better.
func TestAMonthIsReadAsADay(t *testing.T) {
	questions := interview.ByKey()
	today := time.Date(2026, 11, 28, 23, 0, 0, 0, time.FixedZone("", 3600))
	for _, c := range []struct{ key, text, from, want string }{
		{"storage.from", "november", "", "2026-11-01"},
		{"storage.from", "Nov", "", "2026-11-01"},
		{"storage.from", "15 November", "", "2026-11-15"},
		{"storage.from", "November 15th, 2025", "", "2025-11-15"},
		{"storage.from", "end of october", "", "2026-10-31"},
		{"storage.from", "mid february", "", "2027-02-15"}, // nearer than the last
		{"storage.until", "march", "2026-11-01", "2027-03-31"},
		{"storage.until", "early March", "2026-11-01", "2027-03-01"},
		{"storage.until", "december", "2026-11-01", "2026-12-31"},
		{"storage.until", "March", "2024-11-01", "2025-03-31"},
		{"storage.until", "march", "", "2027-03-31"},
		{"storage.from", "2026-11-01", "", "2026-11-01"},
		{"storage.from", "31 february", "", "31 february"},
		{"storage.from", "winter", "", "winter"},
		{"storage.from", "15", "", "15"},
		{"rider.age", "may", "", "may"},
	} {
		given := map[string]string{"pack.label": "12 V 7 Ah", "storage.from": c.from}
		if got := interview.Dated(questions[c.key], c.text, given, today); got != c.want {
			t.Errorf("%s: %q is %q, want %q", c.key, c.text, got, c.want)
		}
	}
}
