package drive_test

import (
	"encoding/json"
	"math"
	"os"
	"os/exec"
	"testing"

	"example.org/packcheck/drive"
)

// spiceShare is how far launch and circuit simulator may differ: the figure
// that this package promises.
const spiceShare = 0.005

const recordedFile = "testdata/launch/recorded.json"

// recorded are the figures that ngspice 39 gave for the netlists beside them,
// written by UPDATE_RECORDED=1 go test -run Ngspice ./drive.
func recorded(t testing.TB) map[string]spiceFigures {
	t.Helper()
	text, err := os.ReadFile(recordedFile)
	if err != nil {
		t.Fatal(err)
	}
	var all map[string]spiceFigures
	if err := json.Unmarshal(text, &all); err != nil {
		t.Fatal(err)
	}
	return all
}

func agree(t *testing.T, name string, got, want spiceFigures) {
	t.Helper()
	got.each(want, func(what string, a, b float64) {
		if off := math.Abs(a/b - 1); !(off <= spiceShare) {
			t.Errorf("%s: %s: %.6g, ngspice %.6g: %.2f %% apart", name, what, a, b, 100*off)
		} else {
			t.Logf("%s: %s: %.6g, ngspice %.6g: %.4f %%", name, what, a, b, 100*off)
		}
	})
}

// Source: ngspice 39, a general-purpose circuit simulator, on the netlists
// under testdata/launch, which build the same launches from circuit elements.
func TestLaunchAgreesWithRecordedNgspice(t *testing.T) {
	want := recorded(t)
	for _, name := range netlists(t) {
		c := netlistCase(t, name)
		r := drive.Launch(&c, 6, nil)
		agree(t, name, figuresOf(r), want[name])
	}
}

func runSpice(t testing.TB, binary, name string) []byte {
	t.Helper()
	command := exec.Command(binary, "-b", name+".cir")
	command.Dir = "testdata/launch"
	out, err := command.CombinedOutput()
	if err != nil {
		t.Logf("ngspice %s: %v", name, err) // it ends with 1 after "quit" in batch mode on some builds
	}
	return out
}

func TestLaunchAgreesWithNgspiceRunNow(t *testing.T) {
	names := netlists(t)
	binary, err := exec.LookPath("ngspice")
	if err != nil {
		t.Skipf("ngspice is not installed: would have run %v and compared peak battery current, its time, "+
			"lowest bus voltage and speed after 1, 3 and 6 s; the recorded figures are tested instead", names)
	}
	fresh := map[string]spiceFigures{}
	for _, name := range names {
		fresh[name] = parseSpice(t, runSpice(t, binary, name))
	}
	if os.Getenv("UPDATE_RECORDED") != "" {
		text, err := json.MarshalIndent(fresh, "", "  ")
		if err != nil {
			t.Fatal(err)
		}
		if err := os.WriteFile(recordedFile, append(text, '\n'), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	for _, name := range names {
		c := netlistCase(t, name)
		r := drive.Launch(&c, 6, nil)
		agree(t, name, figuresOf(r), fresh[name])
		agree(t, name+" as recorded", recorded(t)[name], fresh[name])
	}
}
