package reckon_test

import (
	"syscall"
	"testing"
	"time"

	"example.org/packcheck/internal/reckon"
	"example.org/packcheck/setup"
)

// examples are the setups that are measured.
func examples() []string {
	return []string{"tractor-tool-pack", "tractor-done-properly", "two-seater-tired-blocks"}
}

func example(b *testing.B, name string) *setup.Setup {
	b.Helper()
	s, err := setup.Load("../../examples/" + name + ".toml")
	if err != nil {
		b.Fatal(err)
	}
	return s
}

// A report is as many runs of the engine as it has draws, and a quarter as many
// judgements.
func BenchmarkAssess(b *testing.B) {
	for _, name := range examples() {
		b.Run(name, func(b *testing.B) {
			s := example(b, name)
			b.ReportAllocs()
			for b.Loop() {
				if _, err := reckon.Assess(s, reckon.Options{}); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}

// cpuTime is the processor time that the process has used.
func cpuTime(b *testing.B) time.Duration {
	b.Helper()
	var u syscall.Rusage
	if err := syscall.Getrusage(syscall.RUSAGE_SELF, &u); err != nil {
		b.Fatal(err)
	}
	return time.Duration(u.Utime.Nano() + u.Stime.Nano())
}

// An answer as a multiple of its rides alone, in processor time, on one core, in
// turn: what drawing, judging and counting cost on top.
func BenchmarkAnswerOverItsRides(b *testing.B) {
	for _, name := range examples() {
		b.Run(name, func(b *testing.B) {
			s, o := example(b, name), reckon.Options{Workers: 1}
			runs, err := reckon.RunsOf(s, o)
			if err != nil {
				b.Fatal(err)
			}
			var whole, rides time.Duration
			for b.Loop() {
				start := cpuTime(b)
				if _, err := reckon.Assess(s, o); err != nil {
					b.Fatal(err)
				}
				middle := cpuTime(b)
				if err := runs.Again(); err != nil {
					b.Fatal(err)
				}
				whole, rides = whole+middle-start, rides+cpuTime(b)-middle
			}
			b.ReportMetric(float64(whole)/float64(rides), "of-its-rides")
			b.ReportMetric(float64(rides.Microseconds())/1000/float64(b.N), "rides-cpu-ms")
		})
	}
}
