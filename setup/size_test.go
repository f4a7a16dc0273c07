package setup_test

import (
	"math"
	"strings"
	"testing"

	"example.org/packcheck/setup"
)

func TestASizeIsReadAsPeopleWriteIt(t *testing.T) {
	t.Parallel()
	for _, c := range []struct {
		text string
		mm   [3]float64 // zero: refused
	}{
		{"151 x 65 x 94 mm", [3]float64{151, 65, 94}},
		{"151x65x94mm", [3]float64{151, 65, 94}},
		{"151mm × 65mm × 94mm", [3]float64{151, 65, 94}},
		{"15.1 by 6.5 by 9.4 cm", [3]float64{151, 65, 94}},
		{"5 X 2 * 4 in", [3]float64{127, 50.8, 101.6}},
		{"15 cm x 65 mm x 94 mm", [3]float64{150, 65, 94}},
		{"151 x 65 mm", [3]float64{}},
		{"151 x 65 x 94", [3]float64{}},
		{"151 x 65 x 94 kg", [3]float64{}},
		{"151 x 65 x 3000 mm", [3]float64{}},
		{"151 x 65 x -94 mm", [3]float64{}},
		{"large", [3]float64{}},
	} {
		s, err := setup.Of(map[string]string{"pack.label": "12 V 7 Ah", "pack.size": c.text})
		if refused := c.mm == [3]float64{}; refused != (err != nil) {
			t.Errorf("%q: %v", c.text, err)
			continue
		}
		if err != nil {
			if !strings.Contains(err.Error(), "length x width x height") {
				t.Errorf("%q: what would be right is not said: %v", c.text, err)
			}
			continue
		}
		got, _ := s.Pack.Size.Edges()
		for i := range got {
			if math.Abs(1e3*got[i]-c.mm[i]) > 1e-6 {
				t.Errorf("%q: edge %d is %g mm, want %g", c.text, i, 1e3*got[i], c.mm[i])
			}
		}
	}
}
