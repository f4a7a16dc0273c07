package ask

import (
	"math"

	"example.org/packcheck/battery"
	"example.org/packcheck/drive"
)

// Model is the battery with everything that its words leave open at its
// likeliest.
func (b Battery) Model() (*battery.Model, error) {
	all, err := b.find()
	if err != nil {
		return nil, err
	}
	return all.model, nil
}

// Circuit is a battery in some state as package drive wants it, with pathOhm
// (Ohm, there and back) between it and the motors. Volts and resistance of no
// battery are NaN, which [drive.LaunchCase.Check] refuses.
func Circuit(m *battery.Model, s battery.State, pathOhm float64) drive.PackCircuit {
	if m == nil {
		return drive.PackCircuit{OCVV: math.NaN(), R0Ohm: math.NaN(), PathOhm: pathOhm}
	}
	emf, ohm := m.Source(&s)
	p := drive.PackCircuit{OCVV: max(emf, 0), R0Ohm: ohm, PathOhm: pathOhm}
	for i, b := range m.Branches(s) {
		p.RC[i] = drive.Branch(b)
	}
	return p
}
