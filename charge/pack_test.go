package charge_test

import (
	"testing"

	"example.org/packcheck/answer"
	"example.org/packcheck/battery"
	"example.org/packcheck/charge"
	"example.org/packcheck/chemistry"
)

// profile returns a built-in chemistry or fails the test.
func profile(t testing.TB, name string) chemistry.Profile {
	t.Helper()
	p, ok := chemistry.Builtin().Profile(name)
	if !ok {
		t.Fatalf("no chemistry %q", name)
	}
	return p
}

// pack makes a model of a built-in chemistry or fails the test.
func pack(t testing.TB, name string, cells int, ah float64) *battery.Model {
	t.Helper()
	return model(t, battery.Spec{Profile: profile(t, name), CellsInSeries: cells, CapacityAh: ah})
}

func model(t testing.TB, s battery.Spec) *battery.Model {
	t.Helper()
	m, err := battery.New(s)
	if err != nil {
		t.Fatal(err)
	}
	return m
}

// charger reads a label and fails the test when it cannot.
func charger(t testing.TB, label string) charge.Charger {
	t.Helper()
	l, err := charge.ParseLabel(label)
	if err != nil {
		t.Fatal(err)
	}
	return l.Charger()
}

// find returns the finding of the given code, ok when it is there.
func find(fs []answer.Finding, code string) (f answer.Finding, ok bool) {
	for _, f := range fs {
		if f.Code == code {
			return f, true
		}
	}
	return answer.Finding{}, false
}
