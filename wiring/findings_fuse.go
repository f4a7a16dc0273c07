package wiring

import (
	"fmt"
	"math"

	"example.org/packcheck/answer"
	"example.org/packcheck/tables"
)

// What is found of a fuse, its place and its holder.
const (
	CodeFuseFits             = "fuse-fits"
	CodeFuseAboveWire        = "fuse-above-wire"
	CodeFuseAboveJoint       = "fuse-above-joint"
	CodeFuseNoneFits         = "fuse-none-fits"
	CodeFuseOpensRunning     = "fuse-opens-running"
	CodeFuseLoaded           = "fuse-loaded"
	CodeFuseMayOpenAtLaunch  = "fuse-may-open-at-launch"
	CodeFuseOpensAtLaunch    = "fuse-opens-at-launch"
	CodeFuseSlowWhenBlocked  = "fuse-slow-when-blocked"
	CodeBlockedOverloadsWire = "blocked-overloads-wire"
	CodeFusePlaceUnknown     = "fuse-place-unknown"
	CodeFuseTooFar           = "fuse-too-far"
	CodeFuseVoltage          = "fuse-voltage"
	CodeFuseHolder           = "fuse-holder"
	CodeFuseHeat             = "fuse-heat"
	CodeFuseTires            = "fuse-tires"
	CodeBreakerAlone         = "breaker-alone"
)

// fuseKeys are the keys that say which fuse it is.
func fuseKeys() []string { return []string{answer.KeyFuseRating, answer.KeyFuseForm} }

// change is what the band's advice asks for: a fuse, or a way that carries
// more where no standard rating lies in the band.
func (b FuseBand) change() answer.Change {
	if len(b.StandardA) == 0 {
		return answer.FitWire
	}
	return answer.FitFuse
}

// fuseSize holds the rating against wire, joints and the band as a whole.
func (j *judge) fuseSize() {
	rating := j.Path.fuse.spec.RatingA
	rule := j.Tables.Figure(tables.FuseShareOfAmpacity)
	weakest := j.Path.Weakest(j.AmbientC)
	most := rule.Likely * weakest.CarriesA(j.AmbientC)
	of := answer.Finding{Item: answer.Fuse, About: AboutFuse, Found: rating, Unit: "A", Advice: j.Band.Advice(), Change: j.Band.change()}
	if drawsOver(rating, most) { // the surroundings, and with them what the wire carries, are not known to a hair
		f := of
		f.Code, f.Level, f.Harm, f.Gravity, f.Limit, f.Source = CodeFuseAboveWire, answer.Danger, answer.House, 1, most, rule.Source
		f.Decides = append(j.wireDecides(weakest, func(best Run) bool {
			return drawsOver(rating, rule.Likely*best.CarriesA(j.AmbientC))
		}), answer.KeyFuseRating)
		f.Title = "The fuse is too large for the " + weakest.Name + ": the copper could burn before it opens."
		j.add(f)
	} else if rating >= j.Band.LeastA && !over(rating, j.Band.MostA) {
		f := of
		f.Code, f.Limit, f.Source, f.Change, f.Advice = CodeFuseFits, j.Band.MostA, j.Band.MostSource, answer.ChangeNone, ""
		f.Level = max(j.fineIf(weakest.Ampacity.Source), j.fineIf(j.Path.fuse.spec.Form.GatesSource))
		f.Decides = append(wireKeys(), fuseKeys()...)
		f.Title = "The fuse suits the wire and the load."
		if f.Level != answer.Fine {
			f.Title = "That the fuse suits wire and load rests on limits from memory."
			f.Advice = "Compare with the makers' sheets of wire and fuse: some of the limits used here are from memory."
		}
		j.add(f)
	}
	if c, ok := j.Path.WeakestContact(); ok && over(rating, c.SteadyA) && !drawsOver(rating, most) {
		f := of
		f.Code, f.Level, f.Harm, f.Limit, f.Source = CodeFuseAboveJoint, answer.FixFirst, answer.Part, c.SteadyA, c.Source
		f.Decides = []string{answer.KeyFuseRating, answer.KeyWireJoint}
		f.Title = "The fuse lets too much current through for the " + c.Name + "."
		j.add(f)
	}
	if len(j.Band.StandardA) == 0 {
		f := of
		f.Code, f.Level, f.Harm, f.Gravity, f.Source, f.Change = CodeFuseNoneFits, answer.FixFirst, answer.Part, 1, j.Band.MostSource, answer.FitWire
		f.Found, f.Limit, f.Decides = j.Band.LeastA, j.Band.MostA, wireKeys()
		if f.Found <= f.Limit {
			f.Reads = answer.AsTold // a gap between two sizes, not a limit that is passed
		}
		f.Title = "No standard fuse suits both load and wire."
		j.add(f)
	}
}

// fuseLoad holds running and launch current against the fuse: nuisance, but
// people answer nuisance with a larger fuse.
func (j *judge) fuseLoad() {
	carries, curve := j.FuseTimes().CarriesA, j.Path.fuse.At(j.AmbientC)
	lasting, most := j.Tables.Figure(tables.ContinuousLoad), j.Tables.Figure(tables.ContinuousLoadMost)
	gates, running := j.Path.fuse.spec.Form.GatesSource, j.Demand.RunningA
	of := answer.Finding{Item: answer.Fuse, About: AboutFuse, Advice: j.Band.Advice(), Change: j.Band.change(), Decides: fuseKeys()}
	switch {
	case drawsOver(running, curve.HoldsA()):
		f := of
		f.Code, f.Level, f.Harm, f.Gravity, f.EndsRides = CodeFuseOpensRunning, answer.FixFirst, answer.Part, 1, true
		f.Found, f.Limit, f.Unit, f.Source = running, carries, "A", gates
		f.Title = "The fuse may open in normal running."
		j.add(f)
	case drawsOver(running, lasting.Likely*carries):
		limit := lasting
		if drawsOver(running, most.Likely*carries) {
			limit = most
		}
		f := of
		f.Code, f.Level, f.Change = CodeFuseLoaded, answer.Watch, answer.ChangeNone
		f.Found, f.Limit, f.Unit, f.Source = running, limit.Likely*carries, "A", limit.Source
		f.Title = "The running current wears the fuse out."
		f.Advice = "Carry a spare fuse of the same rating; a current limit in the controller spares it."
		j.add(f)
	}
	if !(j.Demand.LaunchA > 0 && j.Demand.LaunchS > 0) {
		return
	}
	// Only what a little less current in a little less time would do as well.
	least, leastS := curve.Opens(j.Demand.LaunchA*(1-demandMargin)), j.Demand.LaunchS*(1-demandMargin)
	if least.EarliestS >= leastS {
		return
	}
	f, launch := of, j.FuseTimes().Launch
	f.Code, f.Level = CodeFuseMayOpenAtLaunch, answer.Watch
	f.Found, f.Limit, f.Unit, f.Source = j.Demand.LaunchS, launch.EarliestS, "s", gates
	f.Title = "The fuse may open at launch."
	if least.LatestS <= leastS {
		f.Code, f.Level, f.Harm, f.Limit, f.EndsRides = CodeFuseOpensAtLaunch, answer.FixFirst, answer.Part, launch.LatestS, true
		f.Title = "The fuse opens at launch."
	}
	j.add(f)
}

// slowBlockedS is how long a child may be expected to push against an
// obstacle before somebody notices; own choice, no source.
const slowBlockedS = 5.0

// fuseBlocked says what the fuse does when the wheels are held.
func (j *judge) fuseBlocked() {
	blocked, times := j.Demand.BlockedA, j.FuseTimes().Blocked
	// Only what a little more current would not do in time either.
	latestS := j.Path.fuse.At(j.AmbientC).Opens(blocked * (1 + demandMargin)).LatestS
	// Behind a current limit blocked wheels can draw less than running does.
	if blocked <= j.Demand.RunningA || latestS <= slowBlockedS {
		return
	}
	f := answer.Finding{
		Code: CodeFuseSlowWhenBlocked, Level: answer.Watch, Item: answer.Fuse, Gravity: -1,
		Habit: answer.HabitLetGo, Decides: fuseKeys(),
		Title: "The fuse opens late when wheels are blocked: it protects the wire, not the motor.",
		Found: finite(times.LatestS), Limit: slowBlockedS, Unit: "s", Source: j.Path.fuse.spec.Form.GatesSource,
		Advice: "Let go of the pedal at once when the vehicle does not move. A current limit in the controller helps, a fuse does not.",
	}
	weakest := j.Path.Weakest(j.AmbientC)
	rule := j.Tables.Figure(tables.FuseShareOfAmpacity)
	if most := rule.Likely * weakest.CarriesA(j.AmbientC); math.IsInf(latestS, 1) && drawsOver(blocked, most) {
		// A fire may come of it, but only while somebody holds the pedal down.
		f.Code, f.Level, f.Harm, f.Gravity = CodeBlockedOverloadsWire, answer.FixFirst, answer.House, 1
		f.Item, f.Change = answer.Wire, answer.FitWire
		f.Decides = append(j.wireDecides(weakest, func(best Run) bool {
			return drawsOver(blocked, rule.Likely*best.CarriesA(j.AmbientC))
		}), fuseKeys()...)
		f.Title = "Blocked wheels overheat the wire, and the fuse may stay whole."
		f.Found, f.Limit, f.Unit, f.Source = blocked, most, "A", rule.Source
		f.Advice = "Fit thicker wire, or limit the current in the controller."
	}
	j.add(f)
}

// fusePlace holds the wire before the fuse, which nothing protects, against
// the law on boats.
func (j *judge) fusePlace() {
	distanceM, sheathedAll := j.Path.fuse.distanceM, j.Path.fuse.spec.Sheathed
	sheathed := j.Tables.Figure(tables.FuseReachSheathed)
	reach := j.Tables.Figure(tables.FuseReachBare)
	if sheathedAll {
		reach = sheathed
	}
	f := answer.Finding{
		Harm: answer.House, Item: answer.Fuse, Change: answer.MoveFuse, Decides: []string{answer.KeyFuseDistanceFromPack},
		Found: distanceM, Limit: reach.Likely, Unit: "m", Source: reach.Source,
		Advice: "Put the fuse right at the pack's terminal: nothing protects the wire before it.",
	}
	switch {
	case math.IsNaN(distanceM):
		f.Code, f.Level, f.Found, f.Reads, f.Change = CodeFusePlaceUnknown, answer.Watch, 0, answer.AsUnknown, answer.LookUp
		f.Title = "How far the fuse is from the pack is not known."
	case !sheathedAll && over(distanceM, sheathed.Likely):
		f.Code, f.Level, f.Limit, f.Source = CodeFuseTooFar, answer.Danger, sheathed.Likely, sheathed.Source
		f.Title = "The wire before the fuse is too long: nothing protects it, and even sheathed wire may not be that long."
	case over(distanceM, reach.Likely):
		f.Code, f.Level = CodeFuseTooFar, answer.FixFirst
		f.Title = "Too much unprotected wire lies between pack and fuse."
	default:
		return
	}
	j.add(f)
}

// fuseVoltage holds the voltage rating against the full pack.
func (j *judge) fuseVoltage() {
	limit := j.Path.fuse.VoltageV()
	if limit == 0 || !over(j.Pack.FullV, limit) {
		return
	}
	f := answer.Finding{
		Code: CodeFuseVoltage, Level: answer.FixFirst, Harm: answer.House, Item: answer.Fuse,
		Decides: []string{answer.KeyFuseMaxVoltage, answer.KeyFuseForm},
		Title:   "The fuse cannot interrupt the full pack's voltage.",
		Found:   j.Pack.FullV, Limit: limit, Unit: "V", Source: j.Path.fuse.spec.Form.VoltageSource,
		Advice: fmt.Sprintf("Fit a fuse printed with %.0f V or more.", math.Ceil(j.Pack.FullV)),
	}
	if j.Path.fuse.spec.VoltageV == 0 {
		f.Title = "Common fuses of this kind cannot interrupt this voltage."
		f.Advice = "Read the voltage printed on the fuse. " + f.Advice
	}
	j.add(f)
}

// fuseHolder holds the rating against the holder.
func (j *judge) fuseHolder() {
	s := j.Path.fuse.spec
	f := answer.Finding{
		Code: CodeFuseHolder, Level: answer.FixFirst, Harm: answer.Part, Item: answer.Fuse, Decides: fuseKeys(),
		Title: "The fuse is too large for its holder.",
		Found: s.RatingA, Limit: s.HolderA, Unit: "A", Source: s.Form.HolderSource,
		Advice: fmt.Sprintf("Fit a holder made for %g A or more; never one that is smaller than its fuse.", s.RatingA),
	}
	switch {
	case s.HolderA > 0:
		if !over(s.RatingA, s.HolderA) {
			return
		}
	case s.Form.HolderMostA > 0 && over(s.RatingA, s.Form.HolderMostA):
		f.Limit = s.Form.HolderMostA
	case s.Form.HolderA > 0 && over(s.RatingA, s.Form.HolderA):
		f.Level, f.Harm, f.Limit, f.Change = answer.Watch, answer.Wear, s.Form.HolderA, answer.LookUp
		f.Title = "The fuse needs the heavy version of its holder."
		f.Advice = fmt.Sprintf("Read the current printed on the holder: it must be %g A or more.", s.RatingA)
	default:
		return
	}
	j.add(f)
}

// heatWorthTelling is the share of its rating under which a warm fuse is
// worth a line; own choice, no source.
const heatWorthTelling = 0.9

// fuseHeat says when the surroundings take much of the rating.
func (j *judge) fuseHeat() {
	carries, rating := j.FuseTimes().CarriesA, j.Path.fuse.spec.RatingA
	if !over(heatWorthTelling*rating, carries) {
		return
	}
	j.add(answer.Finding{
		Code: CodeFuseHeat, Level: answer.Watch, Item: answer.Fuse, Decides: fuseKeys(),
		Title: "Heat makes the fuse carry less than is printed on it.",
		Found: carries, Limit: rating, Want: answer.Above, Unit: "A", Source: j.Path.fuse.spec.Form.HeatSource,
		Advice: "Keep the fuse out of the warm battery box.",
	})
}

// fuseLife holds a season's launches against the melting I2t.
func (j *judge) fuseLife() {
	life := j.Pulses
	if !life.Known || j.Demand.LaunchI2t == 0 || j.Demand.Launches == 0 || !drawsOver(life.Share, life.Allowed) {
		return
	}
	j.add(answer.Finding{
		Code: CodeFuseTires, Level: answer.Watch, Item: answer.Fuse, Decides: fuseKeys(),
		Title: "A season of such starts wears the fuse out.",
		Found: life.Share, Limit: life.Allowed, Unit: "share", Source: life.Source,
		Advice: "Carry a spare fuse of the same rating; a soft start or a current limit spares it.",
	})
}

// breaker says what is special about one that closes again by itself.
func (j *judge) breaker() {
	form := j.Path.fuse.spec.Form
	if !form.Breaker {
		return
	}
	level := answer.FixFirst
	if j.AsMade { // many were made so
		level = answer.Watch
	}
	j.add(answer.Finding{
		Code: CodeBreakerAlone, Level: level, Harm: answer.House, Item: answer.Fuse,
		Change: answer.FitFuse, Reads: answer.AsTold, Decides: []string{answer.KeyFuseForm},
		Title: "A self-closing breaker must not be the only protection.",
		Found: j.Path.fuse.spec.RatingA, Unit: "A", Source: form.Source,
		Advice: "Add a one-time fuse right at the pack. The breaker goes on opening and closing into a fault until something burns.",
	})
}

// FuseTimes returns the times of the result; the name Fuse means two things
// in a case with its result.
func (j *judge) FuseTimes() FuseTimes { return j.Result.Fuse }
