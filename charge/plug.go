package charge

import (
	"example.org/packcheck/answer"
	"example.org/packcheck/battery"
)

// Plugged is a pack on a charger, before anything flows.
type Plugged struct {
	Pack        *battery.Model // the pack; of two joined packs one of them, or both where MadeFor is ForPair
	Charger     Charger
	CellC       float64  // cell temperature now, deg C
	AmbientC    float64  // surroundings, deg C
	RestV       float64  // rested voltage of the pack; 0 = not measured
	HoursRested float64  // before that was read, since it was last charged or used; 0 = not known
	LabelAh     float64  // what is printed on the pack; 0 = what it holds
	LeastAh     float64  // what such a pack of unknown make holds at the least; 0 = as Pack
	SheetA      float64  // greatest charging current that the pack's own sheet allows; 0 = not told
	ToolPack    bool     // a cordless-tool pack with electronics and a charger of its own
	Port        Port     // where the charger is plugged in
	Jack        Polarity // polarity that the pack's or vehicle's jack wants, if known
	Joined      Joined   // whether two packs hang on the charger
	Alike       bool     // the two of them were read at the same volts
	Unlike      bool     // the two of them are told to be no pair
	MadeFor     Size     // of two packs in series: whether the charger's volts are those of one or of both
	Driving     Driving  // whether the vehicle can be driven meanwhile
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
	Findings                          []answer.Finding
}

// Case is one charge to compute. Voltages and currents are those of the whole
// pack.
type Case struct {
	Pack     *battery.Model
	Start    battery.State // where the pack stands; see [battery.Model.StateAt]
	AmbientC float64       // surroundings, deg C
	CurrentA float64       // greatest current of the charger, > 0
	EndV     float64       // voltage that it holds, or without load if DroopOhm is set, > 0
	DroopOhm float64       // a plain adaptor: ohms by which its voltage sags; 0 = held
	EndA     float64       // falling current at which it counts as full; 0 = from the profile
	Stops    Stops         // whether the charger ends the charge
	TimerH   float64       // hours of its timer; 0 = unknown
	StepS    float64       // of all steps, 0.1 to 3600 s; 0 = by how long it will take: 20 to 60 where the voltage is held, up to 120 before
}

// Span is a time with its honest spread, in hours. Of lithium LikelyH is the
// computation, and the ends are what measured charges lie apart from it. Of
// other chemistries LeastH is the computation, LikelyH never promises less than
// the makers of such cells print for this current, and MostH is when it should
// be over.
type Span struct {
	LeastH, LikelyH, MostH float64
}

// Outcome is one charge computed.
type Outcome struct {
	Full        bool          // it ended with the pack full, or with nine tenths in at the end current
	GivenUp     bool          // it was still going on after the longest time that is computed, 120 h: whether it gets full is not known
	HoursTo80   Span          // to 80 % of full charge; zero when it starts above
	HoursToFull Span          // to the end of the charge, whether Full or not
	Bare80H     float64       // hours to 80 % as computed; 0 when it starts above
	BareFullH   float64       // hours to the end as computed
	CCHours     float64       // at constant current, as computed
	CVHours     float64       // at constant voltage, as computed
	CCAh        float64       // charge put in at constant current
	InAh        float64       // charge put in altogether
	ChargeAtEnd float64       // state of charge reached, 0..1
	EndState    battery.State // where the pack then stands
	EndA        float64       // current at that moment
	UnplugH     float64       // hours from the start when it must be off at the latest
	PeakC       float64       // highest cell temperature
	Findings    []answer.Finding
}
