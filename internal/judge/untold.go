package judge

import (
	"slices"
	"strings"

	"example.org/packcheck/answer"
)

// CodeNotTold says that something was left out whose plausible values reach
// danger: nothing is fine then.
const CodeNotTold = "not-told"

// dangerous are the keys whose plausible values reach danger, in the words of
// what is not known. Any key of a row tells it.
var dangerous = []struct {
	words string
	keys  []string
	drive bool // only of a vehicle
}{
	{"which volts the vehicle was made for", []string{answer.KeyVehicleDesignVoltage, answer.KeyMotorsRatedVoltage}, true},
	{"the size of the wire", []string{answer.KeyWireGauge, answer.KeyWireArea}, true},
	{"how steep it gets where it is driven", []string{answer.KeyVehicleSlope}, true},
	{"how old the child is", []string{answer.KeyRiderAge}, true},
	{"what stops it when the pedal is let go", []string{answer.KeyVehicleBrake}, true},
}

// untold names what was left out although it may be dangerous.
func (v *view) untold() {
	s := v.parts.Setup
	var words, keys []string
	add := func(text string, key ...string) {
		for _, k := range key {
			if s.Gives(k) || slices.ContainsFunc(v.out.Findings, func(f answer.Finding) bool { // a finding of its own says so
				return f.Reads == answer.AsUnknown && slices.Contains(f.Decides, k)
			}) {
				return
			}
		}
		words, keys = append(words, text), append(keys, key[0])
	}
	for _, d := range dangerous {
		if !d.drive || v.drives() {
			add(d.words, d.keys...)
		}
	}
	if v.Now.Fused {
		add("how far the fuse is from the pack", answer.KeyFuseDistanceFromPack)
	}
	if s.Charger.Given {
		add("where the charger is plugged in", answer.KeyChargerJack)
	}
	if s.Charger.Given && s.Charger.Jack.Text != "pack" && v.drives() && lithium(v.parts.Pack.Profile) {
		add("whether it can be driven while it charges", answer.KeyChargerBlocksDriving)
	}
	if s.Storage.From.Given && s.Storage.Until.Given && v.drives() {
		add("whether the battery stays connected while it is put away", answer.KeyStorageConnected)
	}
	if len(words) == 0 {
		return
	}
	v.add(answer.Finding{
		Code: CodeNotTold, Level: answer.Watch, Harm: answer.House, Topic: answer.TopicPath, Source: srcCommon, Reads: answer.AsTold,
		Title:  "Not told, though it may matter, is " + strings.Join(words, "; ") + ".",
		Advice: "Look at what is named here, and tell it.", Change: answer.LookUp, Decides: keys, Untold: words, Gravity: -1,
	})
}
