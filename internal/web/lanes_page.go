package web

import (
	"net/http"
	"net/url"
	"slices"
	"strings"

	"garner/internal/cal"
	"garner/internal/desk"
	"garner/internal/plan"
	"garner/internal/words"
)

// groundAt is what the page of the ground shows, as its address tells it.
type groundAt struct {
	site  string // empty: the first
	bed   string // selected; empty: none
	day   cal.Date
	tried []plan.Change
}

// path is the address with what is tried.
func (a groundAt) path() string { return withTried(a.bare(), a.tried) }

// bare is the address without what is tried.
func (a groundAt) bare() string {
	q := url.Values{}
	for name, value := range map[string]string{"site": a.site, "bed": a.bed, "at": a.day.String()} {
		if value != "" && a.day.IsSet() || name != "at" && value != "" {
			q.Set(name, value)
		}
	}
	if len(q) == 0 {
		return "/ground"
	}
	return "/ground?" + q.Encode()
}

func (a groundAt) withBed(bed string) groundAt         { a.bed = bed; return a }
func (a groundAt) onDay(day cal.Date) groundAt         { a.day = day; return a }
func (a groundAt) trying(tried []plan.Change) groundAt { a.tried = tried; return a }
func (a groundAt) setting(id, field, to string) groundAt {
	return a.trying(withChange(a.tried, plan.Change{Action: "set", Planting: id, Field: field, Value: to}))
}

// groundBody is what the page of the ground is given.
type groundBody struct {
	Title, By   string
	Site        string
	Lead        string
	Today       cal.Date
	Sites       []siteLink
	Plan, Phone string // drawings of the plan
	Undrawn     []nameLink
	Drawn       bool
	Planted     bool // something stands or is planned in some bed
	Paths       groundPaths
	Day         dayLinks
	Axis, Line  string // drawings
	Lanes       []laneRow
	Bed         *groundBed
	Wrongs      []string
	Twin        []twinBed
	Tried       *triedBody
	Beds        int
	Frost       string // tonight's alarm; empty: none
}

// siteLink leads to the ground of a site.
type siteLink struct {
	Name, Path string
	Here       bool
}

// groundPaths lead on from the ground.
type groundPaths struct{ Draw, Light, Free, Beds string }

// dayLinks move the plan's date.
type dayLinks struct {
	At                    string
	Earlier, Later, Today string
}

// laneRow is one bed's year.
type laneRow struct {
	ID, Name, Path string
	Under          string // a cover that is always there
	Draw           string
	Chosen         bool
	Key            string // of all that is shown of it but where it leads
	Same           bool   // it is on the screen already
}

// twinBed is a bed's year in words.
type twinBed struct{ Name, Path, Text string }

// groundYear shows the plan of a site on a day, and the year in its beds.
func groundYear(v *visit) error {
	at, err := v.groundAt()
	if err != nil {
		return err
	}
	var wrong map[string]words.Phrase
	if v.query("change") != "" {
		if at.bed, wrong, err = v.tryGround(at); err != nil || len(wrong) == 0 {
			return err
		}
	}
	b, err := v.groundBody(at)
	if err != nil {
		return err
	}
	if b.Frost, err = v.frostAlarm(); err != nil {
		return err
	}
	p := page{Name: "ground", Nav: "ground", Body: b}
	if len(wrong) > 0 {
		b.Bed.typed(v.r.URL.Query(), wrong)
		p.Status = http.StatusUnprocessableEntity
	}
	return v.showPart(p)
}

// groundAt reads the address.
func (v *visit) groundAt() (groundAt, error) {
	tried, faults := readTried(v.r.URL.Query())
	if len(faults) > 0 {
		return groundAt{}, faults
	}
	at := groundAt{site: v.query("site"), bed: v.query("bed"), day: cal.None, tried: tried}
	if day, err := cal.Parse(v.query("at")); err == nil {
		at.day = day
	}
	return at, nil
}

// tryGround reads a form that tries a change and leads to the address with it. What
// is wrong is told on the bed it was tried from.
func (v *visit) tryGround(at groundAt) (bed string, wrong map[string]words.Phrase, err error) {
	g, err := v.grown(at.tried)
	if err != nil {
		return "", nil, err
	}
	query := v.r.URL.Query()
	p, known := g.plantings[query.Get("change")]
	if !known {
		return "", nil, plantingUnknown(query.Get("change"))
	}
	tried, wrong := g.changed(p, query, at.tried)
	if len(wrong) == 0 {
		v.moveTo(at.trying(g.tidy(tried)).path())
	}
	return p.Bed, wrong, nil
}

func (v *visit) groundBody(at groundAt) (*groundBody, error) {
	g, err := v.grown(at.tried)
	if err != nil {
		return nil, err
	}
	at.tried = g.tidy(at.tried)
	view, err := v.office.GroundYearView(at.site, at.tried)
	if err != nil {
		return nil, err
	}
	g.today = view.Today
	shown := &groundShown{visit: v, at: at, view: view, g: g, touched: touchedBy(at.tried), day: view.Today}
	if v.r.Header.Get(fragmentHeader) != "" {
		shown.have = strings.Fields(v.r.Header.Get(haveHeader))
	}
	if at.day.IsSet() {
		shown.day = max(view.From, min(at.day, view.From+cal.Date(7*view.Weeks)-1))
	}
	if shown.light, err = v.office.GroundLight(view.Site.ID, shown.day.Month()); err != nil {
		return nil, err
	}
	return shown.body()
}

// groundShown is the page of the ground being made.
type groundShown struct {
	*visit
	at      groundAt
	view    *desk.GroundYearView
	g       *grown
	touched map[string]bool
	day     cal.Date // of the plan
	light   *desk.ShadeView
	have    []string // keys of lanes that are on the screen
}

func (s *groundShown) body() (*groundBody, error) {
	view := s.view
	site := "?site=" + url.QueryEscape(view.Site.ID)
	b := &groundBody{Title: view.Site.Name, Site: view.Site.ID, By: s.sizeWords(), Lead: s.lead(), Today: view.Today, Drawn: view.Drawn, Beds: len(view.Beds),
		Paths: groundPaths{"/ground/draw" + site, "/ground/light" + site, "/ground/free" + site, "/beds"}}
	for i, site := range view.Sites {
		id := site.ID
		if i == 0 {
			id = ""
		}
		b.Sites = append(b.Sites, siteLink{site.Name, groundAt{site: id, day: s.at.day, bed: "", tried: s.at.tried}.path(), site.ID == view.Site.ID})
	}
	b.Plan, b.Phone = s.plan(planWidth), s.plan(planPhone)
	b.Day = dayLinks{At: s.dayWords(s.day), Earlier: s.at.onDay(s.day - 7).path(), Later: s.at.onDay(s.day + 7).path(), Today: s.at.onDay(cal.None).path()}
	b.Axis, b.Line = s.axis()
	for _, bed := range view.Beds {
		if !bed.At.IsSet() {
			b.Undrawn = append(b.Undrawn, nameLink{bed.Name, s.at.withBed(bed.ID).path()})
		}
		b.Planted = b.Planted || len(bed.Held) > 0
		b.Lanes = append(b.Lanes, s.laneRow(bed))
		b.Twin = append(b.Twin, twinBed{bed.Name, bedPath(bed.ID), s.bedYearWords(bed)})
		b.Wrongs = append(b.Wrongs, s.wrongWords(bed)...)
	}
	if at := slices.IndexFunc(view.Beds, func(y *desk.BedYear) bool { return y.ID == s.at.bed }); at >= 0 {
		b.Bed = s.bed(view.Beds[at])
	}
	if len(s.at.tried) == 0 {
		return b, nil
	}
	var err error
	b.Tried, err = s.compared()
	return b, err
}
