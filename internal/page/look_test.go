package page_test

import (
	"fmt"
	"os"
	"path/filepath"
	"testing"

	"github.com/chromedp/chromedp"
)

// look keeps what the browser shows where PACKCHECK_SCREENSHOTS names a folder: whole
// pages of two widths, and the phone's in pieces that can be read.
func (p *tab) look(name string) {
	p.t.Helper()
	folder := os.Getenv("PACKCHECK_SCREENSHOTS")
	if folder == "" {
		return // nobody looks
	}
	keep := func(file string, shot []byte) {
		if err := os.WriteFile(filepath.Join(folder, file), shot, 0o644); err != nil {
			p.t.Fatal(err)
		}
	}
	for _, width := range []int64{390, 1280} {
		var shot []byte
		p.do(chromedp.EmulateViewport(width, 844), chromedp.FullScreenshot(&shot, 90))
		keep(fmt.Sprintf("%s-%d.jpg", name, width), shot)
	}
	p.do(chromedp.EmulateViewport(390, 1500))
	high := eval[int](p, `document.documentElement.scrollHeight`)
	for i := 0; i*1400 < high; i++ {
		var shot []byte
		p.do(chromedp.Evaluate(fmt.Sprintf(`window.scrollTo({top: %d, behavior: 'instant'})`, i*1400), nil), chromedp.CaptureScreenshot(&shot))
		keep(fmt.Sprintf("%s-%02d.png", name, i), shot)
	}
	p.do(chromedp.EmulateViewport(390, 844))
}

// Looked at by a person: PACKCHECK_SCREENSHOTS=folder keeps what the browser shows.
func TestScreenshotsOfThePageForTheEye(t *testing.T) {
	if os.Getenv("PACKCHECK_SCREENSHOTS") == "" {
		return
	}
	p := opened(t, "")
	p.look("page-empty")
	p.typeInto("pack.label", "20V MAX 4.0Ah")
	p.rest()
	p.look("page-label")
	p.typeInto("vehicle.design_voltage", "12 V")
	p.typeInto("rider.age", "4 years, 17 kg")
	p.typeInto("vehicle.ground", "lawn")
	p.rest()
	p.look("page-told")
	p.silent()
}
