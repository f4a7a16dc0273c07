package ask

import (
	"slices"

	"example.org/packcheck/answer"
	"example.org/packcheck/battery"
	"example.org/packcheck/cutoff"
	"example.org/packcheck/internal/quantity"
)

// Cutoff asks where a low-voltage cutoff should open for a pack.
type Cutoff struct {
	Battery  Battery
	RunningA float64  // lasting current, 0.01 to 1000 A; 0 = not told
	LaunchA  float64  // current of a launch; 0 = not told
	LaunchS  float64  // how long it lasts; 0 = not told
	StandbyA float64  // what the cutoff itself goes on drawing; 0 = not told
	TempC    *float64 // of pack and air; nil = 20 degC
}

// lowCharge is the charge at which a launch must still not open it: a fifth.
// Own choice, as elsewhere in this module.
const lowCharge = 0.2

// fewDraws are for what is dear to compute, costDraws for one run of a battery.
const fewDraws, costDraws = 32, 256

// Answer returns the opening voltage that does for nearly all batteries like this;
// beside it the delay and, for a device that cannot latch, the closing voltage. Where
// none does it says so.
func (q Cutoff) Answer() (Answer, error) {
	var a Answer
	var in inputs
	in.unless("RunningA", q.RunningA, 0.01, 1000, "A")
	in.launch(q.LaunchA, q.LaunchS, 0.01)
	in.within("StandbyA", q.StandbyA, 0, 20, "A")
	tempC := in.celsius(&a, "TempC", q.TempC, roomC)
	b, err := in.battery(q.Battery)
	if err != nil {
		return Answer{}, err
	}
	m := b.model
	told := q.RunningA > 0
	if !told { // a small one sets it high, which is the safe side
		q.RunningA = b.parts.Pack.CapacityAh.Likely / 5
		a.assume("a load of %s, which empties it in five hours", amps(q.RunningA))
	}
	if q.StandbyA == 0 {
		q.StandbyA = cutoff.AdvisedStandbyA
		a.assume("once open it draws %s at most", amps(q.StandbyA))
	}
	likely, err := cutoff.Advise(q.wish(m, tempC))
	if err != nil {
		return Answer{}, err
	}
	var list []*cutoff.Advice
	got, err := b.over(fewDraws, 1, func(out []float64, m *battery.Model) error {
		advice, err := cutoff.Advise(q.wish(m, tempC))
		out[0] = advice.OpensAtV
		list = append(list, &advice)
		return err
	})
	if err != nil {
		return Answer{}, err
	}
	a.Asked = "where to cut off " + q.Battery.Label
	if told {
		a.Asked += " at " + amps(q.RunningA)
	}
	f := spread("opens at", got[0], "V", 1000)
	one, ok := cutoff.One(list, slices.Repeat([]float64{1}, len(list)), m.FullV())
	if ok {
		f.Value = one.OpensAtV
	}
	f.Low, f.High = min(f.Low, f.Value), max(f.High, f.Value)
	a.is(f)
	a.asks = f.Value
	delay := Figure{What: "delay", Value: one.DelayS, Low: one.DelayS, High: cutoff.LongestDelayS, Unit: "s"}
	within := quantity.FormatRangeOne(quantity.Duration, answer.Between(one.DelayS, cutoff.LongestDelayS), quantity.Metric)
	costs := func() { err = q.costs(&a, b, one.OpensAtV, tempC, told) }
	switch {
	case !ok:
		why := cutoff.CannotProtect()
		a.level(why.Level, false)
		a.say("No one setting does: batteries like this need %s to save their weakest cell, and one at the upper end opens far too early in many of the others.", figureWords(f))
		a.say("%s", why.Advice)
	case one.MustLatch:
		a.beside(delay)
		a.say("Open at %s, after %s below it: that saves the weakest cell in nine of ten like this.", volts(one.OpensAtV), within)
		costs()
		a.say("Take one that latches: rested, the pack comes back close to full volts.")
	default:
		a.beside(delay, exactly("closes at, if it cannot latch", one.ClosesAtV, "V"))
		a.say("Open at %s, after %s below it: that saves the weakest cell in nine of ten like this.", volts(one.OpensAtV), within)
		costs()
		a.say("Best it latches; one that cannot closes at %s, not lower.", volts(one.ClosesAtV))
	}
	if err != nil {
		return Answer{}, err
	}
	if b.parts.Pack.MayWatch {
		a.say("Most such watch every cell themselves: ask its maker before one is added.")
	}
	p := b.profile()
	a.Limit = &Limit{What: "harmed below, at rest, were all cells alike", Value: p.HarmV * float64(m.CellsInSeries()), Unit: "V", Want: answer.Above}
	a.judged(append(b.unrated(m.Judge(battery.Use{LastingA: q.RunningA, PeakA: q.LaunchA})), likely.Findings...), b.guess)
	a.cite(p.End.Source, p.LadderSource)
	b.tell(&a)
	if q.LaunchA == 0 {
		a.assume("launch not told")
	}
	a.beware("A cutoff is no off switch: take the pack off after the ride. Never bridge it to get home.", "cutoff-practice")
	return a.checked()
}

// costs says what a setting leaves unused, and where the load was told how long it lasts
// until then: what saves the weakest cell is charge that nobody rides with.
func (q *Cutoff) costs(a *Answer, b *batteries, opensAtV, tempC float64, told bool) error {
	got, err := b.over(costDraws, 2, func(out []float64, m *battery.Model) error {
		out[0], out[1] = q.wish(m, tempC).Costs(opensAtV)
		out[1] /= 60
		return nil
	})
	if err != nil {
		return err
	}
	unused := spread("left unused when it opens", got[0], "share", 1)
	a.beside(unused)
	if !told {
		a.say("It leaves %s of the charge unused.", figureWords(unused))
		return nil
	}
	lasts := spread("lasts until it opens", got[1], "min", 60*1000)
	a.beside(lasts)
	a.say("From full it then lasts %s at %s, and leaves %s of the charge unused.", figureWords(lasts), amps(q.RunningA), figureWords(unused))
	return nil
}

// wish is what the setting is wanted for.
func (q Cutoff) wish(m *battery.Model, tempC float64) cutoff.Wish {
	w := cutoff.Wish{
		Case:  cutoff.Case{Pack: m, Start: m.StateAt(1, tempC), LoadA: q.RunningA, AmbientC: tempC},
		Where: cutoff.Module, StandbyA: q.StandbyA,
	}
	if q.LaunchA > 0 {
		low := m.StateAt(lowCharge, tempC)
		least := m.TerminalV(&low, q.LaunchA)
		w.Sag = cutoff.Sag{LowestV: least, SecondsBelow: func(v float64) float64 {
			if v >= least {
				return q.LaunchS
			}
			return 0
		}}
	}
	return w
}
