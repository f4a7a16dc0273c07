package report

import (
	"math"
	"slices"
	"strings"

	"example.org/packcheck/answer"
	"example.org/packcheck/internal/quantity"
)

// has reports whether any of the findings was made, at that level or worse.
func (b *builder) has(level answer.Level, codes ...string) bool {
	return slices.ContainsFunc(b.a.Findings, func(f answer.Finding) bool {
		return f.Level >= level && slices.Contains(codes, f.Code)
	})
}

// findings returns those of a topic.
func (b *builder) findings(topic string) []answer.Finding {
	var list []answer.Finding
	for _, f := range b.a.Findings {
		if f.Topic == topic {
			list = append(list, f)
		}
	}
	return list
}

// assumes reports whether one of the values was assumed.
func (b *builder) assumes(keys ...string) (value string, yes bool) {
	for _, a := range b.a.Assumed {
		if slices.Contains(keys, a.Key) {
			return clean(a.Value), true
		}
	}
	return "", false
}

// buy gathers what may have to be bought, as somebody would ask for it over a
// counter. Everything in it stands elsewhere in the report as well.
func (b *builder) buy() section {
	s := section{title: "What to buy"}
	add := func(name, value string) {
		if value != "" {
			s.facts = append(s.facts, fact{name, value})
		}
	}
	add("Controller", b.controllerToBuy())
	add("Fuse", b.fuseToBuy())
	add("Cutoff", b.cutoffToBuy())
	add("Charger", b.chargerToBuy())
	if len(s.facts) == 0 {
		s.text = []string{"Nothing that these figures call for."}
	}
	return s
}

// controllerToBuy is named where contacts or a missing current limit are what
// has to be changed.
func (b *builder) controllerToBuy() string {
	if !b.has(answer.FixFirst, "contacts-may-weld", "pedal-may-weld", "blocked-over-pack", "launch-over-pack", "blocked-heat",
		"blocked-over-controller", "launch-over-controller-peak", "ramp-bounds-nothing") {
		return ""
	}
	if l := b.a.Launch; l != nil && l.Case.LimitA > 0 {
		return "" // there is one: it has to be set, not bought
	}
	text := "a speed control for " + quantity.Decimals(math.Ceil(b.a.Pack.FullV), 0) + " V or more with a current limit"
	most := math.Inf(1)
	for _, f := range b.a.Findings {
		if f.Unit == "A" && (strings.HasPrefix(f.Code, "blocked-over-") || strings.HasPrefix(f.Code, "launch-over-")) {
			most = min(most, f.Limit)
		}
	}
	if !math.IsInf(most, 1) {
		text += " of " + b.one(amps, math.Floor(most)) + " or less"
	}
	return sentence(text) + " Set the limit as low as it still starts well."
}

// fuseToBuy names standard sizes, or what has to be known or changed before
// any can be named.
func (b *builder) fuseToBuy() string {
	p := b.a.Path
	if p == nil {
		return ""
	}
	if b.has(answer.Fine, "fuse-fits") && !b.has(answer.Watch, "fuse-above-wire", "fuse-above-joint", "fuse-none-fits", "fuse-fits",
		"fuse-opens-running", "fuse-opens-at-launch", "short-burns-wire", "breaker-alone", "fuse-voltage") {
		return "the one that is fitted suits"
	}
	switch {
	case p.FuseLeastA == nil || p.FuseMostA == nil:
		return "none yet: no rating suits this wire and this load. First limit the current or fit thicker wire."
	case len(p.FuseSizesA) == 0:
		return "none yet: no standard size lies between " + b.one(amps, *p.FuseLeastA) + " and " + b.one(amps, *p.FuseMostA) +
			". First limit the current or strengthen the path."
	}
	text := b.list(amps, p.FuseSizesA)
	switch {
	case b.has(answer.Watch, "short-burns-wire"): // the band counts lasting current only
		text = b.one(amps, p.FuseSizesA[0]) + ", the smallest in the band; it must be smaller or faster than the one that is fitted"
	case len(p.FuseSizesA) > 1:
		text += ", the smallest that holds"
	}
	text += "; printed with " + quantity.Decimals(math.Ceil(b.a.Pack.FullV), 0) + " V or more; right at the pack"
	if b.has(answer.Watch, "breaker-alone") {
		text += "; a one-time fuse, no breaker"
	}
	text = sentence(text)
	if size, guessed := b.assumes("wire.gauge", "wire.area"); guessed {
		text = "read the size printed on the wire before you buy: it was taken as " + size +
			", and thinner wire needs a smaller fuse. As it was taken: " + text
	}
	if b.has(answer.Watch, "fuse-none-fits") {
		text += " Possibly no size holds: then limit the current, never go larger."
	}
	return text
}

// cutoffToBuy gives the setting that suits, where nothing disconnects the pack
// or what does is set wrong.
func (b *builder) cutoffToBuy() string {
	c := b.a.Cutoff
	wrong := b.has(answer.FixFirst, "cutoff-none", "cutoff-above-full", "cutoff-below-harm", "cutoff-never-opens", "cutoff-chatters",
		"weak-cell-reversed", "weak-cell-harmed", "weakest-cell-reversed", "weakest-cell-below-harm", "cutoff-opens-at-launch",
		"idle-harms-within-week", "drained-past-saving")
	switch {
	case c.OpensFirst != "nothing" && !wrong:
		return "the one that is fitted does"
	case c.Advised == nil:
		return ""
	}
	return "one that " + b.advised(c.Advised)
}

// chargerToBuy describes the right charger.
func (b *builder) chargerToBuy() string {
	if c := b.a.Charge; c != nil && c.Match == "yes" {
		return "the one that you have suits"
	}
	for _, n := range b.a.Notes {
		if text, is := strings.CutPrefix(clean(n.Text), rightCharger); is {
			return text
		}
	}
	return ""
}
