package trials_test

import (
	"flag"
	"fmt"
	"math"
	"os"
	"slices"
	"strings"
	"sync"
	"testing"

	"pgregory.net/rapid"

	"example.org/packcheck"
	"example.org/packcheck/answer"
	"example.org/packcheck/battery"
	"example.org/packcheck/cutoff"
	"example.org/packcheck/drive"
	"example.org/packcheck/internal/reckon"
	"example.org/packcheck/wiring"
)

// worse is a change in one direction that never makes the answer milder.
type worse struct {
	name  string
	bases []string
	steps []string // the same setup from good to bad, as changes
	// of says which findings are compared: those that hang on what is changed. All
	// of them, and what the vehicle has anyhow would hide a judge that is wrong. A
	// larger fuse ends fewer rides, which is no reason to call it safer.
	of func(answer.Finding) bool
	// seenOn is the vehicle, with changes after a semicolon, on which the first and the last step are told apart, so
	// that a judge who takes bad for good is caught.
	seenOn string
	// warms says that a warm battery may get going what stood with a cold one: then
	// it is another case, and a better one.
	warms bool
	// hair is the share of a limit within which the better setup's findings do not
	// count: more draw in the pauses ends a ride up to a press of the pedal sooner.
	hair float64
}

// aPress is that hair by unit. For the days until harm: a press leaves up to a hundredth
// of the charge more, and a limit in days is passed with some three hundredths left. For
// the weakest cell: near its end it falls by a tenth of a volt in a press of a minute.
func aPress(unit string) float64 { return map[string]float64{"h": 0.35, "V": 0.1}[unit] }

// on makes steps of values of one key; what stands before the key's name goes
// with each.
func on(key string, values ...string) []string {
	var out []string
	for _, v := range values {
		out = append(out, key+"="+v)
	}
	return out
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

// notTheMaterial leaves out how long insulation stands a short circuit: the rating
// names a material, and some that are rated lower stand more heat for a second.
func notTheMaterial(f answer.Finding) bool { return f.Code != wiring.CodeShortBurnsWire }

// notTheBreaking leaves out what the fuse can interrupt: thinner wire makes a short
// circuit smaller.
func notTheBreaking(f answer.Finding) bool { return f.Code != wiring.CodeShortAboveBreaking }

// notTheShort leaves out the short circuit, which resistance in the way makes
// smaller.
func notTheShort(f answer.Finding) bool {
	return atLeastHouse(f) && f.Code != wiring.CodeShortAboveBreaking && f.Code != wiring.CodeShortBurnsWire
}

// onJoints are the findings that joints bring: less flows through looser ones, which
// spares all the others, the pedal switch among them.
func onJoints(f answer.Finding) bool {
	return f.Change == answer.FitJoint && f.Item == answer.Wire || f.Code == wiring.CodeDropLarge
}

// notTheCharge leaves out the charge after the ride: a heavier load may leave more in
// the battery when a cutoff opens, and then less has to go in.
func notTheCharge(f answer.Finding) bool { return f.Topic != answer.TopicCharge }

// notTheShorterRide leaves out how warm motors and battery get in a ride that ends
// sooner, as at the first hard start that a cutoff feels, and what reversing draws of a
// vehicle that rolls more slowly.
func notTheShorterRide(f answer.Finding) bool {
	return f.Code != battery.CodeTooHot && f.Code != drive.CodeMotorHot && f.Code != drive.CodePlasticSoftens && f.Code != drive.CodeReversal
}

// notTheirAmps leaves out the amps of launch, blocked wheels and reversal, which fall as
// the motors' copper gets warm.
func notTheirAmps(f answer.Finding) bool { return f.Topic != answer.TopicLaunch || f.Unit != "A" }

// notTheFusesTime leaves out a fuse that is slow for a current beyond its rating.
func notTheFusesTime(f answer.Finding) bool { return f.Code != wiring.CodeBlockedOverloadsWire }

// about keeps the findings of some topics.
func about(topics ...answer.Topic) func(answer.Finding) bool {
	return func(f answer.Finding) bool { return slices.Contains(topics, f.Topic) }
}

// both keeps what several keep.
func both(of ...func(answer.Finding) bool) func(answer.Finding) bool {
	return func(f answer.Finding) bool {
		return !slices.ContainsFunc(of, func(is func(answer.Finding) bool) bool { return !is(f) })
	}
}

func worses() []worse {
	all := []string{"proper", "lithium", "block", "pair", "iron", "labels", "labels6", "labels24", "board"}
	packs := []string{"proper", "lithium", "iron", "bench18"}
	// Not of "proper": what its original did is inferred from the speed that is read.
	onCutoff, onPath, onCharge := about(answer.TopicCutoff), about(answer.TopicPath), about(answer.TopicCharge)
	const contacts = "; -charger; pack.chemistry=li-ion; -pack.rate; controller.kind=contacts; cutoff.module.delay=2 s; cutoff.module.opens_at="
	return []worse{
		{"a cutoff taken away", packs, []string{"", "-cutoff"}, onCutoff, "lithium", false, 0},
		{"a cutoff that waits longer", packs, on("cutoff.module.delay", "1 s", "5 s", "20 s", "60 s", "300 s", "900 s", "3600 s"), both(onCutoff, notTheSag), "lithium", false, 0},
		{"a cutoff that opens lower", []string{"proper", "lithium", "bench18"}, on("cutoff.module.opens_at", "16.5 V", "15 V", "13.5 V", "12.4 V", "10.5 V", "8 V", "5 V", "0.5 V"), both(onCutoff, notTheSag), "lithium", false, 0},
		{"more standby current in the module", packs, on("cutoff.module.standby_current", "0 A", "0.1 mA", "1 mA", "5 mA", "10 mA", "30 mA", "83 mA", "300 mA"), onCutoff, "lithium", false, 0},
		{"more standby current in the controller", all, on("controller.standby_current", "0 A", "1 mA", "5 mA", "20 mA", "80 mA"), onCutoff, "lithium; -cutoff; cutoff.controller.opens_at=17.5 V; cutoff.controller.delay=2 s", false, 0.03},
		{"a longer time left alone", []string{"block", "lithium", "iron"}, on("storage.from=2026-11-01; storage.temperature=20 C; storage.until", "2026-11-15", "2027-01-15", "2027-05-01", "2028-05-01", "2030-05-01"), onCharge, "block", false, 0},
		{"a larger fuse", all, on("fuse.form=small blade; fuse.rating", "15 A", "20 A", "25 A", "30 A", "40 A"), both(onPath, atLeastHouse), "labels; wire.gauge=16 AWG; wire.insulation=80 C", false, 0},
		{"a larger large fuse", all, on("fuse.form=large blade; fuse.rating", "20 A", "30 A", "40 A", "50 A", "60 A", "80 A"), both(onPath, atLeastHouse), "block", false, 0},
		{"a fuse farther away", all, on("fuse.form=small blade; fuse.rating=25 A; fuse.distance_from_pack", "50 mm", "150 mm", "250 mm", "500 mm", "1 m", "2 m", "5 m"), both(onPath, notTheShort), "block", false, 0},
		{"thinner wire", all, on("-wire.area; wire.gauge", "8 AWG", "10 AWG", "12 AWG", "14 AWG", "16 AWG", "18 AWG", "20 AWG", "22 AWG"), both(onPath, atLeastHouse, notTheBreaking), "block", false, 0},
		{"poorer insulation", all, on("wire.insulation", "105 C", "90 C", "80 C", "75 C", "60 C"), both(onPath, atLeastHouse, notTheMaterial), "lithium; wire.gauge=18 AWG; fuse.rating=25 A", false, 0},
		{"more cells on plain contacts", []string{"labels", "block"}, on("pack.cells_in_series", "3; pack.label=11.1 V 5 Ah"+contacts+"9.9 V", "4; pack.label=14.8 V 5 Ah"+contacts+"13.2 V", "5; pack.label=18.5 V 5 Ah"+contacts+"16.5 V",
			"6; pack.label=22.2 V 5 Ah"+contacts+"19.8 V", "10; pack.label=37 V 5 Ah"+contacts+"33 V"), about(answer.TopicLaunch, answer.TopicPack), "block", false, 0},
		{"a board for fewer volts", []string{"lithium", "proper"}, on(noConverter+"controller.max_voltage", "30 V", "24 V", "22 V", "20 V", "18 V", "16 V", "14 V", "12 V"), about(answer.TopicLaunch), "lithium", false, 0},
		{"a younger child", all, on("rider.mass=16 kg; rider.age", "8 years", "6 years", "5 years", "4 years", "3 years", "2 years", "1 years"), onSpeed, "block", false, 0},
		{"a faster measured speed", all[1:], on("measured.top_speed", "3 km/h", "5 km/h", "7 km/h", "9 km/h", "12 km/h", "15 km/h", "18 km/h", "25 km/h"), onSpeed, "block", false, 0},
		// Not of "proper": its motors' heat is judged against its original's with as much to carry.
		{"more mass on the seat", all[1:], on("rider.mass", "12 kg", "18 kg", "25 kg", "35 kg", "50 kg", "70 kg", "100 kg"), both(notTheRide, notTheCharge, notTheShorterRide), "block", false, 0},
		// In the heat a fuse opens sooner, and the wire outlasts a short circuit that it did not outlast in the cold.
		{"a hotter day", all, on("-pack.temperature; outing.air", "22 C; outing.charged_at=22 C", "28 C; outing.charged_at=28 C", "33 C; outing.charged_at=33 C", "38 C; outing.charged_at=38 C", "45 C; outing.charged_at=45 C", "52 C; outing.charged_at=52 C", "58 C; outing.charged_at=58 C"), both(notTheRide, notTheMaterial, notTheFusesTime, notTheirAmps), "lithium", true, 0},
		{"a steeper slope", all[1:], on("vehicle.slope", "0 %", "3 %", "6 %", "10 %", "15 %", "20 %", "30 %"), both(notTheRide, notTheCharge, notTheShorterRide), "block", false, 0},
		{"fewer volts under load", []string{"block", "lithium"}, on("measured.loaded_current=6 A; measured.loaded_voltage", "11 V", "10 V", "9 V", "8 V", "7 V", "5 V", "3 V", "1 V"), about(answer.TopicPack), "block", false, 0},
		{"a higher charger voltage", []string{"block"}, on("charger.voltage", "14.7 V", "15.5 V", "16.5 V", "18 V", "21 V", "24 V", "29.4 V"), onCharge, "block", false, 0},
		{"a higher charging current", []string{"block", "lithium", "iron"}, on("charger.came_with_pack=false; charger.current", "1 A", "2 A", "4 A", "8 A", "15 A", "30 A"), onCharge, "block", false, 0},
		{"a colder place to charge", []string{"lithium", "iron"}, on("-pack.temperature; outing.charged_at", "15 C", "8 C", "3 C", "-2 C", "-10 C", "-20 C"), onCharge, "lithium", false, 0},
		// Up to as much as the motors take: a joint is hottest there, and then chokes the current.
		{"looser joints", all, on("wire.joints=6; wire.joint_resistance", "0.5 mOhm", "1 mOhm", "3 mOhm", "8 mOhm", "20 mOhm", "60 mOhm"), onJoints, "labels; measured.loaded_current=9 A; measured.loaded_voltage=11 V", false, 0},
		{"a worn pack", packs, on("pack.health", "100 %", "85 %", "70 %", "55 %", "40 %", "25 %"), about(answer.TopicPack), "lithium", false, 0}, // its cutoff opens sooner, with more charge left
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
	switch {
	case n != "":
	case os.Getenv("PACKCHECK_SLOW") != "":
		n = "100"
	default:
		n = "10"
	}
	seed := os.Getenv("PACKCHECK_SEED")
	if seed == "" {
		seed = "7"
	}
	for name, value := range map[string]string{"rapid.checks": n, "rapid.nofailfile": "true", "rapid.seed": seed, "rapid.shrinktime": "10s"} {
		if err := flag.Set(name, value); err != nil {
			panic(err)
		}
	}
})

// hidden draws vehicles of the worlds of several setups: what is left open under
// the same key is the same in each.
type hidden struct {
	t    *rapid.T
	have map[string]float64
}

// of returns the findings of that one vehicle of a rig's world.
func (h *hidden) of(r rig) ([]answer.Finding, error) {
	s, err := packcheck.Read(strings.NewReader(r.toml()), "hazard.toml")
	if err != nil {
		return nil, err
	}
	trial, err := reckon.NewTrial(s)
	if err != nil {
		return nil, err
	}
	z := make([]float64, trial.Dims())
	for i, key := range trial.Keys() {
		if _, drawn := h.have[key]; !drawn {
			h.have[key] = rapid.Float64Range(-2.4, 2.4).Draw(h.t, key) // 98 of 100 of a normal number
		}
		z[i] = h.have[key]
	}
	return trial.Findings(z)
}

// One vehicle of those that both setups may mean, the same in both: shares and
// the draws of an answer have no part in it, so it is cheap enough for ten
// thousand.
func TestWhatIsWorseIsNeverToldMilder(t *testing.T) {
	t.Parallel()
	casesOnce()
	for _, w := range worses() {
		t.Run(w.name, func(t *testing.T) {
			t.Parallel()
			rapid.Check(t, func(rt *rapid.T) { w.check(rt, (&hidden{rt, map[string]float64{}}).of) })
		})
	}
}

// The same with all that an answer does: what holds in some draws only is told
// milder, and that must not turn the order round.
func TestWhatIsWorseIsNeverToldMilderInAnAnswer(t *testing.T) {
	t.Parallel()
	casesOnce()
	cases := 1
	if os.Getenv("PACKCHECK_SLOW") != "" {
		cases = 30
	}
	for i, w := range worses() {
		if !tried(i) {
			continue
		}
		t.Run(w.name, func(t *testing.T) {
			t.Parallel()
			n := 0
			rapid.Check(t, func(rt *rapid.T) {
				if n++; n > cases {
					return
				}
				w.check(rt, func(r rig) ([]answer.Finding, error) {
					a, err := r.assess(worseDraws)
					if err != nil {
						return nil, err
					}
					return a.Findings, nil
				})
			})
		})
	}
}

// check draws a vehicle and two steps, and compares what is found.
func (w worse) check(rt *rapid.T, findings func(rig) ([]answer.Finding, error)) {
	base := rapid.SampledFrom(w.bases).Draw(rt, "base")
	i := rapid.IntRange(0, len(w.steps)-2).Draw(rt, "better")
	j := rapid.IntRange(i+1, len(w.steps)-1).Draw(rt, "worse")
	r := rigs()[base]
	if base != "bench18" {
		r = r.but(around(rt))
	}
	good, err := findings(r.but(w.steps[i]))
	if err != nil {
		rt.Skip("the better one is refused: " + err.Error())
	}
	bad, err := findings(r.but(w.steps[j]))
	if err != nil {
		return // a refusal is the worst answer
	}
	if w.warms && stands(good) && !stands(bad) {
		return
	}
	if why := w.milder(good, bad); why != "" {
		rt.Fatalf("%s with %q and then %q: %s", base, w.steps[i], w.steps[j], why)
	}
}

// worseDraws is cheap: both answers rest on the same few draws, so that they can
// be compared all the same.
const worseDraws = 16

// stands reports whether a vehicle does not get going, or hardly.
func stands(fs []answer.Finding) bool {
	return slices.ContainsFunc(fs, func(f answer.Finding) bool { return f.Ladder == drive.LadderGoing && f.Level >= fixFirst })
}

// milder says how the worse of two is told milder, or nothing.
func (w worse) milder(good, bad []answer.Finding) string {
	g, b := w.worst(slices.DeleteFunc(slices.Clone(good), w.near)), w.worst(bad)
	if b >= g {
		return ""
	}
	return fmt.Sprintf("%v %v, and then %v %v", g, wanted(good, w.of, g), b, wanted(bad, w.of, b))
}

// near reports whether a finding lies within the hair of its limit.
func (w worse) near(f answer.Finding) bool {
	hair := w.hair
	if hair > 0 {
		hair = max(hair, aPress(f.Unit))
	}
	return f.Reads == answer.AsNumber && f.Limit > 0 && math.Abs(f.Found/f.Limit-1) < hair
}

func (w worse) worst(fs []answer.Finding) answer.Level {
	return answer.Worst(slices.DeleteFunc(slices.Clone(fs), func(f answer.Finding) bool { return !w.of(f) }))
}

// A judge that takes bad for good is one that swaps the two: each property must
// see it, and not see the true one, on the vehicle that it names.
func TestEveryPropertySeesAJudgeThatTakesBadForGood(t *testing.T) {
	t.Parallel()
	for _, w := range worses() {
		t.Run(w.name, func(t *testing.T) {
			t.Parallel()
			base, changes, _ := strings.Cut(w.seenOn, ";")
			r := rigNamed(t, base).but(changes)
			good, err := r.but(w.steps[0]).assess(worseDraws)
			if err != nil {
				t.Fatal(err)
			}
			bad, err := r.but(w.steps[len(w.steps)-1]).assess(worseDraws)
			if err != nil {
				t.Fatal(err)
			}
			if why := w.milder(good.Findings, bad.Findings); why != "" {
				t.Errorf("told milder: %s", why)
			}
			if w.milder(bad.Findings, good.Findings) == "" {
				t.Errorf("not told apart on %s: %v %v and %v %v", w.seenOn, w.worst(good.Findings), wanted(good.Findings, w.of, watch), w.worst(bad.Findings), wanted(bad.Findings, w.of, watch))
			}
		})
	}
}

func wanted(fs []answer.Finding, of func(answer.Finding) bool, least answer.Level) []string {
	var out []string
	for _, f := range fs {
		if f.Level >= max(least, watch) && of(f) {
			out = append(out, fmt.Sprintf("%v %s %.0f%%%s", f.Level, f.Code, 100*f.Share, guessed(f)))
		}
	}
	return out
}
