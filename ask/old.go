package ask

import (
	"example.org/packcheck/answer"
	"example.org/packcheck/charge"
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
}

// Answer returns the share of the likeliest condition among those that explain
// the readings, and the test to make next.
func (q Old) Answer() (Answer, error) {
	var a Answer
	var in inputs
	in.within("RestV", q.RestV, 0.01, 200, "V")
	in.within("HoursRested", q.HoursRested, 0, 100000, "h")
	in.unless("LoadedV", q.LoadedV, 0.01, 200, "V")
	in.unless("LoadedA", q.LoadedA, 0.01, 5000, "A")
	tempC := in.celsius(&a, "TempC", q.TempC, roomC)
	b, err := in.battery(q.Battery)
	if err != nil {
		return Answer{}, err
	}
	m := b.model
	d, err := charge.Diagnose(charge.Evidence{
		Pack: m, RestV: q.RestV, HoursRested: q.HoursRested, LoadedV: q.LoadedV, LoadedA: q.LoadedA, TempC: tempC, JustCharged: q.JustCharged,
	})
	if err != nil {
		return Answer{}, err
	}
	first, second := d.Suspicions[0], d.Suspicions[1]
	a.Asked = "what ails " + q.Battery.Label
	a.is(exactly(first.Condition.String(), first.Share, "share"))
	for _, s := range d.Suspicions[1:3] {
		a.beside(exactly(s.Condition.String(), s.Share, "share"))
	}
	rest := charge.JudgeRest(b.profile(), m.CellsInSeries(), q.RestV)
	if worse(rest, answer.FixFirst) { // no test that charges it first
		a.judged(rest, b.guess)
	} else {
		a.say("It is %s %s; next comes %s (%s).", first.Words, first.Condition, second.Condition, percent(second.Share))
		a.Words = append(a.Words, d.NextTest)
	}
	for _, f := range d.Findings {
		a.level(f.Level, b.guess)
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
