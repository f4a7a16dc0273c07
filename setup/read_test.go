package setup_test

import (
	"errors"
	"fmt"
	"io"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"
	"time"

	"example.org/packcheck/internal/quantity"
	"example.org/packcheck/setup"
)

// read reads a text as the file f.toml.
func read(text string) (*setup.Setup, error) { return setup.Read(strings.NewReader(text), "f.toml") }

func TestOddFilesAreRefusedQuickly(t *testing.T) {
	keys := func(n int) string {
		var b strings.Builder
		for i := range n {
			fmt.Fprintf(&b, "k%d = 1\n", i)
		}
		return b.String()
	}
	for _, c := range []struct{ name, text, want string }{
		{"larger than 1 MiB", "# " + strings.Repeat("x", 1<<20), `f.toml: read "more than 1 MiB"; want a setup file of at most 1 MiB`},
		{"UTF-16, little end first", "\xff\xfea\x00", `f.toml: read "UTF-16"; want a file saved as UTF-8 (in an editor: "save as", encoding UTF-8)`},
		{"UTF-16, big end first", "\xfe\xff\x00a", `f.toml: read "UTF-16"; want a file saved as UTF-8 (in an editor: "save as", encoding UTF-8)`},
		{"UTF-16 without its mark", "a\x00=\x00", `f.toml:1: read "a zero byte"; want a text file saved as UTF-8`},
		{"Latin-1", "title = \"Tr\xe4ger\"", `f.toml:1: read "byte 0xe4"; want a text file saved as UTF-8`},
		{"nested arrays", "a = " + strings.Repeat("[", 500_000), `f.toml:1: read "brackets or dotted names within one another"; want at most 8 levels`},
		{"nested tables", "a = " + strings.Repeat("{a=", 200_000), `f.toml:1: read "brackets or dotted names within one another"; want at most 8 levels`},
		{"nested arrays behind a long string", "x = [\"\"\"\n\"\"\", " + strings.Repeat("[", 500_000), `f.toml:2: read "brackets or dotted names within one another"; want at most 8 levels`},
		{"dotted names", "a" + strings.Repeat(".a", 400_000) + " = 1", `f.toml:1: read "brackets or dotted names within one another"; want at most 8 levels`},
		{"dotted header", "[a" + strings.Repeat(".a", 400_000) + "]", `f.toml:1: read "brackets or dotted names within one another"; want at most 8 levels`},
		{"many lines", strings.Repeat("\n", 30_000), `f.toml: read "30000 lines"; want at most 20000 lines`},
		{"many keys", keys(600), `f.toml: read "600 keys"; want at most 500`},
	} {
		start := time.Now()
		_, err := read(c.text)
		if err == nil || err.Error() != c.want {
			t.Errorf("%s:\ngot  %.300v\nwant %s", c.name, err, c.want)
		}
		if d := time.Since(start); d > time.Second {
			t.Errorf("%s took %v", c.name, d)
		}
	}
	// The worst that is allowed: long, with as many unknown keys as may be.
	start := time.Now()
	_, err := read(strings.Repeat("# padding of forty characters, no more\n", 19_000) + keys(490))
	var faults setup.Faults
	if !errors.As(err, &faults) || len(faults) != 490+1 { // and that there is no battery
		t.Errorf("490 unknown keys gave %d faults", len(faults))
	}
	if d := time.Since(start); d > 3*time.Second {
		t.Errorf("the largest file took %v", d)
	}
}

func TestUsualVariantsOfATextFileAreRead(t *testing.T) {
	for name, text := range map[string]string{
		"byte order mark":       "\ufeff[pack]\ncapacity = \"7 Ah\"\n",
		"line ends of Windows":  "[pack]\r\ncapacity = \"7 Ah\"\r\n",
		"line ends of old Macs": "[pack]\rcapacity = \"7 Ah\"\r",
		"single quotes":         "[pack]\ncapacity = '7 Ah'",
		"dotted key":            "pack.capacity = \"7 Ah\"",
		"inline table":          "pack = { capacity = \"7 Ah\" }",
		"no end of line":        "[pack]\ncapacity = \"7 Ah\"",
	} {
		s, err := read(text)
		if err != nil {
			t.Errorf("%s: %v", name, err)
			continue
		}
		if !s.Pack.Given || s.Pack.Capacity.Likely != 7 || s.Pack.Capacity.Key != "pack.capacity" {
			t.Errorf("%s: read %+v", name, s.Pack.Capacity)
		}
	}
}

func TestValuesRememberHowAndWhereTheyWereWritten(t *testing.T) {
	s, err := read("title = \"Harvest fair\"\n\n[rider]\nmass = \"44 to 50 lb\"\n\n[motors]\ncan = 550\ncount = 2\n[vehicle]\nhas_board = true\n[gears]\nratio = 110.125\n" +
		"[storage]\nfrom = 2026-11-01\n[original.pack]\ncapacity = \"7 Ah\"\n")
	if err != nil {
		t.Fatal(err)
	}
	m := s.Rider.Mass
	if m.Line != 4 || m.Text != "44 to 50 lb" || m.System != quantity.Customary || !m.Given || m.Key != "rider.mass" {
		t.Errorf("rider.mass: %+v", m)
	}
	if s.Motors.Can.Text != "550" || s.Motors.Count.Likely != 2 || !s.Motors.Given || s.Motors.Line != 6 {
		t.Errorf("motors: %+v", s.Motors)
	}
	if !s.Vehicle.HasBoard.Given || !s.Vehicle.HasBoard.Yes {
		t.Errorf("has_board: %+v", s.Vehicle.HasBoard)
	}
	if s.Gears.Ratio.Likely != 110.125 {
		t.Errorf("a TOML number has no thousands mark: %v", s.Gears.Ratio)
	}
	if got := s.Storage.From.Day.Format(time.DateOnly); got != "2026-11-01" {
		t.Errorf("storage.from: %s", got)
	}
	if s.Pack.Given || s.Original == nil || s.Original.Pack.Capacity.Key != "original.pack.capacity" {
		t.Errorf("original: %+v", s.Original)
	}
	if s.Title.Text != "Harvest fair" || s.Name != "f.toml" {
		t.Errorf("title %q, name %q", s.Title.Text, s.Name)
	}
}

func TestLoadReportsFilesThatCannotBeRead(t *testing.T) {
	dir := t.TempDir()
	if _, err := setup.Load(filepath.Join(dir, "none.toml")); !errors.Is(err, os.ErrNotExist) {
		t.Errorf("missing file: %v", err)
	}
	if _, err := setup.Load(dir); err == nil {
		t.Error("a folder was read as a setup")
	}
	name := filepath.Join(dir, "ok.toml")
	if err := os.WriteFile(name, []byte("[pack]\nlabel = \"12 V 7 Ah\"\n"), 0o600); err != nil {
		t.Fatal(err)
	}
	s, err := setup.Load(name)
	if err != nil || s.Dir != dir || s.Name != name {
		t.Errorf("Load: %+v, %v", s, err)
	}
	if _, err := setup.Read(badReader{}, "f.toml"); !errors.Is(err, io.ErrUnexpectedEOF) {
		t.Errorf("a reader that fails: %v", err)
	}
}

type badReader struct{}

func (badReader) Read([]byte) (int, error) { return 0, io.ErrUnexpectedEOF }

// Every key that is listed can be read from its own example, and lands in the
// place that its name says.
func TestEveryKeyReadsItsOwnExample(t *testing.T) {
	seen := map[string]bool{}
	for _, k := range setup.Keys() {
		if k.Doc == "" || k.Example == "" || seen[k.Path()] {
			t.Errorf("%s: doc %q, example %q", k.Path(), k.Doc, k.Example)
		}
		seen[k.Path()] = true
		line := k.Name + " = " + k.Quoted() + "\n"
		if k.Table != "" {
			line = "[" + k.Table + "]\n" + line
		}
		switch k.Path() { // these stand only beside another key
		case "load.until":
			line += "power = \"5 W\"\n"
		case "cutoff.pack.delay", "cutoff.pack.closes_at", "cutoff.module.delay", "cutoff.module.closes_at",
			"cutoff.controller.delay", "cutoff.controller.closes_at":
			line += "opens_at = \"15 V\"\n"
		case "motors.wiring":
			line += "count = 2\n"
		}
		for _, text := range []string{line, strings.Replace("[original]\n"+line, "[original]\n[", "[original.", 1)} {
			_, err := read(text)
			today := k.Table == "charger" || k.Table == "storage" || slices.Contains(strings.Fields("title measured.second_rest_voltage vehicle.wheel_width pack.size vehicle.tray vehicle.motor_seat vehicle.motor_room vehicle.axle motors.can_diameter motors.can_length gears.bore"), k.Path())
			if refused := err != nil && strings.Contains(err.Error(), "of today: it tells nothing"); today && strings.HasPrefix(text, "[original") {
				if !refused { // what says nothing there is not stored
					t.Errorf("%s under [original]: %v", k.Path(), err)
				}
			} else if err != nil {
				t.Errorf("%s: %v", k.Path(), err)
			}
		}
	}
	if len(seen) < 100 {
		t.Errorf("only %d keys", len(seen))
	}
}

func TestTheDesignsKeysAreAllThere(t *testing.T) {
	keys := map[string]bool{}
	for _, k := range setup.Keys() {
		keys[k.Path()] = true
	}
	for table, names := range map[string]string{
		"rider":             "mass age",
		"vehicle":           "mass wheel_diameter wheel_width driven_wheels wheels ground slope design_voltage has_board weakest_part_voltage",
		"motors":            "count wiring can rated_voltage no_load_speed no_load_current stall_current winding_resistance torque_constant inductance rotor_inertia",
		"gears":             "ratio efficiency",
		"controller":        "kind max_voltage continuous_current peak_current ramp current_limit resistance input_capacitance standby_current converter_limit converter_voltage",
		"wire":              "gauge area one_way_length insulation joints joint_resistance",
		"fuse":              "form rating max_voltage distance_from_pack",
		"pack":              "chemistry label cells_in_series strings capacity rate resistance health temperature charge max_current housing joined self_discharge",
		"cutoff.pack":       "opens_at delay closes_at standby_current",
		"cutoff.module":     "opens_at delay closes_at standby_current ramp",
		"cutoff.controller": "opens_at delay closes_at standby_current",
		"load":              "current power pattern until",
		"charger":           "made_for voltage current stops label output polarity jack",
		"outing":            "air drive pause wanted",
		"storage":           "from until temperature",
		"measured":          "rest_voltage hours_rested loaded_voltage loaded_current ride_time top_speed blocked_current pull_force fuse_rating fuse_seconds reset_seconds",
	} {
		for _, name := range strings.Fields(names) {
			if !keys[table+"."+name] {
				t.Errorf("%s.%s is missing", table, name)
			}
		}
	}
	for _, tb := range setup.Tables() {
		if tb.Doc == "" {
			t.Errorf("table %s is not described", tb.Name)
		}
	}
}

func ExampleRead() {
	_, err := setup.Read(strings.NewReader("[pack]\nlabel = \"12 V\"\ncapacty = \"7 Ah\"\ncharge = \"110 %\"\n"), "tractor.toml")
	fmt.Println(err)
	// Output:
	// tractor.toml:3: pack.capacty: read "capacty"; want "capacity"
	// tractor.toml:4: pack.charge: read "110 %"; want a fraction from 0 % to 100 %
}

func ExampleKeys() {
	for _, k := range setup.Keys() {
		if k.Table == "gears" {
			fmt.Printf("%s = %s  # %s\n", k.Path(), k.Quoted(), k.Doc)
		}
	}
	// Output:
	// gears.ratio = "110:1"  # motor turns per wheel turn; or the teeth of all pairs of gears, 12:60 x 12:72 x 10:45
	// gears.efficiency = "60 %"  # share of the motor's torque that reaches the wheels
	// gears.bore = "12 mm"  # diameter of the hole that the axle goes through
}
