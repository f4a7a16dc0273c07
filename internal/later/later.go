// Package later makes values when they are first asked for, so that a program which
// does not need them does not pay for them when it starts: a [Value] lies ready in the
// program's data, where what [sync.OnceValue] returns is made at each start.
package later

import "sync"

// Value is what Make returns, made at the first call of Get. Any number of goroutines
// may share one; it must not be copied.
type Value[T any] struct {
	Make func() T // must not panic: later calls would get nothing

	once sync.Once
	made T
}

// Get returns the value, the same one ever after.
func (v *Value[T]) Get() T {
	v.once.Do(func() { v.made = v.Make() })
	return v.made
}
