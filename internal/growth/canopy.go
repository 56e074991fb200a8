package growth

import (
	"math"

	"garner/internal/canopy"
)

// RatesAmong is Rates for a planting whose leaves share their ground with
// others. l is what they get of the light above all leaves.
func (s *Plants) RatesAmong(p *Parameters, a *Air, l canopy.Light, water float64) {
	if p.pattern == perennial || s.Stage == Germinating || !s.Living() || l.Top <= 0 {
		s.Rates(p, a, a.PARMJ*l.Top, water)
		return
	}
	s.grow(p, a, a.PARMJ*l.Top, l.Caught/l.Top, water)
}

// Leaves returns the planting's canopy as it shares light with others.
func (s *Plants) Leaves(p *Parameters) canopy.Leaves {
	l := canopy.Leaves{Area: s.Leaf, Extinction: p.Use.Extinction, TopM: s.HeightM(p)}
	if s.bare > 0 {
		l.FootM = l.TopM * s.bare / (s.Leaf + s.bare)
	}
	return l
}

// HeightM returns the height of the canopy [m]. It rises with the root of the leaf
// of a plant, up to that of a full stand, and does not sink when lower leaves are
// taken off.
//
// judgement: plants of one shape have leaf in proportion to the square of their
// height.
func (s *Plants) HeightM(p *Parameters) float64 {
	return p.Use.HeightM * math.Sqrt(min(1, (s.Leaf+s.bare)/p.tallLeaf))
}

// TakeLowerLeaves takes a share (0-1) of the leaf off, from below: the canopy
// keeps its height and its foot rises by that share of it. What is picked is not
// touched, and what is taken does not grow again.
//
// judgement: the lower leaves are the oldest and new ones come at the top only;
// a plant with its full number of leaves makes none in their place.
func (s *Plants) TakeLowerLeaves(share float64) {
	if s.season.dayOfYear > 0 {
		s.season.bare = max(s.season.bare, share)
	}
	off := s.Leaf * share
	s.Leaf -= off
	s.bare += off
}

// liftingLoss is the share of the leaf that a planting loses when it is lifted
// and set again: roots are torn, and leaves wilt or are trimmed until they hold
// again.
//
// judgement, after Ohio State University Extension (Reducing Seedling Transplant
// Shock), which has about half of the leaf of lifted seedlings trimmed off to
// match their roots.
const liftingLoss = 0.5

// liftingDays is how much its way to ready is set back, in days at best warmth
// and light: it stands until its roots hold.
const liftingDays = 7 // judgement

// Lift moves the planting from its old spacing to that of its new place, with a
// check. A planting that has not come through keeps its seed.
func (s *Plants) Lift(from, to *Parameters) {
	room := to.plantsPerM / from.plantsPerM
	s.Leaf *= (1 - liftingLoss) * room
	s.bare *= room
	s.Organ *= room
	if s.Emergence >= 1 && s.bestDays > 0 {
		s.Development = max(0, s.Development-liftingDays/s.bestDays)
	}
}

// TakeUp ends the planting here, to go on where it is set.
func (s *Plants) TakeUp() {
	s.Stage, s.End = Over, Lifted
}
