// Package fault says what is wrong in a file that somebody wrote: a setup, a table of
// one's own, a chemistry of one's own.
package fault

import (
	"cmp"
	"fmt"
	"slices"
	"strings"
)

// Fault is one thing wrong in a file.
type Fault struct {
	File string // name of the file, or what goes by another; empty where there is none, as of a change
	Line int    // 1-based; 0 when the fault is of the whole file, or its place is not known
	Key  string // full key, such as "pack.capacity" or "ground.our-lawn.rolling_mm"; empty when there is none
	Read string // what was read; empty when something is missing
	Want string // what would be right
}

// Error is one line: file:line: key: read "x"; want y.
func (f Fault) Error() string {
	var b strings.Builder
	b.WriteString(f.File)
	if f.Line > 0 {
		fmt.Fprintf(&b, ":%d", f.Line)
	}
	if f.File != "" && f.Key != "" {
		b.WriteString(": ")
	}
	b.WriteString(f.Key)
	if f.Read == "" {
		b.WriteString(": read nothing")
	} else {
		fmt.Fprintf(&b, ": read %q", f.Read)
	}
	b.WriteString("; want " + f.Want)
	return b.String()
}

// Faults is everything that is wrong in one file, sorted by line, then key; never empty
// when it is returned as an error.
type Faults []Fault

// Error has one line per fault.
func (fs Faults) Error() string {
	lines := make([]string, len(fs))
	for i, f := range fs {
		lines[i] = f.Error()
	}
	return strings.Join(lines, "\n")
}

// Unwrap gives the faults one by one.
func (fs Faults) Unwrap() []error {
	out := make([]error, len(fs))
	for i, f := range fs {
		out[i] = f
	}
	return out
}

// Sorted orders the faults and drops repeated ones.
func (fs Faults) Sorted() Faults {
	slices.SortFunc(fs, func(a, b Fault) int {
		return cmp.Or(
			cmp.Compare(a.Line, b.Line), cmp.Compare(a.Key, b.Key),
			cmp.Compare(a.Read, b.Read), cmp.Compare(a.Want, b.Want),
		)
	})
	return slices.Compact(fs)
}

// OrNil returns the faults, sorted, as an error, nil when there are none.
func (fs Faults) OrNil() error {
	if len(fs) == 0 {
		return nil
	}
	return fs.Sorted()
}
