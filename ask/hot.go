package ask

import (
	"fmt"
	"math"

	"example.org/packcheck/answer"
	"example.org/packcheck/battery"
	"example.org/packcheck/tables"
)

// Part is what was felt or measured.
type Part string

// The parts.
const (
	HotBattery Part = "battery"
	HotMotor   Part = "motor" // its can
	HotWire    Part = "wire"  // or a plug
	HotMetal   Part = "metal" // that a child holds
	HotPlastic Part = "plastic"
)

// Parts returns the parts.
func Parts() []Part { return []Part{HotBattery, HotMotor, HotWire, HotMetal, HotPlastic} }

// Hot asks whether something is too hot, and where its temperature is heading.
type Hot struct {
	Part    Part
	TempC   float64  // as measured, -40 to 300 degC
	AfterS  float64  // seconds of driving before it was measured; 0 = not told
	AirC    *float64 // nil = 20 degC
	Battery Battery  // with a label its own limits count; may be left out
}

// touched are the rises that parts which a child can reach may have (source
// "iec-62115-touch").
func touched(part Part) float64 {
	t := tables.Builtin()
	switch part {
	case HotMetal, HotMotor:
		return t.Figure(tables.TouchRiseMetal).Likely
	default:
		return t.Figure(tables.TouchRisePlastic).Likely
	}
}

// Answer returns the temperature; beside it the one that it is heading for, where
// that can be told.
func (q Hot) Answer() (Answer, error) {
	var a Answer
	var in inputs
	known := false
	for _, p := range Parts() {
		known = known || p == q.Part
	}
	if !known {
		in.fault("Part is %q; want one of %q", q.Part, Parts())
	}
	in.within("TempC", q.TempC, -40, 300, "degC")
	in.unless("AfterS", q.AfterS, 1, 86400, "s")
	airC := in.celsius(&a, "AirC", q.AirC, roomC)
	var m *battery.Model
	guess := false
	if q.Battery.Label != "" {
		b, err := q.Battery.find()
		in.add(err)
		if err == nil {
			m, guess = b.model, b.guess
		}
	}
	if err := in.err(); err != nil {
		return Answer{}, err
	}
	a.Asked = fmt.Sprintf("is a %s of %s too hot", q.Part, celsius(q.TempC))
	a.is(exactly(string(q.Part), q.TempC, "degC"))
	t := tables.Builtin()
	holds := airC + touched(q.Part)
	if q.TempC > holds {
		a.say("Too hot for a child to touch: in air of %s what it holds may have %s.", celsius(airC), celsius(holds))
		a.level(answer.Watch, false)
	} else {
		a.say("Below what a child may hold: %s in air of %s.", celsius(holds), celsius(airC))
	}
	a.Limit = &Limit{What: "touched by a child", Value: holds, Unit: "degC"}
	a.cite(t.Figure(tables.TouchRiseMetal).Source)
	if bare := q.Part == HotMotor || q.Part == HotMetal; bare && q.TempC > holds {
		if s := t.BurnsIn(q.TempC); !math.IsInf(s, 1) {
			a.say("Bare metal so hot burns skin that lies on it for %s or longer.", seconds(s))
			a.cite(t.BurnsAfter(s).Source)
		}
	}
	a.beyond(q, m, q.TempC, guess)
	if heading, ok := q.heading(m, airC); ok {
		a.beside(ranged("heading for", heading, "degC"))
		a.say("Driven on like this it is heading for %s.", figureWords(a.Beside[0]))
		a.cite("motor-heat-guess")
	}
	a.beware("Stop, take the pack off and let it cool. Swelling, a smell or hissing: keep away and call for help.", "common-charging")
	return a.checked()
}

// beyond judges the limits of the part itself.
func (a *Answer) beyond(q Hot, m *battery.Model, tempC float64, guess bool) {
	t := tables.Builtin()
	over := func(limit tables.FigureName, l answer.Level, words string) {
		f := t.Figure(limit)
		if tempC > f.Low {
			a.Limit = &Limit{What: f.What, Value: f.Low, Unit: "degC"}
			a.level(l, false)
			a.say("%s", words)
			a.cite(f.Source)
		}
	}
	switch q.Part {
	case HotBattery:
		if m != nil {
			if worse(m.Judge(battery.Use{HottestC: tempC, ColdestC: tempC, HasTemps: true}), answer.FixFirst) {
				a.Limit = nil // its own limit counts more
			}
			a.judged(m.Judge(battery.Use{HottestC: tempC, ColdestC: tempC, HasTemps: true}), guess)
			return
		}
		over(tables.BatterySurface, answer.Danger, "That is more than a battery in a toy may have on its surface.")
	case HotMotor:
		over(tables.PlasticSoftens, answer.FixFirst, "Plastic end bells and gears soften at such heat, and the winding inside is hotter still.")
	case HotWire:
		if tempC > coldestC {
			a.Limit = &Limit{What: "insulation, the lowest", Value: coldestC, Unit: "degC"}
			a.level(answer.FixFirst, true)
			a.say("Insulation of the lowest kind ends at %d C: thicker wire or a better joint is needed.", coldestC)
			a.cite("cfr-33-183-425")
		}
	}
}

// leastShare is the share of its time constant that something must have warmed
// for before anybody can tell where it is heading. Own choice.
const leastShare = 0.1

// heading is where a temperature that rose from the air's ends:
//
//	Ta + (T - Ta)/(1 - exp(-t/tau))
//
// with tau of a motor's can from the table, that of a battery from its mass,
// heat capacity and cooling.
func (q Hot) heading(m *battery.Model, airC float64) (answer.Range, bool) {
	var tau tables.Value
	switch {
	case q.Part == HotMotor:
		can, err := tables.Builtin().MotorCan("550")
		if err != nil {
			return answer.Range{}, false
		}
		tau = can.CaseTauS
	case q.Part == HotBattery && m != nil:
		tau = coolingTau(m)
	}
	if q.AfterS <= 0 || q.TempC <= airC || !tau.Known() || q.AfterS < leastShare*tau.High {
		return answer.Range{}, false
	}
	end := func(tau float64) float64 { return airC + (q.TempC-airC)/(1-math.Exp(-q.AfterS/tau)) }
	return answer.Range{Low: end(tau.Low), Likely: end(tau.Likely), High: end(tau.High)}, true
}

// coolingTau is the time in which a battery gets within a third of its last
// temperature: m c/(h A).
func coolingTau(m *battery.Model) tables.Value {
	h := m.Profile().Heat
	w := battery.WidthsOf(m.Profile().Family, "", battery.MakerUnknown)
	kg := m.MassKg()
	perCooling := kg * h.SpecificJKgK / (h.AreaM2PerKg23 * math.Pow(kg, 2./3))
	return tables.Value{
		Low: perCooling / w.CoolingWM2K.High, Likely: perCooling / w.CoolingWM2K.Likely / w.ShellShare.Likely,
		High: perCooling / w.CoolingWM2K.Low / w.ShellShare.Low, Source: w.CoolingWM2K.Source,
	}
}
