package wiring

import (
	"math"

	"example.org/packcheck/finding"
	"example.org/packcheck/tables"
)

// fuseSize holds the rating against wire, joints and the band as a whole.
func (j *judge) fuseSize() {
	rating := j.Path.fuse.spec.RatingA
	rule := j.Tables.Figure(tables.FuseShareOfAmpacity)
	weakest := j.Path.Weakest(j.AmbientC)
	most := rule.Likely * weakest.CarriesA(j.AmbientC)
	if rating > most {
		j.add(finding.Finding{
			Code: "fuse-above-wire", Level: finding.Danger,
			Title: "The fuse is too large for the " + weakest.Name + ": the copper could burn before it opens.",
			Found: rating, Limit: most, Unit: "A", Source: rule.Source,
			Advice: j.Band.Advice(),
		})
	} else if rating >= j.Band.LeastA && rating <= j.Band.MostA {
		level := max(j.fineIf(weakest.Ampacity.Source), j.fineIf(j.Path.fuse.spec.Form.GatesSource))
		f := finding.Finding{
			Code: "fuse-fits", Level: level, Title: "The fuse suits the wire and the load.",
			Found: rating, Limit: j.Band.MostA, Unit: "A", Source: j.Band.MostSource,
		}
		if level != finding.Fine {
			f.Advice = "Some of the limits are from memory: compare with the makers' sheets of wire and fuse."
		}
		j.add(f)
	}
	if c, ok := j.Path.WeakestContact(); ok && rating > c.SteadyA && rating <= most {
		j.add(finding.Finding{
			Code: "fuse-above-joint", Level: finding.FixFirst,
			Title: "The fuse lets too much current through for the " + c.Name + ".",
			Found: rating, Limit: c.SteadyA, Unit: "A", Source: c.Source,
			Advice: j.Band.Advice(),
		})
	}
	if len(j.Band.StandardA) == 0 {
		j.add(finding.Finding{
			Code: "fuse-none-fits", Level: finding.FixFirst,
			Title: "No standard fuse suits both what the vehicle draws and what the path stands.",
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
		j.add(finding.Finding{
			Code: "fuse-opens-running", Level: finding.FixFirst, Title: "The fuse may open in normal running.",
			Found: running, Limit: carries, Unit: "A", Source: j.Path.fuse.spec.Form.GatesSource,
			Advice: j.Band.Advice(),
		})
	case running > lasting.Likely*carries:
		limit := lasting
		if running > most.Likely*carries {
			limit = most
		}
		j.add(finding.Finding{
			Code: "fuse-loaded", Level: finding.Watch, Title: "The running current loads the fuse so far that it ages.",
			Found: running, Limit: limit.Likely * carries, Unit: "A", Source: limit.Source,
			Advice: j.Band.Advice(),
		})
	}
	launch := j.FuseTimes().Launch
	if !(j.Demand.LaunchA > 0 && j.Demand.LaunchS > 0) || launch.EarliestS >= j.Demand.LaunchS {
		return
	}
	f := finding.Finding{
		Code: "fuse-may-open-at-launch", Level: finding.Watch, Title: "The fuse may open at launch.",
		Found: j.Demand.LaunchS, Limit: launch.EarliestS, Unit: "s", Source: j.Path.fuse.spec.Form.GatesSource,
		Advice: j.Band.Advice(),
	}
	if launch.LatestS <= j.Demand.LaunchS {
		f.Code, f.Level, f.Limit = "fuse-opens-at-launch", finding.FixFirst, launch.LatestS
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
	f := finding.Finding{
		Code: "fuse-slow-when-blocked", Level: finding.Watch,
		Title: "With blocked wheels the fuse may take long to open; it protects the wire, not the motor.",
		Found: finite(times.LatestS), Limit: slowBlockedS, Unit: "s", Source: j.Path.fuse.spec.Form.GatesSource,
		Advice: "Let go of the pedal at once when the wheels do not turn. A current limit in the controller helps, a fuse does not.",
	}
	weakest := j.Path.Weakest(j.AmbientC)
	rule := j.Tables.Figure(tables.FuseShareOfAmpacity)
	if most := rule.Likely * weakest.CarriesA(j.AmbientC); math.IsInf(times.LatestS, 1) && blocked > most {
		f.Code, f.Level = "blocked-overloads-wire", finding.FixFirst
		f.Title = "With blocked wheels the wire overheats and the fuse need not open."
		f.Found, f.Limit, f.Unit, f.Source = blocked, most, "A", rule.Source
		f.Advice = "Use thicker wire, or a current limit in the controller."
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
	f := finding.Finding{
		Found: distance, Limit: reach.Likely, Unit: "m", Source: reach.Source,
		Advice: "Put the fuse right at the pack's terminal: nothing protects the wire before it.",
	}
	switch {
	case math.IsNaN(distance):
		f.Code, f.Level, f.Found = "fuse-place-unknown", finding.Watch, 0
		f.Title = "It is not known how far the fuse is from the pack."
	case distance > reach.Likely:
		f.Code, f.Level = "fuse-too-far", finding.FixFirst
		f.Title = "There is too much unprotected wire between the pack and the fuse."
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
	f := finding.Finding{
		Code: "fuse-voltage", Level: finding.FixFirst,
		Title: "The full pack has more voltage than the fuse can interrupt.",
		Found: j.Pack.FullV, Limit: limit, Unit: "V", Source: j.Path.fuse.spec.Form.VoltageSource,
		Advice: "Use a fuse whose printed voltage is above that of the full pack.",
	}
	if j.Path.fuse.spec.VoltageV == 0 {
		f.Title = "The full pack has more voltage than the common version of this fuse can interrupt."
		f.Advice = "Read the voltage printed on the fuse. " + f.Advice
	}
	j.add(f)
}

// fuseHolder holds the rating against the holder.
func (j *judge) fuseHolder() {
	s := j.Path.fuse.spec
	f := finding.Finding{
		Code: "fuse-holder", Level: finding.FixFirst,
		Title: "The fuse lets more current through than its holder is made for.",
		Found: s.RatingA, Limit: s.HolderA, Unit: "A", Source: s.Form.HolderSource,
		Advice: "Use a holder made for this current, or the form of fuse that has one.",
	}
	switch {
	case s.HolderA > 0:
		if s.RatingA <= s.HolderA {
			return
		}
	case s.Form.HolderMostA > 0 && s.RatingA > s.Form.HolderMostA:
		f.Limit = s.Form.HolderMostA
	case s.Form.HolderA > 0 && s.RatingA > s.Form.HolderA:
		f.Level, f.Limit = finding.Watch, s.Form.HolderA
		f.Title = "The fuse needs the heavy version of its holder."
		f.Advice = "Read the current printed on the holder."
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
	j.add(finding.Finding{
		Code: "fuse-heat", Level: finding.Watch, Title: "In these surroundings the fuse carries less than is printed on it.",
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
	j.add(finding.Finding{
		Code: "fuse-tires", Level: finding.Watch,
		Title: "So many launches of this size tire the fuse until one opens it.",
		Found: life.Share, Limit: life.Allowed, Unit: "x", Source: life.Source,
		Advice: "Soften the launch with a ramp or a current limit, and carry a spare fuse of the same rating.",
	})
}

// breaker says what is special about one that closes again by itself.
func (j *judge) breaker() {
	form := j.Path.fuse.spec.Form
	if !form.Breaker {
		return
	}
	j.add(finding.Finding{
		Code: "breaker-alone", Level: finding.FixFirst,
		Title: "A breaker that closes again by itself must not be the only protection.",
		Found: j.Path.fuse.spec.RatingA, Limit: 0, Unit: "A", Source: form.Source,
		Advice: "Add a fuse by the pack. The breaker goes on opening and closing into a fault until something burns.",
	})
}

// FuseTimes returns the times of the result; the name Fuse means two things
// in a case with its result.
func (j *judge) FuseTimes() FuseTimes { return j.Result.Fuse }
