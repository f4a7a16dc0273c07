package report_test

import (
	"bytes"
	"encoding/json"
	"errors"
	"maps"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"example.org/packcheck"
	"example.org/packcheck/report"
)

// written returns one report as a string.
func written(t testing.TB, a *packcheck.Assessment, o report.Options) string {
	t.Helper()
	var out bytes.Buffer
	if err := report.Write(&out, a, o); err != nil {
		t.Fatalf("Write(%+v): %v", o, err)
	}
	return out.String()
}

// endings are the golden files' endings by format.
var endings = map[report.Format]string{
	report.FormatText: "txt", report.FormatMarkdown: "md", report.FormatBBCode: "bb", report.FormatJSON: "json",
}

// UPDATE_GOLDEN=1 go test ./report writes the golden files anew.
func TestReportsMatchTheirGoldenFiles(t *testing.T) {
	update := os.Getenv("UPDATE_GOLDEN") != ""
	used := map[string]bool{}
	for name, a := range fixtures() {
		for _, short := range []bool{false, true} {
			for _, format := range report.Formats() {
				file := name + "." + endings[format]
				if short {
					file = name + ".short." + endings[format]
				}
				used[file] = true
				t.Run(file, func(t *testing.T) {
					path := filepath.Join("testdata", file)
					got := written(t, a, report.Options{Format: format, Short: short})
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

func TestEveryLineOfTextFitsAnyCodeBox(t *testing.T) {
	for name, a := range fixtures() {
		for _, short := range []bool{false, true} {
			checkText(t, name, written(t, a, report.Options{Short: short}))
		}
	}
}

// checkText holds a text report against what the format promises.
func checkText(t *testing.T, name, text string) {
	t.Helper()
	if !strings.HasSuffix(text, "\n") || strings.HasSuffix(text, "\n\n") {
		t.Errorf("%s: text does not end in one line end", name)
	}
	for i, line := range strings.Split(text, "\n") {
		if len(line) > report.Columns {
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

func TestFirstThreeLinesAreVerdictRiskAndNextStep(t *testing.T) {
	for name, a := range fixtures() {
		for _, short := range []bool{false, true} {
			for _, format := range []report.Format{report.FormatText, report.FormatMarkdown, report.FormatBBCode} {
				lines := strings.SplitN(written(t, a, report.Options{Format: format, Short: short}), "\n", 4)
				for i, want := range []string{"Verdict", "Risk", "Next"} {
					if !strings.Contains(lines[i], want) {
						t.Errorf("%s %s: line %d is %q, want the %s", name, format, i+1, lines[i], want)
					}
				}
				if level := strings.ToUpper(a.Verdict.String()); !strings.Contains(lines[0], level) {
					t.Errorf("%s %s: the first line %q lacks %s", name, format, lines[0], level)
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
			want := numbers(written(t, a, report.Options{Short: short}), false)
			for _, format := range []report.Format{report.FormatMarkdown, report.FormatBBCode} {
				got := numbers(written(t, a, report.Options{Format: format, Short: short}), format == report.FormatMarkdown)
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
		for _, short := range []bool{false, true} {
			text := words.FindAllString(written(t, a, report.Options{Short: short}), -1)
			for _, format := range []report.Format{report.FormatMarkdown, report.FormatBBCode} {
				dialect := written(t, a, report.Options{Format: format, Short: short})
				if format == report.FormatBBCode {
					dialect = regexp.MustCompile(`\[[^\]]*\]`).ReplaceAllString(dialect, "")
				}
				other := words.FindAllString(dialect, -1)
				if diff := cmp.Diff(text, other); diff != "" {
					t.Errorf("%s %s: other words (-text +%s)\n%s", name, format, format, diff)
				}
			}
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
			got := strings.Join(strings.Fields(written(t, a, report.Options{Format: format})), " ")
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
	text := strings.Join(strings.Fields(written(t, a, report.Options{})), " ")
	for _, f := range a.Findings {
		want := strings.ToUpper(f.Level.String()) + ": " + f.Title
		if !strings.Contains(text, want) {
			t.Errorf("lacks %q", want)
		}
		if f.Advice != "" && !strings.Contains(text, f.Advice) {
			t.Errorf("lacks the advice %q", f.Advice)
		}
	}
}

func TestFiguresThatDoNotExistAreNeverZero(t *testing.T) {
	text := written(t, notANumber(), report.Options{})
	for _, want := range []string{"Speed                 6.1 to 7.5 km/h", "Weight                not known", "Wire stands it for    not known"} {
		if !strings.Contains(text, want) {
			t.Errorf("lacks %q", want)
		}
	}
	text = written(t, wideUS(), report.Options{})
	for _, want := range []string{"no rating suits", "harm not reached in the likely case; otherwise 3"} {
		if !strings.Contains(strings.Join(strings.Fields(text), " "), want) {
			t.Errorf("lacks %q", want)
		}
	}
}

func TestJSONIsTheAssessmentWithNullForWhatIsNoNumber(t *testing.T) {
	for name, a := range fixtures() {
		text := written(t, a, report.Options{Format: report.FormatJSON})
		var tree map[string]any
		if err := json.Unmarshal([]byte(text), &tree); err != nil {
			t.Fatalf("%s: %v", name, err)
		}
		for _, list := range []string{"findings", "notes", "changes", "assumed", "measure", "cautions", "sources"} {
			if _, ok := tree[list].([]any); !ok {
				t.Errorf("%s: %s is %v, want a list", name, list, tree[list])
			}
		}
		var back packcheck.Assessment
		if err := json.Unmarshal([]byte(text), &back); err != nil {
			t.Errorf("%s: %v", name, err)
		}
		if back.Verdict != a.Verdict || back.Headline != a.Headline && name != "hostile" {
			t.Errorf("%s: came back as %v %q", name, back.Verdict, back.Headline)
		}
	}
	var tree struct {
		Steady map[string]any
		Pack   map[string]any
	}
	text := written(t, notANumber(), report.Options{Format: report.FormatJSON})
	if err := json.Unmarshal([]byte(text), &tree); err != nil {
		t.Fatal(err)
	}
	if v, ok := tree.Steady["speed_kmh"]; !ok || v != nil {
		t.Errorf("speed_kmh is %v, want null", v)
	}
	if v, ok := tree.Pack["mass_kg"]; !ok || v != nil {
		t.Errorf("mass_kg is %v, want null", v)
	}
}

// Where every number is finite and short, JSON is what encoding/json writes.
func TestJSONAgreesWithEncodingJSON(t *testing.T) {
	for _, name := range []string{"danger", "wide-us", "hostile"} {
		a := fixtures()[name]
		want, err := json.MarshalIndent(a, "", "  ")
		if err != nil {
			t.Fatal(err)
		}
		if diff := cmp.Diff(string(want)+"\n", written(t, a, report.Options{Format: report.FormatJSON})); diff != "" {
			t.Errorf("%s (-want +got)\n%s", name, diff)
		}
	}
}

func TestTheSameAssessmentGivesTheSameBytes(t *testing.T) {
	for name, a := range fixtures() {
		for _, format := range report.Formats() {
			first := written(t, a, report.Options{Format: format})
			for range 5 {
				if written(t, a, report.Options{Format: format}) != first {
					t.Errorf("%s %s differs from run to run", name, format)
				}
			}
		}
	}
}

func TestUsersUnitsStandFirst(t *testing.T) {
	if text := written(t, danger(), report.Options{}); !strings.Contains(text, "6.1 to 7.5 km/h (3.8 to 4.7 mph)") {
		t.Errorf("metric user: km/h not first:\n%s", text)
	}
	if text := written(t, wideUS(), report.Options{}); !strings.Contains(text, "1.3 to 6.8 mph (2.1 to 11 km/h)") {
		t.Errorf("US user: mph not first:\n%s", text)
	}
}

func TestEndsOfATimeKeepTheirUnits(t *testing.T) {
	for _, tt := range []struct {
		low, high float64 // minutes
		want      string
	}{
		{22, 38, "22 to 38 min"},
		{6, 190, "6 min to 3 h 10 min"},
		{48, 72, "48 min to 1 h 12 min"},
		{120, 190, "2 h to 3 h 10 min"},
		{65, 190, "1 h 5 min to 3 h 10 min"},
	} {
		a := danger()
		a.Ranges["ride.clock_min"] = packcheck.Range{Low: tt.low, Likely: tt.low, High: tt.high}
		if text := written(t, a, report.Options{}); !strings.Contains(text, "With the pauses       "+tt.want+", likely") {
			t.Errorf("%v to %v min: lacks %q", tt.low, tt.high, tt.want)
		}
	}
}

func TestTitlesCannotBreakOut(t *testing.T) {
	a := hostile()
	md := written(t, a, report.Options{Format: report.FormatMarkdown})
	for _, bad := range []string{"<script", "http://", " www.x", " _<", " $x$", "@everyone"} {
		if strings.Contains(md, bad) {
			t.Errorf("Markdown holds %q", bad)
		}
	}
	bb := written(t, a, report.Options{Format: report.FormatBBCode})
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
	for name, a := range map[string]*packcheck.Assessment{"nil": nil, "empty": {}, "no verdict": {Schema: packcheck.Schema}} {
		for _, format := range report.Formats() {
			var out bytes.Buffer
			if err := report.Write(&out, a, report.Options{Format: format}); err == nil || out.Len() > 0 {
				t.Errorf("%s %s: got error %v and %q, want an error and nothing", name, format, err, out.String())
			}
		}
	}
	if err := report.Write(&bytes.Buffer{}, fine(), report.Options{Format: "html5"}); err == nil {
		t.Error("no error for an unknown format")
	}
}

func TestParseFormatListsTheNames(t *testing.T) {
	if f, err := report.ParseFormat(" Markdown"); err != nil || f != report.FormatMarkdown {
		t.Errorf("got %q, %v", f, err)
	}
	if _, err := report.ParseFormat("pdf"); err == nil || !strings.Contains(err.Error(), "text, markdown, bbcode, json") {
		t.Errorf("got %v", err)
	}
}

func TestAnEmptyHeadlineIsMadeUpForFromTheWorstFinding(t *testing.T) {
	a := danger()
	a.Headline[1], a.Headline[2] = "", ""
	a.Findings[0], a.Findings[1] = a.Findings[1], a.Findings[0]
	lines := strings.Split(written(t, a, report.Options{}), "\n")
	if want := "Risk: There is no fuse in the path."; lines[1] != want {
		t.Errorf("got %q, want %q", lines[1], want)
	}
	if want := "Next: Fit one close to the pack before anybody rides."; lines[2] != want {
		t.Errorf("got %q, want %q", lines[2], want)
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
		if md := written(t, a, report.Options{Format: report.FormatMarkdown}); !strings.Contains(md, "\n"+want+"\n") {
			t.Errorf("%q: lacks the line %q", given, want)
		}
	}
}
