package main

import (
	"flag"
	"fmt"
	"math"
	"os"

	"example.org/packcheck/cellfit"
	"example.org/packcheck/chemistry"
)

func main() {
	n := flag.Int("n", 300, "evaluations")
	which := flag.String("block", "agm", "")
	flag.Parse()
	base, _ := chemistry.Builtin().Profile(*which)
	t := block
	if *which == "agm-traction" {
		t = traction
	}
	fit, err := cellfit.FitHourTable(t, base, *n)
	if err != nil {
		fmt.Fprintln(os.Stderr, err)
		os.Exit(1)
	}
	p := fit.Profile
	fmt.Printf("c %.5f k_per_s %.5g ratio %.4f\nU %.4f\nR %.4f\nfast %.4f %.3g slow %.4f %.4g\n", p.Wells.C, p.Wells.KPerS, p.Capacity.Ratio, p.Rest.VoltsAt.Y, p.Resistance.OhmAh.Y, p.Fast.OhmAh.Y[0], p.Fast.TauS, p.Slow.OhmAh.Y[0], p.Slow.TauS)
	for i, row := range fit.Off {
		fmt.Printf("%7.3f h", t.Hours[i])
		for _, e := range row {
			fmt.Printf(" %6.1f", 100*math.Expm1(e))
		}
		fmt.Println()
	}
	rest := p.Rest.VoltsAt.Func()
	for i, c := range t.RestedV.X {
		fmt.Printf("rest %.2f %.4f want %.4f\n", c, rest(1-(1-c)/p.Capacity.Ratio), t.RestedV.Y[i])
	}
}
