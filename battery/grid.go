package battery

import (
	"math"

	"example.org/packcheck/internal/bend"
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

// chargeValues is what depends on charge: volts of a cell, Ohm*Ah.
type chargeValues struct {
	volts, ohm0, ohm1, ohm2 float64
}

// chargeRow is one cell of the charge grid: the values at its beginning and
// how much they change over it, so that one look-up touches one cache line.
type chargeRow struct {
	at, over chargeValues
}

// tempRow holds what depends on temperature.
type tempRow struct {
	ohm        float64 // factor on the ohmic resistance
	ohm1, ohm2 float64 // factors on the branches
	knee       float64 // factor on where they bend
	lost       float64 // share of the capacity that cannot be had
	inv        float64 // 1 / (1 - lost)
}

// tempCell is one cell of the temperature grid, like chargeRow.
type tempCell struct {
	at, over tempRow
}

// chargeGrid tabulates what depends on charge: one cell of 1 Ah.
func chargeGrid(rows *[gridCells]chargeRow, s *shape) {
	rest := s.rest.Func()
	ohm0, ohm1, ohm2 := s.ohm.Func(), s.fast.Func(), s.slow.Func()
	// Below empty the voltage falls on as steeply as it did over the last
	// hundredth, at least a volt per hundredth of the charge.
	slope := math.Max((rest(0.01)-rest(0))*100, 20)
	values := func(i int) chargeValues {
		z := gridLo + float64(i)/perCharge
		v := rest(z)
		switch {
		case z < 0:
			v = rest(0) + slope*z
		case z > 1:
			v = rest(1) + s.overFullV*(z-1)
		}
		inside := math.Min(math.Max(z, 0), 1)
		return chargeValues{v, ohm0(inside), ohm1(inside), ohm2(inside)}
	}
	a := values(0)
	for i := range rows {
		b := values(i + 1)
		rows[i] = chargeRow{a, chargeValues{b.volts - a.volts, b.ohm0 - a.ohm0, b.ohm1 - a.ohm1, b.ohm2 - a.ohm2}}
		a = b
	}
}

// tempGrid tabulates the temperature factors.
func tempGrid(rows *[tempCells]tempCell, s *shape) {
	ohm, capacity := s.ohmWarm.Func(), s.capacityWarm.Func()
	ohm1, ohm2 := s.fastWarm.Func(), s.slowWarm.Func()
	values := func(i int) tempRow {
		t := tempLo + float64(i)/perKelvin
		f := capacity(t)
		return tempRow{ohm: ohm(t), ohm1: ohm1(t), ohm2: ohm2(t), knee: (t + 273.15) / (kneeC + 273.15), lost: 1 - f, inv: 1 / f}
	}
	a := values(0)
	for i := range rows {
		b := values(i + 1)
		rows[i] = tempCell{a, tempRow{b.ohm - a.ohm, b.ohm1 - a.ohm1, b.ohm2 - a.ohm2, b.knee - a.knee, b.lost - a.lost, b.inv - a.inv}}
		a = b
	}
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

// voltsAt returns the pack's open-circuit volts.
func (m *Model) voltsAt(z float64) float64 {
	i, f := place(z)
	r := &m.cell.byCharge[i]
	return m.cells * (r.at.volts + f*r.over.volts)
}

// ohmAt returns the pack's ohmic resistance at the reference temperature.
func (m *Model) ohmAt(z float64) float64 {
	i, f := place(z)
	r := &m.cell.byCharge[i]
	return m.ohmics * (r.at.ohm0 + f*r.over.ohm0)
}

// at returns the pack's values at a charge.
func (m *Model) at(z float64) chargeValues {
	i, f := place(z)
	r := &m.cell.byCharge[i]
	return chargeValues{
		m.cells * (r.at.volts + f*r.over.volts), m.ohmics * (r.at.ohm0 + f*r.over.ohm0),
		m.ohms * (r.at.ohm1 + f*r.over.ohm1), m.ohms * (r.at.ohm2 + f*r.over.ohm2),
	}
}

// warmth interpolates in the temperature grid, and treats its ends and a NaN as
// place does.
func (m *Model) warmth(tempC float64) tempRow {
	x := (tempC - tempLo) * perKelvin
	if x > tempCells-1e-9 {
		x = tempCells - 1e-9
	}
	i, f := 0, x*0
	if x >= 0 {
		i = int(x)
		f = x - float64(i)
	}
	r := &m.cell.byTemp[i]
	return tempRow{
		r.at.ohm + f*r.over.ohm, r.at.ohm1 + f*r.over.ohm1, r.at.ohm2 + f*r.over.ohm2,
		r.at.knee + f*r.over.knee, r.at.lost + f*r.over.lost, r.at.inv + f*r.over.inv,
	}
}

// kneeC is the temperature that a branch's knee is given at.
const kneeC = 25

// rateCold says how much more of the capacity a cold pack loses when it is
// emptied fast: the loss grows by this times the difference between all the
// charge and the available charge. With 2, a block that loses 15 % over 20 h
// at 0 deg C loses a quarter over 1 to 3 h, as the coefficients of 0.006 and
// 0.010 per kelvin say that makers give for those rates.
const rateCold = 2

// effective is the charge that the curves are read at. A cold cell gives only
// 1-lost of its capacity, and gives it up at the empty end:
//
//	h - lost (1 + 2 (z-h)) d^3,  d = (1-h)/(1-lost)
//
// which is 0 when the capacity that the temperature leaves has been taken,
// and hardly moves the voltage of a cell that is nearly full. h is the
// available charge, z all of it.
func (w *tempRow) effective(h, z float64) float64 {
	if w.lost == 0 { // most lithium outings; the processor need not wait for the warmth
		return h
	}
	d := (1 - h) * w.inv
	return h - w.lost*(1+rateCold*(z-h))*d*d*d
}

// moved is how much [tempRow.effective] moves with small movements of h and z.
func (w *tempRow) moved(h, z, byH, byZ float64) float64 {
	if w.lost == 0 {
		return byH
	}
	d := (1 - h) * w.inv
	steep := w.lost * d * d
	return byH*(1+steep*(rateCold*d+3*w.inv*(1+rateCold*(z-h)))) - byZ*steep*rateCold*d
}

// settled is where the two branches settle that would settle at straight1 and
// straight2, were they straight.
func (m *Model) settled(w *tempRow, straight1, straight2 float64) (v1, v2 float64) {
	if m.straight {
		return straight1, straight2
	}
	return bend.Settled(straight1, m.knee1V*w.knee), bend.Settled(straight2, m.knee2V*w.knee)
}

// steep is how much higher the two branches settle for each ampere more.
func (m *Model) steep(w *tempRow, ohm1, ohm2, currentA float64) (by1, by2 float64) {
	if m.straight {
		return ohm1, ohm2
	}
	return bend.Steep(ohm1, currentA, m.knee1V*w.knee), bend.Steep(ohm2, currentA, m.knee2V*w.knee)
}
