package trials_test

import (
	"fmt"
	"slices"
	"strconv"
	"strings"
	"testing"

	"example.org/packcheck/answer"
	"example.org/packcheck/cutoff"
	"example.org/packcheck/wiring"
)

// surely reports whether a finding holds in at least half of the vehicles that
// the setup may mean: advice is for the one in the middle.
func surely(f answer.Finding) bool { return f.Certainty <= answer.Likely }

// Who takes the advice must not be told afterwards that it was wrong.
func TestTheAdvisedCutoffAndFusePassTheirOwnJudgement(t *testing.T) {
	t.Parallel()
	bare := doneProperly(t).without("pack", "charger", "cutoff.module", "original.pack", "original.controller")
	advised := 0
	for _, pack := range []string{"agm|12 V 7 Ah", "gel|12 V 7 Ah", "li-ion|20 V max 5 Ah", "li-ion|18 V 1.5 Ah", "lifepo4|12.8 V 6 Ah", "nimh|12 V 3 Ah"} {
		chemistry, label, _ := strings.Cut(pack, "|")
		for name, base := range map[string]sheet{"labels": labelsOnly(), "described": bare, "bench": benchLoad()} {
			for _, health := range []string{"100 %", "70 %"} {
				s := base.with("pack.chemistry", strconv.Quote(chemistry), "pack.label", strconv.Quote(label), "pack.health", strconv.Quote(health))
				what := fmt.Sprintf("%s, %s, %s healthy", pack, name, health)
				a := assess(t, s)
				v := a.Cutoff.Advised
				if v == nil {
					if has(a, cutoff.CodeCannotProtect) < answer.Watch {
						t.Errorf("%s: neither advice nor why there is none", what)
					}
					continue
				}
				advised++
				if v.OpensAtV >= a.Pack.FullV || v.ClosesAtV > 0 && v.ClosesAtV <= v.OpensAtV || v.MustLatch && v.ClosesAtV > 0 {
					t.Errorf("%s: advice %+v for a pack of %g V", what, *v, a.Pack.FullV)
				}
				taken := s.with("cutoff.module.opens_at", fmt.Sprintf(`"%g V"`, v.OpensAtV), "cutoff.module.delay", fmt.Sprintf(`"%g s"`, v.DelayS),
					"cutoff.module.standby_current", `"0 A"`)
				if v.ClosesAtV > 0 {
					taken = taken.with("cutoff.module.closes_at", fmt.Sprintf(`"%g V"`, v.ClosesAtV))
				}
				for _, f := range assess(t, taken).Findings {
					if f.Level >= answer.FixFirst && f.Topic == answer.TopicCutoff && surely(f) {
						t.Errorf("%s: opened at %g V after %g s as advised: %v, %s", what, v.OpensAtV, v.DelayS, f.Level, f.Title)
					}
				}
				if a.Path == nil || health != "100 %" {
					continue
				}
				for _, amps := range a.Path.FuseSizesA {
					fused := briefly(t, s.with("fuse.form", `"small blade"`, "fuse.rating", fmt.Sprintf(`"%g A"`, amps), "fuse.distance_from_pack", `"100 mm"`))
					for _, f := range fused.Findings {
						if slices.Contains([]string{wiring.CodeFuseAboveWire, wiring.CodeFuseAboveJoint, wiring.CodeFuseNoneFits, wiring.CodeFuseOpensRunning, wiring.CodeFuseOpensAtLaunch, wiring.CodeShortBurnsWire}, f.Code) &&
							f.Level >= answer.FixFirst && surely(f) {
							t.Errorf("%s: with %g A of the sizes %v: %v, %s", what, amps, a.Path.FuseSizesA, f.Level, f.Title)
						}
					}
				}
			}
		}
	}
	if advised < 18 {
		t.Errorf("advice for %d setups only", advised)
	}
}

// A fuse that is named to buy is not told to be too large once it is fitted, on a hot day
// neither.
func TestAFuseToBuyIsNotTooLargeForTheWireOnAHotDay(t *testing.T) {
	t.Parallel()
	named := 0
	for _, gauge := range []string{"16 AWG", "14 AWG", "12 AWG", "10 AWG"} {
		for _, insulation := range []string{"60 C", "80 C", "105 C"} {
			s := labelsOnly().with("pack.chemistry", `"agm"`, "pack.label", `"12 V 12 Ah"`, "outing.air", `"15 to 40 C"`,
				"wire.gauge", strconv.Quote(gauge), "wire.insulation", strconv.Quote(insulation))
			for _, amps := range assess(t, s).Path.FuseSizesA {
				named++
				a := assess(t, s.with("fuse.form", `"small blade"`, "fuse.rating", fmt.Sprintf(`"%g A"`, amps), "fuse.distance_from_pack", `"100 mm"`))
				if has(a, wiring.CodeFuseAboveWire) >= answer.FixFirst {
					t.Errorf("%s for %s: %g A is named to buy, and too large once it is fitted", gauge, insulation, amps)
				}
			}
		}
	}
	if named < 6 {
		t.Errorf("%d sizes are named in all", named)
	}
}

// Who buys the charger that is described as the right one must not be told
// afterwards that it is wrong. (Of a tool pack's only its maker's own is.)
func TestTheRightChargerIsRight(t *testing.T) {
	t.Parallel()
	for chemistry, c := range map[string]struct{ label, madeFor, volts string }{
		"agm":     {"12 V 7 Ah", "agm", "14.7 V"},
		"gel":     {"12 V 7 Ah", "gel", ""},
		"lifepo4": {"12.8 V 6 Ah", "lifepo4", "14.6 V"},
		"li-ion":  {"18 V 5 Ah", "li-ion", "21 V"},
		"nimh":    {"12 V 3 Ah", "nimh", ""},
	} {
		s := benchLoad().with("pack.chemistry", strconv.Quote(chemistry), "pack.label", strconv.Quote(c.label), "outing.air", `"20 C"`,
			"charger.made_for", strconv.Quote(c.madeFor), "charger.current", `"0.6 A"`, "charger.stops", `"by itself"`, "charger.output", `"dc"`,
			"charger.polarity", `"centre positive"`, "charger.jack_polarity", `"centre positive"`, "charger.jack", `"pack"`)
		if chemistry == "li-ion" {
			s = s.with("charger.came_with_pack", "true")
		}
		a := assess(t, s.with("charger.voltage", `"1 V"`))
		if a.Charge.Match == "yes" {
			t.Errorf("%s: a charger of 1 V suits", chemistry)
		}
		volts := c.volts
		if volts == "" { // as the report says it
			if _, rest, ok := strings.Cut(a.Charge.Right, "ends at "); ok {
				volts, _, _ = strings.Cut(rest, " V ")
				volts += " V"
			}
		}
		if volts != "" {
			s = s.with("charger.voltage", strconv.Quote(volts))
		}
		a = assess(t, s)
		for _, f := range a.Findings {
			if f.Level >= answer.FixFirst && f.Topic == answer.TopicCharge && chemistry != "nimh" {
				t.Errorf("%s at %s: %v, %s", chemistry, volts, f.Level, f.Title)
			}
		}
		if h := a.Charge; h.HoursTo80 != nil && h.HoursToFull != nil && (*h.HoursTo80 > *h.HoursToFull || h.UnplugAfterH != nil && *h.UnplugAfterH < *h.HoursTo80) {
			t.Errorf("%s: %g h to 80 %%, %g h to full", chemistry, *h.HoursTo80, *h.HoursToFull)
		}
		// Nothing charges faster than its amps: charge over current, 80 % of it.
		if h := a.Charge.HoursToFull; h != nil && *h < 0.9*a.Ride.DeliveredAh/0.6 {
			t.Errorf("%s: full after %g h, %g Ah at 0.6 A take longer", chemistry, *h, a.Ride.DeliveredAh)
		}
	}
}
