package report

import "example.org/packcheck/answer"

// document is the whole content of a report, before it is put into any
// dialect. Every string in it has been through [clean]: printable ASCII on one
// line. Building it once is what keeps the dialects from drifting apart.
type document struct {
	lead     []fact // the first lines: verdict, gravest reason, next step
	title    string // what was judged; empty where the setup has no title
	sections []section
	on       bool // some titles in the text run on, to save room
	wide     bool // the text has lines of [FullColumns]
}

// section is one titled part. The parts print in the order of the fields.
type section struct {
	title    string
	sub      bool     // one of several below the last title
	flow     bool     // text may run facts and items in lines of prose, to save room
	on       bool     // so may its title behind the last section, where the document runs on
	text     []string // paragraphs
	facts    []fact
	side     grid // columns side by side
	items    []string
	numbered bool       // items are steps to take in order
	lists    []tickList // each with a line of its own in front
	after    []string   // paragraphs behind the items
	judged   []judgement
	notes    []string // misreadings put right, beside the numbers they concern
	more     string   // what of this the page has no room for; told at its end
}

// empty reports whether the section holds nothing.
func (s *section) empty() bool {
	return len(s.text)+len(s.facts)+len(s.side.rows)+len(s.items)+len(s.lists)+len(s.after)+len(s.judged)+len(s.notes) == 0
}

// fact is one name and its value.
type fact struct{ name, value string }

// tickList is a list to tick off.
type tickList struct {
	title string
	told  string // what it comes to, behind the title
	steps []string
	after string // how the steps go together
	flow  bool   // text may run the steps in lines of prose, to save room
}

// judgement is a finding made ready for print.
type judgement struct {
	level  answer.Level
	told   bool   // it only tells something and approves of nothing
	risk   string // who suffers; empty where it is the vehicle alone
	title  string
	detail string // found, limit and source; empty when no number applies
	advice string // empty when there is nothing to do, or another finding says it
}

// dialect writes the pieces of a document. [document.render] calls every
// method for every piece, so no dialect can leave a kind of content out.
type dialect interface {
	lead(facts []fact)
	title(text string)
	heading(title string)
	subheading(title string, on bool) // on: it may run on behind what stands before it
	paragraph(text string)
	facts(facts []fact, flow bool)
	grid(g grid)
	items(items []string, numbered, flow bool)
	ticks(list tickList)
	judgement(j judgement)
	notes(texts []string)
	bytes() []byte
}

// render walks the document through one dialect.
func (doc *document) render(d dialect) []byte {
	d.lead(doc.lead)
	if doc.title != "" {
		d.title(doc.title)
	}
	for _, s := range doc.sections {
		if s.sub {
			d.subheading(s.title, doc.on && s.on)
		} else {
			d.heading(s.title)
		}
		for _, p := range s.text {
			d.paragraph(p)
		}
		if len(s.facts) > 0 {
			d.facts(s.facts, s.flow)
		}
		if len(s.side.rows) > 0 {
			d.grid(s.side)
		}
		if len(s.items) > 0 {
			d.items(s.items, s.numbered, s.flow)
		}
		for _, list := range s.lists {
			d.ticks(list)
		}
		for _, p := range s.after {
			d.paragraph(p)
		}
		for _, j := range s.judged {
			d.judgement(j)
		}
		if len(s.notes) > 0 {
			d.notes(s.notes)
		}
	}
	return d.bytes()
}

// each visits every string of the document below the lead and the title, in the
// order of print.
func (doc *document) each(visit func(*string)) {
	facts := func(list []fact) {
		for i := range list {
			visit(&list[i].name)
			visit(&list[i].value)
		}
	}
	texts := func(list []string) {
		for i := range list {
			visit(&list[i])
		}
	}
	for i := range doc.sections {
		s := &doc.sections[i]
		visit(&s.title)
		texts(s.text)
		facts(s.facts)
		texts(s.items)
		for k := range s.lists {
			visit(&s.lists[k].title)
			visit(&s.lists[k].told)
			texts(s.lists[k].steps)
			visit(&s.lists[k].after)
		}
		texts(s.after)
		for k := range s.judged {
			visit(&s.judged[k].title)
			visit(&s.judged[k].detail)
			visit(&s.judged[k].advice)
		}
		texts(s.notes)
	}
}
