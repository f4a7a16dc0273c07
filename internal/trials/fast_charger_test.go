package trials_test

import (
	"strconv"
	"testing"

	"example.org/packcheck/answer"
	"example.org/packcheck/charge"
)

// Cell sheets print rapid charges: 4 A for 2.0 and 2.5 Ah (INR18650-20R, the amps from
// memory, and INR18650-25R), 6 A for 2.8 Ah (INR18650-P28A) and for 21700 cells of 4 Ah
// (copies). A tool pack of such cells on its own charger is no fault, nor is a charger of
// those amps on cells that are told to be such; on cells that nobody told the kind of it
// is, and on energy cells.
func TestTheCurrentOnACellsSheetIsNotRefusedOnItsOwnCharger(t *testing.T) {
	t.Parallel()
	const own, other = "true", "false"
	for _, c := range []struct {
		name, label, amps, cells, came, prints string
		least, most                            answer.Level
	}{
		{"2C on 2 Ah, its own", "20 V max 2 Ah", "4 A", "", own, "", answer.Fine, answer.Watch},
		{"2C on 2 Ah of power cells, its own", "20 V max 2 Ah", "4 A", "power", own, "", answer.Fine, answer.Watch},
		{"1.5C on 4 Ah, its own", "20 V max 4 Ah", "6 A", "", own, "", answer.Fine, answer.Watch},
		{"2C on 5 Ah, its own", "20 V max 5 Ah", "10 A", "", own, "", answer.Fine, answer.Watch},
		{"2C on 2 Ah of power cells, from elsewhere", "20 V max 2 Ah", "4 A", "power", other, "", answer.Fine, answer.Watch},
		{"2C on 2 Ah, from elsewhere", "20 V max 2 Ah", "4 A", "", other, "", answer.FixFirst, answer.Danger},
		{"2C on 2 Ah of energy cells, its own", "20 V max 2 Ah", "4 A", "energy", own, "", answer.FixFirst, answer.Danger},
		{"2C on 2 Ah whose sheet prints it, from elsewhere", "20 V max 2 Ah", "4 A", "middle", other, "4 A", answer.Fine, answer.Watch},
		{"4 A on 5 Ah whose sheet prints 1 A, from elsewhere", "20 V max 5 Ah", "4 A", "middle", other, "1 A", answer.Danger, answer.Danger},
		{"4 A on 5 Ah whose sheet prints 1 A, its own", "20 V max 5 Ah", "4 A", "middle", own, "1 A", answer.Danger, answer.Danger},
		{"2C on 5 Ah of which the amps of a discharge are told", "20 V max 5 Ah", "10 A", "middle", other, "30 A", answer.Danger, answer.Danger},
		{"3C on 5 Ah, its own", "20 V max 5 Ah", "15 A", "", own, "", answer.FixFirst, answer.Danger},
	} {
		s := sheet{}.with("pack.label", strconv.Quote(c.label), "pack.chemistry", `"li-ion"`, "pack.temperature", `"20 C"`, "outing.air", `"20 C"`,
			"load.current", `"2 A"`, "charger.label", strconv.Quote("21 V "+c.amps+" DC"), "charger.made_for", `"li-ion"`, "charger.stops", `"by itself"`,
			"charger.came_with_pack", c.came)
		if c.cells != "" { // who knows the cells knows that the label is theirs
			s = s.with("pack.cells", strconv.Quote(c.cells), "pack.maker", `"own"`)
		}
		if c.prints != "" {
			s = s.with("pack.max_charge_current", strconv.Quote(c.prints))
		}
		level := has(assess(t, s), charge.CodeCurrentTooHigh)
		if level < c.least || level > c.most {
			t.Errorf("%s: %v, want %v to %v", c.name, level, c.least, c.most)
		}
	}
}
