package climate

import "math"

// The weather elements that vary together from day to day, in the order of the
// matrices.
const (
	varMean     = iota // daily mean temperature
	varRange           // daily range of temperature
	varSun             // radiation as a share of a clear sky's
	varHumidity        // mean relative humidity
	varWind            // mean wind
	variables
)

// vector holds standardised departures of the elements.
type vector [variables]float64

// matrix relates the elements to one another: the row is today's element, the
// column the other day's.
type matrix [variables][variables]float64

func (m *matrix) times(n *matrix) (out matrix) {
	for i := range m {
		for j := range m {
			for k := range m {
				out[i][j] += m[i][k] * n[k][j]
			}
		}
	}
	return out
}

func (m *matrix) transposed() (out matrix) {
	for i := range m {
		for j := range m {
			out[j][i] = m[i][j]
		}
	}
	return out
}

// inverse returns the inverse of a correlation matrix by elimination; the
// diagonal of one leads, so no pivot is sought.
func (m matrix) inverse() (inv matrix) {
	for i := range inv {
		inv[i][i] = 1
	}
	for c := range m {
		scale := 1 / m[c][c]
		for k := range m {
			m[c][k] *= scale
			inv[c][k] *= scale
		}
		for r := range m {
			if f := m[r][c]; r != c {
				for k := range m {
					m[r][k] -= f * m[c][k]
					inv[r][k] -= f * inv[c][k]
				}
			}
		}
	}
	return inv
}

// root returns the lower triangular matrix whose product with its transpose is
// m (Cholesky). A direction in which m leaves no spread gets none.
func (m *matrix) root() (l matrix) {
	for i := range m {
		for j := 0; j <= i; j++ {
			sum := m[i][j]
			for k := range j {
				sum -= l[i][k] * l[j][k]
			}
			switch {
			case i == j:
				l[i][i] = math.Sqrt(math.Max(sum, 0))
			case l[j][j] > 1e-9:
				l[i][j] = sum / l[j][j]
			}
		}
	}
	return l
}

// autoregression gives the matrices A and B of the recursion
// x(today) = A x(yesterday) + B e from the correlations of the same day, m0, and
// with the day before, m1. Correlations that no weather could have, which come
// of elements measured in different years, are drawn toward none until one
// could.
//
// Source: Matalas 1967, "Mathematical assessment of synthetic hydrology", Water
// Resources Research 3:937-945; Richardson 1981, Water Resources Research
// 17:182-190, eq. 5 and 6.
func autoregression(m0, m1 matrix) (a, b matrix) {
	for range 60 {
		if m0.isPositive() {
			inv := m0.inverse()
			a = m1.times(&inv) // A = M1 M0^-1
			t := m1.transposed()
			lost := a.times(&t) // B B' = M0 - M1 M0^-1 M1'
			var rest matrix
			for i := range rest {
				for j := range rest {
					rest[i][j] = m0[i][j] - lost[i][j]
				}
			}
			if rest.isPositive() {
				return a, rest.root()
			}
		}
		m0.weaken()
		m1.weaken()
	}
	return a, b
}

// weaken takes a little off every correlation between different elements.
func (m *matrix) weaken() {
	for i := range m {
		for j := range m {
			if i != j {
				m[i][j] *= 0.95
			}
		}
	}
}

// isPositive tells whether m leaves some spread in every direction.
func (m *matrix) isPositive() bool {
	l := m.root()
	for i := range l {
		if l[i][i] < 0.1 {
			return false
		}
	}
	return true
}
