package web

import (
	"math"
	"net/http"
	"net/url"

	"garner/internal/cal"
	"garner/internal/desk"
	"garner/internal/draw"
	"garner/internal/place"
	"garner/internal/plan"
	"garner/internal/words"
)

// freeRoutes names the page of free ground.
func (s *Server) freeRoutes(mux *router) {
	mux.Handle("GET /ground/free", s.atHome(freePage))
}

// freeBody is the page of ground that comes free in a period.
type freeBody struct {
	From, To cal.Date // first and last day of the period
	Site     string
	Sites    []place.Site
	Faults   []words.Phrase
	Lead     string
	Groups   []freeGroup
	Slivers  int
	Plans    []freePlan
	Wrong    []wrongLine
	Tried    []string
}

// freeGroup is the ground that comes free in one month, or is free at once.
type freeGroup struct {
	Title string
	Lines []freeLine
}

// freeLine is one piece of free ground.
type freeLine struct {
	Bed, BedPath string
	AreaM2       float64
	When         string // empty where the heading says it
	Ends         string
	Next         string // page of what could follow there
}

// freePlan is the plan of one site.
type freePlan struct{ Site, Drawn string }

// wrongLine is what does not fit, how to mend it, and where.
type wrongLine struct {
	Says, Mend string
	Edit       string // form of the planting to move
}

// freeWeeks is how long the period is when none is asked for [d].
const freeWeeks = 8 * 7

// What is smaller or shorter is counted, not listed.
const (
	sliverM2   = 0.1
	sliverDays = 7
)

// freePage lists the ground that comes free in a period, and what does not fit.
func freePage(v *visit) error {
	tried, faults := readTried(v.r.URL.Query())
	if len(faults) > 0 {
		return faults
	}
	h, err := v.office.Holding()
	if err != nil {
		return err
	}
	today, err := v.office.Today()
	if err != nil {
		return err
	}
	b := freeBody{Site: v.query("site"), Sites: h.Sites}
	b.read(v, today)
	space, err := v.office.SpaceView(desk.SpaceQuery{Site: b.Site, From: b.From, Until: b.To + 1}, tried)
	if err != nil {
		return err
	}
	b.fill(v, space, tried)
	if len(tried) > 0 {
		g, err := v.grown(tried)
		if err != nil {
			return err
		}
		g.today = today
		for _, c := range tried {
			b.Tried = append(b.Tried, v.sentence(g.changeWords(c, nil)))
		}
	}
	p := page{Name: "free", Nav: "ground", Body: &b}
	if len(b.Faults) > 0 {
		p.Status = http.StatusUnprocessableEntity
	}
	return v.showPart(p)
}

// read takes the period from the address; what cannot be read is told, and the
// usual period shown.
func (b *freeBody) read(v *visit, today cal.Date) {
	b.From, b.To = b.day(v.query("from"), today), cal.None
	b.From = max(b.From, today)
	if b.To = b.day(v.query("until"), b.From+freeWeeks); b.To < b.From {
		b.Faults = append(b.Faults, words.P("web.free_order", nil))
		b.To = b.From + freeWeeks
	}
	known := b.Site == ""
	for _, s := range b.Sites {
		known = known || s.ID == b.Site
	}
	if !known {
		b.Site = ""
	}
}

func (b *freeBody) day(given string, otherwise cal.Date) cal.Date {
	if given == "" {
		return otherwise
	}
	d, err := cal.Parse(given)
	if err != nil {
		b.Faults = append(b.Faults, words.P("web.free_date", words.Args{"given": given}))
		return otherwise
	}
	return d
}

func (b *freeBody) fill(v *visit, s *desk.SpaceView, tried []plan.Change) {
	shown := *s // without what is only counted
	shown.Free = nil
	area, at := 0.0, map[string]int{} // places by bed
	for i := range s.Free {
		f := &s.Free[i]
		if f.AreaM2 < sliverM2 || f.Days() < sliverDays {
			b.Slivers++
			continue
		}
		area += f.AreaM2
		at[f.Bed]++
		shown.Free = append(shown.Free, *f)
		line := v.freeLine(f, tried)
		if f.From.P50 == s.From && f.From.Sure() {
			line.When = ""
		}
		b.add(v.freeTitle(f, s), line)
	}
	key := "web.free_lead"
	if len(shown.Free) == 0 {
		key = "web.free_lead_none"
	}
	b.Lead = v.say(key, words.Args{"from": b.From, "to": b.To, "area": area, "n": len(shown.Free)})
	b.plans(v, &shown, at)
	for i := range s.Wrong {
		b.Wrong = append(b.Wrong, v.wrongLine(&s.Wrong[i]))
	}
}

// plans draws the plan of every site that has one.
func (b *freeBody) plans(v *visit, s *desk.SpaceView, at map[string]int) {
	for i := range s.Sites {
		site, places := &s.Sites[i], 0
		for k := range s.Beds {
			if s.Beds[k].Site == site.ID {
				places += at[s.Beds[k].ID]
			}
		}
		drawn := draw.FreePlan(s, site, draw.FreePlanOptions{WidthPX: 540, HeightPX: 600,
			Label: v.say("web.free_plan_label", words.Args{"site": site.Name, "n": places}), Free: v.say("web.free_word", nil),
			Metres: v.words.Format().Metres})
		if drawn != "" {
			b.Plans = append(b.Plans, freePlan{site.Name, drawn})
		}
	}
}

func (b *freeBody) add(title string, line freeLine) {
	if n := len(b.Groups); n == 0 || b.Groups[n-1].Title != title {
		b.Groups = append(b.Groups, freeGroup{Title: title})
	}
	last := &b.Groups[len(b.Groups)-1]
	last.Lines = append(last.Lines, line)
}

// freeTitle is the heading that ground is listed under.
func (v *visit) freeTitle(f *desk.FreeSpace, s *desk.SpaceView) string {
	switch {
	case f.From.P50 > s.From:
		return v.monthYear(f.From.P50)
	case s.From == s.Today:
		return v.say("web.free_at_once", nil)
	}
	return v.say("web.free_from_first", words.Args{"from": s.From})
}

func (v *visit) freeLine(f *desk.FreeSpace, tried []plan.Change) freeLine {
	q := url.Values{"from": {f.From.P50.String()}, "until": {f.Until.String()}, "area": {plainNumber(math.Round(f.AreaM2*100) / 100)}}
	return freeLine{Bed: f.BedName, BedPath: bedPath(f.Bed), AreaM2: f.AreaM2, When: v.sentence(f.When), Ends: v.sentence(f.Ends),
		Next: withTried(bedPath(f.Bed)+"/next?"+q.Encode(), tried)}
}

func (v *visit) wrongLine(o *desk.OverlapView) wrongLine {
	return wrongLine{Says: v.sentence(o.Says), Mend: v.sentence(o.Mend), Edit: "/plantings/" + pathEscaped(o.Planting) + "/edit"}
}
