package battery

// State is where a pack stands, all of it for the whole pack: charge in Ah,
// branch voltages in V, one temperature. The zero State is an empty pack at
// 0 deg C; start from [Model.StateAt].
type State struct {
	Y1Ah  float64 // charge in the available well
	Y2Ah  float64 // charge in the bound well
	V1    float64 // voltage across the fast branch, positive while discharging
	V2    float64 // voltage across the slow branch
	TempC float64 // of the cells
}

// Branch is one resistor-capacitor pair as a whole pack has it.
type Branch struct {
	Ohm, Farad float64
}

// Model is a pack ready to be computed. It never changes, so any number of
// goroutines may use one.
type Model struct {
	spec Spec
}

// Step advances states by a fixed time; get one from [Model.Over].
type Step struct {
	m *Model
}

// New checks the spec and prepares the model.
func New(spec Spec) (*Model, error) { return &Model{spec: spec}, nil }

// Spec returns what the model was made of, with the defaults filled in.
func (m *Model) Spec() Spec { return m.spec }

// StateAt returns the state of a pack at rest with the given share of full
// charge (0..1, clamped) and cell temperature.
func (m *Model) StateAt(charge, tempC float64) State { return State{} }

// Charge returns the state of charge, 0 empty to 1 full.
func (m *Model) Charge(s State) float64 { return 0 }

// RestedV returns the voltage the pack settles at when left alone long enough.
func (m *Model) RestedV(s State) float64 { return 0 }

// EMF returns the voltage behind the pack's resistance at this instant:
// open-circuit voltage of the available charge less the branch voltages.
func (m *Model) EMF(s *State) float64 { return 0 }

// SourceOhm returns the pack's ohmic resistance at this instant.
func (m *Model) SourceOhm(s *State) float64 { return 0 }

// TerminalV returns the voltage at the pack's terminals at the given current
// (A, positive discharging): EMF - current * SourceOhm.
func (m *Model) TerminalV(s *State, currentA float64) float64 { return 0 }

// AvailableAh returns the charge that could be drawn at an extremely high
// current, before resistance is counted.
func (m *Model) AvailableAh(s State) float64 { return 0 }

// Empty reports whether no available charge is left.
func (m *Model) Empty(s *State) bool { return false }

// FullV returns the rested voltage of the full pack.
func (m *Model) FullV() float64 { return 0 }

// NominalV returns the nominal voltage.
func (m *Model) NominalV() float64 { return 0 }

// EmptyV returns the voltage of the normal end of a discharge.
func (m *Model) EmptyV() float64 { return 0 }

// EndV returns the normal end-of-discharge voltage at the given current.
func (m *Model) EndV(currentA float64) float64 { return 0 }

// HarmV returns the voltage below which every cell is being harmed.
func (m *Model) HarmV() float64 { return 0 }

// RatedAh returns the label capacity.
func (m *Model) RatedAh() float64 { return 0 }

// FullAh returns the charge of a full pack: label, rate and health together.
func (m *Model) FullAh() float64 { return 0 }

// UsableAh returns what a full pack at 25 deg C gives at a constant current
// before its voltage falls to [Model.EndV] for that current.
func (m *Model) UsableAh(currentA float64) float64 { return 0 }

// UsableWh is [Model.UsableAh] in watt-hours at the terminals.
func (m *Model) UsableWh(currentA float64) float64 { return 0 }

// MassKg returns the pack's mass, given or estimated.
func (m *Model) MassKg() float64 { return 0 }

// MidOhm returns the ohmic resistance at half charge and 25 deg C.
func (m *Model) MidOhm() float64 { return 0 }

// ShortCircuitA returns the current into a dead short at this state.
func (m *Model) ShortCircuitA(s State) float64 { return 0 }

// Branches returns the two resistor-capacitor pairs at this state.
func (m *Model) Branches(s State) [2]Branch { return [2]Branch{} }

// ContinuousA returns the greatest lasting current, given or from the profile.
func (m *Model) ContinuousA() float64 { return 0 }

// BurstA returns the greatest current for five seconds.
func (m *Model) BurstA() float64 { return 0 }

// WeakestCellV returns the voltage of the weakest cell of the pack at this
// state and current, for a cell short of capacity by the profile's spread.
func (m *Model) WeakestCellV(s *State, currentA float64) float64 { return 0 }

// Over prepares steps of dtS seconds (> 0).
func (m *Model) Over(dtS float64) Step { return Step{m: m} }

// Advance moves the state on by one step at a constant current (A, positive
// discharging, negative charging) in surroundings of ambientC.
func (p *Step) Advance(s *State, currentA, ambientC float64) {}
