// Package pattern compiles regular expressions when they are first used, so that
// a program that reads no label does not pay for those that read labels.
package pattern

import (
	"regexp"
	"sync"
)

// Lazy is an expression that is compiled when it is first used. It must not be copied.
type Lazy struct {
	expr     string
	once     sync.Once
	compiled *regexp.Regexp
}

// New returns the pattern of an expression, for a variable of a package: the compiler
// lays it into the program's data, and nothing is done at start-up. An expr that does
// not compile panics at its first use, so each one needs a test that gets to it.
func New(expr string) *Lazy { return &Lazy{expr: expr} }

// Get returns the expression, compiled at the first call and the same one ever after;
// any number of goroutines may call it.
func (l *Lazy) Get() *regexp.Regexp {
	l.once.Do(func() { l.compiled = regexp.MustCompile(l.expr) })
	return l.compiled
}
