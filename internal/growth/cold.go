package growth

import "garner/internal/crop"

// youngDays is how long a plant counts as young in the frost.
const youngDays = 25 // the span of the window trial

// Hardening: a fortnight of days under 8 C hardens a plant in full, a week over
// 12 C undoes it.
//
// judgement, between published speeds: cabbage gains most of its tolerance in
// two to three weeks at 5 C and loses it in about a week of warmth.
const (
	hardenBelowC  = 8.0
	softenAboveC  = 12.0
	hardenPerDay  = 1.0 / 14
	softenPerDay  = -1.0 / 7
	youngGain     = 0.5 // seedlings gain half of what grown plants do
	coldDamageToC = 1.0 // half-width of the range over which a stand dies [C]
)

func hardenRate(meanC float64) float64 {
	switch {
	case meanC < hardenBelowC:
		return hardenPerDay
	case meanC > softenAboveC:
		return softenPerDay
	}
	return 0
}

// lethalC returns the air minimum that kills half the stand today [C].
func (s *Plants) lethalC(u *crop.Use) float64 {
	gain := s.Harden * (u.KillHardenedC - u.KillC)
	if s.Age < youngDays {
		return u.KillYoungC + youngGain*gain
	}
	return u.KillC + gain
}

// coldCheckC is the air minimum above which no stage of the crop can be hurt,
// so that warm nights cost nothing.
func coldCheckC(u *crop.Use) float64 { return max(u.KillYoungC, u.KillC) + coldDamageToC }

// lostToCold returns the share of the living that a night kills: none a degree
// above the lethal temperature, all a degree below.
func lostToCold(lethalC, minimumC float64) float64 {
	return min(1, max(0, (lethalC+coldDamageToC-minimumC)/(2*coldDamageToC)))
}
