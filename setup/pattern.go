package setup

import (
	"bufio"
	"fmt"
	"io"
	"math"
	"strconv"
	"strings"
)

// Bounds of a pattern file: a day at one line a second, with room to spare.
const (
	maxPatternLines = 200_000
	maxPatternBytes = 16 << 20
	maxPatternA     = 5000.0
)

// readPattern reads a load pattern: two columns, seconds from the start and
// amperes from then on, parted by comma, semicolon or tab. The last line says
// when the pattern ends; its current plays no part. A first line without
// numbers is a heading; lines that start with # are skipped.
func readPattern(r io.Reader) ([]Demand, error) {
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

// twoNumbers splits a line. Commas are decimal marks where semicolons or tabs
// part the columns.
func twoNumbers(text string) (a, b float64, ok bool) {
	mark := ","
	switch {
	case strings.Contains(text, ";"):
		mark = ";"
	case strings.Contains(text, "\t"):
		mark = "\t"
	}
	cells := strings.Split(text, mark)
	if len(cells) < 2 {
		return 0, 0, false
	}
	var n [2]float64
	for i := range n {
		cell := strings.TrimSpace(cells[i])
		if mark != "," {
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
