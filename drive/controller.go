package drive

// Controller stands between the pack's wires and the motors. The zero value is
// plain contacts without any resistance or limit.
type Controller struct {
	Chopper     bool    // false: plain contacts or relay
	RampS       float64 // soft start: duty rises from 0 to 1 in this time; 0 = none
	ModuleRampS float64 // a second soft start, in the pack's module, in series with the first
	LimitA      float64 // limit on the total motor-side current; 0 = none
	Ohm         float64 // contacts or transistors, counted with the path
	MaxV        float64 // highest bus voltage it is made for; 0 = not known
	ContinuousA float64 // motor-side current it stands for good; 0 = not known
	PeakA       float64 // motor-side current it stands for seconds; 0 = not known
	InputF      float64 // capacitance across its input; 0 = none or not known

	Converter Converter // step-down converter between pack and board; zero = none
}

// Converter is a step-down converter between pack and board. The zero value is
// no converter.
type Converter struct {
	OutV       float64 // regulated output; 0 = no converter
	LimitA     float64 // greatest output current; 0 = not known
	Efficiency float64 // (0, 1]; 0 = ConverterEfficiency
}

// ConverterEfficiency stands in where a converter's own efficiency is not
// known. Common practice, no published source.
const ConverterEfficiency = 0.9

func (c Converter) fitted() bool { return c.OutV > 0 }

// Passes is the share of the power that comes through. Where the supply is too low to be
// regulated it is taken for the share of the volts, too, so that the output does not jump
// as a pack comes down to that: own choice.
func (c Converter) Passes() float64 {
	if c.Efficiency > 0 {
		return c.Efficiency
	}
	return ConverterEfficiency
}

// Regulates reports whether a supply of such volts is enough for the output.
func (c Converter) Regulates(busV float64) bool { return busV*c.Passes() >= c.OutV }

// passed is the pack as the board sees it where its volts are too low to be regulated.
func (c Converter) passed(p PackCircuit) PackCircuit {
	share := c.Passes()
	p.OCVV, p.R0Ohm, p.PathOhm = p.OCVV*share, p.R0Ohm*share, p.PathOhm*share
	for i := range p.RC {
		b := &p.RC[i]
		b.Ohm, b.Farad, b.KneeV = b.Ohm*share, b.Farad/share, b.KneeV*share
	}
	return p
}

// inputA returns the pack current behind the source that makes outA at outV.
// It reports false when the source cannot give that power.
func (c Converter) inputA(s Source, outV, outA float64) (float64, bool) {
	// s.OCVV i - s.Ohm i^2 = power: the smaller root is the working point.
	power := outV * outA / c.Passes()
	root := s.OCVV*s.OCVV - 4*s.Ohm*power
	if root < 0 {
		return 0, false
	}
	return smallerRoot(s.Ohm, s.OCVV, power), true
}
