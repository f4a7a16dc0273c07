package ask_test

import (
	"strings"
	"testing"

	"example.org/packcheck/answer"
	"example.org/packcheck/ask"
)

// ISO 13732-1:2006 (from memory): 51 degC on bare metal burns in a minute; plastic
// burns later, so of it no seconds are told.
func TestHowSoonAHotMotorBurnsIsSaid(t *testing.T) {
	t.Parallel()
	for _, c := range []struct {
		part  ask.Part
		tempC float64
		want  string
	}{{ask.HotMotor, 51, "for 60 s or longer"}, {ask.HotMotor, 90, "for 1 s or longer"}, {ask.HotMotor, 40, ""}, {ask.HotPlastic, 70, ""}} {
		a, err := ask.Hot{Part: c.part, TempC: c.tempC}.Answer()
		if err != nil {
			t.Fatal(err)
		}
		said := strings.Join(a.Words, " ")
		if got := strings.Contains(said, "burns skin"); got != (c.want != "") || !strings.Contains(said, c.want) {
			t.Errorf("%s of %g C: %q, want %q", c.part, c.tempC, said, c.want)
		}
	}
}

// ISO 13732-1:2006 (from memory): bare metal burns within 10 s from 55 degC, in whatever
// air it hangs.
func TestWhatBurnsIsNothingToHoldInAnyAir(t *testing.T) {
	t.Parallel()
	for _, part := range ask.Parts() {
		for airC := -10.0; airC <= 50; airC += 5 {
			for tempC := 55.0; tempC <= 95; tempC++ {
				a := answered(t, ask.Hot{Part: part, TempC: tempC, AirC: new(airC)})
				if a.Level == nil || strings.Contains(a.Words[0], "may hold") || a.Limit == nil || a.Limit.Value >= tempC {
					t.Errorf("%s of %g C in air of %g C: %v", part, tempC, airC, a.Words)
				}
			}
		}
	}
}

// Plastic of end bells and gears softens from 100 to 130 degC (trade, from memory),
// windings of class A end at 105 degC (IEC 60085); warming as table can 550, time constant
// 250 to 700 s.
func TestAMotorIsJudgedByWhereItIsHeading(t *testing.T) {
	t.Parallel()
	for _, c := range []struct {
		tempC, minutes float64
		want           string
		says           string
	}{
		{99, 5, "fix first", "Put that right first"},         // 162 C
		{60, 3, "fix first", "windings of class A"},          // 124 C
		{41, 2, "watch", "Pause before that"},                // 96 C, up to 153
		{43, 2, "fix first", "Put that right first"},         // 103 C
		{40, 5, "watch", "C), too hot for a child to touch"}, // 56 C
		{30, 5, "nothing", "heading for"},                    // 38 C
		{120, 20, "fix first", "Put that right first"},       // already soft
		{60, 1, "watch", "burns skin"},                       // too soon to tell
		{60, 60, "watch", "heading for 60 C"},                // settled
	} {
		a := answered(t, ask.Hot{Part: ask.HotMotor, TempC: c.tempC, AfterS: 60 * c.minutes})
		level := "nothing"
		if a.Level != nil {
			level = a.Level.String()
		}
		if said := strings.Join(a.Words, " "); level != c.want || !strings.Contains(said, c.says) {
			t.Errorf("a motor of %g C after %g min: %s: %s, want %s: %s", c.tempC, c.minutes, level, said, c.want, c.says)
		}
	}
}

// Lithium is charged from 0 to 45 degC (sheet of a 21700 cell, checks/battery.md, section 4),
// sealed lead-acid from 0 to 40 (sheets, section 6).
func TestABatteryThatIsTooHotOrColdToBeChargedWaits(t *testing.T) {
	t.Parallel()
	const lithium, lead = "20 V max 5 Ah", "12 V 7 Ah"
	for _, c := range []struct {
		label string
		tempC float64
		level answer.Level // Fine stands for none
		says  string
	}{
		{"", 50, answer.Watch, "If it is lithium it must not be charged at 45 C"},
		{"", -5, answer.FixFirst, "If it is lithium it must not be charged at 0 C"},
		{"", 55, answer.FixFirst, "Too hot for a child to touch"},
		{"", 25, answer.Fine, "may hold"},
		{lithium, 50, answer.Watch, "It must not be charged at 45 C"},
		{lithium, 45, answer.Watch, "It must not be charged at 45 C"},
		{lithium, 44, answer.Fine, "may hold"},
		{lithium, 0, answer.FixFirst, "It must not be charged at 0 C"},
		{lithium, -5, answer.FixFirst, "warmth of a room"},
		{lithium, 55, answer.FixFirst, "It must not be charged at 45 C"},
		{lead, 42, answer.Watch, "It must not be charged at 40 C"},
		{lead, -5, answer.Watch, "It must not be charged at 0 C"},
	} {
		a := answered(t, ask.Hot{Part: ask.HotBattery, TempC: c.tempC, Battery: ask.Battery{Label: c.label}})
		level := answer.Fine
		if a.Level != nil {
			level = *a.Level
		}
		said := strings.Join(a.Words, " ")
		if level != c.level || !strings.Contains(said, c.says) {
			t.Errorf("%q of %g C: %s: %s; want %s: %s", c.label, c.tempC, level, said, c.level, c.says)
		}
		if waits := strings.Contains(said, "charged at"); waits != (c.level != answer.Fine) || c.tempC <= 0 && strings.Contains(a.Caution, "cool") {
			t.Errorf("%q of %g C: %s %s", c.label, c.tempC, said, a.Caution)
		}
	}
}

// Surfaces that can be touched have at most 54 degC (a test plan built on ASTM F963); what
// a battery is heading for is a guess, and never a danger.
func TestABatteryIsJudgedByWhereItIsHeading(t *testing.T) {
	t.Parallel()
	for _, c := range []struct {
		tempC, minutes float64
		want           answer.Level
		says           string
	}{
		{44, 600, answer.Fine, "heading for 44 C"},
		{44, 60, answer.FixFirst, "hotter than it may get"},
		{53, 30, answer.FixFirst, "hotter than it may get"},
	} {
		a := answered(t, ask.Hot{Part: ask.HotBattery, TempC: c.tempC, AfterS: 60 * c.minutes, Battery: ask.Battery{Label: "20 V max 5 Ah"}})
		level := answer.Fine
		if a.Level != nil {
			level = *a.Level
		}
		if said := strings.Join(a.Words, " "); level != c.want || !strings.Contains(said, c.says) {
			t.Errorf("%g C after %g min: %s: %s; want %s: %s", c.tempC, c.minutes, level, said, c.want, c.says)
		}
	}
}
