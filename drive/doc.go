// Package drive says what a small electric vehicle asks of its battery: motors,
// gears, ground and rider, running steadily, starting from rest, or blocked.
package drive
