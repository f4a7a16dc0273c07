package battery

import "example.org/packcheck/chemistry"

// Spec describes one pack.
type Spec struct {
	Profile       chemistry.Profile
	CellsInSeries int     // at least 1
	Strings       int     // in parallel; 0 = 1 (a capacity of the whole pack makes it matter only for single cells)
	CapacityAh    float64 // label capacity of the whole pack, > 0
	RateHours     float64 // hours over which CapacityAh is rated; 0 = the profile's
	Health        float64 // capacity left over capacity when new, (0, 1]; 0 = 1

	// ResistanceOhm is the ohmic resistance of the whole pack at half charge
	// and the profile's reference temperature; 0 = from the profile. The
	// profile's branches are scaled with it.
	ResistanceOhm float64
	// ResistanceFactor multiplies the profile's resistance; 0 = from Health.
	// It is not applied to a ResistanceOhm that was given.
	ResistanceFactor float64

	ClosedShell bool    // the pack sits in a closed shell: less cooling
	MassKg      float64 // 0 = by the profile's rule
	MaxCurrentA float64 // greatest lasting current of the whole pack; 0 = from the profile

	// WeakestShort is the share of capacity that the weakest cell lacks; 0 =
	// from the profile and Health.
	WeakestShort float64
}
