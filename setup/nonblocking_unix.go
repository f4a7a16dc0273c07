//go:build unix

package setup

import "syscall"

// nonBlocking keeps a pipe that nobody writes to from holding up the reader.
const nonBlocking = syscall.O_NONBLOCK
