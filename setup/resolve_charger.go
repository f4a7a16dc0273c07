package setup

import (
	"fmt"

	"example.org/packcheck/charge"
	"example.org/packcheck/internal/quantity"
)

// ChargerPart is the charger as its label and the figures beside it tell it.
type ChargerPart struct {
	charge.Charger
	Unclear []string // what the label leaves open, in words
}

// charger reads the setup's charger: its whole label, or its printed figures.
func (r *resolver) charger() {
	raw := &r.setup.Charger
	var l charge.Label
	if raw.Label.Given {
		var err error
		if l, err = charge.ParseLabel(raw.Label.Text); err != nil {
			r.fault(raw.Label.Line, raw.Label.Key, raw.Label.Text, `the output line of the charger, such as "14.7 V 1.5 A DC"`)
		}
	}
	r.onCharger(raw.Voltage, l.PrintedV, quantity.Voltage)
	r.onCharger(raw.Current, l.PrintedA, quantity.Current)
	if raw.Voltage.Given {
		l.PrintedV, l.Outputs = raw.Voltage.High, 1 // of a range the end that does harm
	}
	if raw.Current.Given {
		l.PrintedA = raw.Current.High
	}
	if purpose, ok := charge.PurposeNamed(raw.MadeFor.Text); ok {
		if l.MadeFor != charge.PurposeUnknown && l.MadeFor != purpose {
			r.fault(raw.MadeFor.Line, raw.MadeFor.Key, raw.MadeFor.Text,
				fmt.Sprintf("%s, which the label %q says, or another label: they cannot both be true", l.MadeFor, raw.Label.Text))
		}
		l.MadeFor = purpose
	}
	switch raw.Output.Text {
	case "ac":
		l.Output = charge.AC
	case "dc":
		l.Output = charge.DC
	}
	if raw.Polarity.Given {
		l.Polarity = charge.PolarityNamed(raw.Polarity.Text)
	}
	c := l.Charger()
	switch raw.Stops.Text {
	case "by itself":
		c.Stops = charge.StopsByItself
	case "timer":
		c.Stops = charge.StopsByTimer
	case "never":
		c.Stops = charge.StopsNever
	}
	if raw.Timer.Given {
		c.TimerH = raw.Timer.Likely / 3600
	}
	c.SuppliedWithPack = raw.CameWithPack.Yes
	r.parts.Charger = ChargerPart{Charger: c, Unclear: l.UnclearBeside(raw.Output.Given, raw.MadeFor.Given)}
}

// onCharger refuses a figure that is not the one on the charger's label beside it.
func (r *resolver) onCharger(v Value, onLabel float64, kind quantity.Kind) {
	if !v.Given || onLabel <= 0 || v.Low <= onLabel*1.02 && v.High >= onLabel*0.98 {
		return
	}
	r.fault(v.Line, v.Key, v.Text, fmt.Sprintf("%s, which the label %q says, or only one of the two",
		quantity.Format(kind, onLabel, quantity.Metric), r.setup.Charger.Label.Text))
}
