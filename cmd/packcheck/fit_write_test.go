package main

import (
	"bytes"
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"example.org/packcheck/chemistry"
	"example.org/packcheck/internal/cellfit"
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

// A battery with a faulty cell is no cell at all: the report says so at its top,
// and there is nothing to write.
func TestNoCellIsSaidAndNotWritten(t *testing.T) {
	var log strings.Builder
	log.WriteString("time_s,voltage_v,current_a\n0,12.85,2\n")
	for k := 1; k < 60; k++ {
		volts := 12.6 - 0.01*float64(k)
		if k%20 > 10 {
			volts -= 1.5
		}
		fmt.Fprintf(&log, "%d,%.3f,2\n", 300*k, volts)
	}
	file := filepath.Join(t.TempDir(), "mine.toml")
	var out, errs strings.Builder
	code := run([]string{"fit", "-", "--label", "12 V 7 Ah", "--chemistry", "agm", "--write-chemistry", file}, strings.NewReader(log.String()), &out, &errs)
	_, reason, found := strings.Cut(strings.TrimSpace(errs.String()), "no cell could be fitted: ")
	if _, err := os.Stat(file); code != exitOther || err == nil || !found || !strings.HasPrefix(reason, "the best one is ") || out.Len() > 0 {
		t.Errorf("code %d, file %v, %s", code, err, errs.String())
	}
	// Package cellfit holds that such a log leaves no resistance either.
	p, _ := chemistry.Builtin().Profile("agm")
	f := fitted{known: &known{profile: p, cells: 6}, Result: cellfit.Result{NoCell: reason, Options: cellfit.FitOptions{Chemistry: p, CellsInSeries: 6, LabelAh: 7}}}
	f.text(&out)
	if top, _, _ := strings.Cut(out.String(), "\n\n"); !strings.Contains(top, "NO CELL COULD BE FITTED: the best one is ") || !strings.Contains(top, "Resistance: not known") {
		t.Errorf("the report begins\n%s", top)
	}
}
