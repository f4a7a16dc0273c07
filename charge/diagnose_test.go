package charge_test

import (
	"math"
	"slices"
	"strings"
	"testing"

	"example.org/packcheck/answer"
	"example.org/packcheck/charge"
)

func diagnose(t testing.TB, e charge.Evidence) charge.Diagnosis {
	t.Helper()
	if e.Pack == nil {
		e.Pack = pack(t, "agm", 6, 7)
	}
	if e.TempC == 0 {
		e.TempC = 20
	}
	d, err := charge.Diagnose(e)
	if err != nil {
		t.Fatal(err)
	}
	return d
}

// The rested volts are those of the makers' table for a 12 V block (12.80 to
// 12.90 full, 12.30 half, 11.80 empty after 24 h); a new 7 Ah block has about
// 20 mOhm by its sheets.
func TestTheLikeliestConditionIsTheOneThatExplainsTheVolts(t *testing.T) {
	tests := []struct {
		name  string
		e     charge.Evidence
		want  charge.Condition
		least float64
		next  string
	}{
		{"full and holds up", charge.Evidence{RestV: 12.8, HoursRested: 24, LoadedV: 12.1, LoadedA: 8}, charge.Sound, 0.6, "time it on a known load"},
		{"rests empty", charge.Evidence{RestV: 11.85, HoursRested: 24}, charge.Flat, 0.5, "Charge it full"},
		{"rests well, falls deep at known amps", charge.Evidence{RestV: 12.6, HoursRested: 24, LoadedV: 9.5, LoadedA: 8}, charge.Worn, 0.6, "battery's own posts"},
		{"ten and a half volts", charge.Evidence{RestV: 10.65, HoursRested: 24, LoadedV: 10.0, LoadedA: 5}, charge.ShortedCell, 0.5, "2 V short"},
		{"all gone under any load", charge.Evidence{RestV: 12.7, HoursRested: 24, LoadedV: 1}, charge.BadConnection, 0.8, "posts"},
	}
	for _, tt := range tests {
		d := diagnose(t, tt.e)
		top := d.Suspicions[0]
		if top.Condition != tt.want || top.Share < tt.least {
			t.Errorf("%s: %+v, want %v at least %g", tt.name, d.Suspicions, tt.want, tt.least)
		}
		if !strings.Contains(d.NextTest, tt.next) {
			t.Errorf("%s: next %q, want %q in it", tt.name, d.NextTest, tt.next)
		}
		if len(d.Why) < 3 || !strings.Contains(strings.Join(d.Why, " "), "estimates") {
			t.Errorf("%s: why %q", tt.name, d.Why)
		}
		if (len(d.Findings) == 0) != (tt.want == charge.Sound) {
			t.Errorf("%s: findings %+v", tt.name, d.Findings)
		}
	}
}

func TestSharesAddUpAndNothingIsEverRuledOut(t *testing.T) {
	for v := 1.0; v <= 15; v += 0.7 {
		for _, load := range []float64{0, 0.1, v / 2, v} {
			for _, h := range []float64{0, 24} {
				d := diagnose(t, charge.Evidence{RestV: v, HoursRested: h, LoadedV: load})
				sum, last := 0.0, 1.0
				for _, s := range d.Suspicions {
					if s.Share <= 0 || s.Share > last || s.Words == "" {
						t.Fatalf("%g V, %g V loaded: %+v", v, load, d.Suspicions)
					}
					sum, last = sum+s.Share, s.Share
				}
				if math.Abs(sum-1) > 1e-9 || len(d.Suspicions) != 5 || d.NextTest == "" {
					t.Fatalf("%g V: shares add up to %g: %+v", v, sum, d.Suspicions)
				}
			}
		}
	}
}

// Volts right after a charge prove less than volts after a day.
func TestAnUnrestedReadingIsLessSure(t *testing.T) {
	share := func(hours float64) float64 {
		for _, s := range diagnose(t, charge.Evidence{RestV: 12.0, HoursRested: hours}).Suspicions {
			if s.Condition == charge.Flat {
				return s.Share
			}
		}
		return 0
	}
	if !(share(24) > share(0)) {
		t.Errorf("flat: %g after a day, %g at once", share(24), share(0))
	}
	early := strings.Join(diagnose(t, charge.Evidence{RestV: 12.0}).Why, " ")
	if !strings.Contains(early, "not rested") {
		t.Errorf("why: %q", early)
	}
}

func TestABatteryJustChargedIsNotMerelyFlat(t *testing.T) {
	e := charge.Evidence{RestV: 12.0, HoursRested: 24}
	before := diagnose(t, e).Suspicions[0]
	e.JustCharged = true
	after := diagnose(t, e).Suspicions[0]
	if before.Condition != charge.Flat || after.Condition == charge.Flat && after.Share >= before.Share {
		t.Errorf("before %+v, after a full charge %+v", before, after)
	}
}

func TestOnlyLeadAcidIsDiagnosed(t *testing.T) {
	agm := pack(t, "agm", 6, 7)
	for name, e := range map[string]charge.Evidence{
		"no pack":         {RestV: 12, TempC: 20},
		"lithium":         {Pack: pack(t, "li-ion", 5, 5), RestV: 18, TempC: 20},
		"no volts":        {Pack: agm, TempC: 20},
		"absurd volts":    {Pack: agm, RestV: 240, TempC: 20},
		"not a number":    {Pack: agm, RestV: math.NaN(), TempC: 20},
		"negative rest":   {Pack: agm, RestV: 12, HoursRested: -1, TempC: 20},
		"no temperature":  {Pack: agm, RestV: 12, TempC: math.NaN()},
		"infinite amps":   {Pack: agm, RestV: 12, LoadedA: math.Inf(1), TempC: 20},
		"negative loaded": {Pack: agm, RestV: 12, LoadedV: -1, TempC: 20},
	} {
		if _, err := charge.Diagnose(e); err == nil || !strings.HasPrefix(err.Error(), "charge: ") {
			t.Errorf("%s: %v", name, err)
		}
	}
}

// One that rests empty is charged first of all; one that only may be low, or has not
// settled, is not.
func TestAnEmptyBatteryIsChargedToday(t *testing.T) {
	for _, row := range []struct {
		restV, hours float64
		today        bool
	}{{11.4, 24, true}, {11.4, 0, false}, {11.95, 24, false}, {12.8, 24, false}} {
		d := diagnose(t, charge.Evidence{RestV: row.restV, HoursRested: row.hours})
		if got := slices.ContainsFunc(d.Findings, func(f answer.Finding) bool { return f.Today }); got != row.today {
			t.Errorf("%g V after %g h: %v, want %v", row.restV, row.hours, got, row.today)
		}
	}
}

// At 9.8 V a block of 12 V was both "lower than an empty one" and "at the volts of an empty
// one"; the first says it all. Of one of two it is said which.
func TestABatteryLowerThanEmptyIsNotCalledEmptyToo(t *testing.T) {
	for _, f := range diagnosed(t, 9.8, 0, 0) {
		if f.Code == charge.CodeOldFlat {
			t.Errorf("at 9.8 V: %q", f.Title)
		}
	}
	e := charge.Evidence{RestV: 11.85, HoursRested: 24, Name: "the battery at 11.9 V"}
	if fs := diagnose(t, e).Findings; len(fs) != 1 || !strings.HasPrefix(fs[0].Title, "The battery at 11.9 V is ") {
		t.Errorf("%+v", fs)
	}
	for _, v := range []float64{5, 9.8, 11.2, 16} {
		if fs := charge.JudgeResting(profile(t, "agm"), 6, charge.Resting{V: v, Name: "The one"}); len(fs) != 1 || !strings.HasPrefix(fs[0].Title, "The one ") {
			t.Errorf("%g V: %+v", v, fs)
		}
	}
	if fs := charge.JudgeResting(profile(t, "li-ion"), 5, charge.Resting{V: 13, Name: "The one"}); len(fs) != 1 || !strings.HasPrefix(fs[0].Title, "The one ") {
		t.Errorf("lithium: %+v", fs)
	}
}

// Whoever has waited a night is not sent to wait for one.
func TestAPackThatRestedANightIsNotToRestAnother(t *testing.T) {
	for _, v := range []float64{10.4, 13.9} { // lower than an empty one, above a full one
		for hours, want := range map[float64]bool{0: true, 1: true, 24: false} {
			fs := charge.JudgeResting(profile(t, "agm"), 6, charge.Resting{V: v, Hours: hours})
			if len(fs) != 1 || fs[0].Level != answer.FixFirst || strings.Contains(fs[0].Advice, "next morning") != want {
				t.Errorf("%g V after %g h: %+v", v, hours, fs)
			}
		}
	}
}
