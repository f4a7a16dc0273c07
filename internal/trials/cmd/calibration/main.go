// Command calibration hides vehicles in the worlds of some setups, reads them
// with errors, answers with the readings and counts how often the truth lies
// where the answer says (S. Talts, M. Betancourt, D. Simpson, A. Vehtari and
// A. Gelman, Validating Bayesian inference algorithms with simulation-based
// calibration (2018), arXiv 1804.06788).
//
//	go run ./internal/trials/cmd/calibration                 200 truths of each setup
//	go run ./internal/trials/cmd/calibration -truths 40 -only stock
//	go run ./internal/trials/cmd/calibration -normal         errors of the normal law
//	go run ./internal/trials/cmd/calibration -noise 2        twice the errors that are assumed
//	go run ./internal/trials/cmd/calibration -ends 16        how far the ends of ranges are off, over 16 placings of the draws
//
// The table is Markdown. Eight of ten truths should lie inside the 80 % range,
// ranks should be even (p of a chi-square over ten bins: below 0.01 they are
// not), nearly all readings come back within their error, and every reading
// should narrow the answer.
package main

import (
	"flag"
	"fmt"
	"io"
	"os"
	"slices"
	"strings"
)

func main() {
	if err := run(os.Args[1:], os.Stdout); err != nil {
		fmt.Fprintln(os.Stderr, "calibration:", err)
		os.Exit(1)
	}
}

func run(args []string, out io.Writer) error {
	flags := flag.NewFlagSet("calibration", flag.ContinueOnError)
	c := settings{}
	flags.IntVar(&c.truths, "truths", 200, "hidden truths for each setup and number of readings")
	flags.IntVar(&c.draws, "draws", 2048, "draws of an answer")
	flags.IntVar(&c.most, "most", 200, "draws of an answer, at most, whose figures are computed")
	flags.IntVar(&c.workers, "workers", 1, "truths at a time")
	flags.BoolVar(&c.normal, "normal", false, "errors of the normal law; otherwise Student's with 4 degrees of freedom, as the answer assumes")
	flags.Float64Var(&c.noise, "noise", 1, "errors over those that the answer assumes")
	flags.Uint64Var(&c.seed, "seed", 1, "of the truths and errors")
	examples := flags.String("examples", "examples", "`directory` of the example setups")
	flags.IntVar(&c.leastRead, "least", 0, "readings, at least")
	flags.IntVar(&c.mostRead, "readings", 6, "readings, at most")
	placings := flags.Int("ends", 0, "instead: how far the ends of ranges are off, over so many placings of the draws")
	many := flags.Int("many", 1<<17, "draws that the ends are held against")
	only := flags.String("only", "", "only setups whose name contains this")
	if err := flags.Parse(args); err != nil {
		return err
	}
	list, err := subjects(*examples)
	if err != nil {
		return err
	}
	if *placings > 0 {
		endsHeader(out)
	} else {
		header(out)
	}
	for i := range list {
		s := &list[i]
		if !strings.Contains(s.name, *only) {
			continue
		}
		if *placings > 0 {
			if err := c.ends(out, s, *placings, *many); err != nil {
				return fmt.Errorf("%s: %w", s.name, err)
			}
			continue
		}
		for _, count := range c.counts(s) {
			ones, err := c.calibrate(s, count)
			if err != nil {
				return fmt.Errorf("%s with %d readings: %w", s.name, count, err)
			}
			got := sum(ones)
			got.row(out, s.name, count)
		}
	}
	return nil
}

// counts are the numbers of readings that are tried.
func (s *subject) counts() []int {
	if s.bench { // two are all that a bench shows
		return []int{0, 1, 2}
	}
	return []int{0, 1, 3, 6}
}

// counts are those of a subject that are asked for.
func (c *settings) counts(s *subject) []int {
	return slices.DeleteFunc(s.counts(), func(count int) bool { return count < c.leastRead || count > c.mostRead })
}
