package ask

import (
	"cmp"
	"errors"
	"slices"

	"example.org/packcheck/answer"
	"example.org/packcheck/charge"
	"example.org/packcheck/chemistry"
	"example.org/packcheck/internal/draws"
)

// Old asks whether an old sealed lead-acid battery is flat, worn or badly
// connected.
type Old struct {
	Battery     Battery  // as its label says it was when new
	RestV       float64  // without load, 0.01 to 200 V
	HoursRested float64  // since the last charge or ride; 0 = not told, or just now
	LoadedV     float64  // under load for some seconds; 0 = not measured
	LoadedA     float64  // amps of that load; 0 = not told
	TempC       *float64 // nil = 20 degC
	JustCharged bool     // a full charge was the last thing that happened to it

	// How far the readings may lie from these.
	RestBetween, RestedBetween, LoadedBetween, LoadBetween Between
}

// Answer returns the share of the likeliest condition among those that explain
// the readings, over what these and the battery may be, and the test to make next. Of
// other cells than lead-acid the volts tell none of these, and it answers as [Rest] does.
func (q Old) Answer() (Answer, error) {
	var a Answer
	var in inputs
	in.within("RestV", q.RestV, 0.01, 200, "V")
	in.within("HoursRested", q.HoursRested, 0, 100000, "h")
	in.unless("LoadedV", q.LoadedV, 0.01, 200, "V")
	in.unless("LoadedA", q.LoadedA, 0.01, 5000, "A")
	in.holds("RestBetween", q.RestBetween, q.RestV)
	in.holds("RestedBetween", q.RestedBetween, q.HoursRested)
	in.holds("LoadedBetween", q.LoadedBetween, q.LoadedV)
	in.holds("LoadBetween", q.LoadBetween, q.LoadedA)
	if least := cmp.Or(q.LoadedBetween.Low, q.LoadedV); least > cmp.Or(q.RestBetween.High, q.RestV) {
		in.fault("%g V under load are more than at rest; want at most what it has at rest: a load pulls the voltage down", least)
	}
	tempC := in.celsius(&a, "TempC", q.TempC, roomC)
	b, err := in.battery(q.Battery)
	if err != nil {
		return Answer{}, err
	}
	if b.profile().Family != chemistry.LeadAcid {
		return q.byRest()
	}
	m := b.model
	read := charge.Evidence{
		Pack: m, RestV: q.RestV, HoursRested: q.HoursRested, LoadedV: q.LoadedV, LoadedA: q.LoadedA, TempC: tempC, JustCharged: q.JustCharged,
	}
	d, err := charge.Diagnose(read)
	if err != nil {
		return Answer{}, err
	}
	may, err := q.may(b, read)
	if err != nil {
		return Answer{}, err
	}
	first, second := d.Suspicions[0], d.Suspicions[1]
	a.Asked = "what ails " + q.Battery.Label
	a.is(around(first.Condition.String(), first.Share, may.shares[first.Condition], "share"))
	for _, s := range d.Suspicions[1:3] {
		a.beside(around(s.Condition.String(), s.Share, may.shares[s.Condition], "share"))
	}
	rest := q.judgeRest(b.profile(), m.CellsInSeries())
	if worse(rest, answer.FixFirst) {
		a.judged(rest, b.guess)
	}
	if !worse(rest, answer.Danger) { // else it is finished, whatever it died of
		a.say("It is %s %s; next comes %s (%s).", first.Words, first.Condition, second.Condition, percent(second.Share))
		if other, share := may.leads(first.Condition); share >= possibleShare {
			a.say("With the readings as far off as they may be, it is rather %s in %s of the cases.", other, percent(share))
		}
	}
	if !worse(rest, answer.FixFirst) { // else no test that charges it first, but what the rest asks for
		a.Words = append(a.Words, d.NextTest)
	}
	for _, f := range d.Findings {
		a.level(f.Level, b.guess)
	}
	for level, share := range may.levels { // as everywhere, what holds for a tenth counts a level less than what holds for half
		switch {
		case share >= likelyShare:
			a.level(level, b.guess)
		case share >= possibleShare && level > answer.Fine:
			a.level(level-1, b.guess)
		}
	}
	if q.HoursRested == 0 {
		a.assume("hours of rest not told")
	}
	if b.guess {
		a.assume("%s", b.profile().Title)
	}
	a.cite("diagnosis-odds", b.profile().Rest.Source)
	a.beware("These are odds, not a measurement. Stay near while it charges: one with a dead cell gets hot.", "cpsc-charging")
	return a.checked()
}

// byRest is what the resting volts alone mean.
func (q Old) byRest() (Answer, error) {
	at := func(v float64) (Answer, error) {
		return Rest{Battery: q.Battery, Volts: v, HoursRested: q.HoursRested, TempC: q.TempC, JustCharged: q.JustCharged}.Answer()
	}
	a, err := at(q.RestV)
	if err == nil && q.RestBetween != (Between{}) {
		low, errLow := at(q.RestBetween.Low)
		high, errHigh := at(q.RestBetween.High)
		a, err = Over(a, low, high), errors.Join(errLow, errHigh)
	}
	if err != nil {
		return Answer{}, err
	}
	a.Words = slices.Insert(slices.Clone(a.Words), 0, "Flat, worn or badly connected can be told by volts of sealed lead-acid alone.")
	return a, nil
}

// diagnoses are what the readings say over all that they and the battery may be.
type diagnoses struct {
	shares map[charge.Condition][]float64
	first  []charge.Condition
	levels map[answer.Level]float64 // in what share it is at least so bad
}

// judgeRest is what the resting volts mean at the worst of them.
func (q Old) judgeRest(p chemistry.Profile, cells int) []answer.Finding {
	worst := charge.JudgeRest(p, cells, q.RestV)
	if q.RestBetween == (Between{}) {
		return worst
	}
	for _, v := range []float64{q.RestBetween.Low, q.RestBetween.High} {
		if fs := charge.JudgeRest(p, cells, v); answer.Worst(fs) > answer.Worst(worst) {
			worst = fs
		}
	}
	return worst
}

// diagnosed is for how many readings a battery is looked at: their ends lie within
// a hundredth of those of many more.
const diagnosed = 256

// may looks at the battery once for each draw of it and of its readings.
func (q Old) may(b *batteries, read charge.Evidence) (diagnoses, error) {
	out := diagnoses{shares: map[charge.Condition][]float64{}, levels: map[answer.Level]float64{}}
	dims := b.world.Dims()
	for _, z := range draws.Points(diagnosed, dims+4) {
		m, err := b.at(z[4:])
		if err != nil {
			return out, err
		}
		e := read
		e.Pack = m
		e.RestV = q.RestBetween.at(z[0], q.RestV, voltErr)
		e.LoadedV = q.LoadedBetween.at(z[1], q.LoadedV, voltErr)
		e.LoadedA = q.LoadBetween.at(z[2], q.LoadedA, ampErr)
		e.HoursRested = q.RestedBetween.at(z[3], q.HoursRested, timeErr)
		d, err := charge.Diagnose(e)
		if err != nil {
			return out, err
		}
		for _, s := range d.Suspicions {
			out.shares[s.Condition] = append(out.shares[s.Condition], s.Share)
		}
		out.first = append(out.first, d.Suspicions[0].Condition)
		for level := answer.Fine + 1; level <= answer.Worst(d.Findings); level++ {
			out.levels[level] += 1. / diagnosed
		}
	}
	return out, nil
}

// leads is the condition that is the likeliest most often when the one told is not,
// and in what share of the draws.
func (d *diagnoses) leads(told charge.Condition) (charge.Condition, float64) {
	var most charge.Condition
	times := map[charge.Condition]int{}
	for _, c := range d.first {
		if times[c]++; c != told && times[c] > times[most] || most == told {
			most = c
		}
	}
	if most == told {
		return told, 0
	}
	return most, float64(times[most]) / float64(len(d.first))
}
