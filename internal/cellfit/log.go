package cellfit

import "slices"

// Log is a logged charge or discharge, one entry per row of the file.
//
// Of a file of more than 131,072 rows ([Options].HeldRows) half as many or fewer
// are held, chosen while it is read. They stand as they were, nothing is
// averaged, each with the charge that all rows before it took out:
//
//   - the first row and the last, and those with the highest and lowest current
//     and voltage;
//   - both rows of each sudden change of current, so that it keeps its moment:
//     by a fifth of the greatest current at least, or by a twentieth that the
//     rows on either side see too, which noise is not. Where there are more than
//     16,384, only those by a tenth, a fifth and so on, until there are not;
//   - so many others that no two rows are further apart than one of 8192
//     stretches, half of which are cut by time and half by the charge that was
//     moved (unless they were in the file), and both rows of the greatest change
//     of current in each, if that is a fifth of the greatest current.
//
// No stretch is longer than 1/4096 of the time, nor of the charge. So a moment
// between two rows, such as that at which a voltage is reached, is off by less
// than 0.025 % of the whole. What [Fit] finds is then off from what all rows
// would give by up to 0.2 % of a capacity and 0.5 % of a resistance. A load that
// switches more often than there is room for is known by samples ([Log].Sampled), and
// what flowed on average ([Part].MeanA) counts its pauses too.
type Log struct {
	Name     string    // as given in Options, for messages
	TimeS    []float64 // from 0, rising
	Volts    []float64 // nil when a load pattern has none
	Amps     []float64 // positive discharging
	TempC    []float64 // nil when the log has no temperature
	AmbientC []float64 // nil when the log has no surroundings

	// ChargeAh is the charge removed since the first row: the log's own
	// counter when it has one, else the integral of Amps; without volts, a
	// current flows from its row to the next.
	ChargeAh []float64

	Columns  Columns // what was read as what
	FileRows int     // rows of the file, those not held included
	Skipped  int     // rows left out because a value was blank
	Sampled  bool    // the current changes by a fifth of the greatest more often than there are rows to show it: of its changes some stand here, between them its mean
	Notes    []string

	counterAh []float64 // the file's own, while it is read
	knows     bool      // ChargeAh counts what happened between the rows too
	// What is not known of ChargeAh because the current changed between two rows
	// of the file, from the first row on: the sum of what every sudden change
	// may have added, and the sum of squares of the others.
	suddenAh, noiseAh2 []float64
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

// Rows returns the number of rows that are held.
func (l *Log) Rows() int { return len(l.TimeS) }

// read are the columns of a file, by quantity.
func (l *Log) read() [chargeColumn + 1]*[]float64 {
	return [...]*[]float64{
		unknownColumn: nil, timeColumn: &l.TimeS, voltColumn: &l.Volts, ampColumn: &l.Amps,
		tempColumn: &l.TempC, ambientColumn: &l.AmbientC, chargeColumn: &l.counterAh,
	}
}

// columns are all that there is one entry per row of; some may be nil.
func (l *Log) columns() []*[]float64 {
	read := l.read()
	return append(read[timeColumn:], &l.ChargeAh, &l.suddenAh, &l.noiseAh2)
}

// slice returns rows from to (excluded) as a log of their own, sharing memory.
func (l *Log) slice(from, to int) *Log {
	out := *l
	for _, column := range out.columns() {
		if *column != nil {
			*column = (*column)[from:to]
		}
	}
	return &out
}

// pick returns the given rows.
func (l *Log) pick(rows []int) *Log {
	out := *l
	for _, column := range out.columns() {
		if *column == nil {
			continue
		}
		x := make([]float64, len(rows))
		for i, r := range rows {
			x[i] = (*column)[r]
		}
		*column = x
	}
	return &out
}

// Moved returns the charge that was taken out in all, and that which was put in.
func (l *Log) Moved() (outAh, inAh float64) {
	for i := 1; i < l.Rows(); i++ {
		ah := l.ChargeAh[i] - l.ChargeAh[i-1]
		outAh, inAh = outAh+max(ah, 0), inAh+max(-ah, 0)
	}
	return outAh, inAh
}

// mostA is the greatest current, either way.
func (l *Log) mostA() float64 { return max(slices.Max(l.Amps), -slices.Min(l.Amps)) }

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
