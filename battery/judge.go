package battery

import "example.org/packcheck/answer"

// Use is how a pack is going to be used, for judging it. Zero fields are not
// judged.
type Use struct {
	PeakA    float64 // greatest current for some seconds, A
	LastingA float64 // current that lasts, A
	ColdestC float64 // lowest temperature of the cells, deg C
	HottestC float64 // highest temperature of the cells, deg C
	HasTemps bool    // ColdestC and HottestC are given
	CutoffV  float64 // whole pack, under load
}

// Judge says what is wrong with using the pack so.
func (m *Model) Judge(u Use) []answer.Finding {
	var out []answer.Finding
	d := m.spec.Profile.Discharge
	if u.LastingA > m.ContinuousA() {
		level := answer.FixFirst
		if u.LastingA > 1.5*m.ContinuousA() {
			level = answer.Danger
		}
		out = append(out, answer.Finding{
			Code: "pack-current-lasting", Level: level,
			Title: "The pack is asked for more lasting current than it may give.",
			Found: u.LastingA, Limit: m.ContinuousA(), Unit: "A", Source: d.Source,
			Advice: "Use a pack with more strings in parallel or made for more current, or limit the current.",
		})
	}
	if u.PeakA > m.BurstA() {
		out = append(out, answer.Finding{
			Code: "pack-current-peak", Level: answer.FixFirst,
			Title: "The pack is asked for a greater peak than it may give.",
			Found: u.PeakA, Limit: m.BurstA(), Unit: "A", Source: d.Source,
			Advice: "Use a controller with a current limit or a softer start, or a pack made for more current.",
		})
	}
	if u.HasTemps && u.HottestC > d.MaxTempC {
		out = append(out, answer.Finding{
			Code: "pack-too-hot", Level: answer.Danger,
			Title: "The cells get hotter than they may be discharged.",
			Found: u.HottestC, Limit: d.MaxTempC, Unit: "degC", Source: d.Source,
			Advice: "Take less current or drive shorter, and let the pack cool.",
		})
	}
	if u.HasTemps && u.ColdestC < d.MinTempC {
		out = append(out, answer.Finding{
			Code: "pack-too-cold", Level: answer.FixFirst,
			Title: "The cells are colder than they may be discharged.",
			Found: u.ColdestC, Limit: d.MinTempC, Unit: "degC", Source: d.Source,
			Advice: "Warm the pack up indoors before the ride.",
		})
	}
	if u.CutoffV > 0 && m.spec.CellsInSeries > 1 {
		out = append(out, m.judgeWeakest(u)...)
	}
	return out
}

// judgeWeakest looks at the weakest cell at the moment the cutoff opens.
func (m *Model) judgeWeakest(u Use) []answer.Finding {
	current := u.LastingA
	if current <= 0 {
		current = m.spec.CapacityAh / m.spec.RateHours
	}
	run := m.Discharge(m.StateAt(1, 25), current, u.CutoffV, 25)
	weakest := m.WeakestCellV(&run.End, current)
	harm := m.spec.Profile.HarmV
	out := answer.Finding{
		Found: weakest, Limit: harm, Unit: "V", Source: m.spec.Profile.LadderSource,
		Advice: "Cut off at a higher voltage, and use a pack whose electronics watch every cell.",
	}
	switch {
	case weakest < 0:
		out.Code, out.Level = "weakest-cell-reversed", answer.Danger
		out.Title = "When the pack cuts off the weakest cell is already reversed, although the pack voltage looks right."
	case weakest < min(harm, m.spec.Profile.End.At(current/m.spec.CapacityAh)):
		out.Code, out.Level = "weakest-cell-below-harm", answer.FixFirst
		out.Title = "When the pack cuts off the weakest cell is already below its harm limit, although the pack voltage looks right."
	default:
		return nil
	}
	return []answer.Finding{out}
}
