package tables_test

import (
	"strings"
	"testing"

	"example.org/packcheck/tables"
)

func BenchmarkLookUps(b *testing.B) {
	t := tables.Builtin()
	b.ReportAllocs()
	for b.Loop() {
		w, err := t.Wire(tables.WireSize{System: tables.AWG, Gauge: 14})
		if err != nil {
			b.Fatal(err)
		}
		if _, err := t.Ampacity(tables.AmpacityQuery{Wire: w, InsulationC: 105}); err != nil {
			b.Fatal(err)
		}
		if _, err := t.Ground("short grass"); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkExtend(b *testing.B) {
	b.ReportAllocs()
	for b.Loop() {
		if _, err := tables.Builtin().Extend(strings.NewReader(lawn), "lawn.toml"); err != nil {
			b.Fatal(err)
		}
	}
}
