package main

import (
	"fmt"
	"io"
	"math"
	"strings"
)

// How a curve was used.
const (
	fittedTo         = "fitted"
	keptAside        = "kept aside"
	acceptanceFitted = "acceptance fitted"
)

// The targets: shares of the nominal voltage and of the charge to the cutoff.
// Curves that something was fitted to are held to the narrower ones.
const (
	fittedVolts, fittedAh = 0.015, 0.03
	asideVolts, asideAh   = 0.025, 0.05
)

// row is one line of the table.
type row struct {
	curve              string // cell and file
	note               string // how it was run, where that is not as all others; may be empty
	use                string
	rms                float64 // of the voltage, over nominal
	worstV             float64
	logAh, modelAh     float64 // to the cutoff; NaN = none
	logMaxC, modelMaxC float64 // NaN = none
}

// offAh is the relative error of the charge to the cutoff; NaN = none.
func (r row) offAh() float64 { return r.modelAh/r.logAh - 1 }

// misses says which targets the row misses, each with its figure; empty when
// it meets all that apply to it.
func (r row) misses() []string {
	volts, ah := fittedVolts, fittedAh
	if r.use == keptAside {
		volts, ah = asideVolts, asideAh
	}
	var out []string
	if !(r.rms <= volts) {
		out = append(out, fmt.Sprintf("voltage %.2f %%, target %.1f %%", 100*r.rms, 100*volts))
	}
	if math.IsNaN(r.logAh) {
		return out // nothing was measured
	}
	if off := r.offAh(); !(math.Abs(off) <= ah) {
		out = append(out, fmt.Sprintf("charge %+.1f %%, target %.0f %%", 100*off, 100*ah))
	}
	return out
}

// name is the curve with its note.
func (r row) name() string {
	if r.note == "" {
		return r.curve
	}
	return r.curve + " (" + r.note + ")"
}

func (r row) print(out io.Writer) {
	fmt.Fprintf(out, "| %s | %s | %.2f | %.3f | %s | %s | %s | %s | %s |\n", r.name(), r.use, 100*r.rms, r.worstV,
		figure("%.3f", r.logAh), figure("%.3f", r.modelAh), figure("%+.1f", 100*r.offAh()), figure("%.1f", r.logMaxC), figure("%.1f", r.modelMaxC))
}

// summary says how many rows meet the targets, and which do not.
func summary(rows []row) string {
	var missed []string
	for _, r := range rows {
		if m := r.misses(); len(m) > 0 {
			missed = append(missed, r.curve+" ("+strings.Join(m, "; ")+")")
		}
	}
	text := fmt.Sprintf("%d of %d rows meet the targets.", len(rows)-len(missed), len(rows))
	if len(missed) > 0 {
		text += " Not met: " + strings.Join(missed, ", ") + "."
	}
	return text
}
