package reckon

import (
	"cmp"
	"fmt"
	"math"
	"slices"
	"strings"

	"example.org/packcheck/answer"
	"example.org/packcheck/internal/draws"
	"example.org/packcheck/setup"
)

// drawn is the vehicles that a setup may mean, as points with weights.
type drawn struct {
	z         [][]float64
	weight    []float64
	was       []*past // their originals, nil where nobody will ask for it again
	runs      int     // engine runs that weighing took
	weighed   bool    // by readings: the first draws are no better than the others
	readings  []answer.Reading
	conflict  *answer.Conflict
	explainer *draws.Explainer // see explain
}

// enough is the share of the draws at whose effective number weighing ends: ranges
// then are within a few percent of what many more would give. It stays above where
// an answer would be rough.
const enough, leastEnough = 0.4, 128

// firstShare is the share of the draws that one round of weighing takes, and leastFirst
// how many it takes at the least.
const firstShare, leastFirst = 0.25, 256

// weighing is how much work goes into weighing, so that more draws are more sure
// with readings, too.
func (o Options) weighing() draws.Options {
	first := o.firstDraws()
	return draws.Options{Enough: max(enough*float64(o.Draws), leastEnough), Prior: first, Round: first, Workers: o.Workers}
}

// firstDraws is how many draws there are before any reading is weighed.
func (o Options) firstDraws() int { return max(int(firstShare*float64(o.Draws)), leastFirst) }

// choices tells of the unknowns that pick one kind of part or another.
func (e *engine) choices() []draws.Choice {
	var all []draws.Choice
	for i, c := range e.world.Choices() {
		all = append(all, draws.Choice{Unknown: i, Cuts: c.Cuts()})
	}
	return all
}

// draw draws the vehicles, weighed by what was measured.
func (e *engine) draw(o Options) (*drawn, error) {
	list := readings(e.parts)
	if len(list) == 0 {
		n := o.Draws
		d := &drawn{z: draws.PointsAt(n, e.world.Dims(), e.scramble), weight: make([]float64, n)}
		for i := range d.weight {
			d.weight[i] = 1 / float64(n)
		}
		return d, nil
	}
	d := &drawn{}
	used, p, err := e.weigh(d, list, o)
	if done := o.done(); done != nil { // then no draw ran any more
		return nil, done
	}
	if err != nil {
		return nil, err
	}
	d.z, d.weighed = p.Z, true
	d.tell(e, list, used, p, o)
	d.z, d.weight = d.at(resampled(p.Weight, o.Draws)) // most draws of the first round carry nothing
	return d, nil
}

// effective is how many draws of equal weight tell as much as some, whose weights add
// up to 1.
func effective(weight []float64) float64 {
	squares := 0.0
	for _, w := range weight {
		squares += w * w
	}
	return 1 / squares
}

// rough reports whether so few draws stand behind the ranges that their ends are.
func (d *drawn) rough() bool { return effective(d.weight) < draws.RoughBelow }

// resampled picks n draws as often as their weights ask for: the places of those
// that were picked, rising, each with the weight of all its picks.
func resampled(weight []float64, n int) (places []int, picked []float64) {
	for _, i := range draws.Resample(weight, n) {
		if last := len(places) - 1; last >= 0 && places[last] == i {
			picked[last] += 1 / float64(n)
			continue
		}
		places, picked = append(places, i), append(picked, 1/float64(n))
	}
	return places, picked
}

// some picks n draws that stand for all of them: the first ones, which are a good
// set by themselves, or as many as their weights ask for.
func (d *drawn) some(n int) (places []int, picked []float64) {
	if d.weighed {
		return resampled(d.weight, n)
	}
	n = min(n, len(d.z))
	for i := range n {
		places, picked = append(places, i), append(picked, 1/float64(n))
	}
	return places, picked
}

// at returns the draws at some places, with the weights given.
func (d *drawn) at(places []int, weight []float64) ([][]float64, []float64) {
	z := make([][]float64, len(places))
	for k, i := range places {
		z[k] = d.z[i]
	}
	return z, weight
}

// original is the original of one draw, computed or not.
func (d *drawn) original(i int) *past {
	if i < len(d.was) && d.was[i] != nil {
		return d.was[i]
	}
	return new(past)
}

// keepOriginals has the originals of some draws kept once they are computed.
func (d *drawn) keepOriginals(places []int) {
	if d.was == nil {
		d.was = make([]*past, len(d.z))
	}
	for _, i := range places {
		if d.was[i] == nil {
			d.was[i] = new(past)
		}
	}
}

// firstRounds is how many rounds of weighing go before the question whether the
// readings can all be true (where the answer would be rough, three times as many), and
// allRounds how many there are at most, counted likewise.
const firstRounds, allRounds = 1, 8

// weigh weighs the draws by all readings that can be true together. Those that cannot
// would take every round there is and be weighed for nothing: whether they can is asked
// after the first rounds already.
func (e *engine) weigh(d *drawn, list []reading, o Options) ([]reading, *draws.Posterior, error) {
	used, how := list, o.weighing()
	how.Choices, how.MostRounds, how.Scramble = e.choices(), firstRounds, e.scramble
	settled := false // that those used can all be true
	for {
		p, err := draws.Condition(e.world.Dims(), o.unlessDone(e.model(used)), asRead(used), how)
		agree := func() bool {
			if settled || len(used) == 0 || len(used) == 1 && within(&used[0], p.Predicted[:min(len(p.Z), o.firstDraws())]) {
				return true
			}
			return e.agree(used, middle(e.world, p.Z, p.Weight, draws.NewExplainer(p.Z, p.Weight).Median))
		}
		if err == nil && agree() {
			if err = p.Grow(how.Enough, allRounds); err == nil && agree() {
				d.runs += p.Runs
				return used, p, nil
			}
		}
		if settled {
			return nil, nil, e.unreadable(err)
		}
		var near [][]float64
		if err == nil {
			near = e.modes(p)
			if p.Grow(how.Enough, allRounds) == nil { // beyond a cliff, such as not getting going, later rounds come nearer
				near = append(near, e.modes(p)...)
			}
		}
		rest, errConflict := e.settle(d, used, near, o)
		switch {
		case errConflict != nil:
			return nil, nil, errConflict
		case len(rest) == len(used) && err != nil:
			return nil, nil, e.unreadable(err)
		case len(rest) == len(used):
			err = p.Grow(how.Enough, allRounds)
			d.runs += p.Runs
			return used, p, err
		}
		if err == nil {
			d.runs += p.Runs
		}
		settled, used = true, rest
	}
}

// unlessDone is a model by which nothing runs any more once the call is done.
func (o Options) unlessDone(m draws.Model) draws.Model {
	return func(worker int, z, out []float64) bool { return o.done() == nil && m(worker, z, out) }
}

// agree reports whether a draw foretells the readings so well that the most probable
// one, which can only do better, leaves no doubt.
func (e *engine) agree(list []reading, z []float64) bool {
	out := make([]float64, len(list))
	if !e.model(list)(0, z, out) {
		return false
	}
	square := 0.0
	for i, r := range asRead(list) {
		score := draws.NormalScore((r.Value - out[i]) / r.Err)
		square += score * score
	}
	for _, x := range z {
		square += x * x
	}
	return draws.ChiSquareBeyond(square, len(list)) >= draws.ConflictBelow
}

// unreadable says what is wrong when no draw can have given the readings.
func (e *engine) unreadable(err error) error {
	return fmt.Errorf("packcheck: what was measured cannot come from the vehicle that the setup describes: %w", err)
}

// settle looks whether all readings can be true. Of those that cannot, the one
// that fits least is left out, until the others agree. near are draws that come near to
// them.
func (e *engine) settle(d *drawn, list []reading, near [][]float64, o Options) ([]reading, error) {
	c, is, err := draws.FindConflict(e.world.Dims(), o.unlessDone(e.model(list)), asRead(list), near, e.choices(), o.Workers)
	if err != nil {
		return nil, e.unreadable(err)
	}
	d.runs += c.Runs
	if !is {
		return list, nil
	}
	d.conflict = e.conflict(list, &c)
	var used []reading
	for j := range list {
		if !slices.Contains(c.LeftOut, j) {
			used = append(used, list[j])
		}
	}
	return used, nil
}

// within reports whether a reading lies in the range that is printed without it. Where that
// is of two kinds of motor with nothing in between, there are others that nobody told of.
func within(r *reading, predicted [][]float64) bool {
	of := foretold(r, predicted, 0, nil)
	return r.value.Likely >= of.Low && r.value.Likely <= of.High
}

// mostModes is from how many kinds of vehicle readings are sought to be explained. Own choice.
const mostModes = 3

// modes are the middles of the weighed draws of each kind of vehicle, by what its choices
// select; those with the most weight.
func (e *engine) modes(p *draws.Posterior) [][]float64 {
	type kind struct {
		parts  *setup.Parts
		z      [][]float64
		weight []float64
		sum    float64
	}
	var kinds []*kind
	for i, z := range p.Z {
		parts, err := e.world.Parts(z)
		if err != nil || p.Weight[i] == 0 {
			continue
		}
		k := slices.IndexFunc(kinds, func(k *kind) bool { return k.parts == parts })
		if k < 0 {
			k = len(kinds)
			kinds = append(kinds, &kind{parts: parts})
		}
		of := kinds[k]
		of.z, of.weight, of.sum = append(of.z, z), append(of.weight, p.Weight[i]), of.sum+p.Weight[i]
	}
	slices.SortStableFunc(kinds, func(a, b *kind) int { return cmp.Compare(b.sum, a.sum) })
	var out [][]float64
	for _, k := range kinds[:min(len(kinds), mostModes)] {
		out = append(out, middle(e.world, k.z, k.weight, draws.NewExplainer(k.z, k.weight).Median))
	}
	return out
}

// conflict says which readings do not go together.
func (e *engine) conflict(list []reading, c *draws.Conflict) *answer.Conflict {
	out := &answer.Conflict{P: c.Best.P, Likeliest: list[c.Readings[0]].key}
	for _, i := range c.LeftOut {
		out.LeftOut = append(out.LeftOut, list[i].key)
		if i != c.Readings[0] {
			out.Also = append(out.Also, list[i].told())
		}
	}
	for i := range list {
		out.Readings = append(out.Readings, list[i].key)
	}
	out.Name = list[c.Readings[0]].told()
	names := out.Name
	if len(c.Readings) > 1 {
		out.Second = list[c.Readings[1]].key
		names += " or " + list[c.Readings[1]].told()
	}
	keys := e.world.Keys()
	for _, i := range c.Pushed {
		out.Pushed = append(out.Pushed, answer.Pushed{Key: keys[i], Value: e.world.Printed(i, c.Best.Z), Sigma: c.Best.Z[i]})
	}
	if len(list) == 1 {
		out.Words = fmt.Sprintf("%s fits nothing that the labels may mean.", names)
		return out
	}
	var all []string
	for i := range list {
		all = append(all, list[i].name)
	}
	out.Words = fmt.Sprintf("These readings cannot all be true: %s. Most likely %s is wrong.", strings.Join(all, ", "), names)
	return out
}

// tell sets every reading beside what the draws foretell of it, one that was left out
// too.
func (d *drawn) tell(e *engine, list, used []reading, p *draws.Posterior, o Options) {
	first := min(len(p.Z), o.firstDraws())
	place := map[string]int{}
	for i := range used {
		place[used[i].key] = i
	}
	for i := range list {
		r := &list[i]
		out := answer.Reading{
			Key: r.key, Name: r.name, Text: r.value.Text, Unit: r.unit, Value: r.value.Likely, Error: r.err, Stated: r.stated,
		}
		if !r.linear {
			out.Error *= r.value.Likely
		}
		j, in := place[r.key]
		if out.LeftOut = !in; !in {
			out.Before = foretold(r, d.foretell(e, r, p.Z[:min(first, mostJudged)], o), 0, nil)
			z, weight := d.at(resampled(p.Weight, mostJudged))
			out.After = foretold(r, d.foretell(e, r, z, o), 0, weight)
		} else {
			out.Before = foretold(r, p.Predicted[:first], j, nil)
			out.After = foretold(r, p.Predicted, j, p.Weight)
			miss := math.Abs(r.scaled(out.After.Likely)-r.scaled(out.Value)) / r.err
			out.Fits = miss <= coverage
			out.Explains = e.disagrees(&out)
		}
		d.readings = append(d.readings, out)
	}
}

// disagrees says what speaks against a reading that lies outside of what is foretold with it;
// nothing where it lies inside.
func (e *engine) disagrees(r *answer.Reading) string {
	switch claim := e.parts.Setup.Vehicle.ClaimedSpeed; {
	case r.Fits && r.Value >= r.After.Low && r.Value <= r.After.High:
		return ""
	case r.Key == answer.KeyMeasuredTopSpeed && claim.Given:
		return fmt.Sprintf("the box claims %s, and both were weighed", claim.Text)
	}
	return "labels and other readings together foretell something else"
}

// foretell computes what some draws foretell of a reading that they were not weighed
// with; nothing of those that do not run.
func (d *drawn) foretell(e *engine, r *reading, z [][]float64, o Options) [][]float64 {
	predicted, model := make([][]float64, len(z)), e.model([]reading{*r})
	_ = o.each(len(z), func(i int) error { // none fails by itself
		if out := make([]float64, 1); model(0, z[i], out) {
			predicted[i] = out
		}
		return nil
	})
	d.runs += len(z)
	return predicted
}

// coverage is within how many standard errors a reading comes back: JCGM
// 100:2008, 6.3.3, about 95 %. An honest reading is off by more than one standard
// error in every third case.
const coverage = 2

// foretold is the range of what draws foretell of a reading, each nothing or a number
// for every reading.
func foretold(r *reading, predicted [][]float64, j int, weight []float64) answer.Range {
	values := make([]float64, len(predicted))
	for i, of := range predicted {
		values[i] = math.NaN()
		if of != nil {
			values[i] = of[j]
		}
	}
	s := draws.SpreadOf(values, weight)
	return answer.Range{Low: r.back(s.P10), Likely: r.back(s.P50), High: r.back(s.P90)}
}

// median is the point with every figure at its median and every choice at its
// likeliest, all readings weighed.
func (d *drawn) median(w *setup.World) []float64 {
	return middle(w, d.z, d.weight, d.explain().Median)
}

// explain sorts the draws by each unknown, once.
func (d *drawn) explain() *draws.Explainer {
	if d.explainer == nil {
		d.explainer = draws.NewExplainer(d.z, d.weight)
	}
	return d.explainer
}

// middle is that point of some draws with their weights, and with the median of each
// unknown.
func middle(w *setup.World, draw [][]float64, weight []float64, median func(unknown int) float64) []float64 {
	z := make([]float64, w.Dims())
	column := make([]float64, len(draw))
	choices := w.Choices()
	for j := range z {
		if j >= len(choices) {
			z[j] = median(j)
			continue
		}
		for i := range draw {
			column[i] = draw[i][j]
		}
		z[j] = choices[j].Commonest(column, weight)
	}
	return z
}
