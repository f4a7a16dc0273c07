package cellfit

import (
	"bytes"
	"fmt"
	"math"
	"slices"
	"time"
)

// clock turns whatever a log calls time into seconds from its first row.
type clock struct {
	started bool
	first   float64
	last    float64 // of the raw value, for the wrap at midnight
	days    float64
	layout  string // of calendar times; found at the first row
}

// layouts are the calendar times that loggers write.
var layouts = []string{
	"2006-01-02 15:04:05.999999999", "2006-01-02T15:04:05.999999999", time.RFC3339Nano, "2006-01-02 15:04",
	"2006/01/02 15:04:05.999999999", "02.01.2006 15:04:05.999999999", "02.01.2006 15:04",
	"01/02/2006 15:04:05.999999999", "1/2/2006 15:04:05.999999999", "1/2/2006 3:04:05 PM", "1/2/2006 15:04", "02/01/2006 15:04:05",
	"2006-01-02 3:04:05 PM", "02.01.2006 3:04:05 PM", "2/1/2006 3:04:05 PM", "2/1/2006 15:04", "02-Jan-2006 15:04:05", "2 Jan 2006 15:04:05",
}

// isDate reports whether a field is a day of the calendar without a time.
func isDate(f []byte) bool {
	for _, layout := range []string{"2006-01-02", "2006/01/02", "02.01.2006", "2.1.2006", "1/2/2006", "2/1/2006"} {
		if _, err := time.Parse(layout, string(f)); err == nil {
			return true
		}
	}
	return false
}

// time reads the time of a row, in seconds from the first.
func (p *parser) time(f [][]byte) (float64, error) {
	i := p.index[timeColumn]
	c := &p.clock
	x, ok := parseNumber(f[i], p.comma)
	if ok {
		x *= p.use[i].scale
	} else if n, scale, unit, good := withUnit(f[i], p.comma); good && unitFits(timeColumn, unit) {
		x, ok = n*scale, true
	} else if p.date >= 0 {
		x, ok = p.calendar(slices.Concat(f[p.date], []byte{' '}, f[i]))
	} else if x, ok = hoursMinutes(f[i], p.comma); ok {
		if c.started && x < c.last-43200 { // past midnight
			c.days++
		}
		c.last = x
		x += c.days * 86400
	} else {
		x, ok = p.calendar(f[i])
	}
	if !ok || math.Abs(x) > greatest[timeColumn] {
		return 0, ReadError{p.o.Name, p.line, i + 1, fmt.Sprintf("%q", clip(f[i])), "a time: seconds, hh:mm:ss or a date with a time"}
	}
	if !c.started {
		c.started, c.first = true, x
	}
	return x - c.first, nil
}

// hoursMinutes reads "hh:mm:ss", "mm:ss" and "d days hh:mm:ss", with decimals.
func hoursMinutes(f []byte, comma bool) (float64, bool) {
	var total float64
	f, noon, half := cutHalf(f)
	if i := bytes.IndexByte(f, ' '); i > 0 {
		days := f[:i]
		rest := bytes.TrimSpace(bytes.TrimPrefix(bytes.TrimSpace(f[i:]), []byte("days")))
		rest = bytes.TrimSpace(bytes.TrimPrefix(rest, []byte("day")))
		n, ok := parseNumber(bytes.TrimSuffix(days, []byte("d")), comma)
		if !ok || bytes.IndexByte(days, '.') >= 0 { // a date, with points
			return 0, false
		}
		total, f = n*24, rest
	}
	parts := 0
	for {
		i := bytes.IndexByte(f, ':')
		piece := f
		if i >= 0 {
			piece = f[:i]
		}
		x, ok := parseNumber(piece, comma)
		if !ok && i < 0 { // the seconds may carry the other decimal sign
			x, ok = parseNumber(piece, !comma)
		}
		if !ok || x < 0 || parts > 3 {
			return 0, false
		}
		total = total*60 + x
		parts++
		if i < 0 {
			break
		}
		f = f[i+1:]
	}
	if half {
		if parts == 2 {
			total *= 60 // with a half of the day behind them they are hours and minutes
		}
		total = math.Mod(total, 43200) + noon
	}
	return total, parts >= 2
}

// cutHalf takes AM or PM off a clock and returns the seconds at which that half
// of the day begins.
func cutHalf(f []byte) (rest []byte, begins float64, ok bool) {
	if len(f) < 3 || f[len(f)-1]|0x20 != 'm' {
		return f, 0, false
	}
	switch f[len(f)-2] | 0x20 {
	case 'p':
		begins = 43200
	case 'a':
	default:
		return f, 0, false
	}
	return bytes.TrimSpace(f[:len(f)-2]), begins, true
}

// calendar reads a date with a time.
func (p *parser) calendar(f []byte) (float64, bool) {
	s := string(f)
	try := layouts
	if p.clock.layout != "" {
		try = []string{p.clock.layout}
	}
	for _, layout := range try {
		at, err := time.Parse(layout, s)
		if err == nil {
			p.clock.layout = layout
			// Seconds of the calendar lose no millisecond before the year 9000.
			return float64(at.Unix()) + float64(at.Nanosecond())/1e9, true
		}
	}
	return 0, false
}
