package wiring

import (
	"fmt"
	"math"
	"strings"

	"example.org/packcheck/answer"
	"example.org/packcheck/tables"
)

// judge collects the findings on wire, joints, switch and fuse.
func (c Case) judge(r Result) []answer.Finding {
	j := &judge{Case: c, Result: r}
	j.wire()
	j.joints()
	j.drop()
	j.pedal()
	if c.Path.fuse == nil {
		j.noFuse()
		return j.found
	}
	j.fuseSize()
	j.fuseLoad()
	j.fuseBlocked()
	j.fusePlace()
	j.fuseVoltage()
	j.fuseHolder()
	j.fuseHeat()
	j.fuseLife()
	j.breaker()
	j.short()
	return j.found
}

// judge is a case with its numbers while findings are being made.
type judge struct {
	Case
	Result
	found []answer.Finding
}

func (j *judge) add(f answer.Finding) { j.found = append(j.found, f) }

// fineIf is Fine for a limit that was read, Watch for one that is remembered
// or estimated: nothing is fine on a guess.
func (j *judge) fineIf(source string) answer.Level {
	if j.Tables.Firm(source) {
		return answer.Fine
	}
	return answer.Watch
}

// wire judges the running current against the ampacity of every run, and
// wires too thin to stand alone.
func (j *judge) wire() {
	least := j.Tables.Figure(tables.SmallestWireOutside)
	for _, run := range j.Path.runs {
		carries := run.CarriesA(j.AmbientC)
		f := answer.Finding{
			Code: "wire-carries", Level: j.fineIf(run.Ampacity.Source),
			Title: "The running current is within what the " + run.Name + " can take.",
			Found: j.Demand.RunningA, Limit: carries, Unit: "A", Source: run.Ampacity.Source,
		}
		if f.Level != answer.Fine {
			f.Advice = "Look the wire up in its maker's sheet: the limit used here is from memory."
		}
		if j.Demand.RunningA > carries {
			f.Code, f.Level = "wire-overloaded", answer.FixFirst
			f.Title = "The running current is too much for the " + run.Name + "."
			f.Advice = "Fit thicker wire, or limit the current in the controller."
		}
		j.add(f)
		if run.Wire.AreaMM2 < least.Likely*thinnestShare {
			j.add(answer.Finding{
				Code: "wire-thin", Level: answer.Watch,
				Title: "The " + run.Name + " is thin enough to break from handling.",
				Found: run.Wire.AreaMM2, Limit: least.Likely, Unit: "mm2", Source: least.Source,
				Advice: "Keep the " + run.Name + " inside a sheath, or fit thicker wire.",
			})
		}
	}
}

// thinnestShare lets a wire pass as 1 mm2 that misses it by rounding.
const thinnestShare = 0.99

// joints judges heat and load of every joint and switch.
func (j *judge) joints() {
	watch, hot := j.Tables.Figure(tables.JointWatch), j.Tables.Figure(tables.JointHot)
	for _, c := range j.Path.contacts {
		if c.Kind != Joint && c.Kind != Switch {
			continue
		}
		if c.SteadyA > 0 && j.Demand.RunningA > c.SteadyA {
			j.add(answer.Finding{
				Code: "joint-overloaded", Level: answer.FixFirst,
				Title: "The running current is too much for the " + c.Name + ".",
				Found: j.Demand.RunningA, Limit: c.SteadyA, Unit: "A", Source: c.Source,
				Advice: "Fit a connector or switch made for this current, or limit the current in the controller.",
			})
		}
		renew := "Renew the " + c.Name + ": new contacts have a tenth of the resistance of aged ones."
		if c.Kind == Switch {
			renew = "Renew the " + c.Name + ", or let a controller carry the current."
		}
		heat := j.Demand.RunningA * j.Demand.RunningA * c.Ohm
		switch {
		case heat >= hot.Likely:
			j.add(answer.Finding{
				Code: "joint-hot", Level: answer.FixFirst, Title: "Too much heat builds up in the " + c.Name + ".",
				Found: heat, Limit: hot.Likely, Unit: "W", Source: hot.Source,
				Advice: renew,
			})
		case heat >= watch.Likely:
			j.add(answer.Finding{
				Code: "joint-warm", Level: answer.Watch, Title: "Some heat builds up in the " + c.Name + ".",
				Found: heat, Limit: watch.Likely, Unit: "W", Source: watch.Source,
				Advice: "Feel the " + c.Name + " after ten minutes of use; renew what is too warm to hold.",
			})
		}
	}
}

// drop judges the share of the voltage that the path takes.
func (j *judge) drop() {
	limit := j.Tables.Figure(tables.DropOrdinary)
	if j.Total.DropShare > limit.Likely {
		j.add(answer.Finding{
			Code: "drop-large", Level: answer.Watch,
			Title: "Much of the voltage is lost on the way to the motors.",
			Found: j.Total.DropShare, Limit: limit.Likely, Unit: "x", Source: limit.Source,
			Advice: "Shorten or thicken the wire, and renew old joints.",
		})
	}
}

// weldRatio is supply over design voltage in the one official case of pedal
// contacts that welded, 18 V on a switch that had been sound at 12 V.
const weldRatio = 18.0 / 12

// pedal warns of a switch under more voltage than it was made for.
func (j *judge) pedal() {
	supply := j.Pack.NominalV
	if supply == 0 {
		supply = j.Pack.FullV
	}
	caution, err := j.Tables.Caution("welded-pedal")
	if err != nil || j.DesignV == 0 || supply <= j.DesignV*1.1 {
		return
	}
	for _, c := range j.Path.contacts {
		if c.Kind != Switch {
			continue
		}
		f := answer.Finding{
			Code: "pedal-may-weld", Level: answer.Watch,
			Title: "The " + c.Name + " gets more voltage than it was made for.",
			Found: supply, Limit: j.DesignV, Unit: "V", Source: caution.Source,
			Advice: "Let a controller carry the current and use the switch only as a signal.",
		}
		if supply >= weldRatio*j.DesignV*0.99 {
			f.Level = answer.Danger
			f.Title = "The " + c.Name + " may weld and the vehicle does not stop: the surge of a start can melt its contacts together."
		}
		j.add(f)
	}
}

// noFuse is the case without any fuse.
func (j *judge) noFuse() {
	rule := j.Tables.Figure(tables.FuseShareOfAmpacity)
	if j.FuseUnknown {
		j.add(answer.Finding{
			Code: "fuse-unknown", Level: answer.FixFirst,
			Title: "Nothing is known of a fuse: without one a short circuit makes the wire glow.",
			Found: j.Far.CurrentA, Limit: j.Far.CarriedA, Unit: "A", Source: rule.Source,
			Advice: "Look for a fuse by the pack and read its kind and rating. If there is none, or another than this: " + lowerFirst(j.Band.Advice()),
		})
		return
	}
	j.add(answer.Finding{
		Code: "no-fuse", Level: answer.Danger,
		Title: "There is no fuse: a short circuit makes the wire glow.",
		Found: j.Far.CurrentA, Limit: j.Far.CarriedA, Unit: "A", Source: rule.Source,
		Advice: "Put a fuse in before anything else. " + j.Band.Advice(),
	})
}

// short judges the short circuit that leaves the wire the least margin, and
// the largest current against what the fuse may interrupt.
func (j *judge) short() {
	w := j.Worst
	insulation := j.Path.Weakest(j.AmbientC).Insulation.Source
	f := answer.Finding{
		Code: "short-cleared", Level: j.fineIf(j.Path.fuse.spec.Form.GatesSource),
		Title: "In a short circuit the fuse opens before the wire is harmed.",
		Found: finite(w.ClearS), Limit: finite(w.LimitS), Unit: "s", Source: insulation,
	}
	if f.Level != answer.Fine {
		f.Advice = "Look the fuse up in its maker's sheet: the opening times used here are from memory."
	}
	if !w.Protected() {
		f.Code, f.Level = "short-burns-wire", answer.Danger
		f.Title = "A short circuit may burn the wire before the fuse opens."
		f.Advice = "Fit a smaller or faster fuse, or thicker wire."
	}
	j.add(f)
	form := j.Path.fuse.spec.Form
	if form.BreakingA > 0 && j.Near.CurrentA > form.BreakingA {
		j.add(answer.Finding{
			Code: "short-above-breaking", Level: answer.FixFirst,
			Title: "A short circuit draws more than the fuse can interrupt.",
			Found: j.Near.CurrentA, Limit: form.BreakingA, Unit: "A", Source: form.VoltageSource,
			Advice: fmt.Sprintf("Fit a fuse made to interrupt %.0f A or more.", math.Ceil(j.Near.CurrentA)),
		})
	}
}

// lowerFirst makes a sentence fit to follow a colon.
func lowerFirst(sentence string) string { return strings.ToLower(sentence[:1]) + sentence[1:] }

// finite keeps infinities out of reports: JSON knows none. A year stands for
// "never".
func finite(seconds float64) float64 {
	const year = 365 * 24 * 3600.0
	if math.IsInf(seconds, 1) || seconds > year {
		return year
	}
	return seconds
}
