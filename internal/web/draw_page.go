package web

import (
	"net/http"
	"net/url"
	"strconv"
	"strings"

	"garner/internal/cal"
	"garner/internal/desk"
	"garner/internal/draw"
	"garner/internal/fault"
	"garner/internal/holding"
	"garner/internal/place"
	"garner/internal/words"
)

// drawnAt is what of the drawings is shown: a site, a thing chosen on it as
// table/id, and how close.
type drawnAt struct {
	site, pick string
	zoom       int
}

// drawPath is the address of the drawings.
const drawPath = "/ground/draw"

func (at drawnAt) query() string {
	q := url.Values{}
	for name, value := range map[string]string{"site": at.site, "pick": at.pick} {
		if value != "" {
			q.Set(name, value)
		}
	}
	if at.zoom > 1 {
		q.Set("zoom", strconv.Itoa(at.zoom))
	}
	if len(q) == 0 {
		return ""
	}
	return "?" + q.Encode()
}

func (at drawnAt) path() string                { return drawPath + at.query() }
func (at drawnAt) picking(pick string) drawnAt { at.pick = pick; return at }

// Path and Picking are addresses for the page's own links.
func (at drawnAt) Path() string               { return at.path() }
func (at drawnAt) Picking(pick string) string { return at.picking(pick).path() }
func (at drawnAt) Zoom() int                  { return at.zoom }

func (at drawnAt) zoomed(zoom int) drawnAt { at.zoom = zoom; return at }

// closest is how close a drawing can be looked at, as a multiple.
const closest = 8

// drawnAt reads the address.
func (v *visit) drawnAt() drawnAt {
	at := drawnAt{site: v.query("site"), pick: v.query("pick"), zoom: 1}
	if z, err := strconv.Atoi(v.query("zoom")); err == nil && z > 1 {
		at.zoom = min(z, closest)
	}
	return at
}

// drawBody is the page on which a site is drawn.
type drawBody struct {
	Site    place.Site
	At      drawnAt
	Sites   []drawnLink
	Drawn   bool // its plan has a size
	Says    string
	Today   cal.Date
	Drawing string
	Closer  string // addresses of the same closer and from further away, empty: as far as it goes
	Wider   string
	Steps   drawnSteps
	Chosen  *drawnChosen
	Plan    drawnChosen // the form of the plan's own size
	Open    bool        // that form is open
	Tray    []drawnWaiting
	Add     drawnAdd
	Odd     []drawnOddLine
	Beds    []drawnLine
	Stands  []drawnLine
	AreaM2  float64
	Problem []words.Phrase // what could not be done and belongs to nothing on the page
}

// drawnLink leads to the drawing of a site.
type drawnLink struct {
	Name, Path string
	Here       bool
}

// drawnOddLine is something worth a look.
type drawnOddLine struct {
	Path, Name string
	Says       words.Phrase
	Chosen     bool
}

// drawnLine is a thing in figures.
type drawnLine struct {
	Name, Path, Kind, Size, Place, Turn string
	AreaM2                              float64
}

// drawPage shows the drawing of a site.
func drawPage(v *visit) error { return v.showDrawing(v.drawnAt(), nil, nil) }

// drawnTyped is what was sent of a thing and could not be kept.
type drawnTyped struct {
	table, id string
	base      int64
	cells     map[string]string
	faults    fault.List
}

// showDrawing answers with the drawing; with what was typed where it could not be
// kept.
func (v *visit) showDrawing(at drawnAt, typed *drawnTyped, problem []words.Phrase) error {
	h, site, err := v.siteDrawn(&at)
	if err != nil {
		return err
	}
	s := &drawnSite{visit: v, holding: h, site: site, at: at, typed: typed}
	body, err := s.body()
	if err != nil {
		return err
	}
	body.Problem = append(body.Problem, problem...)
	p := page{Name: "draw", Nav: "ground", Body: body, Status: http.StatusOK}
	if typed != nil && len(typed.faults) > 0 || len(problem) > 0 {
		p.Status = http.StatusUnprocessableEntity
	}
	return v.showPart(p)
}

// siteDrawn is the site an address is about, which then names it: the one named,
// the one that what is chosen lies on, else the first.
func (v *visit) siteDrawn(at *drawnAt) (*holding.Holding, place.Site, error) {
	h, err := v.office.Holding()
	if err != nil {
		return nil, place.Site{}, err
	}
	id := at.site
	if table, row, _ := strings.Cut(at.pick, "/"); id == "" && table == "beds" {
		if b, known := bedWith(h, row); known {
			id = b.Site
		}
	}
	for _, s := range h.Sites {
		if s.ID == id || id == "" {
			at.site = s.ID
			return h, s, nil
		}
	}
	if id == "" {
		return nil, place.Site{}, fault.New(fault.NotFound, "web.draw_no_sites", nil)
	}
	return nil, place.Site{}, fault.New(fault.NotFound, "web.draw_no_site", words.Args{"given": id})
}

// drawnSite is a site on its way to a page.
type drawnSite struct {
	*visit
	holding  *holding.Holding
	site     place.Site
	at       drawnAt
	typed    *drawnTyped
	versions map[string]int64 // of the rows drawn, by table/id
}

// Sizes of the drawing at a zoom of 1 [px].
const (
	drawnWidth  = 900.0
	drawnHeight = 600.0
)

func (s *drawnSite) body() (*drawBody, error) {
	if err := s.readVersions(); err != nil {
		return nil, err
	}
	b := &drawBody{Site: s.site, At: s.at, Drawn: s.site.PlanWidthM > 0 && s.site.PlanDepthM > 0}
	var err error
	if b.Today, err = s.office.Today(); err != nil {
		return nil, err
	}
	for _, other := range s.holding.Sites {
		b.Sites = append(b.Sites, drawnLink{other.Name, drawnAt{site: other.ID}.path(), other.ID == s.site.ID})
	}
	if b.Plan, err = s.planForm(); err != nil {
		return nil, err
	}
	b.Open = b.Plan.Wrong > 0
	b.Tray = s.tray()
	s.figures(b)
	if !b.Drawn {
		return b, nil
	}
	b.Says = s.say("web.draw_says", words.Args{"width": s.plain(s.site.PlanWidthM), "depth": s.plain(s.site.PlanDepthM), "up": s.bearing(s.site.UpDeg)})
	b.Drawing = draw.SiteDrawing(s.site, s.things(), s.options())
	if s.at.zoom < closest {
		b.Closer = s.at.zoomed(s.at.zoom * 2).path()
	}
	if s.at.zoom > 1 {
		b.Wider = s.at.zoomed(s.at.zoom / 2).path()
	}
	if b.Chosen, err = s.chosen(); err != nil {
		return nil, err
	}
	if b.Add, err = s.adding(); err != nil {
		return nil, err
	}
	if b.Odd, err = s.odd(); err != nil {
		return nil, err
	}
	b.Steps, err = s.steps()
	return b, err
}

// readVersions notes the versions of all that is drawn.
func (s *drawnSite) readVersions() error {
	s.versions = map[string]int64{}
	for _, table := range []string{"sites", "beds", "features"} {
		rows, err := s.office.Rows(table)
		if err != nil {
			return err
		}
		for _, r := range rows {
			s.versions[table+"/"+r.ID] = r.Version
		}
	}
	return nil
}

// odd tells what is worth a look on this site.
func (s *drawnSite) odd() ([]drawnOddLine, error) {
	all, err := s.office.OddlyDrawn()
	if err != nil {
		return nil, err
	}
	var out []drawnOddLine
	for _, o := range all {
		if key := o.Table + "/" + o.ID; o.Site == s.site.ID {
			out = append(out, drawnOddLine{Path: s.at.picking(key).path(), Name: s.nameOf(o), Says: o.Says, Chosen: key == s.at.pick})
		}
	}
	return out, nil
}

func (s *drawnSite) nameOf(o desk.DrawnOdd) string {
	for _, b := range s.holding.Beds {
		if o.Table == "beds" && b.ID == o.ID {
			return b.Name
		}
	}
	for _, f := range s.holding.Features {
		if o.Table == "features" && f.ID == o.ID {
			return f.Name
		}
	}
	return o.ID
}

// drawnSteps are the buttons that take a step back or forward.
type drawnSteps struct {
	Undo, Redo         string // entries
	UndoSays, RedoSays string
	Back               string
}

func (s *drawnSite) steps() (drawnSteps, error) {
	found, err := s.office.DrawnSteps()
	out := drawnSteps{Back: s.at.path()}
	if err != nil {
		return out, err
	}
	if found.Undo != nil {
		out.Undo, out.UndoSays = found.Undo.ID, s.sentence(found.UndoSays)
	}
	if found.Redo != nil {
		out.Redo, out.RedoSays = found.Redo.ID, s.sentence(found.RedoSays)
	}
	return out, nil
}
