package setup

import (
	"fmt"
	"strings"

	"example.org/packcheck/chemistry"
	"example.org/packcheck/internal/quantity"
	"example.org/packcheck/tables"
)

// controller settles what switches the motors.
func (r *resolver) controller() {
	raw := r.setup.Controller
	p := &r.parts.Controller
	if r.setup.Bench.Given && !raw.Given {
		p.Kind = Choice{Key: r.key("controller", "kind"), Text: "contacts", Known: true}
		return // the load is all that there is
	}
	soft := raw.Ramp.Given && raw.Ramp.High > 0 || raw.CurrentLimit.Given
	p.Kind = r.among(raw.Kind, r.kinds(soft))
	chopper := p.Kind.Text == chopperKind
	p.InferredFromRamps = !raw.Kind.Given && soft
	contact := r.tab.Figure(tables.SwitchContactOhm)
	ohm := blank{
		table: "controller", name: "resistance", kind: quantity.Resistance, Range: span(contact.Value),
		why: "Not given; a used pedal switch.", source: contact.Source,
	}
	if chopper {
		ohm.Range, ohm.why, ohm.source = quantity.Spread(0.002, 0.006, 0.02), "Not given; transistors of a small speed control.", srcBoard
	}
	p.Ohm = r.or(raw.Resistance, ohm)
	p.LimitA = r.orUnknown("controller", "current_limit", quantity.Current, raw.CurrentLimit)
	switch {
	case raw.Ramp.Given:
		p.RampS = r.given(quantity.Duration, raw.Ramp)
	case chopper && !raw.Kind.Given && !soft:
		p.RampS = r.assume(blank{
			table: "controller", name: "ramp", kind: quantity.Duration, Range: quantity.Spread(0.2, 0.8, 2.5),
			why: "Not given; the soft start of boards that have one.", source: srcBoard,
		})
	case chopper && !raw.CurrentLimit.Given:
		p.RampS = r.assume(blank{
			table: "controller", name: "ramp", kind: quantity.Duration, Range: quantity.Exactly(0),
			why: "Neither a soft start nor a current limit was given; none is counted on.", source: srcBoard,
		})
	default:
		p.RampS = r.derived(blank{table: "controller", name: "ramp", kind: quantity.Duration, why: "No soft start.", source: srcGiven})
	}
	r.byClass(raw)
	p.PeakA = r.orUnknown("controller", "peak_current", quantity.Current, raw.PeakCurrent)
	p.InputF = r.orUnknown("controller", "input_capacitance", quantity.Capacitance, raw.InputCapacitance)
	r.standby(raw, chopper)
	r.converter(raw)
	r.track(&p.Ohm, &p.RampS, &p.LimitA, &p.MaxV, &p.ContinuousA, &p.PeakA, &p.InputF, &p.StandbyA, &p.ConverterV, &p.ConverterLimitA)
}

// classVolts is how much more than its nominal volts a controller of a class stands:
// the full battery of the class (28.8 V of 24 V, lead-acid on its charger), and most a
// margin on top of that. From memory of such boards.
var classVolts = [3]float64{1.2, 1.25, 1.5}

// byClass settles the highest volts and the lasting current: told, or from the
// printed class.
func (r *resolver) byClass(raw Controller) {
	p := &r.parts.Controller
	volts, amps, is := classOf(raw.Class.Text)
	if is && !raw.MaxVoltage.Given {
		v, _, _ := quantity.Parse(quantity.Voltage, volts)
		p.MaxV = r.assume(blank{
			table: "controller", name: "max_voltage", kind: quantity.Voltage,
			Range: quantity.Spread(classVolts[0]*v.Low, classVolts[1]*v.Likely, classVolts[2]*v.High),
			why:   fmt.Sprintf("Not given; the class %q names the battery that it is for, not the most that it stands.", raw.Class.Text), source: srcBoard,
		})
	} else {
		p.MaxV = r.orUnknown("controller", "max_voltage", quantity.Voltage, raw.MaxVoltage)
	}
	if is && !raw.ContinuousCurrent.Given {
		a, _, _ := quantity.Parse(quantity.Current, amps)
		p.ContinuousA = r.derived(blank{
			table: "controller", name: "continuous_current", kind: quantity.Current, Range: a,
			why: "Printed as its class.", source: srcGiven,
		})
	} else {
		p.ContinuousA = r.orUnknown("controller", "continuous_current", quantity.Current, raw.ContinuousCurrent)
	}
}

// chopperKind is the word for an electronic speed control.
const chopperKind = "chopper"

// kinds lists what may switch the motors.
func (r *resolver) kinds(soft bool) Choosing {
	c := Choosing{
		Key: r.key("controller", "kind"), Options: []Option{{"contacts", 1}}, Source: srcUse,
		Why: "Not given; plain contacts, which give the hardest launch.",
	}
	board := r.setup.Vehicle.HasBoard
	switch {
	case soft:
		c.Options, c.Why = []Option{{chopperKind, 1}}, "Not given; only an electronic speed control has a ramp or a current limit."
	case r.setup.Bench.Given, board.Given && !board.Yes:
	case board.Yes:
		c.Options, c.Source = []Option{{chopperKind, 0.6}, {"contacts", 0.4}}, srcBoard
		c.Why = "Not given; boards have transistors with a soft start, or relays that are plain contacts."
	default:
		c.Options, c.Source = []Option{{"contacts", 0.85}, {chopperKind, 0.15}}, srcBoard
		c.Why = "Not given; usually plain contacts, which give the hardest launch; a board may start softly."
	}
	return c
}

// standby settles what is drawn when nothing moves. Plain contacts draw
// nothing; where the setup does not even say that there are only contacts, a
// board may be there and drain the pack for as long as it is plugged in.
func (r *resolver) standby(raw Controller, chopper bool) {
	p := &r.parts.Controller
	hasBoard := r.setup.Vehicle.HasBoard
	b := blank{
		table: "controller", name: "standby_current", kind: quantity.Current, Range: quantity.Spread(0.001, 0.01, 0.05),
		why: "Not given; usual for a board that is left switched on.", source: srcBoard,
	}
	switch {
	case raw.StandbyCurrent.Given, chopper, hasBoard.Yes:
		p.StandbyA = r.or(raw.StandbyCurrent, b)
	case raw.Kind.Given, hasBoard.Given:
		b.Range, b.why, b.source = quantity.Exactly(0), "Plain contacts draw nothing while open.", srcGiven
		p.StandbyA = r.derived(b)
	default:
		b.Range, b.why = quantity.Spread(0, 0, 0.02), "Not given; plain contacts draw nothing, but a board would draw current all the time."
		p.StandbyA = r.assume(b)
	}
}

// OwnVolts is how far above the design voltage, or what a converter gives, the nominal
// volts of a pack may lie to be those that the vehicle was made for: four cells of iron
// phosphate are sold in the place of a 12 V block. Common practice, no published source.
const OwnVolts = 1.1

// converter settles a step-down converter, where one is described. One for today's pack
// was not in an original whose battery needs none.
func (r *resolver) converter(raw Controller) {
	p := &r.parts.Controller
	if r.original != nil {
		outV := raw.ConverterVoltage.Likely
		if !raw.ConverterVoltage.Given && r.parts.Vehicle != nil {
			outV = r.parts.Vehicle.DesignV.Likely
		}
		if r.parts.PackV() <= OwnVolts*outV {
			return
		}
	}
	p.ConverterLimitA = r.orUnknown("controller", "converter_limit", quantity.Current, raw.ConverterLimit)
	p.ConverterV = r.orUnknown("controller", "converter_voltage", quantity.Voltage, raw.ConverterVoltage)
	if raw.ConverterVoltage.Given || !raw.ConverterLimit.Given || r.parts.Vehicle == nil {
		return
	}
	p.ConverterV = r.assume(blank{
		table: "controller", name: "converter_voltage", kind: quantity.Voltage, Range: r.parts.Vehicle.DesignV.Range,
		why: "Not given; the voltage that the vehicle was made for.", source: srcGiven,
	})
}

// wire settles the way from pack to controller.
func (r *resolver) wire() {
	raw := r.setup.Wire
	p := &WirePart{Automotive: raw.Kind.Text == "automotive"}
	r.parts.Wire = p
	// One of the two is enough: the other is not missing.
	p.AreaMM2 = Figure{Key: r.key("wire", "area"), kind: quantity.Area, System: r.parts.System}
	p.Gauge = Figure{Key: r.key("wire", "gauge"), kind: quantity.Gauge, System: r.parts.System}
	switch {
	case raw.Area.Given:
		p.AreaMM2 = r.given(quantity.Area, raw.Area)
	case raw.Gauge.Given:
		p.Gauge = r.given(quantity.Gauge, raw.Gauge)
	default:
		p.Gauge = r.assume(blank{
			table: "wire", name: "gauge", kind: quantity.Gauge, Range: quantity.Spread(14, 16, 18),
			why: "Not given; the wire of such vehicles is usually thin.", source: srcWire,
		})
	}
	p.OneWayM = r.or(raw.OneWayLength, blank{
		table: "wire", name: "one_way_length", kind: quantity.Length, Range: quantity.Spread(0.6, 1, 1.8),
		why: "Not given; the usual way from pack to motors in a small vehicle.", source: srcWire,
	})
	p.InsulationC = r.or(raw.Insulation, blank{
		table: "wire", name: "insulation", kind: quantity.Temperature, Range: quantity.Exactly(60),
		why: "Not given; the usual insulation that stands least heat.", source: srcWire,
	})
	p.Joints = r.or(raw.Joints, blank{
		table: "wire", name: "joints", kind: quantity.Count, Range: quantity.Range{Low: 6, Likely: 8, High: 12},
		why: "Not counted; plugs, crimps and screws on the way there and back.", source: srcWire,
	})
	r.joint(raw)
	r.checkWire(raw)
	r.track(&p.Gauge, &p.AreaMM2, &p.OneWayM, &p.InsulationC, &p.Joints, &p.JointOhm)
}

// joint settles the resistance of one joint, new to aged.
func (r *resolver) joint(raw Wire) {
	p := r.parts.Wire
	kind := "crimped tab"
	if raw.Joint.Given {
		kind = raw.Joint.Text
	}
	j, err := r.tab.Joint(kind)
	if err != nil {
		var names []string
		for _, k := range r.tab.Joints() {
			names = append(names, k.Name)
		}
		r.noWord(raw.Joint, kind, names)
		return
	}
	if raw.Joint.Given {
		p.JointKind, p.joint = Choice{Key: raw.Joint.Key, Text: j.Name, Known: true}, j
	}
	b := blank{
		table: "wire", name: "joint_resistance", kind: quantity.Resistance,
		Range: span(j.NewOhm), source: j.Source,
		why: fmt.Sprintf("Not measured; %s, new to aged.", j.What),
	}
	if j.AgedOhm.Known() {
		b.Range = quantity.Spread(j.NewOhm.Low, j.NewOhm.High, j.AgedOhm.Likely)
	}
	if raw.Joint.Given && !raw.JointResistance.Given {
		p.JointOhm = r.derived(b)
		return
	}
	p.JointOhm = r.or(raw.JointResistance, b)
}

// checkWire notes a size that no wire of the tables has.
func (r *resolver) checkWire(raw Wire) {
	v := raw.Gauge
	if raw.Area.Given {
		v = raw.Area
	}
	if !v.Given || r.wrong(r.key("wire", "kind")) {
		return
	}
	for _, pick := range []Pick{Likely, func(f *Figure) float64 { return f.Low }, func(f *Figure) float64 { return f.High }} {
		if _, err := r.tab.Wire(r.parts.Wire.Size(pick)); err != nil {
			r.fault(v.Line, v.Key, v.Text, "a size of the wire table: "+plainError(err))
			return
		}
	}
}

// fuse settles the fuse. What is not given stays unknown: no fuse is invented.
func (r *resolver) fuse() {
	raw := r.setup.Fuse
	p := &r.parts.Fuse
	p.RatingA = r.orUnknown("fuse", "rating", quantity.Current, raw.Rating)
	p.MaxV = r.orUnknown("fuse", "max_voltage", quantity.Voltage, raw.MaxVoltage)
	p.DistanceM = r.orUnknown("fuse", "distance_from_pack", quantity.Length, raw.DistanceFromPack)
	r.track(&p.RatingA, &p.MaxV, &p.DistanceM)
	if !raw.Form.Given {
		if raw.Rating.Given {
			r.note(r.key("fuse", "form"), "small blade", "Not given; the usual form in small vehicles.", srcWire)
			p.row, _ = r.tab.Fuse(UsualFuseForm)
		}
		return
	}
	if fold(raw.Form.Text) == "none" {
		p.Absent = true
		p.Form = Choice{Key: raw.Form.Key, Text: "none", Known: true}
		return
	}
	f, err := r.tab.Fuse(raw.Form.Text)
	if err != nil {
		if form, amps := r.formAndAmps(raw.Form.Text); form != "" {
			r.fault(raw.Form.Line, raw.Form.Key, raw.Form.Text, fmt.Sprintf("%q; the %s belong under rating", form, amps))
			return
		}
		r.noWord(raw.Form, raw.Form.Text, append(r.tab.FuseForms(), "none"))
		return
	}
	p.Form, p.row = Choice{Key: raw.Form.Key, Text: f.Form, Known: true}, f
}

// formAndAmps parts "30 A blade" into a form of the table and the amps; empty where it
// is something else.
func (r *resolver) formAndAmps(text string) (form, amps string) {
	words := strings.Fields(text)
	for i := 1; i < len(words); i++ {
		for _, x := range [][2]string{{strings.Join(words[i:], " "), strings.Join(words[:i], " ")}, {strings.Join(words[:i], " "), strings.Join(words[i:], " ")}} {
			if _, _, err := quantity.Parse(quantity.Current, x[1]); err != nil {
				continue
			}
			if f, err := r.tab.Fuse(x[0]); err == nil {
				return f.Form, x[1]
			}
		}
	}
	return "", ""
}

// What an added module draws itself, in A, and in W at the most (source srcModule).
const leastModuleA, likelyModuleA, mostModuleW = 0.0001, 0.01, 1.5

// Where between the harm limit and the end of a discharge the electronics of a lithium pack
// that watch every cell open, as shares of the way. Common practice, no published source.
const opensLate, opens, opensSoon = 0.3, 0.6, 1.1

// watched is the voltage at which a pack opens of which is told that it watches every cell,
// and not at how many volts.
func (r *resolver) watched() (blank, bool) {
	p := &r.parts.Pack
	harm, empty := p.Profile.HarmV, p.Profile.EmptyV
	at := func(share float64) float64 { return float64(p.CellsInSeries) * (harm + share*(empty-harm)) }
	return blank{
		table: "cutoff.pack", name: "opens_at", kind: quantity.Voltage,
		Range: quantity.Spread(at(opensLate), at(opens), at(opensSoon)),
		why:   "Told is that the battery watches every cell, not at how many volts it switches itself off.", source: srcCutoff,
	}, p.WatchesCells && p.Profile.Family == chemistry.Lithium
}

// cutoffs settles what disconnects the pack. Nothing is invented: a pack whose setup names no
// cutoff, and of which nobody told that it watches every cell, has none that anybody may
// count on.
func (r *resolver) cutoffs() {
	c := r.setup.Cutoff
	its, watches := r.watched()
	for _, d := range []struct {
		where string
		raw   Cutoff
		ramp  Value
	}{
		{"pack", c.Pack, Value{}},
		{"module", c.Module.Cutoff, c.Module.Ramp},
		{"controller", c.Controller, Value{}},
	} {
		watched := watches && d.where == "pack" && !d.raw.OpensAt.Given
		if !d.raw.Given && !watched {
			continue
		}
		table := "cutoff." + d.where
		p := CutoffPart{
			Where:     d.where,
			ClosesAtV: r.orUnknown(table, "closes_at", quantity.Voltage, d.raw.ClosesAt),
			RampS:     r.orUnknown(table, "ramp", quantity.Duration, d.ramp),
			DelayS:    r.orUnknown(table, "delay", quantity.Duration, d.raw.Delay),
		}
		if watched {
			p.OpensAtV = r.assume(its)
		} else {
			p.OpensAtV = r.orUnknown(table, "opens_at", quantity.Voltage, d.raw.OpensAt)
		}
		if p.OpensAtV.Known {
			p.DelayS = r.or(d.raw.Delay, blank{
				table: table, name: "delay", kind: quantity.Duration, Range: quantity.Spread(0, 1, 3),
				why: "Not given; most wait a moment before they open.", source: srcCutoff,
			})
		}
		standby := blank{
			table: table, name: "standby_current", kind: quantity.Current, Range: quantity.Spread(0, 0.0001, 0.005),
			why: "Not given; what such a device usually draws itself.", source: srcCutoff,
		}
		if d.where == "pack" { // that of what only watches; a radio in it draws most
			standby.Range = quantity.Spread(0, 0.00005, 0.001)
		}
		if volts := r.parts.PackV(); d.where == "module" && volts > 0 {
			standby.Range = quantity.Spread(leastModuleA, likelyModuleA, max(mostModuleW/volts, likelyModuleA))
			standby.why, standby.source = "Not given; added modules draw from next to nothing to 1.5 W, open or closed.", srcModule
		}
		p.StandbyA = r.or(d.raw.StandbyCurrent, standby)
		r.parts.Cutoffs = append(r.parts.Cutoffs, p)
	}
	for i := range r.parts.Cutoffs {
		p := &r.parts.Cutoffs[i]
		r.track(&p.OpensAtV, &p.DelayS, &p.ClosesAtV, &p.StandbyA, &p.RampS)
	}
}
