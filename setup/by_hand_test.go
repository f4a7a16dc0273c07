package setup_test

import (
	"errors"
	"io"
	"math"
	"strings"
	"testing"

	"example.org/packcheck/answer"
	"example.org/packcheck/setup"
)

// A field that a program set was checked by nobody: then there is no answer, and no
// panic either, but a fault that names the key and says how a setup is changed.
func TestASetupWhoseFieldsWereSetByHandIsAFault(t *testing.T) {
	values := map[string]string{
		"pack.label": "12 V 7 Ah", "rider.mass": "20 kg", "motors.can": "550", "vehicle.has_board": "true",
		"motors.no_load_speed": "15000 rpm", "measured.motor_touch": "can hold 3 s", "motors.count": "2", "original.pack.label": "12 V 12 Ah",
		"storage.from": "2026-10-15", "original.rider": setup.NothingTold,
	}
	for key, set := range map[string]func(*setup.Setup){
		"": func(*setup.Setup) {},
		"rider.mass": func(s *setup.Setup) {
			s.Rider.Mass = setup.Value{Range: answer.Exactly(-50), Given: true}
		},
		"load.current": func(s *setup.Setup) {
			s.Bench.Current = setup.Value{Range: answer.Exactly(math.NaN()), Given: true, Text: "9 A"}
		},
		"motors.count":        func(s *setup.Setup) { s.Motors.Count.Likely = 3 },
		"controller.kind":     func(s *setup.Setup) { s.Controller.Kind = setup.Word{Text: "magic", Given: true} },
		"original.pack.label": func(s *setup.Setup) { s.Original.Pack.Label.Text = "12 V 9 Ah" },
	} {
		s, err := setup.Of(values)
		if err != nil {
			t.Fatal(err)
		}
		set(s)
		for _, ask := range []func() error{
			func() error { _, err := s.Parts(); return err },
			func() error { _, err := s.World(); return err },
		} {
			faults, _ := errors.AsType[setup.Faults](ask())
			switch {
			case key == "" && len(faults) > 0:
				t.Errorf("a setup that nobody touched: %v", faults)
			case key != "" && (len(faults) != 1 || faults[0].Key != key || !strings.Contains(faults[0].Want, "Setup.With")):
				t.Errorf("%s: %v", key, faults)
			}
		}
	}
}

func TestNoSetupIsAnErrorAndNoPanic(t *testing.T) {
	var none *setup.Setup
	for name, ask := range map[string]func() error{
		"change": func() error { _, err := none.Change(setup.Changes{}); return err },
		"with":   func() error { _, err := none.With(map[string]string{"pack.label": "12 V"}); return err },
		"parts":  func() error { _, err := none.Parts(); return err },
		"world":  func() error { _, err := none.World(); return err },
		"write":  func() error { _, err := none.WriteTo(io.Discard); return err },
	} {
		if err := ask(); err == nil || !strings.Contains(err.Error(), "there is no setup") {
			t.Errorf("%s: %v", name, err)
		}
	}
	if len(none.Values()) > 0 || none.Gives("pack.label") || len(none.Changed(new(setup.Setup))) > 0 {
		t.Error("nothing says something")
	}
}
