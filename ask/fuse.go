package ask

import (
	"cmp"
	"fmt"
	"math"
	"strings"

	"example.org/packcheck/answer"
	"example.org/packcheck/internal/quantity"
	"example.org/packcheck/setup"
	"example.org/packcheck/tables"
	"example.org/packcheck/wiring"
)

// Fuse asks which fuse belongs to a wire and its load.
type Fuse struct {
	Wire        tables.WireSize
	RunningA    float64  // lasting current, 0.1 to 1000 A
	LaunchA     float64  // current of a launch; 0 = not told
	LaunchS     float64  // how long it lasts; 0 = not told
	InsulationC float64  // rated temperature; 0 = not told: 60 degC, the safe side
	Form        string   // "small blade", "large blade" ...; empty: small blade
	AirC        *float64 // of the air; nil = 20 degC
}

// Answer returns the standard ratings that hold the load and protect the wire,
// from the smallest to the largest; where there is none, the most that protects
// the wire.
func (q Fuse) Answer() (Answer, error) {
	var a Answer
	var in inputs
	in.within("RunningA", q.RunningA, 0.1, 1000, "A")
	in.launch(q.LaunchA, q.LaunchS, 0.1)
	in.unless("InsulationC", q.InsulationC, 60, 250, "degC")
	aroundC := in.around(&a, q.AirC)
	t := tables.Builtin()
	form, err := t.Fuse(cmp.Or(q.Form, setup.UsualFuseForm))
	in.add(err)
	run, err := wiring.NewRun(t, wiring.RunSpec{Size: q.Wire, OneWayM: 1, InsulationC: q.InsulationC})
	in.add(err)
	if err := in.err(); err != nil {
		return Answer{}, err
	}
	path, err := wiring.NewPath(wiring.PathSpec{Runs: []wiring.Run{run}})
	if err != nil {
		return Answer{}, err
	}
	band, err := path.Allowed(t, form, wiring.Demand{RunningA: q.RunningA, LaunchA: q.LaunchA, LaunchS: q.LaunchS}, aroundC)
	if err != nil {
		return Answer{}, err
	}
	if q.InsulationC == 0 {
		a.assume("insulation of %d C, the lowest", coldestC)
	}
	if q.Form == "" {
		a.assume("%s fuse", setup.UsualFuseForm)
	}
	a.Asked = fmt.Sprintf("which fuse for %s and %s", run.Wire.Name, amps(q.RunningA))
	a.Limit = &Limit{What: "most, set by the " + band.MostBy, Value: band.MostA, Unit: "A"}
	a.asks = 1/band.MostA + band.LeastA*1e-9 // first that it protects, then that it holds
	a.cite(band.MostSource)
	if n := len(band.StandardA); n > 0 {
		first, last := band.StandardA[0], band.StandardA[n-1]
		a.is(Figure{What: "fuse", Value: first, Low: first, High: last, Unit: "A"})
		a.say("%s. From %s on it holds the load, up to %s it protects the wire.", strings.TrimSuffix(band.Advice(), "."), amps(band.LeastA), amps(band.MostA))
	} else {
		a.is(exactly("most that protects the wire", band.MostA, "A"))
		a.say("No standard fuse does both: from %s on it holds the load, up to %s it protects the wire.", amps(band.LeastA), amps(band.MostA))
		a.say("%s", band.Advice())
		a.level(answer.FixFirst, true)
	}
	carries := run.CarriesA(aroundC)
	a.beside(exactly("the wire carries", carries, "A"), exactly("the load needs at least", band.LeastA, "A"))
	if q.RunningA > carries {
		a.say("The wire itself carries only %s for long.", amps(carries))
		a.level(answer.FixFirst, true)
	}
	a.cite(band.LeastSource, run.Ampacity.Source)
	reach := t.Figure(tables.FuseReachBare)
	a.beware(fmt.Sprintf("It sits within %s of the pack. If it opens, find out why; never fit a larger one so that it holds.", length(reach.Likely)), reach.Source)
	return a.checked()
}

// Opened asks what current it was that opened a fuse.
type Opened struct {
	RatingA float64  // printed on the fuse, 0.1 to 1000 A
	Seconds float64  // until it opened, 0.001 to 86400 s
	Form    string   // empty: small blade
	AirC    *float64 // of the air; nil = 20 degC
}

// Answer returns the steady current, from the least that may have opened it so
// soon to the most that it may have borne so long, with the middle of both on a
// logarithmic scale.
func (q Opened) Answer() (Answer, error) {
	var a Answer
	var in inputs
	in.within("RatingA", q.RatingA, 0.1, 1000, "A")
	in.within("Seconds", q.Seconds, 0.001, 86400, "s")
	aroundC := in.around(&a, q.AirC)
	form, err := tables.Builtin().Fuse(cmp.Or(q.Form, setup.UsualFuseForm))
	in.add(err)
	if err := in.err(); err != nil {
		return Answer{}, err
	}
	if q.Form == "" {
		a.assume("%s fuse", setup.UsualFuseForm)
	}
	fuse, err := wiring.NewFuse(wiring.FuseSpec{Form: form, RatingA: q.RatingA})
	if err != nil {
		return Answer{}, err
	}
	flowed := fuse.WhatFlowed(wiring.Opening{Seconds: q.Seconds, AmbientC: aroundC})
	a.Asked = fmt.Sprintf("what a fuse of %s saw that opened after %s", amps(q.RatingA), seconds(q.Seconds))
	f := Figure{What: "current", Value: math.Sqrt(flowed.LeastA * flowed.MostA), Low: flowed.LeastA, High: flowed.MostA, Unit: "A"}
	if math.IsInf(flowed.MostA, 1) {
		f.Value, f.High, f.OrMore = f.Low, f.Low, true
	}
	a.is(f)
	holds := fuse.At(aroundC).HoldsA()
	a.Limit = &Limit{What: "holds for good", Value: holds, Unit: "A"}
	a.cite(form.GatesSource)
	a.level(answer.FixFirst, false) // as a report says of what opened in use
	a.asks = f.Low                  // of two times the one that more flowed by is worse
	switch {
	case f.OrMore:
		a.say("More than %s, how much more the fuse does not tell: a short circuit.", amps(f.Low))
	default:
		a.say("Between %s and %s, if it was steady: %.2g to %.2g times its rating.", amps(f.Low), amps(f.High), f.Low/q.RatingA, f.High/q.RatingA)
		a.say("A fuse is a band, not a line: two of one kind differ that much.")
	}
	a.beware("Find what drew that current before a fuse of the same rating goes in; never a larger one.", tables.Builtin().Figure(tables.FuseShareOfAmpacity).Source)
	return a.checked()
}

func length(v float64) string { return quantity.FormatBoth(quantity.Length, v, quantity.Metric) }
