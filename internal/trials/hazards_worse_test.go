package trials_test

import (
	"flag"
	"fmt"
	"os"
	"slices"
	"strings"
	"sync"
	"testing"

	"pgregory.net/rapid"

	"example.org/packcheck/answer"
	"example.org/packcheck/cutoff"
	"example.org/packcheck/wiring"
)

// worse is a change in one direction that never makes the answer milder.
type worse struct {
	name  string
	bases []string
	// draw returns the better and the worse change, on top of the same setup.
	draw func(*rapid.T) (better, worse string)
	// of says which findings are compared; nil: all. A larger fuse ends fewer
	// rides, which is no reason to call it safer.
	of func(answer.Finding) bool
}

// between draws two different values out of a list that goes from good to bad,
// in that order.
func between(t *rapid.T, key string, values ...string) (better, worse string) {
	i := rapid.IntRange(0, len(values)-2).Draw(t, "better")
	j := rapid.IntRange(i+1, len(values)-1).Draw(t, "worse")
	return key + "=" + values[i], key + "=" + values[j]
}

func listed(key string, values ...string) func(*rapid.T) (string, string) {
	return func(t *rapid.T) (string, string) { return between(t, key, values...) }
}

// atLeastHouse are the findings by which somebody or something may burn.
func atLeastHouse(f answer.Finding) bool { return f.Harm >= answer.House }

// notTheSag leaves out that a cutoff opens at launch, which a longer delay
// cures.
func notTheSag(f answer.Finding) bool {
	return f.Code != cutoff.CodeOpensAtLaunch && f.Code != cutoff.CodeLaunchTooDeep
}

// onSpeed are the findings on speed: judged alone, or a base that is to be fixed
// first for its fuse would hide them.
func onSpeed(f answer.Finding) bool { return f.Topic == answer.TopicSpeed }

// notTheRide leaves out what a heavier load makes better: it is slower, and a
// cutoff opens with more charge left, or the wheels spin and nothing is drained.
func notTheRide(f answer.Finding) bool {
	return f.Topic != answer.TopicSpeed && f.Topic != answer.TopicCutoff && f.Code != wiring.CodeFuseTires
}

// notTheShort leaves out the short circuit, which resistance in the way makes
// smaller.
func notTheShort(f answer.Finding) bool {
	return atLeastHouse(f) && f.Code != wiring.CodeShortAboveBreaking && f.Code != wiring.CodeShortBurnsWire
}

func worses() []worse {
	all := []string{"proper", "lithium", "block", "pair", "iron", "labels", "labels6", "labels24", "board"}
	packs := []string{"proper", "lithium", "iron", "bench18"}
	return []worse{
		{name: "a cutoff taken away", bases: packs, draw: func(*rapid.T) (string, string) { return "", "-cutoff" }},
		{name: "a cutoff that waits longer", bases: packs, draw: listed("cutoff.module.delay", "1 s", "5 s", "20 s", "60 s", "300 s", "900 s", "3600 s"), of: notTheSag},
		{name: "a cutoff that opens lower", bases: []string{"proper", "lithium", "bench18"}, draw: func(t *rapid.T) (string, string) {
			return between(t, "cutoff.module.opens_at", "16.5 V", "15 V", "13.5 V", "12.4 V", "10.5 V", "8 V", "5 V", "0.5 V")
		}, of: notTheSag},
		{name: "more standby current in the module", bases: packs, draw: listed("cutoff.module.standby_current", "0 A", "0.1 mA", "1 mA", "5 mA", "10 mA", "30 mA", "83 mA", "300 mA")},
		{name: "more standby current in the controller", bases: all, draw: listed("controller.standby_current", "0 A", "1 mA", "5 mA", "20 mA", "80 mA")},
		{name: "a larger fuse", bases: all, draw: listed("fuse.form=small blade; fuse.rating", "15 A", "20 A", "25 A", "30 A", "40 A"), of: atLeastHouse},
		{name: "a larger large fuse", bases: all, draw: listed("fuse.form=large blade; fuse.rating", "20 A", "30 A", "40 A", "50 A", "60 A", "80 A"), of: atLeastHouse},
		{name: "a fuse farther away", bases: all, draw: listed("fuse.form=small blade; fuse.rating=25 A; fuse.distance_from_pack", "50 mm", "150 mm", "250 mm", "500 mm", "1 m", "2 m", "5 m")},
		{name: "thinner wire", bases: all, draw: listed("-wire.area; wire.gauge", "8 AWG", "10 AWG", "12 AWG", "14 AWG", "16 AWG", "18 AWG", "20 AWG", "22 AWG"), of: atLeastHouse},
		{name: "poorer insulation", bases: all, draw: listed("wire.insulation", "105 C", "90 C", "80 C", "75 C", "60 C"), of: atLeastHouse},
		{name: "more cells on plain contacts", bases: []string{"labels", "block"}, draw: func(t *rapid.T) (string, string) {
			const rest = "; -charger; pack.chemistry=li-ion; -pack.rate; controller.kind=contacts; cutoff.module.delay=2 s; cutoff.module.opens_at="
			return between(t, "pack.cells_in_series", "3; pack.label=11.1 V 5 Ah"+rest+"9.9 V", "4; pack.label=14.8 V 5 Ah"+rest+"13.2 V", "5; pack.label=18.5 V 5 Ah"+rest+"16.5 V",
				"6; pack.label=22.2 V 5 Ah"+rest+"19.8 V", "10; pack.label=37 V 5 Ah"+rest+"33 V")
		}},
		{name: "a board for fewer volts", bases: []string{"lithium", "proper"}, draw: listed(noConverter+"controller.max_voltage", "30 V", "24 V", "22 V", "20 V", "18 V", "16 V", "14 V", "12 V")},
		{name: "a younger child", bases: all[:9], draw: listed("rider.mass=16 kg; rider.age", "8 years", "6 years", "5 years", "4 years", "3 years", "2 years", "1 years"), of: onSpeed},
		{name: "a faster measured speed", bases: all[:9], draw: listed("measured.top_speed", "3 km/h", "5 km/h", "7 km/h", "9 km/h", "12 km/h", "15 km/h", "18 km/h", "25 km/h"), of: onSpeed},
		{name: "more mass on the seat", bases: all, draw: listed("rider.mass", "12 kg", "18 kg", "25 kg", "35 kg", "50 kg", "70 kg", "100 kg"), of: notTheRide},
		{name: "a hotter day", bases: all, draw: listed("-pack.temperature; outing.air", "22 C", "28 C", "33 C", "38 C", "45 C", "52 C", "58 C"), of: notTheRide},
		{name: "a steeper slope", bases: all, draw: listed("vehicle.slope", "0 %", "3 %", "6 %", "10 %", "15 %", "20 %", "30 %"), of: notTheRide},
		{name: "fewer volts under load", bases: []string{"block", "lithium"}, draw: func(t *rapid.T) (string, string) {
			return between(t, "measured.loaded_current=6 A; measured.loaded_voltage", "11 V", "10 V", "9 V", "8 V", "7 V", "5 V", "3 V", "1 V")
		}},
		{name: "a higher charger voltage", bases: []string{"block"}, draw: listed("charger.voltage", "14.7 V", "15.5 V", "16.5 V", "18 V", "21 V", "24 V", "29.4 V")},
		{name: "a higher charging current", bases: []string{"block", "lithium", "iron"}, draw: listed("charger.came_with_pack=false; charger.current", "1 A", "2 A", "4 A", "8 A", "15 A", "30 A")},
		{name: "a colder place to charge", bases: []string{"lithium", "iron"}, draw: listed("-pack.temperature; outing.air", "15 C", "8 C", "3 C", "-2 C", "-10 C", "-20 C")},
		{name: "looser joints", bases: all, draw: listed("wire.joints=6; wire.joint_resistance", "0.5 mOhm", "1 mOhm", "3 mOhm", "8 mOhm", "20 mOhm"), of: notTheShort},
		{name: "a worn pack", bases: packs, draw: listed("pack.health", "100 %", "85 %", "70 %", "55 %", "40 %", "25 %")},
	}
}

// around draws what else may be different.
func around(t *rapid.T) string {
	pick := func(name string, sets ...string) string { return rapid.SampledFrom(append(sets, "")).Draw(t, name) }
	return strings.Join([]string{
		pick("rider", "rider.mass=14 kg; rider.age=3 years", "rider.mass=26 kg; rider.age=7 years", "rider.mass=18 to 24 kg; rider.age=4 to 6 years"),
		pick("ground", "vehicle.ground=short grass", "vehicle.ground=packed dirt", "vehicle.ground=asphalt"),
		pick("wire", "wire.gauge=14 AWG; wire.insulation=80 C", "wire.gauge=16 AWG; wire.insulation=105 C", "wire.gauge=14 to 18 AWG"),
		pick("fuse", "fuse.form=small blade; fuse.rating=20 A", "fuse.form=small blade; fuse.rating=30 A; fuse.distance_from_pack=100 mm"),
		pick("outing", "outing.drive=15 s; outing.pause=15 s", "outing.drive=60 s; outing.pause=5 s"),
		pick("air", "outing.air=10 C", "outing.air=30 C"),
	}, "; ")
}

// Cases of each property: PACKCHECK_CASES, or few enough for a usual run.
var casesOnce = sync.OnceFunc(func() {
	n := os.Getenv("PACKCHECK_CASES")
	if n == "" {
		n = "1"
	}
	for name, value := range map[string]string{"rapid.checks": n, "rapid.nofailfile": "true", "rapid.seed": "7", "rapid.shrinktime": "3s"} {
		if err := flag.Set(name, value); err != nil {
			panic(err)
		}
	}
})

func TestWhatIsWorseIsNeverToldMilder(t *testing.T) {
	t.Parallel()
	casesOnce()
	for _, w := range worses() {
		t.Run(w.name, func(t *testing.T) {
			t.Parallel()
			rapid.Check(t, func(rt *rapid.T) { checkWorse(rt, w) })
		})
	}
}

func checkWorse(t *rapid.T, w worse) {
	base := rapid.SampledFrom(w.bases).Draw(t, "base")
	r := rigs()[base]
	if base != "bench18" {
		r = r.but(around(t))
	}
	better, bad := w.draw(t)
	good, err := r.but(better).assess(16)
	if err != nil {
		t.Skip("the better one is refused: " + err.Error())
	}
	ill, err := r.but(bad).assess(16)
	if err != nil {
		return // a refusal is the worst answer
	}
	worst := func(a *answer.Assessment) answer.Level {
		if w.of == nil {
			return answer.Worst(a.Findings)
		}
		return answer.Worst(slices.DeleteFunc(slices.Clone(a.Findings), func(f answer.Finding) bool { return !w.of(f) }))
	}
	if g, b := worst(good), worst(ill); b < g {
		t.Fatalf("%s with %q: %v %v; with %q: %v %v", base, better, g, wanted(good, w.of, g), bad, b, wanted(ill, w.of, b))
	}
}

func wanted(a *answer.Assessment, of func(answer.Finding) bool, least answer.Level) []string {
	var out []string
	for _, f := range a.Findings {
		if f.Level >= max(least, watch) && (of == nil || of(f)) {
			out = append(out, fmt.Sprintf("%v %s %.0f%%%s", f.Level, f.Code, 100*f.Share, guessed(f)))
		}
	}
	return out
}
