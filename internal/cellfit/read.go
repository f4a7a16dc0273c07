package cellfit

import (
	"bufio"
	"bytes"
	"fmt"
	"io"
	"math"
)

// Options says how to read a log. The zero value works out everything by
// itself.
type Options struct {
	Name     string // of the file, for messages
	HeldRows int    // how many rows are held at most, see [Log]; 64 or more, 0 = 131,072

	// Discharging says which sign the file gives a discharge current:
	// +1, -1, or 0 to work it out from the voltage.
	Discharging int

	// WithoutVolts takes a table that has no volts as well: a load to be played
	// needs time and amps only. Its sign then cannot be worked out.
	WithoutVolts bool

	// Progress is called now and then with the bytes read so far; nil = not.
	Progress func(bytesRead int64)
}

// ReadError is a log that cannot be read: where, what stood there, what would
// be right.
type ReadError struct {
	File   string
	Line   int    // 1-based; 0 = the file as a whole
	Column int    // 1-based; 0 = the line as a whole
	Got    string // what was read
	Want   string // what would be right
}

// Error is one line.
func (e ReadError) Error() string {
	where := e.File
	if where == "" {
		where = "log"
	}
	if e.Line > 0 {
		where += fmt.Sprintf(":%d", e.Line)
		if e.Column > 0 {
			where += fmt.Sprintf(": column %d", e.Column)
		}
	}
	return fmt.Sprintf("%s: %s; want %s", where, e.Got, e.Want)
}

// Read reads a logged charge or discharge: a text table of time, volts and
// amps (temperature and counted charge when it has them) with any common
// separator, decimal comma, unit, column order and sign, with or without
// titles. Rows are taken as they come, and [Log] says which of a long file are
// held, so a file of any size needs no more than some megabytes of memory.
func Read(r io.Reader, o Options) (*Log, error) {
	p := &parser{o: o, log: &Log{Name: o.Name}}
	p.hold.log, p.hold.room = p.log, max(o.HeldRows, fewestRows)
	if o.HeldRows == 0 {
		p.hold.room = heldRows
	}
	in := bufio.NewReaderSize(r, 1<<20)
	if err := p.preview(in); err != nil {
		return nil, err
	}
	for {
		chunk, err := in.ReadSlice('\n')
		line := chunk
		if err == bufio.ErrBufferFull {
			return nil, ReadError{o.Name, p.line + 1, 0, "a line of more than 1 MB", "a table with one row per line"}
		}
		if err != nil && err != io.EOF {
			return nil, fmt.Errorf("%s: %w", o.Name, err)
		}
		p.line++
		p.bytes += int64(len(chunk))
		if o.Progress != nil && p.line%65536 == 0 {
			o.Progress(p.bytes)
		}
		if fault := p.row(line, err == io.EOF); fault != nil {
			return nil, fault
		}
		if err == io.EOF {
			break
		}
	}
	if o.Progress != nil {
		o.Progress(p.bytes)
	}
	return p.finish()
}

// parser is a log being read.
type parser struct {
	o      Options
	log    *Log
	line   int
	bytes  int64
	header int // lines before the first row of numbers

	sep   byte // 0 = runs of blanks
	comma bool // decimal comma
	use   []heading
	index [chargeColumn + 1]int // column of each quantity, -1 = none
	date  int                   // column of the date where the clock stands in another; -1 = none
	need  int                   // columns that must be there

	fields [][]byte
	clock  clock
	hold   holder
	now    reading                // the row last read; a temperature that is missing stays as it was
	any    [chargeColumn + 1]bool // of what a row may lack, whether some row has it
}

// previewBytes is how much of the file decides what the columns are.
const previewBytes = 64 << 10

// preview decides separator, decimal comma, titles and columns.
func (p *parser) preview(in *bufio.Reader) error {
	head, err := in.Peek(previewBytes)
	if err != nil && err != io.EOF && err != bufio.ErrBufferFull {
		return fmt.Errorf("%s: %w", p.o.Name, err)
	}
	if bytes.HasPrefix(head, []byte{0xef, 0xbb, 0xbf}) {
		_, _ = in.Discard(3)
		head = head[3:]
	}
	if len(head) > 1 && (head[0] == 0xff && head[1] == 0xfe || head[0] == 0xfe && head[1] == 0xff) {
		return ReadError{p.o.Name, 0, 0, "a file in UTF-16", "a plain text file: save it as CSV in UTF-8"}
	}
	if bytes.IndexByte(head, 0) >= 0 {
		return ReadError{p.o.Name, 0, 0, "bytes that are no text", "a text table: export the log as CSV"}
	}
	lines := bytes.Split(head, []byte{'\n'})
	if len(head) == previewBytes && len(lines) > 1 {
		lines = lines[:len(lines)-1] // cut in the middle
	}
	if len(bytes.TrimSpace(head)) == 0 {
		return ReadError{p.o.Name, 0, 0, "an empty file", p.wanted()}
	}
	p.separator(lines)
	return p.columns(lines)
}

// separator picks the separator that splits the most lines into the same
// number of columns, at least two.
func (p *parser) separator(lines [][]byte) {
	best, bestScore := byte(','), -1
	for _, sep := range []byte{'\t', ';', ',', '|', 0} {
		counts := map[int]int{}
		for _, line := range lines {
			line = bytes.TrimSpace(line)
			if len(line) == 0 || line[0] == '#' {
				continue
			}
			counts[len(split(nil, line, sep))]++
		}
		score := 0
		for n, times := range counts {
			if n >= 2 && times > score {
				score = times
			}
		}
		// Blanks and commas also stand inside other files' fields, so they
		// must do strictly better than the ones tried before.
		if score > bestScore {
			best, bestScore = sep, score
		}
	}
	p.sep = best
	commas, points := 0, 0 // between commas, a decimal one stands in quotes
	for _, line := range lines {
		for _, f := range split(nil, line, best) {
			if bytes.IndexByte(f, ':') >= 0 || bytes.Count(f, []byte{'.'}) > 1 {
				continue // a clock or a date
			}
			for i := 1; i+1 < len(f); i++ {
				if isDigit(f[i-1]) && isDigit(f[i+1]) {
					switch f[i] {
					case ',':
						commas++
					case '.':
						points++
					}
				}
			}
		}
	}
	p.comma = commas > points
}

func isDigit(c byte) bool { return c >= '0' && c <= '9' }

// split cuts a line into fields, reusing dst. Blanks around fields and quotes
// around a whole field are dropped.
func split(dst [][]byte, line []byte, sep byte) [][]byte {
	dst = dst[:0]
	if sep == 0 {
		for _, f := range bytes.Fields(line) {
			dst = append(dst, unquote(f))
		}
		return dst
	}
	for {
		i := bytes.IndexByte(line, sep)
		if len(line) > 0 && line[0] == '"' { // a separator inside quotes does not count
			if q := bytes.IndexByte(line[1:], '"'); q >= 0 {
				if j := bytes.IndexByte(line[1+q:], sep); j >= 0 {
					i = 1 + q + j
				} else {
					i = -1
				}
			}
		}
		if i < 0 {
			return append(dst, unquote(line))
		}
		dst = append(dst, unquote(line[:i]))
		line = line[i+1:]
	}
}

func unquote(f []byte) []byte {
	f = bytes.TrimSpace(f)
	if len(f) >= 2 && f[0] == '"' && f[len(f)-1] == '"' {
		f = bytes.TrimSpace(f[1 : len(f)-1])
	}
	return f
}

// row reads one line of numbers.
func (p *parser) row(line []byte, last bool) error {
	if p.line <= p.header {
		return nil
	}
	line = bytes.TrimSpace(line)
	if len(line) == 0 || line[0] == '#' {
		return nil
	}
	p.fields = split(p.fields, line, p.sep)
	f := p.fields
	if len(f) < p.need {
		if last {
			p.log.Notes = append(p.log.Notes, "The last line is cut off and was left out.")
			return nil
		}
		return ReadError{p.o.Name, p.line, 0, fmt.Sprintf("%d columns", len(f)), fmt.Sprintf("at least %d, as in the rows before", p.need)}
	}
	volts := p.index[voltColumn] >= 0
	if volts && blank(f[p.index[voltColumn]]) || blank(f[p.index[ampColumn]]) {
		p.log.Skipped++
		return nil
	}
	t, fault := p.time(f)
	if fault != nil {
		return fault
	}
	r := &p.now
	if p.hold.waiting && t < r[timeColumn] {
		return ReadError{p.o.Name, p.line, p.index[timeColumn] + 1, fmt.Sprintf("a time %.3f s before that of the row above", r[timeColumn]-t), "rows in the order of time"}
	}
	r[timeColumn] = t
	if volts {
		if r[voltColumn], fault = p.value(f, voltColumn); fault != nil {
			return fault
		}
	}
	if r[ampColumn], fault = p.value(f, ampColumn); fault != nil {
		return fault
	}
	if fault := p.extras(f); fault != nil {
		return fault
	}
	p.hold.add(r)
	return nil
}

// extras reads what a log may have besides.
func (p *parser) extras(f [][]byte) (fault error) {
	there := func(q quantity) bool { return p.index[q] >= 0 && len(f) > p.index[q] && !blank(f[p.index[q]]) }
	r := &p.now
	r[chargeColumn] = math.NaN()
	for _, q := range [...]quantity{tempColumn, ambientColumn, chargeColumn} {
		if !there(q) {
			continue
		}
		if r[q], fault = p.value(f, q); fault != nil {
			return fault
		}
		p.any[q] = true
	}
	return nil
}

// greatest is the largest magnitude that any column may have.
var greatest = [...]float64{timeColumn: 1e13, voltColumn: 1e4, ampColumn: 1e5, tempColumn: 1e3, ambientColumn: 1e3, chargeColumn: 1e6}

var quantityNames = [...]string{timeColumn: "a time", voltColumn: "volts", ampColumn: "amps", tempColumn: "a temperature", ambientColumn: "a temperature", chargeColumn: "a charge"}

// value reads one number in its unit.
func (p *parser) value(f [][]byte, q quantity) (float64, error) {
	i := p.index[q]
	scale := p.use[i].scale
	x, ok := parseNumber(f[i], p.comma)
	if !ok {
		var unit string
		x, scale, unit, ok = withUnit(f[i], p.comma)
		ok = ok && unitFits(q, unit)
	}
	if ok {
		switch scale {
		case -1: // Fahrenheit
			x = (x - 32) / 1.8
		case -2: // kelvin
			x -= 273.15
		default:
			x *= scale
		}
	}
	if !ok || !(math.Abs(x) <= greatest[q]) {
		return 0, ReadError{p.o.Name, p.line, i + 1, fmt.Sprintf("%q", clip(f[i])), "a number for " + quantityNames[q]}
	}
	return x, nil
}

func clip(f []byte) []byte {
	if len(f) > 40 {
		return append(bytes.Clone(f[:40]), "..."...)
	}
	return f
}
