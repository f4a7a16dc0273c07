package quantity

import (
	"cmp"
	"math"
	"strconv"
	"strings"
)

// reading is one value as written, before its units are known to be right:
// "1 h 30 min" has two parts, everything else one.
type reading struct {
	negative bool
	parts    []part
}

// part is one number with the unit behind it. grouped is the other thing that
// the number might mean when its mark parts thousands, 0 when it cannot.
type part struct {
	n, grouped float64
	form       form
	unit       string
	digits     string // as written, for messages
	words      string // of the unit, likewise
}

// form is the shape of a number.
type form int

const (
	single   form = iota // 12.5
	sixties              // 1:30
	against              // 110:1, held as the quotient
	oughts               // 1/0, 00: a gauge
	fraction             // 1/2, 9 1/2
)

// falls reports whether more of the unit is less of the quantity ("rpm/V").
func (r reading) falls() bool {
	u := TorqueConstant.find(r.last().unit)
	return u != nil && u.shape == reciprocal
}

func (r reading) last() part {
	if len(r.parts) == 0 {
		return part{}
	}
	return r.parts[len(r.parts)-1]
}

// share gives to the unit of from when to has one number and none of its own.
func share(to, from *reading) {
	if len(to.parts) == 1 && to.parts[0].unit == "" && len(from.parts) == 1 {
		to.parts[0].unit = from.parts[0].unit
	}
}

// reading takes one value from the text.
func (p *parser) reading() (reading, error) {
	var r reading
	if p.skip(dash) {
		r.negative = true
	} else {
		p.skip(plus)
	}
	lead := ""
	if p.kind == Gauge {
		lead = p.unitText() // "AWG 14", "#14"
	}
	for p.at(0).sort == number {
		one, err := p.part()
		if err != nil {
			return r, err
		}
		if lead != "" && one.unit == "" {
			one.unit = lead
		}
		r.parts = append(r.parts, one)
		if one.unit == "" {
			break
		}
	}
	if len(r.parts) == 0 {
		return r, p.fail("%s", p.usual())
	}
	return r, nil
}

// part takes one number and its unit.
func (p *parser) part() (part, error) {
	var one part
	one.digits = p.rest[0].text
	n, grouped, ok := numeral(one.digits)
	if !ok {
		return one, p.fail("a plain number, such as %q", p.example)
	}
	if grouped < 0 {
		return one, p.fail("at most one decimal mark and none between thousands; %q can be read in more than one way", one.digits)
	}
	one.n, one.grouped = n, grouped
	p.rest = p.rest[1:]
	if p.kind == Gauge && len(one.digits) > 1 && strings.Trim(one.digits, "0") == "" {
		one.form, one.n = oughts, 1-float64(len(one.digits))
	}
	if err := p.second(&one); err != nil {
		return one, err
	}
	from := p.rest
	one.unit = p.unitText()
	for _, t := range from[:len(from)-len(p.rest)] {
		one.words = strings.TrimSpace(one.words + " " + t.text)
	}
	return one, nil
}

// second takes what may stand between a number and its unit: "/2", ":30",
// " 1/2", " in 20".
func (p *parser) second(one *part) error {
	take := func(i int) (float64, bool) {
		t := p.at(i)
		if t.sort != number {
			return 0, false
		}
		n, grouped, ok := numeral(t.text)
		return n, ok && grouped == 0
	}
	next := p.at(0)
	switch {
	case next.sort == slash:
		d, ok := take(1)
		if !ok {
			return p.fail("%s", p.usual())
		}
		p.rest = p.rest[2:]
		switch {
		case p.kind == Gauge && d == 0 && one.n == math.Trunc(one.n):
			one.form, one.n = oughts, 1-one.n
		case d > 0 && p.kind != Gauge:
			one.form, one.n, one.grouped = fraction, one.n/d, 0
		default:
			return p.fail("%s", p.usual())
		}
	case next.sort == colon, p.kind == Grade && next.sort == word && strings.EqualFold(next.text, "in"):
		d, ok := take(1)
		if !ok {
			return p.fail("%s", p.usual())
		}
		p.rest = p.rest[2:]
		switch {
		case p.kind == Duration:
			if d >= 60 || one.n != math.Trunc(one.n) {
				return p.fail("hours and minutes such as %q, or minutes and seconds such as %q", "1:30 h", "1:30 min")
			}
			one.form, one.n, one.grouped = sixties, one.n+d/60, 0
		case (p.kind == Ratio || p.kind == Grade) && d > 0:
			if p.kind == Ratio && 1 <= one.n && one.n < d {
				one.n, d = d, one.n // "1:115" and "115:1" are the same gears
			}
			one.form, one.n, one.grouped = against, one.n/d, 0
		default:
			return p.fail("%s", p.usual())
		}
	case next.sort == number && p.at(1).sort == slash: // 9 1/2
		a, okA := take(0)
		b, okB := take(2)
		if !okA || !okB || b <= 0 || a >= b || one.n != math.Trunc(one.n) {
			return p.fail("%s", p.usual())
		}
		p.rest = p.rest[3:]
		one.form, one.n, one.grouped = fraction, one.n+a/b, 0
	}
	return nil
}

// value turns a reading into a number in the kind's own unit and checks it.
func (p *parser) value(r reading) (float64, error) {
	if len(r.parts) == 0 {
		return 0, p.fail("%s", p.usual())
	}
	sum := 0.0
	var before *unit
	for i, one := range r.parts {
		if i > 0 && (!p.kind.info().joined || r.negative || one.form != single && one.form != fraction) {
			return 0, p.fail("%s", p.usual())
		}
		u, err := p.unitOf(one, before)
		if err != nil {
			return 0, err
		}
		if before != nil && (u.system != before.system || u.factor >= before.factor || one.n*u.factor >= before.factor) {
			return 0, p.fail("%s; %q does not follow on", p.usual(), one.digits)
		}
		n := one.n
		if r.negative {
			n = -n
		}
		v := u.base(n)
		if err := p.unambiguous(one, u, v); err != nil {
			return 0, err
		}
		if i == 0 && u.name != "" {
			p.write(u)
		}
		sum, before = sum+v, u
	}
	if p.kind == Gauge && sum != math.Trunc(sum) {
		return 0, p.fail("a whole gauge number, such as %q, or square millimetres as an area, such as %q", p.kind.Example(), "2.5 mm2")
	}
	if p.kind == Count && sum != math.Trunc(sum) {
		return 0, p.fail("%s", p.usual())
	}
	return p.bounded(sum)
}

// write remembers the first unit seen.
func (p *parser) write(u *unit) {
	if p.written == (Written{}) {
		p.written = Written{Unit: u.name, System: u.system}
	}
}

// unambiguous refuses a number whose mark might part thousands, unless only
// the decimal makes sense.
func (p *parser) unambiguous(one part, u *unit, v float64) error {
	if one.grouped == 0 {
		return nil
	}
	decimal, grouped := p.fits(v), p.fits(u.base(one.grouped)) && p.groups(u.base(one.grouped))
	switch {
	case decimal && !grouped:
		return nil
	case grouped && !decimal:
		return p.fail("%s; the mark in %q could part thousands or decimals", plainNumber(one.grouped, u), one.digits)
	}
	return p.fail("%s or %s; %q can be read in two ways", plainNumber(one.n, u), plainNumber(one.grouped, u), one.digits)
}

// groups reports whether anybody would write so large a value with a mark between
// thousands: a meter shows "2.322 A", and 2322 A flow nowhere near a ride-on.
func (p *parser) groups(v float64) bool { return p.kind != Current || v < 1000 }

func plainNumber(n float64, u *unit) string {
	return strconv.Quote(strings.TrimSpace(strconv.FormatFloat(n, 'f', -1, 64) + " " + u.name))
}

// unitOf finds the unit of one part.
func (p *parser) unitOf(one part, before *unit) (*unit, error) {
	none := &unit{factor: 1}
	if one.unit == "" {
		switch {
		case p.kind == Duration && before != nil && before.name == "h":
			return p.kind.find("min"), nil // 1h30
		case p.kind == Duration && before != nil && before.name == "min":
			return p.kind.find("s"), nil // 1min30
		case before != nil:
			return nil, p.fail("%s", p.usual())
		case p.kind == Grade && one.form == against:
			return none, nil
		case p.kind == Fraction && one.n > 1:
			return nil, p.fail("a fraction from 0 to 1 or a percentage, such as %q", p.example)
		case p.kind.Bare():
			return none, nil
		}
		return nil, p.fail("%s", p.usual())
	}
	u := p.kind.find(one.unit)
	switch {
	case u == nil && p.kind == Charge && Current.find(one.unit) != nil:
		like := p.example
		if one.grouped == 0 && one.form == single && p.fits(one.n) {
			like = one.digits + " Ah"
		}
		return nil, p.fail("ampere-hours, such as %q, not amperes: %q is a current", like, one.digits+" "+one.unit)
	case u == nil:
		return nil, p.fail("%s; %q is no unit of it", p.usual(), Clip(cmp.Or(one.words, one.unit), MostRead))
	case one.form == sixties && u.name != "h" && u.name != "min",
		one.form == against, one.form == oughts && p.kind != Gauge,
		u.shape == reciprocal && !(one.n > 0):
		return nil, p.fail("%s", p.usual())
	}
	return u, nil
}

// digits reports whether s is decimal digits and nothing else.
func digits(s string) bool {
	return s != "" && strings.IndexFunc(s, func(r rune) bool { return r < '0' || r > '9' }) < 0
}

// numeral reads the digits of one number. grouped is the value that the number
// has if its mark parts thousands, 0 when it cannot, and -1 when the number has
// several marks.
func numeral(text string) (n, grouped float64, ok bool) {
	s := strings.ReplaceAll(text, " ", "")
	mantissa, power := s, ""
	if i := strings.IndexAny(s, "eE"); i >= 0 {
		mantissa, power = s[:i], s[i:]
	}
	if len(mantissa) > 20 || len(power) > 5 {
		return 0, 0, false
	}
	whole, part := mantissa, ""
	mark := strings.IndexAny(mantissa, ".,")
	if mark >= 0 {
		whole, part = mantissa[:mark], mantissa[mark+1:]
	}
	switch {
	case mark < 0 && digits(whole):
	case mark >= 0 && (whole == "" || digits(whole)) && digits(part):
		if len(part) == 3 && power == "" && len(whole) >= 1 && len(whole) <= 3 && whole[0] != '0' {
			grouped, _ = strconv.ParseFloat(strings.NewReplacer(".", "", ",", "").Replace(mantissa), 64)
		}
		mantissa = strings.Replace(mantissa, ",", ".", 1)
	default:
		return 0, -1, true
	}
	n, err := strconv.ParseFloat(mantissa+power, 64)
	if err != nil || math.IsInf(n, 0) || math.IsNaN(n) {
		return 0, 0, false
	}
	return n, grouped, true
}
