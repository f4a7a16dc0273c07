package trials_test

import (
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"example.org/packcheck"
	"example.org/packcheck/setup"
)

// Bad input gets one line per fault and never an answer.
func TestBadInputIsRefusedWithAReason(t *testing.T) {
	t.Parallel()
	ok := labelsOnly().toml()
	utf16 := func(text string, little bool) string {
		out := "\xfe\xff"
		if little {
			out = "\xff\xfe"
		}
		for _, r := range []byte(text) {
			if little {
				out += string([]byte{r, 0})
			} else {
				out += string([]byte{0, r})
			}
		}
		return out
	}
	var many strings.Builder
	many.WriteString("[pack]\nlabel = \"12 V 7 Ah\"\n")
	for i := range 5000 {
		fmt.Fprintf(&many, "key%d = \"1 V\"\n", i)
	}
	put := func(key, value string) string { return labelsOnly().with(key, value).toml() }
	for _, c := range []struct{ name, text, want string }{
		{"nothing at all", "", "pack"},
		{"only blanks", " \n\t\r\n", "pack"},
		{"a title alone", "title = \"x\"", "pack"},
		{"not a number", put("rider.mass", "nan"), "rider.mass"},
		{"infinite", put("rider.mass", "+inf"), "rider.mass"},
		{"not a number, quoted", put("rider.mass", `"NaN kg"`), "rider.mass"},
		{"infinite, quoted", put("rider.mass", `"inf kg"`), "rider.mass"},
		{"too many digits", put("rider.mass", `"1e999 kg"`), "rider.mass"},
		{"hexadecimal", put("rider.mass", `"0x10 kg"`), "rider.mass"},
		{"a mass below nothing", put("rider.mass", `"-20 kg"`), "rider.mass"},
		{"a pack below nothing", put("pack.capacity", `"-7 Ah"`), "pack.capacity"},
		{"a range backwards over zero", put("pack.capacity", `"-7 to 7 Ah"`), "pack.capacity"},
		{"a child of two tonnes", put("rider.mass", `"2000 kg"`), "rider.mass"},
		{"a wheel of a kilometre", put("vehicle.wheel_diameter", `"1 km"`), "vehicle.wheel_diameter"},
		{"no cells", put("pack.cells_in_series", "0"), "pack.cells_in_series"},
		{"cells below nothing", put("pack.cells_in_series", "-3"), "pack.cells_in_series"},
		{"half a cell", put("pack.cells_in_series", "5.5"), "pack.cells_in_series"},
		{"a million cells", put("pack.cells_in_series", "1000000"), "pack.cells_in_series"},
		{"more cells than a word holds", put("pack.cells_in_series", "99999999999999999999"), "pack.cells_in_series"},
		{"no motors", put("motors.count", "0"), "motors.count"},
		{"no unit", put("rider.mass", "20"), "rider.mass"},
		{"another unit", put("rider.mass", `"20 V"`), "rider.mass"},
		{"thousands of volts", put("vehicle.design_voltage", `"12 kV"`), "vehicle.design_voltage"},
		{"a list for a value", put("rider.mass", `["20 kg"]`), "rider.mass"},
		{"a table for a value", put("rider.mass", `{ is = "20 kg" }`), "rider.mass"},
		{"a value for a table", "pack = 3\n", "pack"},
		{"a list of tables", "[[pack]]\nlabel = \"12 V 7 Ah\"\n", "pack"},
		{"a key twice", "[pack]\nlabel = \"12 V\"\nlabel = \"24 V\"\n", "once only"},
		{"a table twice", "[pack]\nlabel = \"12 V\"\n[pack]\nlabel = \"24 V\"\n", "once only"},
		{"a misspelt key", put("pack.capasity", `"7 Ah"`), `"capacity"`},
		{"a misspelt table", ok + "[moters]\ncount = 2\n", "[motors]"},
		{"a key in capitals", put("pack.Capacity", `"7 Ah"`), `"capacity"`},
		{"a table in capitals", "[Pack]\nlabel = \"12 V 7 Ah\"\n", "[pack]"},
		{"a word in another case is the same word but not a key", put("PACK.label", `"12 V"`), "[pack]"},
		{"no closing quote", "[pack]\nlabel = \"12 V 7 Ah\nchemistry = \"agm\"\n", "pack.label"},
		{"little-endian UTF-16", utf16(ok, true), "UTF-8"},
		{"big-endian UTF-16", utf16(ok, false), "UTF-8"},
		{"UTF-16 without a mark", utf16(ok, true)[2:], "UTF-8"},
		{"Latin-1", "[pack]\nlabel = \"12 V 7 Ah\"\ntitle = \"caf\xe9\"\n", "UTF-8"},
		{"a zero byte", "[pack]\nlabel = \"12 V\x00\"\n", "zero byte"},
		{"bytes of a picture", "\x89PNG\r\n\x1a\n\x00\x00", "UTF-8"},
		{"a megabyte too many", "# " + strings.Repeat("x", 1<<20), "1 MiB"},
		{"a hundred megabytes", strings.Repeat("# a line that says nothing at all\n", 3<<20), "1 MiB"},
		{"thousands of keys", many.String(), "500"},
		{"thousands of lines", strings.Repeat("#\n", 30_000), "lines"},
		{"brackets in brackets", "x = " + strings.Repeat("[", 100_000), "levels"},
		{"tables in tables", "x = " + strings.Repeat("{a=", 50_000), "levels"},
		{"names in names", "[" + strings.Repeat("a.", 50_000) + "a]\n", "levels"},
		{"a dotted key without end", strings.Repeat("a.", 100_000) + "a = 1\n", "levels"},
		{"a word of a megabyte", put("pack.label", `"`+strings.Repeat("1", 900_000)+`"`), "pack.label"},
		{"a comment for an escape", "title = \"\\u001b[2J\"\n" + ok, "title"},
		{"charger label against charger volts", labelsOnly().with("charger.label", `"14.7 V 1 A"`, "charger.voltage", `"29.4 V"`).toml(), "charger.voltage"},
		{"volts that no such battery rests at", put("measured.rest_voltage", `"25 V"`), "measured.rest_voltage"},
		{"a store for two centuries", labelsOnly().with("storage.from", "1990-01-01", "storage.until", "2199-01-01").toml(), "storage.until"},
	} {
		s, err := packcheck.Read(strings.NewReader(c.text), "bad.toml")
		if err == nil {
			_, err = packcheck.AssessWith(t.Context(), s, packcheck.Options{Draws: few})
		}
		var faults setup.Faults
		if !errors.As(err, &faults) {
			t.Errorf("%s: %v is no faults", c.name, err)
			continue
		}
		if !strings.Contains(err.Error(), c.want) {
			t.Errorf("%s: %.300s, want it to say %q", c.name, err, c.want)
		}
		for _, f := range faults {
			if line := f.Error(); len(line) > 2000 || strings.ContainsAny(line, "\n\r\x1b\x00") || f.File != "bad.toml" {
				t.Errorf("%s: fault %.300q", c.name, line)
			}
		}
	}
}

func TestSeveralFaultsComeTogetherInTheOrderOfTheFile(t *testing.T) {
	_, err := packcheck.Read(strings.NewReader(`
[rider]
mass = "-3 kg"
colour = "red"
[pack]
capacity = "7"
label = 12
[fuse]
rating = "thirty"
form = "small blade"
[outing]
air = "500 C"
`), "several.toml")
	var faults setup.Faults
	if !errors.As(err, &faults) || len(faults) != 6 {
		t.Fatalf("%d faults: %v", len(faults), err)
	}
	for i, key := range []string{"rider.mass", "rider.colour", "pack.capacity", "pack.label", "fuse.rating", "outing.air"} {
		if faults[i].Key != key || faults[i].Line == 0 || i > 0 && faults[i].Line <= faults[i-1].Line {
			t.Errorf("fault %d is %q, want %s", i, faults[i].Error(), key)
		}
	}
}

func TestOddLayoutsOfASoundFileAreRead(t *testing.T) {
	text := labelsOnly().toml()
	want := everyByte(t, text)
	for name, odd := range map[string]string{
		"CRLF":            strings.ReplaceAll(text, "\n", "\r\n"),
		"CR":              strings.ReplaceAll(text, "\n", "\r"),
		"byte order mark": "\ufeff" + text,
		"no last newline": strings.TrimSuffix(text, "\n"),
		"many remarks":    strings.Repeat("# x\n", 10_000) + text,
		"blanks":          strings.ReplaceAll(text, " = ", "\t =  "),
	} {
		if everyByte(t, odd) != want {
			t.Errorf("%s: another report", name)
		}
	}
}

func TestWhatIsNoPlainFileIsRefused(t *testing.T) {
	dir := t.TempDir()
	locked := filepath.Join(dir, "locked.toml")
	if err := os.WriteFile(locked, []byte(labelsOnly().toml()), 0); err != nil {
		t.Fatal(err)
	}
	for _, name := range []string{dir, filepath.Join(dir, "none.toml"), "", filepath.Join(dir, "none", "none.toml"), "\x00", strings.Repeat("n", 5000)} {
		if _, err := packcheck.Load(name); err == nil {
			t.Errorf("%.40q is read", name)
		}
	}
	if _, err := packcheck.Load(locked); err == nil && os.Getuid() != 0 {
		t.Error("a locked file is read")
	}
	if _, err := packcheck.Read(failing{}, "pipe"); err == nil || !strings.Contains(err.Error(), "broken") {
		t.Errorf("a broken pipe gives %v", err)
	}
	// A stream without end must not be read to its end.
	if _, err := packcheck.Read(endless{}, "pipe"); err == nil || !strings.Contains(err.Error(), "1 MiB") {
		t.Errorf("an endless pipe gives %v", err)
	}
}

type failing struct{}

func (failing) Read([]byte) (int, error) { return 0, errors.New("the pipe is broken") }

type endless struct{}

func (endless) Read(p []byte) (int, error) {
	for i := range p {
		p[i] = '#'
	}
	return len(p), nil
}
