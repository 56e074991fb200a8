package cli

import "garner/internal/desk"

// tableFlags say which table is asked for.
type tableFlags struct {
	From  string `placeholder:"DATE"`
	Weeks string `placeholder:"N"`
	Years string `placeholder:"N"`
	Seed  string `placeholder:"S"`
}

// The longest table and the most years of weather that are computed.
const (
	maxWeeks = 156
	maxYears = 2000
)

// options reads the flags.
func (t *tableFlags) options(f *flags) desk.OutlookOptions {
	return desk.OutlookOptions{From: f.date("--from", t.From), Weeks: f.whole("--weeks", t.Weeks, 1, maxWeeks, 0),
		Years: f.whole("--years", t.Years, 1, maxYears, 0), Seed: f.seed(t.Seed)}
}
