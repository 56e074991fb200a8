package growth

// coveringLeaf is the leaf area index from which a green manure covers its ground:
// it then takes about half of the light.
const coveringLeaf = 1.2 // judgement

// cover moves a green manure through ready, which is when it covers its ground,
// to its end: it is over when it has stood its time past the stage at which it
// should be turned in.
func (s *Plants) cover(p *Parameters) {
	if s.Stage != Ready && s.Leaf >= coveringLeaf {
		s.Stage = Ready
	}
	if s.Stage != Ready || s.Development < 1 {
		return
	}
	if s.Standing += s.rate.warmth; s.Standing >= p.Use.StandDays {
		s.finish(Covered)
	}
}
