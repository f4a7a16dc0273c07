package trials_test

import (
	"slices"
	"strings"
	"testing"

	"example.org/packcheck/battery"
	"example.org/packcheck/charge"

	"example.org/packcheck/answer"
	"example.org/packcheck/setup"
)

// wantedKey is a key that issue 10 asks for and the setup does not have yet.
type wantedKey struct{ key, example, doc string }

func wantedKeys() []wantedKey {
	return []wantedKey{
		{"vehicle.brake", "motors", "what stops it when the pedal is let go; one of: motors, pedal, none"},
		{"charger.blocks_driving", "false", "whether it cannot be driven while it is charged"},
		{"measured.pack_temperature", "65 C", "surface of the battery straight after a drive"},
		{"storage.connected", "true", "whether it stays connected to the vehicle all that time"},
	}
}

// pendingHazards can be switched on as soon as their keys exist: then they move
// to the lists that are tried.
func pendingHazards() []hazard {
	return []hazard{
		// needs key vehicle.brake
		{
			name: "a vehicle that rolls free at 9 km/h on a slope", base: "labels", set: "measured.top_speed=9 km/h; vehicle.slope=10 %; vehicle.brake=none", least: danger,
			why: "free-wheeling ride-ons need a brake", from: "EN 71-1:2005+A8:2009 rationale: exempt only below 1 m/s (copy)",
		},
		// needs key charger.blocks_driving
		{
			name: "a vehicle that drives while it is charged", base: "labels", set: "charger.label=14.4 V 1 A DC; charger.made_for=lead-acid; charger.stops=by itself; charger.jack=vehicle; charger.blocks_driving=false", least: fixFirst,
			why: "the lead is torn off, or the child drives away on the mains adaptor", from: toyCharging,
		},
		{
			name: "a changed vehicle that drives while its lithium is charged", base: "lithium", set: foreign + "charger.jack=terminals; charger.blocks_driving=false", least: danger,
			why: "the cutoff and the charger work against each other", from: toyCharging,
		},
		// needs key measured.pack_temperature
		{
			name: "a battery of 75 C after a drive", base: "block", set: "measured.pack_temperature=75 C", least: danger, codes: battery.CodeTooHot,
			why: "above 71 C", from: toySurface,
		},
		{
			name: "a tool pack of 60 C after a drive", base: "lithium", set: "measured.pack_temperature=60 C", least: fixFirst,
			why: "above the 54 C of accessible batteries, and too hot to charge", from: "test plan built on ASTM F963: 54 C for accessible surfaces (trade forum, one source)",
		},
		// needs key storage.connected
		{
			name: "a block left connected all winter to a board of 15 mA", base: "block", set: "storage.from=2026-11-01; storage.until=2027-03-31; -cutoff; controller.standby_current=15 mA; storage.connected=true", least: fixFirst, codes: charge.CodeStoredConnected,
			why: "7 Ah last 19 days of 150", from: "Ah over A (computed)",
		},
		{
			name: "a tool pack left connected all winter to a board of 15 mA", base: "lithium", set: "storage.from=2026-11-01; storage.until=2027-03-31; controller.standby_current=15 mA; storage.connected=true; -cutoff; cutoff.controller.opens_at=16.5 V", least: danger, codes: charge.CodeStoredConnected,
			why: "dead within two weeks; in spring somebody charges it", from: overDeep,
		},
	}
}

// A key that has come to be there makes its rows due: they move to the lists.
func TestPendingHazardsStillWaitForTheirKeys(t *testing.T) {
	t.Parallel()
	known := map[string]bool{}
	for _, k := range setup.Keys() {
		known[k.Path()] = true
	}
	var keys []string
	for _, w := range wantedKeys() {
		keys = append(keys, w.key)
		if known[w.key] {
			t.Errorf("%s is there: move its rows from the pending ones to those that are tried", w.key)
		}
	}
	used := map[string]bool{}
	sets := []string{}
	for _, h := range pendingHazards() {
		sets = append(sets, h.set)
		if h.least < answer.FixFirst || h.why == "" || h.from == "" {
			t.Errorf("%s: no level, why or source", h.name)
		}
	}
	for _, set := range sets {
		n := 0
		for _, key := range keys {
			if strings.Contains(set, key+"=") {
				n++
				used[key] = true
			}
		}
		if n == 0 {
			t.Errorf("%q waits for no key", set)
		}
	}
	if i := slices.IndexFunc(keys, func(k string) bool { return !used[k] }); i >= 0 {
		t.Errorf("no row needs %s", keys[i])
	}
}
