package cellfit

import (
	"bytes"
	"fmt"
	"math"
	"slices"
	"strings"
)

// columns finds the first row of numbers, reads the titles above it, and
// decides which column is what.
func (p *parser) columns(lines [][]byte) error {
	var titles [][]string
	var rows [][]float64
	width := 0
	for i, line := range lines {
		line = bytes.TrimSpace(line)
		if len(line) == 0 || line[0] == '#' {
			continue
		}
		fields := split(nil, line, p.sep)
		if values, ok := p.numbers(fields); ok {
			if len(rows) == 0 {
				p.header, width = i, len(fields)
			}
			if len(fields) == width && len(rows) < 400 {
				rows = append(rows, values)
			}
			continue
		}
		if len(rows) > 0 {
			continue
		}
		text := make([]string, len(fields))
		for j, f := range fields {
			text[j] = string(f)
		}
		titles = append(titles, text)
	}
	if len(rows) == 0 {
		return ReadError{p.o.Name, 0, 0, "no row of numbers in the first 64 KB", p.wanted()}
	}
	// Only titles over as many columns as there are numbers count.
	titles = slices.DeleteFunc(titles, func(t []string) bool { return len(t) != width && len(t) != width+1 })
	p.use = make([]heading, width)
	names := make([]string, width)
	if len(titles) > 0 {
		names = mergeUnits(titles, width)
		for j := range p.use {
			p.use[j] = readHeading(names[j])
		}
	} else {
		p.guess(rows)
	}
	return p.choose(names)
}

// numbers reads a row if at least two of its fields are numbers and the first
// is a number or a time.
func (p *parser) numbers(fields [][]byte) ([]float64, bool) {
	values := make([]float64, len(fields))
	good := 0
	for i, f := range fields {
		x, ok := parseNumber(f, p.comma)
		if !ok {
			if x, ok = hoursMinutes(f, p.comma); !ok {
				x, ok = p.calendar(f)
				p.clock.layout = ""
			}
		}
		if !ok {
			x = math.NaN()
		} else {
			good++
		}
		values[i] = x
	}
	return values, good >= 2 && 2*good >= len(fields)-1
}

// mergeUnits joins the title line with a line of units below it.
func mergeUnits(titles [][]string, width int) []string {
	last := titles[len(titles)-1]
	names := make([]string, width)
	copy(names, last)
	if len(titles) < 2 {
		return names
	}
	allUnits := true
	for _, s := range last {
		s = strings.ToLower(strings.Trim(s, "()[]\"' "))
		if _, ok := units[s]; !ok && s != "" {
			allUnits = false
		}
	}
	if allUnits {
		for j := range names {
			names[j] = titles[len(titles)-2][j] + " (" + strings.Trim(last[j], "()[]\"' ") + ")"
		}
	}
	return names
}

// guess tells untitled columns by their numbers: the first that always rises is
// time, else the first that never falls; of the others the positive one that varies least is volts.
func (p *parser) guess(rows [][]float64) {
	type about struct {
		rising   bool // from every row to the next
		falling  bool // somewhere
		lo, hi   float64
		constant bool
	}
	all := make([]about, len(p.use))
	for j := range all {
		a := about{rising: true, lo: math.Inf(1), hi: math.Inf(-1)}
		for i, row := range rows {
			a.lo, a.hi = min(a.lo, row[j]), max(a.hi, row[j])
			if i > 0 && !(row[j] > rows[i-1][j]) {
				a.rising = false
				a.falling = a.falling || row[j] != rows[i-1][j]
			}
		}
		a.constant = a.lo == a.hi
		a.rising = a.rising && !a.constant
		all[j] = a
	}
	volts, time := -1, -1
	for j, a := range all {
		if a.rising && time < 0 {
			time = j
		}
	}
	if time < 0 && p.o.WithoutVolts && len(all) == 2 {
		time = 0
	}
	for j, a := range all {
		if !a.falling && !a.constant && time < 0 {
			time = j
		}
	}
	if time >= 0 {
		p.use[time] = heading{what: timeColumn, scale: 1}
	}
	for j, a := range all {
		if j == time || !(a.lo > 0.3) || p.o.WithoutVolts && len(all) == 2 {
			continue
		}
		if volts < 0 || a.hi/a.lo < all[volts].hi/all[volts].lo && !a.constant {
			volts = j
		}
	}
	if volts >= 0 {
		p.use[volts] = heading{what: voltColumn, scale: 1}
	}
	for j := range all {
		if j != time && j != volts {
			p.use[j] = heading{what: ampColumn, scale: 1}
			break
		}
	}
	p.log.Notes = append(p.log.Notes, "The file has no titles; which column is what was worked out from the numbers.")
}

// wanted says what rows should be there.
func (p *parser) wanted() string {
	if p.o.WithoutVolts {
		return "rows of time and amps"
	}
	return "rows of time, volts and amps"
}

// choose keeps the best column of each quantity.
func (p *parser) choose(names []string) error {
	for q := range p.index {
		p.index[q] = -1
	}
	for j, h := range p.use {
		if h.what == unknownColumn {
			continue
		}
		if k := p.index[h.what]; k < 0 || h.rank > p.use[k].rank {
			p.index[h.what] = j
		}
	}
	for _, q := range []quantity{timeColumn, voltColumn, ampColumn} {
		if p.index[q] < 0 && q == voltColumn && p.o.WithoutVolts {
			continue
		}
		if p.index[q] < 0 {
			got := "no column for " + quantityNames[q]
			if said := strings.Join(names, ", "); strings.Trim(said, ", ") != "" {
				got += " among: " + string(clip([]byte(said)))
			}
			return ReadError{p.o.Name, p.header, 0, got, "titles such as time (s), voltage (V), current (A)"}
		}
		p.need = max(p.need, p.index[q]+1)
	}
	c := &p.log.Columns
	c.HeaderLines, c.DecimalComma = p.header, p.comma
	c.Separator = map[byte]string{',': "comma", ';': "semicolon", '\t': "tab", '|': "bar", 0: "blanks"}[p.sep]
	said := func(q quantity) string {
		if p.index[q] < 0 {
			return ""
		}
		if s := strings.TrimSpace(names[p.index[q]]); s != "" {
			return s
		}
		return fmt.Sprintf("column %d", p.index[q]+1)
	}
	c.Time, c.Volts, c.Amps, c.Temp = said(timeColumn), said(voltColumn), said(ampColumn), said(tempColumn)
	return nil
}

// finish settles units that were not said, the sign, and the charge.
func (p *parser) finish() (*Log, error) {
	l := p.log
	if l.Rows() < 2 {
		return nil, ReadError{p.o.Name, 0, 0, fmt.Sprintf("rows of numbers: %d", l.Rows()), "at least two"}
	}
	if !p.anyTemp {
		l.TempC = nil
	}
	if !p.anyAmb {
		l.AmbientC = nil
	}
	if p.index[voltColumn] < 0 {
		l.Volts = nil
	}
	p.unsaid()
	sign := float64(p.o.Discharging)
	if sign == 0 && l.Volts == nil {
		sign = 1
	} else if sign == 0 {
		sign = dischargeSign(l)
	}
	if sign < 0 {
		l.Columns.Flipped = true
		for i := range l.Amps {
			l.Amps[i] = -l.Amps[i]
		}
	}
	l.integrate()
	p.counter()
	return l, nil
}

// unsaid scales columns whose titles give no unit and whose numbers leave no
// doubt.
func (p *parser) unsaid() {
	l := p.log
	if c := p.use[p.index[timeColumn]]; !c.said && p.clock.first > 1e11 {
		for i := range l.TimeS {
			l.TimeS[i] /= 1000
		}
		l.Notes = append(l.Notes, "Time was taken as milliseconds since 1970.")
	}
	if l.Volts == nil {
		return
	}
	if c := p.use[p.index[voltColumn]]; !c.said && slices.Max(l.Volts) > 1000 {
		for i := range l.Volts {
			l.Volts[i] /= 1000
		}
		l.Notes = append(l.Notes, "Voltage was taken as millivolts.")
		if a := p.use[p.index[ampColumn]]; !a.said && max(slices.Max(l.Amps), -slices.Min(l.Amps)) >= 20 {
			for i := range l.Amps {
				l.Amps[i] /= 1000
			}
			l.Notes = append(l.Notes, "Current was taken as milliamperes.")
		}
	}
}

// dischargeSign returns +1 when the file counts a discharge as positive. A
// battery's voltage falls when its discharge current rises; without any change
// of current, it falls while it is being discharged.
func dischargeSign(l *Log) float64 {
	most := 0.0
	for _, a := range l.Amps {
		most = max(most, math.Abs(a))
	}
	var steps, trend float64
	for i := 1; i < l.Rows(); i++ {
		da, dv := l.Amps[i]-l.Amps[i-1], l.Volts[i]-l.Volts[i-1]
		if math.Abs(da) > 0.2*most {
			steps += da * dv
		} else if math.Abs(l.Amps[i]) > 0.05*most {
			trend += math.Copysign(dv, dv*l.Amps[i])
		}
	}
	switch {
	case steps != 0:
		return -math.Copysign(1, steps)
	case trend != 0:
		return -math.Copysign(1, trend)
	}
	return 1
}

// counter uses the log's own charge counter when it agrees with the current:
// it knows what happened between the rows.
func (p *parser) counter() {
	l := p.log
	if len(p.charge) != l.Rows() {
		return
	}
	first, last := p.charge[0], p.charge[l.Rows()-1]
	span := slices.Max(l.ChargeAh) - slices.Min(l.ChargeAh)
	if span == 0 || math.IsNaN(first) || math.IsNaN(last) {
		return
	}
	sign := 1.0
	if (last-first)*l.ChargeAh[l.Rows()-1] < 0 {
		sign = -1
	}
	for i, c := range p.charge {
		if !(math.Abs(sign*(c-first)-l.ChargeAh[i]) <= 0.15*span) {
			return
		}
	}
	for i, c := range p.charge {
		l.ChargeAh[i] = sign * (c - first)
	}
}
