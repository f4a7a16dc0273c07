package report_test

import (
	"strings"
	"testing"

	"example.org/packcheck/answer"
)

func TestAGuessIsNamedInWordsWithItsValue(t *testing.T) {
	for key, want := range map[string]string{
		"wire.gauge":                   "the gauge of the wire, taken as 16 AWG.",
		"original.pack.health":         "the health of the battery as it was made, taken as 16 AWG.",
		"cutoff.module.opens_at":       "the opening voltage of the added cutoff, taken as 16 AWG.",
		"vehicle.weakest_part_voltage": "the highest voltage that the weakest part of the vehicle stands, taken as 16 AWG.",
		"rider.mass":                   "the mass of the child, taken as 16 AWG.",
		"some_new.deep.key_here":       "the key here of the some new deep, taken as 16 AWG.",
		"title":                        "the title, taken as 16 AWG.",
	} {
		a := fine()
		a.Findings = []answer.Finding{{Level: answer.FixFirst, Title: "Said.", Topic: answer.TopicPath, Guess: key}}
		a.Assumed = []answer.Assumed{{Key: "another", Value: "1"}, {Key: key, Value: "16 AWG"}}
		if text := flat(t, a); !strings.Contains(text, "It rests on a guess: "+want) {
			t.Errorf("%s: lacks %q", key, want)
		}
		a.Assumed = nil
		if text := flat(t, a); !strings.Contains(text, "It rests on a guess: "+strings.TrimSuffix(want, ", taken as 16 AWG.")+".") {
			t.Errorf("%s: does not name the guess where no value stands", key)
		}
	}
	if strings.Contains(flat(t, fine()), "guess") {
		t.Error("speaks of a guess where there is none")
	}
}

// What may hurt somebody says so at any level: what few draws show stands at a
// milder one.
func TestWhoIsAtRiskIsSaidAtEveryLevel(t *testing.T) {
	for _, level := range []answer.Level{answer.Fine, answer.Watch, answer.FixFirst, answer.Danger} {
		for harm, words := range map[answer.Harm]string{answer.Child: "At risk: a child.", answer.House: "At risk: the house, by fire.", answer.Part: "", answer.Wear: ""} {
			a := fine()
			a.Findings = []answer.Finding{{Level: level, Harm: harm, Title: "Said.", Topic: answer.TopicPath}}
			text := flat(t, a)
			if want := words != "" && level > answer.Fine; strings.Contains(text, "At risk") != want || want && !strings.Contains(text, words) {
				t.Errorf("%v %v: want %q", level, harm, words)
			}
		}
	}
}

func TestPartByPartNamesTheWorstOfEach(t *testing.T) {
	a := fine()
	a.Findings = []answer.Finding{
		{Level: answer.Watch, Title: "The wire is warm.", Item: answer.Wire, Topic: answer.TopicPath},
		{Level: answer.Watch, Title: "The battery is old.", Item: answer.Battery, Topic: answer.TopicPack},
		{Level: answer.Danger, Title: "The battery is ruined.", Item: answer.Battery, Topic: answer.TopicPack},
		{Level: answer.Danger, Title: "It is far too fast.", Topic: answer.TopicSpeed}, // of no part
		{Level: answer.Watch, Title: "The wire is thin.", Item: answer.Wire, Topic: answer.TopicPath},
		{Level: answer.Fine, Title: "The fuse suits.", Item: answer.Fuse, Topic: answer.TopicPath},
	}
	_, text, _ := strings.Cut(flat(t, a), "Part by part, the worst of each ")
	text, _, _ = strings.Cut(text, " How long")
	want := "------------------------------- Battery DANGER: The battery is ruined. Wire WATCH: The wire is warm. Fuse FINE: The fuse suits."
	if text != want {
		t.Errorf("got %q, want %q", text, want)
	}
	if strings.Contains(flat(t, fine()), "Part by part") {
		t.Error("a section without findings")
	}
}

// Whatever is found is printed once, under any topic and with any section
// missing.
func TestEveryFindingAndNoteIsPrintedOnceUnderAnyTopic(t *testing.T) {
	topics := []answer.Topic{
		answer.TopicPack, answer.TopicRide, answer.TopicSpeed, answer.TopicLaunch, answer.TopicPath, answer.TopicCutoff,
		answer.TopicCharge, answer.TopicStorage, answer.TopicMeasured, answer.TopicOriginal, "", "another",
	}
	for name, a := range map[string]*answer.Assessment{"vehicle": fine(), "bench": bench()} {
		for _, topic := range topics {
			a.Findings = []answer.Finding{{Level: answer.Watch, Title: "Found it.", Topic: topic}}
			a.Notes = []answer.Note{{Topic: topic, Text: "Noted it."}}
			text := flat(t, a)
			for _, want := range []string{"* WATCH: Found it.", "Note: Noted it."} {
				if n := strings.Count(text, want); n != 1 {
					t.Errorf("%s, topic %q: %q stands %d times", name, topic, want, n)
				}
			}
		}
	}
}
