package draws

import "math"

const (
	// widening of the errors in a proposal, so that its tails lie outside those
	// of the answer, and how much more for every round that leaves the answer
	// rough: whatever needs those is crooked. Common practice, no published
	// source; tried on vehicles and on the cart of the tests.
	widening     = 1.3
	moreWidening = 0.15
	// steadying is how often the middle and the errors are found from each other.
	steadying = 12
)

// proposal is the law that linear readings would give: for each alternative of
// the choices a normal law of the other unknowns, with mean J'A e and precision
// I + J'N^-1 J, where A = (JJ' + M)^-1, M holds the variances of the readings,
// N the widened ones, and e is the innovation of that alternative: the residual
// of the linear model where all other unknowns are in the middle. Only matrices
// of the readings are ever inverted.
type proposal struct {
	choices    []alternatives
	slope      [][]float64   // J: of each prediction, in its errors, by each unknown; 0 for choices
	innovation []float64     // on average over the alternatives
	shift      [][][]float64 // of choice, alternative, reading: to be added
	chance     [][]float64   // of choice, alternative
	gram       symmetric     // JJ'
	middle     symmetric     // A
	noise      []float64     // N, by reading
	gain       [][]float64   // column j of K = J'(JJ' + N)^-1, as a row
	half       float64       // half the logarithm of det(I + N^-1 JJ')
}

// finish computes what follows from slopes, innovation, shifts and chances.
func (p *proposal) finish(freedom float64, strained int) {
	k, dims := len(p.slope), len(p.slope[0])
	p.gram = gramOf(p.slope)
	p.noise = make([]float64, k)
	for j := range p.noise {
		p.noise[j] = 1
	}
	for range steadying {
		p.middle, _ = invert(p.gram, p.noise)
		if math.IsInf(freedom, 1) {
			break
		}
		// What a Student law makes of the residuals in the middle, as if each
		// reading had an error of its own (K. L. Lange, R. J. A. Little and
		// J. M. G. Taylor, J. Am. Stat. Assoc. 84 (1989) 881-896).
		for j := range p.noise {
			r := p.innovation[j]
			for i := range k {
				for h := range k {
					r -= p.gram.at(j, i) * p.middle.at(i, h) * p.innovation[h]
				}
			}
			p.noise[j] = max(1, (freedom+r*r)/(freedom+1))
		}
	}
	wide := widening + moreWidening*float64(strained)
	for j := range p.noise {
		p.noise[j] *= wide * wide
	}
	inverse, logDet := invert(p.gram, p.noise)
	p.half = logDet / 2
	p.gain = rows(k, dims)
	for j := range p.gain {
		for i, row := range p.slope {
			addScaled(p.gain[j], inverse.at(i, j), row)
		}
	}
}

// gramOf is JJ'.
func gramOf(slope [][]float64) symmetric {
	gram := newSymmetric(len(slope))
	for i := range slope {
		for j := i; j < len(slope); j++ {
			gram.set(i, j, dot(slope[i], slope[j]))
		}
	}
	return gram
}

// invert returns (JJ' + N)^-1 and log det(I + N^-1 JJ').
func invert(gram symmetric, noise []float64) (symmetric, float64) {
	m := newSymmetric(len(noise))
	copy(m.a, gram.a)
	var logDet float64
	for j, n := range noise {
		m.set(j, j, m.at(j, j)+n)
		logDet -= math.Log(n)
	}
	l, ok := triangle(m)
	if !ok {
		return newSymmetric(len(noise)), 0 // unreachable short of an overflow: no step
	}
	return l.inverse(), logDet + l.logDet()
}

// workspace holds what one evaluation needs, so that none allocates.
type workspace struct{ along, e, u, mean []float64 }

func newWorkspace(readings int) workspace {
	flat := make([]float64, 4*readings)
	return workspace{
		along: flat[:readings], e: flat[readings : 2*readings],
		u: flat[2*readings : 3*readings], mean: flat[3*readings:],
	}
}

// centre sets u = A e and mean = JJ'u, for the alternatives that z picks, and
// returns the logarithm of their chance over their prior share.
func (p *proposal) centre(z []float64, s workspace) (over float64) {
	copy(s.e, p.innovation)
	for c := range p.choices {
		a := &p.choices[c]
		n := a.of(z[a.unknown])
		addScaled(s.e, 1, p.shift[c][n])
		over += math.Log(p.chance[c][n] / a.share[n])
	}
	p.middle.times(s.u, s.e)
	p.gram.times(s.mean, s.u)
	return over
}

// draw turns normal numbers (x for the unknowns, y for the readings) into a
// draw of the law, in place of x: choices first, then the others by
// z = J'u + x - K(Jx - N^1/2 y).
func (p *proposal) draw(x, y []float64, s workspace) {
	for c := range p.choices {
		a := &p.choices[c]
		x[a.unknown] = a.place(x[a.unknown], p.chance[c])
	}
	p.centre(x, s)
	for j, row := range p.slope { // 0 for the choices
		y[j] = math.Sqrt(p.noise[j])*y[j] - dot(row, x)
	}
	for j, row := range p.slope {
		addScaled(x, y[j], p.gain[j])
		addScaled(x, s.u[j], row)
	}
}

// logRatio is the logarithm of this law's density over the prior's at z.
func (p *proposal) logRatio(z []float64, s workspace) float64 {
	l := p.half + p.centre(z, s)
	for j, row := range p.slope {
		s.along[j] = dot(row, z)
		d := s.along[j] - s.mean[j]
		// u'JJ'u is the square of the mean, u'Jz its product with z.
		l += s.u[j]*(s.along[j]-s.mean[j]/2) - d*d/(2*p.noise[j])
	}
	return l
}
