package battery

import (
	"fmt"
	"math"

	"example.org/packcheck/answer"
	"example.org/packcheck/chemistry"
)

// Codes of the findings on two packs used as one.
const (
	CodeParallelMixedChemistry = "parallel-mixed-chemistry"    // unlike cells plus to plus
	CodeParallelEqualising     = "parallel-equalising-current" // the fuller pack charges the other too fast
	CodeParallelUnlikeVolts    = "parallel-unlike-volts"       // no charge of either brings their volts together
	CodeSeriesUnequalCharge    = "series-unequal-charge"       // one is empty first and driven backwards
	CodeSeriesElectronics      = "series-pack-electronics"     // electronics left with the volts of both
	CodeUnlikePacks            = "unlike-packs"                // other cells or another size in one circuit
)

// Steps at which a mismatch of two packs is told. Own choices.
const (
	farTooMuch  = 3.0  // equalising over the greatest charging current: dangerous for any cells
	unequalHang = 0.05 // left in the one pack when the other is empty, of what it held
	graveHang   = 0.20 // of that: lithium is then reversed for good
	unlikeSize  = 1.1  // capacities over each other, beyond what two of one kind differ by
	unlikeWear  = 1.5  // ... and what is left of them: an old one and a new one
)

// Joint is two packs with their states, about to be joined. Where one of them is
// nil, its figures are NaN and its findings say that nobody knows it.
type Joint struct {
	A, B           *Model
	StateA, StateB State
	ReadAV, ReadBV float64 // rested volts that were read of both; 0 = those of the states
	LeadOhm        float64 // resistance of the lead between them, both ways
	Unfit          bool    // one of them rests so that it may not simply be charged
	Watched        bool    // the electronics of each watch its every cell and switch it off
}

// Equalising is what flows when two packs are joined in parallel.
type Equalising struct {
	CurrentA float64 // at the first instant; the fuller pack drives it into the other
	DeltaV   float64 // of the packs before they were joined
	Ohm      float64 // both packs and the lead
	IntoA    bool    // pack A is the one being charged
}

// Parallel returns the current at the instant two packs are joined plus to
// plus: the difference of their voltages over all the resistance in the loop.
func (j Joint) Parallel() Equalising {
	if !j.whole() {
		nan := math.NaN()
		return Equalising{CurrentA: nan, DeltaV: nan, Ohm: nan}
	}
	va, ra := j.A.Source(&j.StateA)
	vb, rb := j.B.Source(&j.StateB)
	if j.ReadAV > 0 && j.ReadBV > 0 {
		va, vb = j.ReadAV, j.ReadBV
	}
	return EqualisingCurrent(Source{va, ra}, Source{vb, rb}, j.LeadOhm)
}

// whole reports whether both packs are there.
func (j Joint) whole() bool { return j.A != nil && j.B != nil }

// Source is a voltage behind a resistance.
type Source struct {
	Volts, Ohm float64
}

// EqualisingCurrent is [Joint.Parallel] for packs known by voltage and
// resistance only. Without any resistance the current is infinite.
func EqualisingCurrent(a, b Source, leadOhm float64) Equalising {
	e := Equalising{DeltaV: math.Abs(a.Volts - b.Volts), Ohm: a.Ohm + b.Ohm + leadOhm, IntoA: b.Volts > a.Volts}
	switch {
	case e.DeltaV == 0:
	case e.Ohm <= 0:
		e.CurrentA = math.Inf(1)
	default:
		e.CurrentA = e.DeltaV / e.Ohm
	}
	return e
}

// unlike says that two packs are not of one kind, which toy standards forbid in
// one circuit.
func (j Joint) unlike() []answer.Finding {
	f := onPack(answer.Finding{
		Code: CodeUnlikePacks, Level: answer.FixFirst, Harm: answer.Part, Change: answer.FitPack,
		Title: "The two packs are not alike: the smaller one is worked to ruin by the other.",
		Limit: unlikeSize, Unit: "x", Source: srcUnlike, Decides: []string{answer.KeyPackJoined},
		Advice: "Use two of one kind, size and age, or one pack alone.",
	})
	if !j.whole() {
		return []answer.Finding{f.Unread("Whether the two packs are alike is not known: one of them is not told.")}
	}
	a, b := j.A.spec, j.B.spec
	ratio, most := max(a.CapacityAh, b.CapacityAh)/min(a.CapacityAh, b.CapacityAh), unlikeSize
	if wear := max(a.Health, b.Health) / min(a.Health, b.Health); wear > unlikeWear && wear/unlikeWear > ratio/unlikeSize {
		ratio, most = wear, unlikeWear // an old one and a new one
	}
	if sameKind(a.Profile, b.Profile) && ratio <= most*(1+currentHair) {
		return nil
	}
	f.Found, f.Limit = ratio, most
	if a.Profile.Family != b.Profile.Family {
		f.Level, f.Harm, f.Reads, f.Gravity = answer.Danger, answer.House, answer.AsTold, 2 // what else is found comes of it
		f.Title = "Two packs of different kinds of cells are in one circuit: one drives the other past its limits."
	}
	return []answer.Finding{f}
}

// sameKind reports whether two packs are told to be of one kind of cells, whichever cells
// of that kind each of them has inside: these are named apart, and titled alike.
func sameKind(a, b *chemistry.Profile) bool { return a.Family == b.Family && a.Title == b.Title }

// JudgeParallel says what is wrong with joining the packs plus to plus.
func (j Joint) JudgeParallel() []answer.Finding {
	out := j.unlike()
	if !j.whole() {
		return out
	}
	if a, b := j.A.spec.Profile, j.B.spec.Profile; !sameKind(a, b) {
		f := onPack(answer.Finding{
			Code: CodeParallelMixedChemistry, Level: answer.Danger, Harm: answer.House,
			Title: "Two packs of different chemistry are joined in parallel.", Unit: "V",
			Found: j.A.FullV(), Limit: j.B.FullV(), Reads: answer.AsTold, Source: srcMixing,
			Advice:  "Do not join them: one will charge or drain the other past its limits.",
			Decides: []string{answer.KeyPackChemistry, answer.KeyPackJoined},
		})
		f.NeverRidden = true
		if a.Family == chemistry.LeadAcid && b.Family == chemistry.LeadAcid { // two kinds of it only wear each other out
			f.Level, f.Harm, f.NeverRidden = answer.FixFirst, answer.Part, false
		}
		out = append(out, f)
	}
	if j.Apart() {
		return append(out, j.apart())
	}
	e := j.Parallel()
	into := j.B
	if e.IntoA {
		into = j.A
	}
	limit := into.spec.Profile.Charge.MaxC * into.spec.CapacityAh
	if !(e.CurrentA <= limit*(1+currentHair)) {
		f := onPack(answer.Finding{
			Code: CodeParallelEqualising, Level: answer.FixFirst, Harm: answer.Part,
			Title: "The fuller pack charges the other with too many amps.",
			Found: e.CurrentA, Limit: limit, Unit: "A", Source: into.spec.Profile.Charge.Source,
			Advice: j.first("Do not join packs at different charge. Where packs are meant to be paralleled, charge both full on their own chargers first and follow the maker's instructions."),
			Decides: []string{
				answer.KeyPackChemistry, answer.KeyPackCapacity, answer.KeyPackCharge, answer.KeyPackJoined,
			},
		})
		apart := j.Unfit || j.uneven()
		if apart && !j.unequal() {
			f.Advice = "Part them, and judge each by its own volts at rest before anything else. Never join packs at different charge."
		}
		if e.CurrentA > farTooMuch*limit || into.spec.Profile.Family == chemistry.Lithium {
			f.Level, f.Harm = answer.Danger, answer.House
			f.Today = apart // as long as they are joined, the one charges the other
		}
		if math.IsNaN(e.CurrentA) {
			f = f.Unread("How much current the one pack pushes into the other is not known.")
		}
		out = append(out, f)
	}
	return out
}

// twiceTheVolts is how far apart two packs are printed that are so whatever their cells
// are: of all chemistries full cells have at most 1.2 times their nominal volts, empty ones
// at least 0.78 times. Own choice, from the ladders of the built-in profiles.
const twiceTheVolts = 1.6

// overfull is how far above the volts that the one may be charged with the other must be when it
// is full to overcharge it for sure: makers' limits lie some per cent apart. Own choice.
const overfull = 1.05

// Apart reports whether no charge makes them alike for good: the one has more volts empty than
// the other full, or full more than the other may ever be charged with.
func (j Joint) Apart() bool { return j.whole() && (j.emptyAbove() || j.fullAbove()) }

// byVolts is the pack of more volts and that of less.
func (j Joint) byVolts() (more, less *Model) {
	if j.B.FullV() > j.A.FullV() {
		return j.B, j.A
	}
	return j.A, j.B
}

func (j Joint) emptyAbove() bool {
	more, less := j.byVolts()
	return more.EmptyV() > less.FullV()*(1+currentHair)
}

func (j Joint) fullAbove() bool {
	more, less := j.byVolts()
	return more.FullV() > overfull*mostV(less)
}

// mostV is what a pack may be charged with, in V.
func mostV(m *Model) float64 { return float64(m.spec.CellsInSeries) * m.spec.Profile.Charge.CellMaxV }

// apart says what becomes of such packs plus to plus.
func (j Joint) apart() answer.Finding {
	more, less := j.byVolts()
	f := onPack(answer.Finding{
		Code: CodeParallelUnlikeVolts, Level: answer.Danger, Harm: answer.House, Today: true, NeverRidden: true,
		Title: fmt.Sprintf("Packs of %.3g V and %.3g V are joined in parallel: the one overcharges the other without an end.", more.NominalV(), less.NominalV()),
		Found: more.EmptyV(), Limit: less.FullV(), Unit: "V", Reads: answer.AsTold, Source: srcMixing,
		Advice:  "Never join them: no charge makes their volts alike. If they are joined, take them apart now.",
		Change:  answer.FitPack,
		Decides: []string{answer.KeyPackJoined},
	})
	if !j.emptyAbove() {
		f.Found, f.Limit = more.FullV(), mostV(less)
		f.Title = fmt.Sprintf("Packs of %.3g V and %.3g V are joined in parallel: what fills the one overcharges the other.", more.NominalV(), less.NominalV())
		f.Advice = "Never join them: they are never both full and both safe. If they are joined, take them apart now."
	}
	if more.NominalV() < twiceTheVolts*less.NominalV() { // then it hangs on their cells
		f.Decides = append(f.Decides, answer.KeyPackChemistry)
	}
	return f
}

// first puts what to do with two packs of unequal charge before an advice: nothing brings
// them together but a full charge of each. Of one that has nothing left it says nothing:
// its volts decide whether it is ever charged again.
func (j Joint) first(advice string) string {
	if !j.unequal() {
		return advice
	}
	if j.A.spec.Profile.Family == chemistry.LeadAcid && j.B.spec.Profile.Family == chemistry.LeadAcid {
		return "Part them, and charge each by itself to full. Read both again after a night. " + advice
	}
	return "Part them. Charge each by itself to full on its own charger and read both again, but never one that was drained flat. " + advice
}

// uneven reports whether the two are at different charge.
func (j Joint) uneven() bool {
	return math.Abs(j.A.Charge(j.StateA)-j.B.Charge(j.StateB)) > unequalHang
}

// unequal reports whether they are, and both have some left.
func (j Joint) unequal() bool {
	return j.uneven() && !j.Unfit && min(j.A.Charge(j.StateA), j.B.Charge(j.StateB)) > 0
}

// SeriesPair is what two packs in series amount to.
type SeriesPair struct {
	FullV, NominalV, EmptyV float64
	CapacityAh              float64 // rated, of the smaller
	EndsAt                  float64 // Ah that go out before the first of them is empty
	FirstEmptyIsA           bool
	OverhangAh              float64 // what the other has left then
	SharedEndV              float64 // voltage of the pair when the first is at its normal end
}

// Series describes the packs joined plus to minus: the same current flows
// through both, so the one with less charge ends the ride.
func (j Joint) Series() SeriesPair {
	if !j.whole() {
		nan := math.NaN()
		return SeriesPair{FullV: nan, NominalV: nan, EmptyV: nan, CapacityAh: nan, EndsAt: nan, OverhangAh: nan, SharedEndV: nan}
	}
	a, b := j.A, j.B
	leftA, leftB := a.Charge(j.StateA)*a.FullAh(), b.Charge(j.StateB)*b.FullAh()
	p := SeriesPair{
		FullV: a.FullV() + b.FullV(), NominalV: a.NominalV() + b.NominalV(), EmptyV: a.EmptyV() + b.EmptyV(),
		CapacityAh: min(a.RatedAh(), b.RatedAh()), EndsAt: min(leftA, leftB),
		FirstEmptyIsA: leftA <= leftB, OverhangAh: math.Abs(leftA - leftB),
	}
	first, other, state := a, b, j.StateB
	if !p.FirstEmptyIsA {
		first, other, state = b, a, j.StateA
	}
	p.SharedEndV = first.EmptyV() + other.RestedV(other.StateAt(other.Charge(state)-p.EndsAt/other.FullAh(), 25))
	return p
}

// JudgeSeries says what is wrong with joining the packs plus to minus.
func (j Joint) JudgeSeries() []answer.Finding {
	out := j.unlike()
	if !j.whole() {
		return out
	}
	s := j.Series()
	share := s.OverhangAh / math.Max(s.OverhangAh+s.EndsAt, 1e-9)
	if !(share <= unequalHang*(1+currentHair)) {
		first := j.B
		if s.FirstEmptyIsA {
			first = j.A
		}
		f := onPack(answer.Finding{
			Code: CodeSeriesUnequalCharge, Level: answer.FixFirst, Harm: answer.Part,
			Title: "Two unequal packs in series: the smaller is empty first, and the other then drives it backwards.",
			Found: share, Limit: unequalHang, Unit: "share", Source: srcSmallest,
			Advice:  j.first("Use two equal packs of one age, charged together; cut off on the voltage of each one."),
			Decides: []string{answer.KeyPackChemistry, answer.KeyPackCapacity, answer.KeyPackCharge, answer.KeyPackJoined},
		})
		switch {
		case j.Watched: // it opens before it is reversed
			f.Title = "Two unequal packs in series: the smaller is empty first, and its electronics end the ride for both."
			f.Advice = j.first("Use two equal packs of one age, charged together.")
		case share > graveHang && first.spec.Profile.Family == chemistry.Lithium:
			f.Level, f.Harm = answer.Danger, answer.House
		}
		if math.IsNaN(share) {
			f = f.Unread("Whether one pack is empty before the other is not known.")
		}
		out = append(out, f)
	}
	for _, m := range []*Model{j.A, j.B} {
		if m.spec.Profile.Family == chemistry.Lithium {
			out = append(out, onPack(answer.Finding{
				Code: CodeSeriesElectronics, Level: answer.FixFirst, Harm: answer.Part,
				Title: "When the electronics of one pack in series disconnect, they are left with the voltage of the whole pair.",
				Found: s.FullV, Limit: m.FullV(), Unit: "V", Source: srcElectronics,
				Advice: "Use packs in series only when their maker allows it; otherwise use one pack of the right voltage.",
				Change: answer.FitPack, Decides: []string{answer.KeyPackChemistry, answer.KeyPackJoined},
			}))
			break
		}
	}
	return out
}
