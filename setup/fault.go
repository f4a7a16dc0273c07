package setup

import (
	"cmp"
	"fmt"
	"slices"
	"strings"
)

// Fault is one thing wrong in a setup file.
type Fault struct {
	File string // name as given to Load or Read, or what goes by another: a file that the setup names, a change
	Line int    // 1-based; 0 when the fault is of the whole file, or of a change
	Key  string // full key, such as "pack.capacity", of the setup or of the file that it names; empty when there is none
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

// Faults is every fault of one file, sorted by line, then key; never empty when
// it is returned as an error.
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

// sorted orders the faults and drops repeated ones.
func (fs Faults) sorted() Faults {
	slices.SortFunc(fs, func(a, b Fault) int {
		return cmp.Or(
			cmp.Compare(a.Line, b.Line), cmp.Compare(a.Key, b.Key),
			cmp.Compare(a.Read, b.Read), cmp.Compare(a.Want, b.Want),
		)
	})
	return slices.Compact(fs)
}

// of reports whether one of the faults is of a key, or of one inside a table.
func (fs Faults) of(path string) bool {
	return slices.ContainsFunc(fs, func(f Fault) bool { return f.Key == path || strings.HasPrefix(f.Key, path+".") })
}

// exactly reports whether one of the faults is of a key itself.
func (fs Faults) exactly(path string) bool {
	return slices.ContainsFunc(fs, func(f Fault) bool { return f.Key == path })
}

// unknownTable reports whether a whole table was not understood: it may be any.
func (fs Faults) unknownTable() bool {
	return slices.ContainsFunc(fs, func(f Fault) bool { return strings.HasPrefix(f.Read, "[") })
}

// orNil returns the faults as an error, nil when there are none.
func (fs Faults) orNil() error {
	if len(fs) == 0 {
		return nil
	}
	return fs.sorted()
}
