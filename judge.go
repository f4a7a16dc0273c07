package packcheck

import (
	"fmt"
	"math"
	"slices"

	"example.org/packcheck/battery"
	"example.org/packcheck/chemistry"
	"example.org/packcheck/cutoff"
	"example.org/packcheck/drive"
	"example.org/packcheck/answer"
	"example.org/packcheck/internal/ride"
	"example.org/packcheck/setup"
	"example.org/packcheck/wiring"
)

// seasonOutings is how many outings a fuse is taken to see in a season. Own
// choice: every weekend and a little more.
const seasonOutings = 60

// view is one case with everything that is judged of it.
type view struct {
	parts *setup.Parts
	pick  setup.Pick
	o     outcome
	one   *battery.Model // the pack; of two joined ones, one
	path  *wiring.Path
	wired *wiring.Result // nil without a path
	orig  *outcome       // the original at the same pick, nil without one

	followed *cutoff.Followed            // see follow
	sags     map[cutoff.Place]cutoff.Sag // see sag
}

// look computes a case and its path at one pick.
func look(b, original *builder, pick setup.Pick) (*view, error) {
	c, err := b.build(pick)
	if err != nil {
		return nil, err
	}
	v := &view{parts: b.parts, pick: pick, o: evaluate(c)}
	if v.one, err = b.onePack(pick); err != nil {
		return nil, err
	}
	if c.Load.Kind == ride.NoLoad {
		v.o.blocked = blocked(&c, c.Vehicle)
	}
	if v.path, err = b.path(pick); err != nil {
		return nil, err
	}
	if v.path != nil {
		if err := v.wire(b); err != nil {
			return nil, err
		}
	}
	if original != nil {
		oc, err := original.build(pick)
		if err != nil {
			return nil, err
		}
		o := evaluate(oc)
		v.orig = &o
	}
	return v, nil
}

// wire judges the path.
func (v *view) wire(b *builder) error {
	c := &v.o.c
	full := c.Pack.StateAt(1, c.PackC)
	wc := wiring.Case{
		Path: v.path, Tables: v.parts.Tables, AmbientC: c.AmbientC + boxRiseK,
		Pack:   wiring.PackEnd{FullV: v.fullV(), NominalV: c.Pack.NominalV(), Ohm: c.Pack.SourceOhm(&full)},
		Demand: wiring.Demand{RunningA: v.lastingA()},

		FuseUnknown: !v.parts.Fuse.Absent && !v.parts.Fuse.RatingA.Known,
	}
	var err error
	if wc.Thinnest, err = v.thinnest(b); err != nil {
		return err
	}
	if v.parts.Vehicle != nil {
		l := &v.o.Launch
		if c.Controller.Converter.OutV == 0 { // behind a converter the switch does not see the pack's volts
			wc.DesignV = known0(&v.parts.Vehicle.DesignV, v.pick)
		}
		wc.Demand.BlockedA = v.o.blocked.BatteryA
		wc.Demand.LaunchI2t = l.SurgeA2S
		wc.Demand.Launches = float64(v.o.Outing.Launches) * seasonOutings
		if l.To90S > 0 {
			running := v.o.Steady.BatteryA
			wc.Demand.LaunchS = l.To90S
			wc.Demand.LaunchA = math.Sqrt(l.SurgeA2S/l.To90S + running*running)
		}
	}
	r, err := wiring.Assess(wc)
	if err != nil {
		return err
	}
	v.wired = &r
	return nil
}

// thinnest is the path with the least wire that the setup leaves possible, nil
// where the wire is known: a fuse is chosen for that one.
func (v *view) thinnest(b *builder) (*wiring.Path, error) {
	w := v.parts.Wire
	if !w.Gauge.Uncertain() && !w.AreaMM2.Uncertain() && !w.InsulationC.Uncertain() {
		return nil, nil
	}
	return b.path(func(f *setup.Figure) float64 {
		switch f.Key {
		case w.Gauge.Key:
			return f.High // of a gauge number, the thinner wire
		case w.AreaMM2.Key, w.InsulationC.Key:
			return f.Low
		}
		return v.pick(f)
	})
}

// lastingA is the battery current that warms pack, wire and joints: running
// steadily, or what the outing comes to with launches and pauses where that is
// more.
func (v *view) lastingA() float64 { return max(v.o.Steady.BatteryA, v.o.lasts.RMSA) }

// known0 is the picked value of a figure, 0 when it is not known.
func known0(f *setup.Figure, pick setup.Pick) float64 {
	if !f.Known {
		return 0
	}
	return pick(f)
}

// findings judges the view: everything but charging and storage.
func (v *view) findings() (gathered, error) {
	var list gathered
	add := list.add
	c := &v.o.c
	use := battery.Use{
		PeakA: v.o.Outing.PeakBatteryA, LastingA: v.lastingA(),
		HasTemps: true, ColdestC: min(c.PackC, c.AmbientC), HottestC: v.o.lasts.HottestC,
	}
	for i := range c.Cutoffs.Len() {
		use.CutoffV = max(use.CutoffV, c.Cutoffs.At(i).OpensAtV)
	}
	add(TopicPack, c.Pack.Judge(use))
	add(TopicPack, v.joined())
	add(TopicPack, v.worn())
	add(TopicPack, v.guessedCells())
	add(TopicPack, v.unclearBlocks())
	add(TopicPath, v.bareBench())
	if v.wired != nil {
		add(TopicPath, v.wired.Findings)
	}
	add(TopicPath, v.fuseInOuting())
	if v.wired == nil && c.Load.Kind != ride.NoLoad && !v.parts.Fuse.Absent {
		add(TopicPath, []answer.Finding{{
			Code: "path-unknown", Level: answer.Watch, Source: "cfr-33-183-455",
			Title:  "Nothing is known of wire and fuse.",
			Advice: "Describe them under [wire] and [fuse]: without a fuse that suits the wire a short circuit makes it glow.",
		}})
	}
	if c.Load.Kind == ride.NoLoad {
		v.driving(add)
	}
	add(TopicRide, v.ending())
	if err := v.cutoffs(add); err != nil {
		return nil, err
	}
	if welds(list) {
		list = slices.DeleteFunc(list, func(f answer.Finding) bool { return f.Code == "pedal-may-weld" })
	}
	return list, nil
}

// welds reports whether package drive already warns of welded contacts: it
// knows the volts as well, so its finding says more than the path's.
func welds(list []answer.Finding) bool {
	return slices.ContainsFunc(list, func(f answer.Finding) bool { return f.Code == "contacts-may-weld" })
}

// What is left of a pack when it is usually given up, and the share below which
// its cells cannot be trusted at all. The second is an own choice.
const (
	wornHealth, spentHealth = 0.8, 0.5
	srcWear                 = "pack-wear-practice" // defined in package setup
)

// worn judges a pack that holds far less than when it was new.
func (v *view) worn() []answer.Finding {
	health := v.o.c.Pack.Spec().Health
	f := answer.Finding{
		Code: "pack-worn", Level: answer.Watch, Unit: "x", Found: health, Limit: wornHealth, Source: srcWear,
		Title:  fmt.Sprintf("The pack holds %s %% of what it held when new: it is past its usual life.", round(100*health, 2)),
		Advice: "Replace it before long; watch for heat, swelling and a ride that ends suddenly.",
	}
	switch {
	case health >= wornHealth-1e-9:
		return nil
	case health < spentHealth:
		f.Level, f.Limit = answer.FixFirst, spentHealth
		f.Title = fmt.Sprintf("The pack holds %s %% of what it held when new: some of its cells are as good as dead.", round(100*health, 2))
		f.Advice = "Replace it and hand it in where batteries are collected."
	}
	return []answer.Finding{f}
}

// guessedCells warns of a chemistry that nobody stated: charger, cutoff and
// every limit hang on it.
func (v *view) guessedCells() []answer.Finding {
	p := &v.parts.Pack
	if !p.Chemistry.Assumed {
		return nil
	}
	f := answer.Finding{
		Code: "cells-assumed", Level: answer.Watch, Source: srcCommon,
		Title:  fmt.Sprintf("Nothing says what cells the pack has; they are taken for %s.", p.Profile.Title),
		Advice: "Read it off the pack, or ask its maker, and enter it as chemistry: charger, cutoff and fuse hang on it.",
	}
	if l, err := battery.ParseLabel(v.parts.Setup.Pack.Label.Text, ""); err != nil || len(l.Others) > 0 && l.Sure == battery.Guess {
		f.Level = answer.FixFirst
		f.Title = fmt.Sprintf("The label can mean more than one kind of cell; %s is only the likeliest.", p.Profile.Title)
	}
	return []answer.Finding{f}
}

// bareBench is a bench load that is said to have no fuse, whatever its wire.
func (v *view) bareBench() []answer.Finding {
	if v.wired != nil || !v.parts.Fuse.Absent {
		return nil
	}
	c := &v.o.c
	return []answer.Finding{{
		Code: "no-fuse", Level: answer.Danger, Source: "cfr-33-183-455", Unit: "A",
		Found: c.Pack.ShortCircuitA(c.Pack.StateAt(1, c.PackC)), Limit: c.Pack.ContinuousA(),
		Title:  "There is no fuse: a short circuit would make the wire glow.",
		Advice: "Put a fuse that suits the wire by the pack before anything is connected.",
	}}
}

// driving judges what only a vehicle has.
func (v *view) driving(add adder) {
	c, o := &v.o.c, &v.o
	launch := c.LaunchCase()
	lc := drive.LaunchCheck{Case: launch, Result: o.Launch, BlockedA: o.blocked.MotorA}
	bc := drive.BlockedCheck{Blocked: o.blocked, Limits: c.Limits, LimitA: c.Controller.LimitA}
	sc := drive.SpeedCheck{SpeedMS: o.Steady.SpeedMS}
	if age := &v.parts.Rider.AgeYears; age.Known {
		sc.AgeYears = age.Low // of several children the youngest counts
	}
	switch {
	case v.asMade():
		bc.Original = &o.blocked
	case v.orig != nil:
		lc.Original, bc.Original, sc.OriginalMS = &v.orig.Launch, &v.orig.blocked, v.orig.Steady.SpeedMS
	}
	add(TopicLaunch, lc.Findings())
	add(TopicLaunch, bc.Findings())
	add(TopicSpeed, sc.Findings())
	add(TopicLaunch, drive.BoardCheck{
		Controller: c.Controller, FullV: v.fullV(), DesignV: known0(&v.parts.Vehicle.DesignV, v.pick),
		WeakestV: known0(&v.parts.Vehicle.WeakestPartV, v.pick), PeakA: o.Launch.PeakBatteryA, SwitchA: c.Limits.SwitchA,
	}.Findings())
	reverseA := 0.0 // a controller that waits for a standstill never meets it
	if v.parts.Setup.Controller.Reverses.Text != "after a stop" {
		r := v.reversal()
		reverseA = r.MotorA
		add(TopicLaunch, drive.ReversalCheck{Reversal: r, Limits: c.Limits, BlockedA: o.blocked.MotorA}.Findings())
	}
	add(TopicLaunch, drive.ConverterCheck{
		Converter: c.Controller.Converter, LaunchA: v.unlimitedBoardA(), ReverseA: reverseA, RunningA: o.Steady.MotorA,
	}.Findings())
	add(TopicLaunch, v.spark().Findings())
	if c.Vehicle.Motor.Thermal.Known() {
		add(TopicRide, drive.HeatCheck{
			State: drive.HeatState{WindingC: o.lasts.WindingC, CaseC: o.lasts.CaseC}, LimitC: c.Vehicle.Motor.Thermal.LimitC,
		}.Findings())
	}
}

// asMade reports whether the battery is of the kind that the vehicle was made
// for: lead-acid of its own voltage on plain contacts, with no other original
// described. Such a vehicle stands for its own original.
func (v *view) asMade() bool {
	design := &v.parts.Vehicle.DesignV
	nominal := v.o.c.Pack.NominalV()
	return v.orig == nil && v.parts.Pack.Profile.Family == chemistry.LeadAcid && !v.o.c.Controller.Chopper &&
		design.Known && nominal < 1.05*v.pick(design)
}

// fullV is the highest voltage of a full pack: rested, or fresh from the
// charger where the profile's curve ends above that.
func (v *view) fullV() float64 {
	full := v.o.c.Pack.StateAt(1, v.o.c.PackC)
	return max(v.o.c.Pack.FullV(), v.o.c.Pack.EMF(&full))
}

// reversal is switching to reverse at running speed.
func (v *view) reversal() drive.Reversal {
	return drive.ReverseAt(v.o.c.Vehicle, v.o.c.Controller, v.o.c.Circuit(), v.o.Steady.SpeedMS, v.o.c.AmbientC)
}

// unlimitedBoardA is what the board would draw at launch from a converter
// that had no limit of its own.
func (v *view) unlimitedBoardA() float64 {
	c := v.o.c
	if c.Controller.Converter.OutV == 0 {
		return 0
	}
	c.Controller.Converter.LimitA = 0
	l := c.LaunchCase()
	return drive.Launch(&l, c.LaunchSeconds(), nil).PeakMotorA
}

// spark is what plugging in does to an empty input capacitor.
func (v *view) spark() drive.Spark {
	c := &v.o.c
	full := c.Pack.StateAt(1, c.PackC)
	return drive.SparkOf(drive.PlugIn{
		Volt: v.fullV(), LoopOhm: c.Pack.SourceOhm(&full) + c.PathOhm, InputF: c.Controller.InputF,
	})
}

// ending judges what ended the outing.
func (v *view) ending() []answer.Finding {
	o := &v.o.lasts
	switch {
	case v.o.c.Controller.Converter.OutV > 0 && v.o.Steady.Stuck && !v.o.Steady.Slipping && v.o.Launch.EndMS > 0:
		return []answer.Finding{{
			Code: "cannot-keep-going", Level: answer.FixFirst, Source: srcCommon,
			Title:  "It may jerk forward, but pack and path cannot give what it takes to keep going.",
			Advice: "Look for the part with too much resistance, or use a pack, wire and converter made for the current.",
		}}
	case o.EndedBy == ride.CannotSupply && v.o.c.StartCharge > 0:
		return []answer.Finding{{
			Code: "pack-cannot-supply", Level: answer.FixFirst, Source: srcCommon,
			Title:  "The pack comes to where it cannot give what the load asks for.",
			Advice: "Ask for less, or use a pack made for the current; set the end of the discharge above this point.",
		}}
	case o.EndedBy == ride.VoltageReached && o.PedalS < 1:
		return []answer.Finding{{
			Code: "ends-at-once", Level: answer.FixFirst, Source: srcCommon, Unit: "V", Found: v.startV(), Limit: v.o.c.UntilV,
			Title:  "Under this load the volts are below the end voltage from the first moment on.",
			Advice: "Ask for less current, begin with more charge, or let it end at a lower voltage.",
		}}
	case o.EndedBy != ride.CannotMove || o.PedalS < 60 || v.o.c.Cutoffs.Len() > 0:
		return nil
	}
	return []answer.Finding{{
		Code: "driven-to-a-standstill", Level: answer.Watch, Source: srcCommon,
		Title:  "Nothing stops the ride but the pack giving out: by then it is drained deeper than it should be.",
		Advice: "Stop when it gets slower, or fit a cutoff.",
	}}
}

// startV is what the battery shows once a bench load has come on.
func (v *view) startV() float64 {
	c := &v.o.c
	amps := v.o.lasts.PeakBatteryA
	s := c.Pack.StateAt(c.StartCharge, c.PackC)
	return c.Pack.TerminalV(&s, amps)
}

// fuseInOuting judges whether the fuse opens while everything is in order.
func (v *view) fuseInOuting() []answer.Finding {
	o := &v.o.lasts
	switch {
	case o.EndedBy == ride.FuseOpened:
		return []answer.Finding{{
			Code: "fuse-ends-the-ride", Level: answer.FixFirst, Source: "iso-8820-3-scope",
			Unit: "A", Found: v.lastingA(), Limit: v.o.c.Fuse.RatedA(),
			Title:  "The fuse opens during a normal ride.",
			Advice: "Bring the current down with a current limit or lighter use, or go to thicker wire and the fuse that belongs to it. Never only to a larger fuse.",
		}}
	case o.FuseMayOpen:
		return []answer.Finding{{
			Code: "fuse-may-end-the-ride", Level: answer.Watch, Source: "iso-8820-3-scope",
			Unit: "A", Found: v.lastingA(), Limit: v.o.c.Fuse.RatedA(),
			Title:  "A fuse at the early edge of its band may open during a normal ride.",
			Advice: "If it does, find out why before fitting another of the same size.",
		}}
	}
	return nil
}

// cutoffs judges what disconnects the pack.
func (v *view) cutoffs(add adder) error {
	c := &v.o.c
	cc := v.cutoffCase()
	if cc.LoadA <= 0 {
		return nil
	}
	fs, err := cutoff.Judge(cc)
	if err != nil {
		return err
	}
	add(TopicCutoff, fs)
	if c.Cutoffs.Len() == 0 {
		return nil
	}
	followed, err := v.follow()
	if err != nil {
		return err
	}
	add(TopicCutoff, followed.Findings)
	if c.Load.Kind == ride.NoLoad {
		for i := range c.Cutoffs.Len() {
			d := c.Cutoffs.At(i)
			add(TopicCutoff, cutoff.ThroughLaunch(d, v.sag(d.Where)).Findings)
		}
	}
	return nil
}

// follow is what happens around the first opening of a cutoff, computed once.
func (v *view) follow() (*cutoff.Followed, error) {
	if v.followed == nil {
		f, err := cutoff.Follow(v.cutoffCase())
		if err != nil {
			return nil, fmt.Errorf("packcheck: %w", err)
		}
		v.followed = &f
	}
	return v.followed, nil
}

// cutoffCase is the pack under its running load, as package cutoff wants it.
func (v *view) cutoffCase() cutoff.Case {
	c := &v.o.c
	loadA := v.lastingA()
	if loadA <= 0 { // nothing ran: whatever runs one day draws at least this
		loadA = c.Pack.RatedAh() / c.Pack.Spec().RateHours
	}
	return cutoff.Case{
		Pack: c.Pack, Start: c.Pack.StateAt(c.StartCharge, c.PackC), Chain: c.Cutoffs,
		LoadA: loadA, PathOhm: c.PathOhm, AmbientC: c.AmbientC,
		Watched: v.parts.Bench != nil && v.parts.Bench.UntilV.Known,
	}
}
