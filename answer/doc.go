// Package answer says what an answer is: a [Finding] with its [Level] and its
// [Source], a [Range], and the [Assessment] that holds them all. It computes
// nothing and decides nothing.
//
// The package sits at the very bottom: it imports nothing of this module, and
// every package may import it.
//
// # Ranges and shares
//
// What a setup leaves open is drawn many times, each draw one vehicle that the
// setup may mean. A [Range] goes from the 10 to the 90 % point of the draws:
// eight of ten such vehicles lie inside; Likely is the median. A finding's
// Share is the part of the draws in which it holds.
package answer
