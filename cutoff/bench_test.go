package cutoff_test

import (
	"testing"

	"example.org/packcheck/cutoff"
)

// What following, idling and advising cost for a case like those of the
// examples: a tool pack with a module, a lead-acid block without anything, a
// tired pair whose cutoff closes again.
func BenchmarkCases(b *testing.B) {
	tool := cutoff.Case{Pack: pack(b, "li-ion", 5, 5, nil), LoadA: 8, AmbientC: 18, PathOhm: 0.03}
	lead := cutoff.Case{Pack: pack(b, "agm", 6, 7, nil), LoadA: 7, AmbientC: 20, PathOhm: 0.03}
	tired := cutoff.Case{Pack: pack(b, "agm", 12, 7, nil), LoadA: 9, AmbientC: 20, PathOhm: 0.03}
	var err error
	if tool.Chain, err = cutoff.NewChain(cutoff.Device{Where: cutoff.Module, OpensAtV: 16.5, DelayS: 2}); err != nil {
		b.Fatal(err)
	}
	if tired.Chain, err = cutoff.NewChain(cutoff.Device{Where: cutoff.Controller, OpensAtV: 21, DelayS: 3, ClosesAtV: 24}); err != nil {
		b.Fatal(err)
	}
	for _, c := range []struct {
		name string
		cutoff.Case
	}{{"tool pack", tool}, {"lead-acid", lead}, {"chatters", tired}} {
		c.Start = c.Pack.StateAt(1, c.AmbientC)
		b.Run(c.name+"/follow", func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				if _, err := cutoff.Follow(c.Case); err != nil {
					b.Fatal(err)
				}
			}
		})
		b.Run(c.name+"/idle", func(b *testing.B) {
			b.ReportAllocs()
			s := cutoff.Standing{Pack: c.Pack, Start: c.Pack.StateAt(0.1, 20), Chain: c.Chain, StandbyA: 0.01, AmbientC: 20}
			for b.Loop() {
				if _, err := cutoff.Idle(s); err != nil {
					b.Fatal(err)
				}
			}
		})
		b.Run(c.name+"/advise", func(b *testing.B) {
			b.ReportAllocs()
			w := cutoff.Wish{Case: c.Case, Sag: exponentialSag(0.9*c.Pack.EmptyV(), 2, 1)}
			for b.Loop() {
				if _, err := cutoff.Advise(w); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}
