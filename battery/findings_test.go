package battery_test

import (
	"slices"
	"testing"

	"example.org/packcheck/answer"
	"example.org/packcheck/battery"
	"example.org/packcheck/chemistry"
	"example.org/packcheck/internal/findingtest"
)

// made is a case that fires a finding, what it must say, and one that does not
// fire it.
type made struct {
	name    string
	code    string
	fires   []answer.Finding
	silent  []answer.Finding
	level   answer.Level
	harm    answer.Harm
	unit    string
	want    answer.Side
	change  answer.Change
	source  string // ID of the source of the limit
	because string
}

func labelled(t testing.TB, text string) []answer.Finding {
	t.Helper()
	l, err := battery.ParseLabel(text, "")
	if err != nil {
		t.Fatal(err)
	}
	return l.Findings()
}

func parallel(a, b *battery.Model, chargeA, chargeB, leadOhm float64) []answer.Finding {
	return battery.Joint{A: a, B: b, StateA: a.StateAt(chargeA, 25), StateB: b.StateAt(chargeB, 25), LeadOhm: leadOhm}.JudgeParallel()
}

func series(a, b *battery.Model, chargeA, chargeB float64) []answer.Finding {
	return battery.Joint{A: a, B: b, StateA: a.StateAt(chargeA, 25), StateB: b.StateAt(chargeB, 25)}.JudgeSeries()
}

// The rows are the table of findings of this package. Levels follow the harm:
// danger where a child or a house may be hurt, fix first where a part breaks.
func findingsMade(t testing.TB) []made {
	t.Helper()
	li, ag, gel := profile(t, "li-ion"), profile(t, "agm"), profile(t, "gel")
	tool := modelOf(t, battery.Spec{Profile: li, CellsInSeries: 5, CapacityAh: 4, MaxCurrentA: 20})
	block := modelOf(t, battery.Spec{Profile: ag, CellsInSeries: 6, CapacityAh: 7, MaxCurrentA: 20})
	hot := func(c float64) battery.Use { return battery.Use{HasTemps: true, ColdestC: 20, HottestC: c} }
	touched := func(outside, inside float64) battery.Use {
		return battery.Use{HasTemps: true, ColdestC: 20, HottestC: inside, SurfaceC: outside, Read: true}
	}
	const danger, fix, watch, fine = answer.Danger, answer.FixFirst, answer.Watch, answer.Fine
	const child, house, part, wear = answer.Child, answer.House, answer.Part, answer.Wear
	return []made{
		{
			"lithium a little over", battery.CodeCurrentLasting,
			tool.Judge(battery.Use{LastingA: 25}), tool.Judge(battery.Use{LastingA: 20.1}),
			fix, part, "A", answer.Below, answer.FitPack, answer.PartRating, "20.1 A is within the error of the ride's steps",
		},
		{
			"lithium far over", battery.CodeCurrentLasting,
			tool.Judge(battery.Use{LastingA: 31}), tool.Judge(battery.Use{LastingA: 15}),
			danger, house, "A", answer.Below, answer.FitPack, answer.PartRating, "cells that overheat burn",
		},
		{
			"lead-acid far over", battery.CodeCurrentLasting,
			block.Judge(battery.Use{LastingA: 60}), block.Judge(battery.Use{LastingA: 15}),
			fix, part, "A", answer.Below, answer.FitPack, answer.PartRating, "it wears out and goes flat; its heat is judged by its temperature",
		},
		{
			"peak", battery.CodeCurrentPeak,
			tool.Judge(battery.Use{PeakA: 1.02 * tool.BurstA()}), tool.Judge(battery.Use{PeakA: 1.009 * tool.BurstA()}),
			fix, part, "A", answer.Below, answer.LimitCurrent, answer.PartRating, "",
		},
		{
			"lead-acid in the heat", battery.CodeTooHot,
			block.Judge(hot(ag.Discharge.MaxTempC + 1)), block.Judge(hot(ag.Discharge.MaxTempC + 0.4)),
			fix, part, "degC", answer.Below, answer.LoadLess, ag.Discharge.Source, "it dries out",
		},
		{
			"lead-acid too hot to touch", battery.CodeTooHot,
			block.Judge(hot(72)), block.Judge(hot(40)),
			danger, child, "degC", answer.Below, answer.LoadLess, "astm-f963-surface", "71 degC on the surface at most",
		},
		{
			"iron phosphate above its limit", battery.CodeTooHot,
			model(t, "lifepo4", 4, 6).Judge(hot(65)), model(t, "lifepo4", 4, 6).Judge(hot(60)),
			danger, house, "degC", answer.Below, answer.LoadLess, profile(t, "lifepo4").Discharge.Source, "lithium that overheats burns",
		},
		{
			"lithium too hot to touch", battery.CodeTooHot,
			tool.Judge(hot(85)), tool.Judge(hot(71)),
			danger, child, "degC", answer.Below, answer.LoadLess, "astm-f963-surface", "",
		},
		{
			"lithium of 60 C outside, measured", battery.CodeTooHot,
			tool.Judge(touched(60, 30)), tool.Judge(touched(54.4, 30)),
			fix, child, "degC", answer.Below, answer.LookUp, "astm-f963-touched", "cells of 60 C inside would pass: surfaces are cooler",
		},
		{
			"a block of 75 C outside, measured, that was computed cool", battery.CodeTooHot,
			block.Judge(touched(75, 30)), block.Judge(touched(40, 30)),
			danger, child, "degC", answer.Below, answer.LookUp, "astm-f963-surface", "",
		},
		{
			"lithium of 75 C outside, measured", battery.CodeTooHot,
			tool.Judge(touched(75, 30)), tool.Judge(touched(54.4, 30)),
			danger, house, "degC", answer.Below, answer.LookUp, "astm-f963-surface", "it may burn, not only hurt a hand",
		},
		{
			"an old block of 60 C outside", battery.CodeOldHot,
			battery.JudgeOld(60), battery.JudgeOld(54.4),
			fix, house, "degC", answer.Below, answer.LookUp, "astm-f963-touched", "what warmed it warms the next",
		},
		{
			"lithium of -25 C outside, measured, in a mild room", battery.CodeTooCold,
			tool.Judge(touched(-25, 20)), tool.Judge(touched(-15, 20)),
			fix, part, "degC", answer.Above, answer.WarmUp, tool.Profile().Discharge.Source, "it was no warmer at the start",
		},
		{
			"a block that was cool after a short drive and is computed hot", battery.CodeTooHot,
			block.Judge(touched(40, 75)), block.Judge(touched(40, 40)),
			danger, child, "degC", answer.Below, answer.LoadLess, "astm-f963-surface", "how long was driven is not told",
		},
		{
			"frozen", battery.CodeTooCold,
			tool.Judge(battery.Use{HasTemps: true, ColdestC: -25, HottestC: 10}), tool.Judge(battery.Use{HasTemps: true, ColdestC: -20, HottestC: 10}),
			fix, part, "degC", answer.Above, answer.WarmUp, li.Discharge.Source, "",
		},
		{
			"max volts", battery.CodeLabelMaxVolts,
			labelled(t, "20 V max 5 Ah"), labelled(t, "12 V 7 Ah"),
			fine, wear, "V", answer.Below, answer.ChangeNone, "label-words", "",
		},
		{
			"two readings", battery.CodeLabelUnclear,
			labelled(t, "18 V 4.0Ah"), labelled(t, "20 V max 5 Ah"),
			watch, wear, "", answer.Below, answer.LookUp, "label-words", "",
		},
		{
			"lead-acid beside lithium", battery.CodeParallelMixedChemistry,
			parallel(tool, block, 1, 1, 0), parallel(tool, tool, 1, 1, 0),
			danger, house, "V", answer.Below, answer.ChangeNone, "do-not-mix-packs", "",
		},
		{
			"gel beside AGM", battery.CodeParallelMixedChemistry,
			parallel(modelOf(t, battery.Spec{Profile: gel, CellsInSeries: 6, CapacityAh: 7}), block, 1, 1, 0), parallel(block, block, 1, 1, 0),
			fix, part, "V", answer.Below, answer.ChangeNone, "do-not-mix-packs", "both are lead-acid",
		},
		{
			"12 V beside 6 V", battery.CodeParallelUnlikeVolts,
			parallel(block, model(t, "agm", 3, 4), 1, 1, 0), parallel(block, model(t, "agm", 5, 7), 1, 1, 0),
			danger, house, "V", answer.Below, answer.FitPack, "do-not-mix-packs", "empty, the one has more volts than the other full",
		},
		{
			"an empty tool pack on a full one", battery.CodeParallelEqualising,
			parallel(tool, tool, 0.3, 1, 0), parallel(tool, tool, 1, 1, 0),
			danger, house, "A", answer.Below, answer.ChangeNone, li.Charge.Source, "lithium is charged too fast",
		},
		{
			"an empty block on a full one, by a long lead", battery.CodeParallelEqualising,
			parallel(block, block, 0.1, 1, 0.2), parallel(block, block, 0.1, 1, 10),
			fix, part, "A", answer.Below, answer.ChangeNone, ag.Charge.Source, "under three times what it may be charged with",
		},
		{
			"the same by a short one", battery.CodeParallelEqualising,
			parallel(block, block, 0.1, 1, 0), parallel(block, block, 0.97, 1, 0.4),
			danger, house, "A", answer.Below, answer.ChangeNone, ag.Charge.Source, "far above it, through whatever wire there is",
		},
		{
			"a large and a small block", battery.CodeUnlikePacks,
			battery.Joint{A: block, B: model(t, "agm", 6, 12), StateA: block.StateAt(1, 20), StateB: model(t, "agm", 6, 12).StateAt(1, 20)}.JudgeParallel(),
			battery.Joint{A: block, B: block, StateA: block.StateAt(1, 20), StateB: block.StateAt(1, 20)}.JudgeParallel(),
			fix, part, "x", answer.Below, answer.FitPack, "astm-f963-mixing", "",
		},
		{
			"a block beside lithium", battery.CodeUnlikePacks,
			battery.Joint{A: block, B: model(t, "lifepo4", 4, 7), StateA: block.StateAt(1, 20), StateB: model(t, "lifepo4", 4, 7).StateAt(1, 20)}.JudgeSeries(),
			battery.Joint{A: block, B: block, StateA: block.StateAt(1, 20), StateB: block.StateAt(1, 20)}.JudgeSeries(),
			danger, house, "x", answer.Below, answer.FitPack, "astm-f963-mixing", "",
		},
		{
			"unequal blocks in series", battery.CodeSeriesUnequalCharge,
			series(block, block, 1, 0.5), series(block, block, 1, 0.96),
			fix, part, "share", answer.Below, answer.ChangeNone, "string-of-the-smallest", "a reversed lead-acid cell is ruined",
		},
		{
			"unequal tool packs in series", battery.CodeSeriesUnequalCharge,
			series(tool, tool, 1, 0.5), series(tool, tool, 1, 1),
			danger, house, "share", answer.Below, answer.ChangeNone, "string-of-the-smallest", "a reversed lithium cell shorts inside",
		},
		{
			"electronics in series", battery.CodeSeriesElectronics,
			series(tool, tool, 1, 1), series(block, block, 1, 1),
			fix, part, "V", answer.Below, answer.FitPack, "series-electronics", "",
		},
	}
}

func TestFindingsSayWhomTheyHurtAndWhatToChange(t *testing.T) {
	sources := slices.Concat(battery.Sources(), chemistry.Builtin().Sources())
	fired := map[string]bool{}
	for _, row := range findingsMade(t) {
		i := slices.IndexFunc(row.fires, func(f answer.Finding) bool { return f.Code == row.code })
		if i < 0 {
			t.Errorf("%s: %s is not among %+v", row.name, row.code, row.fires)
			continue
		}
		fired[row.code] = true
		f := row.fires[i]
		if f.Level != row.level || f.Harm != row.harm || f.Unit != row.unit || f.Want != row.want || f.Change != row.change || f.Source != row.source {
			t.Errorf("%s: %+v, want %+v", row.name, f, row)
		}
		if f.Topic != answer.TopicPack || f.Item != answer.Battery {
			t.Errorf("%s: topic %q, item %q", row.name, f.Topic, f.Item)
		}
		if past := f.Found > f.Limit; f.Reads == answer.AsNumber && f.Unit != "" && past != (f.Want == answer.Below) {
			t.Errorf("%s: %g is on the right side of %g", row.name, f.Found, f.Limit)
		}
		if f.Change == answer.LimitCurrent && f.LimitA != f.Limit {
			t.Errorf("%s: a limit of %g A would do, not %g", row.name, f.Limit, f.LimitA)
		}
		findingtest.Cited(t, f, sources)
		if slices.ContainsFunc(row.silent, func(f answer.Finding) bool { return f.Code == row.code && f.Harm >= row.harm }) {
			t.Errorf("%s: %s also fires, as badly, where it must not: %+v", row.name, row.code, row.silent)
		}
		for _, f := range slices.Concat(row.fires, row.silent) {
			findingtest.Whole(t, f)
		}
	}
	findingtest.AllFired(t, fired)
}
