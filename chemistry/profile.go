package chemistry

import (
	"math"

	"example.org/packcheck/internal/portable"
)

// Family groups profiles that behave alike; rules that hold for a whole
// family are written against it.
type Family string

// The families.
const (
	LeadAcid Family = "lead-acid"
	Lithium  Family = "lithium"
	Nickel   Family = "nickel"
)

// Profile is what one kind of cell can do and may not do. All voltages are
// per cell; resistances are given as Ohm*Ah, so that dividing by a string's
// capacity in Ah gives the Ohm of one cell of it.
//
// Charge is a fraction, 0 empty to 1 full, of the largest charge that the
// cell gives at a very small current. A Profile is a value whose curves are
// slices; those that a [Set] hands out are the caller's own.
type Profile struct {
	Name   string // key in a setup file: "agm", "gel", "li-ion", "lifepo4", "nimh" or a user's own
	Title  string // for people
	Family Family

	// The ladder of voltages.
	NominalV       float64 // what labels are made of
	FullV          float64 // rested, fully charged
	EmptyV         float64 // normal end of a discharge at a moderate rate
	HarmV          float64 // below this the cell is being harmed
	NeverRechargeV float64 // do not charge again below this, rested; 0 = no such rung
	LadderSource   string  // IDs of the sources of the ladder, comma separated

	End        EndVolts
	Rest       RestCurve
	Resistance Resistance
	Fast, Slow Branch
	Wells      WellShape
	Capacity   Capacity
	Keeping    Keeping
	Heat       Heat
	Mass       Mass
	Spread     Spread
	Charge     ChargeLimits
	Acceptance Acceptance
	Discharge  DischargeLimits
}

// EndVolts is the end-of-discharge voltage by rate: Volts[i] holds for
// currents up to UpToC[i] (times the rated capacity, per hour), the last one
// above the last UpToC. len(Volts) = len(UpToC)+1.
type EndVolts struct {
	UpToC  []float64 // 1/h, rising
	Volts  []float64 // V per cell
	Source string
}

// At returns the end voltage per cell at a current of rateC times the rated
// capacity per hour; NaN of the zero value.
func (e EndVolts) At(rateC float64) float64 {
	if len(e.Volts) != len(e.UpToC)+1 {
		return math.NaN()
	}
	for i, c := range e.UpToC {
		if rateC < c {
			return e.Volts[i]
		}
	}
	return e.Volts[len(e.Volts)-1]
}

// RestCurve is the open-circuit voltage of a rested cell.
type RestCurve struct {
	VoltsAt Curve // over charge 0..1, V per cell
	// OverFullV is how steeply the voltage rises per unit of charge beyond
	// full while the available charge is overfilled by a charger.
	OverFullV float64
	// SpreadV is how far apart cells of this chemistry lie at equal charge
	// (half the width), V per cell.
	SpreadV float64
	// SurfaceV is how far the voltage of a cell that was just charged still
	// lies above its rested value; UnderV how far that of a cell that was
	// just discharged lies below; both die away with SettleH hours.
	SurfaceV, UnderV, SettleH float64
	Source                    string
}

// Resistance is the ohmic part of the cell.
type Resistance struct {
	ReferenceC  float64 // temperature of OhmAh, deg C
	OhmAh       Curve   // over charge 0..1
	TempFactor  Curve   // over temperature in deg C; 1 at ReferenceC
	Uncertainty float64 // relative: a cell whose resistance was not measured lies within 1 -/+ this
	AtHealth80  float64 // factor on the resistance when the capacity has fallen to 80 %
	Source      string
}

// Growth returns the factor on resistance for a cell of the given health
// (share of the original capacity, 0..1).
func (r Resistance) Growth(health float64) float64 {
	if health <= 0 || health >= 1 {
		return 1
	}
	return 1 + (r.AtHealth80-1)*(1-health)/0.2
}

// Branch is one resistor-capacitor pair in series with the cell.
type Branch struct {
	OhmAh Curve   // over charge 0..1 at small currents, at the resistance's reference temperature
	TauS  float64 // time constant, s
	// KneeV bends the branch: at a cell current I it settles at
	//
	//	KneeV asinh(I ohm / KneeV)
	//
	// and not at I ohm. This is charge transfer by the Butler-Volmer equation
	// with equal coefficients, where KneeV is 2RT/F, 0.0514 V at 25 deg C. It is
	// meant at 25 deg C and grows with the absolute temperature. 0 = straight.
	KneeV      float64
	TempFactor Curve // over temperature in deg C; empty = that of the resistance
	Source     string
}

// FactorOver returns the branch's factor over temperature: its own, or that of
// the resistance where it has none.
func (b Branch) FactorOver(r Resistance) Curve {
	if b.TempFactor.Empty() {
		return r.TempFactor
	}
	return b.TempFactor
}

// WellShape holds the constants of the kinetic battery model.
type WellShape struct {
	C      float64 // share of the charge that is available at once, (0, 1]; 1 = no bound well
	KPerS  float64 // valve constant k of dy2/dt = -k (h2-h1), 1/s; the closed form uses k' = k/(c(1-c))
	Source string
}

// Capacity is how much charge the label stands for.
type Capacity struct {
	RatedHours float64 // the hours over which labels of this chemistry are rated
	// Ratio is the largest charge (at a very small current, to the bottom of
	// the rest curve) over the rated capacity. Charge 0 in the curves of this
	// profile is that bottom; what labels and makers call 0 % lies at
	// 1 - 1/Ratio.
	Ratio float64
	// HourShare is the share of the rated capacity delivered in so many hours
	// of constant current, from the makers' hour-rate tables.
	HourShare  Curve
	TempFactor Curve // capacity over capacity at 25 deg C, over deg C
	Source     string
}

// Keeping is the loss of charge in store.
type Keeping struct {
	LossPerMonth float64 // share of the full charge per 30 days at AtC
	AtC          float64
	DoublingK    float64 // the loss doubles for every so many kelvin; 0 = unknown
	TopUpMonths  float64 // charge again after so many months at the latest; 0 = no rule
	Source       string
}

// Heat is the thermal side of a pack.
type Heat struct {
	SpecificJKgK  float64 // J/(kg K)
	CoolingWM2K   float64 // in free air, W/(m2 K)
	ShellShare    float64 // cooling in a closed shell over cooling in free air
	AreaM2PerKg23 float64 // surface = this times mass^(2/3), m2/kg^(2/3)
	Source        string
}

// Mass is the rule by which an unweighed pack's mass is estimated.
type Mass struct {
	WhPerKg   float64 // of the bare cells or the block
	CellShare float64 // mass of the cells over mass of the finished pack
	Source    string
}

// Spread is how unequal the cells of one pack are.
type Spread struct {
	CapacityNew float64 // relative standard deviation of capacity, new cells
	CapacityOld float64 // allowed shortfall of the weakest cell of a used pack
	OhmNew      float64 // relative standard deviation of resistance, new cells
	Source      string
}

// ChargeLimits is what a charger must keep to.
type ChargeLimits struct {
	CellV         float64 // end voltage, V per cell at 25 deg C
	CellMaxV      float64 // never above, V per cell
	VPerK         float64 // temperature coefficient of CellV, V/K per cell (negative)
	FloatV        float64 // V per cell at 25 deg C; 0 = must not be floated
	FloatVPerK    float64 // temperature coefficient of FloatV
	MaxC          float64 // greatest current over rated capacity, 1/h
	KindC         float64 // the greatest MaxC of cells of the same kind, see [Set.Members]; 0 = MaxC
	EndC          float64 // end current over rated capacity, 1/h
	ReturnFactor  float64 // charge put in over charge taken out
	MinTempC      float64 // no charging at or below
	MaxTempC      float64 // no charging at or above
	PrechargeV    float64 // below this only PrechargeC; 0 = no such rule
	PrechargeC    float64
	StorageCharge float64 // share of full at which to store
	ReducedBelowC float64 // below this temperature at most ReducedShare of the current; 0 share = no rule
	ReducedShare  float64
	HotAboveC     float64 // above this temperature at most HotCellV; 0 V = no rule
	HotCellV      float64
	Source        string
	FullHoursByC  Curve // hours to full from empty, over the current as a share of capacity, makers' data
}

// KindMostC is what a cell of this kind may be charged with at the most, 1/h: what
// the pack's own maker may have chosen, who knows the cells.
func (l ChargeLimits) KindMostC() float64 { return max(l.MaxC, l.KindC) }

// Acceptance is how a cell takes a charge beyond what its resistance on
// discharge says. The zero value is a cell that takes it like it gives it and
// stores the share 1/ReturnFactor.
//
// A lead-acid cell resists more and more as it fills. The form is that of the
// charging polarisation of Tremblay & Dessaint (World Electric Vehicle Journal
// 3 (2009) 289) with an exponent; z is the share of all its charge:
//
//	ohm = OhmAh / rated Ah / ((1-z)^Power + Offset)
//
// And part of the current splits water instead of charging, the more the
// higher the voltage (Tafel's law) and the temperature:
//
//	amps = GasC rated Ah GasPer100mV^((v-GasV)/0.1) 2^((T-25)/GasDoublingK)
type Acceptance struct {
	OhmAh, Power, Offset float64
	GasC                 float64 // 1/h, at GasV and 25 deg C
	GasV                 float64 // V per cell
	GasPer100mV          float64 // factor for every 0.1 V
	GasDoublingK         float64 // K
	Source               string
}

// Ohm is what a cell of so many rated Ah resists a charge more than a
// discharge, at the share z of all its charge.
func (a Acceptance) Ohm(z, ratedAh float64) float64 {
	if a.OhmAh == 0 {
		return 0
	}
	return a.OhmAh / ratedAh / (portable.Pow(max(1-z, 0), a.Power) + a.Offset)
}

// GasA is the current that splits water at so many volts per cell and degrees C.
func (a Acceptance) GasA(cellV, tempC, ratedAh float64) float64 {
	if a.GasC == 0 {
		return 0
	}
	return a.GasC * ratedAh * portable.Pow(a.GasPer100mV, (cellV-a.GasV)/0.1) * math.Exp2((tempC-25)/a.GasDoublingK)
}

// GasPerVolt is how steeply the logarithm of [Acceptance.GasA] rises, 1/V per
// cell.
func (a Acceptance) GasPerVolt() float64 { return math.Log(a.GasPer100mV) / 0.1 }

// DischargeLimits is what a load must keep to.
type DischargeLimits struct {
	MinTempC    float64 // deg C
	MaxTempC    float64 // deg C, at the cell's surface
	ContinuousC float64 // greatest lasting current over rated capacity, 1/h
	BurstC      float64 // greatest current for 5 s over rated capacity, 1/h
	Source      string
}
