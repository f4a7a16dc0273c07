package trials_test

import (
	"slices"
	"strings"
	"testing"

	"example.org/packcheck/answer"
)

// soundRig is a setup that an experienced helper would let a child ride.
type soundRig struct {
	name string
	base string
	set  string
	why  string
	from string
}

const (
	asMade = "as it was made; it survived its own battery, switch, motors and wire"
	claims = "makers' claims of 8 km/h or less for 6 and 12 V (copy); " + practice

	fuse25  = "fuse.form=small blade; fuse.rating=25 A; "
	fuse30  = "fuse.form=small blade; fuse.rating=30 A; fuse.distance_from_pack=100 mm; "
	wire16  = "wire.gauge=16 AWG; wire.insulation=105 C; "
	wire14  = "wire.gauge=14 AWG; wire.insulation=80 C; wire.one_way_length=1 m; "
	claimed = "vehicle.claimed_speed=5 km/h; "
	plug12  = "charger.label=14.4 V 1 A DC; charger.made_for=lead-acid; charger.stops=by itself; charger.jack=vehicle; "
	plug6   = "charger.label=7.2 V 0.5 A DC; charger.made_for=lead-acid; charger.stops=by itself; charger.jack=vehicle; "
	plug24  = "charger.label=28.8 V 1.5 A DC; charger.made_for=lead-acid; charger.stops=by itself; charger.jack=vehicle; "
	// What one reads on a labelled vehicle that is used as it should be.
	told24 = "vehicle.claimed_speed=8 km/h; "
)

// soundRigs are factory vehicles of three classes by their labels, and changes
// done properly.
func soundRigs() []soundRig {
	rows := []soundRig{
		{name: "proper", base: "proper", why: "current limit, converter, cutoff, fuse that follows the wire, own charger", from: practice},
		{name: "proper without the original beside it", base: "lithium", why: "the same", from: practice},
		{name: "12 V block, everything told", base: "block", why: asMade, from: claims},
		{name: "24 V pair, everything told", base: "pair", why: asMade, from: claims},
		{name: "LiFePO4 in place of the block", base: "iron", why: "same volts, cutoff at 3 V per cell, own charger, fuse", from: ironSheets},
	}
	add := func(base string, sets ...string) {
		for _, s := range sets {
			rows = append(rows, soundRig{name: base + ": " + strings.TrimSuffix(s, "; "), base: base, set: s, why: asMade, from: claims})
		}
	}
	add("labels", "", fuse25, fuse30, wire16, fuse25+wire16, fuse30+wire14, plug12, fuse25+plug12, fuse30+wire14+plug12, claimed, claimed+fuse25+wire16+plug12,
		"pack.label=12 V 4.5 Ah; ", "pack.label=12 V 10 Ah; "+fuse25, "-vehicle.has_board; ", "-vehicle.has_board; "+fuse25, "controller.kind=contacts; "+fuse25+plug12,
		"fuse.form=auto-reset breaker; fuse.rating=20 A; ", "vehicle.ground=short grass; "+fuse25, "rider.age=3 years; rider.mass=15 kg; "+claimed+fuse25, "pack.health=70 %; "+fuse25,
		"outing.air=8 C; "+fuse25, "outing.air=32 C; "+fuse25, "gears.ratio=147:1; "+fuse25+plug12)
	add("labels6", "", "fuse.form=small blade; fuse.rating=15 A; ", "wire.gauge=18 AWG; wire.insulation=105 C; fuse.form=small blade; fuse.rating=15 A; ", plug6, "fuse.form=small blade; fuse.rating=15 A; "+plug6,
		"vehicle.claimed_speed=4 km/h; ", "vehicle.claimed_speed=4 km/h; fuse.form=small blade; fuse.rating=15 A; "+plug6, "pack.label=6 V 7 Ah; ", "pack.label=6 V 10 Ah; fuse.form=large blade; fuse.rating=20 A; ",
		"rider.age=2 years; rider.mass=12 kg; vehicle.claimed_speed=3 km/h; fuse.form=small blade; fuse.rating=15 A; ", "motors.count=2; ", "fuse.form=auto-reset breaker; fuse.rating=15 A; ")
	add("labels24", "", "fuse.form=small blade; fuse.rating=30 A; ", told24, told24+fuse30, told24+fuse30+wire14, told24+plug24, told24+fuse30+wire14+plug24, told24+"pack.label=24 V 7 Ah; ",
		told24+"rider.mass=22 kg; vehicle.seats=1; "+fuse30, told24+"vehicle.has_board=true; "+fuse30, "vehicle.claimed_speed=10 km/h; rider.age=8 years; "+fuse30+plug24, told24+"vehicle.ground=short grass; "+fuse30)
	add("board", "", claimed, plug12, claimed+plug12, "motors.count=4; ", "motors.count=4; vehicle.seats=1; "+claimed, "-fuse; ", "-fuse; "+claimed)
	changed := func(name, base, set, why, from string) { rows = append(rows, soundRig{name, base, set, why, from}) }
	changed("a larger block of the same volts", "block", "pack.label=12 V 12 Ah; pack.max_current=36 A; charger.current=2 A; original.pack.chemistry=agm; original.pack.label=12 V 7 Ah", "same volts, longer ride", blockSheets)
	changed("a new block of the same kind", "block", "original.pack.chemistry=agm; original.pack.label=12 V 7 Ah", "as made", practice)
	changed("a gel block in place of AGM", "block", "pack.chemistry=gel; charger.made_for=gel; charger.voltage=14.4 V", "same volts and its own charger", "discover-energy.com: gel and AGM rest within 0.05 V of each other (copy)")
	changed("a traction block", "block", "pack.chemistry=agm-traction; pack.label=12 V 12 Ah; pack.max_current=36 A; charger.current=2 A; charger.made_for=lead-acid", "same volts, more cycles", blockSheets)
	changed("thicker wire and the fuse that fits", "block", "wire.gauge=10 AWG; fuse.rating=30 A; fuse.form=large blade", "fuse below the wire's ampacity of 60 A", cfrFuse)
	changed("a speed control with a current limit on the old block", "block", "controller.kind=chopper; controller.current_limit=20 A; controller.ramp=1 s; controller.max_voltage=30 V; controller.continuous_current=40 A; controller.peak_current=80 A; controller.reverses=after a stop; controller.standby_current=5 mA", "softer on everything", practice)
	changed("a cutoff for a block at 11 V", "block", "cutoff.module.opens_at=11 V; cutoff.module.delay=10 s", "kinder to the block", blockSheets)
	changed("a lighter child", "proper", "rider.mass=16 kg; rider.age=4 years", "less load", practice)
	changed("an older child", "proper", "rider.mass=26 kg; rider.age=7 years", "usual load", riderLimit)
	changed("on tarmac", "proper", "vehicle.ground=asphalt", "the easiest ground", practice)
	changed("a converter set a little lower", "proper", "controller.converter_voltage=11 V", "slower still", practice)
	changed("a smaller tool pack, done properly", "proper", "pack.label=20 V max 2.5 Ah; pack.strings=1; pack.capacity=2.5 Ah; pack.resistance=120 mOhm; pack.max_current=20 A; controller.current_limit=16 A; charger.current=1.25 A", "shorter ride, same care", cellSheets)
	changed("a larger tool pack, done properly", "proper", "pack.label=20 V max 8 Ah; pack.strings=2; pack.capacity=8 Ah; pack.resistance=45 mOhm; pack.max_current=60 A; charger.current=4 A", "longer ride, same care", cellSheets)
	changed("a half-charged tool pack, done properly", "proper", "pack.charge=50 %", "shorter ride", practice)
	changed("a block that was measured sound", "block", "-pack.charge; measured.rest_voltage=12.8 V; measured.hours_rested=12 h", "full and sound", blockSheets)
	changed("a freshly charged block", "block", "-pack.charge; measured.rest_voltage=13.2 V; measured.hours_rested=1 h", "surface charge", "settling after a charge: "+blockSheets)
	changed("a half-flat block", "block", "-pack.charge; measured.rest_voltage=12.3 V; measured.hours_rested=12 h", "half charged", blockSheets)
	changed("a tool pack that was measured full", "lithium", "-pack.charge; measured.rest_voltage=20.8 V; measured.hours_rested=12 h", "4.16 V per cell", cellSheets)
	changed("a tool pack that was measured half full", "lithium", "-pack.charge; measured.rest_voltage=18.7 V; measured.hours_rested=12 h", "3.74 V per cell", cellSheets)
	changed("5 km/h measured with a child of four", "labels", "rider.age=4 years; rider.mass=16 kg; measured.top_speed=5 km/h; "+fuse25, "the usual speed", speedClaims)
	changed("8 km/h measured with a child of six", "labels", "rider.age=6 years; measured.top_speed=8 km/h; "+fuse25, "the usual claim", speedClaims)
	changed("5 A running and 11.8 V, measured", "labels", "measured.loaded_current=5 A; measured.loaded_voltage=11.8 V; "+fuse25, "a stock 12 V vehicle took 5 A", "builder 2016 (copy)")
	changed("20 A blocked, measured, on a board vehicle", "board", "measured.blocked_current=20 A; "+claimed, "two small motors", "repository issue 1: 22 A on 18 V (copy)")
	changed("an hour of ride, measured", "labels", "measured.ride_time=60 min; "+claimed+fuse25, "sellers say 45 to 75", "sellers of 12 V vehicles (copy)")
	changed("a winter on the shelf", "block", "storage.from=2026-11-01; storage.until=2027-03-31; storage.temperature=10 C", "full, cool, disconnected", blockSheets)
	changed("a winter on the shelf for a tool pack", "proper", "pack.charge=50 %; storage.from=2026-11-01; storage.until=2027-03-31; storage.temperature=12 C", "half full, cool", "storage at about half charge: "+practice)
	rows = append(rows,
		soundRig{"a tool pack of which each cell is watched, older", "lithium", "pack.watches_cells=true; pack.health=80 %", "its electronics open for the weakest cell", weakCell},
		soundRig{"two tool packs in parallel at the same volts, cells watched", "lithium", "pack.joined=parallel; pack.watches_cells=true; measured.rest_voltage=20.8 V; measured.second_rest_voltage=20.78 V; -charger", "2 mA per mOhm: nothing flows", equalising},
		// Makers' sheets of 26650 cells end a discharge at 2.0 V; four cells at 10 V have 2.5 V each, and the board opens for the weakest.
		soundRig{"LiFePO4 whose protection board opens at 10 V", "iron", "-cutoff; pack.watches_cells=true; cutoff.pack.opens_at=10 V; cutoff.pack.delay=2 s", "its board watches every cell and opens above the sheets' end", ironSheets},
		soundRig{"a child within the rated load", "block", "vehicle.rated_load=25 kg", "20 kg of 25 kg", riderLimit},
	)
	return slices.Concat(rows, typedSound(), keptSound(), againSound(), freshSound())
}

func TestNoSoundSetupIsCalledDangerous(t *testing.T) {
	t.Parallel()
	rows := soundRigs()
	if len(rows) < 60 {
		t.Errorf("%d sound setups, want 60 at least", len(rows))
	}
	names := map[string]bool{}
	for _, r := range rows {
		if names[r.name] || r.why == "" || r.from == "" {
			t.Errorf("%s: twice, or without why or source", r.name)
		}
		names[r.name] = true
	}
	fixes := make([]string, len(rows))
	t.Run("rows", func(t *testing.T) {
		for i, r := range rows {
			if !tried(i) {
				continue
			}
			t.Run(r.name, func(t *testing.T) {
				t.Parallel()
				told := rigNamed(t, r.base).but(r.set)
				a, err := told.assess(128)
				if err != nil {
					t.Errorf("%v", err)
					return
				}
				hold(t, a, told)
				switch a.Verdict {
				case answer.Danger:
					t.Errorf("%s: %s", a.Verdict, strings.Join(findingsAt(a, fixFirst), ", "))
				case answer.FixFirst:
					fixes[i] = r.name + ": " + strings.Join(findingsAt(a, fixFirst), ", ")
				}
			})
		}
	})
	n := 0
	for _, f := range fixes {
		if f != "" {
			n++
			t.Log("fix first: " + f)
		}
	}
	if 20*n > len(rows) {
		t.Errorf("%d of %d sound setups are to be fixed first, want one in twenty at most", n, len(rows))
	}
}
