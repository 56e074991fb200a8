package web

import (
	"math"
	"strconv"
	"strings"

	"garner/internal/cover"
	"garner/internal/desk"
	"garner/internal/plan"
	"garner/internal/words"
)

// triedBody is what is being tried: the changes, what they do, and the ways to
// keep them or put them back.
type triedBody struct {
	Changes []triedChange
	Sum     string // what it comes to, in weeks at the table
	Rows    []compared
	Step    *stepper
	Entry   string
	Tried   []string // hidden fields of the form that keeps them
	Kept    string   // the page to go on to once they are kept
	Back    string   // the page without them
}

// triedChange is one change in words, with the address of the page without it.
type triedChange struct{ Text, Without string }

// compared is one figure as it stands and as tried.
type compared struct {
	Name          string
	Before, After string
	Moved         bool
}

// stepper moves the date of the planting that was changed last.
type stepper struct {
	ID, Letter    string
	Date          words.Phrase
	Sooner, Later string
}

// triedPanel says what is tried; the figures are added by each page.
func (v *visit) triedPanel(g *grown, path string, tried []plan.Change, letters map[string]string) (*triedBody, error) {
	entry, err := v.entry()
	if err != nil {
		return nil, err
	}
	b := &triedBody{Entry: entry, Tried: writtenTries(tried), Kept: path, Back: path}
	for i, c := range tried {
		rest := append(append([]plan.Change{}, tried[:i]...), tried[i+1:]...)
		b.Changes = append(b.Changes, triedChange{Text: v.sentence(g.changeWords(c, letters)), Without: withTried(path, rest)})
	}
	return b, nil
}

// changeWords tells one change: the planting, what it would be and what it is.
func (g *grown) changeWords(c plan.Change, letters map[string]string) words.Phrase {
	name := letters[c.Planting]
	if name == "" {
		name = g.shortName(c.Planting)
	}
	args := words.Args{"planting": name}
	switch c.Action {
	case "remove":
		return words.P("web.vegetable_tried_remove", args)
	case desk.LeaveAction:
		first, last := desk.LeftSpan(c)
		return words.P("web.tried_leave", words.Args{"vegetable": c.Planting, "first": planned(first, g.today), "last": planned(last, g.today)})
	case desk.BuyAction:
		p := desk.Bought(c)
		return words.P("web.tried_buy", words.Args{"vegetable": c.Planting, "weight": p.KgPerWeek, "first": planned(p.From, g.today), "last": planned(p.To, g.today)})
	case desk.CoverAction:
		return g.coverWords(c, args)
	case "add":
		if p := g.plantings[c.Planting]; p != nil {
			args["date"], args["bed"], args["area"] = planned(p.Date, g.today), g.bedName(p.Bed), p.AreaM2
			return words.P("web.vegetable_tried_add", args)
		}
	}
	args["given"], args["field"] = c.Value, c.Field
	p, stands := g.plantings[c.Planting], g.standing[c.Planting]
	if p == nil || stands == nil {
		return words.P("web.vegetable_tried_other", args)
	}
	if told, ok := g.besideChange(p, c.Field, args); ok {
		return told
	}
	switch c.Field {
	case "date":
		args["date"], args["before"] = planned(p.Date, g.today), planned(stands.Date, g.today)
		return words.P("web.vegetable_tried_date", args)
	case "bed":
		args["bed"], args["before"] = g.bedName(p.Bed), g.bedName(stands.Bed)
		return words.P("web.vegetable_tried_bed", args)
	case "area_m2":
		args["area"], args["before"] = p.AreaM2, stands.AreaM2
		return words.P("web.vegetable_tried_area", args)
	case "clear_by":
		args["date"] = planned(p.ClearBy, g.today)
		if p.ClearBy.IsSet() {
			return words.P("web.vegetable_tried_clear", args)
		}
		return words.P("web.vegetable_tried_no_clear", args)
	case "store":
		args["store"] = g.storeName(p.Store)
		if p.Store != "" {
			return words.P("web.vegetable_tried_store", args)
		}
		return words.P("web.vegetable_tried_no_store", args)
	case "method":
		args["method"] = words.P("web.vegetable_method_"+string(p.Method), nil)
		return words.P("web.vegetable_tried_method", args)
	}
	return words.P("web.vegetable_tried_other", args)
}

// coverWords tells a cover that is tried over a planting's bed.
func (g *grown) coverWords(c plan.Change, args words.Args) words.Phrase {
	spell, err := desk.ReadCover(c.Value)
	if err != nil {
		return words.P("web.vegetable_tried_other", args)
	}
	args["kind"] = words.P("desk.value_covers.kind."+coverKey(spell.Kind), nil)
	args["on"] = planned(spell.On, g.today)
	if !spell.Off.IsSet() {
		return words.P("web.vegetable_tried_cover_stays", args)
	}
	args["off"] = planned(spell.Off, g.today)
	return words.P("web.vegetable_tried_cover", args)
}

// coverKey is the last part of the key of a kind's name.
func coverKey(k cover.Kind) string {
	return strings.NewReplacer(" + ", "_", " ", "_").Replace(string(k))
}

func (g *grown) bedName(id string) string {
	for _, b := range g.holding.Beds {
		if b.ID == id && b.Name != "" {
			return b.Name
		}
	}
	return id
}

func (g *grown) storeName(id string) string {
	for _, s := range g.holding.Stores {
		if s.ID == id && s.Name != "" {
			return s.Name
		}
	}
	return id
}

// shortName names a planting where it has no letter.
func (g *grown) shortName(id string) string {
	p := g.plantings[id]
	if p == nil {
		p = g.standing[id]
	}
	if p == nil {
		return id
	}
	return p.Crop + ", " + g.bedName(p.Bed)
}

// compareVegetables puts a vegetable as it stands beside it as tried.
func (v *visit) compareVegetables(view *desk.VegetableView, g *grown, path string, tried []plan.Change) (*triedBody, error) {
	letters := map[string]string{}
	for _, l := range view.Plantings {
		letters[l.ID] = l.Letter
	}
	b, err := v.triedPanel(g, path, tried, letters)
	if err != nil {
		return nil, err
	}
	before := view.Before
	if before == nil {
		before = &desk.VegetableView{From: view.From, Weeks: view.Weeks}
	}
	was, is := shortWeeks(before), shortWeeks(view)
	for _, year := range yearsOf(view.From, view.Weeks) {
		b.row(v.say("web.vegetable_weeks_short", words.Args{"year": strconv.Itoa(year)}), float64(was[year]), float64(is[year]), v.whole)
	}
	b.row(v.say("web.vegetable_eaten", nil), eatenKg(before), eatenKg(view), v.words.Format().Kilograms)
	b.row(v.say("web.vegetable_spare", nil), spareKg(&before.Ribbon), spareKg(&view.Ribbon), v.words.Format().Kilograms)
	b.Sum = v.mendsWords(before.Gaps, view.Gaps)
	b.Step = v.stepperOf(view, g, path, tried)
	return b, nil
}

func (v *visit) whole(x float64) string { return v.words.Format().Number(x, 0) }

// row adds a figure of which both stands are told.
func (b *triedBody) row(name string, before, after float64, write func(float64) string) {
	r := compared{Name: name, Before: write(before), After: write(after)}
	r.Moved = r.Before != r.After
	b.Rows = append(b.Rows, r)
}

// stepperOf moves the planting that was changed last, if its date lies ahead.
func (v *visit) stepperOf(view *desk.VegetableView, g *grown, path string, tried []plan.Change) *stepper {
	for i := len(tried) - 1; i >= 0; i-- {
		for k := range view.Plantings {
			line := &view.Plantings[k]
			if line.ID != tried[i].Planting || !line.Movable {
				continue
			}
			return &stepper{ID: line.ID, Letter: line.Letter, Date: planned(line.Date, view.Today),
				Sooner: withTried(path, g.moved(tried, line, -7)), Later: withTried(path, g.moved(tried, line, 7))}
		}
	}
	return nil
}

// compareTables puts the whole table as it stands beside it as tried.
func (v *visit) compareTables(b *tableBody, before, after *desk.TableView, tried []plan.Change) error {
	g, err := v.grown(tried)
	if err != nil {
		return err
	}
	g.today = after.Today
	if b.Tried, err = v.triedPanel(g, "/", tried, nil); err != nil {
		return err
	}
	percent := v.words.Format().Percent
	b.Tried.row(v.say("web.table_share_all", nil), wholeShare(before), wholeShare(after), percent)
	b.Tried.row(v.say("web.table_share_thin", nil), before.ThinShare, after.ThinShare, percent)
	stood, shown := byName(before), rowOrder(after, b.Own)
	for i, r := range shown {
		if was := stood[r.Name]; was != nil {
			b.Rows[i].Changed = v.changedWords(was, r)
		}
	}
	return nil
}

// changedWords says what a change does to what lacks of a vegetable.
func (v *visit) changedWords(was, is *desk.RibbonView) string {
	less := was.GapKg - is.GapKg
	switch {
	case math.Abs(less) < 0.05:
		return ""
	case less > 0:
		return v.say("web.table_lacks_less", words.Args{"kg": less})
	}
	return v.say("web.table_lacks_more", words.Args{"kg": -less})
}
