package main

import (
	"fmt"
	"math"
	"slices"
	"strconv"
	"strings"

	"github.com/urfave/cli/v3"

	"example.org/packcheck/battery"
	"example.org/packcheck/chemistry"
	"example.org/packcheck/internal/cellfit"
	"example.org/packcheck/internal/quantity"
	"example.org/packcheck/setup"
)

// known is what was said about the battery before its logs were read, and what
// had to be assumed.
type known struct {
	profile       chemistry.Profile
	set           *chemistry.Set
	chemistryFile string
	label         battery.Label
	cells         int
	cutoffV       float64
	airC          float64
	airSigmaC     float64
	sign          int
	full          bool // every log begins so
	assumed       []assumption
}

// assumption is one thing that nobody said.
type assumption struct {
	Key   string `json:"key"` // the option that would have said it
	Value string `json:"value"`
	Why   string `json:"why"`
}

// roomC is taken where nobody says how warm it was, and roomSigmaC how far off
// that may be; airSigmaC is how well people know it who say it (common
// practice, no published source).
const (
	roomC      = 20
	roomSigmaC = 5
	airSigmaC  = 1
)

func (k *known) assume(key, value, why string) {
	k.assumed = append(k.assumed, assumption{key, value, why})
}

// readBattery reads the options that describe the battery.
func readBattery(c *cli.Command) (*known, error) {
	k := &known{set: chemistry.Builtin(), chemistryFile: c.String(flagChemistryFile)}
	for _, step := range []func(*cli.Command) error{
		k.readChemistryFile, k.readLabel, k.readCells, k.readFigures,
	} {
		if err := step(c); err != nil {
			return nil, err
		}
	}
	return k, nil
}

// readChemistryFile adds the user's own chemistries to the built-in ones.
func (k *known) readChemistryFile(c *cli.Command) error {
	if !c.IsSet(flagChemistryFile) {
		return nil
	}
	f, err := setup.OpenFile(k.chemistryFile)
	if err != nil {
		return withCode(exitInput, fmt.Errorf("--%s: %w", flagChemistryFile, err))
	}
	defer f.Close()
	k.set, err = k.set.Extend(f, k.chemistryFile)
	return withCode(exitInput, err)
}

// readLabel settles the chemistry, and what the label says.
func (k *known) readLabel(c *cli.Command) error {
	name, text := strings.ToLower(strings.TrimSpace(c.String(flagChemistry))), c.String(flagLabel)
	named := false
	if name != "" {
		if k.profile, named = k.set.Profile(name); !named {
			return fmt.Errorf("there is no chemistry %q; want one of %s", name, strings.Join(k.set.Names(), ", "))
		}
	}
	if text == "" {
		if !named {
			return fmt.Errorf("which kind of cell? Give --%s or --%s (chemistries: %s)", flagLabel, flagChemistry, strings.Join(k.set.Names(), ", "))
		}
		return nil
	}
	var err error
	if named {
		k.label, err = battery.ParseLabelOf(text, k.profile)
	} else {
		k.label, err = battery.ParseLabel(text, "")
	}
	if err != nil {
		return fmt.Errorf("--%s: %s", flagLabel, strings.TrimPrefix(err.Error(), "battery: "))
	}
	k.cells = k.label.CellsInSeries
	if named {
		return nil
	}
	if k.profile, named = k.set.Profile(k.label.Chemistry); !named {
		return fmt.Errorf("the label %q does not tell the kind of cell; give --%s (one of %s)", text, flagChemistry, strings.Join(k.set.Names(), ", "))
	}
	if k.label.Sure != battery.Stated {
		k.assume(flagChemistry, k.profile.Name, "The usual meaning of the label; it does not say so.")
	}
	return nil
}

// mostCells is what a setup takes.
const mostCells = 100

// readCells reads the number of cells, which must not contradict the label.
func (k *known) readCells(c *cli.Command) error {
	if !c.IsSet(flagCells) {
		return nil
	}
	n, err := strconv.Atoi(strings.TrimSpace(c.String(flagCells)))
	if err != nil || n < 1 || n > mostCells {
		return fmt.Errorf("--%s %q: want a whole number from 1 to %d", flagCells, c.String(flagCells), mostCells)
	}
	if k.cells > 0 && k.cells != n {
		return fmt.Errorf("--%s %d: the label %q means %d", flagCells, n, k.label.Text, k.cells)
	}
	k.cells = n
	return nil
}

// readFigures reads cutoff, air and sign.
func (k *known) readFigures(c *cli.Command) error {
	for _, f := range []struct {
		flag   string
		kind   quantity.Kind
		lo, hi float64
		to     *float64
	}{
		{flagCutoff, quantity.Voltage, 0.1, 1000, &k.cutoffV},
		{flagAir, quantity.Temperature, -40, 80, &k.airC},
	} {
		if !c.IsSet(f.flag) {
			continue
		}
		r, _, err := quantity.ParseIn(f.kind, c.String(f.flag), f.lo, f.hi)
		if err != nil {
			return fmt.Errorf("--%s: %w", f.flag, err)
		}
		*f.to = r.Likely
	}
	if k.airSigmaC = airSigmaC; !c.IsSet(flagAir) {
		k.airC, k.airSigmaC = math.NaN(), roomSigmaC
	}
	k.full = c.Bool(flagFull)
	if !c.IsSet(flagDischarge) {
		return nil
	}
	word := strings.ToLower(strings.TrimSpace(c.String(flagDischarge)))
	if k.sign = map[string]int{"plus": 1, "minus": -1}[word]; k.sign == 0 {
		return fmt.Errorf("--%s %q: want plus or minus", flagDischarge, word)
	}
	return nil
}

// countCells settles what only the logs can tell: the number of cells from the
// voltage, and whether the air matters.
func (k *known) countCells(logs []*cellfit.Log) error {
	if math.IsNaN(k.airC) {
		k.airC = roomC
		if slices.ContainsFunc(logs, func(l *cellfit.Log) bool { return l.TempC == nil }) {
			factor := k.profile.Resistance.TempFactor.Func()
			k.assume(flagAir, quantity.Format(quantity.Temperature, roomC, quantity.Metric), fmt.Sprintf(
				"A log has no temperature. At ten degrees less the resistance is %s times as great.",
				quantity.Decimals(factor(roomC-10)/factor(roomC), 1)))
		}
	}
	if k.cells > 0 {
		return nil
	}
	most := 0.0
	for _, l := range logs {
		for i, v := range l.Volts {
			if l.Amps[i] >= 0 { // a charger lifts the voltage
				most = max(most, v)
			}
		}
	}
	top := k.profile.FullV
	if y := k.profile.Rest.VoltsAt.Y; len(y) > 0 {
		top = max(top, y[len(y)-1])
	}
	// A surface charge stands a few per cent above.
	k.cells = max(1, int(math.Ceil(most/(1.03*top))))
	if k.cells > mostCells || most/float64(k.cells) < k.profile.NominalV {
		return fmt.Errorf("how many cells in series? The highest voltage, %.4g V, fits no number of full %s cells; give --%s or --%s", most, k.profile.Name, flagLabel, flagCells)
	}
	k.assume(flagCells, strconv.Itoa(k.cells), fmt.Sprintf("So many full cells stand at the highest voltage in the logs, %.4g V. If the battery was not full, this is wrong.", most))
	return nil
}

// options are what the fit wants to know.
func (k *known) options() cellfit.FitOptions {
	air := k.airC
	if air == 0 {
		air = 1e-6 // 0 stands for "not said" there
	}
	return cellfit.FitOptions{
		Chemistry: k.profile, CellsInSeries: k.cells, LabelAh: k.label.CapacityAh,
		RateHours: k.label.RateHours, CutoffV: k.cutoffV, AmbientC: air, AmbientSigmaC: k.airSigmaC, BeganFull: k.full,
	}
}
