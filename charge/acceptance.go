package charge

import (
	"math"

	"example.org/packcheck/battery"
	"example.org/packcheck/chemistry"
	"example.org/packcheck/internal/portable"
)

// intake is how a pack takes a charging current. Of the current that flows,
// only the main part is stored.
type intake struct {
	m       *battery.Model
	a       chemistry.Acceptance
	keep    float64 // share of the current that is stored, where no gas is reckoned
	cells   float64 // in series
	ratedAh float64

	// The same figures as inner loops want them, see [chemistry.Acceptance]: one
	// exponential in place of two powers.
	ohmOne     float64 // Ohm of the whole pack
	gasOne     float64 // A at 0 V and 0 deg C
	perV, perK float64 // how the logarithm of the gas rises, 1/V of the whole pack and 1/K
}

func intakeOf(m *battery.Model) intake {
	sp := m.Spec()
	t := intake{m: m, a: sp.Profile.Acceptance, keep: 1, cells: float64(sp.CellsInSeries), ratedAh: m.RatedAh()}
	if f := sp.Profile.Charge.ReturnFactor; f > 1 && t.a.GasC == 0 {
		t.keep = 1 / f
	}
	t.ohmOne = t.cells * t.a.OhmAh / t.ratedAh
	if t.a.GasC > 0 {
		t.perV, t.perK = t.a.GasPerVolt()/t.cells, math.Ln2/t.a.GasDoublingK
		t.gasOne = t.a.GasA(0, 0, t.ratedAh)
	}
	return t
}

// ohm is what the pack resists a charge more than a discharge.
func (t *intake) ohm(s *battery.State) float64 {
	if t.ohmOne == 0 {
		return 0
	}
	left, rest := 1-t.m.Filled(*s), 0.0
	if left > 0 {
		rest = portable.Exp(t.a.Power * math.Log(left))
	}
	return t.ohmOne / (rest + t.a.Offset)
}

// volts returns the terminal voltage while mainA are being stored.
func (t *intake) volts(s *battery.State, mainA float64) float64 {
	return t.m.TerminalV(s, -mainA) + mainA*t.ohm(s)
}

// gasA returns the current that splits water at a terminal voltage.
func (t *intake) gasA(s *battery.State, volts float64) float64 {
	if t.gasOne == 0 {
		return 0
	}
	return t.gasOne * portable.Exp(t.perV*volts+t.perK*s.TempC)
}

// mainA returns what is stored of a charging current.
func (t *intake) mainA(s *battery.State, chargingA float64) float64 {
	if t.a.GasC == 0 {
		return chargingA * t.keep
	}
	// Newton's method from above: what gas takes bends upwards, so it comes down
	// to the solution without passing it.
	emf, ohm := t.m.Source(s)
	ohm += t.ohm(s)
	steep := ohm * t.perV
	mainA := chargingA
	for range mainRounds {
		gas := t.gasA(s, emf+mainA*ohm)
		if math.IsInf(gas, 1) {
			mainA /= 2
			continue
		}
		by := (mainA + gas - chargingA) / (1 + gas*steep)
		if mainA -= by; math.Abs(by) < closeEnough*chargingA || mainA <= 0 {
			break
		}
	}
	return max(mainA, 0)
}

// The search for the stored current ends at closeEnough of the charging
// current, or after mainRounds.
const (
	mainRounds  = 60
	closeEnough = 1e-9
)

// Taken returns the terminal voltage of a pack in state s while a charger
// pushes chargingA (A, positive) into it, and how much of that is stored; the
// rest goes into gas and heat. Without a pack, and where something is no number,
// both are NaN.
func Taken(m *battery.Model, s battery.State, chargingA float64) (volts, storedA float64) {
	if m == nil {
		return math.NaN(), math.NaN()
	}
	t := intakeOf(m)
	if chargingA <= 0 {
		return m.TerminalV(&s, -chargingA), chargingA
	}
	storedA = t.mainA(&s, chargingA)
	return t.volts(&s, storedA), storedA
}
