// Package ground holds what a bed's soil does to what grows on it.
package ground

// WeightFactor returns how the state of a bed's soil scales weight: poor,
// fair, good; anything else counts as fair.
//
// judgement: the published gap between low and good yields of one crop is about
// two to one, of which we give soil state the smaller part; records of the
// grower replace it.
func WeightFactor(state string) float64 {
	switch state {
	case "poor":
		return 0.75
	case "good":
		return 1.15
	}
	return 1
}
