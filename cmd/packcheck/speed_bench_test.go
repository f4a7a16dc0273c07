package main

import (
	"bytes"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"syscall"
	"testing"
)

// used is the processor time of a command, in ms, and the most memory that it held, in MB.
func used(b *testing.B, name string, in []byte, args ...string) (cpuMS, heldMB float64) {
	b.Helper()
	cmd := exec.Command(name, args...)
	cmd.Stdin = bytes.NewReader(in)
	out, _ := cmd.Output() // of a danger the code is no success
	usage, ok := cmd.ProcessState.SysUsage().(*syscall.Rusage)
	if len(out) == 0 || !ok {
		b.Fatalf("%v printed nothing", args)
	}
	return float64((cmd.ProcessState.UserTime() + cmd.ProcessState.SystemTime()).Microseconds()) / 1e3, float64(usage.Maxrss) / 1024
}

// What whole processes take: reports as multiples of a start, many draws, many
// setups and long logs with the memory that they hold, few and many. With
// PACKCHECK_SPEED=1 alone: it takes a minute or two.
func BenchmarkWholeProcesses(b *testing.B) {
	if os.Getenv("PACKCHECK_SPEED") == "" {
		b.Skip("PACKCHECK_SPEED=1 would have measured whole processes")
	}
	binary := compiled(b, filepath.Join(b.TempDir(), "packcheck"), ".")
	start := 1e9
	for range 20 {
		ms, _ := used(b, binary, nil, "--version")
		start = min(start, ms)
	}
	measured := func(name string, in []byte, args ...string) {
		b.Run(name, func(b *testing.B) {
			total, most := 0.0, 0.0
			for b.Loop() {
				ms, mb := used(b, binary, in, args...)
				total, most = total+ms, max(most, mb)
			}
			b.ReportMetric(total/float64(b.N), "cpu-ms")
			b.ReportMetric(total/float64(b.N)/start, "of-start")
			b.ReportMetric(most, "MB")
		})
	}
	measured("report/labels", []byte(labelsOnly), "-")
	for _, name := range []string{"tractor-tool-pack", "tractor-done-properly", "two-seater-tired-blocks"} {
		measured("report/"+name, nil, filepath.Join("..", "..", "examples", name+".toml"))
	}
	measured("draws-20000", []byte(labelsOnly), "-", "--draws", "20000")
	for _, n := range []int{1000, 10000} {
		var lines bytes.Buffer
		for i := range n {
			fmt.Fprintf(&lines, benchLine, i)
		}
		measured(fmt.Sprintf("batch/%d-lines-of-16-draws", n), lines.Bytes(), "batch", "-", "--draws", "16")
	}
	log := fiftyMegabytes(b)
	for _, part := range []int{2, 1} {
		whole := log[:len(log)/part]
		whole = whole[:bytes.LastIndexByte(whole, '\n')+1]
		measured(fmt.Sprintf("fit/%d-MB", len(whole)/1e6), whole, "fit", "-", "--label", "20 V max 5 Ah")
	}
}
