package main

import (
	"fmt"
	"io"
	"math"

	"gonum.org/v1/gonum/stat/distuv"
)

// bins of the rank histograms.
const bins = 10

// summary is what the truths of a subject came to with so many readings.
type summary struct {
	truths, failed, rough int
	inside                [len(paths)]float64 // share of the truths in the 10 to 90 % range; NaN where there is no such figure
	p                     [len(paths)]float64 // of the chi-square of the ranks against even ones
	width                 [len(paths)]float64 // mean
	back, named           float64             // shares of the readings
	told                  float64             // share of the answers that tell of a conflict
	runs                  float64             // mean number of engine runs for weighing
}

func sum(list []one) summary {
	var s summary
	read, conflicts := 0.0, 0.0
	var counts [len(paths)][bins]float64
	var n [len(paths)]float64
	for i := range list {
		o := &list[i]
		if o.failed {
			s.failed++
			continue
		}
		s.truths++
		if o.rough {
			s.rough++
		}
		for k := range paths {
			if math.IsNaN(o.rank[k]) {
				continue
			}
			n[k]++
			counts[k][min(bins-1, int(o.rank[k]*bins))]++
			s.width[k] += o.width[k]
			if o.inside[k] {
				s.inside[k]++
			}
		}
		read += float64(o.read)
		s.back += float64(o.back)
		s.named += float64(o.named)
		s.runs += float64(o.runs)
		if o.named > 0 {
			conflicts++
		}
	}
	for k := range paths {
		s.inside[k] /= n[k]
		s.width[k] /= n[k]
		square := 0.0
		for _, c := range counts[k] {
			even := n[k] / bins
			square += (c - even) * (c - even) / even
		}
		s.p[k] = distuv.ChiSquared{K: bins - 1}.Survival(square)
	}
	s.back, s.named = s.back/read, s.named/read
	s.told, s.runs = conflicts/float64(s.truths), s.runs/float64(s.truths)
	return s
}

// header begins the table.
func header(out io.Writer) {
	fmt.Fprintf(out, "| setup | readings | truths | inside the 80 %% range: %s, %s, %s, %s, %s | ranks even, p | back | named | conflicts | mean width | runs |\n",
		names[0], names[1], names[2], names[3], names[4])
	fmt.Fprintln(out, "|---|---|---|---|---|---|---|---|---|---|")
}

// row writes one line of the table.
func (s *summary) row(out io.Writer, name string, readings int) {
	fmt.Fprintf(out, "| %s | %d | %d |", name, readings, s.truths)
	each := func(format string, scale float64, list [len(paths)]float64) {
		for _, x := range list {
			if math.IsNaN(x) {
				fmt.Fprint(out, " -")
				continue
			}
			fmt.Fprintf(out, " "+format, scale*x)
		}
		fmt.Fprint(out, " |")
	}
	each("%.0f", 100, s.inside)
	each("%.3f", 1, s.p)
	if readings == 0 {
		fmt.Fprint(out, " - | - | - |")
	} else {
		fmt.Fprintf(out, " %.0f %% | %.0f %% | %.0f %% |", 100*s.back, 100*s.named, 100*s.told)
	}
	each("%.3g", 1, s.width)
	fmt.Fprintf(out, " %.0f", s.runs)
	if s.failed+s.rough > 0 {
		fmt.Fprintf(out, " (%d refused, %d rough)", s.failed, s.rough)
	}
	fmt.Fprintln(out, " |")
}
