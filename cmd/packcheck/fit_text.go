package main

import (
	"fmt"
	"io"
	"path/filepath"
	"strings"

	"example.org/packcheck/chemistry"
	"example.org/packcheck/internal/cellfit"
	"example.org/packcheck/internal/quantity"
)

// text writes the figures for people.
func (f *fitted) text(w io.Writer) {
	s := &sheet{}
	s.block("Capacity: ", 2, f.capacityLine())
	s.block("Resistance: ", 2, f.resistanceLine())
	s.block("Health: ", 2, f.healthLine())
	if f.NoCell != "" {
		s.block("NO CELL COULD BE FITTED: ", 2, f.NoCell+".")
	}
	s.WriteByte('\n')
	s.fact("Kind of cell", f.profile.Title)
	s.fact("Cells in series", fmt.Sprint(f.cells))
	if f.label.Text != "" {
		s.fact("Label", f.label.Text)
	}
	f.textLogs(s)
	f.textCapacity(s)
	f.textResistance(s)
	f.textCell(s)
	f.textPack(s)
	if len(f.assumed) > 0 {
		s.heading("What was assumed")
		for _, a := range f.assumed {
			s.fact(a.Key, a.Value+". "+a.Why)
		}
	}
	if next := f.next(); len(next) > 0 {
		s.heading("What to measure next")
		for _, n := range next {
			s.item(n)
		}
	}
	s.heading("Cautions")
	for _, c := range f.cautions {
		s.item(c)
	}
	s.heading("How sure")
	s.block("", 0, uncertaintyText)
	_, _ = w.Write(s.Bytes()) // into a buffer
}

// uncertaintyText says what the ranges are.
const uncertaintyText = "The range behind a figure holds the true value about 19 times in 20, if the battery was as assumed. It allows 1 % for an ammeter that nobody calibrated, 2 % for the battery model and more the further the logged rate is from that of the label (common practice, no published source). What your meter is worse by comes on top."

// estimate prints a figure with its range.
func estimate(kind quantity.Kind, e cellfit.Estimate) string {
	if !e.Known {
		return "not known"
	}
	likely, ends := quantity.FormatSpread(kind, spread(e), quantity.Metric)
	return likely + " (" + ends + ")"
}

// spread is the range of an estimate.
func spread(e cellfit.Estimate) quantity.Range {
	return quantity.Spread(max(e.Low(), 0), e.Value, e.High())
}

func volts(v float64) string { return quantity.Format(quantity.Voltage, v, quantity.Metric) }
func amps(a float64) string  { return quantity.Format(quantity.Current, a, quantity.Metric) }

func (f *fitted) capacityLine() string {
	if !f.CapacityAh.Known {
		bound := "at least " + quantity.Format(quantity.Charge, f.AtLeastAh, quantity.Metric) + ", which came out"
		if f.BoundedOnly() {
			bound += " (a bound from below: how much more there is, the log does not tell)"
		}
		return bound + "; no log goes from full down to " + volts(f.Options.CutoffV)
	}
	return estimate(quantity.Charge, f.CapacityAh) + " down to " + volts(f.Options.CutoffV)
}

func (f *fitted) resistanceLine() string {
	switch {
	case f.MidOhm.Known:
		return estimate(quantity.Resistance, f.MidOhm)
	case len(f.Ohms) > 0:
		return "not known at half charge; what is known stands below"
	}
	return "not known; no row catches a sudden change of current"
}

func (f *fitted) healthLine() string {
	switch {
	case f.Health.Known && !f.CapacityAh.Known:
		return estimate(quantity.Fraction, f.Health) + " of the label; a discharge ended shortly before " + volts(f.Options.CutoffV) + ", where the volts fall steeply"
	case f.Health.Known:
		return estimate(quantity.Fraction, f.Health) + " of the label"
	case f.Options.LabelAh <= 0:
		return "not known; give the printed capacity with --label"
	}
	return "at least " + quantity.Format(quantity.Fraction, f.AtLeastAh/f.Options.LabelAh, quantity.Metric) + " of the label; the capacity is not known"
}

// chargedShare is from which share of what was taken out a log counts as one with a
// charge in it: less is a meter's zero. Own choice.
const chargedShare = 0.05

// moved is the charge that a log took out, and that which it put in.
func moved(l *cellfit.Log) (outAh, inAh float64) {
	if outAh, inAh = l.Moved(); inAh > chargedShare*outAh {
		return outAh, inAh
	}
	return l.ChargeAh[l.Rows()-1], 0
}

// textLogs says what was read, and as what.
func (f *fitted) textLogs(s *sheet) {
	s.heading("What was logged")
	for _, l := range f.logs {
		n := l.Rows()
		outAh, inAh := moved(l)
		taken := quantity.Format(quantity.Charge, outAh, quantity.Metric) + " taken out"
		if inAh > 0 {
			taken += ", " + quantity.Format(quantity.Charge, inAh, quantity.Metric) + " charged"
		}
		s.fact(filepath.Base(l.Name), fmt.Sprintf("%d rows over %s, %s", l.FileRows, quantity.Format(quantity.Duration, l.TimeS[n-1], quantity.Metric), taken))
		s.fact("", columnsText(l.Columns))
		if l.Skipped > 0 {
			s.fact("", fmt.Sprintf("%d rows without volts or amps left out", l.Skipped))
		}
	}
	s.fact("Found", fmt.Sprintf("%s, %s, %s", count(len(f.Runs), "discharge"), count(f.Pulses, "pulse"), count(f.Rests, "rest")))
	for _, n := range unique(f.Notes) {
		s.note(n)
	}
}

// columnsText says which column was taken for what.
func columnsText(c cellfit.Columns) string {
	text := fmt.Sprintf("time from %q, volts from %q, amps from %q", c.Time, c.Volts, c.Amps)
	if c.Flipped {
		text += " (negative while discharging)"
	}
	if c.Temp != "" {
		text += fmt.Sprintf(", temperature from %q", c.Temp)
	}
	return text
}

func count(n int, what string) string {
	if n == 1 {
		return "1 " + what
	}
	return fmt.Sprintf("%d %ss", n, what)
}

func unique(list []string) []string {
	var out []string
	seen := map[string]bool{}
	for _, s := range list {
		if !seen[s] {
			out, seen[s] = append(out, s), true
		}
	}
	return out
}

// textCapacity writes discharges, capacity, exponent.
func (f *fitted) textCapacity(s *sheet) {
	s.heading("Capacity")
	for i, r := range f.Runs {
		end := "to " + volts(f.Options.CutoffV)
		if !r.ReachedCutoff {
			end = "but not to " + volts(f.Options.CutoffV)
		}
		s.fact(fmt.Sprintf("Discharge %d", i+1), fmt.Sprintf("%s in %s at %s, %s; began %s full (%s)",
			quantity.Format(quantity.Charge, r.Ah, quantity.Metric), quantity.Format(quantity.Duration, r.Hours*3600, quantity.Metric),
			amps(r.CurrentA), end, quantity.Format(quantity.Fraction, min(r.StartCharge, 1), quantity.Metric), filepath.Base(r.Log)))
	}
	s.fact("Capacity", f.capacityLine())
	if f.FullAh.Known {
		s.fact("Over "+quantity.Format(quantity.Duration, f.Options.RateHours*3600, quantity.Metric), estimate(quantity.Charge, f.FullAh)+", as labels count")
	}
	s.fact("Health", f.healthLine())
	if !f.Peukert.Known {
		s.fact("Peukert exponent", "not known; it takes full discharges at several currents")
		return
	}
	e := f.Peukert
	s.fact("Peukert exponent", fmt.Sprintf("%s (%s to %s), down to %s", quantity.Decimals(e.Value, 2),
		quantity.Decimals(e.Low(), 2), quantity.Decimals(e.High(), 2), volts(f.Options.CutoffV)))
	switch {
	case f.Peukert.Value < 1:
		s.note("An exponent below 1 says that the battery gave more at the higher current. It changed between the logs: age, warmth, or not equally full. Do not use it.")
	case f.profile.Family == chemistry.Lithium:
		s.note("Cells of this kind lose little at high current; what ends the discharge is the voltage that drops. With another cutoff the exponent is another.")
	}
}

// textResistance writes the resistance over charge.
func (f *fitted) textResistance(s *sheet) {
	s.heading("Resistance of the whole battery")
	if len(f.Ohms) == 0 {
		s.block("", 0, "Not known: no row catches a sudden change of current, and one current alone does not tell resistance from voltage.")
		return
	}
	for _, o := range f.Ohms {
		from := "from the fitted cell"
		if o.Steps > 0 {
			from = "from " + count(o.Steps, "step")
		}
		s.fact(quantity.Format(quantity.Fraction, o.Charge, quantity.Metric)+" charged", estimate(quantity.Resistance, o.Ohm)+", "+from)
	}
	s.block("", 0, fmt.Sprintf("What the voltage drops by at once, over the current, with the battery at %s; slower drops come on top.",
		quantity.Format(quantity.Temperature, f.profile.Resistance.ReferenceC, quantity.Metric)))
}

// textCell says how well the fitted cell repeats the logs.
func (f *fitted) textCell(s *sheet) {
	if !f.CellKnown {
		return
	}
	s.heading("The fitted cell against the logs")
	for i, a := range f.agrees {
		s.fact(filepath.Base(f.logs[i].Name), fmt.Sprintf("within %s on average, %s at worst", volts(a.RMSV), volts(a.WorstV)))
	}
}

// textPack shows the lines for a setup file.
func (f *fitted) textPack(s *sheet) {
	lines, err := f.packTable(".")
	if err != nil {
		return
	}
	s.heading("For a setup file")
	s.verbatim(strings.TrimRight(lines, "\n"))
}
