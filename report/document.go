package report

import "example.org/packcheck/answer"

// document is the whole content of a report, before it is put into any
// dialect. Every string in it has been through [clean]: printable ASCII on one
// line. Building it once is what keeps the dialects from drifting apart.
type document struct {
	lead     []fact // the first lines: verdict, largest risk, next step
	preface  []fact // what was judged
	sections []section
}

// section is one titled part. The parts print in the order of the fields.
type section struct {
	title    string
	text     []string // paragraphs
	facts    []fact
	items    []string
	numbered bool     // items are steps to take in order
	after    []string // paragraphs behind the items
	judged   []judgement
	notes    []string // misreadings put right, beside the numbers they concern
}

// empty reports whether the section holds nothing.
func (s *section) empty() bool {
	return len(s.text)+len(s.facts)+len(s.items)+len(s.after)+len(s.judged)+len(s.notes) == 0
}

// fact is one name and its value.
type fact struct{ name, value string }

// judgement is a finding made ready for print.
type judgement struct {
	level  answer.Level
	told   bool // it only tells something and approves of nothing
	title  string
	detail string // found, limit and source; empty when no number applies
	advice string // empty when there is nothing to do
}

// dialect writes the pieces of a document. [document.render] calls every
// method for every piece, so no dialect can leave a kind of content out.
type dialect interface {
	lead(facts []fact)
	heading(title string)
	paragraph(text string)
	facts(facts []fact)
	items(items []string, numbered bool)
	judgement(j judgement)
	note(text string)
	bytes() []byte
}

// render walks the document through one dialect.
func (doc *document) render(d dialect) []byte {
	d.lead(doc.lead)
	if len(doc.preface) > 0 {
		d.facts(doc.preface)
	}
	for _, s := range doc.sections {
		d.heading(s.title)
		for _, p := range s.text {
			d.paragraph(p)
		}
		if len(s.facts) > 0 {
			d.facts(s.facts)
		}
		if len(s.items) > 0 {
			d.items(s.items, s.numbered)
		}
		for _, p := range s.after {
			d.paragraph(p)
		}
		for _, j := range s.judged {
			d.judgement(j)
		}
		for _, n := range s.notes {
			d.note(n)
		}
	}
	return d.bytes()
}
