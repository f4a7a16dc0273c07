package reckon

import (
	"slices"
	"strings"

	"example.org/packcheck/answer"
	"example.org/packcheck/setup"
)

// matter lists, for each thing that somebody can point at, the setup keys that
// must be told before it can be called fine. Of a row one key is enough.
var matter = []struct {
	item answer.Item
	keys [][]string
	ask  string // what to look at, where nothing is known
}{
	{answer.Battery, [][]string{{answer.KeyPackChemistry, answer.KeyPackLabel}, {answer.KeyPackCapacity, answer.KeyPackLabel}, {answer.KeyPackHealth, answer.KeyMeasuredRideTime}}, "how old it is, or how long it lasts"},
	{answer.Board, [][]string{{answer.KeyVehicleHasBoard, answer.KeyControllerKind}, {answer.KeyVehicleWeakestPartVoltage, answer.KeyControllerMaxVoltage}}, "whether there is a board, and the volts printed on its parts"},
	{answer.Pedal, [][]string{{answer.KeyControllerKind}}, "whether the pedal carries the motors' current"},
	{answer.Motors, [][]string{{answer.KeyMotorsCan, answer.KeyMotorsWindingResistance, answer.KeyMotorsStallCurrent, answer.KeyMeasuredBlockedCurrent}}, "what is printed on the motors"},
	{answer.Gears, [][]string{{answer.KeyGearsRatio, answer.KeyMeasuredTopSpeed, answer.KeyVehicleClaimedSpeed}}, "their ratio, or how fast it goes"},
	{answer.Wire, [][]string{{answer.KeyWireGauge, answer.KeyWireArea}}, "the size printed on the wire"},
	{answer.Fuse, [][]string{{answer.KeyFuseForm}, {answer.KeyFuseRating, answer.KeyFuseForm}, {answer.KeyFuseDistanceFromPack, answer.KeyFuseForm}}, "kind, amps and place of the fuse"},
	{answer.Accessory, [][]string{{answer.KeyVehicleAccessories}}, "where steering, radio and lights get their volts from"},
	{answer.Charger, [][]string{{answer.KeyChargerLabel, answer.KeyChargerVoltage}}, "the output line of the charger"},
	{answer.Rider, [][]string{{answer.KeyRiderAge}, {answer.KeyRiderMass, answer.KeyRiderAge}, {answer.KeyVehicleSlope}, {answer.KeyVehicleBrake}}, "age and weight of the child, the steepest slope, and what stops it"},
}

// byItem says one word and one line of each thing that somebody can point at.
// Nothing is fine of which something that matters is not known.
func byItem(p *setup.Parts, findings []answer.Finding) []answer.ItemVerdict {
	var out []answer.ItemVerdict
	for _, m := range matter {
		if p.Bench != nil && m.item != answer.Battery && m.item != answer.Wire && m.item != answer.Fuse && m.item != answer.Charger {
			continue
		}
		v := answer.ItemVerdict{Item: m.item, Word: answer.Fine.String(), Line: "Nothing found against it.", Untold: untold(p, m.keys)}
		if len(v.Untold) > 0 {
			v.Word, v.Line = answer.NotKnown, "Not told: "+m.ask+"."
		}
		i := slices.IndexFunc(findings, func(f answer.Finding) bool { return f.Item == m.item && f.Level > answer.Fine })
		if i >= 0 {
			v.Word, v.Line, v.Code = findings[i].Level.String(), findings[i].Title, findings[i].Code
		}
		out = append(out, v)
	}
	return out
}

// untold returns the keys of which none of a row was given.
func untold(p *setup.Parts, rows [][]string) []string {
	var out []string
	for _, row := range rows {
		if !slices.ContainsFunc(row, func(key string) bool { return told(p, key) }) {
			out = append(out, row[0])
		}
	}
	return out
}

// told reports whether the setup gives a key, for today's vehicle or for the
// original, whose it is as well.
func told(p *setup.Parts, key string) bool {
	if name, is := strings.CutPrefix(key, "measured."); is {
		return p.Measured != nil && p.Measured.Has(name)
	}
	return p.Setup.Gives(key)
}
