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

// buildShort makes the ten lines: the lead, the safety line, which never gives
// way, and what else there is room for.
func buildShort(a *answer.Assessment) *document {
	b := newBuilder(a)
	facts, whole := b.lead()
	safety := fact{"Safety", shortSafety}
	room := shortLines - len(facts) - leadLines(safety)
	more := b.shortFigures()
	if a.Verdict >= answer.FixFirst { // then risk and remedy matter more than the ride
		whole = slices.DeleteFunc(whole, func(f fact) bool { return f.name == wholeName(verdictName) })
		more = append(whole, more...)
	}
	for _, f := range more {
		if n := leadLines(f); n <= room {
			facts = append(facts, f)
			room -= n
		}
	}
	return &document{lead: append(facts, safety)}
}

// shortFigures are the figures of a short report, most wanted first.
func (b *builder) shortFigures() []fact {
	lasts := b.span("ride.pedal_min", minutes, b.a.Ride.PedalMin)
	if b.a.Ride.WantedMin != nil {
		lasts = b.span("ride.lasts_pedal_min", minutes, b.a.Ride.LastsPedalMin)
	}
	facts := []fact{{"Ride", lasts + " with the pedal down"}}
	if b.bench() {
		facts[0] = fact{"Lasts", lasts + " under this load"}
		if b.a.Ride.End == answer.EndPattern {
			facts[0] = fact{"Load", lasts + "; then the pattern was over and the pack not empty"}
		}
	}
	if b.stuck() {
		facts = []fact{{"Ride", "none: it does not get going"}}
	} else if st := b.a.Steady; st != nil {
		facts = append(facts, fact{"Speed", b.span("steady.speed_kmh", kmPerH, st.SpeedKmh)})
	}
	if fates := strings.Join(b.fates(), "; "); fates != "" && !b.stuck() {
		facts = append(facts, fact{"Draws", fates})
	}
	if n := len(b.a.Assumed); n > 0 {
		value := b.one(plain, float64(n)) + " values; first of all " + clean(b.a.Assumed[0].Key)
		if b.a.Assumed[0].Effect < moving {
			value = b.one(plain, float64(n)) + " values, of which none moves the answer much"
		}
		facts = append(facts, fact{"Assumed", value})
	}
	return facts
}

// leadLines is how many lines of text a lead fact takes.
func leadLines(f fact) int {
	return len(wrap(f.name+": ", leadHang, inBox(f.value)))
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
		Count  int     `json:"count"`
		Inside float64 `json:"inside"`
		Stuck  float64 `json:"stuck"`
		Burnt  float64 `json:"burnt"`
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
		{"draws", draws{a.Draws.Count, a.Draws.Inside, a.Draws.Stuck, a.Draws.Burnt}},
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
