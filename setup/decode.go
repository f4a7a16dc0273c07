package setup

import (
	"errors"
	"fmt"
	"math"
	"reflect"
	"slices"
	"strconv"
	"strings"
	"time"
	"unicode"

	"github.com/BurntSushi/toml"

	"example.org/packcheck/answer"
	"example.org/packcheck/internal/quantity"
)

// whole turns the parsed tree into a Setup.
func (d *decoder) whole(tree map[string]toml.Primitive) *Setup {
	s := &Setup{Name: d.name, Dir: d.dir}
	d.table(part{setup: s}, tree)
	return s
}

// part is the table that is being read.
type part struct {
	setup  *Setup // the Setup it belongs to: the main one or the original
	prefix string // "original." under [original]
	name   string // "pack", "cutoff.module"; empty at the top
}

// path returns a key of the table in full.
func (p part) path(key string) string {
	if p.name == "" {
		return p.prefix + key
	}
	return p.prefix + p.name + "." + key
}

// join returns the name of a table inside this one.
func (p part) join(key string) string { return strings.TrimPrefix(p.name+"."+key, ".") }

// table reads every key of one table.
func (d *decoder) table(p part, tree map[string]toml.Primitive) {
	for _, key := range sortedKeys(tree) {
		value, line := d.look(tree[key])
		name := key
		if !p.has(key) {
			name = d.unknown(p, key, value, line)
			if _, taken := tree[name]; taken || !p.has(name) {
				continue
			}
		}
		d.item(p, name, tree[key], value, line)
	}
}

// has reports whether the table has a key or a table of that name.
func (p part) has(name string) bool {
	r := registry.Get()
	return p.name == "" && p.prefix == "" && name == originalTable || r.field(p.name, name) != nil || r.table(p.join(name)) != nil
}

// item reads one key, or one table, that the table has.
func (d *decoder) item(p part, name string, prim toml.Primitive, value any, line int) {
	r := registry.Get()
	if f := r.field(p.name, name); f != nil {
		d.key(p, f, value, line)
		return
	}
	inner := part{setup: p.setup, prefix: p.prefix, name: p.join(name)}
	if p.name == "" && p.prefix == "" && name == originalTable {
		p.setup.Original = &Setup{Name: d.name, Dir: d.dir, Place: Place{Given: true, Line: line}}
		inner = part{setup: p.setup.Original, prefix: originalPrefix}
	} else if t := r.table(inner.name); t.place != nil {
		place := reflect.ValueOf(p.setup).Elem().FieldByIndex(t.place)
		place.Set(reflect.ValueOf(Place{Given: true, Line: line}))
	}
	if _, ok := value.(map[string]any); !ok {
		d.fault(line, p.path(name), readText(value), fmt.Sprintf("a table, written once as [%s]", p.path(name)))
		return
	}
	var sub map[string]toml.Primitive
	if err := d.md.PrimitiveDecode(prim, &sub); err != nil {
		d.fault(line, p.path(name), readText(value), fmt.Sprintf("a table [%s]", p.path(name)))
		return
	}
	d.table(inner, sub)
}

func sortedKeys(tree map[string]toml.Primitive) []string {
	keys := make([]string, 0, len(tree))
	for k := range tree {
		keys = append(keys, k)
	}
	slices.Sort(keys)
	return keys
}

// errSeen stops the decoder once a probe has what it came for.
var errSeen = errors.New("seen")

// probe takes a value as the parser has it. Returning an error makes the
// decoder tell the position, which it keeps to itself otherwise.
type probe struct{ value any }

// UnmarshalTOML keeps the value.
func (p *probe) UnmarshalTOML(v any) error {
	p.value = v
	return errSeen
}

// look returns a value and its line; for a table that only its keys imply, the
// line of the first of them.
func (d *decoder) look(prim toml.Primitive) (any, int) {
	var p probe
	line := 0
	var pe toml.ParseError
	if errors.As(d.md.PrimitiveDecode(prim, &p), &pe) {
		line = pe.Position.Line
	}
	if _, isTable := p.value.(map[string]any); isTable && line == 0 {
		var sub map[string]toml.Primitive
		if d.md.PrimitiveDecode(prim, &sub) == nil {
			for _, inner := range sub {
				if _, l := d.look(inner); l > 0 && (line == 0 || l < line) {
					line = l
				}
			}
		}
	}
	return p.value, line
}

// key reads one known key into its place.
func (d *decoder) key(p part, f *field, value any, line int) {
	at := reflect.ValueOf(p.setup).Elem().FieldByIndex(f.index)
	path := p.path(f.Name)
	if p.prefix != "" && todayOnly(f) {
		d.fault(line, path, f.Name, fmt.Sprintf("this key as %s, of today: it tells nothing of the vehicle as it was", f.Path()))
		return
	}
	switch target := at.Addr().Interface().(type) {
	case *Value:
		d.value(target, f, path, value, line)
	case *Word:
		d.word(target, f, path, value, line)
	case *Flag:
		yes, ok := value.(bool)
		if !ok {
			d.fault(line, path, readText(value), "true or false, without quotes")
			return
		}
		*target = Flag{Yes: yes, Given: true, Key: path, Line: line}
	case *Date:
		d.date(target, f, path, value, line)
	}
}

// todayOnly reports whether a key under [original] would be read and forgotten: how the
// original was charged and kept changes nothing that is answered.
func todayOnly(f *field) bool {
	switch f.Path() {
	case "title", "measured.second_rest_voltage", "vehicle.wheel_width", answer.KeyPackSize, answer.KeyVehicleTray, answer.KeyVehicleMotorSeat,
		answer.KeyVehicleMotorRoom, answer.KeyVehicleAxle, answer.KeyMotorsCanDiameter, answer.KeyMotorsCanLength, answer.KeyGearsBore:
		return true
	}
	return f.Table == "charger" || f.Table == "storage"
}

// value reads a quantity.
func (d *decoder) value(target *Value, f *field, path string, value any, line int) {
	text, want := "", ""
	switch v := value.(type) {
	case string:
		text = v
	case int64:
		text = strconv.FormatInt(v, 10)
	case float64:
		text = number(v)
	default:
		want = fmt.Sprintf("a quantity in quotes: %s", f.Quoted())
	}
	_, isText := value.(string)
	if n, isFloat := value.(float64); isFloat && (math.IsNaN(n) || math.IsInf(n, 0)) {
		want = fmt.Sprintf("a number, such as %s", f.Quoted())
	} else if want == "" && !isText && !f.kind.Bare() {
		want = fmt.Sprintf("the unit with it, in quotes: %q", f.Example)
	}
	if want != "" {
		d.fault(line, path, readText(value), want)
		return
	}
	amount := text
	if f.Path() == answer.KeyMeasuredMotorTouch {
		amount = strings.TrimPrefix(fold(text), "can hold ")
	}
	r, written, err := quantity.ParseLike(f.kind, amount, f.low, f.high, f.Example)
	if err != nil {
		var qe *quantity.Error
		if errors.As(err, &qe) {
			want = qe.Want
		}
		if class := wantNotClass(f, text); class != "" {
			want = class
		}
		if other := registry.Get().forUnit(f, text); other != "" {
			want = "it under " + other + ", or " + want
		}
		d.fault(line, path, strings.TrimSpace(readText(value)), want)
		return
	}
	*target = Value{Range: r, Given: true, Text: text, Key: path, Line: line, System: written.System, read: r}
}

// number writes a TOML number so that no thousands mark can be seen in it.
func number(v float64) string {
	s := strconv.FormatFloat(v, 'f', -1, 64)
	if i := strings.IndexByte(s, '.'); i >= 0 && len(s)-i == 4 {
		s += "0"
	}
	return s
}

// longestText is the longest free text of a setup file, in bytes.
const longestText = 200

// word reads a text.
func (d *decoder) word(target *Word, f *field, path string, value any, line int) {
	text, ok := value.(string)
	if n, isInt := value.(int64); isInt && f.What == "can" {
		text, ok = strconv.FormatInt(n, 10), true // can = 550 is natural
	}
	text = strings.TrimSpace(text)
	if f.What == "can" {
		text = sizeAlone(text)
	}
	if f.Words != nil {
		if known, _ := spelled(f.Words, text); slices.Contains(f.Words, known) {
			text = known
		}
	}
	switch {
	case !ok && f.Words != nil, ok && f.Words != nil && !slices.Contains(f.Words, fold(text)):
		d.fault(line, path, readText(value), oneOf(f.Words))
	case !ok:
		d.fault(line, path, readText(value), fmt.Sprintf("text in quotes, such as %q", f.Example))
	case text == "" || len(text) > longestText || strings.ContainsFunc(text, unicode.IsControl):
		d.fault(line, path, readText(value), fmt.Sprintf("a line of at most %d characters, such as %q", longestText, f.Example))
	default:
		if f.Words != nil {
			text = fold(text)
		}
		said := Word{Text: text, Given: true, Key: path, Line: line, read: text}
		if _, right := said.Edges(); f.What == sizeKind && !right {
			d.fault(line, path, text, wantSize(f))
			return
		}
		*target = said
	}
}

// fold brings a word into the spelling of the lists.
func fold(s string) string { return strings.ToLower(strings.Join(strings.Fields(s), " ")) }

// oneOf lists the right words.
func oneOf(words []string) string {
	quoted := make([]string, len(words))
	for i, w := range words {
		quoted[i] = strconv.Quote(w)
	}
	if len(quoted) < 2 {
		return strings.Join(quoted, "")
	}
	return strings.Join(quoted[:len(quoted)-1], ", ") + " or " + quoted[len(quoted)-1]
}

// date reads a day, in quotes or as TOML's own date.
func (d *decoder) date(target *Date, f *field, path string, value any, line int) {
	text := ""
	switch v := value.(type) {
	case string:
		text = strings.TrimSpace(v)
	case time.Time:
		text = v.Format(time.DateOnly)
	}
	day, err := time.Parse(time.DateOnly, text)
	if err != nil || day.Year() < 1990 || day.Year() > 2200 {
		d.fault(line, path, readText(value), fmt.Sprintf("a day as year-month-day, such as %s", f.Example))
		return
	}
	*target = Date{Day: day, Given: true, Text: text, Key: path, Line: line, read: day}
}

// readText prints what stood in the file, shortly.
func readText(value any) string {
	switch v := value.(type) {
	case string:
		return v
	case int64:
		return strconv.FormatInt(v, 10)
	case float64:
		return strconv.FormatFloat(v, 'g', -1, 64)
	case bool:
		return strconv.FormatBool(v)
	case time.Time:
		return v.Format(time.DateTime)
	case map[string]any:
		return "a table"
	case []map[string]any:
		return "an array of tables"
	case []any:
		return "an array"
	}
	return "something else"
}
