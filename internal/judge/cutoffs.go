package judge

import (
	"math"
	"slices"

	"example.org/packcheck/answer"
	"example.org/packcheck/battery"
	"example.org/packcheck/chemistry"
	"example.org/packcheck/cutoff"
	"example.org/packcheck/internal/build"
	"example.org/packcheck/internal/ride"
	"example.org/packcheck/setup"
)

// Cutoff is what disconnects the pack and what happens then.
type Cutoff struct {
	First     string  // "pack", "module", "controller" or "nothing"
	AtCharge  float64 // NaN when nothing opens
	Recloses  int
	IdleDays  float64 // until harm; +Inf when it never comes
	Week      string  // left in the toy for a week, in words; empty on a bench
	Advised   *cutoff.Advice
	WeakestV  float64
	WeakestOf bool // whether there is a weakest cell to speak of
}

// reversedV is where a cell's voltage stops being followed: it is reversed, and
// how far is beyond any model here. Own choice.
const reversedV = -1

// cutoffs judges what disconnects the pack, and finds the setting that would
// suit.
func (v *view) cutoffs() error {
	c := v.Now
	v.out.Cutoff = Cutoff{First: answer.OpensNothing, AtCharge: math.NaN(), IdleDays: math.Inf(1), WeakestV: max(v.Seen.Lasts.LowestCellV, reversedV)}
	cc := v.cutoffCase()
	if cc.LoadA <= 0 {
		return nil
	}
	fs, err := cutoff.Judge(cc)
	if err != nil {
		return err
	}
	for i := range fs { // whichever lithium it is: nobody described what disconnects it
		if f := &fs[i]; f.Code == cutoff.CodeNone && v.parts.Pack.LithiumAnyway {
			f.Decides = slices.DeleteFunc(f.Decides, func(key string) bool { return key == answer.KeyPackChemistry })
		}
	}
	v.add(fs...)
	if c.Cutoffs.Len() > 0 {
		if err := v.opening(); err != nil {
			return err
		}
	}
	return v.advise(cc)
}

// asSold reports whether the battery is the kind that the vehicle has lived with, without a
// cutoff: its own, or a larger block in its place.
func (v *view) asSold() bool {
	o := v.parts.Original
	return v.parts.AsMade || o != nil && alikeLead(v.parts, o) && !o.Setup.Cutoff.Module.Given
}

// alikeLead reports whether both batteries are lead-acid of the same cells in series.
func alikeLead(now, was *setup.Parts) bool {
	return now.Pack.Alike() && now.Pack.Profile.Family == chemistry.LeadAcid && was.Pack.Profile.Family == chemistry.LeadAcid &&
		now.Pack.CellsInSeries == was.Pack.CellsInSeries && now.Pack.Joined == was.Pack.Joined
}

// opening judges what happens when one of the cutoffs opens.
func (v *view) opening() error {
	followed, err := v.follow()
	if err != nil {
		return err
	}
	v.add(followed.Findings...)
	out := &v.out.Cutoff
	out.Recloses = followed.Recloses
	if place, _, opened := v.Seen.Lasts.Chain.First(); opened {
		out.First, out.AtCharge = place.String(), v.Seen.Lasts.ChargeLeft
	} else if followed.Opened {
		out.First, out.AtCharge = followed.First.String(), max(0, followed.Charge)
	}
	if !v.drives() {
		return nil
	}
	if o := &v.Seen.Lasts; o.EndedBy == ride.CutoffOpened {
		if f, is := cutoff.EndsRide(o.OpenedFirst, o.PedalS, o.ChargeLeft); is {
			v.add(f)
		}
	}
	for i := range v.Now.Cutoffs.Len() {
		d := v.Now.Cutoffs.At(i)
		v.add(cutoff.ThroughLaunch(d, v.sag(d.Where)).Findings...)
	}
	return nil
}

// follow is what happens around the first opening of a cutoff, computed once.
func (v *view) follow() (*cutoff.Followed, error) {
	if v.followed == nil {
		f, err := cutoff.Follow(v.cutoffCase())
		if err != nil {
			return nil, err
		}
		v.followed = &f
	}
	return v.followed, nil
}

// cutoffCase is the pack under its running load, as package cutoff wants it.
func (v *view) cutoffCase() cutoff.Case {
	c := v.Now
	loadA := v.Seen.LastingA()
	if loadA <= 0 { // nothing ran: whatever runs one day draws at least this
		loadA = c.Pack.RatedAh() / c.Pack.Spec().RateHours
	}
	return cutoff.Case{
		Pack: c.Pack, Start: c.Pack.StateAt(c.StartCharge, c.PackC), Chain: c.Cutoffs,
		LoadA: loadA, PathOhm: c.PathOhm, AmbientC: c.AmbientC,
		CellsWatched: v.parts.Pack.WatchesCells, MayWatch: v.parts.Pack.MayWatch,
		AsSold:  v.asSold(),
		Watched: v.parts.Bench != nil && v.parts.Bench.UntilV.Known,
	}
}

// idle judges a pack that is left as the ride leaves it.
func (v *view) idle() error {
	idled, err := cutoff.Idle(v.standing(&v.Seen.Lasts))
	if err != nil {
		return err
	}
	v.out.Cutoff.IdleDays = idled.DaysToHarm
	if v.drives() {
		v.out.Cutoff.Week = idled.Words
	}
	for _, f := range idled.Findings { // no vehicle has lived with a module that somebody added
		f.Added = f.Added || v.parts.Setup.Cutoff.Module.Given
		v.add(f)
	}
	return nil
}

// standing is the pack after a ride, left alone.
func (v *view) standing(o *ride.Outcome) cutoff.Standing {
	return cutoff.Standing{
		Pack: v.Now.Pack, Start: o.State, Chain: o.Chain,
		StandbyA: build.Known(&v.parts.Controller.StandbyA, v.Now.Pick), AmbientC: v.Now.AmbientC,
	}
}

// How far an advised opening voltage is raised, in parts of the nominal volts,
// until it passes the same judgement as a setting that somebody brings along. Own
// choices.
const (
	raiseShare = 0.015
	raiseTries = 10
)

// advise finds the setting that suits this pack and this launch: the one of
// package cutoff, raised where a ride that ends with it still does harm.
func (v *view) advise(cc cutoff.Case) error {
	if v.Unadvised && v.latches() { // nothing of what may be said is more than to be watched
		return nil
	}
	wish := cutoff.Wish{Case: cc, Where: cutoff.Module, StandbyA: cutoff.AdvisedStandbyA}
	if v.drives() {
		wish.Sag = v.sag(cutoff.Module)
	}
	a, err := cutoff.Advise(wish)
	if err != nil {
		return err
	}
	if v.Unadvised && !toFix(a.Findings) {
		return nil
	}
	d := cutoff.Device{Where: cutoff.Module, OpensAtV: a.OpensAtV, DelayS: a.DelayS, StandbyA: a.StandbyA}
	for range raiseTries {
		if d.OpensAtV >= v.Now.Pack.FullV() {
			break
		}
		ok, short, err := v.passes(d)
		if err != nil {
			return err
		}
		if short { // whatever opens at more volts cuts it shorter still
			break
		}
		if ok {
			out := a
			if out.OpensAtV = d.OpensAtV; d.OpensAtV != a.OpensAtV && v.chatters(d, a.ClosesAtV) { // it now opens with more charge left
				out.ClosesAtV, out.MustLatch = 0, true
			}
			v.out.Cutoff.Advised = &out
			if !v.latches() { // one that is fitted and stays open is what it asks for
				v.add(a.Findings...)
			}
			return nil
		}
		d.OpensAtV = math.Ceil((d.OpensAtV+raiseShare*v.Now.Pack.NominalV())*10-1e-9) / 10
	}
	v.add(cutoff.CannotProtect())
	return nil
}

// mayWatch makes a guess of all that comes of a battery being drained, or of one of two in
// series driven backwards, where it mostly has electronics that watch every cell and nobody
// told whether it has. How a cutoff is set that was told is none.
func (v *view) mayWatch() {
	if !v.parts.Pack.MayWatch {
		return
	}
	for i := range v.out.Findings {
		f := &v.out.Findings[i]
		if f.Change == answer.FitCutoff && !f.Added || f.Code == battery.CodeSeriesUnequalCharge {
			f.Decides = append([]string{answer.KeyPackWatchesCells}, f.Decides...)
		}
	}
}

// latches reports whether something is fitted that stays open once it has opened.
func (v *view) latches() bool {
	for i := range v.Now.Cutoffs.Len() {
		if d := v.Now.Cutoffs.At(i); d.Latches() {
			return true
		}
	}
	return false
}

// chatters reports whether a device that closes again at some volts would let
// the load come back by itself, or cannot be built.
func (v *view) chatters(d cutoff.Device, closesAtV float64) bool {
	d.ClosesAtV = closesAtV
	cc := v.cutoffCase()
	var err error
	if cc.Chain, err = cutoff.NewChain(d); err != nil {
		return true
	}
	followed, err := cutoff.Follow(cc)
	return err != nil || followed.Recloses > 0
}

// passes reports whether a ride that ends with the device, though it waits as long as any
// may, and a forgotten week after it, leaves nothing to fix; and whether the device cuts the
// ride too short.
func (v *view) passes(d cutoff.Device) (ok, short bool, err error) {
	cc, c := v.cutoffCase(), v.Now.Case
	c.WantedS = 0
	if c.Cutoffs, err = cutoff.NewChain(d); err != nil {
		return false, false, err
	}
	d.DelayS = cutoff.LongestDelayS
	if cc.Chain, err = cutoff.NewChain(d); err != nil {
		return false, false, err
	}
	followed, err := cutoff.Follow(cc)
	if err != nil || toFix(followed.Findings) {
		return false, false, err
	}
	out := v.Seen.Marks.Run(&c)
	if out.PedalS < cutoff.MostOfRide*v.Seen.Lasts.PedalS {
		return false, true, nil
	}
	idled, err := cutoff.Idle(v.standing(&out))
	return err == nil && !toFix(idled.Findings), false, err
}

// toFix reports whether there is something among findings that has to be put right.
func toFix(list []answer.Finding) bool {
	return slices.ContainsFunc(list, func(f answer.Finding) bool { return f.Level >= answer.FixFirst })
}
