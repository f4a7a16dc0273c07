package draws

// PlainSobol returns the points before scrambling, for comparison with others.
func PlainSobol(n, dims int) [][]float64 {
	points := rows(n, dims)
	for d, axis := range plainAxes(n, dims) {
		for i := range points {
			points[i][d] = axis.next(i) - 0.5/(1<<sobolBits)
		}
	}
	return points
}

// MostProbable is the search for the most probable draw by itself. It fails as
// [Condition] does.
func MostProbable(dims int, m Model, readings []Reading, workers int) (Best, error) {
	if err := check(dims, m, readings); err != nil {
		return Best{}, err
	}
	s := search{dims: dims, model: m, readings: readings, workers: workersOf(workers)}
	if len(readings) == 0 {
		return Best{Z: make([]float64, dims), P: 1}, nil
	}
	if err := s.start(); err != nil {
		return Best{}, err
	}
	all := every(len(readings))
	return s.bestOf(s.overSteps(s.descend(s.middle, all), all), all), nil
}

// Explain is [Explainer.Explain] for a single figure.
func Explain(z [][]float64, weight, values []float64) []float64 {
	return NewExplainer(z, weight).Explain(values)
}

// The laws, and one system of equations: its solution, inverse and the logarithm of
// its determinant.
const DefaultFreedom = defaultFreedom

func StudentQuantile(p float64) float64 { return studentQuantile(p) }

func Solved(matrix, right []float64) (x, inverse []float64, logDet float64, ok bool) {
	m := newSymmetric(len(right))
	copy(m.a, matrix)
	l, ok := triangle(m)
	if !ok {
		return nil, nil, 0, false
	}
	x = append(x, right...)
	l.solve(x)
	return x, l.inverse().a, l.logDet(), true
}
