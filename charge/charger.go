package charge

import (
	"fmt"

	"example.org/packcheck/battery"
)

// Port is where a charger is plugged in.
type Port int

// The ports.
const (
	PortUnknown   Port = iota
	PortPack           // the pack's own charging socket or cradle
	PortTerminals      // clips or plugs on the pack's terminals, pack taken out
	PortVehicle        // the charging jack on the vehicle
)

// PortNamed returns the place that a word of the setup's key charger.jack stands for,
// [PortUnknown] for any other word.
func PortNamed(word string) Port {
	switch word {
	case "pack":
		return PortPack
	case "terminals":
		return PortTerminals
	case "vehicle":
		return PortVehicle
	default:
		return PortUnknown
	}
}

// Charger is one charger as it is plugged in. Voltages are for the whole pack
// that it charges.
type Charger struct {
	MadeFor Purpose
	// EndLeastV and EndMostV bound the voltage that the charger lets the pack
	// rise to: the same for a regulated one, far apart for one whose end
	// voltage its label does not tell. Where EndMostV is zero no more is known than
	// that it rises to EndLeastV.
	EndLeastV, EndMostV float64
	Regulated           bool    // the end voltage is held, so that the current falls off by itself
	PrintedV            float64 // what the label prints; 0 = unknown
	CurrentA            float64 // greatest current; 0 = unknown
	Output              Output
	Polarity            Polarity
	Stops               Stops
	TimerH              float64 // hours after which a timer ends the charge; 0 = unknown
	FloatV              float64 // voltage held afterwards; 0 = off
	SuppliedWithPack    bool    // the maker of the pack supplied it for this pack
	WhyEnd              string  // how the end voltage was read, one plain sentence
	EndSource           string  // ID of the source of that reading
}

// Size says for how many of two packs in series a charger is made.
type Size int

// What its volts tell.
const (
	SizeUnknown Size = iota
	ForOne           // for each of them by itself
	ForPair          // for both as one
)

// SizeFor reads off a charger's volts whether they are those of one pack or of two
// such in series: the volts of two are twice those of one, and nothing lies near the
// middle. Without a pack it cannot.
func (c *Charger) SizeFor(one *battery.Model) Size {
	if one == nil {
		return SizeUnknown
	}
	most := one.Spec().Profile.Charge.CellMaxV * float64(one.Spec().CellsInSeries)
	switch v := max(c.EndLeastV, c.PrintedV); {
	case !(v > 0 && v <= 2.3*most):
		return SizeUnknown
	case v > 1.5*most:
		return ForPair
	default:
		return ForOne
	}
}

// Joined says how many packs hang on the charger.
type Joined int

// The ways of charging.
const (
	Single     Joined = iota // one pack, or blocks wired as one pack by its maker
	InSeries                 // two packs joined in series, charged as one
	InParallel               // two packs joined in parallel, charged as one
)

// Fit is the answer to "may this charger be used".
type Fit int

// The answers, worst first.
const (
	Refused  Fit = iota // do not connect
	Unproven            // not shown to be safe: find out first
	WithCare            // may be used as the findings say
	Matches             // right charger
)

// fitNames is indexed by Fit.
var fitNames = [...]string{"no", "not shown", "with care", "yes"}

// String returns "no", "not shown", "with care" or "yes".
func (f Fit) String() string {
	if f < Refused || f > Matches {
		return fmt.Sprintf("fit %d", int(f))
	}
	return fitNames[f]
}
