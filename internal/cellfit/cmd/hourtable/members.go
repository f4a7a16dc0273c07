package main

import (
	"fmt"
	"io"
	"maps"
	"math"
	"os"
	"path/filepath"
	"slices"

	"example.org/packcheck/answer"
	"example.org/packcheck/chemistry"
	"example.org/packcheck/internal/cellfit"
)

// block is a published block that is a member of a family.
type block struct {
	title  string
	kind   chemistry.Kind
	base   string
	kg     float64
	acOhm  float64 // of a 12 V block, charged, at 1 kHz as sheets give it; 0 = not given
	source string
	table  cellfit.HourTable
}

// baseOhmAh is the same figure of the block that the base profile is fitted to,
// times its capacity: 20 mOhm and 7.5 Ah.
const baseOhmAh = 0.020 * 7.5

// memberBlocks are the blocks with few published points. End voltages that a
// sheet does not give are those that three makers agree on for the rate (see
// chemistry/data/agm.toml, end-volts-three-makers).
var memberBlocks = map[string]block{
	"general-12v-7ah2": {
		title: "sealed lead-acid block, 12 V 7.2 Ah, general purpose", kind: chemistry.General, base: "agm", kg: 2.30, acOhm: 0.018,
		source: "maker's data sheet of a general-purpose AGM block, 12 V 7.2 Ah: 7.20/6.72/6.00/5.25/4.38 Ah at 20/10/5/3/1 h, 18 mOhm charged, 2.30 kg; end voltages by rate",
		table:  hourAh(7.2, []float64{1, 3, 5, 10, 20}, []float64{4.38, 5.25, 6.00, 6.72, 7.20}, []float64{1.55, 1.70, 1.75, 1.75, 1.75}),
	},
	"general-12v-5ah": {
		title: "sealed lead-acid block, 12 V 5 Ah, general purpose", kind: chemistry.General, base: "agm", kg: 1.92, acOhm: 0.027,
		source: "maker's data sheet of a general-purpose AGM block, 12 V 5 Ah: 5.0/4.75/4.25/3.0 Ah at 20/10/5/1 h, the last to 9.6 V, 27 mOhm charged, 1.92 kg; other end voltages by rate",
		table:  hourAh(5, []float64{1, 5, 10, 20}, []float64{3.0, 4.25, 4.75, 5.0}, []float64{1.60, 1.75, 1.75, 1.75}),
	},
	"general-12v-14ah": {
		title: "sealed lead-acid block, 12 V 14 Ah, general purpose", kind: chemistry.General, base: "agm", kg: 3.7, acOhm: 0.0135,
		source: "maker's data sheet of an AGM block, 12 V 14 Ah: 14/12.8/12.0 Ah at 20/10/5 h; to 10.5 V at 5/10/20/30 A 64/54/39/35 % of the label (log interpolation of its table), 13.5 mOhm, 3.7 kg",
		table: cellfit.HourTable{
			CellsInSeries: 6, CapacityAh: 14, RestedV: rested, EndV: []float64{1.75},
			Hours: []float64{0.35 * 14 / 30, 0.39 * 14 / 20, 0.54 * 14 / 10, 0.64 * 14 / 5, 5, 10, 20},
			Amps:  [][]float64{{30}, {20}, {10}, {5}, {12.0 / 5}, {1.28}, {0.7}},
		},
	},
	"high-rate-12v-9ah": {
		title: "sealed lead-acid block, 12 V 9 Ah, high rate", kind: chemistry.HighRate, base: "agm", kg: 2.52, acOhm: 0.017,
		source: "maker's data sheet of a sealed block, 12 V 9 Ah: 9.00/8.51/7.75/5.98 Ah at 20/10/5/1 h, 17 mOhm, 135 A for 5 s, 2.52 kg; end voltages by rate",
		table:  hourAh(9, []float64{1, 5, 10, 20}, []float64{5.98, 7.75, 8.51, 9.00}, []float64{1.60, 1.75, 1.75, 1.75}),
	},
	"high-rate-6v-1ah3": {
		title: "sealed lead-acid block, 6 V 1.3 Ah, better grade", kind: chemistry.HighRate, base: "agm", acOhm: 0.100,
		source: "maker's data sheet of a sealed block of better grade, 6 V 1.3 Ah, to 4.8 V: at 10/5/3/1 h, 30/15/5 min the exponents 1.129/1.111/1.111/1.133/1.145/1.182/1.236 against the 20 h rate, 27 % of the label in 3 min; 50 mOhm",
		table:  hourAh(1.3, []float64{0.05, 1. / 12, 0.25, 0.5, 1, 3, 5, 10, 20}, []float64{0.27 * 1.3, 0.351 * 1.3, 0.5093 * 1.3, 0.6271 * 1.3, 0.7030 * 1.3, 0.8273 * 1.3, 0.8706 * 1.3, 0.9239 * 1.3, 1.3}, []float64{1.60, 1.60, 1.60, 1.60, 1.60, 1.60, 1.60, 1.60, 1.60}),
	},
	"long-life-12v-28ah": {
		title: "sealed lead-acid block, 12 V 28 Ah, long life", kind: chemistry.LongLife, base: "agm", kg: 11, acOhm: 0.006,
		source: "maker's data sheet of a long-life AGM block, 12 V 28 Ah: 28/26.5/25/21 Ah at 20/10/5/1 h, 6 mOhm, 11 kg; end voltages by rate",
		table:  hourAh(28, []float64{1, 5, 10, 20}, []float64{21, 25, 26.5, 28}, []float64{1.55, 1.75, 1.75, 1.75}),
	},
}

// hourAh turns charges by hours into a table: one row and one end voltage each.
func hourAh(ratedAh float64, hours, ah, endV []float64) cellfit.HourTable {
	t := cellfit.HourTable{CellsInSeries: 6, CapacityAh: ratedAh, Hours: hours, RestedV: rested}
	for _, v := range []float64{1.55, 1.60, 1.70, 1.75} {
		for _, e := range endV {
			if e == v {
				t.EndV = append(t.EndV, v)
				break
			}
		}
	}
	for i := range hours {
		row := make([]float64, len(t.EndV))
		for j, v := range t.EndV {
			if endV[i] == v {
				row[j] = ah[i] / hours[i]
			}
		}
		t.Amps = append(t.Amps, row)
	}
	return t
}

// writeMembers fits every member block and writes its file.
func writeMembers(dir string, evaluations int, out io.Writer) error {
	for _, name := range slices.Sorted(maps.Keys(memberBlocks)) {
		b := memberBlocks[name]
		base, ok := chemistry.Builtin().Profile(b.base)
		if !ok {
			return fmt.Errorf("no profile %q", b.base)
		}
		if b.acOhm > 0 {
			by := b.acOhm * b.table.CapacityAh / baseOhmAh
			base.Resistance.OhmAh = times(base.Resistance.OhmAh, by)
			base.Fast.OhmAh, base.Slow.OhmAh = times(base.Fast.OhmAh, by), times(base.Slow.OhmAh, by)
		}
		fit, err := cellfit.FitHourTable(b.table, base, evaluations)
		if err != nil {
			return fmt.Errorf("%s: %w", name, err)
		}
		worst, sum, n := 0.0, 0.0, 0
		for _, row := range fit.Off {
			for _, e := range row {
				if !math.IsNaN(e) {
					worst, sum, n = math.Max(worst, math.Abs(e)), sum+e*e, n+1
				}
			}
		}
		fmt.Fprintf(out, "%s: %d points, time rms %.1f %%, worst %.1f %%, %.4f Ohm*Ah at half\n", name, n, 100*math.Sqrt(sum/float64(n)), 100*worst, fit.Profile.Resistance.OhmAh.At(0.5))
		if err := b.write(dir, name, fit.Profile); err != nil {
			return err
		}
	}
	return nil
}

// times is a resistance curve times a factor.
func times(c chemistry.Curve, by float64) chemistry.Curve {
	y := slices.Clone(c.Y)
	for i := range y {
		y[i] *= by
	}
	return chemistry.Curve{X: c.X, Y: y}
}

// write writes one member's file.
func (b block) write(dir, name string, p chemistry.Profile) error {
	p.Capacity.HourShare = b.shares()
	f, err := os.Create(filepath.Join(dir, name+".toml"))
	if err != nil {
		return err
	}
	defer f.Close()
	err = cellfit.WriteChemistry(f, cellfit.ChemistryFile{
		Name: name, Title: b.title, BasedOn: b.base, Profile: p,
		Source:   answer.Source{ID: "sheet-" + name, Text: b.source + ". Wells, rest curve, resistance and branches fitted to it, with those of agm as the prior", Known: "copy"},
		Also:     []string{"agm-7ah5-sheet"},
		Member:   &chemistry.Member{Kind: b.kind, CellAh: b.table.CapacityAh, PrintedAh: b.table.CapacityAh, CellKg: b.kg / float64(b.table.CellsInSeries)},
		Comments: []string{"Fitted by: go run ./internal/cellfit/cmd/hourtable -refit"},
	})
	if err != nil {
		return err
	}
	return f.Close()
}

// shares is the table as shares of the label, of each row the lowest end
// voltage that is given.
func (b block) shares() chemistry.Curve {
	var c chemistry.Curve
	for i, hours := range b.table.Hours {
		for _, amps := range b.table.Amps[i] {
			if amps > 0 {
				c.X, c.Y = append(c.X, hours), append(c.Y, amps*hours/b.table.CapacityAh)
				break
			}
		}
	}
	return c
}
