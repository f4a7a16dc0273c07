package setup_test

import (
	"math"
	"slices"
	"strings"
	"testing"

	"example.org/packcheck/internal/draws"
	"example.org/packcheck/setup"
)

// Draws that are moved by what is told of their class lie where draws lie that are
// weighed by it (importance sampling, errors of the time by Student's law with four degrees
// of freedom): time, heat, the speed and the motors' no-load current.
func TestDrawsMovedByWhatIsToldLieWhereWeighedOnesDo(t *testing.T) {
	for name, text := range map[string]string{
		"two motors behind a pedal":           "[vehicle]\nhas_board = false\nground = \"asphalt\"\n[motors]\ncount = 2\ncan = \"ride-on 550\"\nwiring = \"parallel\"\n[pack]\nlabel = \"12 V 7 Ah\"\nage = \"new\"\n[controller]\nkind = \"contacts\"\n",
		"two small ones on an unknown ground": "[vehicle]\nhas_board = true\n[motors]\ncount = 2\ncan = \"ride-on 390\"\nwiring = \"parallel\"\n[pack]\nlabel = \"12 V 9.5 Ah\"\nage = \"new\"\n[controller]\nkind = \"contacts\"\n",
	} {
		s, err := setup.Read(strings.NewReader(text), "told.toml")
		if err != nil {
			t.Fatal(err)
		}
		w, err := s.World()
		if err != nil {
			t.Fatal(err)
		}
		p := w.Likeliest()
		const n = 1 << 13
		var weight, flat []float64
		var plain, moved [4][]float64
		rise := slices.Index(w.Keys(), p.Gears.NewRiseK.Key)
		for _, z := range draws.Points(n, w.Dims()) {
			z[rise] = 0 // what is drawn of it stays: of vehicles that run so hot
			unweighed := func(f *setup.Figure) float64 {
				if i := slices.Index(w.Keys(), f.Key); i >= 0 {
					return f.At(z[i])
				}
				return f.Likely
			}
			for k, pick := range []setup.Pick{unweighed, w.Pick(z)} {
				lasts, told, err := setup.NewRide(p, pick)
				share, near := setup.NewRiseShare(p, pick)
				values := []float64{math.Log(lasts), math.Log(share), math.Log(pick(&p.Gears.NewSpeedMS)), math.Log(pick(&p.Motors.NoLoadA))}
				for i, v := range values {
					if k == 0 {
						plain[i] = append(plain[i], v)
					} else {
						moved[i] = append(moved[i], v)
					}
				}
				if off := math.Log(lasts/told) / err; k == 0 {
					cold := math.Log(share) / near
					weight, flat = append(weight, math.Pow(1+off*off/4, -2.5)*math.Exp(-cold*cold/2)), append(flat, 1)
				}
			}
		}
		for i, what := range []string{"time", "heat", "speed", "no-load current"} {
			want, got, before := draws.SpreadOf(plain[i], weight), draws.SpreadOf(moved[i], flat), draws.SpreadOf(plain[i], flat)
			// A tenth of the width that it had, or three percent: slopes are taken
			// straight, while small motors cannot reach every speed.
			far := max(0.1*(before.P90-before.P10), 0.03)
			for _, e := range [][2]float64{{got.P10, want.P10}, {got.P50, want.P50}, {got.P90, want.P90}} {
				if math.Abs(e[0]-e[1]) > far {
					t.Errorf("%s, %s: %.3f %.3f %.3f, weighed %.3f %.3f %.3f (before %.3f to %.3f)",
						name, what, got.P10, got.P50, got.P90, want.P10, want.P50, want.P90, before.P10, before.P90)
					break
				}
			}
			if i < 2 && !(got.P90-got.P10 < 0.85*(before.P90-before.P10)) {
				t.Errorf("%s: what is told narrows %s from %.3f to %.3f only", name, what, before.P90-before.P10, got.P90-got.P10)
			}
		}
	}
}

// A third of the small motors and gears that a 6 V vehicle might have by themselves could
// not come to the speed told of such vehicles: they give way, not the speed.
func TestMotorsThatCannotComeToTheToldSpeedGiveWay(t *testing.T) {
	s, err := setup.Read(strings.NewReader("[vehicle]\ndesign_voltage = \"6 V\"\nground = \"asphalt\"\n[pack]\nlabel = \"6 V 4.5 Ah\"\n"), "told.toml")
	if err != nil {
		t.Fatal(err)
	}
	w, err := s.World()
	if err != nil {
		t.Fatal(err)
	}
	var before, after, speed []float64
	for _, z := range draws.Points(1024, w.Dims()) {
		p, err := w.Parts(z)
		if err != nil {
			t.Fatal(err)
		}
		before = append(before, setup.NewSpeedShare(p, func(f *setup.Figure) float64 {
			if i := slices.Index(w.Keys(), f.Key); i >= 0 {
				return f.At(z[i])
			}
			return f.Likely
		}))
		pick := w.Pick(z)
		after, speed = append(after, setup.NewSpeedShare(p, pick)), append(speed, 3.6*pick(&p.Gears.NewSpeedMS))
	}
	if b := draws.SpreadOf(before, nil); b.P10 > 0.7 || math.Abs(b.P90-1) > 1e-6 {
		t.Errorf("unweighed they come to %.3f to %.3f of it: this shows nothing", b.P10, b.P90)
	}
	if a := draws.SpreadOf(after, nil); a.P10 < 0.98 || a.P90 > 1.02 {
		t.Errorf("they come to %.3f to %.3f of the speed", a.P10, a.P90)
	}
	// One motor: an owner, 2.5 mph; another, "maybe 3"; news, 1 to 5 mph. Two: 3.5 mph.
	if v := draws.SpreadOf(speed, nil); math.Abs(v.P50-4) > 0.05 || v.P10 > 2.1 || v.P90 < 4.8 {
		t.Errorf("the speed itself is %.2f to %.2f, median %.2f km/h", v.P10, v.P90, v.P50)
	}
}

// Whoever put other motors in, or counted the teeth, has no vehicle of the class any
// more, and of a 6 V one nobody told how long it lasts.
func TestNothingIsWeighedThatIsNotAsItWasMade(t *testing.T) {
	told := func(text string) bool {
		p := parts(t, text)
		return p.Gears.NewRideS.Known
	}
	if !told("[pack]\nlabel = \"12 V 7 Ah\"\n") {
		t.Error("a stock vehicle is not weighed")
	}
	for _, other := range []string{
		"[motors]\nstall_current = \"85 A\"\n[pack]\nlabel = \"12 V 7 Ah\"\n",
		"[gears]\nratio = 110\n[pack]\nlabel = \"12 V 7 Ah\"\n",
		"[vehicle]\ndesign_voltage = \"6 V\"\n[pack]\nlabel = \"6 V 4.5 Ah\"\n",
	} {
		if told(other) {
			t.Errorf("weighed: %s", other)
		}
	}
}

// One small motor alone could hardly do what is told of 12 V vehicles; two could.
func TestAMotorThatCannotDoWhatIsToldIsLessLikely(t *testing.T) {
	share := func(count string) float64 {
		s, err := setup.Read(strings.NewReader("[vehicle]\nhas_board = true\n[motors]\ncount = "+count+"\n[pack]\nlabel = \"12 V 7 Ah\"\n"), "told.toml")
		if err != nil {
			t.Fatal(err)
		}
		w, err := s.World()
		if err != nil {
			t.Fatal(err)
		}
		for _, c := range w.Choices() {
			for _, o := range c.Options {
				if c.Key == "motors.can" && o.Text == "ride-on 390" {
					return o.Share
				}
			}
		}
		return 0
	}
	if one, two := share("1"), share("2"); one > 0.2 || two < 0.5 || two > 0.7 {
		t.Errorf("small motors: %.2f of one, %.2f of two", one, two)
	}
}

// Where the number is open it follows: small motors come in pairs, larger ones may be
// alone as one in four vehicles of the class has them.
func TestWhatOneMotorCannotDoTwoAreThereFor(t *testing.T) {
	alone := func(can string) float64 {
		s, err := setup.Read(strings.NewReader("[vehicle]\nhas_board = true\n[motors]\ncan = \""+can+"\"\n[pack]\nlabel = \"12 V 7 Ah\"\n"), "told.toml")
		if err != nil {
			t.Fatal(err)
		}
		w, err := s.World()
		if err != nil {
			t.Fatal(err)
		}
		one, n := 0.0, 0.0
		for _, z := range draws.Points(1024, w.Dims()) {
			if n++; math.Round(w.Pick(z)(&w.Likeliest().Motors.Count)) == 1 {
				one++
			}
		}
		return one / n
	}
	if small, large := alone("ride-on 390"), alone("ride-on 550"); small > 0.1 || large < 0.15 || large > 0.35 {
		t.Errorf("one motor alone: %.2f of small ones, %.2f of large ones", small, large)
	}
}
