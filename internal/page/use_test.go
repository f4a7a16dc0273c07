package page_test

import (
	"context"
	"fmt"
	"maps"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"
	"time"

	"example.org/packcheck/internal/page"
	"github.com/chromedp/cdproto/browser"
	"github.com/chromedp/cdproto/emulation"
	cdpage "github.com/chromedp/cdproto/page"
	"github.com/chromedp/chromedp"
	"github.com/chromedp/chromedp/kb"
)

// hand taps a button below "Hand it on" and returns the text that is offered.
func (p *tab) hand(what string) string {
	p.t.Helper()
	p.do(chromedp.Click(fmt.Sprintf("[data-hand=%s]", what), chromedp.ByQuery))
	return eval[string](p, `new Promise((done) => { const look = () => document.querySelector('#handed').hidden ? setTimeout(look, 50) : done(document.querySelector('#handed-text').value); look(); })`)
}

// A link gives somebody else the same fields, and the same bytes of an answer.
func TestALinkGivesTheSamePageToSomebodyElse(t *testing.T) {
	t.Parallel()
	p := opened(t, "")
	given := maps.Clone(twenty()["lead, twelve"])
	p.tell(given)
	json := `answer.text('json').then((r) => r.text || JSON.stringify(r))`
	want := eval[string](p, json)
	address := p.hand("link")
	base, fragment, _ := strings.Cut(address, "#")
	if got, packs, _, err := page.Unlink(fragment); base != p.file || err != nil || packs != nil || !maps.Equal(got, given) {
		t.Fatalf("the link is %q: %v, %v", address, got, err)
	}
	p.goTo(fragment)
	p.rest()
	if got := p.given(); !maps.Equal(got, given) {
		t.Errorf("the link tells %v, want %v", got, given)
	}
	if got := eval[string](p, json); got != want {
		t.Error("the answer behind the link: " + differs(got, want))
	}
	if again := p.hand("link"); again != address {
		t.Errorf("the link of the link is %q, want %q", again, address)
	}
	for format, mark := range map[string]string{"markdown": "## ", "bbcode": "[b]"} {
		eval[bool](p, `document.querySelector('#handed').hidden = true`)
		text := p.hand(format)
		if want := eval[string](p, fmt.Sprintf(`answer.text(%q).then((r) => r.text)`, format)); text != want || !strings.Contains(text, mark) {
			t.Errorf("the text in %s is %.80q", format, text)
		}
	}
	p.tell(map[string]string{"rider.age": "6 years"})
	if !eval[bool](p, `document.querySelector('#handed').hidden`) {
		t.Error("what was handed on still stands there, of the answer before")
	}
	p.silent()
}

// "Begin anew" forgets nothing by one slip of a finger: it asks first, and whoever does something
// else is not asked any more.
func TestToBeginAnewAsksFirst(t *testing.T) {
	t.Parallel()
	p := opened(t, "")
	given := maps.Clone(twenty()["lead, twelve"])
	p.tell(given)
	const button = "[data-hand=clear]"
	label := func() string { return eval[string](p, `document.querySelector('`+button+`').textContent`) }
	p.do(chromedp.Click(button, chromedp.ByQuery))
	if got := p.given(); !maps.Equal(got, given) || !strings.Contains(label(), "Press again") {
		t.Fatalf("pressed once: %q, %v is left of %v", label(), got, given)
	}
	p.do(chromedp.Focus("#title", chromedp.ByQuery))
	if label() != "Begin anew" {
		t.Errorf("elsewhere: the button still says %q", label())
	}
	p.do(chromedp.Click(button, chromedp.ByQuery), chromedp.Click(button, chromedp.ByQuery))
	eval[bool](p, `new Promise((done) => { const look = () => document.querySelector('#state').textContent.includes('as soon as the battery is told') ? done(true) : setTimeout(look, 50); look(); })`)
	if got := p.given(); len(got) > 0 || label() != "Begin anew" {
		t.Errorf("pressed twice: %q, %v is left", label(), got)
	}
	p.silent()
}

// Every way out can be tried with a tap, gives the verdict that was promised, and
// can be taken back.
func TestEveryWayOutCanBeTriedAndTakenBack(t *testing.T) {
	t.Parallel()
	p := opened(t, "")
	given := twenty()["tool, original"]
	p.tell(given)
	ways := eval[[]string](p, `[...document.querySelectorAll('.try')].map((b) => b.textContent)`)
	if len(ways) == 0 {
		t.Fatal("there is no way out to try")
	}
	before := eval[string](p, `answer.shown.band`)
	for i, way := range ways {
		p.rest() // until the ways out stand there again
		promised := eval[string](p, fmt.Sprintf(`document.querySelectorAll('[data-part=todo] h3')[%d].textContent`, i))
		p.do(chromedp.Evaluate(fmt.Sprintf(`document.querySelectorAll('.try')[%d].click()`, i), nil), chromedp.WaitVisible("#trying", chromedp.ByQuery))
		p.settled()
		word := eval[string](p, `document.querySelector('#band .answer').textContent`)
		if !strings.HasPrefix(promised[3:], word) {
			t.Errorf("%s: tried, it is %q; promised was %q", way, word, promised)
		}
		bar := eval[string](p, `document.querySelector('#bar b').textContent`)
		if !strings.HasPrefix(bar, "TRIED: ") || !strings.Contains(bar, " fitted") || !strings.HasSuffix(bar, "(today: NO)") || !eval[bool](p, `document.querySelector('#untry').checkVisibility()`) {
			t.Errorf("%s: tried, the bar says %q", way, bar)
		}
		if at := eval[[]float64](p, `(() => { const r = document.querySelector('#trying').getBoundingClientRect(); return [r.top, document.querySelector('#tell').getBoundingClientRect().top - r.bottom]; })()`); at[0] < 0 || at[1] < 0 {
			t.Errorf("%s: of the notice that it is only tried a part is off the screen: %v", way, at)
		}
		if maps.Equal(p.given(), given) {
			t.Errorf("%s changes nothing", way)
		}
		if i == 0 { // whoever gets a link to it sees the same: only tried, with the way back
			want := p.given()
			_, fragment, _ := strings.Cut(p.hand("link"), "#")
			if base, _, mark, err := page.Unlink(fragment); err != nil || mark == "" || !maps.Equal(base, given) {
				t.Errorf("%s: its link holds %v with %q, %v", way, base, mark, err)
			}
			p.goTo(fragment)
			p.do(chromedp.WaitVisible("#trying", chromedp.ByQuery))
			p.rest()
			if got, again := p.given(), eval[string](p, `document.querySelector('#bar b').textContent`); !maps.Equal(got, want) || again != bar {
				t.Errorf("%s: its link opens as %q with %v", way, again, got)
			}
		}
		p.do(chromedp.Click("#trying button", chromedp.ByQuery), chromedp.WaitNotVisible("#trying", chromedp.ByQuery))
		p.rest() // the band tells of the ways out as well
		if got := p.given(); !maps.Equal(got, given) || eval[string](p, `answer.shown.band`) != before || !eval[bool](p, `document.querySelector('#trying').hidden`) {
			t.Errorf("%s: the way back leads to %v", way, got)
		}
	}
	p.silent()
}

// Whatever a stranger sends, the page says plainly what is wrong, runs nothing of
// it, and asks like before.
func TestStrangersLinksLeaveThePageAsItWas(t *testing.T) {
	t.Parallel()
	p := opened(t, "")
	p.do(chromedp.Evaluate(`self.alert = () => { self.ran = true; }`, nil))
	for i, fragment := range hostile() {
		got := eval[struct {
			Notice  string
			Asks    int
			Scripts int
			Ran     bool
			Alive   bool
		}](p, fmt.Sprintf(`(async () => {
			notice([], 'came');
			const taken = await received({do: 'unlink', text: %q});
			const living = await engine.read({do: 'fill', key: 'pack.label', text: '12 V 7 Ah', given: {}});
			return {
				notice: document.querySelector('#notice').hidden || taken ? '' : document.querySelector('#notice').textContent,
				asks: document.querySelectorAll('.field').length, scripts: document.scripts.length + document.querySelectorAll('img, iframe, object').length,
				ran: Boolean(self.ran), alive: Boolean(living.sets && living.sets['pack.label']),
			};
		})()`, strings.ToValidUTF8(fragment, "?")))
		if got.Notice == "" || got.Asks < 4 || got.Scripts != 3 || got.Ran || !got.Alive {
			t.Errorf("%.60q leaves %+v", fragment, got)
		}
		if i%8 == 0 && len(fragment) < 2000 && !strings.Contains(fragment, " ") { // a browser would encode a space, and mend it; some of them through the address itself
			p.goTo(strings.ReplaceAll(fragment, "#", ""))
			p.rest()
			p.do(chromedp.Evaluate(`self.alert = () => { self.ran = true; }`, nil))
			if text := eval[string](p, `document.querySelector('#notice').textContent`); text == "" && strings.ReplaceAll(fragment, "#", "") != "" {
				t.Errorf("%.60q in the address says nothing", fragment)
			}
		}
	}
	// Names and labels are texts, wherever they stand.
	p.goTo("")
	p.do(chromedp.SendKeys("#title", "<img src=x onerror=alert(1)>", chromedp.ByQuery))
	p.tell(map[string]string{"pack.label": "12 V 7 Ah SLA"})
	if !strings.Contains(eval[string](p, `document.querySelector('#band').textContent`), "<img") || eval[int](p, `document.images.length`) != 0 {
		t.Error("a title is not shown as it was typed")
	}
	p.silent()
}

// A file that is saved opens again; a broken one is told line by line.
func TestAFileIsSavedAndOpened(t *testing.T) {
	t.Parallel()
	p := opened(t, "")
	folder := t.TempDir()
	p.do(browser.SetDownloadBehavior(browser.SetDownloadBehaviorBehaviorAllow).WithDownloadPath(folder))
	given := twenty()["phosphate, fused"]
	p.tell(given)
	p.do(chromedp.Click("[data-hand=save]", chromedp.ByQuery))
	file := filepath.Join(folder, "setup.toml")
	for deadline := time.Now().Add(20 * time.Second); ; time.Sleep(50 * time.Millisecond) {
		_, err := os.Stat(file) // a browser gives it that name once it is whole
		if err == nil {
			break
		}
		if time.Now().After(deadline) {
			t.Fatal(err)
		}
	}
	p.goTo("")
	p.do(chromedp.SetUploadFiles("#file", []string{file}, chromedp.ByQuery))
	eval[bool](p, `new Promise((done) => { const look = () => Object.keys(form.given()).length ? done(true) : setTimeout(look, 50); look(); })`)
	p.rest()
	if got := p.given(); !maps.Equal(got, given) {
		t.Errorf("the file holds %v, want %v", got, given)
	}
	broken := filepath.Join(folder, "broken.toml")
	if err := os.WriteFile(broken, []byte("[pack]\nlable = \"12 V\"\n[rider]\nage = \"old\"\n"), 0o644); err != nil {
		t.Fatal(err)
	}
	p.do(chromedp.SetUploadFiles("#file", []string{broken}, chromedp.ByQuery), chromedp.WaitVisible("#notice", chromedp.ByQuery))
	if text := eval[string](p, `document.querySelector('#notice').textContent`); !strings.Contains(text, "line 2") || !strings.Contains(text, "line 4") {
		t.Errorf("a broken file says %q", text)
	}
	if got := p.given(); !maps.Equal(got, given) {
		t.Error("a broken file changes what stands in the page")
	}
	p.silent()
}

// The keyboard alone asks, chooses, passes, and reaches the answer.
func TestTheKeyboardIsEnough(t *testing.T) {
	t.Parallel()
	p := opened(t, "")
	focus := func() string {
		return eval[string](p, `(() => { const e = document.activeElement; return (e.closest('.field') ? e.closest('.field').dataset.key + ' ' : '') + e.tagName + ' ' + (e.id || e.textContent).trim(); })()`)
	}
	press := func(keys string) { p.do(chromedp.KeyEvent(keys)) }
	press(kb.Tab)
	if got := focus(); !strings.Contains(got, "skip") {
		t.Errorf("the first stop is %q, want the way to the answer", got)
	}
	press(kb.Tab)
	press("20V MAX 4.0Ah" + kb.Enter)
	eval[bool](p, `new Promise((done) => { // until the answer is read and the focus has gone on, or the patience is gone
		const begin = performance.now();
		const look = () => document.activeElement.closest('.field[data-key="pack.label"]') && performance.now() - begin < 10000 ? setTimeout(look, 50) : done(true);
		look();
	})`)
	if got := focus(); !strings.HasPrefix(got, "vehicle.design_voltage INPUT") {
		t.Errorf("Enter leads to %q", got)
	}
	press("12 V" + kb.Tab) // to "Don't know" of the same question
	press(kb.Tab)
	press(kb.Tab)
	press("4 years")
	for range 3 {
		press(kb.Tab)
	}
	for range 4 { // past input and "Don't know", to the third of the choices
		press(kb.Tab)
	}
	press(" ")
	p.rest()
	if got := p.given(); got["pack.label"] != "20V MAX 4.0Ah" || got["vehicle.design_voltage"] != "12 V" || got["rider.age"] != "4 years" || got["vehicle.ground"] == "" {
		t.Errorf("the keyboard told %v", got)
	}
	// Whatever takes a tap can be reached, and shows where the focus is.
	stops := eval[int](p, `[...document.querySelectorAll('button, input, summary, textarea, a')].filter((e) => e.offsetParent && e.tabIndex < 0).length`)
	if stops != 0 {
		t.Errorf("%d things take a tap and no key", stops)
	}
	p.do(chromedp.Evaluate(`document.querySelector('#bar').focus()`, nil))
	press(kb.Enter)
	if got := focus(); !strings.Contains(got, "answer") {
		t.Errorf("the bar leads to %q", got)
	}
	p.silent()
}

// It prints on two sheets, the questions left out.
func TestTheAnswerPrintsOnTwoSheets(t *testing.T) {
	t.Parallel()
	p := opened(t, "")
	p.tell(twenty()["tool, original"])
	p.printed("page")
	// With others beside it, too.
	p.besides(`['12 V 7 Ah SLA', '12.8 V 10 Ah LiFePO4', '12 V 12 Ah AGM']`)
	p.printed("page-beside")
	p.silent()
}

// printed prints the page, and counts its sheets.
func (p *tab) printed(name string) {
	p.t.Helper()
	var pdf []byte
	p.do(chromedp.ActionFunc(func(ctx context.Context) (err error) {
		pdf, _, err = cdpage.PrintToPDF().WithPreferCSSPageSize(true).WithPrintBackground(true).Do(ctx)
		return err
	}))
	if n := len(regexp.MustCompile(`/Type\s*/Page\b[^s]`).FindAll(pdf, -1)); n < 1 || n > 2 {
		p.t.Errorf("%s prints on %d sheets", name, n)
	}
	if folder := os.Getenv("PACKCHECK_SCREENSHOTS"); folder != "" {
		if err := os.WriteFile(filepath.Join(folder, name+".pdf"), pdf, 0o644); err != nil {
			p.t.Fatal(err)
		}
	}
	// What is for the screen alone stays there.
	p.do(emulation.SetEmulatedMedia().WithMedia("print"))
	if n := eval[int](p, `[...document.querySelectorAll('button, input[type=text], #bar, textarea')].filter((e) => e.checkVisibility()).length`); n != 0 {
		p.t.Errorf("%s: %d controls are printed", name, n)
	}
	p.do(emulation.SetEmulatedMedia().WithMedia(""))
}

// What is worth looking up has a button that brings its question, ready to type.
func TestWhatToLookUpIsToldWithATap(t *testing.T) {
	t.Parallel()
	p := opened(t, "")
	p.typeInto("pack.label", "20V MAX 4.0Ah")
	p.settled()
	got := eval[struct{ Asks, Key, Says string }](p, `(() => {
		const button = document.querySelector('[data-part=ask] .bring');
		const asks = button.querySelector('.unseen').textContent;
		const says = button.parentNode.textContent;
		button.click();
		const field = document.activeElement.closest('.field');
		return {asks, says, key: field ? field.querySelector('label').textContent : ''};
	})()`)
	if got.Key == "" || got.Asks != ": "+got.Key || strings.Contains(got.Says, "enter it as") {
		t.Errorf("a tap on %q leads to %q; it says %q", got.Asks, got.Key, got.Says)
	}
	p.silent()
}
