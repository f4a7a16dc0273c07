package drive

import (
	"fmt"

	"example.org/packcheck/answer"
)

// Brake is what stops a vehicle when the pedal is let go.
type Brake int

// The brakes.
const (
	BrakeUnknown Brake = iota
	BrakeMotors        // its motors, shorted by switch or controller
	BrakePedal         // one that the child has to work
	BrakeNone          // it rolls on
)

// freeMS is the speed up to which EN 71-1 asks for no brake.
const freeMS = 1

// unbraked says that nothing stops a vehicle that goes faster than may roll
// free.
func (k SpeedCheck) unbraked() []answer.Finding {
	if k.Brake != BrakeNone || !over(k.SpeedMS, freeMS) {
		return nil
	}
	f := answer.Finding{
		Code: CodeNoBrake, Level: answer.FixFirst, Harm: answer.Child, Topic: answer.TopicSpeed, Item: answer.Rider, Change: answer.FitBrake,
		Unit: "m/s", Found: k.SpeedMS, Limit: freeMS, Source: srcFree, Habit: answer.HabitKeepClear, Decides: []string{answer.KeyVehicleBrake},
		Title:  "Nothing stops it when the pedal is let go, and it goes faster than a toy may roll free.",
		Advice: "Fit a pedal switch or speed control that brakes with the motors when the pedal is up, or a brake.",
	}
	age := k.AgeYears
	if age <= 0 {
		age = -1
	}
	if brisk := PaceFor(age).WatchMS; over(k.SpeedMS, brisk) {
		f.Level, f.Limit, f.Source = answer.Danger, brisk, srcFree+", "+srcOwn
		f.Title = "Nothing stops it when the pedal is let go, and it is fast for its driver even with a brake."
		if !k.Measured {
			f.Decides = append(f.Decides, answer.KeyGearsRatio, answer.KeyMotorsTorqueConstant)
		}
	}
	return []answer.Finding{f}
}

// ShortedNSPerM returns how hard motors that are shorted brake a vehicle, in N for
// each m/s: what their own voltage drives through their windings. Friction in
// motors and gears, which helps, is left out, and so are the contacts.
func (v Vehicle) ShortedNSPerM() float64 {
	lever := v.Motor.TorqueConstant * v.GearRatio / v.WheelRadiusM // N for each A of a motor, and V for each m/s
	return float64(v.Motors) * lever * lever / v.Motor.WindingOhm
}

// seenMS is from where on a vehicle that creeps is given a speed: 0.1 km/h, half a metre in
// twenty seconds. Own choice.
const seenMS = 0.1 / 3.6

// rolls judges a vehicle that its slope pulls away, by what brakes it. The force
// is in N.
func (k SlopeCheck) rolls(f answer.Finding, pull float64) answer.Finding {
	switch k.Brake {
	case BrakeNone:
		f.Level, f.Limit, f.Source, f.Change, f.Gravity = answer.Danger, 0, srcFree, answer.LoadLess, 1
		f.Title = "On this slope it rolls away with the child, and nothing brakes it."
		f.Advice = "Keep off slopes: it has no brake."
		f.Decides = append(f.Decides, answer.KeyVehicleBrake)
	case BrakePedal:
		f.Title = "On this slope it rolls away as soon as its brake is let go."
		f.Advice = "Let only children ride who know the brake and can hold it; otherwise keep to the level."
		f.Decides = append(f.Decides, answer.KeyVehicleBrake)
	case BrakeMotors:
		if !(k.ShortedNSPerM > 0) {
			break
		}
		creep := pull / k.ShortedNSPerM
		f.Decides = append(f.Decides, answer.KeyVehicleBrake)
		f.Unit, f.Found, f.Limit, f.Source = "m/s", creep, freeMS, srcFree+", "+srcMotorLaw
		f.Title = "On this slope its motors slow it and do not hold it: it creeps away, hardly to be seen."
		if creep >= seenMS {
			f.Title = fmt.Sprintf("On this slope its motors slow it and do not hold it: it creeps away at about %s.", speedWords(creep))
		}
		if over(creep, freeMS) {
			f.Level = answer.FixFirst
			f.Title = fmt.Sprintf("On this slope its motors brake too little: it runs away at about %s.", speedWords(creep))
			f.Advice = "Keep to gentler ground, or fit a brake."
			f.Decides = append(f.Decides, answer.KeyGearsRatio)
		}
	}
	return f
}
