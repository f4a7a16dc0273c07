package reckon

import (
	"cmp"
	"slices"

	"example.org/packcheck/answer"
	"example.org/packcheck/setup"
)

// assumptions are all that the setup did not give, of today's vehicle and of the
// original.
func (e *engine) assumptions() []setup.Assumption {
	all := slices.Clone(e.parts.Assumed)
	if o := e.parts.Original; o != nil {
		all = append(all, o.Assumed...)
	}
	return all
}

// assumedKeys are the keys of the setup that stand on an assumption, or on
// nothing at all.
func (e *engine) assumedKeys() map[string]bool {
	out := map[string]bool{}
	for _, a := range e.assumptions() {
		out[a.Key] = !a.Firm
	}
	for _, p := range []*setup.Parts{e.parts, e.parts.Original} {
		if p != nil {
			for _, key := range p.Untold {
				out[key] = true
			}
		}
	}
	if !e.parts.Setup.Gives(answer.KeyChargerCameWithPack) {
		out[answer.KeyChargerCameWithPack] = true
	}
	if !e.parts.Setup.Gives(answer.KeySecondRestVoltage) {
		out[answer.KeySecondRestVoltage] = true
	}
	return out
}

// assumedSources is what the assumptions rest on, by key.
func (e *engine) assumedSources() map[string]string {
	out := map[string]string{}
	for _, a := range e.assumptions() {
		if !a.Firm {
			out[a.Key] = a.Source
		}
	}
	return out
}

// guesses is what the findings of the answer may rest on. Readings that contradict one
// another tell nothing of a battery's wear.
func (e *engine) guesses(c *answer.Conflict) guesses {
	p := e.parts
	fuse := p.Setup.Fuse.Rating.Given && (p.Setup.Wire.Gauge.Given || p.Setup.Wire.Area.Given)
	read := map[string]bool{answer.KeyPackHealth: c == nil && p.Measured != nil && p.Measured.TellsWear()}
	return guesses{keys: e.assumedKeys(), read: read, sources: e.assumedSources(), asMade: p.AsMade, fuse: fuse}
}

// assumed lists what the setup did not give, the weightiest first: what decides
// a finding, and how much of the spread of minutes, speed and launch goes with
// it. What moves nothing keeps the order in which it was assumed.
func (e *engine) assumed(d *drawn, t *table, findings []answer.Finding) []answer.Assumed {
	effect := map[string]float64{}
	explain := d.explain()
	keys := e.world.Keys()
	for i, figure := range metrics.Get() {
		switch figure.path {
		case minutesPath, speedPath, launchPath:
			for k, share := range explain.Explain(t.values[i]) {
				effect[keys[k]] = max(effect[keys[k]], share)
			}
		}
	}
	decides := map[string]bool{}
	for _, f := range findings {
		if f.Level > answer.Fine {
			for _, key := range f.Decides {
				decides[key] = true
			}
		}
	}
	var out []answer.Assumed
	for _, a := range e.assumptions() {
		out = append(out, answer.Assumed{
			Key: a.Key, Value: a.Value, Why: a.Why, Source: a.Source, Effect: effect[a.Key], Decides: decides[a.Key],
		})
	}
	slices.SortStableFunc(out, func(a, b answer.Assumed) int { return cmp.Compare(b.Effect, a.Effect) })
	return out
}
