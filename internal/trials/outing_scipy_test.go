package trials_test

import (
	"bytes"
	"encoding/json"
	"math"
	"os"
	"os/exec"
	"strings"
	"syscall"
	"testing"
	"time"

	"example.org/packcheck/cutoff"
	"example.org/packcheck/internal/build"
	"example.org/packcheck/internal/ride"
	"example.org/packcheck/setup"
)

// The figures that testdata/outing.py gave for the tractor of
// examples/tractor-done-properly.toml on plain contacts, of which everything is
// told, to its empty pack and to a cutoff at 16 V, with python3-scipy 1.10.1 (solve_ivp, LSODA, rtol 1e-8).
var scipyOutings = map[float64]scipyOuting{
	0:  {PedalS: 1750.95798, ClockS: 2450.95798, Metres: 3416.93384, Ah: 4.845475},
	16: {PedalS: 1375.8149, ClockS: 1925.8149, Metres: 2785.99079, Ah: 3.82671491},
}

type scipyOuting struct {
	PedalS float64 `json:"pedal_s"`
	ClockS float64 `json:"clock_s"`
	Metres float64 `json:"metres"`
	Ah     float64 `json:"ah"`
}

// tolerance on ride time, distance and charge.
const scipyShare = 0.005

// scipyOutingCase is the outing that both integrate: on contacts, for as long as it lasts.
func scipyOutingCase(t testing.TB) ride.Case {
	t.Helper()
	text := onContacts(t).without("cutoff.module").toml()
	s, err := setup.Read(strings.NewReader(text), "outing.toml")
	if err != nil {
		t.Fatal(err)
	}
	p, err := s.Parts()
	if err != nil {
		t.Fatal(err)
	}
	builder, err := build.New(p)
	if err != nil {
		t.Fatal(err)
	}
	likely, err := builder.Case(setup.Likely)
	if err != nil {
		t.Fatal(err)
	}
	c := likely.Case
	c.WantedS = 0
	return c
}

// The same outing by scipy and by the engine, in processor time: of the whole python
// process, and of it less what starting it with scipy takes.
func BenchmarkOutingAgainstScipy(b *testing.B) {
	python := pythonWithScipy()
	if python == "" || os.Getenv("PACKCHECK_SPEED") == "" {
		b.Skip("PACKCHECK_SPEED=1 and a python3 with scipy would have integrated the outing for comparison")
	}
	c := scipyOutingCase(b)
	var got ride.Outcome
	for b.Loop() {
		got = ride.Run(&c, nil)
	}
	ours := b.Elapsed().Seconds() / float64(b.N)
	idle := exec.Command(python, "-c", "import numpy, scipy.integrate")
	if err := idle.Run(); err != nil {
		b.Fatal(err)
	}
	began := childrenTime(b)
	theirs := integrate(b, python, &c, 0)
	whole := childrenTime(b) - began
	empty := (idle.ProcessState.UserTime() + idle.ProcessState.SystemTime()).Seconds()
	b.ReportMetric(whole/ours, "times-faster")
	b.ReportMetric((whole-empty)/ours, "times-faster-than-integrating")
	b.ReportMetric(100*math.Abs(got.PedalS/theirs.PedalS-1), "off-%")
}

// childrenTime is the processor time of the processes that were started and have ended, in seconds.
func childrenTime(b *testing.B) float64 {
	b.Helper()
	var u syscall.Rusage
	if err := syscall.Getrusage(syscall.RUSAGE_CHILDREN, &u); err != nil {
		b.Fatal(err)
	}
	return time.Duration(u.Utime.Nano() + u.Stime.Nano()).Seconds()
}

func TestTheOutingAgreesWithAnIndependentIntegration(t *testing.T) {
	c := scipyOutingCase(t)
	python := pythonWithScipy()
	for opensAtV, want := range scipyOutings {
		got := ride.Run(withCutoff(t, c, opensAtV), nil)
		agree := func(against string, w scipyOuting) {
			t.Helper()
			for what, pair := range map[string][2]float64{
				"pedal time": {got.PedalS, w.PedalS}, "clock time": {got.ClockS, w.ClockS},
				"distance": {got.DistanceM, w.Metres}, "charge": {got.DeliveredAh, w.Ah},
			} {
				off := math.Abs(pair[0] - pair[1])
				if what == "clock time" { // the last drive may end just before a pause or just behind it
					off = max(0, off-c.PauseS)
				}
				if !(off <= scipyShare*pair[1]) {
					t.Errorf("cutoff at %g V, %s: %g, %s %g", opensAtV, what, pair[0], against, pair[1])
				}
			}
		}
		agree("recorded", want)
		if os.Getenv("PACKCHECK_SLOW") == "" || python == "" {
			continue
		}
		live := integrate(t, python, &c, opensAtV)
		t.Logf("cutoff at %g V: scipy %+v, ours %.6g s, %.6g s, %.6g m, %.6g Ah", opensAtV, live, got.PedalS, got.ClockS, got.DistanceM, got.DeliveredAh)
		agree("scipy", live)
	}
	if os.Getenv("PACKCHECK_SLOW") == "" || python == "" {
		t.Log("compared with the recorded figures only; PACKCHECK_SLOW=1 and a python3 with scipy integrate it anew")
	}
}

// withCutoff returns the case with a cutoff without delay at the pack, or with
// none for 0 V.
func withCutoff(t testing.TB, c ride.Case, opensAtV float64) *ride.Case {
	t.Helper()
	if opensAtV > 0 {
		chain, err := cutoff.NewChain(cutoff.Device{Where: cutoff.Pack, OpensAtV: opensAtV})
		if err != nil {
			t.Fatal(err)
		}
		c.Cutoffs = chain
	}
	return &c
}

// pythonWithScipy returns a python3 that has scipy, "" when there is none.
// Debian's own stands first: a python3 earlier on the path may lack it.
func pythonWithScipy() string {
	for _, name := range []string{"/usr/bin/python3", "python3"} {
		if exec.Command(name, "-c", "import scipy").Run() == nil {
			return name
		}
	}
	return ""
}

// integrate hands a case to testdata/outing.py.
func integrate(t testing.TB, python string, c *ride.Case, opensAtV float64) scipyOuting {
	t.Helper()
	input, err := json.Marshal(scipyCase(c, opensAtV))
	if err != nil {
		t.Fatal(err)
	}
	cmd := exec.Command(python, "testdata/outing.py")
	cmd.Stdin = bytes.NewReader(input)
	cmd.Stderr = os.Stderr
	output, err := cmd.Output()
	if err != nil {
		t.Fatal(err)
	}
	var out scipyOuting
	if err := json.Unmarshal(output, &out); err != nil {
		t.Fatal(err)
	}
	return out
}

// scipyCase is everything that the equations need, taken from the profile's own
// curves and rules and not from the tables that the engine looks up.
func scipyCase(c *ride.Case, opensAtV float64) map[string]any {
	spec, wells := c.Pack.Spec(), c.Pack.Wells()
	p := spec.Profile
	cells := float64(spec.CellsInSeries)
	scale := c.Pack.MidOhm() / p.Resistance.OhmAh.At(0.5)
	var z, ocv, r0, r1, r2, temps, factor, share []float64
	rest, q0, q1, q2 := p.Rest.VoltsAt.Func(), p.Resistance.OhmAh.Func(), p.Fast.OhmAh.Func(), p.Slow.OhmAh.Func()
	for i := 0; i <= 4000; i++ {
		x := float64(i) / 4000
		z, ocv = append(z, x), append(ocv, cells*rest(x))
		r0, r1, r2 = append(r0, scale*q0(x)), append(r1, scale*q1(x)), append(r2, scale*q2(x))
	}
	ohm, capacity := p.Resistance.TempFactor.Func(), p.Capacity.TempFactor.Func()
	ohm1, ohm2 := p.Fast.FactorOver(p.Resistance).Func(), p.Slow.FactorOver(p.Resistance).Func()
	var factor1, factor2 []float64
	for x := -20.0; x <= 100; x += 0.25 {
		temps, factor, share = append(temps, x), append(factor, ohm(x)), append(share, capacity(x))
		factor1, factor2 = append(factor1, ohm1(x)), append(factor2, ohm2(x))
	}
	massKg := c.Pack.MassKg()
	cooling := p.Heat.CoolingWM2K * p.Heat.AreaM2PerKg23 * math.Pow(massKg, 2.0/3)
	if spec.ClosedShell {
		cooling *= p.Heat.ShellShare
	}
	v := c.Vehicle
	n, th := float64(v.Motors), v.Motor.Thermal
	chains := n / float64(v.MotorsInSeries)
	turns := v.GearRatio / v.WheelRadiusM
	emfPerMS := float64(v.MotorsInSeries) * v.Motor.TorqueConstant * turns
	lossN := v.GearEfficiency * n * v.Motor.TorqueConstant * v.Motor.NoLoadA * turns
	start := c.Pack.StateAt(c.StartCharge, c.PackC)
	return map[string]any{
		"z": z, "ocv_v": ocv, "r0_ohm": r0, "r1_ohm": r1, "r2_ohm": r2,
		"temp_c": temps, "r_factor": factor, "r1_factor": factor1, "r2_factor": factor2, "capacity_share": share,
		"knee1_v": cells * p.Fast.KneeV, "knee2_v": cells * p.Slow.KneeV,
		"wells_c": wells.C, "wells_ah": wells.CapacityAh, "valve_per_s": wells.KPerS,
		"tau1_s": p.Fast.TauS, "tau2_s": p.Slow.TauS,
		"cooling_w_per_k": cooling, "heat_j_per_k": massKg * p.Heat.SpecificJKgK,
		"start":     []float64{start.Y1Ah * 3600, start.Y2Ah * 3600, 0, 0, c.PackC},
		"ambient_c": c.AmbientC, "path_ohm": c.PathOhm, "standby_a": c.StandbyA,
		"motors": n, "motor_ohm_20": v.Motor.WindingOhm * float64(v.MotorsInSeries) / chains,
		"volt_per_ms": emfPerMS, "newton_per_a": v.GearEfficiency * emfPerMS,
		"hold_n": lossN + v.RollN + v.GradeN, "slip_n": v.GripN - v.RollN - v.GradeN,
		"grip_a": (v.GripN + lossN) / (v.GearEfficiency * emfPerMS), "drag": v.DragNS2PerM2,
		"inertia_kg":        v.MassKg + v.GearEfficiency*n*v.Motor.RotorInertiaKgM2*turns*turns,
		"friction_w_per_ms": lossN / v.GearEfficiency,
		"winding_j_per_k":   th.WindingJPerK, "case_j_per_k": th.CaseJPerK,
		"winding_to_case_k_per_w": th.WindingToCaseKPerW, "case_to_air_k_per_w": th.CaseToAirKPerW,
		"drive_s": c.DriveS, "pause_s": c.PauseS, "opens_at_v": opensAtV,
	}
}
