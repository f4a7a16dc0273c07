package setup

import (
	"reflect"
	"slices"
	"strconv"
	"strings"
	"unicode"

	"example.org/packcheck/internal/later"
	"example.org/packcheck/internal/quantity"
)

// The tags of the fields of [Setup] and its tables are the only list of tables
// and keys that there is; decoding, suggestions and documentation all read it:
//
//	table    name of the table
//	key      name of the key
//	kind     a quantity kind by its name, or one of the text kinds below
//	words    the words that are right, parted by |
//	min, max bounds of a quantity in the unit of its kind; the kind's own
//	         bounds where absent
//	example  one well-written value
//	doc      what it means, in one line

// Key describes one key that a setup file may have.
type Key struct {
	Table   string   // "pack", "cutoff.module"; empty for keys outside all tables
	Name    string   // "capacity"
	Unit    string   // in which a [Value] of it is held; empty for plain numbers, shares and everything in words
	What    string   // "charge", "word", "text", "date", "yes or no", "file", "ground" ...
	Words   []string // the words that are right; nil when any text may stand
	Example string   // as it would stand in the file, without quotes
	Doc     string   // what it means, one line
}

// Path returns the full key, "pack.capacity".
func (k Key) Path() string {
	if k.Table == "" {
		return k.Name
	}
	return k.Table + "." + k.Name
}

// Quoted returns the example as it must stand in the file: quantities and
// texts in quotes; dates, yes and no, and plain whole numbers without.
func (k Key) Quoted() string {
	if k.What == "yes or no" || k.What == "date" || k.What == quantity.Count.String() {
		return k.Example
	}
	return strconv.Quote(k.Example)
}

// Table describes one table that a setup file may have.
type Table struct {
	Name string // "pack", "cutoff.module"
	Doc  string // what it is about, one line
}

// Keys lists every key, in the order in which the tables are best written. The
// same keys may stand under [original].
func Keys() []Key {
	r := registry.Get()
	out := make([]Key, len(r.fields))
	for i, f := range r.fields {
		out[i] = f.Key
		out[i].Words = slices.Clone(f.Words)
	}
	return out
}

// Tables lists every table, in the same order.
func Tables() []Table {
	r := registry.Get()
	var out []Table
	for _, t := range r.tables {
		if t.doc != "" {
			out = append(out, Table{Name: t.name, Doc: t.doc})
		}
	}
	return out
}

// field is one key with its place in Setup.
type field struct {
	Key
	kind      quantity.Kind // NoKind for texts, dates, yes and no
	low, high float64
	index     []int
}

// table is one table with the place of its struct in Setup.
type table struct {
	name, doc string
	index     []int
	place     []int // of its Place, nil for [cutoff], which has none
}

type keyRegistry struct {
	fields []field
	places map[[2]string]int // of fields, by table and name
	tables []table
}

// registry reads the tags once.
var registry = later.Value[*keyRegistry]{Make: func() *keyRegistry {
	r := &keyRegistry{places: map[[2]string]int{}}
	r.collect(reflect.TypeFor[Setup](), "", nil)
	for i := range r.fields {
		r.places[[2]string{r.fields[i].Table, r.fields[i].Name}] = i
	}
	return r
}}

// collect walks one struct.
func (r *keyRegistry) collect(t reflect.Type, name string, at []int) {
	for i := range t.NumField() {
		f := t.Field(i)
		index := append(slices.Clone(at), i)
		tag := f.Tag
		switch {
		case tag.Get("table") != "":
			sub := strings.TrimPrefix(name+"."+tag.Get("table"), ".")
			entry := table{name: sub, doc: tag.Get("doc"), index: index}
			if p, ok := f.Type.FieldByName("Place"); ok {
				entry.place = append(slices.Clone(index), p.Index...)
			}
			r.tables = append(r.tables, entry)
			r.collect(f.Type, sub, index)
		case tag.Get("key") != "":
			r.fields = append(r.fields, newField(name, tag, index))
		case f.Anonymous && f.Type.Kind() == reflect.Struct && f.Type != reflect.TypeFor[Place]():
			r.collect(f.Type, name, index)
		}
	}
}

// newField turns one tag into a field.
func newField(table string, tag reflect.StructTag, index []int) field {
	f := field{
		Key: Key{
			Table: table, Name: tag.Get("key"), What: tag.Get("kind"),
			Example: tag.Get("example"), Doc: tag.Get("doc"),
		},
		index: index,
	}
	f.kind = quantity.KindNamed(f.What)
	f.Unit = f.kind.Unit()
	if words := tag.Get("words"); words != "" {
		f.Words = strings.Split(words, "|")
	}
	f.low, f.high = f.kind.Bounds()
	for name, bound := range map[string]*float64{"min": &f.low, "max": &f.high} {
		if v, err := strconv.ParseFloat(tag.Get(name), 64); err == nil {
			*bound = v
		}
	}
	return f
}

// field finds a key, nil when there is none of that name in the table.
func (r *keyRegistry) field(table, name string) *field {
	if i, is := r.places[[2]string{table, name}]; is {
		return &r.fields[i]
	}
	return nil
}

// forUnit is the name of the one key of the same table that a text with a unit of
// another kind can be meant for: square millimetres are no gauge. Empty where there is
// none, or more than one.
func (r *keyRegistry) forUnit(f *field, text string) string {
	if !strings.ContainsFunc(text, unicode.IsLetter) {
		return ""
	}
	only := ""
	for i := range r.fields {
		g := &r.fields[i]
		if g.Table != f.Table || g.kind == f.kind || g.kind == quantity.NoKind {
			continue
		}
		if _, _, err := quantity.ParseIn(g.kind, text, g.low, g.high); err != nil {
			continue
		}
		if only != "" {
			return ""
		}
		only = g.Name
	}
	return only
}

// table finds a table, nil when there is none of that name.
func (r *keyRegistry) table(name string) *table {
	for i := range r.tables {
		if r.tables[i].name == name {
			return &r.tables[i]
		}
	}
	return nil
}
