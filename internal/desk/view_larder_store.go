package desk

import (
	"slices"

	"garner/internal/cal"
	"garner/internal/larder"
	"garner/internal/outlook"
	"garner/internal/words"
)

// StoreView is a store and what lies in it over the table.
type StoreView struct {
	ID, Name   string
	Method     string
	CapacityKg float64
	NowKg      float64      // in the middle year, today
	MostKg     float64      // in the good year, over the table
	Kg         [9][]float64 // by decile, 10 % first, and day of the table
	Empty      Odds         // when it is first empty; None: never
	EmptyShare float64      // share of futures in which it is ever empty
	Holds      []string     // names of what lies in it
	Says       words.Phrase
}

// stores puts the course of each store into words, those of the holding that are
// not used after them.
func (n *namer) stores(t *outlook.Table, levels []outlook.Levels, stocks []StockView) []StoreView {
	byStore := map[string]*outlook.Levels{}
	for i := range levels {
		byStore[levels[i].Store] = &levels[i]
	}
	var out, unused []StoreView
	for i := range n.a.holding.Stores {
		s := &n.a.holding.Stores[i]
		l := byStore[s.ID]
		if l == nil || len(l.Empty) == 0 {
			v := storeOf(s)
			v.Says = words.P("desk.store_unused", nil)
			unused = append(unused, v)
			continue
		}
		out = append(out, n.storeView(t, s, l, stocks))
	}
	return append(out, unused...)
}

func storeOf(s *larder.Store) StoreView {
	return StoreView{ID: s.ID, Name: s.Name, Method: s.Method, CapacityKg: s.Holds(), Empty: Odds{cal.None, cal.None, cal.None}}
}

func (n *namer) storeView(t *outlook.Table, s *larder.Store, l *outlook.Levels, stocks []StockView) StoreView {
	v := storeOf(s)
	v.Kg, v.Empty = l.Kg, oddsOfDays(l.Empty)
	v.NowKg = l.Kg[4][max(0, min(len(l.Kg[4])-1, int(n.a.setting.Today-t.From)))]
	v.MostKg = slices.Max(l.Kg[8])
	for _, day := range l.Empty {
		if day.IsSet() {
			v.EmptyShare += 1 / float64(len(l.Empty))
		}
	}
	v.EmptyShare = min(1, v.EmptyShare)
	for i := range stocks {
		if slices.ContainsFunc(stocks[i].Batches, func(b BatchLine) bool { return b.Store == s.ID }) {
			v.Holds = append(v.Holds, stocks[i].Plural)
		}
	}
	args := words.Args{"kg": v.NowKg, "room": s.Holds(), "empty": v.Empty.P50, "odds": v.EmptyShare}
	switch {
	case v.Empty.P50.IsSet() && v.Empty.P50 <= n.a.setting.Today:
		v.Says = words.P("desk.store_empty_now", args)
	case v.Empty.P50.IsSet():
		v.Says = words.P("desk.store_empty_from", args)
	case v.EmptyShare >= 0.1:
		v.Says = words.P("desk.store_empty_some", args)
	default:
		v.Says = words.P("desk.store_never_empty", args)
	}
	return v
}
