package web

import (
	"net/http"

	"garner/internal/cal"
	"garner/internal/desk"
	"garner/internal/draw"
	"garner/internal/plan"
	"garner/internal/words"
)

// besideBody is the page of a planting and those on the same ground.
type besideBody struct {
	ID, Title string
	Bed       string
	BedPath   string
	Back      string // the planting's page
	Path      string // this page
	Parts     []besidePart
	Alone     bool
	Tried     *triedBody
	Hidden    []string // what is tried already, for forms
	Edit      string
	Form      besideForm
}

// besidePart is one pair.
type besidePart struct {
	Title     string
	Say       []string
	Drawing   string
	Sides     []besideSide
	Sum       string // both together
	Strip     besideOffer
	Clear     besideOffer
	Weeks     []besideWeek
	UpperName string
	LowerName string
}

// besideSide is one of the two in figures.
type besideSide struct {
	Name, Path        string
	Feeds             bool
	Kg, AloneKg       float64
	Share             float64
	Ready, AloneReady words.Phrase
}

// besideWeek is a month's first week in figures.
type besideWeek struct {
	Monday              cal.Date
	Upper, Lower, Light float64
	Lit                 bool
}

// besideOffer is what doing something to the upper crop gives.
type besideOffer struct {
	Asked bool   // there is a day to ask about
	On    string // for the form
	Share string
	Say   string
	Try   string // the address with it tried
	ID    string // of the upper
}

// besideForm declares a planting to stand under or between another, or to follow
// it.
type besideForm struct {
	Relation, To string
	Relations    []string
	Others       []desk.PairName
	Wrong        map[string]words.Phrase
}

// besidePage shows what two crops on the same ground do to each other.
func besidePage(v *visit) error {
	tried, faults := readTried(v.r.URL.Query())
	if len(faults) > 0 {
		return faults
	}
	id := v.r.PathValue("id")
	path := besidePath(id)
	g, err := v.grown(tried)
	if err != nil {
		return err
	}
	if g.today, err = v.office.Today(); err != nil {
		return err
	}
	wrong := map[string]words.Phrase{}
	if v.query("do") == "relate" {
		if more := g.related(id, v.r.URL.Query(), tried, wrong); len(wrong) == 0 {
			v.moveTo(withTried(path, g.tidy(more)))
			return nil
		}
	}
	view, err := v.office.PairView(id, tried, askedBeside(v, wrong))
	if err != nil {
		return err
	}
	b := v.besideBody(view, path, tried)
	b.Form.Wrong = wrong
	if len(tried) > 0 {
		if b.Tried, err = v.besideTried(view, g, path, tried); err != nil {
			return err
		}
	}
	shown := page{Name: "beside", Nav: "plantings", Body: b}
	if len(wrong) > 0 {
		shown.Status = http.StatusUnprocessableEntity
	}
	return v.showPart(shown)
}

func besidePath(id string) string { return plantingPath(id) + "/beside" }

func (v *visit) besideBody(view *desk.PairView, path string, tried []plan.Change) *besideBody {
	b := &besideBody{ID: view.ID, Title: capital(view.Name), Bed: view.BedName, BedPath: bedPath(view.Bed), Path: path,
		Back: withTried(plantingPath(view.ID), tried), Hidden: writtenTries(tried), Edit: plantingPath(view.ID) + "/edit", Alone: len(view.Pairs) == 0}
	for i := range view.Pairs {
		b.Parts = append(b.Parts, v.besidePart(view, &view.Pairs[i], path, tried))
	}
	b.Form = besideForm{Relation: string(view.Relation), To: view.To, Others: view.Others,
		Relations: []string{"", string(plan.Under), string(plan.Between), string(plan.After)}}
	return b
}

func (v *visit) besidePart(view *desk.PairView, p *desk.PairPart, path string, tried []plan.Change) besidePart {
	upper, lower := capital(p.Upper.Name), capital(p.Lower.Name)
	b := besidePart{UpperName: upper, LowerName: lower,
		Title: capital(v.say("web.beside_title_"+string(p.Relation), words.Args{"upper": p.Upper.Crop, "lower": p.Lower.Crop})),
		Say:   v.besideWords(p, view.Today),
		Sides: []besideSide{v.besideSide(&p.Upper, view.Today, tried), v.besideSide(&p.Lower, view.Today, tried)},
		Sum:   v.say("web.beside_sum", words.Args{"beds": p.Ratio}),
	}
	for i := 0; i < len(p.Weeks); i += besideRowStep {
		w := &p.Weeks[i]
		b.Weeks = append(b.Weeks, besideWeek{w.Monday, w.Upper, w.Lower, w.Light, w.Lit})
	}
	b.Strip, b.Clear = v.stripOffer(p, path, tried), v.clearOffer(p, path, tried)
	b.Drawing = v.besideDraw(p, view.Today, b.Say)
	return b
}

// besideRowStep is how many weeks a row of figures stands for.
const besideRowStep = 2

// besideHeight is the height of full cover [px].
const besideHeight = 74.0

func (v *visit) besideDraw(p *desk.PairPart, today cal.Date, say []string) string {
	if len(p.Weeks) == 0 {
		return ""
	}
	texts := v.axisTexts("", false)
	label := v.say("web.beside_label", words.Args{"upper": p.Upper.Crop, "lower": p.Lower.Crop})
	for _, s := range say {
		label += " " + plainText(s)
	}
	return draw.Pair(p.Weeks, draw.PairScale(p.Weeks, courseWidth), draw.PairOptions{HeightPX: besideHeight, Label: label,
		Months: texts.Months, Year: texts.Year, Today: today, TodayIs: v.say("web.axis_today", nil),
		Upper: v.say("web.beside_leaf", words.Args{"name": p.Upper.Crop}), Lower: v.say("web.beside_leaf", words.Args{"name": p.Lower.Crop}),
		Light: v.say("web.beside_light", words.Args{"lower": p.Lower.Crop}),
		All:   v.words.Format().Percent(1), None: v.words.Format().Percent(0)})
}

func (v *visit) besideSide(s *desk.PairSide, today cal.Date, tried []plan.Change) besideSide {
	return besideSide{Name: capital(s.Name), Path: withTried(plantingPath(s.ID), tried), Feeds: s.Feeds, Kg: s.Kg, AloneKg: s.AloneKg, Share: s.Share,
		Ready: v.whenReady(s.Ready, today), AloneReady: v.whenReady(s.AloneReady, today)}
}
