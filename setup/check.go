package setup

import (
	"strings"

	"example.org/packcheck/internal/quantity"
)

// check notes what is right in itself but not together.
func check(d *decoder, s *Setup) {
	checkWire(d, s)
	checkCutoffs(d, s)
	checkBench(d, s)
	checkMotors(d, s)
	checkController(d, s)
	checkOthers(d, s)
}

// notBoth notes two keys of which only one may stand, on the line of the later.
func notBoth(d *decoder, a, b Value) {
	if !a.Given || !b.Given {
		return
	}
	if b.Line < a.Line {
		a, b = b, a
	}
	d.fault(b.Line, b.Key, b.Text, "either this or "+a.Key+", not both")
}

// below notes a value that is not smaller than another one. Ranges that touch
// are let pass: some value of each fits.
func below(d *decoder, small, large Value, kind quantity.Kind) {
	if small.Given && large.Given && small.Low >= large.High {
		d.fault(large.Line, large.Key, large.Text, "more than "+small.Key+" ("+
			quantity.FormatRangeOne(kind, small.Range, large.System)+")")
	}
}

func checkWire(d *decoder, s *Setup) {
	notBoth(d, s.Wire.Gauge, s.Wire.Area)
	if s.Wire.Kind.Given && s.Wire.Area.Given {
		d.fault(s.Wire.Kind.Line, s.Wire.Kind.Key, s.Wire.Kind.Text, "this key only together with gauge")
	}
}

func checkCutoffs(d *decoder, s *Setup) {
	for _, c := range []Cutoff{s.Cutoff.Pack, s.Cutoff.Module.Cutoff, s.Cutoff.Controller} {
		for _, v := range []Value{c.Delay, c.ClosesAt} {
			if v.Given && !c.OpensAt.Given && !faultsOf(d.faults, v.Key[:strings.LastIndexByte(v.Key, '.')+1]+"opens_at") {
				d.fault(v.Line, v.Key, v.Text, "opens_at beside it")
				break
			}
		}
		if c.OpensAt.Given && c.ClosesAt.Given && c.ClosesAt.Low <= c.OpensAt.High {
			d.fault(c.ClosesAt.Line, c.ClosesAt.Key, c.ClosesAt.Text, "more than "+c.OpensAt.Key+" ("+
				quantity.FormatRangeOne(quantity.Voltage, c.OpensAt.Range, quantity.Metric)+"), or it would chatter")
		}
	}
}

func checkBench(d *decoder, s *Setup) {
	b := s.Bench
	if !b.Given {
		return
	}
	key := "load"
	if s.Place.Given {
		key = "original.load"
	}
	for _, t := range []struct {
		name  string
		place Place
	}{{"rider", s.Rider.Place}, {"vehicle", s.Vehicle.Place}, {"motors", s.Motors.Place}, {"gears", s.Gears.Place}} {
		if t.place.Given {
			d.fault(max(t.place.Line, b.Line), key, "["+t.name+"] beside [load]", "[load] alone, or [rider], [vehicle], [motors] and [gears]")
		}
	}
	given := 0
	for _, g := range []bool{b.Current.Given, b.Power.Given, b.Pattern.Given} {
		if g {
			given++
		}
	}
	if wrong := faultsOf(d.faults, key+".current") || faultsOf(d.faults, key+".power") || faultsOf(d.faults, key+".pattern"); given > 1 || given == 0 && !wrong {
		read := "several of them"
		if given == 0 {
			read = ""
		}
		d.fault(b.Line, key, read, "exactly one of current, power and pattern")
	}
}

func checkMotors(d *decoder, s *Setup) {
	voltsBesideSpeed(d, s)
	m := s.Motors
	below(d, m.NoLoadCurrent, m.StallCurrent, quantity.Current)
	if m.Wiring.Text == "series" && m.Count.Given && m.Count.Likely == 1 {
		d.fault(m.Wiring.Line, m.Wiring.Key, m.Wiring.Text, "more than one motor for this")
	}
}

func checkController(d *decoder, s *Setup) {
	c := s.Controller
	checkClass(d, &s.Controller)
	if c.Kind.Text == "contacts" {
		for _, v := range []Value{c.Ramp, c.CurrentLimit} {
			if v.Given && v.High > 0 {
				d.fault(v.Line, v.Key, v.Text, `kind = "chopper" for this; plain contacts cannot do it`)
			}
		}
	}
	if c.ContinuousCurrent.Given && c.PeakCurrent.Given && c.PeakCurrent.High < c.ContinuousCurrent.Low {
		d.fault(c.PeakCurrent.Line, c.PeakCurrent.Key, c.PeakCurrent.Text, "at least "+c.ContinuousCurrent.Key)
	}
}

func checkOthers(d *decoder, s *Setup) {
	checkRestored(d, &s.Measured)
	v := s.Vehicle
	if v.DrivenWheels.Given && v.Wheels.Given && v.DrivenWheels.Likely > v.Wheels.Likely {
		d.fault(v.DrivenWheels.Line, v.DrivenWheels.Key, v.DrivenWheels.Text, "at most "+v.Wheels.Key)
	}
	if fold(s.Fuse.Form.Text) == "none" && s.Fuse.Rating.Given {
		d.fault(s.Fuse.Rating.Line, s.Fuse.Rating.Key, s.Fuse.Rating.Text, `no rating where form is "none"`)
	}
	m := s.Measured
	// Of two packs in series each may have been read on one or on both.
	if m.RestVoltage.Given && m.LoadedVoltage.Given && m.LoadedVoltage.Low > m.RestVoltage.High && !s.joinedInSeries() {
		d.faults = append(d.faults, loadedAboveRest(d.name, &m))
	}
	st := s.Storage
	switch {
	case !st.From.Given || !st.Until.Given:
	case !st.Until.Day.After(st.From.Day):
		d.fault(st.Until.Line, st.Until.Key, st.Until.Text, "a day after "+st.From.Key)
	case st.Until.Day.After(st.From.Day.AddDate(10, 0, 0)):
		d.fault(st.Until.Line, st.Until.Key, st.Until.Text, "a day within ten years of "+st.From.Key)
	}
	if s.Charger.Timer.Given && s.Charger.Stops.Given && s.Charger.Stops.Text != "timer" {
		d.fault(s.Charger.Timer.Line, s.Charger.Timer.Key, s.Charger.Timer.Text, `stops = "timer" with this`)
	}
}

// checkRestored notes what does not go with how long it took until it came back.
func checkRestored(d *decoder, m *Measured) {
	if by := m.RestoredBy; by.Text == "nothing" && m.ResetSeconds.Given {
		d.fault(by.Line, by.Key, by.Text, "what brought it back: "+m.ResetSeconds.Key+" says after how long")
	}
}
