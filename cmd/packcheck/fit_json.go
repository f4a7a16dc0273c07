package main

import (
	"bytes"
	"encoding/json"
	"math"
	"strconv"

	"example.org/packcheck/internal/cellfit"
)

// fitSchema names the shape of the JSON of fit. Keys are added, never renamed.
const fitSchema = "packcheck-fit/1"

// figure is a number with nine digits that count; what is not finite is null.
type figure float64

// MarshalJSON writes the number.
func (x figure) MarshalJSON() ([]byte, error) {
	if math.IsNaN(float64(x)) || math.IsInf(float64(x), 0) {
		return []byte("null"), nil
	}
	return strconv.AppendFloat(nil, float64(x), 'g', 9, 64), nil
}

// estimated is an estimate in JSON.
type estimated struct {
	Value figure `json:"value"`
	Sigma figure `json:"sigma"`
	Low   figure `json:"low"`
	High  figure `json:"high"`
}

// inJSON returns nil, JSON's null, for what the logs do not tell.
func inJSON(e cellfit.Estimate) *estimated {
	if !e.Known {
		return nil
	}
	r := spread(e)
	return &estimated{figure(e.Value), figure(e.Sigma), figure(r.Low), figure(r.High)}
}

type fitJSONLog struct {
	Name          string  `json:"name"`
	Rows          int     `json:"rows"`
	Hours         figure  `json:"hours"`
	TakenOutAh    figure  `json:"taken_out_ah"`
	ChargedAh     figure  `json:"charged_ah"` // put in; 0 = nothing to speak of
	Time          string  `json:"time"`
	Volts         string  `json:"volts"`
	Amps          string  `json:"amps"`
	Temperature   string  `json:"temperature"`
	Separator     string  `json:"separator"`
	DecimalComma  bool    `json:"decimal_comma"`
	DischargeSign string  `json:"discharge_sign"`
	Skipped       int     `json:"skipped"`
	RMSV          *figure `json:"rms_v"`
	WorstV        *figure `json:"worst_v"`
}

type fitJSONRun struct {
	Log           string `json:"log"`
	CurrentA      figure `json:"current_a"`
	Ah            figure `json:"ah"`
	Hours         figure `json:"hours"`
	ReachedCutoff bool   `json:"reached_cutoff"`
	StartCharge   figure `json:"start_charge"`
}

type fitJSONOhm struct {
	Charge figure     `json:"charge"`
	Ohm    *estimated `json:"ohm"`
	Steps  int        `json:"steps"`
}

// json writes the figures for programs.
func (f *fitted) json(w *bytes.Buffer) error {
	logs := []fitJSONLog{}
	for i, l := range f.logs {
		n, c := l.Rows(), l.Columns
		outAh, inAh := moved(l)
		j := fitJSONLog{
			Name: l.Name, Rows: l.FileRows, Hours: figure(l.TimeS[n-1] / 3600), TakenOutAh: figure(outAh), ChargedAh: figure(inAh),
			Time: c.Time, Volts: c.Volts, Amps: c.Amps, Temperature: c.Temp, Separator: c.Separator,
			DecimalComma: c.DecimalComma, DischargeSign: map[bool]string{false: "plus", true: "minus"}[c.Flipped], Skipped: l.Skipped,
		}
		if i < len(f.agrees) {
			rms, worst := figure(f.agrees[i].RMSV), figure(f.agrees[i].WorstV)
			j.RMSV, j.WorstV = &rms, &worst
		}
		logs = append(logs, j)
	}
	runs := []fitJSONRun{}
	for _, r := range f.Runs {
		runs = append(runs, fitJSONRun{r.Log, figure(r.CurrentA), figure(r.Ah), figure(r.Hours), r.ReachedCutoff, figure(r.StartCharge)})
	}
	ohms := []fitJSONOhm{}
	for _, o := range f.Ohms {
		ohms = append(ohms, fitJSONOhm{figure(o.Charge), inJSON(o.Ohm), o.Steps})
	}
	pack, err := f.packTable(".")
	if err != nil {
		return err
	}
	e := json.NewEncoder(w)
	e.SetIndent("", "  ")
	e.SetEscapeHTML(false)
	return e.Encode(struct {
		Schema        string       `json:"schema"`
		Chemistry     string       `json:"chemistry"`
		CellsInSeries int          `json:"cells_in_series"`
		Label         string       `json:"label"`
		LabelAh       figure       `json:"label_ah"`
		RateHours     figure       `json:"rate_hours"`
		CutoffV       figure       `json:"cutoff_v"`
		Logs          []fitJSONLog `json:"logs"`
		Runs          []fitJSONRun `json:"runs"`
		Rests         int          `json:"rests"`
		Pulses        int          `json:"pulses"`
		CapacityAh    *estimated   `json:"capacity_ah"`
		AtLeastAh     figure       `json:"at_least_ah"`
		FullAh        *estimated   `json:"full_ah"`
		Health        *estimated   `json:"health"`
		Peukert       *estimated   `json:"peukert"`
		Ohms          []fitJSONOhm `json:"ohms"`
		MidOhm        *estimated   `json:"mid_ohm"`
		Pack          string       `json:"pack"`
		Assumed       []assumption `json:"assumed"`
		Next          []string     `json:"next"`
		Notes         []string     `json:"notes"`
		Cautions      []string     `json:"cautions"`
		Uncertainty   string       `json:"uncertainty"`
	}{
		fitSchema, f.profile.Name, f.cells, f.label.Text, figure(f.Options.LabelAh), figure(f.Options.RateHours), figure(f.Options.CutoffV),
		logs, runs, f.Rests, f.Pulses, inJSON(f.CapacityAh), figure(f.AtLeastAh), inJSON(f.FullAh), inJSON(f.Health), inJSON(f.Peukert), ohms, inJSON(f.MidOhm),
		pack, append([]assumption{}, f.assumed...), append([]string{}, f.next()...), append([]string{}, unique(f.Notes)...), f.cautions, uncertaintyText,
	})
}
