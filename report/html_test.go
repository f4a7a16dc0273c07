package report_test

import (
	"encoding/xml"
	"errors"
	"io"
	"math"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"

	"example.org/packcheck/answer"
	"example.org/packcheck/report"
)

// courses gives an assessment a made-up course of things.
func courses(a *answer.Assessment) *answer.Assessment {
	s := &answer.Series{
		Lines:         []answer.VoltLine{{Name: "the added cutoff opens", V: 15.5}, {Name: "at rest, cells are harmed below", V: 12.5, Harm: true}},
		WindingLimitC: 105, EndedBy: "cutoff opened",
	}
	for i := range 180 {
		x := float64(i) / 4
		s.Outing = append(s.Outing, answer.OutingPoint{
			ClockMin: x, PackV: 20.5 - x/9 + float64(i%2), BatteryA: 9, SpeedKmh: 6.8, Charge: 1 - x/50, PackC: 20 + x/3, WindingC: 20 + 2*x, CaseC: 20 + x, Driving: i%2 == 0,
		})
	}
	for i := range 100 {
		x := float64(i) / 20
		s.Launch = append(s.Launch, answer.LaunchPoint{TimeS: x, BatteryA: 10 + 80*math.Exp(-x), BusV: 17, SpeedKmh: 6.8 * (1 - math.Exp(-x))})
	}
	a.Series = s
	if a.Launch == nil {
		s.Launch = nil
	}
	return a
}

// pages are the assessments that are looked at as HTML.
func pages() map[string]*answer.Assessment {
	out := fixtures()
	for _, a := range out {
		courses(a)
	}
	return out
}

// htmlOf is the page with an explanation behind every finding.
func htmlOf(t testing.TB, a *answer.Assessment) string {
	t.Helper()
	return written(t, a, report.Options{Format: report.FormatHTML, Explain: func(code string) (answer.Explanation, bool) {
		return answer.Explanation{Code: code, Means: "It means that.", Hurts: "It hurts.", Limit: "From a book.", Do: "Do something."}, true
	}})
}

// The page is whole, loads nothing and runs nothing, whatever the setup holds.
func TestHTMLIsWellFormedAndRunsNothing(t *testing.T) {
	allowed := strings.Fields("html head meta link title style body header main section h1 h2 h3 p b ol ul li dl div dt dd figure figcaption svg g path rect text " +
		"span label input details summary article")
	for name, a := range pages() {
		for _, short := range []bool{false, true} {
			text := htmlOf(t, a)
			if short {
				text = written(t, a, report.Options{Format: report.FormatHTML, Short: true})
			}
			d := xml.NewDecoder(strings.NewReader(text))
			d.Strict = true
			for {
				token, err := d.Token()
				if errors.Is(err, io.EOF) {
					break
				}
				if err != nil {
					t.Errorf("%s: not well formed: %v", name, err)
					break
				}
				start, ok := token.(xml.StartElement)
				if !ok {
					continue
				}
				if !slices.Contains(allowed, start.Name.Local) {
					t.Errorf("%s: holds <%s>", name, start.Name.Local)
				}
				for _, attr := range start.Attr {
					if strings.HasPrefix(attr.Name.Local, "on") || attr.Name.Local == "src" || attr.Name.Local == "href" && attr.Value != "data:," {
						t.Errorf("%s: <%s> has %s=%q", name, start.Name.Local, attr.Name.Local, attr.Value)
					}
				}
			}
			if strings.Contains(text, "url(") || strings.Contains(text, "@import") || strings.Contains(text, "NaN") || strings.Contains(text, "%!") {
				t.Errorf("%s: holds what it must not", name)
			}
			if n := len(text); n > 300_000 {
				t.Errorf("%s: %d bytes, want fewer than 300,000", name, n)
			}
		}
	}
}

func TestHTMLHasItsParts(t *testing.T) {
	text := htmlOf(t, courses(danger()))
	for _, want := range []string{
		`<p class="answer">NO</p>`, "<h1>Bramble Lane harvest tractor on an 18 V tool pack</h1>", "<h2>Why not</h2>", "<h2>Part by part</h2>",
		"Battery: watch", "Fuse: danger", "Charger: danger", "Motors: nothing found", "Speed, km/h", "Volts of the battery", "Heat of the motors",
		"the added cutoff (it switches an empty battery off in time) opens (15.5 V)", "The first seconds: current", "One case only, with every unknown at its middle", "the middle of all is", `<input type="checkbox"/>`, "What to ask for at the counter", "Look or measure next",
		`<section class="safety">`, "<summary>All 7 findings</summary>", "<summary>What stands behind it</summary>", "It means that.", "<summary>All figures</summary>",
		"What was assumed: 4 values", "usual for this can size", "33 CFR 183.455, overcurrent protection", "nobody-cites",
	} {
		if !strings.Contains(text, want) {
			t.Errorf("lacks %q", want)
		}
	}
	for _, f := range danger().Findings {
		if !strings.Contains(text, f.Title) || !strings.Contains(text, f.Advice) {
			t.Errorf("lacks the finding %q or its advice", f.Title)
		}
	}
	safety := text[strings.Index(text, `<section class="safety">`):]
	if !strings.Contains(safety[:strings.Index(safety, "</section>")], danger().Cautions[0]) {
		t.Error("the cautions are not in the safety section")
	}
	bench := htmlOf(t, courses(bench()))
	for _, word := range []string{"Motors", "Speed, km/h", "first seconds", "Child"} {
		if strings.Contains(bench, word) {
			t.Errorf("a bench load shows %q", word)
		}
	}
}

// A part of which nothing is known or nothing was found is not said to be fine.
func TestTheDrawingCallsNothingFineThatWasNotFoundFine(t *testing.T) {
	a := courses(fine())
	a.Charge, a.Path = nil, nil
	text := htmlOf(t, a)
	if strings.Contains(text, "Battery: fine") || !strings.Contains(text, "Battery: nothing found") || !strings.Contains(text, "Charger: not described") || !strings.Contains(text, "Fuse: not described") {
		t.Error("a part without a finding has another word than it should have")
	}
	a.Findings = []answer.Finding{{Level: answer.Fine, Item: answer.Fuse, Title: "It suits."}, {Level: answer.FixFirst, Item: answer.Wire, Reads: answer.AsUnknown, Title: "Nobody knows."}}
	a.Items = []answer.ItemVerdict{{Item: answer.Gears, Word: answer.NotKnown, Line: "Not told: their ratio."}, {Item: answer.Wire, Word: "fix first", Code: "nobody"}}
	text = htmlOf(t, a)
	for _, want := range []string{"Fuse: fine", "Wire: fix first", "Gears, wheels: not known"} { // the word that every form has
		if !strings.Contains(text, want) {
			t.Errorf("lacks %q", want)
		}
	}
}

// Figures of the page for phones are those of the other forms.
func TestHTMLPrintsTheSameNumbers(t *testing.T) {
	for name, a := range map[string]*answer.Assessment{"danger": danger(), "fine": fine(), "wide-us": wideUS()} {
		text := written(t, a, report.Options{})
		html := htmlOf(t, courses(a))
		seen := map[string]string{}
		for _, f := range namedNumbers(text) {
			seen[f[0]] = f[1]
		}
		plain := regexp.MustCompile(`<[^>]*>`).ReplaceAllString(html, " ")
		found := 0
		for _, f := range namedNumbers(plain) {
			if want, ok := seen[f[0]]; ok {
				found++
				if f[1] != want {
					t.Errorf("%s: %s is %q, %q on the page of text", name, f[0], f[1], want)
				}
			}
		}
		if found < 4 {
			t.Errorf("%s: only %d figures were compared", name, found)
		}
	}
}

// Contrast by WCAG 2.2: 4.5 for text (1.4.3), 3 for shapes (1.4.11), with the
// relative luminance as defined there.
func TestColoursHaveContrastByDayAndByNight(t *testing.T) {
	text := htmlOf(t, fine())
	sets := regexp.MustCompile(`:root\{([^}]*)\}`).FindAllStringSubmatch(text, -1)
	if len(sets) != 3 {
		t.Fatalf("found %d sets of colours, want those of day, night and print", len(sets))
	}
	for i, set := range sets {
		colour := map[string]float64{}
		for _, m := range regexp.MustCompile(`--(\w+):#([0-9a-f]{3}|[0-9a-f]{6})\b`).FindAllStringSubmatch(set[1], -1) {
			colour[m[1]] = luminance(t, m[2])
		}
		for _, pair := range []struct {
			front, back string
			least       float64
		}{
			{"ink", "ground", 4.5},
			{"ink", "card", 4.5},
			{"ink", "paint", 4.5},
			{"soft", "ground", 4.5},
			{"soft", "card", 4.5},
			{"on", "danger", 4.5},
			{"on", "fix", 4.5},
			{"on", "watch", 4.5},
			{"on", "fine", 4.5},
			{"danger", "card", 4.5},
			{"fix", "card", 4.5},
			{"watch", "card", 4.5},
			{"fine", "card", 4.5},
			{"now", "ground", 3},
			{"then", "ground", 3},
			{"edge", "ground", 3},
			{"danger", "ground", 3},
			{"watch", "ground", 3},
		} {
			front, ok := colour[pair.front]
			back, ok2 := colour[pair.back]
			if !ok || !ok2 {
				t.Errorf("set %d lacks %s or %s", i, pair.front, pair.back)
				continue
			}
			if c := (max(front, back) + 0.05) / (min(front, back) + 0.05); c < pair.least {
				t.Errorf("set %d: %s on %s has a contrast of %.2f, want %v", i, pair.front, pair.back, c, pair.least)
			}
		}
	}
}

// The band keeps its colours by night.
func TestTheBandHasContrast(t *testing.T) {
	found := regexp.MustCompile(`\.band\.\w+\{--tone:#([0-9a-f]{6})\}`).FindAllStringSubmatch(htmlOf(t, fine()), -1)
	if len(found) != 4 {
		t.Fatalf("found %d colours of the band, want four", len(found))
	}
	for _, m := range found {
		if c := 1.05 / (luminance(t, m[1]) + 0.05); c < 4.5 {
			t.Errorf("white on %s has a contrast of %.2f", m[1], c)
		}
	}
}

// luminance is the relative luminance of WCAG 2.2.
func luminance(t *testing.T, hex string) float64 {
	t.Helper()
	if len(hex) == 3 {
		hex = string([]byte{hex[0], hex[0], hex[1], hex[1], hex[2], hex[2]})
	}
	sum := 0.0
	for i, weight := range []float64{0.2126, 0.7152, 0.0722} {
		n, err := strconv.ParseUint(hex[2*i:2*i+2], 16, 8)
		if err != nil {
			t.Fatal(err)
		}
		c := float64(n) / 255
		if c <= 0.04045 {
			c /= 12.92
		} else {
			c = math.Pow((c+0.055)/1.055, 2.4)
		}
		sum += weight * c
	}
	return sum
}

// Black on white has a contrast of 21 by the same definition.
func TestTheContrastFormulaGivesItsKnownEnds(t *testing.T) {
	if c := (luminance(t, "ffffff") + 0.05) / (luminance(t, "000000") + 0.05); math.Abs(c-21) > 1e-9 {
		t.Errorf("black on white has %.3f, want 21", c)
	}
}
