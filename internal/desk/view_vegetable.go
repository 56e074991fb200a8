package desk

import (
	"slices"
	"sort"

	"garner/internal/cal"
	"garner/internal/fault"
	"garner/internal/growth"
	"garner/internal/num"
	"garner/internal/outlook"
	"garner/internal/plan"
	"garner/internal/season"
	"garner/internal/words"
)

// VegetableView returns one vegetable as it stands, or with changes tried and
// then how it stood before.
func (o *Office) VegetableView(name string, try []plan.Change) (*VegetableView, error) {
	if len(try) == 0 {
		return o.standingView(name)
	}
	a, err := o.ask(try)
	if err != nil {
		return nil, err
	}
	t, err := o.table(a)
	if err != nil {
		return nil, err
	}
	v, err := o.vegetableView(a, t, name)
	if err != nil {
		return nil, err
	}
	v.Tried = try
	v.Before, err = o.standingView(name)
	if fault.KindOf(err) == fault.NotFound {
		return v, nil // only the change grows it
	}
	if err == nil {
		letterAfter(v, v.Before)
	}
	return v, err
}

// standingView is a vegetable as it stands.
func (o *Office) standingView(name string) (*VegetableView, error) {
	a, err := o.ask(nil)
	if err != nil {
		return nil, err
	}
	d := a.answer("vegetable")
	d.Text(name)
	key := d.Sum()
	if v, known := o.views.vegetables.get(key); known {
		return v, nil
	}
	t, err := o.table(a)
	if err != nil {
		return nil, err
	}
	v, err := o.vegetableView(a, t, name)
	if err == nil {
		o.views.vegetables.keep(key, v)
	}
	return v, err
}

func (o *Office) vegetableView(a *asked, t *outlook.Table, name string) (*VegetableView, error) {
	at := -1
	for i := range t.Vegetables {
		if t.Vegetables[i].Name == name {
			at = i
		}
	}
	if at < 0 {
		return nil, fault.New(fault.NotFound, "desk.vegetable_unknown", words.Args{"name": name})
	}
	w := t.Weekly(at, true)
	v := &VegetableView{Name: name, Today: a.setting.Today, From: t.From, Weeks: t.Weeks, WantKg: w.Want}
	v.Ribbon = ribbonView(a, t, at, &w)
	v.Plural = v.Ribbon.Plural
	for _, g := range t.Gaps(&w) {
		v.Gaps = append(v.Gaps, gapView(g))
		v.Sentences = append(v.Sentences, words.P("desk.gap_said", words.Args{"first": g.First, "last": g.Last, "chance": g.Chance, "lacks": g.Lacks}))
	}
	if len(v.Gaps) == 0 {
		v.Sentences = append(v.Sentences, v.Ribbon.Sentence)
	}
	n := newNamer(a)
	v.Sources, v.Plantings = n.sources(t, name), o.lines(a, t, n, feeds(a.holding, name))
	letter(v)
	for _, c := range a.setting.Book.Crops() {
		if slices.Contains(feeds(a.holding, name), c.Vegetable) {
			v.Crops = append(v.Crops, CropName{c.ID, c.Name})
		}
	}
	return v, nil
}

func (n *namer) sources(t *outlook.Table, vegetable string) []SourceView {
	var out []SourceView
	for _, s := range t.Sources(vegetable) {
		v := SourceView{Planting: s.Planting, Batch: s.Batch, Store: s.Store, FreshKg: s.Fresh, StoredKg: s.Stored}
		if s.Planting != "" {
			v.Name = n.planting(s.Planting)
		} else {
			v.Name = n.batch(s.Batch)
		}
		if total(s.Fresh)+total(s.Stored) > 0 {
			out = append(out, v)
		}
	}
	return out
}

func total(v []float64) (sum float64) {
	for _, x := range v {
		sum += x
	}
	return sum
}

// lines tells the plantings of vegetables on the table's time axis, in order of
// date.
func (o *Office) lines(a *asked, t *outlook.Table, n *namer, vegetables []string) []PlantingLine {
	var out []PlantingLine
	for _, vegetable := range vegetables {
		leaf := o.leaves(a, t, vegetable)
		for i := range t.Plantings {
			f := &t.Plantings[i]
			if n.vegetableOf(f.Crop, f.Use) == vegetable {
				out = append(out, n.line(t, f, leaf[f.Planting]))
			}
		}
	}
	sort.SliceStable(out, func(i, k int) bool { return out[i].Date < out[k].Date })
	return out
}

func (n *namer) line(t *outlook.Table, f *outlook.Fate, leaf []float32) PlantingLine {
	p := n.plantings[f.Planting]
	l := PlantingLine{ID: p.ID, Name: n.planting(p.ID), Bed: p.Bed, BedName: n.bed(p.Bed), Method: string(p.Method),
		Date: p.Date, AreaM2: p.AreaM2, Leaf: leaf, Movable: p.Date > n.a.setting.Today}
	l.Picked = picked(t, f)
	var ready, over, kg []float64
	fails := 0
	for _, y := range f.Years {
		if y.Ready >= 0 && usable(y.End) {
			ready = append(ready, float64(y.Ready))
		} else if y.End != growth.Lifted {
			fails++
		}
		if y.Over >= 0 {
			over = append(over, float64(y.Over))
		}
		kg = append(kg, harvestKg(y))
	}
	l.Fails = float64(fails) / float64(len(f.Years))
	l.Ready, l.Over = oddsOf(f.First, ready), oddsOf(f.First, over)
	copy(l.YieldKg[:], num.Quantiles(kg, 0.1, 0.5, 0.9))
	return l
}

func usable(e growth.End) bool {
	return e == growth.Harvested || e == growth.Covered || e == growth.Unfinished
}

// harvestKg is what a planting could give under one future: all its pickings and
// what stands half-way through its standing [kg].
func harvestKg(y *season.Outcome) float64 {
	sum := 0.0
	for _, v := range y.Flow {
		sum += float64(v)
	}
	if n := len(y.Standing); n > 0 {
		sum += float64(y.Standing[n/2])
	}
	return sum
}

func oddsOf(first cal.Date, days []float64) Odds {
	if len(days) == 0 {
		return Odds{cal.None, cal.None, cal.None}
	}
	q := num.Quantiles(days, 0.1, 0.5, 0.9)
	return Odds{first + cal.Date(q[0]), first + cal.Date(q[1]), first + cal.Date(q[2])}
}

// picked is the share of futures in which a planting stands ready or is being
// picked, by step of the table.
func picked(t *outlook.Table, f *outlook.Fate) []float32 {
	out := make([]float32, t.Weeks*outlook.StepsAWeek)
	first := int(t.From - f.First)
	for _, y := range f.Years {
		flowing := flowSpans(y)
		for s := range out {
			day := first + int(float64(s)*Step)
			for len(flowing) > 0 && day >= flowing[0].to {
				flowing = flowing[1:]
			}
			if within(day, y.Ready, len(y.Standing)) || len(flowing) > 0 && day >= flowing[0].from {
				out[s]++
			}
		}
	}
	for s := range out {
		out[s] /= float32(len(f.Years))
	}
	return out
}

// pickingPause is the longest time between two pickings of one harvest [d]: cut
// leaf grows again in less, and a perennial rests for longer.
const pickingPause = 21 // judgement

// daySpan is a run of day indexes, without the last.
type daySpan struct{ from, to int }

// flowSpans are the runs of days over which a planting is picked again and again.
func flowSpans(y *season.Outcome) []daySpan {
	var out []daySpan
	for i, kg := range y.Flow {
		if kg <= 0 {
			continue
		}
		day := y.First + i
		if n := len(out); n > 0 && day-out[n-1].to < pickingPause {
			out[n-1].to = day + 1
			continue
		}
		out = append(out, daySpan{day, day + 1})
	}
	return out
}

func within(day, from, length int) bool { return from >= 0 && day >= from && day < from+length }
