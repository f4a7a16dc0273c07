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
