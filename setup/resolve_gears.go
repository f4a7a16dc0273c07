package setup

import (
	"fmt"

	"example.org/packcheck/drive"
	"example.org/packcheck/internal/portable"
	"example.org/packcheck/internal/quantity"
	"example.org/packcheck/tables"
)

// gears settles ratio and efficiency.
func (r *resolver) gears() {
	raw := r.setup.Gears
	p := &GearPart{}
	r.parts.Gears = p
	class := r.class()
	stage := r.tab.Figure(tables.GearStageEfficiency)
	p.Efficiency = r.or(raw.Efficiency, blank{
		table: "gears", name: "efficiency", kind: quantity.Fraction, Range: stagesOf(stage.Value),
		why: "Not given; three stages of plastic gears.", source: stage.Source,
	})
	if raw.Ratio.Given {
		p.Ratio = r.given(quantity.Ratio, raw.Ratio)
	} else {
		r.fitRatio(class)
	}
	if !p.Fitted { // otherwise it follows from what is drawn
		r.track(&p.Ratio)
	}
	r.track(&p.NewSpeedMS, &p.Efficiency, &p.NewRideS, &p.RideDoubt, &p.NewRiseK)
}

// stagesOf is the efficiency of the plastic stages of the usual gearbox.
func stagesOf(one tables.Value) quantity.Range {
	const stages = 3
	return quantity.Spread(portable.Pow(one.Low, stages), portable.Pow(one.Likely, stages), portable.Pow(one.High, stages))
}

// runningShare is what motors that run get of the volts that a vehicle was made for:
// a new block of 12 V 7 Ah that gives 5 A, behind the usual wire, leaves 11.4 V, one of
// 6 V 4.5 Ah that gives 4 A 5.6 V. Computed with this program; speeds told of vehicles
// were driven on their batteries.
func runningShare(designV float64) float64 {
	if designV < 9 {
		return 0.935
	}
	return 0.95
}

// fitRatio settles gears that nobody counted by the speed that they were chosen
// for: the one that the box claims, or the usual one of the class. Ratio, motor
// and wheel then belong together, as they do in a vehicle that was made so.
func (r *resolver) fitRatio(class tables.VehicleClass) {
	p := r.parts.Gears
	r.chosenFor(p, class)
	if p.told != nil && r.parts.Motors.AmbientKPerW.Known {
		rise := r.tab.Figure(tables.NewMotorRise)
		p.NewRiseK = r.derived(blank{
			table: "motors", name: "new_rise", kind: quantity.NoKind, Range: span(rise.Value),
			why: "How hot motors run in vehicles as they were made.", source: rise.Source,
		})
	}
	motor := r.parts.Motor(Likely)
	radius := r.parts.Vehicle.WheelDiameterM.Likely / 2
	all := float64(r.parts.motors(Likely)) * p.Efficiency.Likely
	at := func(speed float64) float64 { return p.fittedRatio(motor, radius, speed, all) }
	p.Ratio = Figure{
		Range: quantity.Spread(at(p.NewSpeedMS.High), at(p.NewSpeedMS.Likely), at(p.NewSpeedMS.Low)),
		Key:   r.key("gears", "fitted_ratio"), kind: quantity.Ratio, Known: true, Assumed: true, System: r.parts.System,
		Why: p.NewSpeedMS.Why, Source: p.NewSpeedMS.Source,
	}
	why := fmt.Sprintf("Not given; fits motor and wheel to a speed of %s when new.", p.NewSpeedMS.String())
	if p.NewRideS.Known {
		why += fmt.Sprintf(" What is drawn with it is weighed by how long such vehicles are told to last when new, %s.", p.NewRideS.String())
	}
	r.note(r.key("gears", "ratio"), p.Ratio.String(), why, p.NewSpeedMS.Source)
}

// chosenFor fills in what gears were chosen for: speed, load and ride when new.
func (r *resolver) chosenFor(p *GearPart, class tables.VehicleClass) {
	p.Fitted = true
	if claim := r.setup.Vehicle.ClaimedSpeed; claim.Given {
		p.NewSpeedMS = r.derived(blank{
			table: "vehicle", name: "claimed_speed", kind: quantity.Speed, source: srcClaim,
			Range: quantity.Spread(0.8*claim.Low, 0.95*claim.Likely, 1.1*claim.High),
			why:   "The speed on the box, reached within a fifth.",
		})
	} else {
		p.NewSpeedMS = r.derived(blank{
			table: "gears", name: "ratio", kind: quantity.Speed, Range: span(class.TopSpeedMS),
			why: usualFor(class), source: class.TopSpeedMS.Source,
		})
		p.startNM = startReserve * r.wheelNM("short grass", class.MassKG.Likely+class.LoadKG.Likely)
	}
	if p.told = r.toldOf(class); p.told != nil && !p.told.fast {
		p.NewRideS = r.derived(blank{
			table: "vehicle", name: "new_ride_time", kind: quantity.Duration, Range: p.told.rideS,
			why: usualFor(class), source: class.RideS.Source,
		})
		p.RideDoubt = r.derived(blank{
			table: "vehicle", name: "new_ride_doubt", kind: quantity.NoKind, Range: quantity.Spread(0.5, 1, 2),
			why: "How far off what is told of a class may be.", source: class.RideS.Source,
		})
	}
	p.runKg = class.MassKG.Likely + class.LoadKG.Likely/2
	p.runNM = r.wheelNM("asphalt", p.runKg)
	p.fittedV = r.parts.Vehicle.DesignV.Likely / r.chain()
	if v := r.setup.Motors.RatedVoltage; v.Given {
		p.fittedV = v.Likely
	}
	p.fittedV *= runningShare(r.parts.Vehicle.DesignV.Likely)
}

// wheelNM is the torque at the wheels that so much mass takes on level ground,
// whatever their size: force goes with one over the radius of a hard wheel.
func (r *resolver) wheelNM(ground string, kg float64) float64 {
	g, err := r.tab.Ground(ground)
	if err != nil {
		return 0
	}
	return drive.RollingN(drive.Rolling{MassKg: kg, HardWheelM: g.Rolling.Likely, WheelRadiusM: 1})
}
