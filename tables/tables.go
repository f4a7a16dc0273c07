package tables

import (
	"errors"
	"fmt"
	"io"
	"io/fs"
	"slices"
	"strings"

	"example.org/packcheck/answer"
	"example.org/packcheck/internal/rows"
)

// largestFile bounds a user's table file: it is read whole into memory.
const largestFile = 256 << 10

// Tables is one immutable set of reference tables. It is safe for use by
// several goroutines at once.
type Tables struct {
	sources    rows.Rows[answer.Source]
	figures    rows.Rows[Figure]
	conductors rows.Rows[conductor]
	gauges     rows.Rows[gauge]
	ampacities rows.Rows[ampacityCurve]
	adiabatics rows.Rows[Insulation]
	fuses      rows.Rows[Fuse]
	pulses     rows.Rows[pulseLife]
	joints     rows.Rows[Joint]
	motors     rows.Rows[MotorCan]
	grounds    rows.Rows[Ground]
	children   rows.Rows[growth]
	vehicles   rows.Rows[VehicleClass]
	thermal    rows.Rows[ThermalClass]
	cautions   rows.Rows[Caution]
}

// Builtin returns the tables that packcheck brings along. They are part of the
// program as plain data, made of the TOML files in data: see [Load].
func Builtin() *Tables { return &builtin }

//go:generate go run -tags generating ../internal/literal/cmd/literals tables data builtin_data.go

// Load reads a whole set from the TOML files of a folder, in the order of their
// names. The built-in set is made so; for rows of a user's own there is
// [Tables.Extend].
//
// A bad file gives [Faults], all of them.
func Load(folder fs.FS) (*Tables, error) {
	if folder == nil {
		return nil, errors.New("tables: no folder to read")
	}
	t := &Tables{}
	files, err := fs.Glob(folder, "*.toml")
	if err != nil {
		return nil, fmt.Errorf("tables: %w", err)
	}
	for _, name := range files {
		text, err := fs.ReadFile(folder, name)
		if err != nil {
			return nil, fmt.Errorf("tables: %w", err)
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
// A bad file gives [Faults], all of them.
func (t *Tables) Extend(r io.Reader, name string) (*Tables, error) {
	text, err := io.ReadAll(io.LimitReader(r, largestFile+1))
	if err != nil {
		return nil, fmt.Errorf("tables: %s: %w", name, err)
	}
	if len(text) > largestFile {
		return nil, Faults{{
			File: name, Read: fmt.Sprintf("more than %d KiB", largestFile>>10), Want: fmt.Sprintf("a table file of at most %d KiB", largestFile>>10),
		}}
	}
	extended := *t // adding a row copies what it is added to
	if err := extended.add(name, string(text), closedKinds()); err != nil {
		return nil, err
	}
	return &extended, nil
}

// Sources returns every source of the set, sorted by ID.
func (t *Tables) Sources() []answer.Source {
	return valuesOf(t.sources, func(s answer.Source) answer.Source { return s })
}

// Source returns the source with this ID.
func (t *Tables) Source(id string) (answer.Source, bool) {
	return t.sources.Get(id)
}

// Firm reports whether the source with this ID was read or computed, rather
// than remembered, estimated or taken from practice. An unknown ID is not
// firm.
func (t *Tables) Firm(id string) bool {
	s, _ := t.sources.Get(id)
	known := s.Known
	return strings.HasPrefix(known, "primary") || strings.HasPrefix(known, "copy") ||
		strings.HasPrefix(known, "computed") || strings.HasPrefix(known, "measured")
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

// mayBegin reports whether the plain form of a word may begin like that; where the word
// begins with a letter or digit that is seen at once.
func mayBegin(word, plain string) bool {
	if word == "" || plain == "" {
		return true
	}
	switch c := word[0]; {
	case 'a' <= c && c <= 'z', '0' <= c && c <= '9':
		return c == plain[0]
	case 'A' <= c && c <= 'Z':
		return c-'A'+'a' == plain[0]
	}
	return true
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
func byWord[V any](all rows.Rows[V], what, asked string, words func(V) []string) (V, error) {
	plain := plainWord(asked)
	meant := func(word string) bool { return mayBegin(word, plain) && plainWord(word) == plain }
	for i := range all {
		if meant(all[i].Name) || slices.ContainsFunc(words(all[i].Value), meant) {
			return all[i].Value, nil
		}
	}
	if bare := withoutArticle(asked); bare != "" && bare != asked {
		if v, err := byWord(all, what, bare, words); err == nil {
			return v, nil
		}
	}
	var none V
	readable := all.Names()
	for i, name := range readable {
		readable[i] = strings.ReplaceAll(name, "-", " ")
	}
	return none, notFound(what, asked, readable)
}

// withoutArticle is "garden" of "the garden".
func withoutArticle(text string) string {
	text = strings.TrimSpace(text)
	first, rest, more := strings.Cut(text, " ")
	if more && slices.Contains([]string{"the", "a", "an", "my", "our"}, strings.ToLower(first)) {
		return rest
	}
	return text
}

// valuesOf returns a copy of every row, in the order of their names.
func valuesOf[V any](all rows.Rows[V], copied func(V) V) []V {
	out := make([]V, len(all))
	for i := range all {
		out[i] = copied(all[i].Value)
	}
	return out
}
