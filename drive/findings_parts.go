package drive

import (
	"fmt"

	"example.org/packcheck/finding"
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
func (b BoardCheck) Findings() []finding.Finding {
	return append(b.volts(), b.contacts()...)
}

// seenV is what the board sees.
func (b BoardCheck) seenV() float64 {
	if c := b.Controller.Converter; c.fitted() {
		return min(c.OutV, b.FullV)
	}
	return b.FullV
}

func (b BoardCheck) volts() []finding.Finding {
	limit, source, part := b.WeakestV, srcRating, "its weakest part"
	if m := b.Controller.MaxV; m > 0 && (limit == 0 || m < limit) {
		limit, part = m, "the controller"
	}
	guessed := limit == 0 && b.DesignV > 0
	if guessed {
		limit, source, part = b.DesignV*designMargin, srcOwn, "its design"
	}
	seen := b.seenV()
	if limit == 0 {
		return []finding.Finding{{
			Code: "board-volts-unknown", Level: finding.Watch, Source: srcOwn, Unit: "V", Found: seen,
			Title:  fmt.Sprintf("Nothing says what voltage the vehicle's electrics stand; this pack gives %.1f V when full.", seen),
			Advice: "Read the ratings on board, capacitors and relays before plugging in.",
		}}
	}
	if seen <= limit {
		return nil
	}
	level := finding.Danger
	if seen <= limit*1.1 || guessed && seen <= b.DesignV*1.5 {
		level = finding.FixFirst
	}
	advice := "Use a pack of the right voltage, or replace every part that sees the bus with one made for it."
	if b.Controller.Chopper {
		advice = "Lowering the duty does not help: the board sees the whole battery voltage whatever the chopper does. " + advice
	}
	return []finding.Finding{{
		Code: "board-overvoltage", Level: level, Source: source, Unit: "V", Found: seen, Limit: limit, Advice: advice,
		Title: fmt.Sprintf("The pack gives %.1f V when full; %s stands %.1f V.", seen, part, limit),
	}}
}

// contacts warns of welded pedal contacts, which leave the motor running.
func (b BoardCheck) contacts() []finding.Finding {
	overV := b.DesignV > 0 && b.seenV() > b.DesignV*designMargin
	overA := b.SwitchA > 0 && b.PeakA > b.SwitchA
	if b.Controller.Chopper || !overV && !overA {
		return nil
	}
	f := finding.Finding{
		Code: "contacts-may-weld", Level: finding.Danger, Source: srcWeld, Unit: "V", Found: b.seenV(), Limit: b.DesignV,
		Title:  "The pedal's contacts may weld together in the first surge: then the vehicle does not stop when the foot is lifted.",
		Advice: "Do not ride like this. Use a controller with a current limit and a voltage that the vehicle was made for; keep a switch within reach that cuts the pack off.",
	}
	if overA {
		f.Unit, f.Found, f.Limit = "A", b.PeakA, b.SwitchA
	}
	return []finding.Finding{f}
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
func (k ConverterCheck) Findings() []finding.Finding {
	c := k.Converter
	if !c.fitted() {
		return nil
	}
	need, when := k.LaunchA, "launch"
	if k.ReverseA > need {
		need, when = k.ReverseA, "reversing at speed"
	}
	switch {
	case c.LimitA == 0:
		return []finding.Finding{{
			Code: "converter-limit-unknown", Level: finding.FixFirst, Source: srcRating, Unit: "A", Found: need,
			Title:  fmt.Sprintf("The step-down converter's current limit is not known; %s asks for %.0f A.", when, need),
			Advice: "Find the converter's peak rating. The running current of " + fmt.Sprintf("%.0f A", k.RunningA) + " is not what it must stand.",
		}}
	case need > c.LimitA:
		return []finding.Finding{{
			Code: "converter-too-small", Level: finding.FixFirst, Source: srcRating, Unit: "A", Found: need, Limit: c.LimitA,
			Title:  fmt.Sprintf("The step-down converter gives %.0f A, but %s asks for %.0f A: it will cut out or burn.", c.LimitA, when, need),
			Advice: "The converter's limit must be above launch and reversal, not above the running amps. A controller made for the pack's voltage needs no converter.",
		}}
	}
	return nil
}

// sparkWatchA is the inrush above which a plug-in spark is worth a word: the
// order of what wears a blade connector. Own choice.
const sparkWatchA = 50

// Findings warns of the spark and advises a pre-charge resistor.
func (s Spark) Findings() []finding.Finding {
	if s.PeakA <= sparkWatchA {
		return nil
	}
	p := s.Precharge
	return []finding.Finding{{
		Code: "plug-in-spark", Level: finding.Watch, Source: srcPrecharge, Unit: "A", Found: s.PeakA, Limit: sparkWatchA,
		Title:  fmt.Sprintf("Plugging in makes a spark: up to %.0f A for an instant into the controller's capacitors.", s.PeakA),
		Advice: fmt.Sprintf("A pre-charge resistor of %.3g Ohm that is bridged after %.1f s tames it; it must absorb %.2g J each time. Plug in with the switch off.", p.Ohm, p.ChargedS, p.EnergyJ),
	}}
}

// ReversalCheck is a reversal at speed and what to hold it against.
type ReversalCheck struct {
	Reversal Reversal
	Limits   Limits
	BlockedA float64 // motor-side, wheels blocked
}

// Findings judges switching to reverse while rolling.
func (k ReversalCheck) Findings() []finding.Finding {
	f := finding.Finding{
		Code: "reversal", Level: finding.Watch, Source: srcMotorLaw, Unit: "A", Found: k.Reversal.MotorA, Limit: k.BlockedA,
		Title:  fmt.Sprintf("Switching to reverse while rolling drives %.0f A through the motors, %.1f times the blocked current.", k.Reversal.MotorA, k.Reversal.MotorA/k.BlockedA),
		Advice: "Teach the driver to stop first. A controller that waits for a stand before reversing ends the question.",
	}
	l := k.Limits
	for _, p := range [...]struct{ a, limitA float64 }{
		{k.Reversal.BatteryA, l.PackA},
		{k.Reversal.BatteryA, l.SwitchA},
		{k.Reversal.MotorA, l.ControllerPeakA},
	} {
		if p.limitA > 0 && p.a > p.limitA {
			f.Level, f.Source, f.Found, f.Limit = finding.FixFirst, srcRating, p.a, p.limitA
			break
		}
	}
	if f.Level == finding.Watch && !(k.Reversal.MotorA > k.BlockedA) {
		return nil
	}
	return []finding.Finding{f}
}
