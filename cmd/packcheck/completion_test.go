package main

import (
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strings"
	"testing"
)

func TestWhatMayComeNextIsKnown(t *testing.T) {
	for line, want := range map[string][]string{
		"packcheck exp":                                 {"explain", filesToo},
		"packcheck --form":                              {"--format"},
		"packcheck cart.toml --format m":                {"markdown"},
		"packcheck --format=h":                          {"html"},
		"packcheck a.toml b.t":                          {filesToo},
		"packcheck --set rider.":                        {"rider.mass=", "rider.age=", "rider.count="},
		"packcheck --set controller.kind=":              {"controller.kind=contacts", "controller.kind=chopper"},
		"packcheck --set vehicle.has_board=t":           {"vehicle.has_board=true"},
		"packcheck --set original.pack.chemistry=agm-":  {"original.pack.chemistry=agm-traction", "original.pack.chemistry=agm-battery"},
		"packcheck cart.toml --set rider.ag":            {"rider.age="},
		`packcheck --set "rider.age=5 y`:                {"rider.age=5 years"},
		"packcheck --pack o":                            {ownPack},
		"packcheck --way ":                              {"A", "B", "C"},
		"packcheck --draws ":                            nil,
		"packcheck --trace ":                            {filesToo},
		"packcheck explain ":                            findingCodes(),
		"packcheck explain " + findingCodes()[0]:        {findingCodes()[0]},
		"packcheck explain " + findingCodes()[0] + " f": nil,
		"packcheck ask runt":                            {"runtime"},
		"packcheck ask runtime ":                        nil,
		"packcheck keys contr":                          {"controls", "controller"},
		"packcheck help co":                             {"compare", "completion"},
		"packcheck completion z":                        {"zsh"},
		"packcheck batch --w":                           {"--ways"},
		"packcheck fit --discharge ":                    {"plus", "minus"},
		"packcheck fit log.c":                           {filesToo},
		"packcheck sources ":                            nil,
		"packcheck":                                     nil,
		"":                                              nil,
	} {
		var got []string
		for _, c := range candidates(line, streams{}) {
			got = append(got, c.word)
		}
		if !slices.Equal(got, want) {
			t.Errorf("%q: %q, want %q", line, got, want)
		}
	}
}

// Every option and command can be completed: none is forgotten when one is added.
func TestEveryOptionAndCommandIsCompleted(t *testing.T) {
	has := func(line, word string) bool {
		return slices.ContainsFunc(candidates(line, streams{}), func(c candidate) bool { return c.word == word })
	}
	for _, f := range assessFlags() {
		if !has("packcheck --", "--"+f.Names()[0]) {
			t.Errorf("--%s is not completed", f.Names()[0])
		}
	}
	for _, c := range commands(streams{}, nil) {
		if !has("packcheck ", c.Name) {
			t.Errorf("%s is not completed", c.Name)
		}
		for _, f := range c.Flags {
			if !has("packcheck "+c.Name+" --", "--"+f.Names()[0]) {
				t.Errorf("%s --%s is not completed", c.Name, f.Names()[0])
			}
		}
	}
}

func FuzzCompletionNeverPanics(f *testing.F) {
	for _, seed := range []string{"", "packcheck ", `packcheck --set "a=`, `x '\`, "packcheck --", "packcheck --=", "packcheck --set =", "packcheck -- x"} {
		f.Add(seed)
	}
	f.Fuzz(func(t *testing.T, line string) {
		for _, c := range candidates(line, streams{}) {
			if c.word == "" || strings.ContainsAny(c.word, "\n\t") {
				t.Errorf("%q: %q", line, c.word)
			}
		}
	})
}

// The shells themselves are asked; where one is not there, its script is not tried.
func TestTheShellsShowWhatMayComeNext(t *testing.T) {
	folder := asCommand(t)
	ask := map[string]string{
		"bash": `source SCRIPT; COMP_LINE="$1"; COMP_POINT=${#COMP_LINE}; read -ra COMP_WORDS <<<"${1//=/ = }"; COMP_CWORD=$((${#COMP_WORDS[@]} - 1)); _packcheck; printf '%s\n' "${COMPREPLY[@]}"`,
		"zsh":  `compdef() { }; _files() { print FILES }; compadd() { print -l -- "${@:#-*}" }; source SCRIPT; BUFFER="$1"; CURSOR=${#BUFFER}; _packcheck`,
		"fish": `source SCRIPT; complete -C $argv[1]`,
	}
	for _, s := range shells() {
		program, err := exec.LookPath(s.name)
		if err != nil {
			if os.Getenv("PACKCHECK_SLOW") != "" {
				t.Errorf("there is no %s, which .ci/run installs", s.name)
			}
			t.Logf("no %s: would ask it for completions", s.name)
			continue
		}
		script := filepath.Join(t.TempDir(), "completion")
		if err := os.WriteFile(script, []byte(s.script), 0o644); err != nil {
			t.Fatal(err)
		}
		for line, want := range map[string]string{
			"packcheck expl":                      "explain",
			"packcheck --set rider.a":             "rider.age=",
			"packcheck cart.toml --format ht":     "html",
			"packcheck --set controller.kind=cho": "chopper",
			"packcheck ask runt":                  "runtime",
		} {
			args := []string{"-c", strings.ReplaceAll(ask[s.name], "SCRIPT", script), s.name, line}
			if s.name == "fish" {
				args = slices.Delete(args, 2, 3)
			}
			cmd := exec.Command(program, args...)
			cmd.Env = append(os.Environ(), "PATH="+folder+":"+os.Getenv("PATH"), "HOME="+t.TempDir())
			out, err := cmd.CombinedOutput()
			words := strings.Fields(string(out))
			found := slices.ContainsFunc(words, func(w string) bool { return strings.TrimPrefix(w, "controller.kind=") == want })
			if err != nil || !found {
				t.Errorf("%s, %q: want %q, got %v %s", s.name, line, want, err, out)
			}
		}
	}
}
