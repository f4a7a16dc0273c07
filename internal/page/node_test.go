package page_test

import (
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

// inNode serves one request with the engine of a page, the way the worker does, and
// prints how many milliseconds the second round took: the first one brings the
// engine to its speed.
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
	let took;
	for (let i = 0; i < 2; i++) {
		const begin = performance.now();
		const reply = JSON.parse(packcheckServe(request, () => {}));
		took = performance.now() - begin;
		if (!reply.parts) throw new Error(JSON.stringify(reply.faults));
	}
	console.log(took);
	process.exit(0);
})();
`

// nodeNeeds is how many milliseconds node takes for a request with the engine of the
// page in a file.
func nodeNeeds(t *testing.T, file string, request []byte) float64 {
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
	out, err := exec.Command("node", args...).CombinedOutput()
	if err != nil {
		t.Fatalf("%v: %s", err, out)
	}
	took, err := strconv.ParseFloat(strings.TrimSpace(string(out)), 64)
	if err != nil {
		t.Fatal(err)
	}
	return took
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
	here, there := math.Inf(1), math.Inf(1)
	for range 3 {
		took := eval[float64](p, browser)
		if took < 0 {
			t.Fatal("there is no answer")
		}
		here, there = min(here, took), min(there, nodeNeeds(t, strings.TrimPrefix(p.file, "file://"), request))
	}
	t.Logf("the page takes %.0f ms, node %.0f ms: %.2f times as long", here, there, here/there)
	if here > 1.5*there {
		t.Errorf("the page takes %.0f ms, node %.0f ms", here, there)
	}
}
