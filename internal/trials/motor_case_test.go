package trials_test

import (
	"testing"

	"example.org/packcheck/answer"
	"example.org/packcheck/drive"
	"example.org/packcheck/internal/judge"
)

// A motor that was found warmer makes an answer of warmer motors, by thermometer and
// by hand; the median moves towards what was read.
func TestAMotorThatWasFoundWarmerIsWarmerInTheAnswer(t *testing.T) {
	t.Parallel()
	caseC := func(key, text string) float64 {
		s := stock()
		if key != "" {
			s = s.with(key, `"`+text+`"`)
		}
		r, known := foretold(t, s.toml(), 256)["ride.motor_case_c"]
		if !known {
			t.Fatalf("%s: no temperature of the motors", text)
		}
		return r.Likely
	}
	none := caseC("", "nothing read")
	cool, hot := caseC("measured.motor_temperature", "32 C"), caseC("measured.motor_temperature", "95 C")
	if !(cool < none && none < hot) {
		t.Errorf("32 C read: %.0f C; nothing: %.0f C; 95 C: %.0f C", cool, none, hot)
	}
	// ISO 13732-1: 67.5 C in one second, 48 C in ten minutes.
	long, short := caseC("measured.motor_touch", "can hold 10 min"), caseC("measured.motor_touch", "1 s")
	if !(long < short) {
		t.Errorf("held for ten minutes: %.0f C, for one second: %.0f C", long, short)
	}
}

// What was measured is judged, whatever the draws make of it; also in a vehicle that
// is as it was made.
func TestAMotorsMeasuredHeatIsJudgedItself(t *testing.T) {
	t.Parallel()
	// A case of 99 C, read to some kelvin, may well be above the 100 C.
	for text, want := range map[string]answer.Level{"60 C": answer.Fine, "99 C": answer.Watch, "110 C": answer.FixFirst, "140 C": answer.FixFirst} {
		a := readWith(t, rigNamed(t, "block").but("measured.motor_temperature="+text).toml(), few)
		if got := has(a, drive.CodePlasticSoftens); got != want {
			t.Errorf("%s: %v, want %v", text, got, want)
		}
		for _, f := range a.Findings {
			if f.Code == drive.CodePlasticSoftens && f.Level == answer.FixFirst && (f.Guess != "" || f.Certainty != answer.Plain) {
				t.Errorf("%s: what was read is called a guess at %q, in %.0f %%", text, f.Guess, 100*f.Share)
			}
		}
	}
}

// A motor that would have to be hotter than its burnt winding, or colder than the air,
// cannot be: the reading is told to disagree, and the answer does without it.
func TestAMotorReadingThatCannotBeTrueIsTold(t *testing.T) {
	t.Parallel()
	for text, want := range map[string]bool{"-30 C": true, "40 C": false} {
		a := readWith(t, rigNamed(t, "labels").but("outing.air=20 C; measured.motor_temperature="+text).toml(), 256)
		if got := has(a, judge.CodeReadingsDisagree) > answer.Fine; got != want {
			t.Errorf("%s: disagrees %v, want %v", text, got, want)
		}
	}
}
