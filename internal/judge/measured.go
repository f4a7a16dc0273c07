package judge

import (
	"cmp"
	"fmt"
	"math"
	"slices"

	"example.org/packcheck/answer"
	"example.org/packcheck/battery"
	"example.org/packcheck/charge"
	"example.org/packcheck/chemistry"
	"example.org/packcheck/internal/build"
	"example.org/packcheck/setup"
	"example.org/packcheck/wiring"
)

// leastRestV stands for a reading of nothing at all, which is a reading: it
// must not pass for one that was never taken.
const leastRestV = 1e-3

// readFirst puts what was measured on this vehicle in the place of what was
// computed: it is judged itself, whatever the draws make of it. What contradicts other
// readings is only believed where it is the worse.
func (v *view) readFirst() {
	m := v.parts.Measured
	if m == nil || !v.drives() {
		return
	}
	if speed := m.TopSpeed; v.counts(speed, v.Seen.Steady.SpeedMS) {
		v.Seen.Steady.SpeedMS, v.speedRead = speed.Likely, true
	}
	if s := &v.Seen.Steady; v.counts(m.LoadedCurrent, s.BatteryA) {
		if s.BatteryA > 0 {
			s.MotorA *= m.LoadedCurrent.Likely / s.BatteryA
		}
		s.BatteryA, v.ampsRead = m.LoadedCurrent.Likely, true
	}
	if caseC, key := v.parts.MotorCaseC(); key != "" && caseC >= v.Seen.Lasts.CaseC { // after a short drive it tells nothing of a long one
		l := &v.Seen.Lasts
		l.CaseC, l.WindingC = caseC, max(l.WindingC, caseC)
	}
	if b := &v.Seen.Blocked; b.BatteryA > 0 && v.counts(m.BlockedCurrent, b.BatteryA) {
		b.MotorA *= m.BlockedCurrent.Likely / b.BatteryA
		b.BatteryA = m.BlockedCurrent.Likely
	}
}

// counts reports whether a reading stands in the place of what was computed.
func (v *view) counts(read setup.Value, computed float64) bool {
	return read.Given && (!v.leftOut(read.Key) || read.Likely > computed)
}

// leftOut reports whether the answer does without a reading.
func (v *view) leftOut(key string) bool {
	return v.Conflict != nil && slices.Contains(v.Conflict.LeftOut, key)
}

// measured judges what was measured: of today's battery, and of the original
// one where the setup has it.
func (v *view) measured() error {
	v.unexplainedHeat()
	for _, p := range []*setup.Parts{v.parts, v.parts.Original} {
		if p == nil || p.Measured == nil {
			continue
		}
		from := len(v.out.Measured)
		if p.Measured.RestVoltage.Given {
			if err := v.rested(p); err != nil {
				return err
			}
		}
		v.loaded(p)
		if t := p.Measured.PackTemperature; t.Given && p != v.parts {
			v.add(battery.JudgeOld(t.Likely)...)
		} else if t.Given {
			v.tell(answer.MeasuredFigure{
				Name: "battery after a drive", Measured: t.Text, Computed: fmt.Sprintf("cells up to %s C", round(v.Seen.Lasts.HottestC, 2)),
				Says: "surfaces are cooler than the cells inside",
			})
		}
		v.motorCase(p)
		if err := v.opened(p); err != nil {
			return err
		}
		for i := from; p != v.parts && i < len(v.out.Measured); i++ {
			v.out.Measured[i].Name += setup.OnOriginal
		}
	}
	return nil
}

// of adds findings on a battery that was measured. One that is no longer used does not
// come first.
func (v *view) of(p *setup.Parts, findings ...answer.Finding) {
	for i := range findings {
		findings[i].Today = findings[i].Today && p == v.parts
	}
	v.add(findings...)
}

// nameOf is what findings call a battery that was measured; empty for the one that is asked
// about.
func (v *view) nameOf(p *setup.Parts) string {
	if p == v.parts {
		return ""
	}
	return "the battery that it came with"
}

// CodeHotterThanDriven says that a battery was read hotter than driving makes it.
const CodeHotterThanDriven = "hotter-than-driven"

// A battery is hotter than driving explains from so many kelvin above its hottest
// cells, and twice their rise: sun on a dark shell, and how long was driven. Where
// nobody told the air, it may have been a hot day. Own choices.
const (
	unexplainedK, unexplainedRise = 20.0, 2.0
	hotDayC                       = 40.0
)

// unexplainedHeat holds the temperature that was read of the battery against the
// hottest that its cells get on a whole ride, however long was driven.
func (v *view) unexplainedHeat() {
	m := v.parts.Measured
	if m == nil || !m.PackTemperature.Given {
		return
	}
	readC, fromC := m.PackTemperature.Low, max(v.Now.PackC, v.Now.AmbientC)
	if v.parts.Outing.AirC.Assumed {
		fromC = max(fromC, hotDayC)
	}
	rise := max(0, v.Seen.Lasts.HottestC+v.Now.HottestK-max(v.Now.PackC, v.Now.AmbientC))
	if limit := fromC + max(rise+unexplainedK, unexplainedRise*rise); readC > limit {
		v.add(answer.Finding{
			Code: CodeHotterThanDriven, Level: answer.FixFirst, Harm: answer.House, Topic: answer.TopicMeasured, Item: answer.Battery,
			Unit: "degC", Found: readC, Limit: limit, Source: srcCommon, Change: answer.LookUp, Decides: []string{answer.KeyMeasuredPackTemperature},
			Title:  fmt.Sprintf("The battery was read at %s C, and no ride warms it so far: something else does.", round(readC, 2)),
			Advice: "If it was just charged, or lay in the sun, take the reading again after a drive. If it stays as high, something warms it that nobody told: a failing cell, a loose joint beside it, a load that is always on. Do not use it until that is found.",
		})
	}
}

// motorCase says what was read of a motor's case.
func (v *view) motorCase(p *setup.Parts) {
	if t := p.Measured.MotorTemperature; t.Given {
		v.tell(answer.MeasuredFigure{Name: "motor after a drive", Measured: t.Text, Says: "the winding inside is hotter still"})
	}
	if t := p.TouchedC(); t.Given {
		v.tell(answer.MeasuredFigure{
			Name: "hand on the motor", Measured: t.Text,
			Says: fmt.Sprintf("about %s C: bare metal burns skin in that time (ISO 13732-1)", round(t.Likely, 2)),
		})
	}
}

// halfCharged is the charge from which on a battery that falls far under load is
// not just empty. Own choice.
const halfCharged = 0.5

// loaded judges volts that were read under load.
func (v *view) loaded(p *setup.Parts) {
	m := p.Measured
	if !m.LoadedVoltage.Given {
		return
	}
	spec := p.PackSpec(v.Now.Pick)
	rate := 1.0 // of a load that nobody measured
	if m.LoadedCurrent.Given {
		rate = m.LoadedCurrent.Likely / spec.CapacityAh
	}
	charged := false
	if m.RestVoltage.Given {
		_, likely, _ := p.ChargeAtRest(v.Now.Pick)
		charged = likely >= halfCharged
	}
	v.of(p, charge.JudgeLoaded(spec.Profile, spec.CellsInSeries, charge.Loaded{V: m.LoadedVoltage.Likely, RateC: rate, Charged: charged, Name: v.nameOf(p)})...)
}

func (v *view) tell(f answer.MeasuredFigure) { v.out.Measured = append(v.out.Measured, f) }

// rested reads the state of charge from a resting voltage, and of a lead-acid
// block whether it is flat, worn or badly connected.
func (v *view) rested(p *setup.Parts) error {
	raw := p.Measured
	pick := v.Now.Pick
	spec := p.PackSpec(pick)
	cells := float64(spec.CellsInSeries)
	low, likely, high := p.ChargeAtRest(pick)
	f := answer.MeasuredFigure{
		Name:     "volts at rest",
		Measured: raw.RestVoltage.Text,
		Computed: fmt.Sprintf("%s V when full", round(cells*spec.Profile.FullV, 3)),
		Says: fmt.Sprintf("about %s %% charged (%s to %s %%), if the cells are sound",
			round(100*likely, 2), round(100*low, 2), round(100*high, 2)),
	}
	if p.SecondRead() {
		f.Measured = raw.RestVoltage.Text + " and " + raw.SecondRest.Text
		if p.Pack.Joined == "series" {
			f.Computed += " over both"
			f.Says += "; it is counted from the emptier of the two"
		} else {
			f.Says += "; it is counted from what the two hold together"
		}
	}
	if said := p.Setup.Pack.Charge; said.Given && (said.High < low || said.Low > high) {
		f.Says += fmt.Sprintf("; that contradicts the setup's %s: one of the two is wrong", said.Text)
	}
	v.tell(f)
	if spec.Profile.Family != chemistry.LeadAcid {
		return nil
	}
	d, err := v.diagnose(p)
	if err != nil {
		return err
	}
	for _, s := range d.Suspicions {
		v.tell(answer.MeasuredFigure{Name: "the battery is " + s.Condition.String(), Says: s.Words})
	}
	if p != v.parts || !v.finished() {
		v.tell(answer.MeasuredFigure{Name: "next test", Says: d.NextTest})
	}
	v.of(p, d.Findings...)
	if p == v.parts && slices.ContainsFunc(d.Findings, func(f answer.Finding) bool { return f.Code == charge.CodeOldDeadCell }) {
		c := &v.out.Charging // what a battery with a dead cell takes nobody can tell, and it must not be left on a charger
		c.HoursTo80, c.HoursToFull, c.UnplugH = math.NaN(), math.NaN(), math.NaN()
	}
	return nil
}

// The temperatures between which a battery is diagnosed; the setup allows for
// a little more.
const coldestC, hottestC = -39, 79

// diagnose asks whether an old sealed battery is flat, worn or badly
// connected. The pack is taken as its label says it was when new.
func (v *view) diagnose(p *setup.Parts) (charge.Diagnosis, error) {
	spec := p.PackSpec(v.Now.Pick)
	spec.Health, spec.ResistanceFactor, spec.ResistanceOhm = 1, 0, 0
	like := v.Now.Pack
	if p != v.parts {
		like = v.Original.Pack
	}
	fresh, err := like.With(spec)
	if err != nil {
		return charge.Diagnosis{}, err
	}
	raw := p.Measured
	restV := p.LeastRestV()
	if p.Pack.Joined == "series" {
		restV *= 2
	}
	e := charge.Evidence{
		Pack: fresh, RestV: max(restV, leastRestV), HoursRested: raw.HoursRested.Likely / 3600,
		TempC: min(max(p.PackC(v.Now.Pick), coldestC), hottestC), Name: v.nameOf(p),
	}
	if p.SecondRead() {
		e.Name = atRest("the", p.LeastRestV())
	}
	if raw.LoadedVoltage.Given {
		e.LoadedV = raw.LoadedVoltage.Likely
	}
	if raw.LoadedCurrent.Given {
		e.LoadedA = raw.LoadedCurrent.Likely
	}
	return charge.Diagnose(e)
}

// opened tells which current opened a fuse, and which device came back by
// itself.
func (v *view) opened(p *setup.Parts) error {
	raw := p.Measured
	flowed := ""
	if raw.FuseSeconds.Given {
		var err error
		if flowed, err = v.fuseOpened(p); err != nil {
			return err
		}
	}
	flowed = cmp.Or(flowed, "too much current flowed")
	by := raw.RestoredBy.Text
	if !raw.ResetSeconds.Given && by == "" {
		return nil
	}
	key, seconds, told := answer.KeyMeasuredResetSeconds, raw.ResetSeconds.Likely, raw.ResetSeconds.Text
	if !raw.ResetSeconds.Given {
		key, seconds, told = answer.KeyMeasuredRestoredBy, math.Inf(1), by
	}
	f := openedInUse(key)
	f.Unit, f.Found, f.Reads = "s", raw.ResetSeconds.Likely, answer.AsTold
	switch by {
	case "", "itself":
		f.Title = fmt.Sprintf("Something opened in use and came back by itself: %s, and will again, with the pedal perhaps still down.", flowed)
	case "nothing":
		f.Title = fmt.Sprintf("Something opened in use and did not come back: %s.", flowed)
	default:
		f.Title = fmt.Sprintf("Something opened in use and came back later: %s, or the battery was empty, and it will happen again.", flowed)
	}
	f.Advice = "Find out why before it is driven on: turn the wheels by hand, look for chafed wire, ask whether the wheels were blocked."
	v.add(f)
	if waits := by == "itself" || by == "released pedal"; waits && !raw.ResetSeconds.Given {
		return nil // what it was hangs on the seconds
	}
	answers := wiring.WhatOpened(p.Tables, wiring.Return{
		Seconds: seconds, AfterRelease: by == "released pedal", AfterCharger: by == "unplugged" || by == "charger",
		Breaker: p.Fuse.Form.Known && p.Fuse.Form.Text == setup.BreakerForm,
		Lithium: lithium(p.Pack.Profile),
	})
	for i, a := range answers {
		if i == 2 {
			break
		}
		v.tell(answer.MeasuredFigure{
			Name: "came back after", Measured: told, Says: a.Device + ": " + a.Why + " " + a.Check,
		})
	}
	return nil
}

// openedInUse is the finding on a protection that was seen to open.
func openedInUse(key string) answer.Finding {
	return answer.Finding{
		Code: CodeFuseOpened, Level: answer.FixFirst, Harm: answer.Part, Topic: answer.TopicPath, Item: answer.Fuse, Source: srcFuseRule,
		Decides: []string{key}, Change: answer.LookUp, EndsRides: true,
	}
}

// fuseOpened tells which current opened a fuse, and returns in words the least that did; empty
// where it is not known. Of what came back nobody is told to look for another fuse.
func (v *view) fuseOpened(p *setup.Parts) (least string, err error) {
	raw := p.Measured
	spec, ok := p.FuseSpec(v.Now.Pick)
	if !ok {
		spec = wiring.FuseSpec{Form: v.form}
	}
	if raw.FuseRating.Given {
		spec.RatingA = raw.FuseRating.Likely
	}
	if spec.RatingA <= 0 {
		return "", nil
	}
	fuse, err := wiring.NewFuse(spec)
	if err != nil {
		return "", err
	}
	flowed := fuse.WhatFlowed(wiring.Opening{Seconds: raw.FuseSeconds.Likely, AmbientC: v.Now.AmbientC + build.BoxRiseK})
	least = fmt.Sprintf("at least %s A flowed", round(flowed.LeastA, 2))
	says := least
	if !math.IsInf(flowed.MostA, 1) {
		says = fmt.Sprintf("%s to %s A flowed", round(flowed.LeastA, 2), round(flowed.MostA, 2))
	}
	f := openedInUse(answer.KeyMeasuredFuseSeconds)
	f.Unit, f.Found, f.Limit = "A", flowed.LeastA, spec.RatingA
	f.Title = "A fuse opened in use: " + least + ". Something draws too much, or rubs, sticks or is shorted."
	f.Advice = "Find out why before another fuse goes in: turn the wheels by hand, look for chafed wire, ask whether the wheels were blocked. Never put in a larger one."
	if !raw.CameBack() {
		v.add(f)
	}
	v.tell(answer.MeasuredFigure{
		Name:     fmt.Sprintf("%s A fuse opened after", round(spec.RatingA, 3)),
		Measured: raw.FuseSeconds.Text, Says: says,
	})
	return least, nil
}
