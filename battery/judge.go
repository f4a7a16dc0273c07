package battery

import (
	"slices"

	"example.org/packcheck/answer"
	"example.org/packcheck/chemistry"
)

// Codes of the findings on a pack in use.
const (
	CodeCurrentLasting = "pack-current-lasting" // lasting current above what it may give
	CodeCurrentPeak    = "pack-current-peak"    // peak current above what it may give
	CodeTooHot         = "pack-too-hot"         // cells hotter than they may be, or than a child may touch
	CodeTooCold        = "pack-too-cold"        // cells colder than they may be discharged
	CodeOldHot         = "old-battery-hot"      // that which was replaced got too hot
)

// Limits of Judge that are not the chemistry's.
const (
	// gravelyOver is the current, over the greatest lasting one, from which
	// cells that burn or vent when they overheat count as dangerous. Own choice.
	gravelyOver = 1.5
	// surfaceMostC is the hottest that the surface of a battery in a toy may
	// get (source "astm-f963-surface"); a pack has one temperature here.
	surfaceMostC = 71.0
	// TouchedMostC is the same for a battery that can be touched (source
	// "astm-f963-touched"). It is held against what was measured alone: what is
	// computed is the heat of the cells inside.
	TouchedMostC = 54.0
)

// Margins of computed figures: what lies within them is at its limit, not past
// it.
const (
	currentHair = 0.01 // of the limit: twice what halving every step of a ride moves it
	heatHairK   = 0.5  // half the degree to which temperatures are told
)

// Use is how a pack is going to be used, for judging it. Zero fields are not
// judged; one that is no number is told to be so, to be watched. What becomes of its weakest cell is package cutoff's to judge: it
// knows when the pack is disconnected.
type Use struct {
	PeakA    float64 // greatest current for some seconds, A
	LastingA float64 // current that lasts, A
	ColdestC float64 // lowest temperature of the cells, deg C
	HottestC float64 // highest temperature of the cells, deg C
	HasTemps bool    // ColdestC and HottestC are given
	SurfaceC float64 // of the pack after a drive, measured, deg C
	Read     bool    // SurfaceC is given
}

// Judge says what is wrong with using the pack so.
func (m *Model) Judge(u Use) []answer.Finding {
	var out []answer.Finding
	d := m.spec.Profile.Discharge
	if most := m.ContinuousA(); !isNumber(u.LastingA) || u.LastingA > most*(1+currentHair) {
		f := answer.Finding{
			Code: CodeCurrentLasting, Level: answer.FixFirst, Harm: answer.Part, Gravity: 1,
			Title: "More lasting current is asked of the pack than it may give.",
			Found: u.LastingA, Limit: most, Unit: "A", Source: d.Source, LimitKey: answer.KeyPackMaxCurrent,
			Advice: "Use a pack made for more current, or ask for less: easier ground, less weight, a smaller load.",
			Change: answer.FitPack, Decides: m.decidesCurrent(), // a limit as low would let it stand
		}
		if m.spec.MaxCurrentA > 0 {
			f.Source = answer.PartRating
		}
		if u.LastingA > gravelyOver*most && m.spec.Profile.Family != chemistry.LeadAcid {
			f.Level, f.Harm = answer.Danger, answer.House
		}
		if !isNumber(u.LastingA) {
			f = f.Unread("Whether the pack may give its lasting current is not known.")
		}
		out = append(out, onPack(f))
	}
	if most := m.BurstA(); !isNumber(u.PeakA) || u.PeakA > most*(1+currentHair) {
		f := answer.Finding{
			Code: CodeCurrentPeak, Level: answer.FixFirst, Harm: answer.Part,
			Title: "The pack is asked for a greater peak than it may give.",
			Found: u.PeakA, Limit: most, Unit: "A", Source: d.Source, LimitKey: answer.KeyPackMaxCurrent,
			Advice: "Use a controller with a current limit or a softer start, or a pack made for more current.",
			Change: answer.LimitCurrent, LimitA: most, Decides: m.decidesCurrent(),
		}
		if m.spec.MaxCurrentA > 0 {
			f.Source = answer.PartRating
		}
		if !isNumber(u.PeakA) {
			f = f.Unread("Whether the pack may give its peak current is not known.")
		}
		out = append(out, onPack(f))
	}
	if u.HasTemps {
		out = append(out, m.judgeHeat(u)...)
		out = append(out, m.judgeCold(u)...)
	}
	return out
}

// onPack says that a finding concerns the pack.
func onPack(f answer.Finding) answer.Finding {
	f.Topic, f.Item = answer.TopicPack, answer.Battery
	return f
}

// decidesCurrent are the keys that a limit on the current comes from.
func (m *Model) decidesCurrent() []string {
	if m.spec.MaxCurrentA > 0 {
		return []string{answer.KeyPackMaxCurrent}
	}
	return []string{answer.KeyPackMaxCurrent, answer.KeyPackCapacity, answer.KeyPackChemistry}
}

// JudgeOld judges the surface of the battery that was replaced, as it was read after a
// drive, in deg C: what warmed that one warms the next.
func JudgeOld(surfaceC float64) []answer.Finding {
	if surfaceC <= TouchedMostC+heatHairK {
		return nil
	}
	f := onPack(answer.Finding{
		Code: CodeOldHot, Level: answer.FixFirst, Harm: answer.House, Unit: "degC", Found: surfaceC, Limit: TouchedMostC, Source: srcTouched,
		Title:  "The battery that it came with was read too hot to touch after a drive; what warmed it warms the next one too.",
		Advice: "Find out why before another battery goes in: a loose joint beside it, a brake that rubs, too much load. If it was the new battery that was read, put a reading of the old one under [original.measured]: then this one counts for the new.",
		Change: answer.LookUp, Decides: []string{answer.KeyMeasuredPackTemperature},
	})
	if !isNumber(surfaceC) {
		f = f.Unread("How hot the battery got that it came with is not known.")
	}
	return []answer.Finding{f}
}

// judgeCold looks at the coldest moment.
func (m *Model) judgeCold(u Use) []answer.Finding {
	d := m.spec.Profile.Discharge
	f := onPack(answer.Finding{
		Code: CodeTooCold, Level: answer.FixFirst, Harm: answer.Part,
		Title: "The cells are colder than they may be discharged.",
		Found: u.ColdestC, Limit: d.MinTempC, Unit: "degC", Want: answer.Above, Source: d.Source,
		Advice: "Warm the pack up indoors before the ride.", Change: answer.WarmUp,
		Decides: []string{answer.KeyPackChemistry, answer.KeyPackTemperature, answer.KeyOutingAir},
	})
	if u.Read && u.SurfaceC < u.ColdestC { // it was no warmer at the start
		f.Found, f.Decides = u.SurfaceC, []string{answer.KeyPackChemistry, answer.KeyMeasuredPackTemperature}
	}
	if f.Found >= d.MinTempC {
		return nil
	}
	if !isNumber(f.Found) {
		f = f.Unread("How cold the cells get is not known.")
	}
	return []answer.Finding{f}
}

// judgeHeat looks at the hottest moment: lithium that overheats burns, other
// cells only age, but none may be too hot to touch.
func (m *Model) judgeHeat(u Use) []answer.Finding {
	d := m.spec.Profile.Discharge
	f := onPack(answer.Finding{
		Code: CodeTooHot, Level: answer.FixFirst, Harm: answer.Part, Unit: "degC", Found: u.HottestC, Limit: d.MaxTempC, Source: d.Source,
		Title:  "The cells get hotter than they may be discharged.",
		Advice: "Take less current or drive shorter, and let the pack cool.",
		Change: answer.LoadLess, Habit: answer.HabitPauses, Decides: []string{answer.KeyPackChemistry},
	})
	read := u.Read && !(u.SurfaceC < u.HottestC) // after a short drive it tells nothing of a long one
	if read {
		u.HottestC, f.Found, f.Decides = u.SurfaceC, u.SurfaceC, []string{answer.KeyMeasuredPackTemperature}
	}
	switch {
	case !isNumber(u.HottestC):
		return []answer.Finding{f.Unread("How hot the cells get is not known.")}
	case u.HottestC > surfaceMostC+heatHairK:
		f.Level, f.Harm, f.Source = answer.Danger, answer.Child, srcSurface
		if !read {
			f.Decides = nil
		} else if m.spec.Profile.Family == chemistry.Lithium { // more than a burnt hand
			f.Harm = answer.House
		}
		f.Limit = surfaceMostC
		f.Title = "The pack gets hotter than a toy's battery may."
	case u.HottestC > d.MaxTempC+heatHairK:
		if m.spec.Profile.Family == chemistry.Lithium {
			f.Level, f.Harm = answer.Danger, answer.House
		}
	case u.Read && u.SurfaceC > TouchedMostC+heatHairK:
		f.Found, f.Decides = u.SurfaceC, []string{answer.KeyMeasuredPackTemperature}
		f.Harm, f.Source, f.Limit = answer.Child, srcTouched, TouchedMostC
		f.Title = "The battery gets too hot for a child to touch, and too hot to charge."
	default:
		return nil
	}
	if slices.Contains(f.Decides, answer.KeyMeasuredPackTemperature) {
		f.Change, f.Today = answer.LookUp, f.Level == answer.Danger
		f.Advice = "Let it cool before it is charged. Find out why it gets so hot: a weak cell, a loose joint or too much load."
		if m.spec.Profile.Family == chemistry.Lithium {
			f.Advice = "Take it off and let it cool outside. If it swells, smells or hisses, keep away and call for help. Find out why before it is charged or used: a weak cell, a loose joint or too much load."
		}
	}
	return []answer.Finding{f}
}
