package cellfit

// Log is a logged charge or discharge, one entry per row of the file.
type Log struct {
	Name     string    // as given in Options, for messages
	TimeS    []float64 // from 0, rising
	Volts    []float64 // nil when a load pattern has none
	Amps     []float64 // positive discharging
	TempC    []float64 // nil when the log has no temperature
	AmbientC []float64 // nil when the log has no surroundings

	// ChargeAh is the charge removed since the first row: the log's own
	// counter when it has one, else the integral of Amps.
	ChargeAh []float64

	Columns Columns // what was read as what
	Skipped int     // rows left out because a value was blank
	Notes   []string
}

// Columns says how the file was understood.
type Columns struct {
	Separator    string
	DecimalComma bool
	HeaderLines  int
	Time         string // the column and unit read as time, for instance "Time (ms)"
	Volts        string
	Amps         string
	Temp         string // empty when there is none
	Flipped      bool   // the file counts discharging as negative
}

// Rows returns the number of rows.
func (l *Log) Rows() int { return len(l.TimeS) }

// slice returns rows from to (excluded) as a log of their own, sharing memory.
func (l *Log) slice(from, to int) *Log {
	cut := func(x []float64) []float64 {
		if x == nil {
			return nil
		}
		return x[from:to]
	}
	out := *l
	out.TimeS, out.Volts, out.Amps = l.TimeS[from:to], cut(l.Volts), l.Amps[from:to]
	out.TempC, out.AmbientC, out.ChargeAh = cut(l.TempC), cut(l.AmbientC), cut(l.ChargeAh)
	return &out
}

// integrate fills ChargeAh by the trapezium rule.
func (l *Log) integrate() {
	l.ChargeAh = make([]float64, l.Rows())
	for i := 1; i < l.Rows(); i++ {
		l.ChargeAh[i] = l.ChargeAh[i-1] + (l.Amps[i]+l.Amps[i-1])/2*(l.TimeS[i]-l.TimeS[i-1])/3600
	}
}

// Until returns the log up to the first row under discharge whose voltage lies
// below the given one, that row left out.
func (l *Log) Until(volts float64) *Log {
	for i, v := range l.Volts {
		if v < volts && l.Amps[i] > 0 && i > 1 {
			return l.slice(0, i)
		}
	}
	return l
}
