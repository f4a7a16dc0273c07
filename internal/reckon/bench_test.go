package reckon_test

import (
	"testing"

	"example.org/packcheck/internal/reckon"
	"example.org/packcheck/setup"
)

// A report is as many runs of the engine as it has draws, and a quarter as many
// judgements.
func BenchmarkAssess(b *testing.B) {
	for _, name := range []string{"tractor-tool-pack", "tractor-done-properly", "two-seater-tired-blocks"} {
		b.Run(name, func(b *testing.B) {
			s, err := setup.Load("../../examples/" + name + ".toml")
			if err != nil {
				b.Fatal(err)
			}
			b.ReportAllocs()
			for b.Loop() {
				if _, err := reckon.Assess(s, reckon.Options{}); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}
