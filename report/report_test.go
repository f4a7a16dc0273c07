package report_test

import (
	"bytes"
	"errors"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"example.org/packcheck/answer"
	"example.org/packcheck/report"
)

// written returns one report as a string.
func written(t testing.TB, a *answer.Assessment, o report.Options) string {
	t.Helper()
	var out bytes.Buffer
	if err := report.Write(&out, a, o); err != nil {
		t.Fatalf("Write(%+v): %v", o, err)
	}
	return out.String()
}

// endings are the golden files' endings by format.
var endings = map[report.Format]string{
	report.FormatText: "txt", report.FormatMarkdown: "md", report.FormatBBCode: "bb", report.FormatHTML: "html", report.FormatJSON: "json",
}

// UPDATE_GOLDEN=1 go test ./report writes the golden files anew.
func TestReportsMatchTheirGoldenFiles(t *testing.T) {
	update := os.Getenv("UPDATE_GOLDEN") != ""
	used := map[string]bool{}
	for name, a := range fixtures() {
		for length, o := range map[string]report.Options{"": {}, ".full": {Full: true}, ".short": {Short: true}} {
			for _, format := range report.Formats() {
				if (format == report.FormatJSON || format == report.FormatHTML) && o.Full {
					continue // they are always full
				}
				o.Format = format
				file := name + length + "." + endings[format]
				used[file] = true
				t.Run(file, func(t *testing.T) {
					path := filepath.Join("testdata", file)
					got := written(t, a, o)
					if update {
						if err := os.WriteFile(path, []byte(got), 0o644); err != nil {
							t.Fatal(err)
						}
						return
					}
					want, err := os.ReadFile(path)
					if err != nil {
						t.Fatal(err)
					}
					if diff := cmp.Diff(string(want), got); diff != "" {
						t.Errorf("(-want +got)\n%s", diff)
					}
				})
			}
		}
	}
	files, err := filepath.Glob("testdata/*.*")
	if err != nil {
		t.Fatal(err)
	}
	for _, f := range files {
		if !used[filepath.Base(f)] {
			t.Errorf("%s belongs to no test", f)
		}
	}
}

func TestShortReportsHaveTenLinesAndTheSafetyLine(t *testing.T) {
	for name, a := range fixtures() {
		for _, format := range report.Formats() {
			text := written(t, a, report.Options{Format: format, Short: true})
			if n := strings.Count(text, "\n"); n > 10 {
				t.Errorf("%s %s: %d lines", name, format, n)
			}
			if format != report.FormatJSON {
				checkShortSafety(t, name, text)
			}
		}
	}
}

func checkShortSafety(t *testing.T, name, text string) {
	t.Helper()
	flat := strings.Join(strings.Fields(text), " ")
	for _, want := range []string{"maker's instructions", "local codes", "licensed practice", "changed vehicle no longer is the one that was tested"} {
		if !strings.Contains(flat, want) {
			t.Errorf("%s: the short report lacks %q", name, want)
		}
	}
}

func TestNoFormatOrLengthLeavesSafetyLinesOut(t *testing.T) {
	for name, a := range fixtures() {
		for _, format := range report.Formats() {
			got := strings.Join(strings.Fields(written(t, a, report.Options{Format: format, Full: true})), " ")
			if name == "hostile" {
				continue // its cautions are escaped out of recognition
			}
			cautions := a.Cautions
			if len(cautions) == 0 {
				cautions = []string{"licensed practice", "no longer is the one that was tested"}
			}
			for _, c := range cautions {
				if !strings.Contains(got, c) {
					t.Errorf("%s %s: lacks the caution %q", name, format, c)
				}
			}
		}
	}
}

func TestEveryFindingIsPrintedWithLevelAndAdvice(t *testing.T) {
	a := danger()
	text := flat(t, a)
	opening := map[answer.Certainty]string{
		answer.Likely: "Likely, in 9 of 10 vehicles like this: ", answer.Possible: "Possibly, in 3 of 10: ", answer.Rare: "Seldom, in 1 of 30: ",
	}
	for _, f := range a.Findings {
		level := strings.ToUpper(f.Level.String())
		if f.Reads == answer.AsTold {
			level = "INFO"
		}
		switch {
		case f.Harm == answer.Child:
			level += " (child)"
		case f.Harm == answer.House:
			level += " (fire)"
		}
		want := "* " + level + ": " + opening[f.Certainty] + f.Title
		if !strings.Contains(text, want) {
			t.Errorf("lacks %q", want)
		}
		// What has to be changed first stands in the list of changes.
		if f.Advice != "" && f.Level < answer.FixFirst && !strings.Contains(text, f.Advice) {
			t.Errorf("lacks the advice %q", f.Advice)
		}
	}
}

func TestTheSameAssessmentGivesTheSameBytes(t *testing.T) {
	for name, a := range fixtures() {
		for _, format := range report.Formats() {
			first := written(t, a, report.Options{Format: format, Full: true})
			for range 5 {
				if written(t, a, report.Options{Format: format, Full: true}) != first {
					t.Errorf("%s %s differs from run to run", name, format)
				}
			}
		}
	}
}

// brokenWriter fails like a full disk.
type brokenWriter struct{}

var errFull = errors.New("disk full")

func (brokenWriter) Write([]byte) (int, error) { return 0, errFull }

func TestWriteErrorsComeBack(t *testing.T) {
	for name, write := range map[string]func() error{
		"text":     func() error { return report.Text(brokenWriter{}, fine()) },
		"markdown": func() error { return report.Markdown(brokenWriter{}, fine()) },
		"bbcode":   func() error { return report.BBCode(brokenWriter{}, fine()) },
		"json":     func() error { return report.JSON(brokenWriter{}, fine()) },
		"short":    func() error { return report.Short(brokenWriter{}, fine()) },
	} {
		if err := write(); !errors.Is(err, errFull) {
			t.Errorf("%s: got %v", name, err)
		}
	}
	for name, a := range map[string]*answer.Assessment{"nil": nil, "empty": {}, "no verdict": {Schema: answer.Schema}} {
		for _, format := range report.Formats() {
			var out bytes.Buffer
			if err := report.Write(&out, a, report.Options{Format: format, Full: true}); err == nil || out.Len() > 0 {
				t.Errorf("%s %s: got error %v and %q, want an error and nothing", name, format, err, out.String())
			}
		}
	}
	if err := report.Write(&bytes.Buffer{}, fine(), report.Options{Format: "paper"}); err == nil {
		t.Error("no error for an unknown format")
	}
}

func TestParseFormatListsTheNames(t *testing.T) {
	if f, err := report.ParseFormat(" Markdown"); err != nil || f != report.FormatMarkdown {
		t.Errorf("got %q, %v", f, err)
	}
	if _, err := report.ParseFormat("pdf"); err == nil || !strings.Contains(err.Error(), "text, markdown, bbcode, html, json") {
		t.Errorf("got %v", err)
	}
}

func TestAnEmptyHeadlineIsMadeUpForFromTheWorstFinding(t *testing.T) {
	a := danger()
	a.Headline[1], a.Headline[2] = "", ""
	a.Findings[0], a.Findings[1] = a.Findings[1], a.Findings[0]
	lines := strings.Split(written(t, a, report.Options{Full: true}), "\n")
	if want := "Why: There is no fuse in the path."; lines[1] != want {
		t.Errorf("got %q, want %q", lines[1], want)
	}
	if want := "Next: Fit one close to the pack before anybody rides."; lines[2] != want {
		t.Errorf("got %q, want %q", lines[2], want)
	}
}
