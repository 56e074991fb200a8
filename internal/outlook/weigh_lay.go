package outlook

import (
	"fmt"
	"slices"
	"strings"

	"garner/internal/fault"
	"garner/internal/holding"
	"garner/internal/larder"
	"garner/internal/num"
	"garner/internal/place"
	"garner/internal/plan"
	"garner/internal/season"
	"garner/internal/words"
)

// weighing is a number of edits laid out against one table. Parts of beds and
// groups that several edits come to are computed once.
type weighing struct {
	*Scales
	trials []trial
	parts  []*bedWork // to be computed, each once
	groups []*weighedGroup

	grownAt map[num.Digest]*bedResult
	groupAt map[num.Digest]*weighedGroup
}

// trial is one edit: the groups it makes and those of the table it unmakes.
type trial struct {
	set          []string // ids of plantings set
	beds         []*bedWork
	before, then []*weighedGroup
}

func newWeighing(s *Scales) *weighing {
	return &weighing{Scales: s, grownAt: map[num.Digest]*bedResult{}, groupAt: map[num.Digest]*weighedGroup{}}
}

// lay finds what an edit makes anew.
func (w *weighing) lay(e *Edit) error {
	own := *w.job // with the edit made
	own.beds, own.plantings = nil, e.in(w.job.plantings)
	own.Holding = e.told(w.job.Holding)
	own.wants = own.wanted()
	own.moves = movesOf(own.plantings, own.done)
	touched := w.touched(e, own.plantings)
	for id := range touched {
		if !slices.ContainsFunc(w.job.Holding.Beds, func(b place.Bed) bool { return b.ID == id }) {
			return fault.New(fault.NotFound, "outlook.bed_unknown", words.Args{"planting": e.first(), "bed": id})
		}
	}
	t := trial{}
	for i := range e.Set {
		t.set = append(t.set, e.Set[i].ID)
	}
	known := w.job.beds
	for _, b := range w.job.Holding.Beds {
		for len(known) > 0 && known[0].id == b.ID {
			if !touched[b.ID] {
				own.beds = append(own.beds, known[0])
			}
			known = known[1:]
		}
		if touched[b.ID] {
			if err := w.layTouched(&own, b, &t); err != nil {
				return err
			}
		}
	}
	return w.regroup(&own, &t)
}

// layTouched lays out a bed that the edit changes.
func (w *weighing) layTouched(own *job, b place.Bed, t *trial) error {
	var here []plan.Planting
	for _, p := range own.plantings {
		if p.Bed == b.ID {
			here = append(here, p)
		}
	}
	if len(here) == 0 {
		return nil
	}
	made, err := own.layBed(b, here)
	if err != nil {
		return err
	}
	for _, part := range made.parts() {
		part.name(own)
		w.grow(part)
		own.beds = append(own.beds, part)
		t.beds = append(t.beds, part)
	}
	return nil
}

// touched are the beds that an edit changes, with those that plantings came from
// or went to by being moved.
func (w *weighing) touched(e *Edit, after []plan.Planting) map[string]bool {
	out := map[string]bool{}
	linked := map[string]bool{}
	for _, list := range [][]plan.Planting{w.job.plantings, after} {
		for i := range list {
			if p := &list[i]; e.replaces(p.ID) {
				out[p.Bed], linked[p.ID], linked[p.To] = true, true, linked[p.To] || p.Relation == plan.Moved
			}
		}
	}
	for i := range after {
		p := &after[i]
		if e.covers(p.Bed) {
			out[p.Bed], linked[p.ID] = true, true
		}
	}
	for more := true; more; {
		more = false
		for i := range after {
			p := &after[i]
			if p.Relation == plan.Moved && linked[p.ID] != linked[p.To] {
				linked[p.ID], linked[p.To], more = true, true, true
			}
		}
	}
	for i := range after {
		if linked[after[i].ID] {
			out[after[i].Bed] = true
		}
	}
	return out
}

// replaces tells whether an edit changes or takes out a planting of the table.
func (e *Edit) replaces(id string) bool {
	return slices.Contains(e.Remove, id) || slices.ContainsFunc(e.Set, func(p plan.Planting) bool { return p.ID == id })
}

// covers tells whether an edit lays a cover over a bed.
func (e *Edit) covers(bed string) bool {
	return slices.ContainsFunc(e.Covers, func(s place.CoverSpell) bool { return s.Bed == bed })
}

// told is the holding with all of the edit that is not of plantings: covers laid,
// gaps left and what may be bought.
func (e *Edit) told(h *holding.Holding) *holding.Holding {
	if len(e.Covers)+len(e.Left)+len(e.Buys) == 0 {
		return h
	}
	own := *h
	own.Covers = slices.Concat(h.Covers, e.Covers)
	own.GapsLeft = slices.Concat(h.GapsLeft, e.Left)
	own.Purchases = slices.Concat(h.Purchases, e.Buys)
	return &own
}

func (e *Edit) first() string {
	if len(e.Set) > 0 {
		return e.Set[0].ID
	}
	return ""
}

// in makes the edit in a plan's plantings: those changed in their places, those
// added last.
func (e *Edit) in(all []plan.Planting) []plan.Planting {
	out := make([]plan.Planting, 0, len(all)+len(e.Set))
	seen := map[string]bool{}
	for _, p := range all {
		seen[p.ID] = true
		if !e.replaces(p.ID) {
			out = append(out, p)
			continue
		}
		for _, n := range e.Set {
			if n.ID == p.ID {
				out = append(out, n)
			}
		}
	}
	for _, n := range e.Set {
		if !seen[n.ID] {
			out = append(out, n)
		}
	}
	return out
}

// grow gives a part of a bed the outcomes of the table, or of one laid before, when
// it grows the same; else it is to be computed. The part stays its own: where its
// plantings go to store is no matter of how they grow.
func (w *weighing) grow(p *bedWork) {
	if p.result = w.Scales.grown[p.digest]; p.result != nil {
		return
	}
	if p.result = w.grownAt[p.digest]; p.result != nil {
		return
	}
	p.result = &bedResult{years: make([][]season.Outcome, w.job.Years)}
	w.grownAt[p.digest] = p.result
	w.parts = append(w.parts, p)
}

// regroup finds the groups that an edit makes and unmakes.
func (w *weighing) regroup(own *job, t *trial) error {
	same := map[num.Digest]bool{}
	for _, g := range own.grouped(w.openings, own.keeping) {
		if w.Scales.groups[g.digest] != nil {
			same[g.digest] = true
			continue
		}
		made, err := w.group(g)
		if err != nil {
			return err
		}
		t.then = append(t.then, made)
	}
	for _, g := range w.job.groups {
		if !same[g.digest] {
			t.before = append(t.before, w.Scales.groups[g.digest])
		}
	}
	w.trials = append(w.trials, *t)
	return nil
}

func (w *weighing) group(g *groupWork) (*weighedGroup, error) {
	if known := w.groupAt[g.digest]; known != nil {
		return known, nil
	}
	key := shape(g)
	if w.pantries[key] == nil {
		made, err := larder.NewPantry(g.setting)
		if err != nil {
			return nil, err
		}
		w.pantries[key] = made
	}
	g.pantry = w.pantries[key]
	made := &weighedGroup{work: g, short: make([][]float32, w.job.Years), over: make([][]float64, w.job.Years)}
	w.groupAt[g.digest] = made
	w.groups = append(w.groups, made)
	return made, nil
}

// shape names what a group's pantry is made of: within one table the vegetables
// tell the batches; an edit may change the gaps that are left, what may be bought and what
// planting stock claims.
func shape(g *groupWork) string {
	var b strings.Builder
	for _, v := range g.vegetables {
		b.WriteString(v + "\n")
	}
	for i := range g.setting.Stores {
		b.WriteString("\t" + g.setting.Stores[i].ID)
	}
	for _, want := range g.setting.Wants {
		fmt.Fprintf(&b, "\n%s %g %g %v %v", want.ID, want.KgPerWeek, want.BuyKgPerWeek, want.From, want.To)
	}
	for _, l := range g.setting.Left {
		fmt.Fprintf(&b, "\n%s/%s %d %d", l.Vegetable, l.Group, l.From, l.To)
	}
	for _, p := range g.setting.Purchases {
		fmt.Fprintf(&b, "\nbuy %s/%s %d %d %g", p.Vegetable, p.Group, p.From, p.To, p.KgPerWeek)
	}
	for _, c := range g.setting.Claims {
		fmt.Fprintf(&b, "\n%s %s/%s %d %g", c.Planting, c.Crop, c.Use, c.Day, c.Kg)
	}
	return b.String()
}
