package desk

import (
	"reflect"
	"slices"

	"garner/internal/cal"
	"garner/internal/crop"
	"garner/internal/larder"
	"garner/internal/outlook"
)

// HeldView is what is known to lie in a store.
type HeldView struct {
	Store   larder.Store
	Today   cal.Date
	Batches []HeldBatch     // in the order in which they were put in
	Kg      float64         // of all of them
	Prepare []PreparingView // of what lies in it or is meant for it
}

// HeldBatch is a batch with what is known of it.
type HeldBatch struct {
	larder.Batch
	larder.Stock
	Name         string // what it is
	PlantingName string // of the planting it came from; empty: not known
}

// Held returns what is known to lie in a store, as the batches and counts tell.
func (o *Office) Held(store string) (*HeldView, error) {
	a, err := o.ask(nil)
	if err != nil {
		return nil, err
	}
	h := a.holding
	at := slices.IndexFunc(h.Stores, func(s larder.Store) bool { return s.ID == store })
	if at < 0 {
		return nil, noRow("stores", store)
	}
	n := newNamer(a)
	v := &HeldView{Store: h.Stores[at], Today: a.setting.Today}
	stocks, err := stocksOf(a)
	if err != nil {
		return nil, err
	}
	for i, b := range h.Batches {
		if b.Store != store {
			continue
		}
		held := HeldBatch{Batch: b, Stock: stocks[i], Name: n.use(b.Crop, b.Use)}
		if _, known := n.plantings[b.Planting]; known {
			held.PlantingName = n.planting(b.Planting)
		}
		v.Batches = append(v.Batches, held)
		v.Kg += stocks[i].Kg
	}
	slices.SortStableFunc(v.Batches, func(a, b HeldBatch) int { return int(a.Stored) - int(b.Stored) })
	v.Prepare = n.prepared(&v.Store)
	return v, nil
}

// prepared tells how what lies in a store or is meant for it is made ready.
func (n *namer) prepared(s *larder.Store) []PreparingView {
	var out []PreparingView
	told := map[string]bool{}
	tell := func(id, use, store string) {
		row, keeps := wayOf(n.a.setting.Book, id, use, s.Method)
		name := n.use(id, use)
		if store != s.ID || !keeps || told[name] {
			return
		}
		told[name] = true
		steps := preparingOf(n.a.setting.Book, id, &row)
		at := slices.IndexFunc(out, func(v PreparingView) bool { return reflect.DeepEqual(v.Steps, steps) })
		switch {
		case at >= 0:
			out[at].Names = append(out[at].Names, name)
		case len(steps) > 0:
			out = append(out, PreparingView{[]string{name}, steps})
		}
	}
	for _, b := range n.a.holding.Batches {
		tell(b.Crop, b.Use, b.Store)
	}
	for _, p := range n.a.holding.Plantings {
		tell(p.Crop, p.Use, p.Store)
	}
	return out
}

// stocksOf is what the counts say of each batch of a holding.
func stocksOf(a *asked) ([]larder.Stock, error) {
	h := a.holding
	in := larder.Setting{First: a.setting.Today, Northern: len(h.Sites) == 0 || h.Sites[0].Location.LatitudeDeg >= 0, Stores: h.Stores}
	for _, b := range h.Batches {
		_, u, err := useOf(a.setting.Book, b.Crop, b.Use)
		if err != nil {
			return nil, err
		}
		in.Batches = append(in.Batches, larder.Opening{Batch: b, Vegetable: u.Vegetable})
	}
	in.Keeping = func(id, use, method string) (crop.Storage, bool) { return wayOf(a.setting.Book, id, use, method) }
	_, stocks := larder.Recount(in, outlook.CountsIn(h.Records))
	return stocks, nil
}

// wayOf is the book's row for a crop and use kept by a method.
func wayOf(b *crop.Book, id, use, method string) (crop.Storage, bool) {
	_, u, err := useOf(b, id, use)
	if err != nil {
		return crop.Storage{}, false
	}
	return u.Way(method)
}
