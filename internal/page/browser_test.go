package page_test

import (
	"context"
	"encoding/json"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"sync"
	"testing"
	"time"

	"example.org/packcheck/internal/browsertest"
	"github.com/chromedp/cdproto/log"
	"github.com/chromedp/cdproto/network"
	"github.com/chromedp/cdproto/runtime"
	"github.com/chromedp/chromedp"
)

// slow skips what takes minutes unless it is asked for.
func slow(t *testing.T) {
	t.Helper()
	if os.Getenv("PACKCHECK_SLOW") == "" {
		t.Skip("PACKCHECK_SLOW is not set: would build the page and use it in a browser as people do")
	}
}

// scratch is the folder of what is built once for all tests, removed after them.
var scratch string

func TestMain(m *testing.M) {
	var err error
	if scratch, err = os.MkdirTemp("", "packcheck-page-test"); err != nil {
		panic(err)
	}
	code := m.Run()
	os.RemoveAll(scratch)
	os.Exit(code)
}

// built is the page as the documented command makes it, built once.
var built = sync.OnceValues(func() (string, error) {
	file := filepath.Join(scratch, "packcheck.html")
	if out, err := exec.Command("go", "run", "example.org/packcheck/cmd/page", file).CombinedOutput(); err != nil {
		return "", fmt.Errorf("%w: %s", err, out)
	}
	return file, nil
})

// tab is the page in a browser, with everything that the browser complains of.
type tab struct {
	context.Context
	t          *testing.T
	file       string
	mu         sync.Mutex
	complaints []string
	fetched    []string
}

// opened opens the page from the disk, in a window of a phone's width.
func opened(t *testing.T, fragment string) *tab {
	t.Helper()
	slow(t)
	file, err := built()
	if err != nil {
		t.Fatal(err)
	}
	ctx := browsertest.Start(t, 10*time.Minute)
	p := &tab{Context: ctx, t: t, file: "file://" + file}
	chromedp.ListenTarget(ctx, p.hear)
	p.do(network.Enable(), log.Enable(), chromedp.EmulateViewport(390, 844))
	p.goTo(fragment)
	return p
}

// hear notes whatever the browser says, and whatever the page loads beside itself.
func (p *tab) hear(event any) {
	p.mu.Lock()
	defer p.mu.Unlock()
	switch event := event.(type) {
	case *runtime.EventConsoleAPICalled:
		args, _ := json.Marshal(event.Args)
		p.complaints = append(p.complaints, fmt.Sprintf("%s: %s", event.Type, args))
	case *runtime.EventExceptionThrown:
		p.complaints = append(p.complaints, event.ExceptionDetails.Error())
	case *log.EventEntryAdded:
		p.complaints = append(p.complaints, event.Entry.Text)
	case *network.EventRequestWillBeSent:
		p.fetched = append(p.fetched, event.Request.URL)
	}
}

// silent fails the test where the browser had anything to say.
func (p *tab) silent() {
	p.t.Helper()
	p.mu.Lock()
	defer p.mu.Unlock()
	for _, c := range p.complaints {
		p.t.Errorf("the browser says %s", c)
	}
}

func (p *tab) do(actions ...chromedp.Action) {
	p.t.Helper()
	if err := chromedp.Run(p, actions...); err != nil {
		p.t.Fatal(err)
	}
}

// eval runs a script in the page, which may be a promise.
func eval[T any](p *tab, script string) T {
	p.t.Helper()
	var out T
	p.do(chromedp.Evaluate(script, &out, func(e *runtime.EvaluateParams) *runtime.EvaluateParams { return e.WithAwaitPromise(true) }))
	return out
}

// goTo loads the page with a fragment and waits until it asks.
func (p *tab) goTo(fragment string) {
	p.t.Helper()
	address := p.file
	if fragment != "" {
		address += "#" + fragment
	}
	p.do(chromedp.Navigate("about:blank"), chromedp.Navigate(address), chromedp.WaitReady("html[data-ready=yes]", chromedp.ByQuery))
}

// rest waits until everything typed is read and the answer is fine.
func (p *tab) rest() {
	p.t.Helper()
	eval[bool](p, `(async () => {
		await Promise.all(form.all().map((f) => f.settle()));
		let last;
		do { last = answer.settled; await last; } while (last !== answer.settled);
		return true;
	})()`)
}

// typeInto types into the field of a question as fingers do, and leaves it.
func (p *tab) typeInto(key, text string) {
	p.t.Helper()
	p.do(chromedp.SendKeys(fmt.Sprintf(`.field[data-key=%q] input`, key), text, chromedp.ByQuery))
}

// empty takes out what stands in a field.
func (p *tab) empty(key string) {
	p.t.Helper()
	eval[bool](p, fmt.Sprintf(`(() => {
		const input = document.querySelector('.field[data-key=%q] input');
		input.value = '';
		return input.dispatchEvent(new Event('input', {bubbles: true}));
	})()`, key))
}

// settled waits for the answer from all draws; ways out may still be searched.
func (p *tab) settled() {
	p.t.Helper()
	eval[bool](p, `new Promise((done) => {
		const look = () => document.querySelector('#state').textContent.includes(drawn.toLocaleString('en') + ' vehicles') ? done(true) : setTimeout(look, 50);
		look();
	})`)
}
