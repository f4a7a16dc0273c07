package main

import (
	"maps"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"example.org/packcheck/setup"
)

// What cannot be written is shown, so that nobody has to answer it all again.
func TestAnswersThatCannotBeKeptAreShown(t *testing.T) {
	taken := filepath.Join(t.TempDir(), "taken.toml")
	if err := os.WriteFile(taken, []byte("mine"), 0o600); err != nil {
		t.Fatal(err)
	}
	s, err := setup.Of(map[string]string{"pack.label": "12 V 7 Ah"})
	if err != nil {
		t.Fatal(err)
	}
	var said strings.Builder
	talk := newTalk(strings.NewReader(""), &said)
	if err := talk.keep(s, answers{name: taken}); err == nil {
		t.Error("a file that could not be written is no error")
	}
	if !strings.Contains(said.String(), `label = "12 V 7 Ah"`) {
		t.Errorf("the answers are lost: %q", said.String())
	}
	if text, _ := os.ReadFile(taken); string(text) != "mine" {
		t.Errorf("somebody's file has become %q", text)
	}
}

func TestNoAnswerBreaksTheTalk(t *testing.T) {
	for name, c := range map[string]struct {
		in   string
		code int
		err  string
	}{
		"control characters": {"12 V\x1b[2J 7 Ah\x07\n\x00\n\xff\xfe\nstop\n", exitFine, ""},
		"an endless line":    {strings.Repeat("9", 100_000), exitInput, "a line has at most"},
		"line ends of two kinds": {
			"12 V 7 Ah\r\n12\r\nstop\r\n", exitFine, "",
		},
	} {
		var out, errs strings.Builder
		code := run([]string{"new"}, strings.NewReader(c.in), &out, &errs)
		if code != c.code || !strings.Contains(errs.String(), c.err) || strings.ContainsAny(errs.String(), "\x1b\x07\x00\r") {
			t.Errorf("%s: code %d, %q", name, code, errs.String())
		}
	}
}

// The answer to a question that somebody goes back to is shown; it stands until another
// takes its place, and so do those to the questions after it.
func TestAnswersStandWhenSomebodyGoesBack(t *testing.T) {
	for name, c := range map[string]struct {
		typed string
		given string
		says  []string
	}{
		"an empty line keeps the answer": {
			"20V MAX 4.0Ah\n12 V\nback\n\nstop\n",
			"pack.label=20V MAX 4.0Ah vehicle.design_voltage=12 V",
			[]string{"\n2. How many volts", "Left empty: it stays 12 V", "It stays.", "\n3. How old is"},
		},
		"so does one after two steps back": {
			"20V MAX 4.0Ah\n12 V\nback\nback\n\nstop\n",
			"pack.label=20V MAX 4.0Ah vehicle.design_voltage=12 V",
			[]string{"Left empty: it stays 12 V", "Left empty: it stays 20V MAX 4.0Ah", "\n3. How old is"},
		},
		"another answer takes its place, and what was told after it stays": {
			"12 V 7 Ah\n12\n5\nback\nback\n24 V\none\nstop\n",
			"pack.label=12 V 7 Ah rider.age=5 years vehicle.design_voltage=24 V",
			[]string{"\n2. How many volts", "\n4. Is one such battery used"},
		},
		"the weight in place of the age leaves no age": {
			"12 V 7 Ah\n12\n5\nback\n17 kg\nstop\n", "pack.label=12 V 7 Ah rider.mass=17 kg vehicle.design_voltage=12 V", nil,
		},
		"forget takes it out": {
			"12 V 7 Ah\n12\nback\nforget\nstop\n", "pack.label=12 V 7 Ah", []string{"Taken out."},
		},
		"one that was not known is asked again": {
			"12 V 7 Ah\n\nback\n12\nstop\n", "pack.label=12 V 7 Ah vehicle.design_voltage=12 V", []string{"\n3. How old is"},
		},
		"what a new answer contradicts is asked again": {
			"24 V\nli-ion\n12\nback\nback\nback\n12 V 7 Ah SLA\n\nstop\n", "pack.label=12 V 7 Ah SLA",
			[]string{"does not go with that, and is asked again", "\n2. How many volts was the vehicle"},
		},
		"all answers can be gone back to once more": {
			"12 V 7 Ah\n12\n5\nback\nback\n\nback\nback\n6 V\nstop\n",
			"pack.label=12 V 7 Ah rider.age=5 years vehicle.design_voltage=6 V", nil,
		},
	} {
		t.Run(name, func(t *testing.T) {
			var said strings.Builder
			talk := newTalk(strings.NewReader(c.typed), &said)
			if err := talk.ask(); err != nil {
				t.Fatal(err)
			}
			var given []string
			for _, key := range slices.Sorted(maps.Keys(talk.given)) {
				given = append(given, key+"="+talk.given[key])
			}
			if got := strings.Join(given, " "); got != c.given {
				t.Errorf("given: %s\nwant:  %s\n%s", got, c.given, said.String())
			}
			for _, text := range c.says {
				if !strings.Contains(said.String(), text) {
					t.Errorf("%q is not said: %s", text, said.String())
				}
			}
		})
	}
}

// A question of which a part is open is asked once more for that part, and not for ever.
func TestAPartThatStaysOpenIsAskedOnce(t *testing.T) {
	var said strings.Builder
	talk := newTalk(strings.NewReader("20V max 4Ah\n12 V\n4\n1\n\n\n30 A\n"+strings.Repeat("\n", 100)), &said)
	if err := talk.ask(); err != nil {
		t.Fatal(err)
	}
	asked := map[string]int{}
	for _, m := range talk.past {
		asked[m.asked.Key]++
		if asked[m.asked.Key] > 2 {
			t.Fatalf("%s is asked %d times: %s", m.asked.Key, asked[m.asked.Key], said.String())
		}
	}
	if asked["fuse.form"] != 2 {
		t.Errorf("the kind of the fuse is asked %d times: %s", asked["fuse.form"], said.String())
	}
	if !strings.Contains(said.String(), "What is left to ask hardly moves the answer.") {
		t.Errorf("it never ends: %s", said.String())
	}
}

// No word that somebody ends a talk with becomes the name of a file.
func TestAWordForNoFileIsNoName(t *testing.T) {
	t.Chdir(t.TempDir())
	s, err := setup.Of(map[string]string{"pack.label": "12 V 7 Ah"})
	if err != nil {
		t.Fatal(err)
	}
	for typed, want := range map[string]string{
		"no\n": "", "None.\n": "", "stop\n": "", "-\n": "", "\n": "", "yes\nno\n": "", "yes\ncart.toml\n": "cart.toml", "no.toml\n": "no.toml",
	} {
		var said strings.Builder
		if err := newTalk(strings.NewReader(typed), &said).keep(s, answers{}); err != nil {
			t.Fatal(err)
		}
		kept, err := filepath.Glob("*")
		if err != nil || strings.Join(kept, " ") != want {
			t.Errorf("%q writes %q, want %q: %s", typed, kept, want, said.String())
		}
		for _, name := range kept {
			if err := os.Remove(name); err != nil {
				t.Fatal(err)
			}
		}
	}
}

// A verdict of more than one line is told in whole words.
func TestWrappedVerdictsStayWhole(t *testing.T) {
	var said strings.Builder
	newTalk(strings.NewReader(""), &said).say("Why: so hot that its\n  insulation melts.")
	if want := "Why: so hot that its insulation melts.\n"; said.String() != want {
		t.Errorf("%q, want %q", said.String(), want)
	}
}
