package trials_test

import (
	"testing"

	"example.org/packcheck/answer"
	"example.org/packcheck/charge"
)

// How cold it is where somebody drives does not say where the battery is charged: that is
// a guess, no danger, and says what to do first.
func TestAFrostyRideIsNoDangerWhereTheBatteryIsChargedIsNotTold(t *testing.T) {
	t.Parallel()
	frosty := doneProperly(t).with("outing.air", `"-5 C"`)
	find := func(s sheet) (answer.Finding, bool) {
		for _, f := range assess(t, s).Findings {
			if f.Code == charge.CodeTooCold || f.Code == charge.CodePlaceNoGood {
				return f, true
			}
		}
		return answer.Finding{}, false
	}
	if f, ok := find(frosty); !ok || f.Level >= answer.Danger || f.Guess != answer.KeyOutingChargedAt || f.Change != answer.ChargeElsewhere {
		t.Errorf("not told where: %v, %+v", ok, f)
	}
	if f, ok := find(frosty.with("outing.charged_at", `"-5 C"`)); !ok || f.Level != answer.Danger {
		t.Errorf("charged in the frost: %v, %+v", ok, f)
	}
	if f, ok := find(frosty.with("outing.charged_at", `"20 C"`)); ok && f.Code == charge.CodePlaceNoGood {
		t.Errorf("charged in a room: %+v", f)
	}
	harsh := frosty.with("outing.air", `"-12 C"`, "pack.temperature", `"-12 C"`, "outing.charged_at", `"15 to 25 C"`)
	if f, ok := find(harsh); !ok || f.Level != answer.Watch || f.Harm != answer.House || f.Change != answer.WaitBeforeCharge {
		t.Errorf("a frozen one that waits in a room: %v, %+v", ok, f)
	}
}
