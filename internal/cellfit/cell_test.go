package cellfit_test

import (
	"math"
	"testing"

	"example.org/packcheck/battery"
	"example.org/packcheck/chemistry"
	"example.org/packcheck/internal/cellfit"
)

// arrhenius is the factor on resistance over temperature.
func arrhenius(kiloJ float64) chemistry.Curve {
	c := chemistry.Curve{}
	for tempC := -20.0; tempC <= 60; tempC += 5 {
		c.X = append(c.X, tempC)
		c.Y = append(c.Y, math.Exp(kiloJ/8.314462618e-3*(1/(tempC+273.15)-1/298.15)))
	}
	return c
}

// logged runs a model from a charge at constant currents, each for so many
// seconds, and logs it.
func logged(m *battery.Model, charge, tempC, everyS float64, pieces ...[2]float64) *cellfit.Log {
	s, step := m.StateAt(charge, tempC), m.Over(everyS)
	l := &cellfit.Log{Name: "made up"}
	t, ah := 0.0, 0.0
	add := func(amps float64) {
		l.TimeS, l.Volts, l.Amps = append(l.TimeS, t), append(l.Volts, m.TerminalV(&s, amps)), append(l.Amps, amps)
		l.ChargeAh, l.TempC = append(l.ChargeAh, ah), append(l.TempC, tempC)
	}
	add(0)
	for _, piece := range pieces {
		for k := 0; k < int(math.Round(piece[1]/everyS)); k++ {
			s.TempC = tempC
			step.Advance(&s, piece[0], tempC)
			t, ah = t+everyS, ah+piece[0]*everyS/3600
			add(piece[0])
		}
	}
	return l
}

// A cell whose resistance gives way to the current in the cold is pulsed warm
// and cold and discharged twice; the fit must find how it bends and how that
// depends on temperature, and then follow every log.
func TestFitCellFindsHowACellBendsInTheCold(t *testing.T) {
	t.Parallel()
	truth := profile(t, "li-ion")
	truth.Capacity.TempFactor = chemistry.Flat(1)
	truth.Resistance.TempFactor, truth.Slow.TempFactor = arrhenius(16), arrhenius(16)
	truth.Fast = chemistry.Branch{
		OhmAh: chemistry.Curve{X: []float64{0, 0.1, 0.5, 1}, Y: []float64{0.1, 0.04, 0.012, 0.03}}, TauS: 0.8, KneeV: 0.20, TempFactor: arrhenius(50),
	}
	m, err := battery.New(battery.Spec{Profile: truth, CellsInSeries: 1, CapacityAh: 3})
	if err != nil {
		t.Fatal(err)
	}
	logs := []*cellfit.Log{
		logged(m, 1, 25, 20, [2]float64{0.6, 17400}, [2]float64{0, 600}),
		logged(m, 1, 25, 5, [2]float64{3, 3300}, [2]float64{0, 600}),
	}
	weights := []float64{1, 1}
	for _, tempC := range []float64{25, 0} {
		for _, charge := range []float64{0.2, 0.35, 0.5, 0.65, 0.8, 0.95} {
			for _, amps := range []float64{1.5, 6, 15} {
				logs, weights = append(logs, logged(m, charge, tempC, 1, [2]float64{amps, 10})), append(weights, 1./18)
			}
		}
	}
	fit, err := cellfit.FitCell(logs, cellfit.CellOptions{
		Base: profile(t, "li-ion"), CapacityAh: 3, CellsInSeries: 1, FitKiloJ: true, FastKiloJ: 55, Weights: weights,
	})
	if err != nil {
		t.Fatal(err)
	}
	for _, x := range []struct {
		what              string
		got, want, within float64
	}{
		{"activation energy of the resistance", fit.KiloJ, 16, 2},
		{"activation energy of charge transfer", fit.FastKiloJ, 50, 4},
		{"knee", fit.Profile.Fast.KneeV, 0.20, 0.03},
		{"full charge", fit.FullAh, 3, 0.02},
		{"resistance at half charge", fit.Profile.Resistance.OhmAh.At(0.5), truth.Resistance.OhmAh.At(0.5), 0.003},
	} {
		if math.Abs(x.got-x.want) > x.within {
			t.Errorf("%s: %.4g, is %.4g", x.what, x.got, x.want)
		}
	}
	for i, rms := range fit.RMSV {
		if rms > 0.006 {
			t.Errorf("log %d is followed within %.1f mV only", i, 1000*rms)
		}
	}
}

// The same logs give the same cell, whatever the number of processors.
func TestFitCellIsDeterministic(t *testing.T) {
	t.Parallel()
	m, err := battery.New(battery.Spec{Profile: profile(t, "li-ion"), CellsInSeries: 1, CapacityAh: 3})
	if err != nil {
		t.Fatal(err)
	}
	log := logged(m, 1, 25, 20, [2]float64{1.5, 7000})
	fit := func() cellfit.CellFit {
		f, err := cellfit.FitCell([]*cellfit.Log{log}, cellfit.CellOptions{Base: profile(t, "li-ion"), CapacityAh: 3, CellsInSeries: 1, Searches: 1})
		if err != nil {
			t.Fatal(err)
		}
		return f
	}
	a, b := fit(), fit()
	if a.FullAh != b.FullAh || a.Profile.Resistance.OhmAh.At(0.4) != b.Profile.Resistance.OhmAh.At(0.4) || a.FullAhSigma != b.FullAhSigma {
		t.Errorf("%v Ah, then %v Ah", a.FullAh, b.FullAh)
	}
}
