package report

import (
	"slices"
	"strings"

	"example.org/packcheck"
	"example.org/packcheck/answer"
	"example.org/packcheck/internal/quantity"
)

// builder turns one assessment into a document.
type builder struct {
	a *packcheck.Assessment
	figures
}

func newBuilder(a *packcheck.Assessment) *builder {
	return &builder{a: a, figures: figures{ranges: a.Ranges, system: a.System}}
}

// build makes the full report. The order of the sections is the order in which
// somebody has to decide: what the ride is like, what may break or burn, what
// to do, and what all of it rests on.
func build(a *packcheck.Assessment) *document {
	b := newBuilder(a)
	lines, whole := b.lead()
	doc := &document{lead: lines, preface: append(whole, b.preface()...)}
	for _, s := range []section{
		b.ride(), b.speed(), b.pack(), b.launch(), b.path(), b.cutoff(), b.charge(), b.original(),
		b.storage(), b.measured(), b.other(),
		b.changes(), b.buy(), b.habits(), b.assumed(), b.measure(), b.cautions(), b.sources(),
	} {
		if s.title != "" {
			doc.sections = append(doc.sections, s)
		}
	}
	return doc
}

// verdictName is what the first line begins with.
const verdictName = "Verdict"

// wholeName is the name of a lead line where it is printed once more, whole.
func wholeName(name string) string { return name + " in full" }

// headline returns verdict, largest risk and next step, whole. What was left
// empty is made up for from the findings.
func (b *builder) headline() [3]fact {
	risk, next := "none found; the cautions still hold", "read the cautions"
	if len(b.a.Findings) > 0 {
		worst := slices.MaxFunc(b.a.Findings, func(x, y answer.Finding) int { return int(x.Level) - int(y.Level) })
		risk = orElse(clean(worst.Title), risk)
		next = orElse(clean(worst.Advice), next)
	}
	return [3]fact{
		{verdictName, b.verdict()},
		{"Risk", orElse(clean(b.a.Headline[1]), risk)},
		{"Next", orElse(clean(b.a.Headline[2]), next)},
	}
}

// lead is the part that must be right when it is all that anybody reads: three
// lines, one each. What does not fit its line comes back once more, whole.
func (b *builder) lead() (lines, whole []fact) {
	for _, f := range b.headline() {
		text := oneLine(f.name, f.value)
		lines = append(lines, fact{f.name, text})
		if text != f.value {
			whole = append(whole, fact{wholeName(f.name), f.value})
		}
	}
	return lines, whole
}

// verdict puts the level in front of the verdict's own words, unless they
// begin with it.
func (b *builder) verdict() string {
	text, level := clean(b.a.Headline[0]), b.a.Verdict.String()
	if len(text) >= len(level) && strings.EqualFold(text[:len(level)], level) {
		return levelWord(b.a.Verdict) + text[len(level):]
	}
	if text == "" {
		return levelWord(b.a.Verdict)
	}
	return levelWord(b.a.Verdict) + ": " + text
}

func (b *builder) preface() []fact {
	if title := clean(b.a.Title); title != "" {
		return []fact{{"Setup", title}}
	}
	return nil
}

// topic fills in what was judged and what is commonly misread in one topic.
func (b *builder) topic(s section, topic string) section {
	for _, f := range b.a.Findings {
		if f.Topic == topic {
			s.judged = append(s.judged, b.judge(f))
		}
	}
	worstFirst(s.judged)
	for _, n := range b.a.Notes {
		if n.Topic == topic && !b.placed(n) {
			s.notes = append(s.notes, clean(n.Text))
		}
	}
	return s
}

// judge makes a finding ready for print.
func (b *builder) judge(f answer.Finding) judgement {
	return judgement{level: f.Level, told: told(f), title: clean(f.Title), detail: b.detail(f), advice: clean(f.Advice)}
}

// worstFirst keeps the given order among findings of one level.
func worstFirst(judged []judgement) {
	slices.SortStableFunc(judged, func(x, y judgement) int { return int(y.level) - int(x.level) })
}

// other gathers findings and notes whose topic has no section, so that nothing
// that was found can go unprinted.
func (b *builder) other() section {
	topics := []string{
		packcheck.TopicPack, packcheck.TopicRide, packcheck.TopicSpeed, packcheck.TopicLaunch,
		packcheck.TopicPath, packcheck.TopicCutoff, packcheck.TopicCharge, packcheck.TopicOriginal,
	}
	s := section{}
	for _, f := range b.a.Findings {
		if !slices.Contains(topics, f.Topic) {
			s.judged = append(s.judged, b.judge(f))
		}
	}
	worstFirst(s.judged)
	for _, n := range b.a.Notes {
		if !slices.Contains(topics, n.Topic) {
			s.notes = append(s.notes, clean(n.Text))
		}
	}
	if len(s.judged)+len(s.notes) > 0 {
		s.title = "Also found"
	}
	return s
}

func (b *builder) changes() section {
	s := section{title: "What to change, in this order", numbered: true}
	for _, c := range b.a.Changes {
		s.items = append(s.items, clean(c))
	}
	if len(s.items) == 0 {
		s.text = []string{"Nothing that these figures call for."}
	}
	return s
}

// habits are ways of using the vehicle; they put nothing right.
func (b *builder) habits() section {
	s := section{}
	for _, h := range b.a.Habits {
		s.items = append(s.items, clean(h))
	}
	if len(s.items) > 0 {
		s.title = "How to use it"
	}
	return s
}

// moving is the effect from which an assumption moves an answer. Own choice.
const moving = 0.02

// judgedBy are assumptions on which findings rest although no answer moves with
// them: they have one value, or only say what a part stands.
var judgedBy = []string{
	"controller.kind", "vehicle.design_voltage", "pack.chemistry", "pack.max_current", "wire.insulation", "wire.gauge", "wire.area",
}

// assumed lists what moves the answer, and then what findings rest on, with the
// reasons; the rest in a few lines.
func (b *builder) assumed() section {
	s := section{title: "What was assumed, most important first"}
	var judged, rest []string
	for _, a := range b.a.Assumed {
		line := clean(a.Key) + ": " + clean(a.Value)
		reason := line
		if why := clean(a.Why); why != "" {
			reason += " (" + why + ")"
		}
		switch {
		case a.Effect >= moving:
			s.items = append(s.items, reason)
		case slices.Contains(judgedBy, a.Key):
			judged = append(judged, reason)
		default:
			rest = append(rest, line)
		}
	}
	s.items = append(s.items, judged...)
	switch {
	case len(b.a.Assumed) == 0:
		s.text = []string{"Nothing: the setup gave every value."}
		return s
	case len(s.items) > 0:
		s.text = []string{"These values were not given. They move the answer, the first one most, or findings rest on them. " +
			"A finding that begins with \"Possibly\" shows only where values like these fall badly."}
	}
	if len(rest) > 0 {
		why := "as one value or with little effect on time, speed and launch current"
		if b.stuck() {
			why = "and none weighed, because it does not get going"
		}
		s.after = []string{"Also assumed, " + why + ": " + strings.Join(rest, "; ") + "."}
	}
	return s
}

func (b *builder) measure() section {
	s := section{title: "What to measure next", numbered: true}
	for _, m := range b.a.Measure {
		line := sentence(capital(clean(m.What)))
		if how := clean(m.How); how != "" {
			line += " " + sentence(how)
		}
		if narrows := clean(m.Narrows); narrows != "" {
			line += " Why: " + sentence(narrows)
		}
		s.items = append(s.items, line)
	}
	if len(s.items) == 0 {
		s.text = []string{"No single measurement would change this answer much."}
	}
	return s
}

func (b *builder) cautions() section {
	s := section{title: "Cautions"}
	for _, c := range b.a.Cautions {
		s.items = append(s.items, clean(c))
	}
	return s
}

// weightiest is how many assumptions have their sources listed.
const weightiest = 5

// cited are the sources that a report for reading lists: those of the findings,
// of the cautions and of the weightiest assumptions.
func (b *builder) cited() map[string]bool {
	ids := map[string]bool{}
	add := func(list string) {
		for _, id := range strings.FieldsFunc(list, func(r rune) bool { return r == ',' || r == ' ' }) {
			ids[id] = true
		}
	}
	for _, f := range b.a.Findings {
		add(f.Source)
	}
	for _, list := range b.a.CautionSources {
		add(list)
	}
	for i, a := range b.a.Assumed {
		if i < weightiest && a.Effect >= moving {
			add(a.Source)
		}
	}
	return ids
}

func (b *builder) sources() section {
	s := section{title: "Sources"}
	cited := b.cited()
	for _, src := range b.a.Sources {
		if !cited[src.ID] {
			continue
		}
		line := clean(src.ID) + ": " + reference(clean(src.Text))
		if known := clean(src.Known); known != "" {
			line += " (how known: " + known + ")"
		}
		s.items = append(s.items, line)
	}
	switch left := len(b.a.Sources) - len(s.items); {
	case len(b.a.Sources) == 0:
		s.title = ""
	case left > 0:
		s.after = []string{"These are the sources of the findings, the cautions and the weightiest assumptions, by name. " +
			"Left out here: " + b.one(plain, float64(left)) + ". The JSON form of this report holds them all and whole, and \"packcheck sources\" lists every source there is."}
	}
	return s
}

// A reference is at least so long, because a shorter clause does not name a
// source, and hardly longer than so.
const leastReference, longReference = 20, 110

// reference cuts a source's text down to what names it; what it says is in
// the JSON form.
func reference(text string) string {
	for i := leastReference; i < len(text)-1; i++ {
		if (text[i] == ':' || text[i] == ';') && text[i+1] == ' ' {
			text = text[:i]
		}
	}
	if len(text) > longReference {
		if i := strings.LastIndex(text[:longReference], ", "); i > leastReference {
			return text[:i] + " ..."
		}
	}
	return text
}

// sentence ends text with a full stop unless it has an end of its own.
func sentence(text string) string {
	if text == "" || strings.ContainsAny(text[len(text)-1:], ".!?") {
		return text
	}
	return text + "."
}

func orElse(text, other string) string {
	if text == "" {
		return other
	}
	return text
}

// list joins numbers of one kind: "20, 25 and 30 A".
func (f figures) list(u unit, values []float64) string {
	texts := make([]string, len(values))
	for i, v := range values {
		texts[i] = f.one(u, v)
		if i < len(values)-1 { // the last one carries the unit for all
			texts[i] = quantity.Digits(v*u.per, 3)
		}
	}
	return strings.Join(texts, ", ")
}
