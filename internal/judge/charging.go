package judge

import (
	"errors"
	"math"

	"example.org/packcheck/answer"
	"example.org/packcheck/charge"
	"example.org/packcheck/chemistry"
	"example.org/packcheck/setup"
)

// Charging is the charger on the pack after the ride, or the one that would be
// right. Hours are NaN where there are none.
type Charging struct {
	Match       string // "yes", "no", "unknown", "not described"
	Reasons     []string
	Right       charge.Right
	Left        []answer.Left
	Notes       []string
	HoursTo80   float64
	HoursToFull float64
	UnplugH     float64
	EndVPerCell float64
}

// roomC is a room, where it is driven in such cold or heat that nothing is charged there.
const roomC = 20

// charging judges the charger of the setup on the pack after the ride, or says
// which charger would be right.
func (v *view) charging() error {
	p, one := v.parts, v.Now.One
	out := &v.out.Charging
	*out = Charging{
		Match:     answer.MatchNone,
		HoursTo80: math.NaN(), HoursToFull: math.NaN(), UnplugH: math.NaN(), EndVPerCell: math.NaN(),
	}
	given := p.Setup.Charger.Described()
	placeC := v.Now.AmbientC // where nobody told how warm it is where it charges
	if p.Outing.ChargedAtC.Known {
		placeC = v.Now.Pick(&p.Outing.ChargedAtC)
	}
	_, readCold := v.readCold()
	for _, f := range charge.WaitFor(one, v.afterDriveC(), placeC).Findings {
		switch {
		case f.Change == answer.WaitBeforeCharge: // a habit: nothing is wrong with the vehicle for it
			f.Level = min(f.Level, answer.Watch)
		case !given: // it may be charged somewhere warmer
			f.Level = min(f.Level, answer.FixFirst)
		}
		if readCold && f.Unit == "degC" { // what the air was taken for decides nothing then
			f.Decides = []string{answer.KeyMeasuredPackTemperature, answer.KeyPackChemistry}
		}
		v.add(f)
	}
	if !p.Outing.ChargedAtC.Known && !charge.GateAt(p.Pack.Profile, placeC).Open {
		placeC = roomC // that it is charged out there is a guess, and hides nothing of the charger
	}
	plugged := charge.Plugged{
		Pack: one, Charger: p.Charger.Charger, CellC: placeC, AmbientC: placeC, RestV: v.restV(), HoursRested: v.hoursRested(),
		ToolPack: p.Pack.ToolPack, Port: charge.PortNamed(p.Setup.Charger.Jack.Text), Jack: charge.PolarityNamed(p.Setup.Charger.JackPolarity.Text),
		SheetA: p.Pack.MaxChargeA, Joined: joined(p.Pack.Joined), Unlike: p.Pack.Second != nil, Alike: v.restAlike(), Driving: driving(p.Setup.Charger.BlocksDriving),
	}
	if p.Pack.CapacityAh.Known {
		plugged.LabelAh = v.Now.Pick(&p.Pack.CapacityAh)
		if h := &p.Pack.Honesty; h.Known && h.Assumed {
			plugged.LeastAh = h.Low * plugged.LabelAh
		}
	}
	if plugged.Joined == charge.InSeries {
		plugged.MadeFor = p.Charger.SizeFor(one)
		if plugged.MadeFor == charge.ForOne && plugged.Port == charge.PortVehicle && p.Pack.Profile.Family == chemistry.LeadAcid {
			plugged.MadeFor = charge.ForPair // it hangs on both whatever its volts are; lithium is refused there anyhow
		}
		if plugged.MadeFor == charge.ForPair {
			plugged.Pack, plugged.RestV = v.Now.Pack, 2*plugged.RestV
		}
	}
	out.Right = plugged.Right()
	if !given {
		v.add(charge.JudgeResting(p.Pack.Profile, one.Spec().CellsInSeries, charge.Resting{V: plugged.RestV, Hours: plugged.HoursRested})...)
		v.add(charge.JudgePlace(plugged)...) // what hangs on the vehicle's jack does so whatever is plugged in
		out.EndVPerCell = charge.GateAt(p.Pack.Profile, placeC).WantedVPerCell
		out.Reasons = []string{"The setup does not describe a charger."}
		return nil
	}
	notSupplied := plugged.NotSupplied()
	plugged = plugged.Settled()
	out.Notes = append(out.Notes, p.Charger.Unclear...)
	for _, why := range [...]string{plugged.Charger.WhyEnd, notSupplied} {
		if why != "" {
			out.Notes = append(out.Notes, why)
		}
	}
	verdict := charge.Match(plugged)
	if v.finished() { // the other of two joined packs may be
		verdict.Fit = charge.Refused
	}
	out.Match, out.EndVPerCell = verdict.Fit.String(), verdict.EndMostVPerCell
	if out.EndVPerCell == 0 {
		out.EndVPerCell = math.NaN()
	}
	for _, f := range verdict.Findings {
		if f.Level > answer.Fine {
			out.Reasons = append(out.Reasons, f.Title)
		}
	}
	v.add(verdict.Findings...)
	if verdict.Fit == charge.Refused {
		return nil // hours on a charger that must not be connected would invite
	}
	return v.charge(plugged)
}

// charge adds hours to full and what happens to a pack that is forgotten.
func (v *view) charge(plugged charge.Plugged) error {
	out := &v.out.Charging
	c, err := plugged.Case(plugged.Pack.StateAt(v.Seen.Lasts.ChargeLeft, plugged.AmbientC))
	if errors.Is(err, charge.ErrUnknown) {
		return nil // volts or amps are not known; Match has said so
	}
	if err != nil {
		return err
	}
	r, err := charge.Simulate(c)
	if err != nil {
		return err
	}
	if r.HoursTo80.LikelyH > 0 {
		out.HoursTo80 = r.HoursTo80.LikelyH
	}
	if r.Full {
		out.HoursToFull = r.HoursToFull.LikelyH
	}
	out.UnplugH = r.UnplugH
	if f := &v.parts.Pack.ChargeHours; f.Known {
		off := v.Now.Pick(f)
		out.HoursTo80, out.HoursToFull = off*out.HoursTo80, off*out.HoursToFull
	}
	v.add(r.Findings...)
	lefts := charge.Unattended(c, r)
	for len(lefts) > 0 {
		same := 1 // as long as the words stay the same, they are said once
		for same < len(lefts) && lefts[same].Words == lefts[0].Words {
			same++
		}
		after := lefts[0].After
		if same > 1 {
			after += " or longer"
		}
		out.Left = append(out.Left, answer.Left{After: after, Words: lefts[0].Words})
		lefts = lefts[same:]
	}
	return nil
}

// restV is the resting voltage of the pack that is asked about, of two joined
// ones that of each, of two that were both read the emptier's; 0 when there is no such reading.
func (v *view) restV() float64 {
	m := v.parts.Measured
	if m == nil || !m.RestVoltage.Given {
		return 0
	}
	return max(v.parts.LeastRestV(), leastRestV)
}

// hoursRested is how long the pack had rested before that was read; 0 where nobody told.
func (v *view) hoursRested() float64 {
	if m := v.parts.Measured; m != nil {
		return m.HoursRested.Likely / 3600
	}
	return 0
}

// restAlike reports whether both of two joined packs were read, at the same volts.
func (v *view) restAlike() bool {
	m := v.parts.Measured
	if m == nil || !m.RestVoltage.Given || !m.SecondRest.Given {
		return false
	}
	first, second := v.parts.FirstRest().Likely, m.SecondRest.Likely
	return math.Abs(first-second) <= charge.AlikeShare*max(first, second)
}

func driving(blocks setup.Flag) charge.Driving {
	switch {
	case blocks.Given && blocks.Yes:
		return charge.DrivingBlocked
	case blocks.Given:
		return charge.DrivingPossible
	default:
		return charge.DrivingUnknown
	}
}

func joined(word string) charge.Joined {
	switch word {
	case "series":
		return charge.InSeries
	case "parallel":
		return charge.InParallel
	default:
		return charge.Single
	}
}
