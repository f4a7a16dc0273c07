package reckon

import (
	"cmp"
	"maps"
	"math"
	"slices"

	"example.org/packcheck/answer"
	"example.org/packcheck/internal/judge"
	"example.org/packcheck/wiring"
)

// fused is what one vehicle makes of its fuse.
type fused struct {
	band     *wiring.FuseBand // nil without a path, and where no band is known
	findings []answer.Finding
}

// fusedOf is that of a judged vehicle.
func fusedOf(v *Vehicle) fused {
	f := fused{findings: v.Judged.Findings}
	if w := v.Judged.Wired; w != nil && w.Band.MostA > 0 {
		f.band = &w.Band
	}
	return f
}

func (f *fused) sizes() []float64 {
	if f.band == nil {
		return nil
	}
	return f.band.StandardA
}

// middleFuse is the fuse that the answer speaks of: that of the typical vehicle, unless
// it finds a size to buy where most vehicles find none, or none where most find one, or one of
// its sizes is none to buy. Then it is the one with the middle current of those that agree
// with most, and name none but sizes to buy.
func (j *judgedTable) middleFuse(typical fused) fused {
	if typical.band == nil {
		return typical
	}
	tooLarge := j.tooLarge()
	toBuy := func(f fused) []float64 { return slices.DeleteFunc(slices.Clone(f.sizes()), tooLarge) }
	none, all := 0.0, 0.0
	for k, f := range j.fuses {
		if f.band == nil {
			continue
		}
		if all += j.weight[k]; len(toBuy(f)) == 0 {
			none += j.weight[k]
		}
	}
	suited := none < likelyShare*all
	agrees := func(f fused) bool {
		sizes := toBuy(f)
		return suited == (len(sizes) > 0) && len(sizes) == len(f.sizes())
	}
	if all == 0 || agrees(typical) {
		return typical
	}
	left := toBuy(typical)
	var agree, alike []int // draws; alike are those with the sizes of the typical one that are left
	for k, f := range j.fuses {
		if f.band == nil || !agrees(f) {
			continue
		}
		if agree = append(agree, k); slices.Equal(f.sizes(), left) {
			alike = append(alike, k)
		}
	}
	if len(alike) > 0 {
		agree = alike
	}
	if len(agree) == 0 { // whatever suits the weakest wire is too large for none
		return slices.MinFunc(j.fuses, func(a, b fused) int { return cmp.Compare(a.mostA(), b.mostA()) })
	}
	slices.SortStableFunc(agree, func(a, b int) int { return cmp.Compare(j.fuses[a].band.LeastA, j.fuses[b].band.LeastA) })
	return j.fuses[upTo(agree, 0.5, func(k int) float64 { return j.weight[k] })]
}

// mostA is the largest fuse that the vehicle stands, +Inf where that is not known.
func (f *fused) mostA() float64 {
	if f.band == nil {
		return math.Inf(1)
	}
	return f.band.MostA
}

// tooLarge tells of a size whether it is too large for the wire of so many vehicles that they
// would be told of one that is fitted; that is counted once for each.
func (j *judgedTable) tooLarge() func(size float64) bool {
	counted := map[float64]bool{}
	return func(size float64) bool {
		if is, known := counted[size]; known {
			return is
		}
		above, all := 0.0, 0.0
		for k, f := range j.fuses {
			if f.band == nil {
				continue
			}
			if all += j.weight[k]; f.band.AboveWire(size) {
				above += j.weight[k]
			}
		}
		counted[size] = above >= possibleShare*all
		return counted[size]
	}
}

// sizesForNearlyAll are the standard sizes, ascending, that suit in nine of ten of the
// vehicles: both load and wire. One of the size that suits the vehicle in the middle may
// open in the ride of half of them.
func (j *judgedTable) sizesForNearlyAll() []float64 {
	all, suits := 0.0, map[float64]float64{}
	for k, f := range j.fuses {
		if f.band == nil {
			continue
		}
		all += j.weight[k]
		for _, size := range f.sizes() {
			suits[size] += j.weight[k]
		}
	}
	return slices.DeleteFunc(slices.Sorted(maps.Keys(suits)), func(size float64) bool { return all-suits[size] >= possibleShare*all })
}

// fuseOpens are the findings of a fuse that opens, or may, while everything is in order.
var fuseOpens = [...]string{
	judge.CodeFuseEndsRide, judge.CodeFuseMayEndRide,
	wiring.CodeFuseOpensRunning, wiring.CodeFuseOpensAtLaunch, wiring.CodeFuseMayOpenAtLaunch,
}

// opensInUse is in what share of the vehicles the fuse opens in use, or may.
func opensInUse(a *answer.Assessment) (share float64) {
	for i := range a.Findings {
		if f := &a.Findings[i]; slices.Contains(fuseOpens[:], f.Code) {
			share = max(share, f.Share)
		}
	}
	return share
}

// onFuseSize reports whether a finding advises a rating of the fuse, or the wire
// that one needs.
func onFuseSize(f *answer.Finding) bool {
	return f.Topic == answer.TopicPath && f.Item == answer.Fuse && (f.Change == answer.FitFuse || f.Change == answer.FitWire)
}

// oneFuse lets all that is advised on the fuse be of the one vehicle whose ratings
// the answer names: each from a draw of its own, they would contradict each other.
// Where none suits that one, none is advised.
func oneFuse(list []answer.Finding, of fused) {
	none := slices.IndexFunc(of.findings, func(o answer.Finding) bool { return o.Code == wiring.CodeFuseNoneFits })
	for i := range list {
		f := &list[i]
		if !onFuseSize(f) {
			continue
		}
		k := slices.IndexFunc(of.findings, func(o answer.Finding) bool { return o.Code == f.Code && onFuseSize(&o) })
		if k < 0 && f.Change == answer.FitFuse {
			k = none
		}
		if k >= 0 {
			f.Advice, f.Change = of.findings[k].Advice, of.findings[k].Change
		}
	}
}
