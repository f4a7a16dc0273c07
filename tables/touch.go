package tables

import "math"

// burns are the ends of the pieces that the burn threshold of bare metal is drawn
// through, by how long skin lies on it.
var burns = [...]struct {
	seconds float64
	name    FigureName
}{{1, BurnsIn1s}, {10, BurnsIn10s}, {60, BurnsIn1min}, {600, BurnsIn10min}, {28800, BurnsIn8h}}

// BurnsAfter returns from which temperature in degC on bare metal burns skin that
// lies on it for so many seconds: what a hand was held on for so long was hardly
// hotter. Straight in the logarithm of the time between the figures of ISO 13732-1;
// below one second and above eight hours that of the end.
func (t *Tables) BurnsAfter(seconds float64) Value {
	first, last := burns[0], burns[len(burns)-1]
	switch {
	case !(seconds > first.seconds):
		return t.Figure(first.name).Value
	case seconds >= last.seconds:
		return t.Figure(last.name).Value
	}
	i := 1
	for seconds > burns[i].seconds {
		i++
	}
	a, b := t.Figure(burns[i-1].name).Value, t.Figure(burns[i].name).Value
	share := math.Log(seconds/burns[i-1].seconds) / math.Log(burns[i].seconds/burns[i-1].seconds)
	at := func(x, y float64) float64 { return x + share*(y-x) }
	return Value{Low: at(a.Low, b.Low), Likely: at(a.Likely, b.Likely), High: at(a.High, b.High), Source: a.Source}
}

// BurnsIn returns in how many seconds bare metal of tempC, in degC, burns skin that
// lies on it, at the earliest: from 1 s, which stands for all that is hotter, up to 8 h;
// infinite where it never does.
func (t *Tables) BurnsIn(tempC float64) float64 {
	first, last := burns[0].seconds, burns[len(burns)-1].seconds
	if !(tempC >= t.BurnsAfter(last).Low) {
		return math.Inf(1)
	}
	low, high := first, last
	if tempC >= t.BurnsAfter(first).Low {
		return first
	}
	for range 50 { // halved to less than a rounding
		if mid := math.Sqrt(low * high); t.BurnsAfter(mid).Low > tempC {
			low = mid
		} else {
			high = mid
		}
	}
	return high
}
