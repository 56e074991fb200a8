package web

import (
	"net/http"
	"strconv"
	"strings"

	"garner/internal/cal"
	"garner/internal/desk"
	"garner/internal/draw"
	"garner/internal/fault"
	"garner/internal/words"
)

// larderRoutes names the pages of what lies in store.
func (s *Server) larderRoutes(mux *router) {
	mux.Handle("GET /larder", s.atHome(larderPage))
	mux.Handle("GET /larder/give", s.atHome(givePage))
	mux.Handle("POST /larder/count", s.atHome(batchCountPosted))
	mux.Handle("GET /larder/already", s.atHome(lainPage))
	mux.Handle("POST /larder/already", s.atHome(lainPosted))
}

// larderBody is the page of the larder.
type larderBody struct {
	Lead     []string
	Stocks   []larderStock
	Axis     string // drawings
	AxisEnd  string
	Days     int
	Stores   []larderStore
	Unused   []larderStore
	Places   bool // there are stores
	Surplus  []larderSurplus
	Later    []larderSurplus // beyond the weeks ahead
	Give     []giveWeek
	Cautions []lossLine
	Months   []cal.Date
}

// larderStock is a vegetable in store.
type larderStock struct {
	Name, Path string
	Kg         float64
	Says       []string
	Batches    []larderBatch
}

// larderBatch is a batch with the form in which it is counted.
type larderBatch struct {
	ID          string
	Store, Name string
	Path        string // of its planting
	Kg          float64
	Stored      words.Phrase
	Says        string
	Hidden      []hiddenField
	Typed       string
	Faults      []words.Phrase
	Ask         bool // it is far above what was put in, and asked about
}

// larderStore is a store and its course.
type larderStore struct {
	Name, Says string
	Path       string
	Draw       string
	Months     []float64 // in the middle year, when each month begins
}

// larderSurplus is what goes over of a vegetable and what can be done.
type larderSurplus struct {
	Name, Path, Says string
	Ways             []string
}

// giveWeek is a week of the list to give away.
type giveWeek struct {
	Week  cal.Date
	Lines []giveLine
}

type giveLine struct {
	Name     string
	Kg, Good float64
}

// levelHeight is how high a store is drawn [px].
const levelHeight = 88.0

// surplusAhead is how far ahead a surplus is told in full [d]; the rest is folded.
const surplusAhead = 84

// larderPage shows what lies in store.
func larderPage(v *visit) error { return v.showLarder(countTyped{}) }

// countTyped is a count that could not be written.
type countTyped struct {
	batch, text string
	faults      fault.List
}

func (v *visit) showLarder(typed countTyped) error {
	view, err := v.office.LarderView()
	if err != nil {
		return err
	}
	b, err := v.larderBody(view, typed)
	if err != nil {
		return err
	}
	p := page{Name: "larder", Nav: "larder", Body: b}
	if len(typed.faults) > 0 {
		p.Status = http.StatusUnprocessableEntity
	}
	return v.show(p)
}

func (v *visit) larderBody(view *desk.LarderView, typed countTyped) (*larderBody, error) {
	b := &larderBody{Days: 7 * view.Weeks, Give: giveWeeks(view)}
	for _, p := range view.Lead {
		b.Lead = append(b.Lead, v.sentence(sharpened(p, view.Today)))
	}
	for i := range view.Stocks {
		stock, err := v.larderStock(&view.Stocks[i], view.Today, typed)
		if err != nil {
			return nil, err
		}
		b.Stocks = append(b.Stocks, stock)
	}
	v.larderStores(b, view)
	b.Places = len(view.Stores) > 0
	for i := range view.Surplus {
		s := v.larderSurplus(&view.Surplus[i], view.Today)
		if view.Surplus[i].First < view.Today+surplusAhead {
			b.Surplus = append(b.Surplus, s)
		} else {
			b.Later = append(b.Later, s)
		}
	}
	for _, c := range view.Cautions {
		b.Cautions = append(b.Cautions, lossLine{v.words.Text(c.Text), c.Source})
	}
	return b, nil
}

func (v *visit) larderStock(s *desk.StockView, today cal.Date, typed countTyped) (larderStock, error) {
	out := larderStock{Name: capital(s.Plural), Path: vegetablePath(s.Vegetable), Kg: s.Kg}
	for _, p := range s.Says {
		out.Says = append(out.Says, v.sentence(sharpened(p, today)))
	}
	for i := range s.Batches {
		b := &s.Batches[i]
		entry, err := v.entry()
		if err != nil {
			return out, err
		}
		line := larderBatch{ID: b.ID, Store: b.StoreName, Name: b.Name, Kg: b.Kg, Stored: planned(b.Stored, today), Says: v.sentence(sharpened(b.Says, today)),
			Hidden: []hiddenField{{"batch", b.ID}, {"store", b.Store}, {"entry", entry}}}
		if b.PlantingName != "" {
			line.Name, line.Path = b.PlantingName, plantingPath(b.Planting)
		}
		if typed.batch == b.ID {
			line.Typed = typed.text
			for _, e := range typed.faults {
				line.Faults = append(line.Faults, e.Phrase)
				line.Ask = line.Ask || e.At.Column == sureField
			}
		}
		out.Batches = append(out.Batches, line)
	}
	return out, nil
}

// larderStores draws the stores on one time.
func (v *visit) larderStores(b *larderBody, view *desk.LarderView) {
	scale := draw.Scale{From: view.From, Days: 7 * view.Weeks, WidthPX: chartWidth}
	today := v.say("web.axis_today_date", words.Args{"date": planned(view.Today, view.Today)})
	b.Axis = draw.Axis(scale, view.Today, nil, v.axisTexts(today, false))
	b.AxisEnd = draw.Axis(scale, cal.None, nil, v.axisTexts("", false))
	for d := monthAfter(view.From); d < view.From+cal.Date(7*view.Weeks); d = monthAfter(d) {
		b.Months = append(b.Months, d)
	}
	for i := range view.Stores {
		s := &view.Stores[i]
		line := larderStore{Name: s.Name, Says: v.sentence(sharpened(s.Says, view.Today)), Path: storePath(s.ID)}
		if line.Name == "" {
			line.Name = s.ID
		}
		if len(s.Kg[0]) == 0 {
			b.Unused = append(b.Unused, line)
			continue
		}
		for _, d := range b.Months {
			line.Months = append(line.Months, s.Kg[4][d-view.From])
		}
		line.Draw = draw.Level(s, scale, draw.LevelOptions{HeightPX: levelHeight, Today: view.Today,
			Label: v.say("web.larder_level_label", words.Args{"name": line.Name, "says": line.Says}),
			Full:  v.say("web.larder_room", words.Args{"kg": s.CapacityKg})})
		b.Stores = append(b.Stores, line)
	}
}

// monthAfter is the first day of the month after a day.
func monthAfter(d cal.Date) cal.Date { return cal.Of(d.Year(), d.Month()+1, 1) }

func (v *visit) larderSurplus(s *desk.SurplusView, today cal.Date) larderSurplus {
	out := larderSurplus{Name: capital(s.Plural), Path: vegetablePath(s.Vegetable), Says: v.sentence(sharpened(s.Says, today))}
	for _, want := range s.Wants {
		out.Ways = append(out.Ways, v.sentence(want))
	}
	for _, w := range s.Ways {
		if w.Kind == "give" && len(s.Ways) > 1 {
			continue // the list says so of all
		}
		out.Ways = append(out.Ways, v.sentence(w.Says))
		for _, step := range w.Prepare {
			out.Ways = append(out.Ways, v.sentence(step))
		}
	}
	return out
}

func giveWeeks(view *desk.LarderView) []giveWeek {
	var out []giveWeek
	for _, g := range view.Give {
		week := giveWeek{Week: g.Week}
		for _, line := range g.Lines {
			week.Lines = append(week.Lines, giveLine{capital(line.Plural), line.Kg, line.Good})
		}
		out = append(out, week)
	}
	return out
}

// spareFigure writes kilograms to a tenth, from ten up whole.
func spareFigure(f words.Formatter, kg float64) string {
	if kg < 9.95 {
		return f.Number(kg, 1)
	}
	return f.Number(kg, 0)
}

// giveBody is the list to give away, by itself.
type giveBody struct {
	Household string
	Today     cal.Date
	Give      []giveWeek
}

// givePage shows what there is to give away, to be printed and handed on.
func givePage(v *visit) error {
	view, err := v.office.LarderView()
	if err != nil {
		return err
	}
	return v.show(page{Name: "give", Nav: "larder", Body: giveBody{view.Household, view.Today, giveWeeks(view)}})
}

// batchCountPosted writes the count of a batch, or shows the larder again with what is
// wrong with it.
func batchCountPosted(v *visit) error {
	today, err := v.office.Today()
	if err != nil {
		return err
	}
	id, text := v.field("batch"), strings.TrimSpace(v.field("kg"))
	kg := 0.0
	if v.field("left") == "" {
		if kg, err = strconv.ParseFloat(strings.Replace(text, ",", ".", 1), 64); err != nil || !(kg >= 0 && kg <= mostNumber) {
			wrong := fault.New(fault.Invalid, "web.larder_count_wrong", words.Args{"given": text})
			if text == "" {
				wrong = fault.New(fault.Invalid, "web.larder_count_blank", nil)
			}
			return v.showLarder(countTyped{id, text, fault.List{wrong.In(fault.Place{Column: "kg"})}})
		}
	}
	kept, err := v.office.Count(v.author(), desk.StoreCount{Store: v.field("store"), Batch: id, On: today, Kg: kg, Sure: v.field(sureField) != ""})
	if faults := listOf(err); faults != nil {
		return v.showLarder(countTyped{id, text, faults})
	}
	if err != nil {
		return err
	}
	v.kept(kept, "/larder")
	return nil
}
