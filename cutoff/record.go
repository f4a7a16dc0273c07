package cutoff

// Recorder keeps the volts of one launch, as straight lines between the moments
// that it is given, and says how long they stayed below any value. It has a
// fixed size and allocates nothing, so that a worker may use one for every
// launch that it looks at. The zero Recorder is empty.
type Recorder struct {
	times, volts [recorded]float64
	n            int
	stride       int // of so many moments added one is kept
	waits        int // how many more make the last one kept, 0 = it is
	lowestV      float64
}

// recorded is how many moments are kept; a launch has a hundred or so. Where
// there are more, every second one is forgotten, and of those to come one in two
// is kept; the last one always is.
const recorded = 256

// Reset empties the recorder.
func (r *Recorder) Reset() { r.n, r.stride, r.waits = 0, 1, 0 }

// Add takes the volts at a moment, in seconds, which must not go back.
func (r *Recorder) Add(timeS, volts float64) {
	if r.n == 0 || volts < r.lowestV {
		r.lowestV = volts
	}
	if r.waits > 0 {
		r.n-- // the last one need not be kept
		r.waits--
	} else {
		if r.n == recorded {
			for i := range recorded / 2 {
				r.times[i], r.volts[i] = r.times[2*i], r.volts[2*i]
			}
			r.n, r.stride = recorded/2, 2*max(r.stride, 1)
		}
		r.waits = max(r.stride, 1) - 1
	}
	r.times[r.n], r.volts[r.n] = timeS, volts
	r.n++
}

// LowestV returns the lowest volts that were added, 0 of none.
func (r *Recorder) LowestV() float64 {
	if r.n == 0 {
		return 0
	}
	return r.lowestV
}

// SecondsBelow returns the longest unbroken time at or below so many volts.
func (r *Recorder) SecondsBelow(volts float64) float64 {
	longest, since, below := 0.0, 0.0, false
	for i := range r.n {
		switch v := r.volts[i]; {
		case v <= volts && !below:
			below, since = true, r.passes(i, volts)
		case v > volts && below:
			below = false
			longest = max(longest, r.passes(i, volts)-since)
		}
	}
	if below {
		longest = max(longest, r.times[r.n-1]-since)
	}
	return longest
}

// passes is when the line that ends at the i-th moment passes so many volts.
func (r *Recorder) passes(i int, volts float64) float64 {
	if i == 0 {
		return r.times[0]
	}
	share := (volts - r.volts[i-1]) / (r.volts[i] - r.volts[i-1])
	return r.times[i-1] + share*(r.times[i]-r.times[i-1])
}

// Sag returns what was recorded as [ThroughLaunch] and [Advise] want it; it
// reads the recorder whenever it is asked. Of nothing it is the zero Sag.
func (r *Recorder) Sag() Sag {
	if r.n == 0 {
		return Sag{}
	}
	return Sag{LowestV: r.lowestV, SecondsBelow: r.SecondsBelow}
}
