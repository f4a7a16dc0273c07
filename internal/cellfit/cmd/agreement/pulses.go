package main

import (
	"bytes"
	"encoding/csv"
	"strconv"
	"strings"

	"example.org/packcheck/internal/cellfit"
)

// pulseTable reads a table of pulses, one row each, as one short log per
// pulse: the rest before it and the voltages that were noted along it. It
// returns nil for any other table.
func pulseTable(content []byte) []*cellfit.Log {
	rows, err := csv.NewReader(bytes.NewReader(content)).ReadAll()
	if err != nil || len(rows) < 2 {
		return nil
	}
	column := map[string]int{}
	for i, name := range rows[0] {
		column[name] = i
	}
	rest, ok := column["rest_voltage_v"]
	for _, other := range []string{"ocv_1hrest_v", "ocv_before_v"} {
		if !ok {
			rest, ok = column[other]
		}
	}
	amps, isPulse := column["pulse_current_a"]
	if !ok || !isPulse {
		return nil
	}
	var out []*cellfit.Log
	for _, row := range rows[1:] {
		num := func(i int) float64 { x, _ := strconv.ParseFloat(row[i], 64); return x }
		if num(amps) <= 0 {
			continue // a charging pulse
		}
		l := &cellfit.Log{TimeS: []float64{0}, Volts: []float64{num(rest)}, Amps: []float64{0}, ChargeAh: []float64{0}}
		for i, name := range rows[0] {
			moment, isV := strings.CutPrefix(name, "voltage_")
			if !isV {
				moment, isV = strings.CutPrefix(name, "v_")
			}
			if !isV || strings.HasSuffix(moment, "_after_v") {
				continue
			}
			t := num(column["pulse_s"])
			switch moment = strings.TrimSuffix(moment, "_v"); moment {
			case "end":
			case "first_sample":
				t = num(column["first_sample_s"])
			default:
				t, _ = strconv.ParseFloat(strings.Replace(strings.TrimSuffix(moment, "s"), "p", ".", 1), 64)
			}
			if t == 0 {
				t = 0.05 // "0 s" is the first sample under load
			}
			if t <= l.TimeS[len(l.TimeS)-1] {
				continue
			}
			l.TimeS, l.Volts, l.Amps = append(l.TimeS, t), append(l.Volts, num(i)), append(l.Amps, num(amps))
			l.ChargeAh = append(l.ChargeAh, num(amps)*t/3600)
		}
		if i, ok := column["temp_c"]; ok {
			for range l.TimeS {
				l.TempC = append(l.TempC, num(i))
			}
		}
		out = append(out, l)
	}
	return out
}
