package packcheck

import (
	"slices"
	"testing"

	"example.org/packcheck/answer"
)

// Own rules, no outside source: what a reader of the list must be able to
// count on.
func TestEachChangeIsListedOnceAndStandsAlone(t *testing.T) {
	fix := func(code, topic, advice string) answer.Finding {
		return answer.Finding{Code: code, Level: answer.FixFirst, Topic: topic, Advice: advice}
	}
	limit := func(code string, a float64, advice string) answer.Finding {
		f := fix(code, TopicLaunch, advice)
		f.Unit, f.Limit = "A", a
		return f
	}
	danger := fix("charger-wrong-chemistry", TopicCharge, "Do not connect them.")
	danger.Level = answer.Danger
	for name, c := range map[string]struct {
		list []answer.Finding
		want []string
	}{
		"nothing milder than fix first": {
			[]answer.Finding{{Code: "joint-warm", Level: answer.Watch, Advice: "Feel it."}}, nil,
		},
		"one speed limit": {
			[]answer.Finding{fix("fast-for-a-ride-on", TopicSpeed, "8 km/h"), fix("faster-than-original", TopicSpeed, "5 km/h")},
			[]string{"5 km/h"},
		},
		"the lowest current limit, not the first": {
			[]answer.Finding{limit("blocked-over-pack", 60, "60 A"), limit("blocked-over-controller", 30, "30 A"), limit("tooth-load", 1.2, "softer")},
			[]string{"30 A"},
		},
		"a limit with a number before one without": {
			[]answer.Finding{fix("blocked-heat", TopicLaunch, "some limit"), limit("launch-over-pack", 40, "40 A")},
			[]string{"40 A"},
		},
		"one controller against welding and for the limit": {
			[]answer.Finding{limit("blocked-over-pack", 60, "60 A."), fix("contacts-may-weld", TopicLaunch, "Controller."), fix("blocked-heat", TopicLaunch, "x")},
			[]string{"Controller. 60 A."},
		},
		"advice on charging says so": {
			[]answer.Finding{fix("charger-output-unknown", TopicCharge, "Read it.")},
			[]string{"Charging: Read it."},
		},
		"two doubts about the charger": {
			[]answer.Finding{fix("charger-output-unknown", TopicCharge, "Read it."), fix("charger-purpose-unknown", TopicCharge, "Ask.")},
			[]string{"Do not use this charger before everything named under charging is settled. Better, get one that is made for this pack."},
		},
		"a danger and a doubt about the charger": {
			[]answer.Finding{fix("charger-output-unknown", TopicCharge, "Read it."), danger},
			[]string{"Do not use this charger with this pack. Get one that is made for it."},
		},
		"a wait among changes": {
			[]answer.Finding{fix("charge-too-hot", TopicCharge, "Wait."), fix("x", TopicPath, "Renew.")}, []string{"Renew."},
		},
		"nothing but a wait": {
			[]answer.Finding{fix("charge-too-hot", TopicCharge, "Wait.")}, []string{"Charging: Wait."},
		},
		"the same words twice": {
			[]answer.Finding{fix("x", TopicPath, "Renew it."), fix("y", TopicPath, "Renew it.")}, []string{"Renew it."},
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
	list := []answer.Finding{{Code: "blocked-heat"}, {Code: "fuse-slow-when-blocked"}, {Code: "way-to-stop"}}
	want := []string{
		"Keep clear of roads, water, steps and slopes.",
		"Let go of the pedal at once when the vehicle does not move.",
	}
	if got := habits(list); !slices.Equal(got, want) {
		t.Errorf("got %q, want %q", got, want)
	}
}
