package ask

import (
	"cmp"
	"fmt"
	"math"
	"slices"
	"strconv"
	"strings"

	"example.org/packcheck/answer"
	"example.org/packcheck/battery"
	"example.org/packcheck/charge"
	"example.org/packcheck/chemistry"
	"example.org/packcheck/cutoff"
	"example.org/packcheck/drive"
	"example.org/packcheck/internal/later"
	"example.org/packcheck/setup"
	"example.org/packcheck/tables"
)

// Schema names the shape of an [Answer] written as JSON. Keys are added under
// the same name.
const Schema = "packcheck-ask/1"

// Question is what can be answered; every question of this package is one.
type Question interface {
	Answer() (Answer, error)
}

// Answer is the answer to one question.
type Answer struct {
	Schema string `json:"schema"`
	Asked  string `json:"asked"` // the question as it was understood

	// Level says how bad it is where something was judged; nil where the question
	// was only for a figure.
	Level *answer.Level `json:"level"`

	// The figure that was asked for. Its ends are equal where nothing is open.
	What  string  `json:"what"` // what it is a figure of
	Value float64 `json:"value"`
	Low   float64 `json:"low"`
	High  float64 `json:"high"`
	Unit  string  `json:"unit"` // of [Figure]
	// OrMore says that nothing bounds it above: High is only the last that was
	// looked at.
	OrMore bool `json:"or_more,omitempty"`

	Beside  []Figure        `json:"beside"`  // figures that belong to it
	Limit   *Limit          `json:"limit"`   // what it was held against; nil where nothing was
	Words   []string        `json:"words"`   // the answer in plain sentences, the gist first
	Assumed []string        `json:"assumed"` // what was not told, and what was taken
	Caution string          `json:"caution"` // the one that belongs to it
	Sources []answer.Source `json:"sources"` // of limit, figures and caution, in this order

	// asks is how much is asked for where something is to be fitted or set: of two answers
	// that are as bad, [Over] takes what asks for more.
	asks float64
}

// Figure is a number with its spread, in Unit: one of "V", "A", "Ohm", "Ah",
// "Wh", "W", "degC", "s", "min", "h", "d", "m", "m/s", "mm2", "AWG" (a gauge
// number, 1/0 is 0), "share" (0 to 1) and "x" (a plain ratio).
type Figure struct {
	What   string  `json:"what"`
	Value  float64 `json:"value"`
	Low    float64 `json:"low"`
	High   float64 `json:"high"`
	Unit   string  `json:"unit"`
	OrMore bool    `json:"or_more,omitempty"`
}

// Limit is what a figure was held against.
type Limit struct {
	What  string      `json:"what"`
	Value float64     `json:"value"`
	Unit  string      `json:"unit"`
	Want  answer.Side `json:"want"` // the side of it that is right
}

// Figure returns the figure that was asked for.
func (a *Answer) Figure() Figure {
	return Figure{What: a.What, Value: a.Value, Low: a.Low, High: a.High, Unit: a.Unit, OrMore: a.OrMore}
}

// is sets the figure that was asked for.
func (a *Answer) is(f Figure) {
	a.What, a.Value, a.Low, a.High, a.Unit, a.OrMore = f.What, f.Value, f.Low, f.High, f.Unit, f.OrMore
}

// exactly is a figure without a spread.
func exactly(what string, v float64, unit string) Figure {
	return Figure{What: what, Value: v, Low: v, High: v, Unit: unit}
}

// ranged is a figure of a range.
func ranged(what string, r answer.Range, unit string) Figure {
	return Figure{What: what, Value: r.Likely, Low: r.Low, High: r.High, Unit: unit}
}

// say adds a sentence.
func (a *Answer) say(format string, args ...any) {
	a.Words = append(a.Words, fmt.Sprintf(format, args...))
}

// assume notes what was not told.
func (a *Answer) assume(format string, args ...any) {
	a.Assumed = append(a.Assumed, fmt.Sprintf(format, args...))
}

// beside adds a figure.
func (a *Answer) beside(f ...Figure) { a.Beside = append(a.Beside, f...) }

// cite adds sources by ID, several in one text parted by commas.
func (a *Answer) cite(ids ...string) {
	for _, list := range ids {
		for id := range strings.FieldsFuncSeq(list, func(r rune) bool { return r == ',' || r == ' ' }) {
			s := sourceOf(id)
			if !slices.Contains(a.Sources, s) {
				a.Sources = append(a.Sources, s)
			}
		}
	}
}

// beware sets the caution with its source.
func (a *Answer) beware(text, source string) {
	a.Caution = text
	a.cite(source)
}

// level raises the level; what rests on a guess is no danger.
func (a *Answer) level(l answer.Level, guess bool) {
	if guess {
		l = min(l, answer.FixFirst)
	}
	if a.Level == nil || *a.Level < l {
		a.Level = &l
	}
}

// judged takes over the worst of some findings: its level, its limit and what it
// says; of those that are as bad one that is known before one that is not. What else has
// to be put right is said behind it. What is only fine is left out: one part that is
// fine makes no vehicle so.
func (a *Answer) judged(fs []answer.Finding, guess bool) {
	fs = slices.DeleteFunc(slices.Clone(fs), func(f answer.Finding) bool { return f.Level == answer.Fine })
	if len(fs) == 0 {
		return
	}
	answer.Sort(fs)
	slices.SortStableFunc(fs, func(f, g answer.Finding) int {
		return cmp.Or(cmp.Compare(g.Level, f.Level), cmp.Compare(notKnown(f), notKnown(g)))
	})
	a.tell(fs[0], guess, whole)
	for _, f := range fs[1:] {
		if f.Level >= answer.FixFirst {
			a.say("%s", f.Title)
			a.cite(f.Source)
		}
	}
}

// notKnown is 1 for a finding on what was not told, 0 for any other.
func notKnown(f answer.Finding) int {
	if f.Reads == answer.AsUnknown {
		return 1
	}
	return 0
}

// tell takes over one finding.
func (a *Answer) tell(f answer.Finding, guess bool, told func(answer.Finding) string) {
	a.level(f.Level, guess)
	a.Words = append(a.Words, told(f))
	if a.Limit == nil && f.Reads == answer.AsNumber && f.Unit != "" {
		a.Limit = &Limit{What: cmp.Or(string(f.Item), "limit"), Value: f.Limit, Unit: f.Unit, Want: f.Want}
	}
	a.cite(f.Source)
}

// checked is the last step of every answer: no number leaves that is none.
func (a Answer) checked() (Answer, error) {
	a.Schema = Schema
	a.Beside = slices.Clone(a.Beside)
	first := a.Figure()
	figures := []*Figure{&first}
	for i := range a.Beside {
		figures = append(figures, &a.Beside[i])
	}
	for _, f := range figures {
		for _, v := range []*float64{&f.Value, &f.Low, &f.High} {
			if math.IsNaN(*v) || math.IsInf(*v, 0) {
				return Answer{}, fmt.Errorf("ask: %s cannot be computed from what is given", cmp.Or(f.What, "this"))
			}
			*v = told(*v)
		}
	}
	a.is(first)
	if a.Limit != nil {
		if a.Limit.Value = told(a.Limit.Value); math.IsNaN(a.Limit.Value) || math.IsInf(a.Limit.Value, 0) {
			a.Limit = nil
		}
	}
	if a.Beside == nil {
		a.Beside = []Figure{}
	}
	if a.Assumed == nil {
		a.Assumed = []string{}
	}
	return a, nil
}

// told drops the digits that only arithmetic gave.
func told(v float64) float64 {
	out, err := strconv.ParseFloat(strconv.FormatFloat(v, 'g', 9, 64), 64)
	if err != nil { // cannot be: it was just written
		return v
	}
	return out
}

// allSources are the sources of all packages whose figures are used here.
var allSources = later.Value[map[string]answer.Source]{Make: func() map[string]answer.Source {
	m := map[string]answer.Source{}
	for _, list := range [][]answer.Source{
		tables.Builtin().Sources(), chemistry.Builtin().Sources(), battery.Sources(), drive.Sources(),
		cutoff.Sources(), charge.Sources(), setup.Sources(),
	} {
		for _, s := range list {
			if _, seen := m[s.ID]; !seen {
				m[s.ID] = s
			}
		}
	}
	return m
}}

// sourceOf finds a source. One that nobody defines is kept, so that it shows.
func sourceOf(id string) answer.Source {
	if s, ok := allSources.Get()[id]; ok {
		return s
	}
	return answer.Source{ID: id, Text: "not listed", Known: "unknown"}
}
