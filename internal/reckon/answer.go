package reckon

import (
	"cmp"
	"math"
	"slices"
	"strings"

	"example.org/packcheck/answer"
	"example.org/packcheck/charge"
	"example.org/packcheck/cutoff"
	"example.org/packcheck/drive"
	"example.org/packcheck/internal/draws"
	"example.org/packcheck/internal/ride"
	"example.org/packcheck/setup"
)

// answer puts together what the draws came to, all but what [conclude] says.
func (e *engine) answer(s *setup.Setup, d *drawn, t *table) (*answer.Assessment, error) {
	typical, err := e.vehicle(d.median(e.world), d.conflict, complete)
	if err != nil {
		return nil, err
	}
	p, a := e.parts, e.found(d, t, typical)
	a.Series = seriesOf(typical)
	a.Items = byItem(p, a.Findings)
	a.Assumed = e.assumed(d, t, a.Findings)
	gains, err := e.measure(d, t)
	if err != nil {
		return nil, err
	}
	a.Measure = e.asked(s, a, gains)
	a.Habits, a.Buy = habits(a), purchases(a, p)
	for _, c := range cautionsFor(p) {
		a.Cautions = append(a.Cautions, c.text)
		a.CautionSources = append(a.CautionSources, c.source)
	}
	a.Sources = sourcesOf(p, a)
	return a, nil
}

// conclude says what the answer comes to and what is to be done first, with the ways out
// that were found. No question makes a child older.
func conclude(a *answer.Assessment) *answer.Assessment {
	a.Changes, a.Headline = changes(a), headline(a)
	a.Headline[2] = throughWays(a)
	if a.TooYoung() != nil {
		a.Measure = nil
	}
	return a
}

// found is the part of the answer that a way out is searched by: figures, findings
// and the verdict.
func (e *engine) found(d *drawn, t *table, typical *Vehicle) *answer.Assessment {
	p := e.parts
	a := &answer.Assessment{
		Schema: answer.Schema, Title: p.Title, System: p.System, Readings: d.readings, Conflict: d.conflict,
		Draws: answer.DrawFigures{
			Count: len(t.weight), Runs: t.runs, Effective: effective(d.weight), Judged: len(t.judged.at), Rough: d.rough(),
			Inside: inside, ShareErr: t.judged.err,
		},
	}
	t.tell(&a.Draws)
	shape(a, typical)
	t.fill(a)
	a.Ride.SpoilsFlat = charge.SpoilsFlat(p.Pack.Profile, a.Ride.StartsCharged)
	words(a, t)
	a.Findings = count(&t.judged, e.guesses(d.conflict))
	oneCutoff(a.Findings, a.Cutoff.Advised, p.Pack.Profile)
	if a.Path != nil {
		fuse := t.judged.middleFuse(fusedOf(typical))
		a.Path.FuseSizesA = fuse.sizes()
		oneFuse(a.Findings, fuse)
	}
	a.Verdict = answer.Worst(a.Findings)
	return a
}

// shape makes the parts of the answer that this setup has, with what is the
// same in all draws or taken from the representative case.
func shape(a *answer.Assessment, v *Vehicle) {
	p := v.Now.Parts
	spec := v.Now.Pack.Spec()
	a.Pack = answer.PackFigures{
		Chemistry: p.Pack.Profile.Name, Reading: p.Pack.Reading,
		CellsInSeries: spec.CellsInSeries, Strings: max(1, spec.Strings),
	}
	if p.Pack.Joined != "" {
		which := ", each: "
		if other := p.Pack.Second; other != nil {
			which = ", the first: "
			if other.Profile.Title != p.Pack.Profile.Title {
				a.Pack.Chemistry += " and " + other.Profile.Name
			}
		}
		a.Pack.Reading = "two packs joined in " + p.Pack.Joined + which + p.Pack.Reading
	}
	if p.Bench == nil {
		a.Steady, a.Launch = &answer.SteadyFigures{}, launchOf(v)
	}
	if w := v.Judged.Wired; w != nil {
		a.Path = &answer.PathFigures{}
		for _, l := range w.Losses {
			a.Path.Elements = append(a.Path.Elements, answer.PathElement{Name: l.Name, Ohm: l.Ohm, DropV: l.DropV, HeatW: l.HeatW})
		}
	}
	a.Ride.WantedMin = known(v.Now.WantedS / 60)
	if v.Now.WantedS == 0 {
		a.Ride.WantedMin = nil
	}
	c := &v.Judged.Charging
	a.Charge = &answer.ChargeFigures{Match: c.Match, Reasons: c.Reasons, Right: c.Right.String(), Left: c.Left}
	if p.Charger.Stops == charge.StopsByTimer {
		a.Charge.TimerH = p.Charger.TimerH
	}
	a.Charge.Advised = &answer.AdvisedCharger{
		Brief: c.Right.Brief(), Own: c.Right.Own, MadeFor: c.Right.MadeFor.Key(), EndV: c.Right.EndV, MostA: c.Right.MostA, Each: c.Right.Each,
	}
	if v.Was != nil {
		a.Original = &answer.OriginalFigures{Read: p.Original != nil && p.Original.Measured != nil && readOnOriginal(a.Conflict)}
	}
	if s := v.Judged.Storage; s != nil {
		stored := *s
		a.Storage = &stored
	}
	a.Measured = v.Judged.Measured
	a.Notes = notes(v)
}

// readOnOriginal reports whether the answer stands on any reading of the original battery.
func readOnOriginal(c *answer.Conflict) bool {
	return c == nil || slices.ContainsFunc(c.Readings, func(key string) bool {
		return strings.HasPrefix(key, "original.") && !slices.Contains(c.LeftOut, key)
	})
}

// launchOf is the launch of the representative case, complete.
func launchOf(v *Vehicle) *answer.LaunchFigures {
	c, l := v.Now, &v.Seen.Launch
	f := &answer.LaunchFigures{Slips: l.Slipped, Case: caseOf(c.LaunchCase()), CaseGives: givesOf(v)}
	for i, s := range drive.SpeedTimesS() {
		f.SpeedAfter = append(f.SpeedAfter, answer.SpeedPoint{TimeS: s, Kmh: l.SpeedMS[i] * 3.6})
	}
	above, limits := l.Above, c.Limits
	for _, part := range []struct {
		name      string
		limitA, s float64
	}{
		{"pack, greatest current", limits.PackA, above.PackS},
		{"weakest joint", limits.JointA, above.JointS},
		{"switch", limits.SwitchA, above.SwitchS},
		{"controller, continuous", limits.ControllerContinuousA, above.ControllerContinuousS},
		{"controller, peak", limits.ControllerPeakA, above.ControllerPeakS},
	} {
		if part.limitA > 0 {
			f.AboveS = append(f.AboveS, answer.AboveLimit{Part: part.name, LimitA: part.limitA, Sec: part.s})
		}
	}
	return f
}

// givesOf is what the launch case comes to by itself. Behind a converter it is
// the board's launch: what the pack gives meanwhile needs more than the case.
func givesOf(v *Vehicle) answer.CaseGives {
	l, blockedA := v.Seen.Launch, v.Seen.Blocked.BatteryA
	if v.Now.Controller.Converter.OutV > 0 {
		c := v.Now.LaunchCase()
		l = drive.Launch(&c, v.Now.LaunchSeconds(), nil)
		blockedA = c.Blocked().BatteryA
	}
	return answer.CaseGives{
		PeakBatteryA: l.PeakBatteryA, PeakBatteryAtS: l.PeakBatteryAtS, PeakMotorA: l.PeakMotorA, LowestBusV: l.LowestBusV,
		BlockedBatteryA: blockedA, SpeedKmh: v.Seen.Steady.SpeedMS * 3.6,
	}
}

// caseOf writes a launch case as an answer holds it.
func caseOf(c drive.LaunchCase) answer.LaunchCase {
	return answer.LaunchCase{
		OCVV: c.OCVV, R0Ohm: c.R0Ohm, RC: [2]answer.Branch{answer.Branch(c.RC[0]), answer.Branch(c.RC[1])}, PathOhm: c.PathOhm,
		Motors: c.Motors, MotorsInSeries: c.MotorsInSeries, WindingOhm: c.WindingOhm, WindingH: c.WindingH,
		TorqueConstant: c.TorqueConstant, NoLoadA: c.NoLoadA, GearRatio: c.GearRatio, GearEfficiency: c.GearEfficiency,
		WheelRadiusM: c.WheelRadiusM, MassKg: c.MassKg, RotorInertiaKgM2: c.RotorInertiaKgM2, RollN: c.RollN, GradeN: c.GradeN,
		DragNS2PerM2: c.DragNS2PerM2, GripN: c.GripN, RampS: c.RampS, LimitA: c.LimitA, ModuleRampS: c.ModuleRampS,
	}
}

// fill sets every figure to its median over the draws, and notes its range.
// A figure that fewer than half of the draws have has a range and no median.
func (t *table) fill(a *answer.Assessment) {
	a.Ranges = map[string]answer.Range{}
	var in draws.Sorter
	for i, m := range metrics.Get() {
		values, weight := t.values[i], t.weight
		if m.judged {
			values, weight = t.judged.values[i], t.judged.weight
		}
		m.fill(a, values, weight, &in)
	}
}

// fill sets one figure to its median, and notes its range.
func (m *metric) fill(a *answer.Assessment, values, weight []float64, in *draws.Sorter) {
	delete(a.Ranges, m.path)
	s := in.SpreadOf(values, weight)
	if s.Present == 0 {
		return
	}
	r := answer.Range{Low: s.P10, Likely: s.P50, High: s.P90}
	if r.Valid() && !r.IsExact() {
		a.Ranges[m.path] = r
	}
	if s.Present >= 0.5 && m.put != nil && !math.IsInf(s.P50, 0) {
		m.put(a, s.P50)
	}
}

// words are the figures that are no numbers: what most of the draws say.
func words(a *answer.Assessment, t *table) {
	a.Ride.EndShare, a.Ride.End, a.Ride.EndedBy = ends(t.ends, t.weight)
	_, a.Ride.LastsEnd, a.Ride.LastsUntil = ends(t.lasts, t.weight)
	j := &t.judged
	a.Cutoff.OpensShare = shares(j.opens, j.weight)
	if len(a.Cutoff.OpensShare) > 0 {
		a.Cutoff.OpensFirst = a.Cutoff.OpensShare[0].Name
	}
	if match := shares(j.match, j.weight); len(match) > 0 {
		a.Charge.Match = match[0].Name
	}
	if a.Charge.Match == answer.MatchNo { // hours on a charger that must not be connected would invite
		a.Charge.HoursTo80, a.Charge.HoursToFull, a.Charge.UnplugAfterH = nil, nil, nil
	}
	a.Cutoff.LeftForAWeek = j.weekInTheMiddle()
	a.Cutoff.Advised = j.advice(a.Pack.FullV)
}

// weekInTheMiddle is what a week does to the draw whose days until harm lie in
// the middle.
func (j *judgedTable) weekInTheMiddle() string {
	i := slices.IndexFunc(metrics.Get(), func(m metric) bool { return m.path == idlePath })
	days := draws.Quantile(j.values[i], j.weight, 0.5)
	best, week := math.Inf(1), ""
	for k, d := range j.values[i] {
		if off := math.Abs(d - days); off < best {
			best, week = off, j.week[k]
		}
	}
	return week
}

// shares counts words over draws, the commonest first.
func shares(words []string, weight []float64) []answer.Named {
	var out []answer.Named
	for i, w := range words {
		k := slices.IndexFunc(out, func(n answer.Named) bool { return n.Name == w })
		if k < 0 {
			k = len(out)
			out = append(out, answer.Named{Name: w})
		}
		out[k].Share += weight[i]
	}
	slices.SortStableFunc(out, func(a, b answer.Named) int {
		return cmp.Or(cmp.Compare(b.Share, a.Share), cmp.Compare(a.Name, b.Name))
	})
	return out
}

// ending is how one ride ends.
type ending struct {
	by    ride.End
	first cutoff.Place // which cutoff, where one does it
}

func (e ending) String() string {
	if e.by == ride.CutoffOpened {
		return "cutoff in the " + e.first.String()
	}
	return e.by.String()
}

func endingOf(o *ride.Outcome) ending { return ending{o.EndedBy, o.OpenedFirst} }

// ends says what ends the rides of the draws: all answers with their shares, and
// the commonest as a word for programs and in words.
func ends(list []ending, weight []float64) (all []answer.Named, end answer.End, text string) {
	names := make([]string, len(list))
	for i, e := range list {
		names[i] = string(endOf(e.by))
	}
	all = shares(names, weight)
	if len(all) == 0 {
		return nil, "", ""
	}
	first := all[0].Name
	var words []string
	var equal []float64
	for i, e := range list {
		if names[i] == first {
			words, equal = append(words, e.String()), append(equal, 1)
		}
	}
	return all, answer.End(first), shares(words, equal)[0].Name
}

func endOf(e ride.End) answer.End {
	switch e {
	case ride.CutoffOpened:
		return answer.EndCutoff
	case ride.PackEmpty:
		return answer.EndEmpty
	case ride.FuseOpened:
		return answer.EndFuse
	case ride.CannotMove:
		return answer.EndStandstill
	case ride.WantedReached:
		return answer.EndWanted
	case ride.VoltageReached:
		return answer.EndVoltage
	case ride.PatternPlayed:
		return answer.EndPattern
	case ride.CannotSupply:
		return answer.EndCannotGive
	}
	return answer.EndTooLong
}

// known returns a pointer to x, nil where x is no finite number.
func known(x float64) *float64 {
	if math.IsNaN(x) || math.IsInf(x, 0) {
		return nil
	}
	return &x
}
