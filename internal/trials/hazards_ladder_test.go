package trials_test

import (
	"fmt"
	"os"
	"slices"
	"strings"
	"testing"

	"example.org/packcheck/answer"
	"example.org/packcheck/charge"
)

// chain is a battery whose resting volts are walked down from full to nothing.
type chain struct {
	name  string
	set   string  // on the bench rig
	fullV float64 // at rest, settled, as its profile has it
	lastV float64 // below it the volts may be those of one of two packs, which is a guess
}

// chains are every chemistry, one battery and two in series. The bench keeps
// everything but the battery out of it.
func chains() []chain {
	const lithium = "cutoff.module.delay=1 s; cutoff.module.standby_current=0 A; "
	return []chain{
		{"agm 12 V", "pack.chemistry=agm; pack.label=12 V 7 Ah", 12.8, 0},
		{"agm 6 V", "pack.chemistry=agm; pack.label=6 V 4.5 Ah; load.until=5.25 V; load.current=1 A", 6.4, 0},
		{"agm, two blocks on one label", "pack.chemistry=agm; pack.label=24 V (two 12 V) 7 Ah; load.until=21 V", 25.6, 0},
		{"agm, two blocks joined", "pack.chemistry=agm; pack.label=12 V 7 Ah; pack.joined=series; load.until=21 V", 25.6, 13.7},
		{"traction", "pack.chemistry=agm-traction; pack.label=12 V 12 Ah", 12.8, 0},
		{"gel", "pack.chemistry=gel; pack.label=12 V 7 Ah", 12.8, 0},
		{"li-ion, five cells", lithium + "pack.chemistry=li-ion; pack.label=20 V max 5 Ah; cutoff.module.opens_at=16.5 V; load.until=16 V", 20.9, 0},
		{"li-ion, two tool packs in series", lithium + "pack.chemistry=li-ion; pack.label=20 V max 5 Ah; pack.joined=series; cutoff.module.opens_at=33 V; load.until=32 V", 41.8, 21.4},
		{"li-ion, three cells", lithium + "pack.chemistry=li-ion; pack.label=11.1 V 5 Ah Li-ion; cutoff.module.opens_at=9.9 V; load.until=9.6 V", 12.5, 0},
		{"lifepo4, four cells", lithium + "pack.chemistry=lifepo4; pack.label=12.8 V 10 Ah LiFePO4; cutoff.module.opens_at=12 V; load.until=11.6 V", 13.4, 0},
		{"lifepo4, two in series", lithium + "pack.chemistry=lifepo4; pack.label=12.8 V 10 Ah LiFePO4; pack.joined=series; cutoff.module.opens_at=24 V; load.until=23.2 V", 26.8, 14.9},
		{"nimh, fifteen cells", "pack.chemistry=nimh; pack.label=18 V 3 Ah NiMH; load.until=15 V", 19.8, 0},
	}
}

// levelAtRest answers the chain with that reading. A refusal counts as the
// worst: nobody charges what is refused.
func (c chain) levelAtRest(t testing.TB, volts float64) (answer.Level, string) {
	t.Helper()
	a, err := rigNamed(t, "bench").but(c.set + fmt.Sprintf("; measured.rest_voltage=%.2f V; measured.hours_rested=24 h", volts)).assess(16)
	if err != nil {
		return answer.Danger, err.Error()
	}
	return a.Verdict, strings.Join(findingsAt(a, max(a.Verdict, watch)), ", ")
}

// levelUnderLoad answers the chain with that reading while the bench draws from it.
// What becomes of it on the shelf hangs on draws, and these on the reading.
func (c chain) levelUnderLoad(t testing.TB, volts float64) (answer.Level, string) {
	t.Helper()
	const sound = "; pack.health=100 %; pack.watches_cells=true; measured.loaded_current=3 A; "
	a, err := rigNamed(t, "bench").but(c.set + sound + fmt.Sprintf("measured.loaded_voltage=%.2f V", volts)).assess(16)
	if err != nil {
		return answer.Danger, err.Error()
	}
	a.Findings = slices.DeleteFunc(a.Findings, func(f answer.Finding) bool { return f.Topic == answer.TopicCutoff })
	return answer.Worst(a.Findings), strings.Join(findingsAt(a, watch), ", ")
}

// walk goes down from full and holds every step against the one before. It returns
// what is said at the last.
func (c chain) walk(t *testing.T, step int, at func(testing.TB, float64) (answer.Level, string)) (answer.Level, string) {
	t.Helper()
	if os.Getenv("PACKCHECK_LADDER") != "" {
		step = 1 // 10 mV
	}
	above, aboveV, said := answer.Fine, c.fullV, ""
	for n := int(100*c.fullV + 0.5); n > -step && float64(n)/100 >= c.lastV; n -= step {
		volts := float64(max(n, 0)) / 100
		level, why := at(t, volts)
		if level < above {
			t.Errorf("%.2f V: %v (%s), but %v at %.2f V (%s)", volts, level, why, above, aboveV, said)
		}
		if level != above || said == "" {
			t.Logf("%.2f V: %v (%s)", volts, level, why)
		}
		above, aboveV, said = level, volts, why
	}
	return above, said
}

// Steps of two volts usually, of 10 mV with PACKCHECK_LADDER set, which takes
// some minutes.
func TestFallingRestVoltsAreNeverToldMilder(t *testing.T) {
	t.Parallel()
	for _, c := range chains() {
		t.Run(c.name, func(t *testing.T) {
			t.Parallel()
			if last, _ := c.walk(t, 200, c.levelAtRest); last < fixFirst && c.lastV == 0 {
				t.Errorf("%v at nothing", last)
			}
		})
	}
}

// Under a load that was measured too. At nothing some cell is dead or runs backwards,
// and lithium that does burns when somebody charges it.
func TestFallingVoltsUnderLoadAreNeverToldMilder(t *testing.T) {
	t.Parallel()
	for i, c := range chains() {
		if !tried(i) {
			continue
		}
		t.Run(c.name, func(t *testing.T) {
			t.Parallel()
			least := fixFirst
			if strings.Contains(c.set, "chemistry=li") {
				least = danger
			}
			if last, said := c.walk(t, 400, c.levelUnderLoad); c.lastV == 0 && (last < least || !strings.Contains(said, charge.CodeFallsFar)) {
				t.Errorf("%v at nothing: %s", last, said)
			}
		})
	}
}
