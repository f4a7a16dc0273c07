package wiring

import (
	"fmt"
	"math"

	"example.org/packcheck/answer"
	"example.org/packcheck/tables"
)

// Case is one path to be judged.
type Case struct {
	Path     *Path
	Pack     PackEnd // its LoadA is taken from Demand
	Demand   Demand
	AmbientC float64        // surroundings of wire and fuse; a closed battery box is warmer than the air
	Form     tables.Fuse    // form to choose ratings from when there is no fuse; empty: the small blade
	Tables   *tables.Tables // nil: the built-in ones

	// Thinnest is the path with the thinnest wire that it may have, for choosing
	// a fuse where the wire's size is not known; nil means Path.
	Thinnest *Path

	// FuseUnknown says that the path may have a fuse of which nothing is known.
	// It is then judged as if it had none, but said so.
	FuseUnknown bool
	// OpenedA is the rating of a fuse that was seen to open, 0 where none was. What is in
	// its place is not known for that. CameBack says that it closed again: it was no fuse
	// that blew.
	OpenedA  float64
	CameBack bool

	// AsMade says that path and protection are those of the vehicle as it was made,
	// Replaced that another battery took the place of the one that it was made with.
	AsMade, Replaced bool
}

// Result is what came out, numbers and judgement.
type Result struct {
	Losses    []Loss // at the running current, wire at its estimated temperature
	Total     Loss
	WireC     float64   // estimated temperature of the hottest wire at the running current
	AmpacityA float64   // of the weakest run in the surroundings
	Fuse      FuseTimes // zero when there is no fuse
	Band      FuseBand
	Pulses    PulseLife
	Near      Short // right behind the fuse
	Far       Short // at the far end of the wire
	Worst     Short // the place that leaves the wire the least margin
	Findings  []answer.Finding
}

// FuseTimes is when the fuse opens at the currents of the demand.
type FuseTimes struct {
	CarriesA float64 // rating left in the surroundings
	Running  Band
	Launch   Band
	Blocked  Band
}

// Assess judges a case. It fails when there is no path, or when a number is
// negative or not finite, or the pack has no voltage or resistance.
func Assess(c Case) (Result, error) {
	if err := c.check(); err != nil {
		return Result{}, err
	}
	c.Tables = orBuiltin(c.Tables)
	form := c.Form
	if c.Path.fuse != nil {
		form = c.Path.fuse.spec.Form
	} else if form.Form == "" {
		var err error
		if form, err = c.Tables.Fuse("small blade"); err != nil {
			return Result{}, err
		}
	}
	chooseFor := c.Path
	if c.Thinnest != nil {
		chooseFor = c.Thinnest
	}
	band, err := chooseFor.Allowed(c.Tables, form, c.Demand, c.AmbientC)
	if err != nil {
		return Result{}, err
	}
	r := Result{
		WireC:     c.Path.WireC(c.Demand.RunningA, c.AmbientC),
		AmpacityA: c.Path.Weakest(c.AmbientC).CarriesA(c.AmbientC),
		Band:      band,
	}
	r.Losses = c.Path.Losses(Load{CurrentA: c.Demand.RunningA, FullV: c.Pack.FullV, WireC: min(r.WireC, hottestCopperC)})
	r.Total = Total(r.Losses)
	end := c.Pack
	end.LoadA = c.Demand.RunningA
	r.Near, r.Far, r.Worst = c.Path.Shorts(end, c.AmbientC)
	if f := c.Path.fuse; f != nil {
		curve := f.At(c.AmbientC)
		r.Fuse = FuseTimes{
			CarriesA: curve.RatedA(), Running: curve.Opens(c.Demand.RunningA),
			Launch: curve.Opens(c.Demand.LaunchA), Blocked: curve.Opens(c.Demand.BlockedA),
		}
		r.Pulses = f.PulseLife(c.Tables, Season{I2tA2s: c.Demand.LaunchI2t, Launches: c.Demand.Launches})
	}
	r.Findings = c.judge(r)
	answer.Sort(r.Findings)
	return r, nil
}

// orBuiltin returns the built-in tables where there are none.
func orBuiltin(t *tables.Tables) *tables.Tables {
	if t == nil {
		return tables.Builtin()
	}
	return t
}

// hottestCopperC bounds the estimated wire temperature that resistance is
// computed at: far above it the estimate means only "far too hot".
const hottestCopperC = 250

func (c Case) check() error {
	if c.Path == nil {
		return fmt.Errorf("wiring: no path to assess (use NewPath)")
	}
	d := c.Demand
	for _, one := range []struct {
		name  string
		value float64
	}{
		{"running current", d.RunningA},
		{"launch current", d.LaunchA},
		{"launch time", d.LaunchS},
		{"launch I2t", d.LaunchI2t},
		{"launches", d.Launches},
		{"blocked current", d.BlockedA},
		{"full voltage", c.Pack.FullV},
		{"pack resistance", c.Pack.Ohm},
	} {
		if !(one.value >= 0) || math.IsInf(one.value, 1) {
			return fmt.Errorf("wiring: %s %g is out of range (want 0 or more)", one.name, one.value)
		}
	}
	switch {
	case !(c.Pack.FullV > 0 && c.Pack.Ohm > 0):
		return fmt.Errorf("wiring: the pack needs a full voltage and a resistance above 0")
	case !(c.AmbientC >= -60 && c.AmbientC <= 150):
		return fmt.Errorf("wiring: surroundings of %g degC are out of range (want -60 to 150)", c.AmbientC)
	}
	return nil
}
