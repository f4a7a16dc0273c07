package trials_test

import (
	"fmt"
	"maps"
	"os"
	"slices"
	"strings"
	"testing"
)

// sheet is a setup as keys and values, the values as they stand in the file.
type sheet map[string]string

// with returns a copy with some keys set: pairs of full key and value. An empty
// value leaves the key out.
func (s sheet) with(pairs ...string) sheet {
	out := maps.Clone(s)
	for i := 0; i+1 < len(pairs); i += 2 {
		if pairs[i+1] == "" {
			delete(out, pairs[i])
			continue
		}
		out[pairs[i]] = pairs[i+1]
	}
	return out
}

// without returns a copy that lacks whole tables.
func (s sheet) without(names ...string) sheet {
	out := maps.Clone(s)
	for key := range s {
		for _, name := range names {
			if strings.HasPrefix(key, name+".") {
				delete(out, key)
			}
		}
	}
	return out
}

// toml writes the sheet as a file, tables in the order of their names.
func (s sheet) toml() string {
	tables := map[string][]string{}
	for _, key := range slices.Sorted(maps.Keys(s)) {
		table, name := "", key
		if i := strings.LastIndexByte(key, '.'); i >= 0 {
			table, name = key[:i], key[i+1:]
		}
		tables[table] = append(tables[table], name+" = "+s[key])
	}
	var b strings.Builder
	for _, table := range slices.Sorted(maps.Keys(tables)) {
		if table != "" {
			fmt.Fprintf(&b, "[%s]\n", table)
		}
		b.WriteString(strings.Join(tables[table], "\n") + "\n")
	}
	return b.String()
}

// sheetOf reads a plain setup file, one key a line.
func sheetOf(t testing.TB, file string) sheet {
	t.Helper()
	text, err := os.ReadFile(file)
	if err != nil {
		t.Fatal(err)
	}
	out, table := sheet{}, ""
	for line := range strings.Lines(string(text)) {
		line = strings.TrimSpace(line)
		switch key, value, pair := strings.Cut(line, "="); {
		case strings.HasPrefix(line, "#"), line == "":
		case strings.HasPrefix(line, "["):
			table = strings.Trim(line, "[]") + "."
		case pair:
			out[table+strings.TrimSpace(key)] = strings.TrimSpace(value)
		}
	}
	return out
}

// labelsOnly is a setup of which only labels are known.
func labelsOnly() sheet {
	return sheet{
		"rider.mass": `"20 kg"`, "vehicle.design_voltage": `"12 V"`, "vehicle.ground": `"asphalt"`,
		"motors.count": `2`, "motors.can": `"550"`, "motors.rated_voltage": `"12 V"`,
		"pack.label": `"12 V 7 Ah"`, "pack.chemistry": `"agm"`,
	}
}

func benchLoad() sheet {
	return sheet{"pack.label": `"12 V 7 Ah"`, "pack.chemistry": `"agm"`, "load.current": `"3 A"`}
}

// doneProperly is the setup that says everything: converter, current limit,
// soft start, cutoff, fuse.
func doneProperly(t testing.TB) sheet { return sheetOf(t, "../../examples/tractor-done-properly.toml") }

// onContacts is the same tractor with a plain pedal switch and nothing else
// between pack and motors but a cutoff.
func onContacts(t testing.TB) sheet {
	return doneProperly(t).without("fuse", "charger", "controller", "original.pack", "original.controller").
		with("controller.kind", `"contacts"`, "controller.resistance", `"10 mOhm"`)
}

// soundBlock is a 12 V tractor on a sealed block with everything that it needs.
func soundBlock(t testing.TB) sheet {
	t.Helper()
	return doneProperly(t).without("pack", "charger", "cutoff.module", "original.pack", "original.controller").with(
		"controller.converter_voltage", "", "controller.converter_limit", "", "controller.max_voltage", `"30 V"`,
		"pack.chemistry", `"agm"`, "pack.label", `"12 V 7 Ah"`, "pack.health", `"100 %"`, "pack.charge", `"100 %"`,
		"pack.temperature", `"20 C"`, "pack.resistance", `"25 mOhm"`, "pack.max_current", `"21 A"`, "pack.housing", `"bare cells"`, "pack.rate", `"20 h"`,
		"cutoff.module.opens_at", `"11 V"`, "cutoff.module.delay", `"2 s"`, "cutoff.module.standby_current", `"0 A"`,
		"charger.made_for", `"agm"`, "charger.voltage", `"14.7 V"`, "charger.current", `"1.5 A"`, "charger.stops", `"by itself"`,
		"charger.output", `"dc"`, "charger.polarity", `"centre positive"`, "charger.jack_polarity", `"centre positive"`, "charger.jack", `"terminals"`)
}
