package reckon

import (
	"maps"
	"slices"
	"strings"

	"example.org/packcheck/answer"
	"example.org/packcheck/setup"
)

// sets are all keys of a setup that the path sets, by key. What was measured and no longer
// is of the vehicle then stays as read on the battery that was, where a setup can say so.
func (w *path) sets(e *engine, s *setup.Setup) map[string]string {
	all := w.changes(s)
	if before := e.readBefore(s, all); before != nil {
		return w.keepingOriginal(s, before)
	}
	return all
}

// readBefore are some changes, and that today's battery is the original one, with what was
// measured of the vehicle: where this was made with it and nothing but the battery is
// changed. Nil where not. What was read of the battery alone goes with it.
func (e *engine) readBefore(s *setup.Setup, sets map[string]string) map[string]string {
	gone := e.outdated(s, sets)
	if !e.parts.AsMade || s.Original != nil || len(gone) == 0 {
		return nil
	}
	before := maps.Clone(sets)
	for key, text := range s.Values() {
		name, measured := strings.CutPrefix(key, "measured.")
		switch {
		case setup.OfOriginal(key):
			before["original."+key] = text
		case !measured || readOn(name).vehicle:
		case slices.Contains(gone, key):
			before[key] = ""
		default: // it stays one of today's
			return nil
		}
	}
	changed, err := s.With(before)
	if err != nil {
		return nil
	}
	if p, err := changed.Parts(); err != nil || !p.AsMade || p.Original.Measured == nil {
		return nil
	}
	return before
}

// changes are the keys that the path sets, and what keeps the original as it was.
func (w *path) changes(s *setup.Setup) map[string]string {
	all := maps.Clone(w.start)
	if all == nil {
		all = map[string]string{}
	}
	for _, st := range w.steps {
		maps.Copy(all, st.sets)
	}
	return w.keepingOriginal(s, all)
}

// keepingOriginal adds what keeps the original as it was: a table that it does
// not have is the same as today's, which the way out may change.
func (w *path) keepingOriginal(s *setup.Setup, sets map[string]string) map[string]string {
	today := s.Values()
	stays := func(key string) bool { text, is := sets[key]; return !is || text != "" }
	if !becomesOriginal(sets) && (s.Original == nil || !slices.ContainsFunc(under("original", today), stays)) { // it became today's
		return sets
	}
	for _, table := range []string{"controller", "wire", "fuse"} {
		own := "original." + table
		if len(under(own, today)) > 0 || len(under(table, sets)) == 0 {
			continue
		}
		sets[own] = setup.NothingTold
		for _, key := range under(table, today) {
			delete(sets, own)
			sets["original."+key] = today[key]
		}
	}
	return sets
}

// becomesOriginal reports whether a way makes today's battery the original one.
func becomesOriginal(sets map[string]string) bool {
	return slices.ContainsFunc(under("original.pack", sets), func(key string) bool { return sets[key] != "" })
}

// under are the keys of a table, itself included where it stands alone.
func under(table string, values map[string]string) []string {
	return slices.DeleteFunc(slices.Sorted(maps.Keys(values)), func(key string) bool {
		return key != table && !strings.HasPrefix(key, table+".")
	})
}

// outdated are the keys of what was measured that some changes could make otherwise, and
// that no longer is of the vehicle then. Only the draws know what it told. All else stays
// a reading of it: what was read too fast, too hot or opened is not put right by what
// cannot slow, cool or spare it.
func (e *engine) outdated(s *setup.Setup, sets map[string]string) []string {
	if e.parts.Measured == nil || becomesOriginal(sets) {
		return nil // or it was measured on the original battery
	}
	var out []string
	for key := range s.Values() {
		name, is := strings.CutPrefix(key, "measured.")
		if key == answer.KeyMeasuredTopSpeed && e.staysTooFast(s, sets) {
			continue
		}
		if is && slices.ContainsFunc(readOn(name).changedBy, func(table string) bool { return makesAnother(table, sets) }) {
			out = append(out, key)
		}
	}
	return out
}

// makesAnother reports whether some changes make a table or key of a vehicle another. A battery of
// which somebody looks up that it watches its cells is the one that was read.
func makesAnother(table string, sets map[string]string) bool {
	return slices.ContainsFunc(under(table, sets), func(key string) bool { return key != answer.KeyPackWatchesCells })
}

// staysTooFast reports whether what some changes leave of a battery and its converter cannot
// slow a vehicle that was read too fast.
func (e *engine) staysTooFast(s *setup.Setup, sets map[string]string) bool {
	if len(under("motors", sets)) > 0 || len(under("gears", sets)) > 0 {
		return false
	}
	changed, err := s.With(sets)
	if err != nil {
		return false
	}
	p, err := changed.Parts()
	return err == nil && e.parts.StaysTooFast(p)
}

// reads is what something measured tells of.
type reads struct {
	vehicle   bool     // it tells of a vehicle, whatever battery is in it now
	changedBy []string // tables and keys with which it would be another
}

// readOn is what a reading of that name tells of. A limit on the amps, which is well above those
// of driving, leaves speed and heat as they are; thicker wire, a fuse and a charger change
// nothing that is read.
func readOn(name string) reads {
	switch name {
	case "pull_force":
		return reads{vehicle: true}
	case "rest_voltage", "second_rest_voltage", "hours_rested":
		return reads{changedBy: []string{"pack"}}
	case "pack_temperature": // a weak cell or a loose joint is no less warm behind a converter
		return reads{changedBy: []string{"pack"}}
	case "fuse_rating", "fuse_seconds", "reset_seconds", "restored_by":
		return reads{changedBy: []string{"pack", "controller", "motors", "gears"}}
	case "blocked_current":
		return reads{true, []string{"pack", "controller", "motors", "gears"}}
	case "ride_time", "distance":
		return reads{true, []string{"pack", "controller", "motors", "gears", "cutoff"}}
	case "top_speed", "loaded_current", "motor_voltage":
		return reads{true, []string{"pack", "controller.converter_voltage", "motors", "gears"}}
	}
	return reads{changedBy: []string{"pack", "controller.converter_voltage", "motors", "gears"}}
}
