package ride

// RunFiner follows every round, in steps so many times as short.
func RunFiner(c *Case, times int) Outcome {
	o := outing{c: c, every: true}
	return o.run(1 / float64(times))
}

// Steps is how many steps it takes to follow a case to its end.
func Steps(c *Case) int {
	o := outing{c: c}
	o.run(1)
	return o.planned
}
