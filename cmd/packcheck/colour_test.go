package main

import (
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"example.org/packcheck/report"
)

// Without its escapes a painted report is the plain one, so that nothing is said by
// colour alone.
func TestColourAddsNothingToTheWords(t *testing.T) {
	plain, _ := judged(t, "testdata/setups/danger.toml", "--draws", "16")
	coloured := inColour(plain)
	if got := regexp.MustCompile("\x1b\\[[0-9;]*m").ReplaceAllString(coloured, ""); got != plain {
		t.Errorf("differs without escapes:\n%s", got)
	}
	for _, want := range []string{red + "NO" + plainAgain + ":", bold + "Why:" + plainAgain, bold + "SAFETY" + plainAgain, red + "Danger" + plainAgain} {
		if !strings.Contains(coloured, want) {
			t.Errorf("lacks %q", want)
		}
	}
	for word, colour := range map[string]string{"YES: x": green, "YES, WITH CARE: x": green, "NOT YET: x": yellow, "NO: x": red} {
		if got := inColour(word + "\n"); !strings.HasPrefix(got, colour+strings.TrimSuffix(word, ": x")+plainAgain) {
			t.Errorf("%s: %q", word, got)
		}
	}
}

func TestWhatIsNoTerminalGetsNoColour(t *testing.T) {
	file, err := os.CreateTemp(t.TempDir(), "")
	if err != nil {
		t.Fatal(err)
	}
	defer file.Close()
	var b strings.Builder
	if painted("NO: x\n", report.FormatText, file) != "NO: x\n" || painted("NO: x\n", report.FormatText, &b) != "NO: x\n" {
		t.Error("painted without a terminal")
	}
}

func TestATerminalGetsColourUnlessToldOtherwise(t *testing.T) {
	script, err := exec.LookPath("script")
	if err != nil {
		t.Skip("no script command: would look at colours on a pseudo-terminal")
	}
	path := asCommand(t)
	for set, want := range map[string]bool{"NO_COLOR=": true, "NO_COLOR=1": false, "TERM=dumb": false} {
		cmd := exec.Command(script, "-qec", path+"/packcheck testdata/setups/fine.toml --draws 16", "/dev/null")
		cmd.Env = append(os.Environ(), "TERM=xterm", "NO_COLOR=", set)
		out, err := cmd.CombinedOutput()
		if err != nil {
			t.Fatalf("%v\n%s", err, out)
		}
		if got := strings.Contains(string(out), green+"YES"+plainAgain); got != want || !strings.Contains(string(out), "YES") {
			t.Errorf("%q: colours %v, want %v\n%s", set, got, want, out)
		}
	}
}

// asCommand returns a folder in which this test is the command packcheck: see
// TestMain.
func asCommand(t *testing.T) string {
	t.Helper()
	self, err := os.Executable()
	if err != nil {
		t.Fatal(err)
	}
	folder := t.TempDir()
	if err := os.Symlink(self, filepath.Join(folder, "packcheck")); err != nil {
		t.Fatal(err)
	}
	return folder
}
