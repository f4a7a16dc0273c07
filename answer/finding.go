package answer

import (
	"cmp"
	"slices"
)

// Finding is one judgement. It carries its whole meaning in fields, made where
// the limit is known; headline, changes, shopping list and report sections read
// these and never its words.
//
// Found and Limit are in Unit, one of the SI units of this module ("V", "A",
// "Ohm", "degC", "s", "h", "d", "m", "m/s", "kg", "N", "W", "A2s", "mm2", "x"
// for a ratio, "share" for a part of a whole, "" where no number applies).
type Finding struct {
	Code   string `json:"code"`   // a constant of the package that makes it; lower case with hyphens, never reused
	Level  Level  `json:"level"`  // how bad
	Harm   Harm   `json:"harm"`   // who or what suffers
	Topic  Topic  `json:"topic"`  // part of the report
	Item   Item   `json:"item"`   // part of the vehicle; empty where it is the whole
	Title  string `json:"title"`  // one plain sentence
	Advice string `json:"advice"` // what to do; empty when there is nothing to do

	Found  float64 `json:"found"`  // what this setup has, in Unit
	Limit  float64 `json:"limit"`  // what it was held against, in Unit
	Unit   string  `json:"unit"`   // unit of Found and Limit
	Want   Side    `json:"want"`   // which side of the limit is right
	Reads  Reads   `json:"-"`      // how Found is to be read
	Source string  `json:"source"` // ID of the [Source] of the limit

	Change  Change  `json:"change"`             // what it asks to be changed
	LimitA  float64 `json:"limit_a,omitempty"`  // with LimitCurrent: the limit that would do, A
	LimitMS float64 `json:"limit_ms,omitempty"` // with LimitSpeed: the speed that would do, m/s
	Habit   string  `json:"habit,omitempty"`    // how to use the vehicle as it is
	About   string  `json:"-"`                  // the question that it answers: a worse finding of the same silences one that says fine
	Gravity int     `json:"-"`                  // among findings of one level and harm, which comes first; larger first, usually 0

	// LimitKey is the setup key whose value the limit is. Where that was assumed,
	// what the assumption rests on stands among the sources in the place of the
	// part's own rating.
	LimitKey string `json:"-"`

	// EndsRides says that no ride would outlast it, so that no vehicle as it was made
	// has lived with it.
	EndsRides bool `json:"-"`

	// Ladder names what several findings are rungs of, the graver the higher: who
	// stands on a higher rung has passed the lower ones, and counts for them too.
	Ladder string `json:"-"`
	Rung   int    `json:"-"`

	// Added says that it is of something that people add to a vehicle, or do with it, which has not
	// lived with it as it was made.
	Added bool `json:"-"`

	// Today says that its advice is to be followed today and before anybody rides: waiting
	// does the harm. It stands before all else of its level.
	Today bool `json:"-"`

	// OfAge says that whoever drives is too young: nothing that is bought, set or read
	// mends that.
	OfAge bool `json:"-"`

	// NeverRidden says that nobody rides with such a battery, whatever else is changed:
	// figures of a ride would only invite.
	NeverRidden bool `json:"never_ridden,omitempty"`

	// Finished says that the battery is: nobody charges or uses it any more. What
	// would have somebody charge it, as Charging says, is then not told.
	Finished bool `json:"-"`
	Charging bool `json:"-"`

	// Decides are the setup keys whose values decide the finding. Where one of
	// them was assumed it rests on a guess.
	Decides []string `json:"decides,omitempty"`

	// Untold says in words what was not told, in the order of Decides: it is asked for.
	Untold []string `json:"untold,omitempty"`

	// OnceFull says that it does not hold yet: the battery is partly charged, and
	// it will hold once somebody has charged it.
	OnceFull bool `json:"once_full,omitempty"`

	// Fate says that it is what [DrawFigures] counts over all draws: its share is that one.
	Fate Fate `json:"-"`

	// What the draws say; set where they are counted.
	Share     float64   `json:"share"`           // in what share of the draws it holds, 0 to 1
	Certainty Certainty `json:"certainty"`       // that share in a word
	Guess     string    `json:"guess,omitempty"` // the key of the assumed value that decides it
}

// Fate is what may keep a vehicle from a ride.
type Fate int

// The fates that findings tell, too.
const (
	FateNone   Fate = iota
	FateStuck       // it does not get going
	FateCrawls      // it barely moves
)

// Unread returns what a finding on a figure becomes where the figure is no
// number: nobody knows whether it is past its limit, so it is neither fine nor a
// danger. The title says of what.
func (f Finding) Unread(title string) Finding {
	f.Level, f.Harm, f.Gravity, f.Reads, f.Found = Watch, Wear, 0, AsUnknown, 0
	f.Change, f.Habit, f.LimitA, f.LimitMS = LookUp, "", 0, 0
	f.Title, f.Advice = title, "The figure that was given is no number: measure or compute it again."
	return f
}

// PartRating is the ID of the source of a limit that is printed on the part itself.
const PartRating = "part-rating"

// Source is where a constant, a limit or a table row comes from.
type Source struct {
	ID    string `json:"id"`    // short, lower case with hyphens
	Text  string `json:"text"`  // title, edition or year, clause, table or page
	Known string `json:"known"` // "copy", "primary", "memory", "computed", "common practice" ...
}

// Worst returns the worst level among the findings, Fine when there are none.
func Worst(findings []Finding) Level {
	worst := Fine
	for _, f := range findings {
		worst = max(worst, f.Level)
	}
	return worst
}

// ChargerOut reports whether the finding keeps the charger from being used.
func (f *Finding) ChargerOut() bool {
	return f.Item == Charger && f.Topic == TopicCharge && f.Level >= FixFirst
}

// PutAway reports whether it is about how the battery is kept, such as over the winter.
func (f *Finding) PutAway() bool { return f.Topic == TopicCharge && f.Change == KeepCharged }

// RestsBadly reports whether it is that a battery rests so that it is not in order.
func (f *Finding) RestsBadly() bool {
	return f.Level >= FixFirst && f.Item == Battery && slices.Contains(f.Decides, KeyMeasuredRestVoltage)
}

// Blocks reports whether something is to be put right only because nobody told what it is:
// who looks may find it in order.
func (f *Finding) Blocks() bool {
	return f.Level == FixFirst && f.Reads == AsUnknown && (f.Change == FitCharger || f.Change == LookUp)
}

// place is that of a finding by who suffers and how surely, the larger the earlier: what
// hurts somebody, and then what may, each by whom; then parts, then what hurts
// somebody in few draws only, and at last what only ages. A danger that is certain comes
// before one that is likely. What is not known, or is watched for a guess, only may.
func (f *Finding) place() int {
	const (
		rare, parts, open = 1, 2, 3 // of ages only 0
		likely, certain   = open + 2, open + 4
	)
	at := 0
	switch {
	case f.Harm == Part:
		return parts
	case f.Harm < Part:
		return at
	case f.Certainty == Rare:
		return rare
	case f.Certainty == Possible, f.Reads == AsUnknown, f.Level == Watch && f.Guess != "":
		at = open
	case f.Certainty == Likely && f.Level == Danger:
		at = likely
	default:
		at = certain
	}
	if f.Harm >= Child {
		at++
	}
	return at
}

// today puts first what cannot wait.
func today(a, b Finding) int {
	switch {
	case a.Today == b.Today:
		return 0
	case a.Today:
		return -1
	}
	return 1
}

// Sort orders findings by level, what cannot wait, whom they hurt and how surely, gravity and share,
// worst first, then by code and title, so that the same findings always stand in the same order.
func Sort(findings []Finding) {
	slices.SortStableFunc(findings, func(a, b Finding) int {
		return cmp.Or(
			cmp.Compare(b.Level, a.Level),
			today(a, b),
			cmp.Compare(b.place(), a.place()),
			cmp.Compare(b.Gravity, a.Gravity),
			cmp.Compare(a.Certainty, b.Certainty),
			cmp.Compare(b.Share, a.Share),
			cmp.Compare(a.Code, b.Code),
			cmp.Compare(a.Title, b.Title),
		)
	})
}
