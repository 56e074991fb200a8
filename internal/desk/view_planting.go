package desk

import (
	"sort"

	"garner/internal/cal"
	"garner/internal/crop"
	"garner/internal/fault"
	"garner/internal/growth"
	"garner/internal/outlook"
	"garner/internal/plan"
	"garner/internal/words"
)

// PlantingView returns one planting's expected course and why it goes so.
func (o *Office) PlantingView(id string, try []plan.Change) (*PlantingView, error) {
	a, err := o.ask(try)
	if err != nil {
		return nil, err
	}
	t, err := o.table(a)
	if err != nil {
		return nil, err
	}
	n := newNamer(a)
	p, known := n.plantings[id]
	if !known {
		return nil, fault.New(fault.NotFound, "desk.planting_unknown", words.Args{"planting": id})
	}
	v := &PlantingView{Vegetable: n.vegetableOf(p.Crop, p.Use), Feeds: n.feeds(p.Crop, p.Use), Crop: p.Crop, Use: p.Use, Variety: p.Variety, Ends: map[string]float64{}}
	v.PlantingLine = PlantingLine{ID: id, Name: n.planting(id), Bed: p.Bed, BedName: n.bed(p.Bed), Method: string(p.Method), Date: p.Date, AreaM2: p.AreaM2}
	if row, version, err := o.keeper.Row("plantings", id); err == nil && row != nil {
		v.Version = version
	}
	v.facts(a.setting.Book)
	if _, u, err := useOf(a.setting.Book, p.Crop, p.Use); err == nil && u.Pattern == crop.Perennial {
		v.AgeYield = u.AgeYield[:]
		if heir, ok := heirOf(a.holding, u, &p); ok {
			v.Heir = &heir
		}
	}
	for i := range t.Plantings {
		if f := &t.Plantings[i]; f.Planting == id {
			v.PlantingLine = n.line(t, f, o.leaves(a, t, v.Vegetable)[id])
			o.tell(v, a, t, f, n)
			v.Why = append(v.Why, lossesTold(a, &p)...)
			v.Why = append(v.Why, stockTold(t, id)...)
			return v, nil
		}
	}
	v.Why = append(v.Why, lossesTold(a, &p)...)
	if len(v.Why) == 0 {
		v.Why = append(v.Why, words.P("desk.why_outside", nil))
	}
	return v, nil
}

// tell fills in the course of the middle year and the reasons.
func (o *Office) tell(v *PlantingView, a *asked, t *outlook.Table, f *outlook.Fate, n *namer) {
	for _, y := range f.Years {
		v.Ends[y.End.Key()] += 1 / float64(len(f.Years))
	}
	o.computing.Lock()
	courses := t.Courses(f.Bed, middleYear(f))
	o.computing.Unlock()
	for i := range courses {
		if courses[i].Planting == f.Planting {
			v.Course = courseDays(&courses[i])
			light := lightFrom(LightOn(a.holding, n.beds[f.Bed]), courses[i].First, len(courses[i].Days))
			v.Why = reasons(v, &courses[i], light)
		}
	}
}

// middleYear is the future in which the planting comes ready nearest the middle.
func middleYear(f *outlook.Fate) int {
	type year struct{ at, ready int }
	var years []year
	for i, y := range f.Years {
		if y.Ready >= 0 {
			years = append(years, year{i, y.Ready})
		}
	}
	if len(years) == 0 {
		return 0
	}
	sort.SliceStable(years, func(i, k int) bool { return years[i].ready < years[k].ready })
	return years[len(years)/2].at
}

// courseStep is the distance of the days a course tells.
const courseStep = 3

func courseDays(c *outlook.Course) []CourseDay {
	var out []CourseDay
	for i := 0; i < len(c.Days); i += courseStep {
		d := &c.Days[i]
		out = append(out, CourseDay{Date: c.First + cal.Date(i), Stage: d.Stage.String(), LAI: d.Leaf, KgM2: d.KgM2,
			LightMJ: d.PARMJ * 2, MeanC: d.MeanC})
	}
	return out
}

// reasons says what decides a planting's course.
func reasons(v *PlantingView, c *outlook.Course, light float64) []words.Phrase {
	var why []words.Phrase
	add := func(key string, args words.Args) { why = append(why, words.P("desk.why_"+key, args)) }
	if v.Ready.P50.IsSet() {
		add("ready", words.Args{"first": v.Ready.P10, "middle": v.Ready.P50, "last": v.Ready.P90, "fails": v.Fails})
	} else {
		add("never", nil)
	}
	if at, mj, stops := standstill(c); stops {
		add("light", words.Args{"first": at, "light": mj})
	}
	if light > 0 && light < 0.95 {
		add("shade", words.Args{"share": 1 - light})
	}
	for _, e := range []growth.End{growth.Killed, growth.Bolted, growth.TooSmall, growth.TooSlow, growth.TooHot} {
		if share := v.Ends[e.Key()]; share >= 0.05 {
			add(e.Key(), words.Args{"chance": share})
		}
	}
	return why
}

// stillMJ is the light a day under which crops all but stand still [MJ/m2].
const stillMJ = 3.2

// standstill finds the day from which a crop not yet ready gets too little light
// to go on, over ten days, with the light it gets.
func standstill(c *outlook.Course) (cal.Date, float64, bool) {
	const span = 10
	sum := 0.0
	for i := range c.Days {
		d := &c.Days[i]
		if d.Stage == growth.Ready || d.Stage == growth.Resting || d.Stage == growth.Over {
			return cal.None, 0, false
		}
		sum += 2 * d.PARMJ
		if i >= span {
			sum -= 2 * c.Days[i-span].PARMJ
		}
		if i >= span && d.Develop > 0.1 && sum/span < stillMJ {
			return c.First + cal.Date(i-span/2), sum / span, true
		}
	}
	return cal.None, 0, false
}

// shownFacts are the numbers of the book a grower looks for first.
var shownFacts = []string{"days_seed", "days_plant", "days_set", "base_c", "optimum_c", "kill_c", "kill_hardened_c", "in_row_m",
	"between_row_m", "piece_g", "usable_g", "yield_kg_m2", "stand_days", "stand_loss", "weight_spread", "date_spread_d"}

func (v *PlantingView) facts(b *crop.Book) {
	c, ok := b.Crop(v.Crop)
	if !ok {
		return
	}
	u, err := c.Use(v.Use)
	if err != nil {
		return
	}
	for _, key := range c.Cautions {
		if caution, ok := b.Caution(key); ok {
			v.Cautions = append(v.Cautions, caution.Text)
		}
	}
	for _, name := range shownFacts {
		if f := u.Fact(name); f.Source != "" && f.Value != 0 {
			v.Facts = append(v.Facts, cropFact(b, name, f))
		}
	}
	if v.Method == crop.Seed {
		v.SeedG = SeedG(u, v.AreaM2)
	}
}
