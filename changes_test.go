package packcheck

import (
	"slices"
	"testing"

	"example.org/packcheck/finding"
)

// Own rules, no outside source: what a reader of the list must be able to
// count on.
func TestEachChangeIsListedOnceAndStandsAlone(t *testing.T) {
	fix := func(code, topic, advice string) finding.Finding {
		return finding.Finding{Code: code, Level: finding.FixFirst, Topic: topic, Advice: advice}
	}
	limit := func(code string, a float64, advice string) finding.Finding {
		f := fix(code, TopicLaunch, advice)
		f.Unit, f.Limit = "A", a
		return f
	}
	danger := fix("charger-wrong-chemistry", TopicCharge, "Do not connect them.")
	danger.Level = finding.Danger
	for name, c := range map[string]struct {
		list []finding.Finding
		want []string
	}{
		"nothing milder than fix first": {
			[]finding.Finding{{Code: "joint-warm", Level: finding.Watch, Advice: "Feel it."}}, nil,
		},
		"one speed limit": {
			[]finding.Finding{fix("fast-for-a-ride-on", TopicSpeed, "8 km/h"), fix("faster-than-original", TopicSpeed, "5 km/h")},
			[]string{"5 km/h"},
		},
		"the lowest current limit, not the first": {
			[]finding.Finding{limit("blocked-over-pack", 60, "60 A"), limit("blocked-over-controller", 30, "30 A"), limit("tooth-load", 1.2, "softer")},
			[]string{"30 A"},
		},
		"a limit with a number before one without": {
			[]finding.Finding{fix("blocked-heat", TopicLaunch, "some limit"), limit("launch-over-pack", 40, "40 A")},
			[]string{"40 A"},
		},
		"one controller against welding and for the limit": {
			[]finding.Finding{limit("blocked-over-pack", 60, "60 A."), fix("contacts-may-weld", TopicLaunch, "Controller."), fix("blocked-heat", TopicLaunch, "x")},
			[]string{"Controller. 60 A."},
		},
		"advice on charging says so": {
			[]finding.Finding{fix("charger-output-unknown", TopicCharge, "Read it.")},
			[]string{"Charging: Read it."},
		},
		"two doubts about the charger": {
			[]finding.Finding{fix("charger-output-unknown", TopicCharge, "Read it."), fix("charger-purpose-unknown", TopicCharge, "Ask.")},
			[]string{"Do not use this charger before everything named under charging is settled. Better, get one that is made for this pack."},
		},
		"a danger and a doubt about the charger": {
			[]finding.Finding{fix("charger-output-unknown", TopicCharge, "Read it."), danger},
			[]string{"Do not use this charger with this pack. Get one that is made for it."},
		},
		"a wait among changes": {
			[]finding.Finding{fix("charge-too-hot", TopicCharge, "Wait."), fix("x", TopicPath, "Renew.")}, []string{"Renew."},
		},
		"nothing but a wait": {
			[]finding.Finding{fix("charge-too-hot", TopicCharge, "Wait.")}, []string{"Charging: Wait."},
		},
		"the same words twice": {
			[]finding.Finding{fix("x", TopicPath, "Renew it."), fix("y", TopicPath, "Renew it.")}, []string{"Renew it."},
		},
	} {
		if got := changes(c.list); !slices.Equal(got, c.want) {
			t.Errorf("%s: got %q, want %q", name, got, c.want)
		}
	}
}

func TestNoCodeHasTwoRemedies(t *testing.T) {
	seen := map[string]bool{}
	for _, r := range remedies {
		for _, code := range r.codes {
			if seen[code] {
				t.Errorf("%s is in two remedies: only the first would be listed", code)
			}
			seen[code] = true
		}
	}
}

func TestHabitsAreSaidOnceEach(t *testing.T) {
	list := []finding.Finding{{Code: "blocked-heat"}, {Code: "fuse-slow-when-blocked"}, {Code: "way-to-stop"}}
	want := []string{
		"Keep clear of roads, water, steps and slopes.",
		"Let go of the pedal at once when the vehicle does not move.",
	}
	if got := habits(list); !slices.Equal(got, want) {
		t.Errorf("got %q, want %q", got, want)
	}
}
