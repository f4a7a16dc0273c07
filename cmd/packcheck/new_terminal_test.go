package main

import (
	"bytes"
	"os"
	"strings"
	"sync"
	"testing"
	"time"

	"github.com/creack/pty"
)

// screen gathers what a terminal shows.
type screen struct {
	mu   sync.Mutex
	text bytes.Buffer
}

func (s *screen) follow(f *os.File) {
	part := make([]byte, 1024)
	for {
		n, err := f.Read(part)
		s.mu.Lock()
		s.text.Write(part[:n])
		s.mu.Unlock()
		if err != nil {
			return
		}
	}
}

// shown is what the terminal shows behind a place.
func (s *screen) shown(from int) string {
	s.mu.Lock()
	defer s.mu.Unlock()
	return s.text.String()[min(from, s.text.Len()):]
}

// at waits until it waits for an answer to what was said last, and returns the
// place where the answer will stand.
func (s *screen) at(t *testing.T, from int, said string) int {
	t.Helper()
	for range 3000 { // half a minute on a machine that others use too
		if text := s.shown(from); strings.Contains(text, said) && strings.HasSuffix(text, "\n> ") {
			return from + len(text)
		}
		time.Sleep(10 * time.Millisecond)
	}
	t.Fatalf("%q was not said; the terminal shows %q", said, s.shown(0))
	return 0
}

func TestATerminalIsSpokenToInPlainLines(t *testing.T) {
	keyboard, terminal, err := pty.Open()
	if err != nil {
		t.Skipf("no pseudo-terminal here: %v", err)
	}
	defer keyboard.Close()
	seen := &screen{}
	go seen.follow(keyboard)
	done := make(chan int)
	go func() { done <- run([]string{"new"}, terminal, terminal, terminal) }()

	place := 0
	for _, turn := range []struct{ said, typed string }{
		{"1. What is printed on the battery", "?\n"},
		{"as it stands. Where it is worn off", "12V 7AH\n"},
		{"Read as: sealed lead-acid (AGM)", "12\n"},
		{"3. How old is the child", "back\n"},
		{"2. How many volts", "6 V, no: 12 V\n"},
		{"Not understood", "12 V\n"},
		{"3. How old is the child", "\n"},
		{"4. What does it run on", "\x04"}, // the end of the input, typed
	} {
		place = seen.at(t, place, turn.said)
		if _, err := keyboard.WriteString(turn.typed); err != nil {
			t.Fatal(err)
		}
	}
	if code := <-done; code != exitFine {
		t.Errorf("exit code %d", code)
	}
	for range 500 { // what was written last may still be on its way
		if strings.Contains(seen.shown(0), "With --full") {
			break
		}
		time.Sleep(10 * time.Millisecond)
	}
	text := seen.shown(0)
	for i, r := range text {
		if r != '\n' && r != '\r' && (r < ' ' || r > '~') && r != 0x08 { // the terminal's own ^D
			t.Errorf("the terminal is sent %q behind %q", r, text[max(0, i-30):i])
		}
	}
	if n := strings.Count(text, "12V 7AH"); n != 1 {
		t.Errorf("what was typed shows %d times", n)
	}
	if !strings.Contains(text, "YES, WITH CARE: ") || !strings.Contains(text, "SAFETY") {
		t.Errorf("no page at the end: %q", text)
	}
	if strings.Contains(text, "A file to keep") {
		t.Error("a file is asked for although nobody is there")
	}
}
