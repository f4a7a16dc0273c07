package report_test

import (
	"io"
	"testing"

	"example.org/packcheck/report"
)

func BenchmarkWrite(b *testing.B) {
	a := danger()
	for _, format := range report.Formats() {
		b.Run(string(format), func(b *testing.B) {
			for b.Loop() {
				if err := report.Write(io.Discard, a, report.Options{Format: format, Full: true}); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}
