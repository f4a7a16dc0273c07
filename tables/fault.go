package tables

import (
	"errors"
	"fmt"
	"slices"
	"strings"

	"example.org/packcheck/fault"
	"example.org/packcheck/internal/nesting"
	"github.com/BurntSushi/toml"
)

// Fault is one thing wrong in a table file.
type Fault = fault.Fault

// Faults is everything that is wrong in one table file.
type Faults = fault.Faults

// placedFault is a fault whose line is not looked up yet.
type placedFault struct {
	path       []string
	read, want string
}

// shown is a value as it was read, cut to a readable length; nothing where there is
// none.
func shown(v any) string {
	s := fmt.Sprint(v)
	switch x := v.(type) {
	case nil:
		return ""
	case map[string]any:
		return "a table"
	case []map[string]any:
		return "a list of tables"
	case []any:
		parts := make([]string, len(x))
		for i := range x {
			parts[i] = shown(x[i])
		}
		s = "[" + strings.Join(parts, ", ") + "]"
	}
	const most = 40
	if len(s) > most {
		s = strings.ToValidUTF8(s[:most], "") + "..."
	}
	return s
}

// mostFaults bounds what is told about one file.
const mostFaults = 50

// placed looks up the lines and sorts.
func placed(name, text string, faults []placedFault) Faults {
	var out Faults
	places := newLocator(text)
	for _, f := range faults[:min(len(faults), mostFaults)] {
		out = append(out, Fault{File: name, Line: places.line(f.path), Key: strings.Join(f.path, "."), Read: f.read, Want: f.want})
	}
	out = out.Sorted()
	if more := len(faults) - mostFaults; more > 0 {
		out = append(out, Fault{File: name, Read: fmt.Sprintf("%d more faults", more), Want: "those above put right first"})
	}
	return out
}

// syntaxFault words a failure of the TOML parser itself. What stands in a file that is
// none of ours is not said.
func syntaxFault(name string, err error) Faults {
	line, message := nesting.Unreadable(err)
	return Faults{{File: name, Line: line, Read: "what is no TOML", Want: "a TOML file: " + message}}
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
