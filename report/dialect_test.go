package report_test

import (
	"maps"
	"regexp"
	"slices"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"example.org/packcheck/answer"
	"example.org/packcheck/report"
)

func TestEveryLineOfTextFitsAnyCodeBox(t *testing.T) {
	for name, a := range fixtures() {
		checkText(t, name, report.FullColumns, written(t, a, report.Options{Full: true}))
		for _, short := range []bool{false, true} {
			checkText(t, name, report.Columns, written(t, a, report.Options{Short: short}))
		}
	}
}

// checkText holds a text report against what the format promises.
func checkText(t *testing.T, name string, columns int, text string) {
	t.Helper()
	if !strings.HasSuffix(text, "\n") || strings.HasSuffix(text, "\n\n") {
		t.Errorf("%s: text does not end in one line end", name)
	}
	for i, line := range strings.Split(text, "\n") {
		if len(line) > columns {
			t.Errorf("%s:%d: %d columns: %q", name, i+1, len(line), line)
		}
		if strings.TrimRight(line, " ") != line {
			t.Errorf("%s:%d: spaces at the end: %q", name, i+1, line)
		}
		for _, r := range line {
			if r < ' ' || r > '~' {
				t.Errorf("%s:%d: %q is not printable ASCII: %q", name, i+1, r, line)
			}
		}
		for _, bad := range []string{"`", "~~~", "[/", "</"} {
			if strings.Contains(line, bad) {
				t.Errorf("%s:%d: %q could end a code box: %q", name, i+1, bad, line)
			}
		}
	}
	for _, word := range []string{"NaN", "Inf", "<nil>", "%!"} {
		if strings.Contains(text, word) {
			t.Errorf("%s: holds %q", name, word)
		}
	}
}

func TestFirstThreeLinesAreTheAnswerTheReasonAndTheNextStep(t *testing.T) {
	words := map[answer.Level]string{answer.Fine: "YES:", answer.Watch: "YES, WITH CARE:", answer.FixFirst: "NOT YET:", answer.Danger: "NO:"}
	for name, a := range fixtures() {
		for _, o := range []report.Options{{}, {Full: true}, {Short: true}} {
			for _, format := range []report.Format{report.FormatText, report.FormatMarkdown, report.FormatBBCode} {
				o.Format = format
				lines := strings.SplitN(written(t, a, o), "\n", 4)
				for i, want := range []string{words[a.Verdict], "Why:", "Next:"} {
					if !strings.Contains(lines[i], want) {
						t.Errorf("%s %+v: line %d is %q, want %s", name, o, i+1, lines[i], want)
					}
				}
			}
		}
	}
}

// number matches a figure; the sign and the unit do not matter here.
var number = regexp.MustCompile(`\d+(\.\d+)?`)

func TestEveryNumberOfTheTextStandsInTheOtherDialects(t *testing.T) {
	for name, a := range fixtures() {
		for _, short := range []bool{false, true} {
			want := numbers(written(t, a, report.Options{Short: short, Full: true}), false)
			for _, format := range []report.Format{report.FormatMarkdown, report.FormatBBCode} {
				got := numbers(written(t, a, report.Options{Format: format, Short: short, Full: true}), format == report.FormatMarkdown)
				for n, count := range want {
					if got[n] < count {
						t.Errorf("%s %s: %s stands %d times, %d times in the text", name, format, n, got[n], count)
					}
				}
			}
		}
	}
}

// numbers counts the figures of a report. The marks of numbered lists are
// figures in text and Markdown only, so they are left out everywhere.
func numbers(text string, markdown bool) map[string]int {
	text = regexp.MustCompile(`(?m)^\d+\. `).ReplaceAllString(text, "")
	if markdown {
		text = strings.ReplaceAll(text, `\`, "")
	}
	counts := map[string]int{}
	for _, n := range number.FindAllString(text, -1) {
		counts[n]++
	}
	return counts
}

// words matches runs of letters, which no dialect may lose.
var words = regexp.MustCompile(`[A-Za-z]{4,}`)

func TestEveryWordOfTheTextStandsInTheOtherDialects(t *testing.T) {
	for name, a := range fixtures() {
		if name == "hostile" {
			continue // escapes cut its words
		}
		for _, o := range []report.Options{{}, {Full: true}, {Short: true}} {
			text := spoken(written(t, a, o))
			for _, format := range []report.Format{report.FormatMarkdown, report.FormatBBCode} {
				o.Format = format
				dialect := written(t, a, o)
				if format == report.FormatBBCode {
					dialect = regexp.MustCompile(`\[[^\]]*\]`).ReplaceAllString(dialect, "")
				}
				if diff := cmp.Diff(text, spoken(dialect)); diff != "" {
					t.Errorf("%s %+v: other words (-text +%s)\n%s", name, o, format, diff)
				}
			}
		}
	}
}

// spoken are the words of a report as they are read aloud: capitals do not
// matter, nor how often it says that a note follows.
func spoken(text string) []string {
	list := words.FindAllString(strings.ToLower(text), -1)
	return slices.DeleteFunc(list, func(w string) bool { return w == "note" })
}

func TestTitlesCannotBreakOut(t *testing.T) {
	a := hostile()
	md := written(t, a, report.Options{Format: report.FormatMarkdown, Full: true})
	for _, bad := range []string{"<script", "http://", " www.x", " _<", " $x$", "@everyone"} {
		if strings.Contains(md, bad) {
			t.Errorf("Markdown holds %q", bad)
		}
	}
	bb := written(t, a, report.Options{Format: report.FormatBBCode, Full: true})
	tags := slices.Collect(maps.Keys(func() map[string]bool {
		found := map[string]bool{}
		for _, tag := range regexp.MustCompile(`\[[^\]]*\]`).FindAllString(bb, -1) {
			found[tag] = true
		}
		return found
	}()))
	for _, tag := range tags {
		if !slices.Contains([]string{"[b]", "[/b]", "[i]", "[/i]", "[list]", "[list=1]", "[/list]", "[*]"}, tag) {
			t.Errorf("BBCode holds the tag %s", tag)
		}
	}
	if strings.ContainsAny(bb, "<>\x1b") || strings.Contains(bb, "http://") {
		t.Error("BBCode holds HTML, a control character or a link")
	}
}

// The reader of Markdown must see "1." and "#" where the words begin with
// them, not a list or a heading of the writer's.
func TestWordsAtTheStartOfALineMakeNoMarkdown(t *testing.T) {
	for given, want := range map[string]string{
		"# big":    `1. \# big`,
		"- dash":   `1. \- dash`,
		"+ plus":   `1. \+ plus`,
		"3. third": `1. 3\. third`,
		"4) forth": `1. 4\) forth`,
		"--- rule": `1. \--- rule`,
		"=== rule": `1. \=== rule`,
		"> quote":  `1. &gt; quote`,
		"6.1 V":    `1. 6.1 V`,
		"-5 C":     `1. -5 C`,
	} {
		a := danger()
		a.Changes = []string{given}
		if md := written(t, a, report.Options{Format: report.FormatMarkdown, Full: true}); !strings.Contains(md, "\n"+want+"\n") {
			t.Errorf("%q: lacks the line %q", given, want)
		}
	}
}
