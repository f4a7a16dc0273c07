package ask_test

import (
	"math"
	"strings"
	"testing"

	"example.org/packcheck/answer"
	"example.org/packcheck/ask"
	"example.org/packcheck/tables"
)

// A range that was typed is asked at its middle and its ends: the figure spans
// all of them, and the worse end is what it is judged by.
func TestARangeIsJudgedByItsWorseEnd(t *testing.T) {
	at := func(amps float64) ask.Answer {
		a, err := ask.Drop{Wire: tables.WireSize{System: tables.AWG, Gauge: 16}, CurrentA: amps, OneWayM: 3, SystemV: 12}.Answer()
		if err != nil {
			t.Fatal(err)
		}
		return a
	}
	low, mid, high := at(5), at(15), at(25)
	if high.Level == nil || *high.Level < answer.FixFirst || mid.Level != nil && *mid.Level >= *high.Level {
		t.Fatalf("levels %v and %v: this range has no worse end", mid.Level, high.Level)
	}
	a := ask.Over(mid, low, high)
	if a.Value != mid.Value || a.Low != low.Low || a.High != high.High {
		t.Errorf("%g (%g to %g), want %g (%g to %g)", a.Value, a.Low, a.High, mid.Value, low.Low, high.High)
	}
	if a.Level == nil || *a.Level != *high.Level || !strings.Contains(strings.Join(a.Words, " "), "worse end") {
		t.Errorf("level %v, words %q", a.Level, a.Words)
	}
	for i := range a.Beside {
		if f := a.Beside[i]; f.Low > low.Beside[i].Low || f.High < high.Beside[i].High {
			t.Errorf("%s %g to %g does not hold the ends", f.What, f.Low, f.High)
		}
	}
	if one := ask.Over(mid); one.Low != mid.Low || len(one.Words) != len(mid.Words) {
		t.Error("without ends nothing changes")
	}
}

// Volts that were read as "12.0 to 12.8 V" leave more open than those that were read
// on a meter, and the odds of what ails a battery say so; what its volts may mean at
// the worse end decides how bad it is.
func TestOddsOfAnOldBatterySpanWhatItsReadingsMayBe(t *testing.T) {
	block := ask.Battery{Label: "12 V 7 Ah"}
	old := ask.Old{Battery: block, RestV: 12.4, LoadedV: 10, LoadedA: 9, HoursRested: 24}
	read := func(q ask.Old) ask.Answer {
		a, err := q.Answer()
		if err != nil {
			t.Fatal(err)
		}
		return a
	}
	metered := read(old)
	old.RestBetween, old.LoadedBetween = ask.Between{Low: 12, High: 12.8}, ask.Between{Low: 9, High: 11}
	ranged := read(old)
	if !(metered.Low < metered.Value && metered.Value < metered.High) || !(ranged.High-ranged.Low > 2*(metered.High-metered.Low)) {
		t.Errorf("on a meter %g to %g, over a range %g to %g", metered.Low, metered.High, ranged.Low, ranged.High)
	}
	low := ask.Old{Battery: block, RestV: 8}
	dead := read(low)
	if dead.Level == nil || *dead.Level < answer.FixFirst {
		t.Fatalf("8 V at rest: %v", dead.Level)
	}
	low.RestV, low.RestBetween = 10.4, ask.Between{Low: 8, High: 12.8}
	if a := read(low); a.Level == nil || *a.Level < *dead.Level {
		t.Errorf("8 to 12.8 V at rest: %v, at 8 V it is %v", a.Level, *dead.Level)
	}
	low.RestBetween = ask.Between{Low: 11, High: 12}
	if _, err := low.Answer(); err == nil {
		t.Error("a range that does not hold its value was taken")
	}
}

// How long it took is read off a clock or remembered as "5 to 60 s": then another
// device may have been it.
func TestWhatStoppedItIsToldOverWhatTheTimeMayHaveBeen(t *testing.T) {
	read, err := ask.Stopped{Seconds: 20}.Answer()
	if err != nil {
		t.Fatal(err)
	}
	recalled, err := ask.Stopped{Seconds: 32.5, Between: ask.Between{Low: 5, High: 60}}.Answer()
	if err != nil {
		t.Fatal(err)
	}
	if !(read.Low < read.High) || !(recalled.High-recalled.Low > 2*(read.High-read.Low)) {
		t.Errorf("read %g to %g, recalled %g to %g", read.Low, read.High, recalled.Low, recalled.High)
	}
	if words := strings.Join(recalled.Words, " "); !strings.Contains(words, "it is rather the auto-reset breaker") {
		t.Errorf("nothing is said of the other device: %s", words)
	}
	dead, err := ask.Stopped{StaysDead: true}.Answer()
	if err != nil || dead.Low != dead.High {
		t.Errorf("one that stays dead has no time: %g to %g, %v", dead.Low, dead.High, err)
	}
}

// Of what has to be fitted, the words are of the end that asks for most, and not of the middle.
func TestARangeIsFittedForItsWorseEnd(t *testing.T) {
	wire := tables.WireSize{System: tables.AWG, Gauge: 10}
	for _, c := range []struct {
		name string
		of   func(x float64) ask.Question
		ends [2]float64
		as   float64 // the end whose words count
	}{
		{"a wire for more amps", func(x float64) ask.Question { return ask.Wire{CurrentA: x} }, [2]float64{20, 30}, 30},
		{"a wire for a longer way", func(x float64) ask.Question { return ask.Wire{CurrentA: 20, OneWayM: x, SystemV: 12} }, [2]float64{3, 6}, 6},
		{"a fuse that holds more amps", func(x float64) ask.Question { return ask.Fuse{Wire: wire, RunningA: x} }, [2]float64{10, 20}, 20},
		{"a fuse for the insulation that stands less", func(x float64) ask.Question {
			return ask.Fuse{Wire: tables.WireSize{System: tables.AWG, Gauge: 16}, RunningA: 5, InsulationC: x}
		}, [2]float64{60, 105}, 60},
		{"a cutoff that opens higher", func(x float64) ask.Question {
			return ask.Cutoff{Battery: ask.Battery{Label: "20 V max 5 Ah"}, RunningA: x}
		}, [2]float64{5, 15}, 5},
	} {
		low, high := answered(t, c.of(c.ends[0])), answered(t, c.of(c.ends[1]))
		over := ask.Over(answered(t, c.of((c.ends[0]+c.ends[1])/2)), low, high)
		want := low
		if c.as == c.ends[1] {
			want = high
		}
		if low.Words[0] == high.Words[0] {
			t.Fatalf("%s: both ends say %q", c.name, low.Words[0])
		}
		if over.Words[1] != want.Words[0] || over.Figure() != want.Figure() {
			t.Errorf("%s: %q (%+v); want %q (%+v)", c.name, over.Words, over.Figure(), want.Words[0], want.Figure())
		}
	}
}

// A load pulls the volts down; ranges that overlap may still both be true.
func TestMoreVoltsUnderLoadThanAtRestAreAFault(t *testing.T) {
	block := ask.Battery{Label: "12 V 7 Ah"}
	for _, c := range []struct {
		q  ask.Old
		ok bool
	}{
		{ask.Old{Battery: block, RestV: 12.6, LoadedV: 12.6, LoadedA: 9}, true},
		{ask.Old{Battery: block, RestV: 10.2, LoadedV: 12.6, LoadedA: 9}, false},
		{ask.Old{Battery: block, RestV: 12.2, RestBetween: ask.Between{Low: 12, High: 12.4}, LoadedV: 12.3, LoadedA: 1}, true},
		{ask.Old{Battery: block, RestV: 12.2, LoadedV: 12.3, LoadedBetween: ask.Between{Low: 12.1, High: 12.5}, LoadedA: 1}, true},
		{ask.Old{Battery: block, RestV: 12.2, LoadedV: 12.4, LoadedBetween: ask.Between{Low: 12.3, High: 12.5}, LoadedA: 1}, false},
	} {
		_, err := c.q.Answer()
		if told := err != nil && strings.Contains(err.Error(), "a load pulls the voltage down"); told == c.ok || err != nil && c.ok {
			t.Errorf("%+v: %v", c.q, err)
		}
	}
}

// A cause that hardly fits the time is not told as what it was.
func TestATimeThatNothingTakesIsToldAsThat(t *testing.T) {
	for seconds, poor := range map[float64]bool{20: false, 300: false, 86400: true} {
		a := answered(t, ask.Stopped{Seconds: seconds})
		if told := strings.HasPrefix(a.Words[0], "Nothing that resets itself"); told != poor {
			t.Errorf("%g s: %q", seconds, a.Words)
		}
	}
}

// The air that is told is that of a report: around wire and fuse it is 10 K warmer.
func TestWireAndFuseStandInABoxWarmerThanTheAir(t *testing.T) {
	size := tables.WireSize{System: tables.AWG, Gauge: 14}
	hot := 30.0
	for _, c := range []struct {
		airC *float64
		want float64
	}{
		{nil, 20},      // 33 CFR 183.425, Table 5: 20 A in surroundings of 30 degC
		{&hot, 16.330}, // sqrt((60-40)/(60-30)) of it
	} {
		a := answered(t, ask.Fuse{Wire: size, RunningA: 5, AirC: c.airC})
		for _, f := range a.Beside {
			if f.What == "the wire carries" && math.Abs(f.Value-c.want) > 0.001 {
				t.Errorf("AWG 14 carries %g A, want %g", f.Value, c.want)
			}
		}
	}
}

// The volts of lithium do not tell what ails it, but whether it is finished.
func TestAnOldLithiumPackIsToldByItsRest(t *testing.T) {
	tool := ask.Battery{Label: "20 V max 5 Ah"}
	for _, c := range []struct {
		q    ask.Old
		want answer.Level
	}{
		{ask.Old{Battery: tool, RestV: 18, LoadedV: 16, LoadedA: 9}, answer.Fine},
		{ask.Old{Battery: tool, RestV: 8}, answer.Danger},
		{ask.Old{Battery: tool, RestV: 16, RestBetween: ask.Between{Low: 12, High: 18}}, answer.Danger},
	} {
		a := answered(t, c.q)
		level := answer.Fine
		if a.Level != nil {
			level = *a.Level
		}
		if level != c.want || a.What != "charge" || !strings.HasPrefix(a.Words[0], "Flat, worn or badly connected can be told") {
			t.Errorf("%+v: %v %s %q", c.q, level, a.What, a.Words)
		}
	}
}
