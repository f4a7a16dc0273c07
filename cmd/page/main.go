// Command page builds the whole program as one HTML file, which opens from a disk
// or from any place that hands out files:
//
//	go run ./cmd/page packcheck.html
//
// It is run inside this module, and compiles the engine with the Go that runs it.
package main

import (
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"strings"

	"example.org/packcheck/internal/page"
)

func main() {
	if err := run(os.Args[1:]); err != nil {
		fmt.Fprintln(os.Stderr, "page:", err)
		os.Exit(1)
	}
}

func run(args []string) error {
	if len(args) != 1 || strings.HasPrefix(args[0], "-") {
		return fmt.Errorf("want the name of the file to write: go run ./cmd/page packcheck.html")
	}
	whole, err := build()
	if err != nil {
		return err
	}
	if err := os.WriteFile(args[0], whole, 0o644); err != nil {
		return err
	}
	_, err = fmt.Printf("%s: %d bytes\n", args[0], len(whole))
	return err
}

// build compiles the engine and makes the page of it.
func build() ([]byte, error) {
	folder, err := os.MkdirTemp("", "packcheck-page")
	if err != nil {
		return nil, err
	}
	defer os.RemoveAll(folder)
	engine := filepath.Join(folder, "engine.wasm")
	compile := exec.Command("go", "build", "-trimpath", "-ldflags=-s -w -buildid=", "-o", engine, "example.org/packcheck/internal/page/engine")
	compile.Env = append(os.Environ(), "GOOS=js", "GOARCH=wasm")
	if said, err := compile.CombinedOutput(); err != nil {
		return nil, fmt.Errorf("compiling the engine: %w\n%s", err, said)
	}
	root, err := exec.Command("go", "env", "GOROOT").Output()
	if err != nil {
		return nil, fmt.Errorf("asking where Go is: %w", err)
	}
	script, err := os.ReadFile(filepath.Join(strings.TrimSpace(string(root)), "lib", "wasm", "wasm_exec.js"))
	if err != nil {
		return nil, fmt.Errorf("what Go gives to run WebAssembly: %w", err)
	}
	bytes, err := os.ReadFile(engine)
	if err != nil {
		return nil, err
	}
	return page.Assemble(bytes, string(script))
}
