package report

import (
	"math"
	"slices"
	"strings"

	"example.org/packcheck/answer"
	"example.org/packcheck/internal/quantity"
)

// readings sets each reading beside what the draws foretell of it, and tells
// of those that cannot all be true.
func (b *builder) readings() section {
	s := section{}
	if c := b.a.Conflict; c != nil {
		s.text = append(s.text, sentence(orElse(clean(c.Words), "Not all of these readings can be true")))
	}
	for i := range b.a.Readings {
		r := &b.a.Readings[i]
		s.facts = append(s.facts, fact{capital(b.readingName(r.Key)), b.reading(r)})
	}
	s.facts = append(s.facts, b.conflict()...)
	s = b.topic(s, answer.TopicMeasured)
	if !s.empty() {
		s.title = "What you read, and what was foretold"
	}
	return s
}

// readingName is what a reading is called, by its key.
func (b *builder) readingName(key string) string {
	for _, r := range b.a.Readings {
		if name := clean(r.Name); r.Key == key && name != "" {
			return name
		}
	}
	return keyWords(key)
}

func (b *builder) readingNames(keys []string) (names []string) {
	for _, key := range keys {
		names = append(names, b.readingName(key))
	}
	return names
}

// reading says what was read, how well, and what was foretold of it.
func (b *builder) reading(r *answer.Reading) string {
	text := orElse(clean(r.Text), b.inUnit(r.Value, r.Unit))
	if r.Error > 0 && !r.Stated { // otherwise the text says it
		text += ", give or take " + b.spreadOf(r.Error, r.Unit) + " as such readings usually are"
	}
	with := "all readings"
	if r.LeftOut {
		with = "the others"
	}
	text += ". Foretold: " + b.between(r.Before, r.Unit) + " by labels alone, " + b.between(r.After, r.Unit) + " with " + with
	if r.LeftOut {
		text += ". Left out, because it contradicts the others"
	}
	text = sentence(text)
	if says := clean(r.Explains); says != "" {
		text += " " + sentence(capital(says))
	}
	return text
}

// spreadOf prints an error with one or two digits. One of a temperature is no
// temperature.
func (b *builder) spreadOf(size float64, name string) string {
	const minute = 60
	switch {
	case name == "degC":
		return quantity.Digits(size, 2) + " K"
	case name == "s" && size >= 2*minute:
		size = toStep(size, minute)
	case size > 0:
		size = toStep(size, math.Pow(10, math.Floor(math.Log10(size))-1))
	}
	return b.inUnit(size, name)
}

// between prints a range in the unit of that name.
func (b *builder) between(r answer.Range, name string) string {
	const minute, perHour = 60, 3.6
	u, known := unitNamed(name)
	switch {
	case !r.Valid():
		return notKnown
	case r.IsExact():
		return b.inUnit(r.Likely, name)
	// Rounded in the unit that is printed: 1260 s are 21 min, not about 1300 s.
	case name == "s" && r.High >= 2*minute:
		return b.both(minutes, r.Scale(1./minute))
	case name == "m/s":
		return b.both(kmPerH, r.Scale(perHour))
	case known:
		return b.both(u, r)
	}
	r = coarse(r, 0)
	return strings.TrimSpace(quantity.Digits(r.Low, 3) + " to " + quantity.Digits(r.High, 3) + " " + clean(name))
}

// conflict tells of readings that cannot all be true.
func (b *builder) conflict() []fact {
	c := b.a.Conflict
	if c == nil {
		return nil
	}
	var facts []fact
	if names := b.readingNames(c.Readings); len(names) > 0 {
		facts = append(facts, fact{"Not all true", strings.Join(names, "; ")})
	}
	if c.Likeliest != "" {
		facts = append(facts, fact{"Likeliest wrong", orElse(clean(c.Name), b.readingName(c.Likeliest)) + "; the answer does without it"})
	}
	if left := slices.DeleteFunc(slices.Clone(c.LeftOut), func(key string) bool { return key == c.Likeliest }); len(left) > 0 {
		facts = append(facts, fact{"Left out as well", strings.Join(b.readingNames(left), "; ")})
	}
	if c.Second != "" {
		facts = append(facts, fact{"Nearly as likely", b.readingName(c.Second)})
	}
	facts = append(facts, fact{"By mere chance", "honest readings disagree this much in " + counted(c.P)})
	for _, p := range c.Pushed {
		facts = append(facts, fact{
			"They would need", capital(keyWords(p.Key)) + " at " + orElse(clean(p.Value), notKnown) + ", " +
				quantity.Digits(p.Sigma, 2) + " standard deviations from its middle",
		})
	}
	return facts
}
