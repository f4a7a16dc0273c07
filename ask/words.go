package ask

import (
	"math"

	"example.org/packcheck/answer"
	"example.org/packcheck/internal/quantity"
)

// shown is how the units of figures are printed: the kind of quantity, and what
// one of the unit is in the unit of the kind.
func shown(unit string) (kind quantity.Kind, factor float64) {
	switch unit {
	case "V":
		return quantity.Voltage, 1
	case "A":
		return quantity.Current, 1
	case "Ohm":
		return quantity.Resistance, 1
	case "Ah":
		return quantity.Charge, 1
	case "Wh":
		return quantity.Energy, 1
	case "W":
		return quantity.Power, 1
	case "degC":
		return quantity.Temperature, 1
	case "s":
		return quantity.Duration, 1
	case "min":
		return quantity.Duration, 60
	case "h":
		return quantity.Duration, 3600
	case "d":
		return quantity.Duration, 86400
	case "m":
		return quantity.Length, 1
	case "m/s":
		return quantity.Speed, 1
	case "mm2":
		return quantity.Area, 1
	case "AWG":
		return quantity.Gauge, 1
	case "years":
		return quantity.Age, 1
	case "share":
		return quantity.Fraction, 1
	}
	return quantity.NoKind, 1
}

// both reports whether a unit has an everyday one beside it.
func both(unit string) bool { return unit == "m/s" || unit == "degC" || unit == "m" }

// Text prints the figure with its unit as people read it: "18 min (14 to 22
// min)".
func (f Figure) Text() string { return figureWords(f) }

// Text prints the limit with its unit.
func (l Limit) Text() string { return numberWords(l.Value, l.Unit) }

// figureWords prints a figure.
func figureWords(f Figure) string {
	if f.OrMore {
		return numberWords(f.Low, f.Unit) + " or more"
	}
	likely := numberWords(f.Value, f.Unit)
	if f.Low == f.High {
		return likely
	}
	kind, factor := shown(f.Unit)
	if kind == quantity.NoKind {
		span := quantity.Digits(f.Low, 3) + " to " + quantity.Digits(f.High, 3)
		if span == likely {
			return likely
		}
		return likely + " (" + span + ")"
	}
	r := answer.Range{Low: f.Low, Likely: f.Value, High: f.High}.Scale(factor)
	if kind == quantity.Duration && f.Unit != "s" { // nobody times minutes finer than to a second
		r = quantity.WholeMinutes(answer.Range{Low: math.Round(r.Low), Likely: math.Round(r.Likely), High: math.Round(r.High)})
	}
	likely, span := quantity.FormatSpread(kind, r, system(f.Unit))
	if span == likely {
		return likely
	}
	return likely + " (" + span + ")"
}

// system is the one that a unit prints in where only one has room.
func system(unit string) quantity.System {
	if unit == "AWG" {
		return quantity.Customary
	}
	return quantity.Metric
}

// numberWords prints one number with its unit.
func numberWords(v float64, unit string) string {
	kind, factor := shown(unit)
	switch {
	case kind == quantity.NoKind && (unit == "" || unit == "x" || unit[0] == ':'):
		return quantity.Digits(v, 3) + unit
	case kind == quantity.NoKind:
		return quantity.Digits(v, 3) + " " + unit
	case both(unit):
		return quantity.FormatBoth(kind, v*factor, quantity.Metric)
	}
	return quantity.Format(kind, v*factor, system(unit))
}

func volts(v float64) string    { return quantity.Format(quantity.Voltage, v, quantity.Metric) }
func amps(v float64) string     { return quantity.Format(quantity.Current, v, quantity.Metric) }
func ohms(v float64) string     { return quantity.Format(quantity.Resistance, v, quantity.Metric) }
func ampHours(v float64) string { return quantity.Format(quantity.Charge, v, quantity.Metric) }
func watts(v float64) string    { return quantity.Format(quantity.Power, v, quantity.Metric) }
func celsius(v float64) string  { return quantity.FormatBoth(quantity.Temperature, v, quantity.Metric) }
func seconds(v float64) string  { return quantity.Format(quantity.Duration, v, quantity.Metric) }
func percent(v float64) string  { return quantity.Format(quantity.Fraction, v, quantity.Metric) }
func speed(v float64) string    { return quantity.FormatBoth(quantity.Speed, v, quantity.Metric) }
