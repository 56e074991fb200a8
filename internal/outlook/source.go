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
		for _, v := range g.vegetables {
			if v == vegetable {
				return g.sources(t, vegetable)
			}
		}
	}
	return nil
}

func (g *groupWork) sources(t *Table, vegetable string) []Source {
	var out []Source
	at := map[string]int{}
	for _, m := range g.members {
		if m.bed.uses[m.index].use.Vegetable != vegetable {
			continue
		}
		p := &m.bed.plantings[m.index]
		at[p.ID] = len(out)
		out = append(out, Source{Planting: p.ID, Store: p.Store, Fresh: make([]float64, t.Weeks), Stored: make([]float64, t.Weeks)})
	}
	batches := len(out)
	var index []int
	for i, b := range g.setting.Batches {
		if b.Vegetable == vegetable {
			index = append(index, i)
			out = append(out, Source{Batch: b.ID, Store: b.Store, Fresh: make([]float64, t.Weeks), Stored: make([]float64, t.Weeks)})
		}
	}
	for _, y := range g.result.years {
		addYear(out, at, y, t.Years)
		for k, i := range index {
			addWeeks(out[batches+k].Stored, y.Batches[i].StoredWeek, t.Years)
		}
	}
	return out
}

func addYear(out []Source, at map[string]int, y *larder.Year, years int) {
	for i := range y.Plantings {
		p := &y.Plantings[i]
		if k, ours := at[p.Planting]; ours {
			addWeeks(out[k].Fresh, p.FreshWeek, years)
			addWeeks(out[k].Stored, p.StoredWeek, years)
		}
	}
}

// addWeeks adds one future's weeks of the table to a mean.
func addWeeks(sum []float64, weeks []float32, years int) {
	for k := range sum {
		sum[k] += float64(weeks[k+runUp/7]) / float64(years)
	}
}
