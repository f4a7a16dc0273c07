package tables_test

import (
	"errors"
	"io"
	"strings"
	"testing"
	"testing/iotest"

	"example.org/packcheck/tables"
	"github.com/google/go-cmp/cmp"
)

const lawn = `
[source.my-test]
text = "Coast-down on the green of Bramble Lane, three runs"
known = "measured"

[ground.our-green]
words = ["our green"]
rolling_mm = [7.0, 9.0, 11.0]
grip_hard = [0.2, 0.3, 0.4]
grip_rubber = { range = [0.3, 0.45, 0.6], source = "grip-soft-guess" }
source = "my-test"
`

func TestAUsersRowsJoinTheBuiltInOnes(t *testing.T) {
	mine, err := tables.Builtin().Extend(strings.NewReader(lawn), "mine.toml")
	if err != nil {
		t.Fatal(err)
	}
	g, err := mine.Ground("Our Green")
	if err != nil || g.Rolling.Source != "my-test" || g.GripRubber.Source != "grip-soft-guess" {
		t.Errorf("%+v, %v", g, err)
	}
	near(t, "low", g.Rolling.Low, 0.007, 1e-12)
	near(t, "likely", g.Rolling.Likely, 0.009, 1e-12)
	near(t, "high", g.Rolling.High, 0.011, 1e-12)
	if !mine.Firm("my-test") {
		t.Error("what somebody measured is firm")
	}
	if _, err := tables.Builtin().Ground("our green"); !errors.Is(err, tables.ErrNotFound) {
		t.Errorf("a user's row reached the built-in tables: %v", err)
	}
	if _, err := mine.Fuse("small blade"); err != nil {
		t.Error(err)
	}
	if len(mine.Sources()) != len(tables.Builtin().Sources())+1 {
		t.Error("sources were not joined")
	}
}

// drawer is a fuse of a user's own.
const drawer = `
[source.sheet]
text = "Maker's sheet of the fuse in the drawer"
known = "copy"
[fuse.drawer]
what = "the fuse in the drawer"
source = "sheet"
gates = { ratio = [1, 2], earliest_s = [1000, 1], latest_s = [inf, 10], source = "sheet" }
ratings = { amps = [10, 20], source = "sheet" }
`

// bad is the drawer's fuse with one thing replaced.
func bad(old, replacement string) string { return strings.Replace(drawer, old, replacement, 1) }

func TestAUsersFuseGoesThroughTheSameRules(t *testing.T) {
	mine, err := tables.Builtin().Extend(strings.NewReader(drawer), "drawer.toml")
	if err != nil {
		t.Fatal(err)
	}
	if f, err := mine.Fuse("drawer"); err != nil || len(f.Gates) != 2 || f.Gates[1].LatestS != 10 {
		t.Errorf("%+v, %v", f, err)
	}
	if _, err := tables.Builtin().Extend(strings.NewReader(bad("[inf, 10]", "[inf, inf]")), "drawer.toml"); err == nil {
		t.Error("a fuse that never opens was taken in")
	}
}

func TestABadTableFileIsToldFaultByFault(t *testing.T) {
	for _, c := range []struct{ name, text, want string }{
		{
			"no source", "[ground.x]\nrolling_mm = [1, 2, 3]\ngrip_hard = [0.2, 0.3, 0.4]\ngrip_rubber = [0.2, 0.3, 0.4]\n",
			`my.toml:1: ground.x: read nothing; want source = "ID" and a [source.ID] with text and known`,
		},
		{
			"unknown source", "[joint.x]\nwhat = \"plug\"\nnew_ohm = [0, 1, 2]\nsource = \"nobody\"\n",
			`my.toml:1: joint.x: read "nobody"; want the ID of a source that exists (add [source.nobody] with text and known)`,
		},
		{
			"several faults", strings.Replace(strings.Replace(lawn, "[7.0, 9.0, 11.0]", "[7.0, 5.0, 11.0]", 1), "grip_hard = [0.2, 0.3, 0.4]", "grip_harder = 7\ngrip_hard = [0.2, nan, 0.4]", 1),
			`my.toml:8: ground.our-green.rolling_mm: read "[7, 5, 11]"; want low <= likely <= high` + "\n" +
				`my.toml:9: ground.our-green.grip_harder: read "grip_harder"; want one of the columns grip_hard, grip_rubber, loose, rolling_mm, rolling_rubber_mm, source, words` + "\n" +
				`my.toml:10: ground.our-green.grip_hard: read "NaN"; want a number from 0.01 to 2`,
		},
		{"unknown table", "[grund.x]\na = 1\n", `my.toml:1: grund: read "grund"; want one of the tables source, adiabatic,`},
		{"array of tables", "[[ground]]\na = 1\n", `ground: read "a list of tables"; want named rows, [ground.NAME]`},
		{"no row", "ground = 3\n", `my.toml:1: ground: read "3"; want named rows`},
		{"row is a number", "[ground]\nx = 3\n", `my.toml:2: ground.x: read "3"; want a row`},
		{"taken name", strings.ReplaceAll(lawn, "our-green", "gravel"), `ground.gravel: read "gravel"; want a name that no row has yet`},
		{"taken word", strings.ReplaceAll(lawn, `"our green"`, `"Lawns"`), `read "Lawns"; want a word that is not taken by short grass already`},
		{"taken source", "[source.preece]\ntext = \"something else altogether\"\nknown = \"copy\"\n", `source.preece: read "preece"; want another name: this source is there already`},
		{"source without text", "[source.x]\nknown = \"copy\"\n", "my.toml:1: source.x.text: read nothing; want a text in quotes"},
		{"closed table", "[figure.toy-voltage-mine]\nvalue = 48\n", `my.toml:1: figure: read "figure"; want another table: this one holds limits of laws and standards`},
		{"lengths differ", bad("ratio = [1, 2]", "ratio = [1, 2, 3]"), `my.toml:8: fuse.drawer.gates.latest_s: read "2 numbers"; want as many as ratio has: 3`},
		{"not ascending", bad("ratio = [1, 2]", "ratio = [2, 1]"), `fuse.drawer.gates.ratio: read "1 after 2"; want ascending numbers`},
		{"times rise", bad("latest_s = [inf, 10]", "latest_s = [10, 11]"), `fuse.drawer.gates.latest_s: read "11 after 10"; want numbers that do not rise`},
		{"earliest rises", bad("earliest_s = [1000, 1]", "earliest_s = [1, 2]"), `fuse.drawer.gates.earliest_s: read "2 after 1"; want numbers that do not rise`},
		{"earliest above latest", bad("earliest_s = [1000, 1]", "earliest_s = [1000, 20]"), `fuse.drawer.gates.earliest_s: read "20"; want no earliest time above the latest, 10`},
		{"earliest missing", bad("earliest_s = [1000, 1], ", ""), "fuse.drawer.gates.earliest_s: read nothing; want a list of numbers"},
		{"no gates", bad("gates =", "gaps ="), "fuse.drawer.gates: read nothing; want a table with ratio"},
		{"gates are a number", bad("gates = {", "gates = 3 #"), `fuse.drawer.gates: read "3"; want a table of columns`},
		{"block without source", bad(`latest_s = [inf, 10], source = "sheet"`, "latest_s = [inf, 10]"), "fuse.drawer.gates: read nothing; want source ="},
		{"word is a number", bad(`what = "the`, "words = [3]\nwhat = \"the"), `fuse.drawer.words: read "[3]"; want a list of texts`},
		{"words are a text", bad(`what = "the`, "words = \"x\"\nwhat = \"the"), `fuse.drawer.words: read "x"; want a list of texts`},
		{"flag is a number", bad(`what = "the`, "breaker = 1\nwhat = \"the"), `fuse.drawer.breaker: read "1"; want true or false`},
		{"number is a text", bad("[10, 20]", `[10, "20"]`), `fuse.drawer.ratings.amps: read "20"; want a number from`},
		{"range of two", strings.Replace(lawn, "[7.0, 9.0, 11.0]", "[7.0, 9.0]", 1), `ground.our-green.rolling_mm: read "[7, 9]"; want [low, likely, high]`},
		{"range column", strings.Replace(lawn, "range = [0.3", "rang = [0.3", 1), `ground.our-green.grip_rubber: read "rang"; want range or source`},
		{"gauge taken", "[gauge.x]\ngauge = 14\narea_cmil = 4000\nsource = \"sae-j1128\"\n", `gauge.x.gauge: read "14"; want a gauge that is not in the table already`},
		{"sources are a number", "source = 3\n", `my.toml:1: source: read "3"; want named sources`},
		{"source is a number", "[source]\nx = 3\n", `my.toml:2: source.x: read "3"; want a table with text and known`},
		{"growth crosses", "[child.x]\nage_y=[2,3]\np5_kg=[10,11]\np50_kg=[9,12]\np95_kg=[20,21]\nsource=\"who-growth\"\n", `child.x.p50_kg: read "10, 9 and 20 at 2 years"; want p5 <= p50 <= p95`},
		{"brackets in long strings", "s = \"\"\"\n\n[[[[[[[[[[[[[[[[[[\"\"\"\nt = '''\n'''\nu = 'x\n", `my.toml:6: read "what is no TOML"; want a TOML file`},
		{"syntax", "[ground.x\n", `my.toml:1: read "what is no TOML"; want a TOML file: `},
		{"decimal comma", "x = 12,5\n", `my.toml:1: read "what is no TOML"; want a TOML file: `},
		{"control bytes", "\x00\xff\xfe", "my.toml"},
		{"too large", strings.Repeat("#", 257<<10), `my.toml: read "more than 256 KiB"; want a table file of at most 256 KiB`},
	} {
		_, err := tables.Builtin().Extend(strings.NewReader(c.text), "my.toml")
		var faults tables.Faults
		if !errors.As(err, &faults) || !strings.Contains(err.Error(), c.want) {
			t.Errorf("%s:\n got %v\nwant %s", c.name, err, c.want)
		}
	}
}

func TestFaultsAreToldInTheSameOrderEveryTime(t *testing.T) {
	text := "[ground.a]\n[joint.b]\n[motor.c]\n[fuse.d]\n[vehicle.e]\n[caution.f]\n[thermal.g]\n[child.h]\n[gauge.i]\n"
	_, first := tables.Builtin().Extend(strings.NewReader(text), "my.toml")
	for range 20 {
		_, again := tables.Builtin().Extend(strings.NewReader(text), "my.toml")
		if diff := cmp.Diff(first.Error(), again.Error()); diff != "" {
			t.Fatalf("errors differ between runs:\n%s", diff)
		}
	}
}

func TestManyFaultsAreCutShort(t *testing.T) {
	var text strings.Builder
	for range 200 {
		text.WriteString("[ground.g" + strings.Repeat("x", text.Len()%97+1) + strings.Repeat("y", text.Len()/97) + "]\n")
		if text.Len() > 20000 {
			break
		}
	}
	_, err := tables.Builtin().Extend(strings.NewReader(text.String()), "my.toml")
	var faults tables.Faults
	if !errors.As(err, &faults) || len(faults) > 51 || !strings.Contains(err.Error(), "more faults") {
		t.Errorf("%d faults", len(faults))
	}
}

func TestDeeplyNestedFilesAreRefusedOrReadInTime(t *testing.T) {
	for _, text := range []string{
		"a = " + strings.Repeat("[", 100_000),
		"a = " + strings.Repeat("{a=", 50_000),
		strings.Repeat("a.", 20_000) + "a = 1",
		"[" + strings.Repeat("a.", 20_000) + "a]",
		strings.Repeat("\"\".", 20_000) + "a = 1",
		"a = " + strings.Repeat("[\n", 100_000),
		"s = \"\\\"#[[\" \na = " + strings.Repeat("{ a = ", 40_000),
		strings.Repeat("a.b.c.d.e.f.g.h.i.j = 1\n", 10_000),
		strings.Repeat("[[a.b]]\n", 30_000),
	} {
		if _, err := tables.Builtin().Extend(strings.NewReader(text), "deep.toml"); err == nil {
			t.Errorf("%.20s...: taken in", text)
		}
	}
}

func TestAReaderThatFailsIsReported(t *testing.T) {
	if _, err := tables.Builtin().Extend(iotest.ErrReader(io.ErrUnexpectedEOF), "x.toml"); !errors.Is(err, io.ErrUnexpectedEOF) {
		t.Error(err)
	}
}

func FuzzExtend(f *testing.F) {
	f.Add(lawn)
	f.Add("[fuse.x]\nwhat=\"y\"\nsource=\"preece\"\n[fuse.x.gates]\nratio=[1,2]\nearliest_s=[1,1]\nlatest_s=[inf,2]\nsource=\"preece\"\n")
	f.Add("[[ground]]\n[ground.x]\n")
	f.Add("[motor.1]\nstall_a={range=[1,2,3],source=1}\n")
	f.Fuzz(func(t *testing.T, text string) {
		mine, err := tables.Builtin().Extend(strings.NewReader(text), "fuzz.toml")
		if (mine == nil) == (err == nil) {
			t.Fatalf("%v, %v", mine, err)
		}
		if err != nil {
			return
		}
		for _, form := range mine.FuseForms() {
			fuse, err := mine.Fuse(form)
			if err != nil || len(fuse.Gates) == 0 {
				t.Fatalf("fuse %q: %+v, %v", form, fuse, err)
			}
			fuse.HeatShare(40)
		}
		for _, g := range mine.Grounds() {
			if v := g.RollingCoefficient(0.1, false); !(v.Low > 0 && v.High < 10) {
				t.Fatalf("ground %+v", g)
			}
		}
	})
}
