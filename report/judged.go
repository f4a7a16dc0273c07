package report

import (
	"cmp"
	"math"
	"slices"
	"strings"

	"example.org/packcheck/answer"
)

// findings are all findings, worst first: those that stop somebody or may hurt
// somebody each with what it was held against, on what it rests and by which
// source; those of wear and parts in a few words.
func (b *builder) findings() []section {
	list := slices.Clone(b.a.Findings)
	// The given order stays among findings of one level.
	slices.SortStableFunc(list, func(x, y answer.Finding) int { return int(y.Level) - int(x.Level) })
	grave := section{title: "What was found, worst first"}
	mild := section{title: "Of wear and parts, to watch unless said", sub: true, flow: true}
	said := map[answer.Change]bool{}
	var rest []*answer.Finding
	told := false // what a share is of, once
	for i := range list {
		f := &list[i]
		if advice := b.advice(f, said); b.isGrave(f) {
			opening := b.opening(f)
			if !told && f.Certainty != answer.Plain {
				opening, told = b.spelled(f), true
			}
			grave.judged = append(grave.judged, b.judge(f, opening+b.inShort(f), advice))
			continue
		}
		rest = append(rest, f)
	}
	mild.items = b.inShares(rest)
	if len(list) > 0 {
		grave.text = []string{figuresOfFindings + " In brackets: found, right, name, source."}
	}
	return []section{grave, mild}
}

// figuresOfFindings says of which vehicle the figures of findings are, so that nobody
// takes one for that of all.
const figuresOfFindings = "Figures are those of the middle one of those that have it."

// fewFindings is how many findings are all told whole. Own choice.
const fewFindings = 10

// isGrave reports whether a finding is told whole.
func (b *builder) isGrave(f *answer.Finding) bool {
	return f.Level >= answer.FixFirst || f.Harm >= answer.House && f.Level > answer.Fine || len(b.a.Findings) <= fewFindings
}

// inShares says findings in a few words each, those that hold in more vehicles
// first: what holds in as many shares its share.
func (b *builder) inShares(list []*answer.Finding) []string {
	slices.SortStableFunc(list, func(x, y *answer.Finding) int {
		return cmp.Or(cmp.Compare(y.Level, x.Level), cmp.Compare(b.counts(y), b.counts(x)))
	})
	var items []string
	last := ""
	for _, f := range list {
		opening, text := b.openingInBrief(f), b.inBrief(f)
		if n := len(items) - 1; n >= 0 && opening == last {
			items[n] += "; " + text
			continue
		}
		items, last = append(items, opening+text), opening
	}
	for i := range items {
		items[i] += "."
	}
	return items
}

// counts is the share of a finding as far as it is printed.
func (b *builder) counts(f *answer.Finding) float64 {
	const tenths = 10
	if f.Certainty == answer.Plain {
		return tenths
	}
	return math.Round(tenths * f.Share)
}

// inBrief says a finding in a few words: its first clause and the name under which
// more is told.
func (b *builder) inBrief(f *answer.Finding) string {
	text := firstClause(b.say(f.Title))
	switch {
	case f.Reads == answer.AsTold:
		text = "To know: " + text
	case f.Level == answer.Fine:
		text = "Fine: " + text
	}
	if code := codeOf(f); code != "" {
		text += " (" + code + ")"
	}
	return text
}

// firstClause is a sentence up to its first colon: what is, without why.
func firstClause(text string) string {
	text, _, _ = strings.Cut(text, ": ")
	return strings.TrimRight(text, ".")
}

// apartFrom is what stands before a separator, for a list that is parted by it.
func apartFrom(separator, text string) string {
	text, _, _ = strings.Cut(text, separator)
	return text
}

// inShort is the title of a finding without why; what asks to be looked up names all
// of it.
func (b *builder) inShort(f *answer.Finding) string {
	if f.Change == answer.LookUp {
		return b.say(f.Title)
	}
	return firstClause(b.say(f.Title))
}

// advice is what a finding's own line says to do. What has to be changed before
// anybody rides stands in the list of changes, each change once; the same holds
// for milder findings that ask for one of them.
func (b *builder) advice(f *answer.Finding, said map[answer.Change]bool) string {
	c := f.Change
	own := c == answer.ChangeNone || c == answer.LookUp
	if f.Level >= answer.FixFirst && c != answer.WaitBeforeCharge && len(b.a.Changes) > 0 {
		said[c] = !own
		return ""
	}
	if said[c] {
		return ""
	}
	said[c] = !own && f.Advice != ""
	text := b.say(f.Advice)
	if first, _, more := strings.Cut(text, ". "); more && b.tight >= dense {
		return first + "."
	}
	return text
}

// judge makes a finding ready for print.
func (b *builder) judge(f *answer.Finding, title, advice string) judgement {
	return judgement{
		level: f.Level, told: f.Reads == answer.AsTold, risk: atRisk(f), title: sentence(title), detail: b.detail(f), advice: advice,
	}
}

// topic adds what is commonly misread in one topic.
func (b *builder) topic(s section, topic answer.Topic) section {
	b.topics = append(b.topics, topic)
	return b.noted(s, func(t answer.Topic) bool { return t == topic })
}

// other gathers the notes whose topic has no section. It comes after all
// sections with a topic.
func (b *builder) other() section {
	return b.noted(section{title: "Also"}, func(t answer.Topic) bool { return !slices.Contains(b.topics, t) })
}

// noted adds the notes of the topics that are wanted.
func (b *builder) noted(s section, wanted func(answer.Topic) bool) section {
	for _, n := range b.a.Notes {
		if wanted(n.Topic) {
			s.notes = append(s.notes, b.say(n.Text))
		}
	}
	return s
}
