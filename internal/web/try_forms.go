package web

import (
	"net/url"
	"slices"
	"sort"
	"strconv"

	"garner/internal/cal"
	"garner/internal/cover"
	"garner/internal/desk"
	"garner/internal/fault"
	"garner/internal/holding"
	"garner/internal/plan"
	"garner/internal/words"
)

// changeForm lets a planting's date, bed, area and end be tried.
type changeForm struct {
	ID, Letter, Name string
	Path             string
	Tried            []string // hidden: what is tried already
	Date, ClearBy    tryField
	AreaM2           tryField
	Bed, Method      tryField
	Beds             []option
	Methods          []string
	Steps            []stepLink
	Leave            string // the address with the planting left out
	Cover            string // the bed's page, where its covers are
	CoverKind        tryField
	CoverOn          tryField
	CoverOff         tryField
	Kinds            []option
	Open             bool
}

// option is one choice of a list.
type option struct{ Value, Name string }

// stepLink moves a planting's date.
type stepLink struct {
	Name string // of the text, and of the link's id
	Path string
}

// addForm tries a planting more of the same vegetable.
type addForm struct {
	Path  string
	Tried []string
	Like  []option // the plantings there are, to take crop, variety and method from
	Beds  []option

	Date, AreaM2, Bed tryField
	Open              bool
}

func pathEscaped(id string) string { return url.PathEscape(id) }

// fields that a form may change, in the order of the columns.
var formFields = []string{"bed", "method", "date", "area_m2", "clear_by"}

func (v *visit) changeForm(g *grown, line *desk.PlantingLine, path string, tried []plan.Change) changeForm {
	p := g.plantings[line.ID]
	f := changeForm{ID: line.ID, Letter: line.Letter, Name: capital(line.Name), Path: path, Tried: writtenTries(tried)}
	if p == nil {
		return f
	}
	f.Date.Value, f.ClearBy.Value, f.AreaM2.Value = p.Date.String(), p.ClearBy.String(), plainNumber(p.AreaM2)
	f.Bed.Value, f.Method.Value = p.Bed, string(p.Method)
	f.Beds, f.Cover = bedOptions(g.holding), "/beds/"+pathEscaped(p.Bed)
	f.Kinds = coverOptions()
	f.coverTried(tried)
	f.Methods = []string{string(plan.Seed), string(plan.Plant), string(plan.Set), string(plan.Cutting), string(plan.Crown)}
	for _, s := range []struct {
		name string
		days int
	}{{"week_sooner", -7}, {"day_sooner", -1}, {"day_later", 1}, {"week_later", 7}} {
		f.Steps = append(f.Steps, stepLink{s.name, withTried(path, g.moved(tried, line, s.days))})
	}
	f.Leave = withTried(path, g.tidy(withChange(tried, plan.Change{Action: "remove", Planting: line.ID})))
	return f
}

// coverOptions are the covers that can be tried.
func coverOptions() []option {
	var out []option
	for _, k := range cover.Kinds() {
		if k != cover.Open && k != cover.Indoors {
			out = append(out, option{string(k), coverKey(k)})
		}
	}
	return out
}

// coverTried fills in the cover that is tried already.
func (f *changeForm) coverTried(tried []plan.Change) {
	for _, c := range tried {
		if c.Action != desk.CoverAction || c.Planting != f.ID {
			continue
		}
		if spell, err := desk.ReadCover(c.Value); err == nil {
			f.CoverKind.Value, f.CoverOn.Value, f.CoverOff.Value = string(spell.Kind), spell.On.String(), spell.Off.String()
		}
	}
}

// covered adds the cover that a form lays over a planting's bed.
func covered(p *plan.Planting, query url.Values, tried []plan.Change, wrong map[string]words.Phrase) []plan.Change {
	kind := query.Get("cover_kind")
	if kind == "" {
		return slices.DeleteFunc(slices.Clone(tried), func(c plan.Change) bool {
			return c.Action == desk.CoverAction && c.Planting == p.ID && query.Has("cover_kind")
		})
	}
	value := kind + ";" + query.Get("cover_on") + ";" + query.Get("cover_off")
	if _, err := desk.ReadCover(value); err != nil {
		wrong["cover_"+err.At.Column] = err.Phrase
		return tried
	}
	return withChange(tried, plan.Change{Action: desk.CoverAction, Planting: p.ID, Value: value})
}

func plainNumber(x float64) string { return strconv.FormatFloat(x, 'f', -1, 64) }

func writtenTries(tried []plan.Change) []string {
	out := make([]string, len(tried))
	for i, c := range tried {
		out[i] = writeChange(c)
	}
	return out
}

func bedOptions(h *holding.Holding) []option {
	var out []option
	for _, b := range h.Beds {
		name := b.Name
		if name == "" {
			name = b.ID
		}
		out = append(out, option{b.ID, name})
	}
	return out
}

// moved tries a planting a number of days later, but not before tomorrow.
func (g *grown) moved(tried []plan.Change, line *desk.PlantingLine, days int) []plan.Change {
	date := max(line.Date+cal.Date(days), g.today+1)
	return g.tidy(withChange(tried, plan.Change{Action: "set", Planting: line.ID, Field: "date", Value: date.String()}))
}

// tidy leaves out changes that change nothing.
func (g *grown) tidy(tried []plan.Change) []plan.Change {
	var out []plan.Change
	for _, c := range tried {
		if p, known := g.standing[c.Planting]; known && c.Action == "set" {
			own := *p
			if plan.SetField(&own, c.Field, c.Value) == nil && own == *p {
				continue
			}
		}
		out = append(out, c)
	}
	return out
}

// tryForm reads a form that tries a change and leads to the page's address with
// it, so that what is tried can be sent on and gone back from. What cannot be
// read is told beside its field.
func (v *visit) tryForm(path string, tried []plan.Change) (wrong map[string]words.Phrase, err error) {
	g, err := v.grown(tried)
	if err != nil {
		return nil, err
	}
	query := v.r.URL.Query()
	id, read := query.Get("change"), g.changed
	if id == "" {
		id, read = query.Get("add"), g.added
	}
	p, known := g.plantings[id]
	if !known {
		return nil, fault.New(fault.NotFound, "desk.planting_unknown", words.Args{"planting": id})
	}
	tried, wrong = read(p, query, tried)
	if len(wrong) == 0 {
		v.moveTo(withTried(path, g.tidy(tried)))
	}
	return wrong, nil
}

// changed adds what a form changes of a planting.
func (g *grown) changed(p *plan.Planting, query url.Values, tried []plan.Change) ([]plan.Change, map[string]words.Phrase) {
	wrong := map[string]words.Phrase{}
	for _, field := range formFields {
		if !query.Has(field) {
			continue
		}
		own := *p
		if err := plan.SetField(&own, field, query.Get(field)); err != nil {
			wrong[field] = err.Phrase
		} else if own != *p {
			tried = withChange(tried, plan.Change{Action: "set", Planting: p.ID, Field: field, Value: query.Get(field)})
		}
	}
	return covered(p, query, tried, wrong), wrong
}

// added adds a planting like another one, on another day and bed.
func (g *grown) added(p *plan.Planting, query url.Values, tried []plan.Change) ([]plan.Change, map[string]words.Phrase) {
	wrong := map[string]words.Phrase{}
	own := plan.New("", "")
	list := ""
	for _, f := range []struct{ name, value string }{{"bed", query.Get("bed")}, {"crop", p.Crop}, {"use", p.Use}, {"variety", p.Variety},
		{"method", string(p.Method)}, {"date", query.Get("date")}, {"area_m2", query.Get("area_m2")}, {"store", p.Store}} {
		if err := plan.SetField(&own, f.name, f.value); err != nil {
			wrong[f.name] = err.Phrase
		} else if f.value != "" {
			list = withField(list, f.name, f.value)
		}
	}
	return append(tried, plan.Change{Action: "add", Planting: g.freeID(p.ID), Value: list}), wrong
}

// typed puts what was typed back into the form it came from, with what is wrong.
func (b *vegetableBody) typed(query url.Values, wrong map[string]words.Phrase) {
	fill := filler(query, wrong)
	for i := range b.Forms {
		if f := &b.Forms[i]; f.ID == query.Get("change") {
			f.Open = true
			fill(&f.Date, "date")
			fill(&f.ClearBy, "clear_by")
			fill(&f.AreaM2, "area_m2")
			fill(&f.Bed, "bed")
			fill(&f.Method, "method")
			fill(&f.CoverKind, "cover_kind")
			fill(&f.CoverOn, "cover_on")
			fill(&f.CoverOff, "cover_off")
		}
	}
	if b.Add != nil && query.Has("add") {
		b.Add.Open = true
		fill(&b.Add.Date, "date")
		fill(&b.Add.AreaM2, "area_m2")
		fill(&b.Add.Bed, "bed")
	}
}

// freeID is an id that no planting has, after the one it is like.
func (g *grown) freeID(like string) string {
	taken := map[string]bool{}
	for id := range g.plantings {
		taken[id] = true
	}
	for _, p := range g.holding.Plantings {
		taken[p.ID] = true
	}
	for n := 2; ; n++ {
		if id := like + "-" + strconv.Itoa(n); !taken[id] {
			return id
		}
	}
}

func (v *visit) addForm(g *grown, view *desk.VegetableView, tried []plan.Change) *addForm {
	f := &addForm{Path: vegetablePath(view.Name), Tried: writtenTries(tried), Beds: bedOptions(g.holding),
		Date: tryField{Value: (view.Today + 14).String()}, AreaM2: tryField{Value: "1"}}
	seen := map[string]bool{}
	for i := len(view.Plantings) - 1; i >= 0; i-- {
		line := &view.Plantings[i]
		p := g.plantings[line.ID]
		if p == nil {
			continue
		}
		kind := p.Crop + "/" + p.Use + "/" + p.Variety + "/" + string(p.Method)
		if !seen[kind] {
			seen[kind] = true
			f.Like = append(f.Like, option{line.ID, line.Letter + "  " + capital(line.Name)})
		}
	}
	sort.SliceStable(f.Like, func(i, k int) bool { return f.Like[i].Name < f.Like[k].Name })
	if len(f.Like) == 0 {
		return nil
	}
	return f
}
