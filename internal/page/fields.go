package page

import (
	"cmp"
	"maps"
	"slices"
	"strings"
	"time"

	"example.org/packcheck/answer"
	"example.org/packcheck/internal/interview"
	"example.org/packcheck/internal/quantity"
	"example.org/packcheck/setup"
)

// Question is a question as the page shows it.
type Question struct {
	Key     string   `json:"key"`
	Asks    string   `json:"asks"`
	How     string   `json:"how"`
	Example string   `json:"example"`
	Usual   string   `json:"usual"`
	Why     string   `json:"why,omitempty"`
	Choices []Choice `json:"choices,omitempty"`
}

// Choice is one answer to choose.
type Choice struct {
	Value string `json:"value"`
	Says  string `json:"says"`
}

// Field is a question with the answer that stands in it.
type Field struct {
	Question
	First bool              `json:"first,omitempty"` // asked of everybody
	Text  string            `json:"answer,omitempty"`
	Sets  map[string]string `json:"sets,omitempty"`
	Reads string            `json:"reads,omitempty"` // what a label was understood to mean
}

func questionOf(q interview.Question) Question {
	out := Question{Key: q.Key, Asks: q.Asks, How: q.How, Example: q.Example, Usual: q.Usual, Why: q.Why}
	for _, c := range q.Choices {
		out.Choices = append(out.Choices, Choice{c.Value, c.Says})
	}
	return out
}

// next are the questions that are left, the most useful first.
func next(r *Request, a *answer.Assessment) []Question {
	var out []Question
	for _, q := range interview.Next(r.Given, a, func(key string) bool { return slices.Contains(r.Passed, key) }) {
		out = append(out, questionOf(q))
	}
	return out
}

// reworded are the words of the questions that are answered and are asked in others
// now: a reading may be of another battery than it was when it was told.
func reworded(given map[string]string) map[string]string {
	out := map[string]string{}
	for _, q := range interview.All() {
		if now := q.Beside(given).Asks; given[q.Key] != "" && now != q.Asks {
			out[q.Key] = now
		}
	}
	return out
}

// asked finds the question that has a key of its own; for a key that nobody is
// asked for, one is made of what the registry says of it.
func asked(key string) (interview.Question, bool) {
	for _, q := range interview.All() {
		if q.Key == key {
			return q, true
		}
	}
	inner, original := strings.CutPrefix(key, "original.")
	for _, k := range setup.Keys() {
		if k.Path() != inner {
			continue
		}
		return named(key, k.Doc, k.Example, original), true
	}
	for _, table := range setup.Tables() { // one that stands there with nothing told of it
		if table.Name == inner {
			return named(key, table.Doc, setup.NothingTold, original), true
		}
	}
	return interview.Question{}, false
}

// named is a question for what nobody is asked.
func named(key, doc, example string, original bool) interview.Question {
	q := interview.Question{Key: key, Asks: capital(doc), Example: example}
	if original {
		q.Asks = "As it was made: " + doc
	}
	return q
}

// fill reads one answer beside what else is given.
func fill(r *Request) Reply {
	q, known := asked(r.Key)
	if !known {
		return said("There is no such question.")
	}
	if faults := bounded(map[string]string{q.Key: r.Text}); faults != nil {
		return Reply{Faults: faults}
	}
	text := r.Text
	if today, err := time.Parse(time.DateOnly, r.Today); err == nil {
		text = interview.Dated(q, text, r.Given, today)
	}
	sets, err := interview.Fill(q, text, r.Given)
	if err != nil {
		return Reply{Faults: []Fault{{q.Key, capital(err.Error()) + "."}}}
	}
	together := maps.Clone(sets)
	for key, text := range r.Given {
		if _, new := together[key]; !new && together != nil {
			together[key] = text
		}
	}
	if text = reads(r.Key, together); text == "" {
		text = meant(q, r.Text, sets)
	}
	if young := interview.TooYoung(sets); young != "" {
		text = cmp.Or(text, strings.TrimSpace(r.Text)) + ". " + strings.TrimSuffix(young, ".") // the page ends it
	}
	return Reply{Sets: sets, Text: text}
}

// meant is what an answer in other words was understood to mean: "4" is "4 years".
// It is empty where it means what it says.
func meant(q interview.Question, text string, sets map[string]string) string {
	var all []string
	for _, key := range q.Keys() {
		if value := q.Says(sets[key]); value != "" && value != setup.NothingTold {
			all = append(all, value)
		}
	}
	says := strings.Join(all, ", ")
	if strings.EqualFold(says, strings.TrimSpace(text)) {
		return ""
	}
	return says
}

// reads is what a label is understood to mean beside what else is given; empty for
// what is no label.
func reads(key string, given map[string]string) string {
	pack := interview.LabelRead(&setup.Setup{}, key, given)
	if pack == nil {
		return ""
	}
	text := pack.Reading
	if c := pack.CapacityAh; text != "" && c.Known && !c.Assumed {
		text += ", " + quantity.Format(quantity.Charge, c.Likely, quantity.Metric)
	}
	return text
}

// fields lays a whole setup out among the questions: which text stands in which
// field. Every key comes back in exactly one of them, as it was.
func fields(r *Request) Reply {
	if faults := whole(r.Given); faults != nil {
		return Reply{Faults: faults}
	}
	left := maps.Clone(r.Given)
	first := map[string]bool{}
	for _, q := range interview.First() {
		first[q.Key] = true
	}
	var out []Field
	for _, q := range interview.All() {
		f := Field{Question: questionOf(q.Beside(r.Given)), First: first[q.Key]}
		f.Text, f.Sets = field(q, left, r.Given)
		if f.Text != "" {
			f.Reads = cmp.Or(reads(q.Key, r.Given), meant(q, f.Text, f.Sets))
		}
		for key := range f.Sets {
			delete(left, key)
		}
		if f.Text != "" || f.First {
			out = append(out, f)
		}
	}
	for _, key := range slices.Sorted(maps.Keys(left)) {
		q, known := asked(key)
		if !known { // unreachable: the setup was read
			return Reply{Faults: []Fault{{key, key + ": there is no field for this."}}}
		}
		out = append(out, Field{Question: questionOf(q), Text: left[key], Sets: map[string]string{key: left[key]}})
	}
	slices.SortStableFunc(out, func(x, y Field) int {
		switch {
		case x.First == y.First:
			return 0
		case x.First:
			return -1
		}
		return 1
	})
	return Reply{Fields: out, Given: r.Given}
}

// field is the answer to a question that fills in what is left of the given
// keys, exactly as they are: of all of its keys together, or of its own alone.
func field(q interview.Question, left, given map[string]string) (text string, sets map[string]string) {
	texts, all := q.Told(left)
	text = strings.Join(texts, ", ")
	if len(all) > 1 {
		if got, err := interview.Fill(q, text, without(given, all)); err != nil || !maps.Equal(got, all) {
			text, all = "", nil
		}
	}
	if own, is := left[q.Key]; len(all) == 0 && is {
		text, all = own, map[string]string{q.Key: own}
	}
	return text, all
}

// without leaves keys out.
func without(given, keys map[string]string) map[string]string {
	out := maps.Clone(given)
	for key := range keys {
		delete(out, key)
	}
	return out
}

func capital(text string) string {
	if text == "" {
		return ""
	}
	return strings.ToUpper(text[:1]) + text[1:]
}
