package desk

import (
	"slices"
	"time"

	"garner/internal/barren"
	"garner/internal/exchange"
	"garner/internal/fault"
	"garner/internal/holding"
	"garner/internal/num"
	"garner/internal/plan"
	"garner/internal/words"
)

// Barren is a wanted vegetable that no bed can grow.
type Barren struct {
	Vegetable string     `json:"vegetable"`
	Reason    barren.Why `json:"reason"`
}

// Phrase says it with its reason.
func (b Barren) Phrase() words.Phrase {
	return words.P("desk.barren_"+string(b.Reason), words.Args{"vegetable": b.Vegetable})
}

// barrenOf looks for wanted vegetables, of groups too, that no bed can grow.
func barrenOf(h *holding.Holding) ([]Barren, error) {
	s, err := settingOf(h, OutlookOptions{Seed: pageSeed})
	if err != nil {
		return nil, err
	}
	found, err := barren.Find(s, wantedVegetables(h))
	var out []Barren
	for _, v := range found {
		out = append(out, Barren{v.Name, v.Why})
	}
	return out, err
}

// wantedVegetables are the vegetables that are wanted or belong to a group, in order.
func wantedVegetables(h *holding.Holding) []string {
	var out []string
	for i := range h.Wants {
		out = append(out, h.Wants[i].Vegetable)
	}
	for i := range h.Members {
		out = append(out, h.Members[i].Vegetable)
	}
	slices.Sort(out)
	out = slices.Compact(out)
	return slices.DeleteFunc(out, func(name string) bool { return name == "" })
}

// BarrenWithin tells which wanted vegetables no bed can grow. It is worked out beside
// the pages, once for the same ground, weather and wants, and waited for so long and no
// longer; there is false while it is not known.
func (o *Office) BarrenWithin(patience time.Duration) (found []Barren, there bool, err error) {
	h, err := o.Holding()
	if err != nil {
		return nil, false, err
	}
	name, err := o.barrenName(h)
	if err != nil {
		return nil, false, err
	}
	if known, ok := o.views.barren.get(name); ok {
		return known, true, nil
	}
	return workedOut(o, name, patience, func() ([]Barren, error) {
		found, err := barrenOf(h)
		if err == nil {
			o.views.barren.keep(name, found)
		}
		return found, err
	})
}

// barrenTables are the tables that what can be grown hangs on.
var barrenTables = []string{"sites", "beds", "covers", "gear", "features", "crops", "weather", FilesTable}

// barrenName names all that what can be grown hangs on: the ground, its weather, the
// numbers of the crops, the day, what is wanted, and which crops stand in the plan.
func (o *Office) barrenName(h *holding.Holding) (num.Digest, error) {
	d := num.NewDigester("barren 1")
	now, err := today(h)
	if err != nil {
		return num.Digest{}, err
	}
	d.Int(int64(now))
	for _, table := range barrenTables {
		rows, err := o.keeper.Rows(table)
		if err != nil {
			return num.Digest{}, err
		}
		d.Text(table)
		for _, r := range rows {
			for _, cell := range r.Row {
				d.Text(cell)
			}
		}
	}
	for _, name := range wantedVegetables(h) {
		d.Text(name)
	}
	all, faults := plan.Resolve(h.Plans, h.Plantings, h.Changes, h.Plan)
	if len(faults) > 0 {
		return num.Digest{}, faults
	}
	var stands []string
	for i := range all {
		stands = append(stands, all[i].Crop+"/"+all[i].Use)
	}
	slices.Sort(stands)
	for _, name := range slices.Compact(stands) {
		d.Text(name)
	}
	return d.Sum(), nil
}

// WantNotes say what is wrong with the wants of a holding though they may stand: by the
// id of the want, or of the member of a group.
type WantNotes struct{ Wants, Members map[string][]words.Phrase }

// wantNotes gathers what is odd about wants, and what of them no bed can grow.
func wantNotes(h *holding.Holding, found []Barren) WantNotes {
	out := WantNotes{map[string][]words.Phrase{}, map[string][]words.Phrase{}}
	for _, odd := range exchange.OddWants(h) {
		id := h.Wants[odd.Row].ID
		out.Wants[id] = append(out.Wants[id], odd.Says)
	}
	none := map[string]Barren{}
	for _, b := range found {
		none[b.Vegetable] = b
	}
	for i := range h.Members {
		if b, is := none[h.Members[i].Vegetable]; is {
			out.Members[h.Members[i].ID] = append(out.Members[h.Members[i].ID], b.Phrase())
		}
	}
	for i := range h.Wants {
		w := &h.Wants[i]
		if says, is := barrenWant(h, w.Vegetable, w.Group, none); is {
			out.Wants[w.ID] = append(out.Wants[w.ID], says)
		}
	}
	return out
}

// barrenWant says that a vegetable, or every one of a group, cannot be grown.
func barrenWant(h *holding.Holding, vegetable, group string, none map[string]Barren) (words.Phrase, bool) {
	if group == "" {
		b, is := none[vegetable]
		key := "desk.barren_buy"
		if b.Reason == barren.Cold || b.Reason == barren.Short {
			key = "desk.barren_cover"
		}
		return words.P(key, words.Args{"says": b.Phrase()}), is
	}
	members := 0
	for _, m := range h.Members {
		if m.Group != group {
			continue
		}
		if _, is := none[m.Vegetable]; !is {
			return words.Phrase{}, false
		}
		members++
	}
	name := group
	for _, g := range h.Groups {
		if g.ID == group {
			name = g.Name
		}
	}
	return words.P("desk.barren_group", words.Args{"group": name}), members > 0
}

// WantNotesWithin are the notes on the wants; there is false while it is not known what
// can be grown.
func (o *Office) WantNotesWithin(patience time.Duration) (WantNotes, bool, error) {
	h, err := o.Holding()
	if err != nil {
		return WantNotes{}, false, err
	}
	found, there, err := o.BarrenWithin(patience)
	return wantNotes(h, found), there, err
}

// warnOfBarren adds to a report the wants that no bed can grow, at their rows.
func warnOfBarren(h *holding.Holding, report *exchange.Report) error {
	if h == nil {
		return nil
	}
	found, err := barrenOf(h)
	warn := func(table string, row int, vegetable string) {
		if at := slices.IndexFunc(found, func(b Barren) bool { return b.Vegetable == vegetable }); at >= 0 {
			e := &fault.Error{Kind: fault.Conflict, Phrase: found[at].Phrase()}
			report.Warnings = append(report.Warnings, e.In(report.At(table, row, "vegetable")))
		}
	}
	for i := range h.Wants {
		warn("wants", i, h.Wants[i].Vegetable)
	}
	for i := range h.Members {
		warn("members", i, h.Members[i].Vegetable)
	}
	if LacksWeather(err) { // a holding may be without it, which was warned of
		return nil
	}
	return err
}
