package drive

// Pulses is a chopper looked at closely, where the rest of this package
// averages over its period: battery amps = Duty x motor amps, motor volts =
// Duty x bus volts.
type Pulses struct {
	BusV        float64
	Duty        float64 // 0 to 1
	FrequencyHz float64
	Henry       float64 // of the motors as wired
}

// RippleA returns how far the motor current swings within one period, peak to
// peak: D (1 - D) V/(f L). Where that is not small against the current itself,
// averages flatter: true peaks are half of it higher.
func (p Pulses) RippleA() float64 {
	return p.Duty * (1 - p.Duty) * p.BusV / (p.FrequencyHz * p.Henry)
}

// OnS returns how long the chopper is on in each period.
func (p Pulses) OnS() float64 { return p.Duty / p.FrequencyHz }

// SeenOhm returns the resistance that a pack sees through a chopper. A bare
// resistor draws its current in pulses and looks like R/D; a motor, whose
// inductance keeps the current smooth, looks like R/D^2. Mixing the two up is a
// common error.
func (p Pulses) SeenOhm(loadOhm float64, smooth bool) float64 {
	if smooth {
		return loadOhm / (p.Duty * p.Duty)
	}
	return loadOhm / p.Duty
}
