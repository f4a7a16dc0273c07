// Package build makes one fully specified case from the parts of a setup and
// one value for each of its figures.
//
// A [Builder] belongs to one set of parts and may be used by any number of
// goroutines: what it keeps never changes.
package build

import (
	"fmt"
	"sync"

	"example.org/packcheck/battery"
	"example.org/packcheck/cutoff"
	"example.org/packcheck/drive"
	"example.org/packcheck/internal/ride"
	"example.org/packcheck/setup"
	"example.org/packcheck/wiring"
)

// windingClass is the insulation that an unmarked motor is taken to have: the
// lowest class of IEC 60085, 105 degrees C, so that the guess errs early.
const windingClass = "A"

// BoxRiseK is how much warmer than the air it gets around fuse and wire in a
// closed battery box. Common practice, no published source.
const BoxRiseK = 10

// Builder makes cases from parts.
type Builder struct {
	Parts *setup.Parts

	limitC float64 // of the windings

	mu    sync.Mutex
	bases map[string]*battery.Model // a pack of each profile, by its name
}

// Built is one case and what stands beside it: everything is plain numbers.
type Built struct {
	ride.Case
	Parts    *setup.Parts
	Pick     setup.Pick
	HottestK float64        // what the highest temperature of the pack may be off
	One      *battery.Model // of two joined packs, one
	Path     *wiring.Path   // nil when the setup has none
	Thinnest *wiring.Path   // with the least wire that the setup leaves possible; nil where the wire is known
}

// New prepares a builder. It fails when the likely pack cannot be made.
func New(p *setup.Parts) (*Builder, error) {
	b := &Builder{Parts: p, bases: map[string]*battery.Model{}}
	b.limitC, _ = drive.ClassLimitC(windingClass)
	_, err := b.Pack(setup.Likely)
	return b, err
}

// base returns a pack of a profile, made once. Whoever comes first makes it, so
// nothing of that draw may stay in it but the profile, whose own loss on the
// shelf is the likely one.
func (b *Builder) base(s *battery.Spec) (*battery.Model, error) {
	b.mu.Lock()
	defer b.mu.Unlock()
	if m, ok := b.bases[s.Profile.Name]; ok {
		return m, nil
	}
	own := *s
	if f := &b.Parts.Pack.SelfDischarge; f.Known {
		own.Profile.Keeping.LossPerMonth = f.Likely
	}
	m, err := battery.New(own)
	if err != nil {
		return nil, fmt.Errorf("packcheck: %w", err)
	}
	b.bases[s.Profile.Name] = m
	return m, nil
}

// Pack returns the whole pack, joined packs taken as one.
func (b *Builder) Pack(pick setup.Pick) (*battery.Model, error) {
	return b.model(b.Parts.PackSpec(pick))
}

// model is the pack of a spec.
func (b *Builder) model(spec battery.Spec) (*battery.Model, error) {
	base, err := b.base(&spec)
	if err != nil {
		return nil, err
	}
	m, err := base.With(spec)
	if err != nil {
		return nil, fmt.Errorf("packcheck: %w", err)
	}
	return m, nil
}

// onePack returns a single pack: of two joined ones, one.
func (b *Builder) onePack(whole *battery.Model, pick setup.Pick) (*battery.Model, error) {
	if b.Parts.Pack.Joined == "" {
		return whole, nil
	}
	return b.model(b.Parts.OnePackSpec(pick)) // two kinds of cells have not the profile of one
}

// path returns the way from pack to motors, nil when the setup has none.
func (b *Builder) path(pick setup.Pick) (*wiring.Path, error) {
	spec, err := b.Parts.PathSpec(pick)
	if err != nil || len(spec.Runs) == 0 {
		return nil, err
	}
	p, err := wiring.NewPath(spec)
	if err != nil {
		return nil, fmt.Errorf("packcheck: %w", err)
	}
	return p, nil
}

// Case returns one fully specified case.
func (b *Builder) Case(pick setup.Pick) (*Built, error) {
	p := b.Parts
	pack, err := b.Pack(pick)
	if err != nil {
		return nil, err
	}
	c := &Built{Parts: p, Pick: pick, Case: ride.Case{
		Pack: pack, StartCharge: pick(&p.Pack.Charge), PackC: p.PackC(pick), AmbientC: pick(&p.Outing.AirC),
		DriveS: pick(&p.Outing.DriveS), PauseS: pick(&p.Outing.PauseS),
		WantedS: Known(&p.Outing.WantedS, pick), StandbyA: Known(&p.Controller.StandbyA, pick),
	}}
	c.HottestK = Known(&p.Pack.HottestK, pick)
	if c.One, err = b.onePack(pack, pick); err != nil {
		return nil, err
	}
	if err := b.wire(c, pick); err != nil {
		return nil, err
	}
	devices, standbyA := b.devices(pick)
	c.StandbyA += standbyA
	if c.Cutoffs, err = cutoff.NewChain(devices...); err != nil {
		return nil, fmt.Errorf("packcheck: %w", err)
	}
	if p.Bench != nil {
		c.Load, c.UntilV = bench(p.Bench, pick)
		return c, nil
	}
	c.Vehicle, c.Level = b.vehicle(pick)
	c.Controller = p.DriveController(pick)
	c.Limits = limitsOf(&c.Case, c.Path)
	if lasting := &p.Pack.MaxCurrentA; lasting.Known && !lasting.Assumed {
		c.Limits.PackLastingA = c.Pack.ContinuousA()
	}
	return c, nil
}

// vehicle is the vehicle at one choice of its figures, and the same on level ground where
// it climbs.
func (b *Builder) vehicle(pick setup.Pick) (v drive.Vehicle, level *drive.Vehicle) {
	slope := &b.Parts.Vehicle.Slope
	with := func(pick setup.Pick) drive.Vehicle {
		v := b.Parts.DriveVehicle(pick)
		if v.Motor.Thermal.Known() {
			v.Motor.Thermal.LimitC = b.limitC
		}
		return v
	}
	if v = with(pick); v.GradeN == 0 {
		return v, nil
	}
	flat := with(func(f *setup.Figure) float64 {
		if f == slope {
			return 0
		}
		return pick(f)
	})
	return v, &flat
}

// wire puts path and fuse into a case.
func (b *Builder) wire(c *Built, pick setup.Pick) error {
	var err error
	if c.Path, err = b.path(pick); err != nil {
		return err
	}
	surroundC := c.AmbientC + BoxRiseK
	var fuse *wiring.Fuse
	if c.Path != nil {
		c.PathOhm = c.Path.Ohm(surroundC)
		fuse = c.Path.Fuse()
	} else if spec, ok := b.Parts.FuseSpec(pick); ok { // a bench load whose wire is not described
		if fuse, err = wiring.NewFuse(spec); err != nil {
			return fmt.Errorf("packcheck: %w", err)
		}
	}
	if fuse != nil {
		c.Fuse, c.Fused = fuse.At(surroundC), true
	}
	return nil
}

// WithThinnest fills in the path with the least wire that the setup leaves
// possible: a fuse is chosen for that one.
func (b *Builder) WithThinnest(c *Built) error {
	w := b.Parts.Wire
	if c.Path == nil || !w.Gauge.Uncertain() && !w.AreaMM2.Uncertain() && !w.InsulationC.Uncertain() {
		return nil
	}
	var err error
	c.Thinnest, err = b.path(func(f *setup.Figure) float64 {
		switch f.Key {
		case w.Gauge.Key:
			return f.High // of a gauge number, the thinner wire
		case w.AreaMM2.Key, w.InsulationC.Key:
			return f.Low
		}
		return c.Pick(f)
	})
	return err
}

// limitsOf is what the parts of a case stand. What plain contacts are rated
// for is the switch's limit.
func limitsOf(c *ride.Case, path *wiring.Path) drive.Limits {
	l := drive.Limits{PackA: c.Pack.BurstA(), ControllerPeakA: c.Controller.PeakA}
	if c.Controller.Chopper {
		l.ControllerContinuousA = c.Controller.ContinuousA
	} else {
		l.SwitchA = c.Controller.ContinuousA
	}
	if path != nil {
		if weakest, ok := path.WeakestContact(); ok {
			l.JointA = weakest.SteadyA
		}
	}
	return l
}

// devices returns the cutoffs that have an opening voltage, and the standby
// current of everything in the chain.
func (b *Builder) devices(pick setup.Pick) (list []cutoff.Device, standbyA float64) {
	for i := range b.Parts.Cutoffs {
		part := &b.Parts.Cutoffs[i]
		packs, rows := 1, 1.0 // of what the electronics of one pack do, both do the same
		if part.Where == "pack" {
			switch b.Parts.Pack.Joined {
			case "series":
				packs = 2
			case "parallel":
				rows = 2
			}
		}
		standbyA += rows * Known(&part.StandbyA, pick)
		if !part.OpensAtV.Known {
			continue
		}
		d := cutoff.Device{
			Where: place(part.Where), Packs: packs, OpensAtV: float64(packs) * pick(&part.OpensAtV), DelayS: Known(&part.DelayS, pick),
			ClosesAtV: float64(packs) * Known(&part.ClosesAtV, pick), StandbyA: rows * Known(&part.StandbyA, pick),
		}
		if part.ClosesAtV.Known { // drawn apart, the two may come too close to be built
			d.ClosesAtV = max(d.ClosesAtV, d.OpensAtV*(1+leastGap))
		}
		list = append(list, d)
	}
	return list, standbyA
}

// leastGap is how far apart the voltages of a device at least are, as a share.
// Own choice.
const leastGap = 1e-3

func place(where string) cutoff.Place {
	switch where {
	case "module":
		return cutoff.Module
	case "controller":
		return cutoff.Controller
	default:
		return cutoff.Pack
	}
}

// bench returns the load of a bench discharge and the volts that end it.
func bench(b *setup.BenchPart, pick setup.Pick) (l ride.Load, untilV float64) {
	switch {
	case b.CurrentA.Known:
		l = ride.Load{Kind: ride.ConstantCurrent, Amount: pick(&b.CurrentA)}
	case b.PowerW.Known:
		l = ride.Load{Kind: ride.ConstantPower, Amount: pick(&b.PowerW)}
	default:
		l = ride.Load{Kind: ride.CurrentPattern, Pattern: make([]ride.Demand, len(b.Pattern))}
		for i, d := range b.Pattern {
			l.Pattern[i] = ride.Demand{Sec: d.Seconds, CurrentA: d.CurrentA}
		}
	}
	return l, Known(&b.UntilV, pick)
}

// Known is the picked value of a figure, 0 when it is not known.
func Known(f *setup.Figure, pick setup.Pick) float64 {
	if !f.Known {
		return 0
	}
	return pick(f)
}
