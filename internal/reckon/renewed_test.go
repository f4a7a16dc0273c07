package reckon_test

import (
	"maps"
	"slices"
	"strings"
	"testing"

	"example.org/packcheck/answer"
	"example.org/packcheck/charge"
	"example.org/packcheck/internal/judge"
	"example.org/packcheck/internal/reckon"
	"example.org/packcheck/setup"
)

// timed is a 12 V tractor as it was made, of which little is told.
func timed(more map[string]string) map[string]string {
	values := map[string]string{
		"rider.age": "4 years", "vehicle.design_voltage": "12 V", "motors.count": "2", "motors.can": "550", "pack.chemistry": "agm", "pack.label": "12 V 7 Ah",
	}
	maps.Copy(values, more)
	return values
}

// What a worn block is told to hold is that of most vehicles that last so long: 4 of some
// forty minutes are no two thirds, though one vehicle of 256 has that.
func TestWhatATimedBlockHoldsGoesWithItsMinutes(t *testing.T) {
	for _, tt := range []struct {
		time        string
		least, most float64 // of what it held when new; its minutes are 3 to 10 % and 15 to 25 % of those when new, and amps ask less of an old one
	}{
		{"4 min", 0.03, 0.2},
		{"12 min", 0.15, 0.45},
	} {
		a := someDraws(t, timed(map[string]string{"measured.ride_time": tt.time}), 512)
		i := slices.IndexFunc(a.Findings, func(f answer.Finding) bool { return f.Item == answer.Battery && f.Change == answer.FitPack })
		if i < 0 {
			t.Errorf("%s: a worn battery is not told", tt.time)
			continue
		}
		if f := a.Findings[i]; f.Found < tt.least || f.Found > tt.most || f.Level != answer.Watch || f.Share < 0.9 || f.Guess != "" {
			t.Errorf("%s: %v, %s (in a share of %.2f, a guess: %q)", tt.time, f.Level, f.Title, f.Share, f.Guess)
		}
	}
}

// What a block holds stays a guess where no reading tells it: by its age alone, by readings
// that cannot all be true, and in part of the vehicles only.
func TestWhatNoReadingTellsOfABlockIsAGuess(t *testing.T) {
	for _, tt := range []struct {
		name   string
		values map[string]string
	}{
		{"by its age", timed(map[string]string{"pack.age": "3 years"})},
		{"by its volts at rest", timed(map[string]string{"pack.age": "3 years", "measured.rest_voltage": "12.8 V", "measured.hours_rested": "12 h"})},
		{"10 minutes, and 3 km", timed(map[string]string{"pack.age": "3 years", "measured.ride_time": "10 min", "measured.distance": "3 km"})},
		{"volts that hold", timed(map[string]string{"measured.loaded_voltage": "11.9 V"})},
	} {
		a := someDraws(t, tt.values, 256)
		i := slices.IndexFunc(a.Findings, func(f answer.Finding) bool { return f.Code == judge.CodePackWorn })
		if i < 0 {
			t.Errorf("%s: a worn battery is not told", tt.name)
			continue
		}
		if f := a.Findings[i]; f.Guess != answer.KeyPackHealth || f.Level != answer.Watch {
			t.Errorf("%s: %v, %s (a guess: %q)", tt.name, f.Level, f.Title, f.Guess)
		}
	}
}

// A block that was timed, or whose volts were read under load, and that gives clearly less than
// a new one is told what a new one gives, though all of it is only to be watched; one that does
// not is not, and nobody sells one to whom no reading told anything.
func TestATimedBlockIsSetBesideANewOne(t *testing.T) {
	for _, tt := range []struct {
		name   string
		values map[string]string
		ways   int
	}{
		{"4 minutes", timed(map[string]string{"measured.ride_time": "4 min", "vehicle.tray": "155 x 70 x 100 mm"}), 1},
		{"12 minutes of a worn one", timed(map[string]string{"measured.ride_time": "12 min", "pack.age": "worn"}), 1},
		{"volts that fall far under 9 A", timed(map[string]string{"measured.rest_voltage": "12.8 V", "measured.hours_rested": "12 h", "measured.loaded_voltage": "9 V", "measured.loaded_current": "9 A"}), 1},
		{"volts that hold under 9 A", timed(map[string]string{"measured.rest_voltage": "12.8 V", "measured.hours_rested": "12 h", "measured.loaded_voltage": "12.1 V", "measured.loaded_current": "9 A"}), 0},
		{"as long as when new", timed(map[string]string{"measured.ride_time": "50 min"}), 0},
		{"called worn, and not timed", timed(map[string]string{"pack.age": "worn"}), 0},
	} {
		s, err := setup.Of(tt.values)
		if err != nil {
			t.Fatal(err)
		}
		a, err := reckon.Assess(s, reckon.Options{Draws: 256, Ways: true})
		if err != nil {
			t.Fatal(err)
		}
		if a.Verdict != answer.Watch || len(a.Ways) != tt.ways {
			t.Errorf("%s: %v, %d ways", tt.name, a.Verdict, len(a.Ways))
			continue
		}
		if tt.ways == 0 {
			continue
		}
		w := a.Ways[0]
		if w.PedalMin.Likely < 1.5*a.Ride.PedalMin || w.PedalMin.Low < a.Ride.PedalMin || w.Verdict > answer.Watch || len(w.Steps) > 0 || w.Values()["pack.age"] != "new" {
			t.Errorf("%s: %.0f min today, with %+v", tt.name, a.Ride.PedalMin, w)
		}
		if tray := tt.values["vehicle.tray"]; (tray != "") != strings.Contains(w.Title, "must fit "+tray) { // what is bought goes into it
			t.Errorf("%s: a tray of %q, and %q", tt.name, tray, w.Title)
		}
		if strings.Contains(a.Headline[2], "way A") || strings.Contains(a.Headline[2], "the ways") { // nothing has to be put right
			t.Errorf("%s: %q", tt.name, a.Headline[2])
		}
	}
}

// So is it where something else has to be put right first: who moves a fuse is told what the worn
// block beside it costs.
func TestATimedBlockIsSetBesideANewOneWhatElseIsWrong(t *testing.T) {
	far := map[string]string{"fuse.rating": "15 A", "fuse.distance_from_pack": "40 cm"}
	for _, tt := range []struct {
		name  string
		more  map[string]string
		title string // of the way with a new one, how it begins; empty = there is none
	}{
		{"12 minutes", map[string]string{"measured.ride_time": "12 min"}, "A new battery of the same kind"},
		{"as long as when new", map[string]string{"measured.ride_time": "50 min"}, ""},
		{"rests badly as well", map[string]string{"measured.ride_time": "12 min", "measured.rest_voltage": "9.5 V"}, "Keep this kind of battery"},
	} {
		values := timed(far)
		maps.Copy(values, tt.more)
		s, err := setup.Of(values)
		if err != nil {
			t.Fatal(err)
		}
		a, err := reckon.Assess(s, reckon.Options{Draws: 256, Ways: true})
		if err != nil {
			t.Fatal(err)
		}
		var anew []string
		for _, w := range a.Ways {
			if v := w.Values(); v["pack.age"] == "new" && v["pack.label"] == "" { // of the label that is there
				anew = append(anew, w.Title)
			}
		}
		if a.Verdict != answer.FixFirst || len(anew) > 1 || (len(anew) == 1) != (tt.title != "") || len(anew) == 1 && !strings.HasPrefix(anew[0], tt.title) {
			t.Errorf("%s: %v, with a new one %q, want %q", tt.name, a.Verdict, anew, tt.title)
		}
	}
}

// A place of -15 to 5 C is once as cold as -15 C, whatever it is on most days: a block that
// reads an eighth full may freeze there in every vehicle.
func TestTheColdestNightFreezesABlock(t *testing.T) {
	for place, share := range map[string]float64{"-15 to 5 C": 0.9, "-4 to 5 C": 0} {
		a := someDraws(t, timed(map[string]string{
			"measured.rest_voltage": "11.9 V", "measured.hours_rested": "48 h",
			"storage.from": "2026-11-01", "storage.until": "2027-04-01", "storage.temperature": place, "storage.connected": "false",
		}), 256)
		got := 0.0
		for _, f := range a.Findings {
			if f.Code == charge.CodeStoredMayFreeze {
				got = f.Share
			}
		}
		if got < share || share == 0 && got > 0 {
			t.Errorf("%s: it may freeze in a share of %.2f, want %g", place, got, share)
		}
	}
}
