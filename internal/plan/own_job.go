package plan

import "garner/internal/cal"

// OwnJob is a job of the grower's own, once or again and again.
type OwnJob struct {
	ID       string
	Name     string // what is to be done, in the grower's words
	Site     string // empty: that of the bed, or the first
	Bed      string // empty: of the site as a whole
	Planting string // empty: of none
	Date     cal.Date
	EveryD   int      // days from one turn to the next; 0: once
	Until    cal.Date // last day of a job that comes again; None: no end
	Minutes  float64  // 0: not told
	Who      string   // child, newcomer, grown; empty: newcomer
}
