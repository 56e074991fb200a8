package outlook

import (
	"garner/internal/cal"
	"garner/internal/record"
)

// happened is what the records say of a planting's place in time.
type happened struct {
	planted, gone cal.Date
	lifted        bool // on the day it is gone it was lifted, to go on elsewhere
	shares        int  // times that only a share of it was lifted
}

// history is what happened, by planting.
type history map[string]happened

// of returns what happened to a planting; nothing when nobody recorded it.
func (h history) of(planting string) happened {
	if known, ok := h[planting]; ok {
		return known
	}
	return happened{planted: cal.None, gone: cal.None}
}

// recorded gathers when plantings really went in and came out.
func recorded(records []record.Record) history {
	out := history{}
	for _, r := range records {
		if r.Planting == "" {
			continue
		}
		h := out.of(r.Planting)
		switch r.What {
		case record.Planted:
			h.planted = r.Date
		case record.Cleared:
			h.end(r.Date, false)
		case record.Moved:
			if r.Unit == "" {
				h.end(r.Date, true)
			} else {
				h.shares++
			}
		}
		out[r.Planting] = h
	}
	return out
}

// end takes a day on which all of it was taken off its ground: the first counts.
func (h *happened) end(on cal.Date, lifted bool) {
	if !h.gone.IsSet() || on < h.gone {
		h.gone, h.lifted = on, lifted
	}
}
