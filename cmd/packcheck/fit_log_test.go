package main

import (
	"bytes"
	"fmt"
	"math"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"example.org/packcheck/battery"
	"example.org/packcheck/chemistry"
	"example.org/packcheck/internal/ride"
)

// invented is a battery that nobody ever measured; its log is computed.
type invented struct {
	chemistry string
	cells     int
	labelAh   float64
	health    float64
	ohm       float64 // whole pack, half charged, at 25 degC
	airC      float64
	amps      float64
	untilV    float64
}

// toolPack is the battery of the example log: the worn tool pack of the
// Bramble Lane tractor.
var toolPack = invented{chemistry: "li-ion", cells: 5, labelAh: 5, health: 0.85, ohm: 0.070, airC: 20, amps: 8, untilV: 15}

func (v invented) model(t testing.TB) *battery.Model {
	t.Helper()
	p, ok := chemistry.Builtin().Profile(v.chemistry)
	if !ok {
		t.Fatalf("no chemistry %s", v.chemistry)
	}
	m, err := battery.New(battery.Spec{
		Profile: p, CellsInSeries: v.cells, CapacityAh: v.labelAh, Health: v.health, ResistanceOhm: v.ohm, ClosedShell: true,
	})
	if err != nil {
		t.Fatal(err)
	}
	return m
}

// exampleLog is the log of 25 s of driving and 10 s of pausing in turn, with a
// row just before and just after every switching, rounded as a small logger
// rounds.
func (v invented) exampleLog(t testing.TB) []byte {
	m := v.model(t)
	s := m.StateAt(1, v.airC)
	var b bytes.Buffer
	b.WriteString("# Invented: computed by the tests of cmd/packcheck, nobody measured this.\n")
	b.WriteString("Time (s),Voltage (V),Current (A)\n")
	now := 0.0
	row := func(amps float64) float64 {
		u := m.TerminalV(&s, amps)
		fmt.Fprintf(&b, "%.1f,%.2f,%.2f\n", now, u, amps)
		return u
	}
	move := func(seconds, amps float64) {
		step := m.Over(seconds / 50)
		for range 50 {
			step.Advance(&s, amps, v.airC)
		}
		now += seconds
	}
	row(0)
	move(60, 0)
	for {
		row(0)
		for _, seconds := range []float64{0.2, 4.8, 10, 10} {
			move(seconds, v.amps)
			if row(v.amps) < v.untilV {
				return b.Bytes()
			}
		}
		move(0.2, 0)
		row(0)
		move(9.8, 0)
	}
}

// engineLog has the outing engine discharge the battery, and returns what a
// logger with a row a second would have written, with the cells' temperature or
// without, the charge that came out, and for how many seconds a current flowed.
// A pause comes after every two minutes.
func (v invented) engineLog(t testing.TB, withTemp bool) (log string, ah, seconds float64) {
	t.Helper()
	var pattern []ride.Demand
	for at := range 40 * 3600 {
		d := ride.Demand{Sec: 1}
		if at >= 60 && (at-60)%150 < 120 {
			d.CurrentA = v.amps
		}
		pattern = append(pattern, d)
	}
	c := ride.Case{
		Pack: v.model(t), StartCharge: 1, PackC: v.airC, AmbientC: v.airC, UntilV: v.untilV,
		Load: ride.Load{Kind: ride.CurrentPattern, Pattern: pattern},
	}
	var b strings.Builder
	b.WriteString("time_s\tpack_v\tcurrent_a")
	if withTemp {
		b.WriteString("\ttemperature_c")
	}
	out := ride.Run(&c, func(s ride.Sample) {
		fmt.Fprintf(&b, "\n%.3f\t%.3f\t%.3f", s.ClockS, s.PackV, s.CurrentA)
		if withTemp {
			fmt.Fprintf(&b, "\t%.1f", s.PackC)
		}
	})
	if out.EndedBy != ride.VoltageReached {
		t.Fatalf("the discharge ended by %v", out.EndedBy)
	}
	return b.String(), out.DeliveredAh, out.DeliveredAh / v.amps * 3600
}

// exampleLogFile is kept so that people have something to try.
const exampleLogFile = "testdata/fit/tool-pack-log.csv"

// UPDATE_GOLDEN=1 writes the example log anew.
func TestTheExampleLogIsTheComputedOne(t *testing.T) {
	want := toolPack.exampleLog(t)
	if os.Getenv("UPDATE_GOLDEN") != "" {
		if err := os.WriteFile(filepath.FromSlash(exampleLogFile), want, 0o644); err != nil {
			t.Fatal(err)
		}
	}
	got, err := os.ReadFile(filepath.FromSlash(exampleLogFile))
	if err != nil {
		t.Fatal(err)
	}
	// The model may be made better; the log must not, but it must stay a log
	// of this battery.
	gotRows, wantRows := bytes.Count(got, []byte{'\n'}), bytes.Count(want, []byte{'\n'})
	if math.Abs(float64(gotRows)/float64(wantRows)-1) > 0.05 || !bytes.HasPrefix(got, want[:80]) {
		t.Errorf("the kept log has %d rows, the computed one %d", gotRows, wantRows)
	}
}
