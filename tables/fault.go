package tables

import (
	"cmp"
	"errors"
	"fmt"
	"slices"
	"strings"

	"github.com/BurntSushi/toml"
)

// Fault is one thing wrong in a table file.
type Fault struct {
	Line    int    // 1-based; 0 where the place is not known
	Row     string // "ground.our-lawn" or "ground.our-lawn.rolling_mm"; may be empty
	Problem string // what is wrong and what would be right
}

// FileError says everything that is wrong in one table file.
type FileError struct {
	File   string
	Faults []Fault // sorted by line, then row; at least one
}

// Error has one line per fault: "tables: file:line: row: problem".
func (e *FileError) Error() string {
	lines := make([]string, len(e.Faults))
	for i, f := range e.Faults {
		place := e.File
		if f.Line > 0 {
			place = fmt.Sprintf("%s:%d", e.File, f.Line)
		}
		if f.Row != "" {
			place += ": " + f.Row
		}
		lines[i] = fmt.Sprintf("tables: %s: %s", place, f.Problem)
	}
	return strings.Join(lines, "\n")
}

// placedFault is a fault whose line is not looked up yet.
type placedFault struct {
	path    []string
	problem string
}

// mostFaults bounds what is told about one file.
const mostFaults = 50

// fileError looks up the lines and sorts.
func fileError(name, text string, faults []placedFault) error {
	e := &FileError{File: name}
	places := newLocator(text)
	for _, f := range faults {
		if len(e.Faults) == mostFaults {
			break
		}
		e.Faults = append(e.Faults, Fault{
			Line:    places.line(f.path),
			Row:     strings.Join(f.path, "."),
			Problem: f.problem,
		})
	}
	slices.SortStableFunc(e.Faults, func(a, b Fault) int {
		return cmp.Or(cmp.Compare(a.Line, b.Line), cmp.Compare(a.Row, b.Row), cmp.Compare(a.Problem, b.Problem))
	})
	if more := len(faults) - mostFaults; more > 0 {
		e.Faults = append(e.Faults, Fault{Problem: fmt.Sprintf("and %d more faults", more)})
	}
	return e
}

// syntaxError words a failure of the TOML parser itself.
func syntaxError(name string, err error) error {
	fault := Fault{Problem: err.Error()}
	var parse toml.ParseError
	if errors.As(err, &parse) {
		fault.Line = parse.Position.Line
		fault.Problem = "not readable as TOML: " + parse.Message
		if parse.Message == "" {
			fault.Problem = "not readable as TOML: " + err.Error()
		}
	}
	return &FileError{File: name, Faults: []Fault{fault}}
}

// probe makes the TOML library tell where a value stands: only an error that
// comes back from UnmarshalTOML carries a position.
type probe struct{}

var errProbe = errors.New("probe")

func (probe) UnmarshalTOML(any) error { return errProbe }

// locator finds the lines of keys in one file.
type locator struct {
	md   toml.MetaData
	root map[string]toml.Primitive
}

func newLocator(text string) *locator {
	l := &locator{}
	md, err := toml.Decode(text, &l.root)
	if err != nil {
		return &locator{} // then every line is 0
	}
	l.md = md
	return l
}

// line returns the line of a key, or of the nearest parent whose line is
// known, or 0.
func (l *locator) line(path []string) int {
	line := 0
	level := l.root
	for _, key := range path {
		primitive, ok := level[key]
		if !ok {
			return line
		}
		var parse toml.ParseError
		if errors.As(l.md.PrimitiveDecode(primitive, &probe{}), &parse) && parse.Position.Line > 0 {
			line = parse.Position.Line
		}
		var next map[string]toml.Primitive
		if l.md.PrimitiveDecode(primitive, &next) != nil {
			return line
		}
		level = next
	}
	if line == 0 {
		// A table that is only implied by [table.row] has no line of its own;
		// its first row has.
		for key := range level {
			if below := l.line(append(slices.Clone(path), key)); below > 0 && (line == 0 || below < line) {
				line = below
			}
		}
	}
	return line
}
