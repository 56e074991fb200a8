package desk

import (
	"slices"
	"time"

	"garner/internal/cal"
	"garner/internal/climate"
	"garner/internal/cover"
	"garner/internal/crop"
	"garner/internal/fault"
	"garner/internal/holding"
	"garner/internal/num"
	"garner/internal/place"
	"garner/internal/window"
	"garner/internal/words"
)

// CropYear tells when a use can be started at a site and when it is ready, by
// each way of starting and each cover. Its days are laid out from the day on
// which the fewest windows are cut in two.
type CropYear struct {
	Site    SiteName
	From    cal.Date // first day of a month, at most a year before today
	Wanted  float64  // chance of a usable crop that a window has at least
	Starts  []StartView
	Pattern crop.Pattern
}

// StartView is one way of starting under one cover.
type StartView struct {
	Method string
	Cover  string
	Chance []float64 // by day from From, a year of days
	Spells []SpellView
	Best   float64
	BestOn cal.Date
	Same   string // an earlier cover under which the dates are much the same; empty: none
}

// SpellView is one window of the year with the harvest it leads to.
type SpellView struct {
	First, Last        cal.Date // of sowing or planting
	ReadyFrom, ReadyTo cal.Date // ready in the middle year from the first and from the last of it
	Early, Late        [10]cal.Date
	Chance             float64
}

// yearForm names the form in which years are kept; another form is another name.
const yearForm = "crop year 1"

// CropYear answers for a use of a crop at a site; "" is the common use, and the
// first site. A year asked before from the same weather and numbers is not
// computed again.
func (o *Office) CropYear(id, useName, siteID string) (*CropYear, error) {
	return o.CropYearWithin(id, useName, siteID, forEver)
}

// forEver is longer than anybody waits.
const forEver = 100 * time.Hour

// CropYearWithin is CropYear for somebody who waits so long and no longer: the
// year is nil when it is still being worked out then, and found the next time.
func (o *Office) CropYearWithin(id, useName, siteID string, patience time.Duration) (*CropYear, error) {
	h, err := o.Holding()
	if err != nil {
		return nil, err
	}
	b, err := bookOf(h)
	if err != nil {
		return nil, err
	}
	_, u, err := useOf(b, id, useName)
	if err != nil {
		return nil, err
	}
	now, err := today(h)
	if err != nil {
		return nil, err
	}
	q, err := yearAsked(h, b, u, siteID)
	if err != nil {
		return nil, err
	}
	answers, err := o.yearAnswers(q, patience)
	if err != nil || answers == nil {
		return nil, err
	}
	return q.laidOut(answers, now), nil
}

// yearQuestion is what the year of a use is worked out from.
type yearQuestion struct {
	use     *crop.Use
	site    place.Site
	normals climate.Normals
	covers  []cover.Kind
	name    num.Digest
}

func yearAsked(h *holding.Holding, b *crop.Book, u *crop.Use, siteID string) (*yearQuestion, error) {
	q := &yearQuestion{use: u}
	at := slices.IndexFunc(h.Sites, func(s place.Site) bool { return s.ID == siteID || siteID == "" })
	if at < 0 {
		return nil, fault.New(fault.NotFound, "desk.site_unknown", words.Args{"site": siteID})
	}
	q.site = h.Sites[at]
	normals, err := normalsAt(h, q.site)
	if err != nil {
		return nil, err
	}
	q.normals, q.covers = normals, coversAt(h, q.site.ID)
	q.name = q.digest(b)
	return q, nil
}

// normalsAt are the monthly normals of a site: its own, else those of its record.
func normalsAt(h *holding.Holding, s place.Site) (climate.Normals, error) {
	for i := range h.Weather {
		switch w := &h.Weather[i]; {
		case w.ID != s.Weather:
		case w.Normals != nil:
			return *w.Normals, nil
		case w.Record != nil:
			return climate.NormalsOf(w.Record)
		}
	}
	return climate.Normals{}, fault.New(fault.NotFound, "desk.site_weather", words.Args{"site": s.Name})
}

// usualCovers are asked about where a household has none of its own.
var usualCovers = []cover.Kind{cover.Fleece, cover.Cloche, cover.Tunnel}

// coversAt are the open ground and every cover that the beds of a site have had or
// will have, in the order of the documents.
func coversAt(h *holding.Holding, siteID string) []cover.Kind {
	beds := map[string]bool{}
	for _, b := range h.Beds {
		beds[b.ID] = b.Site == siteID
	}
	own := map[cover.Kind]bool{cover.Open: true}
	for _, c := range h.Covers {
		if beds[c.Bed] {
			own[c.Kind] = true
		}
	}
	if len(own) == 1 {
		for _, k := range usualCovers {
			own[k] = true
		}
	}
	return slices.DeleteFunc(cover.Kinds(), func(k cover.Kind) bool { return !own[k] })
}

// digest names all that the answers depend on.
func (q *yearQuestion) digest(b *crop.Book) num.Digest {
	d := num.NewDigester(yearForm)
	for _, v := range []float64{q.site.Location.LatitudeDeg, q.site.Location.LongitudeDeg, q.site.Location.ElevationM, window.UsualChance} {
		d.Float(v)
	}
	d.Int(window.UsualYears)
	for _, m := range q.normals {
		for _, v := range []float64{m.TMinC, m.TMaxC, m.RainMM} {
			d.Float(v)
		}
		for _, v := range []climate.Maybe{m.SunH, m.RadiationMJ, m.HumidityPct, m.WindMS} {
			d.Float(v.Value)
			if v.Known {
				d.Int(1)
			}
		}
	}
	for _, text := range append([]string{q.use.Crop, q.use.Name, string(q.use.Pattern)}, q.use.Methods...) {
		d.Text(text)
	}
	for _, p := range b.Parameters() {
		d.Float(q.use.Fact(p.Name).Value)
	}
	for _, k := range q.covers {
		d.Text(string(k))
	}
	return d.Sum()
}
