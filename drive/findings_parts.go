package drive

import (
	"fmt"
	"math"
	"strconv"

	"example.org/packcheck/answer"
	said "example.org/packcheck/internal/quantity"
)

// What the checks of board, contacts, converter, plug and reversal find.
const (
	CodeRunningOverController = "running-over-controller"
	CodeBoardVoltsUnknown     = "board-volts-unknown"
	CodeBoardOvervoltage      = "board-overvoltage"
	CodeContactsMayWeld       = "contacts-may-weld"
	CodeConverterLimitUnknown = "converter-limit-unknown"
	CodeConverterTooSmall     = "converter-too-small"
	CodePlugInSpark           = "plug-in-spark"
	CodeReversal              = "reversal"
)

// designMargin is how far above a vehicle's design voltage its parts may be
// taken to be made for, where they print nothing: a 12 V lead-acid block
// reaches 14.7 V on its charger. Common practice, no published source.
const designMargin = 1.25

// BoardCheck is a board or set of contacts and the volts it will see.
type BoardCheck struct {
	Controller Controller
	FullV      float64 // pack, full
	DesignV    float64 // nominal volts that the vehicle was made for; 0 = not known
	WeakestV   float64 // highest volts of the weakest part, where known; 0 = not known
	PeakA      float64 // battery current at launch
	SwitchA    float64 // what the contacts are made for; 0 = not known
}

// Findings judges the volts on the board and the current through plain
// contacts. A chopper does not protect a board: its input sees the whole bus.
func (b BoardCheck) Findings() []answer.Finding {
	return append(b.volts(), b.contacts()...)
}

// partMargin is how much more than the full battery's volts a part is made for that is
// bought to stand them: braking motors and wires that are switched raise them. Common
// practice, no published source.
const partMargin = 1.2

// MadeForV returns the volts that a part which is to be bought has to be made for.
func MadeForV(fullV float64) float64 { return math.Ceil(partMargin*fullV - 1e-9) }

// seenV is what the board sees.
func (b BoardCheck) seenV() float64 {
	if c := b.Controller.Converter; c.fitted() {
		return min(c.OutV, b.FullV)
	}
	return b.FullV
}

func (b BoardCheck) volts() []answer.Finding {
	f := answer.Finding{
		Code: CodeBoardOvervoltage, Topic: answer.TopicLaunch, Item: answer.Board, Source: srcRating, Unit: "V",
		Found: b.seenV(), Limit: b.WeakestV, Decides: []string{answer.KeyVehicleWeakestPartVoltage}, LimitKey: answer.KeyVehicleWeakestPartVoltage,
	}
	part, stands := "the weakest part", "it stands"
	if m := b.Controller.MaxV; m > 0 && (f.Limit == 0 || m < f.Limit) {
		f.Limit, part, f.Decides, f.LimitKey = m, "the controller", []string{answer.KeyControllerMaxVoltage}, answer.KeyControllerMaxVoltage
	}
	guessed := f.Limit == 0 && b.DesignV > 0
	if guessed {
		f.Limit, f.Source, part = b.DesignV*designMargin, srcOwn, "a "+volts(b.DesignV)+" vehicle"
		f.Decides = append(f.Decides, answer.KeyVehicleDesignVoltage)
		stands = "its parts are taken to stand"
	}
	if f.Limit == 0 {
		f.Code, f.Level, f.Harm, f.Source, f.Reads, f.Change = CodeBoardVoltsUnknown, answer.Watch, answer.House, srcOwn, answer.AsTold, answer.LookUp
		f.Decides = append(f.Decides, answer.KeyControllerMaxVoltage)
		f.Title = fmt.Sprintf("What voltage the vehicle's electrics stand is not known: they get %s from the full pack.", volts(f.Found))
		f.Advice = "Read the volts printed on board, capacitors and relays before plugging in."
		if !isNumber(f.Found) {
			f = f.Unread("What voltage the vehicle's electrics stand, and what they get, is not known.")
		}
		return []answer.Finding{f}
	}
	if !isNumber(f.Found) {
		return []answer.Finding{f.Unread("Whether the vehicle's electrics get too many volts is not known: the full pack's are not.")}
	}
	if !over(f.Found, f.Limit) {
		return nil
	}
	// A little over, a part wears out and fails; far over, capacitors burst and
	// transistors fail shorted, which starts fires.
	f.Level, f.Harm, f.Gravity = answer.Danger, answer.House, 1
	if !over(f.Found, f.Limit*overvoltageFar) || guessed && !over(f.Found, b.DesignV*guessedFar) {
		f.Level, f.Harm, f.Gravity = answer.FixFirst, answer.Part, 0
	}
	f.Change = answer.FitConverter
	f.Advice = "Use a pack of the right voltage, or a step-down converter before it; or replace every part that sees this voltage."
	if b.Controller.Converter.fitted() {
		f.Advice = fmt.Sprintf("Set the converter to %s or less, or replace every part that sees its voltage by one made for it.", volts(f.Limit))
	}
	if b.Controller.Chopper {
		f.Advice += " Driving slowly does not help: the controller's input sees the whole pack voltage at any speed."
	}
	from := "full pack's"
	if f.Found < b.FullV {
		from = "converter's"
	}
	found, most := said.SaidBeside(said.Voltage, f.Found, f.Limit)
	f.Title = fmt.Sprintf("The %s %s are too much for %s: %s %s.", from, found, part, stands, most)
	return []answer.Finding{f}
}

// RunningCheck is level driving against what the controller carries all the time.
type RunningCheck struct {
	MotorA float64 // of all motors together
	Limits Limits
	Read   bool // MotorA follows from a current that was read
}

// Findings judges the running current. Where no rating was given it says nothing.
func (k RunningCheck) Findings() []answer.Finding {
	if most := k.Limits.ControllerContinuousA; !(most > 0) || !over(k.MotorA, most) {
		return nil
	}
	f := answer.Finding{
		Code: CodeRunningOverController, Level: answer.FixFirst, Harm: answer.Part, Topic: answer.TopicRide, Item: answer.Board, Change: answer.FitController,
		Unit: "A", Found: k.MotorA, Limit: k.Limits.ControllerContinuousA, Source: srcRating, LimitKey: answer.KeyControllerContinuousCurrent,
		Title:   "Driving on the level takes more current than the controller carries for long.",
		Advice:  "Use a controller made for more, or look for what makes it run so hard: brakes or wheels that rub, soft ground, too much load.",
		Decides: []string{answer.KeyControllerContinuousCurrent, answer.KeyVehicleGround},
	}
	if k.Read {
		f.Decides = f.Decides[:1]
	}
	return []answer.Finding{f}
}

// How far above a printed limit, and above the design voltage where none is
// printed, volts are a danger. Own choice; the second is the ratio of the
// recalled 18 V system to 12 V.
const (
	overvoltageFar = 1.1
	guessedFar     = 1.5
)

// contacts warns of welded pedal contacts, which leave the motor running. That
// they weld is the recall's; how much more they stand is a margin or a rating.
func (b BoardCheck) contacts() []answer.Finding {
	overV := b.DesignV > 0 && over(b.seenV(), b.DesignV*designMargin)
	overA := b.SwitchA > 0 && over(b.PeakA, b.SwitchA)
	if b.Controller.Chopper || !overV && !overA {
		return nil
	}
	f := answer.Finding{
		Code: CodeContactsMayWeld, Level: answer.Danger, Harm: answer.Child, Topic: answer.TopicLaunch, Item: answer.Pedal, Source: srcWeld + ", " + srcOwn,
		Unit: "V", Found: b.seenV(), Limit: b.DesignV * designMargin, Change: answer.FitController, Gravity: 3,
		Decides: []string{answer.KeyControllerKind, answer.KeyVehicleDesignVoltage},
		Title:   "The pedal contacts may weld and the vehicle does not stop: the surge of a start can melt them together.",
		Advice: fmt.Sprintf("Fit a current-limiting controller made for %.0f V or more. ", MadeForV(b.FullV)) +
			"Or use a pack of the voltage that the vehicle was made for. Until then nobody rides. Always keep a switch within reach that cuts the pack off.",
	}
	if overA {
		f.Unit, f.Found, f.Limit, f.Source = "A", b.PeakA, b.SwitchA, srcWeld+", "+srcRating
		f.Decides[1], f.LimitKey = answer.KeyControllerContinuousCurrent, answer.KeyControllerContinuousCurrent
	}
	return []answer.Finding{f}
}

// ConverterCheck is a step-down converter and what the board asks of it.
type ConverterCheck struct {
	Converter Converter
	LaunchA   float64 // board-side peak with no limit in the way
	ReverseA  float64 // board-side, at speed; 0 = cannot happen
	RunningA  float64
}

// Findings judges the converter's limit against launch and reversal. Running
// amps say nothing: a converter of twice those can still fail at every start.
func (k ConverterCheck) Findings() []answer.Finding {
	c := k.Converter
	if !c.fitted() {
		return nil
	}
	need, when := k.LaunchA, "the launch"
	if k.ReverseA > need {
		need, when = k.ReverseA, "reversing"
	}
	f := answer.Finding{
		Level: answer.FixFirst, Harm: answer.Part, Topic: answer.TopicLaunch, Item: answer.Board, Source: srcRating,
		Unit: "A", Found: need, Limit: c.LimitA, Decides: []string{answer.KeyControllerConverterLimit}, LimitKey: answer.KeyControllerConverterLimit,
	}
	switch {
	case c.LimitA == 0:
		f.Code, f.Reads, f.Change = CodeConverterLimitUnknown, answer.AsTold, answer.LookUp
		f.Title = fmt.Sprintf("The step-down converter's limit is not known: %s asks for %s.", when, amps(need))
		f.Advice = fmt.Sprintf("Find the converter's peak rating: it must be above %s. The %s of steady running are not what counts.", amps(need), amps(k.RunningA))
	case over(need, c.LimitA):
		f.Code, f.Change = CodeConverterTooSmall, answer.FitConverter
		asked, gives := said.SaidBeside(said.Current, need, c.LimitA)
		f.Title = fmt.Sprintf("The converter gives %s but %s asks for %s: it will cut out or burn.", gives, when, asked)
		f.Advice = fmt.Sprintf("Behind it fit a controller that limits the current to %s or less and stops before it reverses; or instead of both one made for the pack's voltage. Without a limit the converter must give more than %s: launch and reversal count, not steady running.", gives, amps(need))
	default:
		return nil
	}
	return []answer.Finding{f}
}

// sparkWatchA is the inrush above which a plug-in spark is worth a word: the
// order of what wears a blade connector. Own choice.
const sparkWatchA = 50

// Findings warns of the spark and advises a pre-charge resistor.
func (s Spark) Findings() []answer.Finding {
	if !over(s.PeakA, sparkWatchA) {
		return nil
	}
	p := s.Precharge
	return []answer.Finding{{
		Code: CodePlugInSpark, Level: answer.Watch, Topic: answer.TopicLaunch, Item: answer.Board, Source: srcPrecharge, Gravity: -1,
		Unit: "A", Found: s.PeakA, Limit: sparkWatchA, Habit: answer.HabitSwitchOff, Decides: []string{answer.KeyControllerInputCapacitance},
		Title: fmt.Sprintf("Plugging in makes a spark: up to %s for an instant into the controller's capacitors.", amps(s.PeakA)),
		Advice: fmt.Sprintf("Plug in with the switch off. A pre-charge resistor of %s Ohm, bridged after %.1f s, tames the spark; it must absorb %.2g J each time.",
			strconv.FormatFloat(p.Ohm, 'f', -1, 64), p.ChargedS, p.EnergyJ),
	}}
}

// ReversalCheck is a reversal at speed and what to hold it against.
type ReversalCheck struct {
	Reversal Reversal
	Limits   Limits
	BlockedA float64 // motor-side, wheels blocked
}

// Findings judges switching to reverse while rolling.
func (k ReversalCheck) Findings() []answer.Finding {
	f := answer.Finding{
		Code: CodeReversal, Level: answer.Watch, Topic: answer.TopicLaunch, Item: answer.Motors, Source: srcMotorLaw, Gravity: -1,
		Unit: "A", Found: k.Reversal.MotorA, Limit: k.BlockedA, Habit: answer.HabitStandStill, Decides: []string{answer.KeyControllerReverses},
		Title:  fmt.Sprintf("Reversing while rolling drives %.2g times the blocked current through the motors.", k.Reversal.MotorA/k.BlockedA),
		Advice: "Stop before reversing, and teach the driver to.",
	}
	l := k.Limits
	for _, p := range [...]struct {
		item      answer.Item
		key       string // of the limit
		part      string
		a, limitA float64
	}{
		{answer.Battery, answer.KeyPackMaxCurrent, "the pack", k.Reversal.BatteryA, l.PackA},
		{answer.Pedal, answer.KeyControllerContinuousCurrent, "the pedal switch", k.Reversal.BatteryA, l.SwitchA},
		{answer.Board, answer.KeyControllerPeakCurrent, "the controller", k.Reversal.MotorA, l.ControllerPeakA},
	} {
		if p.item == answer.Battery && over(p.a, p.limitA) && !over(p.a, briefOver*p.limitA) {
			f.Item, f.Title = answer.Battery, "Reversing while rolling takes for a moment more than the pack gives for good." // over before a battery grows warm, as at a launch
			continue
		}
		if p.limitA > 0 && over(p.a, p.limitA) {
			f.Level, f.Harm, f.Item, f.Source, f.Found, f.Limit = answer.FixFirst, answer.Part, p.item, srcRating, p.a, p.limitA
			f.Decides, f.LimitKey = append(f.Decides, p.key), p.key
			f.Title = fmt.Sprintf("Reversing while rolling asks too much of %s: at most %s.", p.part, l.most(p.item, p.limitA))
			f.Change = answer.FitController
			f.Advice = "Fit a controller that reverses only after a standstill. Until then stop before reversing, and teach the driver to."
			break
		}
	}
	if f.Level == answer.Watch && !over(k.Reversal.MotorA, k.BlockedA) {
		return nil
	}
	return []answer.Finding{f}
}
