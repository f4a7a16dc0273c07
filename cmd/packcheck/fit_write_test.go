package main

import (
	"bytes"
	"strings"
	"testing"

	"example.org/packcheck/cellfit"
	"example.org/packcheck/chemistry"
)

// What packcheck would refuse to read, it does not write.
func TestACellThatWouldNotLoadIsNotWritten(t *testing.T) {
	p, _ := chemistry.Builtin().Profile("agm")
	for _, c := range []struct {
		name  string
		spoil func(p *chemistry.Profile)
		says  string
	}{
		{"as it is", func(*chemistry.Profile) {}, ""},
		{"far from any label", func(p *chemistry.Profile) { p.Capacity.Ratio = 0.04 }, "ratio"},
		{"cells of seven volts", func(p *chemistry.Profile) {
			p.Rest.VoltsAt = chemistry.Curve{X: []float64{0, 1}, Y: []float64{6.8, 6.9}}
		}, "volts"},
	} {
		mine := p
		c.spoil(&mine)
		f := fitted{known: &known{set: chemistry.Builtin()}, targets: targets{name: "mine", cellsFile: "mine.toml"}, Result: cellfit.Result{
			Options: cellfit.FitOptions{Chemistry: p, CellsInSeries: 6, LabelAh: 7}, RatedAh: 7, CellKnown: true,
			FullAh: cellfit.Estimate{Value: 7, Known: true}, Cell: cellfit.CellFit{Profile: mine},
		}}
		var out bytes.Buffer
		switch err := f.writeCell(&out); {
		case c.says == "" && err != nil:
			t.Errorf("%s: %v", c.name, err)
		case c.says != "" && (err == nil || !strings.Contains(err.Error(), c.says) || out.Len() > 0):
			t.Errorf("%s: %v, %d bytes written; want none and a word about %s", c.name, err, out.Len(), c.says)
		}
	}
}
