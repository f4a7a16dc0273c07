package main

import (
	"flag"
	"fmt"
	"math"
	"os"
	"path/filepath"
	"strings"

	"example.org/packcheck/battery"
	"example.org/packcheck/cellfit"
	"example.org/packcheck/chemistry"
)

func main() {
	data := flag.String("data", os.Getenv("PACKCHECK_REFDATA"), "directory")
	flag.Parse()
	for _, d := range datasets {
		if flag.NArg() > 0 && !strings.Contains(d.folder, flag.Arg(0)) {
			continue
		}
		files, _ := filepath.Glob(filepath.Join(*data, d.folder, "*.csv"))
		logs := map[string]*cellfit.Log{}
		var names []string
		for _, f := range files {
			in, _ := os.Open(f)
			l, err := cellfit.Read(in, cellfit.Options{Name: filepath.Base(f)})
			in.Close()
			if err != nil {
				continue
			}
			n := strings.TrimSuffix(filepath.Base(f), ".csv")
			logs[n] = l
			names = append(names, n)
		}
		base, _ := chemistry.Builtin().Profile(d.base)
		o := d.options
		o.Base, o.CapacityAh, o.CellsInSeries, o.AmbientC = base, d.ah, d.series, d.ambientC
		var fitLogs []*cellfit.Log
		for _, n := range d.fit {
			if strings.Contains(n, "pulses") || strings.Contains(n, "hppc_25c") {
				ps := pulses(filepath.Join(*data, d.folder, n+".csv"))
				for _, l := range ps {
					fitLogs = append(fitLogs, l)
					o.StartFull = append(o.StartFull, false)
					o.Weights = append(o.Weights, 2/float64(len(ps)))
				}
				continue
			}
			o.Weights = append(o.Weights, 1)
			fitLogs = append(fitLogs, logs[n])
			full := false
			for _, x := range d.full {
				full = full || x == n
			}
			o.StartFull = append(o.StartFull, full)
		}
		fit, err := cellfit.FitCell(fitLogs, o)
		if err != nil {
			panic(err)
		}
		p := fit.Profile
		fmt.Printf("== %s full %.4f±%.4f Ea %.1f tau %.1f %.0f wells %.4f %.2g starts %.4f rms %.4f\n", d.folder, fit.FullAh, fit.FullAhSigma, fit.KiloJ, p.Fast.TauS, p.Slow.TauS, p.Wells.C, p.Wells.KPerS, head(fit.ChargeAtStart), head(fit.RMSV))
		fmt.Printf("U %.3f\nR0 mOhm %.1f\nR1 %.1f\nR2 %.1f\n", p.Rest.VoltsAt.Y, scale(p.Resistance.OhmAh.Y, 1000/d.ah), scale(p.Fast.OhmAh.Y, 1000/d.ah), scale(p.Slow.OhmAh.Y, 1000/d.ah))
		m, err := battery.New(battery.Spec{Profile: p, CellsInSeries: d.series, CapacityAh: d.ah, MassKg: d.massKg})
		if err != nil {
			panic(err)
		}
		if h, ok := cellfit.FitHeat(m, fitLogs, fit.ChargeAtStart); ok {
			p.Heat.SpecificJKgK = h.JPerK / d.massKg
			p.Heat.CoolingWM2K = h.WPerK / (p.Heat.AreaM2PerKg23 * math.Cbrt(d.massKg*d.massKg))
			fmt.Println("heat", h, p.Heat.SpecificJKgK, p.Heat.CoolingWM2K)
		} else {
			p.Heat.SpecificJKgK, p.Heat.CoolingWM2K = 5000, 1000
		}
		m, err = battery.New(battery.Spec{Profile: p, CellsInSeries: d.series, CapacityAh: d.ah, MassKg: d.massKg})
		if err != nil {
			panic(err)
		}
		for _, n := range names {
			o := cellfit.ReplayOptions{AmbientC: d.ambientC, CutoffV: d.cutoffV}
			for _, x := range d.full {
				if x == n {
					o.StartCharge = 1
				}
			}
			a := cellfit.Replay(m, logs[n], o)
			fmt.Printf("%-45s start %.3f rms %5.2f %% worst %.3f  Ah log %.3f model %.3f (%+.1f %%) T %.1f/%.1f\n", n, a.StartCharge, 100*a.RMSV/m.NominalV(), a.WorstV, a.LogAh, a.ModelAh, 100*(a.ModelAh/a.LogAh-1), a.LogMaxC, a.ModelMaxC)
		}
		if os.Getenv("DUMP") != "" {
			for i, n := range d.fit {
				if i >= len(fitLogs) || logs[n] == nil {
					continue
				}
				l := logs[n]
				st := m.StateAt(fit.ChargeAtStart[i], d.ambientC)
				_ = st
				fmt.Println(n)
				cellfit.Trace(m, l, fit.ChargeAtStart[i], 25)
			}
		}
		for _, f := range files {
			ps := pulses(f)
			if ps == nil {
				continue
			}
			var sum float64
			for _, l := range ps {
				a := cellfit.Replay(m, l, cellfit.ReplayOptions{AmbientC: d.ambientC})
				last := l.Rows() - 1
				_ = last
				sum += a.RMSV * a.RMSV
			}
			fmt.Printf("%-45s %d pulses rms %5.2f %%\n", filepath.Base(f), len(ps), 100*math.Sqrt(sum/float64(len(ps)))/m.NominalV())
		}
	}
}

func scale(x []float64, f float64) []float64 {
	out := make([]float64, len(x))
	for i := range x {
		out[i] = x[i] * f
	}
	return out
}

func head(x []float64) []float64 { return x[:min(len(x), 6)] }
