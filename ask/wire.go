package ask

import (
	"fmt"

	"example.org/packcheck/answer"
	"example.org/packcheck/tables"
	"example.org/packcheck/wiring"
)

const (
	sideAbove = answer.Above
	coldestC  = 60 // insulation of which nothing is known, as package tables takes it
	hottestC  = 105
)

// Wire asks for the thinnest wire that carries a current, and that loses no more
// than a tenth of the volts where length and volts are told.
type Wire struct {
	CurrentA    float64  // 0.1 to 1000 A, lasting
	OneWayM     float64  // length of the way there; 0 = not told
	SystemV     float64  // volts that a drop is a share of; 0 = not told
	InsulationC float64  // rated temperature; 0 = not told: 60 degC, the safe side
	AirC        *float64 // of the air; nil = 20 degC
}

// Answer returns a gauge (AWG); its ends are those of 60 and of 105 degC
// insulation where that was not told.
func (q Wire) Answer() (Answer, error) {
	var a Answer
	var in inputs
	in.within("CurrentA", q.CurrentA, 0.1, 1000, "A")
	in.unless("OneWayM", q.OneWayM, 0.01, 50, "m")
	in.unless("SystemV", q.SystemV, 1, 200, "V")
	in.unless("InsulationC", q.InsulationC, 60, 250, "degC")
	if (q.OneWayM == 0) != (q.SystemV == 0) {
		in.fault("a length needs the volts beside it, and volts a length; want both, such as 3 m and 12 V, or neither")
	}
	aroundC := in.around(&a, q.AirC)
	if err := in.err(); err != nil {
		return Answer{}, err
	}
	t := tables.Builtin()
	if q.InsulationC == 0 {
		a.assume("insulation of %d C, the lowest", coldestC)
	}
	safe, by, err := q.thinnest(t, max(q.InsulationC, coldestC), aroundC)
	if err != nil {
		return Answer{}, err
	}
	other := safe
	if q.InsulationC == 0 {
		if other, _, err = q.thinnest(t, hottestC, aroundC); err != nil {
			return Answer{}, err
		}
	}
	a.Asked = "which wire carries " + amps(q.CurrentA)
	a.is(Figure{What: "gauge", Value: float64(safe.Size.Gauge), Low: float64(safe.Size.Gauge), High: float64(other.Size.Gauge), Unit: "AWG"})
	area, err := q.metric(t, max(q.InsulationC, coldestC), aroundC)
	if err != nil {
		return Answer{}, err
	}
	a.beside(exactly("in metric sizes", area, "mm2"))
	a.asks = tables.AWGAreaMM2(safe.Size.Gauge) + area
	carries, err := t.Ampacity(tables.AmpacityQuery{Wire: safe, InsulationC: max(q.InsulationC, coldestC)})
	if err != nil {
		return Answer{}, err
	}
	a.say("%s or thicker: it carries %s%s.", safe.Name, amps(carries.At(aroundC)), by)
	if other.Size.Gauge != safe.Size.Gauge {
		a.say("If %d C is printed on its insulation, %s will do.", hottestC, other.Name)
	}
	a.Limit = &Limit{What: "the wire carries", Value: carries.At(aroundC), Unit: "A"}
	a.cite(carries.Source)
	if q.OneWayM > 0 {
		drop := t.Figure(tables.DropOrdinary)
		a.beside(exactly("drop", q.dropOf(safe), "V"))
		a.cite(drop.Source)
	}
	a.beware(fmt.Sprintf("The fuse follows the wire: at most %s here, within %s of the pack.",
		amps(t.Figure(tables.FuseShareOfAmpacity).Likely*carries.At(aroundC)), length(t.Figure(tables.FuseReachBare).Likely)),
		t.Figure(tables.FuseShareOfAmpacity).Source)
	return a.checked()
}

// dropOf is what a wire loses there and back, warm from the current.
func (q Wire) dropOf(w tables.Wire) float64 {
	return 2 * q.OneWayM * w.OhmPerM(coldestC) * q.CurrentA
}

// suits reports whether a wire carries the current and keeps the volts, and what
// decided against it.
func (q Wire) suits(t *tables.Tables, w tables.Wire, insulationC, aroundC float64) (carries, keeps bool, err error) {
	amp, err := t.Ampacity(tables.AmpacityQuery{Wire: w, InsulationC: insulationC})
	if err != nil {
		return false, false, err
	}
	const hair = 1e-9
	carries = amp.At(aroundC)*(1+hair) >= q.CurrentA
	keeps = q.OneWayM == 0 || q.dropOf(w) <= t.Figure(tables.DropOrdinary).Likely*q.SystemV*(1+hair)
	return carries, keeps, nil
}

// thinnest finds the gauge, and says in words when the drop decided it.
func (q Wire) thinnest(t *tables.Tables, insulationC, aroundC float64) (tables.Wire, string, error) {
	because := ""
	for _, gauge := range []int{16, 14, 12, 10, 8, 6, 4, 2, 1, 0, -1, -2, -3} { // 33 CFR 183.425(d): no single wire below AWG 16
		w, err := t.Wire(tables.WireSize{System: tables.AWG, Gauge: gauge})
		if err != nil {
			return w, "", err
		}
		carries, keeps, err := q.suits(t, w, insulationC, aroundC)
		if err != nil {
			return w, "", err
		}
		if carries && keeps {
			return w, because, nil
		}
		if carries {
			because = "; a thinner one would lose more than a tenth of the volts"
		}
	}
	return tables.Wire{}, "", fmt.Errorf("ask: no single wire up to 4/0 AWG carries %s so far; want less current or a shorter way", amps(q.CurrentA))
}

// metric finds the metric size.
func (q Wire) metric(t *tables.Tables, insulationC, aroundC float64) (float64, error) {
	for _, mm2 := range []float64{1, 1.5, 2.5, 4, 6, 10, 16, 25, 35, 50, 70, 95, 120} { // IEC 60228
		w, err := t.Wire(tables.WireSize{System: tables.Metric, AreaMM2: mm2})
		if err != nil {
			return 0, err
		}
		carries, keeps, err := q.suits(t, w, insulationC, aroundC)
		if err != nil {
			return 0, err
		}
		if carries && keeps {
			return mm2, nil
		}
	}
	return 0, fmt.Errorf("ask: no single wire up to 120 mm2 carries %s so far; want less current or a shorter way", amps(q.CurrentA))
}

// Drop asks what is lost on the way there and back.
type Drop struct {
	Wire        tables.WireSize
	CurrentA    float64  // 0.01 to 5000 A
	OneWayM     float64  // 0.01 to 50 m, the way there
	SystemV     float64  // volts that the drop is a share of; 0 = not told
	InsulationC float64  // rated temperature; 0 = not told: 60 degC
	AirC        *float64 // of the air; nil = 20 degC
}

// Answer returns the drop in volts, from cold wire to wire as warm as the
// current makes it.
func (q Drop) Answer() (Answer, error) {
	var a Answer
	var in inputs
	in.within("CurrentA", q.CurrentA, 0.01, 5000, "A")
	in.within("OneWayM", q.OneWayM, 0.01, 50, "m")
	in.unless("SystemV", q.SystemV, 1, 200, "V")
	in.unless("InsulationC", q.InsulationC, 60, 250, "degC")
	aroundC := in.around(&a, q.AirC)
	t := tables.Builtin()
	run, err := wiring.NewRun(t, wiring.RunSpec{Size: q.Wire, OneWayM: q.OneWayM, InsulationC: q.InsulationC})
	in.add(err)
	if err := in.err(); err != nil {
		return Answer{}, err
	}
	if q.InsulationC == 0 {
		a.assume("insulation of %d C, the lowest", coldestC)
	}
	at := func(tempC float64) float64 { return 2 * q.OneWayM * run.Wire.OhmPerM(tempC) * q.CurrentA }
	hotC := min(run.Ampacity.ConductorC(q.CurrentA, aroundC), max(q.InsulationC, coldestC))
	a.Asked = fmt.Sprintf("what %s loses at %s over %s", run.Wire.Name, amps(q.CurrentA), length(q.OneWayM))
	cold, hot := at(min(roomC, aroundC)), at(hotC)
	a.is(Figure{What: "drop", Value: (cold + hot) / 2, Low: cold, High: hot, Unit: "V"})
	a.beside(exactly("resistance, there and back", at(roomC)/q.CurrentA, "Ohm"), exactly("heat in each metre", hot*q.CurrentA/(2*q.OneWayM), "W"))
	a.say("%s over %s there and %s back.", figureWords(a.Figure()), length(q.OneWayM), length(q.OneWayM))
	a.cite(run.Wire.Source)
	if ordinary := t.Figure(tables.DropOrdinary); q.SystemV > 0 {
		a.Limit = &Limit{What: "drop, a tenth of " + volts(q.SystemV), Value: ordinary.Likely * q.SystemV, Unit: "V"}
		a.say("That is %s of %s.", percent(a.Value/q.SystemV), volts(q.SystemV))
		if hot > a.Limit.Value {
			a.level(answer.Watch, false)
		}
		a.cite(ordinary.Source)
	}
	if carries := run.Ampacity.At(aroundC); q.CurrentA > carries {
		a.say("The wire carries only %s for long: a thicker one is needed.", amps(carries))
		a.level(answer.FixFirst, q.InsulationC == 0)
		a.Limit = &Limit{What: "the wire carries", Value: carries, Unit: "A"}
		a.cite(run.Ampacity.Source)
	}
	if q.Wire.System == tables.AWG {
		extra := t.Figure(tables.AutomotiveExtra)
		a.beware(fmt.Sprintf("Automotive wire of the same number is thinner and loses about %.0f %% more.", 100*(extra.Likely-1)), extra.Source)
	} else {
		a.beware("Every plug and crimp on the way adds its own loss.", t.Figure(tables.JointWatch).Source)
	}
	return a.checked()
}
