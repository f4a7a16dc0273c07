// Package draws turns what is not known into draws, and weighs the draws by
// what was read. It is plain mathematics: it knows neither vehicles nor units.
//
// Every unknown is a standard normal number z; whoever asks turns it into a
// value by the quantile of its law. [Points] gives evenly spread draws of the
// prior, [Condition] draws with weights once there are readings. [SpreadOf] and
// [Quantile] read figures off the draws, [Resample] picks equal draws for what
// is dear to compute, [Explain] says which unknowns a figure hangs on, [Expect]
// what a further reading would change. [FindConflict] says which readings do
// not go together.
//
// The same input gives the same bytes, on any number of goroutines: seeds are
// fixed, random numbers are drawn before the runs, results are stored by
// position.
package draws
