package main

import (
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"github.com/rogpeppe/go-internal/testscript"
)

func TestMain(m *testing.M) {
	testscript.Main(m, map[string]func(){"packcheck": main})
}

// UPDATE_GOLDEN=1 writes what the scripts compare against anew.
func TestCommandDoesWhatItsScriptsSay(t *testing.T) {
	testscript.Run(t, testscript.Params{
		Dir:                 "testdata/script",
		RequireExplicitExec: true,
		RequireUniqueNames:  true,
		UpdateScripts:       os.Getenv("UPDATE_GOLDEN") != "",
		Setup: func(env *testscript.Env) error {
			root, err := os.Getwd()
			if err != nil {
				return err
			}
			env.Setenv("SETUPS", filepath.Join(root, "testdata", "setups"))
			return nil
		},
		Condition: func(cond string) (bool, error) {
			switch cond {
			case "devfull":
				_, err := os.Stat("/dev/full")
				return err == nil, nil
			case "bash":
				_, err := os.Stat("/bin/bash")
				return err == nil, nil
			}
			return false, nil
		},
	})
}

func TestHelpNamesEveryOptionAndCommand(t *testing.T) {
	text := helpText()
	for _, f := range assessFlags() {
		if name := "--" + f.Names()[0]; !strings.Contains(text, name) {
			t.Errorf("help lacks %s", name)
		}
	}
	for _, c := range commands(streams{}, nil) {
		if c.Name != "help" && !strings.Contains(text, "packcheck "+c.Name) {
			t.Errorf("help lacks the command %s", c.Name)
		}
	}
	for i, line := range strings.Split(text, "\n") {
		if len(line) > 80 || regexp.MustCompile(`[^ -~]`).MatchString(line) {
			t.Errorf("help line %d is wider than a terminal or not ASCII: %q", i+1, line)
		}
	}
}

// The setup in the help must be one that works: people will type it in.
func TestTheExampleInTheHelpIsASetup(t *testing.T) {
	setup := helpExample(t)
	var out, errs strings.Builder
	code := run([]string{"-", "--draws", "32"}, strings.NewReader(setup), &out, &errs)
	if code > exitFix || errs.Len() > 0 || !strings.HasPrefix(out.String(), "N") {
		t.Errorf("code %d, stderr %q, stdout %q", code, errs.String(), out.String())
	}
}

// helpExample returns the indented setup of the help text.
func helpExample(t *testing.T) string {
	t.Helper()
	var lines []string
	for line := range strings.Lines(helpText()) {
		indented, ok := strings.CutPrefix(line, "    ")
		switch {
		case ok && strings.HasPrefix(indented, "packcheck"):
			return strings.Join(lines, "")
		case ok:
			lines = append(lines, indented)
		}
	}
	t.Fatal("the help text has no example")
	return ""
}

func TestFlagsMayStandAnywhere(t *testing.T) {
	for _, tt := range []struct {
		args string
		want string // what the library gets, or the error
	}{
		{"f.toml --short", "--short -- f.toml"},
		{"--format json f.toml --short", "--format json --short -- f.toml"},
		{"f.toml --format=json", "--format=json -- f.toml"},
		{"f.toml -format json", "-format json -- f.toml"},
		{"-", "-- -"},
		{"- --short", "--short -- -"},
		{"--short -- --odd.toml", "--short -- --odd.toml"},
		{"--help", "--help"},
		{"f.toml --short --help", "--help"},
		{"keys", "keys --"},
		{"keys --help", "keys --help --"},
		{"sources extra", "sources -- extra"},
		{"f.toml --shrt", "unknown option --shrt (there are --format, --full, --short, --pack, --set, --draws, --trace, --trace-launch, --write-setup, --way, --overwrite, --any-folder, --version, --help)"},
		{"f.toml --format", "--format needs a value behind it"},
		{"f.toml --trace --short", "--trace needs a value behind it"},
		{"--short keys", `--short does not go with "keys": put the options of a command behind its name; a setup file of that name is ./keys`},
		{"keys --short", "unknown option --short (this command has none)"},
		{"---", "unknown option --- (there are --format, --full, --short, --pack, --set, --draws, --trace, --trace-launch, --write-setup, --way, --overwrite, --any-folder, --version, --help)"},
	} {
		verdict := 0
		app := newApp(streams{}, &verdict)
		got, err := flagsFirst(app, strings.Fields(tt.args))
		text := strings.Join(got, " ")
		if err != nil {
			text = err.Error()
		}
		if text != tt.want {
			t.Errorf("%q: got %q, want %q", tt.args, text, tt.want)
		}
	}
}

func FuzzArgumentsNeverPanic(f *testing.F) {
	for _, seed := range []string{"", "-", "--", "--format", "a b", "keys --help", "--short=maybe x", "--trace= x", "help me", "---x", "-=", "fit"} {
		f.Add(seed)
	}
	f.Fuzz(func(t *testing.T, line string) {
		args := strings.Fields(line)
		for _, a := range args {
			if strings.Contains(a, "trace") || !strings.HasPrefix(a, "-") && a != "keys" && a != "sources" {
				t.Skip("would touch files")
			}
		}
		var out, errs strings.Builder
		code := run(args, strings.NewReader("title = \"x\"\nunknown = 1\n"), &out, &errs)
		if code < exitFine || code > exitOther {
			t.Errorf("%q: code %d", args, code)
		}
		if code > exitFix && (out.Len() > 0 || errs.Len() == 0) {
			t.Errorf("%q: code %d with stdout %q and stderr %q", args, code, out.String(), errs.String())
		}
		if code == exitFine && errs.Len() > 0 {
			t.Errorf("%q: code 0 with stderr %q", args, errs.String())
		}
	})
}

// A start builds only the commands that it names.
func TestOnlyTheCommandThatIsNamedIsBuilt(t *testing.T) {
	for _, c := range commands(streams{}, nil) {
		got := commandsNamed(streams{}, nil, func(name string) bool { return name == c.Name })
		if len(got) != 1 || got[0].Name != c.Name {
			t.Errorf("%d commands are built for %q, want that one", len(got), c.Name)
		}
	}
}
