package water

// Reach brings a balance to the depth that the roots of a stand reach. Where deeper
// roots have gone, what was missing below the new ones stays missing there: it is
// filled by what drains, and found again by roots that grow down. What is missing is
// taken to be spread evenly over a depth, though roots take more from above.
//
// The sum of what is missing stays as it was.
func (b *Balance) Reach(on *Stand) {
	to, from := on.reachM(), b.ReachM
	if b.BelowMM <= 0 {
		b.DeepestM = from
	}
	switch {
	case from <= 0:
	case to < from:
		left := b.MissingMM * (1 - to/from)
		b.MissingMM -= left
		b.BelowMM += left
		b.DeepestM = max(b.DeepestM, from)
	case to > from && b.BelowMM > 0:
		found := b.BelowMM * min(1, (to-from)/(b.DeepestM-from))
		b.MissingMM += found
		b.BelowMM -= found
	}
	b.ReachM = to
}

// TakenWithEaseMM is how much of what a soil holds within reach a stand takes without
// want on a day on which so much is lost [mm] (RAW, FAO-56 eq. 83).
func (s *Soil) TakenWithEaseMM(on *Stand, lostMM float64) float64 {
	if on.Basal <= 0 && on.Seed {
		return s.ReadyMM
	}
	return on.easy(lostMM) * s.HeldMM(on.reachM())
}

// HeldWithinReachMM is what a soil that has drained holds for a stand [mm] (TAW).
func (s *Soil) HeldWithinReachMM(on *Stand) float64 { return s.HeldMM(on.reachM()) }

// Water brings water to the ground ahead of a day, over all of it [mm].
func (b *Balance) Water(mm float64) (drainedMM float64) { return b.wet(&Given{IrrigationMM: mm}) }
