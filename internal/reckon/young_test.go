package reckon_test

import (
	"slices"
	"strings"
	"testing"

	"example.org/packcheck/answer"
	"example.org/packcheck/drive"
	"example.org/packcheck/internal/reckon"
	"example.org/packcheck/setup"
)

// Where the child's age settles it, that comes first, told once, and nothing is asked that
// would not make the child older. Where a slower vehicle or another battery would do, all
// is as ever.
func TestAChildThatIsTooYoungComesFirstAndIsToldOnce(t *testing.T) {
	slow := map[string]string{"vehicle.design_voltage": "6 V", "motors.count": "1", "motors.can": "380", "pack.label": "6 V 4.5 Ah", "pack.chemistry": "agm"}
	quick := map[string]string{"vehicle.design_voltage": "6 V", "motors.count": "1", "motors.can": "380", "pack.label": "10.8 V 2 Ah", "pack.chemistry": "li-ion"}
	for _, tt := range []struct {
		name, age string
		values    map[string]string
		settles   bool
	}{
		{"a child of five", "5 years", swap(), false},
		{"a child of two on a vehicle of 10 km/h", "2 years", swap(), true},
		{"a child of one", "1 year", swap(), true},
		{"a child of one on the slowest", "1 year", slow, true},
		{"a child of two on the slowest", "2 years", slow, false},
		{"a child of two on the slowest with another battery, which has a way back", "2 years", quick, false},
	} {
		tt.values["rider.age"] = tt.age
		s, err := setup.Of(tt.values)
		if err != nil {
			t.Fatal(err)
		}
		a, err := reckon.Assess(s, reckon.Options{Draws: 64, Ways: true})
		if err != nil {
			t.Fatal(err)
		}
		f := a.TooYoung()
		if (f != nil) != tt.settles {
			t.Errorf("%s: %+v beside %d ways", tt.name, f, len(a.Ways))
			continue
		}
		if f == nil {
			if len(a.Measure) == 0 {
				t.Errorf("%s: nothing is asked", tt.name)
			}
			continue
		}
		if a.Headline[1] != f.Title || a.Headline[2] != f.Advice || len(a.Changes) == 0 || a.Changes[0] != f.Advice {
			t.Errorf("%s: %q, %q", tt.name, a.Headline, a.Changes)
		}
		if len(a.Measure) > 0 {
			t.Errorf("%s: asked is %q", tt.name, a.Measure[0].Asks)
		}
		if slices.ContainsFunc(a.Findings, func(o answer.Finding) bool { return o.Code == drive.CodeFastForARideOn && o.Level <= f.Level }) {
			t.Errorf("%s: how much too fast it is for it is told as well", tt.name)
		}
	}
}

// What a way out mends is no longer settled: then the questions stand, and the ways.
func TestAWayOutSettlesThatAChildIsTooYoung(t *testing.T) {
	young := answer.Finding{Level: answer.FixFirst, Title: "Too young.", Advice: "Do not let it drive.", OfAge: true}
	a := answer.Assessment{
		Verdict: answer.Danger, Measure: []answer.Measurement{{Asks: "How fast?"}},
		Findings: []answer.Finding{{Level: answer.Danger, Title: "It burns.", Advice: "Fit a fuse."}, young},
	}
	with := a
	with.Ways = []answer.Way{{Title: "x"}}
	if got := reckon.Conclude(&a); got.Headline[1] != young.Title || len(got.Measure) > 0 || got.Changes[0] != young.Advice {
		t.Errorf("without a way: %q, %v, %q", got.Headline, got.Measure, got.Changes)
	}
	if got := reckon.Conclude(&with); got.Headline[1] != "It burns." || len(got.Measure) != 1 || !strings.Contains(got.Headline[2], "way A") {
		t.Errorf("with one: %q, %v", got.Headline, got.Measure)
	}
	with.Ways = make([]answer.Way, 3) // of which a page may show two
	if got := reckon.Conclude(&with); got.Headline[2] != "Look first, as asked below; then take one of the ways." {
		t.Errorf("with three: %q", got.Headline[2])
	}
	likely := a
	likely.Measure = []answer.Measurement{{Asks: "How fast?"}}
	likely.Findings = slices.Clone(a.Findings)
	likely.Findings[1].Certainty = answer.Likely
	if got := reckon.Conclude(&likely); len(got.Measure) != 1 || got.Headline[1] != "It burns." {
		t.Errorf("in some vehicles only: %q, %v", got.Headline, got.Measure)
	}
}

// A danger that harms though nobody rides is told before the child's age, any other behind.
func TestADangerWithoutARideIsToldBeforeTheChildsAge(t *testing.T) {
	young := answer.Finding{Level: answer.FixFirst, Title: "Too young.", Advice: "Do not let it drive.", OfAge: true}
	for _, tt := range []struct {
		name   string
		danger answer.Finding
		first  bool
	}{
		{"drained to ruin", answer.Finding{Topic: answer.TopicCutoff}, false},
		{"a charger", answer.Finding{Topic: answer.TopicCharge, Item: answer.Charger}, true},
		{"packs to be taken apart today", answer.Finding{Topic: answer.TopicPack, Today: true}, true},
	} {
		tt.danger.Level, tt.danger.Title, tt.danger.Advice = answer.Danger, "It burns.", "Put it out."
		a := reckon.Conclude(&answer.Assessment{Verdict: answer.Danger, Findings: []answer.Finding{tt.danger, young}})
		want := young
		if tt.first {
			want = tt.danger
		}
		if a.Headline[1] != want.Title || a.First().Title != want.Title {
			t.Errorf("%s: %q", tt.name, a.Headline)
		}
	}
	if (&answer.Assessment{}).First() != nil {
		t.Error("nothing was found, and something is told first")
	}
}
