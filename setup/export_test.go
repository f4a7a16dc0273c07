package setup

// NewRide is what is told of the class of a vehicle, for tests: how long this one
// would last, how long it is told to, and the standard error of the logarithm.
func NewRide(p *Parts, pick Pick) (lasts, told, err float64) {
	return p.newRideS(pick), p.Gears.told.rideS.Likely, p.Gears.told.err
}

// NewSpeedShare is how fast one vehicle is when new over the speed that its gears were
// fitted to, for tests.
func NewSpeedShare(p *Parts, pick Pick) float64 { return p.newSpeedShare(pick) }

// NewRiseShare is how much hotter than the air one vehicle's motors run when new over the
// rise that was drawn, and how near to it they come, for tests.
func NewRiseShare(p *Parts, pick Pick) (share, err float64) { return p.newRiseShare(pick), riseErr }
