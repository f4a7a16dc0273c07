package judge

import (
	"example.org/packcheck/answer"
	"example.org/packcheck/charge"
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
	if v.parts.StoreC.Known {
		store.TempC = build.Known(&v.parts.StoreC, v.Now.Pick)
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
