package main

import (
	"fmt"
	"io"
	"math"
	"reflect"
	"slices"

	"example.org/packcheck/battery"
	"example.org/packcheck/chemistry"
	"example.org/packcheck/tables"
)

// quantity is what a truth is of.
type quantity string

// The quantities, in the table's order.
const (
	ofCharge   quantity = "charge to the end voltage"
	ofEnergy   quantity = "energy to it"
	ofEndTime  quantity = "time to a higher end"
	ofMidVolts quantity = "volts at half time"
	ofPulse    quantity = "resistance of 10 s"
	ofHottest  quantity = "highest temperature"
	ofHours    quantity = "hours to full"
)

var quantities = [...]quantity{ofCharge, ofEnergy, ofEndTime, ofMidVolts, ofPulse, ofHottest, ofHours}

// subject is a battery about which something was measured, and what its owner
// could tell: family, label, cells in series, mass.
type subject struct {
	name      string
	family    string
	leaveOut  []string // members that are this very cell
	printedAh float64
	series    int
	massKg    float64 // 0 = by rule
	health    float64 // what it held over new, as far as the data say
	stillAir  bool    // it lay in a room without a fan
}

// truth is one measured figure.
type truth struct {
	of    quantity
	what  string
	value float64
	// foretell computes the same with a battery drawn.
	foretell func(m *battery.Model) float64
}

const (
	// drawsEach is how many batteries are drawn for a subject. The 10 and 90 %
	// points of so many lie within a few per cent of the range.
	drawsEach = 256
	// insideLow and insideHigh bound the stated range of 80 %.
	insideLow, insideHigh = 0.1, 0.9
)

const coverageHead = `| quantity | truths | inside, health not told, % | mean width | inside, health told, % | mean width |
|---|---|---|---|---|---|
`

// tally counts what lies inside.
type tally struct {
	n, inside [2]int
	width     [2]float64
}

// coverage leaves each subject's own cells out of its family, draws batteries
// from the rest, and prints how often the measured figure lies inside the range
// of 80 %, and how wide that is. missed gets a line for each that does not.
func coverage(dir string, out, missed io.Writer) error {
	all, err := subjects(dir)
	if err != nil {
		return err
	}
	byQuantity, total := map[quantity]*tally{}, &tally{}
	for _, q := range quantities {
		byQuantity[q] = &tally{}
	}
	var models [2][]*battery.Model
	for i, s := range all {
		for told := range 2 {
			if i == 0 || !s.sameOwner(all[i-1].subject) {
				if models[told], err = s.draw(told == 1); err != nil {
					return fmt.Errorf("%s: %w", s.name, err)
				}
			}
			for _, t := range s.truths {
				values := t.foretold(models[told])
				low, high := point(values, insideLow), point(values, insideHigh)
				inside := t.value >= low && t.value <= high
				if !inside {
					fmt.Fprintf(missed, "%s, %s, %s, told %v: measured %.4g, stated %.4g to %.4g\n", s.name, t.what, t.of, told == 1, t.value, low, high)
				}
				width := (high - low) / t.value
				if t.of == ofHottest {
					width = high - low
				}
				byQuantity[t.of].add(told, inside, width)
				if t.of != ofHottest {
					total.add(told, inside, width)
				} else {
					total.add(told, inside, 0)
				}
			}
		}
	}
	fmt.Fprint(out, coverageHead)
	for _, q := range quantities {
		byQuantity[q].print(out, string(q), q == ofHottest)
	}
	hot := byQuantity[ofHottest]
	for told := range 2 { // its width has another unit
		total.width[told] *= float64(total.n[told]) / float64(total.n[told]-hot.n[told])
	}
	total.print(out, "all (width without temperatures)", false)
	return nil
}

// sameOwner reports whether two subjects would be told alike, whatever was
// measured of them.
func (s subject) sameOwner(other subject) bool {
	s.name, other.name = "", ""
	same := slices.Equal(s.leaveOut, other.leaveOut)
	s.leaveOut, other.leaveOut = nil, nil
	return same && reflect.DeepEqual(s, other)
}

// foretold is what the batteries say of it, sorted.
func (t truth) foretold(models []*battery.Model) []float64 {
	values := make([]float64, 0, len(models))
	w := battery.WidthsOf(models[0].Spec().Profile.Family, "", battery.MakersOwn)
	for i, m := range models {
		v := t.foretell(m)
		switch u := halton(i+1, 7); t.of { // what the model itself is off
		case ofHottest:
			v += drawnAround(w.HottestK, u)
		case ofHours:
			v *= drawn(w.ChargeHours, u)
		}
		if !math.IsNaN(v) {
			values = append(values, v)
		}
	}
	slices.Sort(values)
	return values
}

func (t *tally) add(told int, inside bool, width float64) {
	t.n[told]++
	t.width[told] += width
	if inside {
		t.inside[told]++
	}
}

func (t *tally) print(out io.Writer, name string, kelvin bool) {
	if t.n[0] == 0 {
		return
	}
	width := func(told int) string {
		w := t.width[told] / float64(t.n[told])
		if kelvin {
			return fmt.Sprintf("%.0f K", w)
		}
		return fmt.Sprintf("%.0f %%", 100*w)
	}
	share := func(told int) float64 { return 100 * float64(t.inside[told]) / float64(t.n[told]) }
	fmt.Fprintf(out, "| %s | %d | %.0f | %s | %.0f | %s |\n", name, t.n[0], share(0), width(0), share(1), width(1))
}

// point is a quantile of sorted values.
func point(sorted []float64, p float64) float64 {
	if len(sorted) == 0 {
		return math.NaN()
	}
	x := p * float64(len(sorted)-1)
	i := min(int(x), len(sorted)-2)
	if i < 0 {
		return sorted[0]
	}
	return sorted[i] + (x-float64(i))*(sorted[i+1]-sorted[i])
}

// draw makes the batteries that the subject may be.
func (s measured) draw(healthTold bool) ([]*battery.Model, error) {
	members := slices.DeleteFunc(chemistry.Builtin().Members(s.family), func(m chemistry.Member) bool {
		return slices.Contains(s.leaveOut, m.Profile.Name)
	})
	left := 0.0
	for _, m := range members {
		left += m.Share
	}
	for i := range members {
		members[i].Share /= left
	}
	family := members[0].Profile.Family
	w := battery.WidthsOf(family, "", battery.MakersOwn)
	cooling := w.CoolingWM2K
	if s.stillAir {
		cooling = w.StillWM2K
	}
	var out []*battery.Model
	for i := range drawsEach {
		u := func(k int) float64 { return halton(i+1, k) }
		p := members[chemistry.Pick(members, u(0))].Profile
		p.Heat.CoolingWM2K = drawn(cooling, u(5))
		if w.Steepness.Known() {
			p = p.Steeper(drawn(w.Steepness, u(6)), p.Capacity.RatedHours)
		}
		health := ofAnyAge(family, w, u(2))
		if healthTold {
			health = s.health
		}
		grown, ohmic := battery.GrowthAt(health, drawn(w.GrowthAt80, u(4))), 1.0
		if p.Family == chemistry.Lithium {
			grown, ohmic = 1, grown
		}
		m, err := battery.New(battery.Spec{
			Profile: p, CellsInSeries: s.series, MassKg: s.massKg,
			CapacityAh:       s.printedAh * drawn(w.Honesty, u(1)),
			Health:           health,
			ResistanceFactor: drawn(w.Resistance, u(3)) * grown, OhmicFactor: ohmic, Grown: ohmic,
		})
		if err != nil {
			return nil, err
		}
		out = append(out, m)
	}
	return out, nil
}

// ofAnyAge turns a number from 0 to 1 into the health of a battery of unknown age: of
// lead-acid, first its age and then the health at it.
func ofAnyAge(f chemistry.Family, w battery.Widths, u float64) float64 {
	if f != chemistry.LeadAcid {
		return drawn(w.Health, u)
	}
	shares := battery.LeadHealth()
	slices.Reverse(shares) // the oldest hold least
	for i, a := range shares {
		if u < a.Share || i == len(shares)-1 {
			return drawn(a.Health, min(max(u/a.Share, 1e-6), 1-1e-6))
		}
		u -= a.Share
	}
	return 1
}

// drawn turns a number from 0 to 1 into a value: a law of two half normals
// through the 5, 50 and 95 % points, in logarithms.
func drawn(v tables.Value, u float64) float64 {
	z := math.Sqrt2 * math.Erfinv(2*u-1)
	side := v.High
	if z < 0 {
		side = v.Low
	}
	return v.Likely * math.Exp(math.Abs(z)/at95*math.Log(side/v.Likely))
}

// at95 is how many standard deviations the 95 % point lies from the middle.
const at95 = 1.6449

// drawnAround is drawn without the logarithm, for what may be negative.
func drawnAround(v tables.Value, u float64) float64 {
	z := math.Sqrt2 * math.Erfinv(2*u-1)
	side := v.High
	if z < 0 {
		side = v.Low
	}
	return v.Likely + math.Abs(z)/at95*(side-v.Likely)
}

// halton is the i-th point of the Halton sequence in dimension k.
func halton(i, k int) float64 {
	primes := [...]int{2, 3, 5, 7, 11, 13, 17, 19}
	base := primes[k]
	f, x := 1.0, 0.0
	for ; i > 0; i /= base {
		f /= float64(base)
		x += f * float64(i%base)
	}
	return x
}
