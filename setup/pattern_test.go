package setup_test

import (
	"fmt"
	"math"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/google/go-cmp/cmp/cmpopts"

	"example.org/packcheck/setup"
)

// patternOf resolves a setup whose load is the given file.
func patternOf(t testing.TB, content string) ([]setup.Demand, error) {
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
	p, err := s.Parts()
	if err != nil {
		return nil, err
	}
	return p.Bench.Pattern, nil
}

// What a logger wrote can be played again, whatever its columns are called. A
// log tells what flowed at its rows, so between two of them flows the mean.
func TestAPatternMayBeALog(t *testing.T) {
	want := []setup.Demand{{Seconds: 2, CurrentA: 0}, {Seconds: 1, CurrentA: 2}, {Seconds: 60, CurrentA: 4}}
	for name, content := range map[string]string{
		"titles and plain units":                        "time_s,voltage_v,current_a\n0,12.6,0\n2,12.6,0\n3,12.3,4\n63,12.2,4\n",
		"other order, milliamperes, discharge negative": "I (mA);t (s);U (mV)\n0;0;12600\n0;2;12600\n-4000;3;12300\n-4000;63;12200\n",
		"decimal commas and clock time":                 "Zeit;Spannung (V);Strom (A)\n10:00:00;12,6;0,0\n10:00:02;12,6;0,0\n10:00:03;12,3;4,0\n10:01:03;12,2;4,0\n",
		"a preamble and one more column":                "Bramble Lane logger\nTime (s)\tVoltage (V)\tCurrent (A)\tTemp (C)\n0\t12.6\t0\t20\n2\t12.6\t0\t20\n3\t12.3\t4\t20\n63\t12.2\t4\t21\n",
	} {
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

func TestAPatternThatIsNoLogSaysWhere(t *testing.T) {
	for _, c := range []struct{ content, want string }{
		{"time_s,voltage_v,current_a\n0,12.6,0\n2,12.6,x\n", `line 3, column 3: "x"; want a number for amps`},
		{"time_s,voltage_v,current_a\n5,12.6,0\n2,12.6,1\n", `line 3, column 1: a time 3.000 s before`},
		{"time_s,temp_c,current_a\n0,20,0\n2,20,1\n", "no column for volts"},
		{"time_s,voltage_v,current_a\n0,12.6,0\n1,12.6,90000\n", "A, at most 5000 A"},
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
