package main

import (
	"encoding/json"
	"fmt"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"sync"
	"testing"

	"github.com/google/go-cmp/cmp"

	"example.org/packcheck"
	"example.org/packcheck/answer"
	"example.org/packcheck/report"
)

// examples returns the setup files of the project's examples.
func examples(t *testing.T) []string {
	t.Helper()
	files, err := filepath.Glob("../../examples/*.toml")
	if err != nil || len(files) < 3 {
		t.Fatalf("found %d examples (%v), want at least three", len(files), err)
	}
	return files
}

// judged runs the command and returns what it printed.
func judged(t *testing.T, args ...string) (string, int) {
	t.Helper()
	var out, errs strings.Builder
	code := run(args, strings.NewReader(""), &out, &errs)
	if code > exitFix || errs.Len() > 0 {
		t.Fatalf("packcheck %s: code %d, %s", strings.Join(args, " "), code, errs.String())
	}
	return out.String(), code
}

// assessed answers a setup as the command does. Tests that look at one answer in
// several forms write it, in place of having it computed for each; they share it, and
// so they do not change it.
func assessed(t *testing.T, file string, draws int) *answer.Assessment {
	t.Helper()
	once, _ := assessments.LoadOrStore(fmt.Sprint(file, draws), sync.OnceValues(func() (*answer.Assessment, error) {
		s, err := packcheck.Load(file)
		if err != nil {
			return nil, err
		}
		return packcheck.AssessWith(t.Context(), s, packcheck.Options{Draws: draws, Ways: true})
	}))
	a, err := once.(func() (*answer.Assessment, error))()
	if err != nil {
		t.Fatal(err)
	}
	return a
}

// assessments holds what assessed has computed.
var assessments sync.Map

// written is an answer as a report.
func written(t *testing.T, a *answer.Assessment, o report.Options) string {
	t.Helper()
	var out strings.Builder
	o.Explain = packcheck.Explain
	if err := report.Write(&out, a, o); err != nil {
		t.Fatal(err)
	}
	return out.String()
}

// mostFullLines is how long the full report of an example may be; own rule of
// the project.
const mostFullLines = 250

// UPDATE_GOLDEN=1 go test ./cmd/packcheck writes the golden reports anew; look
// at what changed before keeping it.
func TestExamplesMatchTheirGoldenReports(t *testing.T) {
	for _, file := range examples(t) {
		name := strings.TrimSuffix(filepath.Base(file), ".toml")
		t.Run(name, func(t *testing.T) {
			golden := filepath.Join("testdata", "examples", name+".txt")
			a := assessed(t, file, 0)
			page := written(t, a, report.Options{Format: report.FormatText})
			full := written(t, a, report.Options{Format: report.FormatText, Full: true})
			if n := strings.Count(full, "\n"); n >= mostFullLines {
				t.Errorf("--full has %d lines, want fewer than %d", n, mostFullLines)
			}
			for _, name := range []string{"Pedal down", "Speed", "Amps at a start"} { // how long, how fast, how hard
				if !strings.Contains(page, "\n"+name+" ") {
					t.Errorf("the page has no room for %q", name)
				}
			}
			got := page + "\n== --full ==\n" + full
			if os.Getenv("UPDATE_GOLDEN") != "" {
				if err := os.WriteFile(golden, []byte(got), 0o644); err != nil {
					t.Fatal(err)
				}
			}
			want, err := os.ReadFile(golden)
			if err != nil {
				t.Fatal(err)
			}
			if diff := cmp.Diff(string(want), got); diff != "" {
				t.Errorf("(-want +got)\n%s", diff)
			}
			checkOneNumber(t, got)
		})
	}
}

// checkOneNumber holds the ratio of speeds that findings tell against that of the
// figures, and sees that a figure of some vehicles is told as theirs.
func checkOneNumber(t *testing.T, text string) {
	t.Helper()
	text = strings.Join(strings.Fields(text), " ")
	var ratio []string
	for _, m := range regexp.MustCompile(`(of \d+[\w ]*: |ikely: |ossibly: )?(?:It goes|Now over then: speed) ([\d.]+)`).FindAllStringSubmatch(text, -1) {
		if m[1] == "" && !slices.Contains(ratio, m[2]) {
			ratio = append(ratio, m[2])
		}
	}
	if len(ratio) > 1 {
		t.Errorf("the ratio of speeds is %v", ratio)
	}
	for _, m := range regexp.MustCompile(`\* [A-Z ]+(?: \([a-z]+\))?: (?:Likely|Possibly|Seldom)[^:]*: [^()]*\((-?\d[^,;)]*)[,;)]`).FindAllStringSubmatch(text, -1) {
		if !strings.HasSuffix(m[1], " in these") {
			t.Errorf("%s is not told as of some", m[1])
		}
	}
}

func TestExamplesKeepTheRulesOfEveryFormat(t *testing.T) {
	for _, file := range examples(t) {
		a := assessed(t, file, 32)
		checkEverything(t, file, a, written(t, a, report.Options{Full: true}))
		for _, format := range report.Formats() {
			long := written(t, a, report.Options{Format: format, Full: true})
			short := written(t, a, report.Options{Format: format, Short: true})
			if n := strings.Count(short, "\n"); n > 10 {
				t.Errorf("%s %s: short report of %d lines", file, format, n)
			}
			for columns, text := range map[int]string{report.FullColumns: long, report.Columns: short} {
				for _, bad := range []string{"NaN", "Inf", "%!", "<nil>"} {
					if strings.Contains(text, bad) {
						t.Errorf("%s %s: holds %q", file, format, bad)
					}
				}
				if format == report.FormatText {
					checkWidth(t, file, columns, text)
				}
			}
		}
	}
}

// checkEverything holds the full report in text against the answer that programs get:
// every finding, part, source, assumption, question and caution stands in it.
func checkEverything(t *testing.T, file string, a *answer.Assessment, full string) {
	t.Helper()
	full = strings.Join(strings.Fields(full), " ")
	var want []string
	for _, f := range a.Findings {
		want = append(want, f.Code)
	}
	for _, v := range a.Items {
		name := string(v.Item)
		if v.Code != "" {
			name += " (" + v.Code + ")"
		}
		want = append(want, strings.ToUpper(v.Word)+": ", name)
	}
	for _, s := range a.Sources {
		if s.ID != "kinetic-energy" && s.ID != "common-practice" { // they stand under their own words
			want = append(want, s.ID)
		}
	}
	for _, x := range a.Assumed {
		want = append(want, x.Key[strings.LastIndex(x.Key, ".")+1:])
	}
	for _, m := range a.Measure {
		want = append(want, m.How, m.Enter)
	}
	for _, text := range append(want, a.Cautions...) {
		if !strings.Contains(full, text) {
			t.Errorf("%s: the full report lacks %q", file, text)
		}
	}
	if len(want) < 80 {
		t.Errorf("%s: only %d things were looked for", file, len(want))
	}
}

func checkWidth(t *testing.T, file string, columns int, text string) {
	t.Helper()
	lines := strings.Split(text, "\n")
	for i, line := range lines {
		if len(line) > columns || strings.ContainsFunc(line, func(r rune) bool { return r < ' ' || r > '~' }) {
			t.Errorf("%s: line %d is too wide or not ASCII: %q", file, i+1, line)
		}
	}
	for i, name := range []string{"", "Why: ", "Next: "} {
		if !strings.HasPrefix(lines[i], name) {
			t.Errorf("%s: line %d is %q, want %s", file, i+1, lines[i], name)
		}
	}
}

func TestExitCodeFollowsTheWorstFinding(t *testing.T) {
	for _, file := range examples(t) {
		long, code := judged(t, file, "--draws", "32", "--format", "json")
		var a answer.Assessment
		if err := json.Unmarshal([]byte(long), &a); err != nil {
			t.Fatalf("%s: %v", file, err)
		}
		worst := answer.Worst(a.Findings)
		if a.Verdict != worst {
			t.Errorf("%s: verdict %v, worst finding %v", file, a.Verdict, worst)
		}
		if want := map[bool]int{false: exitFine, true: exitFix}[worst >= answer.FixFirst]; code != want {
			t.Errorf("%s: code %d with worst finding %v, want %d", file, code, worst, want)
		}
		if _, again := judged(t, file, "--draws", "32", "--short"); again != code {
			t.Errorf("%s: the short report ends with code %d, the long one with %d", file, again, code)
		}
	}
}

// A reader who wants to know where a limit comes from must find it.
func TestEverySourceThatAReportNamesIsListed(t *testing.T) {
	var builtin []string
	for _, s := range packcheck.Sources() {
		builtin = append(builtin, s.ID)
	}
	for _, file := range examples(t) {
		a := assessed(t, file, 0)
		var listed []string
		for _, s := range a.Sources {
			listed = append(listed, s.ID)
			if !slices.Contains(builtin, s.ID) {
				t.Errorf("%s: the source %s is not in packcheck sources", file, s.ID)
			}
		}
		for _, f := range a.Findings {
			for _, id := range strings.Split(f.Source, ",") {
				if id = strings.TrimSpace(id); id == "" || !slices.Contains(listed, id) {
					t.Errorf("%s: the finding %s names the source %q, which the report does not list", file, f.Code, id)
				}
			}
		}
	}
}
