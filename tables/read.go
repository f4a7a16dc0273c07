package tables

import (
	"fmt"
	"maps"
	"slices"
	"strings"

	"example.org/packcheck/answer"
	"example.org/packcheck/internal/nesting"
	"github.com/BurntSushi/toml"
)

// reader takes one file apart into rows and collects what is wrong with it.
type reader struct {
	t      *Tables
	faults []placedFault
}

// kinds lists the tables that a file may hold and how each row is taken in.
func kinds() map[string]func(*Tables, *row) {
	return map[string]func(*Tables, *row){
		"figure":    readFigure,
		"conductor": readConductor,
		"gauge":     readGauge,
		"ampacity":  readAmpacity,
		"adiabatic": readInsulation,
		"fuse":      readFuse,
		"pulses":    readPulses,
		"joint":     readJoint,
		"motor":     readMotor,
		"ground":    readGround,
		"child":     readGrowth,
		"vehicle":   readVehicle,
		"thermal":   readThermal,
		"caution":   readCaution,
	}
}

// closedKinds are limits of laws and standards, picked without being named:
// a row of a user's own would change a judgement unseen.
func closedKinds() []string {
	return []string{"adiabatic", "ampacity", "conductor", "figure", "pulses"}
}

// deepest is what no honest table file comes near.
var deepest = nesting.Bounds{Depth: 16, KeyParts: 16, Values: 20000}

// add reads one file into t, closed to some kinds of table. After an error t
// is half-filled: callers drop it.
func (t *Tables) add(name, text string, closed []string) error {
	if problem, line := nesting.Check(text, deepest); problem != "" {
		return Faults{{File: name, Line: line, Read: problem, Want: "a table file, which nests a few deep"}}
	}
	var file map[string]any
	if _, err := toml.Decode(text, &file); err != nil {
		return syntaxFault(name, err)
	}
	r := &reader{t: t}
	r.readSources(file["source"])
	readers := kinds()
	for _, kind := range slices.Sorted(maps.Keys(file)) {
		if kind == "source" {
			continue
		}
		read, ok := readers[kind]
		if !ok {
			r.fault([]string{kind}, kind, "one of the tables source, "+strings.Join(slices.Sorted(maps.Keys(readers)), ", "))
			continue
		}
		if slices.Contains(closed, kind) {
			r.fault([]string{kind}, kind, "another table: this one holds limits of laws and standards, and rows of your own are not taken")
			continue
		}
		rows, ok := file[kind].(map[string]any)
		if !ok {
			r.fault([]string{kind}, file[kind], fmt.Sprintf("named rows, [%s.NAME]", kind))
			continue
		}
		for _, key := range slices.Sorted(maps.Keys(rows)) {
			columns, ok := rows[key].(map[string]any)
			if !ok {
				r.fault([]string{kind, key}, rows[key], fmt.Sprintf("a row, [%s.%s] with columns below it", kind, key))
				continue
			}
			one := newRow(r, []string{kind, key}, columns)
			read(t, one)
			one.done()
		}
	}
	if len(r.faults) > 0 {
		return placed(name, text, r.faults)
	}
	return nil
}

func (r *reader) fault(path []string, read any, want string) {
	r.faults = append(r.faults, placedFault{slices.Clone(path), shown(read), want})
}

// readSources takes in the [source.ID] tables. Two files of our own may draw
// on one source, then in the same words.
func (r *reader) readSources(table any) {
	if table == nil {
		return
	}
	rows, ok := table.(map[string]any)
	if !ok {
		r.fault([]string{"source"}, table, "named sources, [source.ID]")
		return
	}
	for _, id := range slices.Sorted(maps.Keys(rows)) {
		columns, ok := rows[id].(map[string]any)
		if !ok {
			r.fault([]string{"source", id}, rows[id], "a table with text and known")
			continue
		}
		one := newRow(r, []string{"source", id}, columns)
		s := answer.Source{ID: id, Text: one.text("text"), Known: one.text("known")}
		one.done()
		if had, ok := r.t.sources.Get(id); ok && had != s {
			one.fault("", id, "another name: this source is there already, in other words")
			continue
		}
		r.t.sources = r.t.sources.With(id, s)
	}
}
