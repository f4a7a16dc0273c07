package main

import (
	"fmt"
	"io"
	"os"
	"strings"

	"github.com/mattn/go-isatty"
)

// progress shows how far long work has come, in one line that is written over
// again and again. It shows nothing when standard error is no terminal, so
// that logs and scripts stay clean.
type progress struct {
	w     io.Writer // nil = show nothing
	shown string
}

// progressWidth fits any terminal.
const progressWidth = 64

func newProgress(stderr io.Writer) *progress {
	if !isTerminal(stderr) {
		return &progress{}
	}
	return &progress{w: stderr}
}

// isTerminal reports whether a person may be looking.
func isTerminal(w io.Writer) bool {
	f, ok := w.(*os.File)
	return ok && f != nil && isatty.IsTerminal(f.Fd())
}

// show says what is being done and the share of it (0 to 1) that is done; a
// share of 0 is not printed.
func (p *progress) show(doing string, share float64) {
	if p.w == nil {
		return
	}
	tail := ""
	if share > 0 {
		tail = fmt.Sprintf(" %3.0f %%", 100*min(share, 1))
	}
	line := plain(doing)
	line = line[:min(len(line), progressWidth-len(tail))] + tail
	if line == p.shown {
		return
	}
	fmt.Fprintf(p.w, "\r%-*s", len(p.shown), line)
	p.shown = line
}

// clear takes the line away.
func (p *progress) clear() {
	if p.w == nil || p.shown == "" {
		return
	}
	fmt.Fprintf(p.w, "\r%s\r", strings.Repeat(" ", len(p.shown)))
	p.shown = ""
}
