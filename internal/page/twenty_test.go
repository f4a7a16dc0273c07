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

// twentyRead are the [twenty] with readings: one that says little, several that
// agree, and some that hardly can.
func twentyRead() map[string]map[string]string {
	all := twenty()
	read := func(name string, pairs ...string) {
		for i := 0; i+1 < len(pairs); i += 2 {
			all[name]["measured."+pairs[i]] = pairs[i+1]
		}
	}
	read("label alone", "rest_voltage", "20.1 V")
	read("lead, six", "rest_voltage", "6.4 V", "top_speed", "2.5 km/h")
	read("lead, twelve", "loaded_voltage", "11.2 V", "loaded_current", "12 A", "top_speed", "4.2 km/h", "ride_time", "40 min")
	read("lead, more", "rest_voltage", "12.9 V", "hours_rested", "12 h")
	read("tool, lawn", "rest_voltage", "19.8 V", "loaded_voltage", "18.4 V", "loaded_current", "14 A")
	read("tool, fuse", "ride_time", "20 min", "top_speed", "8 km/h")
	read("tool, cutoff", "pull_force", "40 N")
	read("tool, original", "top_speed", "6.5 km/h")
	read("tool, twenty-four", "blocked_current", "80 A", "pull_force", "50 N")
	read("phosphate", "rest_voltage", "13.2 V", "top_speed", "4 km/h")
	read("phosphate, fused", "ride_time", "1 h", "pull_force", "45 N", "top_speed", "4 km/h")
	read("nickel", "top_speed", "4 km/h", "ride_time", "70 min")
	read("wire", "ride_time", "40 min", "loaded_voltage", "11.6 V", "loaded_current", "9 A")
	read("heavy", "rest_voltage", "24.8 V", "loaded_voltage", "22.9 V", "loaded_current", "16 A")
	read("light", "rest_voltage", "6.3 V", "ride_time", "1 h")
	read("pounds", "rest_voltage", "12.4 V", "top_speed", "4 km/h")
	read("no fuse", "blocked_current", "60 A")
	read("sand", "ride_time", "25 min")
	read("range", "rest_voltage", "12.6 V", "ride_time", "45 min", "top_speed", "4.5 km/h")
	read("wet", "top_speed", "6 km/h", "ride_time", "30 min")
	return all
}
