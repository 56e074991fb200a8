package desk

import (
	"math"

	"garner/internal/words"
)

// nearTheBest is the share below which nobody would speak of a better year. Judgement.
const nearTheBest = 0.005

// Better says how much better than a draft a year could be at most, as the search knows it:
// by how much less could lack, go over or be worked for, as a share of what does.
func Better(objective, bound float64) words.Phrase {
	switch share := betterShare(objective, bound); {
	case !(share < 1-nearTheBest): // a bound of hardly anything tells nothing
		return words.P("desk.draft_better_unknown", nil)
	case share < nearTheBest:
		return words.P("desk.draft_best", nil)
	default:
		return words.P("desk.draft_better", words.Args{"share": share})
	}
}

// betterShare is the share, 0-1, that an objective could be lower; not a number when no bound
// is known. Nothing that is counted is ever below nought, whatever the bound.
func betterShare(objective, bound float64) float64 {
	switch {
	case math.IsInf(bound, 0) || math.IsNaN(bound) || math.IsNaN(objective):
		return math.NaN()
	case objective <= 0:
		return 0
	}
	return max(0, objective-max(0, bound)) / objective
}
