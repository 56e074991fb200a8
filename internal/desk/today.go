package desk

import "garner/internal/cal"

// Today is the day the household takes for today.
func (o *Office) Today() (cal.Date, error) {
	h, err := o.Holding()
	if err != nil {
		return cal.None, err
	}
	return today(h)
}
