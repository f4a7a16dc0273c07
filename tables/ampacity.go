package tables

import (
	"fmt"
	"math"
)

// ampacityCurve is one column of an ampacity table.
type ampacityCurve struct {
	system      WireSystem
	freeAir     bool
	insulationC float64
	ambientC    float64
	amps        []Point // X mm2, Y A
	source      string
}

// AmpacityQuery says for which wire the ampacity is wanted.
type AmpacityQuery struct {
	Wire        Wire
	InsulationC float64 // rated temperature of the insulation, degC; 0 when unknown, taken as 60
	FreeAir     bool    // a single wire with air all round; false is the safe side
}

// Ampacity is the current that a wire carries continuously.
type Ampacity struct {
	AmpsA       float64 // at AmbientC
	AmbientC    float64 // surroundings that the table is for, degC
	InsulationC float64 // conductor temperature that the table is for, degC: at most that of the insulation
	Source      string

	cooler  [maxCooler]column // what the columns for lesser insulation say of the same wire
	coolers int
}

// column is one value of a table with the class that it is for.
type column struct{ ampsA, insulationC float64 }

const maxCooler = 8

// at is the law of [Ampacity.At] for one column.
func (c column) at(tableC, ambientC float64) float64 {
	if !(ambientC < c.insulationC) {
		return 0
	}
	return c.ampsA * math.Sqrt((c.insulationC-ambientC)/(c.insulationC-tableC))
}

// At returns the ampacity in surroundings of ambientC (degC): AmpsA x
// sqrt((InsulationC - ambientC)/(InsulationC - AmbientC)), the law behind the
// ambient factors of DIN VDE 0298-4 Table 17 and of 33 CFR 183.425. It is 0
// where the surroundings are as hot as the insulation may become. The table prints
// the same for some neighbouring classes, and below its own surroundings the law
// gives the lesser one more: better insulation never carries less, so that counts.
func (a Ampacity) At(ambientC float64) float64 {
	most := column{a.AmpsA, a.InsulationC}.at(a.AmbientC, ambientC)
	for _, c := range a.cooler[:a.coolers] {
		most = max(most, c.at(a.AmbientC, ambientC))
	}
	return most
}

// WarmsToA returns the steady current (A) that warms the conductor to finalC in
// surroundings of ambientC (degC), by the same law. What surrounds copper does not
// heat it: as in At, the column that lets the most through counts.
func (a Ampacity) WarmsToA(finalC, ambientC float64) float64 {
	if !(ambientC < finalC) {
		return 0
	}
	most := a.AmpsA / math.Sqrt(a.InsulationC-a.AmbientC)
	for _, c := range a.cooler[:a.coolers] {
		most = max(most, c.ampsA/math.Sqrt(c.insulationC-a.AmbientC))
	}
	return most * math.Sqrt(finalC-ambientC)
}

// ConductorC returns the steady temperature (degC) of the conductor at a
// current in surroundings of ambientC: the same law turned round, rise
// proportional to the square of the current. It is an estimate; it ignores
// that hot copper has more resistance, and where wires are bundled or covered
// they run hotter.
func (a Ampacity) ConductorC(currentA, ambientC float64) float64 {
	share := currentA / a.AmpsA
	return ambientC + (a.InsulationC-a.AmbientC)*share*share
}

// Ampacity looks up what a wire carries. AWG and automotive sizes go by 33
// CFR 183.425 Table 5; metric sizes by DIN VDE 0298-4 (70 degC) and, for 105
// degC insulation, ISO 10133 (from memory). The column used is the hottest one
// that the insulation reaches. Metric wire with insulation under 70 degC gets
// the 70 degC value times the root of the smaller rise, which is computed, not
// printed.
//
// Between two sizes the value is interpolated on logarithmic axes of area.
// Below the thinnest size it falls in proportion to the area, above the
// thickest it grows with the root of the area: both on the low side, and not
// published. It fails for insulation that is not from 60 to 400 degC, or a
// wire without area.
func (t *Tables) Ampacity(q AmpacityQuery) (Ampacity, error) {
	insulation := q.InsulationC
	if insulation == 0 {
		insulation = 60
	}
	if !(insulation >= 60 && insulation <= 400) {
		return Ampacity{}, fmt.Errorf("tables: ampacity for insulation of %g degC %w (want 60 to 400 degC)", insulation, ErrNotFound)
	}
	if !(q.Wire.AreaMM2 > 0) {
		return Ampacity{}, fmt.Errorf("tables: ampacity of a wire of %g mm2 %w", q.Wire.AreaMM2, ErrNotFound)
	}
	metric := q.Wire.Size.System == Metric
	best, found := t.curveFor(insulation, q.FreeAir, metric)
	factor := 1.0
	if !found {
		// Only metric wire gets here: the US table begins at 60 degC.
		if best, found = t.curveFor(lowestMetricC, q.FreeAir, true); !found {
			return Ampacity{}, fmt.Errorf("tables: ampacity of %s %w", q.Wire.Name, ErrNotFound)
		}
		factor = math.Sqrt((insulation - best.ambientC) / (best.insulationC - best.ambientC))
		best.insulationC = insulation
	}
	a := Ampacity{
		AmpsA:       factor * logInterpolate(best.amps, q.Wire.AreaMM2, 1, 0.5),
		AmbientC:    best.ambientC,
		InsulationC: best.insulationC,
		Source:      best.source,
	}
	for i := range t.ampacities {
		c := &t.ampacities[i].Value
		if found && a.coolers < maxCooler && c.system == best.system && c.freeAir == best.freeAir && c.ambientC == best.ambientC && c.insulationC < best.insulationC {
			a.cooler[a.coolers] = column{logInterpolate(c.amps, q.Wire.AreaMM2, 1, 0.5), c.insulationC}
			a.coolers++
		}
	}
	return a, nil
}

// lowestMetricC is the lowest insulation class of the metric tables.
const lowestMetricC = 70

// curveFor picks the hottest column not above the insulation; among equals
// the one for free air when that is allowed.
func (t *Tables) curveFor(insulationC float64, freeAir, metric bool) (ampacityCurve, bool) {
	var best ampacityCurve
	found := false
	for i := range t.ampacities {
		c := t.ampacities[i].Value
		if (c.system == Metric) != metric || c.insulationC > insulationC || (c.freeAir && !freeAir) {
			continue
		}
		if !found || c.insulationC > best.insulationC || (c.insulationC == best.insulationC && c.freeAir) {
			best, found = c, true
		}
	}
	return best, found
}

func readAmpacity(t *Tables, w *row) {
	c := ampacityCurve{
		freeAir:     w.flag("free_air"),
		insulationC: w.number("insulation_c", span{40, 300}),
		ambientC:    w.number("ambient_c", span{-40, 200}),
		source:      w.source(),
	}
	if c.ambientC >= c.insulationC {
		w.fault("ambient_c", c.ambientC, fmt.Sprintf("less than insulation_c, %g", c.insulationC))
		return
	}
	amps := span{0.1, 2000}
	if w.has("awg") {
		c.system = AWG
		c.amps = w.gaugeCurve(amps)
	} else {
		c.amps = w.curve("area_mm2", span{0.01, 1000}, "amps", amps)
	}
	c.amps = w.rising("amps", c.amps)
	put(w, &t.ampacities, c)
}

// gaugeCurve reads amps by AWG number, thinnest wire first, as amps by area.
func (w *row) gaugeCurve(amps span) []Point {
	gauges, values := w.numbers("awg", span{-3, 40}), w.numbers("amps", amps)
	if len(gauges) != len(values) {
		w.fault("amps", fmt.Sprintf("%d numbers", len(values)), fmt.Sprintf("as many as awg has: %d", len(gauges)))
	}
	if len(gauges) == 0 || len(gauges) != len(values) {
		return []Point{{X: 1, Y: 1}} // there is a fault already
	}
	points := make([]Point, len(gauges))
	for i, number := range gauges {
		if i > 0 && number >= gauges[i-1] {
			w.fault("awg", fmt.Sprintf("%g after %g", number, gauges[i-1]), "falling numbers, the thinnest wire first")
		}
		points[i] = Point{AWGAreaMM2(int(number)), values[i]}
	}
	return points
}
