package draws_test

import (
	"math"
	"math/rand/v2"

	"example.org/packcheck/internal/draws"
)

// cartUnknowns is how many unknowns the cart has; the last ones change little.
const cartUnknowns = 30

// cartGround is the unknown that is a choice: grass or not.
const cartGround = 10

// cart is a made-up vehicle in closed form, crooked enough to try the method
// on: products, a threshold, a limit, and draws that do not run. Its figures
// are of this test only.
type cart struct {
	speed, minutes, amps, blocked, pull, volts float64
}

// drive computes the cart of one draw; ok is whether it moves.
func drive(z []float64) (c cart, ok bool) {
	f := func(i int, spread float64) float64 { return math.Exp(spread * z[i]) }
	faint := 0.0
	for i := 16; i < cartUnknowns; i++ {
		faint += z[i]
	}
	emf := 12.6 * f(0, 0.02)
	battery, path := 0.06*f(1, 0.5), 0.08*f(2, 0.4)
	winding := 0.3 * f(3, 0.35)
	constant := 0.0075 * f(4, 0.15)
	idle := 1.2 * f(5, 0.35)
	ratio := 90 * f(6, 0.15)
	radius := 0.13 * f(7, 0.04)
	mass := 38 * f(8, 0.12)
	roll := 0.05 * f(9, 0.35) * math.Exp(0.02*faint)
	if z[cartGround] > 0.8 { // on grass
		roll *= 1.6
	}
	efficiency := 1 / (1 + 0.35*f(11, 0.4))
	capacity := 7 * f(12, 0.1) / (1 + 0.25*f(13, 0.8))
	pedal := min(1, 0.7*f(14, 0.25))
	steep := 1.1 + 0.05*z[15]
	ohm := battery + path + winding
	force := roll * mass * 9.81
	c.amps = idle + force*radius/(constant*ratio*efficiency)
	c.blocked = emf / ohm
	turn := (emf - ohm*c.amps) / constant
	c.speed = turn / ratio * radius
	c.pull = min(constant*(c.blocked-idle)*ratio*efficiency/radius, 0.5*mass*9.81)
	c.volts = emf - battery*c.amps
	c.minutes = 60 * capacity / (c.amps * pedal) * math.Pow(20*c.amps/capacity/8, 1-steep)
	return c, c.speed > 0.15 && c.pull > force
}

// readable lists what can be read of the cart, in the scale of its errors.
func (c cart) readable() [6]float64 {
	return [6]float64{math.Log(c.speed), math.Log(c.minutes), math.Log(c.amps), math.Log(c.blocked), math.Log(c.pull), c.volts}
}

// cartChoices tells of the ground.
func cartChoices() []draws.Choice {
	return []draws.Choice{{Unknown: cartGround, Cuts: []float64{0.8}}}
}

// cartErr holds the standard errors of what is read.
var cartErr = [6]float64{0.12, 0.15, 0.12, 0.12, 0.2, 0.15}

// cartModel foretells the chosen ones of what can be read.
func cartModel(which ...int) draws.Model {
	return func(_ int, z, out []float64) bool {
		c, ok := drive(z)
		if !ok {
			return false
		}
		all := c.readable()
		for i, w := range which {
			out[i] = all[w]
		}
		return true
	}
}

// hidden draws a cart that runs from what is assumed of carts.
func hidden(random *rand.Rand) (cart, []float64) {
	for {
		z := make([]float64, cartUnknowns)
		for i := range z {
			z[i] = max(-draws.Clip, min(draws.Clip, random.NormFloat64()))
		}
		if c, ok := drive(z); ok {
			return c, z
		}
	}
}

// student draws an error of Student's law with 4 degrees of freedom.
func student(random *rand.Rand) float64 {
	var squares float64
	for range 4 {
		v := random.NormFloat64()
		squares += v * v
	}
	return random.NormFloat64() / math.Sqrt(squares/4)
}

// readings reads the chosen figures of a hidden cart with errors of the law.
func read(c cart, random *rand.Rand, law func(*rand.Rand) float64, which ...int) []draws.Reading {
	all := c.readable()
	readings := make([]draws.Reading, len(which))
	for i, w := range which {
		readings[i] = draws.Reading{Value: all[w] + cartErr[w]*law(random), Err: cartErr[w]}
	}
	return readings
}
