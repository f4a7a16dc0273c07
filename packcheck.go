// Package packcheck answers whether a battery suits a children's battery
// ride-on vehicle: how fast it goes, how long it lasts with this child on this
// ground, how hard the first shove at launch hits, what keeps the pack from
// being drained to ruin, which charger is right, and what must change first.
//
// For most uses call [Load] with a setup file and [Assess] with what it
// returns; package report prints the [answer.Assessment].
//
//	s, err := packcheck.Load("tractor.toml")
//	if err != nil {
//		return err // one line for every fault in the file
//	}
//	a, err := packcheck.Assess(s)
//	if err != nil {
//		return err // likewise, of what its labels cannot mean
//	}
//
// # Ranges, shares and readings
//
// A setup leaves much open. Every vehicle that it may mean is drawn (2048 by
// default), and each is computed and judged by itself. A range runs from the 10
// to the 90 % point of these: eight of ten vehicles like this lie inside, and
// the likely value is the median. A finding's share is the part of the draws in
// which it holds: from nine in ten on it stands plainly, from half on as likely,
// from a tenth on as possible and one level milder; what could hurt somebody is
// told from one in fifty on. What was measured weighs the draws, all readings at
// once, each with its error; readings that cannot all be true are told, and the
// one that fits least is left out.
//
// # Limits
//
// It computes; it does not test. See the README for what is not modelled. Every
// limit names its source in the finding that it is held against;
// Assessment.Sources lists those that the answer rests on.
package packcheck

import (
	"context"
	"io"

	"example.org/packcheck/answer"
	"example.org/packcheck/internal/reckon"
	"example.org/packcheck/setup"
)

// Load reads a setup file and checks its form: keys, units, sizes, pairs that contradict
// each other. What is wrong comes back as [setup.Faults], beside it what its labels and
// words cannot mean. Where the form is in order a setup may still be unfinished, without
// a battery or with a label that means none: then it can be gone on from
// ([setup.Setup.With]), and [Assess] returns those faults, again all at once;
// [setup.Setup.Parts] finds them without an answer.
func Load(path string) (*setup.Setup, error) { return setup.Load(path) }

// Read reads a setup from r; name stands in for the file name in faults. No file that
// it names (a chemistry, tables, a load's pattern) is opened, since it may come from a
// stranger; [setup.ReadWith] takes the folder of those where they are wanted.
func Read(r io.Reader, name string) (*setup.Setup, error) { return setup.Read(r, name) }

// LeastDraws and MostDraws are how many vehicles may be drawn.
const LeastDraws, MostDraws = reckon.LeastDraws, reckon.MostDraws

// Options say how much is computed. The zero value is right for most uses.
type Options struct {
	// Draws is how many vehicles are drawn, [LeastDraws] to [MostDraws]; 0 means 2048, which
	// puts nearly all ends of the ranges within 2 % of those of a hundred thousand. Fewer
	// than a hundred make a rough answer. Where something was measured so many are
	// picked by weight from those that were weighed, a likely one several times.
	Draws int
	// Ways asks for ways out where something has to be fixed first: sets of changes
	// that were computed like the setup itself, on the same draws. They cost about
	// as much again. Of a worn battery whose ride was timed it is a new one that gives
	// clearly more.
	Ways bool
	// Workers is how many goroutines compute; 0 means one for each processor.
	// The answer does not depend on it.
	Workers int
}

// Assess answers a setup with the usual options. A setup that is not in order
// comes back as [setup.Faults]; nil is an error.
func Assess(s *setup.Setup) (*answer.Assessment, error) {
	return AssessWith(context.Background(), s, Options{Ways: true})
}

// AssessWith answers a setup. Once ctx is done, which is looked at before each draw, it
// returns the error of that. Any other error but [setup.Faults] means that the numbers,
// although each possible, cannot be computed together.
func AssessWith(ctx context.Context, s *setup.Setup, o Options) (*answer.Assessment, error) {
	return reckon.Assess(s, o.in(ctx))
}

func (o Options) in(ctx context.Context) reckon.Options {
	return reckon.Options{Draws: o.Draws, Ways: o.Ways, Workers: o.Workers, Context: ctx}
}

// MostCompared is how many setups [Compare] takes.
const MostCompared = reckon.MostCompared

// Compare answers two to [MostCompared] setups side by side. What they leave open
// under the same key is the same in each draw, so that a difference between them
// is one; where that cannot be, because they were measured apart, the answer says
// so. Ways out are not searched. Setups that are not in order come back as
// [setup.Faults], those of all of them at once. Once ctx is done it returns the error of
// that.
func Compare(ctx context.Context, setups []*setup.Setup, o Options) (*answer.Comparison, error) {
	return reckon.Compare(setups, o.in(ctx))
}

// Trace writes the representative outing, every unknown at its median, as a time
// series in CSV, one row a step: seconds, amperes from the pack, volts at the
// pack and behind the path, km/h, charge from 0 to 1, deg C of pack and motor
// winding, and what it does.
func Trace(s *setup.Setup, w io.Writer) error { return reckon.Trace(s, reckon.Options{}, w) }

// TraceLaunch writes the representative launch from rest in CSV, one row a step
// of the solver. A bench load has none and is an error.
func TraceLaunch(s *setup.Setup, w io.Writer) error {
	return reckon.TraceLaunch(s, reckon.Options{}, w)
}

// Sources returns every source that the built-in figures, limits and
// assumptions rest on, one of each ID, sorted by ID.
func Sources() []answer.Source { return reckon.Sources() }

// RangePaths returns the paths of all figures that have ranges, in the order of the
// answer: the keys that Assessment.Ranges may have. Some figures have a range alone.
func RangePaths() []string { return reckon.RangePaths() }

// Explain says what stands behind a finding, by its code: what it means, why it
// matters, where the limit comes from and what to do. It is false where no
// finding has that code.
func Explain(code string) (answer.Explanation, bool) { return reckon.Explain(code) }

// Explanations returns the explanations of all findings there are.
func Explanations() []answer.Explanation { return reckon.Explanations() }
