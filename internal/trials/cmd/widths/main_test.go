package main

import (
	"bytes"
	"strings"
	"testing"
)

// What was left open widens its range and is named; what was told is not.
func TestTheUnknownThatWidensARangeIsNamed(t *testing.T) {
	told := func(pack string) string {
		s := stock{volts: "12 V", label: "12 V 7 Ah", ground: "asphalt", also: pedal, motors: two, pack: pack}
		var out bytes.Buffer
		if err := tell(&out, "it", s.toml(), 256, 4); err != nil {
			t.Fatal(err)
		}
		_, line, _ := strings.Cut(out.String(), paths[0])
		line, _, _ = strings.Cut(line, "\n")
		return line
	}
	if line := told(""); !strings.Contains(line, "pack.health") {
		t.Errorf("a battery of any age: %s", line)
	}
	if line := told(`health = "90 %"`); strings.Contains(line, "pack.health") {
		t.Errorf("a battery of known health: %s", line)
	}
}
