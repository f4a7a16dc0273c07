package page_test

import (
	"strings"
	"testing"

	"example.org/packcheck"
	"example.org/packcheck/internal/page"
	"example.org/packcheck/report"
	"example.org/packcheck/setup"
)

// Batteries stand side by side as the command sets them, and each fault has its
// place.
func TestOtherBatteriesStandBeside(t *testing.T) {
	given := bench()
	reply, _ := asked(t, page.Request{Do: "compare", Given: given, Packs: []string{"12 V 9 Ah gel", "12 V 12 Ah AGM"}})
	own, err := setup.Of(given)
	if err != nil {
		t.Fatal(err)
	}
	setups := []*setup.Setup{own}
	for _, label := range []string{"12 V 9 Ah gel", "12 V 12 Ah AGM"} {
		other, err := own.Change(setup.Changes{Pack: label})
		if err != nil {
			t.Fatal(err)
		}
		setups = append(setups, other)
	}
	c, err := packcheck.Compare(t.Context(), setups, packcheck.Options{})
	if err != nil {
		t.Fatal(err)
	}
	var whole strings.Builder
	if err := report.WriteComparison(&whole, c, report.Options{Format: report.FormatHTML}); err != nil {
		t.Fatal(err)
	}
	if reply.Faults != nil || len(reply.Text) < 500 || !strings.Contains(whole.String(), reply.Text) {
		t.Errorf("the columns are not those of the command: %.200q, %v", reply.Text, reply.Faults)
	}
	bad, _ := asked(t, page.Request{Do: "compare", Given: given, Packs: []string{"12 V 7 Ah AGM", "bananas"}})
	if len(bad.Faults) != 1 || bad.Faults[0].Key != "1" || !strings.Contains(bad.Faults[0].Says, "bananas") {
		t.Errorf("bananas give %+v", bad)
	}
	for _, packs := range [][]string{nil, {"12 V 7 Ah AGM", "12 V 7 Ah AGM", "12 V 7 Ah AGM", "12 V 7 Ah AGM"}} {
		if many, _ := asked(t, page.Request{Do: "compare", Given: given, Packs: packs}); many.Faults == nil {
			t.Errorf("%d others are compared", len(packs))
		}
	}
}

// besides fills in the batteries beside, a list as a browser reads it.
func (p *tab) besides(labels string) {
	p.t.Helper()
	eval[bool](p, `(() => {
		`+labels+`.forEach((text, i) => {
			const input = document.querySelector('#beside-' + (i + 1));
			input.value = text;
			input.dispatchEvent(new Event('change'));
		});
		return true;
	})()`)
	p.rest()
}

// On the page, other batteries are typed and stand beside; what is wrong with one
// is said beside it.
func TestOtherBatteriesAreTypedOnThePage(t *testing.T) {
	t.Parallel()
	p := opened(t, "")
	p.tell(twenty()["tool, original"])
	p.besides(`['12 V 7 Ah SLA', '12.8 V 10 Ah LiFePO4', 'bananas']`)
	if says := eval[string](p, `document.querySelector('#beside-3-fault').textContent`); !strings.Contains(says, "bananas") {
		t.Errorf("beside bananas it says %q", says)
	}
	eval[bool](p, `(() => { const input = document.querySelector('#beside-3'); input.value = ''; input.dispatchEvent(new Event('change')); return true; })()`)
	p.rest()
	if n := eval[int](p, `document.querySelectorAll('#columns thead th').length`); n != 3 {
		t.Errorf("%d columns stand there, want three", n)
	}
	for _, wrong := range append(eval[[]string](p, cut), append(eval[[]string](p, faint), eval[[]string](p, nameless)...)...) {
		t.Errorf("beside: %s", wrong)
	}
	p.look("page-beside")
	// They go on with the link and with the text for a forum.
	address := p.hand("link")
	for format, mark := range map[string]string{"markdown": "### Beside other batteries", "bbcode": "Beside other batteries[/b]"} {
		eval[bool](p, `document.querySelector('#handed').hidden = true`)
		if text := p.hand(format); !strings.Contains(text, mark) || !strings.Contains(text, "LiFePO4") {
			t.Errorf("the text in %s lacks them: %q", format, text)
		}
	}
	columns := eval[string](p, `answer.beside.shown`)
	_, fragment, _ := strings.Cut(address, "#")
	p.goTo(fragment)
	p.rest()
	if got := eval[string](p, `answer.beside.shown`); got != columns {
		t.Errorf("behind the link there stands %.200q", got)
	}
	p.silent()
}

// The text for a forum holds what stands beside the answer, in both dialects, and
// the safety lines once.
func TestTheTextForAForumHasTheOtherBatteries(t *testing.T) {
	var s page.Session
	given, packs := bench(), []string{"12.8 V 10 Ah LiFePO4"}
	for _, format := range []report.Format{report.FormatMarkdown, report.FormatBBCode} {
		alone, _ := askedOf(t, &s, page.Request{Do: "write", Given: given, Format: string(format)})
		both, _ := askedOf(t, &s, page.Request{Do: "write", Given: given, Format: string(format), Packs: packs})
		if strings.Contains(alone.Text, "LiFePO4") || strings.Count(both.Text, "LiFePO4") < 1 || both.Faults != nil {
			t.Errorf("%s: %v, %.300q", format, both.Faults, both.Text)
		}
		above, safety := alone.Text[:strings.Index(alone.Text, "Safety")], alone.Text[strings.Index(alone.Text, "Safety"):]
		if !strings.HasPrefix(both.Text, strings.TrimRight(above, "#[b] \n")) || !strings.HasSuffix(both.Text, safety) || strings.Count(both.Text, "Charge with the charger") != 1 {
			t.Errorf("%s: the page, or its safety lines, are not whole: %q", format, both.Text)
		}
		if bad, _ := askedOf(t, &s, page.Request{Do: "write", Given: given, Format: string(format), Packs: []string{"bananas"}}); len(bad.Faults) != 1 || bad.Text != "" {
			t.Errorf("%s: bananas are written as %+v", format, bad)
		}
	}
	// The figures are those of the answer alone.
	alone, _ := askedOf(t, &s, page.Request{Do: "write", Given: given, Format: "json"})
	both, _ := askedOf(t, &s, page.Request{Do: "write", Given: given, Format: "json", Packs: packs})
	if alone.Text == "" || alone.Text != both.Text {
		t.Error("the figures differ for what stands beside them")
	}
}

// What is wrong with a battery to stand beside is told in its field, so that it can be
// mended there.
func TestAFaultOfABatteryBesideCanBeMendedInItsField(t *testing.T) {
	given := map[string]string{"pack.label": "12 V 7 Ah SLA"}
	reply, _ := asked(t, page.Request{Do: "compare", Given: given, Packs: []string{"junk", "36V 10Ah"}})
	if len(reply.Faults) != 2 {
		t.Fatalf("%+v", reply)
	}
	for _, f := range reply.Faults {
		if strings.Contains(f.Says, "pack.") || !strings.HasPrefix(f.Says, "Read ") {
			t.Errorf("a fault names keys: %q", f.Says)
		}
	}
	_, after, _ := strings.Cut(reply.Faults[1].Says, "does not tell: \"")
	mended, _, _ := strings.Cut(after, "\"")
	if reply, _ := asked(t, page.Request{Do: "compare", Given: given, Packs: []string{mended}}); reply.Faults != nil || reply.Text == "" {
		t.Errorf("as it was asked for, %q: %v", mended, reply.Faults)
	}
}
