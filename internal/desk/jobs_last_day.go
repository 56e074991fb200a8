package desk

import (
	"garner/internal/cal"
	"garner/internal/climate"
	"garner/internal/cover"
	"garner/internal/crop"
	"garner/internal/growth"
	"garner/internal/holding"
	"garner/internal/num"
	"garner/internal/place"
	"garner/internal/plan"
	"garner/internal/window"
)

// How the last sensible days are looked for: told to about the week, so fewer years and
// sowings than the pages of crops ask for will do.
const (
	lastDayYears = 30
	lastDayStep  = 7
	longCovered  = 150 // days from which a cover counts as that of the whole season
	earlyBy      = 60  // days before a window that a sowing may lie and still belong to it
)

// lastDays finds until when plantings of a holding can be put in with a fair chance, by
// the windows of their crops at their place.
type lastDays struct {
	holding *holding.Holding
	book    *crop.Book
	sites   map[string]*place.Site // of a bed
	normals map[string]*climate.Normals
	places  map[string]*window.Place
	memory  *recent[num.Digest, []window.Window]
}

func newLastDays(h *holding.Holding, b *crop.Book, m *recent[num.Digest, []window.Window]) *lastDays {
	l := &lastDays{holding: h, book: b, sites: map[string]*place.Site{}, normals: map[string]*climate.Normals{}, places: map[string]*window.Place{}, memory: m}
	for i := range h.Beds {
		for k := range h.Sites {
			if h.Sites[k].ID == h.Beds[i].Site {
				l.sites[h.Beds[i].ID] = &h.Sites[k]
			}
		}
	}
	return l
}

// of is the last day on which a planting can be put in; false where no window holds the
// day the plan has.
func (l *lastDays) of(p *plan.Planting) (cal.Date, bool) {
	site := l.sites[p.Bed]
	c, known := l.book.Crop(p.Crop)
	if site == nil || !known {
		return cal.None, false
	}
	u, err := c.Use(p.Use)
	if err != nil || !u.Feeds() || u.Pattern == crop.Perennial || len(u.Methods) == 0 {
		return cal.None, false
	}
	method := string(p.Method)
	if method == "" {
		method = u.Methods[0]
	}
	windows, err := l.windows(site, u, method, l.coverOf(p))
	if err != nil {
		return cal.None, false // the pages of crops tell what is wrong with the weather
	}
	return lastIn(windows, p.Date)
}

// lastIn is the end of the window that holds a day, or into which it is early.
func lastIn(windows []window.Window, date cal.Date) (cal.Date, bool) {
	for _, w := range windows {
		for year := date.Year() - 1; year <= date.Year()+1; year++ {
			first := cal.MonthDayOf(w.First).In(year)
			last := first + cal.Date((w.Last-w.First+365)%365)
			if first-earlyBy <= date && date <= last {
				return last, true
			}
		}
	}
	return cal.None, false
}

// coverOf is the cover under which a planting spends its season.
func (l *lastDays) coverOf(p *plan.Planting) cover.Kind {
	for _, s := range place.CoversOf(l.holding.Covers, p.Bed) {
		if s.On <= p.Date && (!s.Off.IsSet() || s.Off >= p.Date+longCovered) {
			return s.Kind
		}
	}
	return cover.Open
}

func (l *lastDays) windows(site *place.Site, u *crop.Use, method string, kind cover.Kind) ([]window.Window, error) {
	normals := l.normals[site.ID]
	if normals == nil {
		n, err := normalsAt(l.holding, *site)
		if err != nil {
			return nil, err
		}
		normals = &n
		l.normals[site.ID] = normals
	}
	q := yearQuestion{use: u, site: *site, normals: *normals}
	d := num.NewDigester("last day")
	d.Digest(q.digest(l.book))
	d.Text(method)
	d.Text(string(kind))
	key := d.Sum()
	if found, ok := l.memory.get(key); ok {
		return found, nil
	}
	at := l.places[site.ID+"/"+string(kind)]
	if at == nil {
		var err error
		if at, err = window.GeneratedPlace(site.Location, *normals, pageSeed, lastDayYears, 1, kind); err != nil {
			return nil, err
		}
		l.places[site.ID+"/"+string(kind)] = at
	}
	found := window.Find(window.Question{Use: u, Start: growth.StartOf(method), Place: at, Years: lastDayYears, Step: lastDayStep, Chance: window.UsualChance})
	l.memory.keep(key, found.Windows)
	return found.Windows, nil
}
