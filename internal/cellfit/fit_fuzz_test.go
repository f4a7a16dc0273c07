package cellfit_test

import (
	"io"
	"math"
	"strings"
	"testing"

	"example.org/packcheck/internal/cellfit"
)

// Whatever a file holds, a fit ends with an error or with figures that are
// numbers. A log whose capacity nobody knows gets no fitted cell, which is what
// takes time; most of the tries are of that kind.
func FuzzFit(f *testing.F) {
	f.Add("time_s,voltage_v,current_a\n0,20.9,0\n60,20.9,0\n61,20.1,8\n900,18.0,8\n1800,14.9,8\n1801,16,0\n1900,16.5,0\n", false, false)
	f.Add("time_s,voltage_v,current_a\n0,20.1,8\n900,18.0,-8\n1800,14.9,8\n1801,16,0\n", true, false)
	f.Add("s,V,A\n0,18,1\n1,18,1\n2,18,1\n", false, false)
	f.Add("s,V,A\n0,20,0\n1e9,14,1e-9\n2e9,20,4000\n2000000001,0.5,0\n", true, false)
	f.Fuzz(func(t *testing.T, text string, full, labelled bool) {
		if len(text) > 4000 {
			return
		}
		l, err := cellfit.Read(strings.NewReader(text), cellfit.Options{})
		if err != nil {
			return
		}
		o := cellfit.FitOptions{Chemistry: profile(t, "li-ion"), CellsInSeries: 5, BeganFull: full}
		if labelled {
			o.LabelAh = 5
		}
		r, err := cellfit.Fit([]*cellfit.Log{l}, o)
		if err != nil {
			return
		}
		all := []cellfit.Estimate{r.CapacityAh, r.FullAh, r.Health, r.Peukert, r.MidOhm}
		for _, o := range r.Ohms {
			all = append(all, o.Ohm)
		}
		for _, e := range all {
			if e.Known && (math.IsNaN(e.Value) || math.IsInf(e.Value, 0) || !(e.Sigma >= 0) || math.IsInf(e.Sigma, 0)) {
				t.Errorf("%+v\n%q", e, text)
			}
		}
		if err := r.WritePack(io.Discard); err != nil {
			t.Error(err)
		}
		if r.CellKnown {
			if err := r.WriteChemistry(io.Discard, "any"); err != nil {
				t.Error(err)
			}
		}
	})
}
