package cutoff

import (
	"example.org/packcheck/battery"
	"example.org/packcheck/internal/solve"
)

// falling is a pack that a steady load runs down, from full to past the knee,
// remembered at equal times so that any other is one step away.
type falling struct {
	m               *battery.Model
	loadA, ambientC float64
	dtS             float64
	step            battery.Step
	knots           [fallKnots]battery.State
	volts           [fallKnots]float64 // under the load
	n               int
}

const (
	fallKnots  = 54
	fallParts  = 32   // knots until the capacity of the label is gone
	fallWhenS  = 1e-2 // how exactly a time is found
	fallShortS = 1e-9
)

func (w *Wish) falling() falling {
	f := falling{
		m: w.Pack, loadA: w.LoadA, ambientC: w.AmbientC,
		dtS: min(3600*w.Pack.FullAh()/w.LoadA, mostClockS) / fallParts,
	}
	f.step = f.m.Over(f.dtS)
	f.knots[0], f.n = w.Start, 1
	f.volts[0] = f.m.TerminalV(&w.Start, f.loadA)
	return f
}

// next remembers one more knot, and reports whether there is room for it.
func (f *falling) next() bool {
	if f.n == fallKnots {
		return false
	}
	s := f.knots[f.n-1]
	f.step.AdvanceLong(&s, f.loadA, f.ambientC)
	f.knots[f.n], f.volts[f.n] = s, f.m.TerminalV(&s, f.loadA)
	f.n++
	return true
}

// after returns the pack after so many seconds, no later than [falling.until]
// has been asked for.
func (f *falling) after(s float64) battery.State {
	k := min(int(s/f.dtS), f.n-1)
	state := f.knots[k]
	if rest := s - float64(k)*f.dtS; rest > fallShortS {
		part := f.m.Over(rest)
		part.AdvanceLong(&state, f.loadA, f.ambientC)
	}
	return state
}

// until returns the seconds until the volts under the load have first come down
// to v; until the last knot where they never do.
func (f *falling) until(v float64) float64 {
	for k := 0; ; k++ {
		if k == f.n && !f.next() {
			return float64(f.n-1) * f.dtS
		}
		if f.volts[k] > v {
			continue
		}
		if k == 0 {
			return 0
		}
		from := float64(k-1) * f.dtS
		b := solve.Bracket{Lo: 0, Hi: f.dtS, FLo: v - f.volts[k-1], FHi: v - f.volts[k]}
		return from + solve.Narrow(b, fallWhenS, func(s float64) float64 {
			state := f.after(from + s)
			return v - f.m.TerminalV(&state, f.loadA)
		}).Hi
	}
}

// to is the pack at that moment.
func (f *falling) to(v float64) battery.State { return f.after(f.until(v)) }
