package trials_test

import (
	"fmt"
	"maps"
	"os"
	"slices"
	"strconv"
	"strings"
	"testing"

	"example.org/packcheck/answer"
	"example.org/packcheck/internal/pattern"
)

// hair is how far every figure of a setup is moved, in parts of itself: as far as
// a careful reading is off, and more than any computation here is.
const hair = 0.005

// moved returns the setup with every plain figure that has a unit moved by a share
// of itself: ranges, words and what is printed on labels stay as they are.
func moved(r rig, share float64) rig {
	out := maps.Clone(r)
	for key, text := range r {
		number, unit, ok := strings.Cut(text, " ")
		x, err := strconv.ParseFloat(number, 64)
		if !ok || err != nil || !figureUnit.Get().MatchString(unit) || slices.Contains([]string{"fuse.rating", "wire.gauge", "fuse.max_voltage"}, key) {
			continue // those are sizes as sold
		}
		out[key] = fmt.Sprintf("%.6g %s", x*(1+share), unit)
	}
	return out
}

var figureUnit = pattern.New(`^(V|A|mA|C|km/h|kg|s|m|mm|mOhm|Ohm|h|min|rpm|%)$`)

// What a figure that is off by a hair would not show at all must not be a danger:
// between nothing and danger lies a milder level, or a margin.
func TestNothingTurnsIntoADangerByAHair(t *testing.T) {
	t.Parallel()
	for i, h := range hazards() {
		if h.least < answer.Danger || !tried(i) || i%24 != 0 && os.Getenv("PACKCHECK_SLOW") == "" {
			continue
		}
		t.Run(h.name, func(t *testing.T) {
			t.Parallel()
			told := rigNamed(t, h.base).but(h.set)
			as, err := told.assess(48)
			if err != nil {
				return
			}
			for _, share := range []float64{hair, -hair} {
				off, err := moved(told, share).assess(48)
				if err != nil {
					continue // above what a key may have: the other way is tried too
				}
				for _, one := range [][2]*answer.Assessment{{as, off}, {off, as}} {
					for _, f := range one[0].Findings {
						if f.Level == answer.Danger && !slices.ContainsFunc(one[1].Findings, func(g answer.Finding) bool { return g.Code == f.Code && g.Level > answer.Fine }) {
							t.Errorf("%s: danger or nothing for %+.1f %%: %.4g against %.4g %s, %s", f.Code, 100*share, f.Found, f.Limit, f.Unit, f.Title)
						}
					}
				}
			}
		})
	}
}
