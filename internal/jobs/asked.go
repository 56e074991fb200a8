package jobs

import (
	"slices"

	"garner/internal/cal"
)

// askAfter is how long a job that comes once is told after its best day before it is
// asked whether it was done [d]: the list of the week before told it. Judgement.
const askAfter = 7

// askedAfter are the works under which jobs are asked after, in the order in which they
// are asked; the first is none.
var askedAfter = []string{"", "starts", "seedlings", "care", "covers", "harvest"}

// Past are jobs of one kind of work whose day went by without a word.
type Past struct {
	Work        string // starts, seedlings, care, covers, harvest
	Jobs        []Job  // by their day
	First, Last cal.Date
}

// Ask parts what is to be done from what is overdue so long that it is asked whether it
// was done. What comes again, what any day of a season will do for, and what somebody put
// off is told as long as it makes sense.
func Ask(all []Job, today cal.Date) (now []Job, past []Past) {
	by := map[string][]Job{}
	for _, j := range all {
		if j.asked == "" || j.again || j.Season || j.PutOff.IsSet() || j.Best >= today-askAfter {
			now = append(now, j)
			continue
		}
		by[j.asked] = append(by[j.asked], j)
	}
	for _, work := range askedAfter {
		found := by[work]
		if len(found) == 0 {
			continue
		}
		slices.SortStableFunc(found, func(a, b Job) int { return int(a.Best - b.Best) })
		past = append(past, Past{work, found, found[0].Best, found[len(found)-1].Best})
	}
	return now, past
}
