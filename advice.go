package packcheck

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"example.org/packcheck/battery"
	"example.org/packcheck/cutoff"
	"example.org/packcheck/answer"
	"example.org/packcheck/internal/ride"
)

// How far an advised opening voltage is raised, in parts of the nominal volts,
// until it passes the same judgement as a setting that somebody brings along;
// and the share of the ride that it must leave. Own choices.
const (
	raiseShare = 0.01
	raiseTries = 15
	leaveShare = 0.2
)

// advised is the setting that suits this pack and this launch: the one of
// package cutoff, raised where a ride that ends with it still does harm. Nil
// when none is found.
func (v *view) advised(a cutoff.Advice) (*AdvisedCutoff, []answer.Finding, error) {
	d := cutoff.Device{Where: cutoff.Module, OpensAtV: a.OpensAtV, DelayS: a.DelayS}
	for range raiseTries {
		if d.OpensAtV >= v.o.c.Pack.FullV() {
			break
		}
		ok, err := v.passes(d)
		if err != nil {
			return nil, nil, err
		}
		if ok {
			out := &AdvisedCutoff{OpensAtV: d.OpensAtV, DelayS: d.DelayS, ClosesAtV: a.ClosesAtV, MustLatch: a.MustLatch}
			if d.OpensAtV != a.OpensAtV && v.chatters(d, a.ClosesAtV) { // it now opens with more charge left
				out.ClosesAtV, out.MustLatch = 0, true
			}
			return out, a.Findings, nil
		}
		d.OpensAtV = math.Ceil((d.OpensAtV+raiseShare*v.o.c.Pack.NominalV())*10-1e-9) / 10
	}
	return nil, []answer.Finding{{
		Code: "cutoff-cannot-protect", Level: answer.Watch, Source: "cutoff-practice",
		Title:  "No cutoff that watches the volts of the whole pack protects its weakest cell under this load.",
		Advice: "Use a sounder or larger pack, or one whose electronics watch every cell.",
	}}, nil
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

// passes reports whether a ride that ends with the device, and a forgotten
// week after it, leaves nothing to fix.
func (v *view) passes(d cutoff.Device) (bool, error) {
	c := v.o.c
	c.WantedS = 0
	var err error
	if c.Cutoffs, err = cutoff.NewChain(d); err != nil {
		return false, fmt.Errorf("packcheck: %w", err)
	}
	bad := func(list []answer.Finding) bool {
		return slices.ContainsFunc(list, func(f answer.Finding) bool {
			return f.Level >= answer.FixFirst && !strings.HasPrefix(f.Code, "pack-")
		})
	}
	if bad(c.Pack.Judge(battery.Use{LastingA: v.lastingA(), CutoffV: d.OpensAtV})) {
		return false, nil
	}
	out := ride.Run(&c, nil)
	if out.PedalS < leaveShare*v.o.lasts.PedalS {
		return false, nil
	}
	idled, err := cutoff.Idle(cutoff.Standing{
		Pack: c.Pack, Start: out.State, Chain: out.Chain,
		StandbyA: known0(&v.parts.Controller.StandbyA, v.pick), AmbientC: c.AmbientC,
	})
	if err != nil {
		return false, fmt.Errorf("packcheck: %w", err)
	}
	cc := v.cutoffCase()
	cc.Chain = c.Cutoffs
	followed, err := cutoff.Follow(cc)
	if err != nil {
		return false, fmt.Errorf("packcheck: %w", err)
	}
	return !bad(idled.Findings) && !bad(followed.Findings), nil
}
