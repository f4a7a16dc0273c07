package drive_test

import (
	"testing"

	"example.org/packcheck/drive"
)

// The mean over one long step is the mean of a thousand short ones.
func TestTheMeanWindingTemperatureIsThatOfManyShortSteps(t *testing.T) {
	m := drive.ThermalFromTimes(drive.ThermalTimes{WindingToAirKPerW: 6, WindingShare: 0.3, WindingTauS: 25, CaseTauS: 600})
	for _, dtS := range []float64{0.1, 10, 300} {
		const n, copperW, otherW, ambientC = 1000, 12, 3, 15
		start := drive.HeatState{WindingC: 90, CaseC: 40}
		long, short := m.Over(dtS), m.Over(dtS/n)
		s, sum := start, 0.0
		for range n {
			before := s.WindingC
			short.Advance(&s, copperW, otherW, ambientC)
			sum += (before + s.WindingC) / 2 / n
		}
		near(t, "mean", long.MeanC(&start, copperW, otherW, ambientC), sum, 1e-4)
	}
}
