package trials_test

import (
	"context"
	"math"
	"slices"
	"strings"
	"sync"
	"testing"

	"example.org/packcheck"
	"example.org/packcheck/answer"
	"example.org/packcheck/drive"
	"example.org/packcheck/internal/judge"
	"example.org/packcheck/setup"
	"example.org/packcheck/wiring"
)

// wayDraws is enough for a share of a tenth to be told from one of a half.
const wayDraws = 256

// waysOf returns a setup that must be in order and its answer with ways out, which nobody
// may change.
func waysOf(t testing.TB, s sheet) (*setup.Setup, *answer.Assessment) {
	t.Helper()
	read, err := packcheck.Read(strings.NewReader(s.toml()), "ways.toml")
	if err != nil {
		t.Fatal(err)
	}
	once, _ := waysFound.LoadOrStore(s.toml(), sync.OnceValues(func() (*answer.Assessment, error) {
		return packcheck.AssessWith(context.Background(), read, packcheck.Options{Draws: wayDraws, Ways: true})
	}))
	a, err := once.(func() (*answer.Assessment, error))()
	if err != nil {
		t.Fatal(err)
	}
	return read, a
}

// waysFound holds what waysOf has assessed, by text.
var waysFound sync.Map

// walked answers the setup that a way out leads to, as whoever saves it is answered.
func walked(t testing.TB, s *setup.Setup, w *answer.Way) *answer.Assessment {
	t.Helper()
	after, err := s.With(w.Values())
	if err != nil {
		t.Fatal(err)
	}
	a, err := packcheck.AssessWith(context.Background(), after, packcheck.Options{Draws: wayDraws})
	if err != nil {
		t.Fatal(err)
	}
	return a
}

// block is a 12 V vehicle on its block, of which little is told.
func block() sheet {
	return sheet{
		"rider.age": `"5 years"`, "vehicle.design_voltage": `"12 V"`, "motors.count": `2`, "motors.can": `"550"`,
		"pack.chemistry": `"agm"`, "pack.label": `"12 V 9 Ah"`,
	}
}

// inNeed are setups with something to put right that a way out puts right.
func inNeed() map[string]sheet {
	tool := block().with("pack.chemistry", `"li-ion"`, "pack.label", `"20 V max 5 Ah"`)
	return map[string]sheet{
		"a fuse too small for thin wire":      block().with("wire.gauge", `"18 AWG"`, "fuse.form", `"small blade"`, "fuse.rating", `"5 A"`),
		"a glass fuse too small for the wire": block().with("wire.gauge", `"18 AWG"`, "fuse.form", `"glass tube"`, "fuse.rating", `"3 A"`),
		"a fuse too small, the wire not told": block().with("fuse.form", `"small blade"`, "fuse.rating", `"5 A"`),
		"a tool pack":                         tool,
		"a tool pack on a remote controlled vehicle": tool.with("vehicle.has_board", `true`, "vehicle.remote_control", `true`, "vehicle.claimed_speed", `"5 km/h"`,
			"vehicle.weakest_part_voltage", `"16 V"`, "vehicle.ground", `"pavement"`, "controller.kind", `"chopper"`, "wire.gauge", `"18 AWG"`, "fuse.form", `"small blade"`, "fuse.rating", `"10 A"`),
		"a block found dead":     block().with("motors.can", "", "motors.count", "", "measured.rest_voltage", `"7.8 V"`, "measured.hours_rested", `"12 h"`),
		"a tool pack found dead": tool.with("measured.rest_voltage", `"9.5 V"`, "measured.hours_rested", `"12 h"`),
		"a tool pack, the worn block read": tool.with("vehicle.ground", `"asphalt"`, "original.pack.chemistry", `"agm"`, "original.pack.label", `"12 V 7 Ah"`,
			"original.measured.ride_time", `"20 min"`),
		"a larger block on an adaptor": {
			"rider.age": `"3 years"`, "rider.mass": `"33 lb"`, "vehicle.claimed_speed": `"3 mph"`, "vehicle.design_voltage": `"12 V"`, "vehicle.has_board": `true`, "vehicle.remote_control": `true`,
			"motors.count": `2`, "motors.can": `"390"`, "pack.label": `"12V 10Ah SLA"`, "original.pack.label": `"12V 4.5Ah"`, "fuse.form": `"small blade"`, "fuse.rating": `"15 A"`,
			"fuse.distance_from_pack": `"3 in"`, "charger.label": `"12V 1A DC"`, "charger.jack": `"vehicle"`, "charger.made_for": `"lead-acid"`, "outing.wanted": `"2 h"`,
		},
		"a large fuse that a short circuit outlasts": {
			"rider.age": `"7 years"`, "vehicle.design_voltage": `"24 V"`, "vehicle.has_board": `false`, "motors.count": `2`, "motors.can": `"775"`, "motors.rated_voltage": `"24 V"`,
			"controller.kind": `"chopper"`, "controller.class": `"24 V 20 A"`, "pack.label": `"24V 20Ah LiFePO4"`, "wire.area": `"1.5 mm2"`, "wire.one_way_length": `"2 m"`,
			"fuse.form": `"large blade"`, "fuse.rating": `"60 A"`,
		},
		"two blocks that are not alike": block().with("vehicle.design_voltage", `"24 V"`, "pack.joined", `"series"`, "pack.second.label", `"12 V 7 Ah"`, "pack.second.health", `"50 to 70 %"`,
			"measured.rest_voltage", `"12.7 V"`, "measured.second_rest_voltage", `"12.2 V"`),
		"a tool pack where a battery of 24 V was": tool.with("vehicle.design_voltage", `"24 V"`, "pack.label", `"40 V max 4 Ah"`, "original.pack.label", `"24 V 9 Ah"`),
		"a tool pack, no fuse":                    tool.with("pack.label", `"14.8 V 5 Ah"`, "fuse.form", `"none"`, "vehicle.ground", `"short grass"`),
		"a tool pack behind a converter": tool.with("motors.can", `"ride-on 390"`, "wire.gauge", `"14 AWG"`, "wire.insulation", `"105 C"`, "fuse.form", `"small blade"`,
			"fuse.rating", `"20 A"`, "controller.converter_voltage", `"12 V"`, "cutoff.module.opens_at", `"16.5 V"`),
		"iron phosphate whose cells nobody watches": block().with("motors.can", `"775"`, "pack.chemistry", `"lifepo4"`, "pack.label", `"12.8 V 20 Ah"`, "pack.watches_cells", "false", "pack.health", `"70 %"`,
			"vehicle.ground", `"asphalt"`, "fuse.form", `"small blade"`, "fuse.rating", `"20 A"`, "fuse.distance_from_pack", `"100 mm"`),
		"iron phosphate of which nobody told whether its cells are watched": block().with("motors.can", `"775"`, "pack.chemistry", `"lifepo4"`, "pack.label", `"12.8 V 20 Ah"`, "pack.health", `"70 %"`,
			"vehicle.ground", `"asphalt"`, "fuse.form", `"small blade"`, "fuse.rating", `"20 A"`, "fuse.distance_from_pack", `"100 mm"`),
		"iron phosphate of six volts whose cells nobody watches": block().with("motors.can", `"775"`, "pack.chemistry", `"lifepo4"`, "pack.label", `"6.4 V 10 Ah"`, "pack.watches_cells", "false",
			"vehicle.design_voltage", `"6 V"`, "vehicle.ground", `"asphalt"`, "fuse.form", `"small blade"`, "fuse.rating", `"20 A"`, "fuse.distance_from_pack", `"100 mm"`),
	}
}

// Whoever does all that a way out lists and asks again is told what it promised, in
// the units that they wrote; and it never fits a fuse that a page would call too large
// for the wire (33 CFR 183.455), or only possibly so.
func TestAWayOutKeepsWhatItPromises(t *testing.T) {
	for name, sheet := range inNeed() {
		t.Run(name, func(t *testing.T) {
			t.Parallel()
			s, a := waysOf(t, sheet)
			if len(a.Ways) == 0 {
				t.Fatal("no way out is found")
			}
			for i := range a.Ways {
				w := &a.Ways[i]
				after := walked(t, s, w)
				if after.Verdict != w.Verdict {
					t.Errorf("%s %q: promised %v, asked again %v", w.Title, w.Steps, w.Verdict, after.Verdict)
				}
				if after.System != a.System {
					t.Errorf("%s %q: written in %v, its answer in %v", w.Title, w.Steps, a.System, after.System)
				}
				k := slices.IndexFunc(after.Findings, func(f answer.Finding) bool { return f.Code == wiring.CodeFuseAboveWire })
				if _, fits := w.Values()["fuse.rating"]; fits && k >= 0 && after.Findings[k].Share >= 0.1 {
					t.Errorf("%s %q: in %.2f of the vehicles the fuse is too large for the wire", w.Title, w.Steps, after.Findings[k].Share)
				}
				k = slices.IndexFunc(after.Findings, func(f answer.Finding) bool { return f.Code == drive.CodeConverterTooSmall })
				if _, fits := w.Values()["controller.converter_limit"]; fits && k >= 0 && after.Findings[k].Share >= 0.1 {
					t.Errorf("%s %q: in %.2f of the vehicles the converter is too small for the start", w.Title, w.Steps, after.Findings[k].Share)
				}
			}
		})
	}
}

// A fuse protects the wire and yet carries the ride, in whichever of the vehicles it may
// be. Where no size does both, the way has thicker wire or a gentler start, or there is none; and
// of a fuse that stays, the minutes say in how many it may open.
func TestAFuseThatAWayOutFitsCarriesTheRide(t *testing.T) {
	all := inNeed()
	four := block().with("motors.can", "", "motors.count", `4`, "vehicle.ground", `"short grass"`)
	all["four motors, no fuse"] = four.with("fuse.form", `"none"`)
	all["four motors, no fuse, the wire told"] = four.with("fuse.form", `"none"`, "wire.gauge", `"14 AWG"`)
	all["four motors, a tool pack"] = four.with("pack.chemistry", `"li-ion"`, "pack.label", `"20 V max 5 Ah"`)
	all["four motors, a tool pack and a small fuse"] = four.with("pack.chemistry", `"li-ion"`, "pack.label", `"20 V max 5 Ah"`, "fuse.form", `"small blade"`, "fuse.rating", `"15 A"`,
		"wire.gauge", `"14 AWG"`)
	opens := []string{
		judge.CodeFuseEndsRide, judge.CodeFuseMayEndRide,
		wiring.CodeFuseOpensRunning, wiring.CodeFuseOpensAtLaunch, wiring.CodeFuseMayOpenAtLaunch,
	}
	for name, sheet := range all {
		t.Run(name, func(t *testing.T) {
			t.Parallel()
			s, a := waysOf(t, sheet)
			for i := range a.Ways {
				w := &a.Ways[i]
				share := 0.0
				for _, f := range walked(t, s, w).Findings {
					if slices.Contains(opens, f.Code) {
						share = max(share, f.Share)
					}
				}
				if rating, fits := w.Values()["fuse.rating"]; fits && share >= 0.1 {
					t.Errorf("%s %q: its fuse of %s may open in %.2f of the vehicles", w.Title, w.Steps, rating, share)
				}
				if math.Abs(share-w.FuseOpens) > 0.02 {
					t.Errorf("%s %q: its fuse may open in %.2f of the vehicles, told %.2f", w.Title, w.Steps, share, w.FuseOpens)
				}
			}
		})
	}
}

// What was told of the vehicle stays told, but for what a step says.
func TestAWayOutChangesNothingThatItDoesNotList(t *testing.T) {
	said := map[string]string{ // by table or key: a word of the step or title that changes it
		"vehicle.remote_control": "remote control", "controller.converter": "converter", "controller": "speed control", "wire": "wire of", "fuse": "blade fuse",
		"cutoff.module": "cutoff", "pack": "battery", "cutoff.pack": "battery", "charger": "charger", "measured": "battery",
		"original.pack": "battery of the old kind", // which is the one of today then
	}
	for name, sheet := range inNeed() {
		t.Run(name, func(t *testing.T) {
			t.Parallel()
			_, a := waysOf(t, sheet)
			for _, w := range a.Ways {
				list := w.Title + "; " + strings.Join(w.Steps, "; ")
				for key := range w.Values() {
					if w.Values()[key] == "" && sheet[key] == "" {
						continue // nobody told it
					}
					if today, is := strings.CutPrefix(key, "original."); is && (!strings.HasPrefix(today, "pack") || strings.Trim(sheet[today], `"`) == w.Values()[key]) {
						continue // the original stays as today's was
					}
					longest := ""
					for of := range said {
						if strings.HasPrefix(key, of) && len(of) > len(longest) {
							longest = of
						}
					}
					if longest == "" || !strings.Contains(list, said[longest]) {
						t.Errorf("it sets %s, of which it says nothing: %s", key, list)
					}
				}
			}
		})
	}
}

// A cutoff that opens on a battery that is not empty makes the lower end of a ride: the
// way says in how many, as its own answer does. One that most rides are cut short on is none.
func TestAWayOutSaysHowOftenACutoffCutsItShort(t *testing.T) {
	short := 0
	for name, from := range map[string]sheet{
		"a tool pack": sheetOf(t, examples+"tractor-tool-pack.toml"),
		"iron phosphate whose cells nobody watches": inNeed()["iron phosphate whose cells nobody watches"],
	} {
		s, a := waysOf(t, from)
		for i := range a.Ways {
			w := &a.Ways[i]
			if after := walked(t, s, w); math.Abs(after.Draws.CutShort-w.CutShort) > 0.02 {
				t.Errorf("%s, %s: cut short in %.3f, asked again in %.3f", name, w.Title, w.CutShort, after.Draws.CutShort)
			}
			if w.CutShort > 0.5 {
				t.Errorf("%s, %s: cut short in %.3f", name, w.Title, w.CutShort)
			}
			if w.CutShort < 0.1 {
				continue
			}
			short++
			if w.PedalMin.Low > 0.4*w.PedalMin.Likely {
				t.Errorf("%s, %s: %v min, cut short in %.3f", name, w.Title, w.PedalMin, w.CutShort)
			}
		}
	}
	if short == 0 {
		t.Error("no way is cut short")
	}
}

// leads reports whether a way out of that title has just such steps, by their beginnings.
func leads(a *answer.Assessment, title string, steps ...string) bool {
	return slices.ContainsFunc(a.Ways, func(w answer.Way) bool {
		return strings.Contains(w.Title, title) && slices.EqualFunc(w.Steps, steps, strings.HasPrefix)
	})
}

func TestThePlainWayOutIsFound(t *testing.T) {
	for _, c := range []struct {
		name, title string
		steps       []string
	}{
		{"iron phosphate whose cells nobody watches", "A new battery of the same kind, with electronics inside", []string{"wire of"}},
		{"iron phosphate of six volts whose cells nobody watches", "A new battery of the same kind, with electronics inside", []string{"wire of"}},
		{"iron phosphate of which nobody told whether its cells are watched", "Keep this battery", []string{"make sure that by its maker's word the battery watches every cell", "wire of"}},
		{"a block found dead", "Keep this kind of battery", []string{"a new battery of the same kind"}},
		{"a larger block on an adaptor", "Keep this battery", []string{"another charger: for lead-acid, 14.7 V"}},
		{"a large fuse that a short circuit outlasts", "A sealed lead-acid battery", []string{"wire of", "a 3"}}, // 30 or 35 A
		{"two blocks that are not alike", "Keep this kind of battery", []string{"two new batteries of the same kind, both as the first (12 V 9 Ah)"}},
		{"a tool pack where a battery of 24 V was", "A new battery of the old kind (24 V 9 Ah), if that was sealed lead-acid", nil},
		{"a tool pack found dead", "A sealed lead-acid battery", nil},
		{"a tool pack, the worn block read", "A new battery of the old kind", nil},
		{"a tool pack, no fuse", "A sealed lead-acid battery", []string{"wire of", "a 30 A blade fuse"}},
		{"a tool pack behind a converter", "A sealed lead-acid battery", []string{"take out or switch off what was set for other volts: step-down converter, cutoff"}},
		{"a fuse too small for thin wire", "Keep this battery", []string{"wire of", "a 30 A blade fuse"}},
	} {
		if _, a := waysOf(t, inNeed()[c.name]); !leads(a, c.title, c.steps...) {
			for _, w := range a.Ways {
				t.Logf("%s %q", w.Title, w.Steps)
			}
			t.Errorf("%s: not found: %s %q", c.name, c.title, c.steps)
		}
	}
}

// What is to be bought for the volts of a pack is made for the same on every list.
func TestOneMarginForASpeedControl(t *testing.T) {
	_, a := waysOf(t, inNeed()["a tool pack"])
	const want = "a speed control for 26 V or more"
	if !slices.ContainsFunc(a.Buy, func(p answer.Purchase) bool { return strings.Contains(p.Text, want) }) {
		t.Errorf("to buy: %q, want %q", a.Buy, want)
	}
	for _, w := range a.Ways {
		for _, step := range w.Steps {
			if strings.HasPrefix(step, "a speed control") && !strings.HasPrefix(step, want) {
				t.Errorf("%s: %q, want %q", w.Title, step, want)
			}
		}
	}
}

// The box says how fast the vehicle was when it was made, battery or no battery told.
func TestTheClaimedSpeedIsThatOfTheOriginal(t *testing.T) {
	remote := inNeed()["a tool pack on a remote controlled vehicle"]
	for claim, want := range map[string]bool{`"5 km/h"`: true, `"20 km/h"`: false, "": false} {
		a := assess(t, remote.with("vehicle.claimed_speed", claim, "gears.ratio", `80`, "vehicle.wheel_diameter", `"250 mm"`))
		got := slices.ContainsFunc(a.Findings, func(f answer.Finding) bool { return f.Code == drive.CodeFasterThanOriginal })
		if got != want {
			t.Errorf("%.1f km/h, claimed %s: held against the original's %v, want %v", a.Steady.SpeedKmh, claim, got, want)
		}
	}
}

// Bare cells that somebody joined have no maker with a charger for them.
func TestBareCellsGetAChargerOfTheirVoltsAndAToolPackItsOwn(t *testing.T) {
	cells := block().with("pack.label", "", "pack.chemistry", `"li-ion"`, "pack.cells_in_series", `4`, "pack.strings", `3`, "pack.capacity", `"7.5 Ah"`, "pack.maker", `"look-alike"`)
	for housing, want := range map[string]string{`"bare cells"`: "16.8 V", `"closed shell"`: "own charger"} {
		if a := briefly(t, cells.with("pack.housing", housing)); !strings.Contains(a.Charge.Right, want) {
			t.Errorf("housing %s: %q, want %q", housing, a.Charge.Right, want)
		}
	}
}

// Another battery in the same vehicle leaves readings that cannot all be true as they are.
func TestNoWayOutLeavesAContradiction(t *testing.T) {
	readings := block().with("vehicle.claimed_speed", `"5 km/h"`, "measured.rest_voltage", `"12.9 V"`, "measured.hours_rested", `"24 h"`, "measured.loaded_voltage", `"12.8 V"`,
		"measured.loaded_current", `"30 A"`, "measured.ride_time", `"2 h"`, "measured.top_speed", `"9 km/h"`)
	if _, a := waysOf(t, readings); a.Conflict == nil || len(a.Ways) > 0 {
		t.Errorf("conflict %v, ways out %v", a.Conflict, a.Ways)
	}
}

// A controller that waits for a standstill puts right what reversing at speed asks too much: a
// new tool pack of 20 V in a 24 V vehicle had no way that kept it for that alone.
func TestAControllerThatWaitsPutsReversingRight(t *testing.T) {
	t.Parallel()
	s, a := waysOf(t, sheet{}.with("rider.mass", `"20 kg"`, "rider.age", `"5"`, "vehicle.design_voltage", `"24 V"`,
		"pack.label", `"20 V max 4 Ah"`, "pack.age", `"new"`))
	for _, w := range a.Ways {
		if !strings.HasPrefix(w.Title, "Keep this battery") {
			continue
		}
		if !slices.ContainsFunc(w.Steps, func(step string) bool { return strings.Contains(step, "stop before reverse") }) {
			t.Errorf("no step waits for a standstill: %q", w.Steps)
		}
		after := walked(t, s, &w)
		for _, f := range after.Findings {
			if f.Code == drive.CodeReversal {
				t.Errorf("taken, and yet: %s", f.Title)
			}
		}
		return
	}
	t.Errorf("no way keeps the pack: %+v", a.Ways)
}

// What an iron-phosphate battery that is bought to watch its cells opens at follows from that
// it does; what the electronics of the old one opened at goes with them.
func TestANewBatteryBringsItsOwnElectronics(t *testing.T) {
	t.Parallel()
	_, a := waysOf(t, sheet{}.with("rider.mass", `"20 kg"`, "vehicle.design_voltage", `"12 V"`, "pack.chemistry", `"lifepo4"`,
		"pack.label", `"12.8 V 10 Ah"`, "pack.watches_cells", "false", "cutoff.pack.opens_at", `"7 V"`))
	for _, w := range a.Ways {
		if !strings.HasPrefix(w.Title, "A new battery of the same kind, with electronics inside") {
			continue
		}
		for key, text := range w.Values() {
			if strings.HasPrefix(key, "cutoff.pack") && text != "" {
				t.Errorf("it sets %s = %s", key, text)
			}
		}
		if text, is := w.Values()["cutoff.pack.opens_at"]; !is || text != "" {
			t.Error("what the old one opened at stays")
		}
		return
	}
	t.Errorf("no way with electronics inside: %+v", a.Ways)
}
