package report_test

import (
	"bytes"
	"context"
	"fmt"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"
	"time"

	"example.org/packcheck/internal/browsertest"
	"github.com/chromedp/cdproto/emulation"
	cdpage "github.com/chromedp/cdproto/page"
	"github.com/chromedp/cdproto/runtime"
	"github.com/chromedp/chromedp"
)

// browser starts a browser where there is time (PACKCHECK_SLOW=1).
func browser(t *testing.T) context.Context {
	t.Helper()
	if os.Getenv("PACKCHECK_SLOW") == "" {
		t.Skip("PACKCHECK_SLOW is not set: would open the page in a browser and look at it")
	}
	return browsertest.Start(t, 4*time.Minute)
}

// clipped lists what is wider than the window or than the box it stands in.
const clipped = `(() => {
  const out = [];
  const wide = document.documentElement.clientWidth;
  if (document.documentElement.scrollWidth > wide) out.push('scrolls sideways: ' + document.documentElement.scrollWidth + ' of ' + wide);
  for (const e of document.querySelectorAll('body *')) {
    if (e.closest('details:not([open])') && !e.matches('summary, details')) continue;
    const r = e.getBoundingClientRect();
    if (r.width > 0 && (r.right > wide + 1 || r.left < -1)) out.push('beside the window: ' + e.tagName + ' ' + (e.textContent || '').slice(0, 40));
    if (!(e instanceof SVGElement) && e.scrollWidth > e.clientWidth + 1 && e.clientWidth > 0 && getComputedStyle(e).display !== 'inline') out.push('clipped: ' + e.tagName + ' ' + (e.textContent || '').slice(0, 40));
  }
  for (const s of document.querySelectorAll('svg[role=img]')) {
    const box = s.getBoundingClientRect();
    for (const e of s.querySelectorAll('text')) {
      const r = e.getBoundingClientRect();
      if (r.width > 0 && (r.left < box.left - 1 || r.right > box.right + 1 || r.top < box.top - 1 || r.bottom > box.bottom + 1)) out.push('outside its drawing: ' + e.textContent);
    }
  }
  for (const g of document.querySelectorAll('g.box')) {
    const box = g.querySelector('rect').getBoundingClientRect();
    for (const e of g.querySelectorAll('text')) {
      const r = e.getBoundingClientRect();
      if (r.left < box.left || r.right > box.right) out.push('outside its box: ' + e.textContent);
    }
  }
  return out;
})()`

func TestThePageStandsInABrowser(t *testing.T) {
	ctx := browser(t)
	var complaints []string
	chromedp.ListenTarget(ctx, func(event any) {
		switch event := event.(type) {
		case *runtime.EventConsoleAPICalled:
			complaints = append(complaints, fmt.Sprintf("%s: %v", event.Type, event.Args))
		case *runtime.EventExceptionThrown:
			complaints = append(complaints, event.ExceptionDetails.Error())
		}
	})
	for name, text := range looked(t) {
		file := filepath.Join(t.TempDir(), name+".html")
		if err := os.WriteFile(file, []byte(text), 0o644); err != nil {
			t.Fatal(err)
		}
		for _, width := range []int64{390, 1280} {
			for _, scheme := range []string{"light", "dark"} {
				var wrong, folded []string
				err := chromedp.Run(
					ctx, chromedp.EmulateViewport(width, 900),
					emulation.SetEmulatedMedia().WithFeatures([]*emulation.MediaFeature{{Name: "prefers-color-scheme", Value: scheme}}),
					chromedp.Navigate("file://"+file), chromedp.Evaluate(clipped, &wrong),
					chromedp.Evaluate(`document.querySelectorAll('details').forEach(d => d.open = true)`, nil), chromedp.Evaluate(clipped, &folded),
				)
				if err != nil {
					t.Fatalf("%s: %v", name, err)
				}
				for _, w := range append(wrong, folded...) {
					t.Errorf("%s at %d pixels, %s: %s", name, width, scheme, w)
				}
			}
		}
	}
	for _, c := range complaints {
		t.Errorf("the browser says %s", c)
	}
}

func TestThePagePrintsOnTwoSheets(t *testing.T) {
	ctx := browser(t)
	for name, text := range looked(t) {
		file := filepath.Join(t.TempDir(), name+".html")
		if err := os.WriteFile(file, []byte(text), 0o644); err != nil {
			t.Fatal(err)
		}
		var pdf []byte
		err := chromedp.Run(ctx, chromedp.Navigate("file://"+file), chromedp.ActionFunc(func(ctx context.Context) error {
			var err error
			pdf, _, err = cdpage.PrintToPDF().WithPreferCSSPageSize(true).WithPrintBackground(true).Do(ctx)
			return err
		}))
		if err != nil {
			t.Fatalf("%s: %v", name, err)
		}
		if n := sheets(pdf); n < 1 || n > 2 {
			t.Errorf("%s prints on %d sheets, want at most two", name, n)
		}
	}
}

// sheets counts the pages of a PDF that Chromium wrote.
func sheets(pdf []byte) int {
	if !bytes.HasPrefix(pdf, []byte("%PDF")) {
		return 0
	}
	return len(regexp.MustCompile(`/Type\s*/Page\b[^s]`).FindAll(pdf, -1))
}

// Looked at by a person: PACKCHECK_SCREENSHOTS=folder writes what the browser
// shows.
func TestScreenshotsForTheEye(t *testing.T) {
	folder := os.Getenv("PACKCHECK_SCREENSHOTS")
	if folder == "" {
		return // nobody looks
	}
	ctx := browser(t)
	for name, text := range looked(t) {
		file := filepath.Join(folder, name+".html")
		if err := os.WriteFile(file, []byte(text), 0o644); err != nil {
			t.Fatal(err)
		}
		for _, width := range []int64{390, 1280} {
			var shot []byte
			if err := chromedp.Run(ctx, chromedp.EmulateViewport(width, 900), chromedp.Navigate("file://"+file), chromedp.FullScreenshot(&shot, 90)); err != nil {
				t.Fatal(err)
			}
			if err := os.WriteFile(strings.TrimSuffix(file, ".html")+fmt.Sprintf("-%d.jpg", width), shot, 0o644); err != nil {
				t.Fatal(err)
			}
		}
	}
}

// The look for what is clipped must be able to fail: it is shown one fault of
// each kind.
func TestTheBrowserSeesWhatIsClipped(t *testing.T) {
	ctx := browser(t)
	for want, body := range map[string]string{
		"scrolls sideways":    `<p style="width:2000px">wide</p>`,
		"clipped":             `<p style="width:50px;overflow:hidden;white-space:nowrap">far too many words for so small a box</p>`,
		"outside its drawing": `<svg role="img" width="100" height="20" viewBox="0 0 100 20"><text x="90" y="12">outside</text></svg>`,
		"outside its box":     `<svg width="200" height="40"><g class="box"><rect width="20" height="20"/><text x="4" y="12">far too long</text></g></svg>`,
	} {
		file := filepath.Join(t.TempDir(), "bad.html")
		if err := os.WriteFile(file, []byte("<!DOCTYPE html><html><body>"+body+"</body></html>"), 0o644); err != nil {
			t.Fatal(err)
		}
		var wrong []string
		if err := chromedp.Run(ctx, chromedp.EmulateViewport(390, 900), chromedp.Navigate("file://"+file), chromedp.Evaluate(clipped, &wrong)); err != nil {
			t.Fatal(err)
		}
		if !strings.Contains(strings.Join(wrong, "\n"), want) {
			t.Errorf("%s: saw %q", want, wrong)
		}
	}
}
