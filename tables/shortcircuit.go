package tables

import (
	"fmt"
	"math"

	"example.org/packcheck/internal/portable"
)

// Insulation is what a kind of insulation stands in a short circuit.
type Insulation struct {
	Name   string
	Words  []string
	K      float64 // A sqrt(s)/mm2
	StartC float64 // conductor when the fault begins, degC
	FinalC float64 // conductor when it must have ended, degC
	Source string
}

// WithstandS returns how long (s) a copper conductor of areaMM2 stands a
// current: k2 S2 / I2 (IEC 60364-5-54). The law assumes that no heat escapes
// and is meant for times up to [AdiabaticLongest], 5 s; a longer result is on
// the safe side. It is +Inf at no current.
func (i Insulation) WithstandS(areaMM2, currentA float64) float64 {
	x := i.K * areaMM2 / currentA
	return x * x
}

// coolestStartC is the least temperature (degC) at which a fault is taken to find a
// conductor: that of the coolest rating that k is printed for with PVC (IEC 60364-5-54).
const coolestStartC = 70

// From returns what the insulation stands where the conductor is at startC (degC) when the
// fault begins and not as hot as its rating, but never less than 70 degC: k by the formula
// of [Tables.AdiabaticK]. Without it better insulation stood less than worse with the same end.
func (i Insulation) From(startC float64) Insulation {
	if startC = max(startC, coolestStartC); !(startC < i.StartC) {
		return i
	}
	i.StartC = startC
	i.K = Builtin().AdiabaticK(i.StartC, i.FinalC)
	return i
}

// AdiabaticK returns k in A sqrt(s)/mm2 for copper heated from startC to
// finalC: 226 sqrt(ln((234.5 + finalC)/(234.5 + startC))), IEC 60949:1988.
// It is 0 unless finalC is above startC.
func (t *Tables) AdiabaticK(startC, finalC float64) float64 {
	zero := t.Figure(CopperZeroBelow).Likely
	if !(finalC > startC && startC > -zero) {
		return 0
	}
	return t.Figure(AdiabaticConstant).Likely * math.Sqrt(math.Log((zero+finalC)/(zero+startC)))
}

// Insulation looks a kind of insulation up by its name or by a word for it:
// "PVC", "XLPE", "silicone", "rubber 60" ...
func (t *Tables) Insulation(word string) (Insulation, error) {
	i, err := byWord(t.adiabatics, "insulation", word, func(i Insulation) []string { return i.Words })
	i.Words = clone(i.Words)
	return i, err
}

// InsulationFor returns what insulation of a rated temperature (degC; 0 when
// unknown) stands, with the conductor as hot as its rating when the fault
// begins. Up to 105 degC it is taken for PVC (end 160 degC), up to 179 degC
// for cross-linked plastic (end 250 degC), above for silicone rubber (end 350
// degC); at 70 degC and below it is the printed k of PVC, elsewhere k follows
// from the formula. It fails above 250 degC.
func (t *Tables) InsulationFor(ratedC float64) (Insulation, error) {
	name := "pvc-70"
	switch {
	case !(ratedC >= 0 && ratedC <= 250):
		return Insulation{}, fmt.Errorf("tables: insulation of %g degC %w (want up to 250 degC)", ratedC, ErrNotFound)
	case ratedC > 70 && ratedC <= 105:
		name = "pvc-90"
	case ratedC > 105 && ratedC < 180:
		name = "xlpe-90"
	case ratedC >= 180:
		name = "silicone-180"
	}
	i, _ := t.adiabatics.Get(name)
	if ratedC > i.StartC || (ratedC > 70 && ratedC < i.StartC) {
		i.StartC = ratedC
		i.K = t.AdiabaticK(i.StartC, i.FinalC)
	}
	i.Words = clone(i.Words)
	return i, nil
}

// PreeceA returns the steady current (A) that melts a bare copper wire of
// this diameter in free air: 10244 d^1.5, d in inches (Preece, 1880s).
func (t *Tables) PreeceA(diameterMM float64) float64 {
	return t.Figure(PreeceCopper).Likely * portable.Pow(diameterMM/25.4, 1.5)
}

// MeltCase is a bare copper wire that a current heats to its melting point.
type MeltCase struct {
	AreaMM2 float64 // > 0
	TimeS   float64 // > 0; heat that escapes is left out, so keep to a few seconds
	StartC  float64 // degC
}

// OnderdonkA returns the current (A) that melts the wire in the given time:
// A sqrt(log10((Tm - Ta)/(234 + Ta) + 1)/(33 t)) with A in circular mils and
// Tm = 1083 degC (earliest trace Stauffacher, GE Review 1928). Copies that
// print 234 - Ta are wrong: No. 16, 5 s from 25 degC is 168.9 A, not 178 A.
func (t *Tables) OnderdonkA(c MeltCase) float64 {
	melts := t.Figure(CopperMelts).Likely
	return c.AreaMM2 / mm2PerCircularMil *
		math.Sqrt(math.Log10((melts-c.StartC)/(234+c.StartC)+1)/(33*c.TimeS))
}

func readInsulation(t *Tables, w *row) {
	i := Insulation{
		Name:   w.name(),
		Words:  w.texts("words"),
		K:      w.number("k", span{1, 500}),
		StartC: w.number("start_c", span{0, 400}),
		FinalC: w.number("final_c", span{0, 1000}),
		Source: w.source(),
	}
	if i.FinalC <= i.StartC {
		w.fault("final_c", i.FinalC, fmt.Sprintf("more than start_c, %g", i.StartC))
	}
	put(w, &t.adiabatics, i)
}
