package cellfit

import (
	"fmt"

	"example.org/packcheck/battery"
)

// Trace is a scratch.
func Trace(m *battery.Model, l *Log, z, amb float64) {
	s := m.StateAt(z, amb)
	if l.TempC != nil {
		s.TempC = l.TempC[0]
		amb = s.TempC
	}
	if l.AmbientC != nil {
		amb = l.AmbientC[0]
	}
	every := l.Rows() / 60
	for i := range l.TimeS {
		if i > 0 {
			dt := l.TimeS[i] - l.TimeS[i-1]
			advance(m, &s, dt, (l.ChargeAh[i]-l.ChargeAh[i-1])/dt*3600, amb)
		}
		if l.TempC != nil {
			s.TempC = l.TempC[i]
		}
		if i%max(every, 1) == 0 || i > l.Rows()-8 {
			fmt.Printf("  z %.3f I %.2f V %.3f model %.3f diff %+.0f mV T %.1f U %.3f V1 %.3f V2 %.3f\n", m.Charge(s), l.Amps[i], l.Volts[i], m.TerminalV(&s, l.Amps[i]), 1000*(m.TerminalV(&s, l.Amps[i])-l.Volts[i]), s.TempC, m.RestedV(s), s.V1, s.V2)
		}
	}
}
