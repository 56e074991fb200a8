package desk

import "garner/internal/outlook"

// GroundFigures is what the ground gives the table.
type GroundFigures struct {
	Share      float64 // of the want over the whole table, home-grown, 0-1
	Vegetables []GroundShort
}

// GroundShort is when one vegetable is short.
type GroundShort struct {
	Name, Plural string
	Gaps         []GapView
}

// vegetableWeeks is what the figures take of one vegetable's weeks.
type vegetableWeeks struct {
	got, want float64 // over the table [kg]
	gaps      []GapView
}

// groundFigures adds the table up. Only vegetables that something has changed for
// are added up anew.
func (o *Office) groundFigures(a *asked, t *outlook.Table) GroundFigures {
	var f GroundFigures
	got, want := 0.0, 0.0
	for i := range t.Vegetables {
		w := o.weeksOf(t, i)
		got, want = got+w.got, want+w.want
		name := t.Vegetables[i].Name
		f.Vegetables = append(f.Vegetables, GroundShort{Name: name, Plural: vegetablePlural(a.setting.Book, name), Gaps: w.gaps})
	}
	f.Share = 1
	if want > 0 {
		f.Share = got / want
	}
	return f
}

func (o *Office) weeksOf(t *outlook.Table, i int) *vegetableWeeks {
	key, named := t.VegetableName(i)
	if named {
		if w, known := o.views.weeks.get(key); known {
			return w
		}
	}
	weekly := t.Weekly(i, true) // the good and the poor year of a gap take every future
	w := &vegetableWeeks{}
	for k := range weekly.Want {
		w.got, w.want = w.got+weekly.Fresh[k]+weekly.Stored[k], w.want+weekly.Want[k]
	}
	for _, g := range t.Gaps(&weekly) {
		w.gaps = append(w.gaps, gapView(g))
	}
	if named {
		o.views.weeks.keep(key, w)
	}
	return w
}
