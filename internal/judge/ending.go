package judge

import (
	"strings"

	"example.org/packcheck/answer"
	"example.org/packcheck/drive"
	"example.org/packcheck/internal/ride"
)

// Codes of findings on how the ride ends, and on readings that disagree.
const (
	CodeCannotKeepGoing  = "cannot-keep-going"      // the converter starts it and cannot hold it
	CodeDoesNotGo        = "does-not-go"            // whatever holds it: it stands
	CodeBarelyMoves      = "barely-moves"           // it crawls with the motors near their stall
	CodeCannotSupply     = "pack-cannot-supply"     // the pack cannot give what a load asks for
	CodeEndsAtOnce       = "ends-at-once"           // below the end voltage from the first moment
	CodeToAStandstill    = "driven-to-a-standstill" // nothing but the pack giving out stops it
	CodeReadingsDisagree = "readings-disagree"      // they cannot all be true
)

// ending judges what ended the outing.
func (v *view) ending() {
	o := &v.Seen.Lasts
	f := answer.Finding{ // what keeps it from moving comes before what matters only once it moves
		Topic: answer.TopicRide, Item: answer.Battery, Source: srcCommon, Level: answer.FixFirst, Harm: answer.Part, Gravity: 2,
	}
	switch {
	case v.Now.Controller.Converter.OutV > 0 && v.Seen.Steady.Stuck && !v.Seen.Steady.Slipping && v.Seen.Launch.EndMS > 0:
		f.Code, f.Change, f.Item = CodeCannotKeepGoing, answer.FitConverter, answer.Board
		f.Title = "It may jerk forward, but pack and path cannot give what it takes to keep going."
		f.Advice = "Look for the part with too much resistance, or use a pack, wire and converter made for the current."
	case v.drives() && v.Now.StartCharge > 0 && (v.Seen.Stuck() || v.Seen.SpinsOn()):
		f.Code, f.Change, f.Item, f.Ladder, f.Rung = CodeDoesNotGo, answer.LoadLess, answer.Rider, drive.LadderGoing, 4
		f.Decides, f.EndsRides, f.Fate = []string{answer.KeyVehicleGround}, true, answer.FateStuck // who rides where is not as it was made
		f.Title = "It does not get going here with this rider: it stands, or spins its wheels."
		f.Advice = "Let go of the pedal at once; a motor that cannot turn burns in seconds. Keep to firmer or flatter ground, or let less ride."
	case v.drives() && v.Now.StartCharge > 0 && v.Seen.Crawls():
		f.Code, f.Change, f.Item, f.Ladder, f.Rung = CodeBarelyMoves, answer.LoadLess, answer.Motors, drive.LadderGoing, 3
		f.Decides, f.EndsRides, f.Fate = []string{answer.KeyVehicleGround}, true, answer.FateCrawls // who rides where is not as it was made
		f.Title = "It barely gets over this ground, if at all: it crawls with the motors near their stall, and soon stands."
		f.Advice = "Let go of the pedal before it smells hot; nearly all that the motors take turns into heat. Keep to firmer or flatter ground, or let less ride."
	case o.EndedBy == ride.CannotSupply && v.Now.StartCharge > 0:
		f.Code, f.Change = CodeCannotSupply, answer.FitPack
		f.Title = "The pack comes to where it cannot feed the load any more."
		f.Advice = "Ask for less, or use a pack made for the current; set the end of the discharge above this point."
	case o.EndedBy == ride.VoltageReached && o.PedalS < 1:
		f.Code, f.Unit, f.Found, f.Limit, f.Want = CodeEndsAtOnce, "V", v.startV(), v.Now.UntilV, answer.Above
		f.Title = "Under this load the volts are below the end voltage from the first moment on."
		f.Advice = "Ask for less current, begin with more charge, or let it end at a lower voltage."
	case o.EndedBy != ride.CannotMove || o.PedalS < 60 || v.Now.Cutoffs.Len() > 0:
		return
	default:
		f.Code, f.Level, f.Harm, f.Change, f.Habit, f.Gravity = CodeToAStandstill, answer.Watch, answer.Wear, answer.FitCutoff, answer.HabitPackOff, -1
		f.Title = "Nothing stops the ride but the pack giving out: by then it is drained deeper than it should be."
		f.Advice = "Stop when it gets slower, or fit a cutoff."
	}
	v.add(f)
}

// startV is what the battery shows once a bench load has come on.
func (v *view) startV() float64 {
	s := v.Now.Pack.StateAt(v.Now.StartCharge, v.Now.PackC)
	return v.Now.Pack.TerminalV(&s, v.Seen.Lasts.PeakBatteryA)
}

// conflict tells of readings that cannot all be true.
func (v *view) conflict() {
	if v.Conflict == nil {
		return
	}
	again := "Take this reading once more: " + v.Conflict.Name + ". The answer here does without it"
	if more := v.Conflict.Also; len(more) > 0 {
		again = "Take these readings once more: " + strings.Join(append([]string{v.Conflict.Name}, more...), ", ") + ". The answer here does without them"
	}
	v.add(answer.Finding{
		Code: CodeReadingsDisagree, Level: answer.FixFirst, Harm: answer.Part, Topic: answer.TopicMeasured, Source: srcReadings,
		Gravity: 3, // all else of its level rests on what was read
		Title:   v.Conflict.Words, Reads: answer.AsTold, Change: answer.LookUp,
		Advice: again + "; look at what the readings push to its end.",
	})
}
