package ask

import (
	"example.org/packcheck/answer"
	"example.org/packcheck/battery"
	"example.org/packcheck/charge"
	"example.org/packcheck/chemistry"
	"example.org/packcheck/internal/quantity"
)

// Rest asks what the volts of a battery mean with nothing connected.
type Rest struct {
	Battery     Battery  // without a label: a lead-acid block of the nearest usual volts
	Volts       float64  // 0.01 to 200 V, of the whole battery
	HoursRested float64  // since the last charge or ride; 0 = not told, or just now
	TempC       *float64 // nil = 20 degC
	JustCharged bool     // the last thing that happened to it was a charge
}

// settledHours are so many that nothing is left of a charge or a ride in the
// volts: makers' tables are for 24 h.
const settledHours = 1000

// Answer returns the state of charge, 0 to 1.
func (q Rest) Answer() (Answer, error) {
	var a Answer
	var in inputs
	in.within("Volts", q.Volts, 0.01, 200, "V")
	in.within("HoursRested", q.HoursRested, 0, 100000, "h")
	tempC := in.celsius(&a, "TempC", q.TempC, roomC)
	if q.Battery.Label == "" {
		q.Battery.Label = usualBlock(q.Volts)
		switch {
		case q.Battery.Label == "":
			in.fault("no label; want what is printed on the battery: %g V is of no usual block", q.Volts)
		case q.Battery.Chemistry == "":
			q.Battery.Chemistry = "agm"
			a.assume("a %s lead-acid block", q.Battery.Label)
		}
	}
	if len(in.faults) > 0 && q.Battery.Label == "" {
		return Answer{}, in.err()
	}
	b, err := in.battery(q.Battery)
	if err != nil {
		return Answer{}, err
	}
	p, cells := b.profile(), b.parts.Pack.CellsInSeries
	cellV := q.Volts / float64(cells)
	low, likely, high := battery.ChargeFromRest(p, cellV, q.HoursRested, tempC)
	if q.JustCharged { // then the volts can only be too high
		_, _, high = battery.ChargeFromRest(p, cellV, settledHours, tempC)
	}
	rested := charge.JudgeRest(p, cells, q.Volts)
	tooLow := worse(rested, answer.FixFirst) && p.Family == chemistry.LeadAcid && cellV < p.NominalV
	if others := q.Volts / float64(max(cells-1, 1)); tooLow && others <= p.FullV { // where one cell is shorted
		_, _, full := battery.ChargeFromRest(p, others, q.HoursRested, tempC)
		high = max(high, full)
	}
	a.Asked = "what " + volts(q.Volts) + " at rest means"
	a.is(Figure{What: "charge", Value: likely, Low: low, High: high, Unit: "share"})
	a.cite(p.Rest.Source)
	if tooLow {
		a.say("%s at rest is %s per cell of %s, less than an empty one has: that tells of no charge.", volts(q.Volts), volts(cellV), p.Title)
	} else {
		a.say("%s at rest is %s per cell of %s: %s charged.", volts(q.Volts), volts(cellV), p.Title, figureWords(a.Figure()))
	}
	switch settle := p.Rest.SettleH; {
	case q.JustCharged && q.HoursRested < 3*settle:
		a.say("Straight off the charger the volts lie too high: measure again after a night.")
	case q.HoursRested == 0:
		a.assume("hours of rest not told")
	}
	if low < 0.005 && high > 0.995 {
		a.say("Volts tell next to nothing here.")
	}
	if q.Battery.Chemistry == "" && b.parts.Pack.Chemistry.Assumed {
		a.assume("%s, %s", p.Title, quantity.Cells(cells))
	}
	a.Limit = &Limit{What: "harmed below, at rest", Value: p.HarmV * float64(cells), Unit: "V", Want: sideAbove}
	if tooLow {
		a.Limit = &Limit{What: "right, at rest", Value: rested[0].Limit * float64(cells), Unit: "V", Want: sideAbove}
	}
	a.judged(rested, b.guess)
	a.cite(p.LadderSource)
	if p.Family == chemistry.LeadAcid {
		a.beware("Resting volts show charge, not health: a worn battery rests as high as a new one.", "diagnosis-odds")
	} else {
		a.beware("The volts of the pack do not show a weak cell.", "pack-volts-hide-a-cell")
	}
	return a.checked()
}

// usualBlock is the label of the lead-acid block that rests near so many volts,
// empty when there is none. Common practice, no published source.
func usualBlock(v float64) string {
	for _, block := range []struct {
		label     string
		low, high float64
	}{{"6 V", 5, 7.5}, {"12 V", 10, 15}, {"24 V", 20, 30}} {
		if v >= block.low && v <= block.high {
			return block.label
		}
	}
	return ""
}
