package judge

import (
	"math"

	"example.org/packcheck/answer"
	"example.org/packcheck/internal/build"
	"example.org/packcheck/internal/ride"
	"example.org/packcheck/wiring"
)

// Codes of findings on wire and fuse that need the outing.
const (
	CodePathUnknown    = "path-unknown"          // nothing is known of wire and fuse
	CodeBareBench      = "bench-without-fuse"    // a bench load that is said to have none
	CodeFuseEndsRide   = "fuse-ends-the-ride"    // it opens during a normal ride
	CodeFuseMayEndRide = "fuse-may-end-the-ride" // one at the early edge of its band may
	CodeFuseOpened     = "fuse-opened-in-use"    // it was seen to open
)

// seasonOutings is how many outings a fuse is taken to see in a season. Own
// choice: every weekend and a little more.
const seasonOutings = 60

// path judges wire, joints and fuse.
func (v *view) path() error {
	if v.Now.Path != nil {
		if err := v.wire(); err != nil {
			return err
		}
		v.add(v.out.Wired.Findings...)
	}
	v.fuseInOuting()
	switch {
	case v.Now.Path != nil:
	case v.parts.Fuse.Absent:
		v.add(answer.Finding{
			Code: CodeBareBench, Level: answer.Danger, Harm: answer.House, Topic: answer.TopicPath, Item: answer.Fuse,
			Source: srcFuseRule, Unit: "A", Limit: v.Now.Pack.ContinuousA(),
			Found:  v.Now.Pack.ShortCircuitA(v.Now.Pack.StateAt(1, v.Now.PackC)),
			Title:  "There is no fuse: a short circuit would make the wire glow.",
			Advice: "Put a fuse that suits the wire by the pack before anything is connected.",
			Change: answer.FitFuse, Gravity: 2, Decides: []string{v.parts.Fuse.Form.Key},
		})
	case !v.drives():
		v.add(answer.Finding{
			Code: CodePathUnknown, Level: answer.Watch, Harm: answer.House, Topic: answer.TopicPath, Item: answer.Fuse, Source: srcFuseRule,
			Title:  "Nothing is known of wire and fuse.",
			Advice: "Tell how thick the wire is, and which fuse there is: without a fuse that suits the wire a short circuit makes it glow.",
			Change: answer.LookUp,
		})
	}
	return nil
}

// wire holds the path against the currents of the case.
func (v *view) wire() error {
	c, s := v.Now, &v.Seen
	full := c.Pack.StateAt(1, c.PackC)
	wc := wiring.Case{
		Path: c.Path, Thinnest: c.Thinnest, Form: v.form, Tables: v.parts.Tables, AmbientC: c.AmbientC + build.BoxRiseK,
		Pack:   wiring.PackEnd{FullV: v.fullV(), Ohm: c.Pack.SourceOhm(&full)},
		Demand: wiring.Demand{RunningA: s.LastingA()},

		FuseUnknown: !v.parts.Fuse.Absent && !v.parts.Fuse.RatingA.Known,
		AsMade:      v.parts.AsMade, Replaced: !v.parts.AsMade && v.drives(),
	}
	if m := v.parts.Measured; m != nil && m.FuseRating.Given {
		wc.OpenedA, wc.CameBack = m.FuseRating.Likely, m.CameBack()
	}
	if v.drives() {
		l := &s.Launch
		wc.Demand.BlockedA = s.Blocked.BatteryA
		wc.Demand.LaunchI2t = l.SurgeA2S
		wc.Demand.Launches = float64(s.Outing.Launches) * seasonOutings
		if l.To90S > 0 {
			wc.Demand.LaunchS = l.To90S
			wc.Demand.LaunchA = math.Sqrt(l.SurgeA2S/l.To90S + s.Steady.BatteryA*s.Steady.BatteryA)
		}
	}
	r, err := wiring.Assess(wc)
	v.out.Wired = &r
	return err
}

// fuseInOuting judges whether the fuse opens while everything is in order.
func (v *view) fuseInOuting() {
	o := &v.Seen.Lasts
	f := answer.Finding{
		Topic: answer.TopicPath, Item: answer.Fuse, Source: srcFuseTime, Unit: "A", Found: v.Seen.LastingA(),
		Limit: v.Now.Fuse.RatedA(), Change: answer.FitFuse, Decides: []string{v.parts.Fuse.RatingA.Key}, About: "fuse-rating",
	}
	switch {
	case o.EndedBy == ride.FuseOpened:
		f.Code, f.Level, f.Harm, f.EndsRides = CodeFuseEndsRide, answer.FixFirst, answer.Part, true
		f.Title = "The fuse opens during a normal ride."
		f.Advice = "Bring the current down: by a current limit, lighter use, or thicker wire and the fuse that belongs to it. Never only to a larger fuse."
	case o.FuseMayOpen:
		f.Code, f.Level = CodeFuseMayEndRide, answer.Watch
		f.Title = "A fuse at the early edge of its band may open during a normal ride."
		f.Advice = "If it does, find out why before fitting another of the same size."
	default:
		return
	}
	v.add(f)
}
