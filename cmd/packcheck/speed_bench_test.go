package main

import (
	"bytes"
	"fmt"
	"math"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"
	"time"
)

// printed counts what a command prints.
type printed int

func (n *printed) Write(p []byte) (int, error) { *n += printed(len(p)); return len(p), nil }

// used is the processor time of a command, in ms, and the most memory that it held, in
// MB; NaN where the system does not tell. What it says of a process that has ended holds
// that of whoever started it, too, so it is asked while the command runs.
func used(b *testing.B, name string, in []byte, args ...string) (cpuMS, heldMB float64) {
	b.Helper()
	cmd, out := exec.Command(name, args...), new(printed)
	cmd.Stdin, cmd.Stdout = bytes.NewReader(in), out
	if err := cmd.Start(); err != nil {
		b.Fatal(err)
	}
	ended := make(chan struct{})
	held := make(chan float64)
	go func() {
		most := math.NaN()
		for {
			if kB := highestKB(cmd.Process.Pid); kB > 0 {
				most = kB / 1024
			}
			select {
			case <-ended:
				held <- most
				return
			case <-time.After(5 * time.Millisecond):
			}
		}
	}()
	_ = cmd.Wait() // of a danger the code is no success
	close(ended)
	if *out == 0 {
		b.Fatalf("%v printed nothing", args)
	}
	return float64((cmd.ProcessState.UserTime() + cmd.ProcessState.SystemTime()).Microseconds()) / 1e3, <-held
}

// highestKB is the most memory that a running process has held so far, as Linux tells it.
func highestKB(pid int) float64 {
	text, err := os.ReadFile(fmt.Sprintf("/proc/%d/status", pid))
	if err != nil {
		return 0
	}
	_, rest, _ := strings.Cut(string(text), "VmHWM:")
	var kB float64
	_, _ = fmt.Sscan(rest, &kB)
	return kB
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
				if total += ms; mb > most {
					most = mb
				}
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
	for _, n := range []int{300, 3000} {
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
