package battery

import (
	"bytes"
	"encoding/binary"
	"fmt"
	"math"
	"os"
	"os/exec"
	"path/filepath"
	"testing"
	"time"

	"example.org/packcheck/chemistry"
)

// BenchmarkStepAgainstC runs the same steps by a C loop of the same arithmetic
// (testdata/cell.c, gcc -O2) and prints what a step costs over what it costs
// there, each the best of two hundred short runs. Where the pack ends must be the same, or
// the arithmetic is not. It is inside the package because it hands the tables
// over.
func BenchmarkStepAgainstC(b *testing.B) {
	gcc, err := exec.LookPath("gcc")
	if err != nil {
		b.Skip("gcc is not installed: would have timed a C loop of the same arithmetic")
	}
	dir := b.TempDir()
	program := filepath.Join(dir, "cell")
	if out, err := exec.Command(gcc, "-O2", "-ffp-contract=off", "-o", program, "testdata/cell.c", "-lm").CombinedOutput(); err != nil {
		b.Fatalf("gcc: %v\n%s", err, out)
	}
	for _, name := range []string{"agm", "li-ion"} {
		b.Run(name, func(b *testing.B) {
			p, _ := chemistry.Builtin().Profile(name)
			m, err := New(Spec{Profile: p, CellsInSeries: 5, CapacityAh: 4})
			if err != nil {
				b.Fatal(err)
			}
			const steps, amps, ambientC = 20_000, 0.4, 20.0
			step, begin := m.Over(1), m.StateAt(1, ambientC)
			end, ours := begin, math.Inf(1)
			for b.Loop() {
				for range 200 {
					end = begin
					began := time.Now()
					for range steps {
						step.Advance(&end, amps, ambientC)
					}
					ours = min(ours, float64(time.Since(began).Nanoseconds())/steps)
				}
			}
			tables := filepath.Join(dir, name)
			if err := os.WriteFile(tables, forC(&step, &begin, amps, ambientC), 0o600); err != nil {
				b.Fatal(err)
			}
			out, err := exec.Command(program, tables, fmt.Sprint(steps)).Output()
			if err != nil {
				b.Fatal(err)
			}
			var theirs float64
			var s State
			if _, err := fmt.Sscan(string(out), &theirs, &s.Y1Ah, &s.Y2Ah, &s.V1, &s.V2, &s.TempC); err != nil {
				b.Fatal(err)
			}
			if math.Abs(s.Y1Ah-end.Y1Ah) > 1e-9 || math.Abs(s.V2-end.V2) > 1e-9 || math.Abs(s.TempC-end.TempC) > 1e-9 {
				b.Errorf("ends at %+v, in C at %+v", end, s)
			}
			b.ReportMetric(ours, "ns/step")
			b.ReportMetric(ours/theirs, "cost-over-C")
			b.ReportMetric(0, "ns/op")
		})
	}
}

// forC writes what testdata/cell.c reads.
func forC(p *Step, begin *State, amps, ambientC float64) []byte {
	m := p.m
	truth := func(yes bool) float64 {
		if yes {
			return 1
		}
		return 0
	}
	var out bytes.Buffer
	write := func(x ...float64) {
		if err := binary.Write(&out, binary.LittleEndian, x); err != nil {
			panic(err) // a buffer takes everything
		}
	}
	write(m.cells, m.ohms, m.wells.C, m.most1Ah, m.most2Ah, m.headOf, m.fillOf, m.knee1V, m.knee2V,
		p.hours, p.keep, p.mix, p.use, p.fast, p.slow, p.fastM, p.slowM, p.warm, p.perWatt,
		truth(p.bound), truth(m.straight))
	for _, r := range m.cell.byCharge {
		for _, v := range []chargeValues{r.at, r.over} {
			write(v.volts, v.ohm0, v.ohm1, v.ohm2)
		}
	}
	for _, t := range m.cell.byTemp {
		for _, w := range []tempRow{t.at, t.over} {
			write(w.ohm, w.ohm1, w.ohm2, w.knee, w.lost, w.inv)
		}
	}
	write(begin.Y1Ah, begin.Y2Ah, begin.V1, begin.V2, begin.TempC, amps, ambientC)
	return out.Bytes()
}
