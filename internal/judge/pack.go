package judge

import (
	"fmt"
	"slices"

	"example.org/packcheck/answer"
	"example.org/packcheck/battery"
	"example.org/packcheck/charge"
	"example.org/packcheck/internal/quantity"
)

// Codes of findings on the pack.
const (
	CodePackWorn      = "pack-worn"      // holds far less than when new
	CodeCellsAssumed  = "cells-assumed"  // nobody stated the chemistry
	CodeBareCells     = "bare-cells"     // lithium without a shell
	CodeAcidSpills    = "acid-spills"    // it is not sealed, and the vehicle may tip over
	CodeBlocksUnclear = "blocks-unclear" // the label does not say how its blocks are joined
)

// What is left of a pack when it is usually given up, and the share below which
// its cells cannot be trusted at all. The second is an own choice.
const wornHealth, spentHealth = 0.8, 0.5

// pack judges the battery in use, its age, and what is known of its cells.
func (v *view) pack() {
	v.add(v.Now.Pack.Judge(v.use())...)
	v.joined()
	v.worn()
	v.guessedCells()
	v.unclearBlocks()
	v.acid()
	v.bare()
}

// joined judges two packs used as one.
func (v *view) joined() {
	how, one := v.parts.Pack.Joined, v.Now.One
	if how == "" {
		return
	}
	j := battery.Joint{A: one, B: one}
	if spec, unlike := v.parts.SecondPackSpec(v.Now.Pick); unlike {
		other, err := battery.New(spec)
		if err != nil {
			return
		}
		j.B = other
	}
	leftA, leftB := v.Now.StartCharge, v.Now.StartCharge
	m, raw := v.parts.Measured, v.parts.Setup.Measured // the other one is never an original's
	first, second, read := v.parts.ChargesAtRest(v.Now.Pick)
	both := read && m != nil && m.RestVoltage.Given
	if read {
		leftA, leftB = first.Likely, second.Likely
		resting := func(m *battery.Model, volts float64) []answer.Finding {
			return charge.JudgeResting(m.Spec().Profile, m.Spec().CellsInSeries, charge.Resting{V: max(volts, leastRestV), Hours: v.hoursRested(), Name: atRest("The", volts)})
		}
		low := resting(j.B, raw.SecondRest.Likely)
		if both {
			low = append(low, resting(one, v.parts.FirstRest().Likely)...)
		}
		j.Unfit = len(low) > 0
		v.add(low...)
	}
	j.StateA, j.StateB = one.StateAt(leftA, v.Now.PackC), j.B.StateAt(leftB, v.Now.PackC)
	if how == "series" {
		j.Watched = v.parts.Pack.WatchesCells && lithium(v.parts.Pack.Profile)
		v.add(asRead(j.JudgeSeries(), both)...)
		return
	}
	if both {
		j.ReadAV, j.ReadBV = m.RestVoltage.Likely, m.SecondRest.Likely
	}
	if !read { // nobody has two packs at the very same charge, and either may be the emptier
		left := max(0, v.Now.StartCharge-chargersLeave)
		if mostChargedA(one) < mostChargedA(j.B) {
			j.StateA = one.StateAt(left, v.Now.PackC)
		} else {
			j.StateB = j.B.StateAt(left, v.Now.PackC)
		}
	}
	for _, f := range asRead(j.JudgeParallel(), both) {
		if !read && f.Code == battery.CodeParallelEqualising { // what kind they are is known without
			f.Decides = append(f.Decides, answer.KeySecondRestVoltage)
		}
		v.add(f)
	}
}

// atRest names one of two batteries by the volts that were read of it, behind an article.
func atRest(article string, volts float64) string {
	return article + " battery at " + round(volts, 3) + " V"
}

// mostChargedA is with how many amps a pack may be charged.
func mostChargedA(m *battery.Model) float64 { return m.Profile().Charge.MaxC * m.RatedAh() }

// asRead says of findings on two packs that both were measured: what they differ by
// is no guess then.
func asRead(fs []answer.Finding, both bool) []answer.Finding {
	if !both {
		return fs
	}
	for i := range fs {
		f := &fs[i]
		if k := slices.Index(f.Decides, answer.KeyPackCharge); k >= 0 {
			f.Decides = slices.Delete(f.Decides, k, k+1)
		}
	}
	return fs
}

// chargersLeave is what two chargers leave between two packs. Own choice.
const chargersLeave = 0.1

// worn judges a pack that holds far less than when it was new.
func (v *view) worn() {
	health := v.Now.Pack.Spec().Health
	if health >= wornHealth-1e-9 {
		return
	}
	left := 100 * health
	f := answer.Finding{
		Code: CodePackWorn, Level: answer.Watch, Harm: answer.Wear, Topic: answer.TopicPack, Item: answer.Battery,
		Unit: "share", Found: health, Limit: wornHealth, Want: answer.Above, Source: srcWear,
		Title:  fmt.Sprintf("The pack holds %.0f %% of what it held when new: it is past its usual life.", left),
		Advice: "Replace it before long; watch for heat, swelling and a ride that ends suddenly.",
		Change: answer.FitPack, Decides: []string{v.parts.Pack.Health.Key},
	}
	if m := v.parts.Measured; m != nil && m.TellsWear() { // then it is why the ride is short, or the volts fall
		f.Harm, f.Gravity = answer.Part, 2
		f.Advice = "A new one of its kind lasts as the vehicle did when new: replace it, and watch for heat, swelling and a ride that ends suddenly."
	}
	// Of a vehicle as it was made no guess at its wear is more than to be watched: one level
	// has one middle, and the few that hold most do not speak for all.
	if health < spentHealth && !(v.parts.AsMade && v.parts.Pack.Health.Assumed) {
		f.Level, f.Harm, f.Limit = answer.FixFirst, answer.Part, spentHealth
		f.Title = fmt.Sprintf("The pack holds %.0f %% of what it held when new: some of its cells are as good as dead.", left)
		f.Advice = "Replace it and hand it in where batteries are collected."
	}
	v.add(f)
}

// guessedCells warns of a chemistry that nobody stated: charger, cutoff and
// every limit hang on it.
func (v *view) guessedCells() {
	p := &v.parts.Pack
	if !p.Chemistry.Assumed {
		return
	}
	f := answer.Finding{
		Code: CodeCellsAssumed, Level: answer.Watch, Harm: answer.House, Topic: answer.TopicPack, Item: answer.Battery, Source: srcCommon,
		Title:  fmt.Sprintf("Nothing says what cells the pack has; they are taken for %s.", p.Profile.Title),
		Advice: "Read it off the pack, or ask its maker, and enter it as chemistry: charger, cutoff and fuse hang on it.",
		Change: answer.LookUp, Decides: []string{p.Chemistry.Key},
	}
	if p.SeveralMeanings {
		f.Level, f.Gravity = answer.FixFirst, 2 // what is fixed of cutoff, charger and fuse is for its kind
		f.Title = fmt.Sprintf("The label can mean more than one kind of cell; %s is only the likeliest.", p.Profile.Title)
	}
	v.add(f)
}

// unclearBlocks warns of blocks that may be wired either way: the volts of all
// that is judged here hang on it.
func (v *view) unclearBlocks() {
	if !v.parts.Pack.BlocksUnclear {
		return
	}
	v.add(answer.Finding{
		Code: CodeBlocksUnclear, Level: answer.FixFirst, Harm: answer.House, Topic: answer.TopicPack, Item: answer.Battery,
		Source: srcCommon, Unit: "V", Found: v.Now.Pack.NominalV(), Reads: answer.AsTold,
		Title:  "The label names several blocks but not how they are joined; they are taken to be in series.",
		Advice: "Look at the links between them, and write the volts of the whole or \"in parallel\" into the label.",
		Change: answer.LookUp,
	})
}

// acid warns of a battery that is not sealed, in a vehicle that a child may tip over.
func (v *view) acid() {
	p := &v.parts.Pack
	if !p.LiquidAcid && !p.Starter || v.parts.Vehicle == nil {
		return
	}
	f := answer.Finding{
		Code: CodeAcidSpills, Level: answer.Danger, Harm: answer.Child, Topic: answer.TopicPack, Item: answer.Battery,
		Source: srcSpills, Reads: answer.AsTold, Added: true,
		Title:  "Its acid is liquid and runs out when the vehicle tips over: it burns eyes and skin.",
		Advice: "Use a sealed battery (AGM or gel), which lets nothing out when it tips.",
		Change: answer.FitPack, Decides: []string{answer.KeyPackLabel},
	}
	if p.Starter { // what it says does not tell
		f.Level = answer.FixFirst
		f.Title = "A battery that starts engines mostly has liquid acid, which runs out when the vehicle tips over."
		f.Advice = "Look for AGM or gel on it. Without that use a sealed battery, which lets nothing out when it tips."
	}
	v.add(f)
}

// bare warns of lithium cells that nothing but foil is around, in a vehicle that bumps.
func (v *view) bare() {
	if v.parts.Pack.ClosedShell || !lithium(v.parts.Pack.Profile) || v.parts.Vehicle == nil {
		return
	}
	v.add(answer.Finding{
		Code: CodeBareCells, Level: answer.FixFirst, Harm: answer.House, Topic: answer.TopicPack, Item: answer.Battery,
		Source: srcCommon, Reads: answer.AsTold, Added: true,
		Title:   "Bare lithium cells burn when something pierces, bends or chafes them: nothing is around them.",
		Advice:  "Use a pack with a closed shell. Who builds one puts the cells into a stiff closed box, with nothing sharp inside and the wires held.",
		Decides: []string{answer.KeyPackHousing},
	})
}

// round is for figures that are printed in sentences.
func round(x float64, digits int) string { return quantity.Digits(x, digits) }
