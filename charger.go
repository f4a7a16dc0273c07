package packcheck

import (
	"fmt"
	"slices"
	"strings"

	"example.org/packcheck/battery"
	"example.org/packcheck/charge"
	"example.org/packcheck/chemistry"
	"example.org/packcheck/answer"
	"example.org/packcheck/internal/quantity"
	"example.org/packcheck/setup"
)

// charging judges the charger of the setup on the pack after the ride, or says
// which charger would be right.
type charging struct {
	figures  ChargeFigures
	notes    []Note
	findings []answer.Finding
}

func chargingOf(v *view) (charging, error) {
	var out charging
	p, one := v.parts, v.one
	out.note(rightCharger(one, p.Pack.ToolPack))
	// To wait after a ride is a habit: nothing is wrong with the vehicle for it.
	for _, f := range charge.WaitFor(one, v.o.lasts.PackC, v.o.c.AmbientC).Findings {
		switch {
		case f.Code == "charge-too-hot":
			f.Level = min(f.Level, answer.Watch)
		case !p.Setup.Charger.Given: // it may be charged somewhere warmer
			f.Level = min(f.Level, answer.FixFirst)
		}
		out.findings = append(out.findings, f)
	}

	raw := &p.Setup.Charger
	if !raw.Given {
		out.findings = append(out.findings, restFindings(one, v)...)
		gate := charge.GateAt(p.Pack.Profile, v.o.c.AmbientC)
		out.figures = ChargeFigures{
			Match: "not described", EndVPerCell: known(gate.WantedVPerCell),
			Reasons: []string{"The setup does not describe a charger."},
		}
		return out, nil
	}
	charger, unclear, err := chargerOf(p.Setup)
	if err != nil {
		return out, err
	}
	for _, text := range unclear {
		out.note(text)
	}
	if charger.WhyEnd != "" {
		out.note(charger.WhyEnd)
	}
	plugged := charge.Plugged{
		Pack: one, Charger: charger, CellC: v.o.c.AmbientC, AmbientC: v.o.c.AmbientC,
		ToolPack: p.Pack.ToolPack, Port: port(raw.Jack.Text), Jack: polarity(raw.JackPolarity.Text), Joined: joined(p.Pack.Joined),
	}
	plugged.RestV = restV(p)
	if why := plugged.NotSupplied(); why != "" {
		plugged.Charger.SuppliedWithPack = false
		out.note(why)
	}
	verdict := charge.Match(plugged)
	out.figures = ChargeFigures{Match: verdict.Fit.String(), EndVPerCell: known(verdict.EndMostVPerCell)}
	for _, f := range verdict.Findings {
		if f.Level > answer.Fine {
			out.figures.Reasons = append(out.figures.Reasons, f.Title)
		}
	}
	out.findings = append(out.findings, verdict.Findings...)
	if verdict.Fit == charge.Refused {
		return out, nil // hours on a charger that must not be connected would invite
	}
	return out, out.simulate(v, plugged, one)
}

// simulate adds hours to full and what happens to a pack that is forgotten.
func (out *charging) simulate(v *view, plugged charge.Plugged, one *battery.Model) error {
	start := one.StateAt(v.o.lasts.ChargeLeft, v.o.c.AmbientC)
	c, err := plugged.Case(start)
	if err != nil {
		return nil //nolint:nilerr // volts or amps are not known; Match has said so
	}
	r, err := charge.Simulate(c)
	if err != nil {
		return fmt.Errorf("packcheck: %w", err)
	}
	if r.HoursTo80.LikelyH > 0 {
		out.figures.HoursTo80 = known(r.HoursTo80.LikelyH)
	}
	if r.Full {
		out.figures.HoursToFull = known(r.HoursToFull.LikelyH)
	}
	out.figures.UnplugAfterH = known(r.UnplugH)
	out.findings = append(out.findings, r.Findings...)
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
		out.note("Left plugged in for " + after + ": " + lefts[0].Words)
		lefts = lefts[same:]
	}
	return nil
}

func (out *charging) note(text string) {
	out.notes = append(out.notes, Note{Topic: TopicCharge, Text: text})
}

// chargerOf reads the setup's charger: its whole label, or its printed figures.
func chargerOf(s *setup.Setup) (charge.Charger, []string, error) {
	raw := &s.Charger
	var l charge.Label
	if raw.Label.Given {
		var err error
		if l, err = charge.ParseLabel(raw.Label.Text); err != nil {
			return charge.Charger{}, nil, setup.Faults{{
				File: s.Name, Line: raw.Label.Line, Key: raw.Label.Key, Read: raw.Label.Text,
				Want: `the output line of the charger, such as "14.7 V 1.5 A DC"`,
			}}
		}
	}
	if err := contradicts(s, raw.Voltage, l.PrintedV, quantity.Voltage); err != nil {
		return charge.Charger{}, nil, err
	}
	if err := contradicts(s, raw.Current, l.PrintedA, quantity.Current); err != nil {
		return charge.Charger{}, nil, err
	}
	if raw.Voltage.Given {
		l.PrintedV, l.Outputs = raw.Voltage.High, 1 // of a range the end that does harm
	}
	if raw.Current.Given {
		l.PrintedA = raw.Current.High
	}
	if purpose, ok := charge.PurposeNamed(raw.MadeFor.Text); ok {
		l.MadeFor = purpose
	}
	switch raw.Output.Text {
	case "ac":
		l.Output = charge.AC
	case "dc":
		l.Output = charge.DC
	}
	if raw.Polarity.Given {
		l.Polarity = polarity(raw.Polarity.Text)
	}
	c := l.Charger()
	switch raw.Stops.Text {
	case "by itself":
		c.Stops = charge.StopsByItself
	case "timer":
		c.Stops = charge.StopsByTimer
	case "never":
		c.Stops = charge.StopsNever
	}
	if raw.Timer.Given {
		c.TimerH = raw.Timer.Likely / 3600
	}
	c.SuppliedWithPack = raw.CameWithPack.Yes
	// What the label leaves open may be given beside it.
	unclear := slices.DeleteFunc(l.Unclear, func(text string) bool {
		return raw.Output.Given && strings.Contains(text, "AC or DC") ||
			raw.MadeFor.Given && strings.Contains(text, "kind of battery")
	})
	return c, unclear, nil
}

// contradicts refuses a figure that is not the one on the label beside it.
func contradicts(s *setup.Setup, v setup.Value, onLabel float64, kind quantity.Kind) error {
	if !v.Given || onLabel <= 0 || v.Low <= onLabel*1.02 && v.High >= onLabel*0.98 {
		return nil
	}
	return setup.Faults{{
		File: s.Name, Line: v.Line, Key: v.Key, Read: v.Text,
		Want: fmt.Sprintf("%s, which the label %q says, or only one of the two", quantity.Format(kind, onLabel, quantity.Metric), s.Charger.Label.Text),
	}}
}

func polarity(word string) charge.Polarity {
	switch word {
	case "centre positive":
		return charge.CentrePositive
	case "centre negative":
		return charge.CentreNegative
	default:
		return charge.PolarityUnknown
	}
}

func port(word string) charge.Port {
	switch word {
	case "pack":
		return charge.PortPack
	case "terminals":
		return charge.PortTerminals
	case "vehicle":
		return charge.PortVehicle
	default:
		return charge.PortUnknown
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

// rightCharger says which charger belongs to a pack.
func rightCharger(m *battery.Model, toolPack bool) string {
	spec := m.Spec()
	p := spec.Profile
	volts := p.Charge.CellV * float64(spec.CellsInSeries)
	text := fmt.Sprintf("The right charger is made for %s, ends at %s V for this pack (%s V per cell), gives at most %s A and stops by itself.",
		p.Title, round(volts, 3), round(p.Charge.CellV, 3), round(p.Charge.MaxC*m.RatedAh(), 2))
	if p.Family == chemistry.Nickel {
		text = fmt.Sprintf("The right charger is made for %s with %d cells and notices by itself when the pack is full.", p.Title, spec.CellsInSeries)
	}
	if toolPack {
		text += " For a tool pack that is its own maker's charger and no other."
	}
	return text
}
