package setup_test

import (
	"fmt"
	"math"
	"os"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/google/go-cmp/cmp/cmpopts"

	"example.org/packcheck/setup"
)

// patternOf is the pattern of a setup whose load is the given file.
func patternOf(t testing.TB, content string) ([]setup.Demand, error) {
	t.Helper()
	p, err := benchOf(t, content)
	if err != nil {
		return nil, err
	}
	return p.Bench.Pattern, nil
}

// benchOf resolves that setup.
func benchOf(t testing.TB, content string) (*setup.Parts, error) {
	t.Helper()
	dir := t.TempDir()
	for name, text := range map[string]string{
		"log.csv": content,
		"s.toml":  "[pack]\nlabel = \"12 V 7 Ah\"\n[load]\npattern = \"log.csv\"\n",
	} {
		if err := os.WriteFile(filepath.Join(dir, name), []byte(text), 0o600); err != nil {
			t.Fatal(err)
		}
	}
	s, err := setup.Load(filepath.Join(dir, "s.toml"))
	if err != nil {
		t.Fatal(err)
	}
	return s.Parts()
}

// playsAs holds files of different make to the same demands.
func playsAs(t *testing.T, want []setup.Demand, files map[string]string) {
	t.Helper()
	for name, content := range files {
		got, err := patternOf(t, content)
		if err != nil {
			t.Errorf("%s: %v", name, err)
			continue
		}
		if d := cmp.Diff(want, got, cmpopts.EquateApprox(1e-9, 1e-12)); d != "" {
			t.Errorf("%s: -want +got\n%s", name, d)
		}
	}
}

// What a logger wrote can be played again, whatever its columns are called. A
// log tells what flowed at its rows, so between two of them flows the mean.
func TestAPatternMayBeALog(t *testing.T) {
	want := []setup.Demand{{Seconds: 2, CurrentA: 0}, {Seconds: 1, CurrentA: 2}, {Seconds: 60, CurrentA: 4}}
	playsAs(t, want, map[string]string{
		"titles and plain units":                        "time_s,voltage_v,current_a\n0,12.6,0\n2,12.6,0\n3,12.3,4\n63,12.2,4\n",
		"other order, milliamperes, discharge negative": "I (mA);t (s);U (mV)\n0;0;12600\n0;2;12600\n-4000;3;12300\n-4000;63;12200\n",
		"decimal commas and clock time":                 "Zeit;Spannung (V);Strom (A)\n10:00:00;12,6;0,0\n10:00:02;12,6;0,0\n10:00:03;12,3;4,0\n10:01:03;12,2;4,0\n",
		"a preamble and one more column":                "Bramble Lane logger\nTime (s)\tVoltage (V)\tCurrent (A)\tTemp (C)\n0\t12.6\t0\t20\n2\t12.6\t0\t20\n3\t12.3\t4\t20\n63\t12.2\t4\t21\n",
	})
}

// Three columns used to be read as two: the volts would have been drawn as
// amperes.
func TestVoltsAreNotDrawnAsAmperes(t *testing.T) {
	got, err := patternOf(t, "0,12.6,0.5\n10,12.5,0.5\n20,12.4,0.5\n")
	if err != nil {
		t.Fatal(err)
	}
	for _, d := range got {
		if math.Abs(d.CurrentA-0.5) > 1e-9 {
			t.Errorf("draws %g A, the log says 0.5 A", d.CurrentA)
		}
	}
}

// Without volts a row holds until the next one, and titles and units count as
// they do in a log.
func TestAPatternNeedsNoVolts(t *testing.T) {
	want := []setup.Demand{{Seconds: 60, CurrentA: 0.8}, {Seconds: 60, CurrentA: 0}, {Seconds: 120, CurrentA: 4}}
	playsAs(t, want, map[string]string{
		"seconds and amperes, untitled":      "0,0.8\n60,0\n120,4\n240,0\n",
		"milliamperes":                       "Time (s),Current (mA)\n0,800\n60,0\n120,4000\n240,0\n",
		"minutes":                            "Time (min),Current (A)\n0,0.8\n1,0\n2,4\n4,0\n",
		"clock times":                        "Time,Current\n23:59:00,0.8\n00:00:00,0\n00:01:00,4\n00:03:00,0\n",
		"current first":                      "Current (A);Time (s)\n0,8;0\n0,0;60\n4,0;120\n0,0;240\n",
		"with a temperature":                 "Time (s)\tCurrent (A)\tTemp (C)\n0\t0.8\t20\n60\t0\t20\n120\t4\t21\n240\t0\t21\n",
		"discharging counted as negative":    "time_s,current_a\n0,-0.8\n60,0\n120,-4\n240,0\n",
		"two rows at the moment of a change": "time_s,current_a\n0,0.8\n60,0.8\n60,0\n120,4\n240,4\n",
	})
}

func TestACurrentThatOnlySometimesFlowsBackIsNotTurned(t *testing.T) {
	got, err := patternOf(t, "time_s,current_a\n0,8\n600,-4\n1200,0\n")
	if err != nil {
		t.Fatal(err)
	}
	want := []setup.Demand{{Seconds: 600, CurrentA: 8}, {Seconds: 600, CurrentA: -4}}
	if d := cmp.Diff(want, got, cmpopts.EquateApprox(1e-9, 0)); d != "" {
		t.Errorf("-want +got\n%s", d)
	}
}

// What the file was taken for must be seen, or a wrong unit passes for a load.
func TestTheReportSaysHowAPatternWasRead(t *testing.T) {
	for content, want := range map[string]string{
		"Time (min),Current (mA)\n0,5000\n2,5000\n": `The load pattern log.csv: "Time (min)" is read as time, "Current (mA)" as current; it lasts 2 min and draws at most 5 A.`,
		"0,-8\n60,-8\n": `The load pattern log.csv: "column 1" is read as time, "column 2" as current; it lasts 60 s and draws at most 8 A. Most of its current is negative; without volts beside it, that is taken as discharging.`,
	} {
		if got, err := benchOf(t, content); err != nil || !slices.Contains(got.Notes, want) {
			t.Errorf("%q: %v, no note %q", content, err, want)
		}
	}
}

func TestAPatternThatIsNoLogSaysWhere(t *testing.T) {
	for _, c := range []struct{ content, want string }{
		{"time_s,voltage_v,current_a\n0,12.6,0\n2,12.6,x\n", `log.csv:3: load.pattern, column 3: read "x"; want a number for amps`},
		{"time_s,voltage_v,current_a\n5,12.6,0\n2,12.6,1\n", `log.csv:3: load.pattern, column 1: read "a time 3.000 s before`},
		{"time_s,temp_c\n0,20\n2,20\n", "no column for amps"},
		{"time_s,voltage_v,current_a\n0,12.6,0\n1,12.6,90000\n", `read "45000 A, 1 s into the log"; want at most 5000 A`},
		{"time_s,current_a\n0,8\n", `read "rows of numbers: 1"; want at least two`},
		{"time_s,current_a\n", `read "no row of numbers in the first 64 KB"; want rows of time and amps`},
		{"", `read "an empty file"; want rows of time and amps`},
		{"time_s,voltage_v,current_a\n0,12.0,0\n10,12.5,-4\n20,12.6,-4\n", `read "a charge: 0.0167 Ah more go in than come out"; want the log of a discharge`},
		{"\x00\x01\x02", "no text"},
	} {
		_, err := patternOf(t, c.content)
		if err == nil || !strings.Contains(err.Error(), "load.pattern") || !strings.Contains(err.Error(), c.want) {
			t.Errorf("%.40q:\ngot  %v\nwant %s", c.content, err, c.want)
		}
	}
}

// A long log is played in fewer pieces; the charge must not change.
func TestALongLogKeepsItsCharge(t *testing.T) {
	var b strings.Builder
	b.WriteString("time_s,voltage_v,current_a\n")
	amps := func(i int) float64 {
		if i%70 < 50 {
			return 6
		}
		return 0
	}
	ah := 0.0
	const rows = 40_000
	for i := range rows {
		fmt.Fprintf(&b, "%.1f,%.3f,%.2f\n", float64(i)/2, 12.6-2e-5*float64(i)-0.05*amps(i), amps(i))
		if i > 0 {
			ah += (amps(i) + amps(i-1)) / 2 * 0.5 / 3600
		}
	}
	pattern, err := patternOf(t, b.String())
	if err != nil {
		t.Fatal(err)
	}
	var got, seconds float64
	for _, d := range pattern {
		got += d.CurrentA * d.Seconds / 3600
		seconds += d.Seconds
	}
	if math.Abs(got/ah-1) > 1e-6 || math.Abs(seconds-(rows-1)/2.0) > 1e-6 {
		t.Errorf("%g Ah in %g s, the log has %g Ah in %g s", got, seconds, ah, (rows-1)/2.0)
	}
	if len(pattern) > 10_000 {
		t.Errorf("%d pieces", len(pattern))
	}
}

// A million rows keep their charge, and each change of current its moment.
func TestAPatternOfAMillionRows(t *testing.T) {
	const rows, everyS = 1_000_000, 0.005
	for _, c := range []struct {
		name    string
		on, of  int // rows with a current, of so many
		sampled bool
	}{
		{"driving and pausing", 5000, 7000, false},
		{"on and off at each row", 1, 2, true},
	} {
		t.Run(c.name, func(t *testing.T) {
			t.Parallel()
			b := []byte("time_s,current_a\n")
			ah := 0.0
			for k := range rows {
				amps := 0.0
				if k%c.of < c.on {
					amps = 6
				}
				b = strconv.AppendFloat(b, everyS*float64(k), 'f', 3, 64)
				b = append(b, ',')
				b = strconv.AppendFloat(b, amps, 'f', 0, 64)
				b = append(b, '\n')
				if k < rows-1 {
					ah += amps * everyS / 3600
				}
			}
			p, err := benchOf(t, string(b))
			if err != nil {
				t.Fatal(err)
			}
			var at, got, longest float64
			ends := map[int]bool{} // by row
			for _, d := range p.Bench.Pattern {
				at, got, longest = at+d.Seconds, got+d.CurrentA*d.Seconds/3600, max(longest, d.Seconds)
				ends[int(math.Round(at/everyS))] = true
			}
			if math.Abs(got/ah-1) > 1e-6 || math.Abs(at-everyS*(rows-1)) > 1e-6 {
				t.Errorf("%g Ah in %g s, the file has %g Ah in %g s", got, at, ah, everyS*(rows-1))
			}
			if n := len(p.Bench.Pattern); n > 8000 || longest > 50 {
				t.Errorf("%d pieces, of which the longest takes %g s", n, longest)
			}
			for k := c.of; k < rows && !c.sampled; k += c.of {
				if !ends[k] || !ends[k-c.of+c.on] {
					t.Errorf("no piece ends at row %d or %d, where the current changes", k-c.of+c.on, k)
				}
			}
			if told := strings.Contains(strings.Join(p.Notes, " "), "changes more often than is followed"); told != c.sampled {
				t.Errorf("told that its changes are samples: %v, want %v (%q)", told, c.sampled, p.Notes)
			}
		})
	}
}
