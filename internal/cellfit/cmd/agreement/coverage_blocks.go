package main

import (
	"fmt"
	"slices"

	"example.org/packcheck/battery"
)

// blockSheet is what a maker's sheet says of a block: amps, hours and volts per
// cell at the end.
type blockSheet struct {
	name     string
	leaveOut []string
	ah       float64
	points   [][3]float64
}

// blockSheets are blocks of the lead-acid family, each left out of it, from
// their makers' sheets, and one of 65 Ah that is no member. The sources are those
// of the members in chemistry/data.
func blockSheets() []blockSheet {
	return []blockSheet{
		{"agm 7.5 Ah", []string{"agm"}, 7.5, [][3]float64{{0.379, 20, 1.75}, {0.716, 10, 1.75}, {1.28, 5, 1.75}, {2.52, 2, 1.75}, {4.71, 1, 1.60}, {8.63, 0.5, 1.60}, {14.6, 0.25, 1.60}}},
		{"traction 25.2 Ah", []string{"agm-traction"}, 25.2, [][3]float64{{1.26, 20, 1.75}, {4.75, 5, 1.75}, {10.05, 2, 1.75}, {17.2, 1, 1.75}, {29.1, 0.5, 1.75}, {45.5, 0.25, 1.75}}},
		{"general 7.2 Ah", []string{"general-12v-7ah2"}, 7.2, [][3]float64{{0.36, 20, 1.75}, {1.2, 5, 1.75}, {1.75, 3, 1.70}, {4.38, 1, 1.55}}},
		{"general 5 Ah", []string{"general-12v-5ah"}, 5, [][3]float64{{0.25, 20, 1.75}, {0.85, 5, 1.75}, {3.0, 1, 1.60}}},
		{"general 14 Ah", []string{"general-12v-14ah"}, 14, [][3]float64{{0.7, 20, 1.75}, {2.4, 5, 1.75}, {5, 1.792, 1.75}, {10, 0.756, 1.75}, {20, 0.273, 1.75}}},
		{"high rate 9 Ah", []string{"high-rate-12v-9ah"}, 9, [][3]float64{{0.45, 20, 1.75}, {1.55, 5, 1.75}, {5.98, 1, 1.60}}},
		{"better grade 1.3 Ah", []string{"high-rate-6v-1ah3"}, 1.3, [][3]float64{{0.065, 20, 1.60}, {0.2264, 5, 1.60}, {0.9139, 1, 1.60}, {1.630, 0.5, 1.60}, {2.648, 0.25, 1.60}}},
		{"long life 28 Ah", []string{"long-life-12v-28ah"}, 28, [][3]float64{{1.4, 20, 1.75}, {5, 5, 1.75}, {21, 1, 1.55}}},
		{"65 Ah", nil, 65, [][3]float64{{3.25, 20, 1.75}, {6, 10, 1.75}, {16.2, 3, 1.70}, {39, 1, 1.55}, {65, 0.5, 1.55}}},
	}
}

// blockSubjects turns the sheets into subjects: health of a sheet is new.
func blockSubjects() []measured {
	var out []measured
	for _, b := range blockSheets() {
		family := "agm"
		if slices.Contains(b.leaveOut, "agm-traction") {
			family = "agm-traction" // the label says what it is for
		}
		m := measured{subject: subject{name: b.name, family: family, leaveOut: b.leaveOut, printedAh: b.ah, series: 6, health: 1}}
		for _, p := range b.points {
			amps, hours, endV := p[0], p[1], 6*p[2]
			m.truths = append(m.truths, truth{ofCharge, fmt.Sprintf("%.3g A", amps), amps * hours, func(b *battery.Model) float64 {
				return b.Discharge(b.StateAt(1, 25), amps, endV, 25).Ah
			}})
		}
		out = append(out, m)
	}
	return out
}
