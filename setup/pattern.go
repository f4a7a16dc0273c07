package setup

import (
	"bufio"
	"errors"
	"fmt"
	"io"
	"math"
	"strconv"
	"strings"

	"example.org/packcheck/cellfit"
)

// Bounds of a pattern file. The plain ones hold a day at one line a second,
// the others what a logger writes in some hours, with room to spare.
const (
	maxPatternLines = 200_000
	maxPatternBytes = 16 << 20
	maxPatternA     = 5000.0
	maxLogBytes     = 128 << 20
	maxLogRows      = 5_000_000
	logPieces       = 4000 // of a longer log, the charge of every piece kept
	patternHead     = 64 << 10
)

// readPattern reads a load pattern: a plain table of seconds and amperes, or
// any log that [cellfit.Read] understands (it must have volts as well, which
// tell the sign of the current and play no other part).
func readPattern(r io.Reader) ([]Demand, error) {
	in := bufio.NewReaderSize(r, patternHead)
	head, err := in.Peek(patternHead)
	if err != nil && err != io.EOF {
		return nil, err
	}
	if plainTable(string(head)) {
		return readTwoColumns(in)
	}
	return readLog(in)
}

// plainTable reports whether most lines of a file's head have two columns.
func plainTable(head string) bool {
	two, more := 0, 0
	for line := range strings.Lines(head) {
		line = strings.TrimSpace(strings.TrimPrefix(line, "\ufeff"))
		if line == "" || strings.HasPrefix(line, "#") {
			continue
		}
		if len(columns(line)) == 2 {
			two++
		} else {
			more++
		}
	}
	return two >= more
}

// readLog makes a pattern of a log: between two rows flows the mean current
// that the log's charge tells, so that no charge is lost where rows are left
// out.
func readLog(r io.Reader) ([]Demand, error) {
	log, err := cellfit.Read(&bounded{r, maxLogBytes}, cellfit.Options{MaxRows: maxLogRows})
	if err != nil {
		return nil, whereInLog(err)
	}
	log = log.Condense(logPieces)
	out := make([]Demand, 0, log.Rows()-1)
	for i := 1; i < log.Rows(); i++ {
		d := Demand{Seconds: log.TimeS[i] - log.TimeS[i-1]}
		d.CurrentA = (log.ChargeAh[i] - log.ChargeAh[i-1]) / d.Seconds * 3600
		if !(math.Abs(d.CurrentA) <= maxPatternA) {
			return nil, fmt.Errorf("%.0f s into the log: %g A, at most %g A", log.TimeS[i], d.CurrentA, maxPatternA)
		}
		out = append(out, d)
	}
	return out, nil
}

// whereInLog says what is wrong with a log, without the name of the file: the
// fault that it becomes part of names it.
func whereInLog(err error) error {
	var re cellfit.ReadError
	switch {
	case !errors.As(err, &re):
		return err
	case re.Line == 0:
		return fmt.Errorf("%s; want %s", re.Got, re.Want)
	case re.Column == 0:
		return fmt.Errorf("line %d: %s; want %s", re.Line, re.Got, re.Want)
	}
	return fmt.Errorf("line %d, column %d: %s; want %s", re.Line, re.Column, re.Got, re.Want)
}

// bounded is a reader that fails, instead of ending, when more than left bytes
// come.
type bounded struct {
	io.Reader
	left int64
}

// Read reads on.
func (b *bounded) Read(p []byte) (int, error) {
	n, err := b.Reader.Read(p)
	if b.left -= int64(n); b.left < 0 {
		return 0, fmt.Errorf("more than %d MiB", maxLogBytes>>20)
	}
	return n, err
}

// readTwoColumns reads seconds from the start and amperes from then on, parted
// by comma, semicolon or tab. The last line says when the pattern ends; its
// current plays no part. A first line without numbers is a heading; lines that
// start with # are skipped.
func readTwoColumns(r io.Reader) ([]Demand, error) {
	in := bufio.NewScanner(io.LimitReader(r, maxPatternBytes+1))
	var out []Demand
	var lastS, lastA float64
	line, size, points := 0, 0, 0
	for in.Scan() {
		line++
		text := strings.TrimSpace(strings.TrimPrefix(in.Text(), "\ufeff"))
		size += len(in.Bytes()) + 1
		if line > maxPatternLines || size > maxPatternBytes {
			return nil, fmt.Errorf("line %d: more than %d lines or %d MiB", line, maxPatternLines, maxPatternBytes>>20)
		}
		if text == "" || strings.HasPrefix(text, "#") {
			continue
		}
		second, amp, ok := twoNumbers(text)
		if !ok {
			if points == 0 && !strings.ContainsAny(text, "0123456789") {
				continue // the heading
			}
			return nil, fmt.Errorf("line %d: %q is not seconds and amperes, such as 12.5,3.4", line, shorten(text))
		}
		if math.Abs(amp) > maxPatternA {
			return nil, fmt.Errorf("line %d: %g A, at most %g A", line, amp, maxPatternA)
		}
		if points > 0 {
			if !(second > lastS) {
				return nil, fmt.Errorf("line %d: %g s after %g s, times must rise", line, second, lastS)
			}
			out = append(out, Demand{Seconds: second - lastS, CurrentA: lastA})
		}
		lastS, lastA = second, amp
		points++
	}
	if err := in.Err(); err != nil {
		return nil, fmt.Errorf("line %d: %w", line+1, err)
	}
	if len(out) == 0 {
		return nil, fmt.Errorf("fewer than two lines of seconds and amperes")
	}
	return out, nil
}

// columns parts a line at the mark that it uses.
func columns(line string) []string {
	mark := ","
	switch {
	case strings.Contains(line, ";"):
		mark = ";"
	case strings.Contains(line, "\t"):
		mark = "\t"
	}
	return strings.Split(line, mark)
}

// twoNumbers reads a line. Commas are decimal marks where semicolons or tabs
// part the columns.
func twoNumbers(text string) (a, b float64, ok bool) {
	cells := columns(text)
	if len(cells) != 2 {
		return 0, 0, false
	}
	marked := strings.ContainsAny(text, ";\t")
	var n [2]float64
	for i, cell := range cells {
		cell = strings.TrimSpace(cell)
		if marked {
			cell = strings.Replace(cell, ",", ".", 1)
		}
		v, err := strconv.ParseFloat(cell, 64)
		if err != nil || math.IsNaN(v) || math.IsInf(v, 0) || math.Abs(v) > 1e9 {
			return 0, 0, false
		}
		n[i] = v
	}
	return n[0], n[1], true
}
