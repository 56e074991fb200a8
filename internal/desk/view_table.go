package desk

import (
	"encoding/json"

	"garner/internal/cal"
	"garner/internal/crop"
	"garner/internal/holding"
	"garner/internal/num"
	"garner/internal/outlook"
	"garner/internal/plan"
	"garner/internal/sun"
	"garner/internal/words"
)

// viewForm names the form in which views are kept; another form is another name.
const viewForm = "table view 6"

// TableView returns the first page as it stands or with changes tried. A view
// computed before from the same inputs is not computed again. When the program
// has just started and only an older view is at hand, that one is returned,
// marked as stale, and the new one is made ready behind it.
func (o *Office) TableView(try []plan.Change) (*TableView, error) {
	a, err := o.ask(try)
	if err != nil {
		return nil, err
	}
	key := a.key(viewForm)
	if view, ok := o.keptView(key); ok {
		return view, nil
	}
	if !a.tried && o.cold() {
		if view, ok := o.keptView(LatestView()); ok {
			old := *view
			old.Stale = true
			o.begin(key, func() (any, error) { return o.makeTableView(a, key) })
			return &old, nil
		}
	}
	return o.makeTableView(a, key)
}

func (a *asked) key(form string) num.Digest {
	d := num.NewDigester(form)
	d.Digest(a.name)
	d.Int(int64(a.setting.Today))
	d.Text(a.holding.Name)
	d.Float(a.holding.Eaters)
	return d.Sum()
}

// latestView is where the newest view of the plan in force is kept as well.
func LatestView() num.Digest { return num.NewDigester("latest " + viewForm).Sum() }

// cold tells whether nothing was computed since the program started. It does not
// wait for what is being computed.
func (o *Office) cold() bool {
	return !o.warmed.Load()
}

// warm computes a table behind the page, so that the next look finds it.
func (o *Office) warm(a *asked) {
	o.begin(a.key("warm"), func() (any, error) { return o.table(a) })
}

func (o *Office) keptView(key num.Digest) (*TableView, bool) {
	if view, known := o.views.tables.get(key); known {
		return view, true
	}
	text, ok, err := o.keeper.Result(key)
	if err != nil || !ok {
		return nil, false
	}
	view := &TableView{}
	if json.Unmarshal(text, view) != nil {
		return nil, false
	}
	o.views.tables.keep(key, view)
	return view, true
}

func (o *Office) makeTableView(a *asked, key num.Digest) (*TableView, error) {
	t, err := o.table(a)
	if err != nil {
		return nil, err
	}
	view := tableView(a, t, t.Summarise(true))
	o.views.tables.keep(key, view)
	if a.tried {
		return view, nil
	}
	text, err := json.Marshal(view)
	if err != nil {
		return nil, err
	}
	o.views.tables.keep(LatestView(), view)
	if err := o.keeper.Keep(key, text); err != nil {
		return nil, err
	}
	return view, o.keeper.Keep(LatestView(), text)
}

func tableView(a *asked, t *outlook.Table, s *outlook.Summary) *TableView {
	h := a.holding
	v := &TableView{Household: h.Name, Eaters: h.Eaters, Today: a.setting.Today, From: t.From, Weeks: t.Weeks, Years: t.Years}
	for i := range t.Vegetables {
		v.Vegetables = append(v.Vegetables, ribbonView(a, t, i, &s.Vegetables[i]))
	}
	v.Share = ribbonOf(t.Plate())
	v.Share.WantKg = wholeWant(s)
	v.shares(t, s)
	v.Lead = lead(a.setting.Book, t, s)
	if v.Bare = bare(h); v.Bare {
		v.Lead = words.P("desk.lead_nothing", nil)
	}
	if len(h.Sites) > 0 {
		v.Daylight = daylight(h.Sites[0].Location, t.From, t.Weeks)
	}
	return v
}

// bare tells that nothing grows, is meant to or lies in store.
func bare(h *holding.Holding) bool {
	plantings, _ := plan.Resolve(h.Plans, h.Plantings, h.Changes, h.Plan)
	return len(plantings) == 0 && len(h.Batches) == 0
}

func ribbonView(a *asked, t *outlook.Table, i int, w *outlook.Weekly) RibbonView {
	v := ribbonOf(t.Ribbon(&t.Vegetables[i]))
	v.Name, v.WantKg, v.Chance = w.Name, w.Want, w.GapChance
	v.FreshKg, v.StoredKg = w.Fresh, w.Stored
	v.Held, v.BoughtKg = w.Importance, total(w.Bought)
	v.Plural = vegetablePlural(a.setting.Book, w.Name)
	for k, g := range t.Gaps(w) {
		view := gapView(g)
		if k == 0 {
			v.Gap = &view
		}
		v.GapKg += g.ShortKg
	}
	v.Sentence = rowSentence(&v, w, t)
	return v
}

func ribbonOf(r outlook.Ribbon) RibbonView {
	return RibbonView{Ground: r.Ground, Food: r.Food, Bought: r.Bought, Over: r.Over}
}

func gapView(g outlook.Gap) GapView {
	return GapView{First: g.First, Last: g.Last, Weeks: g.Weeks, Good: g.Good, Poor: g.Poor, Chance: g.Chance, Lacks: g.Lacks, Now: g.Now}
}

// vegetablePlural is the name of a vegetable at the table, in the plural where the book
// has a crop of that name.
func vegetablePlural(b *crop.Book, vegetable string) string {
	for _, c := range b.Crops() {
		if c.Vegetable == vegetable && c.Name == vegetable {
			return c.Plural
		}
	}
	for _, c := range b.Crops() {
		if c.Vegetable == vegetable {
			return c.Vegetable
		}
	}
	return vegetable
}

// rowSentence says what a row shows: its next gap, a thin time, what is to
// spare, or that all is well.
func rowSentence(v *RibbonView, w *outlook.Weekly, t *outlook.Table) words.Phrase {
	if g := v.Gap; g != nil {
		key := "desk.row_short"
		switch {
		case g.Now:
			key = "desk.row_short_now"
		case g.Good == g.Poor:
			key = "desk.row_short_sure"
		}
		return words.P(key, words.Args{"weeks": g.Weeks, "first": g.First, "good": g.Good, "poor": g.Poor, "last": g.Last})
	}
	worst, at := 0.0, 0
	spare, spareAt := 0, -1
	for k := range w.Want {
		if w.GapChance[k] > worst {
			worst, at = w.GapChance[k], k
		}
		if w.Want[k] > 0 && w.Over[k] > w.Want[k] {
			if spareAt < 0 {
				spareAt = k
			}
			spare++
		}
	}
	switch {
	case worst >= thinWeek:
		return words.P("desk.row_thin", words.Args{"first": t.From + cal.Date(7*at), "chance": worst})
	case spare > 0:
		return words.P("desk.row_spare", words.Args{"weeks": spare, "first": t.From + cal.Date(7*spareAt)})
	}
	return words.P("desk.row_enough", nil)
}

// thinWeek is the chance of a gap from which a week is called thin.
const thinWeek = 0.2

func wholeWant(s *outlook.Summary) []float64 {
	var sum []float64
	for i := range s.Vegetables {
		for k, kg := range s.Vegetables[i].Want {
			if sum == nil {
				sum = make([]float64, len(s.Vegetables[i].Want))
			}
			sum[k] += kg
		}
	}
	return sum
}

// shares finds the thinnest week of the year ahead and how it stands in the poor
// and the good year of ten.
func (v *TableView) shares(t *outlook.Table, s *outlook.Summary) {
	var at int
	at, v.ThinShare = thinnest(s.Share)
	if len(s.Share) > 0 {
		v.ShareNow = s.Share[0]
	}
	v.Thinnest = t.From + cal.Date(7*at)
	var years []float64
	for f := range t.Years {
		got, want := 0.0, 0.0
		for i := range s.Vegetables {
			w := &s.Vegetables[i]
			got += w.Members[f].Fresh[at] + w.Members[f].Stored[at]
			want += w.Want[at]
		}
		if want > 0 {
			years = append(years, got/want)
		}
	}
	if v.ThinPoor, v.ThinGood = v.ThinShare, v.ThinShare; len(years) == 0 {
		return // nothing is wanted in that week
	}
	q := num.Quantiles(years, 0.1, 0.9)
	v.ThinPoor, v.ThinGood = q[0], q[1]
}

func daylight(at sun.Location, from cal.Date, weeks int) []float64 {
	out := make([]float64, weeks)
	for k := range out {
		out[k] = sun.DayLengthH(at.LatitudeDeg, (from + cal.Date(7*k+3)).DayOfYear())
	}
	return out
}
