package packcheck

import (
	"fmt"

	"example.org/packcheck/battery"
	"example.org/packcheck/charge"
	"example.org/packcheck/chemistry"
	"example.org/packcheck/cutoff"
	"example.org/packcheck/answer"
	"example.org/packcheck/setup"
)

// adder gathers findings under a topic.
type adder func(topic string, fs []answer.Finding)

// cutoffFigures says what disconnects the pack, what happens when it is then
// left alone, and which setting would suit.
func cutoffFigures(v *view, add adder) (CutoffFigures, error) {
	f := CutoffFigures{OpensFirst: "nothing", WeakestCellV: weakestV(&v.o)}
	cc := v.cutoffCase()
	if cc.LoadA <= 0 {
		return f, nil
	}
	if v.o.c.Cutoffs.Len() > 0 {
		followed, err := v.follow()
		if err != nil {
			return f, err
		}
		f.ChatterCount = followed.Recloses
		if place, _, opened := v.o.lasts.Chain.First(); opened {
			f.OpensFirst, f.OpensAtCharge = place.String(), known(v.o.lasts.ChargeLeft)
		} else if followed.Opened {
			f.OpensFirst, f.OpensAtCharge = followed.First.String(), known(max(0, followed.Charge))
		}
	}
	idled, err := cutoff.Idle(cutoff.Standing{
		Pack: v.o.c.Pack, Start: v.o.lasts.State, Chain: v.o.lasts.Chain,
		StandbyA: known0(&v.parts.Controller.StandbyA, v.pick), AmbientC: v.o.c.AmbientC,
	})
	if err != nil {
		return f, fmt.Errorf("packcheck: %w", err)
	}
	f.IdleDaysToHarm = known(idled.DaysToHarm)
	if v.parts.Bench == nil {
		f.LeftForAWeek = idled.Words
	}
	add(TopicCutoff, idled.Findings)

	wish := cutoff.Wish{Case: cc, Where: cutoff.Module}
	if v.parts.Bench == nil {
		wish.Sag = v.sag(cutoff.Module)
	}
	advice, err := cutoff.Advise(wish)
	if err != nil {
		return f, fmt.Errorf("packcheck: %w", err)
	}
	advised, fs, err := v.advised(advice)
	f.Advised = advised
	add(TopicCutoff, fs)
	return f, err
}

// storageFigures plans the time in which nobody drives.
func storageFigures(v *view, add adder) (*StorageFigures, error) { return storageAt(v, atLikely, add) }

// storageAt is storageFigures with the store's temperature at one side of what
// is known of it.
func storageAt(v *view, at side, add adder) (*StorageFigures, error) {
	raw := &v.parts.Setup.Storage
	if !raw.Given || !raw.From.Given || !raw.Until.Given {
		return nil, nil
	}
	store := charge.Store{
		Pack: v.o.c.Pack, Charge: v.o.c.StartCharge, From: day(raw.From), Until: day(raw.Until), TempC: v.o.c.AmbientC,
	}
	if raw.Temperature.Given {
		store.TempC = at.in(raw.Temperature.Range)
	}
	kept, err := charge.Keep(store)
	if err != nil {
		return nil, fmt.Errorf("packcheck: %w", err)
	}
	add(TopicCharge, kept.Findings)
	f := &StorageFigures{ChargeLeft: kept.LeftLikely, StoreAt: v.parts.Pack.Profile.Charge.StorageCharge}
	for _, t := range kept.Tasks {
		f.Dates = append(f.Dates, StorageDate{Date: t.On.String(), Do: t.What})
	}
	return f, nil
}

func day(d setup.Date) charge.Date {
	y, m, n := d.Day.Date()
	return charge.Date{Year: y, Month: int(m), Day: n}
}

// measuredFigures sets what was measured beside what was computed.
func measuredFigures(v *view, add adder) ([]MeasuredFigure, error) {
	raw := &v.parts.Setup.Measured
	if !raw.Given {
		return nil, nil
	}
	var out []MeasuredFigure
	if raw.RestVoltage.Given {
		out = append(out, v.restVoltage(raw))
		if readOn(v.parts).Pack.Profile.Family == chemistry.LeadAcid {
			d, err := v.diagnose(raw)
			if err != nil {
				return nil, err
			}
			for _, s := range d.Suspicions {
				out = append(out, MeasuredFigure{Name: "the battery is " + s.Condition.String(), Says: s.Words})
			}
			out = append(out, MeasuredFigure{Name: "next test", Says: d.NextTest})
			add(TopicPack, d.Findings)
		}
	}
	out = append(out, v.compared(raw)...)
	opened, err := v.opened(raw)
	return append(out, opened...), err
}

// restVoltage reads the state of charge from a resting voltage.
func (v *view) restVoltage(raw *setup.Measured) MeasuredFigure {
	hours := 0.0
	if raw.HoursRested.Given {
		hours = raw.HoursRested.Likely / 3600
	}
	was := &v.o
	if v.orig != nil {
		was = v.orig
	}
	spec := was.c.Pack.Spec()
	low, likely, high := chargeAtRest(spec, raw.RestVoltage, hours, was.c.PackC)
	f := MeasuredFigure{
		Name:     "volts at rest",
		Measured: raw.RestVoltage.Text,
		Computed: fmt.Sprintf("%s V when full", round(was.c.Pack.FullV(), 3)),
		Says: fmt.Sprintf("about %s %% charged (%s to %s %%), if the cells are sound",
			round(100*likely, 2), round(100*low, 2), round(100*high, 2)),
	}
	if said := readOn(v.parts).Setup.Pack.Charge; v.orig == nil && said.Given && (said.High < low || said.Low > high) {
		f.Says += fmt.Sprintf("; that contradicts the setup's %s: one of the two is wrong", said.Text)
	}
	return f
}

// The temperatures between which a battery is diagnosed; the setup allows for
// a little more.
const coldestC, hottestC = -39, 79

// diagnose asks whether an old sealed battery is flat, worn or badly
// connected. The pack is taken as its label says it was when new.
func (v *view) diagnose(raw *setup.Measured) (charge.Diagnosis, error) {
	spec := readOn(v.parts).PackSpec(v.pick)
	spec.Health, spec.ResistanceFactor, spec.ResistanceOhm = 1, 0, 0
	fresh, err := battery.New(spec)
	if err != nil {
		return charge.Diagnosis{}, fmt.Errorf("packcheck: %w", err)
	}
	e := charge.Evidence{Pack: fresh, RestV: max(raw.RestVoltage.Likely, leastRestV), TempC: min(max(v.o.c.PackC, coldestC), hottestC)}
	if raw.HoursRested.Given {
		e.HoursRested = raw.HoursRested.Likely / 3600
	}
	if raw.LoadedVoltage.Given {
		e.LoadedV = raw.LoadedVoltage.Likely
	}
	if raw.LoadedCurrent.Given {
		e.LoadedA = raw.LoadedCurrent.Likely
	}
	d, err := charge.Diagnose(e)
	if err != nil {
		return d, fmt.Errorf("packcheck: %w", err)
	}
	return d, nil
}
