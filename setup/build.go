package setup

import (
	"math"

	"example.org/packcheck/battery"
	"example.org/packcheck/chemistry"
	"example.org/packcheck/drive"
	"example.org/packcheck/internal/quantity"
	"example.org/packcheck/tables"
	"example.org/packcheck/wiring"
)

// of returns the picked value of a figure, 0 when nothing is known: the value
// by which the physics packages, too, mean "unknown".
func of(pick Pick, f *Figure) float64 {
	if !f.Known {
		return 0
	}
	return pick(f)
}

// PackSpec returns the whole pack at one choice of its figures, two joined
// packs taken as one.
func (p *Parts) PackSpec(pick Pick) battery.Spec {
	s := p.OnePackSpec(pick)
	if other, unlike := p.SecondPackSpec(pick); unlike {
		return together(s, other, p.Pack.Joined == "series")
	}
	switch p.Pack.Joined {
	case "series":
		s.CellsInSeries *= 2
		s.ResistanceOhm *= 2
		s.MassKg *= 2
	case "parallel":
		s.Strings = 2 * max(s.Strings, 1)
		s.CapacityAh *= 2
		s.ResistanceOhm /= 2
		s.MassKg *= 2
		s.MaxCurrentA *= 2
	}
	return s
}

// SecondPackSpec returns the other of two joined packs at one choice of its
// figures; ok is false where it is like the first.
func (p *Parts) SecondPackSpec(pick Pick) (s battery.Spec, ok bool) {
	b := p.Pack.Second
	if b == nil {
		return s, false
	}
	if b.like(&p.Pack) {
		s = p.onePackSpec(pick, p.secondHealth(pick))
		size := of(pick, &b.CapacityAh) / of(pick, &p.Pack.CapacityAh)
		s.ResistanceOhm *= float64(b.CellsInSeries) / float64(p.Pack.CellsInSeries) / size
		s.MaxCurrentA *= size
	} else {
		s = battery.Spec{Profile: b.Profile, RateHours: b.Profile.Capacity.RatedHours, Health: p.secondHealth(pick), ClosedShell: p.Pack.ClosedShell}
		s.MaxCurrentA = b.Profile.Discharge.ContinuousC * of(pick, &b.CapacityAh)
	}
	s.MassKg = p.secondKg(pick)
	s.CellsInSeries, s.Strings, s.CapacityAh = b.CellsInSeries, 1, of(pick, &b.CapacityAh)
	if p.Pack.Honesty.Known {
		s.CapacityAh *= pick(&p.Pack.Honesty)
	}
	return s, true
}

// Alike reports whether it is one pack, or two of one kind of cells and of as many: no
// vehicle is sold with others.
func (b *PackPart) Alike() bool {
	return b.Second == nil || b.Second.like(b) && b.Second.CellsInSeries == b.CellsInSeries
}

// like reports whether the other pack is like the first but for what is told of it.
func (b *SecondPart) like(first *PackPart) bool { return b.Profile.Title == first.Profile.Title }

// secondKg is the mass of the other of two joined packs: of the same cells it is in
// proportion to what they hold.
func (p *Parts) secondKg(pick Pick) float64 {
	b, first := p.Pack.Second, &p.Pack
	cells := float64(b.CellsInSeries) * of(pick, &b.CapacityAh) // Ah
	if !b.like(first) {
		return b.Profile.NominalV * cells / b.Profile.Mass.WhPerKg / b.Profile.Mass.CellShare
	}
	return of(pick, &first.MassKg) * cells / (float64(first.CellsInSeries) * of(pick, &first.CapacityAh))
}

// steep is a profile that loses as much at high currents as one draw says.
func (b *PackPart) steep(profile chemistry.Profile, pick Pick) chemistry.Profile {
	hours := profile.Capacity.RatedHours
	if b.TestedHours > 0 {
		hours = b.TestedHours
	}
	if b.LeftBehind.Known {
		return profile.Leaving(pick(&b.LeftBehind), hours)
	}
	return profile.Steeper(pick(&b.Steepness), hours)
}

// secondHealth is the health of the other of two joined packs.
func (p *Parts) secondHealth(pick Pick) float64 {
	if h := &p.Pack.Second.Health; h.Known {
		return pick(h)
	}
	return of(pick, &p.Pack.Health)
}

// OnePackSpec returns the pack at one choice of its figures; of two joined
// packs, one.
func (p *Parts) OnePackSpec(pick Pick) battery.Spec {
	return p.onePackSpec(pick, of(pick, &p.Pack.Health))
}

func (p *Parts) onePackSpec(pick Pick, health float64) battery.Spec {
	b := &p.Pack
	profile := b.Profile
	if b.CellsAt.Known {
		profile = b.Members[chemistry.Pick(b.Members, pick(&b.CellsAt))].Profile
	}
	s := battery.Spec{
		Profile: profile, CellsInSeries: b.CellsInSeries, Strings: b.Strings,
		CapacityAh: of(pick, &b.CapacityAh), RateHours: of(pick, &b.RateS) / 3600, Health: health,
		ResistanceOhm: of(pick, &b.ResistanceOhm), ClosedShell: b.ClosedShell,
		MassKg: of(pick, &b.MassKg), MaxCurrentA: of(pick, &b.MaxCurrentA),
	}
	s.CoolingWM2K, s.ShellShare = of(pick, &b.CoolingWM2K), of(pick, &b.ShellShare)
	if b.Honesty.Known {
		s.CapacityAh *= pick(&b.Honesty)
	}
	s.CellsAlike = b.WatchesCells
	if b.Weakest.Known {
		s.WeakestShort = pick(&b.Weakest)
	}
	if b.Steepness.Known || b.LeftBehind.Known {
		steep := b.steep(profile, pick)
		s.WellC, s.WellKPerS, s.WellRatio = steep.Wells.C, steep.Wells.KPerS, steep.Capacity.Ratio
	}
	if b.SelfDischarge.Known {
		s.Profile.Keeping.LossPerMonth = pick(&b.SelfDischarge)
	}
	if b.ResistanceFactor.Known {
		growth := profile.Resistance.Growth(s.Health)
		if b.GrowthAt80.Known {
			growth = battery.GrowthAt(s.Health, pick(&b.GrowthAt80))
		}
		s.ResistanceFactor, s.OhmicFactor, s.Grown = pick(&b.ResistanceFactor), growth, growth
		if profile.Family != chemistry.Lithium { // of which it is not known what part grows
			s.ResistanceFactor, s.OhmicFactor, s.Grown = s.ResistanceFactor*growth, 1, 1
		}
		if b.TabsOhm.Known && s.CapacityAh > 0 { // beside the cells' own
			own := s.ResistanceFactor * float64(s.CellsInSeries) * profile.Resistance.OhmAh.At(0.5) / s.CapacityAh
			s.OhmicFactor += pick(&b.TabsOhm) / own
		}
	}
	return s
}

// PackC returns the pack's temperature at the start: its own, or the air's.
func (p *Parts) PackC(pick Pick) float64 {
	if p.Pack.TemperatureC.Known {
		return pick(&p.Pack.TemperatureC)
	}
	return pick(&p.Outing.AirC)
}

// Motor returns one motor at one choice of its figures, with its heat where the
// can table has it. Winding limits are left to the caller. On a bench load it is zero.
func (p *Parts) Motor(pick Pick) drive.Motor {
	m := p.Motors
	if m == nil {
		return drive.Motor{}
	}
	d := drive.Motor{
		TorqueConstant: pick(&m.TorqueConstant), WindingOhm: pick(&m.WindingOhm),
		WindingH: of(pick, &m.WindingH), NoLoadA: of(pick, &m.NoLoadA), RotorInertiaKgM2: of(pick, &m.RotorInertiaKgM2),
	}
	if m.Coupled {
		d.TorqueConstant *= math.Sqrt(d.WindingOhm / m.WindingOhm.Likely)
		d.TorqueConstant = min(max(d.TorqueConstant, m.LeastK), m.MostK)
		// Friction hardly depends on the winding: more turns, less current.
		d.NoLoadA *= m.TorqueConstant.Likely / d.TorqueConstant
	}
	if m.AmbientKPerW.Known && m.WindingTauS.Known && m.CaseTauS.Known {
		all := pick(&m.AmbientKPerW) // a fan of its own cools the case only
		d.Thermal = drive.ThermalFromTimes(drive.ThermalTimes{
			WindingToAirKPerW: all, WindingShare: windingShare * m.AmbientKPerW.Likely / all,
			WindingTauS: pick(&m.WindingTauS), CaseTauS: pick(&m.CaseTauS),
		})
	}
	return d
}

// windingShare is the part of a small motor's likely thermal resistance that lies
// between winding and case, below all that may be drawn of the whole: 0.2 of closed
// precision motors, from memory, whose windings lie nearer to it. With the winding's time
// it makes a heat of 6 J/K of size 390 and of 12 of size 550, which is that of their copper.
// Estimate, no published source.
const windingShare = 0.3

// TotalKg returns all that moves: vehicle, rider, pack or both joined packs.
func (p *Parts) TotalKg(pick Pick) float64 {
	kg := of(pick, &p.Pack.MassKg)
	switch {
	case p.Pack.Second != nil:
		kg += p.secondKg(pick)
	case p.Pack.Joined != "":
		kg *= 2
	}
	if p.Vehicle != nil {
		kg += pick(&p.Vehicle.MassKg)
	}
	if p.Rider != nil {
		kg += pick(&p.Rider.MassKg)
	}
	return kg
}

// motors is how many there are at one choice of the figures, chain how many of
// them share the voltage.
func (p *Parts) motors(pick Pick) int { return max(int(math.Round(pick(&p.Motors.Count))), 1) }

func (p *Parts) chain(pick Pick) int {
	if p.Motors.Wiring.Text == "series" {
		return p.motors(pick)
	}
	return 1
}

// DriveVehicle returns motors, gears, wheels, mass and ground at one choice of
// the figures. On a bench load it is zero.
func (p *Parts) DriveVehicle(pick Pick) drive.Vehicle {
	if p.Vehicle == nil || p.Gears == nil || p.Motors == nil {
		return drive.Vehicle{}
	}
	v, g := p.Vehicle, p.Gears
	motor, motors, chain := p.Motor(pick), p.motors(pick), p.chain(pick)
	radius := pick(&v.WheelDiameterM) / 2
	ratio := pick(&g.Ratio)
	if g.Fitted {
		ratio = g.fittedRatio(motor, radius, pick(&g.NewSpeedMS), float64(motors)*pick(&g.Efficiency))
	}
	mass := p.TotalKg(pick)
	slope := math.Atan(pick(&v.Slope))
	return drive.Vehicle{
		Motor: motor, Motors: motors, MotorsInSeries: chain,
		GearRatio: ratio, GearEfficiency: pick(&g.Efficiency), WheelRadiusM: radius, MassKg: mass,
		RollN: drive.RollingN(drive.Rolling{
			MassKg: mass, HardWheelM: pick(&v.RollingM), WheelRadiusM: radius, SlopeRad: slope,
		}),
		GradeN:       drive.SlopeN(drive.Slope{MassKg: mass, SlopeRad: slope}),
		DragNS2PerM2: drive.DragCoefficient(drive.Air{DragFactor: 1, FrontalM2: pick(&v.DragAreaM2)}),
		GripN: drive.GripLimitN(drive.Grip{
			Friction: pick(&v.Grip), MassKg: mass, DrivenShare: pick(&v.DrivenShare), SlopeRad: slope, HeightShare: v.HeightShare,
		}),
	}
}

// Gears beyond these are not made for such vehicles: 147 and 188 to 1 were seen,
// and a third less and more is allowed for.
const leastRatio, mostRatio = 40, 260

// startReserve is the stalled pull of a vehicle, as it was sold, over what its
// greatest load takes on a lawn: with a quarter more, a fifth of the speed of its
// free wheels is left there. Weak motors have lower gears for it. Common practice,
// no published source.
const startReserve = 1.25

// fittedRatio is the gearing with which a motor and a wheel come to a speed on
// the level, or a lower one that gets the greatest load going. motors is how many
// there are, times the efficiency of the gears.
//
// At speed the motor equations leave two gears, of which the lower one draws
// less: K w G^2 - (V - R I0) G + R T / (motors K) = 0. Where the motors cannot
// reach the speed it is the gear in which they come nearest to it. The motors of
// 57 A stall and 15 000 rpm on 300 mm wheels that ran at 5 to 5.8 km/h have 147:1.
func (g *GearPart) fittedRatio(motor drive.Motor, radiusM, speedMS, motors float64) float64 {
	volts := g.fittedV - motor.WindingOhm*motor.NoLoadA
	perGear := motor.TorqueConstant * speedMS / radiusM // V
	drop := motor.WindingOhm * g.runNM / (motors * motor.TorqueConstant)
	ratio := (volts + math.Sqrt(max(volts*volts-4*perGear*drop, 0))) / (2 * perGear)
	if stall := motors * motor.TorqueConstant * volts / motor.WindingOhm; stall > 0 {
		ratio = max(ratio, g.startNM/stall)
	}
	return min(max(ratio, leastRatio), mostRatio)
}

// fastest is the greatest speed at which motors can turn the wheels of a vehicle that
// they drive on the level, in whatever gear: half of their volts are then back EMF.
func (g *GearPart) fastest(motor drive.Motor, radiusM, motors float64) float64 {
	volts := g.fittedV - motor.WindingOhm*motor.NoLoadA
	return volts * volts * motors * radiusM / (4 * motor.WindingOhm * g.runNM)
}

// DriveController returns the controller at one choice of its figures. Its
// resistance is not in it: it belongs to [Parts.PathSpec].
func (p *Parts) DriveController(pick Pick) drive.Controller {
	c := &p.Controller
	d := drive.Controller{
		Chopper: c.Kind.Text == "chopper",
		RampS:   of(pick, &c.RampS), LimitA: of(pick, &c.LimitA),
		MaxV: of(pick, &c.MaxV), ContinuousA: of(pick, &c.ContinuousA), PeakA: of(pick, &c.PeakA), InputF: of(pick, &c.InputF),
	}
	for i := range p.Cutoffs {
		d.ModuleRampS += of(pick, &p.Cutoffs[i].RampS)
	}
	if c.ConverterV.Known {
		d.Converter = drive.Converter{OutV: pick(&c.ConverterV), LimitA: of(pick, &c.ConverterLimitA)}
	}
	return d
}

// Size returns the wire's size at one choice of its figures.
func (w *WirePart) Size(pick Pick) tables.WireSize {
	if w.AreaMM2.Known {
		return tables.WireSize{System: tables.Metric, AreaMM2: pick(&w.AreaMM2)}
	}
	number := pick(&w.Gauge)
	if w.Automotive && number != math.Round(number) { // drawn: only even sizes are made
		number = min(max(2*math.Round(number/2), thickestAutomotive), thinnestAutomotive)
	}
	s := tables.WireSize{System: tables.AWG, Gauge: int(math.Round(number))}
	if w.Automotive {
		s.System = tables.Automotive
	}
	return s
}

// The sizes of the automotive table (SAE J1128) end here.
const thickestAutomotive, thinnestAutomotive = 8, 18

// FuseSpec returns the fuse; ok is false when there is none or too little is
// known of it. A form that is not given is taken as the small blade.
func (p *Parts) FuseSpec(pick Pick) (spec wiring.FuseSpec, ok bool) {
	f := &p.Fuse
	if f.Absent || !f.RatingA.Known || f.row.Form == "" {
		return spec, false
	}
	spec = wiring.FuseSpec{Form: f.row, RatingA: pick(&f.RatingA), VoltageV: of(pick, &f.MaxV)}
	if f.DistanceM.Known {
		spec.DistanceM = new(pick(&f.DistanceM))
	}
	return spec, true
}

// PathSpec returns the way from pack to motors, there and back, at one choice
// of its figures; the zero spec when the setup has no wire. The fuse is put in
// when [Parts.FuseSpec] has one.
func (p *Parts) PathSpec(pick Pick) (wiring.PathSpec, error) {
	var s wiring.PathSpec
	if p.Wire == nil {
		return s, nil
	}
	w := p.Wire
	run, err := wiring.NewRun(p.Tables, wiring.RunSpec{
		Size: w.Size(pick), OneWayM: pick(&w.OneWayM), InsulationC: of(pick, &w.InsulationC),
	})
	if err != nil {
		return s, err
	}
	s.Runs, s.Contacts = []wiring.Run{run}, make([]wiring.Contact, 0, 2)
	if n := int(math.Round(pick(&w.Joints))); n > 0 {
		joint := wiring.Contact{Name: "joints", Kind: wiring.Joint, Ohm: pick(&w.JointOhm), Count: n}
		if w.JointKind.Known {
			joint.Name, joint.SteadyA, joint.Source = w.joint.Name, w.joint.SteadyA.Low, w.joint.SteadyA.Source
		}
		s.Contacts = append(s.Contacts, joint)
	}
	contact := wiring.Contact{Name: "pedal switch", Kind: wiring.Switch, Ohm: of(pick, &p.Controller.Ohm)}
	if p.Controller.Kind.Text == "chopper" {
		contact.Name, contact.Kind = "controller", wiring.Controller
	}
	s.Contacts = append(s.Contacts, contact)
	if spec, ok := p.FuseSpec(pick); ok {
		if s.Fuse, err = wiring.NewFuse(spec); err != nil {
			return s, err
		}
	}
	return s, nil
}

// Printed returns a figure's likely value in the user's units.
func (p *Parts) Printed(f *Figure) string {
	if !f.Known {
		return "unknown"
	}
	return quantity.FormatBoth(f.kind, f.Range.Likely, p.System)
}
