package setup

import (
	"fmt"
	"slices"
	"strings"

	"example.org/packcheck/answer"
	"example.org/packcheck/battery"
	"example.org/packcheck/internal/quantity"
)

// swapPack takes out of a setup's keys what belongs to its own battery, and
// returns the keys that nothing stands for any more.
func (s *Setup) swapPack(all map[string]entry, take func(string)) (left []string) {
	if !s.Pack.Given {
		return nil
	}
	asMade := s.ownIsOriginal()
	if asMade {
		for path, e := range all {
			if OfOriginal(path) {
				all[originalPrefix+path] = e
			}
		}
	}
	// With an original battery, what was measured is of that one, unless it has
	// readings of its own.
	o := s.Original
	readOnOwn := !asMade && (o == nil || !o.Pack.Given) || o != nil && o.Measured.Given
	for path, e := range all {
		switch {
		case OfJack(path, e.text):
		case OfPack(path):
			if !asMade || strings.HasPrefix(path, "charger.") {
				left = append(left, path)
			}
		case readOnOwn && strings.HasPrefix(path, "measured.") && path != "measured.pull_force":
			left = append(left, path)
		}
	}
	for path, e := range all {
		if OfPack(path) && !OfJack(path, e.text) {
			take(path)
		}
	}
	for _, path := range left {
		take(path)
	}
	slices.Sort(left)
	return left
}

// OfPack reports whether a key belongs to the battery that is asked about.
func OfPack(path string) bool {
	return strings.HasPrefix(path, "pack.") || strings.HasPrefix(path, "cutoff.pack.") || strings.HasPrefix(path, "charger.")
}

// OfJack reports whether what is told of charging is told of the vehicle, whatever battery
// and charger it has: that it is charged through its jack, and what hangs on that.
func OfJack(path, text string) bool {
	switch path {
	case answer.KeyChargerJack:
		return text == "vehicle"
	case answer.KeyChargerJackPolarity, answer.KeyChargerBlocksDriving:
		return true
	}
	return false
}

// OfOriginal reports whether a key of the battery that a vehicle was made with stays one of
// its original when another battery takes its place: all but the charger, and the size of
// the pack, which tells nothing of the original.
func OfOriginal(path string) bool {
	return OfPack(path) && !strings.HasPrefix(path, "charger.") && path != answer.KeyPackSize
}

// ownIsOriginal reports whether the setup's own battery is the one that the
// vehicle was made with.
func (s *Setup) ownIsOriginal() bool {
	if s.Original != nil {
		return !s.Original.Pack.Given // then the original has the same
	}
	p, err := s.Parts()
	return err == nil && p.AsMade
}

// packTold notes a label that does not tell which battery is meant.
func (d *decoder) packTold(c Changes) {
	if c.Set["pack.chemistry"] != "" || c.Set["pack.label"] != "" {
		return
	}
	l, err := battery.ParseLabel(c.Pack, "")
	if err != nil {
		return // told where the label is looked up
	}
	var kinds []string
	for _, r := range append([]battery.Reading{{Chemistry: l.Chemistry, CellsInSeries: l.CellsInSeries}}, l.Others...) {
		text := fmt.Sprintf("%q (%s)", strings.TrimSpace(c.Pack)+" "+r.Chemistry, quantity.Cells(r.CellsInSeries))
		if r.Chemistry != "" && !slices.Contains(kinds, text) {
			kinds = append(kinds, text)
		}
	}
	if l.Sure == battery.Guess && len(kinds) != 1 {
		want := "the kind of battery behind it, which the label does not tell"
		if len(kinds) > 0 {
			want += ": " + strings.Join(kinds[:len(kinds)-1], ", ") + " or " + kinds[len(kinds)-1]
		}
		d.fault(afterFile, "pack.label", c.Pack, want)
	}
}
