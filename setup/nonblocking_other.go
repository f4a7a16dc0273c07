//go:build !unix

package setup

// nonBlocking is nothing where files have no such flag: in a browser, which reads
// none.
const nonBlocking = 0
