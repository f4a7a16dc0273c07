package tables

// MotorCan is what is known of brushed permanent-magnet motors of one can
// size at ClassV volts. The can does not fix the winding: three 12 V motors
// in one can size were published with 18 to 134 A stall, so every electrical
// range is wide. The zero Value stands where nothing is known.
type MotorCan struct {
	Name       string
	Words      []string
	ClassV     float64 // volts that the electrical figures are for
	DiameterMM float64
	LengthMM   float64
	SizeSource string

	NoLoadRPM  Value // 1/min
	NoLoadA    Value
	StallA     Value
	WindingOhm Value // at 20 degC, brushes included
	WindingH   Value // inductance
	RotorKGM2  Value // rotor inertia
	MassKG     Value

	AmbientKPerW Value // winding to the air while it turns, K/W
	WindingTauS  Value // time constant of the winding, s
	CaseTauS     Value // time constant of the can, s
	Source       string
}

// MotorCan looks a can size up: "380", "540", "550", "570", "775", with or
// without "RS" or "size".
func (t *Tables) MotorCan(size string) (MotorCan, error) {
	m, err := byWord(t.motors, "motor can", size, func(m MotorCan) []string { return m.Words })
	return m.copy(), err
}

// MotorCans returns all can sizes, sorted by name.
func (t *Tables) MotorCans() []MotorCan {
	return valuesOf(t.motors, MotorCan.copy)
}

func (m MotorCan) copy() MotorCan {
	m.Words = clone(m.Words)
	return m
}

func readMotor(t *Tables, w *row) {
	m := MotorCan{Name: w.name(), Words: w.texts("words"), Source: w.source()}
	m.ClassV = w.number("class_v", span{1, 100})
	if b := w.block("can"); b != nil {
		m.DiameterMM = b.number("diameter_mm", span{5, 200})
		m.LengthMM = b.number("length_mm", span{5, 300})
		m.SizeSource = b.origin
		b.done()
	}
	m.NoLoadRPM = w.wanted("no_load_rpm", span{100, 100e3})
	m.NoLoadA = w.wanted("no_load_a", span{0.001, 100})
	m.StallA = w.wanted("stall_a", span{0.1, 2000})
	m.WindingOhm = w.wanted("winding_ohm", span{1e-4, 100})
	m.WindingH = w.value("winding_h", span{1e-7, 1})
	m.RotorKGM2 = w.value("rotor_kgm2", span{1e-9, 1})
	m.MassKG = w.value("mass_kg", span{0.001, 50})
	m.AmbientKPerW = w.value("ambient_k_per_w", span{0.01, 1000})
	m.WindingTauS = w.value("winding_tau_s", span{0.1, 1e5})
	m.CaseTauS = w.value("case_tau_s", span{0.1, 1e5})
	put(w, &t.motors, m)
}
