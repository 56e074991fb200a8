package desk

import (
	"encoding/json"
	"sort"

	"garner/internal/cal"
	"garner/internal/plan"
	"garner/internal/record"
)

// GroundView is every planting of the plan in force, for the lists.
type GroundView struct {
	Today     cal.Date
	Plantings []GroundLine // in order of date
	Forecast  bool         // Ready and Over are computed; else they are being computed
}

// The states of a planting in the lists.
const (
	Ahead    = "ahead"    // its day has not come
	Standing = "standing" // in the ground
	Past     = "past"     // over or cleared
)

// GroundLine is one planting in the lists.
type GroundLine struct {
	ID          string
	Name        string // what it is: "maincrop carrots"
	Variety     string // name of its variety, may be empty
	Crop        string
	Vegetable   string
	Feeds       bool // false of a green manure
	Bed         string
	BedName     string
	Method      string
	Shares      bool // stands under or between another planting, on the same ground
	Date        cal.Date
	DateWithinD int
	AreaM2      float64
	AreaWithin  float64
	HeldM2      float64 // ground it holds today: without what was lost
	State       string
	Ready, Over Odds
}

// GroundView returns the plantings of the plan in force. It never waits for a cold
// run: dates that are not computed yet are left out and made ready behind it.
func (o *Office) GroundView() (*GroundView, error) {
	a, err := o.ask(nil)
	if err != nil {
		return nil, err
	}
	n := newNamer(a)
	v := &GroundView{Today: a.setting.Today}
	odds, known := o.groundOdds(a, n)
	v.Forecast = known
	cleared := clearedBy(a.holding.Records, v.Today)
	for id, p := range n.plantings {
		line := n.groundLine(p)
		line.HeldM2 = heldOn(a.holding, a.setting.Book, &p, cleared, v.Today)
		if its, ok := odds[id]; ok {
			line.Ready, line.Over = its.Ready, its.Over
		}
		line.State = stateOf(&p, v.Today, cleared[id] || line.HeldM2 <= 0, line.Over.P50)
		v.Plantings = append(v.Plantings, line)
	}
	sort.Slice(v.Plantings, func(i, k int) bool {
		if v.Plantings[i].Date != v.Plantings[k].Date {
			return v.Plantings[i].Date < v.Plantings[k].Date
		}
		return v.Plantings[i].ID < v.Plantings[k].ID
	})
	return v, nil
}

func (n *namer) groundLine(p plan.Planting) GroundLine {
	none := Odds{cal.None, cal.None, cal.None}
	return GroundLine{ID: p.ID, Name: n.use(p.Crop, p.Use), Variety: n.varieties[p.Variety].Name, Crop: p.Crop,
		Vegetable: n.vegetableOf(p.Crop, p.Use), Feeds: n.feeds(p.Crop, p.Use), Bed: p.Bed, BedName: n.bed(p.Bed), Method: string(p.Method), Date: p.Date,
		Shares: p.Relation == plan.Under || p.Relation == plan.Between, DateWithinD: p.DateWithinD, AreaM2: p.AreaM2, AreaWithin: p.AreaWithin, Ready: none, Over: none}
}

// stateOf tells where a planting is in its life. What was recorded comes before
// what was meant, and that before what is forecast.
func stateOf(p *plan.Planting, today cal.Date, cleared bool, over cal.Date) string {
	switch {
	case p.Date > today:
		return Ahead
	case cleared, p.ClearBy.IsSet() && p.ClearBy <= today, over.IsSet() && over < today:
		return Past
	}
	return Standing
}

// clearedBy names the plantings whose ground was cleared by a day, or that died
// or were moved as a whole, as recorded.
func clearedBy(records []record.Record, today cal.Date) map[string]bool {
	cleared := map[string]bool{}
	for _, r := range records {
		whole := r.What == record.Cleared || r.What != record.Failing && r.Unit == "" || r.Unit == record.ShareUnit && r.Value >= 1
		switch r.What {
		case record.Cleared, record.Died, record.Failing, record.Moved:
			if whole && r.Date <= today {
				cleared[r.Planting] = true
			}
		}
	}
	return cleared
}

// groundOdds are the dates of every planting, when they are at hand.
func (o *Office) groundOdds(a *asked, n *namer) (map[string]plantingOdds, bool) {
	key := a.key("ground view 1")
	if text, ok, err := o.keeper.Result(key); err == nil && ok {
		odds := map[string]plantingOdds{}
		if json.Unmarshal(text, &odds) == nil {
			return odds, true
		}
	}
	if o.cold() {
		o.warm(a)
		return nil, false
	}
	t, err := o.table(a)
	if err != nil {
		return nil, false
	}
	odds := map[string]plantingOdds{}
	for i := range t.Plantings {
		line := n.line(t, &t.Plantings[i], nil)
		odds[line.ID] = plantingOdds{line.Ready, line.Over}
	}
	if text, err := json.Marshal(odds); err == nil {
		_ = o.keeper.Keep(key, text) // what cannot be kept is computed again
	}
	return odds, true
}

// plantingOdds are the dates of one planting that the lists tell.
type plantingOdds struct{ Ready, Over Odds }
