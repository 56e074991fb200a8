package growth

import (
	"math"

	"garner/internal/crop"
)

// turnover is the share of the unripe fruit that ripens in a day at best
// warmth, so that a fruit takes about ten such days from set to picking.
const turnover = 0.1 // judgement; flower to pick is 4-8 d in courgette, 40-60 d in tomato

// leafAfterCut is the share of leaf area that a cut leaves.
const leafAfterCut = 0.35 // judgement

// ripen moves the planting through ready, standing, picking and cutting.
func (s *Plants) ripen(p *Parameters) {
	if p.pattern == covering {
		s.cover(p)
		return
	}
	if s.Stage == Ready {
		s.Standing += s.rate.warmth
	} else if s.Development >= p.Use.ReadyStage && s.usable(p) {
		s.Stage = Ready
	}
	s.rate.yielded = 0
	switch p.pattern {
	case picking:
		s.pick(p)
	case cutting:
		s.cut(p)
	case leafThenHead:
		s.stripLeaf(p)
		s.standOut(p)
	default:
		s.standOut(p)
	}
}

// standOut ends a crop of one pull when it has stood its time.
func (s *Plants) standOut(p *Parameters) {
	if s.Stage == Ready && s.Standing >= p.Use.StandDays {
		s.finish(Harvested)
	}
}

// leafFrom is the stage from which leaves are taken ahead of the head.
const leafFrom = 0.5 // judgement: when leaves of neighbours meet

// stripLeaf takes its share of each day's growth as leaf, which the head then
// lacks.
func (s *Plants) stripLeaf(p *Parameters) {
	if s.Stage == Ready || s.Development < leafFrom {
		return
	}
	s.rate.yielded = s.rate.organ * p.Use.LeafShare
	s.Organ -= s.rate.yielded
}

// usable tells whether a piece has reached the least size that is of use.
// Fruit is picked from the first ripe one on.
func (s *Plants) usable(p *Parameters) bool {
	if p.pattern == picking {
		return s.Organ > 0
	}
	return s.PieceG(p) >= p.Use.UsableG
}

// pick lets set fruit ripen and be picked, evenly or in flushes.
func (s *Plants) pick(p *Parameters) {
	if s.Stage != Ready {
		return
	}
	if s.Standing >= p.Use.PickDays {
		s.finish(Harvested)
		return
	}
	ripe := s.Organ * turnover * s.rate.warmth * flush(p.Use, s.Standing)
	ripe = min(ripe, s.Organ)
	s.Organ -= ripe
	s.rate.yielded = ripe
}

// flush returns how strongly fruit comes ripe at a time since first pick [days
// at best warmth]: 1 for crops that bear evenly, else a wave of mean 1 whose
// crests are flush_days apart.
func flush(u *crop.Use, standing float64) float64 {
	if u.FlushDays <= 0 {
		return 1
	}
	return 1 + math.Cos(2*math.Pi*standing/u.FlushDays)
}

// cut takes the leaf when it has grown, again and again.
func (s *Plants) cut(p *Parameters) {
	if s.Stage != Ready {
		return
	}
	s.sinceCut += s.rate.warmth
	if s.cuts > 0 && s.sinceCut < p.Use.CutDays {
		if s.Standing >= p.Use.StandDays {
			s.finish(Harvested)
		}
		return
	}
	if s.cuts > 0 && s.PieceG(p) < p.Use.UsableG {
		if s.Standing >= p.Use.StandDays {
			s.finish(Harvested)
		}
		return
	}
	s.rate.yielded = s.Organ
	s.Organ, s.Leaf, s.bare = 0, max(p.leafStart, s.Leaf*leafAfterCut), 0
	s.cuts++
	s.sinceCut = 0
	if float64(s.cuts) >= p.Use.Cuts {
		s.finish(Harvested)
	}
}

// YieldedKgM2 returns what came ripe today, with luck and losses [kg/m2].
func (s *Plants) YieldedKgM2(p *Parameters) float64 {
	return s.rate.yielded * p.freshPerG * s.luck * s.Alive * s.stand
}
