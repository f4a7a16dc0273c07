package answer

import "fmt"

// Topic is the part of a report that a finding or a note belongs to.
type Topic string

// The topics.
const (
	TopicPack     Topic = "pack"
	TopicRide     Topic = "ride"
	TopicSpeed    Topic = "speed"
	TopicLaunch   Topic = "launch"
	TopicPath     Topic = "path"
	TopicCutoff   Topic = "cutoff"
	TopicCharge   Topic = "charge"
	TopicStorage  Topic = "storage"
	TopicMeasured Topic = "measured"
	TopicOriginal Topic = "original"
)

// Item is a thing that somebody can point at, for the answer part by part.
type Item string

// The items. A finding that concerns the whole vehicle has none.
const (
	Board     Item = "board"
	Motors    Item = "motors"
	Pedal     Item = "pedal switch"
	Gears     Item = "gears"
	Wire      Item = "wire"
	Fuse      Item = "fuse"
	Accessory Item = "steering and lights"
	Battery   Item = "battery"
	Charger   Item = "charger"
	Rider     Item = "child"
)

// Change is what a finding asks to be changed. Findings that one change
// answers have the same one: it is listed once.
type Change string

// The changes. The zero value asks for nothing, or for something of its own
// that the advice says.
const (
	ChangeNone       Change = ""
	FitController    Change = "controller"    // a speed control carries the current, the pedal is only a signal
	LimitCurrent     Change = "current limit" // a controller's limit on the current
	LimitSpeed       Change = "speed limit"
	LoadLess         Change = "less load" // easier ground, less weight, pauses, less voltage
	FitConverter     Change = "converter" // a step-down converter for what stands less volts
	FitFuse          Change = "fuse"
	MoveFuse         Change = "fuse place"
	FitWire          Change = "wire"  // thicker wire, or a way that carries more
	FitJoint         Change = "joint" // connector, crimp or switch
	FitCutoff        Change = "cutoff"
	FitPack          Change = "pack" // another battery
	FitCharger       Change = "charger"
	ChargeElsewhere  Change = "charging place"
	WaitBeforeCharge Change = "wait before charging"
	FitBrake         Change = "brake"
	KeepCharged      Change = "keep charged" // in storage, or between rides
	WarmUp           Change = "warm up"
	LookUp           Change = "look up" // nothing to buy: find out what is there
)

// Habits are ways of using a vehicle that spare it, one short sentence each;
// they put nothing right.
const (
	HabitKeepClear   = "Keep clear of roads, water, steps and slopes."
	HabitLetGo       = "Let go of the pedal at once when the vehicle does not move."
	HabitStandStill  = "Stand still before you switch to reverse."
	HabitFirmGround  = "Keep to firm and level ground."
	HabitPauses      = "Make pauses, above all after slopes and long grass."
	HabitPackOff     = "After every ride take the pack off, let it cool and charge it."
	HabitSwitchOff   = "Plug the pack in with the switch off."
	HabitChargeWarm  = "Charge indoors, with the pack at room temperature."
	HabitCheckPoles  = "Check plus and minus with a meter before the first charge."
	HabitFeelJoints  = "Feel plugs and wire after ten minutes; what is too warm to hold is renewed."
	HabitChargeApart = "Take the two packs apart to charge them, each alone on its own charger."
	HabitTopUp       = "Top the pack up while it is put away."
	HabitWatchCharge = "Stay near while it charges, and unplug it when it is full."
)

// Reads says how the number that was found is to be read.
type Reads int

// The readings. The zero value is a plain number against a limit.
const (
	AsNumber  Reads = iota
	AsNone          // there is none of it: the number 0 stands for that
	AsUnknown       // nobody knows: the number stands for nothing
	AsAtOnce        // no time at all
	AsTold          // the finding tells something; its number is not held against a limit
)

// Side says which side of its limit a number should be on. The zero value is
// Below.
type Side int

// The sides.
const (
	Below Side = iota // the limit is the most that is right
	Above             // the limit is the least that is right
)

// String returns "at most" or "at least".
func (s Side) String() string {
	if s == Above {
		return "at least"
	}
	return "at most"
}

// MarshalText makes JSON carry "at most" or "at least".
func (s Side) MarshalText() ([]byte, error) { return []byte(s.String()), nil }

// UnmarshalText reads "at most" or "at least" back.
func (s *Side) UnmarshalText(text []byte) error {
	switch string(text) {
	case Below.String():
		*s = Below
	case Above.String():
		*s = Above
	default:
		return fmt.Errorf("answer: unknown side %q (want at most or at least)", text)
	}
	return nil
}
