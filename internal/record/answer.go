package record

import "garner/internal/cal"

// Did is what became of a job. The list is closed and documented.
type Did string

// What may become of a job.
const (
	Done    Did = "done"
	PutOff  Did = "put off" // until a day
	Skipped Did = "skipped" // this turn is left out
	Dropped Did = "dropped" // it is not to be told again
	Kept    Did = "kept"    // asked whether to drop it: no
)

// Answer is what a grower said of one job.
type Answer struct {
	ID      string
	Date    cal.Date // the day it was said, or done
	Job     string   // id of the job
	Did     Did
	Until   cal.Date // of what is put off: the day it is put off to
	Minutes float64  // it really took; 0: not told
	Note    string
}
