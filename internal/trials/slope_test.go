package trials_test

import (
	"slices"
	"testing"

	"example.org/packcheck/answer"
	"example.org/packcheck/drive"
)

// Who tells how steep it gets does not hear less of how fast it is: the flat and the way
// down are as fast as ever.
func TestASlopeHidesNoSpeed(t *testing.T) {
	t.Parallel()
	on := func(slope string) *answer.Assessment {
		s := sheetOf(t, "../../examples/tractor-tool-pack.toml").with("vehicle.slope", slope)
		return readWith(t, s.toml(), some)
	}
	flat, steep := on(`"0 %"`), on(`"6 %"`)
	if !(steep.Steady.SpeedKmh < flat.Steady.SpeedKmh) {
		t.Fatalf("%.1f km/h uphill, %.1f on the flat", steep.Steady.SpeedKmh, flat.Steady.SpeedKmh)
	}
	for _, code := range []string{drive.CodeFastForARideOn, drive.CodeFasterThanOriginal} {
		of := func(a *answer.Assessment) (f answer.Finding) {
			if i := slices.IndexFunc(a.Findings, func(f answer.Finding) bool { return f.Code == code }); i >= 0 {
				f = a.Findings[i]
			}
			return f
		}
		a, b := of(flat), of(steep)
		if a.Level < answer.Watch || b.Level < a.Level || b.Share < a.Share {
			t.Errorf("%s: %v in %.0f %% of draws on the flat, %v in %.0f %% with a slope", code, a.Level, 100*a.Share, b.Level, 100*b.Share)
		}
	}
}
