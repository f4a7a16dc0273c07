package ask

import (
	"fmt"
	"math"
	"slices"

	"example.org/packcheck/answer"
	"example.org/packcheck/battery"
	"example.org/packcheck/chemistry"
	"example.org/packcheck/internal/build"
	"example.org/packcheck/internal/draws"
	"example.org/packcheck/internal/quantity"
	"example.org/packcheck/setup"
)

// Battery says which battery is asked about, in the words of a setup file.
type Battery struct {
	Label     string // what is printed on it: "12 V 7 Ah", "20 V max 5 Ah"
	Chemistry string // "agm", "agm-traction", "gel", "li-ion", "lifepo4", "nimh"; empty: as the label reads
	Age       string // a word of [battery.Ages]; empty: not known
	Maker     string // "own" or "look-alike"; empty: not known
}

// batteries is every battery that the words may mean.
type batteries struct {
	world *setup.World
	build map[*setup.Parts]*build.Builder
	parts *setup.Parts   // with every choice at its likeliest
	model *battery.Model // of these, with every figure at its likeliest
	guess bool           // the chemistry follows from no word on the label
}

// find reads the words. What is wrong comes back as [setup.Faults].
func (b Battery) find() (*batteries, error) {
	values := map[string]string{"load.current": "1 A"} // what draws from it is the question's
	for key, text := range map[string]string{
		"pack.label": b.Label, "pack.chemistry": b.Chemistry, "pack.age": b.Age, "pack.maker": b.Maker,
	} {
		if text != "" {
			values[key] = text
		}
	}
	if b.Label == "" {
		return nil, fmt.Errorf("ask: no label; want what is printed on the battery, such as %q or %q", "12 V 7 Ah", "20 V max 5 Ah")
	}
	s, err := setup.Of(values)
	if err != nil {
		return nil, err
	}
	w, err := s.World()
	if err != nil {
		return nil, err
	}
	out := &batteries{world: w, parts: w.Likeliest(), build: map[*setup.Parts]*build.Builder{}}
	out.guess = out.parts.Pack.Chemistry.Assumed
	made, err := out.builder(out.parts)
	if err != nil {
		return nil, err
	}
	out.model, err = made.Pack(setup.Likely)
	return out, err
}

// builder makes packs of one set of parts.
func (b *batteries) builder(p *setup.Parts) (*build.Builder, error) {
	if have, ok := b.build[p]; ok {
		return have, nil
	}
	made, err := build.New(p)
	if err == nil {
		b.build[p] = made
	}
	return made, err
}

// profile is its chemistry.
func (b *batteries) profile() chemistry.Profile { return b.parts.Pack.Profile }

// enoughDraws puts the ends of a range within 5 % of those of sixteen times as
// many (checked by a test).
const enoughDraws = 512

// each puts a question to many batteries and returns the spread of each of its
// figures. Room for them is given by the length of the first argument of f.
func (b *batteries) each(figures int, f func(out []float64, m *battery.Model) error) ([]draws.Spread, error) {
	return b.over(enoughDraws, figures, f)
}

func (b *batteries) over(n, figures int, f func(out []float64, m *battery.Model) error) ([]draws.Spread, error) {
	columns := make([][]float64, figures)
	out := make([]float64, figures)
	for _, z := range draws.Points(n, b.world.Dims()) {
		m, err := b.at(z)
		if err != nil {
			return nil, err
		}
		if err := f(out, m); err != nil {
			return nil, err
		}
		for i, v := range out {
			columns[i] = append(columns[i], v)
		}
	}
	spreads := make([]draws.Spread, figures)
	for i := range spreads {
		spreads[i] = draws.SpreadOf(columns[i], nil)
	}
	return spreads, nil
}

// at is the battery at a point.
func (b *batteries) at(z []float64) (*battery.Model, error) {
	parts, err := b.world.Parts(z)
	if err != nil {
		return nil, err
	}
	made, err := b.builder(parts)
	if err != nil {
		return nil, err
	}
	return made.Pack(b.world.Pick(z))
}

// tell notes in the answer what the label was taken to mean.
func (b *batteries) tell(a *Answer) {
	p := &b.parts.Pack
	if p.Chemistry.Assumed || b.parts.Pack.SeveralMeanings {
		a.assume("%s, %s", p.Profile.Title, quantity.Cells(p.CellsInSeries))
	}
	if l, err := battery.ParseLabelOf(b.parts.Setup.Pack.Label.Text, p.Profile); err == nil && l.NickelCadmium {
		a.assume("nickel-cadmium is computed like nickel-metal hydride, which it resembles")
	}
	if p.CapacityAh.Assumed {
		a.assume("%s", p.CapacityAh.String())
	}
	if !b.parts.Setup.Pack.Age.Given && p.Health.Assumed {
		a.assume("worn to new (age not told)")
	}
}

// unrated tells of findings on the current that a battery may give that nobody told its
// rating: what such cells can give is a guess at it, on which nothing is a danger.
func (b *batteries) unrated(fs []answer.Finding) []answer.Finding {
	if !b.parts.Pack.MaxCurrentA.Assumed {
		return fs
	}
	for i := range fs {
		f := &fs[i]
		if f.LimitKey != answer.KeyPackMaxCurrent || f.Reads == answer.AsUnknown {
			continue
		}
		f.Level, f.Source = min(f.Level, answer.FixFirst), b.profile().Discharge.Source
		f.Advice = amps(f.Limit) + " is a guess from its kind: look what its maker allows. " + f.Advice
	}
	return fs
}

// spread is a figure of a spread over the draws; where some are not bounded it
// ends at most.
func spread(what string, s draws.Spread, unit string, most float64) Figure {
	f := Figure{What: what, Value: s.P50, Low: s.P10, High: s.P90, Unit: unit}
	for _, v := range []*float64{&f.Low, &f.Value, &f.High} {
		if *v > most || math.IsInf(*v, 1) {
			*v, f.OrMore = most, true
		}
	}
	return f
}

// worse reports whether any finding is at least so bad.
func worse(fs []answer.Finding, l answer.Level) bool {
	return slices.ContainsFunc(fs, func(f answer.Finding) bool { return f.Level >= l })
}
