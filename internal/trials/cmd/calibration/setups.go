package main

import (
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"strings"
)

// subject is a setup whose world hides the truths, and what is read of them, in
// the order in which readings are added.
type subject struct {
	name  string
	text  string // without readings, but for those that stay
	reads []string
	bench bool
}

// usual are the readings of one battery, the likeliest to be taken first.
var usual = [...]string{"ride_time", "top_speed", "loaded_current", "blocked_current", "pull_force", "loaded_voltage"}

const stockText = `
[rider]
mass = "20 kg"
[vehicle]
design_voltage = "12 V"
ground = "asphalt"
[motors]
count = 2
can = "550"
rated_voltage = "12 V"
[pack]
label = "12 V 7 Ah"
chemistry = "agm"
`

const benchText = `
[pack]
label = "12 V 7 Ah"
chemistry = "agm"
[load]
current = "3 A"
until = "10.5 V"
`

// subjects are the three examples, a stock 12 V vehicle by its labels and a
// bench discharge.
func subjects(examples string) ([]subject, error) {
	today := prefixed("measured.", usual[:]...)
	list := []subject{
		{name: "stock 12 V by labels", text: stockText, reads: today},
		{name: "bench discharge", text: benchText, reads: prefixed("measured.", "ride_time", "loaded_voltage"), bench: true},
	}
	for _, e := range []struct {
		file  string
		reads []string
	}{
		// Of the old battery and of the new one, both in the same vehicle.
		{"tractor-tool-pack.toml", []string{
			"original.measured.ride_time", "original.measured.top_speed", "measured.loaded_current", "measured.top_speed",
			"measured.blocked_current", "original.measured.pull_force",
		}},
		{"tractor-done-properly.toml", today},
		{"two-seater-tired-blocks.toml", today},
	} {
		text, err := os.ReadFile(filepath.Join(examples, e.file))
		if err != nil {
			return nil, err
		}
		list = append(list, subject{name: strings.TrimSuffix(e.file, ".toml"), text: without(string(text), today), reads: e.reads})
	}
	return list, nil
}

func prefixed(prefix string, names ...string) []string {
	var out []string
	for _, n := range names {
		out = append(out, prefix+n)
	}
	return out
}

// without leaves out the readings that a trial takes itself.
func without(text string, keys []string) string {
	var out strings.Builder
	for line := range strings.Lines(text) {
		name, _, _ := strings.Cut(line, "=")
		if slices.Contains(keys, "measured."+strings.TrimSpace(name)) {
			continue
		}
		out.WriteString(line)
	}
	return out.String()
}

// with adds readings to the text: values by key. [measured] may be there already.
func (s *subject) with(keys, values []string) string {
	tables := map[string]string{}
	for i, key := range keys {
		at := strings.LastIndexByte(key, '.')
		tables[key[:at]] += fmt.Sprintf("%s = %q\n", key[at+1:], values[i])
	}
	text := s.text
	for _, table := range []string{"measured", "original.measured"} {
		lines, ok := tables[table]
		if !ok {
			continue
		}
		head := "\n[" + table + "]\n"
		if strings.Contains(text, head) {
			text = strings.Replace(text, head, head+lines, 1)
			continue
		}
		text += head + lines
	}
	return text
}

// placeholders are values that only say what is read. A truth shows its own
// current while its volts are read.
func (s *subject) placeholders(keys []string) string {
	some := map[string]string{
		"ride_time": "30 min", "top_speed": "5 km/h", "loaded_current": "6 A", "blocked_current": "40 A", "pull_force": "20 N", "loaded_voltage": "11 V",
	}
	values := make([]string, len(keys))
	for i, key := range keys {
		values[i] = some[key[strings.LastIndexByte(key, '.')+1:]]
	}
	return s.with(keys, values)
}
