package drive

import (
	"math"

	"example.org/packcheck/internal/portable"
)

// PlugIn is the moment at which a pack is plugged onto a controller whose input
// capacitors are empty.
type PlugIn struct {
	Volt    float64 // pack, full
	LoopOhm float64 // pack, wires, connector and the capacitors' own resistance
	InputF  float64
}

// Spark is what happens at that moment.
type Spark struct {
	PeakA     float64 // V/R: an upper bound, the loop's inductance lowers it
	EnergyJ   float64 // C V^2/2, stored in the capacitors
	LostJ     float64 // the same again, turned into heat in the loop and at the contact
	TauS      float64 // R C
	ChargedS  float64 // 5 R C
	Precharge Precharge
}

// Precharge is a resistor that tames the spark: plugged first, bridged after.
type Precharge struct {
	Ohm      float64 // a value of the E12 row (IEC 60063)
	LeastOhm float64 // charges in half a second
	MostOhm  float64 // charges in two seconds
	PeakA    float64 // with Ohm
	ChargedS float64 // 5 R C, within 1 % of the pack's volts
	EnergyJ  float64 // what it must absorb in that time: C V^2/2
	PeakW    float64 // at the first moment; wire-wound types stand it
}

// The window within which input capacitors are to be charged, and the number
// of time constants that count as charged: component makers' guides.
const (
	prechargeLeastS = 0.5
	prechargeAimS   = 1.0
	prechargeMostS  = 2.0
	chargedTau      = 5
)

// SparkOf returns current, energy and the pre-charge resistor. A plug-in
// without capacitors or volts is a zero Spark.
func SparkOf(p PlugIn) Spark {
	if !(p.Volt > 0) || !(p.InputF > 0) || !(p.LoopOhm > 0) {
		return Spark{}
	}
	energy := p.InputF * p.Volt * p.Volt / 2
	ohm := preferred(prechargeAimS / (chargedTau * p.InputF))
	return Spark{
		PeakA: p.Volt / p.LoopOhm, EnergyJ: energy, LostJ: energy,
		TauS: p.LoopOhm * p.InputF, ChargedS: chargedTau * p.LoopOhm * p.InputF,
		Precharge: Precharge{
			Ohm:      ohm,
			LeastOhm: prechargeLeastS / (chargedTau * p.InputF), MostOhm: prechargeMostS / (chargedTau * p.InputF),
			PeakA: p.Volt / ohm, ChargedS: chargedTau * ohm * p.InputF, EnergyJ: energy, PeakW: p.Volt * p.Volt / ohm,
		},
	}
}

// VoltAt returns the capacitors' volts at a time after plugging in through the
// loop's own resistance.
func (p PlugIn) VoltAt(timeS float64) float64 {
	return p.Volt * -math.Expm1(-timeS/(p.LoopOhm*p.InputF))
}

// preferred returns the value of the E12 row nearest to ohm by ratio.
func preferred(ohm float64) float64 {
	decade := portable.Pow(10, math.Floor(math.Log10(ohm)))
	best := decade
	for _, x := range [...]float64{1, 1.2, 1.5, 1.8, 2.2, 2.7, 3.3, 3.9, 4.7, 5.6, 6.8, 8.2, 10} {
		if math.Abs(math.Log(ohm/(x*decade))) < math.Abs(math.Log(ohm/best)) {
			best = x * decade
		}
	}
	return best
}
