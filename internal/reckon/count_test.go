package reckon_test

import (
	"fmt"
	"math"
	"testing"

	"example.org/packcheck/answer"
	"example.org/packcheck/internal/reckon"
)

// inSome returns the findings of a hundred draws, so many of which have f.
func inSome(n int, f answer.Finding) [][]answer.Finding {
	all := make([][]answer.Finding, 100)
	for i := range n {
		all[i] = []answer.Finding{f}
	}
	return all
}

// Design 3.9: plain from nine in ten, likely from half, possible and one level
// milder from a tenth, rare and to watch from one in fifty where a child or a
// house may be hurt, else not told.
func TestWhatHoldsInFewDrawsIsToldMilder(t *testing.T) {
	for _, c := range []struct {
		draws int
		level answer.Level
		harm  answer.Harm
		want  answer.Level // Fine = not told
		how   answer.Certainty
	}{
		{100, answer.Danger, answer.House, answer.Danger, answer.Plain},
		{90, answer.Danger, answer.House, answer.Danger, answer.Plain},
		{89, answer.Danger, answer.House, answer.Danger, answer.Likely},
		{50, answer.FixFirst, answer.Part, answer.FixFirst, answer.Likely},
		{49, answer.Danger, answer.House, answer.FixFirst, answer.Possible},
		{49, answer.FixFirst, answer.Part, answer.Watch, answer.Possible},
		{11, answer.FixFirst, answer.Part, answer.Watch, answer.Possible},
		{11, answer.Watch, answer.Wear, answer.Watch, answer.Possible},
		{9, answer.FixFirst, answer.Part, answer.Fine, 0},
		{9, answer.Danger, answer.House, answer.Watch, answer.Rare},
		{2, answer.Danger, answer.Child, answer.Watch, answer.Rare},
		{1, answer.Danger, answer.Child, answer.Fine, 0},
	} {
		what := fmt.Sprintf("%v for %v in %d of 100 draws", c.level, c.harm, c.draws)
		got := reckon.Count(inSome(c.draws, answer.Finding{Code: "x", Level: c.level, Harm: c.harm}))
		switch {
		case c.want == answer.Fine && len(got) == 0:
		case c.want == answer.Fine || len(got) != 1:
			t.Errorf("%s: %+v", what, got)
		case got[0].Level != c.want || got[0].Certainty != c.how || math.Abs(got[0].Share-float64(c.draws)/100) > 1e-9:
			t.Errorf("%s: %v, %v, share %g; want %v, %v", what, got[0].Level, got[0].Certainty, got[0].Share, c.want, c.how)
		}
	}
}

// Bad in most draws and worse in some: told as bad as it surely is.
func TestAFindingOfSeveralLevelsIsToldOnceAtTheWorstThatItsSharesAllow(t *testing.T) {
	draws := inSome(100, answer.Finding{Code: "x", Level: answer.Watch})
	for i := range 30 {
		draws[i][0].Level = answer.FixFirst // three in ten: milder is to watch
	}
	for i := range 15 {
		draws[i][0].Level = answer.Danger // milder is to fix first
	}
	got := reckon.Count(draws)
	if len(got) != 1 || got[0].Level != answer.FixFirst || got[0].Certainty != answer.Possible {
		t.Errorf("%+v", got)
	}
}

func TestAGuessIsNeverADangerAndNeverFine(t *testing.T) {
	for n := 2; n <= 100; n++ {
		for level := answer.Watch; level <= answer.Danger; level++ {
			f := answer.Finding{Code: "x", Level: level, Harm: answer.Child, Decides: []string{"wire.gauge"}}
			for _, got := range reckon.Count(inSome(n, f), "wire.gauge") {
				if got.Level == answer.Danger || got.Level == answer.Fine || n < 50 && got.Level > answer.Watch || got.Guess != "wire.gauge" {
					t.Errorf("%v in %d of 100 draws on a guess is %v, guess %q", level, n, got.Level, got.Guess)
				}
			}
			if told := reckon.Count(inSome(n, f)); n >= 90 && (len(told) != 1 || told[0].Level != level || told[0].Guess != "") {
				t.Errorf("%v in %d of 100 draws, nothing guessed: %+v", level, n, told)
			}
		}
	}
}

// A rung of a ladder is left out where those above it tell of most of its vehicles,
// or where it is only wear; what most vehicles do is told beside what a few do besides.
func TestALowerRungIsLeftOutWhereThoseAboveTellOfItsVehicles(t *testing.T) {
	for _, c := range []struct {
		low, high int // draws
		harm      answer.Harm
		want      int // findings
	}{
		{70, 22, answer.Part, 2},
		{70, 46, answer.Part, 2},
		{70, 47, answer.Part, 1},
		{70, 70, answer.Part, 1},
		{70, 22, answer.Wear, 1},
		{70, 0, answer.Wear, 1},
	} {
		draws := inSome(c.low, answer.Finding{Code: "hot", Level: answer.Watch, Harm: c.harm, Ladder: "going", Rung: 1})
		for i := range c.high {
			draws[i] = append(draws[i], answer.Finding{Code: "stands", Level: answer.Watch, Harm: answer.Part, Ladder: "going", Rung: 2})
		}
		if got := reckon.Count(draws); len(got) != c.want {
			t.Errorf("%v in %d draws, and higher up in %d of them: %+v; want %d", c.harm, c.low, c.high, got, c.want)
		}
	}
}

// A vehicle as it was made has lived with what its maker knew and nobody told, but not with
// who rides, with a speed that nothing was found to be made for, or with an owner's fuse.
func TestWhatAVehicleAsMadeHasLivedWith(t *testing.T) {
	for name, tt := range map[string]struct {
		f        answer.Finding
		fuseTold bool
		want     bool
	}{
		"hot motors":                {answer.Finding{Level: answer.FixFirst, Item: answer.Motors, Guess: answer.KeyMotorsCan}, false, true},
		"a speed above its rung":    {answer.Finding{Level: answer.FixFirst, Change: answer.LimitSpeed, Guess: answer.KeyGearsRatio}, false, true},
		"a speed that is a danger":  {answer.Finding{Level: answer.Danger, Change: answer.LimitSpeed, Guess: answer.KeyGearsRatio}, false, false},
		"a rider's guessed mass":    {answer.Finding{Level: answer.FixFirst, Guess: answer.KeyRiderMass}, false, false},
		"the maker's fuse":          {answer.Finding{Level: answer.Danger, Item: answer.Fuse, Guess: answer.KeyWireInsulation}, false, true},
		"a fuse that an owner told": {answer.Finding{Level: answer.Danger, Item: answer.Fuse, Guess: answer.KeyWireInsulation}, true, false},
	} {
		if got := reckon.Survived(tt.f, tt.fuseTold); got != tt.want {
			t.Errorf("%s: lived with %v, want %v", name, got, tt.want)
		}
	}
}
