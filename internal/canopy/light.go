package canopy

import "math"

// Leaves is one canopy on a piece of ground.
type Leaves struct {
	Area       float64 // leaf area index, 0 or more
	Extinction float64 // per unit leaf area, 0 or more
	TopM       float64 // height of the highest leaf
	FootM      float64 // height of the lowest leaf; 0 unless lower leaves were taken off
}

// Light is what one canopy gets, as shares of the light above all leaves.
type Light struct {
	Top    float64 // at its highest leaf
	Caught float64 // by all its leaves
}

// leastDepthM is the depth over which a canopy that lies flat is spread [m].
const leastDepthM = 0.001

func (l *Leaves) topM() float64 { return max(l.TopM, l.FootM+leastDepthM) }

// Share works out what each of several canopies on the same ground gets. out
// has the length of stand and is overwritten. What all catch together is never
// more than 1.
func Share(stand []Leaves, out []Light) {
	from := highest(stand)
	left := 1.0
	for i := range stand {
		out[i] = Light{Top: 1}
	}
	for from > 0 {
		below := next(stand, from)
		for i := range stand {
			if stand[i].topM() == from {
				out[i].Top = left
			}
		}
		left = layer(stand, out, from, below, left)
		from = below
	}
}

// layer lets the light through one layer and returns what is left below it.
func layer(stand []Leaves, out []Light, from, below, left float64) float64 {
	sum := 0.0
	for i := range stand {
		sum += stand[i].within(from, below)
	}
	if sum <= 0 {
		return left
	}
	caught := left * -math.Expm1(-sum)
	for i := range stand {
		out[i].Caught += caught * stand[i].within(from, below) / sum
	}
	return left - caught
}

// within returns extinction times the leaf area that lies in a layer, whose
// bounds are among the feet and tops of all canopies.
func (l *Leaves) within(from, below float64) float64 {
	top := l.topM()
	if from > top || below < l.FootM {
		return 0
	}
	return l.Extinction * l.Area * (from - below) / (top - l.FootM)
}

func highest(stand []Leaves) (top float64) {
	for i := range stand {
		top = max(top, stand[i].topM())
	}
	return top
}

// next returns the highest bound below a height, 0 at the ground.
func next(stand []Leaves, from float64) (below float64) {
	for i := range stand {
		if t := stand[i].topM(); t < from {
			below = max(below, t)
		}
		if f := stand[i].FootM; f < from {
			below = max(below, f)
		}
	}
	return below
}
