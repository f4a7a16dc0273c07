// Command hourtable fits a lead-acid profile to its maker's constant-current
// table and prints the figures that chemistry/data holds, with the error in
// time at every point of the table.
//
//	go run ./internal/cellfit/cmd/hourtable -block agm
//	go run ./internal/cellfit/cmd/hourtable -block agm-traction
//	go run ./internal/cellfit/cmd/hourtable -evaluations 800 -refit chemistry/data/members
//
// The last one writes the blocks that a lead-acid battery is drawn from, each
// fitted to the few points that its sheet gives, with agm as the prior.
//
// The search starts from the profile as it is, so a run that changes little
// says that the shipped figures are the fitted ones.
package main

import (
	"flag"
	"fmt"
	"io"
	"math"
	"os"
	"strings"

	"example.org/packcheck/chemistry"
	"example.org/packcheck/internal/cellfit"
)

func main() {
	if err := run(os.Args[1:], os.Stdout); err != nil {
		fmt.Fprintln(os.Stderr, "hourtable:", err)
		os.Exit(1)
	}
}

func run(args []string, out io.Writer) error {
	flags := flag.NewFlagSet("hourtable", flag.ContinueOnError)
	name := flags.String("block", "agm", "`profile` to fit: agm or agm-traction")
	evaluations := flags.Int("evaluations", 200, "stop after so many runs of the whole table")
	refit := flags.String("refit", "", "fit the member blocks and write them into this `directory`")
	if err := flags.Parse(args); err != nil {
		return err
	}
	if *refit != "" {
		return writeMembers(*refit, *evaluations, out)
	}
	table, ok := hourTables[*name]
	if !ok {
		return fmt.Errorf("no table for %q, want agm or agm-traction", *name)
	}
	base, ok := chemistry.Builtin().Profile(*name)
	if !ok {
		return fmt.Errorf("no profile %q", *name)
	}
	fit, err := cellfit.FitHourTable(table, base, *evaluations)
	if err != nil {
		return err
	}
	p := fit.Profile
	fmt.Fprintf(out, "wells: c = %.5f, k_per_s = %.5g\ncapacity: ratio = %.4f\n", p.Wells.C, p.Wells.KPerS, p.Capacity.Ratio)
	fmt.Fprintf(out, "rest: volts = %.4f\nresistance: ohm_ah = %.4f\n", p.Rest.VoltsAt.Y, p.Resistance.OhmAh.Y)
	fmt.Fprintf(out, "fast: ohm_ah = %.4f, tau_s = %.3g\nslow: ohm_ah = %.4f, tau_s = %.4g\n\n", p.Fast.OhmAh.Y[0], p.Fast.TauS, p.Slow.OhmAh.Y[0], p.Slow.TauS)
	fmt.Fprintln(out, "error in time, %, by hours and end voltage per cell:")
	fmt.Fprintln(out, row("", table.EndV, "%7.2f"))
	for i, off := range fit.Off {
		percent := make([]float64, len(off))
		for j, e := range off {
			percent[j] = 100 * math.Expm1(e)
		}
		fmt.Fprintln(out, row(fmt.Sprintf("%.3f h", table.Hours[i]), percent, "%+7.1f"))
	}
	rest := p.Rest.VoltsAt.Func()
	fmt.Fprintln(out, "\nrest voltage per cell by label charge, fitted and published:")
	for i, c := range table.RestedV.X {
		fmt.Fprintf(out, "%3.0f %%  %.4f  %.4f\n", 100*c, rest(1-(1-c)/p.Capacity.Ratio), table.RestedV.Y[i])
	}
	return nil
}

func row(head string, values []float64, format string) string {
	var b strings.Builder
	fmt.Fprintf(&b, "%-9s", head)
	for _, v := range values {
		if math.IsNaN(v) {
			b.WriteString("      -")
		} else {
			fmt.Fprintf(&b, format, v)
		}
	}
	return b.String()
}
