package report_test

import (
	"regexp"
	"strings"
	"testing"

	"example.org/packcheck/answer"
	"example.org/packcheck/report"
)

// hardWords are the words that a parent would have to look up, by an own
// judgement that no source backs.
func hardWords() []string {
	return strings.Fields("board contacts ramp strings mOhm duty chopper AGM cutoff winding windings controller insulation capacitors converter " +
		"transistors weld AWG polarity crimp LiFePO4 NiMH resistance sulphation jack ampacity derated inrush")
}

// neverUsed are hard words that no report may use at all.
func neverUsed(word string) bool { return word == "ampacity" || word == "derated" || word == "inrush" }

func TestHardWordsAreExplainedAtTheirFirstUse(t *testing.T) {
	for _, word := range hardWords() {
		a := fine()
		a.Verdict = answer.FixFirst
		a.Findings = []answer.Finding{{Level: answer.FixFirst, Title: "Something is wrong with the " + word + " of it, and the " + word + " again."}}
		a.Measure = []answer.Measurement{{What: "the " + word}}
		text := belowTitle(written(t, a, report.Options{}))
		switch uses := strings.Count(text, word) - strings.Count(text, "an older kind of "+word); {
		case uses < 2:
			t.Errorf("%s: the test does not use it", word)
		case !explainedFirst(text, word) && !neverUsed(word):
			t.Errorf("%s is not explained at its first use:\n%s", word, text)
		}
		if n := strings.Count(text, word+" ("); n > 1 {
			t.Errorf("%s is explained %d times", word, n)
		}
	}
}

// explainedFirst reports whether the first use of a word has something in
// brackets behind it, or stands before an explanation by a sign of equality.
func explainedFirst(text, word string) bool {
	m := regexp.MustCompile(`(?i)\b` + regexp.QuoteMeta(word) + `\b(?:'s)?( \(| = )?`).FindStringSubmatch(text)
	return m != nil && m[1] != ""
}

// belowTitle is the page below its first three lines and the title, on one line.
func belowTitle(text string) string {
	_, text, _ = strings.Cut(text, "\n\n")
	return strings.Join(strings.Fields(text), " ")
}

// An explanation stands behind the whole of a possessive, and not within it.
func TestAWordThatOwnsSomethingIsExplainedBehindIt(t *testing.T) {
	a := fine()
	a.Verdict = answer.FixFirst
	for title, want := range map[string]string{
		"The windings' heat is too much.": "The windings' (a motor's coil of wire) heat",
		"The winding's heat is too much.": "The winding's (a motor's coil of wire) heat",
	} {
		a.Findings = []answer.Finding{{Level: answer.FixFirst, Title: title}}
		if text := belowTitle(written(t, a, report.Options{})); !strings.Contains(text, want) {
			t.Errorf("lacks %q: %s", want, text)
		}
	}
}

func TestAWordOfTheFirstLinesIsExplainedOnThePage(t *testing.T) {
	a := fine()
	a.Headline = [3]string{"x", "Nothing disconnects it.", "Fit a low-voltage cutoff."}
	text := belowTitle(written(t, a, report.Options{}))
	if !strings.Contains(text, "WORDS Low-voltage cutoff = it switches an empty battery off in time.") {
		t.Errorf("does not explain what only the first lines say: %s", text)
	}
}

func TestUsersUnitsStandFirstInSentences(t *testing.T) {
	for given, want := range map[string]string{
		"10 km/h (6.4 mph) is too fast.":           "6.4 mph (10 km/h) is too fast.",
		"Made for 8 km/h (5 mph) or less.":         "Made for 5 mph (8 km/h) or less.",
		"Air of 10 to 30 C (50 to 86 F) here.":     "Air of 50 to 86 F (10 to 30 C) here.",
		"A wire (thin) of 2 m (6.6 ft).":           "A wire (thin) of 6.6 ft (2 m).",
		"Too long (so far":                         "Too long (so far",
		"It has 12 V (nominal) and 3 motors (550)": "It has 12 V (nominal) and 3 motors (550)",
	} {
		a := wideUS()
		a.Findings[0].Title = given
		text := strings.Join(strings.Fields(written(t, a, report.Options{})), " ")
		if !strings.Contains(text, "1. Danger (fire): "+strings.TrimSuffix(want, ".")) {
			t.Errorf("%q: lacks %q in %s", given, want, text)
		}
		metric := danger()
		metric.Findings[0].Title = given
		text = strings.Join(strings.Fields(written(t, metric, report.Options{})), " ")
		if !strings.Contains(text, "1. Danger (fire): "+strings.TrimSuffix(given, ".")) {
			t.Errorf("metric: %q was changed", given)
		}
	}
}

// In every form a hard word is explained where it
// is used first, or in a line of its own.
func TestHardWordsAreExplainedInEveryForm(t *testing.T) {
	tags := regexp.MustCompile(`(?s)<details.*|<style.*?</style>|<title>.*?</title>|<[^>]*>`)
	marks := regexp.MustCompile(`\[/?\w*\]|\[\*\]|\*\*|\\`)
	for _, word := range hardWords() {
		a := fine()
		a.Title, a.Verdict = "Its owner's own words", answer.FixFirst
		a.Headline = [3]string{"x", "Something is wrong with the " + word + ".", "Look."}
		a.Findings = []answer.Finding{{Level: answer.FixFirst, Title: "Something is wrong with the " + word + " of it, and the " + word + " again."}}
		two := comparison(a, fine())
		for name, text := range map[string]string{
			"page": written(t, a, report.Options{}), "full": written(t, a, report.Options{Full: true}), "short": written(t, a, report.Options{Short: true}), "columns": compared(t, two, report.FormatText),
			"markdown": written(t, a, report.Options{Format: report.FormatMarkdown}), "bbcode": written(t, a, report.Options{Format: report.FormatBBCode}),
			"html": htmlOf(t, a), "short html": written(t, a, report.Options{Format: report.FormatHTML, Short: true}), "columns html": compared(t, two, report.FormatHTML),
		} {
			if strings.Contains(name, "html") {
				text = tags.ReplaceAllString(text, " ")
			} else {
				_, below, long := strings.Cut(marks.ReplaceAllString(text, ""), "\n\n")
				if long { // the first lines have no room
					text = below
				}
			}
			text = strings.Join(strings.Fields(text), " ")
			own := regexp.MustCompile(`(?i)Words:? (?:[^.]*; )?` + regexp.QuoteMeta(word) + ` = `).MatchString(text)
			if !explainedFirst(text, word) && !own && !neverUsed(word) {
				t.Errorf("%s: %s is not explained: %s", name, word, text)
			}
		}
	}
}

// Nobody is told twice in one breath what a word means.
func TestASentenceThatExplainsItsWordIsLeftAsItIs(t *testing.T) {
	a := fine()
	a.Verdict = answer.Watch
	a.Findings = []answer.Finding{{Level: answer.Watch, Title: "It is made for sealed lead-acid (AGM) only."}}
	if text := written(t, a, report.Options{}); !strings.Contains(text, "1. It is made for sealed lead-acid (AGM) only.\n") {
		t.Error(text)
	}
	a.Findings[0].Title = "It is made for AGM only."
	if text := written(t, a, report.Options{}); !strings.Contains(text, "1. It is made for AGM (sealed lead-acid) only.\n") {
		t.Error(text)
	}
}

// What a report calls its own figures by needs no explanation.
func TestFiguresHaveNamesThatAnybodyKnows(t *testing.T) {
	for length, o := range lengths() {
		for _, format := range report.Formats()[:4] {
			o.Format = format
			for name, a := range fixtures() {
				low := strings.ToLower(written(t, a, o))
				for _, word := range []string{"first shove", "ampacity", "inrush", "derat"} {
					if strings.Contains(low, word) {
						t.Errorf("%s %s %s: says %q", name, length, format, word)
					}
				}
			}
		}
	}
}
