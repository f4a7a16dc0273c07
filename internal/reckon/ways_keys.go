package reckon

import (
	"maps"
	"slices"
	"strings"

	"example.org/packcheck/setup"
)

// sets are all keys of a setup that the path sets, by key.
func (w *path) sets(s *setup.Setup) map[string]string {
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

// outdated are the keys of what was measured that no longer is of the vehicle once
// some keys are set: all of the old battery, and all of driving. Only the draws
// know what it told.
func (e *engine) outdated(s *setup.Setup, sets map[string]string) []string {
	if e.parts.Measured == nil || becomesOriginal(sets) {
		return nil // or it was measured on the original battery
	}
	touches := func(tables ...string) bool {
		for key := range sets {
			if slices.Contains(tables, tableOf(key)) {
				return true
			}
		}
		return false
	}
	var out []string
	for key := range s.Values() {
		name, is := strings.CutPrefix(key, "measured.")
		ofRest := name == "rest_voltage" || name == "second_rest_voltage" || name == "hours_rested"
		switch {
		case !is, name == "pull_force":
		case touches("pack"), !ofRest && touches("cutoff", "controller", "wire", "fuse", "vehicle", "motors", "gears"):
			out = append(out, key)
		}
	}
	return out
}
