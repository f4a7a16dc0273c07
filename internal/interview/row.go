package interview

import (
	"slices"
	"strings"

	"example.org/packcheck/answer"
	"example.org/packcheck/battery"
	"example.org/packcheck/charge"
	"example.org/packcheck/chemistry"
	"example.org/packcheck/internal/quantity"
	"example.org/packcheck/setup"
)

// row is a question with when to ask it and what it can settle.
type row struct {
	Question
	first   bool
	instead []string                 // keys that answer it as well
	settles []string                 // keys that it makes known although it does not fill them in
	when    condition                // whether it makes sense; nil = always
	fits    bool                     // what goes in is held against what takes it
	presses func(*told) (why string) // whether it goes before all others; nil = never
	rest    wording                  // how it is asked where what it fills in besides is given
}

// wording is how a question is asked, and looked up.
type wording struct{ asks, how, example string }

// told is what is given, and what a question may hang on.
type told struct {
	given map[string]string // by key
	read  *battery.Label    // nil = nobody has asked for it yet
	clear bool              // that it could be read
}

// condition is something that holds or not beside what is given.
type condition func(*told) bool

// ask begins a row.
func ask(e Effort, key, asks, how, usual string) row {
	return row{Question: Question{Key: key, Asks: asks, How: how, Usual: usual, Effort: e}}
}

func (r row) example(text string) row   { r.Example = text; return r }
func (r row) fills(keys ...string) row  { r.Fills = keys; return r }
func (r row) choose(list ...Choice) row { r.Choices = list; return r }
func (r row) begin() row                { r.first = true; return r }
func (r row) orBy(keys ...string) row   { r.instead = keys; return r }
func (r row) settle(keys ...string) row { r.settles = keys; return r }
func (r row) mends(c answer.Change) row { r.Mends = c; return r }

func (r row) fit() row { r.fits = true; return r }

func (r row) hard() row { r.Hard = true; return r }

func (r row) only(when condition) row { r.when = when; return r }

func (r row) press(when func(*told) string) row { r.presses = when; return r }

// left says how the row asks for its own key alone, where another was given already.
func (r row) left(asks, how, example string) row { r.rest = wording{asks, how, example}; return r }

// asked reports whether the question makes sense beside what is given.
func (r *row) asked(t *told) bool { return r.when == nil || r.when(t) }

// drives reports whether it is a question about a vehicle.
func (r *row) drives() bool {
	table, _, _ := strings.Cut(r.Key, ".")
	return slices.Contains([]string{"rider", "vehicle", "motors", "gears"}, table) || r.Key == answer.KeyMeasuredTopSpeed
}

// onTheMove are the keys of what is read while it drives.
func onTheMove() []string {
	return []string{
		"measured.ride_time", answer.KeyMeasuredTopSpeed, "measured.loaded_current", "measured.loaded_voltage", "measured.blocked_current",
	}
}

// finished fills in what the registry knows: the example, and where the value
// stands in a setup file.
func finished(list []row) []row {
	examples := map[string]string{}
	for _, k := range setup.Keys() {
		examples[k.Path()] = k.Example
	}
	for i := range list {
		r := &list[i]
		if r.Example == "" {
			r.Example = examples[r.Key]
		}
		dot := strings.LastIndexByte(r.Key, '.')
		r.Stands = r.Key[dot+1:]
		for _, other := range r.Fills {
			word := " and "
			if len(r.instead) > 0 {
				word = " or "
			}
			r.Stands += word + strings.TrimPrefix(other, r.Key[:dot+1])
		}
		r.Stands += " under [" + r.Key[:dot] + "]"
		r.Drives = slices.Contains(onTheMove(), r.Key)
	}
	return list
}

// given holds where one of the keys is given.
func given(keys ...string) condition {
	return func(t *told) bool {
		for _, k := range keys {
			if t.given[k] != "" {
				return true
			}
		}
		return false
	}
}

// changed holds where a table of the vehicle as it was made is given: something else is
// in its place.
func changed(table string) condition {
	return func(t *told) bool {
		for key := range t.given {
			if strings.HasPrefix(key, "original."+table+".") {
				return true
			}
		}
		return false
	}
}

func is(key, text string) condition {
	return func(t *told) bool { return t.given[key] == text }
}

func not(key, text string) condition {
	return func(t *told) bool { return t.given[key] != text }
}

func all(conditions ...condition) condition {
	return func(t *told) bool {
		for _, c := range conditions {
			if !c(t) {
				return false
			}
		}
		return true
	}
}

// unsettled holds where a label leaves open what kind of battery it is.
func unsettled(label string) condition {
	return func(t *told) bool {
		l, err := battery.ParseLabel(t.given[label], "")
		return t.given[label] != "" && err == nil && l.Sure == battery.Guess
	}
}

// label reads the battery's label with what is known of its kind, once.
func (t *told) label() (battery.Label, bool) {
	if t.read == nil {
		l, err := battery.ParseLabel(t.given["pack.label"], t.given["pack.chemistry"])
		if err != nil {
			l, err = battery.ParseLabel(t.given["pack.label"], "")
		}
		t.read, t.clear = &l, err == nil
	}
	return *t.read, t.clear
}

func noCapacity(t *told) bool {
	l, ok := t.label()
	return ok && l.CapacityAh == 0
}

func oneBlock(t *told) bool {
	l, ok := t.label()
	return ok && l.Blocks <= 1
}

// outputOpen holds where the charger's label leaves open whether it gives AC or DC.
func outputOpen(t *told) bool {
	l, err := charge.ParseLabel(t.given["charger.label"])
	return err != nil || l.Output == charge.OutputUnknown && !l.MadeFor.GivesDC()
}

// notLead holds where the battery may have electronics of its own: a lead block has none.
func notLead(t *told) bool {
	l, _ := t.label()
	p, known := chemistry.Builtin().Profile(l.Chemistry)
	return !known || p.Family != chemistry.LeadAcid
}

// halfTheVolts holds where two of the batteries would make the vehicle's volts.
func halfTheVolts(t *told) string {
	l, ok := t.label()
	v := voltsOf(t.given["vehicle.design_voltage"])
	if ok && l.NominalV > 0 && v > 1.6*l.NominalV && v < 2.4*l.NominalV {
		return "two of them make the vehicle's volts"
	}
	return ""
}

// voltsOf is the middle of a voltage, 0 where it is none.
func voltsOf(text string) float64 {
	r, _, err := quantity.Parse(quantity.Voltage, text)
	if err != nil {
		return 0
	}
	return r.Likely
}

func yesNo() []Choice { return []Choice{{"yes", "yes"}, {"no", "no"}} }

// chemistries are the kinds of battery in everyday words.
func chemistries() []Choice {
	return []Choice{
		{"sla", "a sealed lead block (SLA, AGM, Pb)"},
		{"gel", "a lead block with gel"},
		{"li-ion", "lithium of a cordless tool or an electric bicycle (Li-ion)"},
		{"lifepo4", "iron phosphate (LiFePO4, LFP)"},
		{"nimh", "nickel (NiMH)"},
	}
}

// chargers are what a charger may be made for.
func chargers() []Choice {
	return []Choice{
		{"lead-acid", "lead (SLA, AGM, Pb)"},
		{"gel", "lead with gel"},
		{"li-ion", "lithium (Li-ion)"},
		{"lifepo4", "iron phosphate (LiFePO4)"},
		{"nimh", "nickel (NiMH)"},
		{"power supply", "no battery at all: a plain power supply"},
	}
}

func polarities() []Choice {
	return []Choice{{"centre positive", "plus in the middle"}, {"centre negative", "minus in the middle"}}
}

func grounds() []Choice {
	return []Choice{
		{"asphalt", "street or paving"},
		{"smooth concrete", "a smooth floor"},
		{"short grass", "lawn"},
		{"long grass", "meadow"},
		{"wet grass", "wet grass"},
		{"packed dirt", "farm track"},
		{"gravel", "gravel"},
		{"sand", "sand"},
		{"carpet", "carpet"},
	}
}
