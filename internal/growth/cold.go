package growth

import "garner/internal/crop"

// youngDays is how long a plant counts as young in the frost.
const youngDays = 25 // the span of the window trial

// Hardening follows the nights: in full speed where the minimum is at 2 C or
// under, none from 5 C on; nights over 8 C undo it. A week of cold nights hardens
// a plant in full, five mild ones soften it.
//
// Sources: Tamura 2002, J. Japan. Soc. Hort. Sci. (the tolerance of spinach and
// komatsuna follows the mean minimum of a week between 2 and 8 C, hard below,
// soft above). The speeds are judgement between published ones: spinach gains 2-4
// C in one cold day and loses 3-5 in a warm one (abstract on four cultivars),
// cabbage takes two to three weeks. That seedlings gain as much as grown plants is
// judgement after trials: October sowings lived through Colorado winters under two
// layers (Stonaker 2012).
const (
	hardenInFullC = 2.0
	hardenBelowC  = 5.0
	softenAboveC  = 8.0
	hardenPerDay  = 1.0 / 7
	softenPerDay  = -1.0 / 5
	coldDamageToC = 1.0 // half-width of the range over which a stand dies [C]
)

// hardenRate is the share of full hardening that a night brings or takes, from its
// minimum [C].
func hardenRate(minimumC float64) float64 {
	switch {
	case minimumC < hardenBelowC:
		return hardenPerDay * min(1, (hardenBelowC-minimumC)/(hardenBelowC-hardenInFullC))
	case minimumC > softenAboveC:
		return softenPerDay
	}
	return 0
}

// Hardened is how far a plant is hardened after a night (0-1), from how far it was before it
// and the night's minimum [C].
func Hardened(before, minimumC float64) float64 {
	return min(1, max(0, before+hardenRate(minimumC)))
}

// LethalC returns the air minimum that kills half a stand [C], so many days after it
// came through or was planted and hardened so far (0-1).
func LethalC(u *crop.Use, ageDays int, harden float64) float64 {
	gain := harden * (u.KillHardenedC - u.KillC)
	if ageDays < youngDays {
		return u.KillYoungC + gain
	}
	return u.KillC + gain
}

// FirstHurtC returns the air minimum under which the first plants of a stand die [C],
// from the one that kills half of it.
func FirstHurtC(lethalC float64) float64 { return lethalC + coldDamageToC }

// coldCheckC is the air minimum above which no stage of the crop can be hurt,
// so that warm nights cost nothing.
func coldCheckC(u *crop.Use) float64 { return max(u.KillYoungC, u.KillC) + coldDamageToC }

// LostToCold returns the share of the living that a night kills: none a degree
// above the lethal temperature, all a degree below.
func LostToCold(lethalC, minimumC float64) float64 {
	return min(1, max(0, (lethalC+coldDamageToC-minimumC)/(2*coldDamageToC)))
}
