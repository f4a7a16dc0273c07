package page_test

import (
	"fmt"
	"os"
	"path/filepath"
	"testing"

	"github.com/chromedp/chromedp"
)

// Looked at by a person: PACKCHECK_SCREENSHOTS=folder writes what the browser
// shows.
func TestScreenshotsOfThePageForTheEye(t *testing.T) {
	p := opened(t, "")
	folder := os.Getenv("PACKCHECK_SCREENSHOTS")
	if folder == "" {
		folder = t.TempDir() // nobody looks, but the pictures can still be made
	}
	shoot := func(name string) {
		for _, width := range []int64{390, 1280} {
			var shot []byte
			p.do(chromedp.EmulateViewport(width, 844), chromedp.FullScreenshot(&shot, 90))
			if err := os.WriteFile(filepath.Join(folder, fmt.Sprintf("%s-%d.jpg", name, width)), shot, 0o644); err != nil {
				t.Fatal(err)
			}
		}
		p.do(chromedp.EmulateViewport(390, 844))
	}
	shoot("page-empty")
	p.typeInto("pack.label", "20V MAX 4.0Ah")
	p.rest()
	shoot("page-label")
	p.typeInto("vehicle.design_voltage", "12 V")
	p.typeInto("rider.age", "4 years, 17 kg")
	p.typeInto("vehicle.ground", "lawn")
	p.rest()
	shoot("page-told")
	if os.Getenv("PACKCHECK_SCREENSHOTS") != "" {
		p.do(chromedp.EmulateViewport(390, 844))
		high := eval[int](p, `document.documentElement.scrollHeight`)
		for i := 0; i*1500 < high; i++ {
			var shot []byte
			p.do(chromedp.EmulateViewport(390, 1500), chromedp.Evaluate(fmt.Sprintf(`window.scrollTo({top: %d, behavior: 'instant'})`, i*1500), nil), chromedp.Sleep(200*1e6), chromedp.CaptureScreenshot(&shot))
			if err := os.WriteFile(filepath.Join(folder, fmt.Sprintf("part-%d.png", i)), shot, 0o644); err != nil {
				t.Fatal(err)
			}
		}
	}
	p.silent()
}
