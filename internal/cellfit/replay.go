package cellfit

import (
	"math"

	"example.org/packcheck/battery"
	"example.org/packcheck/internal/solve"
)

// ReplayOptions says how a model is run along a log.
type ReplayOptions struct {
	StartCharge float64 // 0 = from the first voltage
	AmbientC    float64 // where the log has neither surroundings nor temperature; 0 = 25
	CutoffV     float64 // for the delivered charge; 0 = none
}

// Agreement says how far model and log are apart.
type Agreement struct {
	StartCharge float64
	RMSV        float64 // root mean square of the voltage difference over time
	WorstV      float64
	LogAh       float64 // charge that the log shows down to the cutoff; NaN when it is not reached
	ModelAh     float64 // charge that the model gives down to the cutoff
	LogMaxC     float64 // highest temperature logged; NaN when there is none
	ModelMaxC   float64
}

// Replay runs the model along the current of a log, and compares.
func Replay(m *battery.Model, l *Log, o ReplayOptions) Agreement {
	if o.AmbientC == 0 {
		o.AmbientC = roomC
	}
	ambient, start := o.AmbientC, o.AmbientC
	if l.TempC != nil {
		start, ambient = l.TempC[0], l.TempC[0]
	}
	out := Agreement{LogAh: math.NaN(), ModelAh: math.NaN(), LogMaxC: math.NaN(), ModelMaxC: start}
	charge := o.StartCharge
	if charge == 0 {
		charge = startCharge(m, l, start)
	}
	out.StartCharge = charge
	s := m.StateAt(charge, start)
	var sum, time float64
	beforeV, beforeModel := l.Volts[0], m.TerminalV(&s, l.Amps[0])
	for i := range l.TimeS {
		if l.AmbientC != nil {
			ambient = l.AmbientC[i]
		}
		var dt float64
		if i > 0 {
			dt = l.TimeS[i] - l.TimeS[i-1]
			advance(m, &s, dt, (l.ChargeAh[i]-l.ChargeAh[i-1])/dt*3600, ambient)
		}
		model := m.TerminalV(&s, l.Amps[i])
		d := model - l.Volts[i]
		weight := dt
		if i+1 < l.Rows() {
			weight += l.TimeS[i+1] - l.TimeS[i]
		}
		sum += d * d * weight
		time += weight
		out.WorstV = math.Max(out.WorstV, math.Abs(d))
		out.ModelMaxC = math.Max(out.ModelMaxC, s.TempC)
		if l.TempC != nil {
			out.LogMaxC = math.Max(l.TempC[i], nanLow(out.LogMaxC))
		}
		if i > 0 && l.Amps[i] > 0 {
			crossing(&out.LogAh, o.CutoffV, beforeV, l.Volts[i], l.ChargeAh[i-1], l.ChargeAh[i])
			if cross := !math.IsNaN(out.LogAh) && math.IsNaN(out.ModelAh) && model > o.CutoffV; cross {
				// The model lasts longer than the log: let it go on alone.
				more := m.Discharge(s, l.Amps[i], o.CutoffV, ambient)
				out.ModelAh = l.ChargeAh[i] + more.Ah
			}
			crossing(&out.ModelAh, o.CutoffV, beforeModel, model, l.ChargeAh[i-1], l.ChargeAh[i])
		}
		beforeV, beforeModel = l.Volts[i], model
	}
	out.RMSV = math.Sqrt(sum / time)
	return out
}

func nanLow(x float64) float64 {
	if math.IsNaN(x) {
		return math.Inf(-1)
	}
	return x
}

// crossing notes the charge at which a voltage first falls to the cutoff.
func crossing(at *float64, cutoff, v0, v1, q0, q1 float64) {
	if cutoff > 0 && math.IsNaN(*at) && v0 > cutoff && v1 <= cutoff {
		*at = q0 + (q1-q0)*(v0-cutoff)/(v0-v1)
	}
}

// advance steps through a time in which the current is the same, in parts
// short enough for the coefficients: ten seconds, or a thousandth of the
// charge. Without a current one step is exact.
func advance(m *battery.Model, s *battery.State, dt, amps, ambient float64) {
	part := max(10, 3.6*m.RatedAh()/math.Abs(amps))
	n := max(1, min(int(math.Ceil(dt/part)), 5000))
	step := m.Over(dt / float64(n))
	for range n {
		step.Advance(s, amps, ambient)
	}
}

// startCharge finds the charge at which the model, at rest before, shows the
// log's first voltage at its first current.
func startCharge(m *battery.Model, l *Log, tempC float64) float64 {
	lo, hi := 1-m.Wells().CapacityAh/m.FullAh(), 1.0
	b := solve.Crossing(lo, hi, 1e-12, func(charge float64) float64 {
		s := m.StateAt(charge, tempC)
		return m.TerminalV(&s, l.Amps[0]) - l.Volts[0]
	})
	return (b.Lo + b.Hi) / 2
}
