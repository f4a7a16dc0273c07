// Package page is the same engine in one HTML file: it asks, answers and hands
// on, in a browser, without a network.
//
// The Go side is [Session.Serve], one JSON request in and one JSON reply out,
// compiled to WebAssembly by internal/page/engine and run in a web worker. What
// it asks comes from internal/interview, what it answers from package report; the
// scripts beside this file move texts between these and the screen, and know
// nothing of batteries. [Assemble] puts all of it into one file.
//
// A link holds a setup in its fragment: see [Link] and [Unlink].
package page
