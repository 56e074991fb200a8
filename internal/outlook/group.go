package outlook

import (
	"sort"

	"garner/internal/cal"
	"garner/internal/crop"
	"garner/internal/fault"
	"garner/internal/larder"
	"garner/internal/num"
	"garner/internal/words"
)

// groupWork is a larder group: vegetables connected by the stores they share.
type groupWork struct {
	vegetables []string
	members    []member // plantings that feed it, in a fixed order
	setting    larder.Setting
	pantry     *larder.Pantry
	digest     num.Digest
	result     *groupResult
	missing    bool // the result must be computed
}

// member is one planting of one bed that feeds a group.
type member struct {
	bed    *bedWork
	index  int
	booked bool     // it is off its ground and lies in a store as a batch
	stores cal.Date // day from which it goes to its store
	share  float64  // of it that is eaten, 0-1
}

// groupResult holds a group's years by future.
type groupResult struct {
	years []*larder.Year
	sums  sums
}

// layGroups connects vegetables by their stores.
func (j *job) layGroups(keeping func(crop, use, method string) (crop.Storage, bool)) error {
	openings, err := j.openings()
	if err != nil {
		return err
	}
	j.groups = j.grouped(openings, keeping)
	for _, w := range j.groups {
		if w.pantry, err = larder.NewPantry(w.setting); err != nil {
			return err
		}
	}
	return nil
}

// grouped are the groups that the beds' plantings make, without their pantries.
func (j *job) grouped(openings []larder.Opening, keeping func(crop, use, method string) (crop.Storage, bool)) []*groupWork {
	g := newGrouping()
	for i := range j.wants {
		if j.wants[i].Vegetable != "" {
			g.vegetable(j.wants[i].Vegetable)
		}
	}
	for i := range j.likes {
		for _, m := range j.likes[i].Members {
			g.parent[g.vegetable(m.Vegetable)] = g.vegetable(j.likes[i].Members[0].Vegetable)
		}
	}
	for _, b := range j.beds {
		for i := range b.plantings {
			if b.uses[i].use.Feeds() {
				g.join(b.uses[i].use.Vegetable, b.plantings[i].Store)
				if j.preserves(b.plantings[i].Store) {
					g.join(b.uses[i].use.Vegetable, kitchen)
				}
			}
		}
	}
	for i := range openings {
		g.join(openings[i].Vegetable, openings[i].Store)
	}
	var out []*groupWork
	for _, names := range g.groups() {
		w := &groupWork{vegetables: names}
		j.fillGroup(w, g, openings, keeping)
		out = append(out, w)
	}
	return out
}

// openings gives each batch its vegetable.
func (j *job) openings() ([]larder.Opening, error) {
	out := make([]larder.Opening, 0, len(j.Holding.Batches))
	for _, b := range j.Holding.Batches {
		c, ok := j.Book.Crop(b.Crop)
		if !ok {
			return nil, fault.New(fault.NotFound, "outlook.batch_crop", words.Args{"batch": b.ID, "crop": b.Crop})
		}
		u, err := c.Use(b.Use)
		if err != nil {
			return nil, err
		}
		out = append(out, larder.Opening{Batch: b, Vegetable: u.Vegetable, Counted: j.From})
	}
	return j.recounted(out), nil
}

func (j *job) fillGroup(w *groupWork, g *grouping, openings []larder.Opening, keeping func(crop, use, method string) (crop.Storage, bool)) {
	in := map[string]bool{}
	for _, v := range w.vegetables {
		in[v] = true
	}
	s := larder.Setting{First: j.From - runUp, Opens: j.From, Days: runUp + j.Days(), Northern: j.northern(), Vegetables: w.vegetables, Keeping: keeping,
		KitchenHours: j.Holding.KitchenH, Eaters: j.Holding.Eaters, Visits: j.Holding.Visits}
	var liked map[string]bool
	s.Groups, liked = j.likedIn(in)
	for _, want := range j.wants {
		if in[want.Vegetable] || liked[want.Group] {
			s.Wants = append(s.Wants, want)
		}
	}
	for _, left := range j.Holding.GapsLeft {
		if in[left.Vegetable] || liked[left.Group] {
			s.Left = append(s.Left, left)
		}
	}
	for _, bought := range j.Holding.Purchases {
		if in[bought.Vegetable] || liked[bought.Group] {
			s.Purchases = append(s.Purchases, bought)
		}
	}
	for _, o := range openings {
		if in[o.Vegetable] {
			s.Batches = append(s.Batches, o)
		}
	}
	for _, store := range j.Holding.Stores {
		if v, used := g.stores[store.ID]; used && in[v] {
			s.Stores = append(s.Stores, store)
		}
	}
	for _, b := range j.beds {
		for i := range b.plantings {
			if u := b.uses[i].use; u.Feeds() && in[u.Vegetable] {
				w.members = append(w.members, member{b, i, j.booked(b.plantings[i].ID), j.storesFrom(b.plantings[i].ID), eatenShare(&b.plantings[i], b.uses[i])})
			}
		}
	}
	s.Claims = j.claims(in)
	w.setting = s
	w.name(j)
}

// northern tells in which half of the year the stores are cold, by the first
// site.
func (j *job) northern() bool {
	return len(j.Holding.Sites) == 0 || j.Holding.Sites[0].Location.LatitudeDeg >= 0
}

// grouping joins vegetables that meet in a store.
type grouping struct {
	parent map[string]string
	stores map[string]string // store -> a vegetable that uses it
}

func newGrouping() *grouping { return &grouping{map[string]string{}, map[string]string{}} }

func (g *grouping) vegetable(v string) string {
	if _, known := g.parent[v]; !known {
		g.parent[v] = v
	}
	for g.parent[v] != v {
		v = g.parent[v]
	}
	return v
}

func (g *grouping) join(v, store string) {
	root := g.vegetable(v)
	if store == "" {
		return
	}
	if other, known := g.stores[store]; known {
		g.parent[g.vegetable(other)] = root
		return
	}
	g.stores[store] = v
}

// groups lists the connected vegetables, each list and all lists in order.
func (g *grouping) groups() [][]string {
	byRoot := map[string][]string{}
	for v := range g.parent {
		byRoot[g.vegetable(v)] = append(byRoot[g.vegetable(v)], v)
	}
	out := make([][]string, 0, len(byRoot))
	for _, names := range byRoot {
		sort.Strings(names)
		out = append(out, names)
	}
	sort.Slice(out, func(i, k int) bool { return out[i][0] < out[k][0] })
	return out
}

// supplies turns the outcomes of one future into what the larder takes.
func (w *groupWork) supplies(j *job, future int, out []*larder.Supply) []*larder.Supply {
	out = out[:0]
	for _, m := range w.members {
		o := &m.bed.result.years[future][m.index]
		if o.First < 0 {
			continue
		}
		u := m.bed.uses[m.index].use
		base := larder.Supply{
			Planting: m.bed.plantings[m.index].ID, Vegetable: u.Vegetable, Crop: u.Crop, Use: u.Name,
			HoldDays: int(u.HoldDays), Store: m.bed.plantings[m.index].Store,
			Booked: m.booked, StoreFrom: m.stores,
		}
		base.Lift = u.LiftAtEnd > 0 || base.Store != ""
		if len(o.Standing) > 0 {
			out = j.appendSupply(out, base, j.first()+cal.Date(o.Ready), eaten(o.Standing, m.share), nil)
		}
		if len(o.Flow) > 0 {
			out = j.appendSupply(out, base, j.first()+cal.Date(o.First), nil, eaten(o.Flow, m.share))
		}
	}
	return out
}

// runUp is how long before the table the larder begins, so that what stood and
// hung in the season before has been eaten from when the table opens [d].
const runUp = 140

// appendSupply adds a supply, without the days before the larder begins. What
// ends before the table goes to no store: what is in store then is counted in
// the batches.
func (j *job) appendSupply(out []*larder.Supply, s larder.Supply, first cal.Date, standing, flow []float32) []*larder.Supply {
	begin := j.From - runUp
	if skip := int(begin - first); skip > 0 {
		standing, flow = after(standing, skip), after(flow, skip)
		first = begin
	}
	if len(standing) == 0 && len(flow) == 0 {
		return out
	}
	s.First, s.Standing, s.Flow = first, standing, flow
	if s.End() <= j.From {
		s.Store, s.Booked = "", false
	}
	return append(out, &s)
}

func after(s []float32, skip int) []float32 {
	if skip >= len(s) {
		return nil
	}
	return s[skip:]
}
