package wiring

import (
	"fmt"
	"math"

	"example.org/packcheck/tables"
)

// Run is a stretch of wire, there and back, of one size.
type Run struct {
	Name       string // "wire", "motor lead"; must not be empty
	Wire       tables.Wire
	OneWayM    float64           // length one way, m; current flows through twice that
	Parallel   int               // equal wires side by side that share the current; 0 means 1
	Ampacity   tables.Ampacity   // of one wire
	Insulation tables.Insulation // what one wire stands in a short circuit
}

// RunSpec says in everyday terms which wire a [Run] is.
type RunSpec struct {
	Name        string // "" means "wire"
	Size        tables.WireSize
	OneWayM     float64
	Parallel    int
	InsulationC float64 // rated temperature, degC; 0 when unknown, taken as 60
	FreeAir     bool    // single wire with air all round
}

// NewRun looks the wire up in the tables.
func NewRun(t *tables.Tables, spec RunSpec) (Run, error) {
	t = orBuiltin(t)
	wire, err := t.Wire(spec.Size)
	if err != nil {
		return Run{}, err
	}
	ampacity, err := t.Ampacity(tables.AmpacityQuery{Wire: wire, InsulationC: spec.InsulationC, FreeAir: spec.FreeAir})
	if err != nil {
		return Run{}, err
	}
	insulation, err := t.InsulationFor(spec.InsulationC)
	if err != nil {
		return Run{}, err
	}
	if spec.Name == "" {
		spec.Name = "wire"
	}
	return Run{
		Name: spec.Name, Wire: wire, OneWayM: spec.OneWayM, Parallel: spec.Parallel,
		Ampacity: ampacity, Insulation: insulation,
	}, nil
}

// wires is the number of equal wires, at least one.
func (r Run) wires() float64 { return float64(max(1, r.Parallel)) }

// ohm20 is the resistance of the stretch there and back at 20 degC.
func (r Run) ohm20() float64 { return 2 * r.OneWayM * r.Wire.OhmPerM20C / r.wires() }

// CarriesA returns what all wires of the run carry together in surroundings
// of ambientC.
func (r Run) CarriesA(ambientC float64) float64 { return r.Ampacity.At(ambientC) * r.wires() }

// ContactKind says what sort of thing a [Contact] is.
type ContactKind int

// The kinds of contact.
const (
	Joint      ContactKind = iota // crimp, plug, terminal, solder
	Switch                        // pedal switch, direction switch, relay: only where it carries the current itself
	Controller                    // the electronics' own resistance
	Other                         // anything else in the way
)

// Contact is one kind of lumped resistance in the path, Count times over.
type Contact struct {
	Name    string
	Kind    ContactKind
	Ohm     float64 // of each
	Count   int     // 0 means 1
	SteadyA float64 // current that each carries continuously; 0 unknown
	Source  string  // source ID of SteadyA
}

func (c Contact) count() float64 { return float64(max(1, c.Count)) }

// PathSpec is what a path is made of.
type PathSpec struct {
	Runs     []Run     // at least one
	Contacts []Contact // joints, switch, controller ...
	Fuse     *Fuse     // nil when there is none
}

// Path is the way from the pack to the motors and back. It does not change
// after [NewPath] and may be used by several goroutines at once.
type Path struct {
	runs     []Run
	contacts []Contact
	fuse     *Fuse

	copperOhm20 float64
	fixedOhm    float64
	zeroBelowK  float64
}

// NewPath checks a path and adds it up. It fails for a path without wire, for
// lengths that are not from 0 to 100 m, and for resistances that are not from
// 0 to 100 Ohm.
func NewPath(spec PathSpec) (*Path, error) {
	if len(spec.Runs) == 0 {
		return nil, fmt.Errorf("wiring: a path needs at least one run of wire")
	}
	p := &Path{
		runs:       append([]Run(nil), spec.Runs...),
		contacts:   append([]Contact(nil), spec.Contacts...),
		fuse:       spec.Fuse,
		zeroBelowK: tables.Builtin().Figure(tables.CopperZeroBelow).Likely,
	}
	for _, r := range p.runs {
		if !(r.OneWayM >= 0 && r.OneWayM <= 100) {
			return nil, fmt.Errorf("wiring: %s: length %g m is out of range (want 0 to 100 m one way)", r.Name, r.OneWayM)
		}
		if !(r.Wire.OhmPerM20C > 0 && r.Wire.AreaMM2 > 0 && r.Ampacity.AmpsA > 0) {
			return nil, fmt.Errorf("wiring: %s: no wire size (use NewRun)", r.Name)
		}
		p.copperOhm20 += r.ohm20()
	}
	for _, c := range p.contacts {
		if !(c.Ohm >= 0 && c.Ohm <= 100) {
			return nil, fmt.Errorf("wiring: %s: resistance %g Ohm is out of range (want 0 to 100)", c.Name, c.Ohm)
		}
		if !(c.SteadyA >= 0) {
			return nil, fmt.Errorf("wiring: %s: steady current %g A is out of range (want 0 or more)", c.Name, c.SteadyA)
		}
		p.fixedOhm += c.Ohm * c.count()
	}
	if p.fuse != nil {
		p.fixedOhm += p.fuse.ColdOhm()
	}
	return p, nil
}

// Ohm returns the resistance of the whole path with the wire at wireC (degC)
// and a cold fuse. It does not allocate.
func (p *Path) Ohm(wireC float64) float64 {
	return p.copperOhm20*(p.zeroBelowK+max(wireC, -200))/(p.zeroBelowK+20) + p.fixedOhm
}

// Fuse returns the path's fuse, nil when there is none.
func (p *Path) Fuse() *Fuse { return p.fuse }

// Element is one part of a path with its resistance.
type Element struct {
	Name    string
	Ohm     float64
	LengthM float64 // metres of conductor, there and back; 0 for a lumped part
}

// Parts lists the path part by part with the wire at wireC: wire first, then
// contacts, then the fuse (cold). Their resistances add up to [Path.Ohm].
func (p *Path) Parts(wireC float64) []Element {
	parts := make([]Element, 0, len(p.runs)+len(p.contacts)+1)
	for _, r := range p.runs {
		length := 2 * r.OneWayM
		parts = append(parts, Element{Name: r.Name, Ohm: r.Wire.OhmPerM(wireC) * length / r.wires(), LengthM: length})
	}
	for _, c := range p.contacts {
		parts = append(parts, Element{Name: c.Name, Ohm: c.Ohm * c.count()})
	}
	if p.fuse != nil {
		parts = append(parts, Element{Name: "fuse", Ohm: p.fuse.ColdOhm()})
	}
	return parts
}

// Load is a steady current through the path.
type Load struct {
	CurrentA float64 // 0 or more
	FullV    float64 // voltage that the drop is a share of
	WireC    float64 // temperature of the wire
}

// Loss is what one part of the path takes at a current.
type Loss struct {
	Element
	DropV     float64
	DropShare float64 // of the full voltage
	HeatW     float64
	HeatWPerM float64 // per metre of one conductor; 0 for a lumped part
}

// Losses lists what each part takes at a load, in the order of [Path.Parts].
// The fuse is warmed by the current here (see [Fuse.Ohm]).
func (p *Path) Losses(load Load) []Loss {
	parts := p.Parts(load.WireC)
	losses := make([]Loss, len(parts))
	for i, part := range parts {
		if p.fuse != nil && i == len(parts)-1 {
			part.Ohm = p.fuse.Ohm(load.CurrentA)
		}
		l := Loss{Element: part, DropV: load.CurrentA * part.Ohm, HeatW: load.CurrentA * load.CurrentA * part.Ohm}
		if load.FullV > 0 {
			l.DropShare = l.DropV / load.FullV
		}
		if part.LengthM > 0 {
			l.HeatWPerM = l.HeatW / part.LengthM / p.runs[i].wires()
		}
		losses[i] = l
	}
	return losses
}

// Total adds losses up under the name "path".
func Total(losses []Loss) Loss {
	sum := Loss{Element: Element{Name: "path"}}
	for _, l := range losses {
		sum.Ohm += l.Ohm
		sum.DropV += l.DropV
		sum.DropShare += l.DropShare
		sum.HeatW += l.HeatW
	}
	return sum
}

// Weakest returns the run that carries least in surroundings of ambientC; one that carries
// nothing where the path has none.
func (p *Path) Weakest(ambientC float64) Run {
	if len(p.runs) == 0 {
		return Run{}
	}
	weakest, least := p.runs[0], math.Inf(1)
	for _, r := range p.runs {
		if a := r.CarriesA(ambientC); a < least {
			weakest, least = r, a
		}
	}
	return weakest
}

// WeakestContact returns the contact with the lowest known steady current; ok
// is false when none is known.
func (p *Path) WeakestContact() (c Contact, ok bool) {
	for _, one := range p.contacts {
		if one.SteadyA > 0 && (!ok || one.SteadyA < c.SteadyA) {
			c, ok = one, true
		}
	}
	return c, ok
}

// WireC estimates the steady temperature (degC) of the hottest run at a
// current in surroundings of ambientC (see [tables.Ampacity.ConductorC]).
func (p *Path) WireC(currentA, ambientC float64) float64 {
	hottest := ambientC
	for _, r := range p.runs {
		hottest = max(hottest, r.Ampacity.ConductorC(currentA/r.wires(), ambientC))
	}
	return hottest
}
