package tables

import (
	"fmt"
	"math"
	"slices"
)

// Gate is what a standard or a maker's sheet asks of a fuse at one multiple
// of its rating: it may open no earlier than EarliestS and must have opened
// by LatestS.
type Gate struct {
	Ratio     float64 // current over rating
	EarliestS float64 // 0 where no earliest time is given
	LatestS   float64 // 0 where it need not open
}

// Fuse is one form of fuse or breaker, all its ratings together. Blocks that
// the table does not have are empty, with an empty source.
type Fuse struct {
	Form    string // "small-blade"
	Words   []string
	What    string // in words, with the standard's letter
	Breaker bool   // closes again by itself
	Source  string

	Gates       []Gate // ascending in Ratio, at ReferenceC
	ReferenceC  float64
	GatesSource string

	RatingsA      []float64 // standard ratings, ascending
	RatingsSource string

	ColdOhm       []Point // X rating A, Y Ohm cold
	ColdSource    string
	MeltingA2s    []Point // X rating A, Y typical melting I2t in A2s
	MeltingSource string

	Heat       []Point // X degC of the surroundings, Y share of the rating that is left
	HeatSource string

	VoltagesV     []float64 // voltage ratings made
	BreakingA     float64   // largest current it may interrupt; 0 unknown
	VoltageSource string

	HolderA      float64 // continuous limit of a usual in-line holder
	HolderMostA  float64 // limit of the heaviest one
	HolderC      float64 // surroundings that it bears, degC; 0 unknown
	HolderSource string
}

// Fuse looks a form up: "small blade", "large blade", "glass tube", "quick
// glass tube", "auto-reset breaker" or a user's own.
func (t *Tables) Fuse(form string) (Fuse, error) {
	f, err := byWord(t.fuses, "fuse form", form, func(f Fuse) []string { return f.Words })
	return f.copy(), err
}

// FuseForms returns the names of the forms, sorted.
func (t *Tables) FuseForms() []string { return t.fuses.Names() }

func (f Fuse) copy() Fuse {
	f.Words = clone(f.Words)
	f.Gates = clone(f.Gates)
	f.RatingsA = clone(f.RatingsA)
	f.ColdOhm = clone(f.ColdOhm)
	f.MeltingA2s = clone(f.MeltingA2s)
	f.Heat = clone(f.Heat)
	f.VoltagesV = clone(f.VoltagesV)
	return f
}

// ResistanceOhm returns the cold resistance for a rating, interpolated on
// logarithmic axes and continued as 1/rating; ok is false when the table has
// none for this form.
func (f Fuse) ResistanceOhm(ratingA float64) (ohm float64, ok bool) {
	if len(f.ColdOhm) == 0 || !(ratingA > 0) {
		return 0, false
	}
	return logInterpolate(f.ColdOhm, ratingA, -1, -1), true
}

// MeltingI2t returns the typical melting I2t (A2s) for a rating, interpolated
// on logarithmic axes; below the smallest rating of the table it falls with
// the power 2.5, above the largest it grows with the power 2, both the low
// side. ok is false when the table has none for this form.
func (f Fuse) MeltingI2t(ratingA float64) (a2s float64, ok bool) {
	if len(f.MeltingA2s) == 0 || !(ratingA > 0) {
		return 0, false
	}
	return logInterpolate(f.MeltingA2s, ratingA, 2.5, 2), true
}

// HeatShare returns the share of its rating that the fuse carries in
// surroundings of ambientC. It is 1 at ReferenceC, for which the gates are
// given: the first point of the curve is taken to lie there. The curve is
// continued with its end slopes and never falls under 0.05. A form without a
// curve gives 1 and ok false.
func (f Fuse) HeatShare(ambientC float64) (share float64, ok bool) {
	n := len(f.Heat)
	if n < 2 {
		return 1, false
	}
	i := 1
	for i < n-1 && f.Heat[i].X < ambientC {
		i++
	}
	a, b := f.Heat[i-1], f.Heat[i]
	if i == 1 {
		a.X = f.ReferenceC
	}
	return max(0.05, a.Y+(b.Y-a.Y)*(ambientC-a.X)/(b.X-a.X)), true
}

// PulseShare returns the share of the melting I2t that one pulse may have so
// that the fuse stands this many of them, at least [PulseRest] apart, with
// the source ID. The guide prints shares for 100 to 100 000 pulses; fewer
// pulses get no more than the share for 100, more than 100 000 get none (0).
func (t *Tables) PulseShare(pulses float64) (share float64, source string) {
	life, is := t.pulses.Get("blade")
	if !is { // the zero Tables: none is known to be stood
		return 0, ""
	}
	last := life.shares[len(life.shares)-1]
	if !(pulses <= last.X) {
		return 0, life.source
	}
	if pulses <= life.shares[0].X {
		return life.shares[0].Y, life.source
	}
	return logInterpolate(life.shares, pulses, 0, 0), life.source
}

// PulsesFor returns how many pulses of this share of the melting I2t a fuse
// stands: the guide's table turned round, on logarithmic axes. A share above
// the one for 100 pulses gives 0, one below the share for 100 000 gives no
// more than 100 000: the guide ends there.
func (t *Tables) PulsesFor(share float64) float64 {
	life, is := t.pulses.Get("blade")
	if !is {
		return 0
	}
	shares := life.shares
	last := shares[len(shares)-1]
	switch {
	case !(share <= shares[0].Y):
		return 0
	case share <= last.Y:
		return last.X
	}
	turned := make([]Point, len(shares))
	for i, p := range shares {
		turned[len(shares)-1-i] = Point{X: p.Y, Y: p.X}
	}
	return logInterpolate(turned, share, 0, 0)
}

// pulseLife is the share of melting I2t by number of pulses.
type pulseLife struct {
	shares []Point // X pulses, Y share
	source string
}

func readPulses(t *Tables, w *row) {
	p := pulseLife{source: w.source()}
	p.shares = w.falling("share", w.curve("pulses", span{1, 1e9}, "share", span{0.001, 1}))
	put(w, &t.pulses, p)
}

func readFuse(t *Tables, w *row) {
	f := Fuse{
		Form: w.name(), Words: w.texts("words"), What: w.text("what"), Breaker: w.flag("breaker"),
		Source: w.source(), ReferenceC: 23,
	}
	rating := span{0.01, 1000}
	if b := w.block("gates"); b != nil {
		f.ReferenceC = b.numberOr("reference_c", 23, span{-40, 125})
		f.Gates, f.GatesSource = b.gates(), b.origin
		b.done()
	} else {
		w.fault("gates", nil, "a table with ratio, earliest_s, latest_s and source")
	}
	if b := w.block("ratings"); b != nil {
		f.RatingsA, f.RatingsSource = b.numbers("amps", rating), b.origin
		if !slices.IsSorted(f.RatingsA) {
			b.fault("amps", b.columns["amps"], "ascending numbers")
		}
		b.done()
	} else {
		w.fault("ratings", nil, "a table with amps and source")
	}
	if b := w.block("resistance"); b != nil {
		f.ColdOhm = b.falling("ohm", b.curve("rating_a", rating, "ohm", span{1e-6, 10}))
		f.ColdSource = b.origin
		b.done()
	}
	if b := w.block("melting"); b != nil {
		f.MeltingA2s = b.rising("a2s", b.curve("rating_a", rating, "a2s", span{1e-6, 1e8}))
		f.MeltingSource = b.origin
		b.done()
	}
	if b := w.block("heat"); b != nil {
		f.Heat = b.falling("share", b.curve("ambient_c", span{-60, 200}, "share", span{0.05, 2}))
		f.HeatSource = b.origin
		if len(f.Heat) < 2 || f.Heat[0].Y != 1 || f.Heat[1].X <= f.ReferenceC {
			b.fault("share", b.columns["share"], "1 at the reference temperature first, then at least one point above it")
		}
		b.done()
	}
	if b := w.block("voltage"); b != nil {
		f.VoltagesV, f.VoltageSource = b.numbers("volts", span{1, 1000}), b.origin
		f.BreakingA = b.numberOr("breaking_a", 0, span{0, 1e6})
		b.done()
	}
	if b := w.block("holder"); b != nil {
		f.HolderA, f.HolderMostA = b.number("usual_a", rating), b.number("most_a", rating)
		f.HolderC, f.HolderSource = b.numberOr("ambient_c", 0, span{0, 200}), b.origin
		b.done()
	}
	put(w, &t.fuses, f)
}

// gates reads the three columns of a gate table and checks their order.
func (w *row) gates() []Gate {
	latest := w.falling("latest_s", w.curve("ratio", span{0.5, 100}, "latest_s", span{1e-4, math.Inf(1)}))
	earliest := w.numbers("earliest_s", span{0, 1e9})
	if len(earliest) != len(latest) {
		w.fault("earliest_s", fmt.Sprintf("%d numbers", len(earliest)), fmt.Sprintf("as many as ratio has: %d", len(latest)))
		return nil
	}
	gates := make([]Gate, len(latest))
	lowest := math.Inf(1)
	for i, p := range latest {
		gates[i] = Gate{Ratio: p.X, EarliestS: earliest[i]}
		if !math.IsInf(p.Y, 1) {
			gates[i].LatestS = p.Y
		}
		if earliest[i] > p.Y {
			w.fault("earliest_s", earliest[i], fmt.Sprintf("no earliest time above the latest, %g", p.Y))
		}
		if earliest[i] > 0 {
			if earliest[i] > lowest {
				w.fault("earliest_s", fmt.Sprintf("%g after %g", earliest[i], lowest), "numbers that do not rise")
			}
			lowest = earliest[i]
		}
	}
	if math.IsInf(latest[len(latest)-1].Y, 1) {
		w.fault("latest_s", w.columns["latest_s"], "a time at the highest ratio: a fuse opens at some current")
	}
	return gates
}

// clone copies a slice, nil for nil, so that a caller cannot write into a table.
func clone[E any](s []E) []E { return slices.Clone(s) }
