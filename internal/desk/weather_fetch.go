package desk

import (
	"bytes"
	"context"
	"errors"
	"sync"
	"sync/atomic"
	"time"

	"garner/internal/cal"
	"garner/internal/climate"
	"garner/internal/fault"
	"garner/internal/holding"
	"garner/internal/observed"
	"garner/internal/station"
	"garner/internal/words"
)

// FetchAsk asks for what an address serves, unless it is what is known already.
type FetchAsk struct{ URL, Tag, Modified string }

// FetchAnswer is what it served.
type FetchAnswer struct {
	Body          []byte
	Tag, Modified string
	Unchanged     bool // what is known still stands
}

// Fetch gets what an address serves. Package fetch has one.
type Fetch func(ctx context.Context, ask FetchAsk) (*FetchAnswer, error)

// fetching is what an office knows of forecasts that are fetched.
type fetching struct {
	mu       sync.Mutex
	known    map[string]parsed // by address
	of       *holding.Holding  // the holding as kept, and with the forecasts in it
	at       int64
	with     *holding.Holding
	revision atomic.Int64 // rises with every forecast that changed
	under    atomic.Bool  // one is under way
	wake     chan struct{}
}

// parsed is a forecast with what it was read from.
type parsed struct {
	got      int64
	url      string
	forecast observed.Forecast
	err      error
}

// withFetched lays the forecasts that were fetched over a holding.
func (o *Office) withFetched(h *holding.Holding) *holding.Holding {
	k, can := o.keeper.(WeatherKeeper)
	if !can || !anyOn(h) {
		return h
	}
	f := &o.fetching
	f.mu.Lock()
	defer f.mu.Unlock()
	if f.of == h && f.at == f.revision.Load() {
		return f.with
	}
	own := *h
	own.Fetched = map[string]observed.Forecast{}
	for i := range h.Addresses {
		a := &h.Addresses[i]
		if p := f.read(k, h, a); a.On == observed.Yes && p.err == nil && len(p.forecast.Days) > 0 {
			own.Fetched[a.ID] = p.forecast
		}
	}
	own.Observe()
	f.of, f.at, f.with = h, f.revision.Load(), &own
	return &own
}

func anyOn(h *holding.Holding) bool {
	for i := range h.Addresses {
		if h.Addresses[i].On == observed.Yes {
			return true
		}
	}
	return false
}

// KeptHolding is a holding as it is kept, with the forecasts that were fetched and
// the hours that instruments sent.
func KeptHolding(k Keeper) (*holding.Holding, error) {
	h, _, err := k.Holding()
	if err != nil {
		return nil, err
	}
	h = NewOffice(k).withFetched(h)
	if !hearsWeather(h) {
		return h, nil
	}
	own := *h
	own.Heard, err = hoursHeard(k, h)
	return &own, err
}

// read is what an address gave last, read once.
func (f *fetching) read(k WeatherKeeper, h *holding.Holding, a *observed.Address) parsed {
	kept, err := k.Fetched(a.ID)
	if err != nil || kept == nil || kept.GotAt == 0 || kept.URL != a.URL {
		return parsed{err: err}
	}
	if f.known == nil {
		f.known = map[string]parsed{}
	}
	if p, known := f.known[a.ID]; known && p.got == kept.GotAt && p.url == a.URL+a.Layout+a.Map {
		return p
	}
	p := parsed{got: kept.GotAt, url: a.URL + a.Layout + a.Map}
	var r *climate.Record
	if r, p.err = readForecast(a, kept.Body, zoneOf(h)); p.err == nil {
		p.forecast = observed.Forecast{Made: madeOn(h, kept.GotAt), Days: r.Days}
	}
	f.known[a.ID] = p
	return p
}

// madeOn is the day on which a forecast was got: the household's own today where
// it has one.
func madeOn(h *holding.Holding, at int64) cal.Date {
	if h.Today.IsSet() {
		return h.Today
	}
	y, m, d := time.Unix(at, 0).In(zoneOf(h)).Date()
	return cal.Of(y, int(m), d)
}

func zoneOf(h *holding.Holding) *time.Location {
	zone, err := time.LoadLocation(h.Zone)
	if err != nil {
		return time.UTC
	}
	return zone
}

// readForecast reads what an address served.
func readForecast(a *observed.Address, body []byte, zone *time.Location) (*climate.Record, error) {
	if a.Layout == observed.MapJSON {
		m, err := station.ReadMap(a.Map)
		if err != nil {
			return nil, err
		}
		r, _, err := station.ReadJSON(body, "forecast", m, zone)
		return r, err
	}
	r, _, err := station.ReadDaily(bytes.NewReader(body), "forecast")
	return r, err
}

// The pauses after failures: twice as long each time.
const (
	firstPause = 10 * time.Minute
	mostPause  = 6 * time.Hour
)

// nextFetch is when an address is due.
func nextFetch(a *observed.Address, kept *FetchedForecast) time.Time {
	if kept == nil || kept.URL != a.URL || kept.TriedAt == 0 {
		return time.Time{}
	}
	pause := time.Duration(max(1, a.EveryH)) * time.Hour
	if kept.Failures > 0 {
		pause = min(mostPause, firstPause<<min(kept.Failures-1, 8))
	}
	return time.Unix(kept.TriedAt, 0).Add(pause)
}

// WakeFetch asks for all addresses at once, however short ago they were asked;
// it does not wait for them.
func (o *Office) WakeFetch() {
	select {
	case o.fetching.wake <- struct{}{}:
	default: // asked already
	}
}

// FetchForecasts fetches from all addresses that are due, until the context ends.
// It holds up nothing: pages show what is known.
func (o *Office) FetchForecasts(ctx context.Context, get Fetch, look time.Duration) {
	tick := time.NewTicker(look)
	defer tick.Stop()
	o.FetchDue(ctx, get, time.Now(), false)
	for {
		select {
		case <-ctx.Done():
			return
		case <-o.fetching.wake:
			o.FetchDue(ctx, get, time.Now(), true)
		case <-tick.C:
			o.FetchDue(ctx, get, time.Now(), false)
		}
	}
}

// FetchDue fetches from the addresses that are due at a moment, or from all.
func (o *Office) FetchDue(ctx context.Context, get Fetch, now time.Time, all bool) {
	k, can := o.keeper.(WeatherKeeper)
	h, err := o.Holding()
	if !can || err != nil {
		return // nothing is kept yet
	}
	o.fetching.under.Store(true)
	defer o.fetching.under.Store(false)
	for i := range h.Addresses {
		a := h.Addresses[i]
		kept, err := k.Fetched(a.ID)
		if a.On != observed.Yes || err != nil || !all && now.Before(nextFetch(&a, kept)) || ctx.Err() != nil {
			continue
		}
		if kept == nil || kept.URL != a.URL {
			kept = &FetchedForecast{Address: a.ID, URL: a.URL}
		}
		o.fetchOne(ctx, get, k, &a, *kept, now, zoneOf(h))
	}
}

func (o *Office) fetchOne(ctx context.Context, get Fetch, k WeatherKeeper, a *observed.Address, f FetchedForecast, now time.Time, zone *time.Location) {
	answer, err := get(ctx, FetchAsk{URL: a.URL, Tag: f.Tag, Modified: f.Modified})
	f.TriedAt = now.Unix()
	if err == nil && !answer.Unchanged {
		_, err = readForecast(a, answer.Body, zone)
	}
	if ctx.Err() != nil {
		return // stopped, which is nobody's failure
	}
	if err != nil {
		f.Failures++
		why := phraseOf(err)
		f.Why = &why
		_ = k.KeepFetched(f) // the state is shown as it was before
		return
	}
	f.Failures, f.Why, f.GotAt = 0, nil, now.Unix()
	if !answer.Unchanged {
		f.Body, f.Tag, f.Modified = answer.Body, answer.Tag, answer.Modified
	}
	if k.KeepFetched(f) == nil {
		o.fetching.revision.Add(1)
	}
}

// phraseOf says what is wrong.
func phraseOf(err error) words.Phrase {
	var one *fault.Error
	var many fault.List
	switch {
	case errors.As(err, &many) && len(many) > 0:
		return many[0].Phrase
	case errors.As(err, &one):
		return one.Phrase
	}
	return words.P("desk.fetch_failed", nil)
}
