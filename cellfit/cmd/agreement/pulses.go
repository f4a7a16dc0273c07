package main

import (
	"encoding/csv"
	"os"
	"strconv"
	"strings"

	"example.org/packcheck/cellfit"
)

// pulses reads a table of pulses, one row each, as one short log per pulse:
// the rest before it and the voltages that were noted along it.
func pulses(path string) []*cellfit.Log {
	in, err := os.Open(path)
	if err != nil {
		return nil
	}
	defer in.Close()
	rows, err := csv.NewReader(in).ReadAll()
	if err != nil || len(rows) < 2 {
		return nil
	}
	col := map[string]int{}
	for i, name := range rows[0] {
		col[name] = i
	}
	rest, ok := col["rest_voltage_v"]
	if !ok {
		if rest, ok = col["ocv_1hrest_v"]; !ok {
			return nil
		}
	}
	amps, ok := col["pulse_current_a"]
	if !ok {
		return nil
	}
	var out []*cellfit.Log
	for _, row := range rows[1:] {
		num := func(i int) float64 { x, _ := strconv.ParseFloat(row[i], 64); return x }
		l := &cellfit.Log{TimeS: []float64{0}, Volts: []float64{num(rest)}, Amps: []float64{0}, ChargeAh: []float64{0}}
		for i, name := range rows[0] {
			at, isV := strings.CutPrefix(name, "voltage_")
			if !isV {
				continue
			}
			at = strings.TrimSuffix(at, "_v")
			var t float64
			if at == "end" {
				t = num(col["pulse_s"])
			} else {
				t, _ = strconv.ParseFloat(strings.Replace(strings.TrimSuffix(at, "s"), "p", ".", 1), 64)
			}
			if t == 0 {
				t = 0.05
			}
			l.TimeS = append(l.TimeS, t)
			l.Volts = append(l.Volts, num(i))
			l.Amps = append(l.Amps, num(amps))
			l.ChargeAh = append(l.ChargeAh, num(amps)*t/3600)
		}
		if i, ok := col["temp_c"]; ok {
			for range l.TimeS {
				l.TempC = append(l.TempC, num(i))
			}
		}
		out = append(out, l)
	}
	return out
}
