package climate

import (
	"math"
	"sync"

	"garner/internal/cal"
)

// daysInYear is the length of a yearly curve: 29 February uses the value of 28
// February.
const daysInYear = 365

// yearCurve holds a value for each day of a common year, 1 January first.
type yearCurve [daysInYear]float64

// dayIndex returns the place of a date in a yearCurve, 0-364.
func dayIndex(month, day int) int {
	if month == 2 && day == 29 {
		day = 28
	}
	return cal.MonthDay{Month: month, Day: day}.DayOfYear() - 1
}

// monthOf holds the month, 0-11, of each day of a common year.
var monthOf = func() (m [daysInYear]int) {
	for i := range m {
		m[i] = cal.MonthDayOf(i+1).Month - 1
	}
	return m
}()

// harmonics is enough for the least-curvature curve: the weight of a harmonic
// falls with its fourth power, so the 25th would carry under a millionth.
const harmonics = 24

// smooth returns the smoothest daily curve whose monthly means are the values
// given: of all periodic curves with these twelve means it has the least sum of
// squared curvature. Any unit; monthly means come back to rounding. It may
// overshoot a little between months, so a quantity that cannot be negative has
// to be held at zero by the caller.
//
// Source: the condition of keeping the means is that of Epstein 1991, "On
// obtaining daily climatological values from monthly means", J. Climate
// 4:365-368, who uses four or five harmonics; least curvature in place of a cut
// series is ours, since a cut series rings where neighbouring months differ much.
func smooth(months [12]float64) (out yearCurve) {
	s := smoother()
	for d := range out {
		for m, v := range months {
			out[d] += s[d][m] * v
		}
	}
	return out
}

// smoother holds the weight of each month's mean on each day.
var smoother = sync.OnceValue(func() *[daysInYear][12]float64 {
	basis := monthBasis()
	inverse := invert13(meanSystem(basis))
	out := new([daysInYear][12]float64)
	for d := range out {
		kernel := dayKernel(basis, d)
		for m := range 12 {
			for k := range 13 {
				out[d][m] += kernel[k] * inverse[k][m]
			}
		}
	}
	return out
})

// monthBasis returns the mean over each month of cos and sin of each harmonic.
func monthBasis() (b [harmonics][12][2]float64) {
	for j := range b {
		for d := range daysInYear {
			sin, cos := math.Sincos(2 * math.Pi * float64((j+1)*d) / daysInYear)
			m := monthOf[d]
			b[j][m][0] += cos / float64(cal.DaysInMonth(m+1))
			b[j][m][1] += sin / float64(cal.DaysInMonth(m+1))
		}
	}
	return b
}

// curvatureWeight is how freely harmonic j+1 may be used: the inverse of its
// squared curvature.
func curvatureWeight(j int) float64 { return math.Pow(float64(j+1), -4) }

// meanSystem sets up the conditions: the curve is a constant plus a weighted sum
// of twelve kernels, its monthly means are given, the weights sum to nothing.
func meanSystem(b [harmonics][12][2]float64) (a [13][13]float64) {
	for m := range 12 {
		for n := range 12 {
			for j := range b {
				a[m][n] += curvatureWeight(j) * (b[j][m][0]*b[j][n][0] + b[j][m][1]*b[j][n][1])
			}
		}
		a[m][12], a[12][m] = 1, 1
	}
	return a
}

// dayKernel returns the kernels' values on a day, and 1 for the constant.
func dayKernel(b [harmonics][12][2]float64, d int) (k [13]float64) {
	for j := range b {
		sin, cos := math.Sincos(2 * math.Pi * float64((j+1)*d) / daysInYear)
		for m := range 12 {
			k[m] += curvatureWeight(j) * (cos*b[j][m][0] + sin*b[j][m][1])
		}
	}
	k[12] = 1
	return k
}

// invert13 inverts a matrix by elimination with the largest pivot.
func invert13(a [13][13]float64) (inv [13][13]float64) {
	for i := range inv {
		inv[i][i] = 1
	}
	for c := range a {
		p := c
		for r := c + 1; r < len(a); r++ {
			if math.Abs(a[r][c]) > math.Abs(a[p][c]) {
				p = r
			}
		}
		a[c], a[p] = a[p], a[c]
		inv[c], inv[p] = inv[p], inv[c]
		scale := 1 / a[c][c]
		for k := range a {
			a[c][k] *= scale
			inv[c][k] *= scale
		}
		for r := range a {
			if f := a[r][c]; r != c && f != 0 {
				for k := range a {
					a[r][k] -= f * a[c][k]
					inv[r][k] -= f * inv[c][k]
				}
			}
		}
	}
	return inv
}
