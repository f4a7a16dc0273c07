package draws_test

import (
	"encoding/json"
	"math"
	"os"
	"os/exec"
	"testing"
)

// What testdata/posterior.py gave (scipy 1.10.1, dblquad, epsrel 1e-6), so that
// the comparison also holds where there is no scipy.
var bentByScipy = [5]float64{0.451791, 0.134514, 0.705817, 0.589624, 0.809758}

func TestBentCaseAgreesWithRecordedQuadrature(t *testing.T) {
	agreesWithBent(t, bentByScipy, "scipy")
	for i, v := range bentPosterior(0.01) {
		if math.Abs(v-bentByScipy[i]) > 2e-3 {
			t.Errorf("figure %d: the test's own grid has %.5f, scipy %.5f", i, v, bentByScipy[i])
		}
	}
}

func TestBentCaseAgreesWithScipy(t *testing.T) {
	if os.Getenv("PACKCHECK_SLOW") == "" {
		t.Skip("PACKCHECK_SLOW is not set: would have integrated the bent case with scipy and compared within four standard errors")
	}
	python := pythonWithScipy()
	if python == "" {
		t.Skip("no python3 with scipy: would have integrated the bent case with it and compared within four standard errors")
	}
	cmd := exec.Command(python, "testdata/posterior.py")
	cmd.Stderr = os.Stderr
	out, err := cmd.Output()
	if err != nil {
		t.Fatal(err)
	}
	var want [5]float64
	if err := json.Unmarshal(out, &want); err != nil {
		t.Fatal(err)
	}
	t.Logf("scipy: %.6f", want)
	agreesWithBent(t, want, "scipy")
	for i := range want {
		if math.Abs(want[i]-bentByScipy[i]) > 1e-5 {
			t.Errorf("figure %d: scipy has %.6f, recorded was %.6f", i, want[i], bentByScipy[i])
		}
	}
}

func pythonWithScipy() string {
	for _, name := range []string{"python3", "/usr/bin/python3"} {
		path, err := exec.LookPath(name)
		if err == nil && exec.Command(path, "-c", "import scipy.integrate").Run() == nil {
			return path
		}
	}
	return ""
}
