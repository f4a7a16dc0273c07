package page_test

// twenty are setups as people type them, each with the texts of its fields: vehicles
// of the allotments of Bramble Lane.
func twenty() map[string]map[string]string {
	setup := func(pairs ...string) map[string]string {
		out := map[string]string{}
		for i := 0; i+1 < len(pairs); i += 2 {
			out[pairs[i]] = pairs[i+1]
		}
		return out
	}
	return map[string]map[string]string{
		"label alone":       setup("pack.label", "20V MAX 4.0Ah"),
		"lead, six":         setup("pack.label", "6 V 4.5 Ah SLA", "vehicle.design_voltage", "6 V", "rider.age", "2 years", "vehicle.ground", "carpet"),
		"lead, twelve":      setup("pack.label", "12 V 7 Ah SLA", "vehicle.design_voltage", "12 V", "rider.age", "5 years", "rider.mass", "20 kg", "vehicle.ground", "short grass"),
		"lead, more":        setup("pack.label", "12 V 12 Ah SLA", "vehicle.design_voltage", "12 V", "rider.age", "4 years", "original.pack.label", "12 V 7 Ah SLA"),
		"tool, lawn":        setup("pack.label", "20V MAX 4.0Ah", "vehicle.design_voltage", "12 V", "rider.age", "4 years", "vehicle.ground", "short grass"),
		"tool, fuse":        setup("pack.label", "18 V 5 Ah Li-ion", "vehicle.design_voltage", "12 V", "fuse.form", "small blade", "fuse.rating", "30 A"),
		"tool, cutoff":      setup("pack.label", "18 V 5 Ah Li-ion", "vehicle.design_voltage", "12 V", "cutoff.module.opens_at", "15 V", "rider.age", "6 years"),
		"tool, original":    setup("pack.label", "20 V max 5 Ah", "vehicle.design_voltage", "12 V", "original.pack.label", "12 V 7 Ah SLA", "vehicle.ground", "short grass"),
		"tool, twenty-four": setup("pack.label", "40V MAX 4 Ah", "vehicle.design_voltage", "24 V", "rider.age", "7 years", "vehicle.ground", "gravel"),
		"phosphate":         setup("pack.label", "12.8 V 10 Ah LiFePO4", "vehicle.design_voltage", "12 V", "rider.age", "4 years", "pack.watches_cells", "yes"),
		"phosphate, fused":  setup("pack.label", "12.8 V 10 Ah LiFePO4", "vehicle.design_voltage", "12 V", "fuse.form", "small blade", "fuse.rating", "25 A", "wire.gauge", "14 AWG"),
		"nickel":            setup("pack.label", "9.6 V 3 Ah NiMH", "vehicle.design_voltage", "6 V", "rider.age", "3 years", "vehicle.ground", "asphalt"),
		"wire":              setup("pack.label", "12 V 9 Ah AGM", "vehicle.design_voltage", "12 V", "wire.gauge", "18 AWG", "vehicle.ground", "packed dirt"),
		"heavy":             setup("pack.label", "24 V 9 Ah SLA", "vehicle.design_voltage", "24 V", "rider.mass", "45 kg", "vehicle.ground", "long grass"),
		"light":             setup("pack.label", "6 V 7 Ah gel", "vehicle.design_voltage", "6 V", "rider.mass", "11 kg", "vehicle.ground", "smooth concrete"),
		"pounds":            setup("pack.label", "12 V 7 Ah SLA", "rider.mass", "44 lb", "rider.age", "5 years", "vehicle.design_voltage", "12 V"),
		"no fuse":           setup("pack.label", "18 V 4 Ah Li-ion", "fuse.form", "none", "vehicle.design_voltage", "12 V"),
		"sand":              setup("pack.label", "12 V 14 Ah AGM", "vehicle.design_voltage", "12 V", "vehicle.ground", "sand", "rider.age", "6 years"),
		"range":             setup("pack.label", "12 V 7 Ah SLA", "rider.mass", "20 to 26 kg", "vehicle.design_voltage", "12 V"),
		"wet":               setup("pack.label", "21 V 4 Ah Li-ion", "vehicle.design_voltage", "12 V", "vehicle.ground", "wet grass", "rider.age", "3 years", "rider.mass", "14 kg"),
	}
}
