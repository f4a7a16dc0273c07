package reckon

import (
	"maps"
	"slices"
	"strconv"
	"strings"

	"example.org/packcheck/internal/draws"
	"example.org/packcheck/setup"
)

// drawTogether draws the vehicles of several setups, the same ones wherever that
// is right: what two of them leave open under one key stands at the same place of
// its range in each draw. Setups of one lead share their draws; the first of them
// has those that it has by itself.
//
// Readings weigh the draws of the vehicle that they were read on. They count for
// another setup where that describes the same vehicle and has no others; the
// battery is the same only where all of its keys are.
func drawTogether(setups []*setup.Setup, engines []*engine, o Options) (all []*drawn, leads []int, err error) {
	all, leads = make([]*drawn, len(engines)), make([]int, len(engines))
	order := make([]int, len(engines))
	for i := range order {
		order[i] = i
	}
	slices.SortStableFunc(order, func(i, j int) int { // who was measured most leads
		return engines[j].measuredness() - engines[i].measuredness()
	})
	spaces := map[int]*space{}
	for n, i := range order {
		leads[i] = i
		for _, j := range order[:n] {
			if leads[j] == j && follows(setups[i], setups[j], engines[i], engines[j]) {
				leads[i] = j
				break
			}
		}
		if leads[i] == i {
			if all[i], err = engines[i].draw(o); err != nil {
				return nil, nil, err
			}
			spaces[i] = newSpace(all[i], engines[i].world.Keys())
			continue
		}
		spaces[leads[i]].add(i, keysIn(setups[i], setups[leads[i]], engines[i], engines[leads[i]], i))
	}
	for lead, sp := range spaces {
		sp.draw()
		for i, keys := range sp.followers {
			all[i] = sp.at(keys)
			all[i].runs = all[lead].runs
			if list := readings(engines[i].parts); len(list) > 0 {
				all[i].readings, all[i].conflict = all[lead].readings, all[lead].conflict
			}
		}
	}
	return all, leads, nil
}

// measuredness ranks by what was measured: on the battery that is asked about,
// then on the original one.
func (e *engine) measuredness() int {
	n := 0
	for _, r := range readings(e.parts) {
		n++
		if !r.original {
			n += 1000
		}
	}
	return n
}

// follows reports whether a setup may take the draws of another one.
func follows(s, lead *setup.Setup, e, led *engine) bool {
	mine, theirs := readings(e.parts), readings(led.parts)
	switch {
	case len(mine)+len(theirs) == 0:
		return true
	case !sameVehicle(s, lead):
		return false
	case len(mine) == 0:
		return true
	case maps.Equal(s.Values(), lead.Values()):
		return true
	}
	if readOnLeadsBattery(s, lead) {
		return true
	}
	onOriginal, ofPulling := true, true
	for _, r := range append(mine, theirs...) {
		onOriginal = onOriginal && r.original
	}
	for _, r := range mine { // the force to pull it along is no battery's
		same := slices.ContainsFunc(theirs, func(o reading) bool { return o.key == r.key && o.value.Text == r.value.Text })
		ofPulling = ofPulling && same && strings.HasSuffix(r.key, "measured.pull_force")
	}
	return ofPulling || onOriginal && sameTables(s, lead, "original", "measured")
}

// readOnLeadsBattery reports whether a setup has the battery of its lead as the
// original one, with what was measured on it.
func readOnLeadsBattery(s, lead *setup.Setup) bool {
	if s.Original == nil || lead.Original != nil || !sameTables(s, lead, "measured") {
		return false
	}
	had := map[string]string{}
	for key, text := range s.Values() {
		if was, is := strings.CutPrefix(key, "original."); is {
			had[was] = text
		}
	}
	return maps.Equal(had, valuesIn(lead, func(key string) bool {
		return strings.HasPrefix(key, "pack.") || strings.HasPrefix(key, "cutoff.pack.")
	}))
}

// valuesIn are the keys of a setup that pass.
func valuesIn(s *setup.Setup, pass func(string) bool) map[string]string {
	values := s.Values()
	maps.DeleteFunc(values, func(key, _ string) bool { return !pass(key) })
	return values
}

// ofBattery are the tables that go with a battery; whatever else is equal, it is
// the same vehicle.
var ofBattery = [...]string{"title", "pack", "cutoff", "charger", "measured", "original"}

// sameVehicle reports whether two setups describe one vehicle, whatever battery is
// in it.
func sameVehicle(a, b *setup.Setup) bool {
	pass := func(key string) bool { return !slices.Contains(ofBattery[:], tableOf(key)) }
	return maps.Equal(valuesIn(a, pass), valuesIn(b, pass))
}

// sameTables reports whether two setups say the same in some tables.
func sameTables(a, b *setup.Setup, tables ...string) bool {
	pass := func(key string) bool { return slices.Contains(tables, tableOf(key)) }
	return maps.Equal(valuesIn(a, pass), valuesIn(b, pass))
}

// tableOf is the first part of a key.
func tableOf(key string) string {
	table, _, _ := strings.Cut(key, ".")
	return table
}

// keysIn are the names under which the unknowns of a follower are looked for among
// those of its lead: what was read on another battery tells nothing of this one.
func keysIn(s, lead *setup.Setup, e, led *engine, number int) []string {
	keys := e.world.Keys()
	wasLeads := readOnLeadsBattery(s, lead)
	if led.parts.Measured == nil || sameTables(s, lead, "pack") {
		for i, key := range keys { // the battery that the vehicle was made with is one, and the vehicle with it
			if was, is := strings.CutPrefix(key, "original."); is && wasLeads {
				keys[i] = was
			}
		}
		return keys
	}
	for i, key := range keys {
		switch was, is := strings.CutPrefix(key, "original."); {
		case strings.HasPrefix(key, "pack."):
			keys[i] = key + " of " + strconv.Itoa(number)
		case is && wasLeads:
			keys[i] = was
		}
	}
	return keys
}

// space is the unknowns of some draws, and of all setups that take them over.
type space struct {
	lead      *drawn
	keys      []string
	place     map[string]int
	followers map[int][]string // their keys
	fresh     [][]float64      // what the lead does not have
}

func newSpace(lead *drawn, keys []string) *space {
	sp := &space{lead: lead, place: map[string]int{}, followers: map[int][]string{}}
	sp.put(keys)
	return sp
}

func (sp *space) has(key string) bool {
	_, is := sp.place[key]
	return is
}

func (sp *space) put(keys []string) {
	for _, key := range keys {
		if !sp.has(key) {
			sp.place[key] = len(sp.keys)
			sp.keys = append(sp.keys, key)
		}
	}
}

func (sp *space) add(number int, keys []string) {
	sp.put(keys)
	sp.followers[number] = keys
}

// draw makes what the lead does not have.
func (sp *space) draw() { sp.fresh = draws.Points(len(sp.lead.z), len(sp.keys)) }

// at is the draws of a follower.
func (sp *space) at(keys []string) *drawn {
	d := sp.lead
	out := &drawn{weight: d.weight, weighed: d.weighed}
	for k := range d.z {
		z := make([]float64, len(keys))
		for j, key := range keys {
			if at := sp.place[key]; at < len(d.z[k]) {
				z[j] = d.z[k][at]
			} else {
				z[j] = sp.fresh[k][at]
			}
		}
		out.z = append(out.z, z)
	}
	return out
}
