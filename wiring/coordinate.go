package wiring

import (
	"fmt"
	"math"

	"example.org/packcheck/tables"
)

// Demand is what the vehicle draws from the pack.
type Demand struct {
	RunningA  float64 // steady, on the ground that it is used on; root mean square over an outing is best
	LaunchA   float64 // root mean square over the launch; 0 when unknown
	LaunchS   float64 // how long the launch lasts
	LaunchI2t float64 // I2t of one launch, A2s; 0 when unknown
	Launches  float64 // in a season; 0 when unknown
	BlockedA  float64 // wheels held, pedal down; 0 when unknown
}

// FuseBand is the range of ratings that suits a path, and why it ends where
// it does.
type FuseBand struct {
	LeastA      float64 // smaller ones open in normal use
	LeastBy     string  // "running" or "launch"
	LeastSource string
	MostA       float64 // larger ones do not protect
	MostBy      string  // what sets it, in words: "wire", "joint: plug", "holder", "largest made"
	MostSource  string
	StandardA   []float64 // standard ratings inside, ascending; empty when none is
	// NeedsAmpacityA is what the wire would have to carry for the least
	// rating; 0 when the wire does.
	NeedsAmpacityA float64
}

// Allowed returns the fuse ratings of a form that suit the path at a demand.
//
// From below: the running current may load the rating to 75 percent (fuse
// glossary; NEC 210.20 has 80), and the launch must be over before the fuse
// may open; both re-rated for the surroundings. From above: 150 percent of
// the ampacity of the weakest wire (33 CFR 183.455), the steady current of
// the weakest joint, the heaviest holder made for the form. A band with MostA
// below LeastA is empty: then the path or the demand has to change, never the
// fuse.
func (p *Path) Allowed(t *tables.Tables, form tables.Fuse, d Demand, ambientC float64) (FuseBand, error) {
	unit, err := NewFuse(FuseSpec{Form: form, RatingA: 1})
	if err != nil {
		return FuseBand{}, err
	}
	curve := unit.At(ambientC) // of a fuse of 1 A: currents are multiples of the rating
	load := t.Figure(tables.ContinuousLoad)
	b := FuseBand{
		LeastA: d.RunningA / load.Likely / curve.RatedA(), LeastBy: "running", LeastSource: load.Source,
	}
	if d.LaunchA > 0 && d.LaunchS > 0 {
		// A fuse of 1 A may open within the launch from this current on.
		if most := curve.currentBy(d.LaunchS, earliest); d.LaunchA/most > b.LeastA {
			b.LeastA, b.LeastBy, b.LeastSource = d.LaunchA/most, "launch", form.GatesSource
		}
	}
	share := t.Figure(tables.FuseShareOfAmpacity)
	weakest := p.Weakest(ambientC)
	ofWire := share.Likely * weakest.CarriesA(ambientC)
	b.MostA, b.MostBy, b.MostSource = ofWire, "wire", share.Source
	if c, ok := p.WeakestContact(); ok && c.SteadyA < b.MostA {
		b.MostA, b.MostBy, b.MostSource = c.SteadyA, "joint: "+c.Name, c.Source
	}
	if form.HolderMostA > 0 && form.HolderMostA < b.MostA {
		b.MostA, b.MostBy, b.MostSource = form.HolderMostA, "holder", form.HolderSource
	}
	if n := len(form.RatingsA); n > 0 && form.RatingsA[n-1] < b.MostA {
		b.MostA, b.MostBy, b.MostSource = form.RatingsA[n-1], "largest made", form.RatingsSource
	}
	for _, rating := range form.RatingsA {
		if rating >= b.LeastA && rating <= b.MostA {
			b.StandardA = append(b.StandardA, rating)
		}
	}
	if b.LeastA > ofWire {
		b.NeedsAmpacityA = b.LeastA / share.Likely
	}
	return b, nil
}

// Advice says in plain words what to do about the band: which ratings to
// choose from, or what to change when there is none. It never says to fit a
// larger fuse.
func (b FuseBand) Advice() string {
	switch {
	case len(b.StandardA) == 1:
		return fmt.Sprintf("Use a %g A fuse of this form.", b.StandardA[0])
	case len(b.StandardA) > 1:
		return fmt.Sprintf("Use a fuse of this form from %g to %g A, the smallest that holds.",
			b.StandardA[0], b.StandardA[len(b.StandardA)-1])
	case b.LeastA <= b.MostA:
		return "No standard rating of this form lies between what the vehicle draws and what the path stands. " +
			"Lower the current with a current limit, or improve the weakest part of the path."
	}
	change := "Thicker wire"
	switch {
	case b.NeedsAmpacityA > 0:
		change = fmt.Sprintf("Wire that carries %.0f A or more", math.Ceil(b.NeedsAmpacityA))
	case b.MostBy == "holder" || b.MostBy == "largest made":
		change = "A form of fuse and holder made for this current"
	case b.MostBy != "wire":
		change = "A joint made for this current"
	}
	if b.LeastBy == "launch" {
		return change + ", a current limit or a slower ramp at launch. Do not fit a larger fuse on this path."
	}
	return change + ", or a current limit in the controller. Do not fit a larger fuse on this path."
}
