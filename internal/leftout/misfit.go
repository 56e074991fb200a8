package leftout

import "garner/internal/printed"

// The price of a date: it rises by one for each easyDays it is off, up to
// farDays, and by one more where it leaves the days that count as agreement.
// A date without a window is as far as can be.
const (
	easyDays  = 25.0
	farDays   = 50.0
	edgeDays  = 7.0 // over which the step at the end of agreement is spread
	pullPrice = 0.4 // of leaving a prior by one spread, in dates
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
	return off/easyDays + min(1, max(0, (off-printed.Within)/edgeDays))
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
