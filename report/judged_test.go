package report_test

import (
	"strings"
	"testing"

	"example.org/packcheck/answer"
	"example.org/packcheck/report"
)

func TestAGuessIsNamedByItsKey(t *testing.T) {
	for _, key := range []string{"wire.gauge", "original.pack.health", "title"} {
		a := fine()
		a.Findings = []answer.Finding{{Level: answer.FixFirst, Title: "Said.", Topic: answer.TopicPath, Guess: key}}
		if text := flat(t, a); !strings.Contains(text, "FIX FIRST: Said. (a guess: "+key+")") {
			t.Errorf("%s: does not name the guess", key)
		}
	}
	if strings.Contains(flat(t, fine()), "guess") {
		t.Error("speaks of a guess where there is none")
	}
}

func TestThePageSaysAGuessInEverydayWords(t *testing.T) {
	for key, want := range map[string]string{
		"wire.gauge":                   "how thick the wire is",
		"original.pack.health":         "the health of the battery as it was made",
		"cutoff.module.opens_at":       "the opening voltage of the added cutoff",
		"vehicle.weakest_part_voltage": "how many volts its electronics stand",
		"some_new.deep.key_here":       "the key here of the some new deep",
		"title":                        "the title",
	} {
		a := fine()
		a.Verdict = answer.FixFirst
		a.Findings = []answer.Finding{{Level: answer.FixFirst, Title: "Said.", Topic: answer.TopicPath, Guess: key}}
		text := strings.Join(strings.Fields(written(t, a, report.Options{})), " ")
		if !strings.Contains(strings.ReplaceAll(text, " = it switches an empty battery off in time", ""), "1. Said. (A guess: "+want+".)") {
			t.Errorf("%s: lacks %q in %s", key, want, text)
		}
	}
}

// What may hurt somebody says so at any level: what few draws show stands at a
// milder one.
func TestWhoIsAtRiskIsSaidAtEveryLevel(t *testing.T) {
	for _, level := range []answer.Level{answer.Fine, answer.Watch, answer.FixFirst, answer.Danger} {
		for harm, words := range map[answer.Harm]string{answer.Child: "(child)", answer.House: "(fire)", answer.Part: "", answer.Wear: ""} {
			a := fine()
			a.Findings = []answer.Finding{{Level: level, Harm: harm, Title: "Said.", Topic: answer.TopicPath}}
			text := flat(t, a)
			if want := words != "" && level > answer.Fine; (strings.Contains(text, "(child)") || strings.Contains(text, "(fire)")) != want || want && !strings.Contains(text, words) {
				t.Errorf("%v %v: want %q", level, harm, words)
			}
		}
	}
}

// Of many findings those of wear and parts are told in a line each.
func TestMildFindingsAreBriefWhereThereAreMany(t *testing.T) {
	a := fine()
	for _, name := range []string{"a", "b", "c", "d", "e", "f", "g", "h", "i"} {
		a.Findings = append(a.Findings, answer.Finding{
			Level: answer.Watch, Title: "The wire " + name + " is warm: it costs range.", Item: answer.Wire, Unit: "A", Found: 2, Limit: 1, Code: "warm", Source: "s",
		})
	}
	if text := flat(t, a); !strings.Contains(text, "* WATCH: The wire i is warm (2 A, at most 1 A; warm; s)") && !strings.Contains(text, "* WATCH: The wire i is warm. (2 A, at most 1 A; warm; s)") {
		t.Error("nine are not told whole")
	}
	a.Findings = append(a.Findings, a.Findings[0], answer.Finding{Level: answer.Watch, Harm: answer.House, Title: "It glows: fire."})
	text := flat(t, a)
	for _, want := range []string{"* WATCH (fire): It glows.", "The wire i is warm (warm);"} {
		if !strings.Contains(text, want) {
			t.Errorf("lacks %q", want)
		}
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
