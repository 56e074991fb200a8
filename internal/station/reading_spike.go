package station

import (
	"math"

	"garner/internal/fault"
	"garner/internal/words"
)

// spikeFilter holds readings back by one, so that a temperature that jumps away
// and back again within hours is left out before its day is summed.
type spikeFilter struct {
	before, held *Reading
	pass         func(*Reading)
	report       *Report
	name, column string
}

// add takes the next reading in order of time.
func (f *spikeFilter) add(r Reading) {
	if f.held != nil {
		f.settle(&r)
	}
	f.before, f.held = f.held, &r
}

// settle passes the reading held back on, once the one after it is known.
func (f *spikeFilter) settle(after *Reading) {
	if b := f.before; b != nil && near(b, f.held) && near(f.held, after) && away(b.TempC, f.held.TempC, after.TempC) {
		f.report.Doubtful = append(f.report.Doubtful, fault.New(fault.Invalid, "station.spike_left_out",
			words.Args{"before": b.TempC, "given": f.held.TempC, "after": after.TempC}).
			In(fault.Place{File: f.name, Row: f.held.Row, Column: f.column}))
		f.held.TempC = math.NaN()
	}
	f.pass(f.held)
}

// flush passes on what is still held back.
func (f *spikeFilter) flush() {
	if f.held != nil {
		f.pass(f.held)
	}
	f.before, f.held = nil, nil
}

// near tells readings that follow each other within three hours.
func near(a, b *Reading) bool { return b.At-a.At <= 3*3600 && b.At > a.At }

// away tells whether a temperature stands far from both its neighbours, which
// are close to each other.
func away(before, now, after float64) bool {
	up, down := now-before, now-after
	return math.Abs(up) >= jumpC && math.Abs(down) >= jumpC/2 && up*down > 0 && math.Abs(after-before) < jumpC/2
}
