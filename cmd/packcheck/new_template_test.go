package main

import (
	"regexp"
	"strings"
	"testing"

	"example.org/packcheck/internal/interview"
	"example.org/packcheck/setup"
)

// settings are the lines of the template that say something, without their mark.
func settings() []string {
	var out []string
	for line := range strings.Lines(template()) {
		line = strings.TrimRight(line, "\n")
		if text, marked := strings.CutPrefix(line, "#"); marked && text != "" && text[0] != ' ' {
			out = append(out, text)
		}
	}
	return out
}

// loaded reads a setup and fills its gaps.
func loaded(text string) (*setup.Setup, error) {
	s, err := setup.Read(strings.NewReader(text), "template")
	if err == nil {
		_, err = s.Parts()
	}
	return s, err
}

func TestEveryLineOfTheTemplateLoads(t *testing.T) {
	if _, err := setup.Read(strings.NewReader(template()), "template"); err != nil {
		t.Errorf("as it is: %v", err)
	}
	lines := settings()
	if len(lines) < 70 {
		t.Fatalf("only %d lines", len(lines))
	}
	written := map[string]bool{}
	for _, line := range lines {
		key, _, _ := strings.Cut(line, " = ")
		written[key] = true
		text := line
		for _, needed := range []struct{ begins, line string }{
			{"cutoff.module.", `cutoff.module.opens_at = "15 V"`},
			{"pack.second.", `pack.joined = "series"`},
			{"original.pack.chemistry", `original.pack.label = "12 V 7 Ah"`},
			{"", `pack.label = "20 V max 5 Ah"`},
		} {
			other, _, _ := strings.Cut(needed.line, " = ")
			if strings.HasPrefix(key, needed.begins) && key != other {
				text += "\n" + needed.line
			}
		}
		if key == "pack.second.label" {
			text = strings.Replace(text, "20 V max 5 Ah", "12 V 7 Ah", 1)
		}
		s, err := loaded(text)
		if err != nil {
			t.Errorf("%s: %v", line, err)
			continue
		}
		if s.Values()[key] == "" {
			t.Errorf("%s: nothing came of it", line)
		}
	}
	for _, q := range interview.All() {
		if !written[q.Key] {
			t.Errorf("%s is asked for and has no line", q.Key)
		}
	}
}

func TestTheTemplateIsPlainAndNarrow(t *testing.T) {
	for line := range strings.Lines(template()) {
		if line = strings.TrimRight(line, "\n"); len(line) > 80 || regexp.MustCompile(`[^ -~]`).MatchString(line) {
			t.Errorf("%q is wider than a terminal or not ASCII", line)
		}
	}
}
