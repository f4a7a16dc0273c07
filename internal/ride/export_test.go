package ride

// RunFiner follows every round, in steps so many times as short.
func RunFiner(c *Case, times int) Outcome {
	o := outing{c: c, every: true}
	return o.run(1 / float64(times))
}
