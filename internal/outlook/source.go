package outlook

import "garner/internal/larder"

// Source is what one planting or one batch gives to the table, mean over the
// futures, by week [kg].
type Source struct {
	Planting      string // empty for a batch
	Batch         string // empty for a planting
	Store         string // where it is eaten from when stored; of a planting, where it goes
	Fresh, Stored []float64
}

// Sources lists what feeds a vegetable: plantings in the order of the beds, then
// batches.
func (t *Table) Sources(vegetable string) []Source {
	for _, g := range t.groups {
		for k, v := range g.rows() {
			if v == vegetable {
				return g.sources(t, k)
			}
		}
	}
	return nil
}

func (g *groupWork) sources(t *Table, row int) []Source {
	group, feeds := row-len(g.vegetables), g.feeds(row)
	var out []Source
	at := map[string]int{}
	for _, m := range g.members {
		if !feeds[m.bed.uses[m.index].use.Vegetable] {
			continue
		}
		p := &m.bed.plantings[m.index]
		at[p.ID] = len(out)
		out = append(out, Source{Planting: p.ID, Store: p.Store, Fresh: make([]float64, t.Weeks), Stored: make([]float64, t.Weeks)})
	}
	batches := len(out)
	var index []int
	for i, b := range g.setting.Batches {
		if feeds[b.Vegetable] {
			index = append(index, i)
			out = append(out, Source{Batch: b.ID, Store: b.Store, Fresh: make([]float64, t.Weeks), Stored: make([]float64, t.Weeks)})
		}
	}
	for _, y := range g.result.years {
		addYear(out, at, y, t.Years, group)
		for k, i := range index {
			addOwn(out[batches+k].Stored, y.Batches[i].StoredWeek, y.Batches[i].GroupStored, t.Years, group)
		}
	}
	return out
}

func addYear(out []Source, at map[string]int, y *larder.Year, years, group int) {
	for i := range y.Plantings {
		p := &y.Plantings[i]
		if k, ours := at[p.Planting]; ours {
			addOwn(out[k].Fresh, p.FreshWeek, p.GroupFresh, years, group)
			addOwn(out[k].Stored, p.StoredWeek, p.GroupStored, years, group)
		}
	}
}

// feeds are the vegetables that a row is eaten from: one, or those of its group.
func (g *groupWork) feeds(row int) map[string]bool {
	if row < len(g.vegetables) {
		return map[string]bool{g.vegetables[row]: true}
	}
	out := map[string]bool{}
	for _, m := range g.setting.Groups[row-len(g.vegetables)].Members {
		out[m.Vegetable] = true
	}
	return out
}

// addOwn adds one future's weeks to a mean: those that a group ate, or of a
// vegetable, whose group is below 0, those that no group ate.
func addOwn(sum []float64, weeks []float32, byGroup [][]float32, years, group int) {
	if group >= 0 {
		addWeeks(sum, byGroup[group], years)
		return
	}
	addWeeks(sum, weeks, years)
	for _, eaten := range byGroup {
		addWeeks(sum, eaten, -years)
	}
}

// addWeeks adds one future's weeks of the table to a mean.
func addWeeks(sum []float64, weeks []float32, years int) {
	for k := range sum {
		sum[k] += float64(weeks[k+runUp/7]) / float64(years)
	}
}
