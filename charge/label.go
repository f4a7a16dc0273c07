package charge

import (
	"errors"
	"fmt"
	"strings"
)

// Label is what a charger's label says, and no more than that. A value that
// the label does not give is zero; what can be read in more than one way is
// left open and said in Unclear.
type Label struct {
	Text     string   // as given, spaces trimmed
	PrintedV float64  // printed output volts; of several outputs the highest; 0 = not printed
	PrintedA float64  // printed output amps at PrintedV; 0 = not printed
	PrintedW float64  // printed watts or volt-amps; 0 = not printed
	Outputs  int      // how many different output voltages are printed
	Output   Output   // direct or alternating current
	Polarity Polarity // of the plug
	MadeFor  Purpose  // what the label says that it charges
	Stops    Stops    // only when the label says so
	Unclear  []string // plain sentences on what the label leaves open
}

// Output is the kind of current that a charger gives.
type Output int

// The kinds of output.
const (
	OutputUnknown Output = iota
	DC
	AC
)

// Polarity is the polarity of a round plug.
type Polarity int

// The polarities.
const (
	PolarityUnknown Polarity = iota
	CentrePositive
	CentreNegative
)

// PolarityNamed returns the polarity that a setup file's word stands for,
// [PolarityUnknown] for any other word.
func PolarityNamed(word string) Polarity {
	switch word {
	case "centre positive":
		return CentrePositive
	case "centre negative":
		return CentreNegative
	default:
		return PolarityUnknown
	}
}

// Purpose is what a charger was made to charge.
type Purpose int

// The purposes. PowerSupply is anything that was made to run an appliance, not
// to charge a battery: the brick of a laptop, a supply for lamps.
const (
	PurposeUnknown Purpose = iota
	ForLeadAcid
	ForLithiumIon
	ForLithiumIronPhosphate
	ForNickel
	PowerSupply
)

// purposeNames is indexed by Purpose.
var purposeNames = [...]string{
	"not said", "lead-acid", "lithium-ion", "lithium iron phosphate", "nickel-metal hydride", "power supply",
}

// String returns the purpose in plain words.
func (p Purpose) String() string {
	if p < PurposeUnknown || p > PowerSupply {
		return fmt.Sprintf("purpose %d", int(p))
	}
	return purposeNames[p]
}

// purposeKeys is indexed by Purpose.
var purposeKeys = [...]string{"", "lead-acid", "li-ion", "lifepo4", "nimh", "power supply"}

// Key returns the word that a setup file has for the purpose, empty where it has none;
// [PurposeNamed] is the way back.
func (p Purpose) Key() string {
	if p < PurposeUnknown || p > PowerSupply {
		return ""
	}
	return purposeKeys[p]
}

// GivesDC reports whether every charger of the purpose gives direct current: what holds the end
// voltage of lithium is electronics, behind a rectifier. Simple ones for lead-acid or nickel may be
// transformers whose rectifier sits in the vehicle. Common practice, no published source.
func (p Purpose) GivesDC() bool { return p == ForLithiumIon || p == ForLithiumIronPhosphate }

// Stops says whether a charger ends the charge.
type Stops int

// The ways in which a charger ends a charge, or does not.
const (
	StopsUnknown  Stops = iota
	StopsByItself       // on falling current, or goes over to a float voltage
	StopsByTimer        // after set hours, whatever the battery does
	StopsNever          // runs until somebody pulls the plug
)

// Limits of what a label can sensibly say. They keep a slip of the finger out,
// they are not limits of physics.
const (
	maxLabelBytes = 4096
	maxLabelV     = 1000.0
	maxLabelA     = 200.0
)

// ErrLabel is wrapped by every error of [ParseLabel].
var ErrLabel = errors.New("charge: cannot read the label")

// ParseLabel reads the text of a charger's label as people type it off: volts,
// amps, direct or alternating current, polarity and what it is made for. Text
// that it does not know is skipped. A part of the label headed "input" is left
// out. It returns an error, wrapping [ErrLabel], when neither volts nor amps
// are found or when a figure is beyond anything that a battery charger gives.
func ParseLabel(text string) (Label, error) {
	text = strings.TrimSpace(text)
	if len(text) > maxLabelBytes {
		return Label{}, fmt.Errorf("%w: %d bytes long (want at most %d)", ErrLabel, len(text), maxLabelBytes)
	}
	l := Label{Text: text}
	side := outputSide(plainSigns(text))
	l.readPurpose(text)
	l.readOutput(side)
	l.readPolarity(text)
	if err := l.readFigures(side); err != nil {
		return Label{}, err
	}
	if l.PrintedV == 0 && l.PrintedA == 0 {
		return Label{}, fmt.Errorf("%w: no volts and no amps in %q (want something like \"14.7 V 1.5 A\")", ErrLabel, shorten(text))
	}
	l.sayUnclear()
	return l, nil
}
