package judge

import "example.org/packcheck/cutoff"

// sagCharge is the charge at which a launch is held against the cutoffs: low
// enough to sag deeply, high enough that the pack is not yet meant to stop.
// Own choice.
const sagCharge = 0.3

// sags is what a launch does to the volts at the pack and at the controller.
type sags struct{ atPack, atBus cutoff.Recorder }

// sag returns what a launch with a fairly empty pack does to the volts that a
// cutoff at that place sees; the launch is computed once.
func (v *view) sag(where cutoff.Place) cutoff.Sag {
	if v.sagged == nil {
		v.sagged = v.sags.Get().(*sags)
		v.Now.Case.RecordSag(min(sagCharge, v.Now.StartCharge), &v.sagged.atPack, &v.sagged.atBus)
	}
	if where == cutoff.Controller {
		return v.sagged.atBus.Sag()
	}
	return v.sagged.atPack.Sag()
}

// close gives back what the next case may use.
func (v *view) close() {
	if v.sagged != nil {
		v.sags.Put(v.sagged)
	}
}
