package main

import (
	"regexp"
	"slices"
	"strings"
	"testing"

	"example.org/packcheck/setup"
)

func TestHelpByTopicFitsATerminal(t *testing.T) {
	text := helpText()
	for _, topic := range topics() {
		if !strings.Contains(text, "    "+topic.name+" ") {
			t.Errorf("the help does not name the topic %s", topic.name)
		}
		got, err := helpOn(strings.ToUpper(topic.name), streams{})
		if err != nil || got != topic.text {
			t.Errorf("%s: %v", topic.name, err)
		}
	}
	for _, c := range commands(streams{}, nil) {
		if c.Name != "help" {
			if text, err := helpOn(c.Name, streams{}); err != nil || !strings.HasPrefix(text, "packcheck "+c.Name) {
				t.Errorf("%s: %v %q", c.Name, err, text)
			}
		}
	}
	for name, text := range helpTexts() {
		for i, line := range strings.Split(text, "\n") {
			if len(line) > 80 || regexp.MustCompile(`[^ -~]`).MatchString(line) {
				t.Errorf("%s, line %d is wider than a terminal or not ASCII: %q", name, i+1, line)
			}
		}
	}
	if _, err := helpOn("wheels", streams{}); err == nil || !strings.Contains(err.Error(), "batteries") {
		t.Errorf("an unknown topic: %v", err)
	}
}

// helpTexts are all texts of the help, with that of the keys.
func helpTexts() map[string]string {
	all := map[string]string{"help": helpText()}
	for _, topic := range topics() {
		all[topic.name] = topic.text
	}
	var b strings.Builder
	if writeKeys(&b, "") == nil {
		all["keys"] = b.String()
	}
	return all
}

// Options that the topics speak of exist; so do the keys and commands.
func TestTheTopicsSpeakOfWhatThereIs(t *testing.T) {
	app := newApp(streams{}, new(int))
	s, err := setup.Of(map[string]string{"pack.label": "12 V 7 Ah"})
	if err != nil {
		t.Fatal(err)
	}
	for _, topic := range topics() {
		for _, m := range regexp.MustCompile(`--[a-z][a-z-]*`).FindAllString(topic.text, -1) {
			if flagOf(app.Flags, m) == nil {
				t.Errorf("%s: there is no option %s", topic.name, m)
			}
		}
		for _, m := range regexp.MustCompile(`packcheck ([a-z]+) `).FindAllStringSubmatch(topic.text, -1) {
			if app.Command(m[1]) == nil {
				t.Errorf("%s: there is no command %s", topic.name, m[1])
			}
		}
		for _, m := range regexp.MustCompile(`--set ([a-z._]+)=`).FindAllStringSubmatch(topic.text, -1) {
			if _, err := s.With(map[string]string{m[1]: ""}); err != nil {
				t.Errorf("%s: there is no key %s", topic.name, m[1])
			}
		}
	}
}

func TestEveryKeyIsListedUnderATopic(t *testing.T) {
	listed := map[string]int{}
	for _, p := range keyParts() {
		var b strings.Builder
		if err := writeKeys(&b, p.name); err != nil {
			t.Fatal(err)
		}
		for _, table := range p.tables {
			for _, k := range setup.Keys() {
				if k.Table == table {
					listed[k.Path()]++
					if !strings.Contains(b.String(), "#   "+k.Name+" = "+k.Quoted()) {
						t.Errorf("%s: lacks %s", p.name, k.Path())
					}
				}
			}
		}
	}
	for _, k := range setup.Keys() {
		if listed[k.Path()] != 1 {
			t.Errorf("%s stands under %d topics, want one", k.Path(), listed[k.Path()])
		}
	}
	for _, name := range keyTopics() {
		if !slices.ContainsFunc(keyParts(), func(p keyTopic) bool { return p.name == name }) && len(tablesOf(name)) == 0 {
			t.Errorf("%s is a topic without tables", name)
		}
	}
}

// What man would stumble over: requests that it does not know, and text that looks
// like one.
func TestTheManualIsInTheLanguageOfMan(t *testing.T) {
	text := manual(streams{})
	nofill := false
	for i, line := range strings.Split(strings.TrimSuffix(text, "\n"), "\n") {
		switch {
		case line == ".nf", line == ".fi":
			if nofill == (line == ".nf") {
				t.Errorf("line %d: %s twice", i+1, line)
			}
			nofill = line == ".nf"
		case line == ".PP", strings.HasPrefix(line, ".TH "), strings.HasPrefix(line, ".SH "):
		case strings.HasPrefix(line, "."), strings.HasPrefix(line, "'"):
			t.Errorf("line %d: not a request: %q", i+1, line)
		case regexp.MustCompile(`\\[^e&-]`).MatchString(line), regexp.MustCompile(`(^|[^\\])-`).MatchString(line):
			t.Errorf("line %d: not escaped: %q", i+1, line)
		}
	}
	for _, topic := range topics() {
		if !strings.Contains(text, ".SH "+strings.ToUpper(topic.about)) {
			t.Errorf("lacks the topic %s", topic.name)
		}
	}
	for _, f := range assessFlags() {
		if !strings.Contains(text, `\-\-`+strings.ReplaceAll(f.Names()[0], "-", `\-`)) {
			t.Errorf("lacks --%s", f.Names()[0])
		}
	}
}
