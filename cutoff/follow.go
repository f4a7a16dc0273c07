package cutoff

import (
	"errors"
	"fmt"
	"math"

	"example.org/packcheck/internal/solve"

	"example.org/packcheck/answer"
	"example.org/packcheck/battery"
)

// Codes of the findings around the first opening.
const (
	CodeNeverOpens = "cutoff-never-opens" // the pack is empty first
	CodeChatters   = "cutoff-chatters"    // the load comes back by itself
	CodeMayChatter = "cutoff-may-chatter" // it came back with measured packs
)

// Bounds of following a pack through its cutoff.
const (
	leastOnS    = 0.1      // a device needs this long to act (source "cutoff-practice")
	quietS      = 4 * 3600 // no reclosing for this long: it stays open
	mostClockS  = 30 * 3600
	mostRecount = 5000 // chatter beyond this is only called "or more"
	often       = 10   // a load that comes back so often wears contacts out; own choice
)

// Case is a pack with its cutoffs under one steady load.
type Case struct {
	Pack         *battery.Model
	Start        battery.State // where the pack stands when the load comes on
	Chain        Chain         // the cutoffs; copied, the caller's keeps its timers
	LoadA        float64       // running current, > 0
	PathOhm      float64       // between pack and controller; 0 = none
	AmbientC     float64       // surroundings, deg C
	CellsWatched bool          // the pack's electronics watch every cell: none is driven on alone
	MayWatch     bool          // nobody told whether they do, of a pack that is mostly sold so
	AsSold       bool          // lead-acid in a vehicle that is sold with it and without a cutoff: whoever drives ends the ride
	Watched      bool          // whoever runs the load ends it at a voltage, so a missing cutoff is less grave
}

// errCase is wrapped by the errors of [Follow], [Idle] and [Advise].
var errCase = errors.New("cutoff: cannot compute this case")

// check returns an error for a case that cannot be computed.
func (c *Case) check() error {
	switch {
	case c.Pack == nil:
		return fmt.Errorf("%w: no pack", errCase)
	case !(c.LoadA > 0) || math.IsInf(c.LoadA, 0):
		return fmt.Errorf("%w: LoadA is %g (want above 0)", errCase, c.LoadA)
	case !(c.PathOhm >= 0) || math.IsInf(c.PathOhm, 0):
		return fmt.Errorf("%w: PathOhm is %g (want at least 0)", errCase, c.PathOhm)
	}
	return checkStanding(c.Pack, c.Start, c.AmbientC)
}

// checkStanding returns an error for surroundings that no pack is in, and for a
// state that is no number.
func checkStanding(m *battery.Model, s battery.State, ambientC float64) error {
	if !(ambientC >= battery.LeastTempC && ambientC <= battery.MostTempC) {
		return fmt.Errorf("%w: AmbientC is %g (want %g to %g)", errCase, ambientC, battery.LeastTempC, battery.MostTempC)
	}
	if v := m.TerminalV(&s, 0); math.IsNaN(v) || math.IsInf(v, 0) {
		return fmt.Errorf("%w: Start is %+v (want numbers)", errCase, s)
	}
	return nil
}

// Followed is what happened around the first opening of a chain of cutoffs.
type Followed struct {
	Opened      bool    // a device opened before the pack was empty
	First       Place   // which one, if it opened
	PackV       float64 // pack volts under load at that moment
	Charge      float64 // state of charge then, 0..1
	AtS         float64 // seconds from the start
	AtOpening   Weakest // weakest cell at that moment, under load
	ReboundV    float64 // highest pack volts without load after the first opening; of what latches, those hours later
	Recloses    int     // how often the load came back by itself: the chatter
	OrMore      bool    // the count was cut short
	UselessMin  float64 // minutes of load after the first opening, in scraps
	ChatterMin  float64 // minutes by the clock from the first to the last opening
	LowestCellV float64 // lowest voltage of the weakest cell in all of it
	End         battery.State
	Findings    []answer.Finding
}

// follower is a case under way.
type follower struct {
	c        Case
	m        *battery.Model
	s        battery.State
	steps    [longSteps]battery.Step // of 1, 4, 16 ... seconds
	lengthS  [longSteps]float64
	prepared int // how many of them
	reach    int // the last that went well
	openedAt battery.State
	out      Followed
}

// Follow runs a steady load until a cutoff opens, and on through rest,
// rebound and reclosing until the chain stays open, the motors stall or a day
// has passed.
func Follow(c Case) (Followed, error) {
	if err := c.check(); err != nil {
		return Followed{}, err
	}
	f := &follower{
		c: c, m: c.Pack, s: c.Start,
	}
	f.out.LowestCellV = math.Inf(1)
	f.run()
	f.out.End = f.s
	f.out.Findings = f.findings()
	return f.out, nil
}

// run alternates between load and rest.
func (f *follower) run() {
	firstS, lastS := math.NaN(), 0.0
	clockS := 0.0
	for clockS < mostClockS {
		onS, opened := f.loadOn(mostClockS - clockS)
		clockS += onS
		if !math.IsNaN(firstS) {
			f.out.UselessMin += onS / 60
		}
		if !opened {
			break
		}
		if math.IsNaN(firstS) {
			firstS = clockS
		}
		lastS = clockS
		offS, closed := f.rest()
		clockS += offS
		if !closed {
			break
		}
		f.out.Recloses++
		if f.out.Recloses >= mostRecount {
			f.out.OrMore = true
			break
		}
	}
	if !math.IsNaN(firstS) {
		f.out.ChatterMin = (lastS - firstS) / 60
	}
}

// Long steps are of 1, 4, 16 ... seconds, and no longer than takes one part in
// wholeParts of the pack's charge: at a constant current a long one ends where
// many short ones do.
const (
	longSteps  = 8
	longGrowth = 4
	wholeParts = 100
	// In the cold the volts dip before the pack warms, so a step longer than
	// shortS begins and ends well above all that is taken note of.
	shortS, wellAbove = 4, 1.015
)

// step returns the i-th of the long steps.
func (f *follower) step(i int) (step *battery.Step, dtS float64) {
	for ; f.prepared <= i; f.prepared++ {
		f.lengthS[f.prepared] = 1
		if k := f.prepared; k > 0 {
			f.lengthS[k] = longGrowth * f.lengthS[k-1]
		}
		f.steps[f.prepared] = f.m.Over(f.lengthS[f.prepared])
	}
	return &f.steps[i], f.lengthS[i]
}

// ahead takes as long a step as ends above all that any device takes note of,
// whole seconds, and returns how long it was; 0 when none does.
func (f *follower) ahead(mostS float64) float64 {
	c := &f.c
	if c.Chain.Counting() {
		return 0
	}
	packV, busV := c.Chain.HighestV()
	floorV := max(packV, busV+c.LoadA*c.PathOhm, stalledShare*f.m.NominalV())
	most := min(mostS, 3600*f.m.RatedAh()/c.LoadA/wholeParts)
	for f.reach = min(f.reach+1, longSteps-1); f.reach > 0; f.reach-- {
		step, dtS := f.step(f.reach)
		if dtS > most {
			continue
		}
		if dtS > shortS && f.m.TerminalV(&f.s, c.LoadA) < wellAbove*floorV {
			continue
		}
		after := f.s
		step.AdvanceLong(&after, c.LoadA, c.AmbientC)
		if v := f.m.TerminalV(&after, c.LoadA); v > floorV && (dtS <= shortS || v > wellAbove*floorV) {
			f.s = after
			c.Chain.Step(Sample{PackV: v, BusV: v - c.LoadA*c.PathOhm, DtS: dtS})
			return dtS
		}
	}
	return 0
}

// loadOn discharges until the chain opens or the motors stall. Near any volts
// at which a device takes note they are looked at every second, and a delay
// that ends within the second ends the step.
func (f *follower) loadOn(mostS float64) (onS float64, opened bool) {
	c := &f.c
	for onS < mostS {
		v := f.m.TerminalV(&f.s, c.LoadA)
		sample := Sample{PackV: v, BusV: v - c.LoadA*c.PathOhm, DtS: 1}
		left := c.Chain.UntilTrip(sample)
		if math.IsInf(left, 1) {
			if dtS := f.ahead(mostS - onS); dtS > 0 {
				onS += dtS
				continue
			}
		}
		f.out.LowestCellV = min(f.out.LowestCellV, f.m.WeakestCellV(&f.s, c.LoadA))
		step, _ := f.step(0)
		var short battery.Step
		if left < sample.DtS {
			sample.DtS = max(left, leastOnS)
			short = f.m.Over(sample.DtS)
			step = &short
		}
		if c.Chain.Step(sample) {
			f.opening(v)
			opened = true
		}
		step.Advance(&f.s, c.LoadA, c.AmbientC)
		onS += sample.DtS
		if opened || stalled(f.m, &f.s, c.LoadA) {
			return onS, opened
		}
	}
	return onS, false
}

// stalledShare is the share of its nominal voltage at which a pack no longer
// moves anything, whatever the motors.
const stalledShare = 0.25

// stalled reports whether the pack is past moving the load. It does not ask
// whether the pack is empty: a load goes on draining the knee of the voltage,
// where a cutoff set low opens.
func stalled(m *battery.Model, s *battery.State, loadA float64) bool {
	return m.TerminalV(s, loadA) < stalledShare*m.NominalV()
}

// opening notes the first opening.
func (f *follower) opening(packV float64) {
	if f.out.Opened {
		return
	}
	where, atS, _ := f.c.Chain.First()
	f.out.Opened, f.out.First, f.out.AtS = true, where, atS
	f.out.PackV, f.openedAt = packV, f.s
	f.out.Charge = f.m.Charge(f.s)
	f.out.AtOpening = WeakestAt(f.m, f.s, f.c.LoadA)
}

// restGrowth is how much later the resting volts are looked at each time: what
// they come back by, they come back in ever longer times.
const restGrowth = 1.5

// rest leaves the pack alone until a device closes again, or long enough to
// be sure that none does. The current is the same throughout, so the pack at
// any time is one step away.
func (f *follower) rest() (offS float64, closed bool) {
	standby, closes := f.c.Chain.StandbyA(), f.c.Chain.closesAt()
	begin := f.s
	after := func(s float64) (battery.State, float64) {
		now, step := begin, f.m.Over(s)
		step.Advance(&now, standby, f.c.AmbientC)
		return now, f.m.TerminalV(&now, standby)
	}
	if math.IsInf(closes, 1) { // nothing ever does
		f.s, f.out.ReboundV = after(quietS)
		return quietS, false
	}
	var v float64
	for at, before := leastOnS, leastOnS; ; before, at = at, min(at*restGrowth, quietS) {
		if f.s, v = after(at); v >= closes && at > leastOnS {
			at = solve.Crossing(before, at, leastOnS/2, func(s float64) float64 { _, v := after(s); return v - closes }).Hi
			f.s, v = after(at)
		}
		f.out.ReboundV = max(f.out.ReboundV, v)
		if v >= closes || at == quietS {
			open := f.c.Chain.Step(Sample{PackV: v, BusV: v, DtS: at})
			return at, !open
		}
	}
}

// findings says what stands out.
func (f *follower) findings() []answer.Finding {
	out := f.out
	p := f.m.Spec().Profile
	var fs []answer.Finding
	// A load so small that the pack outlasts the computation tells nothing.
	if endV := f.m.TerminalV(&f.s, f.c.LoadA); f.c.Chain.Len() > 0 && !out.Opened && endV < f.m.EmptyV()-packHairV {
		never := onCutoff(answer.Finding{
			Code: CodeNeverOpens, Source: p.LadderSource, Unit: "V", Found: endV, Limit: f.m.EmptyV(), Want: answer.Above,
			Title:  "No cutoff opens before the pack is empty.",
			Advice: "The opening voltage is set too low for this pack: raise it or fit a cutoff that suits it.",
			Change: answer.FitCutoff, Decides: append(f.c.Chain.opensAtKeys(), answer.KeyPackChemistry), Added: true,
		})
		never.Level, never.Harm = ruin(p)
		fs = append(fs, never)
	}
	if out.Opened && !f.c.CellsWatched {
		fs = append(fs, out.AtOpening.findings(p, out.First.cutoff()+" opens", []string{keysOf(out.First).opensAt})...)
	}
	switch {
	case out.Recloses > 0:
		fs = append(fs, f.chatter())
	case out.Opened:
		fs = append(fs, f.mayChatter()...)
	}
	answer.Sort(fs)
	return fs
}

// chatter judges a load that comes back by itself: a habit to know of while it
// does the cells no harm.
func (f *follower) chatter() answer.Finding {
	out := f.out
	c := onCutoff(answer.Finding{
		Code: CodeChatters, Level: answer.Watch, Harm: answer.Wear, Unit: "x", Found: float64(out.Recloses), Source: "cutoff-practice",
		Title:  fmt.Sprintf("After the cutoff opens the pack recovers and the load comes back by itself, %s.", times(out.Recloses, out.OrMore)),
		Advice: fmt.Sprintf("The vehicle starts up unasked and drains the pack further. Use a cutoff that latches, or one that closes above %s.", volts(math.Ceil(max(out.ReboundV, mostReboundV(f.m, f.openedAt))*10)/10)),
		Change: answer.FitCutoff, Decides: f.closingKeys(),
	})
	if out.LowestCellV < out.AtOpening.HarmV-cellHairV || out.Recloses >= often {
		c.Level, c.Harm = answer.FixFirst, answer.Part
	}
	return c
}

// mayChatter judges a closing voltage that this pack did not come back to, but
// measured ones did.
func (f *follower) mayChatter() []answer.Finding {
	closes, packs := f.lowestClosing()
	rebound := mostReboundV(f.m, f.openedAt)
	if closes <= 0 || closes >= rebound-packHairV {
		return nil
	}
	return []answer.Finding{onCutoff(answer.Finding{
		Code: CodeMayChatter, Level: answer.Watch, Harm: answer.Wear, Unit: "V", Found: closes / packs, Limit: rebound / packs, Want: answer.Above, Source: "measured-rebound",
		Title:  "Measured packs have come back above the closing voltage of this cutoff.",
		Advice: fmt.Sprintf("Use a cutoff that latches, or one that closes above %s.", volts(math.Ceil(rebound/packs*10)/10)),
		Change: answer.FitCutoff, Decides: f.closingKeys(),
	})}
}

// closingKeys are the keys of the voltages at which the devices of the chain
// open and close again.
func (f *follower) closingKeys() []string {
	var out []string
	for i := range f.c.Chain.Len() {
		if d := f.c.Chain.At(i); !d.Latches() {
			keys := keysOf(d.Where)
			out = append(out, keys.opensAt, keys.closesAt)
		}
	}
	return out
}

// lowestClosing returns the lowest closing voltage in the chain, 0 when every
// device latches, and how many packs in series it is of.
func (f *follower) lowestClosing() (lowest, packs float64) {
	packs = 1
	for i := range f.c.Chain.Len() {
		d := f.c.Chain.At(i)
		if v := d.ClosesAtV; v > 0 && (lowest == 0 || v < lowest) {
			lowest, packs = v, float64(max(d.Packs, 1))
		}
	}
	return lowest, packs
}

// times says how often in words.
func times(n int, orMore bool) string {
	switch {
	case orMore:
		return fmt.Sprintf("%d times or more", n)
	case n == 1:
		return "once"
	}
	return fmt.Sprintf("%d times", n)
}
