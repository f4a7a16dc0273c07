package report

import (
	"bytes"
	"encoding/json"
	"fmt"
	"strings"

	"example.org/packcheck"
)

// shortLines is the most lines that a short report has.
const shortLines = 10

// shortSafety is what the cautions come down to where ten lines must do. It
// sends the reader to the rest of them.
const shortSafety = "The maker's instructions, local codes and licensed practice come first. " +
	"A changed vehicle no longer is the one that was tested. " +
	"Try it without a child. Heed every caution of the full report."

// buildShort makes the ten lines: the lead, the safety line, and as many
// figures as there is room for. The safety line is placed first and never gives
// way; a headline too long for the room is cut, and says so.
func buildShort(a *packcheck.Assessment) *document {
	b := newBuilder(a)
	safety := fact{"Safety", shortSafety}
	room := shortLines - leadLines(safety)
	facts := b.lead()
	for i, f := range facts {
		left := len(facts) - 1 - i // lines kept for the lead's further facts
		facts[i].value = cut(f, room-left)
		room -= leadLines(facts[i])
	}
	for _, f := range b.shortFigures() {
		if n := leadLines(f); n <= room {
			facts = append(facts, f)
			room -= n
		}
	}
	return &document{lead: append(facts, safety)}
}

// shortFigures are the figures of a short report, most wanted first.
func (b *builder) shortFigures() []fact {
	ride := b.span("ride.pedal_min", minutes, b.a.Ride.PedalMin)
	facts := []fact{{"Ride", ride + " with the pedal down"}}
	if b.bench() {
		facts[0] = fact{"Lasts", ride + " under this load"}
	}
	if st := b.a.Steady; st != nil {
		facts = append(facts, fact{"Speed", b.span("steady.speed_kmh", kmPerH, st.SpeedKmh)})
	}
	if n := len(b.a.Assumed); n > 0 {
		value := b.one(plain, float64(n)) + " values; first of all " + clean(b.a.Assumed[0].Key)
		facts = append(facts, fact{"Assumed", value})
	}
	return facts
}

// leadLines is how many lines of text a lead fact takes.
func leadLines(f fact) int {
	return len(wrap(f.name+": ", leadHang, inBox(f.value)))
}

// cut shortens a value until it fits the lines.
func cut(f fact, lines int) string {
	const mark = " ... (see the full report)"
	lines = max(lines, 1)
	if leadLines(f) <= lines {
		return f.value
	}
	words := strings.Fields(f.value)
	for n := len(words) - 1; n > 0; n-- {
		text := strings.Join(words[:n], " ") + mark
		if leadLines(fact{f.name, text}) <= lines {
			return text
		}
	}
	// One endless word: cut it by characters.
	most := lines*(Columns-leadHang) - len(f.name) - 2*len(mark)
	return f.value[:max(min(most, len(f.value)), 0)] + mark
}

// shortJSON is the short report for programs: the keys of the full one, fewer
// of them, each on a line of its own.
func shortJSON(a *packcheck.Assessment) ([]byte, error) {
	type ride struct {
		PedalMin   float64 `json:"pedal_min"`
		DistanceKm float64 `json:"distance_km"`
	}
	ranges := map[string]packcheck.Range{} // a figure without its spread would promise too much
	for _, path := range []string{"ride.pedal_min", "ride.distance_km"} {
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
		{"ride", ride{a.Ride.PedalMin, a.Ride.DistanceKm}},
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
