package literal_test

import (
	"go/format"
	"math"
	"strings"
	"testing"

	"example.org/packcheck/internal/literal"
)

type row struct {
	Name    string
	Words   []string
	Curve   []float64
	Points  []point
	nested  point
	isOpen  bool
	Figures pair[point]
	Count   int
}

type point struct{ X, Y float64 }

type pair[V any] struct{ A, B V }

const here = "example.org/packcheck/internal/literal_test"

func TestAValueIsWrittenAsGoWouldHaveIt(t *testing.T) {
	for _, c := range []struct {
		name  string
		value any
		want  string
	}{
		{"zero fields are left out", row{Name: "hub \"brass\""}, `row{Name: "hub \"brass\""}`},
		{"unexported fields are read", row{nested: point{X: 0.1}, isOpen: true}, `row{nested: point{X: 0.1}, isOpen: true}`},
		{"empty is not nil", row{Words: []string{}}, `row{Words: []string{}}`},
		{"numbers read back as they were", []float64{1, 0.1, 1e-9, 1.0 / 3}, `[]float64{1, 0.1, 1e-09, 0.3333333333333333}`},
		{"types inside of a list are not repeated", []point{{1, 2}}, `[]point{{X: 1, Y: 2}}`},
		{"generic", row{Figures: pair[point]{A: point{X: 1}}, Count: -3}, `row{Figures: pair[point]{A: point{X: 1}}, Count: -3}`},
	} {
		if got, err := literal.Value(c.value, here); got != c.want || err != nil {
			t.Errorf("%s: %s, %v, want %s", c.name, got, err, c.want)
		}
	}
}

func TestTypesOfOtherPackagesAreNamedWithTheirs(t *testing.T) {
	got, err := literal.Value(row{Figures: pair[point]{A: point{X: 1}}}, "example.org/elsewhere")
	if want := `literal_test.row{Figures: literal_test.pair[literal_test.point]{A: literal_test.point{X: 1}}}`; got != want || err != nil {
		t.Errorf("%s, %v, want %s", got, err, want)
	}
}

func TestLongValuesAreBrokenIntoLinesThatStandAsTheFormatterPutsThem(t *testing.T) {
	long := row{Name: strings.Repeat("long ", 20), Words: []string{"a"}}
	for i := range 60 {
		long.Curve = append(long.Curve, float64(i)/7)
		long.Points = append(long.Points, point{float64(i), 1})
	}
	text, err := literal.Value([]row{long, {Name: "short"}}, here)
	if err != nil {
		t.Fatal(err)
	}
	source := "package p\n\nvar all = " + text + "\n"
	formatted, err := format.Source([]byte(source))
	if err != nil || strings.Count(text, "\n") < 10 {
		t.Fatalf("%v\n%s", err, text)
	}
	for line := range strings.Lines(source) {
		if len(line) > 140 {
			t.Errorf("a line of %d: %s", len(line), line)
		}
	}
	if string(formatted) != source && !strings.Contains(string(formatted), "Curve: []float64{\n") {
		t.Errorf("lists are not broken:\n%s", formatted)
	}
}

func TestWhatHasNoPlainFormIsRefused(t *testing.T) {
	for _, v := range []any{math.NaN(), math.Inf(1), map[string]int{}, new(int), []any{1}, struct{ F func() }{func() {}}} {
		if got, err := literal.Value(v, here); err == nil {
			t.Errorf("%T was written as %s", v, got)
		}
	}
}
