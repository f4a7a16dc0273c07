package cellfit

import (
	"fmt"
	"io"
	"strings"

	"example.org/packcheck/finding"
)

// WritePack writes what was found as a [pack] table for a setup file, figures
// as ranges that hold the true value with about 95 %.
func (r Result) WritePack(w io.Writer) error {
	var b strings.Builder
	line := func(format string, args ...any) { fmt.Fprintf(&b, format+"\n", args...) }
	o := r.Options
	line("[pack]")
	line("chemistry = %s", quoted(o.Chemistry.Name))
	line("cells_in_series = %d", o.CellsInSeries)
	switch {
	case o.LabelAh > 0:
		line("capacity = %s", quoted(digits(o.LabelAh)+" Ah"))
		if r.Health.Known {
			line("health = %s", quoted(healthRange(r.Health)))
		}
	case r.FullAh.Known:
		line("capacity = %s", quoted(span(r.FullAh, 1, "Ah")))
	}
	line("rate = %s", quoted(digits(o.RateHours)+" h"))
	if r.MidOhm.Known {
		line("resistance = %s", quoted(span(r.MidOhm, 1000, "mOhm")))
	}
	_, err := io.WriteString(w, b.String())
	return err
}

// healthRange is the range of health in per cent. A new pack often gives more
// than its label; a setup calls that 100 %.
func healthRange(e Estimate) string {
	low, high := min(max(e.Low(), 0), 1), min(e.High(), 1)
	if high-low < 0.005 {
		return fmt.Sprintf("%.3g %%", 100*high)
	}
	return fmt.Sprintf("%.3g to %.3g %%", 100*low, 100*high)
}

// span writes an estimate as a range in another unit.
func span(e Estimate, by float64, unit string) string {
	return fmt.Sprintf("%.3g to %.3g %s", max(e.Low(), 0)*by, e.High()*by, unit)
}

// WriteChemistry writes the fitted curves as a chemistry of the given name,
// for [chemistry.Set.Extend]. It fails when none could be fitted.
func (r Result) WriteChemistry(w io.Writer, name string) error {
	if !r.CellKnown {
		return fmt.Errorf("cellfit: too little was logged for a chemistry of its own")
	}
	var files []string
	for _, run := range r.Runs {
		if run.Log != "" && (len(files) == 0 || files[len(files)-1] != run.Log) {
			files = append(files, run.Log)
		}
	}
	base := r.Options.Chemistry
	return WriteChemistry(w, ChemistryFile{
		Name: name, Title: base.Title + ", fitted to a log", BasedOn: base.Name, Profile: r.Cell.Profile,
		Source: finding.Source{ID: "fit-" + name, Text: "fitted to " + strings.Join(files, ", "), Known: "computed from a log"},
	})
}
