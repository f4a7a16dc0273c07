package interview_test

import (
	"maps"
	"slices"
	"strings"
	"testing"

	"example.org/packcheck/internal/interview"
	"example.org/packcheck/setup"
)

// registered are the keys of the registry, those of the original vehicle too.
func registered() map[string]bool {
	out := map[string]bool{}
	for _, k := range setup.Keys() {
		out[k.Path()], out["original."+k.Path()] = true, true
	}
	return out
}

func TestEveryKeyOfAQuestionIsAKeyOfTheSetup(t *testing.T) {
	known := registered()
	for key, q := range interview.ByKey() {
		for _, k := range append([]string{key, q.Key}, q.Fills...) {
			if !known[k] {
				t.Errorf("%s: %s is no key of the setup", q.Key, k)
			}
		}
	}
	seen := map[string]bool{}
	for _, q := range interview.All() {
		if seen[q.Key] {
			t.Errorf("%s is asked for twice", q.Key)
		}
		seen[q.Key] = true
	}
	if len(seen) < 60 {
		t.Errorf("only %d questions", len(seen))
	}
}

func TestEveryQuestionIsWhole(t *testing.T) {
	for _, q := range interview.All() {
		if !strings.HasSuffix(q.Asks, "?") || strings.ContainsAny(q.Asks, "\n_") {
			t.Errorf("%s asks %q: want one plain question", q.Key, q.Asks)
		}
		if !strings.HasSuffix(q.How, ".") || q.Usual == "" || q.Example == "" || q.Effort < interview.Look || q.Effort > interview.Project {
			t.Errorf("%s lacks how, usual, example or effort: %+v", q.Key, q)
		}
		for _, text := range append([]string{q.Asks, q.How, q.Example, q.Usual}, says(q)...) {
			if strings.ContainsFunc(text, func(r rune) bool { return r < ' ' || r > '~' }) {
				t.Errorf("%s: %q is not plain ASCII", q.Key, text)
			}
		}
		if _, name, _ := strings.Cut(q.Key, "."); !strings.Contains(q.Stands, name[strings.LastIndexByte(name, '.')+1:]) {
			t.Errorf("%s stands as %q", q.Key, q.Stands)
		}
	}
}

func says(q interview.Question) []string {
	var out []string
	for _, c := range q.Choices {
		out = append(out, c.Says)
	}
	return out
}

// beside is what a question needs around it to make sense.
func beside(key string) map[string]string {
	given := map[string]string{"pack.label": "20 V max 4 Ah"}
	switch {
	case strings.HasPrefix(key, "pack.") || strings.HasPrefix(key, "original."):
		return map[string]string{}
	case strings.HasPrefix(key, "storage."):
		given["storage.from"] = "2026-10-01"
	case key == "charger.timer":
		given["charger.stops"] = "timer"
	}
	delete(given, key)
	return given
}

func TestEveryExampleIsRead(t *testing.T) {
	for _, q := range interview.All() {
		sets, err := interview.Fill(q, q.Example, beside(q.Key))
		if err != nil || sets[q.Key] == "" {
			t.Errorf("%s: the example %q gives %v and %v", q.Key, q.Example, sets, err)
		}
		for _, key := range q.Fills {
			if key != "wire.area" && sets[key] == "" {
				t.Errorf("%s: the example %q leaves %s open", q.Key, q.Example, key)
			}
		}
		if alone, err := interview.Fill(q, q.Example, nil); err != nil || alone[q.Key] != sets[q.Key] {
			t.Errorf("%s: read alone the example is %q (%v), not %q", q.Key, alone[q.Key], err, sets[q.Key])
		}
	}
}

func TestEveryChoiceIsRead(t *testing.T) {
	for _, q := range interview.All() {
		for i, c := range q.Choices {
			if c.Value == interview.Same {
				given := map[string]string{"pack.label": "12 V 7 Ah"}
				if sets, err := interview.Fill(q, c.Value, given); err != nil || sets["original.pack.label"] != "12 V 7 Ah" {
					t.Errorf("%s: %q gives %v and %v", q.Key, c.Value, sets, err)
				}
				continue
			}
			want, err := interview.Fill(q, c.Value, beside(q.Key))
			if err != nil || want[q.Key] == "" && c.Value != interview.Nothing {
				t.Errorf("%s: the choice %q gives %v and %v", q.Key, c.Value, want, err)
			}
			for _, text := range []string{c.Says, strings.ToUpper(c.Says), string(rune('1' + i)), string(rune('1'+i)) + "."} {
				if sets, err := interview.Fill(q, text, beside(q.Key)); err != nil || !maps.Equal(sets, want) {
					t.Errorf("%s: %q gives %v and %v, want %v", q.Key, text, sets, err, want)
				}
			}
		}
	}
}

// walk answers or passes all questions in turn and returns the keys asked for.
func walk(t *testing.T, begin map[string]string, reply func(q interview.Question) string) (given map[string]string, asked []string) {
	t.Helper()
	given = maps.Clone(begin)
	passed := map[string]bool{}
	for range 200 {
		list := interview.Next(given, nil, func(key string) bool { return passed[key] })
		if len(list) == 0 {
			return given, asked
		}
		q := list[0]
		if slices.Contains(asked, q.Key) || given[q.Key] != "" || passed[q.Key] {
			t.Fatalf("%s is asked for although it is given or passed", q.Key)
		}
		asked = append(asked, q.Key)
		sets, err := interview.Fill(q, reply(q), given)
		if err != nil || len(sets) == 0 {
			passed[q.Key] = true
			continue
		}
		maps.Copy(given, sets)
	}
	t.Fatal("the questions have no end")
	return nil, nil
}

func TestEveryQuestionIsReached(t *testing.T) {
	choice := func(n int) func(interview.Question) string {
		return func(q interview.Question) string {
			if len(q.Choices) == 0 || q.Choices[0].Value == interview.Same {
				return q.Example
			}
			return q.Choices[min(n, len(q.Choices)-1)].Value
		}
	}
	reached := map[string]bool{}
	for _, begin := range []map[string]string{{}, { // a vehicle with other motors and gears than it was made with
		"pack.label": "24 V", "original.pack.label": "24 V 10 Ah", "original.motors.can": "380", "original.gears.ratio": "100:1",
		"charger.label": "14.7 V 1 A", // which leaves open whether that is AC or DC
	}} {
		for _, reply := range []func(interview.Question) string{
			choice(1), choice(2), func(q interview.Question) string { a, _, _ := strings.Cut(q.Example, ", "); return a },
		} {
			given, asked := walk(t, begin, reply)
			for _, key := range asked {
				reached[key] = true
			}
			for _, key := range slices.Collect(maps.Keys(given)) {
				if begin[key] != "" {
					reached[key] = true
				}
			}
			s, err := setup.Of(given)
			if err == nil {
				_, err = s.Parts()
			}
			if err != nil {
				t.Errorf("answers that were all taken make no setup: %v", err)
			}
		}
	}
	for _, q := range interview.All() {
		if !reached[q.Key] {
			t.Errorf("%s is never asked for", q.Key)
		}
	}
}

func TestNobodyHasToKnow(t *testing.T) {
	for _, q := range interview.All() {
		for _, text := range []string{"", "  ", "don't know", "Don't know.", "dont know", "no idea"} {
			if sets, err := interview.Fill(q, text, map[string]string{"pack.label": "12 V 7 Ah"}); err != nil || len(sets) > 0 {
				t.Errorf("%s: %q gives %v and %v", q.Key, text, sets, err)
			}
		}
	}
	given, asked := walk(t, map[string]string{}, func(interview.Question) string { return "" })
	if len(given) > 0 || len(asked) < 30 {
		t.Errorf("who knows nothing is asked %d times and gives %v", len(asked), given)
	}
}

func TestTheFirstQuestionsAreTheFirstOfAll(t *testing.T) {
	var first, asked []string
	for _, q := range interview.First() {
		first = append(first, q.Key)
	}
	_, asked = walk(t, map[string]string{}, func(q interview.Question) string { return q.Example })
	if len(first) < 4 || first[0] != "pack.label" || !slices.Equal(first, asked[:len(first)]) {
		t.Errorf("first %q, asked %q", first, asked[:min(len(asked), 8)])
	}
}

func TestWhatTheLabelSettlesIsNotAsked(t *testing.T) {
	for label, want := range map[string]bool{
		"20V MAX 4.0Ah": false, "12 V 7 Ah": false, "12.8 V 10 Ah LiFePO4": false, "12v 7ah sla": false,
		"24 V 10 Ah": true, "14.4 V 2 Ah": true, "5S2P": false,
	} {
		asks := map[string]bool{}
		for _, q := range interview.Next(map[string]string{"pack.label": label}, nil, nil) {
			asks[q.Key] = true
		}
		if asks["pack.chemistry"] != want {
			t.Errorf("%q: its kind is asked for: %v", label, asks["pack.chemistry"])
		}
		if hasAh := strings.Contains(label, "Ah") || strings.Contains(label, "ah"); asks["pack.capacity"] == hasAh {
			t.Errorf("%q: its capacity is asked for: %v", label, asks["pack.capacity"])
		}
	}
}
