package setup_test

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/google/go-cmp/cmp/cmpopts"

	"example.org/packcheck/setup"
)

func TestFilesThatASetupNamesAreReadFromItsFolder(t *testing.T) {
	dir := t.TempDir()
	write := func(name, text string) string {
		t.Helper()
		path := filepath.Join(dir, name)
		if err := os.WriteFile(path, []byte(text), 0o600); err != nil {
			t.Fatal(err)
		}
		return path
	}
	write("log.csv", "seconds;amperes\n0;1,5\n10;3\n# rest\n15;0\n")
	write("mine.toml", "[source.my-test]\ntext = \"Coast-down on the allotment path, three runs\"\nknown = \"measured\"\n"+
		"[ground.allotment-path]\nwords = [\"our path\"]\nrolling_mm = [6.0, 7.0, 8.0]\ngrip_hard = [0.2, 0.3, 0.4]\ngrip_rubber = [0.4, 0.5, 0.6]\nsource = \"my-test\"\n")
	load := func(text string) (*setup.Parts, error) {
		s, err := setup.Load(write("s.toml", text))
		if err != nil {
			t.Fatal(err)
		}
		return s.Parts()
	}
	p, err := load("[pack]\nlabel = \"12 V 7 Ah\"\n[load]\npattern = \"log.csv\"\n")
	if err != nil {
		t.Fatal(err)
	}
	if d := cmp.Diff([]setup.Demand{{Seconds: 10, CurrentA: 1.5}, {Seconds: 5, CurrentA: 3}}, p.Bench.Pattern, cmpopts.EquateApprox(1e-12, 0)); d != "" {
		t.Errorf("pattern: -want +got\n%s", d)
	}
	if p.Vehicle != nil || p.Motors != nil || p.Wire != nil {
		t.Error("a bench load has no vehicle")
	}
	if p, err = load("tables_file = \"mine.toml\"\n[vehicle]\nground = \"our path\"\n[pack]\nlabel = \"12 V 7 Ah\"\n"); err != nil {
		t.Fatal(err)
	}
	if p.Vehicle.RollingM.Likely != 0.007 || p.Vehicle.RollingM.Source != "my-test" {
		t.Errorf("own ground: %+v", p.Vehicle.RollingM)
	}
	if src, ok := p.Source("my-test"); !ok || src.Known != "measured" {
		t.Errorf("own source: %+v", src)
	}
	for _, c := range []struct{ text, file, want string }{
		{"[pack]\nlabel = \"12 V 7 Ah\"\n[load]\npattern = \"none.csv\"\n", "", `load.pattern: read "none.csv"; want a file that can be read (no such file or directory)`},
		{"[pack]\nlabel = \"12 V 7 Ah\"\n[load]\npattern = \".\"\n", "", `load.pattern: read "."; want a file that can be read (not a plain file)`},
		{"[pack]\nlabel = \"12 V 7 Ah\"\n[load]\npattern = \"bad.csv\"\n", "0,1\n5,2\n1,2\n", `bad.csv:3: load.pattern, column 1: read "a time 4.000 s before that of the row above"; want rows in the order of time`},
		{"[pack]\nlabel = \"12 V 7 Ah\"\n[load]\npattern = \"bad.csv\"\n", "0,1\nten,2\n", `bad.csv:2: load.pattern, column 1: read "ten"; want a time: seconds, hh:mm:ss or a date with a time`},
		{"[pack]\nlabel = \"12 V 7 Ah\"\n[load]\npattern = \"bad.csv\"\n", "0,1\n", `bad.csv: load.pattern: read "rows of numbers: 1"; want at least two`},
		{"[pack]\nlabel = \"12 V 7 Ah\"\nchemistry_file = \"bad.csv\"\n", "x = " + strings.Repeat("[", 50_000), `want a file that can be read (line 1: values are nested more than 8 deep)`},
		{"[pack]\nlabel = \"12 V 7 Ah\"\nchemistry_file = \"bad.csv\"\n", "# " + strings.Repeat("x", 1<<20), `want a file that can be read (larger than 1 MiB)`},
		{"tables_file = \"bad.csv\"\n[pack]\nlabel = \"12 V 7 Ah\"\n", "[ground.x]\nrolling_mm = 3\n", filepath.Join(dir, "bad.csv") + `:2: ground.x.rolling_mm: read "3"; want [low, likely, high]`},
		{"tables_file = \"bad.csv\"\n[pack]\nlabel = \"12 V 7 Ah\"\n", "a note\n", filepath.Join(dir, "bad.csv") + `:1: read "what is no TOML"; want a TOML file: `},
		{"[pack]\nlabel = \"12 V 7 Ah\"\nchemistry_file = \"bad.csv\"\n", "a note\n", filepath.Join(dir, "bad.csv") + `:1: read "what is no TOML"; want a TOML file: `},
		{"[pack]\nlabel = \"12 V 7 Ah\"\nchemistry_file = \"bad.csv\"\n", "[chemistry.mine]\ncolour = 1\n", filepath.Join(dir, "bad.csv") + `:2: chemistry.mine.colour: read "colour"; want one of `},
	} {
		write("bad.csv", c.file)
		if _, err := load(c.text); err == nil || !strings.Contains(err.Error(), c.want) {
			t.Errorf("%.60q:\ngot  %v\nwant %s", c.file, err, c.want)
		}
	}
}

// A stranger's file must not have others read, by whatever name, nor wait for
// what nobody sends.
func TestNoFileLeadsOutOfTheFolderUnlessAllowed(t *testing.T) {
	top := t.TempDir()
	dir := filepath.Join(top, "own")
	if err := os.MkdirAll(filepath.Join(dir, "below"), 0o700); err != nil {
		t.Fatal(err)
	}
	log := []byte("0;1\n10;3\n15;0\n")
	for _, name := range []string{"own/in.csv", "own/below/in.csv", "out.csv"} {
		if err := os.WriteFile(filepath.Join(top, name), log, 0o600); err != nil {
			t.Fatal(err)
		}
	}
	if err := os.Symlink("../out.csv", filepath.Join(dir, "link.csv")); err != nil {
		t.Skip("no links here: ", err)
	}
	t.Chdir(dir)
	for how, make := range map[string]func(c setup.Changes) (*setup.Setup, error){
		"read": func(c setup.Changes) (*setup.Setup, error) {
			return setup.ReadWith(strings.NewReader("[pack]\nlabel = \"12 V 7 Ah\"\n[load]\npattern = \"in.csv\"\n"), "sent", c)
		},
		"of keys": func(c setup.Changes) (*setup.Setup, error) {
			return setup.OfWith(map[string]string{"pack.label": "12 V 7 Ah", "load.pattern": "in.csv"}, "sent", c)
		},
	} {
		for dir, opens := range map[string]bool{"": false, ".": true, "..": false} {
			s, err := make(setup.Changes{Dir: dir})
			if err == nil {
				_, err = s.Parts()
			}
			if (err == nil) != opens || dir == "" && !strings.Contains(err.Error(), "no folder to look in") {
				t.Errorf("%s, in folder %q: %v", how, dir, err)
			}
		}
	}
	for name, inside := range map[string]bool{
		"in.csv": true, "below/in.csv": true, "below/../in.csv": true, filepath.Join(dir, "in.csv"): true,
		"../out.csv": false, "below/../../out.csv": false, filepath.Join(top, "out.csv"): false, "link.csv": false,
	} {
		s, err := setup.Of(map[string]string{"pack.label": "12 V 7 Ah", "load.pattern": name})
		if err != nil {
			t.Fatal(err)
		}
		s.Dir = dir
		if _, err := s.Parts(); (err == nil) != inside || err != nil && !strings.Contains(err.Error(), "outside the setup's own folder") {
			t.Errorf("%s: %v", name, err)
		}
		if s, err = s.Change(setup.Changes{AnyFolder: true}); err != nil {
			t.Fatal(err)
		}
		if _, err := s.Parts(); err != nil {
			t.Errorf("%s, allowed: %v", name, err)
		}
	}
}
