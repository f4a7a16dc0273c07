package packcheck

import (
	"slices"

	"example.org/packcheck/answer"
	"example.org/packcheck/setup"
)

// Assess answers a setup. Faults that only show when words and labels are
// looked up come back as [setup.Faults]; any other error means that the
// numbers, although each possible, cannot be computed together.
func Assess(s *setup.Setup) (*Assessment, error) {
	parts, err := s.Parts()
	if err != nil {
		return nil, err
	}
	return assess(parts)
}

func assess(p *setup.Parts) (*Assessment, error) {
	if err := checkReadings(p); err != nil {
		return nil, err
	}
	if err := calibrate(p); err != nil {
		return nil, err
	}
	b := newBuilder(p)
	var original *builder
	if p.Original != nil {
		original = newBuilder(p.Original)
	}
	u := unknownsOf(p)
	sp, err := spreadCases(b, u)
	if err != nil {
		return nil, err
	}
	likely, err := look(b, original, u.likely())
	if err != nil {
		return nil, err
	}
	list, err := likely.findings()
	if err != nil {
		return nil, err
	}
	if list, err = charged(list, b, original, u); err != nil {
		return nil, err
	}
	corners, err := doubts(b, original, u, &sp)
	if err != nil {
		return nil, err
	}
	a := &Assessment{Schema: Schema, Title: p.Title, System: p.System}
	a.Ranges = rangesOf(&sp)
	if err := a.fill(likely, &list); err != nil {
		return nil, err
	}
	a.Findings = gather(list, corners...)
	a.Verdict = answer.Worst(a.Findings)
	a.Assumed = assumptions(p, u, &sp)
	a.Measure = measurements(p, u, &sp)
	a.Changes, a.Habits = changes(a.Findings), habits(a.Findings)
	a.Headline = headline(a)
	for _, c := range cautionsFor(p) {
		a.Cautions = append(a.Cautions, c.text)
		a.CautionSources = append(a.CautionSources, c.source)
	}
	a.Sources = sourcesOf(p, a.Findings, a.CautionSources)
	return a, nil
}

// fill sets every figure of the likely case, and adds the findings that belong
// to charging, storage and what was measured.
func (a *Assessment) fill(v *view, list *gathered) error {
	add := list.add
	a.Pack = packFigures(v)
	a.Ride = rideFigures(v)
	a.Path = pathFigures(v)
	if v.parts.Bench == nil {
		a.Steady, a.Launch = steadyFigures(v), launchFigures(v)
	}
	a.Original = originalFigures(v)
	a.Notes = notes(v.parts, &v.o)
	var err error
	if a.Cutoff, err = cutoffFigures(v, add); err != nil {
		return err
	}
	ch, err := chargingOf(v)
	if err != nil {
		return err
	}
	a.Charge = &ch.figures
	a.Notes = append(a.Notes, ch.notes...)
	add(TopicCharge, ch.findings)
	if a.Storage, err = storageFigures(v, add); err != nil {
		return err
	}
	a.Measured, err = measuredFigures(v, add)
	return err
}

// badCorners are where the unknowns do most harm: hardest launch, most lasting
// current, hottest winding, weakest cell, hottest pack. The same corner is
// looked at once.
func badCorners(s *spread) [][]side {
	var out [][]side
	for _, sides := range [][]side{
		s.high[mPeakA], s.high[mBlockedA], s.high[mBatteryA], s.high[mWinding], s.high[mSpeed], s.low[mWeakest], s.low[mSpeed],
	} {
		out = addCorner(out, sides)
	}
	return out
}

// addCorner adds a corner that is one and not there yet.
func addCorner(list [][]side, sides []side) [][]side {
	if !slices.ContainsFunc(sides, func(x side) bool { return x != atLikely }) ||
		slices.ContainsFunc(list, func(o []side) bool { return slices.Equal(o, sides) }) {
		return list
	}
	return append(list, sides)
}

// rangesOf returns the spread of every figure that has one.
func rangesOf(s *spread) map[string]Range {
	out := map[string]Range{}
	for i, m := range metrics {
		if r := s.ranges[i]; r.Valid() {
			out[m.path] = r
		}
	}
	return out
}
