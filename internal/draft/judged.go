package draft

import "math"

// What a draft weighs against each other. A portion that lacks costs 1.
//
// judgement: a portion that goes over is a pity, not a loss; an hour of work is
// worth a portion or two, so that work decides only between plans that feed alike.
const (
	overPortion = 0.02
	hourCost    = 1.0
)

// The least odds of a usable crop, and the share of futures in which the soil must
// be warm enough, as for advice on a single space.
const (
	leastOdds = 0.5
	leastWarm = 0.8
)

// clearShare is the share of futures in which a planting is over by the day on which
// the draft clears it. judgement: in the fifth it is cleared while something is left.
const clearShare = 0.8

// soonDays is how long a crop that is taken all at once still stands after it is
// ready in clearShare of the futures [d]. judgement: two weeks to get to it.
const soonDays = 14

// mostOfIt is the share of a picking after which its ground may be wanted for
// something else. judgement.
const mostOfIt = 2.0 / 3

const (
	daysMonth = 365.25 / 12
	weeksYear = 365.25 / 7
)

// Kilograms are rounded to four decimals and costs to six, so that they are the
// same numbers in a file of the programme.
func roundKg(x float64) float64   { return math.Round(x*1e4) / 1e4 }
func roundCost(x float64) float64 { return math.Round(x*1e6) / 1e6 }
