package chemistry

// lists returns where the profile keeps its lists of numbers.
func (p *Profile) lists() [22]*[]float64 {
	return [...]*[]float64{
		&p.End.UpToC, &p.End.Volts,
		&p.Rest.VoltsAt.X, &p.Rest.VoltsAt.Y,
		&p.Resistance.OhmAh.X, &p.Resistance.OhmAh.Y, &p.Resistance.TempFactor.X, &p.Resistance.TempFactor.Y,
		&p.Fast.OhmAh.X, &p.Fast.OhmAh.Y, &p.Fast.TempFactor.X, &p.Fast.TempFactor.Y,
		&p.Slow.OhmAh.X, &p.Slow.OhmAh.Y, &p.Slow.TempFactor.X, &p.Slow.TempFactor.Y,
		&p.Capacity.HourShare.X, &p.Capacity.HourShare.Y, &p.Capacity.TempFactor.X, &p.Capacity.TempFactor.Y,
		&p.Charge.FullHoursByC.X, &p.Charge.FullHoursByC.Y,
	}
}

// copy returns the profile with lists of its own, all of them in one piece of
// memory.
func (p Profile) copy() Profile {
	lists := p.lists()
	n := 0
	for _, list := range lists {
		n += len(*list)
	}
	all := make([]float64, 0, n)
	for _, list := range lists {
		if *list == nil {
			continue
		}
		from := len(all)
		all = append(all, *list...)
		*list = all[from:len(all):len(all)]
	}
	return p
}
