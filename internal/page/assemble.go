package page

import (
	"bytes"
	"compress/gzip"
	"crypto/sha256"
	_ "embed" // the files beside this one
	"encoding/base64"
	"fmt"
	"strings"

	"example.org/packcheck/report"
)

//go:embed assets/page.html
var pageHTML string

//go:embed assets/page.css
var pageCSS string

//go:embed assets/worker.js
var workerJS string

//go:embed assets/engine.js
var engineJS string

//go:embed assets/fields.js
var fieldsJS string

//go:embed assets/form.js
var formJS string

//go:embed assets/answer.js
var answerJS string

//go:embed assets/beside.js
var besideJS string

//go:embed assets/hand.js
var handJS string

//go:embed assets/page.js
var pageJS string

// MostBytes is how large the whole page may be.
const MostBytes = 6_000_000

// Assemble makes the page of the engine, compiled to WebAssembly, and of what the
// Go distribution that compiled it gives to run it (lib/wasm/wasm_exec.js). The
// same input makes the same bytes. Errors are an engine that does not fit, and a
// file of scripts that would end its own element.
func Assemble(engine []byte, wasmExec string) ([]byte, error) {
	packed, err := pack(engine)
	if err != nil {
		return nil, err
	}
	style := report.HTMLStyle() + pageCSS
	script := "'use strict';\n" + strings.Join([]string{engineJS, fieldsJS, formJS, answerJS, besideJS, handJS, pageJS}, "\n")
	worker := workerJS + "\n" + wasmExec
	for _, text := range []string{style, script, worker} {
		if lower := strings.ToLower(text); strings.Contains(lower, "</script") || strings.Contains(lower, "<!--") || strings.Contains(lower, "</style") {
			return nil, fmt.Errorf("page: a script or style sheet holds what ends its own element")
		}
	}
	page := strings.NewReplacer(
		"{{policy}}", policy(script, style), "{{style}}", style, "{{script}}", script, "{{worker}}", worker,
		"{{safety}}", report.HTMLSafety(), "{{engine}}", base64.StdEncoding.EncodeToString(packed),
	).Replace(pageHTML)
	if len(page) > MostBytes {
		return nil, fmt.Errorf("page: it has %d bytes, want at most %d", len(page), MostBytes)
	}
	return []byte(page), nil
}

func pack(engine []byte) ([]byte, error) {
	var out bytes.Buffer
	w, err := gzip.NewWriterLevel(&out, gzip.BestCompression)
	if err == nil {
		_, err = w.Write(engine)
	}
	if err == nil {
		err = w.Close()
	}
	if err != nil {
		return nil, fmt.Errorf("page: packing the engine: %w", err)
	}
	return out.Bytes(), nil
}

// policy tells the browser what the page may do: run its own script and style, by
// their sums, and its own engine in a worker. It may fetch nothing from anywhere
// (Content Security Policy Level 3, W3C).
func policy(script, style string) string {
	return "default-src 'none'; script-src " + sum(script) + " 'wasm-unsafe-eval'; style-src " + sum(style) +
		"; worker-src blob:; img-src data:; base-uri 'none'; form-action 'none'"
}

func sum(text string) string {
	s := sha256.Sum256([]byte(text))
	return "'sha256-" + base64.StdEncoding.EncodeToString(s[:]) + "'"
}
