package setup

import (
	"errors"
	"fmt"
	"math"
	"slices"
	"strings"

	"example.org/packcheck/chemistry"
	"example.org/packcheck/internal/quantity"
	"example.org/packcheck/tables"
)

// Parts fills every gap of the setup: what was given stays as it is, everything
// else gets a range, marked as assumed, with the reason and its source. What a
// label or a word means is looked up; what is not understood gives [Faults], all
// at once. Files that the setup names (a chemistry, table rows, a load pattern)
// are read from its own folder.
//
// Open choices stand at their likeliest; [Setup.World] has all of them.
func (s *Setup) Parts() (*Parts, error) {
	r, err := s.resolver()
	if err != nil {
		return nil, err
	}
	p, _, err := r.parted(nil)
	return p, err
}

var errNoSetup = errors.New("packcheck: there is no setup")

// resolver begins to fill the gaps of a setup that is as it was read.
func (s *Setup) resolver() (*resolver, error) {
	if s == nil {
		return nil, errNoSetup
	}
	if err := s.byHand().OrNil(); err != nil {
		return nil, err
	}
	return newResolver(s, nil), nil
}

// newResolver reads the files that a setup brings along. A key that has a fault
// already counts as not given, and what follows from that is no fault of its own.
func newResolver(s *Setup, told Faults) *resolver {
	r := &resolver{today: s, setup: s, tab: tables.Builtin(), chem: chemistry.Builtin(), noted: told, labels: map[[2]string]labelRead{}, cells: map[cellsOf][]chemistry.Member{}}
	r.ownFiles()
	return r
}

// parted fills the gaps with some choices made, and lists those that the setup
// leaves open. It may be called for one selection after the other.
func (r *resolver) parted(chosen map[string]string) (*Parts, []Choosing, error) {
	p, open, faults := r.filled(chosen)
	return p, open, r.today.named(faults.OrNil())
}

// filled fills the gaps as far as they can be.
func (r *resolver) filled(chosen map[string]string) (*Parts, []Choosing, Faults) {
	s, one := r.today, *r
	one.chosen, one.faults = chosen, slices.Clip(r.faults)
	r = &one
	p := r.resolve(s, nil)
	if s.Original != nil {
		p.Original = r.resolve(s.withOriginal())
	}
	faults := slices.Concat(r.faults, s.sameOfOriginal(r.faults), p.measured(), p.otherVehicle())
	if len(faults) > 0 {
		return nil, nil, faults
	}
	p.AsMade = p.asMade()
	if o := p.Original; o != nil {
		o.AsMade = true
	}
	return p, r.undecided, nil
}

// sameOfOriginal repeats faults of today's keys for those of the original that say
// the same: it was not looked up once more.
func (s *Setup) sameOfOriginal(faults Faults) (more Faults) {
	if s.Original == nil {
		return nil
	}
	all := s.entries()
	for _, f := range faults {
		if e, is := all[originalPrefix+f.Key]; is && e.text == f.Read {
			f.Key, f.Line = originalPrefix+f.Key, e.line
			more = append(more, f)
		}
	}
	return more
}

// otherVehicle returns what is wrong where the original battery cannot be that
// of a vehicle of the voltage that was told.
func (p *Parts) otherVehicle() Faults {
	o := p.Original
	if o == nil || o.Vehicle == nil || o.Pack.unsettled || !p.Setup.Vehicle.DesignVoltage.Given || !o.Setup.Pack.Label.Given || o.Controller.ConverterV.Known {
		return nil
	}
	told := p.Setup.Vehicle.DesignVoltage
	if ratio := o.PackV() / told.Likely; ratio > 0.6 && ratio < 1.6 { // twice or half is another vehicle
		return nil
	}
	return Faults{{
		File: p.Setup.Name, Line: told.Line, Key: told.Key, Read: told.Text,
		Want: fmt.Sprintf("the volts of the original battery %q, or another label under %spack: they cannot both be true", o.Setup.Pack.Label.Text, originalPrefix),
	}}
}

// PackV returns the nominal volts of all that the pack is made of.
func (p *Parts) PackV() float64 {
	return p.Pack.volts(func(c *chemistry.Profile) float64 { return c.NominalV })
}

// volts is what the whole pack has of something of which a cell has so much.
func (b *PackPart) volts(of func(*chemistry.Profile) float64) float64 {
	first := of(&b.Profile) * float64(b.CellsInSeries)
	second := first
	if b.Second != nil {
		second = of(&b.Second.Profile) * float64(b.Second.CellsInSeries)
	}
	switch b.Joined {
	case "series":
		return first + second
	case "parallel":
		return max(first, second)
	}
	return first
}

// OnBlocks reports whether the battery is lead-acid of the volts that the vehicle was
// made for.
func (p *Parts) OnBlocks() bool {
	return p.Pack.Profile.Family == chemistry.LeadAcid && p.Pack.Alike() && math.Abs(p.PackV()/p.Vehicle.DesignV.Likely-1) < 0.05
}

// asMade reports whether nothing says that the vehicle was changed: it has a
// battery of the old kind and of its own volts, or its original is described and
// no different.
func (p *Parts) asMade() bool {
	if o := p.Original; o != nil {
		return !p.Setup.changed() || !p.Setup.changed("pack") && p.likeOf(o)
	}
	if p.Vehicle == nil || !p.Vehicle.DesignV.Known || p.Controller.ConverterV.Known || p.Pack.SeveralMeanings {
		return false
	}
	return p.Pack.Profile.Family == chemistry.LeadAcid && p.Pack.Alike() && p.PackV() < 1.05*p.Vehicle.DesignV.Likely
}

// muchLarger is how much more a battery may hold than the old one to be one of the
// same kind: rides of up to so much longer are within what batteries of a class
// differ. Own choice.
const muchLarger = 1.5

// likeOf reports whether the battery is a new one of the old one's kind and volts.
func (p *Parts) likeOf(o *Parts) bool {
	return p.Pack.Profile.Family == chemistry.LeadAcid && o.Pack.Profile.Family == chemistry.LeadAcid && p.Pack.Second == nil &&
		math.Abs(p.PackV()/o.PackV()-1) < 0.05 && p.Pack.CapacityAh.Likely <= muchLarger*o.Pack.CapacityAh.Likely
}

// resolver fills the gaps of one setup.
type resolver struct {
	today    *Setup // as it is read
	setup    *Setup // whose gaps are being filled, original merged in
	original *Setup // the original's own tables while it is filled, else nil
	tab      *tables.Tables
	chem     *chemistry.Set
	parts    *Parts
	faults   Faults
	noted    Faults // of an earlier check
	noTables bool   // the setup's own tables, or chemistry, cannot be read: ...
	noCells  bool   // ... whether it has a word is not known

	// What was looked up for an earlier selection: labels by text and chemistry, and cells.
	labels map[[2]string]labelRead
	cells  map[cellsOf][]chemistry.Member

	chosen    map[string]string // options of open choices, by key; nil = the likeliest of each
	undecided []Choosing        // in the order in which they were met
}

// resolve fills one Setup.
func (r *resolver) resolve(s, original *Setup) *Parts {
	p := &Parts{Setup: s, Title: s.Title.Text, System: s.system(), Tables: r.tab, Chemistry: r.chem}
	r.setup, r.original, r.parts = s, original, p
	r.outing()
	r.pack()
	if s.Bench.Given {
		r.bench()
	} else {
		r.vehicle()
		r.rider()
		r.motors()
		r.gears()
	}
	r.controller()
	if !s.Bench.Given || s.Wire.Given {
		r.wire()
	}
	r.fuse()
	r.cutoffs()
	r.charger()
	// Last, because what matters little may have the worse places of a point.
	r.track(&p.Pack.CoolingWM2K, &p.Pack.ShellShare)
	return p
}

// key returns the full name under which a default is reported. A table that the
// original has of its own is apart from today's; any other is the same one.
func (r *resolver) key(table, name string) string {
	if r.original != nil && r.original.has(table) {
		return "original." + table + "." + name
	}
	return table + "." + name
}

func (r *resolver) fault(line int, key, read, want string) {
	r.faults = append(r.faults, Fault{File: r.setup.Name, Line: line, Key: key, Read: shorten(read), Want: want})
}

// wrong reports whether a key, or one inside a table, has a fault that was told
// before.
func (r *resolver) wrong(path string) bool { return faultsOf(r.noted, path) }

// noWord notes a word that the tables or the chemistries do not have, where all of
// them could be read.
func (r *resolver) noWord(w Word, read string, names []string) {
	switch {
	case strings.HasSuffix(w.Key, ".chemistry") && r.noCells:
	case !strings.HasSuffix(w.Key, ".chemistry") && r.noTables:
	default:
		r.fault(w.Line, w.Key, read, oneOf(names))
	}
}

// given returns the figure of a value from the file.
func (r *resolver) given(k quantity.Kind, v Value) Figure {
	return Figure{Range: v.Range, Key: v.Key, kind: k, Known: true, System: v.System, Law: Limits}
}

// orUnknown returns the value as a figure, one that is not known when it was
// not given.
func (r *resolver) orUnknown(table, name string, k quantity.Kind, v Value) Figure {
	if v.Given {
		return r.given(k, v)
	}
	key := r.key(table, name)
	r.parts.Untold = append(r.parts.Untold, key)
	return Figure{Key: key, kind: k, System: r.parts.System}
}

// blank is a default in the making.
type blank struct {
	table, name string
	kind        quantity.Kind
	quantity.Range
	why, source string
	shown       string // printed instead of the range, where that says more
	remark      string // printed behind it
}

// or returns the value when it was given and the default otherwise.
func (r *resolver) or(v Value, b blank) Figure {
	if v.Given {
		return r.given(b.kind, v)
	}
	return r.assume(b)
}

// assume makes a figure of a default and notes it.
func (r *resolver) assume(b blank) Figure {
	f := r.derived(b)
	f.Assumed = true
	shown := b.shown
	if shown == "" && r.chosen == nil {
		shown = f.String()
	}
	if b.remark != "" {
		shown += "; " + b.remark
	}
	r.note(f.Key, shown, b.why, b.source)
	return f
}

// derived makes a figure that follows from what was given.
func (r *resolver) derived(b blank) Figure {
	law := Estimated
	if b.source == srcGiven { // its ends are those of what was typed
		law = Limits
	}
	return Figure{
		Range: b.Range, Key: r.key(b.table, b.name), kind: b.kind, Known: true,
		Why: b.why, Source: b.source, System: r.parts.System, Law: law,
	}
}

// note lists an assumption, of the likeliest selection. What the original shares with
// today's vehicle is listed there already.
func (r *resolver) note(key, value, why, source string) {
	if r.chosen != nil || r.original != nil && !strings.HasPrefix(key, "original.") {
		return
	}
	r.parts.Assumed = append(r.parts.Assumed, Assumption{Key: key, Value: value, Why: why, Source: source})
}

// firm marks an assumption on which nothing rests as a guess.
func (r *resolver) firm(key string) {
	for i := range r.parts.Assumed {
		if a := &r.parts.Assumed[i]; a.Key == key {
			a.Firm = true
		}
	}
}

// choose returns the word when it was given and a default otherwise.
func (r *resolver) choose(w Word, table, name, text, why, source string) Choice {
	if w.Given {
		return Choice{Key: w.Key, Text: w.Text, Known: true}
	}
	c := Choice{Key: r.key(table, name), Text: text, Known: true, Assumed: true, Why: why, Source: source}
	r.note(c.Key, text, why, source)
	return c
}

// among returns the word when it was given, and otherwise one of the options:
// the one that was chosen, or the first, which is the likeliest.
func (r *resolver) among(w Word, c Choosing) Choice {
	if w.Given {
		return Choice{Key: w.Key, Text: w.Text, Known: true}
	}
	text, ok := r.chosen[c.Key]
	if !ok {
		text = c.Options[0].Text
	}
	if len(c.Options) > 1 && !slices.ContainsFunc(r.undecided, func(o Choosing) bool { return o.Key == c.Key }) {
		r.undecided = append(r.undecided, c)
	}
	var shown []string
	for _, o := range c.Options {
		shown = append(shown, fmt.Sprintf("%s (%.0f %%)", o.Text, 100*o.Share))
	}
	if len(shown) == 1 {
		shown[0] = c.Options[0].Text
	}
	r.note(c.Key, strings.Join(shown, " or "), c.Why, c.Source)
	return Choice{Key: c.Key, Text: text, Known: true, Assumed: true, Why: c.Why, Source: c.Source}
}

// track lists figures for [Parts.Figures]; it takes the places where they stay.
func (r *resolver) track(list ...*Figure) { r.parts.figures = append(r.parts.figures, list...) }

// span turns a table's value into a range.
func span(v tables.Value) quantity.Range {
	return quantity.Range{Low: v.Low, Likely: v.Likely, High: v.High}
}

// ownFiles reads the chemistry and the table rows that the setup brings along.
func (r *resolver) ownFiles() {
	for _, s := range []*Setup{r.setup, r.setup.Original} {
		if s == nil {
			continue
		}
		before := len(r.faults)
		if w := s.TablesFile; w.Given {
			r.open(w, func(f *file) error {
				in, err := f.table()
				if err != nil {
					return err
				}
				t, err := r.tab.Extend(in, f.name)
				if err == nil {
					r.tab = t
				}
				return err
			})
		}
		r.noTables = r.noTables || len(r.faults) > before || r.wrong("tables_file")
		before = len(r.faults)
		if w := s.Pack.ChemistryFile; w.Given {
			r.open(w, func(f *file) error {
				in, err := f.table()
				if err != nil {
					return err
				}
				c, err := r.chem.Extend(in, f.name)
				if err == nil {
					r.chem = c
				}
				return err
			})
		}
		r.noCells = r.noCells || len(r.faults) > before || r.wrong("pack.chemistry_file")
	}
}

// foreign adds what is wrong with a file that the setup names.
func (r *resolver) foreign(w Word, name string, err error) {
	var many Faults
	var one Fault
	switch {
	case err == nil:
	case errors.As(err, &many):
		r.faults = append(r.faults, many...)
	case errors.As(err, &one):
		r.faults = append(r.faults, one)
	default:
		r.fault(w.Line, w.Key, w.Text, fmt.Sprintf("a file that can be read (%v)", err))
	}
}
