package wiring

import (
	"fmt"
	"math"

	"example.org/packcheck/answer"
	"example.org/packcheck/tables"
)

// fuseSize holds the rating against wire, joints and the band as a whole.
func (j *judge) fuseSize() {
	rating := j.Path.fuse.spec.RatingA
	rule := j.Tables.Figure(tables.FuseShareOfAmpacity)
	weakest := j.Path.Weakest(j.AmbientC)
	most := rule.Likely * weakest.CarriesA(j.AmbientC)
	if rating > most {
		j.add(answer.Finding{
			Code: "fuse-above-wire", Level: answer.Danger,
			Title: "The fuse is too large for the " + weakest.Name + ": the copper could burn before it opens.",
			Found: rating, Limit: most, Unit: "A", Source: rule.Source,
			Advice: j.Band.Advice(),
		})
	} else if rating >= j.Band.LeastA && rating <= j.Band.MostA {
		level := max(j.fineIf(weakest.Ampacity.Source), j.fineIf(j.Path.fuse.spec.Form.GatesSource))
		f := answer.Finding{
			Code: "fuse-fits", Level: level, Title: "The fuse suits the wire and the load.",
			Found: rating, Limit: j.Band.MostA, Unit: "A", Source: j.Band.MostSource,
		}
		if level != answer.Fine {
			f.Advice = "Compare with the makers' sheets of wire and fuse: some of the limits used here are from memory."
		}
		j.add(f)
	}
	if c, ok := j.Path.WeakestContact(); ok && rating > c.SteadyA && rating <= most {
		j.add(answer.Finding{
			Code: "fuse-above-joint", Level: answer.FixFirst,
			Title: "The fuse lets too much current through for the " + c.Name + ".",
			Found: rating, Limit: c.SteadyA, Unit: "A", Source: c.Source,
			Advice: j.Band.Advice(),
		})
	}
	if len(j.Band.StandardA) == 0 {
		j.add(answer.Finding{
			Code: "fuse-none-fits", Level: answer.FixFirst,
			Title: "No standard fuse suits both load and wire.",
			Found: j.Band.LeastA, Limit: j.Band.MostA, Unit: "A", Source: j.Band.MostSource,
			Advice: j.Band.Advice(),
		})
	}
}

// fuseLoad holds running and launch current against the fuse: nuisance, but
// people answer nuisance with a larger fuse.
func (j *judge) fuseLoad() {
	carries := j.FuseTimes().CarriesA
	lasting, most := j.Tables.Figure(tables.ContinuousLoad), j.Tables.Figure(tables.ContinuousLoadMost)
	running := j.Demand.RunningA
	switch {
	case !math.IsInf(j.FuseTimes().Running.EarliestS, 1):
		j.add(answer.Finding{
			Code: "fuse-opens-running", Level: answer.FixFirst, Title: "The fuse may open in normal running.",
			Found: running, Limit: carries, Unit: "A", Source: j.Path.fuse.spec.Form.GatesSource,
			Advice: j.Band.Advice(),
		})
	case running > lasting.Likely*carries:
		limit := lasting
		if running > most.Likely*carries {
			limit = most
		}
		j.add(answer.Finding{
			Code: "fuse-loaded", Level: answer.Watch, Title: "The running current wears the fuse out.",
			Found: running, Limit: limit.Likely * carries, Unit: "A", Source: limit.Source,
			Advice: "Carry a spare fuse of the same rating; a current limit in the controller spares it.",
		})
	}
	launch := j.FuseTimes().Launch
	if !(j.Demand.LaunchA > 0 && j.Demand.LaunchS > 0) || launch.EarliestS >= j.Demand.LaunchS {
		return
	}
	f := answer.Finding{
		Code: "fuse-may-open-at-launch", Level: answer.Watch, Title: "The fuse may open at launch.",
		Found: j.Demand.LaunchS, Limit: launch.EarliestS, Unit: "s", Source: j.Path.fuse.spec.Form.GatesSource,
		Advice: j.Band.Advice(),
	}
	if launch.LatestS <= j.Demand.LaunchS {
		f.Code, f.Level, f.Limit = "fuse-opens-at-launch", answer.FixFirst, launch.LatestS
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
	// Behind a current limit blocked wheels can draw less than running does.
	if blocked <= j.Demand.RunningA || times.LatestS <= slowBlockedS {
		return
	}
	f := answer.Finding{
		Code: "fuse-slow-when-blocked", Level: answer.Watch,
		Title: "The fuse opens late when wheels are blocked: it protects the wire, not the motor.",
		Found: finite(times.LatestS), Limit: slowBlockedS, Unit: "s", Source: j.Path.fuse.spec.Form.GatesSource,
		Advice: "Let go of the pedal at once when the vehicle does not move. A current limit in the controller helps, a fuse does not.",
	}
	weakest := j.Path.Weakest(j.AmbientC)
	rule := j.Tables.Figure(tables.FuseShareOfAmpacity)
	if most := rule.Likely * weakest.CarriesA(j.AmbientC); math.IsInf(times.LatestS, 1) && blocked > most {
		f.Code, f.Level = "blocked-overloads-wire", answer.FixFirst
		f.Title = "Blocked wheels overheat the wire; the fuse need not open."
		f.Found, f.Limit, f.Unit, f.Source = blocked, most, "A", rule.Source
		f.Advice = "Fit thicker wire, or limit the current in the controller."
	}
	j.add(f)
}

// fusePlace holds the wire before the fuse, which nothing protects, against
// the law on boats.
func (j *judge) fusePlace() {
	reach := j.Tables.Figure(tables.FuseReachBare)
	if j.Path.fuse.spec.Sheathed {
		reach = j.Tables.Figure(tables.FuseReachSheathed)
	}
	distance := j.Path.fuse.spec.DistanceM
	f := answer.Finding{
		Found: distance, Limit: reach.Likely, Unit: "m", Source: reach.Source,
		Advice: "Put the fuse right at the pack's terminal: nothing protects the wire before it.",
	}
	switch {
	case math.IsNaN(distance):
		f.Code, f.Level, f.Found = "fuse-place-unknown", answer.Watch, 0
		f.Title = "How far the fuse is from the pack is not known."
	case distance > reach.Likely:
		f.Code, f.Level = "fuse-too-far", answer.FixFirst
		f.Title = "Too much unprotected wire lies between pack and fuse."
	default:
		return
	}
	j.add(f)
}

// fuseVoltage holds the voltage rating against the full pack.
func (j *judge) fuseVoltage() {
	limit := j.Path.fuse.VoltageV()
	if limit == 0 || j.Pack.FullV <= limit {
		return
	}
	f := answer.Finding{
		Code: "fuse-voltage", Level: answer.FixFirst,
		Title: "The fuse cannot interrupt the full pack's voltage.",
		Found: j.Pack.FullV, Limit: limit, Unit: "V", Source: j.Path.fuse.spec.Form.VoltageSource,
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
		Code: "fuse-holder", Level: answer.FixFirst,
		Title: "The fuse is too large for its holder.",
		Found: s.RatingA, Limit: s.HolderA, Unit: "A", Source: s.Form.HolderSource,
		Advice: fmt.Sprintf("Fit a holder made for %g A or more; never one that is smaller than its fuse.", s.RatingA),
	}
	switch {
	case s.HolderA > 0:
		if s.RatingA <= s.HolderA {
			return
		}
	case s.Form.HolderMostA > 0 && s.RatingA > s.Form.HolderMostA:
		f.Limit = s.Form.HolderMostA
	case s.Form.HolderA > 0 && s.RatingA > s.Form.HolderA:
		f.Level, f.Limit = answer.Watch, s.Form.HolderA
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
	if carries >= heatWorthTelling*rating {
		return
	}
	j.add(answer.Finding{
		Code: "fuse-heat", Level: answer.Watch, Title: "Heat makes the fuse carry less than is printed on it.",
		Found: carries, Limit: rating, Unit: "A", Source: j.Path.fuse.spec.Form.HeatSource,
		Advice: "Keep the fuse out of the warm battery box.",
	})
}

// fuseLife holds a season's launches against the melting I2t.
func (j *judge) fuseLife() {
	life := j.Pulses
	if !life.Known || j.Demand.LaunchI2t == 0 || j.Demand.Launches == 0 || life.Share <= life.Allowed {
		return
	}
	j.add(answer.Finding{
		Code: "fuse-tires", Level: answer.Watch,
		Title: "A season of such starts wears the fuse out.",
		Found: life.Share, Limit: life.Allowed, Unit: "x", Source: life.Source,
		Advice: "Carry a spare fuse of the same rating; a soft start or a current limit spares it.",
	})
}

// breaker says what is special about one that closes again by itself.
func (j *judge) breaker() {
	form := j.Path.fuse.spec.Form
	if !form.Breaker {
		return
	}
	j.add(answer.Finding{
		Code: "breaker-alone", Level: answer.FixFirst,
		Title: "A self-closing breaker must not be the only protection.",
		Found: j.Path.fuse.spec.RatingA, Limit: 0, Unit: "A", Source: form.Source,
		Advice: "Add a one-time fuse right at the pack. The breaker goes on opening and closing into a fault until something burns.",
	})
}

// FuseTimes returns the times of the result; the name Fuse means two things
// in a case with its result.
func (j *judge) FuseTimes() FuseTimes { return j.Result.Fuse }
