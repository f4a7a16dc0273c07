package cellfit

import (
	"fmt"
	"math"
)

// A stretch without rows is a gap from so many seconds on, where rows otherwise follow one
// another so many times as fast, and a notable share of all charge is taken to have flowed
// in it. Own choices.
const (
	gapS      = 60.0
	gapTimes  = 20.0
	gapCharge = 0.02
)

// gap names the longest stretch without rows of which nobody knows what flowed in it; empty
// where there is none.
func (l *Log) gap() string {
	n := l.Rows()
	if l.knows || l.Volts == nil || n < 3 {
		return ""
	}
	at, apart := 1, make([]float64, n-1)
	for i := 1; i < n; i++ {
		apart[i-1] = l.TimeS[i] - l.TimeS[i-1]
		if apart[i-1] > l.TimeS[at]-l.TimeS[at-1] {
			at = i
		}
	}
	longest := apart[at-1]
	moved := math.Abs(l.ChargeAh[at] - l.ChargeAh[at-1])
	if longest < gapS || longest < gapTimes*median(apart) || moved < gapCharge*spread(l.ChargeAh) {
		return ""
	}
	return fmt.Sprintf("no row stands between %.1f and %.1f min", l.TimeS[at-1]/60, l.TimeS[at]/60)
}
