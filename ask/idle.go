package ask

import (
	"fmt"

	"example.org/packcheck/answer"
	"example.org/packcheck/battery"
	"example.org/packcheck/charge"
	"example.org/packcheck/chemistry"
	"example.org/packcheck/cutoff"
)

// Idle asks how many days a battery stands before it is ruined.
type Idle struct {
	Battery  Battery
	StandbyA float64  // what goes on drawing: board, lights, a cutoff module; 0 = nothing
	Charge   *float64 // state of charge to begin with, 0 to 1; nil = full
	TempC    *float64 // of the place; nil = 20 degC
}

// mostDays is as far as anybody looks ahead: ten years, as package cutoff does.
const mostDays = 3650

// Answer returns the days until its weakest cell is harmed.
func (q Idle) Answer() (Answer, error) {
	var a Answer
	var in inputs
	in.within("StandbyA", q.StandbyA, 0, 20, "A")
	from := in.share(&a, "Charge", q.Charge)
	tempC := in.celsius(&a, "TempC", q.TempC, roomC)
	b, err := in.battery(q.Battery)
	if err != nil {
		return Answer{}, err
	}
	idle := func(m *battery.Model) (cutoff.Idled, error) {
		return cutoff.Idle(cutoff.Standing{Pack: m, Start: m.StateAt(from, tempC), StandbyA: q.StandbyA, AmbientC: tempC})
	}
	var found [][]answer.Finding
	got, err := b.each(3, func(out []float64, m *battery.Model) error {
		i, err := idle(m)
		found = append(found, i.Findings)
		out[0], out[1], out[2] = i.DaysToHarm, i.DaysToNever, i.DaysToEnd
		return err
	})
	if err != nil {
		return Answer{}, err
	}
	p := b.profile()
	a.Asked = "how long " + q.Battery.Label + " may stand"
	if q.StandbyA > 0 {
		a.Asked += " while " + amps(q.StandbyA) + " flow"
	}
	a.is(spread("harmed after", got[0], "d", mostDays))
	a.beside(spread("empty after", got[2], "d", mostDays))
	a.say("Empty after %s, harmed after %s.", figureWords(a.Beside[0]), figureWords(a.Figure()))
	if p.NeverRechargeV > 0 {
		never := spread("never to be charged again after", got[1], "d", mostDays)
		a.beside(never)
		a.say("Past saving after %s.", figureWords(never))
	}
	a.Limit = &Limit{What: "harmed below, per cell", Value: p.HarmV, Unit: "V", Want: answer.Above}
	a.counted(found, b.guess, advice)
	a.cite(p.LadderSource, "keeping-spread")
	b.tell(&a)
	a.assume("nothing disconnects it")
	if p.NeverRechargeV > 0 {
		a.beware("One that was forgotten past its last limit is not brought back: hand it in.", "drained-lithium")
	} else {
		a.beware("Charge it the same day and take it off the vehicle.", "sulfation")
	}
	return a.checked()
}

// Winter asks what is left of a battery that is put away.
type Winter struct {
	Battery  Battery
	Days     float64  // 1 to 3650
	Charge   *float64 // state of charge when put away, 0 to 1; nil = full
	TempC    *float64 // mean of the place; nil = 20 degC
	StandbyA float64  // what goes on drawing; 0 = disconnected
}

// Answer returns the charge that is left, 0 to 1; beside it the days to the next
// charge that is due.
func (q Winter) Answer() (Answer, error) {
	var a Answer
	var in inputs
	in.within("Days", q.Days, 1, mostDays, "d")
	in.within("StandbyA", q.StandbyA, 0, 20, "A")
	from := in.share(&a, "Charge", q.Charge)
	tempC := in.celsius(&a, "TempC", q.TempC, roomC)
	b, err := in.battery(q.Battery)
	if err != nil {
		return Answer{}, err
	}
	m := b.model
	day := charge.Date{Year: 2001, Month: 11, Day: 1} // any day: only their number counts
	kept, err := charge.Keep(charge.Store{
		Pack: m, Charge: from, From: day, Until: day.AddDays(int(q.Days)), TempC: tempC, StandbyA: q.StandbyA, InVehicle: q.StandbyA > 0,
	})
	if err != nil {
		return Answer{}, err
	}
	p := b.profile()
	a.Asked = fmt.Sprintf("what is left of %s after %.0f days", q.Battery.Label, q.Days)
	a.is(Figure{What: "charge left", Value: kept.LeftLikely, Low: kept.LeftLeast, High: kept.LeftMost, Unit: "share"})
	a.beside(exactly("top up every", kept.TopUpDays, "d"), exactly("it then rests at", kept.RestV, "V"))
	a.say("%s is left if nobody charges it; top it up every %s.", figureWords(a.Figure()), numberWords(kept.TopUpDays, "d"))
	if s := p.Charge.StorageCharge; s < 1 {
		a.say("Put it away at %s charge.", percent(s))
	} else {
		a.say("Put it away full.")
	}
	a.judged(kept.Findings, b.guess)
	a.cite(p.Keeping.Source, "keeping-spread")
	if b.guess {
		a.assume("%s", p.Title)
	}
	if p.Family == chemistry.LeadAcid {
		a.beware("Take it off the vehicle, keep it cool and charged: a flat one freezes and is spoilt.", "lead-freezing")
	} else {
		a.beware("Take it off the vehicle, keep it cool and dry, away from what burns; charge it indoors only.", "storage-lithium")
	}
	return a.checked()
}
