package judge

import (
	"example.org/packcheck/answer"
	"example.org/packcheck/charge"
	"example.org/packcheck/cutoff"
	"example.org/packcheck/internal/build"
)

// storage plans the time in which nobody drives.
func (v *view) storage() error {
	raw := &v.parts.Setup.Storage
	if !raw.Given || !raw.From.Given || !raw.Until.Given {
		return nil
	}
	store := charge.Store{
		Pack: v.Now.Pack, Charge: v.Now.StartCharge, From: day(raw.From), Until: day(raw.Until), TempC: v.Now.AmbientC,
	}
	if v.parts.StoreC.Known { // what was told spans one winter: its coldest night comes in every vehicle
		store.TempC, store.ColdestC = build.Known(&v.parts.StoreC, v.Now.Pick), v.parts.StoreC.Range.Low
	}
	if raw.Connected.Yes {
		store.InVehicle = true
		days := float64(store.From.DaysUntil(store.Until))
		var err error
		left := cutoff.Standing{
			Pack: v.Now.Pack, Start: v.Now.Pack.StateAt(store.Charge, store.TempC), Chain: v.Now.Cutoffs,
			StandbyA: build.Known(&v.parts.Controller.StandbyA, v.Now.Pick), AmbientC: store.TempC,
		}
		if store.StandbyA, err = cutoff.MeanDrawA(left, days); err != nil {
			return err
		}
		store.DrawnBy = left.DrawKeys()
		store.OwnA = v.ownDrawA()
	}
	kept, err := charge.Keep(store)
	if err != nil {
		return err
	}
	v.add(kept.Findings...)
	f := &answer.StorageFigures{ChargeLeft: kept.LeftLikely, StoreAt: v.parts.Pack.Profile.Charge.StorageCharge}
	for _, t := range kept.Tasks {
		f.Dates = append(f.Dates, answer.StorageDate{Date: t.On.String(), Do: t.What})
	}
	v.out.Storage = f
	return nil
}

// ownDrawA is what the electronics inside the pack, or inside both of two side by side, draw.
func (v *view) ownDrawA() float64 {
	amps := 0.0
	for i := range v.parts.Cutoffs {
		if c := &v.parts.Cutoffs[i]; c.Where == "pack" {
			amps += build.Known(&c.StandbyA, v.Now.Pick)
		}
	}
	if v.parts.Pack.Joined == "parallel" {
		amps *= 2
	}
	return amps
}
