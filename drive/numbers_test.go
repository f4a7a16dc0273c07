package drive_test

import (
	"math"
	"strings"
	"testing"

	"example.org/packcheck/answer"
	"example.org/packcheck/drive"
)

var nan = math.NaN()

// No vehicle runs on less than no volts, and no current is told of one that does.
func TestOfNoSourceNothingIsComputed(t *testing.T) {
	still := drive.HeatState{WindingC: 20, CaseC: 20}
	limited := drive.Controller{Chopper: true, LimitA: 30}
	converter := drive.Controller{Converter: drive.Converter{OutV: 6, LimitA: 20}}
	for _, c := range []struct {
		name string
		v    drive.Vehicle
		c    drive.Controller
		ocvV float64
	}{
		{"below 0 V", tractor(), drive.Controller{}, -12},
		{"below 0 V behind a current limit", tractor(), limited, -12},
		{"below 0 V before a converter", tractor(), converter, -12},
		{"no number", tractor(), drive.Controller{}, nan},
		{"no number behind a current limit", tractor(), limited, nan},
		{"infinite", tractor(), drive.Controller{}, math.Inf(1)},
		{"no vehicle", drive.Vehicle{}, drive.Controller{}, 12},
	} {
		p := agm()
		p.OCVV = c.ocvV
		r, on := drive.Steady(c.v, c.c, p.Steady(), 20), drive.SteadyOn(c.v, c.c, p, 20)
		b, back := drive.BlockedWheels(c.v, c.c, p, still, 20), drive.ReverseAt(c.v, c.c, p, 1, 20)
		for figure, x := range map[string]float64{
			"speed": r.SpeedMS, "current": r.BatteryA, "bus": r.BusV, "speed on the pack": on.SpeedMS,
			"blocked current": b.BatteryA, "blocked motor": b.MotorA, "push": b.WheelN, "heat": b.WindingW,
			"when reversed": back.MotorA, "braking": back.BrakeN,
		} {
			if !math.IsNaN(x) {
				t.Errorf("%s: %s is %g", c.name, figure, x)
			}
		}
		if b.HeatKnown || b.ReachesLimit {
			t.Errorf("%s: how long a motor stands it is told: %+v", c.name, b)
		}
		if c.v.Check() == nil {
			l := drive.NewLaunchCase(c.v, c.c, p, 20)
			if l.Check() == nil {
				t.Errorf("%s: a launch is computed", c.name)
			}
		}
	}
	empty := drive.Steady(tractor(), drive.Controller{}, drive.Source{Ohm: 0.1}, 20)
	if !empty.Stuck || empty.BatteryA != 0 {
		t.Errorf("on 0 V: %+v", empty)
	}
}

// A figure that is no number is told to be none, neither fine nor a danger.
func TestACheckOfWhatIsNoNumberSaysSo(t *testing.T) {
	v := tractor()
	blocked := drive.BlockedWheels(v, drive.Controller{}, drive.PackCircuit{OCVV: -12}, drive.HeatState{}, 20)
	for _, c := range []struct {
		name string
		fs   []answer.Finding
		code string
	}{
		{"speed of nobody", drive.SpeedCheck{SpeedMS: nan}.Findings(), drive.CodeFastForARideOn},
		{"speed of a child", drive.SpeedCheck{SpeedMS: nan, AgeYears: 5, OriginalMS: 1, Brake: drive.BrakeNone, RollMS2: 0.4}.Findings(), drive.CodeFastForARideOn},
		{"infinite speed", drive.SpeedCheck{SpeedMS: math.Inf(1), AgeYears: 5}.Findings(), drive.CodeFastForARideOn},
		{"rider", drive.LoadCheck{RiderKg: nan, RatedKg: 30}.Findings(), drive.CodeOverloaded},
		{"slope", drive.SlopeCheck{GradeN: nan, RollN: 26, ToyKg: 15, AllKg: 38, Brake: drive.BrakeNone}.Findings(), drive.CodeRollsBack},
		{"volts of a toy", drive.ToyCheck{NominalV: nan}.Findings(), drive.CodeAboveToyVolts},
		{"speed by remote control", drive.RemoteCheck{Fitted: true, SpeedMS: nan, OriginalMS: 1}.Findings(), drive.CodeRemoteOnFaster},
		{"volts of a radio", drive.AccessoryCheck{OnPack: true, FullV: nan, DesignV: 12}.Findings(), drive.CodeAccessoryVolts},
		{"volts of a board", drive.BoardCheck{FullV: nan, DesignV: 12}.Findings(), drive.CodeBoardOvervoltage},
		{"volts of an unknown board", drive.BoardCheck{FullV: nan}.Findings(), drive.CodeBoardVoltsUnknown},
		{"blocked wheels", drive.BlockedCheck{Blocked: blocked}.Findings(), drive.CodeBlockedHeatUnknown},
	} {
		if len(c.fs) != 1 {
			t.Errorf("%s: %+v", c.name, c.fs)
			continue
		}
		f := c.fs[0]
		if f.Code != c.code || f.Level != answer.Watch || f.Reads != answer.AsUnknown || f.Found != 0 || math.IsNaN(f.Limit) {
			t.Errorf("%s: %+v", c.name, f)
		}
		if strings.Contains(f.Title+f.Advice, "NaN") || strings.Contains(f.Title+f.Advice, "Inf") {
			t.Errorf("%s: %s %s", c.name, f.Title, f.Advice)
		}
	}
	toddler := drive.SpeedCheck{SpeedMS: nan, AgeYears: 2}.Findings()
	if len(toddler) != 2 || toddler[1].Code != drive.CodeTooYoung || toddler[1].Level != answer.FixFirst {
		t.Errorf("a child of 2 at a speed that nobody knows: %+v", toddler)
	}
}
