package ask_test

import (
	"math"
	"testing"

	"example.org/packcheck/ask"
)

// Makers' sheets of blocks that no profile and no member was fitted to: hours at a
// current, new, 25 degC. 12 V 40 Ah (40, 37.2, 34 and 24 Ah at 20, 10, 5 and 1 h),
// 12 V 65 Ah (65, 60, 48.6, 46.8, 39 and 32.5 Ah at 20, 10, 3, 1.5, 1 and 0.5 h),
// 12 V 4 Ah (30 min at 4.1 A to 9.6 V; columns inferred). Of eleven truths at
// least eight must lie in the range of eight of ten, and none far outside.
func TestSheetsOfBlocksThatNothingWasFittedToLieInTheRange(t *testing.T) {
	inside, all := 0, 0
	for _, s := range []struct {
		label  string
		untilV float64
		rates  [][2]float64 // A, h
	}{
		{"12 V 40 Ah", 10.5, [][2]float64{{2, 20}, {3.72, 10}, {6.8, 5}, {24, 1}}},
		{"12 V 65 Ah", 10.5, [][2]float64{{3.25, 20}, {6, 10}, {16.2, 3}, {31.2, 1.5}, {39, 1}, {65, 0.5}}},
		{"12 V 4 Ah", 9.6, [][2]float64{{4.1, 0.5}}},
	} {
		for _, r := range s.rates {
			warm := 25.0
			a, err := ask.Runtime{Battery: ask.Battery{Label: s.label, Chemistry: "agm", Age: "new"}, CurrentA: r[0], UntilV: s.untilV, TempC: &warm}.Answer()
			if err != nil {
				t.Fatal(err)
			}
			f := a.Figure()
			all++
			if minutes := 60 * r[1]; minutes >= f.Low && minutes <= f.High {
				inside++
			} else if t.Logf("%s at %g A: %.0f min (%.0f to %.0f), the sheet says %.0f", s.label, r[0], f.Value, f.Low, f.High, minutes); minutes < 0.8*f.Low || minutes > 1.25*f.High {
				t.Errorf("%s at %g A: %.0f to %.0f min, the sheet says %.0f", s.label, r[0], f.Low, f.High, minutes)
			}
		}
	}
	if inside < 8 || all != 11 {
		t.Errorf("%d of %d lie in the range", inside, all)
	}
}

// The specification of a power cell that no member was fitted to (INR18650-25R, copy):
// 2.5 Ah at 0.2C and at least 2.45 Ah at 10 A, both to 2.5 V at 25 degC. The range must
// hold both, and what is likely lie within 5 %.
func TestTheSheetOfACellThatNothingWasFittedToLiesInTheRange(t *testing.T) {
	warm := 25.0
	for _, r := range [][2]float64{{0.5, 2.5}, {10, 2.45}} {
		a, err := ask.Runtime{Battery: ask.Battery{Label: "3.6 V 2.5 Ah", Chemistry: "li-ion", Age: "new", Maker: "own"}, CurrentA: r[0], UntilV: 2.5, TempC: &warm}.Answer()
		if err != nil {
			t.Fatal(err)
		}
		f, minutes := a.Figure(), r[1]/r[0]*60
		if minutes < f.Low || minutes > f.High || math.Abs(f.Value/minutes-1) > 0.05 {
			t.Errorf("at %g A: %.1f to %.1f, likely %.1f min; the sheet says %.1f", r[0], f.Low, f.High, f.Value, minutes)
		}
	}
}
