package battery

// Wells is the kinetic battery model by itself.
type Wells struct {
	CapacityAh float64 // both wells full
	C          float64 // share of the available well, (0, 1]
	KPerS      float64 // valve constant k, 1/s; the closed form uses k' = k/(c(1-c))
}

// Peukert is the constant-current law t = H (C/(I H))^k with its reference
// hours.
type Peukert struct {
	CapacityAh float64
	Hours      float64
	Exponent   float64
}

// Hours returns how long a constant current lasts.
func (p Peukert) At(currentA float64) float64 { return 0 }
