package trials_test

import (
	"context"
	"fmt"
	"maps"
	"slices"
	"strings"
	"sync"
	"testing"

	"github.com/BurntSushi/toml"

	"example.org/packcheck"
	"example.org/packcheck/answer"
	"example.org/packcheck/setup"
)

// rig is a setup as full keys and values, the values without quotes.
type rig map[string]string

// rigs are the vehicles that the tables below start from. Each is sound as it
// stands; what it lacks is said beside it.
var rigs = sync.OnceValue(func() map[string]rig {
	proper := rigOf("../../examples/tractor-done-properly.toml")
	lithium := proper.but("-original")
	block := lithium.but(`-controller; controller.kind=contacts; controller.standby_current=0 A; controller.resistance=8 mOhm;
		-pack; pack.chemistry=agm; pack.label=12 V 7 Ah; pack.health=100 %; pack.charge=100 %; pack.temperature=18 C; pack.max_current=21 A; pack.rate=20 h;
		-cutoff; cutoff.module.opens_at=10.5 V; cutoff.module.delay=5 s; cutoff.module.standby_current=0.1 mA; vehicle.ground=asphalt;
		-charger; charger.made_for=agm; charger.voltage=14.7 V; charger.current=1.5 A; charger.stops=by itself; charger.output=dc;
		charger.polarity=centre positive; charger.jack_polarity=centre positive; charger.jack=terminals`)
	pair := block.but(`vehicle.design_voltage=24 V; vehicle.mass=30 kg; motors.rated_voltage=24 V; motors.stall_current=30 A; pack.label=24 V (two 12 V) 12 Ah;
		pack.max_current=36 A; cutoff.module.opens_at=21 V; charger.voltage=29.4 V; charger.current=2 A; gears.ratio=130:1`)
	iron := block.but(`pack.chemistry=lifepo4; pack.label=12.8 V 10 Ah LiFePO4; pack.cells_in_series=4; -pack.rate; pack.max_current=40 A;
		cutoff.module.opens_at=12 V; cutoff.module.delay=3 s; charger.made_for=lifepo4; charger.voltage=14.6 V; charger.current=2 A; charger.jack=pack`)
	labels := rig{}.but(`rider.mass=20 kg; rider.age=5 years; vehicle.design_voltage=12 V; vehicle.has_board=false; vehicle.ground=asphalt;
		motors.count=2; motors.can=550; motors.rated_voltage=12 V; pack.label=12 V 7 Ah; pack.chemistry=agm`)
	return map[string]rig{
		"proper":  proper,  // tool pack on a 12 V tractor, everything told, the original beside it
		"lithium": lithium, // the same without the original: readings are of the tool pack
		"block":   block,   // 12 V block as made, everything told
		"pair":    pair,    // 24 V, two blocks, everything told
		"iron":    iron,    // four cells of LiFePO4 for the 12 V block, everything told
		"direct":  lithium.but("-controller.converter_voltage; -controller.converter_limit; motors.no_load_speed=8500 rpm; motors.stall_current=25 A; motors.rated_voltage=12 V"),
		"labels":  labels, // 12 V as made, by its labels
		"labels6": labels.but(`rider.mass=15 kg; rider.age=3 years; vehicle.design_voltage=6 V; motors.count=1; motors.can=380; motors.rated_voltage=6 V; pack.label=6 V 4.5 Ah`),
		"labels24": labels.but(`rider.mass=40 kg; rider.age=6 years; vehicle.seats=2; vehicle.design_voltage=24 V; motors.can=775; motors.rated_voltage=24 V;
			pack.label=24 V (two 12 V) 9 Ah`),
		"board": labels.but(`vehicle.has_board=true; motors.count=2; motors.can=380; pack.label=12 V 7 Ah; fuse.form=small blade; fuse.rating=10 A`),
		"swap":  rigOf("../../examples/tractor-tool-pack.toml"), // 18 V tool pack on 12 V by labels; not sound
		"bench": rig{}.but("pack.label=12 V 7 Ah; pack.chemistry=agm; load.current=3 A; load.until=10.5 V; fuse.form=small blade; fuse.rating=5 A; fuse.distance_from_pack=100 mm; wire.gauge=14 AWG; wire.insulation=80 C; wire.one_way_length=1 m; wire.joints=4"),
		"bench18": rig{}.but(`pack.label=20 V max 5 Ah; pack.chemistry=li-ion; load.current=3 A; cutoff.module.opens_at=16 V; cutoff.module.delay=1 s;
			cutoff.module.standby_current=0.1 mA; fuse.form=small blade; fuse.rating=10 A; fuse.distance_from_pack=100 mm; wire.gauge=14 AWG; wire.insulation=80 C; wire.one_way_length=1 m; wire.joints=4`),
	}
})

// rigOf reads a setup file.
func rigOf(file string) rig {
	var tree map[string]any
	if _, err := toml.DecodeFile(file, &tree); err != nil {
		panic(err)
	}
	out := rig{}
	var walk func(string, map[string]any)
	walk = func(at string, t map[string]any) {
		for k, v := range t {
			if sub, ok := v.(map[string]any); ok {
				walk(at+k+".", sub)
				continue
			}
			out[at+k] = fmt.Sprint(v)
		}
	}
	walk("", tree)
	delete(out, "title")
	return out
}

// but returns a copy with changes: "key=value" sets a key, "-name" leaves out a
// key or a whole table; semicolons part them.
func (r rig) but(changes string) rig {
	out := maps.Clone(r)
	for c := range strings.SplitSeq(changes, ";") {
		c = strings.TrimSpace(c)
		switch key, value, set := strings.Cut(c, "="); {
		case c == "":
		case set:
			out[strings.TrimSpace(key)] = strings.TrimSpace(value)
		default:
			name := strings.TrimPrefix(c, "-")
			maps.DeleteFunc(out, func(k, _ string) bool { return k == name || strings.HasPrefix(k, name+".") })
		}
	}
	return out
}

// bare are the keys whose values stand without quotes.
var bare = sync.OnceValue(func() map[string]bool {
	out := map[string]bool{}
	for _, k := range setup.Keys() {
		if k.What == "yes or no" || k.What == "date" || k.What == "count" {
			out[k.Path()], out["original."+k.Path()] = true, true
		}
	}
	return out
})

// toml writes the rig as a file.
func (r rig) toml() string {
	tables := map[string][]string{}
	for _, key := range slices.Sorted(maps.Keys(r)) {
		table, name := "", key
		if i := strings.LastIndexByte(key, '.'); i >= 0 {
			table, name = key[:i], key[i+1:]
		}
		value := r[key]
		if !bare()[key] || strings.Contains(value, " ") {
			value = fmt.Sprintf("%q", value)
		}
		tables[table] = append(tables[table], name+" = "+value)
	}
	var b strings.Builder
	for _, table := range slices.Sorted(maps.Keys(tables)) {
		if table != "" {
			fmt.Fprintf(&b, "[%s]\n", table)
		}
		b.WriteString(strings.Join(tables[table], "\n") + "\n")
	}
	return b.String()
}

// assess answers the rig with few draws.
func (r rig) assess(draws int) (*answer.Assessment, error) {
	s, err := packcheck.Read(strings.NewReader(r.toml()), "hazard.toml")
	if err != nil {
		return nil, err
	}
	return packcheck.AssessWith(context.Background(), s, packcheck.Options{Draws: draws, Workers: 1})
}

// blank is the base of whole setups: there is nothing on it.
const blank = "blank"

// rigNamed returns the base of that name.
func rigNamed(t testing.TB, name string) rig {
	t.Helper()
	if name == blank {
		return rig{}
	}
	r, ok := rigs()[name]
	if !ok {
		t.Fatalf("no base vehicle %q", name)
	}
	return r
}

// findingsAt lists the findings that are at least so bad, each as level and code.
func findingsAt(a *answer.Assessment, least answer.Level) []string {
	var out []string
	for _, f := range a.Findings {
		if f.Level >= least {
			out = append(out, fmt.Sprintf("%s %s %.0f%%%s", f.Level, f.Code, 100*f.Share, guessed(f)))
		}
	}
	return out
}

func guessed(f answer.Finding) string {
	if f.Guess == "" {
		return ""
	}
	return " guess:" + f.Guess
}
