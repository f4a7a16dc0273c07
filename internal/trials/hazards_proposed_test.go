package trials_test

// Codes that no package has yet. The names are proposals; what the rows that ask
// for them state is not.
const (
	wantToyVolts    = "above-toy-volts"      // full volts above what a toy may have
	wantFuseOpened  = "fuse-opened-in-use"   // measured: a fuse opened while it was driven
	wantRunningOver = "running-over-part"    // measured or computed running amps above a part's lasting rating
	wantOvercharged = "rests-above-full"     // rests above what its cells can have
	wantSags        = "falls-far-under-load" // measured: volts under load below every end
	wantDisagree    = "labels-disagree"      // two labels, or a label and a reading, that cannot both be true
	wantOverload    = "overloaded"           // heavier than the vehicle is made for
	wantSteep       = "rolls-back-on-slope"  // tips, rolls back or runs away
	wantStoredHot   = "stored-too-hot"       // above the storage limit of its cells
	disagree        = "readings-disagree|" + wantDisagree
)
