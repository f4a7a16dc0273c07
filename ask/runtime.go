package ask

import (
	"math"
	"slices"

	"example.org/packcheck/answer"
	"example.org/packcheck/battery"
	"example.org/packcheck/chemistry"
	"example.org/packcheck/cutoff"
	"example.org/packcheck/tables"
)

// Runtime asks how long a full battery gives a constant current, and how much
// comes out.
type Runtime struct {
	Battery  Battery
	CurrentA float64  // 0.001 to 5000 A
	TempC    *float64 // of the battery and the air; nil = 20 degC
	UntilV   float64  // where it ends; 0 = the makers' end for this current
}

// Answer computes minutes; beside them the ampere-hours that come out and, for
// lead-acid, the time by Peukert's law.
func (q Runtime) Answer() (Answer, error) {
	var a Answer
	var in inputs
	in.within("CurrentA", q.CurrentA, 0.001, 5000, "A")
	in.unless("UntilV", q.UntilV, 0.5, 500, "V")
	tempC := in.celsius(&a, "TempC", q.TempC, roomC)
	b, err := in.battery(q.Battery)
	if err != nil {
		return Answer{}, err
	}
	m := b.model
	endV := func(m *battery.Model) float64 {
		if q.UntilV > 0 {
			return q.UntilV
		}
		return m.EndV(q.CurrentA)
	}
	var found [][]answer.Finding
	got, err := b.each(2, func(out []float64, m *battery.Model) error {
		run := m.Discharge(m.StateAt(1, tempC), q.CurrentA, endV(m), tempC)
		found = append(found, b.unrated(m.Judge(battery.Use{
			LastingA: q.CurrentA, ColdestC: tempC, HottestC: max(tempC, run.End.TempC), HasTemps: true,
		})))
		out[0], out[1] = run.Hours*60, run.Ah
		if q.UntilV == 0 { // makers end it where nothing is harmed
			return nil
		}
		drained, err := drainedBy(m, run.End)
		found[len(found)-1] = append(found[len(found)-1], drained...)
		return err
	})
	if err != nil {
		return Answer{}, err
	}
	a.Asked = "how long " + q.Battery.Label + " gives " + amps(q.CurrentA)
	a.is(spread("runtime", got[0], "min", math.MaxFloat64))
	a.beside(spread("comes out", got[1], "Ah", math.MaxFloat64))
	p := b.profile()
	a.cite(p.Capacity.Source)
	a.say("%s at %s, down to %s: %s of the %s on the label come out.",
		figureWords(a.Figure()), amps(q.CurrentA), volts(endV(m)), figureWords(a.Beside[0]), ampHours(b.parts.Pack.CapacityAh.Likely))
	if p.Family == chemistry.LeadAcid {
		a.peukert(battery.Peukert{CapacityAh: b.parts.Pack.CapacityAh.Likely, Hours: m.Spec().RateHours}, q.CurrentA)
	}
	b.tell(&a)
	guess := b.guess || b.parts.Pack.CapacityAh.Assumed
	a.Limit = &Limit{What: "lasting current", Value: m.ContinuousA(), Unit: "A"}
	a.cite(p.Discharge.Source)
	a.counted(found, guess, whole)
	a.caution(m)
	return a.checked()
}

// drainedBy is what a discharge has done to a pack that it leaves so, before it has stood
// for any time.
func drainedBy(m *battery.Model, end battery.State) ([]answer.Finding, error) {
	end.TempC = min(end.TempC, battery.MostTempC) // how hot it is, is told by itself
	left, err := cutoff.Idle(cutoff.Standing{Pack: m, Start: end, AmbientC: roomC})
	return slices.DeleteFunc(left.Findings, func(f answer.Finding) bool {
		return f.Code != cutoff.CodePastSaving && f.Reads != answer.AsAtOnce
	}), err
}

// peukert adds the time of the published law beside the model's.
func (a *Answer) peukert(law battery.Peukert, currentA float64) {
	k := tables.Builtin().Figure(tables.PeukertLead)
	minutes := func(exponent float64) float64 {
		law.Exponent = exponent
		return 60 * law.LastsH(currentA)
	}
	low, high := minutes(k.High), minutes(k.Low)
	if low > high { // slower than the rated hours
		low, high = high, low
	}
	a.beside(Figure{What: "Peukert's time", Value: minutes(k.Likely), Low: low, High: high, Unit: "min"})
	a.cite(k.Source)
}

// caution is the safety line on emptying a battery.
func (a *Answer) caution(m *battery.Model) {
	p := m.Profile()
	switch p.Family {
	case chemistry.LeadAcid:
		a.beware("Charge it the same day: one that stands flat for days is spoilt for good.", "sulfation")
	case chemistry.Lithium:
		a.beware("Let a cutoff end it. A lithium pack drained below its last limit must never be charged again.", "drained-lithium")
	default:
		a.beware("Stop when it fades: cells that are driven on are reversed.", "string-of-the-smallest")
	}
}
