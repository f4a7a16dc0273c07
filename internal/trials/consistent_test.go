package trials_test

import (
	"bytes"
	"encoding/json"
	"errors"
	"fmt"
	"maps"
	"math"
	"slices"
	"strings"
	"testing"

	"example.org/packcheck"
	"example.org/packcheck/answer"
	"example.org/packcheck/internal/draws"
	"example.org/packcheck/report"
	"example.org/packcheck/setup"
)

// assessed runs one setup. It returns nil where the setup was refused, which it
// must be with faults that name a key or a line.
func assessed(t testing.TB, what, text string) *answer.Assessment {
	t.Helper()
	s, err := packcheck.Read(strings.NewReader(text), "abuse.toml")
	var a *answer.Assessment
	if err == nil {
		a, err = packcheck.AssessWith(t.Context(), s, packcheck.Options{Draws: few})
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
	case errors.Is(err, draws.ErrStandsStill): // readings of a vehicle that never runs: refused, and no line of it alone is wrong
		return nil
	case err != nil:
		t.Errorf("%s: neither faults nor an answer: %v", what, err)
		return nil
	}
	return a
}

var endWords = []string{
	"cutoff in the pack", "cutoff in the module", "cutoff in the controller", "pack empty", "fuse opened", "cannot move",
	"wanted time reached", "end voltage reached", "pattern played", "pack cannot supply it", "time limit",
}

// consistent holds an assessment to everything that must be so whatever the
// setup is.
func consistent(t testing.TB, what string, a *answer.Assessment) {
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
	if a.Verdict > answer.Fine && !slices.ContainsFunc(a.Findings, func(f answer.Finding) bool {
		return f.Level == a.Verdict && f.Certainty.Hedge()+f.Title == a.Headline[1]
	}) {
		bad("no finding as bad as the verdict says %q", a.Headline[1])
	}
	if a.Verdict >= answer.FixFirst && len(a.Changes) == 0 {
		bad("verdict %v and nothing to change", a.Verdict)
	}
	if len(a.Measure) > 5 || len(a.Cautions) < 5 || len(a.Sources) == 0 {
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
			at := strings.TrimPrefix(path+"."+key, ".")
			if v["unit"] == "degC" { // a reading
				at += "_c"
			}
			noAbsurdNumbers(bad, at, v[key])
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
		signed := degrees || strings.HasPrefix(path, "findings.") || strings.Contains(path, "weakest_cell_v") || path == "conflict.pushed.sigma" || path == "launch.case.grade_n" ||
			strings.HasPrefix(path, "series.") || strings.Contains(path, "steady.battery_a") || strings.Contains(path, "steady.motor_a") || path == "series.launch.battery_a" || path == "series.outing.battery_a" // downhill the motors charge
		if v < -0.05 && !signed {
			bad("%s is %g", path, v)
		}
		if degrees && (v < -60 || v > 5000) || math.Abs(v) > 1e12 {
			bad("%s is %g", path, v)
		}
	}
}

var units = []string{"V", "A", "Ohm", "degC", "s", "h", "d", "m", "m/s", "kg", "N", "W", "A2s", "mm2", "x", "share", "years", ""}

func completeFindings(bad complaint, a *answer.Assessment) {
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

func orderedRanges(bad complaint, a *answer.Assessment, tree map[string]any) {
	paths := packcheck.RangePaths()
	for path, r := range a.Ranges {
		if !slices.Contains(paths, path) {
			bad("%s has a range and is not listed", path)
		}
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
		near := 1e-9
		if path == "ride.launches" || path == "cutoff.chatter_count" {
			near = 0.5 // counted in whole numbers
		}
		if v, ok := at.(float64); ok && math.Abs(v-r.Likely) > near*max(math.Abs(v), 1) && !(strings.HasSuffix(path, "_c") && r.Likely == 250) {
			bad("%s is %g, its range says %g", path, v, r.Likely)
		}
	}
}

func sensibleRide(bad complaint, a *answer.Assessment) {
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
	if s := a.Steady; s != nil && (s.Efficiency > 1 || s.BusV > p.FullV*1.02 && s.BatteryA > 0) {
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

func everyFormat(t testing.TB, what string, a *answer.Assessment) {
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
