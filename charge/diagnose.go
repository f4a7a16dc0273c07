package charge

import (
	"cmp"
	"errors"
	"fmt"
	"math"
	"slices"

	"example.org/packcheck/answer"
	"example.org/packcheck/battery"
	"example.org/packcheck/chemistry"
	"example.org/packcheck/internal/portable"
)

// Condition is what may be the matter with an old battery.
type Condition int

// The conditions that are told apart.
const (
	Sound         Condition = iota // charged and able
	Flat                           // merely discharged
	Worn                           // capacity lost, resistance grown
	ShortedCell                    // one cell is dead
	BadConnection                  // the fault is in a plug, clip, fuse or lead
	conditions    = iota
)

// conditionNames is indexed by Condition.
var conditionNames = [conditions]string{
	"in order", "flat", "worn", "one cell shorted", "badly connected",
}

// String returns "in order", "flat", "worn", "one cell shorted" or "badly
// connected".
func (c Condition) String() string {
	if c < 0 || int(c) >= len(conditionNames) {
		return fmt.Sprintf("condition %d", int(c))
	}
	return conditionNames[c]
}

// Evidence is what was measured at an old sealed lead-acid battery. Volts are
// those of the whole pack, taken where the meter was.
type Evidence struct {
	Pack        *battery.Model // as its label says it was when new
	RestV       float64        // without load, > 0
	HoursRested float64        // since the last charge or ride; 0 = unknown or just now
	LoadedV     float64        // under load, for some seconds; 0 = not measured
	LoadedA     float64        // amps of that load; 0 = unknown
	TempC       float64        // of the battery
	JustCharged bool           // a full charge was the last thing that happened to it
	Name        string         // what findings call it where it is one of several, such as "the battery at 11.2 V"; empty = the battery
}

// Suspicion is one condition with how likely it is.
type Suspicion struct {
	Condition Condition
	Share     float64 // 0..1; all shares add up to 1
	Words     string  // the share in plain words
}

// Diagnosis is the answer of [Diagnose].
type Diagnosis struct {
	Suspicions []Suspicion // likeliest first
	NextTest   string      // the one test to make next
	Why        []string    // what the answer rests on, plain sentences
	Findings   []answer.Finding
}

// errEvidence is wrapped by the errors of [Diagnose].
var errEvidence = errors.New("charge: cannot judge this battery")

// circumstance is one way in which a battery can come to a condition: how
// common it is before anything was measured, and ranges of charge, of
// resistance over that of a new battery and of the resistance of a contact.
type circumstance struct {
	is                 Condition
	prior              float64
	chargeLo, chargeHi float64
	ohmLo, ohmHi       float64 // times new
	leadLo, leadHi     float64 // Ohm in the leads
	deadCell           bool
	stoodFlat          bool // rests below the volts of an empty cell, down to stoodFlatV
}

// stoodFlatV is how low a cell that has stood flat for long may rest.
const stoodFlatV = 0.8

// circumstances lists them. Every figure is an estimate of ours (source
// "diagnosis-odds"): the shares of charge follow the rested voltage table, worn
// batteries are taken to have from twice and a half to twelve times the
// resistance of new ones, a contact that fails from a tenth of an ohm to
// twenty. One that has stood flat is as likely ruined as not, and one can lose
// capacity well before its resistance shows it.
var circumstances = [...]circumstance{
	{is: Sound, prior: 0.20, chargeLo: 0.60, chargeHi: 1.00, ohmLo: 0.7, ohmHi: 2.0},
	{is: Flat, prior: 0.22, chargeLo: 0.00, chargeHi: 0.35, ohmLo: 0.7, ohmHi: 2.5},
	{is: Flat, prior: 0.07, ohmLo: 1.0, ohmHi: 6, stoodFlat: true},
	{is: Worn, prior: 0.08, chargeLo: 0.40, chargeHi: 1.00, ohmLo: 1.0, ohmHi: 2.5},
	{is: Worn, prior: 0.14, chargeLo: 0.25, chargeHi: 1.00, ohmLo: 2.5, ohmHi: 12},
	{is: Worn, prior: 0.04, chargeLo: 0.00, chargeHi: 0.25, ohmLo: 2.5, ohmHi: 12},
	{is: Worn, prior: 0.07, ohmLo: 2.5, ohmHi: 30, stoodFlat: true},
	{is: ShortedCell, prior: 0.06, chargeLo: 0.10, chargeHi: 1.00, ohmLo: 0.7, ohmHi: 5, deadCell: true},
	{is: BadConnection, prior: 0.12, chargeLo: 0.30, chargeHi: 1.00, ohmLo: 0.7, ohmHi: 2.0, leadLo: 0.1, leadHi: 20},
}

// Grids over which a circumstance is averaged.
const (
	chargePoints, ohmPoints, leadPoints, loadPoints = 21, 9, 13, 7
	// Unknown amps of a ride-on, over the capacity per hour (source
	// "diagnosis-odds").
	loadLoC, loadHiC = 0.5, 3.0
	// loadedS is how long a load has lasted when the meter is read.
	loadedS = 10.0
	// meterShare is the error of a cheap meter, of the reading.
	meterShare = 0.005
)

// Diagnose weighs whether an old sealed lead-acid battery is in order, flat,
// worn, has a shorted cell or is badly connected. For each condition it
// averages, over what such a battery can look like, how well it would explain
// the volts that were measured, and weighs that by how common the condition
// is (Bayes). It is a help to choose the next test, no measurement: the odds
// behind it are estimates. Errors: not lead-acid, or a reading out of range.
func Diagnose(e Evidence) (Diagnosis, error) {
	if err := e.check(); err != nil {
		return Diagnosis{}, err
	}
	var d Diagnosis
	total := 0.0
	d.Suspicions = make([]Suspicion, conditions)
	for c := range d.Suspicions {
		d.Suspicions[c].Condition = Condition(c)
	}
	as := e.asNew()
	for _, c := range circumstances {
		w := c.prior * e.explains(c, &as)
		if e.JustCharged && c.is == Flat {
			w *= 0.2 // one that was just charged is no longer merely flat
		}
		total += w
		d.Suspicions[c.is].Share += w
	}
	for i := range d.Suspicions {
		s := &d.Suspicions[i]
		s.Share /= total
		s.Words = inWords(s.Share)
	}
	slices.SortStableFunc(d.Suspicions, func(a, b Suspicion) int { return cmp.Compare(b.Share, a.Share) })
	d.Why = e.why()
	d.NextTest = e.nextTest(d.Suspicions)
	d.Findings = e.findings(d)
	return d, nil
}

// check returns an error for a reading that cannot be used.
func (e *Evidence) check() error {
	if e.Pack == nil {
		return fmt.Errorf("%w: no pack", errEvidence)
	}
	spec := e.Pack.Spec()
	if spec.Profile.Family != chemistry.LeadAcid {
		return fmt.Errorf("%w: only sealed lead-acid can be judged from volts, not %s", errEvidence, spec.Profile.Title)
	}
	most := 3 * float64(spec.CellsInSeries) // volts
	for _, v := range []struct {
		name      string
		value, hi float64
	}{
		{"RestV", e.RestV, most},
		{"LoadedV", e.LoadedV, most},
		{"LoadedA", e.LoadedA, 1000},
		{"HoursRested", e.HoursRested, 1e6},
	} {
		if !(v.value >= 0 && v.value <= v.hi) {
			return fmt.Errorf("%w: %s is %g (want 0 to %g)", errEvidence, v.name, v.value, v.hi)
		}
	}
	if e.RestV == 0 {
		return fmt.Errorf("%w: no rested volts", errEvidence)
	}
	if !(e.TempC > -40 && e.TempC < 80) {
		return fmt.Errorf("%w: TempC is %g (want -40 to 80)", errEvidence, e.TempC)
	}
	return nil
}

// asNew is a cell of the battery when new, by its state of charge.
type asNew struct {
	volts            func(float64) float64 // at rest
	ohms, fast, slow func(float64) float64 // times ampere-hours; nil where nothing was read under load
}

func (e *Evidence) asNew() asNew {
	p := e.Pack.Profile()
	as := asNew{volts: p.Rest.VoltsAt.Func()}
	if e.LoadedV > 0 {
		as.ohms, as.fast, as.slow = p.Resistance.OhmAh.Func(), p.Fast.OhmAh.Func(), p.Slow.OhmAh.Func()
	}
	return as
}

// explains returns how well a circumstance explains the readings, as a
// likelihood averaged over its ranges.
func (e *Evidence) explains(c circumstance, as *asNew) float64 {
	spec := e.Pack.Spec()
	p := spec.Profile
	n := float64(spec.CellsInSeries)
	unsettled := p.Rest.SurfaceV * portable.Exp(-e.HoursRested/max(p.Rest.SettleH, 1e-3))
	restSD := math.Sqrt(sq(meterShare*e.RestV) + sq(n*p.Rest.SpreadV) + sq(n*unsettled))
	loadSD := 2*meterShare*e.RestV + 0.01*n

	sum, count := 0.0, 0
	for i := range chargePoints {
		z := between(c.chargeLo, c.chargeHi, i, chargePoints)
		rest := n * as.volts(z)
		if c.deadCell {
			rest -= as.volts(z) * 0.95
		}
		if c.stoodFlat {
			rest = n * between(stoodFlatV, as.volts(0), i, chargePoints)
		}
		fit := bell(e.RestV-rest, restSD)
		if e.LoadedV == 0 {
			sum += fit
			count++
			continue
		}
		newOhm := (as.ohms(z) + settled(p.Fast)*as.fast(z) + settled(p.Slow)*as.slow(z)) * n / spec.CapacityAh
		for j := range ohmPoints {
			r := newOhm * geometric(c.ohmLo, c.ohmHi, j, ohmPoints)
			leads := leadPoints
			if c.leadHi == 0 {
				leads = 1
			}
			for k := range leads {
				lead := 0.0
				if leads > 1 {
					lead = geometric(c.leadLo, c.leadHi, k, leads)
				}
				f, m := e.explainsLoad(rest, r+lead, spec.CapacityAh, loadSD)
				sum += fit * f
				count += m
			}
		}
	}
	// Something is left for what no circumstance foresees, so that no
	// condition is ruled out by one odd reading.
	unforeseen := 0.005 / n
	if e.LoadedV > 0 {
		unforeseen /= n
	}
	return sum/float64(count) + unforeseen
}

// explainsLoad sums how well a source of the given volts and ohms explains the
// volts under load, over the loads that it may have been, and counts them. A
// known current is taken as it is; an unknown load is a resistance, so that a
// failing contact starves it.
func (e *Evidence) explainsLoad(restV, ohm, capacityAh, sd float64) (sum float64, count int) {
	if e.LoadedA > 0 {
		return bell(e.LoadedV-max(0, restV-e.LoadedA*ohm), sd), 1
	}
	for i := range loadPoints {
		amps := geometric(loadLoC, loadHiC, i, loadPoints) * capacityAh
		load := restV / amps
		sum += bell(e.LoadedV-restV*load/(load+ohm), sd)
	}
	return sum, loadPoints
}

// settled returns how much of a branch's resistance shows after the seconds
// that somebody takes to read a meter.
func settled(b chemistry.Branch) float64 { return -math.Expm1(-loadedS / b.TauS) }

func sq(x float64) float64 { return x * x }

// bell is a bell-shaped density with long tails (Student's, four degrees of
// freedom), since the readings of a toy's meter and battery have outliers.
func bell(x, sd float64) float64 {
	t := x / sd
	return 0.375 / sd * portable.Pow(1+t*t/4, -2.5)
}

// between returns the i-th of n equally spaced values from lo to hi.
func between(lo, hi float64, i, n int) float64 {
	return lo + (hi-lo)*float64(i)/float64(n-1)
}

// geometric returns the i-th of n values from lo to hi at equal ratios.
func geometric(lo, hi float64, i, n int) float64 {
	return lo * portable.Pow(hi/lo, float64(i)/float64(n-1))
}

// inWords puts a share into words.
func inWords(share float64) string {
	switch {
	case share >= 0.90:
		return "almost certainly"
	case share >= 0.65:
		return "probably"
	case share >= 0.35:
		return "perhaps"
	case share >= 0.10:
		return "possibly"
	}
	return "hardly"
}
