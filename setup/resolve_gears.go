package setup

import (
	"fmt"
	"math"

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
	const stages = 3 // plastic stages of the usual gearbox
	p.Efficiency = r.or(raw.Efficiency, blank{
		table: "gears", name: "efficiency", kind: quantity.Fraction,
		Range: quantity.Spread(portable.Pow(stage.Low, stages), portable.Pow(stage.Likely, stages), portable.Pow(stage.High, stages)),
		why:   "Not given; three stages of plastic gears.", source: stage.Source,
	})
	if raw.Ratio.Given {
		p.Ratio = r.given(quantity.Ratio, raw.Ratio)
	} else {
		r.fitRatio(class)
	}
	if !p.Fitted { // otherwise it follows from what is drawn
		r.track(&p.Ratio)
	}
	r.track(&p.NewSpeedMS, &p.Efficiency)
}

// fitRatio settles gears that nobody counted by the speed that they were chosen
// for: the one that the box claims, or the usual one of the class. Ratio, motor
// and wheel then belong together, as they do in a vehicle that was made so.
func (r *resolver) fitRatio(class tables.VehicleClass) {
	p := r.parts.Gears
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
	p.runNM = r.wheelNM("asphalt", class.MassKG.Likely+class.LoadKG.Likely/2)
	m := r.parts.Motors
	if m.RatedV.Known {
		p.fittedV = m.RatedV.Likely
	} else {
		p.fittedV = r.parts.Vehicle.DesignV.Likely / r.chain()
	}
	motor := r.parts.Motor(Likely)
	radius := r.parts.Vehicle.WheelDiameterM.Likely / 2
	all := max(math.Round(m.Count.Likely), 1) * p.Efficiency.Likely
	at := func(speed float64) float64 { return p.fittedRatio(motor, radius, speed, all) }
	p.Ratio = Figure{
		Range: quantity.Spread(at(p.NewSpeedMS.High), at(p.NewSpeedMS.Likely), at(p.NewSpeedMS.Low)),
		Key:   r.key("gears", "fitted_ratio"), kind: quantity.Ratio, Known: true, Assumed: true, System: r.parts.System,
		Why: p.NewSpeedMS.Why, Source: p.NewSpeedMS.Source,
	}
	r.note(r.key("gears", "ratio"), p.Ratio.String(), fmt.Sprintf("Not given; fits motor and wheel to a speed of %s when new.", p.NewSpeedMS.String()), p.NewSpeedMS.Source)
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
