package quantity_test

import (
	"errors"
	"strings"
	"testing"

	"example.org/packcheck/internal/quantity"
)

// FuzzParse holds Parse to its promises for any text: no panic, and either an
// *Error that fits on a line or a range in order, inside the bounds, that prints.
func FuzzParse(f *testing.F) {
	for _, s := range []string{
		"7 Ah", "1000Ma", "12 ga", "1/0", `5' 6"`, "29,5 kg", "1.000,5 kg", "20 to 26 kg, likely 22", "about 20 kg",
		"1h30", "1:30 h", "-5--3 C", "9\u00bd in", "80 m\u03a9", "1e-6 kg m2", "1500 rpm/V", "1 in 20", "0/0", "1/0 in",
		"15 000 rpm", "NaN", "1e999 V", "#", "--", "2 2 2", "..", "\"", "%", "1e", "1 1/0 in", "0 rpm/V",
	} {
		for k := range 25 {
			f.Add(k, s)
		}
	}
	f.Fuzz(func(t *testing.T, k int, text string) {
		kind := quantity.Kind(k)
		r, written, err := quantity.Parse(kind, text)
		if err != nil {
			var qe *quantity.Error
			if !errors.As(err, &qe) || qe.Want == "" || strings.Contains(err.Error(), "\n") || len(err.Error()) > 1000 {
				t.Fatalf("Parse(%v, %q): bad error %v", kind, text, err)
			}
			return
		}
		low, high := kind.Bounds()
		if !r.Valid() || r.Low < low || r.High > high {
			t.Fatalf("Parse(%v, %q) = %v, outside %g to %g", kind, text, r, low, high)
		}
		if quantity.FormatRange(kind, r, written.System) == "" {
			t.Fatalf("%v %v prints as nothing", kind, r)
		}
	})
}

func BenchmarkParse(b *testing.B) {
	b.ReportAllocs()
	for b.Loop() {
		if _, _, err := quantity.Parse(quantity.Mass, "20 to 26 kg"); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkFormatBoth(b *testing.B) {
	b.ReportAllocs()
	for b.Loop() {
		quantity.FormatBoth(quantity.Mass, 23.4, quantity.Metric)
	}
}
