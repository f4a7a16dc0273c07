package page_test

import (
	"testing"

	"github.com/chromedp/cdproto/emulation"
	"github.com/chromedp/chromedp"
)

// faint lists texts whose contrast with what lies behind them is below 4.5 (WCAG
// 2.2, 1.4.3; large ones, of 24 px or of 18.7 px and bold, below 3), and controls
// whose border is below 3 (1.4.11), with the luminance as defined there.
const faint = `(() => {
	const parse = (c) => { const m = c.match(/[\d.]+/g).map(Number); return m.length < 4 ? [...m, 1] : m; };
	const light = ([r, g, b]) => {
		const f = (x) => { x /= 255; return x <= 0.04045 ? x / 12.92 : ((x + 0.055) / 1.055) ** 2.4; };
		return 0.2126 * f(r) + 0.7152 * f(g) + 0.0722 * f(b);
	};
	const behind = (e) => { for (; e; e = e.parentElement) { const c = parse(getComputedStyle(e).backgroundColor); if (c[3] === 1) return c; } return matchMedia('(prefers-color-scheme: dark)').matches ? [18, 18, 18] : [255, 255, 255]; };
	const contrast = (a, b) => { const [x, y] = [light(a), light(b)].sort((p, q) => q - p); return (x + 0.05) / (y + 0.05); };
	const out = [];
	let seen = 0;
	for (const e of document.querySelectorAll('body *')) {
		if (!e.checkVisibility() || e.closest('svg')) continue;
		const own = [...e.childNodes].some((n) => n.nodeType === 3 && n.textContent.trim());
		const style = getComputedStyle(e);
		if (own || e.matches('input[type=text], textarea')) {
			seen++;
			const size = parseFloat(style.fontSize);
			const large = size >= 24 || size >= 18.66 && Number(style.fontWeight) >= 700;
			const c = contrast(parse(style.color), behind(e));
			if (c < (large ? 3 : 4.5)) out.push(c.toFixed(2) + ': ' + e.tagName + ' ' + (e.textContent || e.id).slice(0, 40));
		}
		if (e.matches('input[type=text], textarea, button:not(.plain)') && parseFloat(style.borderTopWidth) > 0) {
			const c = contrast(parse(style.borderTopColor), behind(e.parentElement));
			if (c < 3) out.push('border ' + c.toFixed(2) + ': ' + e.tagName + ' ' + (e.textContent || e.id).slice(0, 40));
		}
	}
	if (seen < 20) out.push('only ' + seen + ' texts seen');
	return out;
})()`

// nameless lists what takes a tap and has no name for whoever does not see it, and
// what is too small for a finger (WCAG 2.2, 2.5.8: 24 px).
const nameless = `(() => {
	const out = [];
	const all = [...document.querySelectorAll('button, input, textarea, a, summary, [role=group], [role=region]')].filter((e) => e.checkVisibility());
	for (const e of all) {
		const named = (e.labels && e.labels.length && e.labels[0].textContent.trim()) || e.getAttribute('aria-label') || e.textContent.trim();
		if (!named) out.push('no name: ' + e.outerHTML.slice(0, 80));
		const r = e.getBoundingClientRect();
		if (e.matches('button, input[type=text], summary, #bar') && r.width > 0 && (r.width < 24 || r.height < 24)) out.push('small: ' + e.outerHTML.slice(0, 80));
	}
	const ids = [...document.querySelectorAll('[id]')].map((e) => e.id);
	for (const id of ids) if (ids.indexOf(id) !== ids.lastIndexOf(id)) out.push('twice: ' + id);
	for (const e of document.querySelectorAll('[aria-describedby]')) for (const id of e.getAttribute('aria-describedby').split(' ')) if (!document.getElementById(id)) out.push('described by nothing: ' + e.id);
	if (all.length < 10) out.push('only ' + all.length + ' controls seen');
	return out;
})()`

// cut lists what is wider than the window or than the box it stands in.
const cut = `(() => {
	const out = [];
	const wide = document.documentElement.clientWidth;
	if (document.documentElement.scrollWidth > wide) out.push('scrolls sideways: ' + document.documentElement.scrollWidth + ' of ' + wide);
	for (const e of document.querySelectorAll('body *')) {
		if (!e.checkVisibility() || e.closest('.unseen, .skip, svg')) continue;
		const r = e.getBoundingClientRect();
		if (r.width > 0 && (r.right > wide + 1 || r.left < -1)) out.push('beside the window: ' + e.tagName + ' ' + (e.textContent || '').slice(0, 40));
		if (!e.matches('input, textarea') && e.scrollWidth > e.clientWidth + 1 && e.clientWidth > 0 && getComputedStyle(e).display !== 'inline') out.push('clipped: ' + e.tagName + ' ' + (e.textContent || '').slice(0, 40));
	}
	return out;
})()`

// By day and by night, from a small phone to a desk, in each state of the page:
// nothing is cut off, too faint, too small, or without a name; safety stands there.
func TestThePageCanBeSeenAndNamed(t *testing.T) {
	t.Parallel()
	p := opened(t, "")
	look := func(state string) {
		for _, width := range []int64{360, 390, 800, 1280, 1600} {
			for _, scheme := range []string{"light", "dark"} {
				p.do(chromedp.EmulateViewport(width, 844), emulation.SetEmulatedMedia().WithFeatures([]*emulation.MediaFeature{{Name: "prefers-color-scheme", Value: scheme}}))
				for _, script := range []string{cut, faint, nameless} {
					for _, wrong := range eval[[]string](p, script) {
						t.Errorf("%s at %d px, %s: %s", state, width, scheme, wrong)
					}
				}
				if n := eval[int](p, `[...document.querySelectorAll('.safety li')].filter((e) => e.checkVisibility()).length`); n < 3 {
					t.Errorf("%s at %d px: %d safety lines can be seen", state, width, n)
				}
			}
		}
		p.do(chromedp.EmulateViewport(390, 844))
	}
	look("with nothing told")
	p.typeInto("vehicle.design_voltage", "twelve")
	p.rest()
	look("with a fault")
	p.empty("vehicle.design_voltage")
	p.tell(twenty()["tool, original"])
	look("answered")
	p.hand("link")
	eval[bool](p, `(document.querySelectorAll('details').forEach((d) => { d.open = true; }), true)`)
	look("with all of it open")
	p.do(chromedp.Evaluate(`document.querySelector('.try').click()`, nil), chromedp.WaitVisible("#trying", chromedp.ByQuery))
	p.rest()
	look("with a way out tried")
	p.silent()
}

// The looks above must be able to fail: they are shown one fault of each kind.
func TestFaultsToTheEyeAreSeen(t *testing.T) {
	t.Parallel()
	p := opened(t, "")
	for script, body := range map[string]string{
		faint: `<p id="bad">too faint</p>`, nameless: `<button id="bad"></button>`, cut: `<p id="bad">far too wide for so small a window</p>`,
	} {
		p.do(chromedp.Evaluate(`document.querySelector('main').insertAdjacentHTML('beforeend', `+"`"+body+"`"+`);
			Object.assign(document.querySelector('#bad').style, {color: '#888', background: '#999', width: '2000px'});`, nil))
		if len(eval[[]string](p, script)) == 0 {
			t.Errorf("%s is not seen", body)
		}
		p.do(chromedp.Evaluate(`document.querySelector('#bad').remove()`, nil))
	}
}
