package packcheck

import (
	"slices"

	"example.org/packcheck/answer"
)

// limits are the figures that only say what a part stands, each with the end
// of its range at which it stands least. No computation moves with them, so no
// spread would ever find their bad end.
var limits = map[string]side{
	"controller.max_voltage":        atLow,
	"controller.continuous_current": atLow,
	"controller.peak_current":       atLow,
	"vehicle.weakest_part_voltage":  atLow,
	"vehicle.design_voltage":        atLow,
	"pack.max_current":              atLow,
	"wire.insulation":               atLow,
	"fuse.max_voltage":              atLow,
	"fuse.distance_from_pack":       atHigh,
}

// weakest are further figures at the end where they leave least room: thin
// wire, a large fuse, a slow or low cutoff, a thirsty board.
var weakest = map[string]side{
	"wire.gauge":                        atHigh,
	"wire.area":                         atLow,
	"fuse.rating":                       atHigh,
	"controller.converter_limit":        atLow,
	"controller.standby_current":        atHigh,
	"pack.self_discharge":               atHigh,
	"pack.health":                       atLow,
	"cutoff.pack.opens_at":              atLow,
	"cutoff.pack.delay":                 atHigh,
	"cutoff.pack.standby_current":       atHigh,
	"cutoff.module.opens_at":            atLow,
	"cutoff.module.delay":               atHigh,
	"cutoff.module.standby_current":     atHigh,
	"cutoff.controller.opens_at":        atLow,
	"cutoff.controller.delay":           atHigh,
	"cutoff.controller.standby_current": atHigh,
}

// set moves the figures of a list to their ends, as far as they are still at
// their likely value.
func (u unknowns) set(sides []side, list map[string]side) {
	for key, at := range list {
		if i, ok := u.index[key]; ok && sides[i] == atLikely {
			sides[i] = at
		}
	}
}

// weakCorners are two days on which every part is the weakest that it may be:
// a cold one and a hot one. None when nothing of that is unknown.
func weakCorners(u unknowns) [][]side {
	var out [][]side
	for _, at := range []side{atLow, atHigh} {
		sides := make([]side, len(u.figures))
		u.set(sides, limits)
		u.set(sides, weakest)
		u.set(sides, map[string]side{"outing.air": at, "pack.temperature": at})
		out = addCorner(out, sides)
	}
	return out
}

// doubts judges a setup where its unknowns fall badly: at the corners that do
// most harm, there with all limits at their least, and where every part is the
// weakest that it may be. Only the last are also judged on charging and on
// being forgotten.
func doubts(b, original *builder, u unknowns, s *spread) ([][]answer.Finding, error) {
	var out [][]answer.Finding
	for _, sides := range badCorners(s) {
		sides = slices.Clone(sides)
		u.set(sides, limits)
		v, err := look(b, original, u.pick(sides))
		if err != nil {
			return nil, err
		}
		fs, err := v.findings()
		if err != nil {
			return nil, err
		}
		out = append(out, fs)
	}
	if t := b.parts.Setup.Storage.Temperature; t.Given && !t.IsExact() {
		v, err := look(b, original, u.likely())
		if err != nil {
			return nil, err
		}
		for _, at := range []side{atLow, atHigh} {
			var fs gathered
			if _, err := storageAt(v, at, fs.add); err != nil {
				return nil, err
			}
			out = append(out, fs)
		}
	}
	for _, sides := range weakCorners(u) {
		v, err := look(b, original, u.pick(sides))
		if err != nil {
			return nil, err
		}
		fs, err := v.findings()
		if err != nil {
			return nil, err
		}
		if _, err := cutoffFigures(v, fs.add); err != nil {
			return nil, err
		}
		ch, err := chargingOf(v)
		if err != nil {
			return nil, err
		}
		fs.add(TopicCharge, ch.findings)
		out = append(out, fs)
	}
	return out, nil
}
