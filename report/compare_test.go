package report_test

import (
	"bytes"
	"encoding/json"
	"encoding/xml"
	"errors"
	"io"
	"regexp"
	"slices"
	"strings"
	"testing"

	"example.org/packcheck/answer"
	"example.org/packcheck/report"
)

// comparison sets assessments side by side, all on the same draws.
func comparison(list ...*answer.Assessment) *answer.Comparison {
	c := &answer.Comparison{Schema: answer.ComparisonSchema, Verdict: answer.Danger, SameDraws: true, System: list[0].System}
	for i, a := range list {
		col := answer.Column{Letter: string(rune('A' + i)), Name: "20 V max 5 Ah", Answer: a}
		if i > 0 {
			col.Against = map[string]answer.Range{
				"ride.lasts_pedal_min": {Low: -22.2, Likely: -8.4, High: 3.1}, "steady.speed_kmh": {Low: 0.31, Likely: 1.24, High: 3.01},
				"launch.peak_motor_a": {Low: -30.4, Likely: -21, High: -3.3},
			}
		}
		c.Columns, c.Verdict = append(c.Columns, col), min(c.Verdict, a.Verdict)
	}
	usable := c.Verdict < answer.FixFirst
	c.Best = []answer.Best{
		{For: answer.MeritTime, Column: 0, Share: 0.71, Usable: usable},
		{For: answer.MeritAsSpeed, Column: len(list) - 1, Share: 0.55, Usable: usable},
		{For: answer.MeritGentle, Column: -1, Usable: usable},
	}
	return c
}

// comparisons are those that are looked at.
func comparisons() map[string]*answer.Comparison {
	long := comparison(danger(), danger(), danger(), danger())
	for i := range long.Columns {
		long.Columns[i].Name = strings.Repeat("Tractor with two packs joined in series ", 3)
	}
	evil := comparison(hostile(), fine())
	evil.Columns[0].Name = hostile().Title
	apart := comparison(danger(), fine(), bench())
	apart.SameDraws = false
	for i := range apart.Columns {
		apart.Columns[i].Against = nil
	}
	for _, c := range []*answer.Comparison{long, evil, apart} {
		for _, col := range c.Columns {
			courses(col.Answer)
		}
	}
	return map[string]*answer.Comparison{
		"two": comparison(danger(), fine()), "four, long names": long, "hostile": evil, "apart": apart,
		"units of the first": comparison(wideUS(), danger(), notANumber()), "bench loads": comparison(bench(), bench()),
	}
}

func compared(t testing.TB, c *answer.Comparison, f report.Format) string {
	t.Helper()
	var out bytes.Buffer
	if err := report.WriteComparison(&out, c, report.Options{Format: f}); err != nil {
		t.Fatal(err)
	}
	return out.String()
}

// looked are all pages that a browser is asked to show.
func looked(t testing.TB) map[string]string {
	out := map[string]string{}
	for name, a := range pages() {
		out[name] = htmlOf(t, a)
	}
	for _, name := range []string{"two", "four, long names"} {
		out["side by side, "+name] = compared(t, comparisons()[name], report.FormatHTML)
	}
	return out
}

func TestAComparisonKeepsTheMeasuresOfThePage(t *testing.T) {
	for name, c := range comparisons() {
		text := compared(t, c, report.FormatText)
		checkText(t, name, report.Columns, text)
		if n := strings.Count(text, "\n"); n > report.PageLines {
			t.Errorf("%s: %d lines\n%s", name, n, text)
		}
		for _, f := range []report.Format{report.FormatMarkdown, report.FormatBBCode} {
			if n := len(compared(t, c, f)); n > report.PageCharacters {
				t.Errorf("%s: %d characters of %s", name, n, f)
			}
		}
		for i, begin := range []string{"", "Why: ", "Next: "} {
			if line := strings.Split(text, "\n")[i]; !strings.HasPrefix(line, begin) {
				t.Errorf("%s: line %d is %q", name, i+1, line)
			}
		}
	}
}

// Every column's answer, letter and dangers stand in every dialect, and so does
// safety.
func TestAComparisonSaysOfEachWhetherItMayBeUsed(t *testing.T) {
	for name, c := range comparisons() {
		for _, f := range []report.Format{report.FormatText, report.FormatMarkdown, report.FormatBBCode, report.FormatHTML} {
			text := strings.Join(strings.Fields(compared(t, c, f)), " ")
			for _, want := range []string{"Charge with the charger made for this battery", "maker's instructions, local codes"} {
				if f != report.FormatHTML && !strings.Contains(text, want) {
					t.Errorf("%s, %s: lacks %q", name, f, want)
				}
			}
			if f == report.FormatHTML && (!strings.Contains(text, `<section class="safety">`) || strings.Count(text, "<th scope=\"col\">") != len(c.Columns)) {
				t.Errorf("%s: the page lacks its safety lines or a column", name)
			}
			for _, col := range c.Columns {
				word := map[answer.Level]string{answer.Fine: "YES", answer.Watch: "YES, WITH CARE", answer.FixFirst: "NOT YET", answer.Danger: "NO"}[col.Answer.Verdict]
				if !regexp.MustCompile(`(^|\W)` + col.Letter + `, .{0,330}: ` + word + `\.`).MatchString(text) {
					t.Errorf("%s, %s: %s is not said to be %s", name, f, col.Letter, word)
				}
				if n := strings.Count(strings.ToLower(text), "danger"); col.Answer.Verdict == answer.Danger && n == 0 {
					t.Errorf("%s, %s: no word of danger", name, f)
				}
			}
		}
	}
	first := func(c *answer.Comparison) string { return strings.Split(compared(t, c, report.FormatText), "\n")[0] }
	for want, c := range map[string]*answer.Comparison{
		"YES, WITH CARE: B, as far as these figures go; not A.": comparison(danger(), watched()),
		"NO: neither A nor B may be used as it is.":             comparison(danger(), danger()),
		"YES: A and B may each be used.":                        comparison(fine(), watched()),
	} {
		if got := first(c); got != want {
			t.Errorf("got %q, want %q", got, want)
		}
	}
}

func watched() *answer.Assessment {
	a := fine()
	a.Verdict = answer.Watch
	return a
}

func TestDifferencesSayWhichWayTheyGo(t *testing.T) {
	c := comparison(danger(), fine())
	text := strings.Join(strings.Fields(compared(t, c, report.FormatText)), " ")
	for _, want := range []string{
		"AGAINST A, VEHICLE BY VEHICLE B 8 min shorter (22 min shorter to 3 min longer), 1.2 km/h faster (0.3 to 3 km/h), motors at the start 21 A less (3 to 30 A)",
		"the same ones in all, so that a difference is one",
	} {
		if !strings.Contains(text, want) {
			t.Errorf("lacks %q in %s", want, text)
		}
	}
	c = comparisons()["apart"]
	if text := compared(t, c, report.FormatText); strings.Contains(text, "AGAINST") || !strings.Contains(text, "not the same ones in") {
		t.Errorf("columns on draws of their own are compared draw by draw:\n%s", text)
	}
	us := strings.Join(strings.Fields(compared(t, comparisons()["units of the first"], report.FormatText)), " ")
	if !strings.Contains(us, "mph faster") || strings.Contains(us, "km/h faster") {
		t.Errorf("not in the units of the first: %s", us)
	}
}

// A middle that is lost in what it spreads over is no difference.
func TestADifferenceWithoutAMiddleIsNone(t *testing.T) {
	c := comparison(danger(), fine())
	c.Columns[1].Against["steady.speed_kmh"] = answer.Range{Low: -0.97, Likely: -0.02, High: 0}
	text := strings.Join(strings.Fields(compared(t, c, report.FormatText)), " ")
	if want := "about as fast (0 to 0.97 km/h slower)"; !strings.Contains(text, want) {
		t.Errorf("lacks %q in %s", want, text)
	}
}

func TestAComparisonPageIsWellFormedAndRunsNothing(t *testing.T) {
	allowed := strings.Fields("html head meta link title style body header main section h1 h2 h3 p b ul li dl div dt dd figure figcaption svg g path rect circle polygon text table thead tbody tr th td small")
	for name, c := range comparisons() {
		text := compared(t, c, report.FormatHTML)
		d := xml.NewDecoder(strings.NewReader(text))
		for {
			token, err := d.Token()
			if errors.Is(err, io.EOF) {
				break
			}
			if err != nil {
				t.Fatalf("%s: not well formed: %v", name, err)
			}
			start, ok := token.(xml.StartElement)
			if ok && !slices.Contains(allowed, start.Name.Local) {
				t.Errorf("%s: holds <%s>", name, start.Name.Local)
			}
			for _, attr := range start.Attr {
				if strings.HasPrefix(attr.Name.Local, "on") || attr.Name.Local == "src" {
					t.Errorf("%s: <%s> has %s", name, start.Name.Local, attr.Name.Local)
				}
			}
		}
		if strings.Contains(text, "NaN") || strings.Contains(text, "%!") || len(text) > 300_000 {
			t.Errorf("%s: holds what it must not, or %d bytes", name, len(text))
		}
	}
}

func TestAComparisonAsJSONHoldsEveryAnswer(t *testing.T) {
	var read answer.Comparison
	if err := json.Unmarshal([]byte(compared(t, comparisons()["two"], report.FormatJSON)), &read); err != nil {
		t.Fatal(err)
	}
	if len(read.Columns) != 2 || read.Columns[1].Answer.Verdict != fine().Verdict || len(read.Columns[1].Against) != 3 || read.Best[1].For != answer.MeritAsSpeed {
		t.Errorf("got %+v", read)
	}
}

func TestWhatIsNoFinishedComparisonIsRefused(t *testing.T) {
	half := comparison(danger(), fine())
	half.Columns[1].Answer = &answer.Assessment{}
	for name, c := range map[string]*answer.Comparison{"none": nil, "empty": {}, "half": half} {
		if err := report.WriteComparison(io.Discard, c, report.Options{}); err == nil {
			t.Errorf("%s: went through", name)
		}
	}
	if err := report.WriteComparison(io.Discard, comparison(fine(), fine()), report.Options{Format: "paper"}); err == nil {
		t.Error("an unknown format went through")
	}
}

// A speed that was read and left out is told beside several setups, as on the page of one.
func TestAComparisonTellsTheSpeedThatItIsWithout(t *testing.T) {
	for _, tt := range []struct {
		list []*answer.Assessment
		want []string
	}{
		{[]*answer.Assessment{danger(), fine()}, []string{"The speed of A is without the 18 km/h that was read."}},
		{[]*answer.Assessment{fine(), danger()}, []string{"The speed of B is without the 18 km/h that was read."}},
		{[]*answer.Assessment{fine(), fine()}, nil},
	} {
		var out bytes.Buffer
		if err := report.WriteComparison(&out, comparison(tt.list...), report.Options{}); err != nil {
			t.Fatal(err)
		}
		text := strings.Join(strings.Fields(out.String()), " ")
		if got := regexp.MustCompile(`The speed of . is without [^.]*\.`).FindAllString(text, -1); !slices.Equal(got, tt.want) {
			t.Errorf("%q, want %q in\n%s", got, tt.want, text)
		}
	}
}
