package tables

import (
	"cmp"
	"embed"
	"errors"
	"fmt"
	"io"
	"maps"
	"slices"
	"strings"
	"sync"

	"example.org/packcheck/answer"
)

//go:embed data/*.toml
var dataFiles embed.FS

// largestFile bounds a user's table file: it is read whole into memory.
const largestFile = 256 << 10

// Tables is one immutable set of reference tables. It is safe for use by
// several goroutines at once.
type Tables struct {
	sources    map[string]answer.Source
	figures    map[string]Figure
	conductors map[string]conductor
	gauges     map[string]gauge
	ampacities map[string]ampacityCurve
	adiabatics map[string]Insulation
	fuses      map[string]Fuse
	pulses     map[string]pulseLife
	joints     map[string]Joint
	motors     map[string]MotorCan
	grounds    map[string]Ground
	children   map[string]growth
	vehicles   map[string]VehicleClass
	thermal    map[string]ThermalClass
	cautions   map[string]Caution
}

// Builtin returns the tables that packcheck brings along.
func Builtin() *Tables { return builtin() }

var builtin = sync.OnceValue(func() *Tables {
	t, err := loadFiles()
	if err != nil {
		// Only a broken data file of our own can get here, and the first test
		// of the package would: no user data is involved.
		panic(err)
	}
	return t
})

// loadFiles reads the embedded files in the order of their names.
func loadFiles() (*Tables, error) {
	t := (&Tables{}).clone()
	entries, err := dataFiles.ReadDir("data")
	if err != nil {
		return nil, err
	}
	for _, entry := range entries {
		name := "data/" + entry.Name()
		text, err := dataFiles.ReadFile(name)
		if err != nil {
			return nil, err
		}
		if err := t.add(name, string(text), nil); err != nil {
			return nil, err
		}
	}
	return t, nil
}

// Extend returns a new set that holds t and the rows of a TOML file read from
// r; t itself is unchanged. The name stands in error messages.
//
// The file is checked by the rules of the built-in ones: every row needs a
// source that exists (its own [source.ID] or a built-in one), every number
// its range, curves their order. A row may not bear the name of one that is
// there already, and the tables of legal and standard limits (adiabatic,
// ampacity, conductor, figure, pulses) take no rows. A file of more than 256
// KiB is refused.
//
// A bad file gives a [*FileError] with every fault of it.
func (t *Tables) Extend(r io.Reader, name string) (*Tables, error) {
	text, err := io.ReadAll(io.LimitReader(r, largestFile+1))
	if err != nil {
		return nil, fmt.Errorf("tables: %s: %w", name, err)
	}
	if len(text) > largestFile {
		return nil, &FileError{File: name, Faults: []Fault{{
			Problem: fmt.Sprintf("the file is larger than %d KiB", largestFile>>10),
		}}}
	}
	extended := t.clone()
	if err := extended.add(name, string(text), closedKinds()); err != nil {
		return nil, err
	}
	return extended, nil
}

// Sources returns every source of the set, sorted by ID.
func (t *Tables) Sources() []answer.Source {
	return slices.SortedFunc(maps.Values(t.sources), func(a, b answer.Source) int {
		return cmp.Compare(a.ID, b.ID)
	})
}

// Source returns the source with this ID.
func (t *Tables) Source(id string) (answer.Source, bool) {
	s, ok := t.sources[id]
	return s, ok
}

// Firm reports whether the source with this ID was read or computed, rather
// than remembered, estimated or taken from practice. An unknown ID is not
// firm.
func (t *Tables) Firm(id string) bool {
	known := t.sources[id].Known
	return strings.HasPrefix(known, "primary") || strings.HasPrefix(known, "copy") ||
		strings.HasPrefix(known, "computed") || strings.HasPrefix(known, "measured")
}

// clone copies the maps; the rows in them are never written to.
func (t *Tables) clone() *Tables {
	return &Tables{
		sources:    copied(t.sources),
		figures:    copied(t.figures),
		conductors: copied(t.conductors),
		gauges:     copied(t.gauges),
		ampacities: copied(t.ampacities),
		adiabatics: copied(t.adiabatics),
		fuses:      copied(t.fuses),
		pulses:     copied(t.pulses),
		joints:     copied(t.joints),
		motors:     copied(t.motors),
		grounds:    copied(t.grounds),
		children:   copied(t.children),
		vehicles:   copied(t.vehicles),
		thermal:    copied(t.thermal),
		cautions:   copied(t.cautions),
	}
}

func copied[V any](m map[string]V) map[string]V {
	c := make(map[string]V, len(m))
	maps.Copy(c, m)
	return c
}

// ErrNotFound is wrapped by every failed look-up; test with errors.Is.
var ErrNotFound = errors.New("not in the table")

// notFound names what was asked for and what there is.
func notFound(what, asked string, known []string) error {
	return fmt.Errorf("tables: %s %q %w (known: %s)", what, asked, ErrNotFound, strings.Join(known, ", "))
}

// plainWord makes look-ups forgiving: lower case, hyphens, underscores and
// runs of spaces as one space, a plural "es" or "s" dropped from each word.
func plainWord(s string) string {
	words := strings.Fields(strings.Map(plainRune, strings.ToLower(s)))
	for i, w := range words {
		switch {
		case strings.HasSuffix(w, "sses"):
			words[i] = strings.TrimSuffix(w, "es")
		case len(w) > 3 && strings.HasSuffix(w, "s") && !strings.HasSuffix(w, "ss"):
			words[i] = strings.TrimSuffix(w, "s")
		}
	}
	return strings.Join(words, " ")
}

// plainRune parts words at hyphens, underscores and commas and drops full
// stops.
func plainRune(r rune) rune {
	switch r {
	case '-', '_', ',':
		return ' '
	case '.':
		return -1
	}
	return r
}

// byWord finds the row one of whose words matches what somebody wrote. The
// row's own name always counts as one of its words.
func byWord[V any](rows map[string]V, what, asked string, words func(V) []string) (V, error) {
	plain := plainWord(asked)
	names := slices.Sorted(maps.Keys(rows))
	for _, name := range names {
		row := rows[name]
		if plainWord(name) == plain {
			return row, nil
		}
		for _, w := range words(row) {
			if plainWord(w) == plain {
				return row, nil
			}
		}
	}
	var none V
	readable := make([]string, len(names))
	for i, name := range names {
		readable[i] = strings.ReplaceAll(name, "-", " ")
	}
	return none, notFound(what, asked, readable)
}
