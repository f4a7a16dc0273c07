package interview_test

import (
	"context"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"example.org/packcheck"
	"example.org/packcheck/answer"
	"example.org/packcheck/internal/interview"
	"example.org/packcheck/setup"
)

// Another battery than the vehicle came with has to fit into it: asked for last.
func TestASwapAsksWhetherItFits(t *testing.T) {
	given := map[string]string{"pack.label": "20 V max 4 Ah", "vehicle.design_voltage": "12 V"}
	why := func() string {
		for _, q := range interview.Next(given, &answer.Assessment{}, nil) {
			if q.Key == "pack.size" {
				return q.Why
			}
		}
		return ""
	}
	if why() != "" {
		t.Error("nothing was swapped")
	}
	given["original.pack.label"] = "12 V 7 Ah"
	if why() == "" {
		t.Error("nobody asks how large the other battery is")
	}
}

// keysOf are the keys of questions, in order.
func keysOf(list []interview.Question) []string {
	var out []string
	for _, q := range list {
		out = append(out, q.Key)
	}
	return out
}

func TestTheMostUsefulQuestionComesFirst(t *testing.T) {
	given := map[string]string{"pack.label": "20 V max 4 Ah", "vehicle.design_voltage": "12 V", "rider.age": "4 years", "vehicle.ground": "lawn"}
	for _, c := range []struct {
		name string
		a    answer.Assessment
		want string
	}{
		{"a danger that a cutoff would take away", answer.Assessment{Findings: []answer.Finding{
			{Level: answer.FixFirst, Guess: answer.KeyVehicleWeakestPartVoltage, Share: 1},
			{Level: answer.Danger, Change: answer.FitCutoff, Share: 1},
		}}, "cutoff.pack.opens_at"},
		{"a guess under what must be fixed", answer.Assessment{
			Findings: []answer.Finding{{Level: answer.FixFirst, Guess: answer.KeyVehicleWeakestPartVoltage, Share: 0.6}},
			Measure:  []answer.Measurement{{Key: "motors.can", Verdict: 0.2, Narrows: "it may change the verdict"}},
		}, "vehicle.weakest_part_voltage"},
		{"a measurement that may turn the verdict", answer.Assessment{
			Findings: []answer.Finding{{Level: answer.Watch, Guess: answer.KeyPackHealth, Share: 1}},
			Measure:  []answer.Measurement{{Key: "motors.can", Verdict: 0.2, Narrows: "it may change the verdict"}},
		}, "motors.can"},
		{"what was not told and may harm", answer.Assessment{
			Findings: []answer.Finding{{Level: answer.Watch, Change: answer.LookUp, Decides: []string{answer.KeyVehicleSlope}}},
			Assumed:  []answer.Assumed{{Key: "pack.maker", Effect: 0.9}},
		}, "vehicle.slope"},
		{"what could burn and is only watched because of a guess", answer.Assessment{
			Findings: []answer.Finding{
				{Level: answer.Watch, Guess: "wire.insulation", Harm: answer.House, Share: 1, Found: 30, Limit: 22},
				{Level: answer.Watch, Change: answer.LookUp, Decides: []string{answer.KeyVehicleSlope}},
			},
			Measure: []answer.Measurement{{Key: "motors.can", Amps: 0.9, Narrows: "it narrows the amps"}},
		}, "wire.insulation"},
		{"what could seldom burn, before nothing else", answer.Assessment{
			Findings: []answer.Finding{{Level: answer.Watch, Guess: "wire.insulation", Harm: answer.House, Share: 0.1, Found: 30, Limit: 22}},
			Measure:  []answer.Measurement{{Key: "motors.can", Amps: 0.9, Narrows: "it narrows the amps"}},
		}, "motors.can"},
		{"what most of the spread goes with", answer.Assessment{
			Assumed: []answer.Assumed{{Key: "motors.count", Effect: 0.1}, {Key: "pack.maker", Effect: 0.4}},
		}, "pack.maker"},
		{"how many ride, where their weight decides", answer.Assessment{
			Findings: []answer.Finding{{Level: answer.FixFirst, Guess: "rider.mass", Share: 1}},
		}, "rider.count"},
		{"a class, where the controller's amps decide", answer.Assessment{
			Findings: []answer.Finding{{Level: answer.FixFirst, Guess: "controller.continuous_current", Share: 1}},
		}, "controller.class"},
		{"what stands for a key that nobody can read", answer.Assessment{
			Findings: []answer.Finding{{Level: answer.FixFirst, Guess: answer.KeyMotorsTorqueConstant, Share: 1}},
		}, "motors.stall_current"},
	} {
		list := interview.Next(given, &c.a, nil)
		if list[0].Key != c.want || list[0].Why == "" {
			t.Errorf("%s: asks for %s because %q, want %s", c.name, list[0].Key, list[0].Why, c.want)
		}
	}
}

// Of several things that one change may be, whoever does not know the first is not
// pressed for all of them.
func TestNobodyIsPressedForOneThingThreeTimes(t *testing.T) {
	a := &answer.Assessment{Findings: []answer.Finding{
		{Level: answer.Danger, Change: answer.FitCutoff, Share: 1},
		{Level: answer.FixFirst, Guess: answer.KeyMotorsCan, Share: 1},
	}}
	passed := map[string]bool{"cutoff.pack.opens_at": true}
	list := interview.Next(map[string]string{"pack.label": "20 V max 4 Ah"}, a, func(key string) bool { return passed[key] })
	if list[0].Key != "motors.can" {
		t.Errorf("asks for %s", list[0].Key)
	}
	if !slices.Contains(keysOf(list), "cutoff.module.opens_at") {
		t.Error("the other cutoffs are not asked for at all")
	}
}

// Of a fuse whose amps are told only its kind is left to ask.
func TestTheAmpsOfAFuseAreNotAskedForTwice(t *testing.T) {
	for amps, want := range map[string]string{"": "Which fuse sits next to the battery, of how many amps?", "30 A": "What kind of fuse is it?"} {
		list := interview.Next(map[string]string{"pack.label": "12 V 7 Ah", "fuse.rating": amps}, nil, nil)
		k := slices.IndexFunc(list, func(q interview.Question) bool { return q.Key == "fuse.form" })
		if k < 0 || list[k].Asks != want {
			t.Fatalf("%q told: %+v", amps, list)
		}
		if sets, err := interview.Fill(list[k], list[k].Example, nil); err != nil || sets["fuse.form"] == "" || (sets["fuse.rating"] == "") != (amps != "") {
			t.Errorf("%q told: %s is %v, %v", amps, list[k].Example, sets, err)
		}
	}
}

func TestTwoBatteriesAreAskedForWhereTheyMakeTheVolts(t *testing.T) {
	for volts, want := range map[string]bool{"24 V": true, "12 V": false} {
		list := interview.Next(map[string]string{"pack.label": "12 V 7 Ah", "vehicle.design_voltage": volts}, nil, nil)
		if (list[0].Key == "pack.joined") != want {
			t.Errorf("a 12 V battery in a vehicle of %s: asks for %s", volts, list[0].Key)
		}
	}
}

func TestNobodyIsAskedForAVehicleBesideAnotherLoad(t *testing.T) {
	given := map[string]string{"pack.label": "12 V 7 Ah", "load.current": "9 A"}
	questions := interview.Next(given, nil, nil)
	for _, q := range questions {
		if strings.HasPrefix(q.Key, "rider.") || strings.HasPrefix(q.Key, "vehicle.") || strings.HasPrefix(q.Key, "motors.") {
			t.Errorf("asks for %s", q.Key)
		}
		if sets, err := interview.Fill(q, q.Example, given); q.Key == "fuse.form" && (err != nil || len(sets) != 2) {
			t.Errorf("%s: %v, %v", q.Key, sets, err)
		}
	}
	if len(questions) < 20 {
		t.Errorf("only %q", keysOf(questions))
	}
}

func BenchmarkNext(b *testing.B) {
	given := map[string]string{"pack.label": "20 V max 4 Ah", "vehicle.design_voltage": "12 V", "rider.age": "4 years", "vehicle.ground": "lawn"}
	s, err := setup.Of(given)
	if err != nil {
		b.Fatal(err)
	}
	a, err := packcheck.AssessWith(context.Background(), s, packcheck.Options{Draws: 64})
	if err != nil {
		b.Fatal(err)
	}
	b.ReportAllocs()
	for b.Loop() {
		interview.Next(given, a, nil)
	}
}

func TestWhatWasAssumedStandsAsTheUsual(t *testing.T) {
	a := &answer.Assessment{Assumed: []answer.Assumed{{Key: "vehicle.mass", Value: "10 to 18 kg"}}}
	for _, q := range interview.Next(nil, a, nil) {
		if q.Key == "vehicle.mass" && q.Usual != "10 to 18 kg" {
			t.Errorf("usual: %q", q.Usual)
		}
	}
}

// What moves an answer, decides a grave finding or is not known must be asked for,
// or a parent could never mend it.
func TestWhatAnAnswerHangsOnIsAskedFor(t *testing.T) {
	files, err := filepath.Glob("../../examples/*.toml")
	if err != nil || len(files) < 3 {
		t.Fatalf("examples: %q, %v", files, err)
	}
	var setups []map[string]string
	for _, name := range files {
		text, err := os.ReadFile(name)
		if err != nil {
			t.Fatal(err)
		}
		s, err := packcheck.Read(strings.NewReader(string(text)), name)
		if err != nil {
			t.Fatal(err)
		}
		setups = append(setups, s.Values())
	}
	setups = append(setups, map[string]string{"pack.label": "20 V max 4 Ah"}, map[string]string{"pack.label": "12 V 7 Ah"})
	// What nobody at home can find out by itself.
	hidden := []string{"pack.cells", "pack.rate", "gears.efficiency", "motors.rotor_inertia", "motors.inductance"}
	questions := interview.ByKey()
	for _, values := range setups {
		s, err := setup.Of(values)
		if err != nil {
			t.Fatal(err)
		}
		a, err := packcheck.AssessWith(t.Context(), s, packcheck.Options{Draws: 64})
		if err != nil {
			t.Fatal(err)
		}
		check := func(key, why string) {
			key = strings.TrimPrefix(key, "original.")
			if _, asked := questions[key]; !asked && key != "" && !slices.Contains(hidden, key) {
				t.Errorf("%s: nobody asks for %s", why, key)
			}
		}
		for _, x := range a.Assumed {
			if x.Effect >= 0.05 {
				check(x.Key, "it moves the answer")
			}
		}
		for _, f := range a.Findings {
			if f.Level >= answer.Watch {
				check(f.Guess, "a finding rests on it as a guess")
			}
		}
		for _, item := range a.Items {
			for _, key := range item.Untold {
				check(key, "it was not told")
			}
		}
		if list := interview.Next(values, a, nil); len(list) == 0 || list[0].Why == "" {
			t.Errorf("%v: nothing is asked for a reason", values)
		}
	}
}

// What is asked of a reading says of which battery it is, once.
func TestAQuestionOfAReadingNamesTheBattery(t *testing.T) {
	for _, c := range []struct {
		given    map[string]string
		of, with string
	}{
		{nil, "the one to be used", "with this battery"},
		{map[string]string{"original.motors.can": "550"}, "the one to be used", "with this battery"},
		{map[string]string{"original.pack.chemistry": "agm"}, "the one that it came with", "with the battery it came with"},
		{map[string]string{"original.pack.label": "12 V 7 Ah", "original.measured.ride_time": "1 h"}, "the one to be used", "with this battery"},
	} {
		for key, want := range map[string]string{
			"measured.rest_voltage": "How many volts does the battery have at rest (" + c.of + ")?",
			"measured.top_speed":    "How fast is it on the flat, " + c.with + "?",
		} {
			q := interview.ByKey()[key]
			if got := q.Beside(c.given).Asks; got != want {
				t.Errorf("beside %v: %q, want %q", c.given, got, want)
			}
		}
	}
}
