package chemistry_test

import (
	"math"
	"testing"

	"example.org/packcheck/chemistry"
)

func TestLossDoublesWithTemperature(t *testing.T) {
	for _, chem := range []string{"agm", "li-ion", "nimh"} {
		p, ok := chemistry.Builtin().Profile(chem)
		if !ok {
			t.Fatal(chem)
		}
		least, likely, most := p.MonthlyLoss(p.Keeping.AtC)
		if math.Abs(likely-p.Keeping.LossPerMonth) > 1e-12 {
			t.Errorf("%s: %g a month at its own temperature, want %g", chem, likely, p.Keeping.LossPerMonth)
		}
		if !(least < likely && likely < most) {
			t.Errorf("%s: %g, %g, %g are out of order", chem, least, likely, most)
		}
		_, warm, _ := p.MonthlyLoss(30)
		_, cool, _ := p.MonthlyLoss(20)
		if r := warm / cool; math.Abs(r-math.Exp2(10/p.Keeping.DoublingK)) > 1e-9 {
			t.Errorf("%s: ten kelvin give a factor of %g", chem, r)
		}
	}
}
