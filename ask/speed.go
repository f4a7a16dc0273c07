package ask

import (
	"fmt"
	"math"

	"example.org/packcheck/answer"
	"example.org/packcheck/battery"
	"example.org/packcheck/drive"
)

// Speed asks how fast a motor and its gears turn a wheel.
type Speed struct {
	NoLoadRPM      float64 // printed speed of the motor, 100 to 100 000 rpm
	Ratio          float64 // motor turns per wheel turn, 1 to 2000; 0 where teeth are told
	MotorTeeth     float64 // of the pinion on the motor; 0 = not told
	WheelTeeth     float64 // of the gear on the wheel; 0 = not told
	WheelDiameterM float64 // 0.03 to 1.2 m
	RatedV         float64 // volts that the printed speed is for; 0 = those of the battery
	PackV          float64 // volts of the battery; 0 = the rated ones
}

// What the ground leaves of the speed with the wheels up: a 12 V motor at 10 A
// keeps (12 - 10 R)/12 of it, 58 % with 0.50 Ohm in all and 88 % with 0.14 Ohm
// (motor-equations; both resistances are of published 12 V motors).
const (
	groundLeast = 0.58
	groundMost  = 0.88
)

// Answer returns the speed with the wheels up; beside it what about is left of
// it on the ground.
func (q Speed) Answer() (Answer, error) {
	var a Answer
	var in inputs
	in.within("NoLoadRPM", q.NoLoadRPM, 100, 100000, "rpm")
	in.within("WheelDiameterM", q.WheelDiameterM, 0.03, 1.2, "m")
	in.unless("RatedV", q.RatedV, 1, 100, "V")
	in.unless("PackV", q.PackV, 1, 100, "V")
	in.unless("MotorTeeth", q.MotorTeeth, 4, 500, "teeth")
	in.unless("WheelTeeth", q.WheelTeeth, 4, 2000, "teeth")
	ratio := q.Ratio
	switch teeth := q.MotorTeeth > 0 && q.WheelTeeth > 0; {
	case teeth && q.Ratio == 0:
		ratio = q.WheelTeeth / q.MotorTeeth
	case q.Ratio == 0 || q.MotorTeeth != 0 || q.WheelTeeth != 0:
		in.fault("the gears are told once; want a ratio, such as 110:1, or the teeth of both gears, such as 12 teeth and 70 teeth")
	}
	if ratio != 0 {
		in.within("Ratio", ratio, 0.1, 2000, "")
	}
	if err := in.err(); err != nil {
		return Answer{}, err
	}
	volt := 1.0
	if q.RatedV > 0 && q.PackV > 0 {
		volt = q.PackV / q.RatedV
	} else {
		a.assume("printed speed at the battery's volts")
	}
	up := q.NoLoadRPM / 60 / ratio * math.Pi * q.WheelDiameterM * volt
	a.Asked = fmt.Sprintf("how fast %g rpm and %s turn a wheel of %s", q.NoLoadRPM, numberWords(ratio, ":1"), length(q.WheelDiameterM))
	a.is(exactly("wheels up", up, "m/s"))
	ground := answer.Range{Low: groundLeast * up, Likely: (groundLeast + groundMost) / 2 * up, High: groundMost * up}
	a.beside(ranged("on the ground, about", ground, "m/s"))
	a.say("%s with the wheels up. The ground leaves about %s.", speed(up), figureWords(a.Beside[0]))
	if volt != 1 {
		a.say("Speed goes with the volts: %s for %s is %.2f times as fast, and a bump has %.1f times the energy.",
			volts(q.PackV), volts(q.RatedV), volt, drive.BumpRatio(volt))
	}
	pace := drive.PaceFor(-1)
	a.Limit = &Limit{What: "too fast, age not told", Value: pace.FixMS, Unit: "m/s"}
	a.cite("motor-equations", pace.Source)
	a.judged(drive.SpeedCheck{SpeedMS: ground.Likely}.Findings(), true)
	a.beware("The printed speed does not tell the one on the ground: time it over ten metres.", "motor-equations")
	return a.checked()
}

// Blocked asks what flows when the wheels are held and the pedal is down, which
// is also what a start on plain contacts begins with.
type Blocked struct {
	Battery    Battery
	WindingOhm float64 // of one motor with its brushes, 0.005 to 100 Ohm
	Motors     int     // 1 to 8; 0 = 1
	InSeries   bool    // the motors are wired one behind the other
	PathOhm    float64 // wires, joints and switch, there and back; 0 = none
}

// Answer returns the current from the battery, full and at room temperature.
func (q Blocked) Answer() (Answer, error) {
	var a Answer
	var in inputs
	n := max(q.Motors, 1)
	in.within("Motors", float64(q.Motors), 0, 8, "")
	in.within("WindingOhm", q.WindingOhm, 0.005, 100, "Ohm")
	in.within("PathOhm", q.PathOhm, 0, 10, "Ohm")
	b, err := in.battery(q.Battery)
	if err != nil {
		return Answer{}, err
	}
	motors := q.WindingOhm / float64(n)
	if q.InSeries {
		motors = q.WindingOhm * float64(n)
	}
	var found [][]answer.Finding
	got, err := b.each(2, func(out []float64, m *battery.Model) error {
		full := m.StateAt(1, roomC)
		emf, ohm := m.Source(&full)
		out[0] = emf / (motors + ohm + q.PathOhm)
		out[1] = emf - out[0]*ohm
		found = append(found, m.Judge(battery.Use{PeakA: out[0]}))
		return nil
	})
	if err != nil {
		return Answer{}, err
	}
	m := b.model
	a.Asked = fmt.Sprintf("what %d motors of %s draw from %s when blocked", n, ohms(q.WindingOhm), q.Battery.Label)
	a.is(spread("blocked", got[0], "A", 1e5))
	a.beside(spread("the battery then holds", got[1], "V", 1e4))
	a.say("%s with the wheels held, and for a moment at every start on plain contacts.", figureWords(a.Figure()))
	a.Limit = &Limit{What: "the battery gives for seconds", Value: m.BurstA(), Unit: "A"}
	a.cite(b.profile().Discharge.Source, "motor-equations")
	a.counted(found, true, whole)
	if q.PathOhm == 0 {
		a.assume("no resistance on the way")
	}
	b.tell(&a)
	a.beware("Let go of the pedal at once when it does not move: a fuse does not protect the motor.", "cfr-33-183-455")
	return a.checked()
}

// Pace asks how fast is too fast for a driver.
type Pace struct {
	AgeYears   float64 // 0.5 to 18 years
	SpeedMS    float64 // how fast it goes; 0 = not told
	OriginalMS float64 // how fast it went when new; 0 = not told
}

// Answer returns the speed that is too fast, from where it is brisk to where it
// is a danger.
func (q Pace) Answer() (Answer, error) {
	var a Answer
	var in inputs
	in.within("AgeYears", q.AgeYears, 0.5, 18, "years")
	in.unless("SpeedMS", q.SpeedMS, 0.05, 30, "m/s")
	in.unless("OriginalMS", q.OriginalMS, 0.05, 30, "m/s")
	if err := in.err(); err != nil {
		return Answer{}, err
	}
	p := drive.PaceFor(q.AgeYears)
	a.Asked = fmt.Sprintf("how fast is too fast at %g years", q.AgeYears)
	a.is(Figure{What: "too fast, from brisk to a danger", Value: p.FixMS, Low: p.WatchMS, High: p.DangerMS, Unit: "m/s"})
	a.say("Brisk from %s, too fast from %s, a danger from %s.", speed(p.WatchMS), speed(p.FixMS), speed(p.DangerMS))
	at := p.FixMS
	if q.SpeedMS > 0 {
		at = q.SpeedMS
		a.Asked = fmt.Sprintf("is %s too fast at %g years", speed(at), q.AgeYears)
		a.Limit = &Limit{What: "too fast", Value: p.FixMS, Unit: "m/s"}
	}
	a.cite(p.Source)
	a.judged(drive.SpeedCheck{SpeedMS: q.SpeedMS, OriginalMS: q.OriginalMS, AgeYears: q.AgeYears, Measured: true}.Findings(), false)
	react := drive.ReactionS(q.AgeYears)
	a.beside(exactly("reaction", react, "s"), exactly("rolled before anything happens", at*react, "m"))
	a.beware(answer.HabitKeepClear+" When something surprises the child, count on two or three times its reaction.", "reaction-1984")
	return a.checked()
}
