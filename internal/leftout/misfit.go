package leftout

import (
	"math"

	"garner/internal/printed"
)

// The price of a date. It rises with the logarithm of the days it is off, since a
// date brought home is worth more than one brought from six weeks to five, by a
// little more with the days themselves, up to farDays, and by one where it leaves
// the days that count as agreement. A date without a window is as far as can be.
const (
	nearDays  = 5.0
	nearPrice = 1.2 // of the logarithm at farDays
	dayPrice  = 0.01
	farDays   = 50.0
	edgeDays  = 7.0 // over which the step at the end of agreement is spread
	pullPrice = 1.2 // of leaving a prior by one spread
)

// misfit adds up the prices of the counted dates.
func misfit(rows []printed.Row) float64 {
	sum := 0.0
	for i := range rows {
		if r := &rows[i]; r.Counted {
			sum += price(r)
		}
	}
	return sum
}

func price(r *printed.Row) float64 {
	off := farDays
	if r.Answer {
		off = min(farDays, float64(max(r.Off, -r.Off)))
	}
	near := nearPrice * math.Log1p(off/nearDays) / math.Log1p(farDays/nearDays)
	return near + dayPrice*off + min(1, max(0, (off-printed.Within)/edgeDays))
}

// pull is the price of leaving the priors.
func pull(free []Free, values []float64) float64 {
	sum := 0.0
	for i, f := range free {
		z := (values[i] - f.Prior) / f.Spread
		sum += z * z
	}
	return pullPrice * sum
}
