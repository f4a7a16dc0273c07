package main

import (
	"errors"
	"math"
	"slices"

	"example.org/packcheck/chemistry"
	"example.org/packcheck/internal/cellfit"
)

// fitted is what the logs say, with what it was read from.
type fitted struct {
	*known
	targets
	cellfit.Result
	logs     []*cellfit.Log
	agrees   []cellfit.Agreement // of the fitted cell with each log; nil without one
	cautions []string
}

// comparedRows are enough to compare a model with a log.
const comparedRows = 3000

// compare runs the fitted cell along every log, and looks for what a reader
// must be warned of.
func (f *fitted) compare() error {
	if len(f.Runs) == 0 && len(f.Ohms) == 0 {
		return errors.New("the logs hold no discharge and no sudden change of current, so they tell nothing of the battery")
	}
	f.warn()
	if !f.CellKnown {
		return nil
	}
	for i, l := range f.logs {
		m, start, err := f.ModelOf(i)
		if err != nil {
			return err
		}
		// Far below the cutoff the voltage falls off a cliff; a few millivolt
		// hours there would drown all the rest.
		above := l.Condense(comparedRows).Until(0.95 * f.Options.CutoffV)
		f.agrees = append(f.agrees, cellfit.Replay(m, above, cellfit.ReplayOptions{AmbientC: f.airC, StartCharge: start}))
	}
	return nil
}

// meterShare is how far below a limit a logged voltage must lie before it is
// called below: cell makers end their own tests at the limit, and meters differ
// (common practice, no published source).
const meterShare = 0.01

// warn collects what must be said whatever the figures are.
func (f *fitted) warn() {
	lowest := math.Inf(1)
	for _, l := range f.logs {
		lowest = min(lowest, slices.Min(l.Volts))
	}
	lowest /= float64(f.cells)
	below := func(limit float64) bool { return lowest < (1-meterShare)*limit }
	switch p := f.profile; {
	case below(p.NeverRechargeV):
		f.cautions = append(f.cautions, "In the log the cells stand at "+volts(lowest)+" each, below "+volts(p.NeverRechargeV)+
			": a battery that stays there must not be charged again. Hand it in where batteries are collected.")
	case below(p.HarmV):
		f.cautions = append(f.cautions, "In the log the cells go down to "+volts(lowest)+" each; below "+volts(p.HarmV)+
			" they are harmed. Do not discharge it so far again.")
	}
	f.cautions = append(f.cautions,
		"A log of the whole battery does not show its single cells: the weakest one is worse than these figures.",
		"The figures hold for the battery as it was on the day of the log. It ages.",
		"Stop every discharge where the maker's instructions say. This page does not replace them, local codes or licensed practice.",
	)
}

// What counts as narrow enough, relative half width of a range.
const (
	narrowOhm  = 0.15
	narrowFull = 0.15
	mostNext   = 3
)

// next says what would narrow the figures most, the first first.
func (f *fitted) next() []string {
	wide := func(e cellfit.Estimate, limit float64) bool { return 2*e.Sigma > limit*e.Value }
	noTemp := slices.ContainsFunc(f.logs, func(l *cellfit.Log) bool { return l.TempC == nil })
	var out []string
	add := func(wanted bool, what string) {
		if wanted && len(out) < mostNext {
			out = append(out, what)
		}
	}
	add(!f.CapacityAh.Known, "Log one discharge from full and rested down to "+volts(f.Options.CutoffV)+", or to where the maker's instructions say that it ends.")
	add(f.Options.LabelAh <= 0, "Give the printed capacity with --label.")
	add(!f.MidOhm.Known, "Switch the load off and on a few times while logging, with rows no more than a second apart.")
	add(f.MidOhm.Known && noTemp && wide(f.MidOhm, narrowOhm), "Log the battery's temperature beside volts and amps.")
	add(f.FullAh.Known && !f.full && f.profile.Family == chemistry.LeadAcid && wide(f.FullAh, narrowFull), "Charge the battery until its charger says full, let it rest for some hours, log again, and say so with --full.")
	add(f.FullAh.Known && !f.Peukert.Known && wide(f.FullAh, narrowFull), "Log a second full discharge, at a current nearer to that of the label.")
	return out
}
