package packcheck

import (
	"fmt"
	"math"

	"example.org/packcheck/battery"
	"example.org/packcheck/cutoff"
	"example.org/packcheck/drive"
	"example.org/packcheck/internal/quantity"
	"example.org/packcheck/internal/ride"
	"example.org/packcheck/setup"
	"example.org/packcheck/wiring"
)

// windingClass is the insulation that an unmarked motor is taken to have: the
// lowest class of IEC 60085, 105 degrees C, so that the guess errs early.
const windingClass = "A"

// boxRiseK is how much warmer than the air it gets around fuse and wire in a
// closed battery box. Common practice, no published source.
const boxRiseK = 10

// builder makes cases from parts. It keeps the packs that it has made: many
// cases share one, and making one costs as much as computing an outing.
type builder struct {
	parts *setup.Parts
	packs map[packKey]*battery.Model
	first *battery.Model // the one made first: later ones share its tables
}

// packKey is every figure that a pack model depends on.
type packKey struct {
	capacityAh, rateH, health, ohm, factor, massKg, maxA, monthly float64
}

func newBuilder(p *setup.Parts) *builder {
	return &builder{parts: p, packs: map[packKey]*battery.Model{}}
}

// pack returns the whole pack, joined packs taken as one.
func (b *builder) pack(pick setup.Pick) (*battery.Model, error) {
	s := b.parts.PackSpec(pick)
	key := packKey{s.CapacityAh, s.RateHours, s.Health, s.ResistanceOhm, s.ResistanceFactor, s.MassKg, s.MaxCurrentA, s.Profile.Keeping.LossPerMonth}
	if m, ok := b.packs[key]; ok {
		return m, nil
	}
	var m *battery.Model
	var err error
	if b.first == nil {
		m, err = battery.New(s)
		b.first = m
	} else {
		m, err = b.first.With(s)
	}
	if err != nil {
		return nil, fmt.Errorf("packcheck: %w", err)
	}
	b.packs[key] = m
	return m, nil
}

// onePack returns a single pack: of two joined ones, one.
func (b *builder) onePack(pick setup.Pick) (*battery.Model, error) {
	whole, err := b.pack(pick)
	if err != nil || b.parts.Pack.Joined == "" {
		return whole, err
	}
	m, err := whole.With(b.parts.OnePackSpec(pick))
	if err != nil {
		return nil, fmt.Errorf("packcheck: %w", err)
	}
	return m, nil
}

// path returns the way from pack to motors, nil when the setup has none.
func (b *builder) path(pick setup.Pick) (*wiring.Path, error) {
	spec, err := b.parts.PathSpec(pick)
	if err != nil || len(spec.Runs) == 0 {
		return nil, err
	}
	p, err := wiring.NewPath(spec)
	if err != nil {
		return nil, fmt.Errorf("packcheck: %w", err)
	}
	return p, nil
}

// build returns one fully specified case.
func (b *builder) build(pick setup.Pick) (ride.Case, error) {
	p := b.parts
	pack, err := b.pack(pick)
	if err != nil {
		return ride.Case{}, err
	}
	c := ride.Case{
		Pack: pack, StartCharge: pick(&p.Pack.Charge), PackC: p.PackC(pick), AmbientC: pick(&p.Outing.AirC),
		DriveS: pick(&p.Outing.DriveS), PauseS: pick(&p.Outing.PauseS),
	}
	if p.Outing.WantedS.Known {
		c.WantedS = pick(&p.Outing.WantedS)
	}
	if p.Controller.StandbyA.Known {
		c.StandbyA = pick(&p.Controller.StandbyA)
	}
	path, err := b.path(pick)
	if err != nil {
		return ride.Case{}, err
	}
	if path != nil {
		c.PathOhm = path.Ohm(c.AmbientC + boxRiseK)
		if f := path.Fuse(); f != nil {
			c.Fuse, c.Fused = f.At(c.AmbientC+boxRiseK), true
		}
	} else if spec, ok := p.FuseSpec(pick); ok { // a bench load whose wire is not described
		f, err := wiring.NewFuse(spec)
		if err != nil {
			return ride.Case{}, fmt.Errorf("packcheck: %w", err)
		}
		c.Fuse, c.Fused = f.At(c.AmbientC+boxRiseK), true
	}
	devices, standbyA := b.devices(pick)
	c.StandbyA += standbyA
	if c.Cutoffs, err = cutoff.NewChain(devices...); err != nil {
		return ride.Case{}, fmt.Errorf("packcheck: %w", err)
	}
	if p.Bench != nil {
		c.Load, c.UntilV = bench(p.Bench, pick)
		return c, nil
	}
	c.Vehicle = p.DriveVehicle(pick)
	if limit, ok := drive.ClassLimitC(windingClass); ok {
		c.Vehicle.Motor.Thermal.LimitC = limit
	}
	c.Controller = p.DriveController(pick)
	c.Limits = limitsOf(&c, path)
	return c, nil
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
func (b *builder) devices(pick setup.Pick) (list []cutoff.Device, standbyA float64) {
	of := func(f *setup.Figure) float64 {
		if !f.Known {
			return 0
		}
		return pick(f)
	}
	for i := range b.parts.Cutoffs {
		part := &b.parts.Cutoffs[i]
		packs, rows := 1, 1.0 // of what the electronics of one pack do, both do the same
		if part.Where == "pack" {
			switch b.parts.Pack.Joined {
			case "series":
				packs = 2
			case "parallel":
				rows = 2
			}
		}
		standbyA += rows * of(&part.StandbyA)
		if !part.OpensAtV.Known {
			continue
		}
		list = append(list, cutoff.Device{
			Where: place(part.Where), Packs: packs, OpensAtV: float64(packs) * of(&part.OpensAtV), DelayS: of(&part.DelayS),
			ClosesAtV: float64(packs) * of(&part.ClosesAtV), StandbyA: rows * of(&part.StandbyA),
		})
	}
	return list, standbyA
}

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
		l.Kind = ride.CurrentPattern
		for _, d := range b.Pattern {
			l.Pattern = append(l.Pattern, ride.Demand{Sec: d.Seconds, CurrentA: d.CurrentA})
		}
	}
	if b.UntilV.Known {
		untilV = pick(&b.UntilV)
	}
	return l, untilV
}

// evaluate computes a case and what the report wants beside it.
func evaluate(c ride.Case) outcome {
	o := outcome{c: c, Result: ride.Evaluate(&c)}
	o.lasts = o.Outing
	if o.Outing.EndedBy == ride.WantedReached {
		open := c
		open.WantedS = 0
		o.lasts = ride.Run(&open, nil)
	}
	if c.Load.Kind == ride.NoLoad {
		cold := c.Vehicle
		cold.Motor.Thermal = drive.Thermal{} // the currents need no heat, which takes longest
		o.blocked = blocked(&c, cold)
	}
	return o
}

// blocked holds the wheels of a vehicle on the pack and path of a case.
func blocked(c *ride.Case, v drive.Vehicle) drive.Blocked {
	return drive.BlockedWheels(v, c.Controller, c.Circuit(),
		drive.HeatState{WindingC: c.AmbientC, CaseC: c.AmbientC}, c.AmbientC)
}

// unknowns is everything that the setup leaves open, ready to be moved.
type unknowns struct {
	figures []*setup.Figure
	index   map[string]int // by key
}

func unknownsOf(p *setup.Parts) unknowns {
	u := unknowns{figures: p.Figures(), index: map[string]int{}}
	for i, f := range u.figures {
		u.index[f.Key] = i
	}
	return u
}

// pick returns the value of every figure with the unknowns at the given sides.
// Figures with one key are one unknown: the range of the first one counts.
func (u unknowns) pick(sides []side) setup.Pick {
	return func(f *setup.Figure) float64 {
		i, ok := u.index[f.Key]
		if !ok {
			return f.Likely
		}
		return sides[i].in(u.figures[i].Range)
	}
}

// likely picks the likely value of everything.
func (u unknowns) likely() setup.Pick { return u.pick(make([]side, len(u.figures))) }

// spreadCases runs a setup at its likely values and at the corners that
// matter.
func spreadCases(b *builder, u unknowns) (spread, error) {
	var failed error
	first, burntAnyway := true, false
	s := spreadOf(len(u.figures), mCount, func(sides []side) []float64 {
		values := make([]float64, len(metrics))
		c, err := b.build(u.pick(sides))
		if err != nil {
			if failed == nil {
				failed = err
			}
			for i := range values {
				values[i] = math.NaN()
			}
			return values
		}
		o := evaluate(c)
		if first { // the likely case comes first
			first, burntAnyway = false, burnt(&o)
		}
		for i, m := range metrics {
			values[i] = m.of(&o)
			if m.lasting && burnt(&o) && !burntAnyway {
				values[i] = math.NaN()
			}
		}
		return values
	})
	return s, failed
}

// round is for figures that are printed in sentences.
func round(x float64, digits int) string { return quantity.Digits(x, digits) }
