package wiring

import (
	"cmp"
	"errors"
	"fmt"
	"math"
	"slices"
	"strings"

	"example.org/packcheck/tables"
)

// Demand is what the vehicle draws from the pack.
type Demand struct {
	// RunningA is the current that flows for minutes, on the ground that it is
	// used on. Where it changes, take the root mean square (see
	// [FuseState.EffectiveA]): the plain mean, pauses and all, heats too little.
	RunningA  float64
	LaunchA   float64 // root mean square over the launch; 0 when unknown
	LaunchS   float64 // how long the launch lasts
	LaunchI2t float64 // I2t of one launch, A2s; 0 when unknown
	Launches  float64 // in a season; 0 when unknown
	BlockedA  float64 // wheels held, pedal down; 0 when unknown
}

// FuseLimit is one part of a path that a fuse must not exceed.
type FuseLimit struct {
	By     string // "wire", "joint", "holder", "largest made"
	Name   string // of the joint; empty otherwise
	MostA  float64
	Source string
}

// FuseBand is the range of ratings that suits a path, and why it ends where
// it does.
type FuseBand struct {
	LeastA      float64 // smaller ones open in normal use
	LeastBy     string  // "running" or "launch"
	LeastSource string
	MostA       float64 // larger ones do not protect
	MostBy      string  // what sets it: "wire", "joint", "holder", "largest made"
	MostSource  string
	Limits      []FuseLimit // everything that limits it, the lowest first
	StandardA   []float64   // standard ratings inside, ascending; empty when none is
	// NeedsAmpacityA is what the wire would have to carry, for the least rating
	// and for the running current; 0 when it is thick enough for the least
	// rating.
	NeedsAmpacityA float64
}

// errNoWire is the error for a path that nobody made.
var errNoWire = errors.New("wiring: a path without wire (use NewPath)")

// Allowed returns the fuse ratings of a form that suit the path at a demand.
//
// From below: the running current may load the rating to 75 percent (fuse
// glossary; NEC 210.20 has 80), and the launch must be over before the fuse
// may open; both re-rated for the surroundings. From above: 150 percent of
// the ampacity of the weakest wire (33 CFR 183.455), the steady current of
// the weakest joint, the heaviest holder made for the form. A band with MostA
// below LeastA is empty: then the path or the demand has to change, never the
// fuse. It fails for a path without wire, and for a form without opening times.
func (p *Path) Allowed(t *tables.Tables, form tables.Fuse, d Demand, ambientC float64) (FuseBand, error) {
	if len(p.runs) == 0 {
		return FuseBand{}, errNoWire
	}
	t = orBuiltin(t)
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
	ofWire := share.Likely * p.Weakest(ambientC).CarriesA(ambientC)
	b.Limits = append(b.Limits, FuseLimit{By: ofTheWire, MostA: ofWire, Source: share.Source})
	for _, c := range p.contacts {
		if c.SteadyA > 0 {
			b.Limits = append(b.Limits, FuseLimit{By: "joint", Name: c.Name, MostA: c.SteadyA, Source: c.Source})
		}
	}
	if form.HolderMostA > 0 {
		b.Limits = append(b.Limits, FuseLimit{By: "holder", MostA: form.HolderMostA, Source: form.HolderSource})
	}
	if n := len(form.RatingsA); n > 0 {
		b.Limits = append(b.Limits, FuseLimit{By: "largest made", MostA: form.RatingsA[n-1], Source: form.RatingsSource})
	}
	slices.SortStableFunc(b.Limits, func(a, b FuseLimit) int { return cmp.Compare(a.MostA, b.MostA) })
	lowest := b.Limits[0]
	b.MostA, b.MostBy, b.MostSource = lowest.MostA, lowest.By, lowest.Source
	for _, rating := range form.RatingsA {
		if rating >= b.LeastA && !over(rating, b.MostA) {
			b.StandardA = append(b.StandardA, rating)
		}
	}
	if b.LeastA > ofWire {
		b.NeedsAmpacityA = max(b.LeastA/share.Likely, d.RunningA)
	}
	return b, nil
}

// AboveWire reports whether a rating is too large for the wire, as a fuse that is fitted is
// found to be.
func (b FuseBand) AboveWire(ratingA float64) bool {
	return slices.ContainsFunc(b.Limits, func(l FuseLimit) bool { return l.By == ofTheWire && drawsOver(ratingA, l.MostA) })
}

// ofTheWire is what limits a fuse most.
const ofTheWire = "wire"

// Advice says in plain words what to do about the band: which ratings to
// choose from, or what to change when there is none. It never says to fit a
// larger fuse.
func (b FuseBand) Advice() string {
	switch {
	case len(b.StandardA) == 1:
		return fmt.Sprintf("Fit a %g A fuse right at the pack.", b.StandardA[0])
	case len(b.StandardA) > 1:
		return fmt.Sprintf("Fit a fuse of %g to %g A right at the pack; take the smallest that holds.",
			b.StandardA[0], b.StandardA[len(b.StandardA)-1])
	case b.LeastA <= b.MostA:
		return "Bring the current down, or strengthen the wire: " +
			"no standard rating lies between what the vehicle draws and what the path stands."
	}
	first := "Bring the current down with a current limit"
	if b.LeastBy == "launch" {
		first = "Soften the launch with a current limit or a slower ramp"
	}
	return first + "; otherwise fit " + strings.Join(b.changes(), " and ") + ". Do not fit a larger fuse on this path; once it is changed, see anew which one suits."
}

// changes names every part of the path that stands less than the least rating.
func (b FuseBand) changes() []string {
	var parts []string
	add := func(part string) {
		if !slices.Contains(parts, part) {
			parts = append(parts, part)
		}
	}
	for _, limit := range b.Limits {
		switch {
		case limit.MostA >= b.LeastA:
		case limit.By == ofTheWire:
			add(fmt.Sprintf("wire that carries %.0f A or more", math.Ceil(b.NeedsAmpacityA)))
		case limit.By == "joint":
			add(fmt.Sprintf("%s made for %.0f A or more", limit.Name, math.Ceil(b.LeastA)))
		default:
			add("a kind of fuse and holder made for this current")
		}
	}
	return parts
}
