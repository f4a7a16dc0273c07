package battery_test

import (
	"testing"

	"example.org/packcheck/battery"
)

func TestLabels(t *testing.T) {
	for _, x := range []string{
		"20 V max 5 Ah", "18 V 4.0Ah", "12 V 7 Ah", "12V7AH/20HR", "5S2P", "5S2P 21700 4 Ah", "24 V (two 12 V)", "2 x 12 V 7 Ah", "40 V max",
		"12.8 V 10Ah LiFePO4", "6V 4.5Ah", "14.4 V 2 Ah NiMH", "36 V", "10.8 V/12 V max", "90 Wh", "20V MAX* 5.0Ah 100Wh", "two 12 V 7 Ah in parallel", "10S", "56V 5Ah", "80V 2.5Ah", "24V 4Ah li-ion", "12 V max 2.0 Ah", "18V", "48V 20Ah", "25.2 V 3 Ah", "12V 20Ah (2 hr)", "12 V 12 Ah C10", "7,2 V 3000 mAh NiCd",
		"4S LiFePO4 12.8V", "5S 12V", "hello", "",
	} {
		l, err := battery.ParseLabel(x, "")
		t.Logf("%q: %v %+v", x, err, l)
	}
}
