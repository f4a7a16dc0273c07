package setup

import (
	"fmt"
	"slices"
	"strings"

	"example.org/packcheck/internal/quantity"
)

// unknown notes a key or table that a setup does not have, with the nearest one
// that it has. It returns the name of that, to be read on as what was meant: what
// else is wrong with it is told in the same round.
func (d *decoder) unknown(p part, key string, value any, line int) (meant string) {
	_, isTable := value.(map[string]any)
	if _, isArray := value.([]map[string]any); isArray {
		isTable = true
	}
	path := p.path(key)
	if isTable {
		d.fault(line, path, "["+path+"]", wantTable(p, key))
		return meantTable(p, key)
	}
	d.fault(line, path, key, wantKey(p, key, readText(value)))
	meant, _ = meantIn(p, key)
	return meant
}

// meantTable is the table that another name stands for, as it is called in p; empty
// when none is near.
func meantTable(p part, key string) string {
	var names []string
	for _, t := range registry.Get().tables {
		if rest, is := strings.CutPrefix(t.name, strings.TrimPrefix(p.name+".", ".")); is {
			names = append(names, rest)
		}
	}
	if p.name == "" && p.prefix == "" {
		names = append(names, originalTable)
	}
	if near := nearest(key, names); near != "" || p.name != "" {
		return near
	}
	return otherName(key)
}

// meantIn is the key of p that another name stands for, and what has to be said of
// it; empty when none is near.
func meantIn(p part, key string) (name, why string) {
	if name, why = meantKey(p.name, key); name != "" {
		return name, why
	}
	var here []string
	for _, f := range registry.Get().fields {
		if f.Table == p.name {
			here = append(here, f.Name)
		}
	}
	return nearest(key, here), ""
}

// wantTable says which table was probably meant.
func wantTable(p part, key string) string {
	var names []string
	for _, t := range Tables() {
		if p.name == "" || strings.HasPrefix(t.Name, p.name+".") {
			names = append(names, p.prefix+t.Name)
		}
	}
	if p.name == "" && p.prefix == "" {
		names = append(names, originalTable)
	}
	if meant := meantTable(p, key); meant != "" {
		return fmt.Sprintf("[%s]", p.path(meant))
	}
	if len(names) == 0 {
		return fmt.Sprintf("keys only in [%s]", p.prefix+p.name)
	}
	return "one of [" + strings.Join(names, "], [") + "]"
}

// wantKey says which key was probably meant: the nearest of its own table, or
// the table where such a key belongs.
func wantKey(p part, key, text string) string {
	var here, elsewhere []string
	for _, f := range registry.Get().fields {
		switch {
		case f.Table == p.name:
			here = append(here, f.Name)
		case f.Name == key:
			elsewhere = append(elsewhere, p.prefix+f.Table)
		}
	}
	if meant, why := meantIn(p, key); meant != "" {
		if in := p.tablesWith(meant); p.name == "" && !p.has(meant) {
			return fmt.Sprintf("%q in [%s]%s", meant, strings.Join(in, "] or ["), why)
		}
		return fmt.Sprintf("%q%s", meant, why)
	}
	if len(elsewhere) > 0 {
		return "this key in [" + strings.Join(elsewhere, "] or [") + "]"
	}
	if p.name == "" {
		var tables []string
		for _, t := range Tables() {
			tables = append(tables, t.Name)
		}
		if slices.Contains(tables, key) {
			if name := likelyKey(key, text); name != "" {
				return fmt.Sprintf("a key of the table [%s], such as %s.%s", key, p.path(key), name)
			}
		}
		if near := nearest(key, tables); near != "" {
			return fmt.Sprintf("the table [%s]", near)
		}
		return "a table, such as [pack], above it"
	}
	return "a key of this table: " + strings.Join(here, ", ")
}

// tablesWith are the tables that have a key of a name.
func (p part) tablesWith(name string) []string {
	var in []string
	for _, f := range registry.Get().fields {
		if f.Name == name && f.Table != "" {
			in = append(in, p.prefix+f.Table)
		}
	}
	return in
}

// likelyKey is the key of a table that a text was probably meant for: the first
// quantity that it can be, or else the label.
func likelyKey(table, text string) string {
	for _, f := range registry.Get().fields {
		if f.Table != table || f.kind == quantity.NoKind {
			continue
		}
		if _, _, err := quantity.ParseIn(f.kind, text, f.low, f.high); err == nil {
			return f.Name
		}
	}
	for _, name := range []string{"label", "class", "form"} {
		if registry.Get().field(table, name) != nil {
			return name
		}
	}
	return ""
}

// otherName returns the table that goes by another everyday name.
func otherName(name string) string {
	switch strings.ToLower(name) {
	case "battery", "batteries", "cells", "batery":
		return "pack"
	case "child", "driver", "passenger":
		return "rider"
	case "car", "tractor", "toy":
		return "vehicle"
	case "wiring", "cable", "cables":
		return "wire"
	case "breaker":
		return "fuse"
	case "board", "switch":
		return "controller"
	}
	return ""
}

// nearest returns the name that a misspelt one is nearest to, empty when none
// is near. Of several equally near ones the first in the alphabet wins.
func nearest(word string, names []string) string {
	if len(word) > 64 {
		return ""
	}
	best, least := "", 1+len(word)/3
	for _, name := range slices.Sorted(slices.Values(names)) {
		if d := distance(strings.ToLower(word), name); d < least || best == "" && d == least {
			best, least = name, d
		}
	}
	return best
}

// distance counts the letters to add, drop, change or swap with their neighbour
// to turn a into b (optimal string alignment).
func distance(a, b string) int {
	before, last, row := make([]int, len(b)+1), make([]int, len(b)+1), make([]int, len(b)+1)
	for j := range last {
		last[j] = j
	}
	for i := 1; i <= len(a); i++ {
		row[0] = i
		for j := 1; j <= len(b); j++ {
			change := 1
			if a[i-1] == b[j-1] {
				change = 0
			}
			row[j] = min(last[j]+1, row[j-1]+1, last[j-1]+change)
			if i > 1 && j > 1 && a[i-1] == b[j-2] && a[i-2] == b[j-1] {
				row[j] = min(row[j], before[j-2]+1)
			}
		}
		before, last, row = last, row, before
	}
	return last[len(b)]
}
