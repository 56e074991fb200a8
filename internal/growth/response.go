package growth

import "math"

// WangEngel returns the relative rate of development at a temperature [C]: 0 at
// and below base, 1 at optimum, 0 at and above ceiling (base < optimum <
// ceiling).
//
// Source: Wang & Engel 1998, Simulation of phenological development of wheat
// crops, Agricultural Systems 58:1-24, eq. 6-7 (equation numbers from memory).
func WangEngel(temperature, base, optimum, ceiling float64) float64 {
	alpha, best := wangEngel(base, optimum, ceiling)
	return response(temperature, base, ceiling, alpha, best)
}

// wangEngel returns what a crop's function has at every temperature.
func wangEngel(base, optimum, ceiling float64) (alpha, best float64) {
	alpha = math.Ln2 / math.Log((ceiling-base)/(optimum-base))
	return alpha, math.Pow(optimum-base, alpha)
}

func response(temperature, base, ceiling, alpha, best float64) float64 {
	if temperature <= base || temperature >= ceiling {
		return 0
	}
	x := math.Pow(temperature-base, alpha)
	return x * (2*best - x) / (best * best)
}

// The lattice on which every crop's response is tabulated. A hundredth of a degree
// keeps the straight lines within 1e-4 of the formula just above the base, where
// it bends most, and puts the kinks at base and ceiling, which the book gives to
// a tenth, on lattice points.
const (
	latticeLowC  = -10.0
	latticeHighC = 50.0
	latticePerC  = 100.0
	latticeCells = int((latticeHighC - latticeLowC) * latticePerC)
)

// Response is a crop's temperature response on the lattice.
type Response [latticeCells + 2]float32

// NewResponse tabulates Wang & Engel's function for a crop.
func NewResponse(base, optimum, ceiling float64) *Response {
	r := new(Response)
	alpha, best := wangEngel(base, optimum, ceiling)
	for i := range r {
		r[i] = float32(response(latticeLowC+float64(i)/latticePerC, base, ceiling, alpha, best))
	}
	return r
}

// point is a temperature's place on the lattice.
type point struct {
	cell int32
	part float32
}

func latticePoint(temperature float64) point {
	p := (temperature - latticeLowC) * latticePerC
	if p <= 0 {
		return point{}
	}
	if p >= float64(latticeCells) {
		return point{cell: int32(latticeCells)}
	}
	cell := int32(p)
	return point{cell, float32(p - float64(cell))}
}

func (r *Response) at(p point) float64 {
	v := float64(r[p.cell])
	return v + float64(p.part)*(float64(r[p.cell+1])-v)
}

// At returns the response at a temperature [C].
func (r *Response) At(temperature float64) float64 { return r.at(latticePoint(temperature)) }

// OverDay returns the mean response over a day whose temperature swings as a
// sine between its extremes, by the three points of Gauss-Chebyshev quadrature
// (Abramowitz & Stegun 1964, 25.4.38).
func (r *Response) OverDay(a *Air) float64 {
	return (r.at(a.points[0]) + r.at(a.points[1]) + r.at(a.points[2])) * (1.0 / 3)
}
