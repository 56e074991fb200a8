package desk

import (
	"net/url"
	"time"

	"garner/internal/holding"
	"garner/internal/observed"
	"garner/internal/words"
)

// AddressState is how fetching from an address goes.
type AddressState struct {
	ID     string        `json:"id"`
	Host   string        `json:"host"` // never the whole address: it may hold a key
	On     bool          `json:"on"`
	GotAt  *time.Time    `json:"got_at"`
	Tried  *time.Time    `json:"tried_at"`
	Next   *time.Time    `json:"next_at"`
	Fails  int           `json:"failures"`
	Days   int           `json:"days"`
	Under  bool          `json:"under_way"`
	Why    *words.Phrase `json:"-"`
	EveryH int           `json:"every_h"`
}

// addressStates are those of a site.
func (o *Office) addressStates(h *holding.Holding, site string) []AddressState {
	out := []AddressState{}
	k, can := o.keeper.(WeatherKeeper)
	for i := range h.Addresses {
		a := &h.Addresses[i]
		if a.Site != site {
			continue
		}
		s := AddressState{ID: a.ID, Host: hostOf(a.URL), On: a.On == observed.Yes, EveryH: a.EveryH, Days: len(h.Fetched[a.ID].Days)}
		if can {
			kept, err := k.Fetched(a.ID)
			if err == nil && kept != nil && kept.URL == a.URL {
				s.GotAt, s.Tried, s.Fails, s.Why = moment(kept.GotAt, h), moment(kept.TriedAt, h), kept.Failures, kept.Why
				next := nextFetch(a, kept).In(zoneOf(h))
				s.Next = &next
			}
		}
		s.Under = s.On && o.fetching.under.Load()
		out = append(out, s)
	}
	return out
}

func hostOf(address string) string {
	u, err := url.Parse(address)
	if err != nil || u.Host == "" {
		return "?"
	}
	return u.Host
}

// moment is a time in the household's zone; nil when it never was.
func moment(at int64, h *holding.Holding) *time.Time {
	if at == 0 {
		return nil
	}
	t := time.Unix(at, 0).In(zoneOf(h))
	return &t
}
