package battery_test

import (
	"math"
	"strings"
	"testing"

	"example.org/packcheck/battery"
)

func TestLabels(t *testing.T) {
	for _, c := range []struct {
		text, hint  string
		chemistry   string
		cells       int
		strings     int
		nominalV    float64
		ah, wh      float64
		rateHours   float64
		sure        battery.Sureness
		others      int
		note        string // a piece of one of the notes
		explanation string
	}{
		{"20 V max 5 Ah", "", "li-ion", 5, 0, 18, 5, 90, 0, battery.Likely, 0, "20 V max and 18 V nominal are one pack, 5 cells", "max counts 4.0 V a cell"},
		{"20V MAX* 5.0Ah 100Wh", "", "li-ion", 5, 0, 18, 5, 90, 0, battery.Likely, 0, "100 Wh is not 18 V times 5 Ah", "watt-hours at the max voltage"},
		{"18 V 4.0Ah", "", "li-ion", 5, 0, 18, 4, 72, 0, battery.Likely, 1, "15 cells of nimh", "older packs of 18 V are nickel"},
		{"18 V 4.0Ah", "nimh", "nimh", 15, 0, 18, 4, 72, 0, battery.Stated, 0, "", ""},
		{"12 V 7 Ah", "", "agm", 6, 0, 12, 7, 84, 0, battery.Likely, 0, "", ""},
		{"NP7-12 12 V 7 Ah", "", "agm", 6, 0, 12, 7, 84, 0, battery.Likely, 0, "", "so sealed lead blocks are named"},
		{"12V 12Ah 6-DZM-12", "", "agm", 6, 0, 12, 12, 144, 0, battery.Likely, 0, "", "cells, letters, ampere-hours"},
		{"12 V 7 Ah max charge current 2.1 A", "", "agm", 6, 0, 12, 7, 84, 0, battery.Likely, 0, "", "the current is the most, not the volts"},
		{"20V 4.0Ah MAX", "", "li-ion", 5, 0, 18, 4, 72, 0, battery.Likely, 0, "20 V max and 18 V", ""},
		{"Constant voltage charge, voltage regulation. Cycle use: 14.5V-14.9V Standby use: 13.6V-13.8V Initial current: 2.1A 12V7Ah", "", "agm", 6, 0, 12, 7, 84, 0, battery.Likely, 0, "", "volts to charge it with stand first"},
		{"14.4-15.0 V (cycle use) 13.5-13.8 V (standby use) 12V 7.2Ah", "", "agm", 6, 0, 12, 7.2, 86.4, 0, battery.Likely, 0, "", "the words behind them"},
		{"Charge current 0.7A max 12V 7Ah", "", "agm", 6, 0, 12, 7, 84, 0, battery.Likely, 0, "", "the most of the amps, not of the volts"},
		{"12V 7Ah (max 15V)", "", "agm", 6, 0, 12, 7, 84, 0, battery.Likely, 0, "", "on its charger"},
		{"max voltage 15V, 12V 7Ah", "", "agm", 6, 0, 12, 7, 84, 0, battery.Likely, 0, "", ""},
		{"18V (max 20V) 5Ah", "", "li-ion", 5, 0, 18, 5, 90, 0, battery.Likely, 0, "20 V max and 18 V", ""},
		{"20V max 18V 5Ah", "", "li-ion", 5, 0, 18, 5, 90, 0, battery.Likely, 0, "20 V max and 18 V", ""},
		{"Standby 6.8-6.9V cycle 7.25-7.45V 6V4.5AH/20HR", "", "agm", 3, 0, 6, 4.5, 27, 20, battery.Likely, 0, "", ""},
		{"charging voltage 14.6V 12.8V 10Ah LiFePO4", "", "lifepo4", 4, 0, 12.8, 10, 128, 0, battery.Stated, 0, "", ""},
		{"deep cycle 12V 7Ah", "", "agm", 6, 0, 12, 7, 84, 0, battery.Likely, 0, "", "its own volts stand behind cycle"},
		{"quick charge 14.4 V 2 Ah", "li-ion", "li-ion", 4, 0, 14.4, 2, 28.8, 0, battery.Stated, 0, "", "no others are left"},
		{"12V 12ha", "", "agm", 6, 0, 12, 12, 144, 0, battery.Likely, 0, "", "letters swapped on a keyboard"},
		{"12V7AH/20HR", "", "agm", 6, 0, 12, 7, 84, 20, battery.Likely, 0, "", "only lead-acid is rated over 20 h"},
		{"12 V 2 Ah", "", "agm", 6, 0, 12, 2, 24, 0, battery.Guess, 2, "3 cells of li-ion", "a drill pack or a small block"},
		{"11.1 V 5 Ah LiPo", "", "li-ion", 3, 0, 10.8, 5, 54, 0, battery.Stated, 0, "", ""},
		{"11.1 V 5 Ah lithium polymer", "", "li-ion", 3, 0, 10.8, 5, 54, 0, battery.Stated, 0, "", ""},
		{"5S2P", "", "li-ion", 5, 2, 18, 0, 0, 0, battery.Likely, 0, "", ""},
		{"5S2P 4 Ah", "", "li-ion", 5, 2, 18, 4, 72, 0, battery.Likely, 0, "", "a pack's label gives the pack's capacity"},
		{"5S2P 21700 4 Ah", "", "li-ion", 5, 2, 18, 8, 144, 0, battery.Likely, 0, "4 Ah is taken as the capacity of one cell", "no 21700 has 2 Ah"},
		{"5S2P 18650 5 Ah", "", "li-ion", 5, 2, 18, 5, 90, 0, battery.Likely, 0, "", "2.5 Ah each is an 18650"},
		{"24 V (two 12 V)", "", "agm", 12, 0, 24, 0, 0, 0, battery.Likely, 0, "", "the total says series"},
		{"24 V (two 12 V 7 Ah)", "", "agm", 12, 0, 24, 7, 168, 0, battery.Likely, 0, "", ""},
		{"2 x 12 V 7 Ah", "", "agm", 12, 0, 24, 7, 168, 0, battery.Guess, 0, "taken to be in series", "series or parallel is not said"},
		{"2 x 12 V 7 Ah in series", "", "agm", 12, 0, 24, 7, 168, 0, battery.Likely, 0, "", ""},
		{"two 12 V 7 Ah in parallel", "", "agm", 6, 0, 12, 14, 168, 0, battery.Likely, 0, "", ""},
		{"12 V 14 Ah (two 12 V 7 Ah in parallel)", "", "agm", 6, 0, 12, 14, 168, 0, battery.Likely, 0, "", "14 Ah are the whole's, 7 Ah a block's"},
		{"14 Ah (2 x 12 V 7 Ah)", "", "agm", 6, 0, 12, 14, 168, 0, battery.Likely, 0, "", "only in parallel do ampere-hours add up"},
		{"two 12 V in parallel, 7 Ah", "", "agm", 6, 0, 12, 7, 84, 0, battery.Likely, 0, "all blocks together", "apart from the block"},
		{"24 V 14 Ah (four 12 V 7 Ah)", "", "agm", 12, 0, 24, 14, 336, 0, battery.Likely, 0, "", "two rows of two"},
		{"12 V 12 Ah (2 x 6 V 12 Ah)", "", "agm", 6, 0, 12, 12, 144, 0, battery.Likely, 0, "", ""},
		{"12 V 7 Ah x 2", "", "agm", 12, 0, 24, 7, 168, 0, battery.Guess, 0, "taken to be in series", "like 2 x 12 V 7 Ah"},
		{"6V 10Ah x2", "", "agm", 6, 0, 12, 10, 120, 0, battery.Guess, 0, "taken to be in series", ""},
		{"6V 10Ahx2", "", "agm", 6, 0, 12, 10, 120, 0, battery.Guess, 0, "taken to be in series", ""},
		{"12 V 7 Ah, 2 pcs", "", "agm", 12, 0, 24, 7, 168, 0, battery.Guess, 0, "taken to be in series", ""},
		{"12 V 7 Ah (x2) in parallel", "", "agm", 6, 0, 12, 14, 168, 0, battery.Likely, 0, "", ""},
		{"12 V 7 Ah x 2 in series", "", "agm", 12, 0, 24, 7, 168, 0, battery.Likely, 0, "", ""},
		{"24 V (12 V 7 Ah x 2)", "", "agm", 12, 0, 24, 7, 168, 0, battery.Likely, 0, "", ""},
		{"20 V max 5 Ah x 2", "", "li-ion", 10, 0, 36, 5, 180, 0, battery.Likely, 0, "taken to be in series", "of one pack 20 V"},
		{"12 V 7 Ah 151x65x94 mm", "", "agm", 6, 0, 12, 7, 84, 0, battery.Likely, 0, "", "sizes are no counts"},
		{"12V 7Ah (151 x 65 x 94)", "", "agm", 6, 0, 12, 7, 84, 0, battery.Likely, 0, "", ""},
		{"5s2p 2500 mAh cells", "", "li-ion", 5, 2, 18, 5, 90, 0, battery.Likely, 0, "that of a cell", "the word cells says so"},
		{"5S x 2P, 2.5 Ah per cell", "", "li-ion", 5, 2, 18, 5, 90, 0, battery.Likely, 0, "that of a cell", ""},
		{"5S2P 18650 2500 mAh Li-ion cells", "", "li-ion", 5, 2, 18, 5, 90, 0, battery.Stated, 0, "that of a cell", ""},
		{"5S2P 5 Ah, 10 cells", "", "li-ion", 5, 2, 18, 5, 90, 0, battery.Likely, 0, "", "10 belongs to the cells, 5 Ah to the pack"},
		{"5S 2500 mAh cells", "", "li-ion", 5, 0, 18, 2.5, 45, 0, battery.Likely, 0, "not how many are side by side", ""},
		{"40 V max", "", "li-ion", 10, 0, 36, 0, 0, 0, battery.Likely, 0, "36 V nominal", ""},
		{"3.2 V 2 Ah", "", "lifepo4", 1, 0, 3.2, 2, 6.4, 0, battery.Likely, 0, "", "no other lithium cell is printed with it: to 4.2 V it would be overcharged"},
		{"3.2 V 6 Ah 32700", "lifepo4", "lifepo4", 1, 0, 3.2, 6, 19.2, 0, battery.Stated, 0, "", ""},
		{"12.8 V 10Ah LiFePO4", "", "lifepo4", 4, 0, 12.8, 10, 128, 0, battery.Stated, 0, "", ""},
		{"12 V 10Ah LiFePO4", "", "lifepo4", 4, 0, 12.8, 10, 128, 0, battery.Stated, 0, "", "sold as 12 V"},
		{"12.8v 12ah lithium", "", "lifepo4", 4, 0, 12.8, 12, 153.6, 0, battery.Likely, 0, "", "3.2 V a cell is iron phosphate whatever is printed beside it"},
		{"25.6V lithium 20Ah", "", "lifepo4", 8, 0, 25.6, 20, 512, 0, battery.Likely, 0, "", ""},
		{"19.2 V lithium 2 Ah", "", "li-ion", 5, 0, 18, 2, 36, 0, battery.Likely, 0, "", "a tool pack of five cells"},
		{"12V 10Ah lithium", "", "lifepo4", 4, 0, 12.8, 10, 128, 0, battery.Guess, 1, "3 cells of li-ion", "a block in place of a lead-acid one"},
		{"12V 10Ah lithium", "lifepo4", "lifepo4", 4, 0, 12.8, 10, 128, 0, battery.Stated, 0, "", ""},
		{"12V 10Ah lithium", "li-ion", "li-ion", 3, 0, 10.8, 10, 108, 0, battery.Stated, 0, "", ""},
		{"24V lithium 10 Ah", "", "lifepo4", 8, 0, 25.6, 10, 256, 0, battery.Guess, 1, "6 cells of li-ion", ""},
		{"36V lithium 10 Ah", "", "li-ion", 10, 0, 36, 10, 360, 0, battery.Guess, 1, "12 cells of lifepo4", ""},
		{"14.4 V lithium 2 Ah", "", "li-ion", 4, 0, 14.4, 2, 28.8, 0, battery.Likely, 0, "", ""},
		{"20V max lithium 4Ah", "", "li-ion", 5, 0, 18, 4, 72, 0, battery.Likely, 0, "", ""},
		{"4S lithium 12.8 V 6 Ah", "", "lifepo4", 4, 0, 12.8, 6, 76.8, 0, battery.Likely, 0, "", ""},
		{"6V 4.5Ah", "", "agm", 3, 0, 6, 4.5, 27, 0, battery.Likely, 0, "", ""},
		{"14.4 V 2 Ah NiMH", "", "nimh", 12, 0, 14.4, 2, 28.8, 0, battery.Stated, 0, "", ""},
		{"14.4 V 2 Ah", "", "li-ion", 4, 0, 14.4, 2, 28.8, 0, battery.Guess, 1, "12 cells of nimh", ""},
		{"36 V", "", "li-ion", 10, 0, 36, 0, 0, 0, battery.Guess, 1, "18 cells of agm", ""},
		{"10.8 V/12 V max", "", "li-ion", 3, 0, 10.8, 0, 0, 0, battery.Likely, 0, "12 V max and 10.8 V", ""},
		{"12 V max 2.0 Ah", "", "li-ion", 3, 0, 10.8, 2, 21.6, 0, battery.Likely, 0, "", ""},
		{"56V 5Ah", "", "li-ion", 14, 0, 50.4, 5, 252, 0, battery.Likely, 0, "", "4.0 V a cell"},
		{"18,5 V 4,0 Ah Li-Ion", "", "li-ion", 5, 0, 18, 4, 72, 0, battery.Stated, 0, "", "decimal comma, 3.7 V a cell"},
		{"7.2 V 3000 mAh NiCd", "", "nimh", 6, 0, 7.2, 3, 21.6, 0, battery.Stated, 0, "Nickel-cadmium", ""},
		{"12V 20Ah (2 hr) AGM", "", "agm", 6, 0, 12, 20, 240, 2, battery.Stated, 0, "", "rated over two hours"},
		{"12 V 12 Ah C10", "", "agm", 6, 0, 12, 12, 144, 10, battery.Likely, 0, "", ""},
		{"18 V 90 Wh", "li-ion", "li-ion", 5, 0, 18, 5, 90, 0, battery.Stated, 0, "", "capacity from energy"},
		{"12 V 10 Ah LiCoO2", "", "li-ion", 3, 0, 10.8, 10, 108, 0, battery.Stated, 0, "", "lithium-ion by its formula"},
		{"12 V 10 Ah LiMn2O4", "", "li-ion", 3, 0, 10.8, 10, 108, 0, battery.Stated, 0, "", ""},
		{"12 V 10 Ah LiNiMnCoO2", "", "li-ion", 3, 0, 10.8, 10, 108, 0, battery.Stated, 0, "", ""},
		{"12 V 10 Ah LCO", "", "li-ion", 3, 0, 10.8, 10, 108, 0, battery.Stated, 0, "", ""},
		{"12 V 10 Ah LMO", "", "li-ion", 3, 0, 10.8, 10, 108, 0, battery.Stated, 0, "", ""},
		{"12 V 10 Ah NCA", "", "li-ion", 3, 0, 10.8, 10, 108, 0, battery.Stated, 0, "", ""},
		{"12 V 10 Ah NCM", "", "li-ion", 3, 0, 10.8, 10, 108, 0, battery.Stated, 0, "", ""},
		{"12 V 10 Ah IMR", "", "li-ion", 3, 0, 10.8, 10, 108, 0, battery.Stated, 0, "", ""},
		{"12 V 10 Ah INR18650", "", "li-ion", 3, 0, 10.8, 10, 108, 0, battery.Stated, 0, "", "letters and size in one"},
		{"12 V 10 Ah 21700", "", "li-ion", 3, 0, 10.8, 10, 108, 0, battery.Likely, 0, "", "no lead-acid cell has such a size"},
		{"12 V 10 Ah SLA 18650", "", "li-ion", 3, 0, 10.8, 10, 108, 0, battery.Guess, 1, "6 cells of agm", ""},
		{"12 V 14500 mAh", "", "agm", 6, 0, 12, 14.5, 174, 0, battery.Likely, 0, "", "a charge, and no size"},
		{"12.8 V 18650 6 Ah", "", "lifepo4", 4, 0, 12.8, 6, 76.8, 0, battery.Likely, 0, "", "volts tell it in any size"},
		{"12 V IFR26650 10 Ah", "", "lifepo4", 4, 0, 12.8, 10, 128, 0, battery.Stated, 0, "", ""},
		{"4S 32700 6 Ah", "", "lifepo4", 4, 0, 12.8, 6, 76.8, 0, battery.Guess, 1, "4 cells of li-ion", "to 4.2 V a cell most of them would be overcharged"},
		{"5S2P 26650 5 Ah", "", "li-ion", 5, 2, 18, 5, 90, 0, battery.Guess, 1, "5 cells of lifepo4", "either kind"},
		{"12 V 10 Ah with BMS", "", "lifepo4", 4, 0, 12.8, 10, 128, 0, battery.Guess, 1, "3 cells of li-ion", "nothing watches the cells of lead-acid"},
		{"12 V 10 Ah LIB", "", "lifepo4", 4, 0, 12.8, 10, 128, 0, battery.Guess, 1, "3 cells of li-ion", ""},
		{"9.6 V 2 Ah LiFe", "", "lifepo4", 3, 0, 9.6, 2, 19.2, 0, battery.Stated, 0, "", ""},
		{"LiFePO₄ 12.8 V 7 Ah", "", "lifepo4", 4, 0, 12.8, 7, 89.6, 0, battery.Stated, 0, "", ""},
		{"12 V 10 Ah lithium SLA replacement", "", "lifepo4", 4, 0, 12.8, 10, 128, 0, battery.Guess, 1, "3 cells of li-ion", "lead is what it stands in for"},
		{"12 V 10 Ah LiFePO4 lead-acid", "", "lifepo4", 4, 0, 12.8, 10, 128, 0, battery.Guess, 1, "6 cells of agm", "it names both"},
		{"12 V 10 Ah LiFePO4 lead-acid", "agm", "agm", 6, 0, 12, 10, 120, 0, battery.Stated, 0, "", ""},
		{"12 V 7 Ah lead-free lithium", "", "lifepo4", 4, 0, 12.8, 7, 89.6, 0, battery.Guess, 1, "3 cells of li-ion", "solder"},
		{"12 V 7 Ah valve regulated", "", "agm", 6, 0, 12, 7, 84, 0, battery.Stated, 0, "", ""},
		{"12 V 7 Ah long life, power for toys", "", "agm", 6, 0, 12, 7, 84, 0, battery.Likely, 0, "", "life power is no LiFePO4"},
		{"12V 7Ah rechargeable sealed battery, deep cycle, maintenance free, F1 terminals", "", "agm", 6, 0, 12, 7, 84, 0, battery.Likely, 0, "", "what any maker says"},
		{"12 V 7 Ah XK712", "", "agm", 6, 0, 12, 7, 84, 0, battery.Guess, 3, "Not understood on it: XK712", "a model, or a chemistry"},
		{"12 V 7 Ah XK712 20HR", "", "agm", 6, 0, 12, 7, 84, 20, battery.Likely, 0, "", "only lead-acid is rated over 20 h"},
		{"12.8 V 7 Ah 20HR", "", "lifepo4", 4, 0, 12.8, 7, 89.6, 20, battery.Likely, 0, "", "no lead-acid is printed with these volts"},
		{"12 V 10 Ah silicon", "", "agm", 6, 0, 12, 10, 120, 0, battery.Guess, 3, "4 cells of lifepo4, or 3 cells of li-ion, or 10 cells of nimh", ""},
		{"24 V (two 12 V) XK712", "", "agm", 12, 0, 24, 0, 0, 0, battery.Guess, 3, "8 cells of lifepo4", ""},
		{"20 V max 5 Ah XR21", "", "li-ion", 5, 0, 18, 5, 90, 0, battery.Likely, 0, "", "nothing else is told with max"},
		{"12.6 V 7 Ah AGM", "", "agm", 6, 0, 12, 7, 84, 0, battery.Stated, 0, "", "what it rests at"},
		{"16 V 7 Ah AGM", "", "agm", 8, 0, 16, 7, 112, 0, battery.Stated, 0, "", "charges no block of fewer cells"},
		{"60 V 20 Ah SLA", "", "agm", 30, 0, 60, 20, 1200, 0, battery.Stated, 0, "", "five of 12 V"},
		{"7S 14 V 7 Ah AGM", "", "agm", 7, 0, 14, 7, 98, 0, battery.Stated, 0, "", "the cells are told"},
		{"14.8 V 7 Ah", "", "li-ion", 4, 0, 14.4, 7, 100.8, 0, battery.Likely, 0, "", "nothing tells of lead"},
		{"HR1234W 12V34W/cell", "", "agm", 6, 0, 12, 0, 0, 0, battery.Stated, 0, "", "a rating for short hours, of lead-acid alone"},
		{"CP1290 12 V 9 Ah 33.6 W/cell", "", "agm", 6, 0, 12, 9, 108, 0, battery.Stated, 0, "", "no model's name is in doubt"},
		{"a pair of 6 V 7 Ah in series", "", "agm", 6, 0, 12, 7, 84, 0, battery.Likely, 0, "", ""},
		{"12 V 7 Ah, discharge 105 A (5 s)", "", "agm", 6, 0, 12, 7, 84, 0, battery.Likely, 0, "", "seconds are no cells in series"},
		{"12 V 8 Ah LiFePO4, peak 24 A (3~5s)", "", "lifepo4", 4, 0, 12.8, 8, 102.4, 0, battery.Stated, 0, "", "nor are a range of them"},
		{"12 V 34 W per cell SLA", "", "agm", 6, 0, 12, 0, 0, 0, battery.Stated, 0, "", ""},
		{"12V-7Ah", "", "agm", 6, 0, 12, 7, 84, 0, battery.Likely, 0, "", "a dash between"},
		{"12 V - 7 Ah", "", "agm", 6, 0, 12, 7, 84, 0, battery.Likely, 0, "", ""},
		{"12 V 7 Ah -15 to 50 C", "", "agm", 6, 0, 12, 7, 84, 0, battery.Likely, 0, "", "a temperature"},
		{"4.2 V max 2 Ah", "", "li-ion", 1, 0, 3.6, 2, 7.2, 0, battery.Likely, 0, "are one pack, 1 cell;", ""},
		{"13.8 V 7 Ah Li-ion", "", "li-ion", 4, 0, 14.4, 7, 100.8, 0, battery.Stated, 0, "", "the kind is told"},
		{"14 V 7 Ah nickel-metal", "", "nimh", 12, 0, 14.4, 7, 100.8, 0, battery.Stated, 0, "", ""},
		{"90 Wh", "", "", 0, 0, 0, 0, 90, 0, battery.Guess, 0, "does not tell the number of cells", ""},
		{"20 V", "li-ion", "li-ion", 5, 0, 18, 0, 0, 0, battery.Stated, 0, "", "max is often left out"},
	} {
		t.Run(c.text+" "+c.hint, func(t *testing.T) {
			l, err := battery.ParseLabel(c.text, c.hint)
			if err != nil {
				t.Fatal(err)
			}
			same := func(a, b float64) bool { return math.Abs(a-b) < 1e-6 }
			if l.Chemistry != c.chemistry || l.CellsInSeries != c.cells || l.Strings != c.strings || !same(l.NominalV, c.nominalV) ||
				!same(l.CapacityAh, c.ah) || !same(l.EnergyWh, c.wh) || l.RateHours != c.rateHours || l.Sure != c.sure || len(l.Others) != c.others {
				t.Errorf("%s\ngot  %+v\nwant %+v", c.explanation, l, c)
			}
			if notes := strings.Join(l.Notes, " "); !strings.Contains(notes, c.note) {
				t.Errorf("notes %q lack %q", notes, c.note)
			}
		})
	}
}

func TestLabelsThatContradictThemselvesAreRefused(t *testing.T) {
	for _, c := range []struct{ text, hint, says string }{
		{"5S 12V", "", "5 cells in series and 12 V"},
		{"12.8 V LiFePO4", "agm", "says lifepo4 but the chemistry given is agm"},
		{"12.8 V 12 Ah Li-ion", "", "which iron phosphate has"},
		{"25.6 V Li-ion", "lifepo4", "which iron phosphate has"},
		{"12 V lithium", "agm", "says lithium but the chemistry given is agm"},
		{"12 V 10 Ah sodium-ion", "", "tells of sodium-ion: there is no profile of such cells, and nothing can be said of them; want a battery of agm"},
		{"12 V 10 Ah sodium-ion", "agm", "tells of sodium-ion"},
		{"12 V 10 Ah Na-ion", "", "tells of sodium-ion"},
		{"12 V 10 Ah NIB", "", "tells of sodium-ion"},
		{"12 V 10 Ah LTO", "", "tells of lithium titanate"},
		{"12 V 10 Ah LMFP", "", "tells of lithium manganese iron phosphate"},
		{"12 V 10 Ah alkaline", "", "tells of alkaline"},
		{"12 V 10 Ah Ni-Zn", "", "tells of nickel-zinc"},
		{"12 V 10 Ah zinc", "", "tells of zinc"},
		{"12 V 10 Ah nickel-iron", "", "tells of nickel-iron"},
		{"12 V 10 Ah nickel-hydrogen", "", "tells of nickel-hydrogen"},
		{"12 V 100 F supercapacitor", "", "tells of supercapacitors"},
		{"12 V 10 Ah LiMnO2", "", "tells of lithium cells that are never charged"},
		{"3 V CR123A", "", "tells of lithium cells that are never charged"},
		{"6 V 2 Ah non-rechargeable", "", "tells of cells that are never charged"},
		{"12 V 10 Ah with BMS", "agm", "says BMS but the chemistry given is agm"},
		{"12 V 10 Ah 18650", "agm", "says 18650 but the chemistry given is agm"},
		{"12 V 7 Ah", "lead", "not known"},
		{"a nice battery", "", "tells no volts"},
		{"12 V 45 Ah 330 A (EN)", "", "gives 330 A of starting current"},
		{"12 V 600 CCA", "", "gives 600 A of starting current: that is a starter battery"},
		{"12 V 9.5 amps", "", `want ampere-hours, such as "12 V 9.5 Ah"`},
		{"20 V max 4A", "", `want ampere-hours, such as "20 V 4 Ah"`},
		{"12 V 1000 mA", "", `want ampere-hours, such as "12 V 1000 mAh"`},
		{"INPUT 120V AC 60Hz OUTPUT 12V DC 1000mA", "", "is that of a charger or an adaptor; want what is printed on the battery"},
		{"power bank 12V 5A 20000mAh", "li-ion", "is that of a power bank, whose electronics make its volts"},
		{"USB powerbank 5V 2.1A 10000mAh", "", "is that of a powerbank"},
		{"Power station 12 V 240 Wh", "", "is that of a power station"},
		{"Output: 14.7 V 1.5 A", "", "is that of a charger"},
		{"12 V DC adapter", "", "is that of a charger"},
		{"charger 12 V", "", "is that of a charger"},
		{"cycle use 14.4-15.0 V, standby use 13.5-13.8 V", "", "tells no volts but those that a lead-acid block has on its charger"},
		{"1e2 V 7 Ah", "", "gives 1e2 v; want plain figures"},
		{"14.8 V 7 Ah AGM", "", `want the nominal volts: "12 V", if these are its charging volts, and otherwise "7S"`},
		{"13.5-13.8 V 7 Ah AGM", "", `"12 V", if these`},
		{"14.4-15.0 V 7 Ah gel", "", `"12 V", if these`},
		{"15.1 V AGM", "", `"12 V", if these are its charging volts, and otherwise "8S"`},
		{"15.9 V gel", "", `"12 V", if these are its charging volts, and otherwise "8S"`},
		{"7.7 V 4.5 Ah SLA", "", `"6 V", if these`},
		{"31 V AGM", "", `"24 V", if these`},
		{"15.5 V 7 Ah", "", "a lead-acid block of 12 V has on its charger, and names no kind of battery"},
		{"14.4 V 7 Ah", "agm", `"12 V", if these`},
		{"13.8 V 7 Ah 20HR", "", `"12 V", if these`},
		{"13.2 V 7 Ah SLA", "", `"12 V", if these`},
		{"7.2 V 4.5 Ah SLA", "", `"6 V", if these`},
		{"27.6 V 7 Ah SLA", "", `"24 V", if these`},
		{"two 13.8 V 7 Ah AGM in series", "", `"12 V", if these`},
		{"13.8 V 7 Ah", "", `a lead-acid block of 12 V has on its charger, and names no kind of battery; want the nominal volts, such as "12 V"`},
		{"13.5-13.8 V 7 Ah", "", "a lead-acid block of 12 V"},
		{"27.6 V 7 Ah", "", "a lead-acid block of 24 V"},
		{"20 V max 5 Ah AGM", "", "printed with its nominal volts"},
		{"24 V 500 W", "", `tells watts, which are those of a motor or a controller and not of a battery; want what the battery holds, such as "24 V 7 Ah"`},
		{"500W 24V", "", "tells watts"},
		{"24 V 500 watts", "agm", "tells watts"},
		{"12 V -7 Ah", "", "gives -7, below 0"},
		{"12 V \u22127 Ah", "", "gives -7, below 0"},
		{"-12 V 7 Ah", "", "gives -12, below 0"},
		{"18 V -90 Wh", "", "gives -90, below 0"},
		{"", "", "tells no volts"},
		{"0S2P", "", "no cells"},
		{"24 V 14 Ah (two 12 V 7 Ah)", "", "2 blocks of 7 Ah in parallel hold 14 Ah, in series 7 Ah"},
		{"36 V (two 12 V)", "", "2 blocks of 12 V are 24 V in series and 12 V in parallel"},
		{"24 V (two 12 V 7 Ah in parallel)", "", "in parallel are 12 V, in series 24 V"},
		{"12 V 7 Ah + 12 V 7 Ah", "", "not how they are joined"},
		{"12 V 2x7 Ah", "", "not how they are joined"},
		{"99999 V", "", "beyond any pack"},
		{"12 V 7000 Ah", "agm", `want ampere-hours, such as "12 V 7 Ah" (7000 mAh are 7 Ah)`},
		{"20 V max 4000 Ah", "", `such as "20 V 4 Ah" (4000 mAh are 4 Ah)`},
		{"12 V 84000 Wh", "", `want watt-hours, such as "12 V 84 Wh"`},
		{"12 V 7 mAh", "", `gives 0.007 Ah, which drives nothing; want ampere-hours, such as "12 V 7 Ah"`},
		{strings.Repeat("12 V ", 200), "", "want one line"},
	} {
		if l, err := battery.ParseLabel(c.text, c.hint); err == nil || !strings.Contains(err.Error(), c.says) {
			t.Errorf("%.40q (%s): %+v, error %v, want %q", c.text, c.hint, l, err, c.says)
		}
	}
}

func FuzzParseLabel(f *testing.F) {
	for _, s := range []string{"20 V max 5 Ah", "12V7AH/20HR", "5S2P 21700 4 Ah", "24 V (two 12 V)", "10.8 V/12 V max", "90 Wh", "2 x 12 V 7 Ah in parallel", "12 V 14 Ah (two 12 V 7 Ah)", "6V 10Ah x2", "5s2p 2500 mAh cells", "7,2 V 3000 mAh NiCd"} {
		f.Add(s, "")
	}
	f.Add("18 V", "nimh")
	f.Add("12 V 10 Ah INR18650 with BMS, SLA replacement", "")
	f.Fuzz(func(t *testing.T, text, hint string) {
		l, err := battery.ParseLabel(text, hint)
		if err != nil {
			return
		}
		for _, x := range []float64{l.NominalV, l.FullV, l.EmptyV, l.CapacityAh, l.EnergyWh, l.RateHours} {
			if !(x >= 0) || math.IsInf(x, 0) {
				t.Fatalf("%q: %+v", text, l)
			}
		}
		if l.CellsInSeries < 0 || l.Strings < 0 || l.CellsInSeries > 0 && !(l.EmptyV < l.NominalV && l.NominalV < l.FullV) {
			t.Fatalf("%q: %+v", text, l)
		}
		if l.CellsInSeries == 0 && len(l.Notes) == 0 {
			t.Fatalf("%q: nothing is said about the missing cells", text)
		}
	})
}
