package setup

import (
	"errors"
	"slices"
	"sync"
)

// World is every vehicle that a setup may mean. A point of it is one standard
// normal number for each thing that is left open: first the choices, then the
// figures. Equal keys are one unknown: what belongs to the vehicle is the same
// with today's battery and with the original one.
//
// A World may be used by any number of goroutines.
type World struct {
	from    *resolver
	likely  *Parts
	choices []Choosing
	keys    []string       // of the figures
	figures []*Figure      // the first of each key
	slot    map[string]int // place of a figure's key in a point
	mu      sync.Mutex     // guards parts, asNew and from
	parts   map[int]*Parts // by the options chosen, see selected
	asNew   map[asNewKey]*asNew
}

// asNewKey says which vehicles are weighed alike by what is told of their class.
type asNewKey struct {
	parts  *Parts
	motors int
}

// World fills every gap of the setup, in every way that its open choices allow.
// What is not understood gives [Faults], all at once.
func (s *Setup) World() (*World, error) {
	r, err := s.resolver()
	if err != nil {
		return nil, err
	}
	likely, open, err := r.parted(nil)
	if err != nil {
		return nil, err
	}
	w := &World{
		from: r, likely: likely, choices: open, slot: map[string]int{},
		parts: map[int]*Parts{}, asNew: map[asNewKey]*asNew{},
	}
	all := []*Parts{likely}
	w.parts[0] = likely
	kinds := 1
	for _, c := range open {
		for i, o := range c.Options[1:] {
			p, _, err := r.parted(map[string]string{c.Key: o.Text})
			if err != nil {
				return nil, err
			}
			all = append(all, p)
			w.parts[(i+1)*kinds] = p
		}
		kinds *= len(c.Options)
	}
	figures := map[string]*Figure{}
	var found []*Figure
	for _, p := range all {
		for _, f := range p.Figures() {
			if figures[f.Key] == nil {
				figures[f.Key], found = f, append(found, f)
			}
		}
	}
	for _, key := range leading {
		w.add(figures[key])
	}
	for _, f := range found {
		w.add(f)
	}
	for _, p := range all {
		w.place(p)
	}
	return w, nil
}

// leading are the figures that most of minutes, speed, amps and charge hangs on, by
// their share of the spread of 32,768 draws of five setups. They stand first because
// the first axes of a point are spread most evenly; no law hangs on it.
var leading = [...]string{
	"vehicle.ground",
	"pack.health",
	"gears.ratio",
	"pack.maker",
	"motors.winding_resistance",
	"vehicle.new_ride_time",
	"vehicle.ground_grip",
	"pack.cells",
	"motors.no_load_current",
	"pack.steepness",
	"gears.efficiency",
	"pack.charge",
	"vehicle.driven_wheels",
	"pack.resistance_growth",
	"pack.resistance",
	"wire.joint_resistance",
	"outing.air",
	"vehicle.wheel_diameter",
	"controller.ramp",
	"controller.resistance",
	"vehicle.mass",
	"rider.mass",
	"vehicle.drag_area",
}

// add gives a figure the next number of a point, unless it is none or has one.
func (w *World) add(f *Figure) {
	if f == nil {
		return
	}
	if _, has := w.slot[f.Key]; !has {
		w.slot[f.Key] = w.Dims()
		w.keys, w.figures = append(w.keys, f.Key), append(w.figures, f)
	}
}

// place tells every figure which number of a point is its own.
func (w *World) place(p *Parts) {
	for ; p != nil; p = p.Original {
		for _, f := range p.figures {
			f.slot = 0
			if i, ok := w.slot[f.Key]; ok && f.Uncertain() {
				f.slot = i + 1
			}
		}
	}
}

// selected is the number of the selection of options that a point falls on; 0 is the
// likeliest of each.
func (w *World) selected(z []float64) int {
	n, kinds := 0, 1
	for i := range w.choices {
		c := &w.choices[i]
		n += c.number(z[i]) * kinds
		kinds *= len(c.Options)
	}
	return n
}

// Dims returns how many numbers a point has.
func (w *World) Dims() int { return len(w.choices) + len(w.keys) }

// Keys returns the setup key that each number of a point belongs to.
func (w *World) Keys() []string {
	var keys []string
	for _, c := range w.choices {
		keys = append(keys, c.Key)
	}
	return append(keys, w.keys...)
}

// Choices returns what is open between kinds of part.
func (w *World) Choices() []Choosing { return slices.Clone(w.choices) }

// Likeliest returns the parts with every choice at its likeliest.
func (w *World) Likeliest() *Parts { return w.likely }

// errNoWorld is what a World that was not made by [Setup.World] answers with.
var errNoWorld = errors.New("setup: this World is of no setup; want one that Setup.World returned")

// Parts returns the parts that the choices of a point select. Those of a zero World are an error.
func (w *World) Parts(z []float64) (*Parts, error) {
	if w.from == nil {
		return nil, errNoWorld
	}
	n := w.selected(z)
	w.mu.Lock()
	defer w.mu.Unlock()
	if p, ok := w.parts[n]; ok {
		return p, nil
	}
	chosen := map[string]string{}
	for i := range w.choices {
		chosen[w.choices[i].Key] = w.choices[i].at(z[i])
	}
	p, _, err := w.from.parted(chosen)
	if err != nil {
		return nil, err
	}
	w.place(p)
	w.parts[n] = p
	return p, nil
}

// Pick returns the values of all figures at a point.
func (w *World) Pick(z []float64) Pick {
	t := w.weighed(z)
	if t == nil {
		return func(f *Figure) float64 {
			if f.slot == 0 {
				return f.Likely
			}
			return f.At(z[f.slot-1])
		}
	}
	shift := t.shift(z)
	return func(f *Figure) float64 {
		if f.slot == 0 {
			return f.Likely
		}
		return f.At(t.moved(z[f.slot-1], f.slot-1, &shift))
	}
}

// weighed is how a point is weighed by what is told of its class, nil where
// nothing is.
func (w *World) weighed(z []float64) *asNew {
	p, err := w.Parts(z)
	if err != nil { // then there is no vehicle to weigh
		return nil
	}
	made := p
	if p.Original != nil {
		made = p.Original
	}
	if made.Gears == nil || !made.Gears.weighed() {
		return nil
	}
	key := asNewKey{p, 0}
	if f := &made.Motors.Count; f.slot == 0 {
		key.motors = made.motors(Likely)
	} else {
		key.motors = made.motors(func(f *Figure) float64 { return f.At(z[f.slot-1]) })
	}
	w.mu.Lock()
	defer w.mu.Unlock()
	t, ok := w.asNew[key]
	if !ok {
		t = p.asNew(key.motors, w.Dims())
		w.asNew[key] = t
	}
	return t
}

// Printed returns the value of place i of a point as people write it; empty where there is no
// such place.
func (w *World) Printed(i int, z []float64) string {
	switch {
	case i < 0 || i >= w.Dims():
		return ""
	case i < len(w.choices):
		return w.choices[i].at(z[i])
	}
	return w.figures[i-len(w.choices)].printed(w.Value(i, w.Pick(z)))
}

// Value returns the figure at place i of the point that was picked; 0 where there is none.
func (w *World) Value(i int, pick Pick) float64 {
	if i -= len(w.choices); i < 0 || i >= len(w.figures) {
		return 0
	}
	return pick(w.figures[i])
}

// Number returns the number of the option that place i of a point falls on; 0 where there is no
// choice.
func (w *World) Number(i int, z []float64) float64 {
	if i < 0 || i >= len(w.choices) {
		return 0
	}
	return float64(w.choices[i].number(z[i]))
}
