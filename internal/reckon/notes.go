package reckon

import (
	"fmt"
	"slices"
	"strings"

	"example.org/packcheck/answer"
	"example.org/packcheck/chemistry"
	"example.org/packcheck/setup"
)

// notes returns the common misreadings that this setup invites, each beside
// the number that it concerns and said once.
func notes(v *Vehicle) []answer.Note {
	p := v.Now.Parts
	var list []answer.Note
	add := func(topic answer.Topic, format string, args ...any) {
		list = append(list, answer.Note{Topic: topic, Text: fmt.Sprintf(format, args...)})
	}
	for _, text := range p.Notes {
		add(answer.TopicPack, "%s", text)
	}
	add(answer.TopicPack, "Amp-hours say how long it lasts, amps how hard it works: %.2g Ah tell nothing of the amps that it may give.",
		v.Now.Pack.RatedAh())
	for _, text := range v.Judged.Charging.Notes {
		add(answer.TopicCharge, "%s", text)
	}
	if p.Bench != nil {
		return list
	}
	add(answer.TopicPack, "A battery pushes no current into motors: these and the ground ask for it. More volts make them draw more; more amp-hours only last longer.")
	switch {
	case p.Controller.Kind.Text == "chopper" || p.Controller.ConverterV.Known:
		add(answer.TopicRide, "Behind a speed control minutes follow watt-hours: at the same speed a pack of more volts and as many amp-hours lasts longer.")
	default:
		add(answer.TopicRide, "On a plain switch minutes follow amp-hours: the ground sets the current. More volts drive faster, so distance follows watt-hours.")
	}
	if p.Setup.Gives("motors.no_load_speed") {
		add(answer.TopicSpeed, "The speed printed on a motor is without load. Loaded, a motor with the higher printed speed can be the slower one.")
	}
	add(answer.TopicLaunch, "Amps measured with the wheels in the air (%.2g A here) say nothing about driving.",
		wheelsUpA(v))
	switch other := p.Pack.Second; {
	case slices.ContainsFunc(v.Judged.Findings, func(f answer.Finding) bool { return f.NeverRidden }): // nothing of its ride is told
	case other != nil && other.Profile.Title != p.Pack.Profile.Title:
		add(answer.TopicRide, "Two kinds of cells are counted as one: their volts are right, all else of the ride is rough.")
	}
	if p.Controller.Kind.Text == "chopper" && moreVolts(p) {
		add(answer.TopicLaunch, "A speed control (a chopper) lowers what the motors get, not what its own input gets: the full pack's volts at any speed.")
	}
	add(answer.TopicPath, "A fuse follows the wire: it is there so that the wire does not burn. It does not protect the motor.")
	if p.Pack.Profile.Family == chemistry.Lithium && p.Original != nil && p.Original.Pack.Profile.Family == chemistry.LeadAcid {
		add(answer.TopicCutoff, "A lead-acid block fades and so warns; a lithium pack stays strong until it is empty. Without a cutoff nobody notices.")
	}
	if p.Original != nil {
		if open := unjudgedFits(p.Setup); len(open) > 0 {
			last := len(open) - 1
			words := open[last]
			if last > 0 {
				words = strings.Join(open[:last], ", ") + " and " + words
			}
			add(answer.TopicPack, "Whether it fits into %s was not judged.", words)
		}
	}
	return list
}

// unjudgedFits are the places of which, or of what goes in, no size was told.
func unjudgedFits(s *setup.Setup) (open []string) {
	if !s.Pack.Size.Given || !s.Vehicle.Tray.Given {
		open = append(open, "tray")
	}
	if !s.Vehicle.MotorSeat.Given || !s.Motors.CanDiameter.Given && !s.Motors.Can.Given {
		open = append(open, "gearbox")
	}
	if !s.Gears.Bore.Given || !s.Vehicle.Axle.Given {
		open = append(open, "axle")
	}
	return open
}

// moreVolts reports whether the pack has more volts than the vehicle was made
// for.
func moreVolts(p *setup.Parts) bool {
	if p.Vehicle == nil || !p.Vehicle.DesignV.Known {
		return false
	}
	return p.PackV() > 1.1*p.Vehicle.DesignV.Likely
}
