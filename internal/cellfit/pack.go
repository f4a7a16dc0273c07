package cellfit

import (
	"errors"
	"fmt"
	"io"
	"math"
	"slices"
	"strings"

	"example.org/packcheck/answer"
	"example.org/packcheck/battery"
	"example.org/packcheck/chemistry"
)

// WritePack writes what was found as a [pack] table for a setup file, figures
// as ranges that hold the true value with about 95 %.
func (r Result) WritePack(w io.Writer) error { return r.writePack(w, "", "") }

// WriteOwnPack is [Result.WritePack] for a setup that also takes the fitted
// cell: its name, and the file that [Result.WriteChemistry] wrote. It fails
// when no cell could be fitted.
func (r Result) WriteOwnPack(w io.Writer, name, file string) error {
	if err := r.noCell(); err != nil {
		return err
	}
	return r.writePack(w, name, file)
}

func (r *Result) writePack(w io.Writer, name, file string) error {
	var b strings.Builder
	line := func(format string, args ...any) { fmt.Fprintf(&b, format+"\n", args...) }
	o := r.Options
	for _, text := range r.bounded() {
		line("# %s", text)
	}
	line("[pack]")
	if name == "" {
		name = o.Chemistry.Name
	}
	line("chemistry = %s", quoted(name))
	if file != "" {
		line("chemistry_file = %s", quoted(file))
	}
	line("cells_in_series = %d", o.CellsInSeries)
	today := r.FullAh.Known && (o.LabelAh <= 0 || r.aboveLabel())
	switch {
	case today:
		line("capacity = %s", quoted(span(r.TestedAh, min(r.AtLeastAh, r.TestedAh.Value), math.Inf(1), 1, "Ah")))
	case o.LabelAh > 0:
		line("capacity = %s", quoted(digits(o.LabelAh)+" Ah"))
	}
	line("rate = %s", quoted(digits(o.RateHours)+" h"))
	least := r.leastHealth()
	tested := func() {
		line("tested = true")
		if over := r.over(); over != "" {
			line("tested_over = %s", quoted(over))
		}
	}
	switch usual := battery.WidthsOf(o.Chemistry.Family, "", battery.MakerUnknown); {
	case today:
		line("health = %s", quoted("100 %")) // the capacity is that of today
		tested()
	case r.Health.Known:
		health := r.TestedAh
		health.Value, health.Sigma = health.Value/o.LabelAh, health.Sigma/o.LabelAh
		line("health = %s", quoted(span(health, min(least, health.Value), 1, 100, "%")))
		tested()
	case o.LabelAh > 0 && least > usual.Honesty.Low*usual.Health.Low: // more came out than a setup would allow for
		likely := usual.Honesty.Likely * usual.Health.Likely
		line("health = %s", quoted(rangeText(least, max(likely, least), 1, 100, "%")))
		line("tested = true")
	}
	if ohm := r.MidOhm; ohm.Known && ohm.Sigma < vague*ohm.Value {
		line("resistance = %s", quoted(span(ohm, leastOhm, math.Inf(1), 1000, "mOhm")))
	}
	_, err := io.WriteString(w, b.String())
	return err
}

// aboveLabel reports whether the pack may hold more than its label says. A setup knows
// no health above that of a new pack, so what it holds today stands in the label's place.
func (r *Result) aboveLabel() bool {
	return r.Health.Known && r.TestedAh.High() > r.Options.LabelAh
}

// over is how long the discharges took that the capacity is known by.
func (r *Result) over() string {
	least, most := r.OverHours[0], r.OverHours[1]
	switch {
	case !(least*3600 >= leastOverS && most > 0):
		return ""
	case most < SeveralFrom*least:
		return fmt.Sprintf("%.3g min", 60*math.Sqrt(least*most))
	}
	return fmt.Sprintf("%.3g to %.3g h", least, most)
}

// What a setup takes.
const (
	leastHealth = 0.02
	leastOhm    = 0.0001
	leastOverS  = 60
)

// leastHealth is what the battery holds at the least, over its label: what came out.
func (r *Result) leastHealth() float64 {
	if r.Options.LabelAh <= 0 {
		return leastHealth
	}
	return min(max(r.AtLeastAh/r.Options.LabelAh, leastHealth), 1)
}

// BoundedOnly reports whether the logs tell of capacity and health no more than what the
// battery holds at the least, AtLeastAh: none goes from full to the cutoff or nearly there.
func (r *Result) BoundedOnly() bool { return !r.FullAh.Known }

// bounded says so, what that means for who computes with it, and what to log to know
// more, by lines that fit a page; nil where more is known.
func (r *Result) bounded() []string {
	if !r.BoundedOnly() {
		return nil
	}
	list := []string{"The log bounds the capacity from below only,", fmt.Sprintf("by the %.3g Ah that came out.", r.AtLeastAh)}
	if r.Options.LabelAh > 0 {
		list = append(list, "Minutes computed from this rest on the label,", "which it may not hold any more.")
	} else {
		list = append(list, "Minutes computed from this rest on what is usual.")
	}
	return append(
		list, "To know more, log one discharge from full and rested",
		fmt.Sprintf("down to %s V, or to where the maker's instructions", digits(r.Options.CutoffV)), "say that it ends.",
	)
}

// span writes an estimate as a range between bounds, in another unit.
func span(e Estimate, lo, hi, by float64, unit string) string {
	bound := func(x float64) float64 { return min(max(x, lo), hi) }
	return rangeText(bound(e.Low()), bound(e.Value), bound(e.High()), by, unit)
}

// rangeText writes a range in another unit.
func rangeText(lo, mid, hi, by float64, unit string) string {
	text := func(x float64) string { return fmt.Sprintf("%.3g", x*by) }
	low, likely, high := text(lo), text(mid), text(hi)
	if low == high {
		return low + " " + unit
	}
	return fmt.Sprintf("%s to %s %s, likely %s", low, high, unit, likely)
}

// noCell says why there is no fitted cell; nil = there is one.
func (r *Result) noCell() error {
	switch {
	case r.CellKnown:
		return nil
	case r.NoCell != "":
		return errors.New("cellfit: no cell could be fitted: " + r.NoCell)
	}
	return errors.New("cellfit: too little was logged for a chemistry of its own")
}

// WriteChemistry writes the fitted curves as a chemistry of the given name,
// for [chemistry.Set.Extend]. It fails when none could be fitted.
//
// Its capacity is that of a new pack where the health is known, so that a setup
// says with the key health what has been lost; see [Result.WriteOwnPack].
func (r Result) WriteChemistry(w io.Writer, name string) error {
	if err := r.noCell(); err != nil {
		return err
	}
	var files []string
	for _, run := range r.Runs {
		if run.Log != "" && !slices.Contains(files, run.Log) {
			files = append(files, run.Log)
		}
	}
	base, p := r.Options.Chemistry, r.Cell.Profile
	known := "computed from a log"
	if r.BoundedOnly() {
		known = "computed from a log that bounds the capacity from below only"
	}
	switch {
	case r.Health.Known:
		p.Capacity.Ratio /= r.Health.Value
		if r.aboveLabel() { // what it holds is written as its capacity
			for _, c := range []*chemistry.Curve{&p.Resistance.OhmAh, &p.Fast.OhmAh, &p.Slow.OhmAh} {
				c.Y = slices.Clone(c.Y)
				for i := range c.Y {
					c.Y[i] *= r.Health.Value
				}
			}
		}
	case !r.FullAh.Known:
		// What is left of the label's charge is not known; the setup asks for it.
		p.Capacity.Ratio = base.Capacity.Ratio
	}
	if own := r.MidOhm; own.Known {
		p.Resistance.Uncertainty = min(max(2*own.Sigma/own.Value, 0.05), 0.9)
	}
	return WriteChemistry(w, ChemistryFile{
		Name: name, Title: base.Title + ", fitted to a log", BasedOn: base.Name, Profile: p,
		Source: answer.Source{ID: "fit-" + name, Text: "fitted to " + strings.Join(files, ", "), Known: known},
		Comments: slices.Concat(
			[]string{"Fitted to a logged discharge. It goes with the [pack] table that was", "written or printed with it, above all with its health and resistance."},
			r.bounded(), []string{""},
		),
	})
}
