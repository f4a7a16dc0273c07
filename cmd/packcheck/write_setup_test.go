package main

import (
	"encoding/json"
	"path/filepath"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"example.org/packcheck/answer"
	"example.org/packcheck/setup"
)

// promised is what a report says of a way out, and what the saved way out is
// answered with.
type promised struct {
	Verdict answer.Level
	Pedal   answer.Range
	Speed   answer.Range
}

// outcomeOf reads the same from a whole answer.
func outcomeOf(t *testing.T, args ...string) (promised, []answer.Way) {
	t.Helper()
	text, _ := judged(t, append(args, "--format", "json")...)
	var a answer.Assessment
	if err := json.Unmarshal([]byte(text), &a); err != nil {
		t.Fatal(err)
	}
	p := promised{Verdict: a.Verdict, Pedal: answer.Exactly(a.Ride.LastsPedalMin), Speed: answer.Exactly(a.Steady.SpeedKmh)}
	if r, ok := a.Ranges["ride.lasts_pedal_min"]; ok {
		p.Pedal = r
	}
	if r, ok := a.Ranges["steady.speed_kmh"]; ok {
		p.Speed = r
	}
	return p, a.Ways
}

// What a way out promises is what the saved file gives: verdict, minutes and
// speed, to the last digit of the JSON report while no more draws are taken than tell
// minutes and speed of a way. What was read on a battery that a way takes out is in the file
// as read on the original one.
func TestASavedWayOutGivesWhatWasPromised(t *testing.T) {
	for _, args := range [][]string{
		{"../../examples/tractor-tool-pack.toml"},
		{"../../examples/tractor-tool-pack.toml", "--set", "measured.top_speed=5 km/h"}, // of the original
		{"../../examples/two-seater-tired-blocks.toml"},
		{"../../examples/two-seater-tired-blocks.toml", "--set", "measured.top_speed=5 km/h"},
		{"../../examples/two-seater-tired-blocks.toml", "--set", "measured.ride_time="}, // of the battery that stays
	} {
		args = append(args, "--draws", "16")
		_, ways := outcomeOf(t, args...)
		if len(ways) == 0 {
			t.Errorf("%s: no way out", args)
		}
		for i := range ways {
			w, file := &ways[i], filepath.Join(t.TempDir(), "way.toml")
			judged(t, append(args, "--write-setup", file, "--way", string(rune('A'+i)))...)
			got, _ := outcomeOf(t, file, "--draws", "16")
			if want := (promised{w.Verdict, w.PedalMin, w.SpeedKmh}); w.Carried || !cmp.Equal(want, got) {
				t.Errorf("%s, %s: promised %v, saved %v", args, w.Title, want, got)
			}
		}
	}
}

// What was read on the old battery would be taken for a reading of the new one, and nobody
// told that the vehicle was made with the old one.
func TestASavedWayOutLeavesOutWhatWasReadBefore(t *testing.T) {
	file := filepath.Join(t.TempDir(), "way.toml")
	args := []string{"../../examples/tractor-tool-pack.toml", "--set", "original=", "--set", "measured.ride_time=30 min", "--draws", "16", "--write-setup", file, "--way", "A"}
	var out, errs strings.Builder
	if code := run(args, strings.NewReader(""), &out, &errs); code > exitFix || !strings.Contains(errs.String(), "measured before the change") {
		t.Fatalf("code %d, %s", code, errs.String())
	}
	s, err := read(file, nil, setup.Changes{})
	if err != nil {
		t.Fatal(err)
	}
	for key := range s.Values() {
		if strings.HasPrefix(key, "measured.") {
			t.Errorf("%s is still there", key)
		}
	}
}
