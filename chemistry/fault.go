package chemistry

import (
	"cmp"
	"fmt"
	"slices"
	"strings"
)

// Fault is one mistake in a chemistry file.
type Fault struct {
	File string // as given to Extend
	Line int    // 1-based; 0 when the mistake is that something is missing from the file
	Key  string // dotted
	Read string // what was read; empty when something is missing
	Want string // what would be right
}

// Error is one line: file:line: key: read "x"; want y.
func (f Fault) Error() string {
	place := f.File
	if f.Line > 0 {
		place = fmt.Sprintf("%s:%d", f.File, f.Line)
	}
	if f.Key != "" {
		place += ": " + f.Key
	}
	read := "nothing"
	if f.Read != "" {
		read = fmt.Sprintf("%q", f.Read)
	}
	return fmt.Sprintf("%s: read %s; want %s", place, read, f.Want)
}

// Faults is every mistake in one chemistry file, in file order.
type Faults []Fault

// Error gives one line per fault.
func (fs Faults) Error() string {
	lines := make([]string, len(fs))
	for i, f := range fs {
		lines[i] = f.Error()
	}
	return strings.Join(lines, "\n")
}

// Unwrap gives the faults one by one.
func (fs Faults) Unwrap() []error {
	errs := make([]error, len(fs))
	for i, f := range fs {
		errs[i] = f
	}
	return errs
}

// sorted puts the faults in file order.
func (fs Faults) sorted() Faults {
	slices.SortStableFunc(fs, func(a, b Fault) int {
		return cmp.Or(cmp.Compare(a.Line, b.Line), cmp.Compare(a.Key, b.Key), cmp.Compare(a.Want, b.Want))
	})
	return fs
}
