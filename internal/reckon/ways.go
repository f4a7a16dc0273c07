package reckon

import (
	"errors"
	"maps"
	"slices"
	"strings"

	"example.org/packcheck/answer"
	"example.org/packcheck/drive"
	"example.org/packcheck/setup"
	"example.org/packcheck/wiring"
)

// mostWays is how many ways out an answer shows; searchDraws how many of the
// answer's draws the search for one takes, before the way is computed on as many
// as the answer's findings rest on; mostRounds how often it may go on to what the
// steps so far leave.
const mostWays, searchDraws, mostRounds = 3, 32, 6

// path is a way out in the making: a setup, and the steps that led to it.
type path struct {
	title string
	start map[string]string // keys set before any step
	steps []step
}

// ways searches the ways out of what is to be fixed first, each computed like the
// answer itself. What it has goes to show each time that it finds one, copied.
func (e *engine) ways(s *setup.Setup, d *drawn, a *answer.Assessment, o Options, show func([]answer.Way)) ([]answer.Way, error) {
	if e.parts.Bench != nil {
		return nil, nil
	}
	few, enough := d.thinned(searchDraws), d.thinned(mostJudged)
	if a.Verdict < answer.FixFirst {
		return e.renewed(s, few, enough, a, o)
	}
	starts := e.starts(s, a)
	finds := inTurn(len(starts), o.Workers, func(i int) (*answer.Assessment, error) { return starts[i].find(e, s, few, enough, o) })
	var out []answer.Way
	said := false // why the amps of the steps differ
	for i, w := range starts {
		if len(out) == mostWays {
			break
		}
		found, err := finds(i)
		if err != nil {
			return nil, err
		}
		if mends(found) {
			way := w.way(e, s, found, d.weighed)
			if w.title == newTitle && !gains(&way, a) {
				continue
			}
			order, amps := together(w.steps)
			if way.Together = order; !said { // once
				way.Together += amps
				said = amps != ""
			}
			if w.changesNothing() { // nobody needs another battery then
				out = slices.Insert(out, 0, way)
			} else {
				out = append(out, way)
			}
			show(slices.Clone(out))
		}
	}
	return out, nil
}

// muchLonger is how many times the minutes of a worn battery a new one gives where that is
// worth a word. Own choice.
const muchLonger = 1.5

// newTitle is the way that begins from a new battery in the place of the one that is there.
const newTitle = "A new battery of the same kind"

// wearRead reports whether readings tell that the battery is worn.
func (e *engine) wearRead(a *answer.Assessment) bool {
	m := e.parts.Measured
	return m != nil && m.TellsWear() && slices.ContainsFunc(a.Findings, func(f answer.Finding) bool {
		return f.Item == answer.Battery && f.Change == answer.FitPack && f.Level > answer.Fine && f.Share >= likelyShare
	})
}

// renewing begins from a new battery of the same kind.
func (e *engine) renewing(a *answer.Assessment) *path {
	return &path{title: newTitle, start: packStep(a, e.parts).sets}
}

// gains reports whether a way gives clearly more minutes than the battery does today.
func gains(way *answer.Way, a *answer.Assessment) bool {
	today := rangeOf(a, minutesPath, a.Ride.LastsPedalMin)
	return way.PedalMin.Low > today.Likely && way.PedalMin.Likely >= muchLonger*today.Likely
}

// renewed is a new battery of the same kind in the place of one whose wear was read, where it gives clearly more: it is all that is wrong, and only to be watched.
func (e *engine) renewed(s *setup.Setup, few, enough *drawn, a *answer.Assessment, o Options) ([]answer.Way, error) {
	if !e.wearRead(a) {
		return nil, nil
	}
	w := e.renewing(a)
	found, err := w.find(e, s, few, enough, o)
	if err != nil || !mends(found) || len(w.steps) > 0 {
		return nil, err
	}
	if way := w.way(e, s, found, true); gains(&way, a) {
		return []answer.Way{way}, nil
	}
	return nil, nil
}

// inTurn computes f for 0 to n-1, all at once where there are workers for that, and
// hands each out when it is asked for.
func inTurn[T any](n, workers int, f func(int) (T, error)) func(int) (T, error) {
	if workers < 2 {
		return f
	}
	type result struct {
		value T
		err   error
	}
	list := make([]chan result, n)
	for i := range list {
		list[i] = make(chan result, 1)
		go func() {
			value, err := f(i)
			list[i] <- result{value, err}
		}()
	}
	return func(i int) (T, error) {
		r := <-list[i]
		return r.value, r.err
	}
}

// mends reports whether nothing is left that has to be put right, and the ride is left.
func mends(a *answer.Assessment) bool {
	return a != nil && a.Verdict < answer.FixFirst && a.Draws.CutShort <= mostCutShort
}

// mostCutShort is in what share of vehicles a cutoff may end the ride of a way out with
// much left in the battery. Own choice.
const mostCutShort = 0.5

// hopeless reports whether what is left to be put right at the end of a search is left
// in so many of its few draws that more of them would not find otherwise.
func hopeless(a *answer.Assessment) bool {
	return slices.ContainsFunc(a.Findings, func(f answer.Finding) bool { return f.Level >= answer.FixFirst && f.Share >= plainShare })
}

// find searches one way out and returns the answer at its end; nil where the steps
// make no setup, or can mend nothing. The search and what it can do without need few
// draws; what is rarer shows only in more, which are those of the promise, at once where
// no reading has to be weighed anew for it.
func (w *path) find(e *engine, s *setup.Setup, few, enough *drawn, o Options) (*answer.Assessment, error) {
	if enough.conflict != nil && len(under("original", w.start)) == 0 {
		return nil, nil // of the same vehicle it stays until somebody has measured again
	}
	begun := slices.Clone(w.steps)
	found, err := w.search(e, s, few, o)
	if err != nil || found == nil || hopeless(found) {
		return nil, err
	}
	if mends(found) {
		if err := w.prune(e, s, few, o); err != nil {
			return nil, err
		}
	} else { // more draws may not ask for the step that spoils it
		w.steps = begun
	}
	told := func() bool { return !enough.weighed || len(e.outdated(s, w.sets(e, s))) == 0 }
	if enough.weighed || !mends(found) || !told() {
		if found, err = w.search(e, s, enough, o); err != nil {
			return nil, err
		}
	}
	if mends(found) && told() {
		return w.promise(e, s, o)
	}
	return found, nil
}

// search adds steps until nothing is left to fix or no step helps, and returns the
// answer then, on the draws of the setup that the way begins from; nil where the
// steps make no setup.
func (w *path) search(e *engine, s *setup.Setup, d *drawn, o Options) (*answer.Assessment, error) {
	return w.walk(len(d.z) > searchDraws, func(deep depth) (*answer.Assessment, *setup.Parts, error) { return w.assess(e, s, d, o, deep) })
}

// promise goes on like [path.search], with the answer that the changed setup gets
// by itself: whoever saves it and has it judged is told the same, minutes and speed to
// the error of the draws.
func (w *path) promise(e *engine, s *setup.Setup, o Options) (*answer.Assessment, error) {
	return w.walk(true, func(deep depth) (*answer.Assessment, *setup.Parts, error) {
		other, err := w.engine(e, s)
		if err != nil {
			return nil, nil, ifNotFaults(err)
		}
		d, err := other.draw(o)
		if err != nil {
			return nil, nil, err
		}
		return w.look(other, d, o, deep)
	})
}

// walk looks, and takes the steps that what it sees asks for. Which cutoff would suit
// is the dearest part of a look: where looks are dear, or there is one already, it is
// left out at first.
func (w *path) walk(dear bool, look func(depth) (*answer.Assessment, *setup.Parts, error)) (*answer.Assessment, error) {
	for range mostRounds {
		cutoffTaken := w.takes(cutoffName)
		deep := complete
		if dear || cutoffTaken {
			deep = unadvised
		}
		a, p, err := look(deep)
		if err == nil && a != nil && deep == unadvised && (a.Verdict == answer.Fine || !cutoffTaken && wants(a, answer.FitCutoff)) {
			a, p, err = look(complete)
		}
		if err != nil || a == nil || a.Verdict < answer.FixFirst {
			return a, err
		}
		more := stepsFor(a, p, w.steps)
		if len(more) == 0 {
			return a, nil
		}
		w.take(more)
	}
	return nil, nil
}

// take adds steps, each in the place of an earlier one of its name. What the old battery
// asked for another may not need, nor one that turns out to watch its cells: that comes alone.
func (w *path) take(more []step) {
	if i := slices.IndexFunc(more, func(s step) bool { return s.name == packName || s.name == watchName }); i >= 0 {
		more = more[i : i+1]
	}
	kept := slices.DeleteFunc(slices.Clone(w.steps), func(was step) bool {
		return slices.ContainsFunc(more, func(s step) bool { return s.name == was.name })
	})
	w.steps = append(kept, more...)
}

// prune takes out the steps without which nothing is left to fix either.
func (w *path) prune(e *engine, s *setup.Setup, d *drawn, o Options) error {
	for i := len(w.steps) - 1; i >= 0; i-- {
		without := path{start: w.start, steps: slices.Delete(slices.Clone(w.steps), i, i+1)}
		a, _, err := without.assess(e, s, d, o, unadvised)
		if err != nil {
			return err
		}
		if mends(a) {
			w.steps = without.steps
		}
	}
	return nil
}

// assess answers the setup that the path has led to, on the draws carried over to
// it, so that what was read on the old one is weighed once; nil where it makes none.
func (w *path) assess(e *engine, s *setup.Setup, d *drawn, o Options, deep depth) (*answer.Assessment, *setup.Parts, error) {
	other, err := w.engine(e, s)
	if err != nil {
		return nil, nil, ifNotFaults(err)
	}
	carried := e.onto(d, other.world, w.anotherBattery())
	if other.parts.Original != nil && e.parts.Original != nil { // the same one
		carried.was = d.was
	}
	return w.look(other, carried, o, deep)
}

// look judges the setup that the path has led to. A fuse that the way fits is no fuse
// that its maker chose for that wire: if it is possibly too large, it needs other wire, and
// if it possibly opens in use, it is not the one to buy. A converter that the way fits
// must give what a launch takes: where it possibly does not, it needs a limit behind it.
func (w *path) look(other *engine, d *drawn, o Options, deep depth) (*answer.Assessment, *setup.Parts, error) {
	a, p, err := other.outline(d, o, deep)
	if err != nil {
		return a, p, err
	}
	for i := range a.Findings {
		f := &a.Findings[i]
		switch {
		case f.Share < possibleShare:
		case f.Code == wiring.CodeFuseAboveWire && w.takes(fuseName):
			f.Level, f.Change = max(f.Level, answer.FixFirst), answer.FitWire
		case slices.Contains(fuseOpens[:], f.Code) && w.takes(fuseName):
			f.Level, f.Change = max(f.Level, answer.FixFirst), answer.FitFuse
		case f.Code == drive.CodeConverterTooSmall && w.takes(converterName):
			f.Level, f.Change = max(f.Level, answer.FixFirst), answer.LimitCurrent
		}
	}
	a.Verdict = answer.Worst(a.Findings)
	return a, p, nil
}

// anotherBattery reports whether the way puts another battery in.
func (w *path) anotherBattery() bool { return w.takes(packName) || w.start["pack.age"] == newAge }

// engine prepares the setup that the path has led to.
func (w *path) engine(e *engine, s *setup.Setup) (*engine, error) {
	all := w.sets(e, s)
	for _, key := range e.outdated(s, all) {
		all[key] = ""
	}
	changed, err := s.With(all)
	if err != nil {
		return nil, err
	}
	return newEngine(changed)
}

// ifNotFaults keeps errors of the computation; a change that makes no setup is
// none.
func ifNotFaults(err error) error {
	var faults setup.Faults
	if errors.As(err, &faults) {
		return nil
	}
	return err
}

// way is the path as the answer shows it, with what it comes to.
func (w *path) way(e *engine, s *setup.Setup, a *answer.Assessment, weighed bool) answer.Way {
	way := answer.Way{
		Title: w.named(s.Vehicle.Tray.Text), Verdict: a.Verdict, WantedShare: wantedShare(a), CutShort: a.Draws.CutShort, FuseOpens: opensInUse(a), Pace: e.paceOf(a), Harms: harmsOf(a),
		PedalMin: rangeOf(a, minutesPath, a.Ride.LastsPedalMin), SpeedKmh: rangeOf(a, speedPath, a.Steady.SpeedKmh),
	}
	for _, st := range w.steps {
		way.Steps = append(way.Steps, st.text)
		way.Wiring = way.Wiring || slices.Contains(toWire[:], st.name)
	}
	all := w.sets(e, s)
	for _, key := range e.outdated(s, all) {
		all[key], way.Carried = "", weighed
	}
	for _, key := range slices.Sorted(maps.Keys(all)) {
		way.Sets = append(way.Sets, answer.Set{Key: key, Value: all[key]})
	}
	return way
}

// rangeOf is the range of a figure, the figure alone where the draws do not move
// it.
func rangeOf(a *answer.Assessment, path string, value float64) answer.Range {
	if r, ok := a.Ranges[path]; ok {
		return r
	}
	return answer.Exactly(value)
}

// thinned returns n draws that stand for all of them, or all where there are no
// more.
func (d *drawn) thinned(n int) *drawn {
	if len(d.z) <= n {
		return d
	}
	out := &drawn{weighed: d.weighed, conflict: d.conflict}
	places, weight := d.some(n)
	out.z, out.weight = d.at(places, weight)
	for _, i := range places {
		out.was = append(out.was, d.original(i))
	}
	return out
}

// onto carries draws over to another world: what both leave open stands at the
// same value, so that a difference between the two is one. What is new is drawn
// by itself, and so is another battery than that which was read.
func (e *engine) onto(d *drawn, other *setup.World, anotherBattery bool) *drawn {
	sp := newSpace(d, e.world.Keys())
	keys := other.Keys()
	for i, key := range keys {
		// The original's own was today's as well, before today's was changed.
		if was := strings.TrimPrefix(key, "original."); !sp.has(key) && sp.has(was) {
			keys[i] = was
		}
		if anotherBattery && e.parts.Measured != nil && strings.HasPrefix(key, "pack.") {
			keys[i] = key + " of another"
		}
	}
	sp.put(keys)
	sp.draw()
	return sp.at(keys)
}
