package draws

import "math"

// What is little and has to be the same everywhere is done here: libraries of
// linear algebra sum in another order on one processor than on another, and a last
// bit decides now and then which step a search takes next. Sums go from the first
// to the last; each product is rounded by itself, so that no compiler fuses it.

// dot is the sum of the products of two vectors of one length.
func dot(a, b []float64) (sum float64) {
	b = b[:len(a)]
	for i, v := range a {
		sum += float64(v * b[i])
	}
	return sum
}

// addScaled adds a multiple of x to y, which has its length.
func addScaled(y []float64, by float64, x []float64) {
	x = x[:len(y)]
	for i := range y {
		y[i] += float64(by * x[i])
	}
}

// symmetric is a symmetric matrix of n rows, row by row, both halves filled.
type symmetric struct {
	n int
	a []float64
}

func newSymmetric(n int) symmetric { return symmetric{n, make([]float64, n*n)} }

func (m symmetric) row(i int) []float64 { return m.a[i*m.n : (i+1)*m.n] }

func (m symmetric) at(i, j int) float64 { return m.a[i*m.n+j] }

func (m symmetric) set(i, j int, v float64) { m.a[i*m.n+j], m.a[j*m.n+i] = v, v }

// times sets y to m x.
func (m symmetric) times(y, x []float64) {
	for i := range y {
		y[i] = dot(m.row(i), x)
	}
}

// triangle is the lower triangle L of a positive definite matrix LL' (A.-L.
// Cholesky's method; G. H. Golub and C. F. Van Loan, Matrix Computations, 3rd ed.,
// 1996, section 4.2). It is built in place of the matrix. ok is false where that is
// not positive definite, or has what is no number in it.
func triangle(m symmetric) (l symmetric, ok bool) {
	for i := range m.n {
		here := m.row(i)
		for j := range i {
			above := m.row(j)
			here[j] = (here[j] - dot(here[:j], above[:j])) / above[j]
		}
		left := here[i] - dot(here[:i], here[:i])
		if !(left > 0) || math.IsInf(left, 1) {
			return m, false
		}
		here[i] = math.Sqrt(left)
		clear(here[i+1:])
	}
	return m, true
}

// solve puts the solution x of LL'x = b in the place of b.
func (m symmetric) solve(b []float64) {
	for i := range b {
		b[i] = (b[i] - dot(m.row(i)[:i], b[:i])) / m.at(i, i)
	}
	for i := len(b) - 1; i >= 0; i-- {
		b[i] /= m.at(i, i)
		addScaled(b[:i], -b[i], m.row(i)[:i])
	}
}

// logDet is the logarithm of the determinant of LL'.
func (m symmetric) logDet() (sum float64) {
	for i := range m.n {
		sum += 2 * math.Log(m.at(i, i))
	}
	return sum
}

// inverse is that of LL'.
func (m symmetric) inverse() symmetric {
	inverse, column := newSymmetric(m.n), make([]float64, m.n)
	for i := range m.n {
		clear(column)
		column[i] = 1
		m.solve(column)
		for j := i; j < m.n; j++ {
			inverse.set(i, j, column[j])
		}
	}
	return inverse
}
