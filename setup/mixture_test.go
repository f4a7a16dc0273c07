package setup_test

import (
	"math"
	"testing"

	"example.org/packcheck/setup"
)

// Three packs in four whose maker is not told are the maker's own or honest, the
// fourth is a look-alike (tables/data/battery.toml): a fifth of them holds less
// than three quarters of the label, and the others are as honest as the maker's.
func TestAPackOfUnknownMakerIsOneOfTwoKinds(t *testing.T) {
	honesty := func(maker string) *setup.Figure {
		values := map[string]string{"pack.label": "20 V max 5 Ah", "load.current": "5 A"}
		if maker != "" {
			values["pack.maker"] = maker
		}
		return &partsOf(t, values).Pack.Honesty
	}
	own, look, either := honesty("own"), honesty("look-alike"), honesty("")
	share := func(f *setup.Figure, below float64) float64 {
		n := 0
		const all = 4000
		for i := range all {
			if f.At(math.Sqrt2*math.Erfinv(2*(float64(i)+0.5)/all-1)) < below {
				n++
			}
		}
		return float64(n) / all
	}
	for _, below := range []float64{0.4, 0.5, 0.6, 0.75, 0.9, 1, 1.05} {
		want := 0.75*share(own, below) + 0.25*share(look, below)
		if got := share(either, below); math.Abs(got-want) > 0.005 {
			t.Errorf("%.1f %% hold less than %g of the label, want %.1f %%", 100*got, below, 100*want)
		}
	}
	if math.Abs(either.Low-either.At(-1.6448536269514722)) > 1e-3 || !(either.Low < look.Likely && either.Likely > 0.9) {
		t.Errorf("range %v", either.Range)
	}
}
