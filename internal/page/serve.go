package page

import (
	"bytes"
	"encoding/json"
	"fmt"
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
	Draws  int               `json:"draws"`
	Ways   bool              `json:"ways"`
	Format string            `json:"format"`
}

// Reply is what the engine says to it; what has nothing to say is left out.
type Reply struct {
	Faults []Fault           `json:"faults,omitempty"` // what is wrong, in plain words; nothing else then
	Given  map[string]string `json:"given,omitempty"`
	Sets   map[string]string `json:"sets,omitempty"` // what an answer fills in
	Fields []Field           `json:"fields,omitempty"`
	Next   []Question        `json:"next,omitempty"`
	Parts  map[string]string `json:"parts,omitempty"` // of the HTML report
	Word   string            `json:"word,omitempty"`  // the answer in a word or two
	Level  string            `json:"level,omitempty"`
	Draws  int               `json:"draws,omitempty"`
	Off    float64           `json:"off,omitempty"`  // standard error of a share of a half
	Ways   []Way             `json:"ways,omitempty"` // as the report lists them
	Text   string            `json:"text,omitempty"`
	Waits  bool              `json:"waits,omitempty"` // there is too little for an answer yet
}

// Fault is something wrong with what was typed, opened or sent.
type Fault struct {
	Key  string `json:"key,omitempty"`
	Says string `json:"says"`
}

// Way is a way out with the keys that it sets; an empty text takes one out.
type Way struct {
	Title string            `json:"title"`
	Sets  map[string]string `json:"sets"`
}

// Session answers requests. It remembers the last assessment, so that its text for
// a forum costs nothing more.
type Session struct {
	given map[string]string
	draws int
	ways  bool
	last  *answer.Assessment
}

// Serve answers one request. It returns JSON whatever it is given, and a fault in
// plain words where that is no request; it never panics.
func (s *Session) Serve(request []byte) (reply []byte) {
	defer func() {
		if r := recover(); r != nil {
			s.last = nil
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
		"begin":  begin,
		"fill":   fill,
		"assess": s.assess,
		"write":  s.write,
		"link":   link,
		"unlink": unlink,
		"save":   save,
		"open":   open,
		"fields": fields,
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
	return Reply{Fields: out, Parts: map[string]string{string(report.PartSafety): report.HTMLSafety()}}
}

// assess answers what is given so far, and asks what is the most useful next.
func (s *Session) assess(r *Request) Reply {
	a, reply := s.assessment(r)
	reply.Next = next(r, a)
	if a == nil {
		return reply
	}
	parts, word, err := report.HTMLParts(a, reckon.Explain)
	if err != nil {
		return said(err.Error())
	}
	reply.Parts = map[string]string{}
	for _, p := range parts {
		reply.Parts[string(p.Part)] = p.Markup
	}
	reply.Word, reply.Level, reply.Draws, reply.Off = word, a.Verdict.String(), a.Draws.Count, a.Draws.ShareErr
	for _, w := range a.Ways {
		sets := map[string]string{}
		for _, set := range w.Sets {
			sets[set.Key] = set.Value
		}
		reply.Ways = append(reply.Ways, Way{w.Title, sets})
	}
	return reply
}

// assessment is the answer to what is given; nil with the reply that says why
// there is none.
func (s *Session) assessment(r *Request) (*answer.Assessment, Reply) {
	if s.last != nil && s.draws == r.Draws && s.ways == r.Ways && maps.Equal(s.given, r.Given) {
		return s.last, Reply{}
	}
	if r.Draws != FewDraws && r.Draws != ManyDraws {
		return nil, said(fmt.Sprintf("The page draws %d or %d vehicles.", FewDraws, ManyDraws))
	}
	if r.Given["pack.label"] == "" && !slices.ContainsFunc(slices.Collect(maps.Keys(r.Given)), isPack) {
		return nil, Reply{Waits: true}
	}
	if faults := elsewhere(r.Given); faults != nil {
		return nil, Reply{Faults: faults}
	}
	made, err := setup.Of(r.Given)
	if err != nil {
		return nil, Reply{Faults: faultsOf(err)}
	}
	a, err := reckon.Assess(made, reckon.Options{Draws: r.Draws, Ways: r.Ways})
	if err != nil {
		return nil, Reply{Faults: faultsOf(err)}
	}
	s.given, s.draws, s.ways, s.last = maps.Clone(r.Given), r.Draws, r.Ways, a
	return a, Reply{}
}

// write is the answer as a text to hand on.
func (s *Session) write(r *Request) Reply {
	format, err := report.ParseFormat(r.Format)
	if err != nil {
		return said(err.Error())
	}
	a, reply := s.assessment(r)
	if a == nil {
		return reply
	}
	var out bytes.Buffer
	if err := report.Write(&out, a, report.Options{Format: format, Explain: reckon.Explain}); err != nil {
		return said(err.Error())
	}
	return Reply{Text: out.String()}
}
