package main

import (
	"encoding/csv"
	"fmt"
	"math"
	"os"
	"path/filepath"
	"slices"
	"strconv"
	"strings"

	"example.org/packcheck/answer"
	"example.org/packcheck/battery"
	"example.org/packcheck/charge"
	"example.org/packcheck/chemistry"
	"example.org/packcheck/internal/cellfit"
)

// measured is a subject with its truths.
type measured struct {
	subject
	truths []truth
}

// pouchSet is a dataset that no member is fitted to.
var pouchSet = dataset{
	folder: "nmc_pouch_12p5ah", cell: "nmc-pouch-12ah5", base: "li-ion", kind: chemistry.Middle, printedAh: 12.5, ah: 12.5, series: 1, massKg: 0.25, cutoffV: 2.7, ambientC: 25,
	source: answer.Source{ID: "nmc-pouch", Text: "About:Energy Limited, NMC111|Graphite & LFP|Graphite Cell Parameterisations for BPX, 2022-2023, CC BY-SA 4.0", Known: "copy"},
}

// sameCell are members of one cell model, left out together.
var sameCell = [][]string{{"power-18650-3ah", "power-18650-3ah-b"}}

// subjects reads everything that was measured of members and of what could be
// one.
func subjects(dir string) ([]measured, error) {
	var out []measured
	for _, d := range append(slices.Clone(datasets), pouchSet) {
		if d.kind == "" && d.base != "agm" {
			continue // manganese pouches: no family of ours
		}
		c, err := d.read(dir)
		if err != nil {
			return nil, err
		}
		s := subject{family: d.family(), leaveOut: []string{d.cell}, printedAh: d.printedAh, series: d.series, massKg: d.massKg, health: 1}
		if d.base == "agm" {
			s.leaveOut, s.printedAh = []string{"cyclic-12v-17ah"}, d.ah
		}
		for _, group := range sameCell {
			if slices.Contains(group, d.cell) {
				s.leaveOut = group
			}
		}
		for _, name := range c.names {
			m := measured{subject: s}
			m.name = d.cell + "/" + name
			if h, ok := d.healthOf(name, c.logs[name]); ok && !strings.HasPrefix(name, "dnn01") {
				m.health = min(h, 1)
			}
			m.stillAir = d.stillAir != "" && strings.HasPrefix(name, d.stillAir)
			m.truths = d.truthsOf(name, c.logs[name])
			if len(m.truths) > 0 {
				out = append(out, m)
			}
		}
		for _, name := range sortedKeys(c.pulses) {
			m := measured{subject: s}
			m.name = d.cell + "/" + name
			m.truths = d.pulseTruths(name, c.pulses[name])
			out = append(out, m)
		}
	}
	packs, err := packSubjects(dir)
	return append(out, append(packs, blockSubjects()...)...), err
}

// family is the one that a dataset's cell is drawn from.
func (d dataset) family() string {
	switch {
	case d.base != "li-ion":
		return d.base
	case d.kind == chemistry.Power:
		return "li-ion-power"
	case d.kind == chemistry.Energy:
		return "li-ion-energy"
	}
	return "li-ion" // in between, or not told
}

// higherEnd is an end voltage per cell at which a vehicle or tool stops, above
// the cell's own.
func (d dataset) higherEnd() float64 {
	switch d.base {
	case "agm":
		return 1.90
	case "lifepo4":
		return 2.8
	}
	return 3.0
}

// truthsOf takes what a log shows: of a discharge at one current, or of a charge.
func (d dataset) truthsOf(name string, log *cellfit.Log) []truth {
	ambient, start := d.ambientC, d.ambientC
	if log.AmbientC != nil {
		ambient, start = log.AmbientC[0], log.AmbientC[0]
	}
	if log.TempC != nil {
		start = log.TempC[0]
		if log.AmbientC == nil {
			ambient = start
		}
	}
	if steady(log) {
		return d.dischargeTruths(name, log, ambient, start)
	}
	if slices.Min(log.Amps) < -0.1 && slices.Max(log.Amps) < 0.1 && d.base == "li-ion" && strings.Contains(name, "cccv") {
		return d.chargeTruths(name, log, ambient)
	}
	return nil
}

// passage is a discharge at one current, measured or computed.
type passage struct {
	ah, wh, endH float64 // to the end voltage, and hours to the higher one
	midV         float64 // at a given time
	hottestC     float64
}

func (d dataset) dischargeTruths(name string, log *cellfit.Log, ambient, start float64) []truth {
	amps := loadedA(log)
	end, higher := d.cutoffV, d.higherEnd()*float64(d.series)
	got := passage{ah: math.NaN(), endH: math.NaN(), hottestC: math.NaN()}
	first := slices.IndexFunc(log.Amps, func(a float64) bool { return a > 0.5*amps })
	wh := 0.0
	last := first
	for i := first; i < log.Rows() && log.Amps[i] > 0.5*amps; i++ {
		if i > first {
			wh += (log.Volts[i] + log.Volts[i-1]) / 2 * (log.ChargeAh[i] - log.ChargeAh[i-1])
		}
		if math.IsNaN(got.endH) && log.Volts[i] <= higher {
			got.endH = (log.TimeS[i] - log.TimeS[first]) / 3600
		}
		last = i
		if log.Volts[i] <= end*1.002 {
			break
		}
	}
	if log.Volts[last] > end*1.01 {
		return nil // stopped before the end
	}
	got.ah, got.wh = log.ChargeAh[last]-log.ChargeAh[first], wh
	halfS := log.TimeS[first] + (log.TimeS[last]-log.TimeS[first])/2
	for i := first + 1; i <= last; i++ {
		if log.TimeS[i] >= halfS {
			share := (halfS - log.TimeS[i-1]) / (log.TimeS[i] - log.TimeS[i-1])
			got.midV = log.Volts[i-1] + share*(log.Volts[i]-log.Volts[i-1])
			break
		}
	}
	halfH := (halfS - log.TimeS[first]) / 3600
	restV := 0.0 // not quite full where it was charged in the cold, or a charger stopped early: its volts at rest say so
	if d.base != "agm" && log.Amps[0] < 0.1*amps {
		restV = log.Volts[0]
	}
	done := map[*battery.Model]passage{}
	run := func(m *battery.Model) passage {
		p, ok := done[m]
		if !ok {
			p = pass(m, amps, end, higher, halfH, ambient, start, restV)
			done[m] = p
		}
		return p
	}
	out := []truth{
		{ofCharge, name, got.ah, func(m *battery.Model) float64 { return run(m).ah }},
		{ofEnergy, name, got.wh, func(m *battery.Model) float64 { return run(m).wh }},
		{ofEndTime, name, got.endH, func(m *battery.Model) float64 { return run(m).endH }},
		{ofMidVolts, name, got.midV, func(m *battery.Model) float64 { return run(m).midV }},
	}
	if log.TempC != nil && d.isThermal {
		if hottest := slices.Max(log.TempC[:last+1]); hottest-log.TempC[0] >= warmsK {
			out = append(out, truth{ofHottest, name, hottest, func(m *battery.Model) float64 { return run(m).hottestC }})
		}
	}
	return out
}

// pass discharges a full model (or one that rests at restV) at one current.
func pass(m *battery.Model, amps, end, higher, halfH, ambient, startC, restV float64) passage {
	s := m.StateAt(1, startC)
	if restV > 0 {
		s = m.StateAt(chargeResting(m, restV, startC), startC)
	}
	const steps = 800
	dtS := m.FullAh() / amps * 3600 / steps
	step := m.Over(dtS)
	p := passage{midV: end, hottestC: startC}
	v := m.TerminalV(&s, amps)
	for i := range 2 * steps {
		if h := float64(i) * dtS / 3600; h <= halfH {
			p.midV = v
		}
		if v <= end || m.Empty(&s) {
			break
		}
		step.Advance(&s, amps, ambient)
		before := v
		v = m.TerminalV(&s, amps)
		if v > higher {
			p.endH = float64(i+1) * dtS / 3600
		}
		p.ah += amps * dtS / 3600
		p.wh += amps * dtS / 3600 * (before + v) / 2
		p.hottestC = math.Max(p.hottestC, s.TempC)
	}
	return p
}

// chargeResting is the charge at which a model rests at a voltage.
func chargeResting(m *battery.Model, volts, tempC float64) float64 {
	lo, hi := 0.0, 1.0
	for range 30 {
		mid := (lo + hi) / 2
		if m.RestedV(m.StateAt(mid, tempC)) < volts {
			lo = mid
		} else {
			hi = mid
		}
	}
	return hi
}

// huntS is over how long the current at the end of a charge is taken.
const huntS = 360.0

// chargeTruths takes the hours of a charge until its current has fallen to 5 %
// of the capacity per hour. What went in is told: the charger counts it.
func (d dataset) chargeTruths(name string, log *cellfit.Log, ambient float64) []truth {
	most := -slices.Min(log.Amps)
	endA := 0.05 * d.ah
	first := slices.IndexFunc(log.Amps, func(a float64) bool { return a < -0.5*most })
	if first < 0 {
		return nil
	}
	last := first
	for i := first; i < log.Rows() && log.Amps[i] < -0.02; i++ {
		last = i
		if -log.Amps[i] < endA*1.03 && log.Volts[i] > 4.15 {
			break
		}
	}
	// Where the charger's volts hunt the current dips below that long before it is
	// there: what flowed over the last minutes counts.
	before := last
	for before > first && log.TimeS[last]-log.TimeS[before] < huntS {
		before--
	}
	endA = math.Max(endA, (log.ChargeAh[before]-log.ChargeAh[last])*3600/(log.TimeS[last]-log.TimeS[before]))
	restV := log.Volts[0]
	hours := (log.TimeS[last] - log.TimeS[first]) / 3600
	return []truth{{ofHours, name, hours, func(m *battery.Model) float64 {
		out, err := charge.Simulate(charge.Case{
			Pack: m, Start: m.StateAt(chargeResting(m, restV, ambient), ambient), AmbientC: ambient,
			CurrentA: most, EndV: 4.2, EndA: endA, StepS: 30,
		})
		if err != nil {
			return math.NaN()
		}
		return out.HoursToFull.LikelyH
	}}}
}

// pulseTruths takes the resistance at the end of the pulses about half charge,
// the median where there are several.
func (d dataset) pulseTruths(name string, pulses []*cellfit.Log) []truth {
	rests := make([]float64, 0, len(pulses))
	for _, p := range pulses {
		rests = append(rests, p.Volts[0])
	}
	slices.Sort(rests)
	midV := median(rests)
	var ohms, amps []float64
	tempC := d.ambientOf(name)
	for _, p := range pulses {
		n := p.Rows() - 1
		if math.Abs(p.Volts[0]-midV) < 0.06 && p.TimeS[n] > 8 {
			ohms, amps = append(ohms, (p.Volts[0]-p.Volts[n])/p.Amps[n]), append(amps, p.Amps[n])
			if p.TempC != nil {
				tempC = p.TempC[0]
			}
		}
	}
	if len(ohms) == 0 {
		return nil
	}
	load := median(amps)
	return []truth{{ofPulse, name, median(ohms), func(m *battery.Model) float64 {
		return m.PulseOhm(m.StateAt(chargeResting(m, midV, 25), tempC), load, 10)
	}}}
}

// packRow is one discharge of a life test, of which only means are known.
type packRow struct {
	isReference bool
	amps, ah    float64
}

// packLife reads the discharges of one pack in their order.
func packLife(dir, pack string) ([]packRow, error) {
	f, err := os.Open(filepath.Join(dir, pack+".csv"))
	if err != nil {
		return nil, err
	}
	defer f.Close()
	lines, err := csv.NewReader(f).ReadAll()
	if err != nil {
		return nil, err
	}
	column := func(name string) int { return slices.Index(lines[0], name) }
	kind, amps, ah := column("kind"), column("current_a"), column("ah")
	out := make([]packRow, 0, len(lines)-1)
	for _, line := range lines[1:] {
		r := packRow{isReference: line[kind] == "reference"}
		if r.amps, err = strconv.ParseFloat(line[amps], 64); err != nil {
			return nil, fmt.Errorf("%s: %w", pack, err)
		}
		if r.ah, err = strconv.ParseFloat(line[ah], 64); err != nil {
			return nil, fmt.Errorf("%s: %w", pack, err)
		}
		out = append(out, r)
	}
	return out, nil
}

// packMoments are where in a pack's life it is looked at, as shares of the rows. The
// very last ones are of packs that fail.
var packMoments = [...]float64{0.5, 0.9}

// packSubjects are packs of two cells that were emptied again and again until they
// failed: new, by the means of their first discharges, and used, by the discharge
// under load that follows a reference; that tells the health.
func packSubjects(dir string) ([]measured, error) {
	dir = filepath.Join(dir, "power18650_2p5ah_2s_packs")
	files, err := filepath.Glob(filepath.Join(dir, "regular_*.csv"))
	if err != nil || len(files) == 0 {
		return nil, fmt.Errorf("no packs in %s", dir)
	}
	var out []measured
	for _, file := range files {
		pack := strings.TrimSuffix(filepath.Base(file), ".csv")
		life, err := packLife(dir, pack)
		if err != nil {
			return nil, err
		}
		of := func(when string, health float64, runs ...packRow) {
			m := measured{subject: subject{
				name: "packs of two cells/" + pack + when, family: "li-ion-power", leaveOut: []string{"power-18650-2ah5"}, printedAh: 2.5, series: 2, massKg: 0.1, health: health,
			}}
			for _, run := range runs {
				m.truths = append(m.truths, truth{ofCharge, fmt.Sprintf("%.1f A", run.amps), run.ah, func(b *battery.Model) float64 {
					return b.Discharge(b.StateAt(1, 25), run.amps, 5, 25).Ah
				}})
			}
			out = append(out, m)
		}
		first := slices.IndexFunc(life, func(r packRow) bool { return r.isReference })
		loaded := slices.IndexFunc(life, func(r packRow) bool { return !r.isReference })
		if first < 0 || loaded < 0 {
			return nil, fmt.Errorf("%s: no reference or no discharge under load", pack)
		}
		of("", 1, life[loaded], life[first])
		for _, share := range packMoments {
			i := int(share * float64(len(life)))
			for i > first && !(life[i].isReference && !life[i+1].isReference) {
				i--
			}
			of(fmt.Sprintf(" at %.0f %% of its life", 100*share), life[i].ah/life[first].ah, life[i+1])
		}
	}
	return out, nil
}
