package report

import (
	"slices"

	"example.org/packcheck/answer"
)

// topic fills in what was judged and what is commonly misread in one topic.
func (b *builder) topic(s section, topic answer.Topic) section {
	b.topics = append(b.topics, topic)
	return b.gather(s, func(t answer.Topic) bool { return t == topic })
}

// other gathers findings and notes whose topic has no section, so that nothing
// that was found can go unprinted. It comes after all sections with a topic.
func (b *builder) other() section {
	s := b.gather(section{}, func(t answer.Topic) bool { return !slices.Contains(b.topics, t) })
	if !s.empty() {
		s.title = "Also found"
	}
	return s
}

// gather adds the findings, worst first, and the notes of the topics that are
// wanted.
func (b *builder) gather(s section, wanted func(answer.Topic) bool) section {
	for i := range b.a.Findings {
		if f := &b.a.Findings[i]; wanted(f.Topic) {
			s.judged = append(s.judged, b.judge(f))
		}
	}
	// The given order stays among findings of one level.
	slices.SortStableFunc(s.judged, func(x, y judgement) int { return int(y.level) - int(x.level) })
	for _, n := range b.a.Notes {
		if wanted(n.Topic) {
			s.notes = append(s.notes, clean(n.Text))
		}
	}
	return s
}

// judge makes a finding ready for print.
func (b *builder) judge(f *answer.Finding) judgement {
	return judgement{
		level: f.Level, told: f.Reads == answer.AsTold, title: b.title(f), detail: b.detail(f), advice: clean(f.Advice),
	}
}

// byPart says of each thing that somebody can point at the worst that was found
// on it, the worst thing first.
func (b *builder) byPart() section {
	var worst []*answer.Finding // one for each part
	for i := range b.a.Findings {
		f := &b.a.Findings[i]
		if f.Item == "" {
			continue
		}
		at := slices.IndexFunc(worst, func(w *answer.Finding) bool { return w.Item == f.Item })
		switch {
		case at < 0:
			worst = append(worst, f)
		case f.Level > worst[at].Level:
			worst[at] = f
		}
	}
	slices.SortStableFunc(worst, func(x, y *answer.Finding) int { return int(y.Level) - int(x.Level) })
	s := section{}
	for _, f := range worst {
		j := b.judge(f)
		s.facts = append(s.facts, fact{capital(clean(string(f.Item))), j.word() + ": " + j.title})
	}
	if len(s.facts) > 0 {
		s.title = "Part by part, the worst of each"
	}
	return s
}
