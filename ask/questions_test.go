package ask_test

import (
	"encoding/json"
	"math"
	"reflect"
	"strings"
	"testing"

	"example.org/packcheck/answer"
	"example.org/packcheck/ask"
	"example.org/packcheck/charge"
	"example.org/packcheck/tables"
)

var (
	block = ask.Battery{Label: "12 V 7 Ah"}
	tool  = ask.Battery{Label: "20 V max 5 Ah"}
	awg14 = tables.WireSize{System: tables.AWG, Gauge: 14}
)

// questions is one of each kind, and a few that are answered in another way.
func questions() []ask.Question {
	return []ask.Question{
		ask.Label{Battery: tool},
		ask.Label{Battery: ask.Battery{Label: "24 V"}},
		ask.Rest{Battery: block, Volts: 12.4, HoursRested: 24},
		ask.Rest{Volts: 13.1, JustCharged: true},
		ask.Rest{Battery: tool, Volts: 7},
		ask.Runtime{Battery: block, CurrentA: 9},
		ask.Runtime{Battery: tool, CurrentA: 120, TempC: new(-15.0)},
		ask.Runtime{Battery: ask.Battery{Label: "9.6 V 2 Ah NiMH"}, CurrentA: 3},
		ask.Wire{CurrentA: 20},
		ask.Wire{CurrentA: 20, OneWayM: 6, SystemV: 12, InsulationC: 105},
		ask.Drop{Wire: awg14, CurrentA: 30, OneWayM: 3, SystemV: 12},
		ask.Drop{Wire: tables.WireSize{AreaMM2: 2.5}, CurrentA: 10, OneWayM: 1},
		ask.Fuse{Wire: awg14, RunningA: 20},
		ask.Fuse{Wire: awg14, RunningA: 12, LaunchA: 60, LaunchS: 1},
		ask.Opened{RatingA: 30, Seconds: 8},
		ask.Opened{RatingA: 30, Seconds: 0.005},
		ask.Stopped{Seconds: 20, Lithium: true},
		ask.Stopped{StaysDead: true},
		ask.Lost{FirstV: 12.6, SecondV: 11.2, CurrentA: 15},
		ask.Charger{Label: "14.7 V 1.5 A DC for lead-acid", Battery: block},
		ask.Charger{Label: "12 V 1 A DC", Battery: tool},
		ask.Charger{Label: "14.7 V 1.5 A for lead-acid", Battery: tool, Port: charge.PortVehicle},
		ask.Join{A: block, B: block, AV: 12.9, BV: 12.3},
		ask.Join{A: tool, B: tool, AV: 20, BV: 19.9, Series: true},
		ask.Cutoff{Battery: tool, RunningA: 15, LaunchA: 60, LaunchS: 1},
		ask.Cutoff{Battery: block, RunningA: 1},
		ask.Idle{Battery: tool, StandbyA: 0.01},
		ask.Idle{Battery: block},
		ask.Winter{Battery: block, Days: 150},
		ask.Winter{Battery: tool, Days: 400, StandbyA: 0.01, Charge: new(0.5)},
		ask.Old{Battery: block, RestV: 12.6, LoadedV: 10.2, LoadedA: 9, HoursRested: 24},
		ask.Speed{NoLoadRPM: 15000, Ratio: 110, WheelDiameterM: 0.25, RatedV: 12, PackV: 18},
		ask.Speed{NoLoadRPM: 15000, MotorTeeth: 14, WheelTeeth: 700, WheelDiameterM: 0.25},
		ask.Blocked{Battery: tool, WindingOhm: 0.2, Motors: 2, PathOhm: 0.02},
		ask.Blocked{Battery: tool, WindingOhm: 0.2, Motors: 2, InSeries: true},
		ask.Hot{Part: ask.HotMotor, TempC: 70, AfterS: 1200},
		ask.Hot{Part: ask.HotBattery, TempC: 75, AfterS: 1200, Battery: tool},
		ask.Hot{Part: ask.HotWire, TempC: 65},
		ask.Pace{AgeYears: 5, SpeedMS: 4},
		ask.Pace{AgeYears: 2},
	}
}

func answered(t *testing.T, q ask.Question) ask.Answer {
	t.Helper()
	a, err := q.Answer()
	if err != nil {
		t.Fatalf("%T%+v: %v", q, q, err)
	}
	return a
}

func TestEveryAnswerIsWhole(t *testing.T) {
	for _, q := range questions() {
		a := answered(t, q)
		if a.Schema != ask.Schema || a.Asked == "" || len(a.Words) == 0 || a.Caution == "" || len(a.Sources) == 0 || a.Unit == "" || a.What == "" {
			t.Errorf("%T: something is missing: %+v", q, a)
		}
		for _, s := range a.Sources {
			if s.Known == "unknown" {
				t.Errorf("%T: nobody defines the source %q", q, s.ID)
			}
		}
		for _, f := range append(a.Beside, a.Figure()) {
			low, high := f.Low, f.High
			if f.Unit == "AWG" { // a thinner wire has the larger number
				low, high = min(low, high), max(low, high)
			}
			if !(low <= f.Value && f.Value <= high) {
				t.Errorf("%T: %s is %g, outside %g to %g", q, f.What, f.Value, f.Low, f.High)
			}
			if strings.Contains(f.Text(), "unknown") || strings.ContainsFunc(f.Text(), func(r rune) bool { return r > '~' }) {
				t.Errorf("%T: %s prints as %q", q, f.What, f.Text())
			}
		}
	}
}

// One part that is fine makes no vehicle so.
func TestNothingIsCalledFine(t *testing.T) {
	for _, q := range questions() {
		if a := answered(t, q); a.Level != nil && *a.Level == answer.Fine {
			t.Errorf("%T: %v", q, a.Words)
		}
	}
}

func TestTheSameQuestionHasTheSameAnswer(t *testing.T) {
	for _, q := range questions() {
		first, err := json.Marshal(answered(t, q))
		if err != nil {
			t.Fatalf("%T: %v", q, err)
		}
		if again, _ := json.Marshal(answered(t, q)); string(first) != string(again) {
			t.Errorf("%T: %s\n%s", q, first, again)
		}
	}
}

// What is no number, or one that cannot be, is an error and never an answer: in
// every field of every question.
func TestNoFieldTakesWhatIsNoNumber(t *testing.T) {
	seen := 0
	for _, q := range questions() {
		for i := range reflect.TypeOf(q).NumField() {
			for _, bad := range []float64{math.NaN(), math.Inf(1), math.Inf(-1), -1000} {
				v := reflect.New(reflect.TypeOf(q)).Elem()
				v.Set(reflect.ValueOf(q))
				switch f := v.Field(i); f.Interface().(type) {
				case float64:
					f.SetFloat(bad)
				case *float64:
					f.Set(reflect.ValueOf(&bad))
				case int:
					f.SetInt(-1000)
				default:
					continue
				}
				seen++
				if a, err := v.Interface().(ask.Question).Answer(); err == nil {
					t.Errorf("%T.%s = %g is answered: %+v", q, v.Type().Field(i).Name, bad, a.Words)
				}
			}
		}
	}
	if seen < 300 {
		t.Errorf("only %d fields tried: the test looks in the wrong place", seen)
	}
}

func TestEveryFaultOfAQuestionComesAtOnce(t *testing.T) {
	_, err := ask.Runtime{CurrentA: -1, TempC: new(500.0), UntilV: 9999}.Answer()
	if err == nil {
		t.Fatal("no error")
	}
	for _, want := range []string{"CurrentA is -1; want 0.001 to 5000 A", "TempC is 500; want -40 to 150 degC", "UntilV is 9999", "no label"} {
		if !strings.Contains(err.Error(), want) {
			t.Errorf("%q lacks %q", err, want)
		}
	}
}

func TestTheZeroQuestionIsAnError(t *testing.T) {
	for _, q := range questions() {
		zero := reflect.Zero(reflect.TypeOf(q)).Interface().(ask.Question)
		if a, err := zero.Answer(); err == nil {
			t.Errorf("%T{} is answered: %v", q, a.Words)
		}
	}
}

// Whatever is worse reads at least as bad.
func TestMoreIsNeverBetter(t *testing.T) {
	amount := func(q ask.Question) float64 { a := answered(t, q); return a.Value }
	for _, c := range []struct {
		what        string
		mild, grave ask.Question
		falls       bool // the figure falls as it gets worse
	}{
		{"more current, less time", ask.Runtime{Battery: block, CurrentA: 5}, ask.Runtime{Battery: block, CurrentA: 9}, true},
		{"colder, less time", ask.Runtime{Battery: block, CurrentA: 9}, ask.Runtime{Battery: block, CurrentA: 9, TempC: new(-5.0)}, true},
		{"older, less time", ask.Runtime{Battery: ask.Battery{Label: "12 V 7 Ah", Age: "new"}, CurrentA: 9}, ask.Runtime{Battery: ask.Battery{Label: "12 V 7 Ah", Age: "worn"}, CurrentA: 9}, true},
		{"more standby, fewer days", ask.Idle{Battery: tool, StandbyA: 0.01}, ask.Idle{Battery: tool, StandbyA: 0.02}, true},
		{"longer, less left", ask.Winter{Battery: block, Days: 30}, ask.Winter{Battery: block, Days: 90}, true},
		{"warmer, less left", ask.Winter{Battery: block, Days: 90, TempC: new(5.0)}, ask.Winter{Battery: block, Days: 90}, true},
		{"longer wire, more drop", ask.Drop{Wire: awg14, CurrentA: 9, OneWayM: 1}, ask.Drop{Wire: awg14, CurrentA: 9, OneWayM: 2}, false},
		{"sooner, more current", ask.Opened{RatingA: 30, Seconds: 60}, ask.Opened{RatingA: 30, Seconds: 2}, false},
		{"more motors, more current", ask.Blocked{Battery: tool, WindingOhm: 0.2}, ask.Blocked{Battery: tool, WindingOhm: 0.2, Motors: 2}, false},
		{"further apart, more current", ask.Join{A: block, B: block, AV: 12.7, BV: 12.5}, ask.Join{A: block, B: block, AV: 12.7, BV: 12.1}, false},
		{"younger, slower", ask.Pace{AgeYears: 6}, ask.Pace{AgeYears: 3}, true},
		{"more load, no thinner wire", ask.Wire{CurrentA: 18}, ask.Wire{CurrentA: 35}, true},
	} {
		mild, grave := amount(c.mild), amount(c.grave)
		if c.falls && !(grave < mild) || !c.falls && !(grave > mild) {
			t.Errorf("%s: %g, then %g", c.what, mild, grave)
		}
	}
}

// A guess is never a danger: which lithium it is follows from no word here.
func TestAGuessIsNoDanger(t *testing.T) {
	sure := answered(t, ask.Charger{Label: "42 V 2 A DC for lithium-ion, stops by itself", Battery: ask.Battery{Label: "25.6 V 10 Ah LiFePO4"}})
	if sure.Level == nil || *sure.Level != answer.Danger {
		t.Fatalf("a charger of 42 V on 25.6 V: %v", sure.Words)
	}
	guessed := answered(t, ask.Charger{Label: "42 V 2 A DC for lithium-ion, stops by itself", Battery: ask.Battery{Label: "24 V 10 Ah"}})
	if guessed.Level == nil || *guessed.Level >= answer.Danger {
		t.Errorf("the chemistry is a guess: level %v, %v", guessed.Level, guessed.Words)
	}
	if !strings.Contains(strings.Join(guessed.Assumed, " "), "lead-acid") {
		t.Errorf("the guess is not told: %v", guessed.Assumed)
	}
}

// The wire that is advised carries the current and keeps the volts, and the fuse
// that is advised protects it: each answer is put to the next question.
func TestAdviceCarriedOutStands(t *testing.T) {
	for _, currentA := range []float64{5, 12, 20, 33, 50} {
		w := answered(t, ask.Wire{CurrentA: currentA, OneWayM: 2, SystemV: 12})
		size := tables.WireSize{System: tables.AWG, Gauge: int(w.Value)}
		d := answered(t, ask.Drop{Wire: size, CurrentA: currentA, OneWayM: 2, SystemV: 12})
		if d.Level != nil {
			t.Errorf("%g A on the advised AWG %g: %v", currentA, w.Value, d.Words)
		}
	}
	for _, currentA := range []float64{3, 8, 15, 20} {
		f := answered(t, ask.Fuse{Wire: awg14, RunningA: currentA})
		if f.Level != nil || f.High > 1.5*20 || f.Low < currentA/0.75 { // 33 CFR 183.455 and the fuse glossary
			t.Errorf("%g A: fuse %s, %v", currentA, f.Figure().Text(), f.Words)
		}
	}
}

// The ends of a range stand still: many more batteries move them little.
func TestEnoughBatteriesAreDrawn(t *testing.T) {
	for _, b := range []ask.Battery{block, tool} {
		few, many, err := ask.RuntimeOfDraws(b, 9)
		if err != nil {
			t.Fatal(err)
		}
		for i := range few {
			if off := math.Abs(few[i]/many[i] - 1); off > 0.05 {
				t.Errorf("%s: point %d is %g, of many draws %g", b.Label, i, few[i], many[i])
			}
		}
	}
}

// One charger may have several faults: the answer says all that have to be put right,
// as the page of a vehicle does, and what is known before what is not.
func TestAllThatIsWrongWithAChargerIsSaid(t *testing.T) {
	a := answered(t, ask.Charger{Label: "12 V 1 A", Battery: ask.Battery{Label: "24 V 7 Ah AGM"}})
	words := strings.Join(a.Words, " ")
	at := 0
	for _, want := range []string{"12 V cannot charge a pack of 24 V", "AC or DC", "for what kind of battery"} {
		i := strings.Index(words[at:], want)
		if i < 0 {
			t.Fatalf("lacks %q in its place: %s", want, words)
		}
		at += i
	}
}

// A cutoff that saves the weakest cell leaves charge that nobody rides with: how much is said,
// and of a load that was told how long it lasts until then.
func TestACutoffIsToldWithWhatItCosts(t *testing.T) {
	iron := ask.Battery{Label: "12.8 V 10 Ah LiFePO4"}
	for _, tt := range []struct {
		amps float64
		say  string
		min  bool
	}{{0, "% of the charge unused", false}, {10, "From full it then lasts ", true}} {
		a := answered(t, ask.Cutoff{Battery: iron, RunningA: tt.amps})
		if words := strings.Join(a.Words, " "); !strings.Contains(strings.ReplaceAll(words, "%) of", "% of"), tt.say) {
			t.Errorf("at %g A: lacks %q in %s", tt.amps, tt.say, words)
		}
		var unused, lasts *ask.Figure
		for i := range a.Beside {
			switch f := &a.Beside[i]; f.Unit {
			case "share":
				unused = f
			case "min":
				lasts = f
			}
		}
		if unused == nil || !(unused.Value > 0.1 && unused.Value < 0.9) || (lasts != nil) != tt.min {
			t.Errorf("at %g A: beside stands %+v", tt.amps, a.Beside)
		}
	}
}

// Of a battery that may last many minutes the shortest time is not told in thousandths
// of a second.
// Rested is not the most that a battery gives: off a charger lead-acid has 2.45 V a cell and
// iron phosphate 3.6 V, and that is what a vehicle must stand. Printed volts that are counted
// in another way than here are said to be the same.
func TestALabelTellsTheHighestVolts(t *testing.T) {
	for _, c := range []struct{ label, says, caution string }{
		{"12 V 7 Ah AGM", "12.8 V when full and rested, up to 14.7 V on its charger", "against 14.7 V, the highest"},
		{"25.6 V 10 Ah", "27.2 V when full and rested, up to 28.8 V on its charger", "against 28.8 V, the highest"},
		{"20 V max 5 Ah", "18 V nominal, 21 V when full, 15 V when empty. 20 V max is", "against 21 V, the highest"},
		{"14.8 V 5 Ah", "The printed 14.8 V are the same cells, counted at 3.7 V each instead of 3.6 V.", ""},
		{"11.1 V 5000 mAh lipo", "The printed 11.1 V are the same cells, counted at 3.7 V each instead of 3.6 V.", ""},
	} {
		a, err := ask.Label{Battery: ask.Battery{Label: c.label}}.Answer()
		if words := strings.Join(a.Words, " "); err != nil || !strings.Contains(words, c.says) || !strings.Contains(a.Caution, c.caution) {
			t.Errorf("%s: %q, %q, %v; want %q", c.label, words, a.Caution, err, c.says)
		}
	}
}

func TestARuntimeIsToldAsSomebodyTimesIt(t *testing.T) {
	for unit, tt := range map[string]struct {
		low, value, high float64
		want             string
	}{
		"min": {0.717 / 60, 13.2, 29.3, "13 min (1 s to 29 min)"},
		"h":   {7.96, 16.46, 21.2, "16 h (8 to 21 h)"},
		"s":   {0.0717, 0.2, 0.5, "200 ms (71.7 to 500 ms)"}, // a fuse opens so fast
	} {
		if got := (ask.Figure{Value: tt.value, Low: tt.low, High: tt.high, Unit: unit}).Text(); got != tt.want {
			t.Errorf("%q, want %q", got, tt.want)
		}
	}
}
