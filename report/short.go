package report

import (
	"bytes"
	"encoding/json"
	"fmt"
	"slices"
	"strings"

	"example.org/packcheck/answer"
)

// shortLines is the most lines that a short report has.
const shortLines = 10

// shortSafety is what the cautions come down to where ten lines must do. It
// sends the reader to the rest of them.
const shortSafety = "The maker's instructions, local codes and licensed practice come first. " +
	"A changed vehicle no longer is the one that was tested. " +
	"Try it without a child. Read the full report."

// buildShort makes the ten lines: the lead, every danger, the safety line, and
// what else there is room for.
func buildShort(a *answer.Assessment) *document {
	b := newBuilder(a)
	facts, whole := b.lead()
	if len(a.Ways) > 0 && a.Verdict >= answer.FixFirst && !a.BeforeWays() { // what they say stands on the page, not below
		facts[2].value = oneLine(nextName, b.nextOnPage())
		whole = slices.DeleteFunc(whole, func(f fact) bool { return f.name == wholeName(nextName) })
	}
	safety := fact{"Safety", shortSafety}
	room := shortLines - linesOf(facts) - leadLines(safety)
	add := func(f fact) {
		if n := leadLines(f); n <= room {
			facts, room = append(facts, f), room-n
		}
	}
	for _, f := range b.otherDangers(room) {
		add(f)
	}
	more := append(b.shortWays(), b.shortFigures()...)
	if a.Verdict >= answer.FixFirst { // then reason and remedy matter more than the ride
		whole = slices.DeleteFunc(whole, func(f fact) bool { return f.name == wholeName(b.verdict().name) })
		more = append(whole, more...)
	}
	words := shortWords(facts) // what nobody may miss goes before what there is room for
	if linesOf(words) > room {
		words = nil
	}
	at := len(facts)
	room -= linesOf(words)
	for _, f := range more {
		add(f)
	}
	if all := shortWords(facts); linesOf(all) <= room+linesOf(words) {
		words = all
	}
	return &document{lead: append(slices.Insert(facts, at, words...), safety)}
}

// shortWords explains what of these lines somebody would have to look up.
func shortWords(facts []fact) []fact {
	if only := explained(nil, facts); len(only) > 0 {
		return []fact{{"Words", capital(strings.Join(only, "; ")) + "."}}
	}
	return nil
}

// linesOf is how many lines of text facts take.
func linesOf(facts []fact) int {
	n := 0
	for _, f := range facts {
		n += leadLines(f)
	}
	return n
}

// nextOnPage is the next step where the ways out stand on another page.
func (b *builder) nextOnPage() string {
	way := wayLetters(len(b.a.Ways))
	switch {
	case b.a.ChargerOut():
		return "Do not use this charger; see the page for " + way + "."
	case len(b.a.Measure) > 0:
		return "See the page: look first, then take " + way + "."
	}
	return "See the page: take " + way + "."
}

// shortWays are the ways out by their titles.
func (b *builder) shortWays() []fact {
	var facts []fact
	for i, w := range b.a.Ways[:min(3, len(b.a.Ways))] {
		name := "Way " + wayLetter(i)
		steps := ""
		if n := len(w.Steps); n > 0 {
			steps = " (" + things(n, "thing") + ")"
		}
		title := strings.TrimRight(b.say(w.Title), ".")
		facts = append(facts, fact{name, sentence(cut(title, Columns-len(name+": .")-len(steps)) + steps)})
	}
	return facts
}

// otherDangers are the dangers that the first lines do not tell, whole while there is
// room for that, otherwise by a clause, on one line each; where there is not even that, all
// in one.
func (b *builder) otherDangers(room int) []fact {
	const name = "Danger too"
	var list []*answer.Finding
	for i := range b.a.Findings {
		if f := &b.a.Findings[i]; f.Level == answer.Danger && f.Certainty.Hedge()+f.Title != b.a.Headline[1] {
			list = append(list, f)
		}
	}
	if len(list) > room {
		return []fact{b.dangersInOne(name, list, room)}
	}
	var facts []fact
	spare := room - len(list)
	for _, f := range list {
		title := b.say(f.Title)
		whole := fact{name, b.opening(f) + sentence(firstClause(title))}
		if more := leadLines(whole) - 1; more <= spare {
			facts, spare = append(facts, whole), spare-more
			continue
		}
		short, ok := "", false
		opening := b.opening(f)
		for _, opening = range []string{b.opening(f), f.Certainty.Hedge()} {
			if short, ok = endingFrom(leastSentence, title, Columns-len(name+": "+opening)); ok {
				break
			}
		}
		if !ok { // what it is about alone would tell little
			return []fact{b.dangersInOne(name, list, room)}
		}
		facts = append(facts, fact{name, opening + short})
	}
	return facts
}

// dangersInOne are dangers in one fact of so many lines.
func (b *builder) dangersInOne(name string, list []*answer.Finding, lines int) fact {
	for chars := lines * (Columns - leadHang); ; chars -= leadHang {
		if f := (fact{name, sentence(b.named(list, chars))}); leadLines(f) <= lines || chars <= leastTitle {
			return f
		}
	}
}

// shortFigures are the figures of a short report, most wanted first.
func (b *builder) shortFigures() []fact {
	var facts []fact
	switch {
	case b.a.NeverRidden():
		facts = []fact{{"How long", b.noRide()}}
	case b.stuck():
		facts = append([]fact{{"Pedal down", "not at all: it does not get going"}}, b.onTheLevel()...)
	case b.bench():
		facts = []fact{b.underLoad()}
	default:
		facts = append([]fact{{"Pedal down", b.lasts().brief() + b.allUphill()}}, b.onTheLevel()...)
		if st := b.a.Steady; st != nil {
			facts = append(facts, fact{b.speedName("Speed"), b.figure("steady.speed_kmh", kmPerH, st.SpeedKmh).brief() + b.withoutRead()})
		}
		if fates := strings.Join(b.fates(rareFate), "; "); fates != "" {
			facts = append(facts, fact{"Draws", fates})
		}
	}
	if n := len(b.a.Assumed); n > 0 {
		value := things(n, "value") + "; first of all " + everyday(clean(b.a.Assumed[0].Key))
		if b.a.Assumed[0].Effect < moving {
			value = things(n, "value") + ", of which none moves the answer much"
		}
		facts = append(facts, fact{"Assumed", value})
	}
	return facts
}

// leadLines is how many lines of text a lead fact takes.
func leadLines(f fact) int {
	return len(wrap(f.name+": ", leadHang, inBox(f.value), Columns))
}

// shortJSON is the short report for programs: the keys of the full one, fewer
// of them, each on a line of its own.
func shortJSON(a *answer.Assessment) ([]byte, error) {
	type ride struct {
		PedalMin      float64 `json:"pedal_min"`
		DistanceKm    float64 `json:"distance_km"`
		LastsPedalMin float64 `json:"lasts_pedal_min"`
	}
	type draws struct { // without them nobody knows what a range is
		Count    int     `json:"count"`
		Inside   float64 `json:"inside"`
		Stuck    float64 `json:"stuck"`
		Crawls   float64 `json:"crawls"`
		Burnt    float64 `json:"burnt"`
		CutShort float64 `json:"cut_short"`
	}
	ranges := map[string]answer.Range{} // a figure without its spread would promise too much
	for _, path := range []string{"ride.pedal_min", "ride.distance_km", "ride.lasts_pedal_min"} {
		if r, ok := a.Ranges[path]; ok {
			ranges[path] = r
		}
	}
	var out bytes.Buffer
	out.WriteString("{\n")
	lines := []struct {
		key   string
		value any
	}{
		{"schema", a.Schema},
		{"title", a.Title},
		{"verdict", a.Verdict},
		{"headline", a.Headline},
		{"draws", draws{a.Draws.Count, a.Draws.Inside, a.Draws.Stuck, a.Draws.Crawls, a.Draws.Burnt, a.Draws.CutShort}},
		{"ride", ride{a.Ride.PedalMin, a.Ride.DistanceKm, a.Ride.LastsPedalMin}},
		{"ranges", ranges},
		{"cautions", a.Cautions},
	}
	for i, l := range lines {
		value, err := compactJSON(l.value)
		if err != nil {
			return nil, fmt.Errorf("report: %s: %w", l.key, err)
		}
		comma := ","
		if i == len(lines)-1 {
			comma = ""
		}
		key, err := json.Marshal(l.key)
		if err != nil {
			return nil, err
		}
		fmt.Fprintf(&out, "  %s: %s%s\n", key, value, comma)
	}
	out.WriteString("}\n")
	return out.Bytes(), nil
}
