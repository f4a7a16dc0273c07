package setup_test

import (
	"errors"
	"fmt"
	"math"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"example.org/packcheck/battery"
	"example.org/packcheck/internal/quantity"
	"example.org/packcheck/setup"
	"example.org/packcheck/wiring"
)

// parts reads a text and fills its gaps.
func parts(t *testing.T, text string) *setup.Parts {
	t.Helper()
	s, err := read(text)
	if err != nil {
		t.Fatal(err)
	}
	p, err := s.Parts()
	if err != nil {
		t.Fatal(err)
	}
	return p
}

// The three picks that every computation starts from.
var picks = map[string]setup.Pick{
	"low":    func(f *setup.Figure) float64 { return f.Low },
	"likely": setup.Likely,
	"high":   func(f *setup.Figure) float64 { return f.High },
}

const labelsOnly = `
[rider]
mass = "20 kg"
[vehicle]
design_voltage = "12 V"
ground = "short grass"
[motors]
count = 2
can = "550"
[pack]
label = "20 V max 5 Ah"
`

// full has every key that the engine asks for.
const full = `
[rider]
mass = "20 kg"
[vehicle]
mass = "15 kg"
wheel_diameter = "250 mm"
tyres = "hard"
driven_wheels = 2
wheels = 4
ground = "short grass"
slope = "2 %"
design_voltage = "12 V"
[motors]
count = 2
wiring = "parallel"
can = "550"
winding_resistance = "200 mOhm"
torque_constant = "0.007 N m/A"
no_load_current = "1.5 A"
inductance = "0.1 mH"
rotor_inertia = "60 g cm2"
[gears]
ratio = "110:1"
efficiency = "60 %"
[controller]
kind = "contacts"
resistance = "10 mOhm"
[wire]
gauge = "14 AWG"
one_way_length = "1.2 m"
insulation = "80 C"
joints = 6
joint_resistance = "2 mOhm"
[fuse]
form = "small blade"
rating = "30 A"
[pack]
chemistry = "agm"
label = "12 V 7 Ah"
rate = "20 h"
resistance = "30 mOhm"
health = "90 %"
temperature = "20 C"
charge = "100 %"
max_current = "21 A"
housing = "bare cells"
maker = "own"
cells = "general"
watches_cells = false
mass = "2.3 kg"
self_discharge = "3 %"
[cutoff.module]
opens_at = "10.5 V"
delay = "2 s"
standby_current = "1 mA"
[outing]
air = "20 C"
drive = "25 s"
pause = "10 s"
`

// dropKey returns a setup without one line.
func dropKey(text, table, key string) string {
	head, tail, _ := strings.Cut(text, "["+table+"]\n")
	lines := strings.SplitAfter(tail, "\n")
	for i, l := range lines {
		if strings.HasPrefix(l, key+" = ") {
			lines[i] = ""
			break
		}
	}
	return head + "[" + table + "]\n" + strings.Join(lines, "")
}

func TestAVehicleDescribedInFullUsesNoDefault(t *testing.T) {
	p := parts(t, full)
	for _, a := range p.Assumed {
		t.Errorf("assumed %s = %s (%s)", a.Key, a.Value, a.Why)
	}
	for _, f := range p.Figures() {
		if f.Assumed {
			t.Errorf("figure %s is marked as assumed", f.Key)
		}
	}
}

// Listings of a widely sold module: less than 1.5 W, and it goes on drawing once open.
func TestAnAddedCutoffOfWhichNothingIsToldMayDrawWhatModulesAreSoldWith(t *testing.T) {
	for _, c := range parts(t, dropKey(full, "cutoff.module", "standby_current")).Cutoffs {
		if c.Where != "module" {
			continue
		}
		volts := parts(t, full).PackV()
		if most := c.StandbyA.High * volts; most < 1.45 || most > 1.55 || c.StandbyA.Likely < 0.005 {
			t.Errorf("drawn as %s of a pack of %g V: %g W at the most", c.StandbyA.String(), volts, most)
		}
		return
	}
	t.Error("no module")
}

func TestEachKeyLeftOutIsListedUnderItsName(t *testing.T) {
	for _, key := range []string{
		"rider.mass", "vehicle.mass", "vehicle.wheel_diameter", "vehicle.driven_wheels", "vehicle.wheels",
		"vehicle.ground", "vehicle.slope", "vehicle.design_voltage", "motors.count", "motors.wiring", "motors.can",
		"motors.no_load_current", "motors.inductance", "motors.rotor_inertia", "gears.ratio", "gears.efficiency",
		"controller.kind", "controller.resistance", "wire.gauge", "wire.one_way_length", "wire.insulation", "wire.joints",
		"wire.joint_resistance", "pack.rate", "pack.resistance", "pack.health", "pack.temperature", "pack.charge",
		"pack.max_current", "pack.housing", "pack.maker", "pack.cells", "pack.watches_cells", "cutoff.module.delay",
		"cutoff.module.standby_current", "outing.air", "outing.drive", "outing.pause",
	} {
		i := strings.LastIndexByte(key, '.')
		p := parts(t, dropKey(full, key[:i], key[i+1:]))
		var got []string
		for _, a := range p.Assumed {
			got = append(got, a.Key)
		}
		want := []string{key}
		if key == "controller.kind" {
			// Not even known to be plain contacts: a board may draw current.
			want = append(want, "controller.standby_current")
		}
		if d := cmp.Diff(want, got); d != "" {
			t.Errorf("without %s: -want +got\n%s", key, d)
		}
	}
	// What follows from the wheels' description or from the chemistry has its
	// reason and source, but is no default of its own.
	for _, key := range []string{"vehicle.tyres", "pack.mass", "pack.self_discharge"} {
		i := strings.LastIndexByte(key, '.')
		p := parts(t, dropKey(full, key[:i], key[i+1:]))
		if len(p.Assumed) != 0 {
			t.Errorf("without %s: assumed %v", key, p.Assumed)
		}
		if p.Pack.MassKg.Likely <= 0 || p.Pack.SelfDischarge.Likely <= 0 || p.Vehicle.Tyres.Text != "hard" {
			t.Errorf("without %s: %v %v %v", key, p.Pack.MassKg, p.Pack.SelfDischarge, p.Vehicle.Tyres)
		}
	}
	// Without constant or resistance the other one and the rated voltage say
	// what the can is wound for.
	for key, want := range map[string][]string{
		"torque_constant":    {"motors.rated_voltage", "motors.torque_constant"},
		"winding_resistance": {"motors.rated_voltage", "motors.winding_resistance"},
	} {
		var got []string
		for _, a := range parts(t, dropKey(full, "motors", key)).Assumed {
			got = append(got, a.Key)
		}
		if d := cmp.Diff(want, got); d != "" {
			t.Errorf("without motors.%s: -want +got\n%s", key, d)
		}
	}
}

func TestLabelsOnlyGiveAFullSetupWithEveryDefaultListed(t *testing.T) {
	known := map[string]bool{}
	for _, k := range setup.Keys() {
		known[k.Path()] = true
	}
	for name, text := range map[string]string{
		"a good start":  labelsOnly,
		"pack only":     "[pack]\nlabel = \"12 V\"\n",
		"age only":      "[rider]\nage = \"5\"\n[pack]\nlabel = \"12 V 7 Ah\"\n",
		"24 V":          "[vehicle]\ndesign_voltage = \"24 V\"\nseats = 2\n[pack]\nlabel = \"24 V (two 12 V) 12 Ah\"\n",
		"6 V by motors": "[motors]\ncan = \"380\"\n[pack]\nlabel = \"6 V 4 Ah\"\n",
		"with original": labelsOnly + "[original.pack]\nlabel = \"12 V 7 Ah\"\n",
		"converter":     labelsOnly + "[controller]\nconverter_limit = \"20 A\"\n",
		"soft start":    labelsOnly + "[controller]\nramp = \"1 s\"\n",
		"board":         labelsOnly + "[controller]\nkind = \"chopper\"\n[cutoff.pack]\nopens_at = \"15 V\"\n",
		"series motors": labelsOnly[:strings.Index(labelsOnly, "can =")] + "wiring = \"series\"\n[pack]\nlabel = \"18 V 4 Ah\"\nchemistry = \"li-ion\"\n",
	} {
		t.Run(name, func(t *testing.T) {
			p := parts(t, text)
			all := slices.Clone(p.Assumed)
			if p.Original != nil {
				all = append(all, p.Original.Assumed...)
			}
			seen := map[string]bool{}
			for _, a := range all {
				if a.Why == "" || a.Value == "" || seen[a.Key] {
					t.Errorf("assumption %+v", a)
				}
				seen[a.Key] = true
				if _, ok := p.Source(a.Source); !ok {
					t.Errorf("%s: source %q is not known", a.Key, a.Source)
				}
				if !known[strings.TrimPrefix(a.Key, "original.")] {
					t.Errorf("%s cannot be written into a setup file", a.Key)
				}
			}
			for _, f := range p.Figures() {
				if !f.Valid() || f.Low < 0 && f.Unit() != quantity.Temperature.Unit() {
					t.Errorf("%s: %v", f.Key, f.Range)
				}
				if f.Source != "" {
					if _, ok := p.Source(f.Source); !ok {
						t.Errorf("figure %s: source %q is not known", f.Key, f.Source)
					}
				}
				if f.Assumed && (f.Why == "" || f.Source == "") {
					t.Errorf("figure %s is assumed without a reason", f.Key)
				}
			}
			buildable(t, p)
			if p.Original != nil {
				buildable(t, p.Original)
			}
		})
	}
}

// buildable checks that every corner makes a case that the engine accepts.
func buildable(t *testing.T, p *setup.Parts) {
	t.Helper()
	for name, pick := range picks {
		if _, err := battery.New(p.PackSpec(pick)); err != nil {
			t.Errorf("pack at %s: %v", name, err)
		}
		if p.Bench != nil {
			continue
		}
		if err := p.DriveVehicle(pick).Check(); err != nil {
			t.Errorf("vehicle at %s: %v", name, err)
		}
		spec, err := p.PathSpec(pick)
		if err != nil {
			t.Errorf("path at %s: %v", name, err)
			continue
		}
		if _, err := wiring.NewPath(spec); err != nil {
			t.Errorf("path at %s: %v", name, err)
		}
	}
}

func TestNoFuseAndNoCutoffAreInvented(t *testing.T) {
	p := parts(t, labelsOnly)
	if p.Fuse.Absent || p.Fuse.Form.Known || p.Fuse.RatingA.Known || len(p.Cutoffs) != 0 {
		t.Errorf("nothing was said about fuse and cutoffs: %+v, %+v", p.Fuse, p.Cutoffs)
	}
	if _, ok := p.FuseSpec(setup.Likely); ok {
		t.Error("a fuse came from nowhere")
	}
	p = parts(t, labelsOnly+"[fuse]\nform = \"none\"\n")
	if !p.Fuse.Absent {
		t.Error(`form = "none" was not heard`)
	}
	p = parts(t, labelsOnly+"[fuse]\nrating = \"30 A\"\n")
	if spec, ok := p.FuseSpec(setup.Likely); !ok || spec.RatingA != 30 || spec.DistanceM != nil {
		t.Errorf("fuse of 30 A: %+v", spec)
	}
}

// WHO and CDC growth charts (LMS files): boys and girls of 5 years, 5th
// percentile 14.5 to 15.2 kg, median 17.9 to 18.4 kg, 95th 22.8 to 23.6 kg.
func TestRiderMassFollowsFromAge(t *testing.T) {
	p := parts(t, "[rider]\nage = \"5 years\"\n[pack]\nlabel = \"12 V 7 Ah\"\n")
	m := p.Rider.MassKg
	if math.Abs(m.Low-14.5) > 0.1 || m.Likely < 17.8 || m.Likely > 18.5 || math.Abs(m.High-23.6) > 0.1 || !m.Assumed {
		t.Errorf("5 years: %+v", m)
	}
	wide := parts(t, "[pack]\nlabel = \"12 V 7 Ah\"\n").Rider.MassKg
	if wide.Low >= m.Low || wide.High <= m.High {
		t.Errorf("without an age the range %v must hold more than %v", wide.Range, m.Range)
	}
	if got := parts(t, "[rider]\nmass = \"20 to 26 kg\"\nage = \"5\"\n[pack]\nlabel = \"12 V 7 Ah\"\n").Rider.MassKg; got.Assumed || got.Low != 20 || got.High != 26 {
		t.Errorf("a weighed child stays weighed: %+v", got)
	}
	older := parts(t, "[rider]\nage = \"16 years\"\n[pack]\nlabel = \"12 V 7 Ah\"\n")
	for _, a := range older.Assumed {
		if a.Key == "rider.mass" && !strings.HasSuffix(a.Value, "; the growth charts end at 14 years, and an older child is heavier: weigh the child") {
			t.Errorf("16 years: %q", a.Value)
		}
	}
	// Dressed and shod children outside the charts are refused or noted.
	s, err := read("[rider]\nage = \"40 years\"\n[pack]\nlabel = \"12 V 7 Ah\"\n")
	if err != nil {
		t.Fatal(err)
	}
	if _, err := s.Parts(); err == nil || err.Error() != `f.toml:2: rider.age: read "40 years"; want rider.mass for a rider of this age` {
		t.Errorf("40 years: %v", err)
	}
}

// Two driven wheels of four are the rear ones, near which the child sits; of others it is
// not known where they are, so nothing is counted on.
func TestRearWheelsCarryMoreThanHalfAndOthersTheirNumber(t *testing.T) {
	for _, c := range []struct {
		name, keys     string
		low, high, all float64 // share on the level; height that counts on a climb
	}{
		{"not told", "", 0.45, 0.75, 0.5},
		{"two of four", "driven_wheels = 2\nwheels = 4", 0.45, 0.75, 0.5},
		{"one of four", "driven_wheels = 1\nwheels = 4", 0.225, 0.375, 0.25},
		{"two of three", "driven_wheels = 2\nwheels = 3", 0.53, 0.81, 0},
		{"all of four", "driven_wheels = 4\nwheels = 4", 1, 1, 0},
	} {
		v := parts(t, "[vehicle]\n"+c.keys+"\n[pack]\nlabel = \"12 V 7 Ah\"\n").Vehicle
		if s := v.DrivenShare; s.Low < c.low || s.High > c.high || v.HeightShare != c.all {
			t.Errorf("%s: %v of the weight, want within %g to %g; on a climb %g, want %g", c.name, s.Range, c.low, c.high, v.HeightShare, c.all)
		}
		if s := v.DrivenShare; c.name == "two of four" && !(s.Likely > 0.5) {
			t.Errorf("%s: likely %g of the weight, not more than half", c.name, s.Likely)
		}
	}
}

func TestUnknownGroundIsWiderThanAnyOfItsKinds(t *testing.T) {
	unknown := parts(t, "[pack]\nlabel = \"12 V 7 Ah\"\n").Vehicle
	open, grip := unknown.RollingM, unknown.Grip
	for _, ground := range []string{"smooth concrete", "asphalt", "short grass"} {
		one := parts(t, "[vehicle]\nground = \""+ground+"\"\n[pack]\nlabel = \"12 V 7 Ah\"\n").Vehicle
		if one.RollingM.Low < open.Low || one.RollingM.High > open.High || one.RollingM.Assumed {
			t.Errorf("%s: %v, unknown %v", ground, one.RollingM.Range, open.Range)
		}
		if one.Grip.Low < grip.Low || one.Grip.High > grip.High {
			t.Errorf("%s grips by %v, unknown ground by %v", ground, one.Grip.Range, grip.Range)
		}
	}
	hard := parts(t, "[vehicle]\nground = \"asphalt\"\n[pack]\nlabel = \"12 V 7 Ah\"\n").Vehicle
	rubber := parts(t, "[vehicle]\nground = \"asphalt\"\ntyres = \"rubber\"\n[pack]\nlabel = \"12 V 7 Ah\"\n").Vehicle
	if rubber.Grip.Likely <= hard.Grip.Likely || rubber.RollingM.Likely >= hard.RollingM.Likely {
		t.Errorf("rubber grips better and rolls easier: %v %v against %v %v", rubber.Grip, rubber.RollingM, hard.Grip, hard.RollingM)
	}
}

func TestTheOriginalSharesWhatItDoesNotChange(t *testing.T) {
	p := parts(t, labelsOnly+`
[cutoff.module]
opens_at = "15 V"
[fuse]
form = "large blade"
rating = "40 A"
[original.pack]
label = "12 V 7 Ah"
[original.fuse]
form = "small blade"
rating = "25 A"
`)
	o := p.Original
	if o == nil || o.Pack.Profile.Name != "agm" || o.Pack.CellsInSeries != 6 || o.Fuse.RatingA.Likely != 25 {
		t.Fatalf("original: %+v", o)
	}
	if len(p.Cutoffs) != 1 || len(o.Cutoffs) != 0 {
		t.Errorf("the added module was not there originally: %+v", o.Cutoffs)
	}
	for _, a := range o.Assumed {
		if !strings.HasPrefix(a.Key, "original.pack.") {
			t.Errorf("%s is today's unknown, not the original's", a.Key)
		}
	}
	if o.Vehicle.MassKg.Key != "vehicle.mass" || o.Pack.Health.Key != "original.pack.health" {
		t.Errorf("keys %q, %q", o.Vehicle.MassKg.Key, o.Pack.Health.Key)
	}
	keys := map[string]int{}
	for _, f := range p.Figures() {
		keys[f.Key]++
	}
	for k, n := range keys {
		if n != 1 {
			t.Errorf("%s is listed %d times", k, n)
		}
	}
	if keys["original.pack.resistance"] != 1 || keys["original.vehicle.mass"] != 0 {
		t.Errorf("figures: %v", keys)
	}
	if o.Pack.Health.Low < 0.9 {
		t.Errorf("the original pack was new: %v", o.Pack.Health.Range)
	}
}

func TestDesignVoltageFollowsFromWhatIsThere(t *testing.T) {
	for _, c := range []struct {
		name, text string
		want       float64
		assumed    bool
	}{
		{"given", "[vehicle]\ndesign_voltage = \"6 V\"\n", 6, false},
		{"original pack", "[original.pack]\nlabel = \"24 V 12 Ah\"\nchemistry = \"agm\"\n", 24, true},
		{"motors", "[motors]\nrated_voltage = \"24 V\"\n", 24, true},
		{"two motors in series", "[motors]\nrated_voltage = \"6 V\"\ncount = 2\nwiring = \"series\"\n", 12, true},
		{"small can", "[motors]\ncan = \"380\"\n", 6, true},
		{"nothing, whatever the new pack is", "", 12, true},
	} {
		p := parts(t, c.text+"[pack]\nlabel = \"20 V max 5 Ah\"\n")
		if got := p.Vehicle.DesignV; got.Likely != c.want || got.Assumed != c.assumed {
			t.Errorf("%s: %v (assumed %v), want %g", c.name, got.Range, got.Assumed, c.want)
		}
	}
}

func TestWordsAndLabelsThatMeanNothingAreFaults(t *testing.T) {
	s, err := read(`[vehicle]
ground = "moon dust"
[motors]
can = "999"
[fuse]
form = "wooden"
[wire]
joint = "chewing gum"
[pack]
chemistry = "plutonium"
[original.pack]
label = "best battery"
`)
	if err != nil {
		t.Fatal(err)
	}
	_, err = s.Parts()
	var faults setup.Faults
	if !errors.As(err, &faults) {
		t.Fatalf("got %v", err)
	}
	var got []string
	for _, f := range faults {
		got = append(got, fmt.Sprintf("%d %s %s", f.Line, f.Key, f.Read))
		if f.Want == "" {
			t.Errorf("%v says not what would be right", f)
		}
	}
	want := []string{
		"2 vehicle.ground moon dust", "4 motors.can 999", "6 fuse.form wooden", "8 wire.joint chewing gum",
		"10 pack.chemistry plutonium", "12 original.pack.label best battery",
	}
	if d := cmp.Diff(want, got); d != "" {
		t.Errorf("-want +got\n%s", d)
	}
	for _, c := range []struct{ text, want string }{
		{"", `f.toml: pack: read nothing; want a [pack] table, with at least a label such as label = "20 V max 5 Ah"`},
		{"[pack]\nchemistry = \"li-ion\"\n", `f.toml:1: pack: read nothing; want a label with its volts, such as label = "20 V max 5 Ah", or cells_in_series`},
		{"[pack]\nlabel = \"20 V max 5 Ah\"\ncells_in_series = 4\n", `f.toml:3: pack.cells_in_series: read "4"; want 5, which is what the label "20 V max 5 Ah" means, or another label`},
		{"[pack]\ncells_in_series = 5\n", `f.toml:1: pack: read nothing; want pack.chemistry beside it: "agm", `},
	} {
		s, err := read(c.text)
		if err != nil {
			t.Fatal(err)
		}
		if _, err = s.Parts(); err == nil || !strings.HasPrefix(err.Error(), c.want) {
			t.Errorf("%q:\ngot  %v\nwant %s", c.text, err, c.want)
		}
	}
}

func TestTheExamplesResolve(t *testing.T) {
	files, err := filepath.Glob("../examples/*.toml")
	if err != nil || len(files) == 0 {
		t.Skipf("no examples to read: %v", err)
	}
	for _, f := range files {
		s, err := setup.Load(f)
		if err != nil {
			t.Error(err)
			continue
		}
		p, err := s.Parts()
		if err != nil {
			t.Error(err)
			continue
		}
		buildable(t, p)
	}
}

func ExampleSetup_Parts() {
	s, err := setup.Read(strings.NewReader("[rider]\nage = \"5 years\"\n[pack]\nlabel = \"20 V max 5 Ah\"\n"), "tractor.toml")
	if err != nil {
		fmt.Println(err)
		return
	}
	p, err := s.Parts()
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(p.Pack.Profile.Name, p.Pack.CellsInSeries)
	fmt.Println("child:", &p.Rider.MassKg, "assumed:", p.Rider.MassKg.Assumed)
	fmt.Println("fuse:", &p.Fuse.RatingA)
	// Output:
	// li-ion 5
	// child: 14.5 to 23.6 kg (32 to 52 lb) assumed: true
	// fuse: unknown
}
