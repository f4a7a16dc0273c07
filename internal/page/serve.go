package page

import (
	"bytes"
	"encoding/json"
	"maps"
	"slices"

	"example.org/packcheck/answer"
	"example.org/packcheck/internal/interview"
	"example.org/packcheck/internal/reckon"
	"example.org/packcheck/report"
	"example.org/packcheck/setup"
)

// How many vehicles the page draws: few for the first answer, then as many as the
// command does.
const FewDraws, ManyDraws = 128, reckon.UsualDraws

// mostRequest bounds a request in bytes: a setup file of the greatest size, and as
// much again.
const mostRequest = 2 << 20

// Request is what the page asks of the engine.
type Request struct {
	Do     string            `json:"do"` // one of the keys of [Session.Serve]
	Given  map[string]string `json:"given"`
	Passed []string          `json:"passed"` // keys of questions to which nobody knows the answer
	Key    string            `json:"key"`    // of a question
	Text   string            `json:"text"`   // an answer, a file, a fragment
	Today  string            `json:"today"`  // year-month-day where a month is answered
	Packs  []string          `json:"packs"`  // labels of batteries to set beside the one that is asked about
	Format string            `json:"format"`
	Way    string            `json:"way"`   // the mark of a way out, for a link that shows it tried
	Tried  *Tried            `json:"tried"` // what is only tried, nil = it is as it stands
}

// Tried is a way out that somebody looks at as if it were done.
type Tried struct {
	Steps []string `json:"steps"` // what has to be fitted for it
	Today string   `json:"today"` // the answer in a word without it
}

// Reply is what the engine says to it; what has nothing to say is left out.
type Reply struct {
	Faults []Fault           `json:"faults,omitempty"` // what is wrong, in plain words; nothing else then
	Given  map[string]string `json:"given,omitempty"`
	Sets   map[string]string `json:"sets,omitempty"` // what an answer fills in
	Fields []Field           `json:"fields,omitempty"`
	Next   []Question        `json:"next,omitempty"`
	Asks   map[string]string `json:"asks,omitempty"`  // questions that were answered, in the words of now
	Parts  map[string]string `json:"parts,omitempty"` // of the HTML report
	Word   string            `json:"word,omitempty"`  // the answer in a word or two
	Few    string            `json:"few,omitempty"`   // the answer and why, in a line
	Level  string            `json:"level,omitempty"`
	Draws  int               `json:"draws,omitempty"`
	Off    float64           `json:"off,omitempty"`  // standard error of a share of a half
	Ways   []Way             `json:"ways,omitempty"` // as the report lists them
	// Measure are the keys of what is worth looking up next, as the report lists it.
	Measure []string `json:"measure,omitempty"`
	Packs   []string `json:"packs,omitempty"` // labels of batteries to set beside
	Way     string   `json:"way,omitempty"`   // the mark of a way out to try
	Text    string   `json:"text,omitempty"`
	Waits   bool     `json:"waits,omitempty"` // there is too little for an answer yet
	More    bool     `json:"more,omitempty"`  // another reply to the same request comes, with a better answer
}

// Fault is something wrong with what was typed, opened or sent.
type Fault struct {
	Key  string `json:"key,omitempty"`
	Says string `json:"says"`
}

// Way is a way out with the keys that it sets; an empty text takes one out.
type Way struct {
	Title string            `json:"title"`
	Steps []string          `json:"steps"` // what has to be fitted, in words
	Sets  map[string]string `json:"sets"`
	Mark  string            `json:"mark"` // tells it from the others, in a link
}

// Session answers requests. It remembers the last assessment and the last
// comparison, so that their text for a forum costs nothing more.
type Session struct {
	given map[string]string
	last  *answer.Assessment

	besideGiven map[string]string
	besidePacks []string
	beside      *answer.Comparison
}

// Serve answers one request. It returns JSON whatever it is given, and a fault in
// plain words where that is no request; it never panics. An answer goes to early
// as soon as there is a first one, and again with more draws, before it comes
// whole.
func (s *Session) Serve(request []byte, early func(reply []byte)) (reply []byte) {
	defer func() {
		if r := recover(); r != nil {
			s.last, s.beside = nil, nil
			reply = encoded(said("These answers cannot be computed together. Take the last one back."))
		}
	}()
	if len(request) > mostRequest {
		return encoded(said("This is too large: a setup has at most 1 MiB."))
	}
	var r Request
	if err := json.Unmarshal(request, &r); err != nil {
		return encoded(said("The engine was asked something it does not know."))
	}
	do, known := map[string]func(*Request) Reply{
		"begin":   begin,
		"warm":    warm,
		"fill":    fill,
		"assess":  func(r *Request) Reply { return s.assess(r, func(x Reply) { early(encoded(x)) }) },
		"write":   s.write,
		"compare": s.compare,
		"link":    link,
		"unlink":  unlink,
		"save":    save,
		"open":    open,
		"fields":  fields,
	}[r.Do]
	if !known {
		return encoded(said("The engine was asked something it does not know."))
	}
	if faults := bounded(r.Given); faults != nil {
		return encoded(Reply{Faults: faults})
	}
	return encoded(do(&r))
}

func said(text string) Reply { return Reply{Faults: []Fault{{Says: text}}} }

func encoded(r Reply) []byte {
	var out bytes.Buffer
	e := json.NewEncoder(&out)
	e.SetEscapeHTML(false) // it is read by JSON.parse, never by a browser as a page
	if err := e.Encode(r); err != nil {
		return []byte(`{"faults":[{"says":"The answer cannot be shown."}]}`)
	}
	return out.Bytes()
}

// begin is what the page shows before anything was typed.
func begin(*Request) Reply {
	var out []Field
	for _, q := range interview.First() {
		out = append(out, Field{Question: questionOf(q), First: true})
	}
	return Reply{Fields: out, Draws: ManyDraws, Parts: map[string]string{string(report.PartSafety): report.HTMLSafety()}}
}

// warm computes something that nobody asked for, so that the browser has the engine
// at its full speed, and the engine its tables, when somebody asks.
func warm(*Request) Reply {
	s, err := setup.Of(map[string]string{answer.KeyPackLabel: "12 V 7 Ah SLA"})
	if err == nil {
		_, err = reckon.Assess(s, reckon.Options{Draws: FewDraws})
	}
	if err != nil {
		return Reply{Faults: faultsOf(err)}
	}
	return Reply{Waits: true}
}

// assess answers what is given so far, and asks what is the most useful next: from
// few vehicles, then from many, then with ways out.
func (s *Session) assess(r *Request, early func(Reply)) Reply {
	if faults := elsewhere(r.Given); faults != nil {
		return Reply{Faults: faults}
	}
	waits := Reply{Waits: true, Next: next(r, nil), Asks: reworded(r.Given)}
	if !slices.ContainsFunc(slices.Collect(maps.Keys(r.Given)), isPack) {
		return waits
	}
	made, err := setup.Of(r.Given)
	if err != nil {
		return Reply{Faults: faultsOf(err), Next: waits.Next, Asks: waits.Asks}
	}
	more := func(a *answer.Assessment) {
		x := shown(r, a)
		x.More = true
		early(x)
	}
	first, err := reckon.Assess(made, reckon.Options{Draws: FewDraws})
	if err != nil {
		return Reply{Faults: faultsOf(err), Next: waits.Next, Asks: waits.Asks}
	}
	more(first)
	a, err := reckon.AssessShowing(made, reckon.Options{Draws: ManyDraws, Ways: true}, more)
	if err != nil {
		return Reply{Faults: faultsOf(err), Next: waits.Next, Asks: waits.Asks}
	}
	s.given, s.last = maps.Clone(r.Given), a
	return shown(r, a)
}

// shown is an answer as the page shows it.
func shown(r *Request, a *answer.Assessment) Reply {
	parts, word, err := report.HTMLPartsTried(a, reckon.Explain, (*report.Tried)(r.Tried))
	if err != nil {
		return said(err.Error())
	}
	few, err := report.InFew(a, (*report.Tried)(r.Tried))
	if err != nil {
		return said(err.Error())
	}
	reply := Reply{
		Next: next(r, a), Asks: reworded(r.Given), Parts: map[string]string{}, Word: word, Few: few, Level: a.Verdict.String(), Draws: a.Draws.Count, Off: a.Draws.ShareErr,
	}
	for _, p := range parts {
		reply.Parts[string(p.Part)] = p.Markup
	}
	for _, m := range a.Measure {
		reply.Measure = append(reply.Measure, m.Key)
	}
	for i := range a.Ways {
		sets := a.Ways[i].Values()
		reply.Ways = append(reply.Ways, Way{a.Ways[i].Title, a.Ways[i].Steps, sets, wayMark(sets)})
	}
	return reply
}

// write is the whole answer as a text to hand on; one for people has the batteries
// beside it too.
func (s *Session) write(r *Request) Reply {
	format, err := report.ParseFormat(r.Format)
	if err != nil {
		return said(err.Error())
	}
	if s.last == nil || !maps.Equal(s.given, r.Given) {
		if reply := s.assess(r, func(Reply) {}); reply.Faults != nil || reply.Waits {
			return reply
		}
	}
	options := report.Options{Format: format, Explain: reckon.Explain}
	var out bytes.Buffer
	if len(r.Packs) > 0 && format != report.FormatJSON && format != report.FormatHTML {
		c, faults := s.sideBySide(r)
		if faults != nil {
			return Reply{Faults: faults}
		}
		err = report.WriteBeside(&out, s.last, c, options)
	} else {
		err = report.Write(&out, s.last, options)
	}
	if err != nil {
		return said(err.Error())
	}
	if r.Tried != nil && (format == report.FormatMarkdown || format == report.FormatBBCode || format == report.FormatText) {
		return Reply{Text: onlyTried + "\n\n" + out.String()}
	}
	return Reply{Text: out.String()}
}

// onlyTried stands before a text that would else be taken for one about a vehicle as
// it stands.
const onlyTried = "TRIED ONLY: the vehicle is not like this yet. What follows holds once everything of the way out is fitted."
