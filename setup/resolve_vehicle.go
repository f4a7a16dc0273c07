package setup

import (
	"cmp"
	"fmt"

	"example.org/packcheck/chemistry"
	"example.org/packcheck/internal/quantity"
	"example.org/packcheck/tables"
)

// class returns the kind of vehicle that defaults are taken from.
func (r *resolver) class() tables.VehicleClass {
	seats := 0
	if v := r.setup.Vehicle.Seats; v.Given {
		seats = int(v.Likely)
	}
	return r.tab.VehicleClassFor(r.parts.Vehicle.DesignV.Likely, seats)
}

// usualFor says which vehicles a default was taken from.
func usualFor(c tables.VehicleClass) string {
	seats := "one seat"
	if c.Seats > 1 {
		seats = fmt.Sprintf("%d seats", c.Seats)
	}
	return fmt.Sprintf("Not given; usual for a %g V vehicle with %s.", c.DesignV, seats)
}

// vehicle settles everything about the vehicle but motors and gears.
func (r *resolver) vehicle() {
	raw := r.setup.Vehicle
	p := &VehiclePart{}
	r.parts.Vehicle = p
	p.DesignV = r.or(raw.DesignVoltage, r.designDefault())
	class := r.class()
	p.Class = class.Name
	why := usualFor(class)
	p.MassKg = r.or(raw.Mass, blank{
		table: "vehicle", name: "mass", kind: quantity.Mass, Range: span(class.MassKG),
		why: why, source: class.MassKG.Source,
	})
	p.WheelDiameterM = r.or(raw.WheelDiameter, blank{
		table: "vehicle", name: "wheel_diameter", kind: quantity.Length, Range: span(class.WheelDiameterM),
		why: why, source: class.WheelDiameterM.Source,
	})
	p.Tyres = r.tyres(raw)
	r.drivenShare(raw)
	r.ground(raw)
	p.Slope = r.or(raw.Slope, blank{
		table: "vehicle", name: "slope", kind: quantity.Grade, Range: quantity.Exactly(0),
		why: "Not given; taken as level. A slope takes far more current.", source: srcUse,
	})
	// There is no key for air drag: at the speed of a ride-on it is a few
	// percent of what the ground takes.
	p.DragAreaM2 = r.derived(blank{
		table: "vehicle", name: "drag_area", kind: quantity.NoKind, Range: quantity.Spread(0.25, 0.5, 0.8),
		why: "Air drag of a child sitting upright.", source: srcDrag,
	})
	if raw.HasBoard.Given {
		p.Board = Choice{Key: raw.HasBoard.Key, Known: true, Text: "no"}
		if raw.HasBoard.Yes {
			p.Board.Text = "yes"
		}
	}
	p.RatedLoadKg = r.orUnknown("vehicle", "rated_load", quantity.Mass, raw.RatedLoad)
	p.Remote = raw.RemoteControl.Yes
	p.Accessories = Choice{Key: r.key("vehicle", "accessories"), Text: raw.Accessories.Text, Known: raw.Accessories.Given}
	p.Brake = Choice{Key: r.key("vehicle", "brake"), Text: raw.Brake.Text, Known: raw.Brake.Given}
	p.UsualLoadKg = class.LoadKG.Likely
	p.WeakestPartV = r.orUnknown("vehicle", "weakest_part_voltage", quantity.Voltage, raw.WeakestPartVoltage)
	r.track(&p.DesignV, &p.MassKg, &p.WheelDiameterM, &p.DrivenShare, &p.RollingM, &p.Grip, &p.Slope, &p.DragAreaM2, &p.WeakestPartV)
}

// tyres settles what the wheels run on. Somebody who describes the wheels would
// name a rubber face; only where nothing is said of them is it a guess.
func (r *resolver) tyres(raw Vehicle) Choice {
	const why = "Not given; such vehicles usually run on hard plastic wheels."
	if raw.WheelDiameter.Given && !raw.Tyres.Given {
		return Choice{Key: r.key("vehicle", "tyres"), Text: "hard", Known: true, Why: why, Source: srcUse}
	}
	return r.choose(raw.Tyres, "vehicle", "tyres", "hard", why, srcUse)
}

// designDefault finds out what voltage a vehicle was made for.
func (r *resolver) designDefault() blank {
	b := blank{table: "vehicle", name: "design_voltage", kind: quantity.Voltage, source: srcGiven}
	s := r.setup
	motors := 1.0
	if s.Motors.Wiring.Text == "series" {
		motors = 2
		if s.Motors.Count.Given {
			motors = s.Motors.Count.Likely
		}
	}
	first := s.Pack
	if o := s.Original; o != nil {
		first = o.Pack
	} else if r.original != nil {
		first = r.original.Pack
	}
	originalPack := s.Original != nil || r.original != nil
	switch {
	case originalPack && first.Label.Given:
		if l, err := r.label(first.Label.Text, chemistry.Profile{}); err == nil && l.NominalV > 0 {
			b.Range, b.why = quantity.Exactly(l.NominalV), "Not given; the voltage of the original pack."
			return b
		}
	case s.Motors.RatedVoltage.Given:
		b.Range, b.why = s.Motors.RatedVoltage.Range.Scale(motors), "Not given; follows from the motors' rated voltage."
		return b
	}
	if p := &r.parts.Pack; p.Profile.Family == chemistry.LeadAcid && p.CellsInSeries > 0 {
		b.Range = quantity.Exactly(p.Profile.NominalV * float64(p.CellsInSeries))
		b.why = "Not given; a lead-acid battery is taken to be the kind that the vehicle was made for."
		return b
	}
	b.source = srcUse
	b.Range, b.why = quantity.Exactly(12), "Not given; most ride-ons are made for 12 V."
	if can, err := r.tab.MotorCan(s.Motors.Can.Text); s.Motors.Can.Given && err == nil {
		for _, c := range r.tab.VehicleClasses() {
			if c.Can == can.Name && c.DesignV != 12 {
				b.Range = quantity.Exactly(c.DesignV)
				b.why = fmt.Sprintf("Not given; vehicles with motors of size %s are usually made for this.", can.Name)
				b.source = c.Source
				break
			}
		}
	}
	return b
}

// drivenShare settles how much of the weight rests on driven wheels.
func (r *resolver) drivenShare(raw Vehicle) {
	p := r.parts.Vehicle
	driven, wheels := 2.0, 4.0
	if raw.Wheels.Given {
		wheels = raw.Wheels.Likely
	}
	each := r.setup.Motors.Count.Given && r.setup.Motors.Count.Likely >= wheels // a motor for each wheel
	switch {
	case raw.DrivenWheels.Given:
		driven, each = raw.DrivenWheels.Likely, false
	case each:
		driven = wheels
	}
	driven = min(driven, wheels)
	share := driven / wheels
	b := blank{
		table: "vehicle", name: "driven_wheels", kind: quantity.Fraction, source: srcUse,
		Range: quantity.Spread(0.8*share, share, 1.2*share).Clamp(0, 1),
		why:   "What counts is the weight on them: a fifth more or less, by where the child sits.",
	}
	if rear := r.tab.Figure(tables.RearAxleShare); wheels == 4 && driven <= 2 && !each {
		part := driven / 2 // of the axle
		b.Range, b.source = span(rear.Value).Scale(part), rear.Source
		b.why = "What counts is the weight on them. They are taken to be rear ones, nearer to which the child sits, and onto which a climb shifts more."
		p.HeightShare = part * r.tab.Figure(tables.HeightOverWheelbase).Likely
	}
	switch {
	case each: // or two motors to each of two wheels
		b.Range, b.why = quantity.Spread(0.5, 1, 1), "There are as many motors as wheels."
	case driven == wheels:
		b.Range = quantity.Exactly(1)
	}
	if raw.DrivenWheels.Given && raw.Wheels.Given {
		p.DrivenShare = r.derived(b)
		return
	}
	b.shown = fmt.Sprintf("%g of %g wheels", driven, wheels)
	if raw.DrivenWheels.Given {
		b.name = "wheels"
	}
	b.why = "Not given; the usual number. " + b.why
	p.DrivenShare = r.assume(b)
}

// ground settles what rolls and grips. Without a ground the range runs from
// smooth concrete to short grass.
func (r *resolver) ground(raw Vehicle) {
	p := r.parts.Vehicle
	rubber := p.Tyres.Text == "rubber"
	of := func(g tables.Ground) (rolling, grip tables.Value) {
		if rubber {
			return g.RubberRolling, g.GripRubber
		}
		return g.Rolling, g.GripHard
	}
	roll := blank{table: "vehicle", name: "ground", kind: quantity.Length}
	grip := blank{table: "vehicle", name: "ground_grip", kind: quantity.NoKind}
	if raw.Ground.Given {
		g, err := r.tab.Ground(raw.Ground.Text)
		if err != nil {
			r.noWord(raw.Ground, raw.Ground.Text, r.groundNames())
			return
		}
		rv, gv := of(g)
		p.Ground = Choice{Key: raw.Ground.Key, Text: g.Name, Known: true}
		roll.Range, roll.source = span(rv), rv.Source
		grip.Range, grip.source = span(gv), gv.Source
		roll.why = fmt.Sprintf("Rolling resistance on %s, as a length.", raw.Ground.Text)
		grip.why = fmt.Sprintf("Friction of the wheels on %s.", raw.Ground.Text)
		p.RollingM, p.Grip = r.derived(roll), r.derived(grip)
		return
	}
	easy, err1 := r.tab.Ground("smooth concrete")
	usual, err2 := r.tab.Ground("asphalt")
	hard, err3 := r.tab.Ground("short grass")
	if err1 != nil || err2 != nil || err3 != nil {
		r.fault(0, "vehicle.ground", "", "a ground table that has smooth concrete, asphalt and short grass")
		return
	}
	p.Ground = r.choose(raw.Ground, "vehicle", "ground", usual.Name, "Not given; anything from smooth concrete to short grass is allowed for.", srcUse)
	er, eg := of(easy)
	ur, ug := of(usual)
	hr, hg := of(hard)
	roll.Range = quantity.Spread(er.Low, ur.Likely, hr.High)
	grip.Range = quantity.Spread(min(eg.Low, hg.Low), ug.Likely, max(eg.High, hg.High))
	roll.why, roll.source = "Follows from the ground, which was not given.", hr.Source
	grip.why, grip.source = "Follows from the ground, which was not given.", ug.Source
	p.RollingM, p.Grip = r.derived(roll), r.derived(grip)
	p.RollingM.Assumed, p.Grip.Assumed = true, true
}

func (r *resolver) groundNames() []string {
	var names []string
	for _, g := range r.tab.Grounds() {
		names = append(names, g.Name)
	}
	return names
}

// rider settles the child's mass: weighed, or by age, or by the ages for which
// such vehicles are sold.
func (r *resolver) rider() {
	raw := r.setup.Rider
	p := &RiderPart{AgeYears: r.orUnknown("rider", "age", quantity.Age, raw.Age)}
	r.parts.Rider = p
	defer r.track(&p.MassKg)
	if raw.Mass.Given {
		p.MassKg = r.given(quantity.Mass, raw.Mass)
		return
	}
	low, likely, high := 3.0, 4.5, 6.0
	b := blank{table: "rider", name: "mass", kind: quantity.Mass, why: "Neither mass nor age was given; taken as a child of 3 to 6 years."}
	if raw.Age.Given {
		low, likely, high = raw.Age.Low, raw.Age.Likely, raw.Age.High
		b.why = "Not weighed; from the lightest to the heaviest of twenty children of this age."
	}
	young, err1 := r.tab.ChildMass(low)
	middle, err2 := r.tab.ChildMass(likely)
	old, err3 := r.tab.ChildMass(high)
	if err1 != nil || err2 != nil || err3 != nil {
		if !r.wrong(r.key("rider", "mass")) {
			r.fault(raw.Age.Line, raw.Age.Key, raw.Age.Text, "rider.mass for a rider of this age")
		}
		return
	}
	b.Range = quantity.Spread(young.P5KG, middle.P50KG, old.P95KG)
	var ages *mixture
	if raw.Age.Given && low < high {
		ages = r.ages(low, high)
		b.Range = ages.ends()
	}
	b.remark = cmp.Or(old.Note, young.Note)
	if len(middle.Sources) > 0 {
		b.source = middle.Sources[0]
	}
	if n := raw.Count; n.Given && n.High > 1 {
		b.Range = quantity.Range{Low: b.Range.Low * n.Low, Likely: b.Range.Likely * n.Likely, High: b.Range.High * n.High}
		b.why += fmt.Sprintf(" %s of them ride.", n.Text)
		ages = nil
	} else if seats := r.setup.Vehicle.Seats; !n.Given && seats.Given && seats.Likely > 1 && !raw.Age.Given {
		b.Range.High *= seats.Likely
		b.why += " At most every seat is taken."
		ages = nil
	}
	p.MassKg = r.assume(b)
	p.MassKg.mix = ages
}

// ages is the mass of a child of any age between two, all alike: the lightest of the
// youngest and the heaviest of the oldest are each one in twenty of one age only.
func (r *resolver) ages(low, high float64) *mixture {
	const parts = 6
	var kinds []kind
	for i := range parts {
		c, err := r.tab.ChildMass(low + (high-low)*(float64(i)+0.5)/parts)
		if err != nil { // the ends are in the table, then so is what lies between
			continue
		}
		kinds = append(kinds, kind{quantity.Spread(c.P5KG, c.P50KG, c.P95KG), 1. / parts})
	}
	m, _ := mixed(kinds...)
	return m
}
