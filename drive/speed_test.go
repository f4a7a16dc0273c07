package drive_test

import (
	"regexp"
	"testing"

	"example.org/packcheck/drive"
)

func TestStoppingDistances(t *testing.T) {
	// AASHTO Green Book: 0.278 V t + 0.039 V^2/a with 2.5 s and 3.4 m/s2.
	for _, c := range []struct{ speedKmh, react, brake, sum float64 }{
		{20, 13.9, 4.6, 18.5},
		{30, 20.9, 10.3, 31.2},
		{40, 27.8, 18.4, 46.2},
	} {
		react, brake := drive.Stop{SpeedMS: c.speedKmh * kmh, ReactionS: 2.5, DecelMS2: 3.4}.Distances()
		near(t, "reaction, m", react, c.react, 0.07) // the book multiplies with 0.278
		near(t, "braking, m", brake, c.brake, 0.3)   // the book's 0.039 is 1/(2 x 3.6^2) = 0.03858 rounded up
		near(t, "together, m", react+brake, c.sum, 0.3)
	}
	// NCERT Physics XI, Ex. 3.7, p. 50: v^2/(2 a).
	_, brake := drive.Stop{SpeedMS: 20, DecelMS2: 5}.Distances()
	near(t, "v^2/(2 a), m", brake, 40, 0)
	// Computed: locked plastic wheels at friction 0.3, 8 km/h, a child of 5.
	react, brake := drive.Stop{SpeedMS: 8 * kmh, ReactionS: drive.ReactionS(5), DecelMS2: 0.3 * drive.GravityMS2}.Distances()
	near(t, "reaction, m", react, 1.03, 0.005)
	near(t, "braking, m", brake, 0.84, 0.005)
	near(t, "together, m", react+brake, 1.87, 0.005)
}

// Source: Dev. Med. Child Neurol. 26 (1984) 490-494: 465 ms at 5 years, 190 ms
// at 15, adult level at 16.
func TestReactionTimeByAge(t *testing.T) {
	near(t, "at 5", drive.ReactionS(5), 0.465, 0.0005)
	near(t, "at 15", drive.ReactionS(15), 0.190, 0.0005)
	near(t, "an adult's", drive.ReactionS(40), drive.ReactionS(16), 0)
	near(t, "a toddler's is not extrapolated", drive.ReactionS(2), drive.ReactionS(4), 0)
	for age := 4.0; age < 16; age++ {
		if drive.ReactionS(age+1) >= drive.ReactionS(age) {
			t.Errorf("reaction at %v is not quicker than at %v", age+1, age)
		}
	}
}

// Computed: v^2/(2 g Crr).
func TestFreeRoll(t *testing.T) {
	for _, c := range []struct{ speedKmh, coefficient, want, digit float64 }{
		{8, 0.02, 12.6, 0.05},
		{8, 0.03, 8.4, 0.05},
		{8, 0.05, 5.0, 0.05},
		{8, 0.10, 2.5, 0.05},
		{4, 0.02, 3.15, 0.005},
		{4, 0.03, 2.10, 0.005},
		{4, 0.05, 1.26, 0.005},
		{4, 0.10, 0.63, 0.005},
	} {
		near(t, "m", drive.FreeRoll{SpeedMS: c.speedKmh * kmh, Coefficient: c.coefficient}.Metres(), c.want, c.digit)
	}
	near(t, "12 to 20 V: energy of a bump", drive.BumpRatio(20./12), 2.8, 0.05)
}

// Somebody who reads "13 km/h is too fast, nothing goes faster than 13" learns nothing.
func TestASpeedNeverReadsLikeTheLimitThatItPasses(t *testing.T) {
	number := regexp.MustCompile(`[0-9.]+ (km/h|mph)`)
	told := 0
	for _, age := range []float64{2, 4, 6, 9, 14} {
		for ms := 0.5; ms < 9; ms *= 1.003 {
			for _, f := range (drive.SpeedCheck{SpeedMS: ms, AgeYears: age, Measured: true}).Findings() {
				if words := number.FindAllString(f.Title, -1); f.Code == drive.CodeFastForARideOn && len(words) == 4 {
					told++
					if words[0] == words[2] || words[1] == words[3] {
						t.Errorf("%g m/s at %g years: %s", ms, age, f.Title)
					}
				}
			}
		}
	}
	if told < 100 {
		t.Errorf("%d speeds were too much, want 100 at least", told)
	}
}
