package desk

import (
	"encoding/json"
	"math"
	"runtime"
	"slices"
	"sync"

	"garner/internal/cal"
	"garner/internal/climate"
	"garner/internal/cover"
	"garner/internal/crop"
	"garner/internal/fault"
	"garner/internal/growth"
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
	answers, err := o.yearAnswers(q)
	if err != nil {
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

// yearAnswer is the window of one way of starting under one cover.
type yearAnswer struct {
	Method string
	Cover  cover.Kind
	window.Answer
}

func (o *Office) yearAnswers(q *yearQuestion) ([]yearAnswer, error) {
	if known := o.views.year(q.name); known != nil {
		return known, nil
	}
	var answers []yearAnswer
	if text, ok, err := o.keeper.Result(q.name); err == nil && ok && json.Unmarshal(text, &answers) == nil {
		o.views.keepYear(q.name, answers)
		return answers, nil
	}
	o.yearing.Lock() // who asks for the same meanwhile finds it
	defer o.yearing.Unlock()
	if known := o.views.year(q.name); known != nil {
		return known, nil
	}
	answers, err := q.answers()
	if err != nil {
		return nil, err
	}
	o.views.keepYear(q.name, answers)
	text, err := json.Marshal(answers)
	if err == nil {
		err = o.keeper.Keep(q.name, text)
	}
	return answers, err
}

// answers works all windows out, the covers shared out among the processors.
func (q *yearQuestion) answers() ([]yearAnswer, error) {
	methods := q.use.Methods
	out := make([]yearAnswer, len(q.covers)*len(methods))
	faults := make([]error, len(q.covers))
	next := make(chan int)
	var workers sync.WaitGroup
	for range min(len(q.covers), runtime.GOMAXPROCS(0)) {
		workers.Add(1)
		go func() {
			defer workers.Done()
			for k := range next {
				faults[k] = q.under(k, out)
			}
		}()
	}
	for k := range q.covers {
		next <- k
	}
	close(next)
	workers.Wait()
	for _, err := range faults {
		if err != nil {
			return nil, err
		}
	}
	return out, nil
}

// fineChance is how finely the chance of a day is kept.
const fineChance = 1e4

// under answers for every way of starting under one cover.
func (q *yearQuestion) under(k int, out []yearAnswer) error {
	at, err := window.GeneratedPlace(q.site.Location, q.normals, pageSeed, window.UsualYears, 1, q.covers[k])
	if err != nil {
		return err
	}
	for m, method := range q.use.Methods {
		a := window.Find(window.Question{Use: q.use, Start: growth.StartOf(method), Place: at, Years: window.UsualYears, Chance: window.UsualChance})
		for i, c := range a.ByDay {
			a.ByDay[i] = math.Round(c*fineChance) / fineChance // short in what is kept
		}
		out[m*len(q.covers)+k] = yearAnswer{method, q.covers[k], a}
	}
	return nil
}
