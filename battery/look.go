package battery

// Look is a pack at one instant: all that an engine reads at the beginning of
// a step, from one look at the tables. Get one from [Model.Look].
type Look struct {
	EMFV  float64 // see [Model.EMF]
	Ohm   float64 // see [Model.SourceOhm]
	Empty bool    // see [Model.Empty]

	volts, ohm1, ohm2 float64
	filled            float64 // share of all the charge in both wells
	perAh             float64 // how steeply the voltage rises with available charge, V/Ah
	warmth            tempRow
}

// Look reads the pack's curves at a state.
func (m *Model) Look(s *State) Look {
	w := m.warmth(s.TempC)
	filled := m.filled(s)
	z := w.effective(s.Y1Ah*m.headOf, filled)
	i, f := place(z)
	r := &m.cell.byCharge[i]
	volts := m.cells * (r.at.volts + f*r.over.volts)
	return Look{
		EMFV:   volts - s.V1 - s.V2,
		Ohm:    m.ohms * (r.at.ohm0 + f*r.over.ohm0) * w.ohm,
		Empty:  z <= 0,
		volts:  volts,
		filled: filled,
		ohm1:   m.ohms * (r.at.ohm1 + f*r.over.ohm1) * w.ohm1,
		ohm2:   m.ohms * (r.at.ohm2 + f*r.over.ohm2) * w.ohm2,
		perAh:  m.cells * r.over.volts * perCharge * m.headOf,
		warmth: w,
	}
}

// MeanEMF returns the mean of the electromotive force over the step at a
// constant current: the branches' share is exact, that of the charge is taken
// along the slope of the voltage curve.
func (p *Step) MeanEMF(now *Look, s *State, currentA float64) float64 {
	settled1, settled2 := p.m.settled(&now.warmth, now.ohm1*currentA, now.ohm2*currentA)
	v1 := settled1 + (s.V1-settled1)*p.fastM
	v2 := settled2 + (s.V2-settled2)*p.slowM
	moved := (p.keep-1)*s.Y1Ah + p.mix*(s.Y1Ah+s.Y2Ah) - p.use*currentA
	return now.volts + now.perAh*moved/2 - v1 - v2
}
