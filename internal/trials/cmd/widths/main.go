// Command widths prints how wide an answer is and what makes it so: for each
// figure its 10, 50 and 90 % point, the ratio of the ends, and the unknowns that
// most of its spread goes with, as shares of the variance of its logarithm (first
// order, A. Saltelli and others, Global Sensitivity Analysis: The Primer, 2008).
//
//	go run ./internal/trials/cmd/widths                  the stock vehicles listed here
//	go run ./internal/trials/cmd/widths my-setup.toml    or setups of one's own
//	go run ./internal/trials/cmd/widths -draws 4096
package main

import (
	"cmp"
	"flag"
	"fmt"
	"io"
	"math"
	"os"
	"slices"
	"strings"

	"example.org/packcheck/internal/draws"
	"example.org/packcheck/internal/reckon"
	"example.org/packcheck/setup"
)

// paths are the figures that are told.
var paths = [...]string{"ride.lasts_pedal_min", "steady.battery_a", "steady.speed_kmh", "launch.blocked_battery_a", "launch.wheels_up_a", "pack.usable_ah"}

func main() {
	if err := run(os.Args[1:], os.Stdout); err != nil {
		fmt.Fprintln(os.Stderr, "widths:", err)
		os.Exit(1)
	}
}

func run(args []string, out io.Writer) error {
	flags := flag.NewFlagSet("widths", flag.ContinueOnError)
	count := flags.Int("draws", 2048, "vehicles drawn")
	most := flags.Int("keys", 6, "unknowns named beside a figure, at most")
	if err := flags.Parse(args); err != nil {
		return err
	}
	if flags.NArg() == 0 {
		for i := range stocks {
			if err := tell(out, stocks[i].name, stocks[i].toml(), *count, *most); err != nil {
				return err
			}
		}
		return nil
	}
	for _, name := range flags.Args() {
		text, err := os.ReadFile(name)
		if err != nil {
			return err
		}
		if err := tell(out, name, string(text), *count, *most); err != nil {
			return err
		}
	}
	return nil
}

// tell prints the table of one setup.
func tell(out io.Writer, name, text string, count, most int) error {
	s, err := setup.Read(strings.NewReader(text), name)
	if err != nil {
		return err
	}
	trial, err := reckon.NewTrial(s)
	if err != nil {
		return err
	}
	z := draws.Points(count, trial.Dims())
	values := make([][]float64, len(paths))
	for _, point := range z {
		v, err := trial.Figures(point, paths[:])
		if err != nil {
			return err
		}
		for k := range paths {
			values[k] = append(values[k], math.Log(max(v[k], 1e-3)))
		}
	}
	explain, keys := draws.NewExplainer(z, nil), trial.Keys()
	fmt.Fprintln(out, name)
	for k, path := range paths {
		p := draws.SpreadOf(values[k], nil)
		fmt.Fprintf(out, "  %-26s %7.2f %7.2f %7.2f  1:%.2f ", path, math.Exp(p.P10), math.Exp(p.P50), math.Exp(p.P90), math.Exp(p.P90-p.P10))
		share := explain.Explain(values[k])
		order := make([]int, len(share))
		for i := range order {
			order[i] = i
		}
		slices.SortStableFunc(order, func(a, b int) int { return cmp.Compare(share[b], share[a]) })
		for _, i := range order[:min(most, len(order))] {
			if share[i] >= leastShare {
				fmt.Fprintf(out, " %s %.0f %%", keys[i], 100*share[i])
			}
		}
		fmt.Fprintln(out)
	}
	return nil
}

// leastShare is from which share of the variance on an unknown is named: below
// it a thousand draws cannot tell it from none.
const leastShare = 0.015
