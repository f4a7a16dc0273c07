package ask

import (
	"fmt"
	"math"

	"example.org/packcheck/answer"
	"example.org/packcheck/battery"
	"example.org/packcheck/charge"
	"example.org/packcheck/chemistry"
	"example.org/packcheck/drive"
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

// touched is how hot a part that a child can reach may be, where that comes from, and
// in which air: in warm air no rise over it excuses what burns.
func touched(part Part, airC float64) (mostC float64, source, in string) {
	name := tables.TouchRisePlastic
	if part == HotMetal || part == HotMotor {
		name = tables.TouchRiseMetal
	}
	rise := tables.Builtin().Figure(name)
	if mostC = airC + rise.Likely; mostC > battery.TouchedMostC {
		return battery.TouchedMostC, "astm-f963-touched", "in any air"
	}
	return mostC, rise.Source, "in air of " + celsius(airC)
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
	holds, source, air := touched(q.Part, airC)
	if q.TempC > holds {
		a.say("Too hot for a child to touch: %s what it holds may have %s.", air, celsius(holds))
		a.level(answer.Watch, false)
	} else {
		a.say("No hotter than what a child may hold: %s %s.", celsius(holds), air)
	}
	a.Limit = &Limit{What: "touched by a child", Value: holds, Unit: "degC"}
	a.cite(source)
	a.beyond(q, m, guess)
	if heading, ok := q.heading(m, airC); ok {
		a.ahead(q, m, heading, holds)
	}
	caution := "Swelling, a smell or hissing: keep away and call for help."
	if q.Part != HotBattery || !a.charging(q, m, guess).TooCold {
		caution = "Stop, take the pack off and let it cool. " + caution
	}
	if q.Part == HotMotor || q.Part == HotMetal {
		t := tables.Builtin()
		if s := t.BurnsIn(q.TempC); !math.IsInf(s, 1) {
			a.say("Bare metal so hot burns skin that lies on it for %s or longer.", seconds(s))
			a.cite(t.BurnsAfter(s).Source)
		}
	}
	a.beware(caution, "common-charging")
	return a.checked()
}

// beyond judges the limits of the part itself.
func (a *Answer) beyond(q Hot, m *battery.Model, guess bool) {
	t := tables.Builtin()
	over := func(limit tables.FigureName, l answer.Level, words string) {
		f := t.Figure(limit)
		if q.TempC > f.Low {
			a.Limit = &Limit{What: f.What, Value: f.Low, Unit: "degC"}
			a.level(l, false)
			a.say("%s", words)
			a.cite(f.Source)
		}
	}
	switch q.Part {
	case HotBattery:
		if m != nil {
			fs := m.Judge(surface(q.TempC))
			if worse(fs, answer.FixFirst) {
				a.Limit = nil // its own limit counts more
			}
			a.judged(fs, guess)
			return
		}
		if q.TempC > battery.TouchedMostC {
			a.level(answer.FixFirst, false)
			a.say("Find out why it gets so hot: a weak cell, a loose joint or too much load.")
		}
		over(tables.BatterySurface, answer.Danger, "That is more than a battery in a toy may have on its surface.")
	case HotMotor:
		over(tables.PlasticSoftens, answer.FixFirst, "Plastic end bells and gears soften at such heat, and the winding inside is hotter still.")
	case HotWire:
		if q.TempC > coldestC {
			a.Limit = &Limit{What: "insulation, the lowest", Value: coldestC, Unit: "degC"}
			a.level(answer.FixFirst, true)
			a.say("Insulation of the lowest kind ends at %d C: thicker wire or a better joint is needed.", coldestC)
			a.cite("cfr-33-183-425")
		}
	}
}

// surface is a battery that was felt or measured at tempC.
func surface(tempC float64) battery.Use {
	return battery.Use{HottestC: tempC, ColdestC: tempC, HasTemps: true, SurfaceC: tempC, Read: true}
}

// ahead judges where it is heading: no more than something to put right first, as no
// more than a guess tells it.
func (a *Answer) ahead(q Hot, m *battery.Model, heading answer.Range, holds float64) {
	f := ranged("heading for", heading, "degC")
	a.beside(f)
	words := "Driven on like this it is heading for " + figureWords(f)
	soft := tables.Builtin().Figure(tables.PlasticSoftens)
	classC, _ := drive.ClassLimitC("A") // what an unmarked winding is taken to have
	switch {
	case q.Part == HotMotor && heading.Likely > soft.Low:
		if !(q.TempC > soft.Low) { // else it was said
			a.Limit = &Limit{What: soft.What, Value: soft.Low, Unit: "degC"}
			words += fmt.Sprintf(": plastic end bells and gears soften from %.0f C, windings of class A stand %.0f C", soft.Low, classC)
		}
		a.say("%s. Put that right first: longer pauses, less load or fewer volts.", words)
		a.level(answer.FixFirst, true)
		a.cite(soft.Source, "iec-60085")
	case q.Part == HotMotor && heading.High > soft.Low:
		a.say("%s; plastic end bells and gears soften from %.0f C. Pause before that.", words, soft.Low)
		a.level(answer.Watch, true)
		a.cite(soft.Source)
	case q.Part == HotBattery && worse(m.Judge(surface(heading.Likely)), answer.FixFirst):
		a.say("%s, hotter than it may get. Put that right first: longer pauses or less load.", words)
		a.level(answer.FixFirst, true)
	case heading.Likely > holds && !(q.TempC > holds):
		a.say("%s, too hot for a child to touch.", words)
		a.level(answer.Watch, true)
	default:
		a.say("%s.", words)
	}
	a.cite("motor-heat-guess")
}

// charging says that a battery waits before it is charged where it is too hot or too cold
// for that; of one without a label what lithium wants, which frost on a charger harms most.
func (a *Answer) charging(q Hot, m *battery.Model, guess bool) charge.Gate {
	lithium, _ := chemistry.Builtin().Profile("li-ion")
	p, who := &lithium, "If it is lithium it"
	if m != nil {
		p, who = m.Profile(), "It"
	}
	gate := charge.GateAt(*p, q.TempC)
	level, limitC, than := answer.Watch, p.Charge.MaxTempC, "hotter"
	switch {
	case gate.Open:
		return gate
	case gate.TooCold:
		limitC, than = p.Charge.MinTempC, "colder"
		if p.Family == chemistry.Lithium {
			level = answer.FixFirst // as [charge.WaitFor] has it
		}
	}
	if a.Level == nil || level > *a.Level {
		a.Limit = &Limit{What: "charged", Value: limitC, Unit: "degC"}
		if gate.TooCold {
			a.Limit.Want = answer.Above
		}
	}
	a.level(level, guess)
	a.say("%s must not be charged at %s or %s: it waits until it has the warmth of a room.", who, celsius(limitC), than)
	a.cite(p.Charge.Source)
	return gate
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
