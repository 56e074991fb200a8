// Package desk holds the use cases: what the command line and the pages ask of
// the engine. It owns the clock and the crop book that the engine is given.
package desk

import (
	"sync"
	"time"

	"garner/internal/cal"
	"garner/internal/crop"
	"garner/internal/fault"
	"garner/internal/holding"
	"garner/internal/sun"
)

// Site is the place a question is asked for.
type Site = sun.Location

// book is the crop book, read when it is first asked for.
var book = sync.OnceValues(crop.Load)

// bookOf returns the book with a holding's own numbers.
func bookOf(h *holding.Holding) (*crop.Book, error) {
	b, err := book()
	if err != nil || len(h.Overrides) == 0 {
		return b, err
	}
	own, faults := b.With(h.Overrides)
	if len(faults) > 0 {
		return nil, faults
	}
	return own, nil
}

// today returns the day a holding takes for today: its own, or the clock's in
// its time zone.
func today(h *holding.Holding) (cal.Date, error) {
	if h.Today.IsSet() {
		return h.Today, nil
	}
	zone, err := time.LoadLocation(h.Zone)
	if err != nil {
		return cal.None, fault.New(fault.Invalid, "desk.zone", map[string]any{"zone": h.Zone})
	}
	y, m, d := time.Now().In(zone).Date()
	return cal.Of(y, int(m), d), nil
}
