package setup

import (
	"fmt"
	"math"
	"strings"

	"example.org/packcheck/drive"
	"example.org/packcheck/internal/quantity"
	"example.org/packcheck/tables"
)

// windingSpread is how far the torque constant of motors of one can size may lie
// from the rule that resistance goes with its square: the motors of the can
// table (540, 550 and three of size 775, 12 V) lie within 1.19 of it.
const windingSpread = 1.2

// motors settles the motors.
func (r *resolver) motors() {
	raw := r.setup.Motors
	p := &MotorPart{}
	r.parts.Motors = p
	class := r.class()
	p.Count = r.or(raw.Count, blank{
		table: "motors", name: "count", kind: quantity.Count, Range: span(class.Motors),
		why: usualFor(class), source: class.Motors.Source,
	})
	p.Wiring = r.wiring(raw, p.Count.Range)
	can, ok := r.can(raw, class)
	if !ok {
		return
	}
	r.countAsTold(class, can)
	r.ratedVoltage(raw, can)
	r.constants(raw, can)
	r.motorRest(raw, can)
	r.track(&p.Count, &p.TorqueConstant, &p.WindingOhm, &p.NoLoadA, &p.WindingH, &p.RotorInertiaKgM2,
		&p.AmbientKPerW, &p.WindingTauS, &p.CaseTauS)
}

// wiring settles how the motors are joined. Where both voltages were given they
// tell; otherwise one in ten vehicles of several motors has them in series.
func (r *resolver) wiring(raw Motors, count quantity.Range) Choice {
	key := r.key("motors", "wiring")
	if !raw.Wiring.Given && count.High < 1.5 {
		return Choice{Key: key, Text: "parallel", Known: true}
	}
	c := Choosing{
		Key: key, Options: []Option{{"parallel", 0.9}, {"series", 0.1}}, Source: srcWiring,
		Why: "Not given; the usual way, while some have motors of half the voltage one behind the other.",
	}
	if design := r.parts.Vehicle.DesignV; raw.RatedVoltage.Given && design.Known && !design.Assumed {
		c.Options = []Option{{"parallel", 1}}
		c.Why = "Not given; follows from the motors' rated voltage beside the vehicle's."
		if shared := raw.RatedVoltage.Likely * count.Likely; count.Likely > 1.5 && math.Abs(shared/design.Likely-1) < 0.2 {
			c.Options[0].Text = "series"
		}
	}
	return r.among(raw.Wiring, c)
}

// can finds the row of the can table.
func (r *resolver) can(raw Motors, class tables.VehicleClass) (tables.MotorCan, bool) {
	p := r.parts.Motors
	choice := r.among(raw.Can, r.cans(class))
	name := choice.Text
	can, err := r.tab.MotorCan(name)
	if err != nil {
		var names []string
		for _, c := range r.tab.MotorCans() {
			names = append(names, c.Name)
		}
		r.noWord(raw.Can, name, names)
		can, err = r.tab.MotorCan(class.Can) // the motor's other figures are checked all the same
		return can, err == nil
	}
	p.Can = choice
	p.Can.Text = can.Name
	return can, true
}

// motorsOf is what the motors of a row are called in a sentence.
func motorsOf(can tables.MotorCan) string {
	if size, found := strings.CutPrefix(can.Name, "ride-on "); found {
		return "motors of size " + size + " out of ride-ons"
	}
	return "motors of size " + can.Name
}

// chain returns how many motors share the voltage.
func (r *resolver) chain() float64 {
	if r.parts.Motors.Wiring.Text == "series" {
		return max(r.parts.Motors.Count.Likely, 1)
	}
	return 1
}

// ratedVoltage settles the voltage that printed figures are for, where one is
// needed.
func (r *resolver) ratedVoltage(raw Motors, _ tables.MotorCan) {
	p := r.parts.Motors
	printed := raw.NoLoadSpeed.Given || raw.StallCurrent.Given
	bare := !raw.WindingResistance.Given || !raw.TorqueConstant.Given
	switch {
	case raw.RatedVoltage.Given:
		p.RatedV = r.given(quantity.Voltage, raw.RatedVoltage)
	case printed || bare:
		p.RatedV = r.assume(blank{
			table: "motors", name: "rated_voltage", kind: quantity.Voltage,
			Range: r.parts.Vehicle.DesignV.Range.Scale(1 / r.chain()),
			why:   "Not given; what each motor gets of the voltage that the vehicle was made for.", source: srcGiven,
		})
	default:
		p.RatedV = r.orUnknown("motors", "rated_voltage", quantity.Voltage, raw.RatedVoltage)
	}
}

// typical is a can's typical motor, wound for a voltage: turns go with the
// voltage, resistance and inductance with its square, current falls with it.
type typical struct {
	ohm, henry, noLoadA quantity.Range
	k                   quantity.Range // by the no-load speeds
}

func typicalOf(can tables.MotorCan, ratedV float64) typical {
	n := 1.0
	if ratedV > 0 && can.ClassV > 0 {
		n = ratedV / can.ClassV
	}
	const perRPM = math.Pi / 30
	k := func(rpm float64) float64 {
		return (can.ClassV - can.NoLoadA.Likely*can.WindingOhm.Likely) / (rpm * perRPM)
	}
	return typical{
		ohm:     span(can.WindingOhm).Scale(n * n),
		henry:   span(can.WindingH).Scale(n * n),
		noLoadA: span(can.NoLoadA).Scale(1 / n),
		k:       quantity.Spread(k(can.NoLoadRPM.High), k(can.NoLoadRPM.Likely), k(can.NoLoadRPM.Low)).Scale(n),
	}
}

// constants settles torque constant, resistance and no-load current from
// whatever was given.
func (r *resolver) constants(raw Motors, can tables.MotorCan) {
	p := r.parts.Motors
	usual := typicalOf(can, p.RatedV.Likely)
	hasR := raw.WindingResistance.Given || raw.StallCurrent.Given
	hasK := raw.TorqueConstant.Given || raw.NoLoadSpeed.Given
	r.noLoad(raw, can, usual)
	sameCan := fmt.Sprintf("Not given; follows from the other one: in %s the resistance goes with the square of the torque constant.", motorsOf(can))
	wide := fmt.Sprintf("Not given; %s differ this much, because the size says nothing of the winding.", motorsOf(can))
	ohm := blank{table: "motors", name: "winding_resistance", kind: quantity.Resistance}
	con := blank{table: "motors", name: "torque_constant", kind: quantity.TorqueConstant}
	gradient := usual.ohm.Likely / (usual.k.Likely * usual.k.Likely) // Ohm per constant squared
	switch {
	case hasR && hasK:
		r.fromLabel(raw, &ohm, &con)
		return
	case hasR:
		r.fromLabel(raw, &ohm, nil)
		l, h := math.Sqrt(p.WindingOhm.Low/gradient), math.Sqrt(p.WindingOhm.High/gradient)
		con.Range = quantity.Spread(l/windingSpread, math.Sqrt(p.WindingOhm.Likely/gradient), h*windingSpread)
		con.why, con.source = sameCan, srcWinding
		p.TorqueConstant = r.assume(con)
	case hasK:
		r.fromLabel(raw, nil, &con)
		c := p.TorqueConstant
		const s2 = windingSpread * windingSpread
		ohm.Range = quantity.Spread(gradient*c.Low*c.Low/s2, gradient*c.Likely*c.Likely, gradient*c.High*c.High*s2)
		ohm.why, ohm.source = sameCan, srcWinding
		p.WindingOhm = r.assume(ohm)
	default:
		ohm.Range, ohm.why, ohm.source = usual.ohm, wide, can.WindingOhm.Source
		p.WindingOhm = r.assume(ohm)
		con.Range = quantity.Spread(usual.k.Likely/windingSpread, usual.k.Likely, usual.k.Likely*windingSpread)
		con.why, con.source = wide, can.NoLoadRPM.Source
		con.shown = quantity.FormatRange(quantity.TorqueConstant, usual.k, r.parts.System)
		p.TorqueConstant = r.assume(con)
		p.Coupled, p.LeastK, p.MostK = true, usual.k.Low, usual.k.High
	}
}

// noLoad settles the no-load current where it does not follow from the rest.
func (r *resolver) noLoad(raw Motors, can tables.MotorCan, usual typical) {
	p := r.parts.Motors
	follows := raw.TorqueConstant.Given && raw.NoLoadSpeed.Given &&
		(raw.WindingResistance.Given || raw.StallCurrent.Given)
	if !raw.NoLoadCurrent.Given && follows {
		return // fromLabel finds it
	}
	p.NoLoadA = r.or(raw.NoLoadCurrent, blank{
		table: "motors", name: "no_load_current", kind: quantity.Current, Range: usual.noLoadA,
		why: fmt.Sprintf("Not given; usual for %s.", motorsOf(can)), source: can.NoLoadA.Source,
	})
}

// fromLabel finds the constants that follow from what was given, at every
// corner of the ranges given. A nil blank leaves that constant alone; where it
// is alone, the other comes from the can later.
func (r *resolver) fromLabel(raw Motors, ohm, con *blank) {
	p := r.parts.Motors
	if ohm != nil && raw.WindingResistance.Given {
		p.WindingOhm = r.given(quantity.Resistance, raw.WindingResistance)
		ohm = nil
	}
	if con != nil && raw.TorqueConstant.Given {
		p.TorqueConstant = r.given(quantity.TorqueConstant, raw.TorqueConstant)
		con = nil
	}
	if raw.WindingResistance.Given && raw.StallCurrent.Given && p.RatedV.Known {
		if ratio := raw.StallCurrent.Likely * raw.WindingResistance.Likely / p.RatedV.Likely; ratio > farApart || ratio < 1/farApart {
			r.fault(raw.StallCurrent.Line, raw.StallCurrent.Key, raw.StallCurrent.Text, fmt.Sprintf(
				"about %s, which is %s over %s (%s), or another of these: they cannot all be true",
				quantity.Format(quantity.Current, p.RatedV.Likely/raw.WindingResistance.Likely, quantity.Metric),
				quantity.Format(quantity.Voltage, p.RatedV.Likely, quantity.Metric), raw.WindingResistance.Key, raw.WindingResistance.Text))
		}
	}
	if ohm == nil && con == nil && p.NoLoadA.Known {
		return
	}
	if ohm != nil {
		// R = V / stall current.
		v, a := p.RatedV.Range, raw.StallCurrent.Range
		ohm.Range = quantity.Spread(v.Low/a.High, v.Likely/a.Likely, v.High/a.Low)
		ohm.why, ohm.source = "Rated voltage over stall current.", srcGiven
		p.WindingOhm = r.derived(*ohm)
	}
	if con == nil && p.NoLoadA.Known {
		return
	}
	r.corners(raw, con)
}

// notOneMotor notes figures that do not go together, where it is not told already
// that one of them is wrong.
func (r *resolver) notOneMotor(raw Motors, err error) {
	for _, name := range []string{"rated_voltage", "no_load_speed", "no_load_current", "stall_current", "winding_resistance", "torque_constant"} {
		if r.wrong(r.key("motors", name)) {
			return
		}
	}
	line := raw.NoLoadSpeed.Line
	if !raw.NoLoadSpeed.Given {
		line = raw.Line
	}
	r.fault(line, r.key("motors", "no_load_speed"), raw.NoLoadSpeed.Text,
		"figures that one motor can have: "+strings.TrimPrefix(err.Error(), "drive: "))
}

// corners runs the label through the motor equations at every corner of what
// was given and keeps the hull.
func (r *resolver) corners(raw Motors, con *blank) {
	p := r.parts.Motors
	resistance := p.WindingOhm
	if !resistance.Known {
		// Only the speed is known: the drop across the winding at no load is
		// small, the typical resistance will do for it.
		can, err := r.tab.MotorCan(p.Can.Text)
		if err != nil {
			return
		}
		resistance.Range = quantity.Exactly(typicalOf(can, p.RatedV.Likely).ohm.Likely)
	}
	var k, i0 []float64
	ends := func(v quantity.Range) [3]float64 { return [3]float64{v.Likely, v.Low, v.High} }
	for _, volt := range ends(p.RatedV.Range) {
		for _, speed := range ends(raw.NoLoadSpeed.Range) {
			for _, ohm := range ends(resistance.Range) {
				for _, amp := range ends(p.NoLoadA.Range) {
					m, err := drive.MotorFromLabel(drive.MotorLabel{
						RatedV: volt, NoLoadRadS: speed, WindingOhm: ohm, NoLoadA: amp,
						TorqueConstant: raw.TorqueConstant.Likely,
					})
					if err != nil {
						if len(k) == 0 {
							r.notOneMotor(raw, err)
							k, i0 = append(k, 1), append(i0, 0)
						}
						continue
					}
					k, i0 = append(k, m.TorqueConstant), append(i0, m.NoLoadA)
				}
			}
		}
	}
	if con != nil {
		con.Range = hull(k)
		con.why, con.source = "Follows from the printed speed at the rated voltage.", srcGiven
		p.TorqueConstant = r.derived(*con)
	}
	if !p.NoLoadA.Known {
		p.NoLoadA = r.derived(blank{
			table: "motors", name: "no_load_current", kind: quantity.Current, Range: hull(i0),
			why: "Follows from speed, torque constant and resistance.", source: srcGiven,
		})
	}
}

// hull returns the range over some values, the first of which is the likely
// one.
func hull(v []float64) quantity.Range {
	out := quantity.Exactly(v[0])
	for _, x := range v[1:] {
		out = out.Hull(quantity.Exactly(x))
	}
	return out
}

// motorRest settles what is left: inductance, inertia and heat.
func (r *resolver) motorRest(raw Motors, can tables.MotorCan) {
	p := r.parts.Motors
	usual := typicalOf(can, p.RatedV.Likely)
	why := fmt.Sprintf("Not given; usual for %s.", motorsOf(can))
	p.WindingH = r.or(raw.Inductance, blank{
		table: "motors", name: "inductance", kind: quantity.Inductance, Range: usual.henry,
		why: why, source: can.WindingH.Source,
	})
	p.RotorInertiaKgM2 = r.or(raw.RotorInertia, blank{
		table: "motors", name: "rotor_inertia", kind: quantity.Inertia, Range: span(can.RotorKGM2),
		why: why, source: can.RotorKGM2.Source,
	})
	heat := func(name string, k quantity.Kind, v tables.Value) Figure {
		if !v.Known() {
			return Figure{Key: r.key("motors", name), kind: k, System: r.parts.System}
		}
		return r.derived(blank{
			table: "motors", name: name, kind: k, Range: span(v),
			why: fmt.Sprintf("As %s are, with a fan of their own or shut in.", motorsOf(can)), source: v.Source,
		})
	}
	p.AmbientKPerW = heat("heat_resistance", quantity.NoKind, can.AmbientKPerW)
	p.WindingTauS = heat("winding_time", quantity.Duration, can.WindingTauS)
	p.CaseTauS = heat("case_time", quantity.Duration, can.CaseTauS)
}
