package charge

import (
	"example.org/packcheck/battery"
	"example.org/packcheck/finding"
)

// Plugged is a pack on a charger, before anything flows.
type Plugged struct {
	Pack     *battery.Model // the pack; of two joined packs, one of them
	Charger  Charger
	CellC    float64  // cell temperature now, deg C
	AmbientC float64  // surroundings, deg C
	RestV    float64  // rested voltage of the pack; 0 = not measured
	ToolPack bool     // a cordless-tool pack with electronics and a charger of its own
	Port     Port     // where the charger is plugged in
	Jack     Polarity // polarity that the pack's or vehicle's jack wants, if known
	Joined   Joined   // whether two packs hang on the charger
}

// Verdict is the answer of [Match].
type Verdict struct {
	Fit Fit
	// EndLeastVPerCell and EndMostVPerCell are what the charger would drive
	// each cell to; zero when that is not known.
	EndLeastVPerCell, EndMostVPerCell float64
	WantedVPerCell                    float64 // right end voltage at this cell temperature
	MostVPerCell                      float64 // never above this
	MostA                             float64 // greatest charging current at this temperature
	Findings                          []finding.Finding
}

// Case is one charge to compute. Voltages and currents are those of the whole
// pack.
type Case struct {
	Pack     *battery.Model
	Start    battery.State // where the pack stands; see [battery.Model.StateAt]
	AmbientC float64       // surroundings, deg C
	CurrentA float64       // greatest current of the charger, > 0
	EndV     float64       // voltage it holds, > 0
	EndA     float64       // falling current at which it counts as full; 0 = from the profile
	StepS    float64       // longest step, s; 0 = 20
}

// Span is a time with its honest spread. The likely value never promises less
// than the makers of such cells print for this current.
type Span struct {
	LeastH, LikelyH, MostH float64 // hours
}

// Outcome is one charge computed.
type Outcome struct {
	Full        bool    // the end current was reached
	HoursTo80   Span    // to 80 % of full charge; zero when it starts above
	HoursToFull Span    // to the end current
	CCHours     float64 // of it at constant current, as computed
	CVHours     float64 // of it at constant voltage, as computed
	CCAh        float64 // charge put in at constant current
	InAh        float64 // charge put in altogether
	ChargeAtEnd float64 // state of charge reached, 0..1
	UnplugH     float64 // when it must be off the charger at the latest, hours from the start
	PeakC       float64 // highest cell temperature
	Findings    []finding.Finding
}
