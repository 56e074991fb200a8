package web

import (
	"net/http"

	"garner/internal/cal"
	"garner/internal/desk"
	"garner/internal/fault"
	"garner/internal/holding"
	"garner/internal/plan"
	"garner/internal/words"
)

// vegetableBody is what the page of one vegetable is given.
type vegetableBody struct {
	Today                 cal.Date
	Title                 string
	Path                  string
	Kg                    float64
	Sentences             []string
	Axis                  string // drawings
	AxisEnd               string
	Before                string // how it stands, when a change is tried
	Stack                 string
	Days                  int
	ShortNow, ShortBefore string
	Lanes                 []laneBody
	Forms                 []changeForm
	Add                   *addForm
	Twin                  []sourceMonths
	Months                []cal.Date
	Tried                 *triedBody
	Book                  []nameLink // its crops in the crop book
	Mends                 []nameLink // what would mend its gaps, or use its glut
	Leaves                []*leaveBody
	Left                  []rowLine
}

// laneBody is one planting on the time axis.
type laneBody struct {
	ID, Letter, Name, Path string
	When                   string // what is done, when and where
	Odds                   string // from when it is picked
	Draw                   string
	Tried                  bool
	Movable                bool
	Sooner, Later          string // addresses with it a week sooner or later
}

// vegetablePage shows one vegetable, with changes tried or as it stands.
func vegetablePage(v *visit) error {
	name := v.r.PathValue("name")
	tried, faults := readTried(v.r.URL.Query())
	if len(faults) > 0 {
		return faults
	}
	var wrong map[string]words.Phrase
	if v.query("change") != "" || v.query("add") != "" {
		var err error
		if wrong, err = v.tryForm(vegetablePath(name), tried); err != nil || len(wrong) == 0 {
			return err
		}
	}
	b, err := v.vegetableBody(name, tried)
	if err != nil {
		return err
	}
	p := page{Name: "vegetable", Nav: "table", Body: b}
	if len(wrong) > 0 {
		b.typed(v.r.URL.Query(), wrong)
		p.Status = http.StatusUnprocessableEntity
	}
	return v.showPart(p)
}

func (v *visit) vegetableBody(name string, tried []plan.Change) (*vegetableBody, error) {
	view, err := v.office.VegetableView(name, tried)
	if err != nil {
		return nil, err
	}
	g, err := v.grown(tried)
	if err != nil {
		return nil, err
	}
	g.today = view.Today
	b := &vegetableBody{Title: capital(view.Plural), Path: vegetablePath(name), Today: view.Today, Kg: fullWant(view.WantKg)}
	b.Sentences = v.vegetableWords(view)
	barren, err := v.barrenWords(view)
	if err != nil {
		return nil, err
	}
	b.Sentences = append(b.Sentences, barren...)
	b.Axis, b.AxisEnd = v.vegetableAxis(view, true), v.vegetableAxis(view, false)
	b.Stack, b.Days = v.stack(view), 7*view.Weeks
	b.ShortNow = v.shortTotal(view)
	if view.Before != nil {
		b.Before, b.ShortBefore = v.before(view.Before), v.shortTotal(view.Before)
	}
	touched := touchedBy(tried)
	for i := range view.Plantings {
		line := &view.Plantings[i]
		b.Lanes = append(b.Lanes, v.lane(view, line, g, tried, touched[line.ID]))
		if line.Movable {
			b.Forms = append(b.Forms, v.changeForm(g, line, b.Path, tried))
		}
	}
	b.Add = v.addForm(g, view, tried)
	b.Months, b.Twin = v.sourceMonths(view)
	for _, c := range view.Crops {
		b.Book = append(b.Book, nameLink{v.say("web.crop_in_book", words.Args{"name": c.Name}), cropPath(c.ID, "")})
	}
	b.Mends = v.mendLinks(view, tried)
	if len(tried) == 0 {
		for i := range view.Gaps[:min(len(view.Gaps), mostGapsSaid)] {
			b.Leaves = append(b.Leaves, v.leaveOf(view.Name, view.Plural, b.Path, view.Today, &view.Gaps[i]))
		}
	}
	b.Left = leftLines(g.holding, view.Name)
	if len(tried) > 0 {
		if b.Tried, err = v.compareVegetables(view, g, b.Path, tried); err != nil {
			return nil, err
		}
	}
	return b, nil
}

// vegetableWords say how much is wanted, the gaps, and when all is well.
func (v *visit) vegetableWords(view *desk.VegetableView) []string {
	out := []string{v.say("web.vegetable_want", words.Args{"kg": fullWant(view.WantKg)})}
	out = append(out, v.heldWords(&view.Ribbon)...)
	for i := range view.Gaps[:min(len(view.Gaps), mostGapsSaid)] {
		if i == 0 {
			out = append(out, v.sentence(gapWords(&view.Gaps[i], view.Today)))
			continue
		}
		out = append(out, v.sentence(laterGapWords(&view.Gaps[i], view.Today)))
	}
	if more := len(view.Gaps) - mostGapsSaid; more > 0 {
		out = append(out, v.sentence(words.P("web.vegetable_gaps_more", words.Args{"n": more})))
	}
	if len(view.Gaps) == 0 {
		out = append(out, v.sentence(sharpened(view.Ribbon.Sentence, view.Today)))
	}
	return out
}

// shortTotal says how many weeks are short in all.
func (v *visit) shortTotal(view *desk.VegetableView) string {
	n := 0
	for _, weeks := range shortWeeks(view) {
		n += weeks
	}
	return v.sentence(words.P("web.vegetable_short_total", words.Args{"n": n}))
}

// mostGapsSaid is how many gaps are told in words; the figures have all.
const mostGapsSaid = 3

// grown is what a page needs of the plan with changes tried.
type grown struct {
	holding   *holding.Holding
	plantings map[string]*plan.Planting
	standing  map[string]*plan.Planting // as the plan in force has them
	today     cal.Date
}

func (v *visit) grown(tried []plan.Change) (*grown, error) {
	g := &grown{}
	var err error
	if g.holding, _, err = v.office.Tried(tried); err != nil {
		return nil, err
	}
	var faults fault.List
	if g.plantings, faults = resolved(g.holding, g.holding.Plan); len(faults) > 0 {
		return nil, faults
	}
	h, err := v.office.Holding()
	if err != nil {
		return nil, err
	}
	if g.standing, faults = resolved(h, h.Plan); len(faults) > 0 {
		return nil, faults
	}
	return g, nil
}

func resolved(h *holding.Holding, planID string) (map[string]*plan.Planting, fault.List) {
	list, faults := plan.Resolve(h.Plans, h.Plantings, h.Changes, planID)
	out := map[string]*plan.Planting{}
	for i := range list {
		out[list[i].ID] = &list[i]
	}
	return out, faults
}

// touchedBy names the plantings that changes are about.
func touchedBy(tried []plan.Change) map[string]bool {
	touched := map[string]bool{}
	for _, c := range tried {
		touched[c.Planting] = true
	}
	return touched
}

func (v *visit) lane(view *desk.VegetableView, line *desk.PlantingLine, g *grown, tried []plan.Change, touched bool) laneBody {
	l := laneBody{ID: line.ID, Letter: line.Letter, Name: capital(line.Name), Path: withTried(plantingPath(line.ID), tried),
		When: v.whenWords(line, view.Today), Odds: v.oddsWords(line, view.Today), Tried: touched, Movable: line.Movable}
	if line.Movable {
		path := vegetablePath(view.Name)
		l.Sooner = withTried(path, g.moved(tried, line, -7))
		l.Later = withTried(path, g.moved(tried, line, 7))
	}
	l.Draw = v.laneDraw(view, line, &l)
	return l
}

// plantingPath is the address of a planting's page.
func plantingPath(id string) string { return "/planting/" + pathEscaped(id) }

// whenWords says what is done, when and where: a date of the plan is a date.
func (v *visit) whenWords(line *desk.PlantingLine, today cal.Date) string {
	method := line.Method
	if method == "" {
		method = string(plan.Seed)
	}
	done := "todo_"
	if line.Date <= today {
		done = "done_"
	}
	key := "web.vegetable_" + done + method
	if !v.words.Has(key) {
		key = "web.vegetable_" + done + string(plan.Plant)
	}
	return v.sentence(words.P(key, words.Args{"date": planned(line.Date, today)}))
}

// planned tells a date of the plan, with its year when that is not today's.
func planned(date, today cal.Date) words.Phrase {
	if date.Year() == today.Year() {
		_, month, day := date.YMD()
		return words.P("words.sharp_day", words.Args{"day": cal.MonthDay{Month: month, Day: day}})
	}
	return words.P("words.sharp_date", words.Args{"day": date})
}

// oddsWords says from when a planting is picked and how often it fails.
func (v *visit) oddsWords(line *desk.PlantingLine, today cal.Date) string {
	if line.Fails >= 0.5 && standsAtEnd(line) {
		return v.say("web.vegetable_beyond", nil)
	}
	if !line.Ready.P50.IsSet() {
		return v.say("web.vegetable_never_ready", nil)
	}
	if line.Ready.P50 < today {
		return v.say("web.vegetable_is_ready", nil)
	}
	days := int(line.Ready.P90-line.Ready.P10) / 2
	args := words.Args{"ready": words.Sharp(line.Ready.P50, today), "days": days, "weeks": (days + 3) / 7, "chance": 1 - line.Fails}
	switch {
	case line.Fails >= seldom:
		return v.say("web.vegetable_ready_unsure", args)
	case days > mostDaysTold:
		return v.say("web.vegetable_ready_weeks", args)
	}
	return v.say("web.vegetable_ready", args)
}

// mostDaysTold is how many days either way are told as days; more are weeks.
const mostDaysTold = 20

// standsAtEnd tells whether a planting still has leaves when the table ends.
func standsAtEnd(line *desk.PlantingLine) bool {
	n := len(line.Leaf)
	return n > 0 && line.Leaf[n-1] > 0.05
}

// seldom is the share of years from which it is told how often a crop fails.
const seldom = 0.1
