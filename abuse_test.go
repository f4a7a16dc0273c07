package packcheck_test

import (
	"bytes"
	"encoding/json"
	"errors"
	"fmt"
	"maps"
	"math"
	"math/rand/v2"
	"os"
	"path/filepath"
	"reflect"
	"slices"
	"strconv"
	"strings"
	"testing"
	"time"

	"example.org/packcheck"
	"example.org/packcheck/answer"
	"example.org/packcheck/internal/quantity"
	"example.org/packcheck/report"
	"example.org/packcheck/setup"
	"example.org/packcheck/tables"
)

// sheet is a setup as keys and values, the values as they stand in the file.
type sheet map[string]string

// with returns a copy with some keys set: pairs of full key and value. An empty
// value leaves the key out.
func (s sheet) with(pairs ...string) sheet {
	out := maps.Clone(s)
	for i := 0; i+1 < len(pairs); i += 2 {
		if pairs[i+1] == "" {
			delete(out, pairs[i])
			continue
		}
		out[pairs[i]] = pairs[i+1]
	}
	return out
}

// without returns a copy that lacks whole tables.
func (s sheet) without(names ...string) sheet {
	out := maps.Clone(s)
	for key := range s {
		for _, name := range names {
			if strings.HasPrefix(key, name+".") {
				delete(out, key)
			}
		}
	}
	return out
}

// toml writes the sheet as a file, tables in the order of their names.
func (s sheet) toml() string {
	tables := map[string][]string{}
	for _, key := range slices.Sorted(maps.Keys(s)) {
		table, name := "", key
		if i := strings.LastIndexByte(key, '.'); i >= 0 {
			table, name = key[:i], key[i+1:]
		}
		tables[table] = append(tables[table], name+" = "+s[key])
	}
	var b strings.Builder
	for _, table := range slices.Sorted(maps.Keys(tables)) {
		if table != "" {
			fmt.Fprintf(&b, "[%s]\n", table)
		}
		b.WriteString(strings.Join(tables[table], "\n") + "\n")
	}
	return b.String()
}

// sheetOf reads a plain setup file, one key a line.
func sheetOf(t testing.TB, file string) sheet {
	t.Helper()
	text, err := os.ReadFile(file)
	if err != nil {
		t.Fatal(err)
	}
	out, table := sheet{}, ""
	for line := range strings.Lines(string(text)) {
		line = strings.TrimSpace(line)
		switch key, value, pair := strings.Cut(line, "="); {
		case strings.HasPrefix(line, "#"), line == "":
		case strings.HasPrefix(line, "["):
			table = strings.Trim(line, "[]") + "."
		case pair:
			out[table+strings.TrimSpace(key)] = strings.TrimSpace(value)
		}
	}
	return out
}

// labelsOnly is a setup of which only labels are known.
func labelsOnly() sheet {
	return sheet{
		"rider.mass": `"20 kg"`, "vehicle.design_voltage": `"12 V"`, "vehicle.ground": `"asphalt"`,
		"motors.count": `2`, "motors.can": `"550"`, "motors.rated_voltage": `"12 V"`,
		"pack.label": `"12 V 7 Ah"`, "pack.chemistry": `"agm"`,
	}
}

func benchLoad() sheet {
	return sheet{"pack.label": `"12 V 7 Ah"`, "pack.chemistry": `"agm"`, "load.current": `"3 A"`}
}

// bounds reads the least and greatest value of a key from the tags that are
// the registry of package setup.
func bounds(t testing.TB, k setup.Key) (low, high float64) {
	t.Helper()
	low, high = k.Kind.Bounds()
	var walk func(reflect.Type, string)
	walk = func(s reflect.Type, table string) {
		for i := range s.NumField() {
			f := s.Field(i)
			switch {
			case f.Tag.Get("table") != "":
				walk(f.Type, strings.TrimPrefix(table+"."+f.Tag.Get("table"), "."))
			case f.Tag.Get("key") == k.Name && table == k.Table:
				if v, err := strconv.ParseFloat(f.Tag.Get("min"), 64); err == nil {
					low = v
				}
				if v, err := strconv.ParseFloat(f.Tag.Get("max"), 64); err == nil {
					high = v
				}
			case f.Anonymous && f.Type.Kind() == reflect.Struct:
				walk(f.Type, table)
			}
		}
	}
	walk(reflect.TypeFor[setup.Setup](), "")
	return low, high
}

// written writes a value of a key in the unit that it is held in.
func written(k setup.Key, values ...float64) string {
	var parts []string
	for _, v := range values {
		parts = append(parts, strconv.FormatFloat(v, 'f', -1, 64))
	}
	text := strings.Join(parts, " to ")
	switch k.Kind {
	case quantity.Count:
		if len(values) == 1 {
			return text
		}
	case quantity.Grade:
		for i, v := range values {
			parts[i] = strconv.FormatFloat(100*v, 'f', -1, 64)
		}
		text = strings.Join(parts, " to ") + " %"
	case quantity.Gauge:
		text += " AWG"
	default:
		text = strings.TrimSpace(text + " " + k.Kind.Unit())
	}
	return strconv.Quote(text)
}

// extremes lists what a key can be set to: both ends of its bounds, the middle
// by ratio, everything between the ends at once, or every word that it knows.
func extremes(t testing.TB, k setup.Key) []string {
	t.Helper()
	quoted := func(words []string) []string {
		out := []string{}
		for _, w := range words {
			out = append(out, strconv.Quote(w))
		}
		return out
	}
	built := tables.Builtin()
	var names []string
	switch {
	case k.What == "yes or no":
		return []string{"true", "false"}
	case k.What == "file", k.Path() == "title":
		return nil
	case k.Words != nil:
		return quoted(k.Words)
	case k.What == "ground":
		for _, g := range built.Grounds() {
			names = append(names, g.Name)
		}
		return quoted(names)
	case k.What == "can":
		for _, c := range built.MotorCans() {
			names = append(names, c.Name)
		}
		return quoted(names)
	case k.What == "joint":
		for _, j := range built.Joints() {
			names = append(names, j.Name)
		}
		return quoted(names)
	case k.What == "fuse form":
		return quoted(append(built.FuseForms(), "none"))
	case k.What == "chemistry":
		return quoted([]string{"agm", "gel", "traction", "li-ion", "lifepo4", "nimh"})
	case k.Path() == "pack.label":
		return quoted([]string{"6 V 4.5 Ah", "12 V 7 Ah", "24 V (two 12 V)", "20 V max 5 Ah", "18 V 1.5 Ah", "12.8 V 10Ah LiFePO4", "7.2 V NiMH 3 Ah", "5S2P 21700 4 Ah", "36 V 2.5 Ah"})
	case k.Kind == quantity.NoKind:
		return []string{k.Quoted()}
	}
	low, high := bounds(t, k)
	if k.Kind == quantity.Gauge {
		return []string{written(k, 0), written(k, 12), written(k, 24), written(k, 12, 20)}
	}
	middle := math.Sqrt(max(low, high/1e6) * high)
	if k.Kind == quantity.Temperature || k.Kind == quantity.Count {
		middle = math.Round((low + high) / 2)
	}
	return []string{written(k, low), written(k, middle), written(k, high), written(k, low, high), k.Quoted()}
}

// assessed runs one setup. It returns nil where the setup was refused, which it
// must be with faults that name a key or a line.
func assessed(t testing.TB, what, text string) *packcheck.Assessment {
	t.Helper()
	began := time.Now()
	s, err := packcheck.Read(strings.NewReader(text), "abuse.toml")
	var a *packcheck.Assessment
	if err == nil {
		a, err = packcheck.Assess(s)
	}
	if d := time.Since(began); d > slowest {
		t.Errorf("%s: took %v", what, d)
	}
	var faults setup.Faults
	switch {
	case errors.As(err, &faults):
		for _, f := range faults {
			if f.Want == "" || f.Line == 0 && f.Key == "" || strings.ContainsAny(f.Error(), "\n\r") {
				t.Errorf("%s: fault %q", what, f.Error())
			}
		}
		return nil
	case err != nil:
		t.Errorf("%s: neither faults nor an answer: %v", what, err)
		return nil
	}
	return a
}

// slowest is how long one assessment may take. It is generous: a loaded
// machine and the race detector slow everything down.
const slowest = 5 * time.Second

var endWords = []string{
	"cutoff in the pack", "cutoff in the module", "cutoff in the controller", "pack empty", "fuse opened", "cannot move",
	"wanted time reached", "end voltage reached", "pattern played", "pack cannot supply it", "time limit",
}

// consistent holds an assessment to everything that must be so whatever the
// setup is.
func consistent(t testing.TB, what string, a *packcheck.Assessment) {
	t.Helper()
	bad := func(format string, args ...any) {
		t.Helper()
		t.Errorf("%s: %s", what, fmt.Sprintf(format, args...))
	}
	text, err := json.Marshal(a)
	if err != nil {
		bad("%v", err)
		return
	}
	var tree map[string]any
	if err := json.Unmarshal(text, &tree); err != nil {
		bad("%v", err)
		return
	}
	noAbsurdNumbers(bad, "", tree)
	if worst := answer.Worst(a.Findings); a.Verdict != worst {
		bad("verdict %v, worst finding %v", a.Verdict, worst)
	}
	completeFindings(bad, a)
	orderedRanges(bad, a, tree)
	sensibleRide(bad, a)
	for i, h := range a.Headline {
		if strings.TrimSpace(h) == "" || strings.Contains(h, "%!") {
			bad("headline %d is %q", i, h)
		}
	}
	if !strings.HasPrefix(a.Headline[0], a.Verdict.String()) {
		bad("verdict %v, first line %q", a.Verdict, a.Headline[0])
	}
	if a.Verdict > answer.Fine && !slices.ContainsFunc(a.Findings, func(f answer.Finding) bool {
		return f.Level == a.Verdict && f.Title == a.Headline[1]
	}) {
		bad("no finding as bad as the verdict says %q", a.Headline[1])
	}
	if a.Verdict >= answer.FixFirst && len(a.Changes) == 0 {
		bad("verdict %v and nothing to change", a.Verdict)
	}
	if len(a.Measure) > 3 || len(a.Cautions) < 5 || len(a.Sources) == 0 {
		bad("%d measurements, %d cautions, %d sources", len(a.Measure), len(a.Cautions), len(a.Sources))
	}
	for _, s := range a.Assumed {
		if s.Key == "" || s.Value == "" || s.Why == "" {
			bad("assumed %+v", s)
		}
	}
}

type complaint = func(string, ...any)

// noAbsurdNumbers walks every number of a report.
func noAbsurdNumbers(bad complaint, path string, v any) {
	switch v := v.(type) {
	case map[string]any:
		for _, key := range slices.Sorted(maps.Keys(v)) {
			noAbsurdNumbers(bad, strings.TrimPrefix(path+"."+key, "."), v[key])
		}
	case []any:
		for _, one := range v {
			noAbsurdNumbers(bad, path, one)
		}
	case string:
		if strings.Contains(v, "NaN") || strings.Contains(v, "%!") || strings.Contains(v, "Inf") || strings.Contains(v, "<nil>") {
			bad("%s says %q", path, v)
		}
	case float64:
		degrees := strings.HasSuffix(path, "_c") || strings.Contains(path, "_c.")
		// Findings are about anything; a weak cell may be reversed. Rounding
		// may leave a pack that gives nothing a hair below nothing.
		signed := degrees || strings.HasPrefix(path, "findings.") || strings.Contains(path, "weakest_cell_v")
		if v < -0.05 && !signed {
			bad("%s is %g", path, v)
		}
		if degrees && (v < -60 || v > 5000) || math.Abs(v) > 1e12 {
			bad("%s is %g", path, v)
		}
	}
}

var units = []string{"V", "A", "Ohm", "degC", "s", "h", "m", "m/s", "kg", "N", "W", "A2s", "x", "mm2", ""}

func completeFindings(bad complaint, a *packcheck.Assessment) {
	listed := map[string]bool{}
	for _, s := range a.Sources {
		if listed[s.ID] || s.Text == "" || s.Known == "" || s.Text == "not listed" {
			bad("source %+v", s)
		}
		listed[s.ID] = true
	}
	said := map[string]bool{}
	for i, f := range a.Findings {
		if i > 0 && f.Level > a.Findings[i-1].Level {
			bad("finding %s stands below a milder one", f.Code)
		}
		if f.Code == "" || strings.Trim(f.Code, "abcdefghijklmnopqrstuvwxyz0123456789-") != "" {
			bad("code %q", f.Code)
		}
		if key := f.Code + "|" + f.Title; said[key] {
			bad("finding %s is said twice: %q", f.Code, f.Title)
		} else {
			said[key] = true
		}
		if f.Title == "" || f.Topic == "" || !slices.Contains(units, f.Unit) {
			bad("finding %+v is incomplete", f)
		}
		if f.Level > answer.Fine && f.Advice == "" {
			bad("finding %s (%v) says nothing of what to do", f.Code, f.Level)
		}
		for _, text := range []string{f.Title, f.Advice} {
			if strings.ContainsFunc(text, func(r rune) bool { return r < ' ' || r > '~' }) {
				bad("finding %s is not plain ASCII: %q", f.Code, text)
			}
		}
		ids := strings.FieldsFunc(f.Source, func(r rune) bool { return r == ',' || r == ' ' })
		if len(ids) == 0 {
			bad("finding %s has no source", f.Code)
		}
		for _, id := range ids {
			if !listed[id] {
				bad("finding %s names %q, which is not listed", f.Code, id)
			}
		}
	}
}

func orderedRanges(bad complaint, a *packcheck.Assessment, tree map[string]any) {
	for path, r := range a.Ranges {
		if !(r.Low <= r.Likely && r.Likely <= r.High) {
			bad("range of %s is %v", path, r)
		}
		var at any = tree
		for step := range strings.SplitSeq(path, ".") {
			m, ok := at.(map[string]any)
			if !ok {
				bad("there is a range of %s but no such figure", path)
				break
			}
			at = m[step]
		}
		if v, ok := at.(float64); ok && math.Abs(v-r.Likely) > 1e-9*max(math.Abs(v), 1) && !(strings.HasSuffix(path, "_c") && r.Likely == 250) {
			bad("%s is %g, its range says %g", path, v, r.Likely)
		}
	}
}

func sensibleRide(bad complaint, a *packcheck.Assessment) {
	r, p := &a.Ride, &a.Pack
	if !slices.Contains(endWords, r.EndedBy) || !slices.Contains(endWords, r.LastsUntil) {
		bad("ended by %q, lasts until %q", r.EndedBy, r.LastsUntil)
	}
	if (r.EndedBy == "wanted time reached") && r.WantedMin == nil || r.LastsUntil == "wanted time reached" {
		bad("ended by %q, lasts until %q, wanted %v", r.EndedBy, r.LastsUntil, r.WantedMin)
	}
	if r.ChargeLeft > 1 || r.PedalMin > r.ClockMin*(1+1e-9) || r.PedalMin > r.LastsPedalMin*(1+1e-9) || r.ClockMin > r.LastsClockMin*(1+1e-9) {
		bad("ride %+v", *r)
	}
	if p.EmptyV >= p.NominalV || p.NominalV >= p.FullV {
		bad("pack volts %g, %g, %g", p.EmptyV, p.NominalV, p.FullV)
	}
	// Nothing gives more than it holds: energy is at most charge times the
	// volts of the full pack.
	if r.DeliveredWh > r.DeliveredAh*p.FullV*1.02+1e-9 {
		bad("%g Wh out of %g Ah at no more than %g V", r.DeliveredWh, r.DeliveredAh, p.FullV)
	}
	if s := a.Steady; s != nil && (s.Efficiency > 1 || s.BusV > p.FullV*1.02) {
		bad("steady %+v", *s)
	}
	if s := a.Steady; s != nil && s.SpeedKmh == 0 && a.Verdict < answer.FixFirst {
		bad("does not move, and the verdict is %v", a.Verdict)
	}
	if l := a.Launch; l != nil {
		if l.LowestBusV > p.FullV*1.02 {
			bad("bus at launch %g V, full pack %g V", l.LowestBusV, p.FullV)
		}
		if l.PeakBatteryA > p.ShortCircuitA*1.02 {
			bad("peak of %g A, more than the %g A into a short", l.PeakBatteryA, p.ShortCircuitA)
		}
	}
}

func everyFormat(t testing.TB, what string, a *packcheck.Assessment) {
	t.Helper()
	for _, format := range report.Formats() {
		for _, short := range []bool{false, true} {
			var out bytes.Buffer
			if err := report.Write(&out, a, report.Options{Format: format, Short: short}); err != nil {
				t.Errorf("%s: %s: %v", what, format, err)
				continue
			}
			for _, word := range []string{"NaN", "Inf ", "+Inf", "%!", "<nil>"} {
				if i := strings.Index(out.String(), word); i >= 0 {
					t.Errorf("%s: %s holds %q: %.80s", what, format, word, out.String()[max(0, i-40):])
				}
			}
			if format != report.FormatText {
				continue
			}
			for line := range strings.Lines(out.String()) {
				if len(line) > report.Columns+1 || strings.ContainsFunc(line, func(r rune) bool { return r != '\n' && (r < ' ' || r > '~') }) {
					t.Errorf("%s: line %q", what, line)
				}
			}
		}
	}
}

// Every key at the ends of its bounds, on a setup of labels, on one that says
// everything, and on a bench load.
func TestAnyOneKeyAtItsExtremesGivesFaultsOrAConsistentAnswer(t *testing.T) {
	// The original would be computed again each time; the keys at random have it.
	full := doneProperly(t).without("original.pack", "original.controller")
	bases := map[string]sheet{"labels": labelsOnly(), "full": full, "bench": benchLoad()}
	// Where everything else is a guess, or there is no vehicle, the ends of
	// what matters there will do.
	ends := func(i int) bool { return i == 0 || i == 2 }
	forBench := []string{"pack", "load", "cutoff.module", "outing", "charger", "measured"}
	byTable := map[string][]setup.Key{}
	for _, k := range setup.Keys() {
		byTable[k.Table] = append(byTable[k.Table], k)
	}
	for _, table := range slices.Sorted(maps.Keys(byTable)) {
		t.Run(table, func(t *testing.T) {
			t.Parallel()
			count := 0
			for _, k := range byTable[table] {
				for i, value := range extremes(t, k) {
					for name, base := range bases {
						if name == "labels" && !ends(i) || name == "full" && i == 4 || name == "bench" && (!ends(i) || !slices.Contains(forBench, table)) {
							continue
						}
						what := name + " with " + k.Path() + " = " + value
						a := assessed(t, what, base.with(k.Path(), value).toml())
						if a == nil {
							continue
						}
						consistent(t, what, a)
						if count++; count%10 == 1 {
							everyFormat(t, what, a)
						}
					}
				}
			}
		})
	}
}

// Several keys at once, drawn at random but the same on every run.
func TestManyKeysAtRandomGiveFaultsOrAConsistentAnswer(t *testing.T) {
	t.Parallel()
	random := rand.New(rand.NewPCG(1, 2))
	full := doneProperly(t)
	tired := sheetOf(t, "examples/two-seater-tired-blocks.toml")
	bases := []sheet{labelsOnly(), full, tired, benchLoad(), full.without("fuse", "charger", "cutoff.module")}
	keys := setup.Keys()
	n, answered := 150, 0
	for i := range n {
		s := bases[i%len(bases)]
		var what []string
		for range 1 + random.IntN(6) {
			k := keys[random.IntN(len(keys))]
			values := extremes(t, k)
			if len(values) == 0 {
				continue
			}
			value := values[random.IntN(len(values))]
			if low, high := bounds(t, k); k.Kind != quantity.NoKind && k.Kind != quantity.Count && k.Kind != quantity.Gauge && random.IntN(2) == 0 {
				at := func() float64 { return low + (high-low)*math.Pow(random.Float64(), 6) }
				a, b := at(), at()
				value = written(k, a)
				if random.IntN(3) == 0 {
					value = written(k, min(a, b), max(a, b))
				}
			}
			path := k.Path()
			if k.Table != "" && random.IntN(4) == 0 {
				path = "original." + path
			}
			s = s.with(path, value)
			what = append(what, path+" = "+value)
		}
		name := fmt.Sprintf("%d: %s", i%len(bases), strings.Join(what, "; "))
		a := assessed(t, name, s.toml())
		if a == nil {
			continue
		}
		answered++
		consistent(t, name, a)
		if i%10 == 0 {
			everyFormat(t, name, a)
		}
	}
	t.Logf("%d of %d answered", answered, n)
}

// What must never pass, each on a setup that is sound without it.
func TestWhatIsUnsafeIsNeverFineOrWatch(t *testing.T) {
	t.Parallel()
	sound := doneProperly(t)
	if a := answer(t, sound); a.Verdict > answer.Watch {
		t.Fatalf("the sound setup is %v: %+v", a.Verdict, a.Findings[0])
	}
	block := soundBlock(t)
	if a := answer(t, block); a.Verdict > answer.Watch {
		t.Fatalf("the sound lead-acid setup is %v: %+v", a.Verdict, a.Findings[0])
	}
	contacts := onContacts(t).with("fuse.form", `"small blade"`, "fuse.rating", `"20 A"`, "fuse.distance_from_pack", `"100 mm"`)
	noConverter := sound.with("controller.converter_voltage", "", "controller.converter_limit", "")
	for _, c := range []struct {
		name  string
		s     sheet
		codes string // one of them must be found ...
		least answer.Level
	}{
		{"18 V pack on 12 V contacts", contacts, "contacts-may-weld", answer.Danger},
		{"18 V pack, labels only", labelsOnly().with("pack.chemistry", `"li-ion"`, "pack.label", `"18 V 5 Ah"`), "contacts-may-weld", answer.Danger},
		{"20 V max pack, labels only", labelsOnly().with("pack.chemistry", `"li-ion"`, "pack.label", `"20 V max 5 Ah"`), "contacts-may-weld", answer.Danger},
		{"24 V of lead-acid on 12 V contacts", labelsOnly().with("pack.label", `"24 V (two 12 V)"`), "contacts-may-weld", answer.Danger},
		{"two 12 V blocks joined on 12 V contacts", labelsOnly().with("pack.joined", `"series"`), "contacts-may-weld", answer.Danger},
		{"18 V pack on a 12 V chopper", noConverter.with("controller.max_voltage", `"15 V"`), "board-overvoltage", answer.Danger},
		{"18 V pack on a chopper of unknown volts", noConverter.with("controller.max_voltage", ""), "board-overvoltage,board-volts-unknown", answer.FixFirst},
		{"chopper for 18 to 30 V", noConverter.with("controller.max_voltage", `"18 to 30 V"`), "board-overvoltage", answer.FixFirst},
		{"a part that may stand less than the pack gives", noConverter.with("vehicle.weakest_part_voltage", `"16 to 25 V"`), "board-overvoltage", answer.FixFirst},
		{"no fuse", sound.without("fuse").with("fuse.form", `"none"`), "no-fuse", answer.Danger},
		{"nothing said of a fuse", sound.without("fuse"), "fuse-unknown", answer.FixFirst},
		{"30 A fuse on 18 AWG 60 C wire", sound.with("wire.gauge", `"18 AWG"`, "wire.insulation", `"60 C"`, "fuse.rating", `"30 A"`), "fuse-above-wire", answer.Danger},
		{"30 A fuse on wire of 12 to 18 AWG", sound.with("wire.gauge", `"12 to 18 AWG"`, "wire.insulation", `"60 C"`, "fuse.rating", `"30 A"`), "fuse-above-wire", answer.FixFirst},
		{"40 A fuse on wire of unknown insulation", sound.with("wire.gauge", `"14 AWG"`, "wire.insulation", "", "fuse.rating", `"40 A"`), "fuse-above-wire", answer.FixFirst},
		{"fuse for 32 V on a pack of 42 V", sound.with("pack.label", `"36 V 5 Ah"`, "pack.cells_in_series", "10", "controller.max_voltage", `"50 V"`, "cutoff.module.opens_at", `"33 V"`, "charger.voltage", `"42 V"`), "fuse-voltage", answer.FixFirst},
		{"fuse two metres from the pack", sound.with("fuse.distance_from_pack", `"2 m"`), "fuse-too-far", answer.FixFirst},
		{"lithium without a cutoff", sound.without("cutoff.module"), "cutoff-none", answer.Danger},
		{"lithium cut off at 10 V", sound.with("cutoff.module.opens_at", `"10 V"`), "cutoff-below-harm", answer.Danger},
		{"a cutoff that waits for an hour", sound.with("cutoff.module.delay", `"1 h"`), "cutoff-never-opens,drained-past-saving", answer.Danger},
		{"a cutoff that only draws current", sound.with("cutoff.module.opens_at", "", "cutoff.module.delay", ""), "cutoff-none", answer.Danger},
		{"a cutoff module that empties the pack within a week", sound.with("cutoff.module.standby_current", `"50 mA"`), "idle-harms-within-week", answer.Danger},
		{"a cutoff module that may", sound.with("cutoff.module.standby_current", `"0 to 50 mA"`), "idle-harms-within-week", answer.FixFirst},
		{"lead-acid charger on lithium", sound.with("charger.made_for", `"lead-acid"`, "charger.voltage", `"14.7 V"`, "charger.came_with_pack", "false"), "charger-wrong-chemistry", answer.Danger},
		{"lead-acid charger on lithium, said to have come with it", sound.with("charger.made_for", `"lead-acid"`), "charger-wrong-chemistry", answer.Danger},
		{"24 V charger on lithium of 18 V", sound.with("charger.voltage", `"29.4 V"`, "charger.came_with_pack", "false"), "charger-volts-too-high,charger-end-volts-unknown", answer.Danger},
		{"a charger that never stops on lithium", sound.with("charger.stops", `"never"`, "charger.came_with_pack", "false"), "charger-never-stops", answer.Danger},
		{"a laptop supply", sound.with("charger.made_for", `"power supply"`), "charger-is-power-supply", answer.Danger},
		{"an AC adaptor", sound.with("charger.output", `"ac"`), "charger-gives-ac", answer.Danger},
		{"the vehicle's jack for a tool pack", sound.with("charger.jack", `"vehicle"`), "charge-through-vehicle-jack", answer.Danger},
		{"10 A into a 5 Ah tool pack", sound.with("charger.current", `"10 A"`), "charger-current-too-high", answer.Danger},
		{"12 V charger on a 24 V string", block.with("pack.label", `"24 V 7 Ah"`, "vehicle.design_voltage", `"24 V"`, "motors.rated_voltage", `"24 V"`, "cutoff.module.opens_at", `"21 V"`), "charger-volts-too-low", answer.FixFirst},
		{"24 V charger on a 12 V block", block.with("charger.voltage", `"29.4 V"`), "charger-volts-too-high", answer.FixFirst},
		{"charging lithium below freezing", sound.with("outing.air", `"-3 C"`), "charge-too-cold,charge-place-temperature", answer.Danger},
		{"charging lithium where it may freeze", sound.with("outing.air", `"-10 to 20 C"`), "charge-too-cold,charge-place-temperature", answer.FixFirst},
		{"charging lithium at 55 C", sound.with("outing.air", `"55 C"`), "charge-too-hot,charge-place-temperature", answer.Danger},
		{"a pack asked for three times its lasting current", sound.with("pack.max_current", `"2 A"`), "pack-current-lasting", answer.Danger},
		{"a pack asked for three times its peak", labelsOnly().with("pack.max_current", `"6 A"`), "launch-over-pack,pack-current-peak", answer.FixFirst},
		{"a pack that may stand little", sound.with("pack.max_current", `"2 to 40 A"`), "pack-current-lasting", answer.FixFirst},
		{"a controller asked for more than its peak", sound.with("controller.continuous_current", `"5 A"`, "controller.peak_current", `"10 A"`), "launch-over-controller-peak", answer.FixFirst},
		{"a child of two", sound.with("rider.age", `"2 years"`), "way-to-stop", answer.FixFirst},
		{"children of two to six", sound.with("rider.age", `"2 to 6 years"`), "way-to-stop", answer.FixFirst},
		{"twelve kilometres an hour", sound.with("gears.ratio", `"45:1"`), "fast-for-a-ride-on", answer.FixFirst},
		{"cells that rest at one volt", sound.without("original.pack", "original.controller").with("measured.rest_voltage", `"5 V"`), "pack-never-recharge", answer.Danger},
		{"cells that rest at nothing", sound.without("original.pack", "original.controller").with("measured.rest_voltage", `"0 V"`), "pack-never-recharge", answer.Danger},
		{"cells that rest at one volt, no charger described", sound.without("original.pack", "original.controller", "charger").with("measured.rest_voltage", `"5 V"`), "pack-never-recharge", answer.Danger},
		{"an empty pack", sound.with("pack.charge", `"0 %"`), "drained-past-saving,weak-cell-harmed", answer.FixFirst},
		{"two tool packs in series", sound.with("pack.joined", `"series"`), "series-pack-electronics", answer.FixFirst},
		{"an empty block in the cold", labelsOnly().with("pack.charge", `"0 %"`, "outing.air", `"-40 C"`), "pack-too-cold", answer.FixFirst},
		{"an old block measured in the cold", labelsOnly().with("measured.rest_voltage", `"12 V"`, "outing.air", `"-40 C"`), "pack-too-cold", answer.FixFirst},
		{"a slope that it cannot climb", sound.with("vehicle.slope", `"30 %"`), "cannot-start,spins-on-the-spot", answer.FixFirst},
		{"10 Ohm in the controller", sound.with("controller.resistance", `"10 Ohm"`), "cannot-keep-going,cannot-start,stalls-soon", answer.FixFirst},
		{"a bench load beyond the pack", benchLoad().with("load.current", `"2000 A"`, "cutoff.module.opens_at", `"10.5 V"`), "pack-cannot-supply", answer.FixFirst},
		{"a bench power beyond the pack", benchLoad().with("load.current", "", "load.power", `"20 kW"`, "cutoff.module.opens_at", `"10.5 V"`), "pack-cannot-supply", answer.FixFirst},
		{"24 V charger said to have come with an 18 V pack", sound.with("charger.voltage", `"24 V"`), "charger-volts-too-high,charger-end-volts-unknown", answer.Danger},
		{"lead-acid volts said to have come with it", sound.with("charger.voltage", `"14.7 V"`), "charger-volts-too-low,charger-end-volts-unknown", answer.FixFirst},
		{"a reversed plug said to have come with it", sound.with("charger.polarity", `"centre negative"`, "charger.jack_polarity", `"centre positive"`), "charger-polarity-reversed", answer.Danger},
		{"a charger of 20 to 25 V", sound.with("charger.voltage", `"20 to 25.2 V"`), "charger-volts-too-high", answer.Danger},
		{"lithium with a fifth of its charge left in it", sound.with("pack.health", `"20 %"`), "pack-worn", answer.FixFirst},
		{"lithium stored full in a hot shed", sound.with("storage.from", "2026-05-01", "storage.until", "2026-10-31", "storage.temperature", `"60 C"`), "stored-runs-empty", answer.Danger},
		{"lithium stored where it may get hot", sound.with("storage.from", "2026-05-01", "storage.until", "2026-10-31", "storage.temperature", `"0 to 60 C"`), "stored-runs-empty", answer.FixFirst},
		{"a bench load said to have no fuse", benchLoad().with("fuse.form", `"none"`, "cutoff.module.opens_at", `"10.5 V"`), "no-fuse", answer.Danger},
		{"a bench load beyond its fuse", benchLoad().with("load.current", `"20 A"`, "fuse.rating", `"5 A"`, "cutoff.module.opens_at", `"10.5 V"`), "fuse-ends-the-ride", answer.FixFirst},
		{"a label that can mean several kinds of cell", soundBlock(t).with("pack.chemistry", "", "pack.label", `"12 V 2 Ah"`), "cells-assumed", answer.FixFirst},
		{"a bench load that only pauses", benchLoad().with("outing.pause", `"10 s"`), "cutoff-none", answer.FixFirst},
	} {
		a := assessed(t, c.name, c.s.toml())
		if a == nil {
			t.Errorf("%s: refused", c.name)
			continue
		}
		consistent(t, c.name, a)
		if a.Verdict < answer.FixFirst || has(a, strings.Split(c.codes, ",")...) < c.least {
			var found []string
			for _, f := range a.Findings {
				found = append(found, f.Level.String()+" "+f.Code)
			}
			t.Errorf("%s: %v, %s not found as %v among %s", c.name, a.Verdict, c.codes, c.least, strings.Join(found, ", "))
		}
	}
}

// soundBlock is a 12 V tractor on a sealed block with everything that it needs.
func soundBlock(t testing.TB) sheet {
	t.Helper()
	return doneProperly(t).without("pack", "charger", "cutoff.module", "original.pack", "original.controller").with(
		"controller.converter_voltage", "", "controller.converter_limit", "", "controller.max_voltage", `"30 V"`,
		"pack.chemistry", `"agm"`, "pack.label", `"12 V 7 Ah"`, "pack.health", `"100 %"`, "pack.charge", `"100 %"`,
		"pack.temperature", `"20 C"`, "pack.resistance", `"25 mOhm"`, "pack.max_current", `"21 A"`, "pack.housing", `"bare cells"`, "pack.rate", `"20 h"`,
		"cutoff.module.opens_at", `"11 V"`, "cutoff.module.delay", `"2 s"`, "cutoff.module.standby_current", `"0 A"`,
		"charger.made_for", `"agm"`, "charger.voltage", `"14.7 V"`, "charger.current", `"1.5 A"`, "charger.stops", `"by itself"`,
		"charger.output", `"dc"`, "charger.polarity", `"centre positive"`, "charger.jack_polarity", `"centre positive"`, "charger.jack", `"terminals"`)
}

// Bad input gets one line per fault and never an answer.
func TestBadInputIsRefusedWithAReason(t *testing.T) {
	t.Parallel()
	ok := labelsOnly().toml()
	utf16 := func(text string, little bool) string {
		out := "\xfe\xff"
		if little {
			out = "\xff\xfe"
		}
		for _, r := range []byte(text) {
			if little {
				out += string([]byte{r, 0})
			} else {
				out += string([]byte{0, r})
			}
		}
		return out
	}
	var many strings.Builder
	many.WriteString("[pack]\nlabel = \"12 V 7 Ah\"\n")
	for i := range 5000 {
		fmt.Fprintf(&many, "key%d = \"1 V\"\n", i)
	}
	put := func(key, value string) string { return labelsOnly().with(key, value).toml() }
	for _, c := range []struct{ name, text, want string }{
		{"nothing at all", "", "pack"},
		{"only blanks", " \n\t\r\n", "pack"},
		{"a title alone", "title = \"x\"", "pack"},
		{"not a number", put("rider.mass", "nan"), "rider.mass"},
		{"infinite", put("rider.mass", "+inf"), "rider.mass"},
		{"not a number, quoted", put("rider.mass", `"NaN kg"`), "rider.mass"},
		{"infinite, quoted", put("rider.mass", `"inf kg"`), "rider.mass"},
		{"too many digits", put("rider.mass", `"1e999 kg"`), "rider.mass"},
		{"hexadecimal", put("rider.mass", `"0x10 kg"`), "rider.mass"},
		{"a mass below nothing", put("rider.mass", `"-20 kg"`), "rider.mass"},
		{"a pack below nothing", put("pack.capacity", `"-7 Ah"`), "pack.capacity"},
		{"a range backwards over zero", put("pack.capacity", `"-7 to 7 Ah"`), "pack.capacity"},
		{"a child of two tonnes", put("rider.mass", `"2000 kg"`), "rider.mass"},
		{"a wheel of a kilometre", put("vehicle.wheel_diameter", `"1 km"`), "vehicle.wheel_diameter"},
		{"no cells", put("pack.cells_in_series", "0"), "pack.cells_in_series"},
		{"cells below nothing", put("pack.cells_in_series", "-3"), "pack.cells_in_series"},
		{"half a cell", put("pack.cells_in_series", "5.5"), "pack.cells_in_series"},
		{"a million cells", put("pack.cells_in_series", "1000000"), "pack.cells_in_series"},
		{"more cells than a word holds", put("pack.cells_in_series", "99999999999999999999"), "pack.cells_in_series"},
		{"no motors", put("motors.count", "0"), "motors.count"},
		{"no unit", put("rider.mass", "20"), "rider.mass"},
		{"another unit", put("rider.mass", `"20 V"`), "rider.mass"},
		{"thousands of volts", put("vehicle.design_voltage", `"12 kV"`), "vehicle.design_voltage"},
		{"a list for a value", put("rider.mass", `["20 kg"]`), "rider.mass"},
		{"a table for a value", put("rider.mass", `{ is = "20 kg" }`), "rider.mass"},
		{"a value for a table", "pack = 3\n", "pack"},
		{"a list of tables", "[[pack]]\nlabel = \"12 V 7 Ah\"\n", "pack"},
		{"a key twice", "[pack]\nlabel = \"12 V\"\nlabel = \"24 V\"\n", "once only"},
		{"a table twice", "[pack]\nlabel = \"12 V\"\n[pack]\nlabel = \"24 V\"\n", "once only"},
		{"a misspelt key", put("pack.capasity", `"7 Ah"`), `"capacity"`},
		{"a misspelt table", ok + "[moters]\ncount = 2\n", "[motors]"},
		{"a key in capitals", put("pack.Capacity", `"7 Ah"`), `"capacity"`},
		{"a table in capitals", "[Pack]\nlabel = \"12 V 7 Ah\"\n", "[pack]"},
		{"a word in another case is the same word but not a key", put("PACK.label", `"12 V"`), "[pack]"},
		{"no closing quote", "[pack]\nlabel = \"12 V 7 Ah\nchemistry = \"agm\"\n", "pack.label"},
		{"little-endian UTF-16", utf16(ok, true), "UTF-8"},
		{"big-endian UTF-16", utf16(ok, false), "UTF-8"},
		{"UTF-16 without a mark", utf16(ok, true)[2:], "UTF-8"},
		{"Latin-1", "[pack]\nlabel = \"12 V 7 Ah\"\ntitle = \"caf\xe9\"\n", "UTF-8"},
		{"a zero byte", "[pack]\nlabel = \"12 V\x00\"\n", "zero byte"},
		{"bytes of a picture", "\x89PNG\r\n\x1a\n\x00\x00", "UTF-8"},
		{"a megabyte too many", "# " + strings.Repeat("x", 1<<20), "1 MiB"},
		{"a hundred megabytes", strings.Repeat("# a line that says nothing at all\n", 3<<20), "1 MiB"},
		{"thousands of keys", many.String(), "500"},
		{"thousands of lines", strings.Repeat("#\n", 30_000), "lines"},
		{"brackets in brackets", "x = " + strings.Repeat("[", 100_000), "levels"},
		{"tables in tables", "x = " + strings.Repeat("{a=", 50_000), "levels"},
		{"names in names", "[" + strings.Repeat("a.", 50_000) + "a]\n", "levels"},
		{"a dotted key without end", strings.Repeat("a.", 100_000) + "a = 1\n", "levels"},
		{"a word of a megabyte", put("pack.label", `"`+strings.Repeat("1", 900_000)+`"`), "pack.label"},
		{"a comment for an escape", "title = \"\\u001b[2J\"\n" + ok, "title"},
		{"charger label against charger volts", labelsOnly().with("charger.label", `"14.7 V 1 A"`, "charger.voltage", `"29.4 V"`).toml(), "charger.voltage"},
		{"volts that no such battery rests at", put("measured.rest_voltage", `"25 V"`), "measured.rest_voltage"},
		{"a store for two centuries", labelsOnly().with("storage.from", "1990-01-01", "storage.until", "2199-01-01").toml(), "storage.until"},
	} {
		began := time.Now()
		s, err := packcheck.Read(strings.NewReader(c.text), "bad.toml")
		if err == nil {
			_, err = packcheck.Assess(s)
		}
		if d := time.Since(began); d > slowest {
			t.Errorf("%s: took %v", c.name, d)
		}
		var faults setup.Faults
		if !errors.As(err, &faults) {
			t.Errorf("%s: %v is no faults", c.name, err)
			continue
		}
		if !strings.Contains(err.Error(), c.want) {
			t.Errorf("%s: %.300s, want it to say %q", c.name, err, c.want)
		}
		for _, f := range faults {
			if line := f.Error(); len(line) > 2000 || strings.ContainsAny(line, "\n\r\x1b\x00") || f.File != "bad.toml" {
				t.Errorf("%s: fault %.300q", c.name, line)
			}
		}
	}
}

func TestSeveralFaultsComeTogetherInTheOrderOfTheFile(t *testing.T) {
	_, err := packcheck.Read(strings.NewReader(`
[rider]
mass = "-3 kg"
colour = "red"
[pack]
capacity = "7"
label = 12
[fuse]
rating = "thirty"
form = "small blade"
[outing]
air = "500 C"
`), "several.toml")
	var faults setup.Faults
	if !errors.As(err, &faults) || len(faults) != 6 {
		t.Fatalf("%d faults: %v", len(faults), err)
	}
	for i, key := range []string{"rider.mass", "rider.colour", "pack.capacity", "pack.label", "fuse.rating", "outing.air"} {
		if faults[i].Key != key || faults[i].Line == 0 || i > 0 && faults[i].Line <= faults[i-1].Line {
			t.Errorf("fault %d is %q, want %s", i, faults[i].Error(), key)
		}
	}
}

func TestOddLayoutsOfASoundFileAreRead(t *testing.T) {
	text := labelsOnly().toml()
	want := everyByte(t, text)
	for name, odd := range map[string]string{
		"CRLF":            strings.ReplaceAll(text, "\n", "\r\n"),
		"CR":              strings.ReplaceAll(text, "\n", "\r"),
		"byte order mark": "\ufeff" + text,
		"no last newline": strings.TrimSuffix(text, "\n"),
		"many remarks":    strings.Repeat("# x\n", 10_000) + text,
		"blanks":          strings.ReplaceAll(text, " = ", "\t =  "),
	} {
		if everyByte(t, odd) != want {
			t.Errorf("%s: another report", name)
		}
	}
}

func TestWhatIsNoPlainFileIsRefused(t *testing.T) {
	dir := t.TempDir()
	locked := filepath.Join(dir, "locked.toml")
	if err := os.WriteFile(locked, []byte(labelsOnly().toml()), 0); err != nil {
		t.Fatal(err)
	}
	for _, name := range []string{dir, filepath.Join(dir, "none.toml"), "", filepath.Join(dir, "none", "none.toml"), "\x00", strings.Repeat("n", 5000)} {
		if _, err := packcheck.Load(name); err == nil {
			t.Errorf("%.40q is read", name)
		}
	}
	if _, err := packcheck.Load(locked); err == nil && os.Getuid() != 0 {
		t.Error("a locked file is read")
	}
	if _, err := packcheck.Read(failing{}, "pipe"); err == nil || !strings.Contains(err.Error(), "broken") {
		t.Errorf("a broken pipe gives %v", err)
	}
	// A stream without end must not be read to its end.
	if _, err := packcheck.Read(endless{}, "pipe"); err == nil || !strings.Contains(err.Error(), "1 MiB") {
		t.Errorf("an endless pipe gives %v", err)
	}
}

type failing struct{}

func (failing) Read([]byte) (int, error) { return 0, errors.New("the pipe is broken") }

type endless struct{}

func (endless) Read(p []byte) (int, error) {
	for i := range p {
		p[i] = '#'
	}
	return len(p), nil
}
