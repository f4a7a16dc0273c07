package ride

import (
	"math"

	"example.org/packcheck/battery"
	"example.org/packcheck/cutoff"
	"example.org/packcheck/drive"
	"example.org/packcheck/internal/portable"
	"example.org/packcheck/wiring"
)

// Bounds of what is left out of an outing of many presses. They set the accuracy
// and not the result: what is left out moves the ride by less than a part in a
// thousand.
const (
	followed  = 6    // rounds, before any is left out
	firstGap  = 3    // rounds left out at first
	skipShare = 2    // of the rounds so far no more than one part in this is left out at a time ...
	skipLast  = 4    // ... and of the rounds that the charge is good for no more than one part in this
	missedAs  = 5e-5 // by which share of the charge so far the line may miss what a gap takes ...
	missedC   = 5e-3 // ... and by which share of what pack and windings have warmed up
)

// sums is how many running totals of a moment grow from round to round.
const sums = 8

func (n *moment) totals() [sums]*float64 {
	return [...]*float64{
		&n.clockS, &n.pedalS, &n.metres, &n.chargeAs, &n.energyJ, &n.a2s, &n.copperJ, &n.otherJ,
	}
}

// numbers is how many numbers of a moment move on from round to round: the modes
// of pack and motors, and the totals.
const numbers = len(battery.Modes{}) + len(drive.HeatModes{}) + sums

// series holds one number for each part. From one round to the next a part x
// becomes keep x + gain.
type series [numbers]float64

// numbersOf takes a moment apart.
func (o *outing) numbersOf(n *moment) (x series) {
	pack := o.c.Pack.Modes(&n.pack)
	i := copy(x[:], pack[:])
	if o.heated() {
		heat := o.split.Modes(n.heat)
		copy(x[i:], heat[:])
	}
	for k, total := range n.totals() {
		x[numbers-sums+k] = *total
	}
	return x
}

// put puts the moment together again.
func (o *outing) put(x *series) {
	n, c := &o.now, o.c
	n.pack = c.Pack.StateOf(battery.Modes(x[:len(battery.Modes{})]))
	n.look = c.Pack.Look(&n.pack)
	if o.heated() {
		n.heat = o.split.StateOf(drive.HeatModes(x[len(battery.Modes{}) : numbers-sums]))
	}
	for k, total := range n.totals() {
		*total = x[numbers-sums+k]
	}
	n.hottestC = max(n.hottestC, n.pack.TempC)
	n.hottestWindC = max(n.hottestWindC, n.heat.WindingC)
}

// heated reports whether the motors' heat is modelled.
func (o *outing) heated() bool { return o.c.Load.Kind == NoLoad && o.c.Vehicle.Motor.Thermal.Known() }

// ledger is what is known of the rounds: what the last one that was followed
// has added, how that changes from round to round, and the gap behind it.
type ledger struct {
	perRound    series // how fast numbers decay, times the length of a round ...
	keep, gone  series // ... and what is left of them and what is gone after one
	gain, slope series
	ramps       series  // of the gap, see sumsOver
	between     float64 // rounds between the last two places where the slope was taken
	known       bool    // gain holds
	straight    bool    // slope holds
	calm        bool    // no cutoff was about to act in it
	fuse        wiring.FuseState
	usedAs      float64
	roundS      float64
	endMS       float64 // speed at the end of the drive ...
	slowsMS     float64 // ... and how it falls from round to round

	most float64 // rounds that the next gap may leave out
	gap  int     // rounds left out behind it
	from mark    // where the gap begins
}

// rounds follows round after round until something ends the outing. Behind the
// first ones most are left out: what a round adds to each part of the moment
// is taken to change along a straight line through the last two that were
// followed, and the sums of such series are known in closed form. The next one
// that is followed corrects the line. A round behind a gap that ends the outing
// shows that the gap was too long; it is taken back.
//
// In which round an outing ends may hang on millivolts. So when it has ended, the round
// before is taken back with the last one, and both are followed in finer steps; until
// then what the cutoffs see is looked at coarsely. Where it then does not end for some
// rounds, others are left out again.
func (o *outing) rounds(on, off *grid) End {
	var (
		l      ledger
		begins [2]roundBegin // of this round, and of the one before where that was followed
		now    int           // which of them is this round's
	)
	may := !o.every && (off.n > 0 || o.c.Load.Kind == NoLoad) // leave rounds out
	countable, finely := may, 0
	endsBy := math.MaxInt // how many rounds it takes at most, once that is known
	done := 0
	if o.from != nil {
		o.now, done = o.from.now, o.from.round
	}
	o.setMark(done)
	for {
		begin := &begins[now]
		o.mark(&begin.mark)
		begin.shifted = false
		end := o.round(on, off)
		switch {
		case end == StillGoing && o.forEver(&begin.now):
			return TooLong
		case end == StillGoing:
			done++
			if o.last && !countable {
				if finely++; finely == mostFinely {
					l, countable = ledger{}, may
				}
			}
			if countable && done >= followed-1 {
				o.learn(&l, begin)
			}
			o.setMark(done)
			begin.followed = true
			if o.trace != nil {
				o.tell(begin.rows)
			}
			now = 1 - now
		case l.gap > 0:
			endsBy = done + 1
			done -= l.gap
			o.back(&l.from)
			l.gap = 0
			o.setMark(done)
		case !o.last && end != WantedReached && end != TooLong:
			if before := &begins[1-now]; before.followed {
				begin = before
			}
			o.back(&begin.mark)
			if begin.shifted {
				o.shift(&begin.by)
			}
			on.drive(o.c, o.finer*fine)
			o.last, countable = true, false
			continue
		default:
			return end
		}
		if done >= endsBy {
			endsBy = math.MaxInt
		}
		if countable && done >= followed {
			if k := min(o.alike(&l, done), (endsBy-done)/2-1); k > 0 {
				o.skip(&l, k)
				done += k
			}
		}
	}
}

// roundBegin is the beginning of a round that was followed.
type roundBegin struct {
	mark
	followed bool
	shifted  bool
	by       series // what a correction of the gap before it has added
}

// forEver reports whether a round took nothing out of the pack: downhill. The
// clock then runs to its end, and nothing else changes.
func (o *outing) forEver(before *moment) bool {
	n := &o.now
	if o.c.Load.Kind != NoLoad || n.chargeAs > before.chargeAs || o.stopS < MaxClockS {
		return false
	}
	more := (MaxClockS - n.clockS) / (n.clockS - before.clockS)
	n.pedalS += more * (n.pedalS - before.pedalS)
	n.metres += more * (n.metres - before.metres)
	n.clockS = MaxClockS
	return true
}

// fine is into how many parts steps are taken in the last rounds, and mostFinely how many
// of these are all followed.
const fine, mostFinely = 3, 8

// shift adds so much to the numbers of the moment.
func (o *outing) shift(by *series) {
	x := o.numbersOf(&o.now)
	for i := range x {
		x[i] += by[i]
	}
	o.put(&x)
}

// learn takes in a round that was followed, and corrects the gap before it.
func (o *outing) learn(l *ledger, begin *roundBegin) {
	n, before := &o.now, &begin.now
	l.usedAs, l.roundS = n.chargeAs-before.chargeAs, n.clockS-before.clockS
	l.calm, l.fuse = !o.chain.Counting(), before.fuse
	l.slowsMS, l.endMS = (l.endMS-n.lastSpeedMS)/float64(l.gap+1), n.lastSpeedMS
	if !l.known {
		l.over(o)
	}
	was, now := o.numbersOf(before), o.numbersOf(n)
	k := float64(l.gap)
	bow := k * (k + 1) * (k + 2) / 6 / (l.between + k + 1) // sum of what a parabola with the change of slope lies below the line
	for i := range now {
		gain := now[i] - l.keep[i]*was[i]
		if l.known {
			slope := (gain - l.gain[i]) / (k + 1)
			if l.gap > 0 {
				begin.by[i] = (slope - l.slope[i]) * l.ramps[i]
				if l.gone[i] == 0 {
					begin.by[i] -= (slope - l.slope[i]) * bow
				}
				now[i] += l.keep[i] * begin.by[i]
			}
			l.slope[i] = slope
		}
		l.gain[i] = gain
	}
	if l.gap > 0 {
		begin.shifted = true
		foretold := *n
		o.put(&now)
		l.most = l.bearable(&foretold, n, o.c.AmbientC)
	} else {
		l.most *= 1.5
	}
	l.straight, l.known, l.gap, l.between = l.known, true, 0, k+1
}

// bearable is how long the next gap may be, by how much the last one had to be
// corrected: that grows with its cube.
func (l *ledger) bearable(foretold, n *moment, ambientC float64) float64 {
	off := max(math.Abs(n.chargeAs-foretold.chargeAs)/n.chargeAs/missedAs,
		math.Abs(n.heat.WindingC-foretold.heat.WindingC)/(math.Abs(n.heat.WindingC-ambientC)+1)/missedC,
		math.Abs(n.pack.TempC-foretold.pack.TempC)/(math.Abs(n.pack.TempC-ambientC)+1)/missedC)
	return float64(l.gap+1) / math.Cbrt(max(off, 0.01))
}

// over works out what a round leaves of each number.
func (l *ledger) over(o *outing) {
	pack := o.c.Pack.ModeRates()
	i := copy(l.perRound[:], pack[:])
	if o.heated() {
		o.split = o.c.Vehicle.Motor.Thermal.Split()
		copy(l.perRound[i:], o.split.Rates[:])
	}
	for i := range l.perRound {
		l.keep[i] = 1
		if l.perRound[i] *= l.roundS; l.perRound[i] > 0 {
			l.keep[i], l.gone[i] = portable.Exp(-l.perRound[i]), -math.Expm1(-l.perRound[i])
		}
	}
}

// sumsOver returns keep^k of a number, and the sums over k rounds of keep^(k-j) and of
// j keep^(k-j), for the rounds j from 1 to k.
func (l *ledger) sumsOver(i, k int) (left, flat, ramp float64) {
	n := float64(k)
	if l.gone[i] == 0 {
		return 1, n, n * (n + 1) / 2
	}
	gone := -math.Expm1(-n * l.perRound[i])
	if n*l.perRound[i] < 1e-6 {
		return 1 - gone, n, n * (n + 1) / 2
	}
	flat = gone / l.gone[i]
	return 1 - gone, flat, (n - l.keep[i]*flat) / l.gone[i]
}

// alike returns how many of the coming rounds may be left out.
func (o *outing) alike(l *ledger, done int) int {
	if !l.calm || !l.straight || !(l.usedAs > 0 && l.roundS > 0) {
		return 0
	}
	good := 3600 * o.c.Pack.AvailableAh(o.now.pack) / l.usedAs / skipLast
	if l.slowsMS > 0 { // it may be on its way to a stand, and that faster and faster
		good = min(good, l.endMS/l.slowsMS/skipLast)
	}
	wanted := (o.stopS-o.now.clockS)/l.roundS - 2
	most := l.most
	if most == 0 {
		most = firstGap
	}
	fuse := o.now.fuse.Lasts(&l.fuse) / skipShare
	return int(max(0, min(float64(done)/skipShare, most, good, wanted, fuse)))
}

// skip leaves out so many rounds.
func (o *outing) skip(l *ledger, k int) {
	l.gap = k
	o.mark(&l.from)
	x := o.numbersOf(&o.now)
	for i := range x {
		left, flat, ramp := l.sumsOver(i, k)
		x[i] = left*x[i] + flat*l.gain[i] + ramp*l.slope[i]
		l.ramps[i] = ramp
	}
	o.put(&x)
	o.now.fuse.Repeat(&l.fuse, k)
	if o.c.Load.Kind == NoLoad {
		o.now.launches += k
	}
	if o.chain.Len() > 0 {
		o.chain.Step(cutoff.Sample{PackV: math.Inf(1), BusV: math.Inf(1), DtS: float64(k) * l.roundS})
	}
}
