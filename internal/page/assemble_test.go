package page_test

import (
	"bytes"
	"compress/gzip"
	"crypto/sha256"
	"encoding/base64"
	"io"
	"regexp"
	"strings"
	"testing"

	"example.org/packcheck/internal/page"
	"example.org/packcheck/report"
)

// assembled is the page around an engine that is none.
func assembled(t *testing.T) string {
	t.Helper()
	text, err := page.Assemble([]byte("engine"), "// what runs it")
	if err != nil {
		t.Fatal(err)
	}
	return string(text)
}

// between returns what stands between two marks, the first time.
func between(t *testing.T, text, from, to string) string {
	t.Helper()
	_, rest, ok := strings.Cut(text, from)
	inner, _, ok2 := strings.Cut(rest, to)
	if !ok || !ok2 {
		t.Fatalf("the page lacks %q or %q", from, to)
	}
	return inner
}

// The page may run its own script and style and nothing else, and fetch nothing.
func TestThePageForbidsItselfTheNetwork(t *testing.T) {
	text := assembled(t)
	policy := between(t, text, `http-equiv="Content-Security-Policy" content="`, `"`)
	for _, want := range []string{"default-src 'none'", "worker-src blob:", "base-uri 'none'", "form-action 'none'"} {
		if !strings.Contains(policy, want) {
			t.Errorf("the policy lacks %s: %s", want, policy)
		}
	}
	for _, never := range []string{"unsafe-inline", "'unsafe-eval'", "http:", "https:", "*", "connect-src", "data: blob:"} {
		if strings.Contains(policy, never) {
			t.Errorf("the policy allows %s", never)
		}
	}
	for what, inner := range map[string]string{
		"script-src": text[strings.LastIndex(text, "<script>")+len("<script>") : strings.LastIndex(text, "</script>")],
		"style-src":  between(t, text, "<style>", "</style>"),
	} {
		sum := sha256.Sum256([]byte(inner))
		if want := what + " 'sha256-" + base64.StdEncoding.EncodeToString(sum[:]) + "'"; !strings.Contains(policy, want) {
			t.Errorf("the policy does not name the %s: %s", what, want)
		}
	}
	if found := regexp.MustCompile(`\son[a-z]+=|\sstyle=|\ssrc=|@import|url\(|\bfetch\(|XMLHttpRequest|localStorage|sessionStorage|indexedDB|document\.cookie|\beval\(|\bimport\(`).FindAllString(text, -1); found != nil {
		t.Errorf("the page holds %q", found)
	}
}

// The engine comes out of the page as it went in, and the same input makes the
// same page.
func TestTheEngineStandsInThePage(t *testing.T) {
	text := assembled(t)
	if text != assembled(t) {
		t.Error("the same input makes another page")
	}
	packed, err := base64.StdEncoding.DecodeString(between(t, text, `<script type="text/plain" id="engine">`, "</script>"))
	if err != nil {
		t.Fatal(err)
	}
	r, err := gzip.NewReader(bytes.NewReader(packed))
	if err != nil {
		t.Fatal(err)
	}
	if engine, err := io.ReadAll(r); err != nil || string(engine) != "engine" {
		t.Errorf("the engine comes out as %q, %v", engine, err)
	}
	if !strings.Contains(text, report.HTMLSafety()) || strings.Contains(text, "{{") {
		t.Error("the safety lines are missing, or something was not filled in")
	}
}

// A page that is too large, or a script that would end itself, is an error.
func TestWhatMakesNoPageIsRefused(t *testing.T) {
	noise := make([]byte, page.MostBytes)
	state := uint32(1)
	for i := range noise {
		state = state*1664525 + 1013904223 // does not pack: numbers of a linear congruence
		noise[i] = byte(state >> 24)
	}
	if _, err := page.Assemble(noise, ""); err == nil {
		t.Error("a page of more than the most is made")
	}
	if _, err := page.Assemble(nil, "x = '</SCRIPT>'"); err == nil {
		t.Error("a script that ends its own element is taken")
	}
}

// Every word of a level has its colour on the page, and no rule moves anything
// where somebody wants rest.
func TestThePageMovesNothing(t *testing.T) {
	style := between(t, assembled(t), "<style>", "</style>")
	if strings.Contains(style, "animation") || strings.Contains(style, "transition") {
		t.Error("the style moves something")
	}
	if i := strings.Index(style, "scroll-behavior"); i >= 0 && !strings.Contains(style[max(0, i-80):i], "prefers-reduced-motion:no-preference") {
		t.Error("it scrolls smoothly even for those who want rest")
	}
}
