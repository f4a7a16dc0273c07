package setup

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"example.org/packcheck/battery"
	"example.org/packcheck/chemistry"
	"example.org/packcheck/internal/quantity"
)

// packIdentity finds out what kind of pack it is: chemistry and cells. It
// reports whether the rest can be settled. What is wrong with one of its keys does
// not hide what is wrong with another.
func (r *resolver) packIdentity(raw Pack) (label battery.Label, ok bool) {
	p := &r.parts.Pack
	profile, named, sure := r.packNamed(raw)
	ok = sure
	if w := raw.Label; w.Given {
		if named && r.otherLithium(raw.Chemistry, w, profile) {
			named, ok = false, false
		}
		var err error
		if !named {
			profile = chemistry.Profile{}
		}
		if label, err = r.label(w.Text, profile); err != nil {
			r.fault(w.Line, w.Key, w.Text, wantLabel(err))
			return label, false
		}
		if label.Blocks > 1 && raw.Joined.Given {
			r.fault(raw.Joined.Line, raw.Joined.Key, raw.Joined.Text,
				fmt.Sprintf("either this key with the label of one of the two, or a label such as %q without it: %q names %d blocks already",
					"24 V (two 12 V 7 Ah)", w.Text, label.Blocks))
			ok = false
		}
		p.BlocksUnclear, p.LiquidAcid, p.Starter = label.BlocksUnclear, label.LiquidAcid || p.LiquidAcid, label.Starter
		r.parts.Notes = append(r.parts.Notes, label.Notes...)
	}
	if !ok && !named {
		return label, false
	}
	if !named {
		if label.Chemistry == "" {
			r.noKind(raw)
			return label, false
		}
		profile, _ = r.chem.Profile(label.Chemistry)
		p.Chemistry = r.readChemistry(raw.Label, label)
	}
	p.Profile = profile
	p.CellsInSeries = label.CellsInSeries
	if raw.CellsInSeries.Given {
		p.CellsInSeries = int(raw.CellsInSeries.Likely)
	}
	if n := label.CellsInSeries; n > 0 && n != p.CellsInSeries {
		r.fault(raw.CellsInSeries.Line, raw.CellsInSeries.Key, raw.CellsInSeries.Text,
			fmt.Sprintf("%d, which is what the label %q means, or another label", n, label.Text))
		return label, false
	}
	if p.CellsInSeries == 0 {
		if !r.wrong(r.key("pack", "label")) && !r.wrong(r.key("pack", "cells_in_series")) {
			r.fault(raw.Line, strings.TrimSuffix(r.key("pack", ""), "."), "", `a label with its volts, such as label = "20 V max 5 Ah", or cells_in_series`)
		}
		return label, false
	}
	if label.Text != "" {
		p.Reading = fmt.Sprintf("%s, %s in series", profile.Title, quantity.Cells(p.CellsInSeries))
	}
	return label, ok
}

// labelRead is what a battery's label means, or why it cannot be read.
type labelRead struct {
	battery.Label
	err error
}

// label reads a battery's label, once for all selections: of some chemistry, or, without
// one, of whichever the words tell.
func (r *resolver) label(text string, of chemistry.Profile) (battery.Label, error) {
	key := [2]string{text, of.Name}
	l, read := r.labels[key]
	if !read {
		if of.Name == "" {
			l.Label, l.err = battery.ParseLabel(text, "")
		} else {
			l.Label, l.err = battery.ParseLabelOf(text, of)
		}
		r.labels[key] = l
	}
	return l.Label, l.err
}

// isLithium reports whether a chemistry of that name is.
func (r *resolver) isLithium(name string) bool {
	p, ok := r.chem.Profile(name)
	return ok && p.Family == chemistry.Lithium
}

// noKind notes what is missing where nothing tells of which kind a battery is.
func (r *resolver) noKind(raw Pack) {
	pack := strings.TrimSuffix(r.key("pack", ""), ".")
	beside := "pack.chemistry beside it: " + oneOf(r.chem.Names())
	switch {
	case faultAt(r.noted, pack): // it is no table
	case raw.Label.Given:
		r.fault(raw.Label.Line, raw.Label.Key, raw.Label.Text, beside)
	case r.wrong(pack + ".label"):
	case raw.CellsInSeries.Given:
		r.fault(raw.Line, pack, "", beside)
	default:
		r.fault(raw.Line, pack, "", `a label, such as label = "20 V max 5 Ah", or chemistry and cells_in_series`)
	}
}

// packNamed is the chemistry that the setup names. It is not sure where what the
// setup names is none: the label then is all there is.
func (r *resolver) packNamed(raw Pack) (profile chemistry.Profile, named, sure bool) {
	p, c := &r.parts.Pack, raw.Chemistry
	if !c.Given {
		return profile, false, !r.wrong(r.key("pack", "chemistry"))
	}
	if profile, named = r.named(c.Text); !named {
		r.noWord(c, c.Text, r.chem.Names())
		return profile, false, false
	}
	_, loose := spelled(r.chem.Names(), c.Text)
	if told, is := r.byLabel(raw.Label.Text, profile); loose && is {
		profile = told
	}
	p.Chemistry, p.LiquidAcid = Choice{Key: c.Key, Text: profile.Name, Known: true}, isLiquidAcid(c.Text)
	if loose && profile.Family == chemistry.Lithium && !r.toldKind(raw.Label.Text, profile.Family) {
		p.Chemistry.Assumed, p.Chemistry.Source = true, srcGiven
		p.Chemistry.Why = fmt.Sprintf("%q does not say which lithium; it could also mean lifepo4.", c.Text)
		p.SeveralMeanings, p.LithiumAnyway = true, true
		r.note(c.Key, profile.Name, p.Chemistry.Why, p.Chemistry.Source)
	}
	return profile, true, true
}

// wantLabel is what a label should have been: what its error wants comes first.
func wantLabel(err error) string {
	text := strings.TrimPrefix(err.Error(), "battery: ")
	for _, mark := range []string{"; want ", ", want "} {
		if why, want, found := strings.Cut(text, mark); found {
			return want + " (" + why + ")"
		}
	}
	return text
}

// named finds a chemistry by its name or by what people write for it.
func (r *resolver) named(text string) (chemistry.Profile, bool) {
	word, _ := spelled(r.chem.Names(), text)
	return r.chem.Profile(word)
}

// toldKind reports whether a label tells by its words or volts which cells of a
// family are inside.
func (r *resolver) toldKind(label string, family chemistry.Family) bool {
	l, err := r.label(label, chemistry.Profile{})
	if err != nil || l.Sure == battery.Guess {
		return false
	}
	p, ok := chemistry.Builtin().Profile(l.Chemistry)
	return ok && p.Family == family
}

// otherLithium refuses a label of one kind of lithium under another name:
// a charger or a cutoff for the wrong one is a fire, or a ruined pack.
func (r *resolver) otherLithium(kind, label Word, named chemistry.Profile) bool {
	means, sure := r.meant(label.Text)
	if sure == battery.Guess || named.Family != chemistry.Lithium && named.Family != chemistry.LeadAcid ||
		means.Family != chemistry.Lithium || chargedAlike(means, named) {
		return false
	}
	r.fault(kind.Line, kind.Key, kind.Text,
		fmt.Sprintf("%q, which is what the label %q means, or another label: the two are charged to different volts", means.Name, label.Text))
	return true
}

// meant is the kind of cells that a label tells by itself, and how surely: a guess where it
// tells none.
func (r *resolver) meant(label string) (chemistry.Profile, battery.Sureness) {
	l, err := r.label(label, chemistry.Profile{})
	if err != nil {
		return chemistry.Profile{}, battery.Guess
	}
	p, ok := r.chem.Profile(l.Chemistry)
	if !ok {
		return p, battery.Guess
	}
	return p, l.Sure
}

// chargedAlike reports whether cells of two kinds are charged to about the same volts.
func chargedAlike(a, b chemistry.Profile) bool {
	const apart = 0.3 // V per cell, charged: 3.65 and 4.2 V are
	return math.Abs(a.Charge.CellMaxV-b.Charge.CellMaxV) < apart
}

// readChemistry says how the chemistry follows from the label.
func (r *resolver) readChemistry(w Word, l battery.Label) Choice {
	c := Choice{
		Key: r.key("pack", "chemistry"), Text: l.Chemistry, Known: true, Source: srcGiven,
		Why: fmt.Sprintf("Read from the label %q.", w.Text),
	}
	if l.Sure == battery.Stated {
		return c
	}
	c.Assumed = true
	c.Why = fmt.Sprintf("The usual meaning of the label %q.", w.Text)
	r.parts.Pack.SeveralMeanings = l.Sure == battery.Guess && len(l.Others) > 0
	r.parts.Pack.LithiumAnyway = r.parts.Pack.SeveralMeanings && r.isLithium(l.Chemistry) &&
		!slices.ContainsFunc(l.Others, func(o battery.Reading) bool { return !r.isLithium(o.Chemistry) })
	if l.Sure == battery.Guess {
		c.Why = fmt.Sprintf("The label %q does not say; this is the likeliest.", w.Text)
		var others []string
		for _, o := range l.Others {
			others = append(others, fmt.Sprintf("%s with %s", o.Chemistry, quantity.Cells(o.CellsInSeries)))
		}
		if len(others) > 0 {
			c.Why = fmt.Sprintf("The label %q does not say; it could also mean %s.", w.Text, strings.Join(others, " or "))
		}
	}
	r.note(c.Key, c.Text, c.Why, c.Source)
	if l.Sure != battery.Guess {
		c.Assumed = false
		r.firm(c.Key)
	}
	return c
}
