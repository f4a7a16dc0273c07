package cellfit

import (
	"errors"
	"fmt"
	"math"
	"slices"
)

// What a wrong unit or a wrong column leads to (common practice, no published
// source): new batteries give up to a quarter more than their label, and one
// below a twentieth moves nothing; nobody empties a battery within a minute or
// logs it for three weeks.
const (
	leastOfLabel, mostOfLabel = 0.05, 1.5
	leastEmptyH, mostEmptyH   = 1. / 60, 500
)

// checkLogs refuses what no fit can be made of.
func checkLogs(logs []*Log) error {
	if len(logs) == 0 {
		return errors.New("cellfit: no logs to fit")
	}
	for _, l := range logs {
		switch {
		case l == nil || len(l.Volts) != l.Rows() || len(l.Amps) != l.Rows() || len(l.ChargeAh) != l.Rows():
			return errors.New("cellfit: a log whose columns differ in length")
		case l.Rows() < 3:
			return fmt.Errorf("cellfit: %s: %d rows of numbers; want at least three", l.called(), l.Rows())
		}
	}
	return nil
}

// called is a log's name for messages.
func (l *Log) called() string {
	if l.Name == "" {
		return "log"
	}
	return l.Name
}

// plausible catches a wrong cell count, chemistry, cutoff, unit or column before
// anything is computed from it.
func (f *finder) plausible(logs []*Log) error {
	n := float64(f.Options.CellsInSeries)
	p := f.Options.Chemistry
	top := p.Rest.VoltsAt.Y[len(p.Rest.VoltsAt.Y)-1]
	full := max(p.FullV, top)
	if f.Options.CutoffV >= n*full {
		return fmt.Errorf("cellfit: a cutoff of %.4g V lies above a full battery, %.4g V for %d cells of %s; want the voltage at which a discharge ends", f.Options.CutoffV, n*full, f.Options.CellsInSeries, p.Name)
	}
	for _, l := range logs {
		if !(slices.Max(l.Amps) > 0) {
			return fmt.Errorf("cellfit: %s: there is no discharge in it, only charging or rest; want a log of a discharge (amps from %q, --discharge says which sign is one)", l.called(), l.Columns.Amps)
		}
		most := math.Inf(-1)
		for i, v := range l.Volts {
			if l.Amps[i] >= 0 {
				most = max(most, v)
			}
		}
		if cell := most / n; cell > 1.15*full || cell < 0.85*p.NominalV {
			return fmt.Errorf("cellfit: %s: %d cells of %s cannot stand at %.2f V, the highest voltage there (from %q; %.2f V a cell); the number of cells or the chemistry is wrong, or the log is of another battery",
				l.called(), f.Options.CellsInSeries, p.Name, most, l.Columns.Volts, cell)
		}
		if err := f.plausibleAmps(l); err != nil {
			return err
		}
	}
	return nil
}

// plausibleAmps holds the current of a log against the label.
func (f *finder) plausibleAmps(l *Log) error {
	label := f.Options.LabelAh
	if label <= 0 {
		return nil
	}
	var flowing []float64
	limit := restShare * l.mostA()
	for _, a := range l.Amps {
		if a > limit {
			flowing = append(flowing, a)
		}
	}
	if len(flowing) == 0 {
		return nil
	}
	amps := median(flowing)
	switch hours := label / amps; {
	case hours < leastEmptyH:
		return f.unitsError(l, fmt.Sprintf("%.3g A would empty %.3g Ah in %.2g s", amps, label, 3600*hours))
	case hours > mostEmptyH:
		return f.unitsError(l, fmt.Sprintf("%.3g A would take %.0f hours to empty %.3g Ah", amps, hours, label))
	}
	if out := spread(l.ChargeAh); out > mostOfLabel*label && len(l.Parts().Discharges) < 2 {
		what := fmt.Sprintf("%.4g Ah came out of a battery of %.3g Ah", out, label)
		if gap := l.gap(); gap != "" {
			what += " (" + gap + ", and nobody knows what flowed then)"
		}
		return f.unitsError(l, what)
	}
	return nil
}

// plausibleRun holds a discharge from full to the cutoff against the label.
func (f *finder) plausibleRun(r *run) error {
	share := r.Ah / f.Options.LabelAh
	switch {
	case f.Options.LabelAh <= 0:
		return nil
	case share > mostOfLabel:
		return f.unitsError(r.log, fmt.Sprintf("from full to the cutoff came %.3g times the label's charge", share))
	// At a high current less comes out, but not so little.
	case share < leastOfLabel && r.Hours*3600 < 60 || share < leastOfLabel/2:
		return f.unitsError(r.log, fmt.Sprintf("from full to the cutoff came %.2g %% of the label's charge in %.3g s", 100*share, 3600*r.Hours))
	}
	return nil
}

// emptyShare is the least charge that a battery may begin with by its first
// voltage, over what then came out: wide, because that voltage may be under load.
const emptyShare = 0.3

// plausibleFound holds capacity and beginnings that were found against the label.
func (f *finder) plausibleFound(logs []*Log) error {
	if h := f.Health; h.Known && (h.Value > mostOfLabel || h.Value < leastOfLabel) {
		return f.unitsError(logs[0], fmt.Sprintf("the battery would hold %.3g %% of its label", 100*h.Value))
	}
	for _, r := range f.runs {
		if held := max(r.StartCharge, 0) * f.packAh; f.Options.LabelAh > 0 && held < emptyShare*r.Ah {
			return fmt.Errorf("cellfit: %s: by its first voltage, %.4g V, the battery was %.0f %% full, yet %.3g Ah came out; the number of cells or the chemistry is wrong",
				r.log.called(), r.log.Volts[0], 100*max(r.StartCharge, 0), r.Ah)
		}
	}
	return nil
}

func (f *finder) unitsError(l *Log, what string) error {
	c := l.Columns
	return fmt.Errorf("cellfit: %s: %s; check the units and columns (time from %q, volts from %q, amps from %q) and the label", l.called(), what, c.Time, c.Volts, c.Amps)
}
