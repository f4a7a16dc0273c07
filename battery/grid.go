package battery

import (
	"math"

	"example.org/packcheck/chemistry"
)

// The charge grid reaches below empty and above full, so that a reversed or an
// overfilled cell still has a voltage.
const (
	gridLo    = -0.25
	gridHi    = 1.50
	gridCells = 1400 // 1/800 of the charge each
	perCharge = gridCells / (gridHi - gridLo)

	tempLo    = -40.0
	tempHi    = 120.0
	tempCells = 320 // half a kelvin each
	perKelvin = tempCells / (tempHi - tempLo)
)

// chargeRow holds what depends on charge, side by side so that one look-up
// touches one cache line. Volts and ohms are the whole pack's.
type chargeRow struct {
	volts, ohm0, ohm1, ohm2 float64
}

// tempRow holds what depends on temperature.
type tempRow struct {
	ohm  float64 // factor on every resistance
	lost float64 // share of the capacity that cannot be had
	inv  float64 // 1 / (1 - lost)
}

// chargeGrid tabulates a profile for a pack of n cells in series of ah
// ampere-hours with its resistances multiplied by factor.
func chargeGrid(p chemistry.Profile, n, ah, factor float64) *[gridCells + 1]chargeRow {
	rest := p.Rest.VoltsAt.Func()
	ohm0, ohm1, ohm2 := p.Resistance.OhmAh.Func(), p.Fast.OhmAh.Func(), p.Slow.OhmAh.Func()
	// Below empty the voltage falls on as steeply as it did over the last
	// hundredth, at least a volt per hundredth of the charge.
	slope := math.Max((rest(0.01)-rest(0))*100, 20)
	rows := new([gridCells + 1]chargeRow)
	scale := n * factor / ah
	for i := range rows {
		z := gridLo + float64(i)/perCharge
		v := rest(z)
		switch {
		case z < 0:
			v = rest(0) + slope*z
		case z > 1:
			v = rest(1) + p.Rest.OverFullV*(z-1)
		}
		inside := math.Min(math.Max(z, 0), 1)
		rows[i] = chargeRow{n * v, scale * ohm0(inside), scale * ohm1(inside), scale * ohm2(inside)}
	}
	return rows
}

// tempGrid tabulates the temperature factors.
func tempGrid(p chemistry.Profile) *[tempCells + 1]tempRow {
	ohm, capacity := p.Resistance.TempFactor.Func(), p.Capacity.TempFactor.Func()
	rows := new([tempCells + 1]tempRow)
	for i := range rows {
		t := tempLo + float64(i)/perKelvin
		f := capacity(t)
		rows[i] = tempRow{ohm: ohm(t), lost: 1 - f, inv: 1 / f}
	}
	return rows
}

// place finds the grid cell of z and how far into it z lies, held at the ends
// of the grid. Comparisons instead of min and max spare their NaN handling;
// a NaN ends up in the first cell and stays NaN.
func place(z float64) (i int, f float64) {
	x := (z - gridLo) * perCharge
	if x > gridCells-1e-9 {
		x = gridCells - 1e-9
	}
	if !(x >= 0) {
		return 0, x * 0
	}
	i = int(x)
	return i, x - float64(i)
}

// at interpolates between two rows of the charge grid.
func (m *Model) at(z float64) chargeRow {
	i, f := place(z)
	a, b := &m.byCharge[i], &m.byCharge[i+1]
	return chargeRow{
		a.volts + f*(b.volts-a.volts), a.ohm0 + f*(b.ohm0-a.ohm0),
		a.ohm1 + f*(b.ohm1-a.ohm1), a.ohm2 + f*(b.ohm2-a.ohm2),
	}
}

// voltsAt is at for the voltage alone.
func (m *Model) voltsAt(z float64) float64 {
	i, f := place(z)
	a, b := m.byCharge[i].volts, m.byCharge[i+1].volts
	return a + f*(b-a)
}

// warmth interpolates between two rows of the temperature grid.
func (m *Model) warmth(tempC float64) tempRow {
	x := (tempC - tempLo) * perKelvin
	if x > tempCells-1e-9 {
		x = tempCells - 1e-9
	}
	if !(x >= 0) {
		x *= 0
	}
	i := int(x)
	f := x - float64(i)
	a, b := &m.byTemp[i], &m.byTemp[i+1]
	return tempRow{a.ohm + f*(b.ohm-a.ohm), a.lost + f*(b.lost-a.lost), a.inv + f*(b.inv-a.inv)}
}

// effective is the charge that the curves are read at: a cold cell gives only
// 1-lost of its capacity, and gives it up at the empty end:
//
//	z - lost (d)^3,  d = (1-z)/(1-lost)
//
// which is 0 when the capacity that the temperature leaves has been taken,
// and hardly moves the voltage of a cell that is nearly full.
func (w *tempRow) effective(z float64) float64 {
	d := (1 - z) * w.inv
	return z - w.lost*d*d*d
}
