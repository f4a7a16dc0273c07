package page_test

import (
	"bytes"
	"encoding/json"
	"maps"
	"os"
	"slices"
	"strings"
	"testing"

	"example.org/packcheck"
	"example.org/packcheck/internal/interview"
	"example.org/packcheck/internal/page"
	"example.org/packcheck/report"
	"example.org/packcheck/setup"
)

// told is what a parent tells first of all.
func told() map[string]string {
	return map[string]string{
		"pack.label": "20V MAX 4.0Ah", "vehicle.design_voltage": "12 V", "rider.age": "4 years", "rider.mass": "17 kg", "vehicle.ground": "short grass",
	}
}

// asked puts a request to a new session and returns all replies to it.
func asked(t testing.TB, r page.Request) (last page.Reply, early []page.Reply) {
	t.Helper()
	return askedOf(t, &page.Session{}, r)
}

func askedOf(t testing.TB, s *page.Session, r page.Request) (last page.Reply, early []page.Reply) {
	t.Helper()
	text, err := json.Marshal(r)
	if err != nil {
		t.Fatal(err)
	}
	read := func(reply []byte) (x page.Reply) {
		if err := json.Unmarshal(reply, &x); err != nil {
			t.Fatalf("%s replies %q: %v", r.Do, reply, err)
		}
		return x
	}
	last = read(s.Serve(text, func(reply []byte) { early = append(early, read(reply)) }))
	return last, early
}

// The page asks what the interview asks, in its words.
func TestThePageAsksTheQuestionsOfTheInterview(t *testing.T) {
	reply, _ := asked(t, page.Request{Do: "begin"})
	first := interview.First()
	if len(reply.Fields) != len(first) || len(first) < 4 {
		t.Fatalf("%d fields for %d first questions", len(reply.Fields), len(first))
	}
	for i, q := range first {
		f := reply.Fields[i]
		if f.Key != q.Key || f.Asks != q.Asks || f.How != q.How || f.Example != q.Example || f.Usual != q.Usual || len(f.Choices) != len(q.Choices) || !f.First {
			t.Errorf("%s is asked as %+v", q.Key, f)
		}
	}
	if !strings.Contains(reply.Parts["safety"], "child") {
		t.Error("no safety lines stand before the first answer")
	}
	// Once something is told, the rest comes in the order of the interview.
	next, _ := asked(t, page.Request{Do: "assess", Passed: []string{"rider.age"}})
	if !next.Waits || len(next.Next) == 0 {
		t.Fatalf("without a battery: %+v", next)
	}
	for _, q := range next.Next {
		if q.Key == "rider.age" {
			t.Error("what nobody knows is asked again")
		}
	}
}

// bench is a setup whose answer takes no time.
func bench() map[string]string {
	return map[string]string{"pack.label": "12 V 7 Ah", "pack.chemistry": "agm", "load.current": "9 A"}
}

// The answer of the page is that of the command, to the byte; a first one comes
// before it.
func TestThePageAnswersWhatTheCommandDoes(t *testing.T) {
	given := bench()
	if os.Getenv("PACKCHECK_SLOW") != "" {
		given = told()
	}
	var s page.Session
	reply, early := askedOf(t, &s, page.Request{Do: "assess", Given: given})
	if len(early) != 2+len(reply.Ways) || early[0].Draws != page.FewDraws || reply.More || reply.Draws != page.ManyDraws {
		t.Fatalf("%d early replies for %d ways out", len(early), len(reply.Ways))
	}
	for i, e := range early {
		// First few vehicles, then many, then one way out after the other.
		same := func(a, b page.Way) bool { return a.Title == b.Title && maps.Equal(a.Sets, b.Sets) }
		if !e.More || i > 0 && e.Draws != page.ManyDraws || !slices.EqualFunc(e.Ways, reply.Ways[:max(0, i-1)], same) {
			t.Errorf("reply %d is from %d vehicles and has %d ways out", i, e.Draws, len(e.Ways))
		}
	}
	made, err := setup.Of(given)
	if err != nil {
		t.Fatal(err)
	}
	a, err := packcheck.Assess(made)
	if err != nil {
		t.Fatal(err)
	}
	for _, format := range report.Formats() {
		var want bytes.Buffer
		if err := report.Write(&want, a, report.Options{Format: format, Explain: packcheck.Explain}); err != nil {
			t.Fatal(err)
		}
		if got, _ := askedOf(t, &s, page.Request{Do: "write", Given: given, Format: string(format)}); got.Text != want.String() {
			t.Errorf("%s differs from that of the command", format)
		}
	}
	parts, word, err := report.HTMLParts(a, packcheck.Explain)
	if err != nil {
		t.Fatal(err)
	}
	for _, p := range parts {
		if p.Part == report.PartAsk {
			// The page has a field for each and no file.
			if len(reply.Measure) == 0 || len(reply.Measure) != len(a.Measure) || strings.Contains(p.Markup, "under [") {
				t.Errorf("to measure: %v, %s", reply.Measure, p.Markup)
			}
		}
		if reply.Parts[string(p.Part)] != p.Markup {
			t.Errorf("the part %s differs from that of the report", p.Part)
		}
	}
	if reply.Word != word || reply.Level != a.Verdict.String() || len(reply.Ways) != len(a.Ways) {
		t.Errorf("word %q, level %q, %d ways out", reply.Word, reply.Level, len(reply.Ways))
	}
	for _, w := range reply.Ways { // each is a setup that the page takes
		changed := maps.Clone(given)
		for key, text := range w.Sets {
			if text == "" {
				delete(changed, key)
			} else {
				changed[key] = text
			}
		}
		if laid, _ := asked(t, page.Request{Do: "fields", Given: changed}); laid.Faults != nil {
			t.Errorf("%s: %v", w.Title, laid.Faults)
		}
	}
}

// An answer is read like in the interview, and a fault says what would be right.
func TestAnswersAreReadAsPeopleTypeThem(t *testing.T) {
	for _, c := range []struct {
		key, text string
		want      map[string]string
	}{
		{"pack.label", "20V MAX 4.0Ah", map[string]string{"pack.label": "20V MAX 4.0Ah"}},
		{"rider.age", "4 years, 17 kg", map[string]string{"rider.age": "4 years", "rider.mass": "17 kg"}},
		{"vehicle.ground", "lawn", map[string]string{"vehicle.ground": "short grass"}},
		{"vehicle.design_voltage", "12", map[string]string{"vehicle.design_voltage": "12 V"}},
		{"pack.label", "don't know", nil},
		{"launch_day", "x", nil},
	} {
		reply, _ := asked(t, page.Request{Do: "fill", Key: c.key, Text: c.text})
		if c.key == "launch_day" {
			if len(reply.Faults) != 1 {
				t.Errorf("an unknown question gives %+v", reply)
			}
			continue
		}
		if !maps.Equal(reply.Sets, c.want) || reply.Faults != nil {
			t.Errorf("%s %q gives %+v", c.key, c.text, reply)
		}
	}
	if reply, _ := asked(t, page.Request{Do: "fill", Key: "pack.label", Text: "20V MAX 4.0Ah"}); !strings.Contains(reply.Text, "5 cells in series") {
		t.Errorf("a label is read as %q", reply.Text)
	}
	for _, c := range []struct{ key, text, want string }{
		{"rider.age", "4", "4 years"},
		{"vehicle.design_voltage", "12", "12 V"},
		{"vehicle.design_voltage", "12 V", ""},
		{"vehicle.ground", "lawn", ""},
		{"vehicle.ground", "short grass", "lawn"},
		{"vehicle.ground", "grass", "lawn"}, // and no meadow
		{"vehicle.ground", "the driveway", "street or paving"},
		{"rider.age", "4 years, 17 kg", ""},
		{"vehicle.design_voltage", "don't know", ""},
	} {
		if reply, _ := asked(t, page.Request{Do: "fill", Key: c.key, Text: c.text}); reply.Text != c.want {
			t.Errorf("%s %q is said to mean %q, want %q", c.key, c.text, reply.Text, c.want)
		}
	}
	if reply, _ := asked(t, page.Request{Do: "fill", Key: "rider.age", Text: "1 year"}); !strings.HasPrefix(reply.Text, "1 year. A child of 1 is too young") || len(reply.Sets) == 0 {
		t.Errorf("a child of one is answered %q, %v", reply.Text, reply.Sets)
	}
	month, _ := asked(t, page.Request{Do: "fill", Key: "storage.from", Text: "November", Today: "2026-11-28", Given: map[string]string{"pack.label": "12 V 7 Ah"}})
	if month.Sets["storage.from"] != "2026-11-01" || month.Text != "2026-11-01" { // whoever typed it sees what was read
		t.Errorf("a month gives %+v", month)
	}
	reply, _ := asked(t, page.Request{Do: "fill", Key: "vehicle.design_voltage", Text: "twelve bananas"})
	if len(reply.Faults) != 1 || !strings.Contains(reply.Faults[0].Says, "right would be") || reply.Faults[0].Key != "vehicle.design_voltage" {
		t.Errorf("nonsense gives %+v", reply)
	}
}

// A reading is of the battery that the vehicle came with as soon as that was told: the
// question that it answers says so, in the page and behind a link, with an answer or with
// a fault.
func TestAReadingSaysOfWhichBatteryItIs(t *testing.T) {
	const key = "measured.rest_voltage"
	for _, c := range []struct {
		name     string
		original string
		want     string
	}{
		{"with nothing told of it", "", "(the one to be used)?"},
		{"with one told", "12 V 7 Ah SLA", "(the one that it came with)?"},
		{"with one that cannot have such volts", "6 V 4 Ah SLA", "(the one that it came with)?"},
	} {
		given := map[string]string{"pack.label": "12.8 V 10 Ah LiFePO4", key: "13.1 V"}
		if c.original != "" {
			given["original.pack.label"] = c.original
		}
		reply, _ := asked(t, page.Request{Do: "assess", Given: given})
		if !strings.HasSuffix(reply.Asks[key], c.want) {
			t.Errorf("%s, answered: %q, want it to end in %q", c.name, reply.Asks[key], c.want)
		}
		reply, _ = asked(t, page.Request{Do: "fields", Given: given})
		for _, f := range reply.Fields {
			if f.Key == key && !strings.HasSuffix(f.Asks, c.want) {
				t.Errorf("%s, laid out: %q, want it to end in %q", c.name, f.Asks, c.want)
			}
		}
	}
}

// Every setup can be laid out in fields, and each key stands in exactly one.
func TestFieldsHoldTheWholeSetup(t *testing.T) {
	all := twenty()
	for _, file := range []string{"tractor-done-properly", "tractor-tool-pack", "two-seater-tired-blocks"} {
		s, err := packcheck.Load("../../examples/" + file + ".toml")
		if err != nil {
			t.Fatal(err)
		}
		all[file] = s.Values()
	}
	all["nothing told"] = map[string]string{"pack.label": "20 V max 5 Ah", "original.controller": setup.NothingTold, "original.fuse": setup.NothingTold, "original.pack.label": "12 V 7 Ah SLA"}
	for name, given := range all {
		reply, _ := asked(t, page.Request{Do: "fields", Given: given})
		if reply.Faults != nil {
			t.Errorf("%s: %v", name, reply.Faults)
			continue
		}
		got, seen := map[string]string{}, map[string]bool{}
		for _, f := range reply.Fields {
			if seen[f.Key] {
				t.Errorf("%s: two fields of %s", name, f.Key)
			}
			seen[f.Key] = true
			if (f.Text == "") != (len(f.Sets) == 0) || f.Asks == "" {
				t.Errorf("%s: the field %+v", name, f)
			}
			for key, text := range f.Sets {
				if _, twice := got[key]; twice {
					t.Errorf("%s: %s stands in two fields", name, key)
				}
				got[key] = text
			}
		}
		if !maps.Equal(got, given) {
			t.Errorf("%s: the fields hold %v, want %v", name, got, given)
		}
	}
}

// A setup file that is saved opens as the same setup, and faults come in lines.
func TestFilesAreSavedAndOpened(t *testing.T) {
	saved, _ := asked(t, page.Request{Do: "save", Given: told()})
	opened, _ := asked(t, page.Request{Do: "open", Text: saved.Text})
	if opened.Faults != nil || !maps.Equal(opened.Given, told()) {
		t.Errorf("opened %+v", opened)
	}
	bad, _ := asked(t, page.Request{Do: "open", Text: "[pack]\nlabel = 5\nlable = \"x\"\n"})
	if len(bad.Faults) < 2 || !strings.Contains(bad.Faults[0].Says, "line ") || bad.Fields != nil {
		t.Errorf("a broken file gives %+v", bad)
	}
}

// Nothing that is asked makes it fail, and it always replies in JSON.
func TestTheEngineRepliesToAnything(t *testing.T) {
	var s page.Session
	for _, request := range []string{
		"", "null", "[]", "{}", "17", `{"do":"assess"}`, `{"do":"no"}`, `{"do":"assess","given":{"":""}}`, `{"do":"assess","given":{"pack.label":""}}`,
		`{"do":"assess","given":{"pack.label":"20 V","tables_file":"/etc/passwd"}}`, `{"do":"fields","given":{"load.pattern":"x.csv","pack.label":"12 V 7 Ah"}}`,
		`{"do":"write","format":"exe"}`, `{"do":"write","format":"json"}`, `{"do":"link"}`, `{"do":"unlink","text":"x"}`, `{"do":"open","text":"\u0000"}`,
		`{"do":"fill","key":"pack.label","text":"` + strings.Repeat("9", 600) + `"}`, `{"do":"save","given":{"x":"y"}}`,
		`{"do":"open","text":"` + strings.Repeat("x", 3<<20) + `"}`, "\xff\xfe",
	} {
		var r page.Reply
		reply := s.Serve([]byte(request), func([]byte) {})
		if err := json.Unmarshal(reply, &r); err != nil {
			t.Errorf("%.40q gives %q", request, reply)
		}
		if r.Parts != nil || r.Faults == nil && !r.Waits {
			t.Errorf("%.60q gives %.200q", request, reply)
		}
	}
}

// There is nothing to hand on before the battery is told.
func TestNothingIsWrittenWithoutABattery(t *testing.T) {
	reply, _ := asked(t, page.Request{Do: "write", Format: "markdown", Given: map[string]string{"rider.age": "4 years"}})
	if !reply.Waits || reply.Text != "" {
		t.Errorf("without a battery it writes %+v", reply)
	}
}

func TestATextOfWhatIsOnlyTriedSaysSo(t *testing.T) {
	var s page.Session
	given := map[string]string{"pack.label": "12 V 7 Ah SLA", "vehicle.design_voltage": "12 V"}
	tried := &page.Tried{Steps: []string{"a fuse"}, Today: "NO"}
	reply, _ := askedOf(t, &s, page.Request{Do: "assess", Given: given, Tried: tried})
	if !strings.HasPrefix(reply.Few, "TRIED: ") || !strings.Contains(reply.Parts["band"], "a fuse") {
		t.Errorf("tried, it says %q and %s", reply.Few, reply.Parts["band"])
	}
	for format, only := range map[string]bool{"markdown": true, "bbcode": true, "json": false} {
		got, _ := askedOf(t, &s, page.Request{Do: "write", Given: given, Format: format, Tried: tried})
		if strings.HasPrefix(got.Text, "TRIED ONLY: ") != only {
			t.Errorf("%s begins with %.40q", format, got.Text)
		}
	}
}

func TestALabelsAmpHoursAreToldAsTheyWereRead(t *testing.T) {
	var s page.Session
	for label, want := range map[string]string{"20V MAX 4.0Ah": ", 4 Ah", "12 V 7 Ah SLA": ", 7 Ah"} {
		if reply, _ := askedOf(t, &s, page.Request{Do: "fill", Key: "pack.label", Text: label}); !strings.HasSuffix(reply.Text, want) {
			t.Errorf("%q is read as %q, want %q at its end", label, reply.Text, want)
		}
	}
	if reply, _ := askedOf(t, &s, page.Request{Do: "fill", Key: "pack.label", Text: "12 V SLA"}); strings.Contains(reply.Text, "Ah") {
		t.Errorf("a label without Ah is read as %q", reply.Text)
	}
}
