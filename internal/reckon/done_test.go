package reckon_test

import (
	"context"
	"errors"
	"maps"
	"testing"
	"time"

	"example.org/packcheck/internal/reckon"
	"example.org/packcheck/setup"
)

// Whoever no longer waits for an answer gets the processor back within a draw, wherever
// the answer stands: at its draws, at weighing readings that contradict each other, at
// ways out.
func TestAnAnswerEndsWithItsCall(t *testing.T) {
	clash := swap()
	maps.Copy(clash, map[string]string{"original.measured.top_speed": "4.8 km/h", "original.measured.loaded_current": "7 A", "original.measured.pull_force": "200 N"})
	for name, values := range map[string]map[string]string{"labels": swap(), "readings": clash} {
		s, err := setup.Of(values)
		if err != nil {
			t.Fatal(err)
		}
		for _, wait := range []time.Duration{0, 30 * time.Millisecond, 300 * time.Millisecond} {
			ctx, cancel := context.WithTimeout(t.Context(), wait)
			begun := time.Now()
			_, err := reckon.Assess(s, reckon.Options{Draws: reckon.MostDraws / 8, Ways: true, Workers: 2, Context: ctx})
			cancel()
			// Making the points of so many draws takes a second; computing them
			// would take many.
			if took := time.Since(begun); !errors.Is(err, context.DeadlineExceeded) || took > wait+10*time.Second {
				t.Errorf("%s, cancelled after %v: %v after %v", name, wait, err, took)
			}
		}
	}
	s, err := setup.Of(swap())
	if err != nil {
		t.Fatal(err)
	}
	ctx, cancel := context.WithCancel(t.Context())
	_, err = reckon.Compare([]*setup.Setup{s, s}, reckon.Options{Draws: 64, Context: ctx})
	if cancel(); err != nil {
		t.Errorf("not cancelled: %v", err)
	}
	if _, err = reckon.Compare([]*setup.Setup{s, s}, reckon.Options{Draws: 64, Context: ctx}); !errors.Is(err, context.Canceled) {
		t.Errorf("side by side, cancelled: %v", err)
	}
}
