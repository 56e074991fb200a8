package shade

import (
	"garner/internal/cal"
	"garner/internal/place"
)

// Year is the light of a place as shares of the open sky's, by tenth of a month
// from January on.
type Year struct{ Beam, Diffuse [Tenths]float64 }

// Open is the year of a place with nothing round it.
func Open() (y Year) {
	for t := range Tenths {
		y.Beam[t], y.Diffuse[t] = 1, 1
	}
	return y
}

// IsOpen tells whether nothing is taken from the light all year.
func (y *Year) IsOpen() bool { return *y == Open() }

// Bed returns the light of a bed that is drawn on the site's plan: the mean over
// its ground.
func (s *Scene) Bed(b place.Bed) Year { return s.At(Points(&b, bedPoints)) }

// At returns the mean light of some points on the plan; that of the open sky of
// no points.
func (s *Scene) At(points []place.Point) Year {
	if len(points) == 0 || len(s.obstacles) == 0 {
		return Open()
	}
	var y Year
	var e eye
	states := make([]float64, len(s.states))
	part := 1 / float64(len(points))
	open := 0.0
	for _, p := range points {
		if !e.look(s.obstacles, p.X, p.Y) {
			open += part
			continue
		}
		clear(states)
		e.diffuse(&s.round, s.states, states)
		for t := range Tenths {
			y.Beam[t] += part * beam(e.seen, s.days[t], t)
			y.Diffuse[t] += part * states[s.stateOf[t]]
		}
	}
	if open >= 1-1e-9 {
		return Open()
	}
	for t := range Tenths {
		y.Beam[t], y.Diffuse[t] = min(1, y.Beam[t]+open), min(1, y.Diffuse[t]+open)
	}
	return y
}

// OnDay returns the beam and diffuse shares of a day of the common year, 1-365:
// on the line between the middles of the tenths it lies between.
func (y *Year) OnDay(dayOfYear int) (beam, diffuse float64) {
	before, part := between(dayOfYear)
	after := (before + 1) % Tenths
	return y.Beam[before]*(1-part) + y.Beam[after]*part, y.Diffuse[before]*(1-part) + y.Diffuse[after]*part
}

// between returns the tenth whose middle comes last before a day, and how much
// of the way to the next one has gone.
func between(dayOfYear int) (tenth int, part float64) {
	day := float64(dayOfYear)
	if day < TenthDay(0) {
		day += commonYear
	}
	tenth = Tenths - 1
	for tenth > 0 && TenthDay(tenth) > day {
		tenth--
	}
	next := TenthDay((tenth + 1) % Tenths)
	if tenth == Tenths-1 {
		next += commonYear
	}
	return tenth, (day - TenthDay(tenth)) / (next - TenthDay(tenth))
}

// Light combines beam and diffuse by the diffuse share of the open light, 0-1.
func Light(beam, diffuse, diffuseShare float64) float64 {
	return diffuseShare*diffuse + (1-diffuseShare)*beam
}

// Months returns the light of each month, the mean over its days, for the
// diffuse share that is usual in it.
func (y *Year) Months(diffuseShare [12]float64) (out [12]float64) {
	day := 0
	for m := range out {
		days := cal.DaysInMonth(m + 1)
		for range days {
			day++
			beam, diffuse := y.OnDay(day)
			out[m] += Light(beam, diffuse, diffuseShare[m]) / float64(days)
		}
	}
	return out
}
