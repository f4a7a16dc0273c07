package answer_test

import (
	"testing"

	"example.org/packcheck/answer"
)

// What is certain stands before what is possible, at the same level: a fire in each vehicle was
// told behind a burn in one of ten, and what happens in four of ten behind what hurts
// somebody in one of forty. A level always comes first.
func TestFindingsStandByWhomTheyHurtAndHowSurely(t *testing.T) {
	of := func(code string, l answer.Level, h answer.Harm, c answer.Certainty, share float64) answer.Finding {
		return answer.Finding{Code: code, Level: l, Harm: h, Certainty: c, Share: share}
	}
	guess := of("watch-guess-fire", answer.Watch, answer.House, answer.Plain, 1)
	guess.Guess = answer.KeyFuseRating
	unread := of("fix-unread-fire", answer.FixFirst, answer.House, answer.Plain, 1)
	unread.Reads = answer.AsUnknown
	want := []answer.Finding{
		of("danger-child", answer.Danger, answer.Child, answer.Plain, 1),
		of("danger-fire", answer.Danger, answer.House, answer.Plain, 1),
		of("danger-likely-child", answer.Danger, answer.Child, answer.Likely, 0.5),
		of("danger-likely-fire", answer.Danger, answer.House, answer.Likely, 0.8),
		of("fix-child", answer.FixFirst, answer.Child, answer.Plain, 1),
		of("fix-likely-child", answer.FixFirst, answer.Child, answer.Likely, 0.7),
		of("fix-fire", answer.FixFirst, answer.House, answer.Plain, 1),
		of("fix-possible-child", answer.FixFirst, answer.Child, answer.Possible, 0.1),
		unread,
		of("fix-possible-fire", answer.FixFirst, answer.House, answer.Possible, 0.2),
		of("fix-part", answer.FixFirst, answer.Part, answer.Plain, 1),
		of("watch-possible-child", answer.Watch, answer.Child, answer.Possible, 0.3),
		guess,
		of("watch-part-b", answer.Watch, answer.Part, answer.Possible, 0.4),
		of("watch-part-a", answer.Watch, answer.Part, answer.Possible, 0.2),
		of("watch-rare-fire", answer.Watch, answer.House, answer.Rare, 0.025),
		of("watch-wear", answer.Watch, answer.Wear, answer.Plain, 1),
	}
	got := make([]answer.Finding, 0, len(want))
	for i := range want { // neither in order nor against it
		got = append(got, want[(i*7+3)%len(want)])
	}
	answer.Sort(got)
	for i := range want {
		if got[i].Code != want[i].Code {
			t.Errorf("place %d: %s, want %s", i, got[i].Code, want[i].Code)
		}
	}
}
