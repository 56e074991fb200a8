package web

import (
	"net/http"
	"strings"

	"garner/internal/cal"
	"garner/internal/desk"
	"garner/internal/draw"
	"garner/internal/words"
)

// weekRoutes names the pages of the week, its feed, the sowing list and the jobs of the
// grower's own.
func (s *Server) weekRoutes(mux *router) {
	mux.Handle("GET "+weekPath, s.atHome(hangsOnWeather("week", weekPage, noWeek)))
	mux.Handle("POST "+weekPath+"/answer", s.atHome(jobAnswered))
	mux.Handle("POST "+weekPath+"/answers", s.atHome(jobsAnswered))
	mux.Handle("GET "+weekPath+".ics", s.atHome(weekFeed))
	mux.Handle("GET "+weekPath+"/sowings", s.atHome(sowingsPage))
	mux.Handle("GET /own_jobs", s.atHome(ownJobs))
	s.mountRows(mux, &ownJobForm)
}

const weekPath = "/week"

// weekBody is the page of the week.
type weekBody struct {
	Untold   []untoldSite
	Frost    string // tonight's alarm; empty: none
	Title    string
	Lead     []string
	Litres   string // of all waterings; empty: nothing is to be watered
	LitresOf string // what the figure is
	Ask      weekAsk
	Sheets   []weekSheet
	Dropped  []weekJob
	Past     []weekPast
	Answered []answeredLine
	Feed     string     // address
	Way      string     // how far it is
	Planned  bool       // something is planned at all
	Rules    []nameLink // pages of what the sites do not allow
}

// weekSheet is the work of one person along the way.
type weekSheet struct {
	Title string // empty: one does all
	Sum   string
	Stops []weekStop
}

// weekStop is a place on the way.
type weekStop struct {
	ID    string
	First bool   // no way leads to it
	Walk  string // metres to it; empty: not known
	Name  string
	Path  string // of its page; empty: none
	Site  string
	Axis  string // of the days on which jobs can wait, above the first stop
	Jobs  []weekJob
}

// answeredLine is a job answered today.
type answeredLine struct {
	Title, Place, Did string
	Struck            bool
	Entry             string
}

// weekPage shows the week.
func weekPage(v *visit) error {
	if err := v.showWeek(v.weekAsked(v.query), jobTyped{}); err != nil {
		return err
	}
	v.office.Warm() // the week does without the whole table; the next page may not
	return nil
}

// noWeek is the page where no site's weather is known.
func noWeek(v *visit) untoldBody {
	return untoldBody{Title: v.say("web.nav_week", nil), Why: v.say("web.untold_week", nil), Ways: waterWays{Untold: v.untold}}
}

// showWeek shows the week that was asked for, with a form that could not be taken.
func (v *visit) showWeek(ask weekAsk, typed jobTyped) error {
	view, err := v.office.WeekView(ask.options)
	if err != nil {
		return err
	}
	b, err := v.weekBody(view, ask, typed)
	if err != nil {
		return err
	}
	p := page{Name: "week", Nav: "week", Body: b}
	if ask.Wrong > 0 || len(typed.faults) > 0 {
		p.Status = http.StatusUnprocessableEntity
	}
	return v.show(p)
}

func (v *visit) weekBody(view *desk.WeekView, ask weekAsk, typed jobTyped) (*weekBody, error) {
	h, err := v.office.Holding()
	if err != nil {
		return nil, err
	}
	b := &weekBody{Untold: v.untold, Title: v.weekTitle(view), Ask: ask, Feed: v.feedAddress(), Planned: len(h.Plantings) > 0 || len(h.OwnJobs) > 0}
	for i := range h.Sites {
		b.Rules = append(b.Rules, nameLink{h.Sites[i].Name, rowPath(&siteForm, h.Sites[i].ID) + "/edit#f-not_allowed"})
	}
	if b.Frost, err = v.frostAlarm(); err != nil {
		return nil, err
	}
	for _, p := range view.Lead {
		b.Lead = append(b.Lead, v.sentence(sharpened(p, view.Today)))
	}
	if view.Litres > 0 {
		b.Litres = v.words.Format().Number(view.Litres, 0)
		b.LitresOf = v.say("web.week_litres", words.Args{"litres": view.Litres, "cans": view.Cans(view.Litres)})
	}
	w := &weekWriter{visit: v, view: view, ask: ask, typed: typed, mostLitres: mostLitres(view), days: weekScale(view)}
	if b.Sheets, err = w.sheets(); err != nil {
		return nil, err
	}
	for i := range view.Dropped {
		j, err := w.job(&view.Dropped[i])
		if err != nil {
			return nil, err
		}
		j.Title = v.say("desk.job_event", words.Args{"place": view.Dropped[i].Place, "title": view.Dropped[i].Title})
		b.Dropped = append(b.Dropped, j)
	}
	for i := range view.Past {
		past, err := w.past(&view.Past[i])
		if err != nil {
			return nil, err
		}
		b.Past = append(b.Past, past)
	}
	for i := range view.Answered {
		b.Answered = append(b.Answered, v.answered(&view.Answered[i], view.Today))
	}
	if m := walked(view); m > 0 {
		b.Way = v.say("web.week_way", words.Args{"m": m})
	}
	return b, nil
}

// weekTitle names the days that are told.
func (v *visit) weekTitle(view *desk.WeekView) string {
	if view.Last-view.Today+1 == usualDays {
		return v.say("web.week_title", words.Args{"day": words.Sharp(view.Today, view.Today)})
	}
	return v.say("web.week_span", words.Args{"from": words.Sharp(view.Today, view.Today), "last": plainSharp(view.Last, view.Today)})
}

// plainSharp tells a day that was asked for: it is no forecast.
func plainSharp(d, today cal.Date) words.Phrase { return words.Sharp(d, max(today, d)) }

// feedAddress is where a calendar finds the jobs.
func (v *visit) feedAddress() string {
	scheme := "http"
	if v.r.TLS != nil {
		scheme = "https"
	}
	return scheme + "://" + v.r.Host + weekPath + ".ics"
}

// weekScale is the time over which it is drawn how long jobs can wait.
func weekScale(view *desk.WeekView) draw.Scale {
	return draw.Scale{From: view.Today, Days: max(2*usualDays, int(view.Last-view.Today)+1), WidthPX: waitWidth}
}

func mostLitres(view *desk.WeekView) float64 {
	most := 0.0
	for _, l := range view.Lines() {
		most = max(most, l.WaterL())
	}
	return most
}

func walked(view *desk.WeekView) float64 {
	m := 0.0
	for _, s := range view.Shares {
		m += s.WalkM
	}
	return m
}

// answered tells a job that was answered today.
func (v *visit) answered(a *desk.AnsweredJob, today cal.Date) answeredLine {
	did := strings.ReplaceAll(string(a.Did), " ", "_")
	line := answeredLine{Title: v.sentence(a.Title), Did: v.say("web.week_did_"+did, words.Args{"until": plainSharp(a.Until, today)}), Entry: a.Entry,
		Struck: a.Did != "put off" && a.Did != "kept"}
	if a.Place.Key != "" {
		line.Place = v.words.Text(a.Place)
	}
	return line
}
