// Package pattern compiles regular expressions when they are first used, so that
// a program that reads no label does not pay for those that read labels.
package pattern

import (
	"regexp"
	"sync"
)

// Lazy returns what compiles expr at its first call and returns the same
// expression ever after; any number of goroutines may call it. An expr that does
// not compile panics then, so each one needs a test that gets to it.
func Lazy(expr string) func() *regexp.Regexp {
	return sync.OnceValue(func() *regexp.Regexp { return regexp.MustCompile(expr) })
}
