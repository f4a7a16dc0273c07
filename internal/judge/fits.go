package judge

import (
	"fmt"
	"math"

	"example.org/packcheck/answer"
	"example.org/packcheck/chemistry"
	"example.org/packcheck/internal/quantity"
	"example.org/packcheck/setup"
)

// Codes of findings on what does not go in.
const (
	CodePackNotInTray  = "pack-not-in-tray"  // battery against what it sits in
	CodePackOnItsSide  = "pack-on-its-side"  // a lead-acid block that only goes in lying down
	CodeMotorNotInSeat = "motor-not-in-seat" // can against seat and room
	CodeGearsNotOnAxle = "gears-not-on-axle"
)

// mostPlayM is how much wider than what sits in it a seat or a bore may be, or
// what sits there stands off its centre and the teeth no longer mesh: about the
// depth of a tooth of module 0.5. Common practice, no published source.
const mostPlayM = 0.001

// sameM is what two lengths that were read off a rule may differ by in computing.
const sameM = 1e-9

// misfits holds sizes that were told against each other. Only what was told of both
// is judged: nobody's tray is known from its class. No case differs in them.
func misfits(p *setup.Parts) []answer.Finding {
	v := fitting{parts: p}
	v.fitsTray()
	s := p.Setup
	motor := answer.Finding{
		Code: CodeMotorNotInSeat, Item: answer.Motors, Topic: answer.TopicRide,
		Advice: "Take the motor, or the gearbox, that the other was made for; do not file, glue or pad it into place.",
	}
	can := s.Motors.CanDiameter
	from := answer.KeyMotorsCanDiameter
	length := s.Motors.CanLength
	if c := p.Motors.Can; c.Known && !c.Assumed {
		if row, err := p.Tables.MotorCan(c.Text); err == nil && row.DiameterMM > 0 && !can.Given {
			can, from = setup.Value{Range: quantity.Exactly(row.DiameterMM * 1e-3), Given: true}, answer.KeyMotorsCan
		}
	}
	if can.Given && s.Vehicle.MotorSeat.Given {
		f := motor
		f.Decides = []string{from, answer.KeyVehicleMotorSeat}
		v.sits(f, "motor", "the seat of the gearbox", can.Likely, s.Vehicle.MotorSeat.Likely)
	}
	if length.Given && s.Vehicle.MotorRoom.Given && length.Likely > s.Vehicle.MotorRoom.Likely+sameM {
		f := misfit(motor, length.Likely, s.Vehicle.MotorRoom.Likely)
		f.Decides = []string{answer.KeyMotorsCanLength, answer.KeyVehicleMotorRoom}
		f.Title = fmt.Sprintf("A motor of %s is longer than the %s that there are for it.", mm(length.Likely), mm(s.Vehicle.MotorRoom.Likely))
		v.add(f)
	}
	if s.Gears.Bore.Given && s.Vehicle.Axle.Given {
		v.sits(answer.Finding{
			Code: CodeGearsNotOnAxle, Item: answer.Gears, Topic: answer.TopicRide,
			Decides: []string{answer.KeyGearsBore, answer.KeyVehicleAxle},
			Advice:  "Take the gear that this axle was made for; do not drill it out or wrap the axle.",
		}, "axle", "the bore of the gear", s.Vehicle.Axle.Likely, s.Gears.Bore.Likely)
	}
	return v.found
}

// fitting is what does not go in, while that is found.
type fitting struct {
	parts *setup.Parts
	found []answer.Finding
}

func (v *fitting) add(f answer.Finding) { v.found = append(v.found, f) }

// sits finds what is too thick for its hole, and what rattles in it.
func (v *fitting) sits(f answer.Finding, what, hole string, thickM, holeM float64) {
	f = misfit(f, thickM, holeM)
	switch {
	case thickM > holeM+sameM:
		f.Title = fmt.Sprintf("The %s of %s does not go into %s of %s.", what, mm(thickM), hole, mm(holeM))
	case holeM-thickM > mostPlayM+sameM:
		f.Want, f.Limit = answer.Above, holeM-mostPlayM
		f.Title = fmt.Sprintf("The %s of %s is loose in %s of %s: it runs off its centre, and the gears strip.", what, mm(thickM), hole, mm(holeM))
	default:
		return
	}
	v.add(f)
}

// misfit is the finding on a length that is more than there is room for.
func misfit(f answer.Finding, foundM, limitM float64) answer.Finding {
	f.Level, f.Harm, f.Source, f.Added = answer.FixFirst, answer.Part, srcCommon, true
	f.Unit, f.Found, f.Limit = "m", foundM, limitM
	return f
}

// fitsTray holds the battery against its tray.
func (v *fitting) fitsTray() {
	pack, told := v.parts.Setup.Pack.Size.Edges()
	tray, known := v.parts.Setup.Vehicle.Tray.Edges()
	if !told || !known {
		return
	}
	packs := 1
	if v.parts.Pack.Joined != "" && v.parts.Pack.Second == nil {
		packs = 2
	}
	lies := goesIn(pack, tray, packs, false)
	if goesIn(pack, tray, packs, true) || lies && v.parts.Pack.Profile.Family != chemistry.LeadAcid {
		return
	}
	what := fmt.Sprintf("The battery of %s", edgesWords(pack))
	if packs > 1 {
		what = fmt.Sprintf("Two batteries of %s", edgesWords(pack))
	}
	f := answer.Finding{
		Code: CodePackNotInTray, Level: answer.FixFirst, Harm: answer.Part, Topic: answer.TopicPack, Item: answer.Battery, Source: srcCommon, Reads: answer.AsTold,
		Title:  fmt.Sprintf("%s cannot go into a tray of %s, whichever way it is turned.", what, edgesWords(tray)),
		Advice: "Measure both once more; then take a battery that goes in. One that stands loose or holds the lid open chafes its wires and falls out.",
		Change: answer.FitPack, Decides: []string{answer.KeyPackSize, answer.KeyVehicleTray},
	}
	if packs > 1 {
		f.Title = fmt.Sprintf("%s cannot both go into a tray of %s, whichever way they are turned.", what, edgesWords(tray))
	}
	if lies {
		f.Code, f.Level, f.Harm, f.Change = CodePackOnItsSide, answer.Watch, answer.Wear, answer.LookUp
		f.Title = fmt.Sprintf("%s goes into a tray of %s only lying on its side.", what, edgesWords(tray))
		f.Advice = "Lay it down only if it is sealed (AGM or gel) and its maker allows it; one with liquid acid always stands upright, or it leaks."
	}
	v.add(f)
}

// goesIn reports whether one or two boxes go into a tray, edges along its edges:
// upright the third edge stays the height. Two are always parted by a plane, so
// along one of the edges they stand one behind the other, each turned as it likes.
func goesIn(box, tray [3]float64, boxes int, upright bool) bool {
	turns := [...][3]int{{0, 1, 2}, {1, 0, 2}, {0, 2, 1}, {1, 2, 0}, {2, 0, 1}, {2, 1, 0}}
	count := len(turns)
	if upright {
		count = 2
	}
	for along := range tray {
		least := math.Inf(1)
		for _, turn := range turns[:count] {
			turned := [3]float64{box[turn[0]], box[turn[1]], box[turn[2]]}
			in := true
			for i := range tray {
				in = in && (i == along || turned[i] <= tray[i]+sameM)
			}
			if in {
				least = min(least, turned[along])
			}
		}
		if float64(boxes)*least <= tray[along]+sameM {
			return true
		}
	}
	return false
}

func mm(m float64) string { return quantity.Format(quantity.Length, m, quantity.Metric) }

func edgesWords(e [3]float64) string {
	return fmt.Sprintf("%s x %s x %s mm", round(1e3*e[0], 4), round(1e3*e[1], 4), round(1e3*e[2], 4))
}
