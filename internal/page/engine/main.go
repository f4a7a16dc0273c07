//go:build js && wasm

// Command engine is what the page runs in a web worker: it waits for requests and
// answers each.
package main

import (
	"runtime/debug"
	"syscall/js"

	"example.org/packcheck/internal/page"
)

func main() {
	debug.SetGCPercent(400) // a phone has memory for speed
	var s page.Session
	js.Global().Set("packcheckServe", js.FuncOf(func(_ js.Value, args []js.Value) any {
		if len(args) != 2 || args[0].Type() != js.TypeString || args[1].Type() != js.TypeFunction {
			return string(s.Serve(nil, nil))
		}
		return string(s.Serve([]byte(args[0].String()), func(reply []byte) { args[1].Invoke(string(reply)) }))
	}))
	js.Global().Call("packcheckReady")
	select {} // until the page ends the worker
}
