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
	base, ok := chemistry.Builtin().Profile(d.base)
	if !ok {
		return cellfit.CellFit{}, fmt.Errorf("no profile %q", d.base)
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
	if p.Family == chemistry.Lithium {
		// The fit lets only the resistance depend on warmth, and so must the
		// cell that comes out of it.
		p.Capacity.TempFactor = chemistry.Flat(1)
	}
	if !d.isThermal {
		// The temperature was not logged, or nothing got warm: taken as that
		// of the room, which a very large cooling gives.
		p.Heat.SpecificJKgK, p.Heat.CoolingWM2K = 5000, 1000
		return fit, nil
	}
	m, err := d.model(*p, "", nil)
	if err != nil {
		return fit, err
	}
	if h, ok := cellfit.FitHeat(m, logs, fit.ChargeAtStart); ok {
		p.Heat.SpecificJKgK = h.JPerK / d.massKg
		p.Heat.CoolingWM2K = h.WPerK / (p.Heat.AreaM2PerKg23 * math.Cbrt(d.massKg*d.massKg))
	}
	return fit, nil
}

// model builds the pack that a file was measured on; without a file the pack
// as it was at first.
func (d dataset) model(p chemistry.Profile, file string, log *cellfit.Log) (*battery.Model, error) {
	spec := battery.Spec{Profile: p, CellsInSeries: d.series, CapacityAh: d.ah, MassKg: d.massKg}
	if h, ok := d.healthOf(file, log); ok {
		// Only its capacity is known to have changed.
		spec.Health, spec.ResistanceFactor = h, 1
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
	fmt.Fprintf(out, "%s: %.3f Ah, specimens %.3f Ah, rms %.1f mV per cell", d.cell, fit.FullAh, fit.UnitAh, scaled(fit.RMSV[:len(d.fit)], 1000))
	if d.options.FitKiloJ {
		fmt.Fprintf(out, ", %.1f kJ/mol (fast %.1f, slow %.1f), knee %.3f V", fit.KiloJ, cmp.Or(fit.FastKiloJ, fit.KiloJ), cmp.Or(fit.SlowKiloJ, fit.KiloJ), fit.Profile.Fast.KneeV)
	}
	fmt.Fprintln(out)
	err = cellfit.WriteChemistry(f, cellfit.ChemistryFile{
		Name: d.cell, Title: d.title, BasedOn: d.base, Profile: fit.Profile, Source: d.source, Heat: true, Acceptance: d.accepted != "",
		Comments: []string{"Fitted by: go run ./cellfit/cmd/agreement -refit", fmt.Sprintf("Label %g Ah, %d in series.", d.ah, d.series), ""},
	})
	if err != nil {
		return err
	}
	return f.Close()
}

func scaled(x []float64, by float64) []float64 {
	out := make([]float64, len(x))
	for i, v := range x {
		out[i] = v * by
	}
	return out
}
