package reckon

import (
	"slices"

	"example.org/packcheck/answer"
	"example.org/packcheck/setup"
)

// What the tests see of the counting.
var (
	Changes  = changes
	Conclude = conclude
	Habits   = habits
	Headline = headline

	KeepNarrowing = keepNarrowing
)

// Question is a question that may be asked.
type Question = question

// NewQuestion makes one of a rank, which may change what has to be put right or not.
func NewQuestion(m answer.Measurement, rank int, decides bool) Question {
	return question{Measurement: m, rank: rank, decides: decides}
}

// Count counts the findings of some draws, all of equal weight.
func Count(findings [][]answer.Finding, assumed ...string) []answer.Finding {
	j := &judgedTable{findings: findings, weight: make([]float64, len(findings))}
	for i := range j.weight {
		j.weight[i] = 1 / float64(len(findings))
	}
	g := guesses{keys: map[string]bool{}}
	for _, key := range assumed {
		g.keys[key] = true
	}
	return count(j, g)
}

// Survived reports whether a vehicle as it was made has lived with what a finding says,
// where its fuse was told and where not.
func Survived(f answer.Finding, fuseTold bool) bool {
	return guesses{asMade: true, fuse: fuseTold}.survived(&f)
}

// OriginalsOnAWay returns what the originals of some draws come to (seconds of
// the ride, metres a second, amperes of the launch), and what they come to once
// the setup was changed as on a way out and they are computed anew.
func OriginalsOnAWay(s *setup.Setup, draws int, sets map[string]string) (before, after [][3]float64, err error) {
	e, d, _, err := begin(s, Options{Draws: draws})
	if err != nil {
		return nil, nil, err
	}
	w := &path{title: keepTitle, steps: []step{{sets: sets}}}
	changed, err := s.With(w.sets(e, s))
	if err != nil {
		return nil, nil, err
	}
	other, err := newEngine(changed)
	if err != nil {
		return nil, nil, err
	}
	carried := e.onto(d, other.world, false)
	for i := range d.z {
		for _, of := range []struct {
			e    *engine
			z    []float64
			list *[][3]float64
		}{{e, d.z[i], &before}, {other, carried.z[i], &after}} {
			v, err := of.e.vehicle(of.z, nil, computed)
			if err != nil {
				return nil, nil, err
			}
			*of.list = append(*of.list, [3]float64{v.Was.Lasts.PedalS, v.Was.Steady.SpeedMS, v.Was.Launch.PeakBatteryA})
		}
	}
	return before, after, nil
}

// Measurable are the keys that a report may advise to find out, for a setup.
func Measurable(p *setup.Parts) []string {
	var keys []string
	for _, c := range candidates(p) {
		keys = append(keys, c.key)
	}
	return keys
}

// Forbids reports whether a question would have somebody run what an answer to a
// setup says no to.
func Forbids(p *setup.Parts, a *answer.Assessment, m answer.Measurement) bool {
	return (&engine{parts: p}).forbids(a, &m)
}

// ToPutRight lists, for each of some draws, the findings of what has to be put right:
// once with and once without the question which cutoff would suit.
func ToPutRight(s *setup.Setup, draws int) (whole, without [][]answer.Finding, err error) {
	e, d, _, err := begin(s, Options{Draws: draws})
	if err != nil {
		return nil, nil, err
	}
	for i := range d.z {
		for _, of := range []struct {
			deep depth
			list *[][]answer.Finding
		}{{complete, &whole}, {unadvised, &without}} {
			v, err := e.vehicleOf(d.z[i], new(past), d.conflict, of.deep)
			if err != nil {
				return nil, nil, err
			}
			var fs []answer.Finding
			for _, f := range v.Judged.Findings {
				if f.Level >= answer.FixFirst {
					fs = append(fs, f)
				}
			}
			*of.list = append(*of.list, fs)
		}
	}
	return whole, without, nil
}

// ReadingsGone are the readings of a setup that are left out once some keys are set.
func ReadingsGone(s *setup.Setup, sets map[string]string) ([]string, error) {
	e, err := newEngine(s)
	if err != nil {
		return nil, err
	}
	out := e.outdated(s, sets)
	slices.Sort(out)
	return out, nil
}
