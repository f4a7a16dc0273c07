package report

import (
	"math"
	"strings"

	"example.org/packcheck/answer"
)

// The sections about what the vehicle does: ride, speed, launch, and the
// comparison with the original.

// startAmps is what the most current at a start is called wherever it is printed.
const startAmps = "amps at a start"

// overDraws names the line that says in what share of the draws which answer
// holds.
const overDraws = "Over all draws"

// bench reports whether the setup has no vehicle.
func (b *builder) bench() bool { return b.a.Steady == nil && b.a.Launch == nil }

// stuck reports whether the vehicle does not get going in most draws: figures
// of a ride would only pretend.
func (b *builder) stuck() bool {
	st := b.a.Steady
	return st != nil && st.SpeedKmh < 0.05 && b.a.Ride.DistanceKm < 0.001
}

// noRide says why there is no ride to tell figures of; empty where there is one.
func (b *builder) noRide() string {
	switch {
	case b.a.Finished():
		return "Nobody rides with this battery: there are no minutes to tell."
	case b.a.NeverRidden():
		return "Such a pair is never joined: there are no minutes to tell."
	case b.stuck():
		return b.surelyStuck() + " with this load on this ground."
	}
	return ""
}

// surelyStuck says that it does not get going as surely as that is so.
func (b *builder) surelyStuck() string {
	const flatly = 0.9
	if d := b.a.Draws; d.Count > 0 && d.Stuck < flatly {
		return "Likely it does not get going"
	}
	return "It does not get going"
}

// chargeLeft says how much is left, and that it cannot be had where the pack
// counts as empty all the same.
func (b *builder) chargeLeft(r answer.RideFigures) string {
	text := b.span("ride.charge_left", share, r.ChargeLeft)
	if r.End == answer.EndEmpty && r.ChargeLeft > 0.1 {
		text += "; not to be had at this current"
	}
	return text
}

// aboutTime rounds seconds to two digits, however short the time.
func aboutTime(s float64) float64 {
	if s >= 1 || s <= 0 {
		return about(s)
	}
	return toStep(s, math.Pow(10, math.Floor(math.Log10(s))-1))
}

func (b *builder) ride() section {
	r := b.a.Ride
	s := section{title: "Ride"}
	if b.a.NeverRidden() {
		b.topics = append(b.topics, answer.TopicRide, answer.TopicSpeed, answer.TopicLaunch)
		s.text = []string{b.noRide()}
		return s
	}
	if b.stuck() {
		s.text = []string{b.surelyStuck() + " with this load on this ground and slope, so there is no ride to time."}
		if n := b.a.Draws.Stuck; n > 0 && n < 1 {
			s.text[0] += " That is so in " + counted(n) + " " + b.kindred() + "."
		}
		s.facts = append(b.onTheLevel(), b.leftFlat()...)
		return b.topic(s, answer.TopicRide)
	}
	s.facts = append(s.facts, b.charged()...)
	if b.bench() {
		s.facts = append(s.facts, fact{"Under load", b.lasts().whole()})
	} else {
		s.facts = append(s.facts, fact{"Pedal down", b.lasts().whole() + b.allUphill()}, fact{pedalClock, b.clock().whole()})
		s.facts = append(s.facts, b.onTheLevel()...)
	}
	if r.WantedMin == nil {
		s.facts = append(s.facts, fact{"Ended by", orElse(clean(r.EndedBy), ended(string(r.End)))})
	} else {
		s.facts = append(
			s.facts,
			fact{"Ended by", orElse(clean(r.LastsUntil), ended(string(r.LastsEnd)))},
			fact{asYouAsked, b.asked()},
		)
		if r.End == answer.EndWanted { // otherwise it is the same ride
			s.facts = append(s.facts, fact{"Within that", b.span("ride.pedal_min", minutes, r.PedalMin) + " under load; by the clock " +
				b.span("ride.clock_min", minutes, r.ClockMin) + "; ended by: " + orElse(clean(r.EndedBy), ended(string(r.End)))})
		}
	}
	if shares := outcomes(r.EndShare, ended); shares != "" {
		s.facts = append(s.facts, fact{overDraws, shares})
	}
	if !b.bench() {
		s.facts = append(
			s.facts,
			fact{"Distance", b.span("ride.distance_km", kilometr, r.DistanceKm) + b.inTimeAsked()},
			fact{"Starts", b.one(plain, float64(r.Launches))},
		)
	}
	s.facts = append(
		s.facts,
		fact{"Delivered", b.span("ride.delivered_ah", ampHours, r.DeliveredAh) + "; " + b.rough("ride.delivered_wh", wattHrs, r.DeliveredWh)},
		fact{"Charge left", b.chargeLeft(r)},
		fact{"Rests at, after", b.span("ride.rest_v_after", volts, r.RestVAfter)},
		fact{"Battery gets to", b.span("ride.pack_c", degrees, r.PackC)},
	)
	if !b.bench() {
		s.facts = append(
			s.facts,
			fact{"Motor case", b.heat("ride.motor_case_c", r.MotorCaseC)},
			fact{"Motor winding", b.heat("ride.winding_c", r.WindingC)},
		)
	}
	return b.topic(s, answer.TopicRide)
}

// climbs reports whether the figures are those of a climb.
func (b *builder) climbs() bool { return b.a.Launch != nil && b.a.Launch.Case.GradeN > 0 }

// allUphill says behind minutes that they are those of a climb without an end.
func (b *builder) allUphill() string {
	if b.climbs() {
		return ", uphill all the time"
	}
	return ""
}

// onTheLevel is how long a ride lasts without the climb that the other figures are for.
func (b *builder) onTheLevel() []fact {
	level := b.a.Ride.LevelPedalMin
	if level == nil || b.a.Finished() || b.a.NeverRidden() {
		return nil
	}
	between := "; up and down lies between"
	if b.stuck() {
		between = ""
	}
	return []fact{{"On the level", b.figure("ride.level_pedal_min", minutes, *level).brief() + between}}
}

// speedName is what the speed of the figures is called, by its name on the level.
func (b *builder) speedName(level string) string {
	if b.climbs() {
		return "Speed uphill"
	}
	return level
}

// withoutRead says behind a speed that it was computed without one that was read: it may be
// lower than that with more volts. Nothing where none was left out.
func (b *builder) withoutRead() string {
	if read := b.speedLeftOut(); read != "" {
		return "; without the " + read + " that was read"
	}
	return ""
}

// speedLeftOut is the speed that was read and that the answer does without; empty where there
// is none.
func (b *builder) speedLeftOut() string {
	for i := range b.a.Readings {
		if r := &b.a.Readings[i]; r.LeftOut && r.Unit == "m/s" {
			return b.inUnit(r.Value, r.Unit)
		}
	}
	return ""
}

func (b *builder) speed() section {
	s := section{title: b.speedName("Speed on the level")}
	switch st := b.a.Steady; {
	case b.a.NeverRidden():
		return section{}
	case b.stuck():
		s.text = []string{b.surelyStuck() + "."}
	case st != nil:
		s.facts = []fact{
			{"Speed", b.span("steady.speed_kmh", kmPerH, st.SpeedKmh) + b.withoutRead()},
			{"Amps", b.withMotors(b.rough("steady.battery_a", amps, st.BatteryA), b.rough("steady.motor_a", amps, st.MotorA))},
			{"Volts at the board", b.span("steady.bus_v", volts, st.BusV)},
			{"Power at wheels", b.span("steady.efficiency", share, st.Efficiency) + " of the pack's"},
		}
	case !b.bench():
		s.text = []string{"Not known."}
	}
	return b.topic(s, answer.TopicSpeed)
}

func (b *builder) launch() section {
	s := section{title: "Start"}
	switch l := b.a.Launch; {
	case b.a.NeverRidden():
		return section{}
	case l != nil:
		s.facts = b.launchFacts(l)
	case !b.bench():
		s.text = []string{"Not known."}
	}
	return b.topic(s, answer.TopicLaunch)
}

func (b *builder) launchFacts(l *answer.LaunchFigures) []fact {
	facts := []fact{
		{capital(startAmps), b.withMotors(b.rough("launch.peak_battery_a", amps, l.PeakBatteryA), b.rough("launch.peak_motor_a", amps, l.PeakMotorA)) +
			"; after " + b.one(seconds, aboutTime(l.PeakBatteryAtS))},
		{"Volts fall to", b.span("launch.lowest_bus_v", volts, l.LowestBusV)},
	}
	var speeds []string
	for _, p := range tellingPoints(l.SpeedAfter) {
		speeds = append(speeds, b.one(kmPerH, p.Kmh)+" after "+b.one(seconds, p.TimeS))
	}
	if len(speeds) > 0 && !b.stuck() {
		facts = append(facts, fact{"It gets to", strings.Join(speeds, "; ")})
	}
	if l.Slips {
		facts = append(facts, fact{"Grip", "the wheels spin: the ground, not the motors, sets the shove"})
	}
	for _, above := range l.AboveS {
		if above.Sec <= 0 {
			continue
		}
		facts = append(facts, fact{
			"Above limit", clean(above.Part) + ", " + b.one(amps, above.LimitA) + ": for " + b.one(seconds, aboutTime(above.Sec)),
		})
	}
	facts = append(
		facts,
		fact{"Wheels blocked", b.withMotors(b.rough("launch.blocked_battery_a", amps, l.BlockedBatteryA), b.rough("launch.blocked_motor_a", amps, l.BlockedMotorA))},
		fact{"Windings stand it", b.maybeRough("launch.blocked_stands_s", seconds, l.BlockedStandsS, "no time limit found")},
	)
	if !b.stuck() { // otherwise there is no speed to reverse at
		facts = append(facts, fact{"Reversed rolling", b.rough("launch.reversal_a", amps, l.ReversalA)})
	}
	if l.SparkA != nil || l.SparkJ != nil {
		facts = append(facts, fact{
			"Plug-in spark",
			b.maybeRough("launch.spark_a", amps, l.SparkA, notKnown) + ", " + b.joules(l.SparkJ),
		})
	}
	if l.PrechargeOhm != nil {
		facts = append(facts, fact{"Resistor to tame it", b.one(ohms, *l.PrechargeOhm)})
	}
	return facts
}

// withMotors says the amps of the pack, and those of the motors where a
// controller makes them others.
func (b *builder) withMotors(pack, motors string) string {
	if pack == motors {
		return pack
	}
	return pack + "; in the motors " + motors
}

// tellingPoints picks the speeds after 1, 3 and 6 s where they are among the
// points, the first few where they are not.
func tellingPoints(points []answer.SpeedPoint) []answer.SpeedPoint {
	var picked []answer.SpeedPoint
	for _, p := range points {
		if p.TimeS == 1 || p.TimeS == 3 || p.TimeS == 6 {
			picked = append(picked, p)
		}
	}
	if len(picked) == 0 {
		picked = points[:min(4, len(points))]
	}
	return picked
}

func (b *builder) original() section {
	s := section{title: "Original"}
	o := b.a.Original
	if o == nil {
		return b.topic(s, answer.TopicOriginal)
	}
	had := "It had"
	if o.Read {
		had = "It had, with the old battery as it was read"
	}
	var ratios []string
	for _, line := range []struct {
		name, key string
		ratio     *float64
	}{
		{"speed", "speed_ratio", o.SpeedRatio},
		{startAmps, "launch_current_ratio", o.LaunchCurrentRatio},
		{"blocked", "blocked_current_ratio", o.BlockedCurrentRatio},
		{"load on gear teeth", "tooth_load_ratio", o.ToothLoadRatio},
		{"motor heat", "motor_heat_ratio", o.MotorHeatRatio},
		{"ride time", "ride_ratio", o.RideRatio},
		{"short circuit", "fault_current_ratio", o.FaultCurrentRatio},
	} {
		ratios = append(ratios, line.name+" "+b.ratio("original."+line.key, line.ratio))
	}
	s.facts = append(
		s.facts,
		fact{"Now over then", strings.Join(ratios, "; ") + "; of each vehicle by itself"},
		fact{had, "speed " + b.maybeSpan("original.original_speed_kmh", kmPerH, o.OriginalSpeedKmh, notKnown) +
			"; pedal down " + b.maybeSpan("original.original_pedal_min", minutes, o.OriginalPedalMin, notKnown) +
			"; " + startAmps + " " + b.maybeRough("original.original_launch_a", amps, o.OriginalLaunchA, notKnown)},
	)
	return b.topic(s, answer.TopicOriginal)
}
