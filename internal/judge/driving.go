package judge

import (
	"example.org/packcheck/answer"
	"example.org/packcheck/battery"
	"example.org/packcheck/drive"
	"example.org/packcheck/internal/build"
	"example.org/packcheck/internal/ride"
	"example.org/packcheck/setup"
)

// driving judges what only a vehicle has.
func (v *view) driving() {
	c, s := v.Now, &v.Seen
	launch := drive.LaunchCheck{Case: c.LaunchCase(), Result: s.Launch, BlockedA: s.Blocked.MotorA, BlockedNM: s.Blocked.PinionNM, Added: v.parts.AsMade && v.parts.Original == nil}
	blocked := drive.BlockedCheck{Blocked: s.Blocked, Limits: c.Limits, LimitA: c.Controller.LimitA}
	if c.Vehicle.Motor.Thermal.Known() {
		warm := c.Hold(c.Vehicle)
		warm.BatteryA, warm.MotorA = s.Blocked.BatteryA, s.Blocked.MotorA // as measured, where it was
		blocked.Blocked = warm
	}
	v.out.Blocked = blocked.Blocked
	speed := drive.SpeedCheck{
		SpeedMS: s.Steady.SpeedMS, Measured: v.speedRead, Doubted: v.leftOut(answer.KeyMeasuredTopSpeed),
		Claimed: v.parts.Setup.Vehicle.ClaimedSpeed.Given, Remote: v.parts.Vehicle.Remote,
	}
	if !speed.Measured { // it is read on the flat
		speed.SpeedMS = levelMS(s)
	}
	if o := v.parts.Original; o != nil && v.Was != nil && !speed.Measured && o.Measured != nil && o.Measured.TopSpeed.Given {
		read := o.Measured.TopSpeed
		speed.BeforeMS, speed.BeforeBy, speed.Doubted = read.Likely, read.Key, v.leftOut(read.Key)
	}
	claim := v.parts.Setup.Vehicle.ClaimedSpeed
	if claim.Given && v.parts.AsMade && !speed.Measured && speed.SpeedMS > 0 {
		speed.SpeedMS = max(speed.SpeedMS, claimReached*claim.Low)
	}
	speed.Brake, speed.RollMS2 = brake(v.parts.Vehicle.Brake.Text), c.Vehicle.RollN/c.Vehicle.MassKg
	if age := &v.parts.Rider.AgeYears; age.Known {
		speed.AgeYears = age.Low // of several children the youngest counts
	}
	switch {
	case v.parts.AsMade && v.Was == nil:
		blocked.Original = &blocked.Blocked
	case v.Was != nil:
		launch.Original, blocked.Original, speed.OriginalMS = &v.Was.Launch, &v.Was.Blocked, levelMS(v.Was)
	case claim.Given: // of the vehicle as it was made, whose battery nobody told
		speed.OriginalMS = claim.High
	}
	design := &v.parts.Vehicle.DesignV
	blocked.OwnVolts = design.Known && !design.Assumed && c.Controller.Converter.OutV == 0 && c.Pack.NominalV() <= setup.OwnVolts*c.Pick(design)
	v.add(launch.Findings()...)
	v.add(blocked.Findings()...)
	v.add(speed.Findings()...)
	v.add(drive.RunningCheck{
		MotorA: s.Steady.MotorA, Limits: c.Limits, Read: v.ampsRead,
	}.Findings()...)
	v.add(drive.BoardCheck{
		Controller: c.Controller, FullV: v.fullV(), DesignV: build.Known(&v.parts.Vehicle.DesignV, c.Pick),
		WeakestV: build.Known(&v.parts.Vehicle.WeakestPartV, c.Pick), PeakA: s.Launch.PeakBatteryA, SwitchA: c.Limits.SwitchA,
	}.Findings()...)
	v.aboard(&speed)
	v.add(drive.ConverterCheck{
		Converter: c.Controller.Converter, LaunchA: v.unlimitedBoardA(), ReverseA: v.reversal(), RunningA: s.Steady.MotorA,
	}.Findings()...)
	v.boardOpens()
	v.out.Spark = v.spark()
	v.add(v.out.Spark.Findings()...)
	readC, readBy := v.parts.MotorCaseC()
	before := readBy == "" && v.Was != nil
	if before {
		readC, readBy = v.parts.Original.MotorCaseC()
	}
	if c.Vehicle.Motor.Thermal.Known() || readBy != "" {
		heat := drive.HeatCheck{
			ReadC: readC, ReadBy: readBy, Before: before,
			State: drive.HeatState{WindingC: s.Lasts.WindingC, CaseC: s.Lasts.CaseC}, LimitC: c.Vehicle.Motor.Thermal.LimitC,
		}
		if v.Was != nil {
			heat.Original = drive.HeatState{WindingC: v.Was.Lasts.WindingC, CaseC: v.Was.Lasts.CaseC}
		}
		v.add(heat.Findings()...)
	}
}

// levelMS is how fast a case goes on the level: where it is computed on a climb, the flat
// and the way down are as fast as ever.
func levelMS(s *ride.Seen) float64 {
	if s.Case.Vehicle.GradeN <= 0 {
		return s.Steady.SpeedMS
	}
	return max(s.Steady.SpeedMS, s.Case.OnTheFlat().SpeedMS)
}

// claimReached is how much of the speed that its maker claims a vehicle as made
// reaches at the least, whatever its other labels come to: claims are for a light rider
// on level tarmac. Own choice.
const claimReached = 0.8

// boardOpens holds back what is said of a short current against an assumed limit
// of a pack with electronics of its own: where it is more than they let pass they
// switch off, and nothing breaks. Such packs are mostly sold so; common practice, no
// published source.
func (v *view) boardOpens() {
	p := &v.parts.Pack
	guarded := p.WatchesCells || v.parts.Setup.Cutoff.Pack.Given
	if !guarded || !lithium(p.Profile) || !p.MaxCurrentA.Assumed {
		return
	}
	for i := range v.out.Findings {
		f := &v.out.Findings[i]
		if f.LimitKey == answer.KeyPackMaxCurrent && f.Code != battery.CodeCurrentLasting && f.Level == answer.FixFirst {
			f.Level, f.Harm, f.LimitA = answer.Watch, answer.Wear, 0
			f.Change, f.Advice = answer.LookUp, "Look up how much the pack gives for seconds. Where it is less than this its electronics switch off, and the ride stops."
		}
	}
}

// aboard judges who rides, on which slope, and what else hangs on the pack.
func (v *view) aboard(speed *drive.SpeedCheck) {
	c, p := v.Now, v.parts.Vehicle
	v.add(drive.LoadCheck{
		RiderKg: c.Pick(&v.parts.Rider.MassKg), RatedKg: build.Known(&p.RatedLoadKg, c.Pick), UsualKg: p.UsualLoadKg,
	}.Findings()...)
	v.add(drive.SlopeCheck{
		GradeN: c.Vehicle.GradeN, RollN: c.Vehicle.RollN, ToyKg: c.Vehicle.MassKg - c.Pick(&v.parts.Rider.MassKg), AllKg: c.Vehicle.MassKg,
		Brake: speed.Brake, ShortedNSPerM: c.Vehicle.ShortedNSPerM(),
	}.Findings()...)
	v.add(drive.ToyCheck{NominalV: c.Pack.NominalV(), DesignV: build.Known(&p.DesignV, c.Pick)}.Findings()...)
	v.add(drive.RemoteCheck{Fitted: p.Remote, SpeedMS: speed.SpeedMS, OriginalMS: speed.OriginalMS}.Findings()...)
	v.add(drive.AccessoryCheck{
		OnPack: p.Accessories.Text == "on the pack", Own: p.Accessories.Known && p.Accessories.Text != "on the pack",
		FullV: v.fullV(), DesignV: build.Known(&p.DesignV, c.Pick),
	}.Findings()...)
}

// brake reads what stops the vehicle.
func brake(word string) drive.Brake {
	switch word {
	case "motors":
		return drive.BrakeMotors
	case "pedal":
		return drive.BrakePedal
	case "none":
		return drive.BrakeNone
	}
	return drive.BrakeUnknown
}

// afterAStop is the controller that waits for a standstill before it reverses.
const afterAStop = "after a stop"

// reversal judges switching to reverse at running speed and returns the motor
// current of it, nothing where the controller waits for a standstill.
func (v *view) reversal() float64 {
	c := v.Now
	r := drive.ReverseAt(c.Vehicle, c.Controller, c.Circuit(), v.Seen.Steady.SpeedMS, c.AmbientC)
	v.out.ReverseA = r.MotorA
	if v.parts.Setup.Controller.Reverses.Text == afterAStop {
		return 0
	}
	v.add(drive.ReversalCheck{Reversal: r, Limits: c.Limits, BlockedA: v.Seen.Blocked.MotorA}.Findings()...)
	return r.MotorA
}

// unlimitedBoardA is what the board would draw at launch from a converter
// that had no limit of its own.
func (v *view) unlimitedBoardA() float64 {
	c := v.Now.Case
	if c.Controller.Converter.OutV == 0 {
		return 0
	}
	c.Controller.Converter.LimitA = 0
	l := c.LaunchCase()
	return drive.Launch(&l, c.LaunchSeconds(), nil).PeakMotorA
}

// spark is what plugging in does to an empty input capacitor.
func (v *view) spark() drive.Spark {
	c := v.Now
	full := c.Pack.StateAt(1, c.PackC)
	return drive.SparkOf(drive.PlugIn{
		Volt: v.fullV(), LoopOhm: c.Pack.SourceOhm(&full) + c.PathOhm, InputF: c.Controller.InputF,
	})
}
