package exchange

import (
	"garner/internal/cal"
	"garner/internal/holding"
	"garner/internal/larder"
	"garner/internal/record"
)

// wantedWeight is written also when it is 0, unless the want is told in portions.
var wantedWeight = func() column[larder.Want] {
	c := number("kg_per_week", func(w *larder.Want) *float64 { return &w.KgPerWeek })
	c.keep = func(w *larder.Want) bool { return w.PortionsPerEater == 0 }
	return c
}()

var wantsSheet = rowsOf[larder.Want]{
	table: tableNamed("wants"),
	columns: []column[larder.Want]{
		text("id", func(w *larder.Want) *string { return &w.ID }),
		text("vegetable", func(w *larder.Want) *string { return &w.Vegetable }),
		wantedWeight,
		monthDay("from", func(w *larder.Want) *cal.MonthDay { return &w.From }),
		monthDay("to", func(w *larder.Want) *cal.MonthDay { return &w.To }),
		number("portions_per_eater", func(w *larder.Want) *float64 { return &w.PortionsPerEater }),
		text("importance", func(w *larder.Want) *larder.Importance { return &w.Importance }),
		number("buy_kg_per_week", func(w *larder.Want) *float64 { return &w.BuyKgPerWeek }),
		text("group", func(w *larder.Want) *string { return &w.Group }),
	},
	list: func(h *holding.Holding) []larder.Want { return h.Wants },
	put:  func(h *holding.Holding, rows []larder.Want) { h.Wants = rows },
}

var gapsLeftSheet = rowsOf[larder.GapLeft]{
	table: tableNamed("gaps_left"),
	blank: larder.GapLeft{From: cal.None, To: cal.None},
	columns: []column[larder.GapLeft]{
		text("id", func(l *larder.GapLeft) *string { return &l.ID }),
		text("vegetable", func(l *larder.GapLeft) *string { return &l.Vegetable }),
		date("from", func(l *larder.GapLeft) *cal.Date { return &l.From }),
		date("to", func(l *larder.GapLeft) *cal.Date { return &l.To }),
		text("group", func(l *larder.GapLeft) *string { return &l.Group }),
	},
	list: func(h *holding.Holding) []larder.GapLeft { return h.GapsLeft },
	put:  func(h *holding.Holding, rows []larder.GapLeft) { h.GapsLeft = rows },
}

var purchasesSheet = rowsOf[larder.Purchase]{
	table: tableNamed("purchases"),
	blank: larder.Purchase{From: cal.None, To: cal.None},
	columns: []column[larder.Purchase]{
		text("id", func(p *larder.Purchase) *string { return &p.ID }),
		text("vegetable", func(p *larder.Purchase) *string { return &p.Vegetable }),
		date("from", func(p *larder.Purchase) *cal.Date { return &p.From }),
		date("to", func(p *larder.Purchase) *cal.Date { return &p.To }),
		number("kg_per_week", func(p *larder.Purchase) *float64 { return &p.KgPerWeek }),
		text("group", func(p *larder.Purchase) *string { return &p.Group }),
	},
	list: func(h *holding.Holding) []larder.Purchase { return h.Purchases },
	put:  func(h *holding.Holding, rows []larder.Purchase) { h.Purchases = rows },
}

var groupsSheet = rowsOf[larder.Group]{
	table: tableNamed("groups"),
	columns: []column[larder.Group]{
		text("id", func(g *larder.Group) *string { return &g.ID }),
		text("name", func(g *larder.Group) *string { return &g.Name }),
	},
	list: func(h *holding.Holding) []larder.Group { return h.Groups },
	put:  func(h *holding.Holding, rows []larder.Group) { h.Groups = rows },
}

var membersSheet = rowsOf[larder.Membership]{
	table: tableNamed("members"),
	columns: []column[larder.Membership]{
		text("id", func(m *larder.Membership) *string { return &m.ID }),
		text("group", func(m *larder.Membership) *string { return &m.Group }),
		text("vegetable", func(m *larder.Membership) *string { return &m.Vegetable }),
		whole("preference", func(m *larder.Membership) *int { return &m.Preference }),
	},
	list: func(h *holding.Holding) []larder.Membership { return h.Members },
	put:  func(h *holding.Holding, rows []larder.Membership) { h.Members = rows },
}

var visitsSheet = rowsOf[larder.Visit]{
	table: tableNamed("visits"),
	blank: larder.Visit{From: cal.None, To: cal.None},
	columns: []column[larder.Visit]{
		text("id", func(v *larder.Visit) *string { return &v.ID }),
		date("from", func(v *larder.Visit) *cal.Date { return &v.From }),
		date("to", func(v *larder.Visit) *cal.Date { return &v.To }),
		number("eaters", func(v *larder.Visit) *float64 { return &v.Eaters }),
		text("note", func(v *larder.Visit) *string { return &v.Note }),
	},
	list: func(h *holding.Holding) []larder.Visit { return h.Visits },
	put:  func(h *holding.Holding, rows []larder.Visit) { h.Visits = rows },
}

var storesSheet = rowsOf[larder.Store]{
	table: tableNamed("stores"),
	columns: []column[larder.Store]{
		text("id", func(s *larder.Store) *string { return &s.ID }),
		text("name", func(s *larder.Store) *string { return &s.Name }),
		text("method", func(s *larder.Store) *string { return &s.Method }),
		number("winter_c", func(s *larder.Store) *float64 { return &s.WinterC }),
		number("summer_c", func(s *larder.Store) *float64 { return &s.SummerC }),
		number("capacity_kg", func(s *larder.Store) *float64 { return &s.CapacityKg }),
		number("litres", func(s *larder.Store) *float64 { return &s.Litres }),
		number("jars", func(s *larder.Store) *float64 { return &s.Jars }),
		text("place", func(s *larder.Store) *string { return &s.Place }),
		text("humidity", func(s *larder.Store) *larder.Humidity { return &s.Humidity }),
	},
	list: func(h *holding.Holding) []larder.Store { return h.Stores },
	put:  func(h *holding.Holding, rows []larder.Store) { h.Stores = rows },
}

var batchesSheet = rowsOf[larder.Batch]{
	table: tableNamed("batches"),
	blank: larder.Batch{Stored: cal.None},
	columns: []column[larder.Batch]{
		text("id", func(b *larder.Batch) *string { return &b.ID }),
		text("store", func(b *larder.Batch) *string { return &b.Store }),
		text("crop", func(b *larder.Batch) *string { return &b.Crop }),
		text("use", func(b *larder.Batch) *string { return &b.Use }),
		number("kg", func(b *larder.Batch) *float64 { return &b.Kg }),
		date("stored", func(b *larder.Batch) *cal.Date { return &b.Stored }),
		text("planting", func(b *larder.Batch) *string { return &b.Planting }),
	},
	list: func(h *holding.Holding) []larder.Batch { return h.Batches },
	put:  func(h *holding.Holding, rows []larder.Batch) { h.Batches = rows },
}

// recordedValue is written when there is a unit, also when it is 0: an empty
// store was counted too.
var recordedValue = func() column[record.Record] {
	c := number("value", func(r *record.Record) *float64 { return &r.Value })
	c.keep = func(r *record.Record) bool { return r.Unit != "" }
	return c
}()

var recordsSheet = rowsOf[record.Record]{
	table: tableNamed("records"),
	blank: record.Record{Date: cal.None},
	columns: []column[record.Record]{
		text("id", func(r *record.Record) *string { return &r.ID }),
		date("date", func(r *record.Record) *cal.Date { return &r.Date }),
		text("what", func(r *record.Record) *record.What { return &r.What }),
		text("planting", func(r *record.Record) *string { return &r.Planting }),
		text("bed", func(r *record.Record) *string { return &r.Bed }),
		text("store", func(r *record.Record) *string { return &r.Store }),
		text("batch", func(r *record.Record) *string { return &r.Batch }),
		recordedValue,
		text("unit", func(r *record.Record) *string { return &r.Unit }),
		text("problem", func(r *record.Record) *string { return &r.Problem }),
		text("stage", func(r *record.Record) *record.Stage { return &r.Stage }),
		text("note", func(r *record.Record) *string { return &r.Note }),
		text("feature", func(r *record.Record) *string { return &r.Feature }),
	},
	list: func(h *holding.Holding) []record.Record { return h.Records },
	put:  func(h *holding.Holding, rows []record.Record) { h.Records = rows },
}
