package trials_test

import (
	"bytes"
	"context"
	"encoding/json"
	"fmt"
	"maps"
	"math"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"sync"
	"testing"

	"example.org/packcheck"
	"example.org/packcheck/answer"
	"example.org/packcheck/internal/draws"
	"example.org/packcheck/internal/reckon"
	"example.org/packcheck/report"
	"example.org/packcheck/setup"
)

// How many vehicles a trial draws. What holds of every single draw needs few;
// what hangs on the spread needs some; nothing here needs the usual 1024 but
// what is compared with printed figures.
const (
	few  = 16
	some = 64
)

// read assesses a text that must be in order.
func read(t testing.TB, text string) *answer.Assessment { return readWith(t, text, some) }

// readWith assesses a text that must be in order. Whoever asks for the same again is
// given the same assessment, which nobody may change.
func readWith(t testing.TB, text string, draws int) *answer.Assessment {
	t.Helper()
	once, _ := answered.LoadOrStore(asked{text, draws}, sync.OnceValues(func() (*answer.Assessment, error) { return freshly(text, draws) }))
	a, err := once.(func() (*answer.Assessment, error))()
	if err != nil {
		t.Fatal(err)
	}
	return a
}

// answered holds what readWith has assessed: tests of one vehicle ask for one answer.
var answered sync.Map

type asked struct {
	text  string
	draws int
}

// freshly assesses a text anew: for whoever changes the answer, or holds one run
// against another.
func freshly(text string, draws int) (*answer.Assessment, error) {
	s, err := packcheck.Read(strings.NewReader(text), "test.toml")
	if err != nil {
		return nil, err
	}
	return packcheck.AssessWith(context.Background(), s, packcheck.Options{Draws: draws})
}

// assess assesses a sheet that must be in order.
func assess(t testing.TB, s sheet) *answer.Assessment {
	t.Helper()
	return read(t, s.toml())
}

// briefly does so with few draws.
func briefly(t testing.TB, s sheet) *answer.Assessment {
	t.Helper()
	return readWith(t, s.toml(), few)
}

// lasting are figures of how long and far a ride is.
var lasting = []string{"ride.pedal_min", "ride.lasts_pedal_min", "ride.lasts_clock_min", "ride.distance_km"}

// plainFigures are figures that nobody judges.
var plainFigures = append([]string{
	"launch.wheels_up_a", "path.resistance_ohm", "pack.resistance_1s_ohm", "pack.usable_wh", "ride.motor_case_c", "ride.pack_c", "ride.charge_left", "ride.pedal_min",
	"original.original_pedal_min",
}, mainFigures...)

// foretold gives the plain figures of a text that must be in order, with their ranges,
// from the draws alone: judging takes four times as long.
// [TestDrawsAloneForetellWhatTheAnswerSays] holds that they are those of the answer.
func foretold(t testing.TB, text string, n int) map[string]answer.Range {
	t.Helper()
	once, _ := foretolds.LoadOrStore(asked{text, n}, sync.OnceValues(func() (map[string]answer.Range, error) {
		s, err := setup.Read(strings.NewReader(text), "test.toml")
		if err != nil {
			return nil, err
		}
		d, err := reckon.Draw(s, reckon.Options{Draws: n}, n, plainFigures)
		if err != nil {
			return nil, err
		}
		still, all := 0.0, 0.0
		for i, w := range d.Weight {
			all += w
			if d.Crawls[i] || d.Stuck[i] {
				still += w
			}
		}
		out := map[string]answer.Range{}
		for i, path := range plainFigures {
			for k := range d.Values[i] { // where most do ride, how far the others crawl is no part of it
				if d.Crawls[k] && still < all/2 && slices.Contains(lasting, path) {
					d.Values[i][k] = math.NaN()
				}
			}
			if at := draws.SpreadOf(d.Values[i], d.Weight); at.Present > 0 {
				out[path] = answer.Range{Low: at.P10, Likely: at.P50, High: at.P90}
			}
		}
		return out, nil
	}))
	out, err := once.(func() (map[string]answer.Range, error))()
	if err != nil {
		t.Fatal(err)
	}
	return out
}

// foretolds holds what foretold has computed.
var foretolds sync.Map

const examples = "../../examples/"

// example assesses one of the examples as the command does.
func example(t testing.TB, name string) *answer.Assessment {
	t.Helper()
	return readWith(t, exampleText(t, name), 0)
}

func exampleText(t testing.TB, name string) string {
	t.Helper()
	text, err := os.ReadFile(filepath.Join(examples, name))
	if err != nil {
		t.Fatal(err)
	}
	return string(text)
}

// labels is a setup of which only labels are known.
const labels = `
[rider]
mass = "%s"
[vehicle]
design_voltage = "12 V"
ground = "%s"
[motors]
count = 2
can = "550"
rated_voltage = "12 V"
[pack]
label = "%s"
chemistry = "%s"
`

func labelled(t testing.TB, mass, ground, label, chemistry string) *answer.Assessment {
	t.Helper()
	return read(t, fmt.Sprintf(labels, mass, ground, label, chemistry))
}

// refused gives the error of a sheet.
func refused(t testing.TB, s sheet) error {
	t.Helper()
	loaded, err := packcheck.Read(strings.NewReader(s.toml()), "test.toml")
	if err == nil {
		_, err = packcheck.AssessWith(t.Context(), loaded, packcheck.Options{Draws: few})
	}
	return err
}

// has reports the worst level at which any of the codes was found.
func has(a *answer.Assessment, codes ...string) answer.Level {
	worst := answer.Fine
	for _, f := range a.Findings {
		if slices.Contains(codes, f.Code) {
			worst = max(worst, f.Level)
		}
	}
	return worst
}

func near(t *testing.T, what string, got, want, share float64) {
	t.Helper()
	if !(math.Abs(got-want) <= share*math.Abs(want)) {
		t.Errorf("%s: got %.6g, want %.6g within %g %%", what, got, want, 100*share)
	}
}

// figures flattens the numbers of an assessment.
func figures(t testing.TB, a *answer.Assessment) map[string]float64 {
	t.Helper()
	text, err := json.Marshal(a)
	if err != nil {
		t.Fatal(err)
	}
	var tree any
	if err := json.Unmarshal(text, &tree); err != nil {
		t.Fatal(err)
	}
	out := map[string]float64{}
	var walk func(string, any)
	walk = func(path string, v any) {
		switch v := v.(type) {
		case map[string]any:
			for key, one := range v {
				walk(path+"."+key, one)
			}
		case []any:
			for i, one := range v {
				walk(fmt.Sprintf("%s.%d", path, i), one)
			}
		case float64:
			out[path] = v
		}
	}
	walk("", tree)
	return out
}

// sameFigures compares every number of two assessments and their findings.
func sameFigures(t *testing.T, what string, a, b *answer.Assessment, share float64) {
	t.Helper()
	fa, fb := figures(t, a), figures(t, b)
	for _, path := range slices.Sorted(maps.Keys(fa)) {
		if v, ok := fb[path]; !ok || math.Abs(v-fa[path]) > share*max(math.Abs(v), 1e-9) {
			t.Errorf("%s: %s is %.12g and %.12g", what, path, fa[path], v)
		}
	}
	if len(fa) != len(fb) || a.Verdict != b.Verdict || len(a.Findings) != len(b.Findings) {
		t.Errorf("%s: %d and %d figures, %v and %v, %d and %d findings", what, len(fa), len(fb), a.Verdict, b.Verdict, len(a.Findings), len(b.Findings))
	}
}

// everyByte is the report in every format, computed anew.
func everyByte(t testing.TB, text string) string {
	t.Helper()
	a, err := freshly(text, few)
	if err != nil {
		t.Fatal(err)
	}
	var out bytes.Buffer
	for _, format := range report.Formats() {
		for _, short := range []bool{false, true} {
			if err := report.Write(&out, a, report.Options{Format: format, Short: short}); err != nil {
				t.Fatal(err)
			}
		}
	}
	return out.String()
}
