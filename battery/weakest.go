package battery

// WeakestShort returns the share of capacity that the weakest cell is taken to
// lack: none where all are alike, else the spec's, or between the profile's new
// and old spread by health.
func (m *Model) WeakestShort() float64 {
	if m.spec.CellsAlike {
		return 0
	}
	if m.spec.WeakestShort > 0 {
		return m.spec.WeakestShort
	}
	sp := &m.spec.Profile.Spread
	// Three standard deviations hold the weakest of a few dozen new cells; by
	// 80 % health the old spread is reached.
	fresh := min(3*sp.CapacityNew, sp.CapacityOld)
	age := min(max((1-m.spec.Health)/0.2, 0), 1)
	return fresh + (sp.CapacityOld-fresh)*age
}

// WeakestCellV returns the voltage of the weakest cell of the pack at this
// state and current. The same ampere-hours went out of it as out of the
// others, so its charge lies lower by 1/(1 - WeakestShort); below empty it
// reverses (negative voltage). A pack of one cell has no weaker one.
func (m *Model) WeakestCellV(s *State, currentA float64) float64 {
	w := m.warmth(s.TempC)
	head, filled := s.Y1Ah*m.headOf, m.filled(s)
	if m.spec.CellsInSeries > 1 {
		head = 1 - (1-head)/(1-m.WeakestShort())
		filled = 1 - (1-filled)/(1-m.WeakestShort())
	}
	row := m.at(w.effective(head, filled))
	return (row.volts - currentA*row.ohm0*w.ohm - s.V1 - s.V2) / m.cells
}

// OddCellV returns what is left for one cell when the whole pack stands at
// packV and every other of its cells at othersV: the reason why a pack voltage
// alone does not protect a weak cell.
func OddCellV(packV float64, cells int, othersV float64) float64 {
	return packV - float64(cells-1)*othersV
}
