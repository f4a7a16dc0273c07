// Package judge turns one case into everything that is to be said of it: all
// its findings, charging, storage, idling and what was measured included, and
// the figures that only judging brings. Nothing is added later; what happens
// over all draws is counted elsewhere.
package judge

import (
	"fmt"
	"slices"
	"sync"

	"example.org/packcheck/answer"
	"example.org/packcheck/battery"
	"example.org/packcheck/charge"
	"example.org/packcheck/chemistry"
	"example.org/packcheck/cutoff"
	"example.org/packcheck/drive"
	"example.org/packcheck/internal/build"
	"example.org/packcheck/internal/ride"
	"example.org/packcheck/setup"
	"example.org/packcheck/tables"
	"example.org/packcheck/wiring"
)

// Judge judges cases that were built from one set of parts. Any number of
// goroutines may use one.
type Judge struct {
	parts   *setup.Parts
	form    tables.Fuse      // where no fuse is given: the usual one
	misfits []answer.Finding // see misfits
	sags    sync.Pool        // of *sags
}

// New prepares a judge. It fails where the tables have no fuse of the usual form.
func New(p *setup.Parts) (*Judge, error) {
	form, err := p.Tables.Fuse(setup.UsualFuseForm)
	j := &Judge{parts: p, form: form}
	j.sags.New = func() any { return new(sags) }
	if p.Bench == nil {
		j.misfits = misfits(p)
	}
	return j, err
}

// Case is one vehicle with everything that was computed of it.
type Case struct {
	Now      *build.Built // with [build.Builder.WithThinnest]
	Seen     ride.Seen
	Original *build.Built     // at the same values, nil without one
	Was      *ride.Seen       // what that came to with its battery new
	Conflict *answer.Conflict // readings that cannot all be true, nil when they can

	// Unadvised: nobody asks which cutoff would suit. What is to be put right is
	// found all the same; what is only to be watched may be missing.
	Unadvised bool
}

// Judged is what came out.
type Judged struct {
	Findings []answer.Finding
	Wired    *wiring.Result // nil without a path
	Cutoff   Cutoff
	Charging Charging
	Storage  *answer.StorageFigures
	Measured []answer.MeasuredFigure
	Spark    drive.Spark
	Blocked  drive.Blocked // wheels held, windings warming
	ReverseA float64       // motor current of a reversal at speed
}

// usualFindings is how many most cases have at the most.
const usualFindings = 24

func newJudged() *Judged { return &Judged{Findings: make([]answer.Finding, 0, usualFindings)} }

// view is one case while it is being judged.
type view struct {
	*Judge
	Case
	out *Judged

	speedRead, ampsRead bool // that of steady running was measured, not computed

	followed *cutoff.Followed // see follow
	sagged   *sags            // see sag
}

// Case judges one case, completely.
func (j *Judge) Case(c Case) (*Judged, error) {
	v := &view{Judge: j, Case: c, out: newJudged()}
	defer v.close()
	v.readFirst()
	if err := v.judge(); err != nil {
		return nil, err
	}
	if err := v.onceFull(); err != nil {
		return nil, err
	}
	v.noMore()
	if j.parts.AsMade {
		v.survived()
	}
	return v.out, nil
}

// finished reports whether the battery is: it is neither charged nor used again.
func (v *view) finished() bool {
	return slices.ContainsFunc(v.out.Findings, func(f answer.Finding) bool { return f.Finished })
}

// noMore takes away what would have a battery charged that is finished.
func (v *view) noMore() {
	if !v.finished() {
		return
	}
	v.out.Findings = slices.DeleteFunc(v.out.Findings, func(f answer.Finding) bool { return f.Charging })
	v.out.Storage = nil
}

// survived holds back what is said of wear in a vehicle as it was made: it has
// lived with its motors' heat, its gears, its joints, its fuse and with nothing
// that disconnects its battery. Harm to a child or a house is judged all the
// same, and so is what people add to it: charger, storage, age, readings, and a
// controller that nobody said it was made with. What does not get going does to
// motors, wire and fuse what it was not made for, not to its battery.
func (v *view) survived() {
	for i := range v.out.Findings {
		f := &v.out.Findings[i]
		switch f.Topic {
		case answer.TopicLaunch, answer.TopicPath, answer.TopicRide, answer.TopicSpeed:
			if v.Seen.Stuck() {
				continue
			}
			fallthrough
		case answer.TopicCutoff:
			if f.Harm < answer.House && !f.EndsRides && !f.Added && !(v.ampsRead && f.Topic == answer.TopicPath) { // what flows is no guess
				f.Level = min(f.Level, answer.Watch)
			}
		}
	}
}

// add puts findings on the list.
func (v *view) add(fs ...answer.Finding) { v.out.Findings = append(v.out.Findings, fs...) }

// judge goes through everything that a case can be judged by.
func (v *view) judge() error {
	v.pack()
	if err := v.path(); err != nil {
		return err
	}
	if v.drives() {
		v.driving()
		v.add(v.misfits...)
	}
	v.ending()
	v.conflict()
	v.untold()
	for _, step := range []func() error{v.cutoffs, v.idle, v.charging, v.storage, v.measured} {
		if err := step(); err != nil {
			return fmt.Errorf("packcheck: %w", err)
		}
	}
	v.mayWatch()
	return nil
}

// drives reports whether the case is a vehicle and no bench load.
func (v *view) drives() bool { return v.Seen.Case.Load.Kind == ride.NoLoad }

// fullV is the highest voltage of a full pack: rested, or fresh from the
// charger where the profile's curve ends above that.
func (v *view) fullV() float64 {
	full := v.Now.Pack.StateAt(1, v.Now.PackC)
	return max(v.Now.Pack.FullV(), v.Now.Pack.EMF(&full))
}

// nearlyFull is the charge from which on a pack is as hard on everything as a
// full one. Own choice.
const nearlyFull = 0.95

// onceFull judges a partly charged pack as it will be once somebody has
// charged it: launch, speed, wire and fuse.
func (v *view) onceFull() error {
	if v.Now.StartCharge >= nearlyFull {
		return nil
	}
	full := *v.Now
	full.StartCharge = 1
	later := &view{Judge: v.Judge, Case: v.Case, out: newJudged()}
	later.Now, later.Seen = &full, ride.See(&full.Case, nil)
	if err := later.path(); err != nil {
		return err
	}
	if later.drives() {
		later.driving()
	}
	for _, f := range later.out.Findings {
		known := slices.ContainsFunc(v.out.Findings, func(o answer.Finding) bool { return o.Code == f.Code && o.Level >= f.Level })
		if f.Level == answer.Fine || known {
			continue
		}
		f.OnceFull = true
		v.out.Findings = slices.DeleteFunc(v.out.Findings, func(o answer.Finding) bool { return o.Code == f.Code })
		v.add(f)
	}
	return nil
}

// use is how the pack is used, for judging it.
func (v *view) use() battery.Use {
	c := v.Now
	u := battery.Use{
		PeakA: v.Seen.Outing.PeakBatteryA, LastingA: v.Seen.LastingA(),
		HasTemps: true, ColdestC: min(c.PackC, c.AmbientC), HottestC: v.Seen.Lasts.HottestC + c.HottestK,
	}
	if m := v.parts.Measured; m != nil && m.PackTemperature.Given {
		u.SurfaceC, u.Read = m.PackTemperature.High, true
	}
	return u
}

// afterDriveC is how warm the pack is after the ride, or was seen to be.
func (v *view) afterDriveC() float64 {
	if readC, cold := v.readCold(); cold {
		return readC
	}
	if m := v.parts.Measured; m != nil && m.PackTemperature.Given {
		return max(v.Seen.Lasts.PackC, m.PackTemperature.High)
	}
	return v.Seen.Lasts.PackC
}

// readCold is the temperature that was read of the pack, where it is colder than
// pack and air are told or taken to be: a drive does not cool one.
func (v *view) readCold() (tempC float64, is bool) {
	m := v.parts.Measured
	if m == nil || !m.PackTemperature.Given || m.PackTemperature.High >= min(v.Now.PackC, v.Now.AmbientC) {
		return 0, false
	}
	return m.PackTemperature.High, true
}

// Sources returns the sources that this package itself defines.
func Sources() []answer.Source {
	return []answer.Source{
		{ID: srcCommon, Text: "Common practice, no published source", Known: "common practice"},
		{ID: srcReadings, Text: "JCGM 100:2008 (Guide to the expression of uncertainty in measurement) for errors of readings; the chi-square test of their agreement, p below 0.01", Known: "memory"},
	}
}

// IDs of sources.
const (
	srcCommon   = "common-practice"
	srcReadings = "readings-agree"
	srcWear     = "pack-wear-practice" // defined in package setup
	srcFuseTime = "iso-8820-3-scope"   // defined in package tables
	srcFuseRule = "cfr-33-183-455"     // defined in package tables
)

// The chemistry's family decides what a mistake costs: lithium burns.
func lithium(p chemistry.Profile) bool { return p.Family == chemistry.Lithium }

// day turns a setup's day into one of package charge.
func day(d setup.Date) charge.Date {
	y, m, n := d.Day.Date()
	return charge.Date{Year: y, Month: int(m), Day: n}
}
