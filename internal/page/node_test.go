package page_test

import (
	"bufio"
	"bytes"
	"compress/gzip"
	"encoding/base64"
	"encoding/json"
	"fmt"
	"io"
	"math"
	"os"
	"os/exec"
	"path/filepath"
	"strconv"
	"strings"
	"testing"

	"example.org/packcheck/internal/page"
)

// inNode serves a request with the engine of a page, the way the worker does: once to
// bring the engine to its speed, then once for each line that it is sent, and prints how
// many milliseconds that took.
const inNode = `
globalThis.require = require;
const fs = require('node:fs');
require(process.argv[2]);
let ready;
const started = new Promise((resolve) => { ready = resolve; });
globalThis.packcheckReady = () => ready();
(async () => {
	const go = new Go();
	const {instance} = await WebAssembly.instantiate(fs.readFileSync(process.argv[3]), go.importObject);
	go.run(instance);
	await started;
	const request = fs.readFileSync(process.argv[4], 'utf8');
	const serve = () => {
		const begin = performance.now();
		const reply = JSON.parse(packcheckServe(request, () => {}));
		const took = performance.now() - begin;
		if (!reply.parts) throw new Error(JSON.stringify(reply.faults));
		console.log(took);
	};
	serve();
	const lines = require('node:readline').createInterface({input: process.stdin});
	lines.on('line', serve);
	lines.on('close', () => process.exit(0));
})();
`

// node starts node with the engine of the page in a file, brings it to its speed, and
// returns what tells how many milliseconds it takes for the request.
func node(t *testing.T, file string, request []byte) (needs func() float64) {
	t.Helper()
	text, err := os.ReadFile(file)
	if err != nil {
		t.Fatal(err)
	}
	packed, err := base64.StdEncoding.DecodeString(between(t, string(text), `<script type="text/plain" id="engine">`, "</script>"))
	if err != nil {
		t.Fatal(err)
	}
	unpacked, err := gzip.NewReader(bytes.NewReader(packed))
	if err != nil {
		t.Fatal(err)
	}
	engine, err := io.ReadAll(unpacked)
	if err != nil {
		t.Fatal(err)
	}
	worker := between(t, string(text), `<script type="text/plain" id="worker">`, "</script>")
	folder := t.TempDir()
	args := []string{filepath.Join(folder, "serve.js")}
	for name, content := range map[string]string{
		"serve.js": inNode, "run.js": worker[strings.Index(worker, "\n};\n")+len("\n};\n"):], "engine.wasm": string(engine), "request.json": string(request),
	} {
		if err := os.WriteFile(filepath.Join(folder, name), []byte(content), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	for _, name := range []string{"run.js", "engine.wasm", "request.json"} {
		args = append(args, filepath.Join(folder, name))
	}
	program := exec.Command("node", args...)
	program.Stderr = os.Stderr
	in, err := program.StdinPipe()
	if err != nil {
		t.Fatal(err)
	}
	out, err := program.StdoutPipe()
	if err != nil {
		t.Fatal(err)
	}
	if err := program.Start(); err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() {
		in.Close()
		if err := program.Wait(); err != nil {
			t.Error(err)
		}
	})
	told := bufio.NewReader(out)
	took := func() float64 {
		line, err := told.ReadString('\n')
		if err != nil {
			t.Fatal(err)
		}
		ms, err := strconv.ParseFloat(strings.TrimSpace(line), 64)
		if err != nil {
			t.Fatal(err)
		}
		return ms
	}
	took()
	return func() float64 {
		if _, err := io.WriteString(in, "again\n"); err != nil {
			t.Fatal(err)
		}
		return took()
	}
}

// The page takes no more than half as long again as node for the same report, ways
// out included: in the best of some rounds of each, in turn, since other work on the
// machine only ever makes it slower.
func TestABrowserNeedsHardlyLongerThanNode(t *testing.T) {
	p := opened(t, "")
	if _, err := exec.LookPath("node"); err != nil {
		t.Skip("there is no node: would compare how long it takes for the same report")
	}
	request, err := json.Marshal(page.Request{Do: "assess", Given: twenty()["tool, lawn"]})
	if err != nil {
		t.Fatal(err)
	}
	browser := fmt.Sprintf(`(async () => {
		const begin = performance.now();
		const reply = await engine.compute(%s, () => {});
		return reply.parts ? performance.now() - begin : -1;
	})()`, request)
	eval[float64](p, browser) // brings the engine to its speed, like node's first round
	needs := node(t, strings.TrimPrefix(p.file, "file://"), request)
	here, there := math.Inf(1), math.Inf(1)
	for range 3 {
		took := eval[float64](p, browser)
		if took < 0 {
			t.Fatal("there is no answer")
		}
		here, there = min(here, took), min(there, needs())
	}
	t.Logf("the page takes %.0f ms, node %.0f ms: %.2f times as long", here, there, here/there)
	if here > 1.5*there {
		t.Errorf("the page takes %.0f ms, node %.0f ms", here, there)
	}
}
