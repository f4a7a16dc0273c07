package trials_test

import (
	"regexp"
	"slices"
	"strings"
	"testing"

	"example.org/packcheck/internal/quantity"
)

// A figure that a title tells is the finding's own, its limit, or one that the setup
// gives, and is rounded as reports round those: one figure, one number.
func TestTitlesRoundTheirFiguresAsReportsDo(t *testing.T) {
	t.Parallel()
	figure := regexp.MustCompile(`(\d[\d.]*) (V|A)\b`)
	seen := 0
	for name, r := range rigs() {
		t.Run(name, func(t *testing.T) {
			a, err := r.assess(64)
			if err != nil {
				t.Fatal(err)
			}
			var told []string
			for _, text := range r {
				told = append(told, figure.FindAllString(text, -1)...)
			}
			for _, f := range a.Findings {
				for _, m := range figure.FindAllStringSubmatch(f.Title, -1) {
					seen++
					kind := quantity.Voltage
					if m[2] == "A" {
						kind = quantity.Current
					}
					own := []string{quantity.Said(kind, f.Found), quantity.Said(kind, f.Limit), quantity.Said(kind, a.Pack.FullV), quantity.Said(kind, a.Pack.NominalV)}
					if f.Unit == m[2] && !slices.Contains(own, m[0]) && !slices.Contains(told, m[0]) && !strings.Contains(f.Title, "24 V at most") {
						t.Errorf("%s says %s, which is none of %v: %s", f.Code, m[0], own, f.Title)
					}
					if strings.HasSuffix(m[1], ".0") {
						t.Errorf("%s prints a zero that reports do not: %s", f.Code, f.Title)
					}
				}
			}
		})
	}
	if seen < 10 {
		t.Errorf("only %d figures were seen", seen)
	}
}
