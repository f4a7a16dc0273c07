package setup_test

import (
	"errors"
	"maps"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"example.org/packcheck/setup"
)

// What a file says and what a map says is one setup.
func TestAMapOfKeysIsTheSameSetupAsItsFile(t *testing.T) {
	for _, name := range []string{"tractor-tool-pack", "tractor-done-properly", "two-seater-tired-blocks"} {
		file, err := setup.Load("../examples/" + name + ".toml")
		if err != nil {
			t.Fatal(err)
		}
		of, err := setup.Of(file.Values())
		if err != nil {
			t.Errorf("%s: %v", name, err)
			continue
		}
		if d := cmp.Diff(file.Values(), of.Values()); d != "" {
			t.Errorf("%s (-file +map)\n%s", name, d)
		}
		a, errA := file.Parts()
		b, errB := of.Parts()
		if errA != nil || errB != nil {
			t.Fatal(errA, errB)
		}
		var as, bs []string
		for _, f := range a.Figures() {
			as = append(as, f.Key+" "+f.String())
		}
		for _, f := range b.Figures() {
			bs = append(bs, f.Key+" "+f.String())
		}
		if d := cmp.Diff(as, bs); d != "" {
			t.Errorf("%s: unknowns (-file +map)\n%s", name, d)
		}
	}
}

func TestAMapIsCheckedLikeAFileAndAllAtOnce(t *testing.T) {
	_, err := setup.Of(map[string]string{
		"rider.mass": "-5 kg", "pack.label": "20 V max 5 Ah", "pack.colour": "red", "wheels": "4", "vehicle.has_board": "perhaps", "fuze.rating": "20 A",
	})
	var faults setup.Faults
	if !errors.As(err, &faults) {
		t.Fatalf("got %v, want faults", err)
	}
	var keys []string
	for _, f := range faults {
		keys = append(keys, f.Key)
	}
	want := []string{"fuze.rating", "pack.colour", "rider.mass", "vehicle.has_board", "wheels"}
	if d := cmp.Diff(want, keys); d != "" {
		t.Errorf("(-want +got)\n%s\n%v", d, err)
	}
}

// Only With takes keys out: what a map gives must say something, as in a file.
func TestAnEmptyTextIsAFaultInAMap(t *testing.T) {
	var faults setup.Faults
	if _, err := setup.Of(map[string]string{"pack.label": "12 V 7 Ah", "rider.mass": ""}); !errors.As(err, &faults) || faults[0].Key != "rider.mass" {
		t.Errorf("got %v, want a fault of rider.mass", err)
	}
}

func TestWithSetsAndTakesOutKeys(t *testing.T) {
	s, err := setup.Of(map[string]string{"pack.label": "20 V max 5 Ah", "fuse.rating": "20 A"})
	if err != nil {
		t.Fatal(err)
	}
	with, err := s.With(map[string]string{"fuse.rating": "", "pack.label": "18 V 2 Ah", "original.pack.label": "12 V 7 Ah"})
	if err != nil {
		t.Fatal(err)
	}
	if want := (map[string]string{"pack.label": "18 V 2 Ah", "original.pack.label": "12 V 7 Ah"}); !maps.Equal(with.Values(), want) {
		t.Errorf("got %v, want %v", with.Values(), want)
	}
	if _, gone := s.Values()["original.pack.label"]; gone || s.Values()["fuse.rating"] != "20 A" {
		t.Error("the setup itself was changed")
	}
}

func TestAWrittenSetupReadsBackAsItself(t *testing.T) {
	for _, name := range []string{"tractor-tool-pack", "tractor-done-properly", "two-seater-tired-blocks"} {
		s, err := setup.Load("../examples/" + name + ".toml")
		if err != nil {
			t.Fatal(err)
		}
		odd, err := s.With(map[string]string{"title": `quotes " and \ and ü`, "cutoff.controller.opens_at": "15 V", "original.fuse.rating": "10 A"})
		if err != nil {
			t.Fatal(err)
		}
		for _, one := range []*setup.Setup{s, odd} {
			var b strings.Builder
			if _, err := one.WriteTo(&b); err != nil {
				t.Fatal(err)
			}
			back, err := setup.Read(strings.NewReader(b.String()), name)
			if err != nil {
				t.Errorf("%s: %v\n%s", name, err, b.String())
				continue
			}
			if changed := one.Changed(back); len(changed) > 0 {
				t.Errorf("%s: %v came back otherwise", name, changed)
			}
		}
	}
}

// An original with some controller of its own is not one with today's.
func TestATableThatSaysNothingStaysATable(t *testing.T) {
	s, err := setup.Read(strings.NewReader("[pack]\nlabel = \"12 V 7 Ah\"\n[wire]\ngauge = \"12 AWG\"\n[original.pack]\nlabel = \"12 V 9 Ah\"\n[original.wire]\n"), "x")
	if err != nil {
		t.Fatal(err)
	}
	if got := s.Values()["original.wire"]; got != setup.NothingTold {
		t.Errorf("stands as %q, want %q", got, setup.NothingTold)
	}
	var file strings.Builder
	if _, err := s.WriteTo(&file); err != nil {
		t.Fatal(err)
	}
	again, err := setup.Read(strings.NewReader(file.String()), "x")
	if err != nil {
		t.Fatal(err)
	}
	of, err := setup.Of(s.Values())
	if err != nil {
		t.Fatal(err)
	}
	for name, other := range map[string]*setup.Setup{"written": again, "of its values": of} {
		if !other.Original.Wire.Given {
			t.Errorf("%s: the original has today's wire\n%s", name, file.String())
		}
	}
}
