package shade

import "math"

// How finely the sky is parted: directions round the horizon, and bands of
// equal weight from the horizon up.
const (
	skyAzimuths = 72
	skyBands    = 18
)

// bands are numbers for each band of one direction.
type bands [skyBands]float64

// bandTan is the middle of each band as a tangent. A band holds an equal part of
// the sine of the height squared, and so of the light of an even sky on level
// ground.
var bandTan = func() (out bands) {
	for k := range out {
		q := (float64(k) + 0.5) / skyBands
		out[k] = math.Sqrt(q / (1 - q))
	}
	return out
}()

// roundOf are the directions round the horizon of a plan. They are laid out by
// the compass, so that a plan drawn the other way up gives the same light.
func roundOf(upDeg float64) (out [skyAzimuths]ray) {
	for i := range out {
		out[i] = rayTo(upDeg, (float64(i)+0.5)*360/skyAzimuths, 0)
	}
	return out
}

// diffuse adds to out the share of an even sky's light that reaches a point, by
// leaf state: states holds a tenth of the year for each.
func (e *eye) diffuse(round *[skyAzimuths]ray, states []int, out []float64) {
	for i := range round {
		e.slice(round[i], states, out)
	}
}

// slice adds the bands of one direction to each state's share.
func (e *eye) slice(toward ray, states []int, out []float64) {
	var crowns, boxes bands // ln of what crowns let through, part that boxes leave
	for k := range boxes {
		boxes[k] = 1
	}
	e.changing = e.changing[:0]
	for i := range e.seen {
		s := &e.seen[i]
		if s.misses(toward) {
			continue
		}
		c := crossing{sight: s}
		if s.crown && !s.crossBands(toward, &c.ways) {
			continue
		}
		if s.seasonal {
			e.changing = append(e.changing, c)
		} else {
			c.take(toward, states[0], &crowns, &boxes)
		}
	}
	if len(e.changing) == 0 {
		alike := passed(&crowns, &boxes)
		for k := range out {
			out[k] += alike
		}
		return
	}
	for k := range out {
		ln, part := crowns, boxes
		for i := range e.changing {
			e.changing[i].take(toward, states[k], &ln, &part)
		}
		out[k] += passed(&ln, &part)
	}
}

// crossing is an obstacle in one direction; of a crown, the way through it by
// band.
type crossing struct {
	*sight
	ways bands
}

// crossBands works out the way through a crown for each band; false when no band
// meets it.
func (s *sight) crossBands(toward ray, ways *bands) bool {
	met := false
	for k := range ways {
		ways[k] = s.chord(s.px, s.py, ray{toward.x, toward.y, bandTan[k]})
		met = met || ways[k] > 0
	}
	return met
}

// take takes what one obstacle takes of each band.
func (c *crossing) take(toward ray, tenth int, crowns, boxes *bands) {
	if !c.crown {
		c.hide(toward, tenth, boxes)
		return
	}
	for k := range crowns {
		crowns[k] += c.ways[k] * c.lnThrough[tenth]
	}
}

// hide takes what a box hides of each band: the bands up to its top edge whole,
// the one in which the edge lies in part. Solid boxes behind each other hide no
// more than the higher one.
func (s *sight) hide(toward ray, tenth int, boxes *bands) {
	d, hit := s.distance(s.px, s.py, toward)
	if !hit {
		return
	}
	edge := skyBands * s.top * s.top / (s.top*s.top + d*d)
	solid := s.lnThrough[tenth] < dark
	taken := 1 - math.Exp(s.lnThrough[tenth])
	for k := range boxes {
		hidden := min(1, edge-float64(k))
		switch {
		case hidden <= 0:
			return
		case solid:
			boxes[k] = min(boxes[k], 1-hidden)
		default:
			boxes[k] *= 1 - hidden*taken
		}
	}
}

// passed is what comes through in one direction, as a share of the whole sky.
func passed(crowns, boxes *bands) float64 {
	sum := 0.0
	for k := range boxes {
		switch {
		case crowns[k] == 0:
			sum += boxes[k]
		case boxes[k] > 0:
			sum += boxes[k] * math.Exp(crowns[k])
		}
	}
	return sum / (skyAzimuths * skyBands)
}
