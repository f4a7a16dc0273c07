// Package browsertest starts a browser for tests that look at a page as people do.
// Nothing but tests uses it.
package browsertest

import (
	"context"
	"os/exec"
	"testing"
	"time"

	"github.com/chromedp/chromedp"
)

// Start starts a headless Chromium, which ends with the test, or after the given time
// at the latest.
func Start(t testing.TB, most time.Duration) context.Context {
	t.Helper()
	path := ""
	for _, name := range []string{"chromium", "chromium-browser", "google-chrome"} {
		if found, err := exec.LookPath(name); err == nil {
			path = found
			break
		}
	}
	if path == "" {
		t.Fatal("there is no Chromium, which .ci/run installs")
	}
	options := append(chromedp.DefaultExecAllocatorOptions[:], chromedp.ExecPath(path), chromedp.NoSandbox, chromedp.WSURLReadTimeout(time.Minute))
	allocated, cancel := chromedp.NewExecAllocator(context.Background(), options...)
	t.Cleanup(cancel)
	ctx, cancel := chromedp.NewContext(allocated)
	t.Cleanup(cancel)
	ctx, cancel = context.WithTimeout(ctx, most)
	t.Cleanup(cancel)
	return ctx
}
