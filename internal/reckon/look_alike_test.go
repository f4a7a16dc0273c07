package reckon_test

import (
	"testing"

	"example.org/packcheck/answer"
	"example.org/packcheck/charge"
)

// A charger that is right for what is printed on a battery is too strong only for one that
// holds half of that: who made the battery is a guess then, and told. One that is too strong
// for the label is so whoever made it.
func TestAChargerThatSuitsTheLabelIsTooStrongOnAGuessAlone(t *testing.T) {
	for _, tt := range []struct {
		label string
		guess string
		most  answer.Level
	}{
		{"29.2 V 4 A DC LiFePO4", answer.KeyPackMaker, answer.Watch},
		{"29.2 V 40 A DC LiFePO4", "", answer.Danger},
	} {
		a := someDraws(t, map[string]string{
			"rider.age": "9 years", "vehicle.design_voltage": "24 V", "motors.count": "2", "pack.label": "24 V 20 Ah LiFePO4", "pack.watches_cells": "true",
			"cutoff.pack.opens_at": "20 V", "charger.label": tt.label, "charger.stops": "by itself", "charger.jack": "terminals", "original.pack.label": "24 V 9 Ah AGM",
		}, 512)
		found := false
		for _, f := range a.Findings {
			if f.Code == charge.CodeCurrentTooHigh {
				found = true
				if f.Guess != tt.guess || f.Level != tt.most {
					t.Errorf("%s: %q is %v on a guess at %q; want %v, %q", tt.label, f.Title, f.Level, f.Guess, tt.most, tt.guess)
				}
			}
		}
		if !found {
			t.Errorf("%s: not told", tt.label)
		}
	}
}
