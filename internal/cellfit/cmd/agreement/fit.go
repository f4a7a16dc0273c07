package main

import (
	"cmp"
	"fmt"
	"io"
	"maps"
	"math"
	"os"
	"path/filepath"
	"slices"
	"strings"

	"example.org/packcheck/battery"
	"example.org/packcheck/chemistry"
	"example.org/packcheck/internal/cellfit"
)

// pulsesWeight is how much a whole table of pulses counts against one curve.
const pulsesWeight = 1.3

// fitCell fits the dataset's cell to its curves but the one left out.
func (d dataset) fitCell(c curves, leftOut string) (cellfit.CellFit, error) {
	base, err := d.start()
	if err != nil {
		return cellfit.CellFit{}, err
	}
	if base.Family == chemistry.Lithium {
		// Only the resistance depends on warmth, in the fit as in the cell that
		// comes out of it.
		base.Capacity.TempFactor = chemistry.Flat(1)
	}
	o := d.options
	o.Base, o.CapacityAh, o.CellsInSeries, o.AmbientC = base, d.ah, d.series, d.ambientC
	var logs []*cellfit.Log
	add := func(l *cellfit.Log, weight float64, unit int, full bool) {
		logs = append(logs, l)
		o.Weights, o.Unit, o.StartFull = append(o.Weights, weight), append(o.Unit, unit), append(o.StartFull, full)
	}
	for i, name := range d.fit {
		log, ok := c.logs[name]
		if name == leftOut || !ok {
			continue
		}
		unit := 0
		if d.units != nil {
			unit = d.units[i]
		}
		add(log, 1, unit, slices.Contains(d.full, name))
	}
	for _, name := range d.pulses {
		for _, pulse := range c.pulses[name] {
			add(pulse, pulsesWeight/float64(len(c.pulses[name])), 0, false)
		}
	}
	fit, err := cellfit.FitCell(logs, o)
	if err != nil {
		return fit, err
	}
	p := &fit.Profile
	if !d.isThermal {
		return fit, nil
	}
	d.fitCooling(p, c)
	return fit, nil
}

// Cooling is looked for between these, W/(m2 K): still air in a box and a fan.
const leastCooling, mostCooling = 2.0, 80.0

// warmsK is by how much a log must get warm to tell something.
const warmsK = 3

// fitCooling finds the cooling with which the highest temperatures come
// closest, the heat capacity being the base profile's: a discharge is too slow
// to tell the two apart.
func (d dataset) fitCooling(p *chemistry.Profile, c curves) {
	var warm []string
	for _, name := range d.fit {
		if l := c.logs[name]; l != nil && l.TempC != nil && slices.Max(l.TempC)-l.TempC[0] >= warmsK {
			warm = append(warm, name)
		}
	}
	if len(warm) == 0 {
		return
	}
	cost := func(logCooling float64) float64 {
		q, at := *p, d
		at.labWM2K = math.Exp(logCooling)
		m, err := at.model(q, "", nil)
		if err != nil {
			return math.Inf(1)
		}
		sum := 0.0
		for _, name := range warm {
			a := d.replay(m, name, c.logs[name])
			off := a.ModelMaxC - a.LogMaxC
			sum += off * off
		}
		return sum
	}
	lo, hi := math.Log(leastCooling), math.Log(mostCooling)
	for range 30 {
		a, b := lo+(hi-lo)*0.382, lo+(hi-lo)*0.618
		if cost(a) < cost(b) {
			hi = b
		} else {
			lo = a
		}
	}
	p.Heat.CoolingWM2K = math.Exp((lo + hi) / 2)
}

// model builds the pack that a file was measured on; without a file the pack
// as it was at first.
func (d dataset) model(p chemistry.Profile, file string, log *cellfit.Log) (*battery.Model, error) {
	if !d.isThermal {
		// The temperature was not logged, or nothing got warm: taken as that
		// of the room, which a very large cooling gives.
		p.Heat.SpecificJKgK, p.Heat.CoolingWM2K = 5000, 1000
	}
	if d.labWM2K > 0 {
		p.Heat.CoolingWM2K = d.labWM2K
	}
	spec := battery.Spec{Profile: p, CellsInSeries: d.series, CapacityAh: d.ah, MassKg: d.massKg}
	if h, ok := d.healthOf(file, log); ok {
		// Only its capacity is known to have changed, unless it is told otherwise.
		spec.Health, spec.ResistanceFactor = h, cmp.Or(d.grown[file], 1)
	}
	return battery.New(spec)
}

// healthOf says how much of its capacity the specimen of a file still had;
// false when the data say nothing of it.
func (d dataset) healthOf(file string, log *cellfit.Log) (float64, bool) {
	for _, start := range slices.Sorted(maps.Keys(d.health)) {
		if strings.HasPrefix(file, start) {
			return d.health[start], true
		}
	}
	if log == nil || d.healthAtA.Empty() {
		return 0, false
	}
	if amps := loadedA(log); amps > 0 {
		return d.healthAtA.At(amps), true
	}
	return 0, false
}

// loadedA is the median current while one flows out; 0 when none does.
func loadedA(log *cellfit.Log) float64 {
	amps := loaded(log)
	if len(amps) == 0 {
		return 0
	}
	return amps[len(amps)/2]
}

// refit writes the dataset's fitted cell.
func (d dataset) refit(c curves, dir string, out io.Writer) error {
	fit, err := d.fitCell(c, "")
	if err != nil {
		return err
	}
	if d.accepted != "" {
		own := func(p chemistry.Profile) (*battery.Model, error) { return d.model(p, d.accepted, c.logs[d.accepted]) }
		if fit.Profile, err = d.fitAcceptance(fit.Profile, c, own); err != nil {
			return err
		}
		shipped, _ := chemistry.Builtin().Profile(d.base)
		if shipped, err = d.fitAcceptance(shipped, c, d.builtin); err != nil {
			return err
		}
		a := shipped.Acceptance
		fmt.Fprintf(out, "built-in %s at %g Ah: acceptance ohm_ah %.4f, power %.3f, offset %.4f, gas_per_100mv %.2f\n", d.base, acceptedAh, a.OhmAh, a.Power, a.Offset, a.GasPer100mV)
	}
	f, err := os.Create(filepath.Join(dir, d.cell+".toml"))
	if err != nil {
		return err
	}
	defer f.Close()
	if d.isThermal {
		fmt.Fprintf(out, "cooling %.1f W/(m2 K); ", fit.Profile.Heat.CoolingWM2K)
	}
	fmt.Fprintf(out, "%s: %.3f Ah, specimens %.3f Ah, rms %.1f mV per cell", d.cell, fit.FullAh, fit.UnitAh, scaled(fit.RMSV[:len(d.fit)], 1000))
	if d.options.FitKiloJ {
		fmt.Fprintf(out, ", %.1f kJ/mol (fast %.1f, slow %.1f), knee %.3f V", fit.KiloJ, cmp.Or(fit.FastKiloJ, fit.KiloJ), cmp.Or(fit.SlowKiloJ, fit.KiloJ), fit.Profile.Fast.KneeV)
	}
	fmt.Fprintln(out)
	file := cellfit.ChemistryFile{
		Name: d.cell, Title: d.title, BasedOn: d.base, Profile: fit.Profile, Source: d.source, Heat: d.isThermal && d.kind == "", Acceptance: d.accepted != "",
		Comments: []string{"Fitted by: go run ./internal/cellfit/cmd/agreement -refit", fmt.Sprintf("Label %g Ah, %d in series.", cmp.Or(d.printedAh, d.ah), d.series), ""},
	}
	if d.kind != "" {
		file.Profile = d.asMember(fit.Profile)
		file.Also = d.also()
		file.Member = &chemistry.Member{Kind: d.kind, CellAh: d.ah, PrintedAh: d.printedAh, CellKg: d.massKg}
	}
	err = cellfit.WriteChemistry(f, file)
	if err != nil {
		return err
	}
	return f.Close()
}

// Of lithium members: what specimens of one cell differ in resistance (six cells
// of energy21700_5ah at half charge: 31.7 to 37.4 mOhm after 10 s), and how it
// grows (source growth-18650).
const (
	memberOhmSpread = 0.15
	memberAtHealth  = 1.7
)

// asMember fills in what the fit does not find. A cell that was never measured
// in the cold loses there what the base profile says.
func (d dataset) asMember(p chemistry.Profile) chemistry.Profile {
	base, _ := chemistry.Builtin().Profile(d.base)
	if !d.cold {
		p.Capacity.TempFactor = base.Capacity.TempFactor
	}
	p.Resistance.Uncertainty = memberOhmSpread
	if d.base == "li-ion" {
		p.Resistance.AtHealth80 = memberAtHealth
	}
	return p
}

// also are the sources of what asMember fills in.
func (d dataset) also() []string {
	var out []string
	if d.base == "li-ion" {
		out = append(out, "growth-18650")
	}
	if !d.cold {
		base, _ := chemistry.Builtin().Profile(d.base)
		out = append(out, base.Capacity.Source)
	}
	return out
}

func scaled(x []float64, by float64) []float64 {
	out := make([]float64, len(x))
	for i, v := range x {
		out[i] = v * by
	}
	return out
}
