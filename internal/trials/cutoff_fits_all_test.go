package trials_test

import (
	"fmt"
	"strings"
	"testing"

	"example.org/packcheck/answer"
	"example.org/packcheck/cutoff"
)

// Who fits the advised cutoff still has most of the ride; where no setting does that and
// saves the weakest cell, the answer says so and what does.
func TestAnAdvisedCutoffLeavesMostOfTheRideOrIsNotAdvised(t *testing.T) {
	t.Parallel()
	base := sheet{"rider.age": `"5 years"`, "vehicle.design_voltage": `"12 V"`, "motors.count": "2", "motors.can": `"550"`}
	// One in twenty more or less makes a setting: few draws are not enough for that.
	asked := func(s sheet) *answer.Assessment { return readWith(t, s.toml(), 512) }
	for _, tt := range []struct {
		chemistry, label string
		none             bool
	}{
		{"nimh", "14.4 V 2 Ah", true},
		{"lifepo4", "12.8 V 10 Ah", true},
		{"agm", "12 V 9 Ah", false},
		{"li-ion", "18 V 5 Ah", false},
	} {
		s := base.with("pack.chemistry", fmt.Sprintf("%q", tt.chemistry), "pack.label", fmt.Sprintf("%q", tt.label))
		a := asked(s)
		adv := a.Cutoff.Advised
		if (adv == nil) != tt.none || (has(a, cutoff.CodeCannotProtect) >= answer.Watch) != tt.none {
			t.Errorf("%s: advised %+v, said why not: %v", tt.label, adv, has(a, cutoff.CodeCannotProtect))
		}
		if adv == nil {
			said := false
			for _, b := range a.Buy {
				said = said || b.Item == "Cutoff" && strings.Contains(b.Text, "watch every cell")
			}
			if !said {
				t.Errorf("%s: nothing to buy says what does: %+v", tt.label, a.Buy)
			}
			continue
		}
		taken := asked(s.with("cutoff.module.opens_at", fmt.Sprintf(`"%g V"`, adv.OpensAtV), "cutoff.module.delay", fmt.Sprintf(`"%g s"`, adv.DelayS),
			"cutoff.module.standby_current", fmt.Sprintf(`"%g A"`, adv.StandbyA)))
		if taken.Ride.LastsPedalMin < a.Ride.LastsPedalMin*cutoff.MostOfRide {
			t.Errorf("%s: %.0f min with the advised cutoff, %.0f without", tt.label, taken.Ride.LastsPedalMin, a.Ride.LastsPedalMin)
		}
		for _, f := range taken.Findings {
			if f.Code == cutoff.CodeOpensAtLaunch && f.Share >= 0.5 {
				t.Errorf("%s: the launch opens it in %.0f %%", tt.label, 100*f.Share)
			}
			if f.Code == cutoff.CodeIdleWeek && f.Level >= answer.FixFirst {
				t.Errorf("%s: %v, %s", tt.label, f.Level, f.Title)
			}
		}
		// Which delays a module can be set to nobody knows: the longest does as well.
		longest := asked(s.with("cutoff.module.opens_at", fmt.Sprintf(`"%g V"`, adv.OpensAtV), "cutoff.module.delay", fmt.Sprintf(`"%g s"`, adv.LongestS),
			"cutoff.module.standby_current", fmt.Sprintf(`"%g A"`, adv.StandbyA)))
		for _, f := range longest.Findings {
			if (f.Topic == answer.TopicCutoff || f.Code == cutoff.CodeIdleWeek) && f.Level >= answer.FixFirst {
				t.Errorf("%s: set to %g s, %v, %s", tt.label, adv.LongestS, f.Level, f.Title)
			}
		}
		if !(adv.LongestS > adv.DelayS) {
			t.Errorf("%s: no delay but %g s is advised", tt.label, adv.DelayS)
		}
		// A module of which nothing is told may be one of those that draw 1.5 W.
		unknown := asked(s.with("cutoff.module.opens_at", fmt.Sprintf(`"%g V"`, adv.OpensAtV), "cutoff.module.delay", fmt.Sprintf(`"%g s"`, adv.DelayS)))
		if tt.chemistry == "li-ion" {
			if has(unknown, cutoff.CodeIdleWeek) < answer.FixFirst {
				t.Errorf("%s: a module of unknown standby current is left on as if it drew nothing", tt.label)
			}
		}
	}
}
