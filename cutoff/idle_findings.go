package cutoff

import (
	"cmp"
	"fmt"
	"math"
	"slices"

	"example.org/packcheck/answer"
	"example.org/packcheck/chemistry"
)

// words answers the question that people ask.
func (i Idled) words() string {
	switch {
	case i.DaysToNever <= 0:
		return "The pack is already drained so far that it must never be charged again."
	case i.DaysToHarm <= 0:
		return "The pack is already below its harm limit: every hour counts."
	case i.DaysToNever <= weekDays:
		return fmt.Sprintf("Left in the toy for a week it is finished: harmed after %s, past saving after %s.", inDays(i.DaysToHarm), inDays(i.DaysToNever))
	case i.DaysToHarm <= weekDays:
		return fmt.Sprintf("Left in the toy for a week it is harmed: that begins after %s.", inDays(i.DaysToHarm))
	case math.IsInf(i.DaysToHarm, 1):
		return "A week in the toy does no harm."
	}
	return fmt.Sprintf("A week in the toy does no harm; that begins after %s.", inDays(i.DaysToHarm))
}

// inDays prints a time, rounded down so that nothing is promised.
func inDays(d float64) string {
	switch {
	case d < 1.0/24:
		return "less than an hour"
	case d < 1:
		return lasting(24*d, "hour")
	}
	return lasting(d, "day")
}

// lasting prints a time rounded down, in tenths where it is short.
func lasting(n float64, unit string) string {
	if n < 10 {
		n = math.Floor(n*10) / 10
	} else {
		n = math.Floor(n)
	}
	if n != 1 {
		unit += "s"
	}
	return fmt.Sprintf("%g %s", n, unit)
}

// findings says how soon the pack is harmed.
func (s *Standing) findings(i Idled) []answer.Finding {
	p := s.Pack.Spec().Profile
	f := onCutoff(answer.Finding{
		Unit: "h", Found: i.DaysToHarm * 24, Limit: weekDays * 24, Want: answer.Above, Source: p.LadderSource,
		Title:  fmt.Sprintf("Left after a ride, the pack is harmed after %s.", inDays(i.DaysToHarm)),
		Advice: "Take the pack off after every ride; charge it the same day.",
		Change: answer.FitCutoff, Habit: answer.HabitPackOff, Decides: s.decides(i), Charging: true, Ladder: ladderIdle, Rung: 2,
	})
	if p.Family == chemistry.Lithium {
		f.Advice = "Take the pack off after every ride; let it cool and charge it, and fit a cutoff that opens in time."
	}
	if s.Chain.Len() > 0 && s.draws(i) {
		f.Advice = "Take the pack off after every ride, let it cool and charge it; where it must stay on, a cutoff that draws next to nothing once it is open."
	}
	switch {
	case i.DaysToNever <= 0: // no margin: advice to charge it must never come of one
		f.Code, f.Level, f.Harm, f.Gravity = CodePastSaving, answer.Danger, answer.House, 1
		f.Unit, f.Found, f.Limit, f.Source = "V", s.cellV(s.Pack.Charge(s.Start)), p.NeverRechargeV, "drained-lithium"
		f.Title = "Drained like this, the pack can never be charged again: its weakest cell ends below the last limit."
		f.Advice = "Fit a cutoff that opens well before. A pack that has come this far is not to be brought back: keep it away from anything that burns and hand it in where batteries are collected."
		f.Habit, f.Charging, f.Rung = "", false, 3
		if week, ok := s.everyCell(f); ok {
			return []answer.Finding{f, week}
		}
	case i.DaysToHarm <= weekDays*(1-timeHair):
		f.Code = CodeIdleWeek
		f.Level, f.Harm = answer.Watch, answer.Wear
		switch rung := s.afterAWeek(); {
		case p.Family == chemistry.Nickel: // it is harmed by being driven backwards, not by standing empty
		case rung == NeverAgain: // it may short inside when somebody charges it
			f.Level, f.Harm = ruin(p)
		case rung == Harmed:
			f.Level, f.Harm = answer.FixFirst, answer.Part
		}
		if i.DaysToHarm <= 0 {
			f.Title, f.Reads = "The ride leaves the pack below its harm limit.", answer.AsAtOnce
		}
	case i.DaysToHarm <= monthDays*(1-timeHair):
		f.Code, f.Level, f.Harm, f.Limit = CodeIdleMonth, answer.Watch, answer.Wear, monthDays*24
		f.Change, f.Rung = answer.KeepCharged, 1
	default:
		return nil
	}
	return []answer.Finding{f}
}

// everyCell is what a week does to all cells of a pack whose weakest may be past saving
// already: how far that one lags nobody has measured, the rest needs no guess.
func (s *Standing) everyCell(now answer.Finding) (answer.Finding, bool) {
	p := s.Pack.Spec().Profile
	_, likely, _ := p.MonthlyLoss(s.AmbientC)
	path := s.path(likely)
	days := path.daysUntil(s.highestAt(s.meanV, p.HarmV))
	i := Idled{DaysToHarm: days, DaysToNever: math.Inf(1)}
	if !slices.Contains(now.Decides, answer.KeyPackWatchesCells) || days > weekDays*(1-timeHair) || s.lostByItself() {
		return answer.Finding{}, false
	}
	f := onCutoff(answer.Finding{
		Code: CodeIdleWeek, Unit: "h", Found: days * 24, Limit: weekDays * 24, Want: answer.Above, Source: p.LadderSource,
		Title:  fmt.Sprintf("Left after a ride, every cell of the pack is harmed after %s.", inDays(days)),
		Advice: "Fit a cutoff that opens well before and draws next to nothing, and take the pack off after every ride.",
		Change: answer.FitCutoff, Habit: answer.HabitPackOff, Decides: s.decides(i), Ladder: ladderIdle, Rung: 2,
	})
	f.Level, f.Harm = ruin(p)
	return f, true
}

// afterAWeek is the rung that a week brings for certain, where harm comes within one
// at the fast end of what makers print: at the likely loss too.
func (s *Standing) afterAWeek() Rung {
	p := s.Pack.Profile()
	if p.Family == chemistry.Lithium && s.Chain.Len() > 0 && s.lostByItself() && s.meanV(s.Pack.Charge(s.Start)) >= p.HarmV+cellHairV {
		// A cutoff has ended the ride, and nothing draws: what is left above the harm
		// limit is less than a charge is known to, so that days until harm are not.
		return PastEnd
	}
	_, likely, _ := p.MonthlyLoss(s.AmbientC)
	path := s.path(likely)
	switch {
	case p.NeverRechargeV > 0 && path.daysUntil(s.chargeAtCell(p.NeverRechargeV)) <= weekDays:
		return NeverAgain
	case path.daysUntil(s.chargeAtCell(p.HarmV)) <= weekDays:
		return Harmed
	}
	return PastEnd
}

// meanV is what the cells rest at on the average.
func (s *Standing) meanV(charge float64) float64 {
	return s.Pack.RestedV(restedState(s.Pack, charge, max(s.AmbientC, roomC))) / float64(s.Pack.CellsInSeries())
}

// endedAsMade reports whether the ride left the pack where makers end a discharge,
// or above.
func (s *Standing) endedAsMade() bool {
	return s.meanV(s.Pack.Charge(s.Start)) >= s.Pack.Profile().EmptyV-cellHairV
}

// lostByItself reports whether the pack loses more by itself than what is connected
// draws.
func (s *Standing) lostByItself() bool {
	_, _, fastest := s.Pack.Profile().MonthlyLoss(s.AmbientC)
	amps := s.Chain.StandbyA()
	if s.Chain.feeds() {
		amps += s.StandbyA
	}
	return amps*24/s.Pack.FullAh() < fastest/monthDays
}

// harmsAll reports whether the same becomes of a pack whose cells are all alike, or
// whether they are emptied farther than their maker ends a discharge: then it does
// not hang on how far the weakest lags, which nobody has measured.
func (s *Standing) harmsAll(i Idled) bool {
	p := s.Pack.Profile()
	limitV, withinDays := p.HarmV, weekDays
	if i.DaysToNever <= 0 {
		limitV, withinDays = p.NeverRechargeV, 0
	}
	_, likely, _ := p.MonthlyLoss(s.AmbientC)
	path := s.path(likely)
	return !s.endedAsMade() || path.daysUntil(s.highestAt(s.meanV, limitV)) <= withinDays
}

// draws reports whether it is what is connected that does harm some day, and neither
// the ride nor the loss by itself.
func (s *Standing) draws(i Idled) bool { return i.DaysToHarm > 0 && !s.lostByItself() }

// decides are the keys that say how soon: what ended the ride where harm is
// done by then, what goes on drawing where that is most of the loss, and the
// loss by itself elsewhere.
func (s *Standing) decides(i Idled) []string {
	out := []string{answer.KeyPackChemistry}
	if s.draws(i) {
		out = append(out, s.DrawKeys()...)
	}
	if s.Chain.Len() > 0 && !s.harmsAll(i) {
		out = append(out, answer.KeyPackWatchesCells)
	}
	switch {
	case i.DaysToHarm <= 0:
		out = append(out, s.Chain.opensAtKeys()...)
	case !s.draws(i):
		out = append(out, answer.KeyPackSelfDischarge)
	}
	return out
}

// smallDraw is the share of all that draws below which one of it decides nothing.
// Own choice.
const smallDraw = 0.1

// DrawKeys are the setup keys of what draws from the pack and is not beside the
// point, what draws most first.
func (s *Standing) DrawKeys() []string {
	type draw struct {
		key  string
		amps float64
	}
	list := make([]draw, 0, maxDevices+1)
	if s.Chain.feeds() {
		list = append(list, draw{answer.KeyControllerStandby, s.StandbyA})
	}
	for n := range s.Chain.Len() {
		d := s.Chain.At(n)
		list = append(list, draw{keysOf(d.Where).standby, d.StandbyA})
	}
	slices.SortStableFunc(list, func(a, b draw) int { return cmp.Compare(b.amps, a.amps) })
	all := 0.0
	for _, d := range list {
		all += d.amps
	}
	var out []string
	for _, d := range list {
		if d.amps > smallDraw*all {
			out = append(out, d.key)
		}
	}
	return out
}
