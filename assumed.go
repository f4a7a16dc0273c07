package packcheck

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"example.org/packcheck/setup"
)

// answers are the outputs by which an assumption's weight is measured: how
// long, how fast, how hard.
var answers = [...]int{mLasts, mSpeed, mPeakA}

// weight is how far one unknown moves the answers, summed as shares.
func weight(s *spread, figure int) float64 {
	sum := 0.0
	for _, m := range answers {
		for _, d := range s.drivers[m] {
			if d.figure == figure {
				sum += min(d.effect, 2)
			}
		}
	}
	return sum
}

// assumptions lists what the setup did not give, the weightiest first; what
// moves nothing keeps the order in which it was assumed.
func assumptions(p *setup.Parts, u unknowns, s *spread) []Assumed {
	all := slices.Clone(p.Assumed)
	if p.Original != nil {
		all = append(all, p.Original.Assumed...)
	}
	weightOf := func(key string) float64 {
		if i, ok := u.index[key]; ok {
			return weight(s, i)
		}
		return 0
	}
	slices.SortStableFunc(all, func(a, b setup.Assumption) int { return cmp.Compare(weightOf(b.Key), weightOf(a.Key)) })
	var out []Assumed
	for _, a := range all {
		out = append(out, Assumed{Key: a.Key, Value: a.Value, Why: a.Why, Source: a.Source, Effect: weightOf(a.Key)})
	}
	return out
}

// mostMeasurements is how many measurements a report asks for.
const mostMeasurements = 3

// ways is how somebody at home finds out about an unknown: by the beginning
// of its key, the first that fits. One way may settle several unknowns.
var ways = []struct{ key, what, how string }{
	{"vehicle.ground", "the force that pulls it along", "Pull the loaded vehicle slowly over this ground with a luggage scale; enter it as pull_force under [measured]."},
	{"vehicle.rolling", "the force that pulls it along", "Pull the loaded vehicle slowly over this ground with a luggage scale; enter it as pull_force under [measured]."},
	{"vehicle.grip", "whether the wheels spin", "Start on this ground and look whether the driven wheels spin."},
	{"vehicle.mass", "the vehicle's weight", "Put it on a bathroom scale; enter it as mass under [vehicle]."},
	{"vehicle.wheel", "the driven wheels' diameter", "Measure it with a tape; enter it as wheel_diameter under [vehicle]."},
	{"rider", "the child's weight", "Put the child on a bathroom scale; enter it as mass under [rider]."},
	{"gears.ratio", "the top speed", "Time ten metres at full speed on the flat; enter it as top_speed under [measured]."},
	{"gears", "the top speed", "Time ten metres at full speed on the flat; enter it as top_speed under [measured]."},
	{"motors", "the motors' winding resistance", "Measure one motor, unplugged, with a milliohm meter; or look up no-load speed and stall current of the motor. Enter what you find under [motors]."},
	{"pack.health", "what the pack still holds", "Log a discharge at a steady load and let packcheck fit read it; or time a ride from full to empty and enter it as ride_time under [measured]."},
	{"pack.capacity", "the pack's capacity", "Read its label; enter it as capacity under [pack]."},
	{"pack.resistance", "the pack's resistance", "Read its volts at rest and under a known load; enter the difference over the amps as resistance under [pack]."},
	{"pack", "the pack's data", "Read the labels on pack and cells; enter them under [pack]."},
	{"wire", "the wire", "Read its print for size and temperature and measure its length from pack to controller; enter them under [wire]."},
	{"controller", "the controller's data", "Read its label or data sheet; enter it under [controller]."},
	{"outing.air", "the temperature of the air", "Read a thermometer where it is used; enter it as air under [outing]."},
	{"outing", "how it is driven", "Watch the clock for five minutes: how long the pedal is down, how long it is up. Enter it as drive and pause under [outing]."},
}

// measurements says what to measure next: what narrows the answers most, at
// most three.
func measurements(p *setup.Parts, u unknowns, s *spread) []Measurement {
	order := make([]int, len(u.figures))
	for i := range order {
		order[i] = i
	}
	slices.SortStableFunc(order, func(a, b int) int { return cmp.Compare(weight(s, b), weight(s, a)) })
	var out []Measurement
	for _, i := range order {
		if len(out) == mostMeasurements || weight(s, i) < 0.02 {
			break
		}
		key := strings.TrimPrefix(u.figures[i].Key, "original.")
		w := slices.IndexFunc(ways, func(w struct{ key, what, how string }) bool { return strings.HasPrefix(key, w.key) })
		if w < 0 || measuredAlready(p, ways[w].what) || slices.ContainsFunc(out, func(m Measurement) bool { return m.What == ways[w].what }) {
			continue
		}
		if why := narrows(s, i); why != "" {
			out = append(out, Measurement{What: ways[w].what, How: ways[w].how, Narrows: why})
		}
	}
	return out
}

// narrows says which answers an unknown moves and by how much; "" when each of
// them hardly moves.
func narrows(s *spread, figure int) string {
	names := map[int]string{mLasts: "ride time", mSpeed: "speed", mPeakA: "launch current"}
	var parts []string
	for _, m := range answers {
		for _, d := range s.drivers[m] {
			if d.figure == figure && d.effect >= 0.02 {
				parts = append(parts, fmt.Sprintf("%s by up to %.0f %%", names[m], 100*d.effect))
			}
		}
	}
	if len(parts) == 0 {
		return ""
	}
	return "it may change " + strings.Join(parts, ", ")
}

// measuredAlready reports whether the setup has the reading that is asked for.
func measuredAlready(p *setup.Parts, what string) bool {
	m := &p.Setup.Measured
	return what == "the top speed" && m.TopSpeed.Given || what == "the force that pulls it along" && m.PullForce.Given
}
