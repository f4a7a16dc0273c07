package tables_test

import (
	"errors"
	"math"
	"strings"
	"testing"

	"example.org/packcheck/tables"
)

func TestChildMassFollowsTheGrowthCharts(t *testing.T) {
	// WHO Child Growth Standards 2006 and Reference 2007, CDC 2000; 0.1 kg.
	for _, c := range []struct {
		chart    string
		age      float64
		p50, p95 float64
	}{
		{"who-boys", 3, 14.3, 17.5},
		{"who-boys", 5, 18.3, 22.8},
		{"who-boys", 7, 22.9, 29.1},
		{"cdc-boys", 3, 14.3, 17.4},
		{"cdc-boys", 5, 18.4, 23.4},
		{"cdc-boys", 7, 23.1, 30.7},
		{"who-girls", 7, 22.4, 29.5},
		{"cdc-girls", 8, 25.6, 36.0},
	} {
		got, err := tables.Builtin().GrowthChart(c.chart, c.age)
		if err != nil {
			t.Fatal(err)
		}
		near(t, c.chart+" median", got.P50KG, c.p50, 0.1)
		near(t, c.chart+" P95", got.P95KG, c.p95, 0.1)
	}
}

func TestChildMassAgreesWithTheLMSFormula(t *testing.T) {
	// X = M (1 + L S z)^(1/L) with the published L, M, S of WHO Reference 2007;
	// 0.05 kg, the last printed digit.
	const z95 = 1.6448536
	for _, c := range []struct {
		chart   string
		age     float64
		l, m, s float64
	}{
		{"who-boys", 7, -0.4402, 22.8915, 0.13759},
		{"who-boys", 5, -0.1922, 18.3328, 0.12947},
		{"who-girls", 7, -0.5347, 22.374, 0.15556},
	} {
		got, err := tables.Builtin().GrowthChart(c.chart, c.age)
		if err != nil {
			t.Fatal(err)
		}
		x := func(z float64) float64 { return c.m * math.Pow(1+c.l*c.s*z, 1/c.l) }
		near(t, c.chart+" P5", got.P5KG, x(-z95), 0.05)
		near(t, c.chart+" P50", got.P50KG, x(0), 0.05)
		near(t, c.chart+" P95", got.P95KG, x(z95), 0.05)
	}
}

func TestChildMassSpansAllCharts(t *testing.T) {
	last := tables.ChildMass{}
	for age := 2.0; age <= 14; age += 0.25 {
		c, err := tables.Builtin().ChildMass(age)
		if err != nil || c.Clamped || c.Note != "" {
			t.Fatalf("%g years: %+v, %v", age, c, err)
		}
		if !(c.P5KG < c.P50KG && c.P50KG < c.P95KG) || c.P5KG < last.P5KG || c.P50KG < last.P50KG || c.P95KG < last.P95KG {
			t.Errorf("%g years: %+v after %+v", age, c, last)
		}
		charts := []string{"who-boys", "who-girls", "cdc-boys", "cdc-girls"}
		if age > 8 {
			charts = []string{"cdc-older-boys", "cdc-older-girls"}
		}
		for _, chart := range charts {
			g, err := tables.Builtin().GrowthChart(chart, age)
			if err != nil || g.P5KG < c.P5KG || g.P95KG > c.P95KG {
				t.Errorf("%g years: %s %+v lies outside %+v, %v", age, chart, g, c, err)
			}
		}
		last = c
	}
}

// A rider of 12 was given the mass of one of 8: 19.5 to 36 kg. The CDC charts of 2000 have a
// median of 40 to 42 kg there, and their own rows at 8 years are where the older ones begin.
func TestAnOlderChildIsHeavier(t *testing.T) {
	c, err := tables.Builtin().ChildMass(12)
	if err != nil || c.Clamped {
		t.Fatalf("%+v, %v", c, err)
	}
	if c.P50KG < 39.5 || c.P50KG > 42.5 || c.P5KG > 31 || c.P95KG < 60 {
		t.Errorf("at 12 years: %+v", c)
	}
	for _, sex := range []string{"boys", "girls"} {
		young, err1 := tables.Builtin().GrowthChart("cdc-"+sex, 8)
		older, err2 := tables.Builtin().GrowthChart("cdc-older-"+sex, 8)
		if err := errors.Join(err1, err2); err != nil {
			t.Fatal(err)
		}
		near(t, sex+" P5", older.P5KG, young.P5KG, 1e-9)
		near(t, sex+" P50", older.P50KG, young.P50KG, 1e-9)
		near(t, sex+" P95", older.P95KG, young.P95KG, 1e-9)
	}
}

func TestChildMassOutsideTheChartsSaysSo(t *testing.T) {
	for age, word := range map[float64]string{1: "lighter", 15: "heavier", 18: "heavier"} {
		c, err := tables.Builtin().ChildMass(age)
		if err != nil || !c.Clamped || !strings.Contains(c.Note, word) {
			t.Errorf("%g years: %+v, %v", age, c, err)
		}
	}
	for _, age := range []float64{-1, 19, math.NaN(), math.Inf(1)} {
		if _, err := tables.Builtin().ChildMass(age); !errors.Is(err, tables.ErrNotFound) {
			t.Errorf("%g years: %v", age, err)
		}
	}
	for _, c := range []struct {
		chart string
		age   float64
	}{{"who-boys", 1}, {"who-boys", 9}, {"moon", 3}} {
		if _, err := tables.Builtin().GrowthChart(c.chart, c.age); !errors.Is(err, tables.ErrNotFound) {
			t.Errorf("%s %g: %v", c.chart, c.age, err)
		}
	}
}
