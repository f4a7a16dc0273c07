package main

import (
	"os/exec"
	"path/filepath"
	"strings"
	"testing"
	"time"
)

// labelsOnly is a setup of labels alone.
const labelsOnly = `
[rider]
mass = "20 kg"
[vehicle]
design_voltage = "12 V"
ground = "short grass"
[motors]
count = 2
can = "550"
[pack]
chemistry = "agm"
label = "12 V 7 Ah"
`

// The whole process, from its start to the printed report. Besides the time by
// the clock it gives the processor's, user and system together.
func BenchmarkProcess(b *testing.B) {
	binary := filepath.Join(b.TempDir(), "packcheck")
	if out, err := exec.Command("go", "build", "-o", binary, ".").CombinedOutput(); err != nil {
		b.Fatalf("%v: %s", err, out)
	}
	var cpu time.Duration
	for b.Loop() {
		cmd := exec.Command(binary, "-")
		cmd.Stdin = strings.NewReader(labelsOnly)
		out, err := cmd.Output()
		if len(out) == 0 {
			b.Fatalf("no report: %v", err)
		}
		cpu += cmd.ProcessState.UserTime() + cmd.ProcessState.SystemTime()
	}
	b.ReportMetric(float64(cpu.Microseconds())/1000/float64(b.N), "cpu-ms/op")
}
