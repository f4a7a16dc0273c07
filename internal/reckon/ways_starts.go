package reckon

import (
	"fmt"
	"maps"
	"slices"
	"strings"

	"example.org/packcheck/answer"
	"example.org/packcheck/charge"
	"example.org/packcheck/chemistry"
	"example.org/packcheck/setup"
)

// keepTitle is the way that begins from the battery that is asked about.
const keepTitle = "Keep this battery"

// starts lists what a way out may begin from: another battery, or the one that
// is asked about.
func (e *engine) starts(s *setup.Setup, a *answer.Assessment) []*path {
	var list []*path
	values := s.Values()
	v := e.parts.Vehicle
	if o := s.Original; o != nil && o.Pack.Given {
		sets := map[string]string{}
		for key, text := range values {
			if original, is := strings.CutPrefix(key, "original."); is && setup.OfPack(original) {
				sets[original] = text
				if !s.Measured.Given && !o.Measured.Given { // what was measured would be of the new one
					sets[key] = ""
				}
			}
		}
		title, was := fmt.Sprintf("A new battery of the old kind (%s)", o.Pack.Label.Text), e.parts.Original
		if was != nil && was.Pack.SeveralMeanings { // who buys it has to know which it was
			title += ", if that was " + was.Pack.Profile.Title
			sets["pack.chemistry"] = was.Pack.Profile.Name
		}
		w := anew(values, title, sets)
		if was != nil && was.Pack.Profile.Family == chemistry.LeadAcid {
			w.keepCharger(values, charge.PurposeFor(e.parts.Pack.Profile))
		}
		list = append(list, w)
	}
	if label, ok := blockFor(v.DesignV.Likely); ok && v.DesignV.Known && len(list) == 0 && (!e.parts.OnBlocks() || e.parts.Pack.LiquidAcid || e.parts.Pack.Starter) {
		w := anew(values, fmt.Sprintf("A sealed lead-acid battery, as such vehicles are sold with (%s)", label),
			map[string]string{"pack.chemistry": "agm", "pack.label": label})
		w.keepCharger(values, charge.PurposeFor(e.parts.Pack.Profile))
		list = append(list, w)
	}
	list = append(list, &path{title: keepTitle, start: map[string]string{}})
	if e.wearRead(a) && !restsBadly(a) && !wants(a, answer.FitPack) { // else to keep its kind puts a new one in its place
		list = append(list, e.renewing(a))
	}
	b := &e.parts.Pack
	unwatched := b.Phosphate() && !b.WatchesCells
	if label, cells, ok := phosphateFor(v.DesignV.Likely); ok && v.DesignV.Known && !(unwatched && b.CellsInSeries == cells) {
		sets := map[string]string{answer.KeyPackWatchesCells: "true", "pack.chemistry": "lifepo4", "pack.label": label}
		if e.parts.AsMade && (s.Original == nil || !s.Original.Pack.Given) { // what it was made with is the original then
			for key, text := range values {
				if setup.OfOriginal(key) {
					sets["original."+key] = text
				}
			}
		}
		list = append(list, anew(values, fmt.Sprintf("An iron-phosphate battery (LiFePO4, %s) that switches itself off in time, and its own charger", label), sets))
	}
	if unwatched && !b.MayWatch {
		sets := map[string]string{answer.KeyPackWatchesCells: "true", "pack.age": newAge, "pack.health": "", "pack.charge": ""}
		maps.Copy(sets, without(values, "cutoff.pack")) // those of the old one go with it
		list = append(list, &path{title: "A new battery of the same kind, with electronics inside that watch every cell and switch it off in time", start: sets})
	}
	return list
}

// batteryTables are those of what comes and goes with a battery.
var batteryTables = [...]string{"pack", "charger", "cutoff.pack"}

// anew begins from another battery, a new one, with some keys beside it.
func anew(values map[string]string, title string, sets map[string]string) *path {
	start := without(values, batteryTables[:]...)
	for key, text := range values {
		if setup.OfJack(key, text) {
			delete(start, key)
		}
	}
	maps.Copy(start, sets)
	start["pack.age"] = newAge
	w := &path{title: title, start: start}
	if s := leftoversStep(values); s.text != "" {
		w.steps = []step{s}
	}
	return w
}

// keepCharger leaves the charger that is there for a lead-acid battery, which comes without
// one: it is judged on that, and where it is wrong a step names the right one. It did not
// come with that battery, but was made for the one that it came with.
func (w *path) keepCharger(values map[string]string, cameFor charge.Purpose) {
	told := values[answer.KeyChargerMadeFor] != "" || values[answer.KeyChargerLabel] != ""
	if values[answer.KeyChargerCameWithPack] == "true" && !told && cameFor != charge.ForLeadAcid {
		w.start[answer.KeyChargerMadeFor] = cameFor.Key()
	}
	for key := range values {
		if strings.HasPrefix(key, "charger.") && key != answer.KeyChargerCameWithPack && !(key == answer.KeyChargerJack && values[key] != "vehicle") {
			delete(w.start, key)
		}
	}
}

// without takes the keys of some tables, and single ones, out of a setup.
func without(values map[string]string, tables ...string) map[string]string {
	out := map[string]string{}
	for key := range values {
		if slices.ContainsFunc(tables, func(table string) bool { return key == table || strings.HasPrefix(key, table+".") }) {
			out[key] = ""
		}
	}
	return out
}

// blockFor returns a lead-acid battery for a vehicle of so many volts. Sizes as
// sold; common practice, no published source.
func blockFor(designV float64) (label string, ok bool) {
	switch {
	case designV > 5 && designV < 7:
		return "6 V 4.5 Ah", true
	case designV > 11 && designV < 13:
		return "12 V 7 Ah", true
	case designV > 23 && designV < 25:
		return "24 V 7 Ah", true
	}
	return "", false
}

// phosphateFor returns an iron-phosphate battery for a vehicle of so many volts, and
// its cells in series. Sizes as sold; common practice, no published source.
func phosphateFor(designV float64) (label string, cells int, ok bool) {
	switch {
	case designV > 11 && designV < 13:
		return "12.8 V 10 Ah", 4, true
	case designV > 23 && designV < 25:
		return "25.6 V 10 Ah", 8, true
	}
	return "", 0, false
}
